//! Heat that a supply already in place does not bear.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::words;
use plan::model::{Plan, Step, StepId, ThingId, To};
use syntax::tree::Verb;
use workshop::quantity::{Dimension, Measure};

/// The rule.
pub const RULE: Rule = Rule {
    name: "too-hot",
    severity: Severity::Error,
    statement: "Something is heated beyond what the sealant or threadlocker already on it bears.",
    reason: "It softens or burns out of the joint, which looks as before and holds no longer.",
    bad: r#"supply threadlock
  kind threadlocker medium
  good to 150 C
part hub
part bearing onto hub
fasteners hub-screws
  4 x M6
  hold hub
  torque 8 N.m from "maker's sheet 2"
fit hub
tighten hub-screws use threadlock
heat hub to 180 C
fit bearing
"#,
    good: r#"supply threadlock
  kind threadlocker medium
  good to 150 C
part hub
part bearing onto hub
fasteners hub-screws
  4 x M6
  hold hub
  torque 8 N.m from "maker's sheet 2"
fit hub
tighten hub-screws use threadlock
heat hub to 110 C
fit bearing
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    let order = bench.order();
    for (at, &heating) in order.iter().enumerate() {
        let step = plan.step(heating);
        let Some(To::Amount(to)) = &step.to else {
            continue;
        };
        let Some(hot) = to
            .measure
            .as_ref()
            .filter(|m| m.dimension() == Dimension::Temperature)
        else {
            continue;
        };
        if step.verb != Verb::Heat || step.uncertain {
            continue;
        }
        for (earlier, &applying) in order[..at].iter().enumerate() {
            for (supply, on) in applied(bench, applying) {
                let named = plan.thing(supply);
                let Some(limit) = named.supply().and_then(|s| s.good_to.as_ref()) else {
                    continue;
                };
                let Some(bears) = limit.measure.as_ref() else {
                    continue;
                };
                let heated = step
                    .targets
                    .iter()
                    .find(|heated| touches(plan, on, heated.thing));
                let Some(heated) = heated else { continue };
                let undone_between = order[earlier + 1..at].iter().any(|s| undoes(bench, *s, on));
                // Heat that comes just before the joint is undone is how it is undone.
                let next = order[at + 1..].iter().find(|s| works_at(bench, **s, on));
                let to_undo = next.is_some_and(|s| undoes(bench, *s, on));
                if hottest(hot) <= bears.high().si() || undone_between || to_undo {
                    continue;
                }
                let says = format!(
                    "{} bears {} at most, and it is on {} when {} is heated to {}.",
                    words::capital(named.called()),
                    limit.text,
                    words::called(plan, on),
                    words::called(plan, heated.thing),
                    to.text
                );
                let mut finding = Finding::new(
                    &RULE,
                    to.place,
                    plan.thing(heated.thing).name.as_str(),
                    says,
                )
                .because(words::step_place(plan, applying), "it goes on here")
                .because(limit.place, "what it bears");
                finding.steps = vec![heating];
                found.push(
                    finding.advice(
                        "Heat first and put it on afterwards, or take one that bears more.",
                    ),
                );
            }
        }
    }
}

/// The supplies that a step puts on, and on what.
fn applied(bench: &Bench, id: StepId) -> Vec<(ThingId, ThingId)> {
    let step: &Step = bench.plan.step(id);
    let supplies: Vec<ThingId> = match step.verb {
        Verb::Apply => step.targets.iter().map(|t| t.thing).collect(),
        Verb::Fit | Verb::Start | Verb::Snug | Verb::Tighten => {
            step.uses.iter().map(|t| t.thing).collect()
        }
        _ => Vec::new(),
    };
    let on: Vec<ThingId> = match (&step.verb, &step.to) {
        (Verb::Apply, Some(To::Things(on))) => on.iter().map(|t| t.thing).collect(),
        _ => bench.lives.targets[id.0 as usize]
            .iter()
            .map(|t| t.thing)
            .collect(),
    };
    supplies
        .into_iter()
        .flat_map(|supply| on.iter().map(move |on| (supply, *on)))
        .collect()
}

/// Whether what is on `on` gets hot with `heated`.
fn touches(plan: &Plan, on: ThingId, heated: ThingId) -> bool {
    let thing = plan.thing(on);
    let held = thing
        .fasteners()
        .is_some_and(|f| f.hold.iter().any(|h| h.thing == heated));
    let point = thing
        .point()
        .is_some_and(|p| p.on.iter().any(|o| o.thing == heated));
    on == heated || held || point
}

fn works_at(bench: &Bench, step: StepId, thing: ThingId) -> bool {
    bench.lives.targets[step.0 as usize]
        .iter()
        .any(|t| t.thing == thing)
}

fn undoes(bench: &Bench, step: StepId, thing: ThingId) -> bool {
    matches!(
        bench.plan.step(step).verb,
        Verb::Undo | Verb::Slacken | Verb::Remove | Verb::Unlock
    ) && works_at(bench, step, thing)
}

/// How hot it gets for certain: where only the least is said, that.
fn hottest(measure: &Measure) -> f64 {
    if measure.is_bound() {
        measure.middle().si()
    } else {
        measure.high().si()
    }
}
