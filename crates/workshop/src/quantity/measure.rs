//! A quantity as written, with its value.

use std::fmt;

use super::amount::{Amount, joined};
use super::dimension::Dimension;
use super::figure::Figure;
use super::problem::MeasureProblem;
use super::rounding::plain;
use super::unit::Unit;

/// Two SI values are the same when they differ by no more than this share of
/// the larger. Binary fractions alone make 0.12 mm and 0.00012 m differ; no
/// instrument at a bench tells one part in a thousand million.
pub const SAME_WITHIN: f64 = 1e-9;

/// Whether two SI values of the same kind are the same; see [`SAME_WITHIN`].
pub fn same(a: f64, b: f64) -> bool {
    a == b || (a - b).abs() <= SAME_WITHIN * a.abs().max(b.abs())
}

/// What a quantity looks like.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// `22 N.m`
    Single(Figure),
    /// `0.05..0.12 mm`
    Range {
        /// The smaller figure.
        low: Figure,
        /// The larger.
        high: Figure,
    },
    /// `at most 0.2 mm`, `max 0.2 mm`, `up to 0.2 mm`
    AtMost(Figure),
    /// `at least 3 mm`, `min 3 mm`
    AtLeast(Figure),
    /// `22 +- 2 N.m`, `22 N.m +- 10 %`
    Tolerance {
        /// The figure that is aimed at.
        middle: Figure,
        /// How far from it is still right.
        by: Figure,
        /// Whether `by` is a share of the middle and not in the unit.
        percent: bool,
    },
}

/// A quantity as written, with its value. It prints as it was written.
#[derive(Debug, Clone, PartialEq)]
pub struct Measure {
    pub(super) written: String,
    pub(super) shape: Shape,
    pub(super) unit: Unit,
    pub(super) unit_written: String,
    pub(super) dimension: Dimension,
}

impl Measure {
    /// Reads a quantity: figures and a unit.
    ///
    /// ```
    /// use workshop::quantity::{Dimension, Measure};
    ///
    /// let gap = Measure::read("0.05..0.12 mm").unwrap();
    /// assert_eq!(gap.dimension(), Dimension::Length);
    /// assert!(gap.contains(&Measure::read("0.12 mm").unwrap()));
    /// assert_eq!(gap.to_string(), "0.05..0.12 mm");
    /// ```
    ///
    /// # Errors
    /// When the text is no quantity, or has no unit; see [`MeasureProblem`].
    pub fn read(text: &str) -> Result<Measure, MeasureProblem> {
        super::read::measure(text, None)
    }

    /// As [`Measure::read`], where it is known what is wanted. Degrees Celsius
    /// and Fahrenheit are read as a rise or fall when
    /// [`Dimension::TemperatureDifference`] is wanted, and a bare number is
    /// read when [`Dimension::Number`] is.
    ///
    /// # Errors
    /// As [`Measure::read`], and when the quantity is of another kind.
    pub fn read_as(text: &str, wanted: Dimension) -> Result<Measure, MeasureProblem> {
        super::read::measure(text, Some(wanted))
    }

    /// Reads several quantities with commas between them. The unit may stand
    /// behind the last one only: `0.10, 0.15, 0.20 mm`.
    ///
    /// # Errors
    /// As [`Measure::read_as`], for the first that cannot be read.
    pub fn read_list(
        text: &str,
        wanted: Option<Dimension>,
    ) -> Result<Vec<Measure>, MeasureProblem> {
        super::read::list(text, wanted)
    }

    /// A quantity that nobody wrote, printed plainly.
    pub fn of(amount: Amount) -> Measure {
        let text = plain(amount.figure());
        Measure {
            written: joined(&text, amount.unit()),
            shape: Shape::Single(Figure::made(amount.figure(), text)),
            unit: amount.unit(),
            unit_written: amount.unit().symbol().to_owned(),
            dimension: amount.dimension(),
        }
    }

    /// The text as it was written, without blanks at its ends.
    pub fn as_written(&self) -> &str {
        &self.written
    }

