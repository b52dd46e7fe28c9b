//! From a text to its tree.

use std::sync::Arc;

use crate::found::Found;
use crate::hidden;
use crate::lines::{Line, Lines, Sort};
use crate::recover::{self, Above, Form};
use crate::statement::{Statement, to_u32};
use crate::tree::{Detail, Head, Item, Problem, ProblemKind, Span, Tree};

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
    reading.finish_item();
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
    /// The details of the last item so far. They move into it when it is complete, so that
    /// each item takes just the room it needs.
    details: Vec<Detail>,
    /// What the last line says.
    found: Found,
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
            Sort::Item => self.statement(Form::Item, text, line),
            Sort::Detail => self.statement(Form::Detail, text, line),
        }
    }

    fn statement(&mut self, form: Form, text: &str, line: &Line) {
        let statement = Statement::new(text, line);
        let above = self.items.last().map(|item| Above {
            head: &item.head,
            has_detail: !self.details.is_empty(),
        });
        recover::line(form, &statement, above, &mut self.found);
        if self.found.head.is_none() && self.items.is_empty() {
            self.without_item(&statement);
        }
        match self.found.head.take() {
            Some(head) => self.item(head, &statement, line),
            None => self.more_details(&statement, line),
        }
        self.problems.append(&mut self.found.problems);
        self.beside = true;
    }

    fn item(&mut self, head: Head, statement: &Statement<'_>, line: &Line) {
        self.finish_item();
        let start = self.above.take().unwrap_or(line.start);
        self.items.push(Item {
            span: statement.whole(),
            head,
            details: Vec::new(),
            lines: Span::new(to_u32(start), to_u32(line.next)),
        });
        self.details.append(&mut self.found.details);
    }

    fn more_details(&mut self, statement: &Statement<'_>, line: &Line) {
        if let Some(reason) = self.found.reason.take() {
            recover::place_reason(reason, &mut self.details, &mut self.found);
        }
        self.details.append(&mut self.found.details);
        if let Some(item) = self.items.last_mut() {
            item.span.end = statement.whole().end;
            item.lines.end = to_u32(line.next);
        }
        self.above = None;
    }

    fn finish_item(&mut self) {
        if let Some(item) = self.items.last_mut() {
            item.details = self.details.drain(..).collect();
        }
    }

    /// Details above the first item. They are kept under an item of their own
    /// that says nothing, so that the lines below it are one problem and not many.
    fn without_item(&mut self, statement: &Statement<'_>) {
        self.found.head = Some(Head::Unreadable {
            kind: None,
            verb: None,
            name: None,
            mentions: Vec::new(),
        });
        // One problem a line, and this is the one that explains the others.
        self.found.problems.clear();
        let kind = ProblemKind::DetailWithoutItem;
        self.found.problems.push(Problem {
            span: statement.whole(),
            kind,
        });
    }
}
