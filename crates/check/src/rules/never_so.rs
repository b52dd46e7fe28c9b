//! A condition on a state that nothing makes.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;

/// The rule.
pub const RULE: Rule = Rule {
    name: "never-so",
    severity: Severity::Error,
    statement: "A condition speaks of a state that nothing in the plan ever makes.",
    reason: "The step waits for something that never happens, so either a step is missing or the condition names the wrong thing.",
    bad: r#"part cover
part guard
  given
fit cover after guard is off
"#,
    good: r#"part cover
part guard
  given
remove guard for good
fit cover after guard is off
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults(bench, &RULE, found);
}

/// What is said of a condition that nothing ever makes true.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let atom = say::failing(standing, demand).first().copied().copied();
    let about = atom.and_then(|a| a.about);
    let text = atom.map_or(demand.place, |a| a.place);
    let says = match about {
        Some(thing) => format!(
            "This step waits for “{}”, and no step of this plan ever makes that so: {} {} as at the start.",
            say::asked(bench, demand),
            words::called(plan, thing),
            if words::is_or_are(plan, thing) == "is" { "stays" } else { "stay" },
        ),
        None => format!("This step waits for “{}”, and no step ever makes that so.", say::asked(bench, demand)),
    };
    Said {
        place: text,
        about: about.map_or_else(|| words::step(plan, step), |t| name(bench, t)),
        says,
        because: vec![at_step(bench, step, "this step waits for it")],
        advice: Some("Write the step that brings it about, or change the condition.".into()),
    }
}
