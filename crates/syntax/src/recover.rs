//! One line read, whatever stands in it.
//!
//! Nearly every line fits the grammar at once. For one that does not, this
//! finds the place where it stops making sense, keeps what stands before it,
//! and keeps the names that stand behind it.

use crate::convert::Ground;
use crate::dispatch;
use crate::found::{Found, Reason};
use crate::grammar::{self, Piece, Rule};
use crate::near::nearest_word;
use crate::phrases;
use crate::salvage;
use crate::statement::Statement;
use crate::tree::{Detail, Head, Problem, ProblemKind, Says};
use crate::trouble;

/// What stands above a line.
#[derive(Clone, Copy)]
pub(crate) struct Above<'a> {
    /// The head of the item.
    pub head: &'a Head,
    /// Whether it has a detail already.
    pub has_detail: bool,
}

/// How a line is read: at the margin or indented.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Form {
    Item,
    Detail,
}

impl Form {
    fn other(self) -> Form {
        match self {
            Form::Item => Form::Detail,
            Form::Detail => Form::Item,
        }
    }

    /// Whether `word` begins lines of this form.
    pub(crate) fn begins_with(self, word: &str) -> bool {
        match self {
            Form::Item => dispatch::head(word).is_some(),
            Form::Detail => !dispatch::details(word).is_empty(),
        }
    }
}

/// A line of more bytes is not read: no person writes one, and reading it would
/// take many times its size in memory.
const LONGEST_LINE: usize = 256 * 1024;

/// Reads a line and leaves in `found` what it says: an item if there is a head,
/// else details of the item above.
pub(crate) fn line(
    form: Form,
    statement: &Statement<'_>,
    above: Option<Above<'_>>,
    found: &mut Found,
) {
    found.clear();
    if statement.text.len() > LONGEST_LINE {
        return too_long(form, statement, found);
    }
    if whole(form, statement, above, found) || closed(form, statement, above, found) {
        return;
    }
    // A detail that has lost its indent still belongs to the item above it, and an item that
    // was indented by mistake is still an item; but only where the line is beyond doubt.
    let other = form.other();
    let placed = above.is_some() || other == Form::Item;
    if placed && whole(other, statement, above, found) {
        found.problems.push(trouble::margin(statement, form));
        return;
    }
    part(form, statement, above, found);
}

/// Reads the line to its end, or not at all.
fn whole(
    form: Form,
    statement: &Statement<'_>,
    above: Option<Above<'_>>,
    found: &mut Found,
) -> bool {
    found.clear();
    let has_detail = above.is_some_and(|above| above.has_detail);
    let read = walk(form, &statement.text, |piece, at| {
        found.take(piece, Ground::new(statement, at), has_detail);
    });
    if read.is_none() {
        found.clear();
    }
    read.is_some()
}

/// Hands each head and detail of the line to `take`, with the byte at which it begins, and
/// says where the last one ends: behind it there is nothing, or a comment. `None` where the
/// line does not fit.
pub(crate) fn walk<'i>(
    form: Form,
    text: &'i str,
    mut take: impl FnMut(Piece<'i>, usize),
) -> Option<usize> {
    let mut at = 0;
    let mut wants_head = form == Form::Item;
    loop {
        let piece = piece(&text[at..], wants_head)?;
        wants_head = false;
        let length = piece.as_span().end();
        take(piece, at);
        at += length;
        let rest = &text[at..];
        let behind = rest.strip_prefix(' ').unwrap_or(rest);
        if behind.is_empty() || behind.starts_with('#') {
            return Some(at);
        }
        if behind.len() == rest.len() {
            return None;
        }
        at += 1;
    }
}

/// The head or detail that the text begins with.
fn piece(text: &str, head: bool) -> Option<Piece<'_>> {
    let word = dispatch::first_word(text);
    if head {
        return grammar::read_start(dispatch::head(word)?, text);
    }
    dispatch::details(word)
        .iter()
        .find_map(|rule| grammar::read_start(*rule, text))
}

/// Reads the line as if a quoted text that is never closed ended with it.
fn closed(
    form: Form,
    statement: &Statement<'_>,
    above: Option<Above<'_>>,
    found: &mut Found,
) -> bool {
    let Some(quote) = trouble::open_quote(&statement.text) else {
        return false;
    };
    if !whole(form, &statement.closed(), above, found) {
        return false;
    }
    found.problems.push(trouble::open(quote, statement));
    true
}

fn too_long(form: Form, statement: &Statement<'_>, found: &mut Found) {
    let kind = ProblemKind::Unreadable {
        wanted: vec!["a shorter line"],
        near: None,
    };
    found.problems.push(Problem {
        span: statement.whole(),
        kind,
    });
    match form {
        Form::Item => found.head = Some(salvage::head(statement)),
        Form::Detail => found.details.push(unreadable(statement, 0)),
    }
}

