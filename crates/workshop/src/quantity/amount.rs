//! One value, with the unit it is shown in.

use std::fmt;

use super::dimension::Dimension;
use super::rounding::{plain, trimmed};
use super::unit::Unit;

/// One value with the unit it is shown in. It prints with four significant
/// digits, which is finer than any tool at a bench, and without zeros at the
/// end.
///
/// Equality compares the figure and the unit as they stand; whether two
/// amounts are the same size is a question for [`Amount::compare`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Amount {
    figure: f64,
    unit: Unit,
    dimension: Dimension,
}

impl Amount {
    /// A figure in a unit. A temperature is a point on its scale.
    pub fn new(figure: f64, unit: Unit) -> Amount {
        Amount {
            figure,
            unit,
            dimension: unit.dimension(),
        }
    }

    /// A figure in a unit, where a temperature is a rise or fall.
    pub fn difference(figure: f64, unit: Unit) -> Amount {
        let dimension = match unit.dimension() {
            Dimension::Temperature => Dimension::TemperatureDifference,
            other => other,
        };
        Amount {
            figure,
            unit,
            dimension,
        }
    }

    /// An SI value shown in a unit. `None` when the unit does not measure that
    /// dimension.
    pub fn from_si(si: f64, dimension: Dimension, unit: Unit) -> Option<Amount> {
        let figure = unit.from_si(si, dimension);
        unit.measures(dimension).then_some(Amount {
            figure,
            unit,
            dimension,
        })
    }

    /// An SI value shown in a unit that is known to measure its dimension.
    pub(super) fn worked_out(si: f64, dimension: Dimension, unit: Unit) -> Amount {
        debug_assert!(
            unit.measures(dimension),
            "{unit:?} does not measure {dimension:?}"
        );
        Amount {
            figure: unit.from_si(si, dimension),
            unit,
            dimension,
        }
    }

    /// The figure in a unit that is known to measure the same thing.
    pub(super) fn figure_in(self, unit: Unit) -> f64 {
        debug_assert!(
            unit.measures(self.dimension),
            "{unit:?} does not measure {:?}",
            self.dimension
        );
        self.unit.carried_over(self.figure, unit, self.dimension)
    }

    /// Another figure in the same unit.
    pub(super) fn with_figure(self, figure: f64) -> Amount {
        Amount { figure, ..self }
    }

    /// The figure, in the amount's own unit.
    pub fn figure(self) -> f64 {
        self.figure
    }

    /// The unit it is shown in.
    pub fn unit(self) -> Unit {
        self.unit
    }

    /// What it measures.
    pub fn dimension(self) -> Dimension {
        self.dimension
    }

    /// The value in SI units.
    pub fn si(self) -> f64 {
        self.unit.to_si(self.figure, self.dimension)
    }

    /// The same amount shown in another unit. `None` when that unit measures
    /// something else.
    pub fn in_unit(self, unit: Unit) -> Option<Amount> {
        unit.measures(self.dimension).then(|| Amount {
            figure: self.figure_in(unit),
            unit,
            dimension: self.dimension,
        })
    }

    /// Which of two amounts is larger, where amounts within
    /// [`SAME_WITHIN`](super::SAME_WITHIN) count as equal. `None` when they
    /// measure different things.
    pub fn compare(self, other: Amount) -> Option<std::cmp::Ordering> {
        if self.dimension != other.dimension {
            return None;
        }
        let (a, b) = (self.si(), other.si());
        if super::same(a, b) {
            Some(std::cmp::Ordering::Equal)
        } else {
            a.partial_cmp(&b)
        }
    }

    /// The amount with the figure written out as a person would write it, to
    /// twelve digits. For what was given, where `Display` is for what was
    /// worked out.
    pub fn as_given(self) -> String {
        joined(&plain(self.figure), self.unit)
    }

    /// The amount to so many significant digits.
    pub fn rounded(self, significant: usize) -> String {
        joined(&super::rounded(self.figure, significant), self.unit)
    }
}

impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&joined(&trimmed(self.figure, 4), self.unit))
    }
}

/// A figure and its unit with the blank between them; none before a unit that
/// is nothing.
pub(super) fn joined(figure: &str, unit: Unit) -> String {
    if unit == Unit::Number {
        figure.to_owned()
    } else {
        format!("{figure} {unit}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cmp::Ordering;

    #[test]
    fn a_temperature_and_its_change_convert_differently() {
        let boiling = Amount::new(212.0, Unit::Fahrenheit).in_unit(Unit::Celsius);
        assert_eq!(boiling.map(Amount::figure), Some(100.0));
        let rise = Amount::difference(10.0, Unit::Celsius).in_unit(Unit::Fahrenheit);
        assert_eq!(rise.map(Amount::as_given), Some("18 °F".to_owned()));
        assert_eq!(
            Amount::new(10.0, Unit::Celsius).compare(Amount::difference(10.0, Unit::Celsius)),
            None
        );
    }

    #[test]
    fn amounts_compare_across_units() {
        let inch = Amount::new(1.0, Unit::Inch);
        assert_eq!(
            inch.compare(Amount::new(25.4, Unit::Millimetre)),
            Some(Ordering::Equal)
        );
        assert_eq!(
            inch.compare(Amount::new(25.0, Unit::Millimetre)),
            Some(Ordering::Greater)
        );
        assert_eq!(inch.compare(Amount::new(25.0, Unit::Newton)), None);
    }

    #[test]
    fn prints_four_digits_at_most() {
        assert_eq!(
            Amount::new(214.2857, Unit::PoundForceInch).to_string(),
            "214.3 lbf.in"
        );
        assert_eq!(
            Amount::new(30.0, Unit::PoundForceFoot).to_string(),
            "30 lbf.ft"
        );
        assert_eq!(Amount::new(0.253, Unit::Number).to_string(), "0.253");
    }
}
