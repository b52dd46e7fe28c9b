//! What a quantity measures.

use std::fmt;

use super::unit::Unit;

/// What a quantity measures. Two quantities can be compared only when they
/// measure the same thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Dimension {
    /// A turning moment; SI unit newton metre.
    Torque,
    /// A length on the bench; SI unit metre.
    Length,
    /// An area; SI unit square metre.
    Area,
    /// A force; SI unit newton.
    Force,
    /// A pressure or a stress; SI unit pascal.
    Pressure,
    /// An angle turned through; SI unit radian.
    Angle,
    /// A mass; SI unit kilogram.
    Mass,
    /// A volume; SI unit cubic metre.
    Volume,
    /// A point on a temperature scale, with that scale's own zero; SI unit kelvin.
    Temperature,
    /// A rise or fall in temperature: 10 °C of it is 18 °F of it; SI unit kelvin.
    TemperatureDifference,
    /// A length of time; SI unit second.
    Time,
    /// A distance travelled, as in a service interval; SI unit metre. Kept
    /// apart from [`Dimension::Length`] so that no one fits a shim in miles.
    Distance,
    /// A share of a hundred; the value is the share (10 % is 0.1).
    Percent,
    /// A bare number.
    Number,
}

impl Dimension {
    /// Every dimension, in a fixed order.
    pub const ALL: [Dimension; 14] = [
        Dimension::Torque,
        Dimension::Length,
        Dimension::Area,
        Dimension::Force,
        Dimension::Pressure,
        Dimension::Angle,
        Dimension::Mass,
        Dimension::Volume,
        Dimension::Temperature,
        Dimension::TemperatureDifference,
        Dimension::Time,
        Dimension::Distance,
        Dimension::Percent,
        Dimension::Number,
    ];

    /// The dimension in a mechanic's words, with its article: "a torque".
    pub fn words(self) -> &'static str {
        match self {
            Dimension::Torque => "a torque",
            Dimension::Length => "a length",
            Dimension::Area => "an area",
            Dimension::Force => "a force",
            Dimension::Pressure => "a pressure",
            Dimension::Angle => "an angle",
            Dimension::Mass => "a weight",
            Dimension::Volume => "a volume",
            Dimension::Temperature => "a temperature",
            Dimension::TemperatureDifference => "a change of temperature",
            Dimension::Time => "a time",
            Dimension::Distance => "a distance travelled",
            Dimension::Percent => "a percentage",
            Dimension::Number => "a plain number",
        }
    }

    /// Two or three units a mechanic would write for this dimension, the ones
    /// to offer when a unit is missing. Empty for a bare number.
    pub fn usual_units(self) -> &'static [Unit] {
        match self {
            Dimension::Torque => &[
                Unit::NewtonMetre,
                Unit::PoundForceFoot,
                Unit::PoundForceInch,
            ],
            Dimension::Length => &[Unit::Millimetre, Unit::Inch],
            Dimension::Area => &[Unit::SquareMillimetre, Unit::SquareInch],
            Dimension::Force => &[Unit::Newton, Unit::Kilonewton, Unit::PoundForce],
            Dimension::Pressure => &[Unit::Bar, Unit::Psi, Unit::Kilopascal],
            Dimension::Angle => &[Unit::Degree, Unit::Turn],
            Dimension::Mass => &[Unit::Kilogram, Unit::Pound],
            Dimension::Volume => &[Unit::Litre, Unit::Millilitre],
            Dimension::Temperature | Dimension::TemperatureDifference => {
                &[Unit::Celsius, Unit::Fahrenheit]
            }
            Dimension::Time => &[Unit::Minute, Unit::Hour],
            Dimension::Distance => &[Unit::Kilometre, Unit::Mile],
            Dimension::Percent => &[Unit::Percent],
            Dimension::Number => &[],
        }
    }
}

impl fmt::Display for Dimension {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}
