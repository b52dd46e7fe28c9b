//! Looking steps and things up by what people say.

use plan::find;
use plan::model::StepId;

use crate::sample::SAMPLE;
use crate::{good, id};

#[test]
fn a_step_is_found_by_name_number_line_and_words() {
    let plan = good(SAMPLE);
    let step = |said: &str| find::step(&plan, said);
    assert_eq!(step("first-run"), Ok(StepId(17)));
    assert_eq!(step("14"), Ok(StepId(13)));
    assert_eq!(step("0"), Err(Vec::new()));
    assert_eq!(step("99"), Err(Vec::new()));
    assert_eq!(step("tighten cover-screws"), Ok(StepId(4)));
    assert_eq!(step("  Tighten   the cover-screws "), Ok(StepId(4)));
    assert_eq!(step("fit belt"), Ok(StepId(11)));
    assert_eq!(step("fit crank-pin"), Ok(StepId(6)));
    assert_eq!(step("fit crank-pulley, crank-pin"), Ok(StepId(6)));
    assert_eq!(step("do Run until warm"), Ok(StepId(17)));
    assert_eq!(step("run until warm"), Ok(StepId(17)));
    assert_eq!(step("fit Timing cover"), Ok(StepId(3)));
    assert_eq!(step("fit whirligig"), Err(Vec::new()));
    assert_eq!(step(""), Err(Vec::new()));
    assert_eq!(step("fit").unwrap_err().len(), 7);
    let line = SAMPLE
        .lines()
        .position(|line| line.starts_with("fit belt"))
        .unwrap()
        + 1;
    assert_eq!(step(&format!("line:{line}")), Ok(StepId(11)));
    assert_eq!(step("line:1"), Err(Vec::new()));
    assert_eq!(step("line:99999"), Err(Vec::new()));
    assert_eq!(step("line:x"), Err(Vec::new()));
}

#[test]
fn steps_of_a_series_are_told_apart_by_their_member() {
    let text =
        "series bore 1..3\npart cap-<bore>\nstage \"S\" for each bore\nfit cap-<bore> as on\n";
    let plan = good(text);
    assert_eq!(find::step(&plan, "fit cap-2"), Ok(StepId(1)));
    assert_eq!(find::step(&plan, "fit cap 2"), Ok(StepId(1)));
    assert_eq!(find::step(&plan, "fit cap").unwrap_err().len(), 3);
    assert_eq!(find::step(&plan, "on").unwrap_err().len(), 3);
    assert_eq!(find::step(&plan, "line:4").unwrap_err().len(), 3);
}

#[test]
fn a_line_below_a_step_belongs_to_it() {
    let plan = good("part a\nfit a\n  takes 5 min\n");
    assert_eq!(find::step(&plan, "line:3"), Ok(StepId(0)));
}

#[test]
fn a_thing_is_found_by_name_and_label() {
    let plan = good(SAMPLE);
    let thing = |said: &str| find::thing(&plan, said);
    assert_eq!(thing("timing-cover"), Ok(id(&plan, "timing-cover")));
    assert_eq!(thing("Timing Cover"), Ok(id(&plan, "timing-cover")));
    assert_eq!(thing("exchanger"), Ok(id(&plan, "heat-exchanger")));
    assert_eq!(
        thing("timing-covr").unwrap_err().near,
        Some(id(&plan, "timing-cover"))
    );
    assert_eq!(
        thing("heat exchangr").unwrap_err().near,
        Some(id(&plan, "heat-exchanger"))
    );
    assert_eq!(thing("whirligig").unwrap_err(), find::NoThing::default());
    assert_eq!(thing("screws"), Ok(id(&plan, "cover-screws")));
}

#[test]
fn the_label_of_a_series_tells_its_members_apart() {
    let plan = good("series leg left, right\npart tube-<leg> \"Fork tube\"\n");
    let thing = |said: &str| find::thing(&plan, said);
    assert_eq!(plan.things[1].called(), "Fork tube (right)");
    assert_eq!(thing("fork tube (right)"), Ok(id(&plan, "tube-right")));
    assert_eq!(thing("Fork tube").unwrap_err().several.len(), 2);
}
