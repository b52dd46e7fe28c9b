//! A text cut into lines.
//!
//! Lines end at LF, CRLF or CR and at nothing else. Joined again with their
//! line ends they are the text, byte for byte.

use crate::hidden;

/// What a line is, told from its first characters alone.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Sort {
    /// Nothing but blanks.
    Blank,
    /// A comment and nothing else, at the margin.
    Comment,
    /// A comment and nothing else, indented.
    IndentedComment,
    /// Something at the margin.
    Item,
    /// Something indented.
    Detail,
}

/// One line, by its places in the text.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Line {
    /// First byte; behind the byte-order mark on the first line.
    pub start: usize,
    /// First byte that is no blank and not hidden; `end` if there is none.
    pub first: usize,
    /// One past the last byte that is no blank and not hidden.
    pub last: usize,
    /// One past the last byte before the line end.
    pub end: usize,
    /// Where the next line starts.
    pub next: usize,
    /// What it is.
    pub sort: Sort,
}

/// The byte-order mark that some editors put first.
pub(crate) const MARK: &str = "\u{FEFF}";

/// Whether the character separates words. The blanks of typesetting come along
/// when a plan is copied from a page.
pub(crate) fn is_blank(c: char) -> bool {
    matches!(
        c,
        ' ' | '\t' | '\u{A0}' | '\u{1680}' | '\u{2000}'
            ..='\u{200A}' | '\u{202F}' | '\u{205F}' | '\u{3000}'
    )
}

/// The lines of a text, first to last. A text that ends in a line end has no
/// empty line behind it.
pub(crate) struct Lines<'t> {
    text: &'t str,
    at: usize,
}

impl<'t> Lines<'t> {
    pub(crate) fn new(text: &'t str) -> Self {
        let at = if text.starts_with(MARK) {
            MARK.len()
        } else {
            0
        };
        Lines { text, at }
    }
}

impl Iterator for Lines<'_> {
    type Item = Line;

    fn next(&mut self) -> Option<Line> {
        if self.at >= self.text.len() {
            return None;
        }
        let start = self.at;
        let length = self.text.len();
        let (end, next) = line_end(self.text.as_bytes(), start).unwrap_or((length, length));
        self.at = next;
        let content = &self.text[start..end];
        let unseen = |c: char| is_blank(c) || hidden::may_be_hidden(c);
        let words = content.trim_start_matches(unseen);
        let first = end - words.len();
        // A joiner at the end of a line may belong to its last word.
        let unseen = |c: char| unseen(c) && !matches!(c, '\u{200C}' | '\u{200D}');
        let last = first + words.trim_end_matches(unseen).len();
        let indented = self.text[start..first].contains(is_blank);
        let sort = match (words.bytes().next(), indented) {
            (None, _) => Sort::Blank,
            (Some(b'#'), false) => Sort::Comment,
            (Some(b'#'), true) => Sort::IndentedComment,
            (_, false) => Sort::Item,
            (_, true) => Sort::Detail,
        };
        Some(Line {
            start,
            first,
            last,
            end,
            next,
            sort,
        })
    }
}

/// Where the line that begins at `start` ends, and where the next one starts;
/// `None` if the text ends first.
pub(crate) fn line_end(bytes: &[u8], start: usize) -> Option<(usize, usize)> {
    let rest = bytes.get(start..)?;
    let end = start + rest.iter().position(|byte| matches!(byte, b'\n' | b'\r'))?;
    let both = bytes[end] == b'\r' && bytes.get(end + 1) == Some(&b'\n');
    Some((end, end + 1 + usize::from(both)))
}

/// The kind of line end that the text has most of; of equals the one that comes first.
pub(crate) fn end_of_line(text: &str) -> &'static str {
    let (mut lf, mut crlf, mut cr) = (0, 0, 0);
    let mut first = "\n";
    for line in Lines::new(text) {
        let (kind, count) = match &text[line.end..line.next] {
            "\n" => ("\n", &mut lf),
            "\r\n" => ("\r\n", &mut crlf),
            "\r" => ("\r", &mut cr),
            _ => continue,
        };
        *count += 1;
        if lf + crlf + cr == 1 {
            first = kind;
        }
    }
    let most = lf.max(crlf).max(cr);
    let has_most = |kind: &str| match kind {
        "\r\n" => crlf == most,
        "\r" => cr == most,
        _ => lf == most,
    };
    if has_most(first) {
        return first;
    }
    ["\n", "\r\n", "\r"]
        .into_iter()
        .find(|kind| has_most(kind))
        .unwrap_or("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut(text: &str) -> Vec<(&str, Sort)> {
        Lines::new(text)
            .map(|line| (&text[line.first..line.last], line.sort))
            .collect()
    }

    #[test]
    fn every_line_end_is_known() {
        assert_eq!(
            cut("a\n  b\r\n\r# c\r  # d\n\u{a0}e"),
            [
                ("a", Sort::Item),
                ("b", Sort::Detail),
                ("", Sort::Blank),
                ("# c", Sort::Comment),
                ("# d", Sort::IndentedComment),
                ("e", Sort::Detail),
            ]
        );
    }

    #[test]
    fn other_separators_end_no_line() {
        assert_eq!(Lines::new("a\u{2028}b\u{85}c\u{b}d\u{c}e").count(), 1);
    }

    #[test]
    fn a_mark_at_the_start_is_no_part_of_the_first_line() {
        assert_eq!(cut("\u{feff}fit a"), [("fit a", Sort::Item)]);
        assert_eq!(cut("\u{feff}"), []);
        assert_eq!(cut(""), []);
    }

    #[test]
    fn joined_lines_are_the_text() {
        let text = "a \n\n\r\n  b\t\r c";
        let joined: String = Lines::new(text)
            .map(|line| &text[line.start..line.next])
            .collect();
        assert_eq!(joined, text);
    }
}
