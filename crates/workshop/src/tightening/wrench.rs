//! What a torque wrench can be relied on for.

use crate::quantity::{Amount, Dimension, Measure, Torque};
use crate::source::Source;

/// A wrench is dependable from this share of its full scale up
/// (TM 1-1500-204-23-9 Table 8-1: no accuracy is required below 20 %).
pub const DEPENDABLE_FROM: f64 = 0.2;

/// Best between these shares of full scale (TM 1-1500-204-23-9 par. 8-3).
const BEST: (f64, f64) = (0.3, 0.8);

/// A torque wrench, by what it can be relied on for.
#[derive(Debug, Clone, PartialEq)]
pub struct Wrench {
    low: Torque,
    high: Torque,
    full_scale_known: bool,
}

/// Why a wrench's figures cannot be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WrenchProblem {
    /// They are no torques.
    NotATorque,
    /// The range is one value, or runs from nothing.
    NotARange,
    /// The full scale is nothing or less.
    NoScale,
}

/// How a torque lies on a wrench.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reach {
    /// Below what it can be relied on for.
    TooSmall,
    /// Reliable, but in the lowest or highest part of the scale.
    NearTheEdge,
    /// Where it is best.
    Good,
    /// Above what it reaches.
    TooLarge,
}

impl Wrench {
    /// A wrench by the range in which it is dependable, as its maker gives it.
    ///
    /// # Errors
    /// When the quantity is no torque, is no range, or begins at nothing.
    pub fn from_range(range: &Measure) -> Result<Wrench, WrenchProblem> {
        let torque =
            |amount: Amount| Torque::try_from(amount).map_err(|_| WrenchProblem::NotATorque);
        let (low, high) = (torque(range.low())?, torque(range.high())?);
        if range.is_single() || low.si() <= 0.0 || !high.exceeds(low) {
            return Err(WrenchProblem::NotARange);
        }
        Ok(Wrench {
            low,
            high,
            full_scale_known: false,
        })
    }

    /// A wrench by its full scale: it is dependable from a fifth of that up.
    ///
    /// # Errors
    /// When the full scale is nothing or less.
    pub fn from_full_scale(full_scale: Torque) -> Result<Wrench, WrenchProblem> {
        if full_scale.si().is_nan() || full_scale.si() <= 0.0 {
            return Err(WrenchProblem::NoScale);
        }
        Ok(Wrench {
            low: full_scale.with_figure(DEPENDABLE_FROM * full_scale.amount().figure()),
            high: full_scale,
            full_scale_known: true,
        })
    }

    /// The lowest torque that it can be relied on for.
    pub fn low(&self) -> Torque {
        self.low
    }

    /// The highest.
    pub fn high(&self) -> Torque {
        self.high
    }

    /// How a torque lies on this wrench. Only a wrench whose full scale is
    /// known has edges within its range.
    pub fn reach(&self, torque: Torque) -> Reach {
        if self.low.exceeds(torque) {
            return Reach::TooSmall;
        }
        if torque.exceeds(self.high) {
            return Reach::TooLarge;
        }
        let share = torque.si() / self.high.si();
        if self.full_scale_known && !(BEST.0..=BEST.1).contains(&share) {
            return Reach::NearTheEdge;
        }
        Reach::Good
    }

    /// How all of a torque quantity lies on this wrench: the worse of its ends.
    /// `None` when the quantity is no torque.
    pub fn reach_all(&self, torque: &Measure) -> Option<Reach> {
        if torque.dimension() != Dimension::Torque {
            return None;
        }
        let ends = [torque.low(), torque.high()].map(|end| Torque::try_from(end).ok());
        let [low, high] = ends.map(|end| end.map(|end| self.reach(end)));
        let worse = |reach: Reach| match reach {
            Reach::TooSmall | Reach::TooLarge => 2,
            Reach::NearTheEdge => 1,
            Reach::Good => 0,
        };
        Some(if worse(low?) >= worse(high?) {
            low?
        } else {
            high?
        })
    }

    /// Where the rule for its dependable range comes from.
    pub fn source(&self) -> Source {
        if self.full_scale_known {
            Source::read(
                "TM 1-1500-204-23-9 Table 8-1: nothing is promised below 20 % of full scale",
            )
        } else {
            Source::given("the range given for the tool")
        }
    }

    /// Whether the dependable range follows from the full scale.
    pub fn follows_from_full_scale(&self) -> bool {
        self.full_scale_known
    }
}

/// Accuracy of a click wrench at a setting, as a share either way: 6 % up to
/// 10 N.m, 4 % above (ISO 6789:2003 type II class A, read in a tool maker's
/// manual). For a wrench whose own accuracy is not given.
pub fn clicker_accuracy(setting: Torque) -> (f64, Source) {
    let share = if setting.exceeds(Torque::newton_metres(10.0)) {
        0.04
    } else {
        0.06
    };
    (share, Source::copied("ISO 6789:2003 type II class A"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fifth_of_full_scale_is_the_least() {
        // TM 1-1500-204-23-9 Table 8-1: 5 N.m on a wrench of 50 is below 20 %.
        let wrench = Wrench::from_full_scale(Torque::newton_metres(50.0)).unwrap();
        let reach = |torque: f64| wrench.reach(Torque::newton_metres(torque));
        assert_eq!(reach(5.0), Reach::TooSmall);
        assert_eq!(reach(9.99), Reach::TooSmall);
        assert_eq!(reach(10.0), Reach::NearTheEdge);
        assert_eq!(reach(15.0), Reach::Good);
        assert_eq!(reach(40.0), Reach::Good);
        assert_eq!(reach(45.0), Reach::NearTheEdge);
        assert_eq!(reach(50.0), Reach::NearTheEdge);
        assert_eq!(reach(51.0), Reach::TooLarge);
    }

    #[test]
    fn a_given_range_is_taken_at_its_word() {
        let wrench = Wrench::from_range(&Measure::read("5..25 N.m").unwrap()).unwrap();
        let reach = |text: &str| wrench.reach_all(&Measure::read(text).unwrap());
        assert_eq!(reach("5 N.m"), Some(Reach::Good));
        assert_eq!(reach("25 N.m"), Some(Reach::Good));
        assert_eq!(reach("24 +- 2 N.m"), Some(Reach::TooLarge));
        assert_eq!(reach("4 N.m"), Some(Reach::TooSmall));
        assert_eq!(reach("4 mm"), None);
        let problem = |text: &str| Wrench::from_range(&Measure::read(text).unwrap()).unwrap_err();
        assert_eq!(problem("25 N.m"), WrenchProblem::NotARange);
        assert_eq!(problem("0..25 N.m"), WrenchProblem::NotARange);
        assert_eq!(problem("0..25 mm"), WrenchProblem::NotATorque);
        assert_eq!(
            Wrench::from_full_scale(Torque::newton_metres(0.0)),
            Err(WrenchProblem::NoScale)
        );
    }
}
