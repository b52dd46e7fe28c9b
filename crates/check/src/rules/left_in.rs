//! A temporary thing still in at the end.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::chain::presence;
use crate::demand::{What, Why};
use crate::finding::Mend;
use crate::mend;
use crate::words;
use plan::model::{StepId, ThingId};

/// The rule.
pub const RULE: Rule = Rule {
    name: "left-in",
    severity: Severity::Error,
    statement: "A temporary thing is still in at the end, or closed in.",
    reason: "A locking pin, a rag or a blanking plug that stays in wrecks the machine at its first turn.",
    bad: r#"part wheel
part locking-pin
  temporary
fit wheel
fit locking-pin
"#,
    good: r#"part wheel
part locking-pin
  temporary
fit wheel
fit locking-pin
remove locking-pin
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    for (id, thing) in plan.things() {
        if thing.temporary.is_none() || bench.in_doubt(id) {
            continue;
        }
        let chain = bench.lives.chain(bench.lives.main(id));
        let Some(last) = chain.acts.last().filter(|a| a.value != presence::OFF) else {
            continue;
        };
        let step = StepId(last.step);
        let shut: Vec<&str> = thing
            .blockers
            .iter()
            .filter(|b| bench.lives.chain(bench.lives.main(b.by)).last_value() != presence::OFF)
            .map(|b| words::called(plan, b.by))
            .collect();
        let closed = if shut.is_empty() {
            String::new()
        } else {
            format!(", closed in behind {}", words::list(&shut))
        };
        let says = format!("{} is still in when all is done{closed}: no step takes it out again.", thing.called());
        let mut finding = Finding::new(&RULE, words::step_place(plan, step), thing.name.as_str(), words::capital(&says));
        if let Some(place) = thing.temporary {
            finding = finding.because(place, "it is only there for a time");
        }
        for d in bench.missed_for(id) {
            let step = StepId(bench.demands[d as usize].step);
            finding = finding.because(words::step_place(plan, step), "it is in the way here");
        }
        finding.steps = vec![step];
        finding.mend = take_out(bench, id, step);
        if finding.mend.is_none() {
            finding.advice = Some(format!("Write “remove {}” where it has done its work.", thing.name));
        }
        found.push(finding);
    }
}

/// Takes the thing out behind the last step that needs it, or in front of the first that would
/// shut it in or wants it away.
fn take_out(bench: &Bench, id: ThingId, fitted: StepId) -> Option<Mend> {
    let plan = bench.plan;
    let at = |s: StepId| bench.solved.at[s.0 as usize];
    let main = bench.lives.main(id);
    let line = format!("remove {}", plan.thing(id).name);
    let needing = bench.demands.iter().filter(|d| {
        d.ways.iter().flat_map(|w| &w.atoms).any(|a| {
            matches!(a.what, What::Chain(c, test) if c == main && test.passes(presence::ON) && !test.passes(presence::OFF))
        }) && d.why != Why::Fresh
    });
    let last_need = needing
        .map(|d| StepId(d.step))
        .filter(|s| at(*s) > at(fitted))
        .max_by_key(|s| at(*s));
    let after = last_need.unwrap_or(fitted);
    let shuts = plan
        .thing(id)
        .blockers
        .iter()
        .flat_map(|b| &bench.lives.chain(bench.lives.main(b.by)).acts)
        .filter(|a| a.value == presence::ON)
        .map(|a| StepId(a.step));
    let first_hindered = shuts
        .chain(bench.missed_for(id).map(|d| StepId(bench.demands[d as usize].step)))
        .filter(|s| at(*s) > at(after))
        .min_by_key(|s| at(*s));
    match first_hindered {
        Some(step) => {
            let title = format!("Write “{line}” in front of “{}”.", words::step(plan, step));
            mend::step_in_front(bench, step, &line, title)
        }
        // Straight out again behind its own fitting is no sure mend: it was put there for
        // something.
        None if last_need.is_none() => None,
        None => {
            let title = format!("Write “{line}” behind “{}”.", words::step(plan, after));
            mend::step_behind(bench, after, &line, title)
        }
    }
}
