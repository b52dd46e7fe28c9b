//! The difference between two texts, line by line, in the unified form that `patch` reads.

use sheet::Look;
use sheet::look::Ink;
use similar::{ChangeTag, TextDiff};

/// Lines shown around a change.
const AROUND: usize = 3;

/// The change from `old` to `new` in the file called `name`; empty when there is none.
pub fn diff(name: &str, old: &str, new: &str, look: Look) -> String {
    if old == new {
        return String::new();
    }
    let diff = TextDiff::from_lines(old, new);
    let mut page = String::new();
    page += &line(look, Ink::Strong, &format!("--- {name}\n"));
    page += &line(look, Ink::Strong, &format!("+++ {name}\n"));
    for hunk in diff.unified_diff().context_radius(AROUND).iter_hunks() {
        page += &line(look, Ink::Hint, &format!("{}\n", hunk.header()));
        for change in hunk.iter_changes() {
            let (sign, ink) = match change.tag() {
                ChangeTag::Equal => (" ", None),
                ChangeTag::Delete => ("-", Some(Ink::Gone)),
                ChangeTag::Insert => ("+", Some(Ink::Added)),
            };
            let text = format!("{sign}{}", change.value());
            page += &ink.map_or_else(|| text.clone(), |ink| line(look, ink, &text));
            if change.missing_newline() {
                page += "\n\\ No newline at end of file\n";
            }
        }
    }
    page
}

/// A line in colour, its line end outside of the colour.
fn line(look: Look, ink: Ink, text: &str) -> String {
    let content = text.trim_end_matches(['\n', '\r']);
    format!("{}{}", look.ink(ink, content), &text[content.len()..])
}
