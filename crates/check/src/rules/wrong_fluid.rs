//! A fluid that is not the one a point holds.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::mend;
use crate::rules::Rule;
use crate::words;
use syntax::tree::Verb;

/// The rule.
pub const RULE: Rule = Rule {
    name: "wrong-fluid",
    severity: Severity::Error,
    statement: "A point is filled with something else than it holds.",
    reason: "The wrong oil or brake fluid swells seals and wrecks bearings, and getting it out again means taking all of it apart.",
    bad: r#"supply gear-oil
  kind oil
supply brake-fluid
  kind brake-fluid
part brake given
part box given
point box-filler
  on box
  holds gear-oil 0.5 L
point reservoir
  on brake
  holds brake-fluid 80 mL
fill box-filler with gear-oil
fill reservoir with gear-oil
"#,
    good: r#"supply gear-oil
  kind oil
supply brake-fluid
  kind brake-fluid
part brake given
part box given
point box-filler
  on box
  holds gear-oil 0.5 L
point reservoir
  on brake
  holds brake-fluid 80 mL
fill box-filler with gear-oil
fill reservoir with brake-fluid
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    let order = bench.order();
    for (at, &id) in order.iter().enumerate() {
        let step = plan.step(id);
        if !matches!(step.verb, Verb::Fill | Verb::Prime | Verb::Bleed) || step.uncertain {
            continue;
        }
        for target in &step.targets {
            let thing = plan.thing(target.thing);
            let Some((Some(held), ..)) = thing.point().and_then(|p| p.holds.as_ref()) else {
                continue;
            };
            let wrong = step
                .uses
                .iter()
                .find(|used| used.thing != *held && plan.thing(used.thing).supply().is_some());
            let Some(used) = wrong.filter(|_| step.uses.iter().all(|u| u.thing != *held)) else {
                continue;
            };
            // What is drained again later was there to flush.
            let flushed = order[at + 1..].iter().any(|later| {
                let later = plan.step(*later);
                later.verb == Verb::Drain && drains(bench, later, target.thing)
            });
            if flushed || thing.uncertain {
                continue;
            }
            let (right, other) = (plan.thing(*held), plan.thing(used.thing));
            let says = format!(
                "{} holds {}, and this step puts {} in.",
                words::capital(thing.called()),
                right.called(),
                other.called()
            );
            let mut finding = Finding::new(&RULE, used.place, thing.name.as_str(), says)
                .because(thing.place, format!("holds {}", right.name));
            let kinds = |supply: &plan::model::Thing| supply.supply().map(|s| s.kind.clone());
            if kinds(right) == kinds(other) && kinds(right).is_some_and(|kind| !kind.is_empty()) {
                // Two of a kind: another brand or grade may be meant.
                finding.severity = Severity::Warning;
            }
            finding.steps = vec![id];
            let title = format!("Fill it with {}.", right.name);
            finding.mend = Some(mend::replace(used.place, &right.name, title));
            found.push(finding);
        }
    }
}

/// Whether a draining step empties what `point` fills: the point itself, or another on the same
/// part.
fn drains(bench: &Bench, step: &plan::model::Step, point: plan::model::ThingId) -> bool {
    let on = |id: plan::model::ThingId| {
        let parts = bench.plan.thing(id).point().map(|p| p.on.as_slice());
        parts.unwrap_or_default().iter().map(|on| on.thing)
    };
    step.targets.iter().any(|drained| {
        drained.thing == point || on(drained.thing).any(|part| on(point).any(|own| own == part))
    })
}
