//! A joint made without its item.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Severity};
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;
use syntax::tree::Verb;

/// The rule.
pub const RULE: Rule = Rule {
    name: "not-renewed",
    severity: Severity::Error,
    statement: "A joint is made without the gasket, washer, seal or pin that belongs in it.",
    reason: "It leaks or works loose, and has to be opened again to put in what was left out.",
    bad: r#"item copper-washer
  at drain-plug
  single-use
fasteners drain-plug
  1 x M14x1.5
  torque none
tighten drain-plug
"#,
    good: r#"item copper-washer
  at drain-plug
  single-use
fasteners drain-plug
  1 x M14x1.5
  torque none
tighten drain-plug new copper-washer
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults_taken_new(bench, &RULE, found);
}

/// What is said of a joint made without its item.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let joint = words::called(plan, demand.thing);
    let atom = say::failing(standing, demand).first().copied().copied();
    let item = atom.and_then(|a| a.about);
    let called = item.map_or("its item", |t| words::called(plan, t));
    let spent = atom.and_then(|a| say::changed_by(standing, demand, &a));
    let later = atom.and_then(|a| say::comes_later(standing, demand, &a));
    let mut because = Vec::new();
    let what = match (spent, later) {
        (_, Some(later)) => {
            because.push(at_step(bench, later, "it comes only here"));
            format!("without {called}, which comes only later")
        }
        (Some(spent), None) => {
            because.push(at_step(bench, spent, "the old one was disturbed here"));
            format!("again on the old {called}")
        }
        (None, None) => format!("without {called}"),
    };
    if let Some(item) = item {
        because.push(Because {
            place: plan.thing(item).place,
            says: format!("it belongs at {joint}"),
        });
    }
    Said {
        place: words::step_place(plan, step),
        about: item.map_or_else(|| name(bench, demand.thing), |t| name(bench, t)),
        says: words::capital(&format!(
            "{joint} {} {} here {what}.",
            words::is_or_are(plan, demand.thing),
            match plan.step(step).verb {
                Verb::Lock => "locked",
                Verb::Fit => "fitted",
                _ => "tightened",
            }
        )),
        because,
        advice: None,
    }
}
