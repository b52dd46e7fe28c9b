//! A thread tightened with no torque to tighten it to.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::joints;
use crate::rules::Rule;
use crate::words;
use plan::model::{Fasteners, Pass, Place};
use std::collections::HashSet;

/// The rule.
pub const RULE: Rule = Rule {
    name: "torque-missing",
    severity: Severity::Warning,
    statement: "A thread is tightened and the plan has no torque for it.",
    reason: "At the bench there is no time to look for it, and a figure made up on the spot strips a thread or lets a joint work loose. Nothing ever fills one in for you.",
    bad: r#"part cover
fasteners cover-screws
  6 x M6
  hold cover
  torque unknown
fit cover
tighten cover-screws
"#,
    good: r#"part cover
fasteners cover-screws
  6 x M6
  hold cover
  torque 8 N.m from "maker's sheet 3"
fit cover
tighten cover-screws
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    let mut seen = HashSet::new();
    for (step, id) in joints::tightenings(bench) {
        let thing = plan.thing(id);
        let Some(group) = thing.fasteners() else {
            continue;
        };
        let doubt = thing.uncertain || plan.step(step).uncertain;
        if doubt || !joints::threaded(group) || !seen.insert(id) {
            continue;
        }
        let Some(missing) = missing(group) else {
            continue;
        };
        let says = format!(
            "{} {} tightened here and {}: the sheet leaves a blank to fill in.",
            words::capital(thing.called()),
            words::is_or_are(plan, id),
            missing.says
        );
        let mut finding = Finding::new(
            &RULE,
            words::step_place(plan, step),
            thing.name.as_str(),
            says,
        );
        if let Some(place) = missing.place {
            finding = finding.because(place, "not known");
        }
        finding.steps = vec![step];
        found.push(finding.advice(
            "Fill it in from the maker's manual, with its source behind “from”; where nothing is measured, say “torque none”.",
        ));
    }
}

struct Missing {
    says: &'static str,
    place: Option<Place>,
}

/// What the plan does not know of a group's tightening.
fn missing(group: &Fasteners) -> Option<Missing> {
    if let Some(passes) = &group.passes {
        let unknown = passes.passes.iter().find_map(|pass| match pass {
            Pass::Torque(amount) | Pass::Turn(amount) if amount.unknown => Some(amount.place),
            _ => None,
        });
        return unknown.map(|place| Missing {
            says: "one of the passes is not known",
            place: Some(place),
        });
    }
    let Some(torque) = &group.torque else {
        return Some(Missing {
            says: "the plan gives no torque",
            place: None,
        });
    };
    let value = torque.value.as_ref()?;
    if value.unknown {
        return Some(Missing {
            says: "the torque is not known",
            place: Some(value.place),
        });
    }
    let turn = torque.then_turn.as_ref().filter(|turn| turn.unknown)?;
    Some(Missing {
        says: "the angle behind the torque is not known",
        place: Some(turn.place),
    })
}
