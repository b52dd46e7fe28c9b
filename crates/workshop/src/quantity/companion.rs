//! The other unit shown beside a quantity.

use super::amount::{Amount, joined};
use super::dimension::Dimension;
use super::figure::Figure;
use super::measure::{Measure, Shape};
use super::rounding::{rounded, trimmed, with_decimals};
use super::unit::Unit;

/// Below this an inch-pound wrench is the one that fits (10 lbf.ft). Common
/// practice, no source.
const SMALL_TORQUE: f64 = 13.56;

impl Unit {
    /// The unit shown beside this one. `si` is the value concerned, because
    /// small torques are better said in lbf.in. `None` where nobody would want
    /// another (time, percent, degrees of arc).
    pub fn companion(self, si: f64) -> Option<Unit> {
        let pound_torque = if si.abs() < SMALL_TORQUE {
            Unit::PoundForceInch
        } else {
            Unit::PoundForceFoot
        };
        Some(match self {
            Unit::NewtonMetre
            | Unit::DecinewtonMetre
            | Unit::DecanewtonMetre
            | Unit::KilonewtonMetre => pound_torque,
            Unit::CentinewtonMetre => Unit::PoundForceInch,
            Unit::KilogramForceMetre
            | Unit::KilogramForceCentimetre
            | Unit::PoundForceFoot
            | Unit::PoundForceInch
            | Unit::OunceForceInch => Unit::NewtonMetre,
            Unit::Newton | Unit::Kilonewton | Unit::Decanewton => Unit::PoundForce,
            Unit::KilogramForce | Unit::PoundForce | Unit::OunceForce => Unit::Newton,
            Unit::Pascal
            | Unit::Kilopascal
            | Unit::Bar
            | Unit::Millibar
            | Unit::KilogramForcePerSquareCentimetre => Unit::Psi,
            Unit::Megapascal | Unit::NewtonPerSquareMillimetre | Unit::Gigapascal => Unit::Ksi,
            Unit::Psi => Unit::Bar,
            Unit::Ksi => Unit::Megapascal,
            Unit::MillimetreOfMercury | Unit::InchOfMercury => Unit::Kilopascal,
            Unit::Metre => Unit::Foot,
            Unit::Centimetre | Unit::Millimetre => Unit::Inch,
            Unit::Micrometre => Unit::Thou,
            Unit::Inch | Unit::Thou => Unit::Millimetre,
            Unit::Foot => Unit::Metre,
            Unit::SquareMillimetre | Unit::SquareCentimetre => Unit::SquareInch,
            Unit::SquareInch => Unit::SquareMillimetre,
            Unit::Kilogram | Unit::Tonne => Unit::Pound,
            Unit::Gram => Unit::Ounce,
            Unit::Pound => Unit::Kilogram,
            Unit::Ounce => Unit::Gram,
            Unit::Litre => Unit::UsQuart,
            Unit::Centilitre | Unit::Decilitre | Unit::Millilitre => Unit::UsFluidOunce,
            Unit::CubicCentimetre => Unit::CubicInch,
            Unit::CubicInch => Unit::CubicCentimetre,
            Unit::UsFluidOunce | Unit::ImperialFluidOunce => Unit::Millilitre,
            Unit::UsPint
            | Unit::UsQuart
            | Unit::UsGallon
            | Unit::ImperialPint
            | Unit::ImperialQuart
            | Unit::ImperialGallon => Unit::Litre,
            Unit::Celsius | Unit::Kelvin => Unit::Fahrenheit,
            Unit::Fahrenheit => Unit::Celsius,
            Unit::Radian | Unit::Turn => Unit::Degree,
            Unit::Kilometre => Unit::Mile,
            Unit::Mile => Unit::Kilometre,
            Unit::Degree
            | Unit::Second
            | Unit::Minute
            | Unit::Hour
            | Unit::Day
            | Unit::Week
            | Unit::Month
            | Unit::Year
            | Unit::Percent
            | Unit::Number => return None,
        })
    }
}

impl Measure {
    /// The same quantity in the unit that others would use: N.m beside lbf.ft,
    /// mm beside in. Rounded to as many significant digits as the source gave,
    /// at least two; a temperature to as many decimals. `None` where there is
    /// no such unit.
    ///
    /// ```
    /// use workshop::quantity::Measure;
    ///
    /// let beside = |text: &str| Measure::read(text).unwrap().other_unit().unwrap().to_string();
    /// assert_eq!(beside("65 lbf.ft"), "88 N.m");
    /// assert_eq!(beside("0.05..0.12 mm"), "0.0020..0.0047 in");
    /// ```
    pub fn other_unit(&self) -> Option<Measure> {
        self.in_unit(self.unit().companion(self.middle().si())?)
    }

