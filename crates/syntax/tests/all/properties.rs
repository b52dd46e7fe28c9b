//! What holds for every text.

use std::mem::discriminant;

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use proptest::test_runner::{Config, RngSeed};
use syntax::tree::{Detail, Head, Item, Says, Tree};

use crate::generate::{Generator, Plan};
use crate::plain;

fn config(cases: u32) -> Config {
    Config {
        cases,
        rng_seed: RngSeed::Fixed(20310502),
        failure_persistence: None,
        ..Config::default()
    }
}

fn choices() -> impl Strategy<Value = Vec<u16>> {
    vec(any::<u16>(), 0..400)
}

fn plan(choices: &[u16]) -> Plan {
    Generator::new(choices).plan()
}

/// What can be asked of any tree at all.
fn sound(tree: &Tree) {
    let text: &str = &tree.text;
    let inside = |span: syntax::tree::Span| {
        assert!(span.start <= span.end, "{span:?} in {text:?}");
        assert!(text.get(span.range()).is_some(), "{span:?} in {text:?}");
    };
    let mut last = 0;
    for item in &tree.items {
        inside(item.span);
        inside(item.lines);
        assert!(last <= item.lines.start, "items overlap in {text:?}");
        assert!(
            item.lines.start <= item.span.start && item.span.end <= item.lines.end,
            "{text:?}"
        );
        last = item.lines.end;
        let within =
            |span: syntax::tree::Span| item.span.start <= span.start && span.end <= item.span.end;
        for detail in &item.details {
            inside(detail.span);
            inside(detail.keyword);
            assert!(
                within(detail.span) && within(detail.keyword),
                "{detail:?} in {text:?}"
            );
        }
        // Whatever is named is a piece of the text: saying it slices the text.
        plain::item(tree, item);
    }
    for two in tree.problems.windows(2) {
        assert!(
            two[0].span <= two[1].span,
            "problems out of order in {text:?}"
        );
    }
    for problem in &tree.problems {
        inside(problem.span);
    }
}

fn reads_and_tidies(text: &str) {
    let tree = syntax::read(text);
    sound(&tree);
    let tidy = syntax::tidy(&tree);
    let again = syntax::read(tidy.as_str());
    sound(&again);
    assert_eq!(syntax::tidy(&again), tidy, "{text:?}");
    assert_eq!(plain::items(&again), plain::items(&tree), "{text:?}");
    assert_eq!(again.problems.len(), tree.problems.len(), "{text:?}");
}

/// The lines of a text with their line ends.
fn lines(text: &str) -> Vec<&str> {
    let mut lines = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find(['\n', '\r']) {
        let end = at + if rest[at..].starts_with("\r\n") { 2 } else { 1 };
        lines.push(&rest[..end]);
        rest = &rest[end..];
    }
    if !rest.is_empty() {
        lines.push(rest);
    }
    lines
}

proptest! {
    #![proptest_config(config(1500))]

    #[test]
    fn a_plan_says_what_was_meant(choices in choices()) {
        let Plan { text, items } = plan(&choices);
        let tree = syntax::read(text.as_str());
        prop_assert_eq!(&tree.problems, &[], "{}", text);
        prop_assert_eq!(plain::items(&tree), items, "{}", text);
        sound(&tree);
        let tidy = syntax::tidy(&tree);
        let again = syntax::read(tidy.as_str());
        prop_assert_eq!(&again.problems, &[], "{}", tidy);
        prop_assert_eq!(plain::items(&again), plain::items(&tree), "{}", tidy);
        prop_assert_eq!(syntax::tidy(&again), tidy);
    }
}

/// One way of spoiling a text: where, how, and a character to do it with.
type Spoil = (Index, u8, char);

fn spoil(text: &mut Vec<char>, (place, how, c): Spoil) {
    if text.is_empty() {
        return;
    }
    let at = place.index(text.len());
    match how {
        0 => text[at] = c,
        1 => text.insert(at, c),
        2 => drop(text.remove(at)),
        3 => text.insert(at, '"'),
        4 => text.insert(at, ' '),
        _ => text.swap(at, 0),
    }
}

/// What no line of a plan could be, and what some lines could.
const RUBBISH: &[&str] = &[
    "%% ?",
    "zzzz qqqq",
    "\"open",
    ", ,",
    "= 5 x",
    "\u{202e}? !",
    "fit fit fit",
    "part",
    "onto",
    "after a after",
];

/// The content of one line of the text, as bytes; none if it is blank or a comment. Such a line
/// that becomes an item would rightly take over the details below it.
fn content(text: &str, place: Index) -> Option<std::ops::Range<usize>> {
    let lines = lines(text);
    let at = place.index(lines.len());
    let line = lines[at].trim_end_matches(['\n', '\r']);
    let content = line.trim_start_matches([' ', '\t', '\u{feff}']);
    let start: usize = lines[..at].iter().map(|line| line.len()).sum();
    let range = start + line.len() - content.len()..start + line.len();
    (!content.is_empty() && !content.starts_with('#')).then_some(range)
}

