//! `kit`: what must lie on the bench before the first step.

use crate::cli::{Kit, SheetForm};
use crate::input;
use crate::outcome::Outcome;
use check::Bench;
use sheet::{Look, json, kit};

/// Does it.
pub fn run(arguments: &Kit, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let plans = input::plans(&arguments.plans, &mut outcome);
    let kits: Vec<kit::Kit> = plans
        .iter()
        .map(|asked| kit::Kit::of(&Bench::of(&asked.plan)))
        .collect();
    let pages: Vec<String> = match arguments.form {
        SheetForm::Text => kits.iter().map(|one| kit::text(one, look)).collect(),
        SheetForm::Markdown => kits.iter().map(kit::markdown).collect(),
        SheetForm::Json => match json::text(&json::Kits::of(&kits)) {
            Ok(text) => vec![text],
            Err(error) => {
                outcome.fail(error);
                Vec::new()
            }
        },
    };
    outcome.data(&pages.join("\n"));
    outcome
}
