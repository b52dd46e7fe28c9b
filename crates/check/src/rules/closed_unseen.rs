//! Covered before its inspection or measurement.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Mend, Severity};
use crate::mend;
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;
use crate::demand::{What, Why};

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
    say::faults_with(bench, &RULE, found, |bench, standing, d| {
        take_again(bench, standing, d).or_else(|| mend::owed_first(bench, d))
    });
}

/// A reading that was taken and then disturbed is taken again behind the step that disturbed it.
fn take_again(bench: &Bench, standing: &Standing, d: u32) -> Option<Mend> {
    let demand = &bench.demands[d as usize];
    let atom = say::failing(standing, demand).first().copied()?;
    let spoilt = say::changed_by(standing, demand, atom)?;
    let What::Chain(chain, _) = atom.what else {
        return None;
    };
    let taken = bench.lives.chain(chain).acts.iter().find(|a| a.value > 0)?;
    let verb = words::verb_word(bench.plan.step(StepId(taken.step)).verb);
    let line = format!("{verb} {}", name(bench, demand.thing));
    let title = format!("Write “{line}” behind “{}”.", words::step(bench.plan, spoilt));
    mend::step_behind(bench, spoilt, &line, title)
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
            let states: Vec<String> = must
                .states
                .iter()
                .map(|s| words::state(plan, demand.thing, *s))
                .collect();
            let states = words::list(&states);
            (states, must.place)
        }
        _ => ("seen to".to_string(), demand.place),
    };
    let failing = say::failing(standing, demand);
    let later = failing
        .first()
        .and_then(|a| say::comes_later(standing, demand, a));
    let spoilt = failing
        .first()
        .and_then(|a| say::changed_by(standing, demand, a));
    let rest = match (later, comes) {
        (None, _) if spoilt.is_some() => "what was done about it has been disturbed since",
        (Some(_), "covered") => "that comes only when it is shut in",
        (Some(_), _) => "that comes only afterwards",
        (None, _) => "no step does that at all",
    };
    let mut because = vec![Because {
        place: rule,
        says: "this asks for it".into(),
    }];
    because.extend(later.map(|s| at_step(bench, s, "it comes only here")));
    if later.is_none() {
        because.extend(spoilt.map(|s| at_step(bench, s, "disturbed here")));
    }
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
