//! How far the clamp load may be from the one aimed at.

use crate::quantity::{Force, Measure, System, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

/// A way of tightening, and how well it hits the clamp load.
#[derive(Debug, Clone, PartialEq)]
pub struct ControlMethod {
    /// The way in words.
    pub words: &'static str,
    /// How far the load may be off, as a share either way.
    pub uncertainty: f64,
    /// Where that is published.
    pub source: Source,
}

/// Published uncertainties of clamp load by way of tightening.
pub fn control_methods() -> Vec<ControlMethod> {
    let handbook = || Source::read("MIL-HDBK-60 (1990) Table I");
    let shuttle = || Source::read("NSTS 08307 Rev A (1998) par. 3.4");
    let method = |words, uncertainty, source| ControlMethod {
        words,
        uncertainty,
        source,
    };
    vec![
        method("by feel", 0.35, handbook()),
        method("torque wrench", 0.25, handbook()),
        method("turn of the nut", 0.15, handbook()),
        method("load indicating washer", 0.10, handbook()),
        method("bolt stretch measured", 0.05, handbook()),
        method("torque wrench, dry", 0.35, shuttle()),
        method("torque wrench, cadmium plated", 0.30, shuttle()),
        method("torque wrench, lubricated", 0.25, shuttle()),
    ]
}

/// The clamp load aimed at, and the least and most that may come of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadSpread {
    /// The least, after the joint has settled.
    pub least: Force,
    /// What is aimed at.
    pub nominal: Force,
    /// The most.
    pub most: Force,
}

/// Least and most clamp load: F × (1 - u)/(1 + r) and F × (1 + u), with u the
/// uncertainty of the way of tightening and r the load lost as the faces bed
/// in, as a share of the least (NASA TM-106943 Eqs 14 and 16; its Table I uses
/// r = 0.05, and NSTS 08307 par. 3.6 gives 2 to 10 %). `None` unless u lies
/// between 0 and 1 and r is no less than 0.
pub fn spread(nominal: Force, uncertainty: f64, bedding_in: f64) -> Option<Worked<LoadSpread>> {
    if !((0.0..1.0).contains(&uncertainty) && (0.0..1.0).contains(&bedding_in)) {
        return None;
    }
    let system = System::of(nominal.unit());
    let least = Force::from_inner(
        nominal.inner() * (1.0 - uncertainty) / (1.0 + bedding_in),
        system,
    );
    let most = Force::from_inner(nominal.inner() * (1.0 + uncertainty), system);
    let (u, r) = (trimmed(uncertainty, 3), trimmed(bedding_in, 3));
    let working = Working::new()
        .line(
            "least clamp load",
            "F × (1 - u)/(1 + r)",
            format!("{nominal} × (1 - {u})/(1 + {r})"),
            least,
        )
        .line(
            "most clamp load",
            "F × (1 + u)",
            format!("{nominal} × (1 + {u})"),
            most,
        )
        .source(Source::read("NASA TM-106943 (1995) Eqs 14 and 16, Table I"));
    Some(Worked::new(
        LoadSpread {
            least,
            nominal,
            most,
        },
        working,
    ))
}

/// What a tolerance on the torque does to the load, as factors on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TorqueFactors {
    /// Lowest torque over the torque aimed at.
    pub low: f64,
    /// Highest torque over the torque aimed at.
    pub high: f64,
}

/// Factors of a torque tolerance: (T ± t)/T (NASA-STD-5020B Eqs 3 and 4).
/// `None` for a torque of nothing, for one with an open end, and for a quantity that is none.
pub fn torque_factors(torque: &Measure) -> Option<Worked<TorqueFactors>> {
    let (low, middle, high) = (torque.low().si(), torque.middle().si(), torque.high().si());
    if torque.dimension() != crate::quantity::Dimension::Torque
        || middle <= 0.0
        || torque.is_bound()
    {
        return None;
    }
    let factors = TorqueFactors {
        low: low / middle,
        high: high / middle,
    };
    let line = |end: crate::quantity::Amount| {
        format!("{} / {}", end.as_given(), torque.middle().as_given())
    };
    let working = Working::new()
        .line(
            "highest torque factor",
            "T max / T",
            line(torque.high()),
            trimmed(factors.high, 4),
        )
        .line(
            "lowest torque factor",
            "T min / T",
            line(torque.low()),
            trimmed(factors.low, 4),
        )
        .source(Source::read("NASA-STD-5020B (2021) Eqs 3 and 4"));
    Some(Worked::new(factors, working))
}
