//! Declared and never used.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::words;
use plan::model::{Body, Sort};

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
}
