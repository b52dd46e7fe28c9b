//! Which step a person means: its number on the sheet, its `as` name, its line, or its words.

use crate::input::Asked;
use plan::find;
use plan::model::StepId;
use sheet::words::Numbers;

/// How many steps are named when several fit.
const MOST: usize = 8;

/// What is said when no step is called so: the steps whose words hold it, where there are any.
fn unknown(asked: &Asked, order: &[StepId], said: &str) -> String {
    let plan = &asked.plan;
    let numbers = Numbers::of(plan, order);
    let wanted = said.to_lowercase();
    let near: Vec<String> = order
        .iter()
        .filter(|id| {
            let named = sheet::words::step(plan, **id).to_lowercase();
            let targets = &plan.step(**id).targets;
            let name = |thing| plan.thing(thing).name.contains(&wanted);
            !wanted.is_empty()
                && (named.contains(&wanted) || targets.iter().any(|target| name(target.thing)))
        })
        .take(MOST)
        .map(|id| numbers.long(plan, *id))
        .collect();
    let begins = format!("no step of {} is \"{said}\"", asked.name());
    match near.as_slice() {
        [] => format!("{begins}; the sheet gives every step a number"),
        near => format!(
            "{begins}; it stands in {}. Say the number.",
            near.join(", ")
        ),
    }
}

/// The step that `said` means. Numbers are those of the sheet, which are not those of the lines
/// where a stage has no order of its own.
///
/// # Errors
/// When it means none, or more than one; in words for the person who said it.
pub fn step(asked: &Asked, order: &[StepId], said: &str) -> Result<StepId, String> {
    let plan = &asked.plan;
    let said = said.trim();
    let number = said.strip_prefix("step ").unwrap_or(said);
    let found = match number.parse::<usize>() {
        Ok(number) => {
            let step = number.checked_sub(1).and_then(|at| order.get(at)).copied();
            return step.ok_or_else(|| {
                format!(
                    "there is no step {number}: {} has steps 1 to {}",
                    asked.name(),
                    order.len()
                )
            });
        }
        Err(_) => find::step(plan, said),
    };
    found.map_err(|several| {
        if several.is_empty() {
            return match said.strip_prefix("line:") {
                Some(line) => format!("there is no step in line {line} of {}", asked.name()),
                None => unknown(asked, order, said),
            };
        }
        let numbers = Numbers::of(plan, order);
        let mut list: Vec<String> = several.iter().map(|id| numbers.long(plan, *id)).collect();
        let more = list.len().saturating_sub(MOST);
        list.truncate(MOST);
        let more = if more > 0 {
            format!(" and {more} more")
        } else {
            String::new()
        };
        format!("\"{said}\" fits {}{more}. Say the number.", list.join(", "))
    })
}
