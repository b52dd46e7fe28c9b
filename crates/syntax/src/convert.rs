//! From the pieces of the grammar to the tree, cut by theme.

mod conditions;
mod details;
mod fasteners;
mod head;
mod parts;
mod quantities;
mod steps;
mod things;

pub(crate) use details::detail;
pub(crate) use head::{head, is_head};
pub(crate) use parts::Ground;

/// How many bytes the first `count` words of `text` take, blanks between them
/// included.
fn words_length(text: &str, count: usize) -> usize {
    let mut length = 0;
    let mut rest = text;
    for _ in 0..count {
        let word = rest.trim_start_matches([' ', '\t']);
        let end = word.find([' ', '\t', ',', '"']).unwrap_or(word.len());
        length += rest.len() - word.len() + end;
        rest = &word[end..];
    }
    length
}

/// `single-use` is one word, `single use` two.
fn words_of_hyphenated(text: &str) -> usize {
    let first = words_length(text, 1);
    if text.get(..first).is_some_and(|word| word.contains('-')) {
        1
    } else {
        2
    }
}
