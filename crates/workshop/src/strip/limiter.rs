//! Compression limiters: the metal sleeve that carries the clamp load through
//! plastic.

use std::f64::consts::FRAC_PI_4;

use crate::quantity::{Area, Force, Length, Pressure, System, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

/// A metal sleeve in a plastic part.
#[derive(Debug, Clone, PartialEq)]
pub struct Limiter {
    outer: Length,
    bore: Length,
    yield_strength: Pressure,
    source: Source,
}

impl Limiter {
    /// A sleeve by its outer diameter, bore and yield strength. `None` unless
    /// the outer diameter is the larger, the bore is no less than 0 and the
    /// strength is above 0.
    pub fn new(
        outer: Length,
        bore: Length,
        yield_strength: Pressure,
        source: Source,
    ) -> Option<Limiter> {
        let sound = outer.exceeds(bore) && bore.si() >= 0.0 && yield_strength.si() > 0.0;
        sound.then_some(Limiter {
            outer,
            bore,
            yield_strength,
            source,
        })
    }

    /// Its ring of metal: (π/4) × (D² - d²).
    pub fn area(&self) -> Area {
        let (outer, bore) = (self.outer.inner(), self.bore.inner());
        Area::from_inner(
            FRAC_PI_4 * (outer * outer - bore * bore),
            System::of(self.outer.unit()),
        )
    }
}

/// What a clamp load does to a limiter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LimiterLoad {
    /// Stress in the sleeve.
    pub stress: Pressure,
    /// That stress as a share of its yield strength; above 1 it is crushed.
    pub share: f64,
}

/// Stress in a sleeve that carries the whole clamp load, F/A, MPa from N and
/// mm2, and its share of the sleeve's yield strength. The plastic carries
/// nothing: it creeps away from whatever is asked of it. The part under the
/// sleeve must bear the same load; see
/// [`bearing_pressure`](crate::bearing::bearing_pressure).
///
/// A metal sleeve must carry all of the clamp load: rule read in a supplier's
/// design note; no limit for plain plastic was found.
pub fn limiter_load(load: Force, limiter: &Limiter) -> Worked<LimiterLoad> {
    let system = System::of(limiter.outer.unit());
    let area = limiter.area();
    let stress = Pressure::from_inner(load.inner() / area.inner(), system);
    let share = stress.si() / limiter.yield_strength.si();
    let working = Working::new()
        .line(
            "metal of the sleeve A",
            "(π/4) × (D² - d²)",
            format!(
                "(π/4) × ({}² - {}²)",
                limiter.outer.amount().as_given(),
                limiter.bore.amount().as_given()
            ),
            area,
        )
        .line(
            "stress in the sleeve",
            "F / A",
            format!("{load} / {area}"),
            stress,
        )
        .line(
            "share of its yield strength",
            "stress / Rp",
            format!("{stress} / {}", limiter.yield_strength),
            format!("{} %", trimmed(100.0 * share, 3)),
        )
        .source(Source::read(
            "a supplier's design note: the limiter carries the whole clamp load",
        ))
        .source(limiter.source.clone())
        .assuming("the sleeve stands no lower than the plastic, and the head covers it");
    Worked::new(LimiterLoad { stress, share }, working)
}
