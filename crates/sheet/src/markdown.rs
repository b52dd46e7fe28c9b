//! The checklist as Markdown: a task list that can be ticked on a phone and printed on paper.

use crate::checklist::{Checklist, Entry, Section};
use crate::lines::{self, Weight};

/// The checklist as Markdown.
pub fn sheet(checklist: &Checklist) -> String {
    let heading = &checklist.heading;
    let mut page = format!("# {}\n\n", escaped(&heading.title));
    for line in lines::heading(heading) {
        page += &format!("{}\n\n", escaped(&line));
    }
    if let Some(unfit) = lines::unfit(heading) {
        page += &format!("**{}**\n\n", escaped(&unfit));
    }
    for section in &checklist.sections {
        page += &self::section(section);
    }
    if !checklist.temporaries.is_empty() {
        page += "## Out again before the end\n\n";
        for temporary in &checklist.temporaries {
            page += &format!("- [ ] {}\n", escaped(&lines::temporary(temporary)));
        }
        page.push('\n');
    }
    page += &format!("{}\n", escaped(checklist.deference));
    page
}

fn section(section: &Section) -> String {
    let mut page = String::new();
    if let Some(title) = &section.title {
        let title = lines::section_title(title, section.member.as_deref());
        page += &format!("## {}\n\n", escaped(&title));
        if section.any_order {
            page += "These steps have no fixed order; this one works.\n\n";
        }
    }
    for entry in &section.entries {
        page += &self::entry(entry);
    }
    page.push('\n');
    page
}

fn entry(entry: &Entry) -> String {
    let mut page = String::new();
    for chance in &entry.last_chances {
        let text = escaped(&lines::chance(chance));
        page += &format!(
            "- [ ] **Last chance before step {}:** {text}\n",
            entry.number
        );
    }
    page += &format!("- [ ] **{}** {}\n", entry.number, escaped(&entry.name));
    for line in lines::lines(entry) {
        let text = escaped(&line.text);
        page += &match line.weight {
            Weight::Plain => format!("  - {}: {text}\n", line.lead),
            Weight::Caution | Weight::Trouble(_) => {
                format!("  - **{}: {text}**\n", line.lead.to_uppercase())
            }
        };
    }
    page
}

/// `text` with every character that Markdown would read as more than itself made plain.
pub(crate) fn escaped(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '#' | '|' | '~' | '&' => {
                plain.push('\\');
                plain.push(c);
            }
            '\n' => plain.push(' '),
            c => plain.push(c),
        }
    }
    plain
}

#[cfg(test)]
mod tests {
    use super::escaped;

    #[test]
    fn labels_stay_what_they_are() {
        assert_eq!(
            escaped("8 x M6*1 <top>_left"),
            "8 x M6\\*1 \\<top\\>\\_left"
        );
    }
}
