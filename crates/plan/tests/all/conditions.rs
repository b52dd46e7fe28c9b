//! Conditions: which states of which things.

use crate::{after, clauses, good, id, plan, problems, thing};

/// Things of every sort.
const THINGS: &str = "part block given\npart cover onto block\nunit head of block\nitem seal at cover\n\
    fasteners bolts 4 x M6 hold cover torque none\nfasteners more 2 x M6 hold cover torque none\n\
    fasteners pins 2 x pin\npoint gap on cover\nposition crank of tdc, bdc\ntool hook\n\
    supply glue\ndo \"Run\" as run\nmeasure gap as reading\n";

fn comes_to(condition: &str) -> Vec<String> {
    after(&good(&format!("{THINGS}do \"x\" after {condition}\n")), 3)
}

fn wrong(condition: &str) -> Vec<String> {
    let plan = plan(&format!("{THINGS}do \"x\" after {condition}\n"));
    assert!(plan.steps[2].after[0].uncertain);
    let line = format!("{}: ", THINGS.lines().count() + 1);
    let all = problems(&plan);
    all.iter()
        .map(|p| p.strip_prefix(&line).unwrap_or(p).to_owned())
        .collect()
}

#[test]
fn bare_names_mean_what_is_plain() {
    assert_eq!(comes_to("cover"), ["cover Fitted"]);
    assert_eq!(comes_to("head"), ["head Fitted"]);
    assert_eq!(comes_to("seal"), ["seal Fitted"]);
    assert_eq!(comes_to("bolts"), ["bolts Tight"]);
    assert_eq!(comes_to("gap"), ["gap Done"]);
    assert_eq!(comes_to("glue"), ["glue Applied"]);
    assert_eq!(comes_to("run"), ["#1 Done"]);
    assert_eq!(wrong("crank"), ["state crank Position \"\""]);
}

#[test]
fn every_name_in_every_state() {
    assert_eq!(
        comes_to("cover and seal are inspected and cleaned"),
        [
            "cover Inspected",
            "cover Cleaned",
            "seal Inspected",
            "seal Cleaned"
        ]
    );
    assert_eq!(
        comes_to("the cover is fitted and bolts are snug and run"),
        ["cover Fitted", "bolts Snug", "#1 Done"]
    );
}

#[test]
fn the_tightness_of_a_part_is_that_of_its_fasteners() {
    assert_eq!(comes_to("cover is tight"), ["bolts Tight", "more Tight"]);
    assert_eq!(comes_to("cover is slack"), ["bolts Slack", "more Slack"]);
    assert_eq!(wrong("head is tight"), ["state head Unit \"tight\""]);
}

#[test]
fn states_have_one_meaning_for_each_sort() {
    assert_eq!(comes_to("cover is out"), ["cover Off"]);
    assert_eq!(comes_to("bolts are off"), ["bolts Out"]);
    assert_eq!(comes_to("bolts are fitted"), ["bolts Started"]);
    assert_eq!(comes_to("pins are fitted"), ["pins Tight"]);
    assert_eq!(comes_to("crank is at bdc"), ["crank at 1"]);
    assert_eq!(comes_to("crank at tdc"), ["crank at 0"]);
    assert_eq!(comes_to("glue is cured"), ["glue Cured"]);
    assert_eq!(
        comes_to("gap is covered and measured"),
        ["gap Covered", "gap Measured"]
    );
}

#[test]
fn what_a_thing_is_never_is_told() {
    assert_eq!(wrong("cover is cured"), ["state cover Part \"cured\""]);
    assert_eq!(wrong("gap is tight"), ["state gap Point \"tight\""]);
    assert_eq!(wrong("gap is fitted"), ["state gap Point \"fitted\""]);
    assert_eq!(wrong("seal is bled"), ["state seal Item \"bled\""]);
    assert_eq!(
        wrong("crank is measured"),
        ["state crank Position \"measured\""]
    );
    assert_eq!(wrong("hook is fitted"), ["state hook Tool \"fitted\""]);
    assert_eq!(wrong("glue is fitted"), ["state glue Supply \"fitted\""]);
    assert_eq!(
        wrong("bolts are applied"),
        ["state bolts Fasteners \"applied\""]
    );
    assert_eq!(wrong("cover is at tdc"), ["state cover Part \"at tdc\""]);
}