/// Keeps what can be kept of a line that does not fit.
fn part(form: Form, statement: &Statement<'_>, above: Option<Above<'_>>, found: &mut Found) {
    let text: &str = &statement.text;
    let rule = match form {
        Form::Item => Rule::item_part,
        Form::Detail => Rule::detail_part,
    };
    let mut end = 0;
    let mut pieces: Vec<Piece<'_>> = Vec::new();
    if let Some(start) = grammar::read_start(rule, text) {
        end = start.as_span().end();
        pieces.extend(start.into_inner());
    }
    drop_doubtful(form, &mut pieces, &mut end, text);
    let ground = Ground::new(statement, 0);
    let has_detail = above.is_some_and(|above| above.has_detail);
    for piece in pieces {
        found.take(piece, ground, has_detail);
    }
    // One line, one problem: the others would only repeat that something is wrong here.
    found.problems.clear();
    if form == Form::Item && found.head.is_none() {
        found.head = Some(salvage::head(statement));
    }
    let head = found.head.as_ref().or(above.map(|above| above.head));
    found.problems.push(trouble::problem(form, statement, head));
    // A head that could not be read speaks for its whole line.
    if !matches!(found.head, Some(Head::Unreadable { .. })) {
        found.details.push(unreadable(statement, end));
    }
}

/// Gives up the last detail where what follows may well be its garbled end:
/// `after belt iz fitted` must not be taken for `after belt`.
fn drop_doubtful(form: Form, pieces: &mut Vec<Piece<'_>>, end: &mut usize, text: &str) {
    let Some(last) = pieces.last() else { return };
    if (form == Form::Item && pieces.len() == 1) || last.as_rule() == Rule::detail_because {
        return;
    }
    let next = salvage::words(text, *end)
        .first()
        .map_or("", |(_, word)| *word);
    let likely = |word: &str| {
        word.chars().count() > 3 && nearest_word(word, phrases::first_words(None)).is_some()
    };
    if !dispatch::details(next).is_empty() || likely(next) {
        return;
    }
    if let Some(last) = pieces.pop() {
        *end = last.as_span().start();
    }
}

/// The detail that stands for all that could not be read from byte `from` on.
fn unreadable(statement: &Statement<'_>, from: usize) -> Detail {
    let text = &statement.text;
    let start = text.len() - text[from..].trim_start_matches(' ').len();
    let found = salvage::words(text, start);
    Detail {
        span: statement.span(start, text.len()),
        keyword: statement.span(start, start + trouble::word_at(text, start).len()),
        says: Says::Unreadable {
            mentions: salvage::mentions(&found, statement),
        },
        because: None,
    }
}

/// Puts a reason that began a line behind the last of `details`.
pub(crate) fn place_reason(reason: Reason, details: &mut [Detail], found: &mut Found) {
    let placed = details
        .last_mut()
        .is_some_and(|detail| reason.behind(detail));
    if !placed {
        found.no_place_for(reason.span);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lines::{Lines, Sort};
    use crate::words::{DETAILS, item_words};

    /// What the grammar alone makes of the line: each head or detail, its rule and its extent.
    fn by_grammar(form: Form, text: &str) -> Option<Vec<(Rule, usize, usize)>> {
        let rule = match form {
            Form::Item => Rule::item_line,
            Form::Detail => Rule::detail_line,
        };
        let pieces = grammar::read_start(rule, text)?.into_inner();
        let pieces = pieces.filter(|piece| piece.as_rule() != Rule::EOI);
        Some(
            pieces
                .map(|piece| {
                    (
                        piece.as_rule(),
                        piece.as_span().start(),
                        piece.as_span().end(),
                    )
                })
                .collect(),
        )
    }

    fn by_first_words(form: Form, text: &str) -> Option<Vec<(Rule, usize, usize)>> {
        let mut found = Vec::new();
        walk(form, text, |piece, at| {
            found.push((
                piece.as_rule(),
                at + piece.as_span().start(),
                at + piece.as_span().end(),
            ));
        })?;
        Some(found)
    }

    fn same_both_ways(text: &str) {
        for form in [Form::Item, Form::Detail] {
            assert_eq!(
                by_first_words(form, text),
                by_grammar(form, text),
                "{text:?}"
            );
        }
    }

    fn lines() -> Vec<String> {
        let sample = include_str!("../../../tests/plans/sample.rebuild");
        let statements = Lines::new(sample)
            .filter(|line| matches!(line.sort, Sort::Item | Sort::Detail))
            .map(|line| Statement::new(sample, &line).text.into_owned());
        let details = DETAILS.iter().map(|detail| detail.sample.to_owned());
        let pairs = DETAILS
            .windows(2)
            .map(|two| format!("{} {}", two[0].sample, two[1].sample));
        let items = item_words()
            .flat_map(|word| [format!("{word} x given"), format!("{word} \"x\" given # y")]);
        statements
            .chain(details)
            .chain(pairs)
            .chain(items)
            .collect()
    }

    #[test]
    fn looking_words_up_and_trying_every_rule_come_to_the_same() {
        for line in lines() {
            same_both_ways(&line);
        }
    }

    #[test]
    fn they_do_for_spoilt_lines_as_well() {
        for line in lines() {
            for at in (0..line.len()).filter(|at| line.is_char_boundary(*at)) {
                let (before, behind) = line.split_at(at);
                same_both_ways(before);
                for inserted in [" ", "-", "x", ",", "\"", "#", "8", "."] {
                    same_both_ways(&format!("{before}{inserted}{behind}"));
                }
            }
        }
    }
}
