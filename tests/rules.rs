//! What holds for every rule, whichever it is, and for every rule to come.

use crate::support::{Bench, root};
use check::rules::{ALL, Rule};
use std::collections::BTreeSet;

fn all_rules(mut holds: impl FnMut(&Rule) -> Result<(), String>) {
    let troubles: Vec<String> = ALL
        .iter()
        .filter_map(|rule| {
            holds(rule)
                .err()
                .map(|trouble| format!("{}: {trouble}", rule.name))
        })
        .collect();
    assert!(troubles.is_empty(), "\n{}", troubles.join("\n"));
}

#[test]
fn the_bad_example_gives_this_rule_and_no_other() {
    all_rules(|rule| {
        let checked = Bench::of_text(rule.bad).check();
        let all: BTreeSet<&str> = checked.rules().into_iter().collect();
        if all == BTreeSet::from([rule.name]) {
            Ok(())
        } else {
            Err(checked.said().join("\n  "))
        }
    });
}

#[test]
fn the_good_example_gives_nothing() {
    all_rules(|rule| {
        let said = Bench::of_text(rule.good).check().said();
        if said.is_empty() {
            Ok(())
        } else {
            Err(said.join("\n  "))
        }
    });
}

#[test]
fn mending_the_bad_example_takes_the_finding_away_and_adds_none() {
    all_rules(|rule| {
        let bench = Bench::of_text(rule.bad);
        if bench
            .check()
            .findings
            .iter()
            .all(|finding| finding.mend.is_none())
        {
            return Ok(());
        }
        let mended = bench.with_every_mend()?;
        let said = mended.check().said();
        if said.is_empty() {
            Ok(())
        } else {
            Err(format!("{}\nin\n{}", said.join("\n  "), mended.text()))
        }
    });
}

#[test]
fn the_pages_are_written() {
    all_rules(|rule| {
        let page = [
            ("statement", rule.statement),
            ("reason", rule.reason),
            ("bad", rule.bad),
            ("good", rule.good),
        ];
        match page.iter().find(|(_, text)| text.trim().is_empty()) {
            None => Ok(()),
            Some((which, _)) => Err(format!("its {which} is empty")),
        }
    });
}

#[test]
fn each_rule_stands_in_the_file_of_its_name() {
    let folder = root().join("crates/check/src/rules");
    all_rules(|rule| {
        let file = format!("{}.rs", rule.name.replace('-', "_"));
        if folder.join(&file).is_file() {
            Ok(())
        } else {
            Err(format!("there is no rules/{file}"))
        }
    });
}

#[test]
fn names_are_words_joined_by_hyphens_and_taken_once() {
    let mut seen = BTreeSet::new();
    all_rules(|rule| {
        let words = rule
            .name
            .split('-')
            .all(|word| !word.is_empty() && word.chars().all(|c| c.is_ascii_lowercase()));
        if !words {
            return Err("not small letters joined by hyphens".into());
        }
        if seen.insert(rule.name.to_owned()) {
            Ok(())
        } else {
            Err("named twice".into())
        }
    });
}

#[test]
fn the_reference_lists_every_rule() {
    let reference = std::fs::read_to_string(root().join("grammar/reference.md")).unwrap();
    all_rules(|rule| {
        if reference.contains(&format!("`{}`", rule.name)) {
            Ok(())
        } else {
            Err("not in the reference".into())
        }
    });
}

/// Words of the people who make such programs, not of those who use them.
const JARGON: [&str; 22] = [
    "parse",
    "parser",
    "token",
    "syntax",
    "node",
    "tree",
    "identifier",
    "lexer",
    "expected",
    "unexpected",
    "span",
    "byte",
    "eof",
    "null",
    "invalid",
    "undefined",
    "unresolved",
    "constraint",
    "predicate",
    "instance",
    "graph",
    "arc",
];

/// The first word of [`JARGON`] in `text`, labels and names of the writer's own set aside.
pub fn jargon(text: &str) -> Option<&'static str> {
    let words: BTreeSet<String> = text
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    JARGON
        .into_iter()
        .find(|word| words.contains(*word) || words.contains(&format!("{word}s")))
}

#[test]
fn no_page_and_no_message_speaks_like_a_compiler() {
    all_rules(|rule| {
        let mut texts = vec![rule.statement.to_owned(), rule.reason.to_owned()];
        for finding in Bench::of_text(rule.bad).check().findings {
            texts.push(finding.says);
            texts.extend(finding.because.into_iter().map(|because| because.says));
            texts.extend(finding.advice);
            texts.extend(finding.mend.map(|mend| mend.title));
        }
        match texts
            .iter()
            .find_map(|text| jargon(text).map(|word| (word, text)))
        {
            None => Ok(()),
            Some((word, text)) => Err(format!("\"{word}\" in: {text}")),
        }
    });
}

#[test]
fn messages_are_whole_sentences() {
    all_rules(|rule| {
        for finding in Bench::of_text(rule.bad).check().findings {
            let starts_well = finding.says.starts_with(|c: char| !c.is_lowercase());
            if !starts_well || !finding.says.ends_with(['.', '?', '!', '"']) {
                return Err(format!("not a sentence: {}", finding.says));
            }
        }
        Ok(())
    });
}
