//! From a text to its tree.

use std::sync::Arc;

use crate::hidden;
use crate::lines::{Line, Lines, Sort};
use crate::recover::{self, Read};
use crate::statement::{Statement, to_u32};
use crate::tree::{Head, Item, Problem, ProblemKind, Span, Tree};

/// The longest text that is read, in bytes: far beyond any plan, and small
/// enough for places to fit in 32 bits.
pub const LONGEST: usize = 64 * 1024 * 1024;

/// Why a file was not read at all.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Refused {
    /// It is longer than [`LONGEST`].
    TooLong {
        /// Its length in bytes.
        length: usize,
    },
    /// It is not UTF-8.
    NotText {
        /// The first byte that is none.
        at: usize,
    },
}

/// Reads what stands in a file.
///
/// # Errors
/// When it is too long, or not UTF-8.
pub fn read_bytes(bytes: &[u8]) -> Result<Tree, Refused> {
    if bytes.len() > LONGEST {
        return Err(Refused::TooLong {
            length: bytes.len(),
        });
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => Ok(read(text)),
        Err(error) => Err(Refused::NotText {
            at: error.valid_up_to(),
        }),
    }
}

/// Reads a text. This never fails: what cannot be read becomes a problem of its
/// line, and every other line is there.
///
/// Texts from outside go through [`read_bytes`]; in one longer than 4 GiB the
/// places beyond that length are not told apart.
pub fn read(text: impl Into<Arc<str>>) -> Tree {
    let text = text.into();
    let mut reading = Reading::default();
    for line in Lines::new(&text) {
        hidden::report(&text, &line, &mut reading.problems);
        reading.line(&text, &line);
    }
    let Reading {
        items,
        mut problems,
        ..
    } = reading;
    problems.sort_by_key(|problem| problem.span);
    Tree {
        text,
        items,
        problems,
    }
}

#[derive(Default)]
struct Reading {
    items: Vec<Item>,
    problems: Vec<Problem>,
    /// Where the comment lines directly above the next line start.
    above: Option<usize>,
    /// Whether the line before belongs to the last item.
    beside: bool,
}

impl Reading {
    fn line(&mut self, text: &str, line: &Line) {
        match line.sort {
            Sort::Blank => {
                self.above = None;
                self.beside = false;
            }
            Sort::Comment => {
                self.above.get_or_insert(line.start);
                self.beside = false;
            }
            // An indented comment is about the item it is indented under.
            Sort::IndentedComment => match self.items.last_mut() {
                Some(item) if self.beside => item.lines.end = to_u32(line.next),
                _ => {
                    self.above.get_or_insert(line.start);
                }
            },
            Sort::Item => {
                let statement = Statement::new(text, line);
                let above = self.items.last();
                let read = recover::item_line(&statement, above, &mut self.problems);
                self.take(read, &statement, line);
            }
            Sort::Detail => {
                let statement = Statement::new(text, line);
                if self.items.is_empty() {
                    self.without_item(&statement, line);
                    return;
                }
                let above = self.items.last();
                let read = recover::detail_line(&statement, above, &mut self.problems);
                self.take(read, &statement, line);
            }
        }
    }

    fn take(&mut self, read: Read, statement: &Statement<'_>, line: &Line) {
        let whole = statement.whole();
        match read {
            Read::Item(head, details) => {
                let start = self.above.take().unwrap_or(line.start);
                let lines = Span::new(to_u32(start), to_u32(line.next));
                self.items.push(Item {
                    span: whole,
                    head,
                    details,
                    lines,
                });
            }
            Read::Details(details, reason) => {
                if let Some(item) = self.items.last_mut() {
                    if let (Some(last), Some(reason)) = (item.details.last_mut(), reason) {
                        last.span = last.span.to(reason.span);
                        last.because = Some(reason);
                    }
                    item.details.extend(details);
                    item.span.end = whole.end;
                    item.lines.end = to_u32(line.next);
                }
                self.above = None;
            }
        }
        self.beside = true;
    }

    /// Details above the first item. They are kept under an item of their own
    /// that says nothing, so that the lines below it are one problem and not many.
    fn without_item(&mut self, statement: &Statement<'_>, line: &Line) {
        let head = Head::Unreadable {
            kind: None,
            verb: None,
            name: None,
            mentions: Vec::new(),
        };
        let mut found = Vec::new();
        let read = match recover::detail_line(statement, None, &mut found) {
            Read::Details(details, _) => {
                // One problem a line, and this is the one that explains the others.
                let kind = ProblemKind::DetailWithoutItem;
                self.problems.push(Problem {
                    span: statement.whole(),
                    kind,
                });
                Read::Item(head, details)
            }
            item => {
                self.problems.append(&mut found);
                item
            }
        };
        self.take(read, statement, line);
    }
}
