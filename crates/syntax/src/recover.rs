//! One line read, whatever stands in it.
//!
//! Nearly every line fits the grammar at once. For one that does not, this
//! finds the place where it stops making sense, keeps what stands before it,
//! and keeps the names that stand behind it.

use crate::convert;
use crate::grammar::{self, Piece, Pieces, Rule, Stop};
use crate::near::nearest_word;
use crate::phrases;
use crate::salvage;
use crate::statement::Statement;
use crate::tree::{Detail, Head, Item, Name, Problem, ProblemKind, Quoted, Says};
use crate::words;

/// What a line turned out to be.
pub(crate) enum Read {
    /// An item with the details on its own line.
    Item(Head, Vec<Detail>),
    /// Details of the item above, and the reason, if it comes first, of the last
    /// detail before them.
    Details(Vec<Detail>, Option<Quoted>),
}

/// A line is refused above this many bytes: no person writes one, and reading it
/// would take many times its size in memory.
const LONGEST_LINE: usize = 256 * 1024;

/// Reads a line at the margin. `above` is the item it stands below.
pub(crate) fn item_line(
    statement: &Statement<'_>,
    above: Option<&Item>,
    problems: &mut Vec<Problem>,
) -> Read {
    if let Some(read) = whole(Rule::item_line, statement, above, problems) {
        return read;
    }
    // A detail that has lost its indent still belongs to the item above.
    if above.is_some() && begins_detail(statement) {
        let mut found = Vec::new();
        if let Some(read) = whole(Rule::detail_line, statement, above, &mut found) {
            problems.push(wrong_margin(statement, false));
            problems.append(&mut found);
            return read;
        }
    }
    part(Rule::item_line, statement, above, problems)
}

/// Reads an indented line. `above` is the item it belongs to.
pub(crate) fn detail_line(
    statement: &Statement<'_>,
    above: Option<&Item>,
    problems: &mut Vec<Problem>,
) -> Read {
    if let Some(read) = whole(Rule::detail_line, statement, above, problems) {
        return read;
    }
    // An item that has been indented by mistake is still an item.
    let mut found = Vec::new();
    if let Some(read) = whole(Rule::item_line, statement, above, &mut found) {
        problems.push(wrong_margin(statement, true));
        problems.append(&mut found);
        return read;
    }
    part(Rule::detail_line, statement, above, problems)
}

/// The line read to its end, if need be with a closing quote added.
fn whole(
    rule: Rule,
    statement: &Statement<'_>,
    above: Option<&Item>,
    problems: &mut Vec<Problem>,
) -> Option<Read> {
    if statement.text.len() > LONGEST_LINE {
        return None;
    }
    if let Ok(pieces) = grammar::read(rule, &statement.text) {
        capitals(&pieces, statement, problems);
        return Some(read(inside(pieces), statement, above, problems));
    }
    let quote = open_quote(&statement.text)?;
    let closed = statement.closed();
    let pieces = grammar::read(rule, &closed.text).ok()?;
    let read = read(inside(pieces), &closed, above, problems);
    problems.push(open(quote, statement));
    Some(read)
}

/// What can be kept of a line that does not fit.
fn part(
    rule: Rule,
    statement: &Statement<'_>,
    above: Option<&Item>,
    problems: &mut Vec<Problem>,
) -> Read {
    let item = rule == Rule::item_line;
    if statement.text.len() > LONGEST_LINE {
        let kind = ProblemKind::Unreadable {
            wanted: vec!["a shorter line"],
            near: None,
        };
        problems.push(Problem {
            span: statement.whole(),
            kind,
        });
        return if item {
            Read::Item(salvage::head(statement), Vec::new())
        } else {
            Read::Details(vec![unreadable(statement, 0)], None)
        };
    }
    let kept = grammar::read_start(
        if item {
            Rule::item_part
        } else {
            Rule::detail_part
        },
        &statement.text,
    );
    let (mut pieces, mut end) = match kept {
        Some(piece) => {
            let end = piece.as_span().end();
            (piece.into_inner().collect(), end)
        }
        None => (Vec::new(), 0),
    };
    drop_doubtful(&mut pieces, &mut end, item, statement);
    let mut read = if item && pieces.is_empty() {
        Read::Item(salvage::head(statement), Vec::new())
    } else {
        read(pieces.into_iter(), statement, above, problems)
    };
    let head = match &read {
        Read::Item(head, _) => Some(head),
        Read::Details(..) => above.map(|item| &item.head),
    };
    problems.push(problem(rule, statement, head));
    match &mut read {
        // A head that could not be read speaks for its whole line.
        Read::Item(Head::Unreadable { .. }, _) => {}
        Read::Item(_, details) | Read::Details(details, _) => {
            details.push(unreadable(statement, end));
        }
    }
    read
}

