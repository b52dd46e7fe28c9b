//! Final-tightened while it must still float.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Severity};
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;

/// The rule.
pub const RULE: Rule = Rule {
    name: "tight-too-soon",
    severity: Severity::Error,
    statement: "Something is tightened for good while it must still be free to move.",
    reason: "What has not settled into line yet is clamped where it happens to be; what comes next then does not fit, or pulls it crooked, and the joint has to be slackened and done again.",
    bad: r#"part pipe
part bracket
fasteners clamp-bolts
  2 x M8
  hold bracket
  torque none
  floats until pipe is fitted
fit bracket
tighten clamp-bolts
fit pipe
"#,
    good: r#"part pipe
part bracket
fasteners clamp-bolts
  2 x M8
  hold bracket
  torque none
  floats until pipe is fitted
fit bracket
start clamp-bolts
fit pipe
tighten clamp-bolts
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults(bench, &RULE, found);
}

/// What is said of a final tightening that comes while things must still float.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let thing = words::called(plan, demand.thing);
    let mut because = vec![Because {
        place: demand.place,
        says: format!("{thing} must stay free to move until then"),
    }];
    for atom in say::failing(standing, demand) {
        if let Some(later) = say::comes_later(standing, demand, atom) {
            because.push(at_step(bench, later, "that comes only here"));
        }
    }
    let held: Vec<&str> = plan
        .thing(demand.thing)
        .fasteners()
        .map(|f| f.hold.iter().map(|h| words::called(plan, h.thing)).collect())
        .unwrap_or_default();
    let clamped = if held.is_empty() {
        String::new()
    } else {
        format!(", and then {} can no longer be moved", words::list(&held))
    };
    Said {
        place: words::step_place(plan, step),
        about: name(bench, demand.thing),
        says: words::capital(&format!(
            "{thing} {} tightened for good here but must float until {}{}{clamped}.",
            words::is_or_are(plan, demand.thing),
            say::asked(bench, demand),
            say::writers_reason(demand),
        )),
        because,
        advice: Some(format!("Only start {thing} here, and tighten after that.")),
    }
}
