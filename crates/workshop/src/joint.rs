//! A torque held against all that a joint can bear: bolt, thread in the hole,
//! thin nut, sleeve, face under the head.
//!
//! It never says what a torque should be, only whether a given one is more than
//! something in the joint carries, with the whole chain of numbers.

use crate::bearing::bearing_capacity;
use crate::class::{BoltClass, NutClass, proof_load};
use crate::preload::{Bearing, NutFactor, clamp_load, torque_for};
use crate::quantity::{Force, Pressure, System, Torque};
use crate::source::Source;
use crate::strip::{Hole, Limiter, StripProblem, limiter_capacity, strip_load};
use crate::thread::Thread;
use crate::working::{Worked, Working};

/// A joint as far as it is known. What is not known is not checked.
#[derive(Debug, Clone, PartialEq)]
pub struct Joint {
    /// The thread.
    pub thread: Thread,
    /// The class of the screw.
    pub class: Option<BoltClass>,
    /// What the screw is turned into, where it is no nut.
    pub hole: Option<Hole>,
    /// The nut, where it is one.
    pub nut: Option<NutClass>,
    /// A sleeve that carries the clamp load through plastic.
    pub limiter: Option<Limiter>,
    /// The face under the head, with the pressure that it bears.
    pub under_head: Option<(Bearing, Pressure, Source)>,
    /// The nut factor.
    pub nut_factor: NutFactor,
}

impl Joint {
    /// A joint of which only thread and nut factor are known.
    pub fn new(thread: Thread, nut_factor: NutFactor) -> Joint {
        Joint {
            thread,
            class: None,
            hole: None,
            nut: None,
            limiter: None,
            under_head: None,
            nut_factor,
        }
    }
}

/// What in a joint gives way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weakest {
    /// The screw stretches for good.
    Screw,
    /// The thread in the hole, or the insert's seat, strips.
    HoleThread,
    /// The screw's own thread strips.
    ScrewThread,
    /// The thin nut strips.
    ThinNut,
    /// The sleeve is crushed.
    Sleeve,
    /// The face under the head sinks in.
    Face,
}

/// How surely a torque passes a limit, friction being what it may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Passing {
    /// Not at the lowest nut factor.
    Never,
    /// At the lowest nut factor only.
    Perhaps,
    /// At the likely nut factor.
    Likely,
    /// Even at the highest nut factor.
    Certain,
}

/// One limit of a joint, and how a torque lies to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// What gives way.
    pub weakest: Weakest,
    /// The clamp load at which it does.
    pub load: Force,
    /// The torque that makes that load at the likely nut factor.
    pub torque: Torque,
    /// How surely the given torque passes it.
    pub passing: Passing,
    /// How the load was worked out.
    pub working: Working,
}

/// What a torque does to a joint.
#[derive(Debug, Clone, PartialEq)]
pub struct JointCheck {
    /// Clamp load at the highest, likely and lowest nut factor.
    pub loads: [Force; 3],
    /// How the likely clamp load was worked out.
    pub working: Working,
    /// The limits that could be worked out, the lowest load first.
    pub limits: Vec<Limit>,
    /// Why stripping could not be worked out, where a hole is given.
    pub not_stripping: Option<StripProblem>,
}

impl JointCheck {
    /// The most surely passed limit; of equals the one with the lowest load.
    pub fn worst(&self) -> Option<&Limit> {
        self.limits.iter().rev().max_by_key(|limit| limit.passing)
    }
}

/// Holds a torque against all that is known of a joint. `None` for a thread
/// that is not computed, and for a torque of nothing or less.
pub fn check_joint(torque: Torque, joint: &Joint) -> Option<JointCheck> {
    let diameter = joint.thread.diameter()?;
    if torque.si().is_nan() || torque.si() <= 0.0 {
        return None;
    }
    let k = &joint.nut_factor;
    let likely = clamp_load(torque, diameter, k);
    let least = clamp_load(torque, diameter, &k.at_high()).value;
    let most = clamp_load(torque, diameter, &k.at_low()).value;
    let (bearable, not_stripping) = bearable(joint);
    let mut limits: Vec<Limit> = bearable
        .into_iter()
        .map(|(weakest, load)| Limit {
            weakest,
            load: load.value,
            torque: torque_for(load.value, diameter, k)
                .value
                .shown_in(torque.unit()),
            passing: if least.exceeds(load.value) {
                Passing::Certain
            } else if likely.value.exceeds(load.value) {
                Passing::Likely
            } else if most.exceeds(load.value) {
                Passing::Perhaps
            } else {
                Passing::Never
            },
            working: load.working,
        })
        .collect();
    limits.sort_by(|a, b| a.load.si().total_cmp(&b.load.si()));
    Some(JointCheck {
        loads: [least, likely.value, most],
        working: likely.working,
        limits,
        not_stripping,
    })
}

