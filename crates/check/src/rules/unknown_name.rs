//! A name that stands for nothing.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::rules::twice_named::is_said_twice;
use crate::mend;
use crate::words;
use plan::model::{Place, ProblemKind, Sort};

/// The rule.
pub const RULE: Rule = Rule {
    name: "unknown-name",
    severity: Severity::Error,
    statement: "A name stands for nothing that the plan declares, or for something of the wrong sort.",
    reason: "What was meant is not checked, so a trap behind a misspelt name stays hidden.",
    bad: r#"part cover
fit covr
"#,
    good: r#"part cover
fit cover
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    for problem in &plan.problems {
        let place = problem.place;
        match &problem.kind {
            ProblemKind::UnknownName { name, near } => {
                let says = format!("Nothing in this plan is called {name}.");
                found.push(with_near(place, name, says, near.as_deref()));
            }
            ProblemKind::Everything { state: None } => {
                let says = "“everything” stands for all that the plan works on, and only in a condition: “after everything is tight”.";
                let advice = "Name the things one by one, or with a star such as “*-nuts”; and call nothing “everything”.";
                found.push(Finding::new(&RULE, place, "everything", says.into()).advice(advice));
            }
            ProblemKind::UnknownPlace { name, position, near } => {
                let says = format!("{} has no place called {name}.", words::capital(position));
                found.push(with_near(place, name, says, near.as_deref()));
            }
            // Which of two things of one name is meant nobody can tell, and that is said once.
            ProblemKind::WrongSort { name, .. } if is_said_twice(plan, name) => {}
            ProblemKind::WrongSort { name, is, wanted } => {
                let wanted: Vec<&str> = wanted.iter().map(|s| a_sort(*s)).collect();
                let says = format!(
                    "{} is {}, and {} is wanted here.",
                    words::capital(name),
                    a_sort(*is),
                    words::list(&wanted).replace(" and ", " or ")
                );
                found.push(Finding::new(&RULE, place, name.as_str(), says));
            }
            ProblemKind::UnknownMember { name, series, near } => {
                let says = format!("The series {series} has no member {name}.");
                found.push(with_near(place, name, says, near.as_deref()));
            }
            ProblemKind::NamesStep { name, state, step } => {
                let says = match state {
                    Some(state) => format!("{} is a step: it is done or not, and never {state}.", words::capital(name)),
                    None => format!("{} is the name of a step, and a thing is wanted here.", words::capital(name)),
                };
                found.push(
                    Finding::new(&RULE, place, name.as_str(), says).because(*step, "the step of that name"),
                );
            }
            ProblemKind::UseMissing { path, why } => {
                let says = format!("The file {path} cannot be used: {why}.");
                found.push(Finding::new(&RULE, place, path.as_str(), says));
            }
            ProblemKind::UseCycle { path } => {
                let says = format!("The file {path} leads back to this one, so it is not used again.");
                found.push(Finding::new(&RULE, place, path.as_str(), says));
            }
            _ => {}
        }
    }
}

fn with_near(place: Place, name: &str, says: String, near: Option<&str>) -> Finding {
    let mut finding = Finding::new(&RULE, place, name, says);
    match near {
        Some(near) => {
            finding.says += &format!(" Did you mean {near}?");
            finding.mend = Some(mend::replace(place, near, format!("Write {near}.")));
        }
        None if name == "all" => finding.advice = Some(
            "Name the things one by one, or with a star such as “*-nuts”.".into(),
        ),
        None => finding.advice = Some(
            "Declare it, or mend the name. A step has a name when it ends in “as” and the name.".into(),
        ),
    }
    finding
}

/// The sort with its article.
pub fn a_sort(sort: Sort) -> &'static str {
    match sort {
        Sort::Part => "a part",
        Sort::Unit => "a unit",
        Sort::Item => "an item",
        Sort::Fasteners => "a group of fasteners",
        Sort::Point => "a point",
        Sort::Position => "a position",
        Sort::Tool => "a tool",
        Sort::Supply => "a supply",
    }
}
