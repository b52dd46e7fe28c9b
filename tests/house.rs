//! The house keeps its shape: who may use whom, what lies at the top, what a crate says of itself.

use crate::support::root;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;

/// Which of our own crates each crate may use, tests not counted. An arrow that is not here is
/// either a mistake or a decision that belongs into DEVELOPERS.md first.
const MAY_USE: &[(&str, &[&str])] = &[
    ("check", &["order", "plan", "syntax", "workshop"]),
    (
        "fitwright",
        &["check", "order", "plan", "sheet", "syntax", "workshop"],
    ),
    ("fixture", &[]),
    ("order", &[]),
    ("plan", &["syntax", "workshop"]),
    ("sheet", &["check", "order", "plan", "syntax", "workshop"]),
    ("syntax", &[]),
    ("workshop", &[]),
];

/// Libraries with one home: only this crate may use them, tests not counted.
const ONE_HOME: &[(&str, &str)] = &[
    ("clap", "fitwright"),
    ("miette", "sheet"),
    ("pest", "syntax"),
    ("pest_derive", "syntax"),
    ("uom", "workshop"),
];

/// The names under `[dependencies]` of each crate.
fn used() -> BTreeMap<String, BTreeSet<String>> {
    let mut found = BTreeMap::new();
    for entry in fs::read_dir(root().join("crates")).unwrap() {
        let folder = entry.unwrap().path();
        let Ok(manifest) = fs::read_to_string(folder.join("Cargo.toml")) else {
            continue;
        };
        let mut names = BTreeSet::new();
        let mut inside = false;
        for line in manifest.lines() {
            if line.starts_with('[') {
                inside = line.trim() == "[dependencies]";
            } else if inside && let Some(name) = line.split(['.', ' ', '=']).next() {
                names.insert(name.to_string());
            }
        }
        names.remove("");
        let name = folder.file_name().unwrap().to_string_lossy().into_owned();
        found.insert(name, names);
    }
    found
}

#[test]
fn no_crate_uses_another_that_it_must_not_know() {
    let used = used();
    let crates: BTreeSet<&str> = used.keys().map(String::as_str).collect();
    let listed: BTreeSet<&str> = MAY_USE.iter().map(|(name, _)| *name).collect();
    assert_eq!(crates, listed, "every crate has its line in the table");
    for (name, may) in MAY_USE {
        for other in &used[*name] {
            let ours = crates.contains(other.as_str());
            assert!(
                !ours || may.contains(&other.as_str()),
                "{name} uses {other}"
            );
        }
    }
}

#[test]
fn libraries_stay_in_their_one_home() {
    for (name, names) in used() {
        for (library, home) in ONE_HOME {
            assert!(
                !names.contains(*library) || name == *home,
                "{name} uses {library}, whose home is {home}"
            );
        }
    }
}

#[test]
fn nothing_lies_at_the_top_that_does_not_belong_there() {
    let allowed = [
        "Cargo.lock",
        "Cargo.toml",
        "CHANGELOG.md",
        "DEVELOPERS.md",
        "LICENSE",
        "README.md",
        "crates",
        "editor-support",
        "examples",
        "grammar",
        "target",
        "tests",
    ];
    for entry in fs::read_dir(root()).unwrap() {
        let name = entry.unwrap().file_name().to_string_lossy().into_owned();
        assert!(
            name.starts_with('.') || allowed.contains(&name.as_str()),
            "{name}"
        );
    }
}

#[test]
fn every_crate_says_what_it_is_and_what_it_must_never_know() {
    for name in used().keys().filter(|n| n.as_str() != "fitwright") {
        let path = root().join("crates").join(name).join("src/lib.rs");
        let text = fs::read_to_string(path).unwrap();
        let said: String = text
            .lines()
            .take_while(|l| l.starts_with("//!"))
            .map(|l| l.trim_start_matches("//!"))
            .collect();
        assert!(said.len() > 200, "{name} says too little of itself");
        assert!(
            said.contains("never") || said.contains("no "),
            "{name} does not say what it must not know"
        );
    }
}
