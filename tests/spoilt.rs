//! One spoilt line costs one finding: whatever else a plan says is still checked, and nothing is
//! called missing that the spoilt line may have said.

use crate::support::{Bench, files, root};
use std::collections::BTreeSet;

/// Rules about what is absent or cannot come true. They must stay silent about things that a
/// spoilt line names; every other rule may speak, because without that line the plan is another.
const OF_ABSENCE: [&str; 9] = [
    "never-fitted",
    "left-off",
    "left-loose",
    "left-in",
    "unlocked",
    "unused",
    "unknown-name",
    "torque-missing",
    "never-so",
];

#[test]
fn a_spoilt_line_is_found_and_nothing_it_names_is_called_missing() {
    let mut troubles = Vec::new();
    for path in files(&root().join("tests/plans"), ".rebuild") {
        if path.components().any(|part| part.as_os_str() == "use") {
            continue;
        }
        let bench = Bench::of_text(&fixture::strip(&std::fs::read_to_string(&path).unwrap()));
        let before: BTreeSet<String> = bench.check().said().into_iter().collect();
        let lines: Vec<&str> = bench.text().lines().collect();
        for (at, line) in lines.iter().enumerate() {
            if line.trim().is_empty() || line.contains('#') {
                continue;
            }
            let mut spoilt: Vec<String> = lines.iter().map(|line| (*line).to_owned()).collect();
            spoilt[at] = format!("{line} ?!");
            let checked = bench.with_text(spoilt.join("\n")).check();
            let found = checked.actual(plan::model::FileId(0));
            if !found
                .iter()
                .any(|f| f.rule == "unreadable" && f.line == at + 1)
            {
                troubles.push(format!(
                    "{}:{}: `{}` is not called unreadable",
                    path.display(),
                    at + 1,
                    spoilt[at]
                ));
            }
            let words: BTreeSet<&str> = line.split([' ', ',', '"', '=']).collect();
            for (finding, said) in checked.findings.iter().map(|f| (f, checked.said_of(f))) {
                let new = OF_ABSENCE.contains(&finding.rule.name) && !before.contains(&said);
                if new && words.contains(finding.about.as_str()) {
                    troubles.push(format!(
                        "{}:{}: `{}` brings {said}",
                        path.display(),
                        at + 1,
                        spoilt[at]
                    ));
                }
            }
        }
    }
    assert!(
        troubles.is_empty(),
        "\n{}\n{} in all",
        troubles.join("\n"),
        troubles.len()
    );
}
