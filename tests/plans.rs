//! The fixture plans under `tests/plans`: each says in its own comments what is to be found.
//!
//! A folder is named after the rule its plans are about; `language` holds corners of the
//! language, and files in a folder `used` are there for others to `use`. With `FITWRIGHT_UPDATE=1`
//! the comments are written anew from what was found; read every change it makes.

use crate::rules::jargon;
use crate::support::{Bench, Checked, files, root};
use plan::model::FileId;
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

fn plans() -> Vec<PathBuf> {
    let all = files(&root().join("tests/plans"), ".rebuild");
    all.into_iter()
        .filter(|path| !path.components().any(|part| part.as_os_str() == "used"))
        .collect()
}

/// What went wrong in which plan; the test fails with all of it at once.
#[derive(Default)]
struct Report(Vec<String>);

impl Report {
    fn add(&mut self, path: &Path, trouble: &str) {
        let name = path.strip_prefix(root()).unwrap_or(path);
        self.0.push(format!("{}\n{trouble}", name.display()));
    }

    fn settle(self) {
        assert!(
            self.0.is_empty(),
            "\n\n{}\n{} plans",
            self.0.join("\n\n"),
            self.0.len()
        );
    }
}

#[test]
fn every_plan_gives_just_the_findings_written_in_it() {
    let update = std::env::var_os("FITWRIGHT_UPDATE").is_some();
    let mut report = Report::default();
    for path in plans() {
        let bench = Bench::of_file(&path);
        let checked = bench.check();
        for (file, text_path, text) in texts(&path, &checked) {
            let actual = checked.actual(file);
            if let Err(trouble) = fixture::compare(&text, &actual) {
                if update {
                    std::fs::write(&text_path, fixture::rewrite(&text, &actual)).unwrap();
                } else {
                    report.add(&text_path, &trouble);
                }
            }
        }
    }
    report.settle();
}

/// The texts of a plan with the paths they come from.
fn texts(path: &Path, checked: &Checked) -> Vec<(FileId, PathBuf, String)> {
    let folder = path.parent().unwrap();
    let sources = (0..).map(FileId).zip(&checked.plan.sources);
    sources
        .map(|(file, source)| {
            (
                file,
                folder.join(&source.name),
                source.tree.text.to_string(),
            )
        })
        .collect()
}

#[test]
fn mends_leave_no_errors_where_a_plan_says_so() {
    let mut report = Report::default();
    let mut asked = 0;
    for path in plans() {
        let bench = Bench::of_file(&path);
        if !fixture::wishes(bench.text()).mended_clean {
            continue;
        }
        asked += 1;
        match bench.with_every_mend() {
            Err(trouble) => report.add(&path, &trouble),
            Ok(mended) => {
                let errors = mended.check().errors();
                if !errors.is_empty() {
                    report.add(
                        &path,
                        &format!("{}\nin\n{}", errors.join("\n"), mended.text()),
                    );
                }
            }
        }
    }
    assert!(asked > 0);
    report.settle();
}

#[test]
fn every_mend_takes_its_finding_away_and_brings_no_other() {
    let mut report = Report::default();
    for path in plans() {
        let bench = Bench::of_file(&path);
        let checked = bench.check();
        for finding in &checked.findings {
            let Some(mend) = &finding.mend else { continue };
            let mended = bench.mended(&checked.plan, mend);
            let (before, after) = (checked.tally(), mended.check().tally());
            let same =
                |count: &BTreeMap<&str, usize>| count.get(finding.rule.name).copied().unwrap_or(0);
            let worse = after
                .iter()
                .any(|(rule, count)| before.get(rule).is_none_or(|had| had < count));
            if worse || same(&after) >= same(&before) {
                let said = mended.check().said().join("\n");
                let trouble = format!(
                    "{}: {}\nleaves\n{said}\nin\n{}",
                    finding.rule.name,
                    mend.title,
                    mended.text()
                );
                report.add(&path, &trouble);
            }
        }
    }
    report.settle();
}

