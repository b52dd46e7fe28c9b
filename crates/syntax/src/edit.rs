//! Changes of a text: replacing stretches, and moving whole items.

use crate::tree::{Head, Span, Tree};
use std::collections::BTreeMap;

/// A replacement of one stretch of a text; an empty stretch is an insertion.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Edit {
    /// What is replaced.
    pub span: Span,
    /// By what.
    pub new: String,
}

/// Two edits want to change the same stretch, or one lies outside the text.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Overlap {
    /// Where.
    pub span: Span,
}

/// The text with all edits made. Insertions at one place keep the order in which they are given.
///
/// # Errors
/// When two edits overlap, or one lies outside the text or cuts a character.
pub fn apply(text: &str, edits: &[Edit]) -> Result<String, Overlap> {
    let mut sorted: Vec<&Edit> = edits.iter().collect();
    sorted.sort_by_key(|e| (e.span.start, e.span.end));
    let mut out = String::with_capacity(text.len());
    let mut done = 0;
    for edit in sorted {
        let Some(kept) = text.get(done..edit.span.start as usize) else {
            return Err(Overlap { span: edit.span });
        };
        if text.get(edit.span.range()).is_none() {
            return Err(Overlap { span: edit.span });
        }
        out.push_str(kept);
        out.push_str(&edit.new);
        done = edit.span.end as usize;
    }
    out.push_str(text.get(done..).unwrap_or(""));
    Ok(out)
}

/// Edits that move whole items, with the comments above them and all their lines, and leave every
/// other byte alone. Each move is an item's number and the number of the item that it then stands
/// behind; `usize::MAX` puts it in front of the first step. The items stood behind must not move
/// themselves; several moves behind one item land in the order given.
pub fn move_items(tree: &Tree, moves: &[(usize, usize)]) -> Vec<Edit> {
    let newline = if tree.text.contains("\r\n") {
        "\r\n"
    } else if tree.text.contains('\n') {
        "\n"
    } else if tree.text.contains('\r') {
        "\r"
    } else {
        "\n"
    };
    let mut edits = Vec::new();
    let mut landing: BTreeMap<u32, String> = BTreeMap::new();
    for &(item, behind) in moves {
        let Some(moved) = tree.items.get(item) else {
            continue;
        };
        let Some(at) = landing_place(tree, behind) else {
            continue;
        };
        if at == moved.lines.start || at == moved.lines.end {
            continue;
        }
        edits.push(Edit {
            span: moved.lines,
            new: String::new(),
        });
        let text = landing.entry(at).or_default();
        text.push_str(tree.at(moved.lines));
        if !text.ends_with(['\n', '\r']) {
            text.push_str(newline);
        }
    }
    let end = tree.text.len() as u32;
    let open_end = !tree.text.is_empty() && !tree.text.ends_with(['\n', '\r']);
    for (at, mut text) in landing {
        if at == end && open_end {
            // The last line has no line end of its own; it lends the moved lines theirs.
            let ended = text.trim_end_matches(['\n', '\r']).len();
            text.truncate(ended);
            text.insert_str(0, newline);
        }
        edits.push(Edit {
            span: Span::new(at, at),
            new: text,
        });
    }
    edits.sort_by_key(|e| (e.span.start, e.span.end));
    edits
}

/// Where the lines behind an item begin, or the lines of the first step.
fn landing_place(tree: &Tree, behind: usize) -> Option<u32> {
    if behind == usize::MAX {
        let step = |i: &&crate::tree::Item| matches!(i.head, Head::Step { .. });
        return tree.items.iter().find(step).map(|i| i.lines.start);
    }
    tree.items.get(behind).map(|i| i.lines.end)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moved(text: &str, moves: &[(usize, usize)]) -> String {
        let tree = crate::read(text.to_string());
        apply(text, &move_items(&tree, moves)).unwrap()
    }

    #[test]
    fn an_item_moves_with_its_comment_and_details() {
        let text = "part a\n\n# why\nfit a   # now\n  note \"x\"\n\nfit b\n\n# end\n";
        assert_eq!(
            moved(text, &[(1, 2)]),
            "part a\n\n\nfit b\n# why\nfit a   # now\n  note \"x\"\n\n# end\n"
        );
    }

    #[test]
    fn several_land_in_the_order_given() {
        let text = "fit a\nfit b\nfit c\nfit d\n";
        assert_eq!(
            moved(text, &[(0, 3), (1, 3)]),
            "fit c\nfit d\nfit a\nfit b\n"
        );
        assert_eq!(
            moved(text, &[(3, usize::MAX), (2, usize::MAX)]),
            "fit d\nfit c\nfit a\nfit b\n"
        );
    }

    #[test]
    fn a_last_line_without_line_end_stays_whole() {
        assert_eq!(moved("fit a\nfit b", &[(0, 1)]), "fit b\nfit a");
        assert_eq!(
            moved("fit a\r\nfit b", &[(1, usize::MAX)]),
            "fit b\r\nfit a\r\n"
        );
    }

    #[test]
    fn a_move_to_its_own_place_changes_nothing() {
        assert_eq!(moved("fit a\nfit b\n", &[(1, 0)]), "fit a\nfit b\n");
    }

    #[test]
    fn overlapping_edits_are_refused() {
        let edit = |a, b| Edit {
            span: Span::new(a, b),
            new: "x".into(),
        };
        assert!(apply("abcdef", &[edit(0, 3), edit(2, 4)]).is_err());
        assert!(apply("abc", &[edit(2, 9)]).is_err());
        assert!(apply("é", &[edit(1, 2)]).is_err());
        assert_eq!(apply("abc", &[edit(1, 1), edit(1, 2)]).unwrap(), "axxc");
    }
}
