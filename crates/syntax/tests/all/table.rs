//! The table of words against the grammar: each word reads in its place.

use syntax::tree::{Head, Kind, Says};
use syntax::words::{self, DETAILS, Place};

/// The first line of an item that stands for `place`.
fn head(place: Place) -> &'static str {
    match place {
        Place::Step => "fit x",
        Place::Declaration(Kind::Plan) => "plan \"x\"",
        Place::Declaration(Kind::Use) => "use \"x.rebuild\"",
        Place::Declaration(Kind::Stage) => "stage \"x\"",
        Place::Declaration(Kind::Part) => "part x",
        Place::Declaration(Kind::Unit) => "unit x",
        Place::Declaration(Kind::Item) => "item x",
        Place::Declaration(Kind::Fasteners) => "fasteners x",
        Place::Declaration(Kind::Point) => "point x",
        Place::Declaration(Kind::Position) => "position x",
        Place::Declaration(Kind::Tool) => "tool x",
        Place::Declaration(Kind::Supply) => "supply x",
        Place::Declaration(Kind::Series) => "series x",
    }
}

#[test]
fn every_detail_reads_in_each_of_its_places() {
    for detail in DETAILS {
        assert!(!detail.places.is_empty(), "{}", detail.word);
        for place in detail.places {
            for between in [" ", "\n  "] {
                let text = format!("{}{between}{}\n", head(*place), detail.sample);
                let tree = syntax::read(text.as_str());
                assert_eq!(tree.problems, [], "{text}");
                assert_eq!(tree.items[0].details.len(), 1, "{text}");
                assert_eq!(words::place_of(&tree.items[0].head), Some(*place), "{text}");
                let found = &tree.items[0].details[0];
                assert!(!matches!(found.says, Says::Unreadable { .. }), "{text}");
                match detail.word {
                    "x" => assert_eq!(tree.at(found.keyword), "8 x"),
                    word => assert_eq!(tree.at(found.keyword), word),
                }
            }
        }
    }
}

#[test]
fn no_detail_stands_twice_in_the_table() {
    let mut seen: Vec<&str> = DETAILS.iter().map(|detail| detail.word).collect();
    seen.sort_unstable();
    let all = seen.len();
    seen.dedup();
    assert_eq!(seen.len(), all);
}

#[test]
fn every_detail_of_the_grammar_is_in_the_table() {
    let grammar = include_str!("../../../../grammar/rebuild.pest");
    let in_grammar = grammar.lines().filter_map(|line| {
        let name = line.strip_prefix("detail_")?.split([' ', '=']).next()?;
        line.contains("= ${ ").then(|| name.to_owned())
    });
    let of_lines = ["line", "part", "start"];
    let mut rules: Vec<String> = in_grammar
        .filter(|name| !of_lines.contains(&name.as_str()))
        .collect();
    rules.sort_unstable();
    let mut table: Vec<String> = DETAILS
        .iter()
        .map(|detail| detail.word.replace([' ', '-'], "_"))
        .collect();
    for word in &mut table {
        if word == "x" {
            *word = "group".to_owned();
        }
    }
    // `because` may stand behind any detail, and `holds` is read by two rules.
    table.extend(["because".to_owned(), "hold_amount".to_owned()]);
    table.retain(|word| word != "holds");
    table.sort_unstable();
    assert_eq!(rules, table);
}

#[test]
fn every_word_that_begins_an_item_is_known() {
    for word in words::item_words() {
        for text in [format!("{word} x"), format!("{word} \"x\"")] {
            let tree = syntax::read(text);
            match &tree.items[0].head {
                Head::Declaration { kind, keyword, .. } => {
                    assert_eq!(tree.at(*keyword), word);
                    assert_eq!(words::word_of_kind(*kind), word);
                    assert_eq!(words::kind(word), Some(*kind));
                }
                Head::Step { verb, keyword, .. } => {
                    assert_eq!(tree.at(*keyword), word);
                    assert_eq!(words::word_of_verb(*verb), word);
                    assert_eq!(words::verb(word), Some(*verb));
                }
                // One of the two forms is right for each word.
                Head::Unreadable { kind, verb, .. } => {
                    assert_eq!((*kind, *verb), (words::kind(word), words::verb(word)));
                }
            }
        }
        let reads = |text: String| syntax::read(text).problems.is_empty();
        assert!(
            reads(format!("{word} x")) || reads(format!("{word} \"x\"")),
            "{word}"
        );
        assert!(
            !reads(format!("{word}x y")) && !reads(format!("{word}-x y")),
            "{word}"
        );
    }
}

#[test]
fn keywords_end_at_a_word_boundary() {
    for detail in DETAILS.iter().filter(|detail| detail.word != "x") {
        let rest = &detail.sample[detail.word.len()..];
        for longer in ["s", "-x", "é", "1"] {
            let text = format!("fit x\n  {}{longer}{rest}\n", detail.word);
            // `holds` and `to its marks` are read as well.
            if [("hold", "s"), ("to its mark", "s")].contains(&(detail.word, longer)) {
                continue;
            }
            assert_eq!(syntax::read(text.as_str()).problems.len(), 1, "{text}");
        }
    }
}

#[test]
fn every_state_has_one_first_word() {
    for (word, state) in words::STATES {
        assert_eq!(words::state(word), Some(*state));
        assert!(words::STATES.contains(&(words::word_of_state(*state), *state)));
    }
}

#[test]
fn every_unit_reads_behind_a_figure() {
    for unit in words::UNITS {
        let tree = syntax::read(format!("fit x\n  expect 5 {unit} note \"x\""));
        assert_eq!(tree.problems, [], "{unit}");
        let Says::Expect(quantity) = &tree.items[0].details[0].says else {
            panic!("{unit}")
        };
        assert_eq!(quantity.unit.map(|span| tree.at(span)), Some(*unit));
    }
}
