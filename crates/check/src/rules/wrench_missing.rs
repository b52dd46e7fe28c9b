//! A torque that no torque wrench on the list reaches.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::joints;
use crate::rules::Rule;
use crate::words;
use plan::model::ThingId;
use std::collections::HashSet;
use workshop::tightening::{Reach, Wrench};

/// The rule.
pub const RULE: Rule = Rule {
    name: "wrench-missing",
    severity: Severity::Warning,
    statement: "The plan lists the torque wrenches at hand, and none of them reaches a torque.",
    reason: "That a wrench has to be borrowed is better known before the joint lies open with sealant on it.",
    bad: r#"part hub
fasteners hub-nut
  1 x M20
  hold hub
  torque 250 N.m from "maker's sheet 7"
tool small-wrench
  kind torque-wrench
  range 5..25 N.m
  have
tool middle-wrench
  kind torque-wrench
  range 20..110 N.m
  have
fasteners clamp-screw
  1 x M6
  hold hub
  torque 8 N.m from "maker's sheet 7"
fasteners cap-screws
  4 x M8
  hold hub
  torque 22 N.m from "maker's sheet 7"
fit hub
tighten hub-nut
tighten clamp-screw with small-wrench
tighten cap-screws with middle-wrench
"#,
    good: r#"part hub
fasteners hub-nut
  1 x M20
  hold hub
  torque 250 N.m from "maker's sheet 7"
tool small-wrench
  kind torque-wrench
  range 5..25 N.m
  have
tool large-wrench
  kind torque-wrench
  range 60..330 N.m
fasteners clamp-screw
  1 x M6
  hold hub
  torque 8 N.m from "maker's sheet 7"
fit hub
tighten hub-nut with large-wrench
tighten clamp-screw with small-wrench
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    let wrenches: Vec<(ThingId, bool, Wrench)> = plan
        .things()
        .filter_map(|(id, _)| {
            let (tool, wrench) = joints::wrench(plan, id)?;
            Some((id, tool.have, wrench))
        })
        .collect();
    // One wrench that a plan speaks of need not be all there are. Two, or one that is said to be
    // on the shelf, are a list.
    if wrenches.len() < 2 && !wrenches.iter().any(|(_, have, _)| *have) {
        return;
    }
    let mut seen = HashSet::new();
    for (step, id) in joints::tightenings(bench) {
        let thing = plan.thing(id);
        // A step that names its wrench is judged by that one.
        let named = plan
            .step(step)
            .with
            .iter()
            .any(|tool| joints::wrench_of(plan, tool).is_some());
        let Some(group) = thing.fasteners() else {
            continue;
        };
        if named || thing.uncertain || !seen.insert(id) {
            continue;
        }
        let Some(wanted) = joints::torques(group)
            .into_iter()
            .find(|wanted| wanted.last)
        else {
            continue;
        };
        let reached = |wrench: &Wrench| {
            !matches!(
                wrench.reach(wanted.torque),
                Reach::TooSmall | Reach::TooLarge
            )
        };
        if wrenches.iter().any(|(_, _, wrench)| reached(wrench)) {
            continue;
        }
        let says = format!(
            "{} {} {}, and none of the torque wrenches on the list can be relied on there.",
            words::capital(thing.called()),
            if group.count == Some(1) {
                "wants"
            } else {
                "want"
            },
            wanted.amount.text
        );
        let mut finding = Finding::new(&RULE, wanted.amount.place, thing.name.as_str(), says);
        for (wrench_id, _, wrench) in &wrenches {
            finding = finding.because(
                plan.thing(*wrench_id).place,
                format!("from {} to {}", wrench.low(), wrench.high()),
            );
        }
        finding.steps = vec![step];
        found.push(finding.advice("Borrow one that reaches it, and put it on the list."));
    }
}
