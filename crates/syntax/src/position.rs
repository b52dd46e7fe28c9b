//! From bytes to lines and columns, and back.
//!
//! This is the only place that counts them. Lines end at LF, CRLF or CR and at
//! nothing else. A column is counted in one of three ways, and one beyond the
//! end of its line, or in the middle of a character, is moved back to where one
//! can stand.

use crate::lines::{self, MARK};

/// What a column counts.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Columns {
    /// Characters, for people. A byte-order mark is not seen and not counted.
    Characters,
    /// UTF-16 code units, as the editors' protocol does unless told otherwise.
    Utf16,
    /// Bytes.
    Utf8,
}

/// A line and a column, both counted from zero.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct LineColumn {
    /// The line.
    pub line: u32,
    /// The column.
    pub column: u32,
}

/// Where the lines of a text start. Made once for a text, asked often.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LineIndex {
    /// The first byte of each line; there is always a first line.
    starts: Vec<u32>,
}

impl LineIndex {
    /// The lines of `text`. One that ends in a line end has an empty last line,
    /// since a cursor can stand there.
    pub fn new(text: &str) -> Self {
        let mut starts = vec![0];
        let mut at = 0;
        while let Some((_, next)) = lines::line_end(text.as_bytes(), at) {
            starts.push(u32::try_from(next).unwrap_or(u32::MAX));
            at = next;
        }
        LineIndex { starts }
    }

    /// How many lines there are: at least one.
    pub fn count(&self) -> u32 {
        u32::try_from(self.starts.len()).unwrap_or(u32::MAX)
    }

    /// The bytes of a line without its line end; the last line if there is no
    /// such line. `text` is the one the index was made for.
    pub fn line(&self, text: &str, line: u32) -> std::ops::Range<usize> {
        let line = (line as usize).min(self.starts.len() - 1);
        let start = (self.starts[line] as usize).min(text.len());
        let next = self
            .starts
            .get(line + 1)
            .map_or(text.len(), |next| *next as usize);
        let content = text.get(start..next.min(text.len())).unwrap_or("");
        // Only the last line may lack a line end.
        let length = content
            .strip_suffix("\r\n")
            .or_else(|| content.strip_suffix(['\n', '\r']))
            .map_or(content.len(), str::len);
        start..start + length
    }

    /// The line and column of byte `at`.
    pub fn position(&self, text: &str, at: u32, columns: Columns) -> LineColumn {
        let line = self
            .starts
            .partition_point(|start| *start <= at)
            .saturating_sub(1);
        let line = u32::try_from(line).unwrap_or(u32::MAX);
        let range = self.line(text, line);
        let mut end = (at as usize).clamp(range.start, range.end);
        while !text.is_char_boundary(end) {
            end -= 1;
        }
        let before = text.get(range.start..end).unwrap_or("");
        let column = match columns {
            Columns::Characters => shown(before, line).chars().count(),
            Columns::Utf16 => before.chars().map(char::len_utf16).sum(),
            Columns::Utf8 => before.len(),
        };
        LineColumn {
            line,
            column: u32::try_from(column).unwrap_or(u32::MAX),
        }
    }

    /// The byte at a line and column. A line beyond the last one is the end of the text.
    pub fn offset(&self, text: &str, position: LineColumn, columns: Columns) -> u32 {
        let LineColumn { line, column } = position;
        if line >= self.count() {
            return u32::try_from(text.len()).unwrap_or(u32::MAX);
        }
        let range = self.line(text, line);
        let content = text.get(range.clone()).unwrap_or("");
        let passed_over = match columns {
            Columns::Characters => content.len() - shown(content, line).len(),
            Columns::Utf16 | Columns::Utf8 => 0,
        };
        let mut left = column as usize;
        let mut at = range.start + passed_over;
        for c in content[passed_over..].chars() {
            let width = match columns {
                Columns::Characters => 1,
                Columns::Utf16 => c.len_utf16(),
                Columns::Utf8 => c.len_utf8(),
            };
            if left < width {
                break;
            }
            left -= width;
            at += c.len_utf8();
        }
        u32::try_from(at).unwrap_or(u32::MAX)
    }
}

