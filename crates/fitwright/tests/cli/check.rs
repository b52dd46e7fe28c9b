//! `check`.

use crate::bench::{BAD, GOOD, command, folder, ran, run, with};
use std::fs;

#[test]
fn a_sound_plan_says_what_comes_next() {
    let folder = with("check-good", "pump.rebuild", GOOD);
    let ran = run(&folder, &["check", "pump.rebuild"]);
    assert_eq!((ran.status, ran.err.as_str()), (0, ""));
    assert_eq!(
        ran.out,
        "pump.rebuild: nothing wrong found in 4 steps. Next: `fitwright sheet pump.rebuild` prints the checklist.\n"
    );
}

#[test]
fn a_trap_is_shown_with_its_cause_and_its_mend() {
    let folder = with("check-bad", "pump.rebuild", BAD);
    let ran = run(&folder, &["check", "pump.rebuild"]);
    assert_eq!((ran.status, ran.err.as_str()), (1, ""));
    assert!(
        ran.out.starts_with("error shut-in  pump.rebuild:13:1\n"),
        "{}",
        ran.out
    );
    for piece in ["Gap at the tip", "fit cover", "  Mend: Move"] {
        assert!(ran.out.contains(piece), "{piece}: {}", ran.out);
    }
    let last = ran.out.lines().last().unwrap();
    assert_eq!(
        last,
        "pump.rebuild: 1 error found in 4 steps. Next: `fitwright arrange pump.rebuild` mends the order by moving one step."
    );
}

#[test]
fn the_level_asked_for_decides_the_status() {
    let warns = GOOD.replace("Cover screws\"", "Cover screws\" range 2..3 mm");
    let folder = with("check-level", "pump.rebuild", warns);
    let status = |level: &str| run(&folder, &["check", "--at", level, "pump.rebuild"]).status;
    let out = run(&folder, &["check", "pump.rebuild"]).out;
    assert!(out.starts_with("warning misplaced"), "{out}");
    assert!(
        out.ends_with(
            "pump.rebuild: 1 warning found in 4 steps. Next: look at the warnings; \
             `fitwright sheet pump.rebuild` prints the checklist.\n"
        ),
        "{out}"
    );
    assert_eq!(
        (status("error"), status("warning"), status("hint")),
        (0, 1, 1),
        "{out}"
    );
}

#[test]
fn several_plans_and_folders_at_once() {
    let folder = folder("check-several");
    fs::create_dir_all(folder.join("plans/parts")).unwrap();
    fs::create_dir_all(folder.join("plans/.old")).unwrap();
    fs::write(folder.join("plans/a.rebuild"), GOOD).unwrap();
    fs::write(folder.join("plans/b.rebuild"), BAD).unwrap();
    fs::write(folder.join("plans/.old/c.rebuild"), BAD).unwrap();
    fs::write(folder.join("plans/notes.txt"), "not a plan").unwrap();
    let ran = run(&folder, &["check", "plans", "plans/a.rebuild"]);
    assert_eq!(ran.status, 1);
    assert_eq!(ran.out.matches("error shut-in").count(), 1, "{}", ran.out);
    assert_eq!(
        ran.out.lines().last(),
        Some("2 plans: 1 error found. Begin with plans/b.rebuild.")
    );
}

#[test]
fn a_map_in_the_folder_is_checked_with_the_plan_that_uses_it() {
    let folder = folder("check-map");
    let (map, steps) = GOOD.split_once("stage \"Inside\"").unwrap();
    let map = map.split_once("\npart").unwrap().1;
    fs::write(folder.join("map.rebuild"), format!("part{map}")).unwrap();
    fs::write(
        folder.join("plan.rebuild"),
        format!("plan \"Wash pump\"\nuse \"map.rebuild\"\nstage \"Inside\"{steps}"),
    )
    .unwrap();
    let ran = run(&folder, &["check", "."]);
    assert_eq!(ran.status, 0, "{}", ran.out);
    assert!(
        ran.out
            .starts_with("./plan.rebuild: nothing wrong found in 4 steps."),
        "{}",
        ran.out
    );
}

#[test]
fn colour_where_asked_for_and_nowhere_else() {
    let folder = with("check-colour", "pump.rebuild", BAD);
    let colours = |arguments: &[&str]| run(&folder, arguments).out.contains('\u{1b}');
    assert!(
        !colours(&["check", "pump.rebuild"]),
        "a pipe is no terminal"
    );
    assert!(colours(&["check", "pump.rebuild", "--color", "always"]));
    assert!(!colours(&["--color", "never", "check", "pump.rebuild"]));
    let mut bare = command(&folder, &["check", "pump.rebuild"]);
    assert!(!ran(bare.env("NO_COLOR", "1"), None).out.contains('\u{1b}'));
}

#[test]
fn plain_letters_where_the_locale_has_no_others() {
    let folder = with("check-ascii", "pump.rebuild", BAD);
    let mut plain = command(&folder, &["check", "pump.rebuild"]);
    let plain = ran(plain.env("LC_ALL", "C"), None).out;
    let drawn = run(&folder, &["check", "pump.rebuild"]).out;
    assert!(!plain.contains('╭') && plain.contains("`----"), "{plain}");
    assert!(drawn.contains('╭'), "{drawn}");
}

#[test]
fn the_width_is_kept() {
    let folder = with("check-width", "pump.rebuild", BAD);
    let ran = run(&folder, &["check", "pump.rebuild", "--width", "50"]);
    let sentences = ran.out.lines().take_while(|line| !line.contains('╭'));
    assert!(
        sentences.map(|line| line.chars().count()).max() <= Some(50),
        "{}",
        ran.out
    );
}

#[test]
fn the_checklist_comes_with_the_findings_in_an_order_that_works() {
    let folder = with("check-sheet", "pump.rebuild", BAD);
    let ran = run(&folder, &["check", "--sheet", "pump.rebuild"]);
    assert_eq!((ran.status, ran.err.as_str()), (1, ""));
    assert!(ran.out.starts_with("error shut-in"), "{}", ran.out);
    let (_, sheet) = ran
        .out
        .split_once("\nThe checklist in the nearest order that works, 1 step moved:\n")
        .unwrap();
    assert!(!sheet.contains("NOT READY"), "{sheet}");
    let at = |words: &str| sheet.find(words).unwrap();
    assert!(
        at("Measure Gap at the tip") < at("Fit Pump cover"),
        "{sheet}"
    );
    let json = run(
        &folder,
        &["check", "--sheet", "--as", "json", "pump.rebuild"],
    );
    assert_eq!(json.status, 2, "{}", json.err);
}
