//! Said of a thing that it can never have or be.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::rules::twice_named::is_said_twice;
use crate::rules::unknown_name::a_sort;
use crate::{mend, words};
use plan::model::{Place, ProblemKind};
use syntax::tree::{Span, Verb};

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
                let mut finding = Finding::new(&RULE, place, detail.as_str(), says);
                if detail.starts_with('"') {
                    finding.says = format!("This text says nothing at the end of “{item}”, so it is not used.");
                    finding.advice = Some("A label stands directly behind the name.".into());
                }
                found.push(finding);
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
            ProblemKind::StateNotHere { name, .. } if is_said_twice(bench.plan, name) => {}
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
            ProblemKind::Everything { state: Some(state) } => {
                let says = format!("Everything can be fitted, off, out, started, slack, snug, tight or locked, and not {state}.");
                let mut finding = Finding::new(&RULE, place, "everything", says)
                    .advice(format!("Name the things that are to be {state}."));
                finding.severity = Severity::Error;
                found.push(finding);
            }
            ProblemKind::NoFigureHere { verb, text, torque } => {
                found.push(no_figure(bench, place, *verb, text, *torque));
            }
            _ => {}
        }
    }
}

/// A figure behind `to` on a step that is not done to a figure.
fn no_figure(bench: &Bench, place: Place, verb: Verb, text: &str, torque: bool) -> Finding {
    let word = words::verb_word(verb);
    let mut finding = if torque {
        let says = format!("“{word}” takes no torque: how tight stands on the fasteners, once and with its source, so that no sheet has two figures for one bolt.");
        Finding::new(&RULE, place, text, says).advice(format!(
            "Write “torque {text}” and its source on the fasteners, and take it out here."
        ))
    } else {
        let says = format!("“{word}” does not bring anything to {text}: a reading stands behind “expect”.");
        let advice = format!("Write measure and “expect {text}”; where it is brought to that, set.");
        Finding::new(&RULE, place, text, says).advice(advice)
    };
    finding.severity = Severity::Error;
    let before = Place {
        span: Span::new(0, place.span.start),
        ..place
    };
    let before = bench.plan.text(before).trim_end();
    if verb == Verb::Measure && !torque && before.ends_with("to") {
        let end = before.len() as u32;
        let to = Place {
            span: Span::new(end - 2, end),
            ..place
        };
        finding.mend = Some(mend::replace(to, "expect", format!("Write “expect {text}”.")));
        finding.advice = None;
    }
    finding
}
