//! The kit as a page: for a terminal or paper, and as Markdown.

use super::{Kit, Part};
use crate::look::{Ink, Look};
use crate::markdown::escaped;
use crate::wrap::hang;

/// The kit as text, a box before everything to lay out.
pub fn text(kit: &Kit, look: Look) -> String {
    let width = look.columns();
    let mut page = hang(
        "",
        &look.ink(Ink::Strong, &format!("Kit: {}", kit.title)),
        width,
    );
    for (title, lines) in sections(kit) {
        page += &format!("\n{}\n", look.ink(Ink::Strong, title));
        for line in lines {
            page += &hang("[ ] ", &line, width);
        }
    }
    page
}

/// The kit as Markdown.
pub fn markdown(kit: &Kit) -> String {
    let mut page = format!("# Kit: {}\n", escaped(&kit.title));
    for (title, lines) in sections(kit) {
        page += &format!("\n## {title}\n\n");
        for line in lines {
            page += &format!("- [ ] {}\n", escaped(&line));
        }
    }
    page
}

fn sections(kit: &Kit) -> Vec<(&'static str, Vec<String>)> {
    let (parts, threads) = if kit.assembled {
        ("Parts, out of the machine", "Fasteners, out of the machine")
    } else {
        ("Parts", "Fasteners")
    };
    let all = [
        ("Not said to be there", kit.missing.clone()),
        (parts, kit.parts.iter().map(part).collect()),
        ("Used up", used_up(kit)),
        (threads, fasteners(kit)),
        ("Supplies", supplies(kit)),
        ("Tools", tools(kit)),
        (
            "In only for a time",
            kit.temporary.iter().map(part).collect(),
        ),
    ];
    all.into_iter()
        .filter(|(_, lines)| !lines.is_empty())
        .collect()
}

fn part(part: &Part) -> String {
    let mut said = match part.count {
        Some(count) if count != 1 => format!("{count} x {}", part.name),
        _ => part.name.clone(),
    };
    let mut notes: Vec<String> = Vec::new();
    notes.extend(part.mass.clone());
    notes.extend(part.material.clone());
    if !part.matched_with.is_empty() {
        notes.push(format!("belongs with {}", part.matched_with.join(", ")));
    }
    behind(&mut said, &notes);
    said
}

fn used_up(kit: &Kit) -> Vec<String> {
    let lines = kit.used_up.iter().map(|one| {
        let mut said = format!("{} x {}", one.needed, one.name);
        let mut notes: Vec<String> = Vec::new();
        notes.extend(one.size.clone());
        if !one.at.is_empty() {
            notes.push(format!("at {}", one.at.join(", ")));
        }
        match one.times {
            0 => notes.push("the plan takes no new one".into()),
            1 => {}
            times => notes.push(format!("taken new {times} times, {} each time", one.each)),
        }
        if one.single_use && one.times > 0 {
            notes.push("single use".into());
        }
        behind(&mut said, &notes);
        said
    });
    lines.collect()
}

fn fasteners(kit: &Kit) -> Vec<String> {
    let lines = kit.fasteners.iter().map(|one| {
        let mut said = one.name.clone();
        let size = match (one.count, &one.size) {
            (Some(count), Some(size)) => Some(format!("{count} x {size}")),
            (Some(count), None) => Some(format!("{count} off")),
            (None, size) => size.clone(),
        };
        behind(&mut said, &size.into_iter().collect::<Vec<_>>());
        said
    });
    lines.collect()
}

fn supplies(kit: &Kit) -> Vec<String> {
    let lines = kit.supplies.iter().map(|one| {
        let mut said = one.name.clone();
        let mut notes: Vec<String> = one.kind.clone().into_iter().collect();
        notes.extend(one.amounts.clone());
        if one.uses > 1 {
            notes.push(format!("in {} steps", one.uses));
        }
        notes.extend(one.notes.clone());
        behind(&mut said, &notes);
        said
    });
    lines.collect()
}

fn tools(kit: &Kit) -> Vec<String> {
    let lines = kit.tools.iter().map(|one| {
        let mut said = one.name.clone();
        let mut notes: Vec<String> = one.kind.clone().into_iter().collect();
        notes.extend(one.notes.clone());
        let steps: Vec<String> = one.steps.iter().map(usize::to_string).collect();
        match steps.len() {
            0 => {}
            1 => notes.push(format!("step {}", steps[0])),
            2..=8 => notes.push(format!("steps {}", steps.join(", "))),
            many => notes.push(format!("{many} steps from step {}", steps[0])),
        }
        behind(&mut said, &notes);
        said
    });
    lines.collect()
}

fn behind(said: &mut String, notes: &[String]) {
    if !notes.is_empty() {
        *said += &format!(": {}", notes.join("; "));
    }
}
