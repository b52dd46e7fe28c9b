//! Nut factors and coefficients of friction, with their sources.

use crate::quantity::{same, trimmed};
use crate::source::Source;

/// A nut factor K, the one number of the short form that stands for all
/// friction: its likely value, how far it may be off, and where it comes from.
#[derive(Debug, Clone, PartialEq)]
pub struct NutFactor {
    low: f64,
    likely: f64,
    high: f64,
    source: Source,
}

impl NutFactor {
    /// A factor with its range. `None` unless 0 < low ≤ likely ≤ high and the
    /// highest is no more than 1: a joint in which all of the torque is lost
    /// to friction.
    pub fn new(low: f64, likely: f64, high: f64, source: Source) -> Option<NutFactor> {
        let sound = low > 0.0 && low <= likely && likely <= high && high <= 1.0;
        sound.then_some(NutFactor {
            low,
            likely,
            high,
            source,
        })
    }

    /// A factor given as one number.
    pub fn exactly(value: f64, source: Source) -> Option<NutFactor> {
        NutFactor::new(value, value, value, source)
    }

    /// For a joint of which nothing is known: from 0.12 (anti-seize) over 0.20
    /// to 0.30 (black, dry), the ends of Shigley, 9th ed., Table 8-15, and the
    /// middle that Shigley, 5th ed., recommends where the condition is not
    /// stated.
    pub fn condition_unknown() -> NutFactor {
        NutFactor {
            low: 0.12,
            likely: 0.20,
            high: 0.30,
            source: Source::read("Shigley, 9th ed., Table 8-15; 5th ed., ch. 8-8, for the middle"),
        }
    }

    /// The lowest it may be: most clamp load for the torque.
    pub fn low(&self) -> f64 {
        self.low
    }

    /// Its likely value.
    pub fn likely(&self) -> f64 {
        self.likely
    }

    /// The highest it may be: least clamp load for the torque.
    pub fn high(&self) -> f64 {
        self.high
    }

    /// Where it comes from.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// The same factor pinned to its lowest value.
    pub fn at_low(&self) -> NutFactor {
        NutFactor {
            likely: self.low,
            high: self.low,
            ..self.clone()
        }
    }

    /// The same factor pinned to its highest value.
    pub fn at_high(&self) -> NutFactor {
        NutFactor {
            likely: self.high,
            low: self.high,
            ..self.clone()
        }
    }
}

impl std::fmt::Display for NutFactor {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let show = |value: f64| trimmed(value, 3);
        f.write_str(&show(self.likely))?;
        if same(self.low, self.high) {
            Ok(())
        } else {
            write!(f, " ({} to {})", show(self.low), show(self.high))
        }
    }
}

/// A published number for a condition of the surfaces.
#[derive(Debug, Clone, PartialEq)]
pub struct FrictionCondition {
    /// The condition in words.
    pub condition: &'static str,
    /// The number, or the ends of its range.
    pub low: f64,
    /// The other end; the same as `low` where one number is published.
    pub high: f64,
    /// Where it is published.
    pub source: Source,
}

fn published(condition: &'static str, low: f64, high: f64, source: Source) -> FrictionCondition {
    FrictionCondition {
        condition,
        low,
        high,
        source,
    }
}

/// Published nut factors K. They disagree: choose one by the condition at the
/// bench and say which.
pub fn published_nut_factors() -> Vec<FrictionCondition> {
    let shigley = || Source::read("Shigley, 9th ed., Table 8-15");
    let nasa = || Source::read("NASA TM-106943 (1995) p. 4");
    let handbook = || {
        Source::copied("Bickford and Nassar, Handbook of Bolts and Bolted Joints, ch. 2 Table 1")
    };
    vec![
        published("black finish, not plated", 0.30, 0.30, shigley()),
        published("zinc plated", 0.20, 0.20, shigley()),
        published("lubricated", 0.18, 0.18, shigley()),
        published("cadmium plated", 0.16, 0.16, shigley()),
        published("anti-seize compound", 0.12, 0.12, shigley()),
        published("lubricated", 0.11, 0.15, nasa()),
        published("not lubricated", 0.20, 0.20, nasa()),
        published("bare steel", 0.20, 0.20, handbook()),
        published("cadmium plated, dry", 0.20, 0.20, handbook()),
        published("zinc plated, dry", 0.295, 0.295, handbook()),
        published(
            "threadlocker on steel; it alters K and must be tested",
            0.14,
            0.20,
            Source::memory("no standard value; NASA-STD-5020B B.5.8 asks for a test"),
        ),
    ]
}

/// Published coefficients of friction, each within a fifth either way
/// (MIL-HDBK-60, 12 March 1990, App. B Table II).
pub fn published_frictions() -> Vec<FrictionCondition> {
    let handbook = || Source::read("MIL-HDBK-60 (1990) App. B Table II");
    let rows = [
        ("steel, graphite in petrolatum or oil", 0.07),
        ("steel, molybdenum disulphide grease", 0.11),
        ("steel, cadmium plated, dry", 0.12),
        ("steel, zinc plated, dry", 0.17),
        ("steel, machine oil", 0.15),
        ("steel on bronze, dry", 0.15),
        ("stainless or nickel alloy, silver plated, dry", 0.14),
        ("titanium on steel, graphite in petrolatum", 0.08),
        ("titanium, molybdenum disulphide grease", 0.10),
    ];
    rows.into_iter()
        .map(|(condition, mu)| published(condition, mu, mu, handbook()))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_factor_outside_reason_is_none() {
        let source = || Source::given("a note");
        assert!(NutFactor::exactly(0.0, source()).is_none());
        assert!(NutFactor::exactly(1.5, source()).is_none());
        assert!(NutFactor::exactly(f64::NAN, source()).is_none());
        assert!(NutFactor::new(0.3, 0.2, 0.1, source()).is_none());
        let factor = NutFactor::new(0.12, 0.2, 0.3, source()).unwrap();
        assert_eq!(factor.to_string(), "0.2 (0.12 to 0.3)");
        assert_eq!(factor.at_low().to_string(), "0.12");
        assert_eq!(
            (factor.at_high().low(), factor.at_high().likely()),
            (0.3, 0.3)
        );
    }
}