/// The line without the byte-order mark that may stand before the first one.
fn shown(content: &str, line: u32) -> &str {
    if line == 0 {
        content.strip_prefix(MARK).unwrap_or(content)
    } else {
        content
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [Columns; 3] = [Columns::Characters, Columns::Utf16, Columns::Utf8];

    /// Line and column of the first `needle`, counted in all three ways.
    fn columns(text: &str, needle: &str) -> (u32, [u32; 3]) {
        let index = LineIndex::new(text);
        let at = u32::try_from(text.find(needle).unwrap()).unwrap();
        let found = ALL.map(|columns| index.position(text, at, columns));
        (found[0].line, found.map(|position| position.column))
    }

    #[test]
    fn plain_text() {
        assert_eq!(columns("fit a\nfit b\n", "b"), (1, [4, 4, 4]));
        assert_eq!(columns("fit a\nfit b", "fit a"), (0, [0, 0, 0]));
    }

    #[test]
    fn wide_characters_count_differently() {
        assert_eq!(columns("note \"🔧 x\"", "x"), (0, [8, 9, 11]));
        // A letter and its combining mark are two characters.
        assert_eq!(columns("e\u{301}x", "x"), (0, [2, 2, 3]));
        assert_eq!(columns("\t\tx", "x"), (0, [2, 2, 2]));
        assert_eq!(columns("Dichtungsfläche x", "x"), (0, [16, 16, 17]));
    }

    #[test]
    fn every_line_end_counts_once() {
        let text = "a\nb\r\nc\rd\u{2028}\u{85}\u{b}e";
        assert_eq!(columns(text, "b"), (1, [0, 0, 0]));
        assert_eq!(columns(text, "c"), (2, [0, 0, 0]));
        assert_eq!(columns(text, "d"), (3, [0, 0, 0]));
        assert_eq!(columns(text, "e"), (3, [4, 4, 7]));
        assert_eq!(LineIndex::new(text).count(), 4);
    }

    #[test]
    fn the_mark_before_the_text_is_not_seen() {
        assert_eq!(columns("\u{feff}fit a\nx", "fit"), (0, [0, 1, 3]));
        assert_eq!(columns("\u{feff}fit a\nx", "x"), (1, [0, 0, 0]));
    }

    #[test]
    fn texts_that_end_early() {
        for (text, lines) in [
            ("", 1),
            ("\n", 2),
            ("a", 1),
            ("a\n", 2),
            ("a\r\n\r\n", 3),
            ("\u{feff}", 1),
        ] {
            let index = LineIndex::new(text);
            assert_eq!(index.count(), lines, "{text:?}");
            let end = index.position(text, u32::MAX, Columns::Utf8);
            assert_eq!(end.line, lines - 1, "{text:?}");
            assert_eq!(
                index.offset(text, end, Columns::Utf8) as usize,
                text.len(),
                "{text:?}"
            );
        }
    }

    #[test]
    fn what_lies_beyond_is_moved_back() {
        let text = "ab🔧\r\nc";
        let index = LineIndex::new(text);
        let at = |line, column, columns| index.offset(text, LineColumn { line, column }, columns);
        assert_eq!(at(0, 99, Columns::Utf16), 6);
        assert_eq!(at(0, 3, Columns::Utf16), 2, "half a character");
        assert_eq!(at(0, 4, Columns::Utf16), 6);
        assert_eq!(at(7, 0, Columns::Utf16), 9);
        // In the middle of the tool, and between CR and LF.
        assert_eq!(index.position(text, 4, Columns::Utf8).column, 2);
        assert_eq!(
            index.position(text, 7, Columns::Utf8),
            LineColumn { line: 0, column: 6 }
        );
    }

    #[test]
    fn there_and_back_again() {
        let text = "\u{feff}a\tb\r\n\n🔧e\u{301} ä\rlast";
        let index = LineIndex::new(text);
        for (at, c) in text.char_indices() {
            let at = u32::try_from(at).unwrap();
            for columns in ALL {
                let position = index.position(text, at, columns);
                let back = index.offset(text, position, columns);
                let unseen = matches!(c, '\u{feff}' | '\n') && back != at;
                assert!(
                    back == at || unseen,
                    "{at} {c:?} {columns:?} {position:?} {back}"
                );
            }
        }
    }
}