    /// The same quantity in a given unit, rounded as in
    /// [`Measure::other_unit`]. `None` when that unit measures something else.
    pub fn in_unit(&self, unit: Unit) -> Option<Measure> {
        let convert = |figure: &Figure, difference: bool| -> Option<Figure> {
            let value = if difference || self.dimension() == Dimension::TemperatureDifference {
                self.unit().convert_difference(figure.value(), unit)?
            } else {
                self.unit().convert(figure.value(), unit)?
            };
            let scale = self.dimension() == Dimension::Temperature;
            let text = if scale && !figure.is_fraction() {
                with_decimals(value, figure.decimals())
            } else if figure.is_fraction() {
                trimmed(value, figure.significant())
            } else {
                rounded(value, figure.significant().max(2))
            };
            Some(Figure::made(value, text))
        };
        let (shape, written) = match self.shape() {
            Shape::Single(figure) => {
                let figure = convert(figure, false)?;
                let written = joined(figure.as_written(), unit);
                (Shape::Single(figure), written)
            }
            Shape::AtMost(figure) => {
                let figure = convert(figure, false)?;
                let written = format!("at most {}", joined(figure.as_written(), unit));
                (Shape::AtMost(figure), written)
            }
            Shape::AtLeast(figure) => {
                let figure = convert(figure, false)?;
                let written = format!("at least {}", joined(figure.as_written(), unit));
                (Shape::AtLeast(figure), written)
            }
            Shape::Range { low, high } => {
                let (low, high) = (convert(low, false)?, convert(high, false)?);
                let written = joined(
                    &format!("{}..{}", low.as_written(), high.as_written()),
                    unit,
                );
                (Shape::Range { low, high }, written)
            }
            Shape::Tolerance {
                middle,
                by,
                percent: true,
            } => {
                let middle = convert(middle, false)?;
                let written = format!(
                    "{} +- {} %",
                    joined(middle.as_written(), unit),
                    by.as_written()
                );
                (
                    Shape::Tolerance {
                        middle,
                        by: by.clone(),
                        percent: true,
                    },
                    written,
                )
            }
            Shape::Tolerance {
                middle,
                by,
                percent: false,
            } => {
                let (middle, by) = (convert(middle, false)?, convert(by, true)?);
                let written = joined(
                    &format!("{} +- {}", middle.as_written(), by.as_written()),
                    unit,
                );
                (
                    Shape::Tolerance {
                        middle,
                        by,
                        percent: false,
                    },
                    written,
                )
            }
        };
        Some(Measure {
            written,
            shape,
            unit,
            unit_written: unit.symbol().to_owned(),
            dimension: self.dimension(),
        })
    }
}

impl Amount {
    /// The same amount in the unit that others would use; see
    /// [`Measure::other_unit`].
    pub fn other_unit(self) -> Option<Amount> {
        self.in_unit(self.unit().companion(self.si())?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn beside(text: &str) -> Option<String> {
        Measure::read(text)
            .unwrap()
            .other_unit()
            .map(|other| other.to_string())
    }

    #[test]
    fn shows_the_other_unit_as_finely_as_the_source() {
        let shown = |text: &str| beside(text).unwrap();
        assert_eq!(shown("22 N.m"), "16 lbf.ft");
        assert_eq!(shown("130 N.m"), "95.9 lbf.ft");
        assert_eq!(shown("8 N.m"), "71 lbf.in");
        assert_eq!(shown("22 +- 2 N.m"), "16 +- 1.5 lbf.ft");
        assert_eq!(shown("22 N.m +- 10 %"), "16 lbf.ft +- 10 %");
        assert_eq!(shown("0.0025 in"), "0.064 mm");
        assert_eq!(shown("15/16 in"), "23.81 mm");
        assert_eq!(shown("1/4 turn"), "90 deg");
        assert_eq!(shown("150 C"), "302 °F");
        assert_eq!(shown("-40 C"), "-40 °F");
        assert_eq!(shown("300 F"), "149 °C");
        assert_eq!(shown("11 kg"), "24 lb");
        assert_eq!(shown("1.2 L"), "1.3 us-quart");
        assert_eq!(shown("2.5 bar"), "36 psi");
        assert_eq!(shown("150 psi"), "10.3 bar");
        assert_eq!(beside("24 h"), None);
        assert_eq!(beside("60 deg"), None);
    }

    #[test]
    fn a_rise_in_temperature_stays_a_rise() {
        let rise = Measure::read_as("10 C", Dimension::TemperatureDifference).unwrap();
        assert_eq!(rise.other_unit().unwrap().to_string(), "18 °F");
        let setting = Measure::read("100 +- 10 C").unwrap();
        assert_eq!(setting.other_unit().unwrap().to_string(), "212 +- 18 °F");
    }

    #[test]
    fn what_is_shown_reads_back() {
        for unit in Unit::all().filter(|unit| *unit != Unit::Number) {
            let measure = Measure::of(Amount::new(12.5, unit));
            let Some(other) = measure.other_unit() else {
                continue;
            };
            let again = Measure::read(other.as_written()).unwrap();
            assert_eq!(again.unit(), other.unit(), "{other}");
        }
    }
}
