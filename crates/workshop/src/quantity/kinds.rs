//! Amounts whose kind the compiler checks.
//!
//! Formulas take and give these, so that a length cannot stand where a force
//! is wanted. Inside the crate each turns into a type of the unit library,
//! which checks that the two sides of a formula agree.

use std::fmt;

use super::amount::Amount;
use super::dimension::Dimension;
use super::unit::Unit;

macro_rules! kinds {
    ($($(#[$doc:meta])* $name:ident, $dimension:ident, $make:ident, $get:ident, $unit:ident, $inner:ty, $base:ty;)*) => {$(
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
                self.0.in_unit(Unit::$unit).map_or(f64::NAN, Amount::figure)
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

            #[allow(dead_code, reason = "made for every kind, used by the formulas that need it")]
            pub(crate) fn inner(self) -> $inner {
                <$inner>::new::<$base>(self.si())
            }

            #[allow(dead_code, reason = "made for every kind, used by the formulas that need it")]
            pub(crate) fn from_inner(inner: $inner, unit: Unit) -> $name {
                let amount = Amount::from_si(inner.get::<$base>(), Dimension::$dimension, unit);
                amount.map_or_else(|| $name::$make(f64::NAN), $name)
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

use uom::si::f64 as inside;

kinds! {
    /// A turning moment.
    Torque, Torque, newton_metres, in_newton_metres, NewtonMetre, inside::Torque, uom::si::torque::newton_meter;
    /// A length on the bench.
    Length, Length, millimetres, in_millimetres, Millimetre, inside::Length, uom::si::length::meter;
    /// An area.
    Area, Area, square_millimetres, in_square_millimetres, SquareMillimetre, inside::Area, uom::si::area::square_meter;
    /// A force.
    Force, Force, newtons, in_newtons, Newton, inside::Force, uom::si::force::newton;
    /// A pressure or a stress.
    Pressure, Pressure, megapascals, in_megapascals, Megapascal, inside::Pressure, uom::si::pressure::pascal;
    /// An angle turned through.
    Angle, Angle, degrees, in_degrees, Degree, inside::Angle, uom::si::angle::radian;
    /// A mass.
    Mass, Mass, kilograms, in_kilograms, Kilogram, inside::Mass, uom::si::mass::kilogram;
    /// A volume.
    Volume, Volume, litres, in_litres, Litre, inside::Volume, uom::si::volume::cubic_meter;
    /// A point on a temperature scale.
    Temperature, Temperature, celsius, in_celsius, Celsius, inside::ThermodynamicTemperature, uom::si::thermodynamic_temperature::kelvin;
    /// A rise or fall in temperature.
    TemperatureDifference, TemperatureDifference, kelvin, in_kelvin, Kelvin, inside::TemperatureInterval, uom::si::temperature_interval::kelvin;
    /// A length of time.
    Time, Time, minutes, in_minutes, Minute, inside::Time, uom::si::time::second;
}
