//! The torque sheet as a page: for a terminal or paper, and as Markdown.

use super::{Group, Stage, TorqueSheet};
use crate::look::{Ink, Look, columns_of};
use crate::markdown::escaped;
use crate::wrap::{fill, hang, wrap};

/// Columns of the number of the step.
const STEP: usize = 4;

/// The sheet as text.
pub fn text(sheet: &TorqueSheet, look: Look) -> String {
    let width = look.columns();
    let mut page = hang(
        "",
        &look.ink(Ink::Strong, &format!("Torques: {}", sheet.title)),
        width,
    );
    if let Some(line) = under_title(sheet) {
        page += &hang("", &line, width);
    }
    if sheet.groups.is_empty() {
        page += "\nNothing in this plan is tightened to a torque.\n";
    } else {
        let mut notes = Notes::default();
        page.push('\n');
        page += &table(sheet, &mut notes, look);
        if !notes.0.is_empty() {
            page.push('\n');
            for (key, note) in notes.0.iter().enumerate() {
                page += &hang(&format!("{}  ", letter(key)), note, width);
            }
        }
    }
    if !sheet.by_feel.is_empty() {
        page.push('\n');
        page += &hang("By feel: ", &sheet.by_feel.join(", "), width);
    }
    page.push('\n');
    page += &hang("", sheet.deference, width);
    for (n, figure) in sheet.figures.iter().enumerate() {
        page += &format!(
            "\n{}",
            hang(&format!("F{}  ", n + 1), &figure.caption(), width)
        );
        page += &figure.text();
    }
    page
}

fn under_title(sheet: &TorqueSheet) -> Option<String> {
    let revision = sheet
        .revision
        .as_ref()
        .map(|revision| format!("revision {revision}"));
    let parts: Vec<String> = sheet.machine.clone().into_iter().chain(revision).collect();
    (!parts.is_empty()).then(|| parts.join(", "))
}

/// Notes that several groups share, each once, in the order of their letters.
#[derive(Default)]
struct Notes(Vec<String>);

impl Notes {
    fn key(&mut self, note: String) -> String {
        let at = self.0.iter().position(|known| *known == note);
        let at = at.unwrap_or_else(|| {
            self.0.push(note);
            self.0.len() - 1
        });
        letter(at)
    }
}

/// a, b … z, aa, ab …
fn letter(mut at: usize) -> String {
    let mut letters = String::new();
    loop {
        letters.insert(0, char::from(b'a' + (at % 26) as u8));
        if at < 26 {
            return letters;
        }
        at = at / 26 - 1;
    }
}

fn notes_of(group: &Group, notes: &mut Notes) -> String {
    let mut keys: Vec<String> = Vec::new();
    if let Some(figure) = group.figure {
        keys.push(format!("F{}", figure + 1));
    }
    let mut said: Vec<String> = Vec::new();
    said.extend(group.source.as_ref().map(|source| format!("from {source}")));
    said.extend(
        group
            .pattern
            .as_ref()
            .map(|pattern| format!("pattern: {pattern}")),
    );
    if !group.tools.is_empty() {
        said.push(format!("with {}", group.tools.join(", ")));
    }
    said.extend(group.settings.iter().cloned());
    said.extend(
        group
            .threads
            .as_ref()
            .filter(|on| !group.locked_by.contains(on))
            .map(|on| match on.as_str() {
                "dry" => "threads dry".to_owned(),
                on => format!("on the threads: {on}"),
            }),
    );
    if !group.locked_by.is_empty() {
        said.push(format!("locked by {}", group.locked_by.join(" and ")));
    }
    if group.left_hand {
        said.push("left-hand thread".into());
    }
    keys.extend(said.into_iter().map(|note| notes.key(note)));
    keys.join(" ")
}

/// The stages of a group: in the first unit, and in the other.
fn torque(group: &Group) -> (String, String) {
    let (mut first, mut second) = (Vec::new(), Vec::new());
    for stage in &group.stages {
        match stage {
            Stage::Torque { shown, other } => {
                first.push(shown.clone());
                second.extend(other.clone());
            }
            Stage::Blank { unit } => {
                first.push(
                    format!("________ {}", unit.as_deref().unwrap_or(""))
                        .trim_end()
                        .into(),
                );
            }
            Stage::Turn(angle) => first.push(format!("turn {angle}")),
            Stage::TurnBlank => first.push("turn ________ deg".into()),
            Stage::Slacken => first.push("slacken".into()),
            Stage::Mark => first.push("mark".into()),
        }
    }
    (short(&first), short(&second))
}

/// `4 N.m, 8 N.m` is `4, 8 N.m`: a unit that the next figure repeats is left out.
fn short(figures: &[String]) -> String {
    let mut said = String::new();
    for (n, figure) in figures.iter().enumerate() {
        let unit = |figure: &str| figure.split_once(' ').map(|(_, unit)| unit.to_owned());
        let plain = |figure: &str| figure.starts_with(|c: char| c.is_ascii_digit());
        let next = figures
            .get(n + 1)
            .filter(|next| plain(next) && plain(figure));
        let shared =
            next.is_some_and(|next| unit(next) == unit(figure) && figure.matches(' ').count() == 1);
        let shown = match figure.split_once(' ') {
            Some((value, _)) if shared => value,
            _ => figure,
        };
        if n > 0 {
            said += ", ";
        }
        said += shown;
    }
    said
}