#[test]
fn the_nearest_order_leaves_no_errors_where_a_plan_says_so() {
    let mut report = Report::default();
    let mut asked = 0;
    for path in plans() {
        let bench = Bench::of_file(&path);
        if !fixture::wishes(bench.text()).arranged_clean {
            continue;
        }
        asked += 1;
        match bench.arranged() {
            Err(trouble) => report.add(&path, &trouble),
            Ok(arranged) => {
                let errors = arranged.check().errors();
                if !errors.is_empty() {
                    report.add(
                        &path,
                        &format!("{}\nin\n{}", errors.join("\n"), arranged.text()),
                    );
                }
            }
        }
    }
    assert!(asked > 0);
    report.settle();
}

#[test]
fn expectation_comments_are_comments() {
    let mut report = Report::default();
    for path in plans() {
        let bench = Bench::of_file(&path);
        let stripped = bench.with_text(fixture::strip(bench.text()));
        let (with, without) = (bench.check().said(), stripped.check().said());
        if with != without {
            report.add(
                &path,
                &format!(
                    "with:\n{}\nwithout:\n{}",
                    with.join("\n"),
                    without.join("\n")
                ),
            );
        }
    }
    report.settle();
}

#[test]
fn nothing_that_is_said_speaks_like_a_compiler() {
    let mut report = Report::default();
    for path in plans() {
        for finding in Bench::of_file(&path).check().findings {
            let because = finding.because.into_iter().map(|because| because.says);
            let mend = finding.mend.map(|mend| mend.title);
            for text in because
                .chain([finding.says])
                .chain(finding.advice)
                .chain(mend)
            {
                if let Some(word) = jargon(&text) {
                    report.add(&path, &format!("\"{word}\" in: {text}"));
                }
            }
        }
    }
    report.settle();
}

#[test]
fn checking_twice_says_the_same() {
    let mut report = Report::default();
    for path in plans() {
        let bench = Bench::of_file(&path);
        if bench.check().findings != bench.check().findings {
            report.add(&path, "the second check says something else");
        }
    }
    report.settle();
}

#[test]
fn every_folder_of_plans_is_named_after_a_rule_and_holds_bad_and_good() {
    let rules: BTreeSet<&str> = check::rules::ALL.iter().map(|rule| rule.name).collect();
    let mut report = Report::default();
    let mut folders: BTreeSet<PathBuf> = BTreeSet::new();
    for path in plans() {
        folders.insert(path.parent().unwrap().to_owned());
    }
    for folder in folders {
        let name = folder.file_name().unwrap().to_str().unwrap();
        if name == "plans"
            || name == "language"
            || folder.components().any(|part| part.as_os_str() == "use")
        {
            continue;
        }
        if !rules.contains(name) {
            report.add(&folder, "no rule has this name");
            continue;
        }
        let expects = |path: &PathBuf| {
            let text = std::fs::read_to_string(path).unwrap();
            ["error", "warning", "hint"]
                .iter()
                .any(|level| text.contains(&format!("#~ {level} {name} ")))
        };
        let (bad, good): (Vec<_>, Vec<_>) =
            files(&folder, ".rebuild").into_iter().partition(expects);
        if bad.len() < 2 || good.is_empty() {
            report.add(
                &folder,
                &format!(
                    "{} plans that it finds fault with, {} that it lets pass",
                    bad.len(),
                    good.len()
                ),
            );
        }
    }
    report.settle();
}

#[test]
fn every_plan_begins_with_the_situation_in_words() {
    let mut report = Report::default();
    for path in plans() {
        let text = std::fs::read_to_string(&path).unwrap();
        let first = text
            .trim_start_matches('\u{feff}')
            .lines()
            .next()
            .unwrap_or("");
        if !first.starts_with("# ") || first.len() < 15 {
            report.add(
                &path,
                "the first line is no comment that says what it is about",
            );
        }
    }
    report.settle();
}
