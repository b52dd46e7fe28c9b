//! One namespace, each name declared once, every user of an unknown name told once.

use plan::model::{ProblemKind, Subject};

use crate::{after, good, plan, problems, thing};

#[test]
fn the_first_of_two_declarations_wins() {
    let plan = plan("part cover\n  mass 1 kg\npart cover\n  mass 2 kg\nfit cover\n");
    assert_eq!(problems(&plan), ["3: twice cover"]);
    assert_eq!(plan.things.len(), 1);
    assert_eq!(thing(&plan, "cover").mass.as_ref().unwrap().text, "1 kg");
    let ProblemKind::TwiceNamed { first, .. } = &plan.problems[0].kind else {
        panic!("{:?}", plan.problems);
    };
    assert_eq!(plan.text(*first), "cover");
    assert_eq!(first.span.start, 5);
}

#[test]
fn steps_and_things_share_their_names() {
    let text = "part cover\nfit cover as cover\ndo \"Run\" as run\ndo \"Again\" as run\n";
    assert_eq!(problems(&plan(text)), ["2: twice cover", "4: twice run"]);
}

#[test]
fn series_have_names_of_their_own() {
    good("series cap 1..2\npart cap\npart lid-<cap> onto cap\nfit cap\nfit lid-*\n");
}

#[test]
fn names_may_be_used_before_they_are_declared() {
    let plan = good("fit cover after run\npart cover\ndo \"Run\" as run\n");
    assert_eq!(after(&plan, 1), ["#2 Done"]);
}

#[test]
fn an_unknown_name_is_told_with_the_nearest_that_could_stand_there() {
    // `gear-tool` is nearer to what is written, but no tool can be fitted.
    let text = "tool gear-coves\npart gear-cover\nfit gear-covee\n";
    assert_eq!(
        problems(&plan(text)),
        ["3: unknown gear-covee near gear-cover"]
    );
    // Nothing that fits is near, and a tool is no guess for what is fitted.
    let text = "tool puller\npart sump\nfit puler\n";
    assert_eq!(problems(&plan(text)), ["3: unknown puler"]);
    // In a short word two slips make another word.
    let text = "part lid\nfasteners old 1 x bolt hold lid\ntighten all, odl\n";
    assert_eq!(
        problems(&plan(text)),
        ["3: unknown all", "3: unknown odl near old"]
    );
    // The only one that ends so.
    let text = "part timing-cover\npart sump\nfit cover\n";
    assert_eq!(
        problems(&plan(text)),
        ["3: unknown cover near timing-cover"]
    );
    assert_eq!(problems(&plan("fit whirligig\n")), ["1: unknown whirligig"]);
}

#[test]
fn an_unknown_name_is_dropped_and_its_holder_marked() {
    let text = "part cover\nfit cover, lidd after bolts are tight and cover is fitted\nfit cover\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["2: unknown lidd", "2: unknown bolts"]);
    let step = &plan.steps[0];
    assert_eq!(step.targets.len(), 1);
    assert!(step.uncertain && step.after[0].uncertain);
    assert_eq!(step.after[0].clauses.len(), 1);
    assert!(!plan.steps[1].uncertain);
}

#[test]
fn a_sound_condition_beside_a_doubtful_one_stays_sound() {
    let plan = plan("part a\nfit a after bb before a is covered\n");
    assert!(plan.steps[0].after[0].uncertain);
    assert!(!plan.steps[0].before[0].uncertain);
}

#[test]
fn capitals_are_read_as_small_letters() {
    let plan = plan("part Cover\nfit COVER\n");
    assert_eq!(problems(&plan), ["1: text", "2: text"]);
    assert_eq!(thing(&plan, "cover").name, "cover");
    assert_eq!(plan.steps[0].targets.len(), 1);
}

#[test]
fn spelling_pairs_are_one_name() {
    let plan =
        good("part gray-plate onto block material Aluminum\npart block given\nfit grey-plate\n");
    let plate = thing(&plan, "gray-plate");
    assert_eq!(plate.material.as_deref(), Some("aluminium"));
}

#[test]
fn several_steps_of_one_item_share_their_name() {
    let text = "series bore 1..3\npart cap-<bore>\nstage \"Caps\" for each bore\nfit cap-<bore> as caps\n\
                stage \"End\"\ndo \"Look\" after caps\n";
    let plan = good(text);
    assert_eq!(after(&plan, 4), ["#1+2+3 Done"]);
    let Subject::Steps(steps) = &plan.steps[3].after[0].clauses[0].subject else {
        panic!();
    };
    assert_eq!(steps.len(), 3);
}

#[test]
fn what_nobody_mentions_is_listed() {
    let text = "series foot 1..2\nseries port a, b\npart leg-<foot> onto leg-<foot>\npart base\n\
                tool hook\nfit base\ndo \"Run\" as run\n";
    let plan = plan(text);
    let names: Vec<&str> = plan
        .unmentioned
        .iter()
        .map(|(name, _)| name.as_str())
        .collect();
    assert_eq!(names, ["port", "leg-<foot>", "hook"]);
}

#[test]
fn a_second_heading_is_told() {
    let plan = plan("plan \"One\"\n  people 2\nplan \"Two\"\n  people 3\n");
    assert_eq!(problems(&plan), ["3: two plans"]);
    assert_eq!(plan.heading.title.as_deref(), Some("One"));
    assert_eq!(plan.heading.people, Some(2));
}

#[test]
fn a_step_is_no_thing() {
    let text = "do \"Run\" as run\npart cover onto run\nfit cover, run\n";
    assert_eq!(
        problems(&plan(text)),
        ["2: step run None", "3: step run None"]
    );
}