fn size(group: &Group) -> String {
    match (group.count, &group.size) {
        (Some(count), Some(size)) => format!("{count} x {size}"),
        (Some(count), None) => format!("{count} off"),
        (None, Some(size)) => size.clone(),
        (None, None) => String::new(),
    }
}

fn table(sheet: &TorqueSheet, notes: &mut Notes, look: Look) -> String {
    let rows: Vec<[String; 6]> = sheet
        .groups
        .iter()
        .map(|group| {
            let steps: Vec<String> = group.steps.iter().map(usize::to_string).collect();
            let (first, second) = torque(group);
            [
                steps.first().cloned().unwrap_or_default(),
                group.fasteners.clone(),
                size(group),
                first,
                second,
                notes_of(group, notes),
            ]
        })
        .collect();
    let heads = [
        "Step",
        "Fasteners",
        "Number and size",
        "Torque",
        "Or",
        "Notes",
    ];
    let widths = widths(&rows, &heads, look.columns());
    let mut page = look.ink(Ink::Strong, &line(&heads.map(str::to_owned), &widths));
    page.push('\n');
    for row in &rows {
        let cells: Vec<Vec<String>> = row
            .iter()
            .zip(widths)
            .map(|(cell, width)| wrap(cell, width))
            .collect();
        let high = cells.iter().map(Vec::len).max().unwrap_or(1);
        for n in 0..high {
            let cells: Vec<String> = cells
                .iter()
                .map(|cell| cell.get(n).cloned().unwrap_or_default())
                .collect();
            page += &line(&cells, &widths);
            page.push('\n');
        }
    }
    page
}

/// Every column as wide as it needs, the widest made narrower until the page is filled.
fn widths(rows: &[[String; 6]], heads: &[&str; 6], columns: usize) -> [usize; 6] {
    let mut widths = [0; 6];
    for (n, width) in widths.iter_mut().enumerate() {
        let cells = rows.iter().map(|row| columns_of(&row[n]));
        *width = cells.max().unwrap_or(0).max(columns_of(heads[n]));
    }
    widths[0] = widths[0].max(STEP);
    let room = columns.saturating_sub(5);
    while widths.iter().sum::<usize>() > room {
        // The torques and the notes are what the page is for; names give way first.
        let Some((n, _)) = widths
            .iter()
            .enumerate()
            .filter(|(n, width)| **width > [STEP, 12, 10, 12, 8, 5][*n])
            .max_by_key(|(n, width)| **width * [0, 4, 3, 2, 2, 3][*n])
        else {
            break;
        };
        widths[n] -= 1;
    }
    widths
}

fn line(cells: &[String], widths: &[usize]) -> String {
    let cells: Vec<String> = cells
        .iter()
        .zip(widths)
        .map(|(cell, width)| {
            if columns_of(cell) > *width {
                cell.clone()
            } else {
                fill(cell, *width)
            }
        })
        .collect();
    cells.join(" ").trim_end().to_owned()
}

/// The sheet as Markdown: a table, its notes said in full, the figures as they are drawn in text.
pub fn markdown(sheet: &TorqueSheet) -> String {
    let mut page = format!("# Torques: {}\n\n", escaped(&sheet.title));
    if let Some(line) = under_title(sheet) {
        page += &format!("{}\n\n", escaped(&line));
    }
    if sheet.groups.is_empty() {
        page += "Nothing in this plan is tightened to a torque.\n\n";
    } else {
        let mut notes = Notes::default();
        page += "| Step | Fasteners | Number and size | Torque | Or | Notes |\n";
        page += "| ---: | --- | --- | --- | --- | --- |\n";
        for group in &sheet.groups {
            let steps: Vec<String> = group.steps.iter().map(usize::to_string).collect();
            let (first, second) = torque(group);
            let cells = [
                steps.join(", "),
                group.fasteners.clone(),
                size(group),
                first,
                second,
                notes_of(group, &mut notes),
            ];
            let cells: Vec<String> = cells.iter().map(|cell| escaped(cell)).collect();
            page += &format!("| {} |\n", cells.join(" | "));
        }
        page.push('\n');
        for (key, note) in notes.0.iter().enumerate() {
            page += &format!("- **{}** {}\n", letter(key), escaped(note));
        }
        if !notes.0.is_empty() {
            page.push('\n');
        }
    }
    if !sheet.by_feel.is_empty() {
        page += &format!("By feel: {}\n\n", escaped(&sheet.by_feel.join(", ")));
    }
    for (n, figure) in sheet.figures.iter().enumerate() {
        page += &format!("**F{}** {}\n\n", n + 1, escaped(&figure.caption()));
        page += &format!("{}\n", figure.text());
    }
    page += &format!("{}\n", escaped(sheet.deference));
    page
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_is_said_once() {
        let all =
            |figures: &[&str]| short(&figures.iter().map(|f| (*f).to_owned()).collect::<Vec<_>>());
        assert_eq!(all(&["4 N.m", "8 N.m"]), "4, 8 N.m");
        assert_eq!(
            all(&["20 N.m", "slacken", "15 N.m", "turn 90 deg"]),
            "20 N.m, slacken, 15 N.m, turn 90 deg"
        );
        assert_eq!(all(&["8 +- 1 N.m", "12 N.m"]), "8 +- 1 N.m, 12 N.m");
        assert_eq!(all(&[]), "");
    }

    #[test]
    fn letters_go_on_behind_z() {
        assert_eq!(
            [0, 25, 26, 51, 52].map(letter),
            ["a", "z", "aa", "az", "ba"]
        );
    }
}
