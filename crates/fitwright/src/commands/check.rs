//! `check`: what is wrong with the plans.

use crate::cli::{Check, Level, TextOrJson};
use crate::input::{self, Asked};
use crate::outcome::{Outcome, Status};
use ::check::{Bench, Finding, Severity};
use sheet::Look;
use sheet::checklist::{Checklist, Worked};
use sheet::findings::{Counts, Texts, counted, finding};
use sheet::{json, terminal};
use std::collections::HashSet;

/// Does it.
pub fn run(arguments: &Check, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    if arguments.sheet && arguments.form == TextOrJson::Json {
        outcome.fail(
            "--sheet goes with findings for people; for programs there is `fitwright sheet --as json`",
        );
        return outcome;
    }
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
    if arguments.sheet {
        for (asked, bench) in plans.iter().zip(&benches) {
            nearest_sheet(asked, bench, look, &mut outcome);
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

/// The checklist in the nearest order that works, or as written where none can be had.
fn nearest_sheet(asked: &Asked, bench: &Bench<'_>, look: Look, outcome: &mut Outcome) {
    let as_written = |why: &str, outcome: &mut Outcome| {
        page(why, bench, look, outcome);
    };
    let Ok(arranged) = bench.arrange() else {
        as_written(
            "No order of these steps works. This is the checklist as written.",
            outcome,
        );
        return;
    };
    if arranged.moved.is_empty() {
        as_written("The checklist, in the order written:", outcome);
        return;
    }
    let new = if arranged.unwritable.is_empty() {
        super::arrange::moved(&asked.plan, &asked.text, &arranged)
            .and_then(|text| asked.with_text(text))
    } else {
        Err(String::new())
    };
    match new {
        Ok(plan) => {
            let says = format!(
                "The checklist in the nearest order that works, {} moved:",
                counted(arranged.moved.len(), "step")
            );
            page(&says, &Bench::of(&plan), look, outcome);
        }
        Err(_) => as_written(
            "The order that works cannot be written into this text, because one line stands for \
             several steps. This is the checklist as written.",
            outcome,
        ),
    }
}

fn page(says: &str, bench: &Bench<'_>, look: Look, outcome: &mut Outcome) {
    let checklist = Checklist::of(&Worked::of(bench));
    outcome.data(&format!(
        "\n{}\n{}",
        sheet::wrap::hang("", says, look.columns()),
        terminal::sheet(&checklist, look)
    ));
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
    // A line that stands for several steps cannot be moved for one of them, so nothing is
    // promised there.
    let moved = bench
        .arrange()
        .ok()
        .filter(|arranged| arranged.unwritable.is_empty())
        .map_or(0, |arranged| arranged.moved.len());
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
