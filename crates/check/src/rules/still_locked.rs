//! Undone, slackened or tightened while still locked.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;
use crate::mend;
use syntax::tree::Verb;

/// The rule.
pub const RULE: Rule = Rule {
    name: "still-locked",
    severity: Severity::Error,
    statement: "Fasteners are undone, slackened or tightened while they are still locked.",
    reason: "The pin shears, the tab tears or the wire cuts the thread; and what was locked once is spent.",
    bad: r#"plan "Hub off"
  starts assembled
part hub
fasteners hub-nut
  1 x M20x1.5
  hold hub
  locked by "tab washer"
undo hub-nut
remove hub
"#,
    good: r#"plan "Hub off"
  starts assembled
part hub
fasteners hub-nut
  1 x M20x1.5
  hold hub
  locked by "tab washer"
unlock hub-nut
undo hub-nut
remove hub
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let before = found.len();
    say::faults(bench, &RULE, found);
    for finding in &mut found[before..] {
        if finding.mend.is_none()
            && let Some(step) = finding.steps.first().copied()
        {
            let unlock = format!("unlock {}", finding.about);
            if bench.plan.step(step).verb == Verb::Tighten {
                // What is turned tighter has to be locked again.
                let lock = format!("lock {}", finding.about);
                let title = format!("Write “{unlock}” in front of this step and “{lock}” behind it.");
                let front = mend::step_in_front(bench, step, &unlock, title);
                let behind = mend::step_behind(bench, step, &lock, String::new());
                finding.mend = front.zip(behind).map(|(mut mend, behind)| {
                    mend.edits.extend(behind.edits);
                    mend
                });
            } else {
                let title = format!("Write “{unlock}” in front of this step.");
                finding.mend = mend::step_in_front(bench, step, &unlock, title);
            }
        }
    }
}

/// What is said of turning what is still locked.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let thing = words::called(plan, demand.thing);
    let locked = say::failing(standing, demand)
        .first()
        .and_then(|a| say::changed_by(standing, demand, a));
    let since = if locked.is_some() { "" } else { " from the start" };
    Said {
        place: words::step_place(plan, step),
        about: name(bench, demand.thing),
        says: words::capital(&format!(
            "{thing} {} still locked{since} when this step turns {}.",
            words::is_or_are(plan, demand.thing),
            if words::is_or_are(plan, demand.thing) == "is" { "it" } else { "them" },
        )),
        because: locked.map(|s| at_step(bench, s, "locked here")).into_iter().collect(),
        advice: None,
    }
}
