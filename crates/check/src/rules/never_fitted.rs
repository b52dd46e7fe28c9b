//! Declared and never put in.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::words;
use plan::model::{Sort, StepId};

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
    for &id in &bench.never_fitted {
        let thing = plan.thing(id);
        let verb = if thing.sort == Sort::Fasteners { "puts them in" } else { "fits it" };
        let verb = if words::is_or_are(plan, id) == "is" { verb.replace("them", "it") } else { verb.to_string() };
        let says = format!("{} {} on the bench when all is done: no step {verb}.", thing.called(),
            if words::is_or_are(plan, id) == "is" { "is still" } else { "are still" });
        let mut finding = Finding::new(&RULE, thing.place, thing.name.as_str(), words::capital(&says));
        for d in bench.missed_for(id) {
            let demand = &bench.demands[d as usize];
            let step = StepId(demand.step);
            let place = words::step_place(plan, step);
            if !finding.because.iter().any(|b| b.place == place) {
                finding = finding.because(place, "this step needs it");
            }
            finding.steps.push(step);
        }
        found.push(finding.advice(format!(
            "Write the step that {}, or say “given” if {} there from the start.",
            if thing.sort == Sort::Fasteners { "tightens them" } else { "fits it" },
            if words::is_or_are(plan, id) == "is" { "it is" } else { "they are" },
        )));
    }
}