    /// Single value, range or tolerance, with the figures as written.
    pub fn shape(&self) -> &Shape {
        &self.shape
    }

    /// The unit.
    pub fn unit(&self) -> Unit {
        self.unit
    }

    /// The unit as it was written.
    pub fn unit_as_written(&self) -> &str {
        &self.unit_written
    }

    /// What it measures.
    pub fn dimension(&self) -> Dimension {
        self.dimension
    }

    /// Whether it is one value and neither a range nor a tolerance.
    pub fn is_single(&self) -> bool {
        matches!(self.shape, Shape::Single(_))
    }

    /// Whether only one end of it is given: `at most 0.2 mm`, `at least 3 mm`.
    pub fn is_bound(&self) -> bool {
        matches!(self.shape, Shape::AtMost(_) | Shape::AtLeast(_))
    }

    /// The smallest value that it allows. Of `at most 0.2 mm` that is nothing, but of a
    /// temperature, and below a negative bound, it is infinitely low.
    pub fn low(&self) -> Amount {
        self.amount(match &self.shape {
            Shape::AtMost(_) if self.dimension == Dimension::Temperature => f64::NEG_INFINITY,
            Shape::AtMost(figure) if figure.value() < 0.0 => f64::NEG_INFINITY,
            Shape::AtMost(_) => 0.0,
            Shape::Single(figure) | Shape::AtLeast(figure) => figure.value(),
            Shape::Range { low, .. } => low.value(),
            Shape::Tolerance { middle, .. } => middle.value() - self.half_width(),
        })
    }

    /// The largest value that it allows; infinity for `at least 3 mm`.
    pub fn high(&self) -> Amount {
        self.amount(match &self.shape {
            Shape::AtLeast(_) => f64::INFINITY,
            Shape::Single(figure) | Shape::AtMost(figure) => figure.value(),
            Shape::Range { high, .. } => high.value(),
            Shape::Tolerance { middle, .. } => middle.value() + self.half_width(),
        })
    }

    /// The value that is aimed at: the middle of a range, and the bound itself where only one is
    /// given.
    pub fn middle(&self) -> Amount {
        self.amount(match &self.shape {
            Shape::Single(figure) | Shape::AtMost(figure) | Shape::AtLeast(figure) => {
                figure.value()
            }
            Shape::Range { low, high } => (low.value() + high.value()) / 2.0,
            Shape::Tolerance { middle, .. } => middle.value(),
        })
    }

    /// Whether all that `other` allows lies inside this one, its ends
    /// included. False when they measure different things.
    pub fn contains(&self, other: &Measure) -> bool {
        self.contains_amount(other.low()) && self.contains_amount(other.high())
    }

    /// Whether a value lies inside this one, its ends included. False when
    /// they measure different things.
    pub fn contains_amount(&self, amount: Amount) -> bool {
        if amount.dimension() != self.dimension {
            return false;
        }
        let (low, value, high) = (self.low().si(), amount.si(), self.high().si());
        let ends = [low, high, value].map(f64::abs);
        let finite = ends.into_iter().filter(|end| end.is_finite());
        let slack = SAME_WITHIN * finite.fold(0.0, f64::max);
        low - slack <= value && value <= high + slack
    }

    /// Whether both allow the same values, whatever their units.
    pub fn same_as(&self, other: &Measure) -> bool {
        self.dimension == other.dimension
            && same(self.low().si(), other.low().si())
            && same(self.high().si(), other.high().si())
    }

    fn amount(&self, figure: f64) -> Amount {
        if self.dimension == Dimension::TemperatureDifference {
            Amount::difference(figure, self.unit)
        } else {
            Amount::new(figure, self.unit)
        }
    }

    /// Half the width of a tolerance, in the unit; zero for other shapes.
    fn half_width(&self) -> f64 {
        match &self.shape {
            Shape::Tolerance {
                middle,
                by,
                percent: true,
            } => middle.value().abs() * by.value() / 100.0,
            Shape::Tolerance { by, .. } => by.value(),
            _ => 0.0,
        }
    }
}

impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.written)
    }
}
