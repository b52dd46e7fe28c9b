//! Bytes to lines and columns, for people: lines and characters counted from 1.
//!
//! A line ends at LF, CRLF or CR and nothing else, as everywhere in this house.

/// Where the lines of one text begin.
pub struct Lines<'t> {
    text: &'t str,
    starts: Vec<usize>,
}

/// A line and a column, both from 1; the column counts characters.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Position {
    /// Line.
    pub line: usize,
    /// Column, in characters.
    pub column: usize,
}

impl<'t> Lines<'t> {
    /// Finds the lines of `text`.
    pub fn of(text: &'t str) -> Lines<'t> {
        let bytes = text.as_bytes();
        let mut starts = vec![0];
        for (at, byte) in bytes.iter().enumerate() {
            let ends = match byte {
                b'\n' => true,
                b'\r' => bytes.get(at + 1) != Some(&b'\n'),
                _ => false,
            };
            if ends {
                starts.push(at + 1);
            }
        }
        Lines { text, starts }
    }

    /// The line that holds byte `at`, counted from 0.
    pub fn line_of(&self, at: usize) -> usize {
        self.starts
            .partition_point(|start| *start <= at)
            .saturating_sub(1)
    }

    /// Where the line begins and where its content ends, its line end not included. A line past
    /// the last is the last.
    pub fn content(&self, line: usize) -> (usize, usize) {
        let line = line.min(self.starts.len() - 1);
        let start = self.starts[line];
        let end = self
            .starts
            .get(line + 1)
            .copied()
            .unwrap_or(self.text.len());
        let held = &self.text[start..end];
        (start, start + held.trim_end_matches(['\n', '\r']).len())
    }

    /// How many lines there are; the empty one behind a last line end is one of them.
    pub fn count(&self) -> usize {
        self.starts.len()
    }

    /// The place of byte `at` for people. A byte past the end is the end, one inside a character
    /// is that character, and a byte-order mark takes no column.
    pub fn position(&self, at: usize) -> Position {
        let mut at = at.min(self.text.len());
        while !self.text.is_char_boundary(at) {
            at -= 1;
        }
        let line = self.line_of(at);
        let before = &self.text[self.starts[line]..at];
        let column = before.trim_start_matches('\u{feff}').chars().count() + 1;
        Position {
            line: line + 1,
            column,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str, byte: usize) -> (usize, usize) {
        let position = Lines::of(text).position(byte);
        (position.line, position.column)
    }

    #[test]
    fn every_line_end_counts_once() {
        let text = "a\nb\r\nc\rd";
        assert_eq!(at(text, 2), (2, 1));
        assert_eq!(at(text, 5), (3, 1));
        assert_eq!(at(text, 7), (4, 1));
        assert_eq!(Lines::of(text).count(), 4);
    }

    #[test]
    fn columns_count_characters() {
        assert_eq!(at("öl", 2), (1, 2));
        assert_eq!(at("🔧 x", 5), (1, 3));
        assert_eq!(at("\u{feff}part", 3), (1, 1));
        assert_eq!(at("\u{feff}part", 4), (1, 2));
    }

    #[test]
    fn past_the_end_is_the_end() {
        assert_eq!(at("", 9), (1, 1));
        assert_eq!(at("ab\n", 99), (2, 1));
        assert_eq!(at("ö", 1), (1, 1));
    }
}
