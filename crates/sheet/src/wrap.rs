//! Setting prose in a given width.

use crate::look::columns_of;
use workshop::quantity::unit_at_start;

/// `text` broken into lines of at most `width` columns at its blanks. A word longer than a line
/// stands on a line of its own and runs over: names and paths must stay whole to be copied. A
/// figure stays with its unit, and a box with what is to be ticked.
pub fn wrap(text: &str, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    for paragraph in text.split('\n') {
        let mut line = String::new();
        let mut used = 0;
        for word in unbroken(paragraph) {
            let wide = columns_of(&word);
            if used > 0 && used + 1 + wide > width {
                lines.push(std::mem::take(&mut line));
                used = 0;
            }
            if used > 0 {
                line.push(' ');
                used += 1;
            }
            line.push_str(&word);
            used += wide;
        }
        lines.push(line);
    }
    lines
}

/// The stretches of a text between which a line may end.
fn unbroken(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    let mut glued = false;
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        match words.last_mut() {
            Some(last) if glued || is_unit_of(last, word) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
        glued = matches!(word, "[" | "]");
    }
    words
}

/// Whether `word` is the unit of a figure at the end of `before`.
fn is_unit_of(before: &str, word: &str) -> bool {
    let figure = before.rsplit([' ', '(']).next().unwrap_or("");
    figure.starts_with(|c: char| c.is_ascii_digit() || c == '_')
        && unit_at_start(word).is_some_and(|(_, rest)| !rest.starts_with(char::is_alphanumeric))
}

/// `text` set in `width` columns, its first line behind `first` and all others behind blanks as
/// wide as `first`. Ends with a line end.
pub fn hang(first: &str, text: &str, width: usize) -> String {
    let indent = columns_of(first);
    let mut page = String::new();
    for (n, line) in wrap(text, width.saturating_sub(indent).max(20))
        .iter()
        .enumerate()
    {
        let lead = if n == 0 {
            first.to_owned()
        } else {
            " ".repeat(indent)
        };
        page.push_str(format!("{lead}{line}").trim_end());
        page.push('\n');
    }
    page
}

/// The fewest columns in which a name that is cut keeps its end.
const ROOM_FOR_AN_END: usize = 20;

/// `text` cut to `width` columns, with `..` where something is missing. A member of a series in
/// brackets at its end is kept, else, where there is room, its last letters: they are what tells
/// it from its like.
pub fn cut(text: &str, width: usize) -> String {
    if columns_of(text) <= width {
        return text.to_owned();
    }
    let member = text
        .rfind(" (")
        .filter(|_| text.ends_with(')'))
        .map_or("", |at| &text[at..]);
    let member = if columns_of(member) + 6 > width {
        ""
    } else {
        member
    };
    let member = if member.is_empty() && width >= ROOM_FOR_AN_END {
        end(text, width / 3)
    } else {
        member
    };
    let room = width.saturating_sub(columns_of(member) + 2);
    let mut short = String::new();
    for c in text.chars() {
        if columns_of(&short) + columns_of(c.encode_utf8(&mut [0; 4])) > room {
            break;
        }
        short.push(c);
    }
    format!("{}..{member}", short.trim_end())
}

/// The end of `text`, no wider than `width` columns, with no blank in front.
fn end(text: &str, width: usize) -> &str {
    let mut starts = text.char_indices().map(|(at, _)| &text[at..]);
    starts
        .find(|rest| columns_of(rest) <= width)
        .unwrap_or("")
        .trim_start()
}

/// `text` cut or filled with blanks to exactly `width` columns.
pub fn fill(text: &str, width: usize) -> String {
    let short = cut(text, width);
    let missing = width.saturating_sub(columns_of(&short));
    short + &" ".repeat(missing)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn breaks_at_blanks_and_keeps_long_words_whole() {
        assert_eq!(wrap("one two three", 7), ["one two", "three"]);
        assert_eq!(
            wrap("a bleed-screw-union b", 5),
            ["a", "bleed-screw-union", "b"]
        );
        assert_eq!(wrap("", 5), [""]);
    }

    #[test]
    fn figures_stay_with_their_units_and_boxes_with_their_text() {
        assert_eq!(wrap("to 22 N.m, now", 6), ["to", "22 N.m,", "now"]);
        assert_eq!(wrap("[ ] 4 N.m, [ ] mark", 12), ["[ ] 4 N.m,", "[ ] mark"]);
        assert_eq!(wrap("2 x M6", 3), ["2 x", "M6"]);
    }

    #[test]
    fn hangs_behind_its_first_words() {
        assert_eq!(
            hang("Mend: ", "move the heat exchanger behind the bleeding", 30),
            "Mend: move the heat exchanger\n      behind the bleeding\n"
        );
    }

    #[test]
    fn cuts_by_columns_not_characters() {
        assert_eq!(cut("油泵油泵油泵", 7), "油泵..");
        assert_eq!(cut("Height of the oil (left)", 16), "Height.. (left)");
        assert_eq!(
            cut("Bearing at the coupling end, left", 24),
            "Bearing at the..nd, left"
        );
        assert_eq!(fill("油", 4), "油  ");
    }
}