#[test]
fn a_position_has_its_own_places() {
    assert_eq!(wrong("crank is at tcd"), ["place tcd of crank near tdc"]);
}

#[test]
fn a_step_is_done_and_nothing_else() {
    assert_eq!(comes_to("run is done"), ["#1 Done"]);
    // The participle of its own verb says the same.
    assert_eq!(comes_to("reading is measured"), ["#2 Done"]);
    assert_eq!(wrong("run is tight"), ["step run Some(\"tight\")"]);
    // In a list it stands for itself.
    assert_eq!(
        comes_to("run and bolts are tight"),
        ["#1 Done", "bolts Tight"]
    );
}

#[test]
fn needs_are_conditions() {
    let text = "part block given\npart gear onto block\n  needs block, crank at tdc because \"it meshes\"\n\
                position crank of tdc\nfasteners bolts 2 x M6 hold gear torque none\n  needs gear\n\
                turn crank to tdc\nfit gear needs bolts are slack\ntighten bolts\n";
    let plan = good(text);
    let needs = &thing(&plan, "gear").needs[0];
    assert_eq!(
        clauses(&plan, &needs.clauses),
        ["block Fitted", "crank at 0"]
    );
    assert_eq!(needs.because.as_deref(), Some("it meshes"));
    assert_eq!(
        clauses(&plan, &thing(&plan, "bolts").needs[0].clauses),
        ["gear Fitted"]
    );
    assert_eq!(after(&plan, 2), ["bolts Slack"]);
    let text = "position crank of tdc\npart gear needs crank\nfit gear\nturn crank to tdc\n";
    assert_eq!(
        problems(&self::plan(text)),
        ["2: state crank Position \"\""]
    );
}

#[test]
fn standing_rules_are_about_their_thing() {
    let text = "part block given\npart cover onto block\n  must be fitted and tight before run because \"oil\"\n\
                fasteners bolts 2 x M6 hold cover torque none\npoint gap on cover\n  must be measured after cover is fitted\n\
                fit cover\ntighten bolts\nmeasure gap\ndo \"Run\" as run\n";
    let plan = good(text);
    let own = &thing(&plan, "cover").must[0];
    assert_eq!(format!("{:?}", own.states), "[Is(Fitted)]");
    assert!(own.before);
    assert_eq!(own.condition.because.as_deref(), Some("oil"));
    let bolts = &thing(&plan, "bolts").must[0];
    assert_eq!(format!("{:?}", bolts.states), "[Is(Tight)]");
    assert_eq!(own.place, bolts.place);
    assert!(!thing(&plan, "gap").must[0].before);
}

#[test]
fn floating_and_times_are_conditions_too() {
    let text = "part a given\npart b onto a\nsupply glue\nfasteners bolts 2 x M6 hold b torque none\n  floats until b is fitted\n\
                apply glue to b\nfit b\ntighten bolts at most 10 min after glue is applied at least 2 h after b\n";
    let plan = good(text);
    let floats = &thing(&plan, "bolts").fasteners().unwrap().floats_until;
    assert_eq!(clauses(&plan, &floats[0].clauses), ["b Fitted"]);
    let lags = &plan.steps[2].lags;
    assert_eq!((lags[0].at_least, lags[1].at_least), (false, true));
    assert_eq!(clauses(&plan, &lags[0].after.clauses), ["glue Applied"]);
    assert_eq!(lags[1].time.measure.as_ref().unwrap().low().si(), 7200.0);
}