/// Replaces a line by rubbish: only what stands on it may change, and only it has a problem.
fn spoils_no_other(text: &str, line: std::ops::Range<usize>, rubbish: &str) {
    let before = syntax::read(text);
    let spoilt = format!("{}{rubbish}{}", &text[..line.start], &text[line.end..]);
    let after = syntax::read(spoilt.as_str());
    sound(&after);
    let end = line.start + rubbish.len();
    for problem in &after.problems {
        let span = problem.span.range();
        assert!(
            line.start <= span.start && span.end <= end,
            "{problem:?} in {spoilt}"
        );
    }
    assert_eq!(after.items.len(), before.items.len(), "{spoilt}");
    for (old, new) in before.items.iter().zip(&after.items) {
        let span = old.span.range();
        if line.end < span.start || span.end < line.start {
            assert_eq!(
                plain::item(&before, old),
                plain::item(&after, new),
                "{spoilt}"
            );
            continue;
        }
        if span.start != line.start {
            assert_eq!(discriminant(&old.head), discriminant(&new.head), "{spoilt}");
        }
        let kept = (
            elsewhere(&before, old, line.start, line.end),
            elsewhere(&after, new, line.start, end),
        );
        assert_eq!(kept.0, kept.1, "{spoilt}");
    }
    if rubbish == RUBBISH[0] {
        assert_eq!(after.problems.len(), 1, "{spoilt}");
        assert!(after.items.iter().any(has_unreadable), "{spoilt}");
    }
}

/// The details that do not touch the bytes `start..end`.
fn elsewhere(tree: &Tree, item: &Item, start: usize, end: usize) -> Vec<String> {
    let apart = |span: std::ops::Range<usize>| span.end <= start || end <= span.start;
    let details = item
        .details
        .iter()
        .filter(|detail| apart(detail.span.range()));
    details.map(|detail| plain::detail(tree, detail)).collect()
}

fn has_unreadable(item: &Item) -> bool {
    let unreadable = |detail: &Detail| matches!(detail.says, Says::Unreadable { .. });
    matches!(item.head, Head::Unreadable { .. }) || item.details.iter().any(unreadable)
}

/// Moves one item behind another: the items say the same in their new order, and no line is lost.
fn takes_its_lines_along(text: &str, item: Index, behind: Index) {
    let tree = syntax::read(text);
    let (item, behind) = (item.index(tree.items.len()), behind.index(tree.items.len()));
    let edits = syntax::edit::move_items(&tree, &[(item, behind)]);
    let moved = syntax::edit::apply(text, &edits).unwrap();
    let after = syntax::read(moved.as_str());
    let mut expected = plain::items(&tree);
    if item != behind {
        let said = expected.remove(item);
        expected.insert(if behind < item { behind + 1 } else { behind }, said);
    }
    assert_eq!(plain::items(&after), expected, "{text} -> {moved}");
    assert_eq!(sorted_lines(&moved), sorted_lines(text));
}

fn sorted_lines(text: &str) -> Vec<&str> {
    let mut lines: Vec<&str> = lines(text)
        .into_iter()
        .map(|line| line.trim_matches(['\n', '\r', '\u{feff}']))
        .collect();
    lines.sort_unstable();
    lines
}

proptest! {
    #![proptest_config(config(400))]

    #[test]
    fn any_text_is_read(text in any::<String>()) {
        reads_and_tidies(&text);
    }

    #[test]
    fn any_bytes_are_read_or_refused(bytes in vec(any::<u8>(), 0..200)) {
        match syntax::read_bytes(&bytes) {
            Ok(tree) => sound(&tree),
            Err(refused) => prop_assert!(std::str::from_utf8(&bytes).is_err(), "{:?}", refused),
        }
    }

    #[test]
    fn texts_of_the_languages_own_words_are_read(words in vec(word(), 0..60)) {
        reads_and_tidies(&words.concat());
    }

    #[test]
    fn spoilt_plans_are_read(
        choices in choices(),
        spoils in vec((any::<Index>(), 0..6u8, any::<char>()), 1..8),
    ) {
        let mut text: Vec<char> = plan(&choices).text.chars().collect();
        for one in spoils {
            spoil(&mut text, one);
        }
        reads_and_tidies(&text.into_iter().collect::<String>());
    }

    #[test]
    fn a_spoilt_line_spoils_no_other(
        choices in choices(),
        place in any::<Index>(),
        rubbish in select(RUBBISH),
    ) {
        let text = plan(&choices).text;
        let line = content(&text, place);
        prop_assume!(line.is_some());
        spoils_no_other(&text, line.unwrap(), rubbish);
    }

    #[test]
    fn moved_items_take_their_lines_along(
        choices in choices(),
        item in any::<Index>(),
        behind in any::<Index>(),
    ) {
        takes_its_lines_along(&plan(&choices).text, item, behind);
    }
}

/// A word of the language, or what stands between words.
fn word() -> impl Strategy<Value = String> {
    let mut words: Vec<String> = syntax::words::item_words().map(str::to_owned).collect();
    words.extend(
        syntax::words::DETAILS
            .iter()
            .map(|detail| detail.word.to_owned()),
    );
    words.extend(
        syntax::words::DETAILS
            .iter()
            .map(|detail| detail.sample.to_owned()),
    );
    words.extend(
        syntax::words::STATES
            .iter()
            .map(|(word, _)| (*word).to_owned()),
    );
    words.extend(syntax::words::UNITS.iter().map(|word| format!("5 {word}")));
    words.extend(
        syntax::words::RESERVED
            .iter()
            .map(|word| (*word).to_owned()),
    );
    for other in [
        " ", "  ", "\n", "\n  ", "\r\n", "\"", "\"x\"", ",", "..", "+-", "#", "-", "x", "8", "M6",
        "belt", "<bore>", "cap-*", "\u{202e}", "\u{200d}", "\u{a0}", "\u{feff}", "É", "°", "½",
    ] {
        words.extend(std::iter::repeat_n(other.to_owned(), 6));
    }
    select(words)
}
