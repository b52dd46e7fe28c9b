//! A plan in its one tidy form.
//!
//! One blank between words, details indented by two, lists as `a, b`, a blank
//! between a figure and its unit, comments two blanks behind what they comment
//! on, at most one blank line in a row, line ends of one kind. Words stay as
//! they were written and lines stay where they were. A line that could not be
//! read is left as it is, byte for byte.

use crate::grammar::{Piece, Rule};
use crate::lines::{Line, Lines, MARK, Sort, end_of_line};
use crate::recover::{self, Form};
use crate::salvage;
use crate::statement::Statement;
use crate::tree::{ProblemKind, Tree};

/// The text of `tree` in its tidy form. It says the same, and is its own tidy form.
pub fn tidy(tree: &Tree) -> String {
    let text: &str = &tree.text;
    let mut out = String::with_capacity(text.len() + 16);
    if text.starts_with(MARK) {
        out.push_str(MARK);
    }
    let end_of_line = end_of_line(text);
    let spoilt = Spoilt::new(tree);
    let mut blank_before = false;
    let mut first = true;
    for line in Lines::new(text) {
        if line.sort == Sort::Blank && !spoilt.contains(&line) {
            blank_before = true;
            continue;
        }
        // None at the top, unless a stray mark would then be taken for that of the text.
        if blank_before && (!first || text[line.start..].starts_with(MARK)) {
            out.push_str(end_of_line);
        }
        (blank_before, first) = (false, false);
        if spoilt.contains(&line) {
            out.push_str(&text[line.start..line.end]);
        } else {
            one_line(text, &line, &mut out);
        }
        out.push_str(end_of_line);
    }
    out
}

/// The places of problems that make a line one to be left alone, in order.
struct Spoilt(Vec<u32>);

impl Spoilt {
    fn new(tree: &Tree) -> Self {
        let told = tree
            .problems
            .iter()
            .filter(|problem| problem.kind != ProblemKind::Capitals);
        Spoilt(told.map(|problem| problem.span.start).collect())
    }

    fn contains(&self, line: &Line) -> bool {
        let next = self.0.partition_point(|at| (*at as usize) < line.start);
        self.0.get(next).is_some_and(|at| *at as usize <= line.end)
    }
}

fn one_line(text: &str, line: &Line, out: &mut String) {
    match line.sort {
        Sort::Blank => {}
        Sort::Comment => out.push_str(&text[line.first..line.last]),
        Sort::IndentedComment => {
            out.push_str("  ");
            out.push_str(&text[line.first..line.last]);
        }
        Sort::Item => statement(Form::Item, text, line, out),
        Sort::Detail => {
            out.push_str("  ");
            statement(Form::Detail, text, line, out);
        }
    }
}

/// What to do at a byte of a statement.
enum Mark {
    /// A blank stands here.
    Blank,
    /// A quoted text of the given length in the statement: it is copied as it stands in
    /// the text.
    Quoted(usize),
}

fn statement(form: Form, text: &str, line: &Line, out: &mut String) {
    let statement = Statement::new(text, line);
    let read: &str = &statement.text;
    let mut marks: Vec<(usize, Mark)> = Vec::new();
    let end = recover::walk(form, read, |piece, at| mark(piece, at, read, &mut marks));
    let Some(end) = end else {
        // Every line that does not fit has a problem, so none comes here; and if one did,
        // leaving it alone would be right.
        out.push_str(&text[line.first..line.last]);
        return;
    };
    marks.retain(|(place, _)| *place < end);
    let mut at = 0;
    for (place, mark) in marks {
        words(&read[at..place], out);
        at = place;
        match mark {
            Mark::Blank => blank(out),
            Mark::Quoted(length) => {
                out.push_str(&text[statement.span(place, place + length).range()]);
                at += length;
            }
        }
    }
    words(&read[at..end], out);
    let comment = read[end..].trim_start_matches(' ');
    if !comment.is_empty() {
        // With a blank before it, `bolts#10-32 seen` would become a thread.
        if !(read[end..].starts_with('#') && salvage::begins_thread(read, end)) {
            out.push_str("  ");
        }
        out.push_str(&text[statement.place(read.len() - comment.len()) as usize..line.last]);
    }
}

fn mark(piece: Piece<'_>, base: usize, read: &str, marks: &mut Vec<(usize, Mark)>) {
    let group = piece.as_rule() == Rule::detail_group;
    if piece.as_rule() == Rule::detail_remark {
        let length = piece.as_str().len();
        return marks.push((base + piece.as_span().start(), Mark::Quoted(length)));
    }
    for inner in piece.into_inner().flatten() {
        let span = inner.as_span();
        let (start, end) = (base + span.start(), base + span.end());
        match inner.as_rule() {
            Rule::quoted => marks.push((start, Mark::Quoted(end - start))),
            // The degree sign alone stands close to its figure.
            Rule::unit if read.get(start..end) != Some("°") => marks.push((start, Mark::Blank)),
            Rule::times if group => {
                marks.push((start, Mark::Blank));
                marks.push((end, Mark::Blank));
            }
            _ => {}
        }
    }
}

/// A blank, unless one is there.
fn blank(out: &mut String) {
    if !out.ends_with(' ') {
        out.push(' ');
    }
}

/// Words outside quotes, whose blanks are single already.
fn words(text: &str, out: &mut String) {
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        let sign = ["..", "+/-", "+-", "±", ","]
            .into_iter()
            .find(|sign| rest.starts_with(sign));
        match sign {
            Some(",") => {
                out.truncate(out.trim_end_matches(' ').len());
                out.push_str(", ");
                rest = rest[1..].trim_start_matches(' ');
            }
            Some("..") => {
                out.truncate(out.trim_end_matches(' ').len());
                out.push_str("..");
                rest = rest[2..].trim_start_matches(' ');
            }
            Some(sign) => {
                blank(out);
                out.push_str(sign);
                out.push(' ');
                rest = rest[sign.len()..].trim_start_matches(' ');
            }
            None if c == ' ' => {
                blank(out);
                rest = &rest[1..];
            }
            None => {
                out.push(c);
                rest = &rest[c.len_utf8()..];
            }
        }
    }
}
