//! Metric or inch: in which units a result is shown.

use super::unit::Unit;

/// The family of units a result is shown in: that of what was given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum System {
    /// N.m, mm, N, MPa.
    Metric,
    /// lbf.in, in, lbf, ksi.
    Inch,
}

impl System {
    /// The family that a unit belongs to. Units that belong to neither (an
    /// angle, a time) count as metric.
    pub fn of(unit: Unit) -> System {
        match unit {
            Unit::PoundForceFoot
            | Unit::PoundForceInch
            | Unit::OunceForceInch
            | Unit::PoundForce
            | Unit::OunceForce
            | Unit::Psi
            | Unit::Ksi
            | Unit::InchOfMercury
            | Unit::Inch
            | Unit::Thou
            | Unit::Foot
            | Unit::SquareInch
            | Unit::Pound
            | Unit::Ounce
            | Unit::CubicInch
            | Unit::Fahrenheit => System::Inch,
            _ => System::Metric,
        }
    }

    pub(super) fn torque(self, si: f64) -> Unit {
        match self {
            System::Metric => Unit::NewtonMetre,
            // Up to 100 lbf.ft the sources that work in inches give lbf.in.
            System::Inch if si.abs() < 135.0 => Unit::PoundForceInch,
            System::Inch => Unit::PoundForceFoot,
        }
    }

    pub(super) fn length(self, _si: f64) -> Unit {
        match self {
            System::Metric => Unit::Millimetre,
            System::Inch => Unit::Inch,
        }
    }

    pub(super) fn area(self, _si: f64) -> Unit {
        match self {
            System::Metric => Unit::SquareMillimetre,
            System::Inch => Unit::SquareInch,
        }
    }

    pub(super) fn force(self, si: f64) -> Unit {
        match self {
            System::Metric if si.abs() < 10_000.0 => Unit::Newton,
            System::Metric => Unit::Kilonewton,
            System::Inch => Unit::PoundForce,
        }
    }

    pub(super) fn stress(self, _si: f64) -> Unit {
        match self {
            System::Metric => Unit::Megapascal,
            System::Inch => Unit::Ksi,
        }
    }
}
