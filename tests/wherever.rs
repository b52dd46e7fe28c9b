//! What must not matter: where declarations stand, blank lines, remarks, the ends of lines.

use crate::support::{Bench, files, root};
use syntax::tree::{Detail, Head, Kind, Says};

/// Every fixture of one file, without its expectations.
fn benches() -> Vec<(String, Bench)> {
    let all = files(&root().join("tests/plans"), ".rebuild");
    let whole = all
        .into_iter()
        .filter(|path| !path.components().any(|part| part.as_os_str() == "use"));
    let read = |path: std::path::PathBuf| {
        let text = fixture::strip(&std::fs::read_to_string(&path).unwrap());
        (
            path.file_stem().unwrap().to_str().unwrap().to_owned(),
            Bench::of_text(&text),
        )
    };
    whole.map(read).collect()
}

/// Holds what is found in each fixture against what is found in it after a change of the text.
fn nothing_changes(change: impl Fn(&str) -> Option<String>) {
    let mut troubles = Vec::new();
    let mut changed = 0;
    for (name, bench) in benches() {
        let Some(text) = change(bench.text()) else {
            continue;
        };
        changed += 1;
        let (before, after) = (bench.check().said(), bench.with_text(text).check().said());
        if before != after {
            troubles.push(format!(
                "{name}: before\n{}\nafter\n{}",
                before.join("\n"),
                after.join("\n")
            ));
        }
    }
    assert!(changed > 100);
    assert!(
        troubles.is_empty(),
        "\n{}\n{} in all",
        troubles.join("\n\n"),
        troubles.len()
    );
}

#[test]
fn declarations_may_stand_behind_the_steps() {
    nothing_changes(|text| {
        let tree = syntax::read(text);
        if !tree.problems.is_empty() {
            return None;
        }
        let (mut steps, mut things) = (String::new(), String::new());
        let mut names = Vec::new();
        for item in &tree.items {
            let step = match item.head {
                Head::Step { .. } => true,
                Head::Declaration { kind, name, .. } => {
                    names.extend(name.map(|name| tree.name(name).to_owned()));
                    kind == Kind::Stage
                }
                Head::Unreadable { .. } => return None,
            };
            let into = if step { &mut steps } else { &mut things };
            into.push_str(tree.at(item.span));
            into.push('\n');
        }
        names.sort();
        let twice = names.windows(2).any(|pair| pair[0] == pair[1]);
        // A step may take a name too; then whichever comes first keeps it.
        (!twice && !text.contains(" as ")).then(|| steps + &things)
    });
}

#[test]
fn details_may_stand_on_lines_of_their_own() {
    nothing_changes(|text| {
        let tree = syntax::read(text);
        if !tree.problems.is_empty() {
            return None;
        }
        // The members of a series are its declaration, not a detail of it.
        let movable = |detail: &&Detail| !matches!(detail.says, Says::Members(_));
        let mut starts: Vec<usize> = tree
            .items
            .iter()
            .flat_map(|i| &i.details)
            .filter(movable)
            .map(|d| d.span.start as usize)
            .collect();
        starts.sort_unstable();
        let mut apart = text.to_owned();
        for at in starts.into_iter().rev() {
            let since_line_end = apart[..at].rfind(['\n', '\r']).map_or(0, |end| end + 1);
            if !apart[since_line_end..at].trim().is_empty() {
                apart.insert_str(at, "\n  ");
            }
        }
        Some(apart)
    });
}

#[test]
fn blank_lines_and_remarks_say_nothing() {
    nothing_changes(|text| {
        let spaced = |line: &str| {
            if line.trim().is_empty() {
                "\n".to_owned()
            } else {
                format!("{line} # so\n\n  # and so\n")
            }
        };
        (syntax::read(text).problems.is_empty()).then(|| text.lines().map(spaced).collect())
    });
}

#[test]
fn the_ends_of_lines_do_not_matter() {
    for end in ["\r\n", "\r"] {
        nothing_changes(|text| Some(text.lines().map(|line| format!("{line}{end}")).collect()));
    }
}
