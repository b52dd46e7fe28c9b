//! A temporary thing still in at the end.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::chain::presence;
use crate::words;
use plan::model::StepId;

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
        if thing.temporary.is_none() || thing.uncertain {
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
        found.push(finding.advice(format!("Write “remove {}” where it has done its work.", thing.name)));
    }
}
