//! The sample that the language is explained with.

use plan::model::{Body, CounterholdBy};
use workshop::quantity::Dimension;

use crate::{clauses, good, names, thing};

/// The text.
pub const SAMPLE: &str = include_str!("../../../../tests/plans/sample.rebuild");

#[test]
fn the_sample_resolves_without_a_problem() {
    let plan = good(SAMPLE);
    assert_eq!(plan.steps.len(), 18);
    assert_eq!(plan.stages.len(), 2);
    assert_eq!(plan.stages[0].title.text, "Front end");
    assert_eq!(
        (plan.stages[0].steps.0.0, plan.stages[1].steps.1.0),
        (0, 18)
    );
    assert_eq!(plan.heading.people, Some(1));
    assert!(!plan.heading.assembled);
    // No step asks for the small wrench, and none drains the block.
    let unmentioned: Vec<&str> = plan
        .unmentioned
        .iter()
        .map(|(name, _)| name.as_str())
        .collect();
    assert_eq!(unmentioned, ["small-wrench", "block-drain"]);
}

#[test]
fn what_the_sample_says_is_in_the_plan() {
    let plan = good(SAMPLE);
    let bolt = thing(&plan, "pulley-bolt");
    let group = bolt.fasteners().unwrap();
    assert_eq!(names(&plan, &group.hold), ["crank-pulley"]);
    assert_eq!(group.thread.as_ref().unwrap().text, "M14x1.5");
    assert_eq!(group.count, Some(1));
    let torque = group.torque.as_ref().unwrap();
    let value = torque.value.as_ref().unwrap().measure.as_ref().unwrap();
    assert_eq!(value.dimension(), Dimension::Torque);
    assert_eq!(torque.source.as_ref().unwrap().text, "maker's sheet 3");
    assert_eq!(clauses(&plan, &bolt.needs[0].clauses), ["crank-pin Fitted"]);
    assert_eq!(
        bolt.needs[0].because.as_deref(),
        Some("nothing else stops the crank turning")
    );
    assert!(!matches!(group.counterhold, Some(CounterholdBy::Part(_))));

    let unknown = thing(&plan, "drain-plug").fasteners().unwrap();
    assert!(
        unknown
            .torque
            .as_ref()
            .unwrap()
            .value
            .as_ref()
            .unwrap()
            .unknown
    );

    let screw = thing(&plan, "bleed-screw");
    assert_eq!(screw.ways.len(), 2);
    assert_eq!(
        names(&plan, &screw.ways[1].clear_of),
        ["alternator-bracket", "belt"]
    );
    assert_eq!(screw.ways[0].tools[0].kind.as_deref(), Some("socket"));
    assert_eq!(screw.ways[0].tools[0].size.as_deref(), Some("11 mm"));
    let holds = screw.point().unwrap().holds.as_ref().unwrap();
    assert_eq!(
        holds.0.map(|id| plan.thing(id).name.as_str()),
        Some("coolant")
    );

    let gears = thing(&plan, "timing-gears");
    assert_eq!(gears.blockers.len(), 1);
    let backlash = thing(&plan, "gear-backlash");
    assert_eq!(plan.thing(backlash.blockers[0].by).name, "timing-cover");
    assert_eq!(
        backlash.blockers[0]
            .through
            .map(|id| plan.thing(id).name.as_str()),
        Some("timing-gears")
    );
    assert!(matches!(
        thing(&plan, "drain-washer").body,
        Body::Item { .. }
    ));
}
