//! A tightening pattern that misses or repeats a fastener.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::words;
use workshop::tightening::pattern::{OrderProblem, check_order};

/// The rule.
pub const RULE: Rule = Rule {
    name: "pattern-incomplete",
    severity: Severity::Error,
    statement: "A pattern in numbers misses a fastener, or names one twice or one that is not there.",
    reason: "Whoever follows the numbers leaves one screw at hand tightness, and that is where it leaks.",
    bad: r#"part cover
fasteners cover-screws
  4 x M6
  hold cover
  torque 8 N.m from "maker's sheet 3"
  pattern 1, 3, 2
fit cover
tighten cover-screws
"#,
    good: r#"part cover
fasteners cover-screws
  4 x M6
  hold cover
  torque 8 N.m from "maker's sheet 3"
  pattern 1, 3, 2, 4
fit cover
tighten cover-screws
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    for thing in &bench.plan.things {
        let Some(group) = thing.fasteners() else {
            continue;
        };
        let Some((order, _, place)) = &group.pattern else {
            continue;
        };
        let numbers: Option<Vec<usize>> = order.iter().map(|word| word.parse().ok()).collect();
        let Some(numbers) = numbers.filter(|numbers| !numbers.is_empty()) else {
            continue;
        };
        if thing.uncertain {
            continue;
        }
        let said = group.count.map(|count| count as usize);
        // Far above any real pattern, so that a slip of the pen makes no list of a million.
        let count = said.or_else(|| numbers.iter().max().copied()).unwrap_or(0);
        if count > workshop::tightening::pattern::MOST {
            continue;
        }
        let problems = check_order(&numbers, count);
        if problems.is_empty() {
            continue;
        }
        let (mut missing, mut twice, mut none) = (Vec::new(), Vec::new(), Vec::new());
        for problem in &problems {
            match problem {
                OrderProblem::Missing(n) => missing.push(n.to_string()),
                OrderProblem::Repeated(n) => twice.push(n.to_string()),
                OrderProblem::NoSuch(n) => none.push(n.to_string()),
            }
        }
        let mut parts = Vec::new();
        if !missing.is_empty() {
            parts.push(format!("never comes to {}", words::list(&missing)));
        }
        if !twice.is_empty() {
            parts.push(format!("comes to {} twice", words::list(&twice)));
        }
        if !none.is_empty() {
            parts.push(format!("names {}, which is not there", words::list(&none)));
        }
        let says = format!(
            "The pattern of the {count} of {} {}.",
            thing.called(),
            words::list(&parts)
        );
        let mut finding = Finding::new(&RULE, *place, thing.name.as_str(), says);
        if missing.is_empty() && none.is_empty() {
            // Going back to one of them may be meant.
            finding.severity = Severity::Warning;
        }
        if let Some(thread) = &group.thread
            && said.is_some()
        {
            finding = finding.because(thread.place, format!("{count} of them"));
        }
        found.push(finding.advice(format!("Name each of 1 to {count} once.")));
    }
}