/// Every clamp load that something in the joint bears.
fn bearable(joint: &Joint) -> (Vec<(Weakest, Worked<Force>)>, Option<StripProblem>) {
    let mut all = Vec::new();
    let mut problem = None;
    if let Some(load) = joint
        .class
        .and_then(|class| proof_load(&joint.thread, class))
    {
        all.push((Weakest::Screw, load));
    }
    match joint
        .hole
        .as_ref()
        .map(|hole| strip_load(&joint.thread, hole, joint.class))
    {
        Some(Ok(found)) => {
            all.push((Weakest::HoleThread, found.hole));
            all.extend(found.screw.map(|screw| (Weakest::ScrewThread, screw)));
        }
        Some(Err(found)) => problem = Some(found),
        None => {}
    }
    if let Some(load) = joint.nut.and_then(|nut| thin_nut(&joint.thread, nut)) {
        all.push((Weakest::ThinNut, load));
    }
    if let Some(limiter) = &joint.limiter {
        all.push((Weakest::Sleeve, limiter_capacity(limiter)));
    }
    if let Some((face, limit, source)) = &joint.under_head {
        all.push((
            Weakest::Face,
            bearing_capacity(*face, *limit, source.clone()),
        ));
    }
    (all, problem)
}

/// Load at which a thin nut strips: stress area times its stress under proof
/// load.
fn thin_nut(thread: &Thread, nut: NutClass) -> Option<Worked<Force>> {
    let (stress, source) = nut.thin_proof_stress()?;
    let area = thread.stress_area()?;
    let load = area.value.inner() * stress.inner();
    let load = Force::from_inner(load, System::of(area.value.unit()));
    let working = Working::new()
        .line(
            "load that the thin nut bears",
            "As × Sp",
            format!("{} × {stress}", area.value),
            load,
        )
        .source(source)
        .after(area.working);
    Some(Worked::new(load, working))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Length;
    use crate::strip::{Material, MaterialFamily};

    fn cover_screw() -> Joint {
        let material = Material::usual(MaterialFamily::Aluminium).unwrap();
        let hole = Hole {
            material,
            engagement: Length::millimetres(12.0),
            insert: false,
        };
        Joint {
            class: BoltClass::read("8.8", None).ok(),
            hole: Some(hole),
            ..Joint::new(Thread::read("M6").unwrap(), NutFactor::condition_unknown())
        }
    }

    fn passing(torque: f64, weakest: Weakest) -> Passing {
        let check = check_joint(Torque::newton_metres(torque), &cover_screw()).unwrap();
        check
            .limits
            .iter()
            .find(|limit| limit.weakest == weakest)
            .unwrap()
            .passing
    }

    #[test]
    fn an_m6_cover_screw_in_aluminium() {
        // 8 N.m / (0.2 x 6 mm) = 6.67 kN; proof load of an M6 8.8 is 11.67 kN.
        let check = check_joint(Torque::newton_metres(8.0), &cover_screw()).unwrap();
        assert_eq!(check.loads[1].to_string(), "6667 N");
        assert_eq!(passing(8.0, Weakest::Screw), Passing::Never);
        assert_eq!(passing(10.0, Weakest::Screw), Passing::Perhaps);
        assert_eq!(passing(16.0, Weakest::Screw), Passing::Likely);
        assert_eq!(passing(40.0, Weakest::Screw), Passing::Certain);
        assert_eq!(passing(40.0, Weakest::HoleThread), Passing::Certain);
        assert!(check_joint(Torque::newton_metres(0.0), &cover_screw()).is_none());
    }

    #[test]
    fn the_lowest_limit_stands_first_and_the_worst_is_found() {
        let check = check_joint(Torque::newton_metres(20.0), &cover_screw()).unwrap();
        assert!(
            check
                .limits
                .windows(2)
                .all(|two| two[0].load.si() <= two[1].load.si())
        );
        let worst = check.worst().unwrap();
        assert_eq!(
            (worst.weakest, worst.passing),
            (Weakest::Screw, Passing::Likely)
        );
        assert!(worst.torque.to_string().ends_with("N.m"));
        assert!(
            worst
                .working
                .to_string()
                .contains("proof load Fp = As × Sp")
        );
    }

    #[test]
    fn what_is_not_known_is_not_checked() {
        let joint = Joint::new(Thread::read("M6").unwrap(), NutFactor::condition_unknown());
        let check = check_joint(Torque::newton_metres(500.0), &joint).unwrap();
        assert!(check.limits.is_empty() && check.worst().is_none());
        let pipe = Joint::new(
            Thread::read("G 1/4").unwrap(),
            NutFactor::condition_unknown(),
        );
        assert!(check_joint(Torque::newton_metres(5.0), &pipe).is_none());
    }

    #[test]
    fn sleeve_face_and_thin_nut_count_too() {
        let sleeve = Limiter::new(
            Length::millimetres(9.0),
            Length::millimetres(6.4),
            Pressure::megapascals(235.0),
            Source::given("a drawing"),
        );
        let face = Bearing::new(Length::millimetres(10.0), Length::millimetres(6.4)).unwrap();
        let joint = Joint {
            nut: Some(NutClass::Thin04),
            limiter: sleeve,
            under_head: Some((face, Pressure::megapascals(220.0), Source::given("a table"))),
            ..cover_screw()
        };
        let check = check_joint(Torque::newton_metres(12.0), &joint).unwrap();
        let found: Vec<Weakest> = check.limits.iter().map(|limit| limit.weakest).collect();
        assert_eq!(found.len(), 6, "{found:?}");
        // 20.12 mm2 x 380 MPa = 7647 N is less than the 31.45 mm2 x 235 MPa of the sleeve.
        assert_eq!(found[..2], [Weakest::Sleeve, Weakest::ThinNut]);
    }
}
