//! A finished joint relaxed and not made good.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::demand::Why;
use crate::mend;
use crate::words;
use plan::model::{Ref, StepId};

/// The rule.
pub const RULE: Rule = Rule {
    name: "disturbed",
    severity: Severity::Error,
    statement: "A step disturbs something that was finished, and no later step makes it good.",
    reason: "The joint has relaxed or the setting has shifted, though the sheet says that it was done.",
    bad: r#"part head
part manifold
fasteners head-nuts
  4 x M10
  hold head
  torque none
fit head
tighten head-nuts
fit manifold disturbs head-nuts
"#,
    good: r#"part head
part manifold
fasteners head-nuts
  4 x M10
  hold head
  torque none
fit head
tighten head-nuts
fit manifold disturbs head-nuts
tighten head-nuts
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    let at = |s: StepId| bench.solved.at[s.0 as usize];
    for (id, step) in plan.steps() {
        for disturbed in &step.disturbs {
            let owed = bench
                .solved
                .failed
                .iter()
                .map(|d| &bench.demands[*d as usize])
                .any(|d| d.thing == disturbed.thing && matches!(d.why, Why::MustBefore(_)));
            if bench.in_doubt(disturbed.thing) || owed {
                continue;
            }
            let works: Vec<StepId> = bench.steps_that_finish(disturbed.thing);
            let Some(done) = works.iter().copied().filter(|s| at(*s) < at(id)).max_by_key(|s| at(*s)) else {
                if !bench.made_at_start(disturbed.thing) {
                    continue;
                }
                if !works.iter().any(|s| at(*s) >= at(id)) {
                    found.push(finding(bench, id, disturbed, None));
                }
                continue;
            };
            if !works.iter().any(|s| at(*s) > at(id) || *s == id) {
                found.push(finding(bench, id, disturbed, Some(done)));
            }
        }
    }
}

fn finding(bench: &Bench, id: StepId, disturbed: &Ref, done: Option<StepId>) -> Finding {
    let plan = bench.plan;
    let thing = plan.thing(disturbed.thing);
    let says = format!(
        "{} {} disturbed by this step and not made good afterwards.",
        thing.called(),
        words::is_or_are(plan, disturbed.thing)
    );
    let mut finding = Finding::new(&RULE, disturbed.place, thing.name.as_str(), words::capital(&says));
    let verb = done.map_or("tighten", |s| words::verb_word(plan.step(s).verb));
    if let Some(done) = done {
        finding = finding.because(words::step_place(plan, done), "it was finished here");
    }
    finding = finding.because(words::step_place(plan, id), "this step disturbs it");
    finding.steps = vec![id];
    if done.is_some() {
        let line = format!("{verb} {}", thing.name);
        let title = format!("Write “{line}” behind this step.");
        finding.mend = mend::step_behind(bench, id, &line, title);
    }
    finding
}
