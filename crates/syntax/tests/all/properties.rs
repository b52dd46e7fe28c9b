//! What holds for every text.

use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed};
use syntax::tree::{Head, Says, Tree};

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
    proptest::collection::vec(any::<u16>(), 0..400)
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

proptest! {
    #![proptest_config(config(400))]

    #[test]
    fn any_text_is_read(text in any::<String>()) {
        reads_and_tidies(&text);
    }

    #[test]
    fn any_bytes_are_read_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        match syntax::read_bytes(&bytes) {
            Ok(tree) => sound(&tree),
            Err(refused) => prop_assert!(std::str::from_utf8(&bytes).is_err(), "{:?}", refused),
        }
    }

    #[test]
    fn texts_of_the_languages_own_words_are_read(words in proptest::collection::vec(word(), 0..60)) {
        reads_and_tidies(&words.concat());
    }

    #[test]
    fn spoilt_plans_are_read(choices in choices(), spoils in proptest::collection::vec((any::<prop::sample::Index>(), 0..6u8, any::<char>()), 1..8)) {
        let mut text: Vec<char> = plan(&choices).text.chars().collect();
        for (place, how, c) in spoils {
            if text.is_empty() {
                break;
            }
            let at = place.index(text.len());
            match how {
                0 => text[at] = c,
                1 => text.insert(at, c),
                2 => { text.remove(at); }
                3 => text.insert(at, '"'),
                4 => text.insert(at, ' '),
                _ => text.swap(at, 0),
            }
        }
        reads_and_tidies(&text.into_iter().collect::<String>());
    }

    #[test]
    fn a_spoilt_line_spoils_no_other(
        choices in choices(),
        place in any::<prop::sample::Index>(),
        rubbish in prop::sample::select(vec!["%% ?", "zzzz qqqq", "\"open", ", ,", "= 5 x", "\u{202e}? !", "fit fit fit", "part", "onto", "after a after"]),
    ) {
        let text = plan(&choices).text;
        let before = syntax::read(text.as_str());
        let lines = lines(&text);
        let at = place.index(lines.len());
        let line = lines[at].trim_end_matches(['\n', '\r']);
        let content = line.trim_start_matches([' ', '\t', '\u{feff}']);
        // A blank or comment line that becomes an item would take over the details below it.
        prop_assume!(!content.is_empty() && !content.starts_with('#'));
        let start: usize = lines[..at].iter().map(|line| line.len()).sum();
        let from = start + line.len() - content.len();
        let to = start + line.len();
        let spoilt = format!("{}{rubbish}{}", &text[..from], &text[to..]);
        let after = syntax::read(spoilt.as_str());
        sound(&after);

        let on_line = |span: syntax::tree::Span| span.start as usize >= from && span.end as usize <= from + rubbish.len();
        for problem in &after.problems {
            prop_assert!(on_line(problem.span), "{:?} in {}", problem, spoilt);
        }
        prop_assert_eq!(after.items.len(), before.items.len(), "{}", spoilt);
        for (old, new) in before.items.iter().zip(&after.items) {
            let touched = old.span.start as usize <= to && from <= old.span.end as usize;
            if !touched {
                prop_assert_eq!(plain::item(&before, old), plain::item(&after, new), "{}", spoilt);
                continue;
            }
            if old.span.start as usize != from {
                let (old, new) = (&old.head, &new.head);
                prop_assert_eq!(std::mem::discriminant(old), std::mem::discriminant(new), "{}", spoilt);
            }
            // Details on the other lines of the item stay as they were; but a reason at the
            // start of a line belongs to the detail above it.
            let elsewhere = |tree: &Tree, item: &syntax::tree::Item, to: usize| -> Vec<String> {
                let details = item.details.iter().filter(|detail| {
                    (detail.span.end as usize) <= from || detail.span.start as usize >= to
                });
                details.map(|detail| plain::detail(tree, detail)).collect()
            };
            prop_assert_eq!(elsewhere(&before, old, to), elsewhere(&after, new, from + rubbish.len()), "{}", spoilt);
        }
        if rubbish == "%% ?" {
            prop_assert_eq!(after.problems.len(), 1, "{}", spoilt);
            let unreadable = after.items.iter().any(|item| {
                matches!(item.head, Head::Unreadable { .. })
                    || item.details.iter().any(|detail| matches!(detail.says, Says::Unreadable { .. }))
            });
            prop_assert!(unreadable, "{}", spoilt);
        }
    }

    #[test]
    fn moved_items_take_their_lines_along(choices in choices(), item in any::<prop::sample::Index>(), behind in any::<prop::sample::Index>()) {
        let text = plan(&choices).text;
        let tree = syntax::read(text.as_str());
        let (item, behind) = (item.index(tree.items.len()), behind.index(tree.items.len()));
        let edits = syntax::edit::move_items(&tree, &[(item, behind)]);
        let moved = syntax::edit::apply(&text, &edits).unwrap();
        let after = syntax::read(moved.as_str());
        let mut expected = plain::items(&tree);
        if item != behind {
            let said = expected.remove(item);
            expected.insert(if behind < item { behind + 1 } else { behind }, said);
        }
        prop_assert_eq!(plain::items(&after), expected, "{} -> {}", text, moved);
        // Nothing is lost but, at most, what a last line without line end makes needful.
        let sorted = |text: &str| {
            let mut lines: Vec<String> = lines(text).into_iter().map(|line| line.trim_matches(['\n', '\r', '\u{feff}']).to_owned()).collect();
            lines.sort();
            lines
        };
        prop_assert_eq!(sorted(&moved), sorted(&text));
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
    prop::sample::select(words)
}
