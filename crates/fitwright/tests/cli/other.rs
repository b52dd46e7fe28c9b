//! `why`, `windows`, `freedom`, `tidy`, `rules`, and the command line itself.

use crate::bench::{BAD, GOOD, KNOT, folder, run, with};
use std::fs;

#[test]
fn why_takes_numbers_names_lines_and_words() {
    let text = GOOD.replace("fit cover\n", "fit cover as closed\n");
    let folder = with("why", "pump.rebuild", text);
    let ran = |one: &str, other: &str| run(&folder, &["why", "pump.rebuild", one, other]);
    let wanted = ran("2", "3");
    assert_eq!((wanted.status, wanted.err.as_str()), (0, ""));
    assert!(
        wanted.out.starts_with(
            "Step 2 (Measure Gap at the tip) must come before step 3 (Fit Pump cover).\n"
        ),
        "{}",
        wanted.out
    );
    for (one, other) in [
        ("3", "2"),
        ("measure tip-gap", "closed"),
        ("line:16", "line:20"),
        ("Measure Gap at the tip", "step 3"),
    ] {
        assert_eq!(ran(one, other).out, wanted.out, "{one} {other}");
    }
}

#[test]
fn why_says_what_it_does_not_understand() {
    let folder = with("why-not", "pump.rebuild", GOOD);
    let said = |one: &str, other: &str| {
        let ran = run(&folder, &["why", "pump.rebuild", one, other]);
        assert_eq!((ran.status, ran.out.as_str()), (2, ""));
        ran.err
    };
    assert_eq!(
        said("9", "1"),
        "fitwright: there is no step 9: pump.rebuild has steps 1 to 4\n"
    );
    assert_eq!(
        said("polish", "1"),
        "fitwright: no step of pump.rebuild is \"polish\"; the sheet gives every step a number\n"
    );
    assert_eq!(
        said("fit", "1"),
        "fitwright: \"fit\" fits step 1 (Fit Impeller), step 3 (Fit Pump cover). Say the number.\n"
    );
    assert_eq!(
        said("line:1", "1"),
        "fitwright: there is no step in line 1 of pump.rebuild\n"
    );
    assert_eq!(said("1", "1"), "fitwright: both are the same step\n");
}

#[test]
fn windows_draws_the_reach_chart() {
    let folder = with("windows", "pump.rebuild", BAD);
    let ran = run(&folder, &["windows", "pump.rebuild"]);
    assert_eq!((ran.status, ran.err.as_str()), (0, ""));
    assert!(ran.out.contains("Gap at the tip  ━━.X\n"), "{}", ran.out);
}

#[test]
fn freedom_counts_the_orders() {
    let folder = with("freedom", "pump.rebuild", GOOD);
    fs::write(folder.join("knot.rebuild"), KNOT).unwrap();
    let ran = run(&folder, &["freedom", "pump.rebuild", "knot.rebuild"]);
    assert_eq!((ran.status, ran.err.as_str()), (0, ""));
    assert!(
        ran.out
            .starts_with("pump.rebuild\n2 orders of the 4 steps work.\n"),
        "{}",
        ran.out
    );
}

#[test]
fn tidy_shows_checks_and_writes() {
    let untidy = GOOD
        .replace("  revision 2", "     revision 2   ")
        .replace('\n', "\r\n");
    let folder = folder("tidy");
    fs::write(folder.join("a.rebuild"), &untidy).unwrap();
    fs::write(folder.join("b.rebuild"), GOOD).unwrap();
    let shown = run(&folder, &["tidy", "."]);
    assert_eq!(shown.status, 0, "{}", shown.err);
    assert!(shown.out.contains("+  revision 2\r\n"), "{}", shown.out);
    assert!(!shown.out.contains("b.rebuild"), "{}", shown.out);

    let checked = run(&folder, &["tidy", "--check", "."]);
    assert_eq!(
        (checked.status, checked.out.as_str()),
        (1, "./a.rebuild is untidy\n")
    );

    let written = run(&folder, &["tidy", "--write", "."]);
    assert_eq!(
        (written.status, written.err.as_str()),
        (0, "./a.rebuild is tidy now.\n")
    );
    let text = fs::read_to_string(folder.join("a.rebuild")).unwrap();
    assert_eq!(text, GOOD.replace('\n', "\r\n"));
    assert_eq!(run(&folder, &["tidy", "--check", "."]).status, 0);
}

#[test]
fn rules_are_listed_and_explained() {
    let folder = folder("rules");
    let list = run(&folder, &["rules"]).out;
    for rule in check::rules::ALL {
        assert!(
            list.lines().any(|line| line.starts_with(rule.name)),
            "{}",
            rule.name
        );
        let page = run(&folder, &["rules", rule.name]).out;
        assert!(page.starts_with(&format!("{} (", rule.name)), "{page}");
        assert!(
            page.contains("\nWrong:\n") && page.contains("\nRight:\n"),
            "{page}"
        );
    }
    let ran = run(&folder, &["rules", "shutin"]);
    assert_eq!(ran.status, 2);
    assert_eq!(
        ran.err,
        "fitwright: there is no rule \"shutin\"; did you mean shut-in?\n"
    );
}

#[test]
fn every_command_has_help_with_an_example() {
    let folder = folder("help");
    let all = run(&folder, &["--help"]);
    assert_eq!(all.status, 0);
    for command in [
        "check", "sheet", "arrange", "why", "windows", "freedom", "tidy", "rules",
    ] {
        assert!(all.out.contains(&format!("  {command} ")), "{}", all.out);
        let help = run(&folder, &[command, "--help"]);
        assert_eq!(help.status, 0);
        assert!(
            help.out.contains(&format!("  fitwright {command}")),
            "{}",
            help.out
        );
    }
    let wrong = run(&folder, &["polish"]);
    assert_eq!((wrong.status, wrong.out.as_str()), (2, ""));
    assert_eq!(
        run(&folder, &["--version"]).out,
        format!("fitwright {}\n", env!("CARGO_PKG_VERSION"))
    );
}

#[test]
fn a_word_that_stands_in_several_steps_brings_them_up() {
    let folder = with("why-near", "pump.rebuild", GOOD);
    let ran = run(&folder, &["why", "pump.rebuild", "pump", "1"]);
    assert_eq!(ran.status, 2);
    assert_eq!(
        ran.err,
        "fitwright: no step of pump.rebuild is \"pump\"; it stands in step 3 (Fit Pump cover). \
         Say the number.\n"
    );
}
