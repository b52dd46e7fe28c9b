//! `check`: what is wrong with the plans.

use crate::cli::{Check, Level, TextOrJson};
use crate::input::{self, Asked};
use crate::outcome::{Outcome, Status};
use ::check::{Bench, Finding, Severity};
use sheet::Look;
use sheet::findings::{Counts, Texts, counted, finding};
use sheet::json;
use std::collections::HashSet;

/// Does it.
pub fn run(arguments: &Check, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let plans = input::plans(&arguments.plans, &mut outcome);
    let benches: Vec<Bench<'_>> = plans.iter().map(|asked| Bench::of(&asked.plan)).collect();
    match arguments.form {
        TextOrJson::Text => text(&plans, &benches, look, &mut outcome),
        TextOrJson::Json => {
            let checked = plans.iter().zip(&benches).map(|(asked, bench)| {
                json::CheckedPlan::of(&asked.plan, bench.order(), bench.findings())
            });
            match json::text(&json::Report::of(checked.collect())) {
                Ok(text) => outcome.data(&text),
                Err(error) => outcome.fail(error),
            }
        }
    }
    let level = severity(arguments.at);
    let findings = benches.iter().flat_map(|bench| bench.findings());
    if Counts::of(findings).at_or_above(level) > 0 {
        outcome.worse(Status::Found);
    }
    outcome
}

fn severity(level: Level) -> Severity {
    match level {
        Level::Hint => Severity::Hint,
        Level::Warning => Severity::Warning,
        Level::Error => Severity::Error,
    }
}

fn text(plans: &[Asked], benches: &[Bench<'_>], look: Look, outcome: &mut Outcome) {
    // A file that several plans use is read with each of them; its findings are said once.
    let mut said = HashSet::new();
    let mut all = Counts::default();
    let mut with_errors = Vec::new();
    for (asked, bench) in plans.iter().zip(benches) {
        let texts = Texts::of(&asked.plan);
        let new: Vec<&Finding> = bench
            .findings()
            .iter()
            .filter(|f| {
                said.insert((
                    texts.name(f.place.file),
                    f.place.span,
                    f.rule.name,
                    f.says.clone(),
                ))
            })
            .collect();
        for one in &new {
            outcome.data(&finding(&texts, one, look));
        }
        let counts = Counts::of(new);
        all += counts;
        if counts.errors > 0 {
            with_errors.push(asked);
        }
    }
    match (plans, benches) {
        ([], _) => {}
        ([asked], [bench]) => outcome.data(&format!("{}\n", last_line(asked, bench, all))),
        _ => {
            let next = match with_errors.first() {
                Some(first) => format!("Begin with {}.", first.name()),
                None if all.warnings > 0 => {
                    "Look at the warnings before going to the bench.".into()
                }
                None => "All are fit for the bench.".into(),
            };
            outcome.data(&format!(
                "{}: {} found. {next}\n",
                counted(plans.len(), "plan"),
                all.words()
            ));
        }
    }
}

/// What was found and what to do next.
fn last_line(asked: &Asked, bench: &Bench<'_>, counts: Counts) -> String {
    let (name, argument) = (asked.name(), asked.argument());
    let what = match counts.words().as_str() {
        "nothing" => "nothing wrong".to_owned(),
        words => words.to_owned(),
    };
    let found = format!(
        "{name}: {what} found in {}.",
        counted(asked.plan.steps.len(), "step")
    );
    if asked.plan.steps.is_empty() && counts.errors == 0 {
        return format!("{found} Next: write the steps.");
    }
    let sheet = format!("`fitwright sheet {argument}` prints the checklist");
    if counts.errors == 0 {
        return match counts.warnings {
            0 => format!("{found} Next: {sheet}."),
            _ => format!("{found} Next: look at the warnings; {sheet}."),
        };
    }
    let moved = bench.arrange().map_or(0, |arranged| arranged.moved.len());
    if moved > 0 {
        let how_many = if moved == 1 {
            "one step"
        } else {
            &counted(moved, "step")
        };
        return format!(
            "{found} Next: `fitwright arrange {argument}` mends the order by moving {how_many}."
        );
    }
    let mends = bench
        .findings()
        .iter()
        .filter(|f| f.severity == Severity::Error && f.mend.is_some())
        .count();
    if mends > 0 {
        return format!("{found} Next: make the changes shown as mends, then check again.");
    }
    format!("{found} Next: mend the errors, then check again.")
}
