//! What can still be told from a line that could not be read.

use crate::grammar::{self, Rule};
use crate::near::nearest_word;
use crate::statement::Statement;
use crate::tree::{Head, Kind, Name, Verb};
use crate::words;

/// One word of a line outside quotes and comments: where it starts, and it.
pub(crate) type Found<'t> = (usize, &'t str);

/// The words from byte `from` on. What stands between quotes is no word, but
/// what stands behind a quote that is never closed may be one.
pub(crate) fn words(text: &str, from: usize) -> Vec<Found<'_>> {
    let mut found = Vec::new();
    let mut start = None;
    let mut characters = text.char_indices().filter(|(at, _)| *at >= from).peekable();
    while let Some((at, c)) = characters.next() {
        if is_word(c) {
            start.get_or_insert(at);
            continue;
        }
        if let Some(start) = start.take() {
            found.push((start, &text[start..at]));
        }
        match c {
            '"' => {
                if let Some(length) = text[at + 1..].find('"') {
                    let behind = at + 1 + length;
                    while characters.next_if(|(at, _)| *at <= behind).is_some() {}
                }
            }
            '#' if !begins_thread(text, at) => return found,
            _ => {}
        }
    }
    if let Some(start) = start {
        found.push((start, &text[start..]));
    }
    found
}

/// Whether the `#` at byte `at` is that of `#10-32 UNF`.
pub(crate) fn begins_thread(text: &str, at: usize) -> bool {
    let Some((number, rest)) = text[at + 1..].split_once('-') else {
        return false;
    };
    let figures = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    (1..=2).contains(&number.len())
        && figures(number)
        && rest.starts_with(|c: char| c.is_ascii_digit())
}

fn is_word(c: char) -> bool {
    c.is_alphanumeric()
        || matches!(c, '-' | '<' | '>' | '*')
        || (!c.is_ascii() && !c.is_whitespace())
}

/// The names among `words`.
pub(crate) fn mentions(words: &[Found<'_>], statement: &Statement<'_>) -> Vec<Name> {
    words
        .iter()
        .filter_map(|word| name(*word, statement))
        .collect()
}

fn name((at, word): Found<'_>, statement: &Statement<'_>) -> Option<Name> {
    // Figures and their kin are names nowhere but in positions, and there they
    // are never in doubt.
    if !word.contains(char::is_alphabetic) {
        return None;
    }
    let read = grammar::read_start(Rule::name, word)?;
    (read.as_str().len() == word.len()).then(|| Name {
        span: statement.span(at, at + word.len()),
    })
}

/// The head of a line at the margin that could not be read.
pub(crate) fn head(statement: &Statement<'_>) -> Head {
    let found = words(&statement.text, 0);
    let Some((_, first)) = found.first() else {
        return Head::Unreadable {
            kind: None,
            verb: None,
            name: None,
            mentions: Vec::new(),
        };
    };
    let (kind, verb) = begins(first);
    let known = kind.is_some() || verb.is_some();
    let rest = if known { &found[1..] } else { &found[..] };
    let named = matches!(kind, Some(kind) if has_name(kind));
    let name = rest
        .first()
        .filter(|_| named)
        .and_then(|word| name(*word, statement));
    Head::Unreadable {
        kind,
        verb,
        name,
        mentions: mentions(rest, statement),
    }
}

/// What the first word begins, or seems to.
fn begins(word: &str) -> (Option<Kind>, Option<Verb>) {
    let known = nearest_word(word, words::item_words()).unwrap_or(word);
    match words::kind(known) {
        Some(kind) => (Some(kind), None),
        None => (None, words::verb(known)),
    }
}

fn has_name(kind: Kind) -> bool {
    !matches!(kind, Kind::Plan | Kind::Use | Kind::Stage)
}