/// Gives up the last detail where what follows may well be its garbled end:
/// `after belt iz fitted` must not be taken for `after belt`.
fn drop_doubtful(
    pieces: &mut Vec<Piece<'_>>,
    end: &mut usize,
    item: bool,
    statement: &Statement<'_>,
) {
    let Some(last) = pieces.last() else { return };
    if (item && pieces.len() == 1) || last.as_rule() == Rule::detail_because {
        return;
    }
    let next = salvage::words(&statement.text, *end)
        .first()
        .map_or("", |(_, word)| *word);
    let begins_another = phrases::first_words(None).any(|word| word == next)
        || (next.chars().count() > 3 && nearest_word(next, phrases::first_words(None)).is_some());
    if begins_another {
        return;
    }
    if let Some(last) = pieces.pop() {
        *end = last.as_span().start();
    }
}

/// The tree of pieces that were read.
fn read<'i>(
    pieces: impl Iterator<Item = Piece<'i>>,
    statement: &Statement<'_>,
    above: Option<&Item>,
    problems: &mut Vec<Problem>,
) -> Read {
    let mut head = None;
    let mut details: Vec<Detail> = Vec::new();
    let mut reason = None;
    for piece in pieces {
        match piece.as_rule() {
            Rule::EOI => {}
            Rule::detail_because => {
                let span = convert::span_of(&piece, statement);
                let quoted = piece.into_inner().next();
                let because = quoted.map(|piece| Quoted {
                    span: convert::span_of(&piece, statement),
                });
                let before = details.last_mut();
                let above = head.is_none() && above.is_some_and(|item| !item.details.is_empty());
                match before {
                    Some(detail) if detail.because.is_none() => {
                        detail.span = detail.span.to(span);
                        detail.because = because;
                    }
                    None if above && reason.is_none() => reason = because,
                    _ => {
                        let kind = ProblemKind::Unreadable {
                            wanted: vec!["a further detail"],
                            near: None,
                        };
                        problems.push(Problem { span, kind });
                    }
                }
            }
            _ if convert::is_head(piece.as_rule()) => {
                if let Some((read, members)) = convert::head(piece, statement) {
                    head = Some(read);
                    details.extend(members);
                }
            }
            _ => details.extend(convert::detail(piece, statement)),
        }
    }
    match head {
        Some(head) => Read::Item(head, details),
        None => Read::Details(details, reason),
    }
}

/// What is wrong with the line, and where.
fn problem(rule: Rule, statement: &Statement<'_>, head: Option<&Head>) -> Problem {
    let text = &statement.text;
    let stop = grammar::stop(rule, text).unwrap_or(Stop {
        at: 0,
        wanted: Vec::new(),
    });
    let at = stop.at.min(text.len());
    if let Some(quote) = open_quote(text) {
        // An inch mark or a quote inside a text ends it early: the fault shows behind the
        // first quote, and the quotes are what must be looked at.
        if text.find('"').is_some_and(|first| first <= at) {
            return open(quote, statement);
        }
    }
    let word = word_at(text, at);
    if at == 0 && !begins(rule, word) {
        let near = if rule == Rule::item_line {
            nearest_word(word, words::item_words())
        } else {
            nearest_word(word, phrases::first_words(head.and_then(words::place_of)))
        };
        let kind = ProblemKind::UnknownWord {
            near,
            detail: rule == Rule::detail_line,
        };
        return Problem {
            span: statement.span(0, word.len()),
            kind,
        };
    }
    if at == 0 {
        // The word is known, so what is wrong sits right behind it.
        let at = word.len();
        let kind = ProblemKind::Unreadable {
            wanted: vec!["a blank"],
            near: None,
        };
        return Problem {
            span: statement.span(at, at + word_at(text, at).len()),
            kind,
        };
    }
    let near = nearest_word(word, phrases::known_words(&stop.wanted, head));
    let kind = ProblemKind::Unreadable {
        wanted: phrases::phrases(&stop.wanted),
        near,
    };
    Problem {
        span: statement.span(at, at + word.len()),
        kind,
    }
}

