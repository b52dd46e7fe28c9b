//! A single-use thing disturbed and used again.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Severity};
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;

/// The rule.
pub const RULE: Rule = Rule {
    name: "used-twice",
    severity: Severity::Error,
    statement: "A single-use thing was disturbed and is used again.",
    reason: "A stretched bolt, a crushed washer or a split pin does its work once; the second time it leaks, loosens or breaks.",
    bad: r#"part pulley
fasteners pulley-bolt
  1 x M12
  hold pulley
  torque none
  single-use
fit pulley
tighten pulley-bolt
undo pulley-bolt
tighten pulley-bolt
"#,
    good: r#"part pulley
fasteners pulley-bolt
  1 x M12
  hold pulley
  torque none
  single-use
fit pulley
tighten pulley-bolt
undo pulley-bolt
tighten pulley-bolt new pulley-bolt
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults_taken_new(bench, &RULE, found);
    for (id, step) in bench.plan.steps() {
        for (old, reason) in &step.olds {
            let thing = bench.plan.thing(old.thing);
            if let Some(place) = thing.single_use
                && reason.is_none()
            {
                let says = format!(
                    "{} {} made for one use, and this step uses the old one again without a reason.",
                    words::capital(thing.called()),
                    words::is_or_are(bench.plan, old.thing)
                );
                let mut finding = Finding::new(&RULE, old.place, thing.name.as_str(), says)
                    .because(place, "made for one use")
                    .advice("Take a new one, or write the reason behind it: because \"…\".");
                finding.steps = vec![id];
                found.push(finding);
            }
        }
    }
}

/// What is said of a single-use thing that is used again.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let atom = say::failing(standing, demand).first().copied();
    let spent = atom.and_then(|a| say::changed_by(standing, demand, a));
    // What is spent is the joint's own fastener or part, or an item in it.
    let thing = atom.and_then(|a| a.about).unwrap_or(demand.thing);
    let mut because: Vec<Because> = spent
        .map(|s| at_step(bench, s, "spent here"))
        .into_iter()
        .collect();
    because.push(Because {
        place: demand.place,
        says: "made for one use".into(),
    });
    let called = words::called(plan, thing);
    let says = if thing == demand.thing {
        format!(
            "{called} {} made for one use and already spent when this step uses {} again.",
            words::is_or_are(plan, thing),
            words::verb(plan, thing, "it", "them"),
        )
    } else {
        format!(
            "No new {called} here: the old {}, made for one use, {} spent by now.",
            words::verb(plan, thing, "one", "ones"),
            words::is_or_are(plan, thing),
        )
    };
    Said {
        place: words::step_place(plan, step),
        about: name(bench, thing),
        says: words::capital(&says),
        because,
        advice: None,
    }
}
