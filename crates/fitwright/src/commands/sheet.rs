//! `sheet`: the checklist.

use crate::cli::{Sheet, SheetForm};
use crate::input;
use crate::outcome::{Outcome, Status};
use check::Bench;
use sheet::checklist::{Checklist, Worked};
use sheet::findings::counted;
use sheet::{Look, json, markdown, terminal};

/// Does it.
pub fn run(arguments: &Sheet, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let plans = input::plans(&arguments.plans, &mut outcome);
    let mut sheets = Vec::new();
    for asked in &plans {
        let bench = Bench::of(&asked.plan);
        let checklist = Checklist::of(&Worked::of(&bench));
        let errors = checklist.heading.found.errors;
        if errors > 0 {
            outcome.worse(Status::Found);
            outcome.say(format!(
                "fitwright: {} has {}; `fitwright check {}` shows {}.",
                asked.name(),
                counted(errors, "error"),
                asked.argument(),
                if errors == 1 { "it" } else { "them" }
            ));
        }
        sheets.push(checklist);
    }
    let pages: Vec<String> = match arguments.form {
        SheetForm::Text => sheets
            .iter()
            .map(|sheet| terminal::sheet(sheet, look))
            .collect(),
        SheetForm::Markdown => sheets.iter().map(markdown::sheet).collect(),
        SheetForm::Json => {
            let all = json::Sheets::of(sheets.iter().map(json::Sheet::of).collect());
            match json::text(&all) {
                Ok(text) => vec![text],
                Err(error) => {
                    outcome.fail(error);
                    Vec::new()
                }
            }
        }
    };
    outcome.data(&pages.join("\n"));
    outcome
}
