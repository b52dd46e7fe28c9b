//! `torques`: the torque sheet.

use crate::cli::{Sorting, Torques, TorquesForm};
use crate::input;
use crate::outcome::Outcome;
use check::Bench;
use sheet::torques::{self, TorqueSheet};
use sheet::{Look, json};

/// Does it.
pub fn run(arguments: &Torques, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let sorting = match arguments.by {
        Sorting::Use => torques::Sorting::Use,
        Sorting::Place => torques::Sorting::Place,
    };
    let plans = input::plans(&arguments.plans, &mut outcome);
    let sheets: Vec<TorqueSheet> = plans
        .iter()
        .map(|asked| TorqueSheet::of(&Bench::of(&asked.plan), sorting))
        .collect();
    if arguments.of.is_some() && arguments.form != TorquesForm::Svg {
        outcome.fail("--of names the order to draw; say --as svg with it");
        return outcome;
    }
    let pages: Vec<String> = match arguments.form {
        TorquesForm::Text => sheets
            .iter()
            .map(|sheet| torques::text(sheet, look))
            .collect(),
        TorquesForm::Markdown => sheets.iter().map(torques::markdown).collect(),
        TorquesForm::Json => match json::text(&json::TorqueSheets::of(&sheets)) {
            Ok(text) => vec![text],
            Err(error) => {
                outcome.fail(error);
                Vec::new()
            }
        },
        TorquesForm::Svg => match drawing(&sheets, arguments.of.as_deref()) {
            Ok(svg) => vec![svg],
            Err(why) => {
                // Where a plan could not be read, that has been said and is reason enough.
                if !sheets.is_empty() {
                    outcome.fail(why);
                }
                Vec::new()
            }
        },
    };
    outcome.data(&pages.join("\n"));
    outcome
}

/// The picture of one order: the named group's, or the only one there is.
fn drawing(sheets: &[TorqueSheet], of: Option<&str>) -> Result<String, String> {
    let drawn: Vec<_> = sheets
        .iter()
        .flat_map(|sheet| &sheet.groups)
        .filter(|group| group.figure.is_some())
        .collect();
    let names: Vec<&str> = drawn.iter().map(|group| group.name.as_str()).collect();
    let named = match of {
        Some(of) => drawn
            .iter()
            .find(|group| group.name == of || group.fasteners == of),
        None if drawn.len() == 1 => drawn.first(),
        None => None,
    };
    let Some(group) = named else {
        return Err(match (of, names.is_empty()) {
            (_, true) => "no fasteners of this plan have a pattern that can be drawn".into(),
            (Some(of), false) => format!(
                "\"{of}\" has no pattern that can be drawn; these have: {}",
                names.join(", ")
            ),
            (None, false) => format!(
                "several patterns can be drawn; say which with --of: {}",
                names.join(", ")
            ),
        });
    };
    let holding = sheets
        .iter()
        .find(|sheet| sheet.groups.iter().any(|one| one.name == group.name));
    let figure = holding
        .zip(group.figure)
        .and_then(|(sheet, figure)| sheet.figures.get(figure));
    figure
        .map(|figure| {
            torques::figure::Figure {
                of: group.fasteners.clone(),
                ..figure.clone()
            }
            .svg()
        })
        .ok_or_else(|| "this pattern cannot be drawn".into())
}
