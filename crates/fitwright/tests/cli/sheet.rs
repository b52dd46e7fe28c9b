//! `sheet`.

use crate::bench::{BAD, GOOD, run, with};

#[test]
fn the_checklist_of_a_sound_plan() {
    let folder = with("sheet-good", "pump.rebuild", GOOD);
    let ran = run(&folder, &["sheet", "pump.rebuild"]);
    assert_eq!((ran.status, ran.err.as_str()), (0, ""));
    let page = "Wash pump
Wash pump, belt-driven.
4 steps from its parts. Plan: pump.rebuild, revision 2.

Inside
────────────────────────────────────────────────────────────────────────────────
[ ]  1  Fit Impeller
        part      2 kg
[ ]  2  Measure Gap at the tip
        reading   ________ mm, expect 0.1..0.3 mm

Closing
────────────────────────────────────────────────────────────────────────────────
LAST CHANCE before step 3:
    [ ] Gap at the tip: measured at step 2
[ ]  3  Fit Pump cover
[ ]  4  Tighten Cover screws
        tool      Small torque wrench
        size      6 x M5
        final     4 N.m (35 lbf.in) (sheet 2)

────────────────────────────────────────────────────────────────────────────────
The maker's manual, local codes and a licensed or qualified person come before
this sheet. Where they say otherwise, stop and do what they say.
";
    assert_eq!(ran.out, page);
}

#[test]
fn a_plan_with_errors_is_printed_but_marked() {
    let folder = with("sheet-bad", "pump.rebuild", BAD);
    for form in ["text", "markdown"] {
        let ran = run(&folder, &["sheet", "--as", form, "pump.rebuild"]);
        assert_eq!(ran.status, 1);
        assert!(ran.out.contains("NOT READY FOR THE BENCH"), "{}", ran.out);
        assert_eq!(
            ran.err,
            "fitwright: pump.rebuild has 1 error; `fitwright check pump.rebuild` shows it.\n"
        );
    }
}

#[test]
fn markdown_is_a_task_list() {
    let folder = with("sheet-markdown", "pump.rebuild", GOOD);
    let page = run(&folder, &["sheet", "--as", "markdown", "pump.rebuild"]).out;
    assert!(page.starts_with("# Wash pump\n"), "{page}");
    assert_eq!(page.matches("\n- [ ] **").count(), 5, "{page}");
}

#[test]
fn a_sound_plan_has_nothing_left_undone_at_a_last_chance() {
    let examples = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let ran = run(&examples, &["sheet", "lathe-headstock.rebuild"]);
    assert_eq!(ran.status, 0, "{}", ran.err);
    assert!(ran.out.contains("LAST CHANCE before step"), "{}", ran.out);
    assert!(!ran.out.contains("NOT DONE YET"), "{}", ran.out);
}
