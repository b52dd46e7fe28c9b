//! Texts that mean harm, or come out of a machine gone wild.

use proptest::prelude::*;

use crate::sample::SAMPLE;
use crate::{plan, problems, thing};

#[test]
fn a_huge_series_is_cut_short_and_said_so() {
    let text = "series n 1..1000000\npart a-<n>\nfit a-*\nfit a-1000000, a-7\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["1: too many n 1000"]);
    assert_eq!(plan.things.len(), 1000);
    assert_eq!(plan.steps[1].targets.len(), 1);
}

#[test]
fn a_number_beyond_counting_is_a_figure() {
    let text = "series n 1..99999999999999999999999\npart a-<n>\nfit a-1\n";
    assert_eq!(problems(&plan(text)), ["1: figure 99999999999999999999999"]);
    let text = "part a count 99999999999\nfit a\n";
    assert_eq!(problems(&plan(text)), ["1: figure 99999999999"]);
}

#[test]
fn crossed_series_are_cut_short_and_said_so() {
    let text = "series a 1..1000\nseries b 1..1000\nseries c 1..1000\npart p-<a>-<b>-<c>\nfit p-1-1-1\nfit p-9-9-9\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["4: too many p-<a>-<b>-<c> 100000"]);
    assert!(plan.things.len() <= 100_001);
}

#[test]
fn a_long_stage_for_a_long_series_is_cut_short_and_said_so() {
    let mut text = "series n 1..1000\npart a-<n>\nstage \"S\" for each n\n".to_owned();
    for _ in 0..200 {
        text.push_str("inspect a-<n>\n");
    }
    let plan = plan(&text);
    assert_eq!(problems(&plan), ["4: too many S 100000"]);
    assert!(plan.steps.len() <= 100_200);
    let (from, to) = plan.stages[0].steps;
    assert_eq!((from.0, to.0 as usize), (0, plan.steps.len()));
}

#[test]
fn mentions_without_end_are_cut_short_and_said_so() {
    let mut text = "series n 1..1000\npart a-<n>\n  behind a-*\n".to_owned();
    for number in 0..1500 {
        text.push_str(&format!("part b-{number} covers a-*\n"));
    }
    let plan = plan(&text);
    let all = problems(&plan);
    assert!(
        !all.is_empty() && all.iter().all(|p| p.contains("too many a-* 2000000")),
        "{all:?}"
    );
    let blockers: usize = plan.things.iter().map(|thing| thing.blockers.len()).sum();
    assert!(blockers <= 2_000_000);
}

#[test]
fn units_nest_as_deep_as_anyone_likes() {
    let mut text = "part p-0\n".to_owned();
    for number in 1..20_000 {
        text.push_str(&format!("unit p-{number} of p-{}\n", number - 1));
    }
    text.push_str("part lid covers p-19999\nfit p-19999, lid\n");
    let plan = plan(&text);
    assert!(problems(&plan).is_empty());
    assert_eq!(thing(&plan, "p-0").blockers.len(), 1);
}

#[test]
fn twenty_thousand_unknown_names_are_all_told() {
    let mut text = String::new();
    for number in 0..20_000 {
        text.push_str(&format!("part cover-{number}\nfit cobalt-{number}x\n"));
    }
    assert_eq!(plan(&text).problems.len(), 20_000);
}

#[test]
fn a_line_without_end_is_read() {
    let names: Vec<String> = (0..20_000).map(|number| format!("a-{number}")).collect();
    let text = format!("fit {}\n", names.join(", "));
    assert_eq!(plan(&text).problems.len(), 20_000);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is done to the sample, it resolves, in order of place, each problem once.
    #[test]
    fn any_shuffling_of_the_sample_resolves(seed in proptest::collection::vec((0usize..150, 0usize..150), 1..30)) {
        let mut lines: Vec<&str> = SAMPLE.lines().collect();
        for (a, b) in seed {
            let (a, b) = (a % lines.len(), b % lines.len());
            lines.swap(a, b);
        }
        let plan = plan(&lines.join("\n"));
        let places: Vec<_> = plan.problems.iter().map(|problem| problem.place).collect();
        prop_assert!(places.is_sorted());
        let twice = plan.problems.windows(2).any(|two| two[0] == two[1]);
        prop_assert!(!twice);
    }

    /// Any bytes between the words of the language resolve to something.
    #[test]
    fn any_text_resolves(text in "(part|unit|series|fit|use|stage|for each|of|covers|onto|a-<b>|a-\\*|b|1\\.\\.3|,| |\n|  |\"x\"|is|tight|after|<|>|[a-f]|é|%){0,80}") {
        let plan = plan(&text);
        prop_assert_eq!(plan.sources.len(), 1);
    }
}
