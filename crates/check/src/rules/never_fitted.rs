//! Declared and never put in.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::words;
use plan::model::{Sort, StepId, ThingId};
use std::collections::BTreeMap;

/// The rule.
pub const RULE: Rule = Rule {
    name: "never-fitted",
    severity: Severity::Error,
    statement: "A declared part, unit or group of fasteners is never put in by any step.",
    reason: "It is still on the bench when the machine is back together, or it was forgotten in the plan and will be forgotten at the bench.",
    bad: r#"part housing
part spacer
  onto housing
fit housing
"#,
    good: r#"part housing
part spacer
  onto housing
fit housing
fit spacer
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    let mut by_member: BTreeMap<&str, Vec<ThingId>> = BTreeMap::new();
    for &id in &bench.never_fitted {
        match plan.thing(id).member.as_ref() {
            Some(member) if left_out(bench, id) => {
                by_member.entry(&member.which).or_default().push(id);
            }
            _ => found.push(finding(bench, &[id])),
        }
    }
    // A member that is left out as a whole is one slip, however many things it has.
    for things in by_member.values() {
        found.push(finding(bench, things));
    }
}

/// Whether other members of the thing's series do go in.
fn left_out(bench: &Bench, id: ThingId) -> bool {
    let stem = |id: ThingId| bench.plan.thing(id).member.as_ref().map(|m| &m.stem);
    bench
        .plan
        .things()
        .any(|(other, _)| stem(other) == stem(id) && !bench.never_fitted.contains(&other))
}

fn finding(bench: &Bench, things: &[ThingId]) -> Finding {
    let plan = bench.plan;
    let first = things[0];
    let thing = plan.thing(first);
    let several = things.len() > 1 || words::is_or_are(plan, first) == "are";
    let mut names: Vec<&str> = things.iter().map(|t| words::called(plan, *t)).collect();
    let more = format!("{} more of the same member", names.len().saturating_sub(3));
    if names.len() > 4 {
        names.truncate(3);
        names.push(&more);
    }
    let says = format!(
        "{} {} still on the bench when all is done: no step {} {}.",
        words::list(&names),
        if several { "are" } else { "is" },
        puts_in(thing.sort),
        if several { "them" } else { "it" },
    );
    let mut finding = Finding::new(
        &RULE,
        thing.place,
        thing.name.as_str(),
        words::capital(&says),
    );
    for d in things.iter().flat_map(|t| bench.missed_for(*t)) {
        let demand = &bench.demands[d as usize];
        let step = StepId(demand.step);
        let place = words::step_place(plan, step);
        if !finding.because.iter().any(|b| b.place == place) {
            finding = finding.because(place, "this step needs it");
        }
        finding.steps.push(step);
    }
    finding.advice(format!(
        "Write the step that {} {}, or say “given” if {} there from the start.",
        puts_in(thing.sort),
        if several { "them" } else { "it" },
        if several { "they are" } else { "it is" },
    ))
}

fn puts_in(sort: Sort) -> &'static str {
    match sort {
        Sort::Fasteners => "puts in",
        _ => "fits",
    }
}
