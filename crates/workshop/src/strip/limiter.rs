//! Compression limiters: the metal sleeve that carries the clamp load through
//! plastic.

use std::f64::consts::FRAC_PI_4;

use crate::quantity::{Area, Force, Length, Pressure, System, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

const RULE: &str = "a supplier's design note: the limiter carries the whole clamp load";
const SITS_PROUD: &str = "the sleeve stands no lower than the plastic, and the head covers it";

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
        let ring = FRAC_PI_4 * (outer * outer - bore * bore);
        Area::from_inner(ring, System::of(self.outer.unit()))
    }

    fn area_line(&self) -> Working {
        Working::new().line(
            "metal of the sleeve A",
            "(π/4) × (D² - d²)",
            format!(
                "(π/4) × ({}² - {}²)",
                self.outer.amount().as_given(),
                self.bore.amount().as_given()
            ),
            self.area(),
        )
    }
}

/// Load that crushes a sleeve: F = A × Rp, N from mm2 and MPa. Source and
/// assumption as for [`limiter_load`].
pub fn limiter_capacity(limiter: &Limiter) -> Worked<Force> {
    let area = limiter.area();
    let load = area.inner() * limiter.yield_strength.inner();
    let load = Force::from_inner(load, System::of(limiter.outer.unit()));
    let working = limiter
        .area_line()
        .line(
            "load that crushes the sleeve",
            "A × Rp",
            format!("{area} × {}", limiter.yield_strength),
            load,
        )
        .source(Source::read(RULE))
        .source(limiter.source.clone())
        .assuming(SITS_PROUD);
    Worked::new(load, working)
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
        .assuming(SITS_PROUD);
    Worked::new(LimiterLoad { stress, share }, working)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sleeve_carries_all_of_the_load() {
        // Steel sleeve 12 x 8.4 mm: 57.68 mm2; 10 kN is 173.4 MPa of its 355.
        let sleeve = |outer: f64, bore: f64| {
            let strength = Pressure::megapascals(355.0);
            Limiter::new(
                Length::millimetres(outer),
                Length::millimetres(bore),
                strength,
                Source::given("a drawing"),
            )
        };
        let found = limiter_load(Force::kilonewtons(10.0), &sleeve(12.0, 8.4).unwrap()).value;
        assert!(
            (found.stress.in_megapascals() - 173.4).abs() < 0.1,
            "{}",
            found.stress
        );
        assert!((found.share - 0.4884).abs() < 0.0002);
        let most = limiter_capacity(&sleeve(12.0, 8.4).unwrap()).value;
        assert!((most.in_newtons() - 20_476.0).abs() < 5.0, "{most}");
        assert!(sleeve(8.4, 12.0).is_none());
    }
}
