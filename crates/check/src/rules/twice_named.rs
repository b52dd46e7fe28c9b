//! Two things of one name.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::words;
use plan::model::{Plan, ProblemKind};

/// The rule.
pub const RULE: Rule = Rule {
    name: "twice-named",
    severity: Severity::Error,
    statement: "Two things have the same name.",
    reason: "Nobody can tell which of them a step means, and the facts about the second one are not checked.",
    bad: r#"part cover
part cover
fit cover
"#,
    good: r#"part front-cover
part rear-cover
fit front-cover
fit rear-cover
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    for problem in &bench.plan.problems {
        match &problem.kind {
            ProblemKind::TwiceNamed { name, first } => {
                let says = format!("{} is the name of something else already; what is said here is not used.", words::capital(name));
                found.push(
                    Finding::new(&RULE, problem.place, name.as_str(), says)
                        .because(*first, "the first of that name")
                        .advice("Give one of the two another name: a position, for one, is best told from its part, as crank-angle from crank."),
                );
            }
            ProblemKind::TwoPlans { first } => {
                let says = "A plan has one heading, and there is one already.".to_string();
                found.push(Finding::new(&RULE, problem.place, "plan", says).because(*first, "the first heading"));
            }
            _ => {}
        }
    }
}

/// Whether two things of the plan have this name.
pub fn is_said_twice(plan: &Plan, name: &str) -> bool {
    plan.problems
        .iter()
        .any(|p| matches!(&p.kind, ProblemKind::TwiceNamed { name: other, .. } if other == name))
}
