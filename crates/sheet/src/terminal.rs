//! The checklist for a terminal, and for paper when it is printed from one.

use crate::checklist::{Checklist, Entry, Section};
use crate::findings::severity_ink;
use crate::lines::{self, Line, Weight};
use crate::look::{Ink, Look};
use crate::wrap::{fill, hang};

/// Columns for the leading word of a line.
const LEAD: usize = 9;

/// The box to tick.
const BOX: &str = "[ ] ";

/// The checklist, set for a terminal.
pub fn sheet(checklist: &Checklist, look: Look) -> String {
    let width = look.columns();
    let heading = &checklist.heading;
    let mut page = hang("", &look.ink(Ink::Strong, &heading.title), width);
    for line in lines::heading(heading) {
        page += &hang("", &line, width);
    }
    if let Some(unfit) = lines::unfit(heading) {
        page += &painted(&hang("", &unfit, width), Ink::Error, look);
    }
    for section in &checklist.sections {
        page += &self::section(section, checklist, look);
    }
    page.push('\n');
    page += &rule(look);
    if !checklist.temporaries.is_empty() {
        page += "Out again before the end:\n";
        for temporary in &checklist.temporaries {
            page += &hang(BOX, &lines::temporary(temporary), width);
        }
    }
    page += &hang("", checklist.deference, width);
    page
}

fn rule(look: Look) -> String {
    let dash = if look.ascii { "-" } else { "─" };
    format!("{}\n", look.ink(Ink::Faint, &dash.repeat(look.columns())))
}

fn section(section: &Section, checklist: &Checklist, look: Look) -> String {
    let mut page = String::from("\n");
    if let Some(title) = &section.title {
        let title = lines::section_title(title, section.member.as_deref());
        page += &painted(&hang("", &title, look.columns()), Ink::Strong, look);
        if section.any_order {
            page += &hang(
                "",
                "These steps have no fixed order; this one works.",
                look.columns(),
            );
        }
    }
    page += &rule(look);
    let digits = checklist.heading.steps.to_string().len().max(2);
    for (n, entry) in section.entries.iter().enumerate() {
        page += &self::entry(entry, digits, n == 0, look);
    }
    page
}

fn entry(entry: &Entry, digits: usize, first: bool, look: Look) -> String {
    let width = look.columns();
    let indent = BOX.len() + digits + 2;
    let margin = " ".repeat(indent);
    let mut page = String::new();
    if !entry.last_chances.is_empty() {
        let word = look.ink(Ink::Warning, "LAST CHANCE");
        if !first {
            page.push('\n');
        }
        page += &format!("{word} before step {}:\n", entry.number);
        for chance in &entry.last_chances {
            let text = lines::chance(chance);
            let line = hang(&format!("    {BOX}"), &text, width);
            page += &if chance.missed.is_empty() {
                line
            } else {
                painted(&line, Ink::Error, look)
            };
        }
    }
    let head = format!("{BOX}{:>digits$}  ", entry.number);
    page += &painted(&hang(&head, &entry.name, width), Ink::Strong, look);
    for line in lines::lines(entry) {
        page += &self::line(&line, &margin, look);
    }
    page
}

fn line(line: &Line, margin: &str, look: Look) -> String {
    let lead = match line.weight {
        Weight::Plain => line.lead.to_owned(),
        Weight::Caution | Weight::Trouble(_) => line.lead.to_uppercase(),
    };
    let text = hang(
        &format!("{margin}{} ", fill(&lead, LEAD)),
        &line.text,
        look.columns(),
    );
    match line.weight {
        Weight::Plain => text,
        Weight::Caution => painted(&text, Ink::Warning, look),
        Weight::Trouble(severity) => painted(&text, severity_ink(severity), look),
    }
}

/// Each line of `page` in a colour of its own, so that a page cut anywhere leaves none behind.
fn painted(page: &str, ink: Ink, look: Look) -> String {
    page.lines()
        .map(|line| format!("{}\n", look.ink(ink, line)))
        .collect()
}
