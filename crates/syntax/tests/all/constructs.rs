//! Every declaration, detail, verb, state and condition of the language: each
//! reads without a problem, as what it is meant to be.

mod conditions;
mod fasteners;
mod figures;
mod steps;
mod things;

use crate::plain;

/// What the details on `line` say, under an item that may carry anything.
fn details(line: &str) -> Vec<String> {
    let tree = syntax::read(format!("fit x\n  {line}\n"));
    assert_eq!(tree.problems, [], "{line}");
    plain::details(&tree, &tree.items[0])
}

/// What the one detail on `line` says.
fn detail(line: &str) -> String {
    let details = details(line);
    assert_eq!(details.len(), 1, "{line}: {details:?}");
    details.into_iter().next().unwrap()
}

/// What the one item on `line` says.
fn item(line: &str) -> String {
    let tree = syntax::read(line);
    assert_eq!(tree.problems, [], "{line}");
    assert_eq!(tree.items.len(), 1, "{line}");
    plain::item(&tree, &tree.items[0])
}

/// Each line and what it says.
fn says(cases: &[(&str, &str)]) {
    for (line, expected) in cases {
        assert_eq!(detail(line), *expected, "{line}");
    }
}

/// Each line reads as one detail that begins with this.
fn all_say(start: &str, lines: &[&str]) {
    for line in lines {
        let said = detail(line);
        assert!(said.starts_with(start), "{line}: {said}");
    }
}
