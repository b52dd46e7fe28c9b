//! One line made ready for the grammar, and the way back to its places.

use std::borrow::Cow;

use crate::hidden;
use crate::lines::{Line, is_blank};
use crate::tree::Span;

/// The words of one line as the grammar reads them.
///
/// The grammar knows two blanks and no hidden characters. Where a line holds
/// others, it is read from a copy without them, and every place in the copy
/// leads back to the place in the text.
pub(crate) struct Statement<'t> {
    /// What is read.
    pub text: Cow<'t, str>,
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
        let (read, from) = if hidden::plain(content) {
            (Cow::Borrowed(content), None)
        } else {
            as_shown(content)
        };
        Statement {
            text: read,
            start: line.first,
            end: line.last,
            from,
        }
    }

    /// The same with a quote added at its end.
    pub(crate) fn closed(&self) -> Statement<'static> {
        let mut text = self.text.clone().into_owned();
        text.push('"');
        Statement {
            text: Cow::Owned(text),
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
        // From the last character in, so that what was left out behind it stays out.
        Span::new(
            from,
            self.place(end - 1)
                .saturating_add(1)
                .min(self.place(end).max(from)),
        )
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

/// The line without hidden characters and with plain blanks. Nothing is copied
/// where nothing changes.
fn as_shown(content: &str) -> (Cow<'_, str>, Option<Vec<u32>>) {
    let mut copy = String::with_capacity(content.len());
    let mut from = Vec::with_capacity(content.len());
    hidden::each_shown(content, |at, c| {
        let c = if is_blank(c) && c != '\t' { ' ' } else { c };
        from.extend((0..c.len_utf8()).map(|byte| to_u32(at + byte)));
        copy.push(c);
    });
    if copy == content {
        (Cow::Borrowed(content), None)
    } else {
        (Cow::Owned(copy), Some(from))
    }
}
