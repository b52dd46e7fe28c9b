//! One line made ready for the grammar, and the way back to its places.

use std::borrow::Cow;

use crate::hidden;
use crate::lines::{Line, is_blank};
use crate::tree::Span;

/// The words of one line as the grammar reads them.
///
/// The grammar knows one blank between two words and no hidden characters.
/// Where a line holds others, it is read from a copy without them, and every
/// place in the copy leads back to the place in the text.
pub(crate) struct Statement<'t> {
    /// What is read.
    pub text: Cow<'t, str>,
    /// Whether there may be capital letters in it.
    pub may_have_capitals: bool,
    /// Where it starts in the text.
    start: usize,
    /// Where it ends in the text.
    end: usize,
    /// For each byte of a copy, the byte of the line it came from.
    from: Option<Vec<u32>>,
}

impl<'t> Statement<'t> {
    /// The content of `line`, from its first word on.
    pub(crate) fn new(text: &'t str, line: &Line) -> Self {
        let content = &text[line.first..line.last];
        let (mut plain, mut may_have_capitals, mut before) = (true, false, b'.');
        for byte in content.bytes() {
            plain &= (0x20..0x7F).contains(&byte) && !(byte == b' ' && before == b' ');
            may_have_capitals |= byte.is_ascii_uppercase() || byte >= 0x80;
            before = byte;
        }
        let (read, from) = if plain {
            (Cow::Borrowed(content), None)
        } else {
            as_read(content)
        };
        Statement {
            text: read,
            may_have_capitals,
            start: line.first,
            end: line.last,
            from,
        }
    }

    /// The same with a quote added at its end.
    pub(crate) fn closed(&self) -> Statement<'static> {
        Statement {
            text: Cow::Owned(format!("{}\"", self.text)),
            may_have_capitals: self.may_have_capitals,
            start: self.start,
            end: self.end,
            from: self.from.clone(),
        }
    }

    /// The place in the text of byte `at` of what is read.
    pub(crate) fn place(&self, at: usize) -> u32 {
        let offset = match &self.from {
            None => at,
            Some(from) => from.get(at).map_or(usize::MAX, |from| *from as usize),
        };
        to_u32(self.start.saturating_add(offset).min(self.end))
    }

    /// The span in the text of the bytes `start..end` of what is read.
    pub(crate) fn span(&self, start: usize, end: usize) -> Span {
        let from = self.place(start);
        if end <= start {
            return Span::new(from, from);
        }
        // From the last character on, so that what was left out behind it stays out.
        let to = self.place(end - 1).saturating_add(1).min(to_u32(self.end));
        Span::new(from, to)
    }

    /// All of it.
    pub(crate) fn whole(&self) -> Span {
        Span::new(to_u32(self.start), to_u32(self.end))
    }
}

/// Texts of more than four gigabytes are refused before they come here.
pub(crate) fn to_u32(at: usize) -> u32 {
    u32::try_from(at).unwrap_or(u32::MAX)
}

/// The line without hidden characters and with one plain blank for any blanks.
/// Nothing is copied where nothing changes.
fn as_read(content: &str) -> (Cow<'_, str>, Option<Vec<u32>>) {
    let mut copy = String::with_capacity(content.len());
    let mut from = Vec::with_capacity(content.len());
    let mut after_blank = false;
    hidden::each_shown(content, |at, c| {
        let blank = is_blank(c);
        if blank && after_blank {
            return;
        }
        after_blank = blank;
        let c = if blank { ' ' } else { c };
        from.extend((0..c.len_utf8()).map(|byte| to_u32(at + byte)));
        copy.push(c);
    });
    // What is hidden at the end of a line may leave a blank before it.
    if after_blank && copy.pop().is_some() {
        from.pop();
    }
    if copy == content {
        (Cow::Borrowed(content), None)
    } else {
        (Cow::Owned(copy), Some(from))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lines::Lines;

    /// What is read of the first line of a text, and the text at each word of it.
    fn words(text: &str) -> (String, Vec<&str>) {
        let Some(line) = Lines::new(text).next() else {
            return (String::new(), Vec::new());
        };
        let statement = Statement::new(text, &line);
        let read = statement.text.clone().into_owned();
        let mut at = 0;
        let words = read.split(' ').map(|word| {
            let span = statement.span(at, at + word.len());
            at += word.len() + 1;
            &text[span.range()]
        });
        (read.clone(), words.collect())
    }

    #[test]
    fn plain_lines_are_read_as_they_stand() {
        assert_eq!(words("fit a"), ("fit a".to_owned(), vec!["fit", "a"]));
    }

    #[test]
    fn places_lead_back_over_what_was_left_out() {
        let text = "\u{feff}  fit \t be\u{202e}lt,\u{a0} ö\u{301}l\u{200b} \u{3000}x\r\n";
        let (read, words) = words(text);
        assert_eq!(read, "fit belt, ö\u{301}l x");
        assert_eq!(words, ["fit", "be\u{202e}lt,", "ö\u{301}l", "x"]);
    }

    #[test]
    fn nothing_lies_beyond_the_line() {
        let text = "do \"x\u{a0}\u{a0}y\nfit b";
        let Some(line) = Lines::new(text).next() else {
            return;
        };
        let closed = Statement::new(text, &line).closed();
        let length = closed.text.len();
        assert_eq!(&text[closed.span(3, length).range()], "\"x\u{a0}\u{a0}y");
        assert_eq!(closed.span(length, length + 9).end, 10);
    }
}