#[test]
fn conditions_on_series_hold_for_all() {
    let text = "series n 1..2\npart a-<n>\nfasteners b-<n> 2 x M6 hold a-<n> torque none\nfit a-* \ntighten b-* \n\
                do \"x\" after a-<n> are tight\ndo \"y\" after a-*\n";
    let plan = good(text);
    assert_eq!(after(&plan, 3), ["b-1 Tight", "b-2 Tight"]);
    assert_eq!(after(&plan, 4), ["a-1 Fitted", "a-2 Fitted"]);
    let _ = id(&plan, "a-1");
}

const ALL: &str = "part case given\npart lid onto case\npart rag onto case temporary\npart spare onto case\n\
    fasteners screws 4 x M5 hold lid torque 4 N.m from \"sheet 1\"\nfasteners lid-nuts 2 x nut M6 hold lid locked by wire\n\
    fasteners clip 1 x circlip hold lid\nitem wire at lid-nuts\npoint gap on lid\n\
    fit rag\nfit lid\ntighten screws, lid-nuts, clip\nlock lid-nuts\nremove rag\n";

#[test]
fn everything_is_all_that_is_worked_on() {
    let asked = |condition: &str| {
        let plan = good(&format!("{ALL}do \"Run\" after {condition}\n"));
        let step = plan.steps.len();
        after(&plan, step)
    };
    assert_eq!(
        asked("everything is tight"),
        ["screws Tight", "lid-nuts Tight", "clip Tight"]
    );
    assert_eq!(asked("everything is fitted"), ["lid Fitted"]);
    assert_eq!(asked("everything is locked"), ["lid-nuts Locked"]);
    assert_eq!(
        asked("everything"),
        ["lid Fitted", "screws Tight", "lid-nuts Tight", "clip Tight"]
    );
    assert_eq!(
        asked("everything is tight and gap is measured"),
        [
            "screws Tight",
            "lid-nuts Tight",
            "clip Tight",
            "gap Measured"
        ]
    );
}

#[test]
fn everything_leaves_out_what_asks() {
    let text = format!("{ALL}tighten clip after everything is tight\n");
    let plan = good(&text);
    let step = plan.steps.len();
    assert_eq!(after(&plan, step), ["screws Tight", "lid-nuts Tight"]);
    let text = ALL.replace(
        "hold lid torque",
        "hold lid floats until everything is tight torque",
    );
    let plan = good(&text);
    let group = thing(&plan, "screws").fasteners().unwrap();
    assert_eq!(group.floats_until[0].clauses.len(), 2);
}

#[test]
fn everything_stands_in_conditions_only() {
    for (text, said) in [
        ("part everything\n", "1: everything"),
        ("do \"Run\" as everything\n", "1: everything"),
        ("part lid\ntighten everything\n", "2: everything"),
        (
            "part lid\nfit lid\ndo \"Run\" after everything is measured\n",
            "3: everything measured",
        ),
    ] {
        assert_eq!(problems(&plan(text)), [said], "{text}");
    }
}

#[test]
fn a_star_in_a_condition_means_those_that_can_be_so() {
    let text = "part case given\npart lid-plate onto case\nfasteners lid-nuts 2 x nut M6 hold lid-plate\n\
        fasteners hood-nuts 2 x nut M6 hold lid-plate\nseries leg 1..2\nfasteners foot-nuts-<leg> 1 x nut hold case\npoint lid-gap on lid-plate\n\
        fit lid-plate\ndo \"Run\" after *-nuts are tight\ndo \"Run\" after lid-* are measured\npart shaft needs lid-*\n";
    let good = good(text);
    assert_eq!(
        after(&good, 2),
        [
            "lid-nuts Tight",
            "hood-nuts Tight",
            "foot-nuts-1 Tight",
            "foot-nuts-2 Tight"
        ]
    );
    assert_eq!(
        after(&good, 3),
        [
            "lid-plate Measured",
            "lid-nuts Measured",
            "lid-gap Measured"
        ]
    );
    assert_eq!(
        problems(&plan(&format!("{text}do \"Run\" after lid-* are cured\n"))),
        ["12: state lid-* Part \"cured\""]
    );
}
