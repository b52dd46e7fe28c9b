//! The reach chart: for every thing that must be reached, the steps during which it can be.
//!
//! Things are rows, steps are columns. Where there are more steps than columns a column stands
//! for several of them, and what is rare in it wins: a use shows before a wall, a wall before an
//! open way.

use crate::findings::counted;
use crate::look::{Ink, Look};
use crate::words::{Numbers, thing};
use crate::wrap::{fill, hang};
use check::view::{ReachRow, Window};
use plan::model::{Plan, StepId};

/// The widest a name may be before it is cut.
const NAME: usize = 26;

/// What a cell of the chart shows.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
enum Cell {
    Open,
    Shut,
    Used,
    Missed,
}

impl Cell {
    fn mark(self, look: Look) -> String {
        let (mark, ink) = match (self, look.ascii) {
            (Cell::Open, false) => ("━", Ink::Hint),
            (Cell::Open, true) => ("=", Ink::Hint),
            (Cell::Shut, _) => (".", Ink::Faint),
            (Cell::Used, _) => ("O", Ink::Strong),
            (Cell::Missed, _) => ("X", Ink::Error),
        };
        look.ink(ink, mark)
    }
}

/// The reach chart of a plan in the order shown.
pub fn chart(plan: &Plan, order: &[StepId], rows: &[ReachRow], look: Look) -> String {
    if rows.is_empty() || order.is_empty() {
        return "Nothing in this plan has to be reached.\n".into();
    }
    let numbers = Numbers::of(plan, order);
    let names: Vec<String> = rows.iter().map(|row| thing(plan, row.thing)).collect();
    let widest = names
        .iter()
        .map(|name| crate::look::columns_of(name))
        .max()
        .unwrap_or(0)
        .min(NAME);
    let room = look.columns().saturating_sub(widest + 2).max(10);
    let each = order.len().div_ceil(room);
    let columns = order.len().div_ceil(each);
    let mut page = ruler(widest, columns, each, order.len());
    for (row, name) in rows.iter().zip(&names) {
        let cells: String = (0..columns)
            .map(|column| {
                cell(
                    row,
                    &numbers,
                    column * each,
                    ((column + 1) * each).min(order.len()),
                )
                .mark(look)
            })
            .collect();
        page += &format!("{}  {cells}\n", fill(name, widest));
        page += &hang(
            "    ",
            &in_words(plan, &numbers, row, order.len()),
            look.columns(),
        );
    }
    page.push('\n');
    page += &legend(each, look);
    page
}

/// The step numbers above the columns: a figure stands above the column that holds its step.
fn ruler(widest: usize, columns: usize, each: usize, steps: usize) -> String {
    let mut line = String::new();
    for column in 0..columns {
        let first = column * each + 1;
        let tenth = if each == 1 {
            first == 1 || first.is_multiple_of(10)
        } else {
            column.is_multiple_of(10)
        };
        let number = first.to_string();
        if tenth && line.len() <= column && column + number.len() <= columns.max(number.len()) {
            line += &" ".repeat(column - line.len());
            line += &number;
        }
    }
    let last = steps.to_string();
    if line.len() + last.len() < columns {
        line += &" ".repeat(columns - last.len() - line.len());
        line += &last;
    }
    format!("{}  {line}\n", fill("step", widest))
}

/// What stands at the steps from `from` up to but not including `until`, counted from 0.
fn cell(row: &ReachRow, numbers: &Numbers, from: usize, until: usize) -> Cell {
    let open = |at: usize| {
        row.windows
            .iter()
            .any(|window| window.from <= at && at <= window.until)
    };
    let used = |at: usize| row.used.iter().any(|step| numbers.number(*step) == at + 1);
    (from..until)
        .map(|at| match (open(at), used(at)) {
            (true, false) => Cell::Open,
            (false, false) => Cell::Shut,
            (true, true) => Cell::Used,
            (false, true) => Cell::Missed,
        })
        .max()
        .unwrap_or(Cell::Shut)
}

/// The same as a sentence, with the steps that open and close the way.
fn in_words(plan: &Plan, numbers: &Numbers, row: &ReachRow, steps: usize) -> String {
    let mut said: Vec<String> = row
        .windows
        .iter()
        .map(|w| window(plan, numbers, w, steps))
        .collect();
    if said.is_empty() {
        said.push("never in reach".into());
    }
    let mut used: Vec<usize> = row.used.iter().map(|step| numbers.number(*step)).collect();
    used.sort_unstable();
    if !used.is_empty() {
        let word = if used.len() == 1 { "step" } else { "steps" };
        let list: Vec<String> = used.iter().map(usize::to_string).collect();
        said.push(format!("wanted at {word} {}", crate::words::joined(&list)));
    }
    said.join("; ")
}

fn window(plan: &Plan, numbers: &Numbers, window: &Window, steps: usize) -> String {
    let opened = window
        .opened_by
        .map(|step| format!("opened by {}", numbers.long(plan, step)));
    let closed = window
        .closed_by
        .map(|step| format!("closed by {}", numbers.long(plan, step)));
    match (opened, closed) {
        (None, None) if window.from == 0 && window.until + 1 >= steps => "always in reach".into(),
        (None, None) => format!(
            "in reach from step {} to step {}",
            window.from + 1,
            window.until + 1
        ),
        (Some(opened), None) => format!("{opened}, then open to the end"),
        (None, Some(closed)) => format!("open from the start, {closed}"),
        (Some(opened), Some(closed)) => format!("{opened}, {closed}"),
    }
}

fn legend(each: usize, look: Look) -> String {
    let mut text = String::new();
    for (cell, says) in [
        (Cell::Open, "in reach"),
        (Cell::Shut, "shut in"),
        (Cell::Used, "worked at"),
        (Cell::Missed, "worked at while shut in"),
    ] {
        text += &format!("{} {says}   ", cell.mark(look));
    }
    let mut page = format!("{}\n", text.trim_end());
    if each > 1 {
        page += &hang(
            "",
            &format!("Each column stands for {}.", counted(each, "step")),
            look.columns(),
        );
    }
    page
}
