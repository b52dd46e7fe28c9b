//! The load at which a threaded joint strips.

use super::area::{hole_area, screw_area, simplified_hole_area};
use super::insert::insert_area;
use super::material::{Material, MaterialFamily, SHEAR_OF_TENSILE};
use crate::class::BoltClass;
use crate::quantity::{Force, Length, System};
use crate::thread::Thread;
use crate::working::{Worked, Working};

/// What a screw is turned into.
#[derive(Debug, Clone, PartialEq)]
pub struct Hole {
    /// What it is cut in.
    pub material: Material,
    /// Length of full thread engaged.
    pub engagement: Length,
    /// Whether a wire thread insert is fitted.
    pub insert: bool,
}

/// The loads at which a joint strips, on either side of the thread.
#[derive(Debug, Clone, PartialEq)]
pub struct Stripping {
    /// Load at which the hole's thread, or the insert's seat, shears.
    pub hole: Worked<Force>,
    /// Load at which the screw's thread shears; none where the limits of the
    /// thread or the strength of the screw are not known.
    pub screw: Option<Worked<Force>>,
}

impl Stripping {
    /// The lower of the two loads: that at which the joint gives way.
    pub fn load(&self) -> &Worked<Force> {
        let lower = self
            .screw
            .as_ref()
            .filter(|screw| self.hole.value.exceeds(screw.value));
        lower.unwrap_or(&self.hole)
    }

    /// Whether the hole gives way before the screw's thread.
    pub fn hole_goes_first(&self) -> bool {
        self.screw
            .as_ref()
            .is_none_or(|screw| !self.hole.value.exceeds(screw.value))
    }
}

/// Why no stripping load can be worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StripProblem {
    /// The thread is known by name only.
    ThreadNotComputed,
    /// A screw into plastic: no limit is published. It wants a metal insert
    /// with a load of its own, or a limiter that takes the clamp load.
    Plastic,
    /// No engagement, or less than none.
    NoEngagement,
}

impl StripProblem {
    /// The problem in plain words.
    pub fn describe(self) -> &'static str {
        match self {
            StripProblem::ThreadNotComputed => {
                "this family of threads is known here by name only; nothing is worked out for it"
            }
            StripProblem::Plastic => {
                "no strength of threads in plastic is published; use a metal sleeve that takes the clamp load, and the part maker's torque"
            }
            StripProblem::NoEngagement => "the screw does not reach into the hole",
        }
    }
}

/// The load at which a screw strips out of a hole: strip area times shear
/// strength, for the hole and, where the class is known, for the screw
/// (FED-STD-H28/2B App. B). With an insert the hole's thread is the larger one
/// that the insert sits in.
///
/// # Errors
/// See [`StripProblem`].
pub fn strip_load(
    thread: &Thread,
    hole: &Hole,
    class: Option<BoltClass>,
) -> Result<Stripping, StripProblem> {
    if hole.engagement.si().is_nan() || hole.engagement.si() <= 0.0 {
        return Err(StripProblem::NoEngagement);
    }
    if hole.material.family() == MaterialFamily::Plastic {
        return Err(StripProblem::Plastic);
    }
    Ok(Stripping {
        hole: hole_load(thread, hole).ok_or(StripProblem::ThreadNotComputed)?,
        screw: class.and_then(|class| screw_load(thread, hole.engagement, class)),
    })
}

/// What the hole's thread carries.
fn hole_load(thread: &Thread, hole: &Hole) -> Option<Worked<Force>> {
    let pitch = thread.profile()?.pitch;
    let area = match (thread.limits(), hole.insert) {
        (_, true) => insert_area(thread, hole.engagement)?,
        (Some(limits), false) => hole_area(pitch, &limits, hole.engagement),
        (None, false) => simplified_hole_area(thread, hole.engagement)?,
    };
    let shear = hole.material.shear();
    let load = Force::from_inner(area.value.inner() * shear.inner(), System::of(pitch.unit()));
    let mut working = Working::new()
        .line(
            "load at which the hole strips",
            "ASn × shear strength",
            format!("{} × {shear}", area.value),
            load,
        )
        .source(hole.material.source().clone())
        .after(area.working);
    for assumption in hole.material.assumptions() {
        working = working.assuming(assumption);
    }
    Some(Worked::new(load, working))
}

