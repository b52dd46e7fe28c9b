//! Covered before its inspection or measurement.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Severity};
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;
use crate::demand::Why;

/// The rule.
pub const RULE: Rule = Rule {
    name: "closed-unseen",
    severity: Severity::Error,
    statement: "Something is covered before it was measured, inspected or otherwise seen to as its standing rule asks.",
    reason: "Once it is covered nobody can tell, and to find out the cover and its seal have to come off again.",
    bad: r#"part gears
part cover
  covers gears
point backlash
  on gears
  must be measured before gears are covered
fit gears
fit cover
remove cover
measure backlash
fit cover
"#,
    good: r#"part gears
part cover
  covers gears
point backlash
  on gears
  must be measured before gears are covered
fit gears
measure backlash
fit cover
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults(bench, &RULE, found);
}

/// What is said of something covered before it was seen to.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    owed(bench, standing, d, "covered")
}

/// The sentence for a standing rule whose state is still owed when its condition comes true.
pub fn owed(bench: &Bench, standing: &Standing, d: u32, comes: &str) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let thing = words::called(plan, demand.thing);
    let (states, rule) = match demand.why {
        Why::MustBefore(n) => {
            let must = &plan.thing(demand.thing).must[n as usize];
            let text = plan.text(must.place);
            let states = text
                .strip_prefix("must be ")
                .and_then(|t| t.split(" before ").next())
                .unwrap_or("seen to");
            (states.to_string(), must.place)
        }
        _ => ("seen to".to_string(), demand.place),
    };
    let failing = say::failing(standing, demand);
    let later = failing
        .first()
        .and_then(|a| say::comes_later(standing, demand, a));
    let rest = match (later, comes) {
        (Some(_), "covered") => "that comes only when it is shut in",
        (Some(_), _) => "that comes only afterwards",
        (None, _) => "no step does that at all",
    };
    let mut because = vec![Because {
        place: rule,
        says: "this asks for it".into(),
    }];
    because.extend(later.map(|s| at_step(bench, s, "it comes only here")));
    Said {
        place: words::step_place(plan, step),
        about: name(bench, demand.thing),
        says: words::capital(&format!(
            "From this step on it is too late: {thing} must be {states} first, and {rest}.",
        )),
        because,
        advice: Some(format!("Write the step by which {thing} is {states} in front of this one.")),
    }
}
