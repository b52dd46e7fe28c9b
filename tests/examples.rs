//! The plans under `examples` are worth copying: they check without errors. Each twin, whose
//! name ends in `-with-traps`, is the same plan in a worse order and comes right when arranged.

use crate::support::{Bench, files, root};
use std::path::PathBuf;

const TWIN: &str = "-with-traps.rebuild";

/// The examples that should be clean and their twins.
fn examples() -> (Vec<PathBuf>, Vec<PathBuf>) {
    let all = files(&root().join("examples"), ".rebuild");
    let (twins, clean): (Vec<_>, Vec<_>) = all
        .into_iter()
        .partition(|path| path.to_str().unwrap().ends_with(TWIN));
    assert!(!clean.is_empty() && !twins.is_empty());
    (clean, twins)
}

#[test]
fn examples_check_without_errors() {
    for path in examples().0 {
        let errors = Bench::of_file(&path).check().errors();
        assert!(
            errors.is_empty(),
            "{}:\n{}",
            path.display(),
            errors.join("\n")
        );
    }
}

#[test]
fn twins_go_wrong_as_they_stand() {
    for path in examples().1 {
        assert!(
            !Bench::of_file(&path).check().errors().is_empty(),
            "{}",
            path.display()
        );
    }
}

#[test]
fn twins_come_right_when_arranged() {
    for path in examples().1 {
        let arranged = Bench::of_file(&path).arranged().unwrap();
        let errors = arranged.check().errors();
        assert!(
            errors.is_empty(),
            "{}:\n{}\nin\n{}",
            path.display(),
            errors.join("\n"),
            arranged.text()
        );
    }
}

#[test]
fn twins_say_the_same_things_as_their_examples() {
    let sorted_steps = |path: &PathBuf| {
        let text = std::fs::read_to_string(path).unwrap();
        let tree = syntax::read(text.as_str());
        let mut items: Vec<String> = tree
            .items
            .iter()
            .map(|item| tree.at(item.span).to_owned())
            .collect();
        items.sort();
        items
    };
    for twin in examples().1 {
        let clean = PathBuf::from(twin.to_str().unwrap().replace(TWIN, ".rebuild"));
        assert!(
            sorted_steps(&twin) == sorted_steps(&clean),
            "{} has other lines than its example",
            twin.display()
        );
    }
}
