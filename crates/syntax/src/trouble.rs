//! What is wrong with a line, and where exactly.

use crate::grammar::{self, Rule, Stop};
use crate::near::nearest_word;
use crate::phrases;
use crate::recover::Form;
use crate::salvage;
use crate::statement::Statement;
use crate::tree::{Head, Problem, ProblemKind};
use crate::words::{self, Place};

/// The problem of a line that does not fit. `head` is that of the item it
/// belongs to, as far as it could be read.
pub(crate) fn problem(form: Form, statement: &Statement<'_>, head: Option<&Head>) -> Problem {
    let text: &str = &statement.text;
    let rule = match form {
        Form::Item => Rule::item_line,
        Form::Detail => Rule::detail_line,
    };
    let stop = grammar::stop(rule, text).unwrap_or(Stop {
        at: 0,
        wanted: Vec::new(),
    });
    let at = stop.at.min(text.len());
    // An inch mark or a quote inside a text ends it early: the fault then shows behind the
    // first quote, and the quotes are what must be looked at.
    if let Some(quote) = open_quote(text)
        && text.find('"').is_some_and(|first| first <= at)
    {
        return open(quote, statement);
    }
    if at == 0 {
        return first_word(form, statement, head);
    }
    let word = word_at(text, at);
    let near = near(word, head, |place| {
        phrases::known_words(&stop.wanted, place)
    });
    unreadable(statement, at, phrases::phrases(&stop.wanted), near)
}

/// The problem of a line that goes wrong at its first word or right behind it.
fn first_word(form: Form, statement: &Statement<'_>, head: Option<&Head>) -> Problem {
    let word = word_at(&statement.text, 0);
    if form.begins_with(word) {
        return unreadable(statement, word.len(), vec!["a blank"], None);
    }
    let near = match form {
        Form::Item => nearest_word(word, words::item_words()),
        Form::Detail => near(word, head, |place| phrases::first_words(place).collect()),
    };
    let kind = ProblemKind::UnknownWord {
        near,
        detail: form == Form::Detail,
    };
    Problem {
        span: statement.span(0, word.len()),
        kind,
    }
}

/// The nearest of the words known for the item's sort, or of all where that is not known. A word
/// that only another sort may carry would be a far-fetched guess.
fn near(
    word: &str,
    head: Option<&Head>,
    known: impl Fn(Option<Place>) -> Vec<&'static str>,
) -> Option<&'static str> {
    let place = head.and_then(words::place_of);
    nearest_word(word, known(place))
}

fn unreadable(
    statement: &Statement<'_>,
    at: usize,
    wanted: Vec<&'static str>,
    near: Option<&'static str>,
) -> Problem {
    let length = word_at(&statement.text, at).len();
    let kind = ProblemKind::Unreadable { wanted, near };
    Problem {
        span: statement.span(at, at + length),
        kind,
    }
}

/// The problem of a line that reads well but stands at the wrong margin.
pub(crate) fn margin(statement: &Statement<'_>, form: Form) -> Problem {
    let word = word_at(&statement.text, 0);
    let kind = ProblemKind::UnknownWord {
        near: None,
        detail: form == Form::Detail,
    };
    Problem {
        span: statement.span(0, word.len()),
        kind,
    }
}

/// Where the quoted text starts that is never closed.
pub(crate) fn open_quote(text: &str) -> Option<usize> {
    let mut open = None;
    for (at, c) in text.char_indices() {
        match (c, open) {
            ('"', None) => open = Some(at),
            ('"', Some(_)) => open = None,
            // Behind a comment sign nothing is quoted.
            ('#', None) if !salvage::begins_thread(text, at) => return None,
            _ => {}
        }
    }
    open
}

/// The problem of a quoted text that is never closed.
pub(crate) fn open(quote: usize, statement: &Statement<'_>) -> Problem {
    let span = statement.span(quote, statement.text.len());
    Problem {
        span,
        kind: ProblemKind::OpenQuote,
    }
}

/// The word that stands at byte `at`, or the one character that stands there.
pub(crate) fn word_at(text: &str, at: usize) -> &str {
    let rest = text.get(at..).unwrap_or("");
    let mut end = rest
        .find(|c: char| !(c.is_alphanumeric() || c == '-'))
        .unwrap_or(rest.len());
    if end == 0 {
        end = rest
            .chars()
            .next()
            .filter(|c| *c != ' ')
            .map_or(0, char::len_utf8);
    }
    &rest[..end]
}