/// Whether `word` begins lines of this sort.
fn begins(rule: Rule, word: &str) -> bool {
    if rule == Rule::item_line {
        words::item_words().any(|known| known == word)
    } else {
        phrases::first_words(None).any(|known| known == word)
    }
}

fn begins_detail(statement: &Statement<'_>) -> bool {
    let word = word_at(&statement.text, 0);
    begins(Rule::detail_line, word) || word.starts_with(|c: char| c.is_ascii_digit())
}

/// The word that stands at byte `at`, or the one character that stands there.
fn word_at(text: &str, at: usize) -> &str {
    let rest = text.get(at..).unwrap_or("");
    let mut end = rest
        .find(|c: char| !(c.is_alphanumeric() || c == '-'))
        .unwrap_or(rest.len());
    if end == 0 {
        end = rest
            .chars()
            .next()
            .filter(|c| *c != ' ' && *c != '\t')
            .map_or(0, char::len_utf8);
    }
    &rest[..end]
}

/// The detail that stands for all that could not be read from byte `from` on.
fn unreadable(statement: &Statement<'_>, from: usize) -> Detail {
    let text = &statement.text;
    let start = from + (text[from..].len() - text[from..].trim_start_matches([' ', '\t']).len());
    let found = salvage::words(text, start);
    let mentions: Vec<Name> = salvage::mentions(&found, statement);
    Detail {
        span: statement.span(start, text.len()),
        keyword: statement.span(start, start + word_at(text, start).len()),
        says: Says::Unreadable { mentions },
        because: None,
    }
}

fn wrong_margin(statement: &Statement<'_>, detail: bool) -> Problem {
    let word = word_at(&statement.text, 0);
    let kind = ProblemKind::UnknownWord { near: None, detail };
    Problem {
        span: statement.span(0, word.len()),
        kind,
    }
}

/// Where the quoted text starts that is never closed.
fn open_quote(text: &str) -> Option<usize> {
    let mut open = None;
    for (at, c) in text.char_indices() {
        match (c, open) {
            ('"', None) => open = Some(at),
            ('"', Some(_)) => open = None,
            // Behind a comment sign nothing is quoted.
            ('#', None) => return None,
            _ => {}
        }
    }
    open
}

fn open(quote: usize, statement: &Statement<'_>) -> Problem {
    let span = statement.span(quote, statement.text.len());
    Problem {
        span,
        kind: ProblemKind::OpenQuote,
    }
}

/// Names with capital letters. They are read all the same.
fn capitals(pieces: &Pieces<'_>, statement: &Statement<'_>, problems: &mut Vec<Problem>) {
    if !statement.text.chars().any(is_capital) {
        return;
    }
    for piece in pieces.clone().flatten() {
        let named = matches!(piece.as_rule(), Rule::name | Rule::new_name);
        if named && piece.as_str().chars().any(is_capital) {
            let span = convert::span_of(&piece, statement);
            problems.push(Problem {
                span,
                kind: ProblemKind::Capitals,
            });
        }
    }
}

/// Capitals, and the few letters that are half a capital.
fn is_capital(c: char) -> bool {
    c.is_uppercase() || (!c.is_ascii() && c.is_alphabetic() && !c.to_lowercase().eq([c]))
}

/// The pieces inside the one piece that is the line.
fn inside(mut pieces: Pieces<'_>) -> impl Iterator<Item = Piece<'_>> {
    pieces.next().into_iter().flat_map(Piece::into_inner)
}
