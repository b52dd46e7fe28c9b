//! Said of a thing that it can never have or be.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::rules::unknown_name::a_sort;
use crate::words;
use plan::model::ProblemKind;

/// The rule.
pub const RULE: Rule = Rule {
    name: "misplaced",
    severity: Severity::Warning,
    statement: "Something is said of a thing that it can never have or be.",
    reason: "It does nothing where it stands, so the writer believes that something is checked which is not.",
    bad: r#"part cover
  cures in 24 h
fit cover
"#,
    good: r#"part cover
supply sealant
  cures in 24 h
apply sealant to cover
fit cover
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    for problem in &bench.plan.problems {
        let place = problem.place;
        match &problem.kind {
            ProblemKind::DetailNotHere { detail, item } => {
                let says = format!("“{detail}” says nothing on “{item}”, so this is not used.");
                found.push(Finding::new(&RULE, place, detail.as_str(), says));
            }
            ProblemKind::TwiceSaid { detail, first } => {
                let says = format!("“{detail}” is said twice, and only the first counts.");
                found.push(
                    Finding::new(&RULE, place, detail.as_str(), says)
                        .because(*first, "said first here")
                        .advice("Keep the one that is right."),
                );
            }
            ProblemKind::UnitInItself { name } => {
                let says = format!("{} is, through its members, a member of itself.", words::capital(name));
                let mut finding = Finding::new(&RULE, place, name.as_str(), says);
                finding.severity = Severity::Error;
                found.push(finding);
            }
            ProblemKind::StateNotHere { name, is, state } => {
                let says = if state.is_empty() {
                    format!("{} is {}: say in which state it is to be.", words::capital(name), a_sort(*is))
                } else {
                    format!("{} is {} and is never {state}.", words::capital(name), a_sort(*is))
                };
                let mut finding = Finding::new(&RULE, place, name.as_str(), says);
                finding.severity = Severity::Error;
                found.push(finding);
            }
            _ => {}
        }
    }
}
