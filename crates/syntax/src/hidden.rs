//! Characters that a reader cannot see, or that show text in another order
//! than the one it is read in.
//!
//! They come along when text is copied, or are put there so that a plan says
//! something else than it shows. Each is reported; the rest of its line is read
//! as if it were not there.

use crate::lines::Line;
use crate::statement::to_u32;
use crate::tree::{Problem, ProblemKind, Span};

/// What to do about a character, in sight of its neighbours.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Verdict {
    /// It belongs where it stands.
    Welcome,
    /// It belongs where it stands and is no part of any word.
    PassedOver,
    /// It should not be there.
    Hidden,
}

/// Every hidden character of the line, comments and quoted texts included.
pub(crate) fn report(text: &str, line: &Line, problems: &mut Vec<Problem>) {
    let content = &text[line.start..line.end];
    if plain(content) {
        return;
    }
    each(content, |at, c, verdict| {
        if verdict == Verdict::Hidden {
            let start = to_u32(line.start + at);
            let span = Span::new(start, start.saturating_add(to_u32(c.len_utf8())));
            problems.push(Problem {
                span,
                kind: ProblemKind::HiddenCharacter(c),
            });
        }
    });
}

/// Whether nothing in the text could be hidden: the quick answer for nearly all lines.
pub(crate) fn plain(content: &str) -> bool {
    content
        .bytes()
        .all(|byte| (0x20..0x7F).contains(&byte) || byte == b'\t')
}

/// Calls `take` for each character that is to be read, with its place.
pub(crate) fn each_shown(content: &str, mut take: impl FnMut(usize, char)) {
    each(content, |at, c, verdict| {
        if verdict == Verdict::Welcome {
            take(at, c);
        }
    });
}

fn each(content: &str, mut take: impl FnMut(usize, char, Verdict)) {
    let mut before = None;
    let mut characters = content.char_indices().peekable();
    while let Some((at, c)) = characters.next() {
        let behind = characters.peek().map(|(_, c)| *c);
        take(at, c, verdict(before, c, behind));
        before = Some(c);
    }
}

fn verdict(before: Option<char>, c: char, behind: Option<char>) -> Verdict {
    let beside = |test: fn(char) -> bool| before.is_some_and(test) || behind.is_some_and(test);
    match c {
        '\t' => Verdict::Welcome,
        // Joiners are spelling in some scripts, and hold some pictures together.
        '\u{200C}' if before.is_some_and(joins) => Verdict::Welcome,
        '\u{200D}' if before.is_some_and(|c| joins(c) || pictorial(c)) => Verdict::Welcome,
        // Marks of direction keep a full stop on the right side of a word written leftward.
        '\u{200E}' | '\u{200F}' | '\u{061C}' if beside(leftward) => Verdict::PassedOver,
        _ if may_be_hidden(c) => Verdict::Hidden,
        _ => Verdict::Welcome,
    }
}

/// Whether the character is hidden but where its neighbours need it.
pub(crate) fn may_be_hidden(c: char) -> bool {
    match c {
        '\t' | ' '..='~' => false,
        '\u{00AD}'
        | '\u{034F}'
        | '\u{061C}'
        | '\u{115F}'
        | '\u{1160}'
        | '\u{17B4}'
        | '\u{17B5}'
        | '\u{180B}'..='\u{180E}'
        | '\u{200B}'..='\u{200F}'
        | '\u{2028}'..='\u{202E}'
        | '\u{2060}'..='\u{206F}'
        | '\u{2800}'
        | '\u{3164}'
        | '\u{FEFF}'
        | '\u{FFA0}'
        | '\u{FFF9}'..='\u{FFFB}'
        | '\u{1D173}'..='\u{1D17A}'
        | '\u{E0000}'..='\u{E007F}' => true,
        _ => c.is_control(),
    }
}

/// Letters and marks of scripts in which a joiner or non-joiner changes what is
/// written: Arabic and its kin, the scripts of India and its neighbours,
/// Khmer, Mongolian.
fn joins(c: char) -> bool {
    matches!(c, '\u{0600}'..='\u{08FF}' | '\u{0900}'..='\u{109F}' | '\u{1780}'..='\u{18AF}'
        | '\u{A840}'..='\u{A97F}' | '\u{FB50}'..='\u{FDFF}' | '\u{FE70}'..='\u{FEFC}'
        | '\u{10A00}'..='\u{10FFF}' | '\u{11000}'..='\u{11FFF}')
}

/// Letters written from right to left.
fn leftward(c: char) -> bool {
    matches!(c, '\u{0590}'..='\u{08FF}' | '\u{FB1D}'..='\u{FDFF}' | '\u{FE70}'..='\u{FEFC}'
        | '\u{10800}'..='\u{10FFF}' | '\u{1E800}'..='\u{1EFFF}')
}

/// Pictures, and the marks that make a sign a picture.
fn pictorial(c: char) -> bool {
    matches!(c, '\u{2190}'..='\u{2BFF}' | '\u{FE0F}' | '\u{1F000}'..='\u{1FAFF}')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> Vec<char> {
        let mut found = Vec::new();
        each(text, |_, c, verdict| {
            if verdict == Verdict::Hidden {
                found.push(c);
            }
        });
        found
    }

    #[test]
    fn what_hides_or_turns_text_is_found() {
        for c in [
            '\0',
            '\u{b}',
            '\u{c}',
            '\u{1b}',
            '\u{7f}',
            '\u{85}',
            '\u{200b}',
            '\u{202e}',
            '\u{2066}',
            '\u{2069}',
            '\u{feff}',
            '\u{ad}',
            '\u{2028}',
            '\u{e0041}',
            '\u{200c}',
            '\u{200d}',
            '\u{200f}',
        ] {
            assert_eq!(found(&format!("be{c}lt")), [c], "{c:?}");
        }
    }

    #[test]
    fn what_a_script_needs_is_left_alone() {
        // Persian with a non-joiner, Malayalam with a joiner, a picture held together,
        // a mark of direction behind Hebrew, a letter with a combining mark.
        for text in [
            "می\u{200c}خواهم",
            "ന\u{d4d}\u{200d}",
            "👩\u{200d}🔧",
            "אב\u{200f}.",
            "e\u{301}",
            "a\tb",
        ] {
            assert_eq!(found(text), [], "{text:?}");
        }
    }
}
