//! How a page is to look: how wide, in colour or not, in plain ASCII or not.
//!
//! Whoever prints decides; nothing here asks the environment.

use unicode_width::UnicodeWidthChar;

/// The narrowest page anything is set for; below it lines run over rather than break to bits.
pub const NARROWEST: usize = 40;

/// How a page is to look.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Look {
    /// Columns.
    pub width: usize,
    /// Whether colour may be used.
    pub color: bool,
    /// Whether lines and marks must be drawn in ASCII. Labels stay as they were written.
    pub ascii: bool,
}

impl Look {
    /// Black on white, 80 columns: what is printed on paper and written into files.
    pub const PAPER: Look = Look {
        width: 80,
        color: false,
        ascii: false,
    };

    /// The width to set text in.
    pub fn columns(&self) -> usize {
        self.width.max(NARROWEST)
    }

    /// `text` in the colour of its meaning, if there is colour.
    pub fn ink(&self, ink: Ink, text: &str) -> String {
        if !self.color || text.is_empty() {
            return text.to_owned();
        }
        format!("\x1b[{}m{text}\x1b[0m", ink.code())
    }
}

/// What a stretch of text means to the eye.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Ink {
    /// Goes wrong.
    Error,
    /// May go wrong.
    Warning,
    /// Worth knowing.
    Hint,
    /// A heading, a step's name.
    Strong,
    /// Of less weight.
    Faint,
    /// Something added.
    Added,
    /// Something taken away.
    Gone,
}

impl Ink {
    /// The attribute behind the escape.
    fn code(self) -> &'static str {
        match self {
            Ink::Error => "1;31",
            Ink::Warning => "1;33",
            Ink::Hint => "1;36",
            Ink::Strong => "1",
            Ink::Faint => "2",
            Ink::Added => "32",
            Ink::Gone => "31",
        }
    }
}

/// `text` with everything taken out that would drive the terminal or turn the reading order
/// round: a label from a shared plan must not be able to do either. Line ends stay.
pub fn harmless(text: &str) -> String {
    text.chars()
        .map(|c| {
            if c != '\n' && (c.is_control() || turns_text(c)) {
                char::REPLACEMENT_CHARACTER
            } else {
                c
            }
        })
        .collect()
}

/// Whether `c` changes the direction in which the text around it is shown.
pub fn turns_text(c: char) -> bool {
    matches!(c, '\u{061c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// How many columns `text` takes, escapes for colour not counted.
pub fn columns_of(text: &str) -> usize {
    let mut columns = 0;
    let mut escaped = false;
    for c in text.chars() {
        match (escaped, c) {
            (false, '\x1b') => escaped = true,
            (true, 'm') => escaped = false,
            (true, _) => {}
            (false, c) => columns += c.width().unwrap_or(0),
        }
    }
    columns
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colour_only_where_asked_for() {
        let plain = Look::PAPER;
        assert_eq!(plain.ink(Ink::Error, "error"), "error");
        let painted = Look {
            color: true,
            ..Look::PAPER
        };
        assert_eq!(painted.ink(Ink::Error, "error"), "\x1b[1;31merror\x1b[0m");
        assert_eq!(columns_of(&painted.ink(Ink::Error, "error")), 5);
    }

    #[test]
    fn labels_cannot_drive_the_terminal() {
        assert_eq!(harmless("a\x1b[2Jb\u{202e}c"), "a\u{fffd}[2Jb\u{fffd}c");
        assert_eq!(harmless("two\nlines, öl, 油"), "two\nlines, öl, 油");
    }

    #[test]
    fn wide_and_combining_characters_take_the_columns_they_take() {
        assert_eq!(columns_of("油泵"), 4);
        assert_eq!(columns_of("o\u{308}l"), 2);
    }
}
