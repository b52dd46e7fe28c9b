//! Amounts whose kind the compiler checks.
//!
//! Formulas take and give these, so that a length cannot stand where a force
//! is wanted. Inside the crate those that enter a formula turn into types of
//! the unit library, which checks that the two sides of the formula agree.

use std::fmt;

use super::amount::Amount;
use super::dimension::Dimension;
use super::system::System;
use super::unit::Unit;

macro_rules! kinds {
    ($($(#[$doc:meta])* $name:ident, $dimension:ident, $make:ident, $get:ident, $unit:ident;)*) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct $name(Amount);

        impl $name {
            #[doc = concat!("From a figure in ", stringify!($make), ".")]
            pub fn $make(figure: f64) -> $name {
                $name(kinds!(@amount $dimension, figure, Unit::$unit))
            }

            #[doc = concat!("The figure in ", stringify!($make), ".")]
            pub fn $get(self) -> f64 {
                self.0.figure_in(Unit::$unit)
            }

            /// From a figure in any unit of this kind; `None` for a unit of
            /// another kind.
            pub fn new(figure: f64, unit: Unit) -> Option<$name> {
                unit.measures(Dimension::$dimension)
                    .then(|| $name(kinds!(@amount $dimension, figure, unit)))
            }

            /// The figure in another unit of this kind; `None` for a unit of
            /// another kind.
            pub fn figure_in(self, unit: Unit) -> Option<f64> {
                self.0.in_unit(unit).map(Amount::figure)
            }

            /// The figure in the unit of another amount of this kind.
            pub fn figure_like(self, other: $name) -> f64 {
                self.0.figure_in(other.unit())
            }

            /// Another figure in the same unit.
            pub fn with_figure(self, figure: f64) -> $name {
                $name(self.0.with_figure(figure))
            }

            /// The same amount, shown in another unit. Unchanged where that
            /// unit is of another kind.
            pub fn shown_in(self, unit: Unit) -> $name {
                self.0.in_unit(unit).map_or(self, $name)
            }

            /// The unit it is shown in.
            pub fn unit(self) -> Unit {
                self.0.unit()
            }

            /// The value in SI units.
            pub fn si(self) -> f64 {
                self.0.si()
            }

            /// The amount, its kind no longer in its type.
            pub fn amount(self) -> Amount {
                self.0
            }

            /// Whether this is the larger by more than
            /// [`SAME_WITHIN`](super::SAME_WITHIN).
            pub fn exceeds(self, other: $name) -> bool {
                self.0.compare(other.0) == Some(std::cmp::Ordering::Greater)
            }
        }

        impl From<$name> for Amount {
            fn from(kind: $name) -> Amount {
                kind.0
            }
        }

        impl TryFrom<Amount> for $name {
            type Error = Amount;

            /// Gives the amount back when it measures something else.
            fn try_from(amount: Amount) -> Result<$name, Amount> {
                if amount.dimension() == Dimension::$dimension { Ok($name(amount)) } else { Err(amount) }
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    )*};
    (@amount TemperatureDifference, $figure:expr, $unit:expr) => { Amount::difference($figure, $unit) };
    (@amount $dimension:ident, $figure:expr, $unit:expr) => { Amount::new($figure, $unit) };
}

kinds! {
    /// A turning moment.
    Torque, Torque, newton_metres, in_newton_metres, NewtonMetre;
    /// A length on the bench.
    Length, Length, millimetres, in_millimetres, Millimetre;
    /// An area.
    Area, Area, square_millimetres, in_square_millimetres, SquareMillimetre;
    /// A force.
    Force, Force, newtons, in_newtons, Newton;
    /// A pressure or a stress.
    Pressure, Pressure, megapascals, in_megapascals, Megapascal;
    /// An angle turned through.
    Angle, Angle, degrees, in_degrees, Degree;
    /// A mass.
    Mass, Mass, kilograms, in_kilograms, Kilogram;
    /// A volume.
    Volume, Volume, litres, in_litres, Litre;
    /// A point on a temperature scale.
    Temperature, Temperature, celsius, in_celsius, Celsius;
    /// A rise or fall in temperature.
    TemperatureDifference, TemperatureDifference, kelvin, in_kelvin, Kelvin;
    /// A length of time.
    Time, Time, minutes, in_minutes, Minute;
}

/// Further units that figures come in often.
macro_rules! also {
    ($($name:ident [$($make:ident, $get:ident, $unit:ident;)*])*) => {$(
        impl $name {$(
            #[doc = concat!("From a figure in ", stringify!($make), ".")]
            pub fn $make(figure: f64) -> $name {
                $name(Amount::new(figure, Unit::$unit))
            }

            #[doc = concat!("The figure in ", stringify!($make), ".")]
            pub fn $get(self) -> f64 {
                self.0.figure_in(Unit::$unit)
            }
        )*}
    )*};
}

also! {
    Torque [
        pound_force_inches, in_pound_force_inches, PoundForceInch;
        pound_force_feet, in_pound_force_feet, PoundForceFoot;
    ]
    Length [
        inches, in_inches, Inch;
    ]
    Area [
        square_inches, in_square_inches, SquareInch;
    ]
    Force [
        kilonewtons, in_kilonewtons, Kilonewton;
        pounds_force, in_pounds_force, PoundForce;
    ]
    Pressure [
        ksi, in_ksi, Ksi;
    ]
    Temperature [
        fahrenheit, in_fahrenheit, Fahrenheit;
    ]
    Time [
        hours, in_hours, Hour;
    ]
}

/// In and out of the unit library, for the kinds that enter formulas.
macro_rules! inside {
    ($($name:ident, $base:path, $unit:ident;)*) => {$(
        impl $name {
            pub(crate) fn inner(self) -> uom::si::f64::$name {
                uom::si::f64::$name::new::<$base>(self.si())
            }

            pub(crate) fn from_inner(inner: uom::si::f64::$name, system: System) -> $name {
                let si = inner.get::<$base>();
                $name(Amount::worked_out(si, Dimension::$name, system.$unit(si)))
            }
        }
    )*};
}

inside! {
    Torque, uom::si::torque::newton_meter, torque;
    Length, uom::si::length::meter, length;
    Area, uom::si::area::square_meter, area;
    Force, uom::si::force::newton, force;
    Pressure, uom::si::pressure::pascal, stress;
}
