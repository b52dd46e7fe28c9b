//! Declared and never used.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::words;
use plan::model::{Body, Plan, Sort, StepId, Subject};
use std::collections::HashSet;

/// The rule.
pub const RULE: Rule = Rule {
    name: "unused",
    severity: Severity::Hint,
    statement: "Something is declared and nothing in the plan ever uses it.",
    reason: "It may be a step that was forgotten: a supply never applied, a point never reached, an item that belongs to no joint.",
    bad: r#"part cover
supply grease
fit cover
"#,
    good: r#"part cover
supply grease
fit cover
apply grease to cover
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    if plan.steps.is_empty() {
        return;
    }
    for (name, place) in &plan.unmentioned {
        if place.file.0 != 0 {
            // A shared library offers more than one plan takes from it.
            continue;
        }
        let thing = plan.things.iter().find(|t| t.place == *place);
        let silent = match thing {
            None => false,
            Some(t) if t.uncertain => true,
            Some(t) => match t.sort {
                // Tools are a list of what is on the shelf; what is never fitted has a rule of
                // its own.
                Sort::Tool | Sort::Unit | Sort::Fasteners => true,
                Sort::Part => t.temporary.is_none(),
                Sort::Point => {
                    t.given.is_some()
                        || !t.must.is_empty()
                        || t.point().is_some_and(|p| p.service.is_some() || !p.closed_by.is_empty())
                }
                Sort::Item => matches!(&t.body, Body::Item { at, .. } if !at.is_empty()),
                Sort::Supply | Sort::Position => false,
            },
        };
        if silent {
            continue;
        }
        let called = thing.map_or(name.as_str(), |t| t.called());
        let says = format!("{} is declared here, and nothing in the plan uses it.", words::capital(called));
        found.push(Finding::new(&RULE, *place, name.as_str(), says));
    }
    let asked_for = steps_asked_for(plan);
    for (id, step) in plan.steps() {
        if let Some(name) = step.name.as_ref().filter(|_| !asked_for.contains(&id)) {
            let says = format!("No condition asks for the step called {}.", name.text);
            found.push(Finding::new(&RULE, name.place, name.text.as_str(), says));
        }
    }
}

/// The steps that some condition speaks of by name.
fn steps_asked_for(plan: &Plan) -> HashSet<StepId> {
    let of_steps = plan.steps.iter().flat_map(|s| {
        let lags = s.lags.iter().map(|l| &l.after);
        s.after.iter().chain(&s.before).chain(lags)
    });
    let of_things = plan.things.iter().flat_map(|t| {
        let musts = t.must.iter().map(|m| &m.condition);
        let floats = t.fasteners().into_iter().flat_map(|f| &f.floats_until);
        let ways = t.ways.iter().map(|w| &w.needs);
        t.needs.iter().chain(musts).chain(floats).chain(ways)
    });
    of_steps
        .chain(of_things)
        .flat_map(|c| &c.clauses)
        .filter_map(|c| match &c.subject {
            Subject::Steps(steps) => Some(steps),
            Subject::Thing(_) => None,
        })
        .flatten()
        .copied()
        .collect()
}