/// What the screw's thread carries.
fn screw_load(thread: &Thread, engagement: Length, class: BoltClass) -> Option<Worked<Force>> {
    let profile = thread.profile()?;
    let strength = class.strength(profile.diameter)?;
    let area = screw_area(profile.pitch, &thread.limits()?, engagement);
    let shear = strength.tensile.inner() * SHEAR_OF_TENSILE;
    let load = Force::from_inner(area.value.inner() * shear, System::of(profile.pitch.unit()));
    let working = Working::new()
        .line(
            "load at which the screw strips",
            "ASs × 0.6 × tensile strength",
            format!("{} × {SHEAR_OF_TENSILE} × {}", area.value, strength.tensile),
            load,
        )
        .assuming(format!(
            "the screw shears at {SHEAR_OF_TENSILE} of its tensile strength (common practice, no source)"
        ))
        .source(strength.source)
        .after(area.working);
    Some(Worked::new(load, working))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Pressure;
    use crate::source::Source;

    fn hole(family: MaterialFamily, engagement: f64) -> Hole {
        let material = Material::usual(family).unwrap_or_else(|| {
            Material::from_shear(
                family,
                "a resin",
                Pressure::megapascals(50.0),
                Source::given("a note"),
            )
        });
        Hole {
            material,
            engagement: Length::millimetres(engagement),
            insert: false,
        }
    }

    #[test]
    fn soft_holes_strip_first_and_hard_ones_last() {
        let m8 = Thread::read("M8").unwrap();
        let class = BoltClass::read("8.8", None).ok();
        let soft = strip_load(&m8, &hole(MaterialFamily::Aluminium, 12.0), class).unwrap();
        assert!(soft.hole_goes_first());
        let hard = Material::from_tensile(
            MaterialFamily::Steel,
            "hardened steel",
            Pressure::megapascals(1200.0),
            Source::given("a note"),
        );
        let hard = Hole {
            material: hard,
            engagement: Length::millimetres(12.0),
            insert: false,
        };
        let hard = strip_load(&m8, &hard, class).unwrap();
        assert!(!hard.hole_goes_first());
        assert_eq!(Some(hard.load()), hard.screw.as_ref());
    }

    /// 134.63 mm2 x 1.5 at 125 MPa, against 21.2 kN of proof load of an M8 8.8.
    #[test]
    fn m8_in_aluminium_one_and_a_half_diameters_deep() {
        let m8 = Thread::read("M8").unwrap();
        let material = Material::from_shear(
            MaterialFamily::Aluminium,
            "an alloy",
            Pressure::megapascals(125.0),
            Source::given("a note"),
        );
        let hole = Hole {
            material,
            engagement: Length::millimetres(12.0),
            insert: false,
        };
        let found = strip_load(&m8, &hole, None).unwrap();
        assert!(
            (found.load().value.in_newtons() - 25_243.0).abs() < 2.0,
            "{}",
            found.load().value
        );
    }

    #[test]
    fn an_insert_carries_more_than_the_bare_hole() {
        let m8 = Thread::read("M8").unwrap();
        let bare = hole(MaterialFamily::Aluminium, 12.0);
        let lined = Hole {
            insert: true,
            ..bare.clone()
        };
        let load = |hole: &Hole| strip_load(&m8, hole, None).unwrap().load().value;
        assert!(load(&lined).exceeds(load(&bare)));
    }

    #[test]
    fn what_cannot_be_worked_out_is_said() {
        let m8 = Thread::read("M8").unwrap();
        let pipe = Thread::read("G 1/4").unwrap();
        let problem = |thread: &Thread, hole: Hole| strip_load(thread, &hole, None).unwrap_err();
        assert_eq!(
            problem(&m8, hole(MaterialFamily::Plastic, 12.0)),
            StripProblem::Plastic
        );
        assert_eq!(
            problem(&m8, hole(MaterialFamily::Steel, 0.0)),
            StripProblem::NoEngagement
        );
        assert_eq!(
            problem(&pipe, hole(MaterialFamily::Steel, 9.0)),
            StripProblem::ThreadNotComputed
        );
    }
}
