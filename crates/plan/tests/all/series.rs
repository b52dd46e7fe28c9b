//! Names with holes and stars, and stages gone through for each member.

use crate::{after, good, id, names, plan, problems, thing};

#[test]
fn a_name_with_a_hole_is_one_thing_for_each_member() {
    let text = "series bore 1..3\npart rod-<bore>\npart cap-<bore>\n  onto rod-<bore>\n  matched with rod-<bore>\n\
                fit rod-*\nfit cap-*\n";
    let plan = good(text);
    let cap = thing(&plan, "cap-2");
    let member = cap.member.as_ref().unwrap();
    assert_eq!(
        (member.stem.as_str(), member.which.as_str()),
        ("cap-<bore>", "2")
    );
    assert_eq!(names(&plan, &cap.onto), ["rod-2"]);
    assert_eq!(names(&plan, &cap.matched_with), ["rod-2"]);
    assert_eq!(
        names(&plan, &plan.steps[1].targets),
        ["cap-1", "cap-2", "cap-3"]
    );
}

#[test]
fn series_cross() {
    let text = "series bore 1..2\nseries port inlet, exhaust\npart valve-<bore>-<port>\nfit valve-*\n\
                fit valve-2-<port>\nfit valve-<bore>-inlet\nfit valve-1-*\n";
    let plan = good(text);
    assert_eq!(plan.things.len(), 4);
    let which = &thing(&plan, "valve-2-exhaust")
        .member
        .as_ref()
        .unwrap()
        .which;
    assert_eq!(which, "2, exhaust");
    let targets = |step: usize| names(&plan, &plan.steps[step - 1].targets);
    assert_eq!(
        targets(1),
        [
            "valve-1-inlet",
            "valve-1-exhaust",
            "valve-2-inlet",
            "valve-2-exhaust"
        ]
    );
    assert_eq!(targets(2), ["valve-2-inlet", "valve-2-exhaust"]);
    assert_eq!(targets(3), ["valve-1-inlet", "valve-2-inlet"]);
    assert_eq!(targets(4), ["valve-1-inlet", "valve-1-exhaust"]);
}

#[test]
fn a_series_crossed_with_itself_has_the_same_member_twice() {
    let plan = good("series bore 1..2\npart link-<bore>-<bore>\nfit link-*\n");
    let all: Vec<&str> = plan
        .things
        .iter()
        .map(|thing| thing.name.as_str())
        .collect();
    assert_eq!(all, ["link-1-1", "link-2-2"]);
    assert_eq!(thing(&plan, "link-2-2").member.as_ref().unwrap().which, "2");
}

#[test]
fn a_star_means_the_series_and_not_what_merely_begins_alike() {
    let text = "series bore 1..2\npart cap-<bore>\nfasteners cap-bolts-<bore> 2 x M8 hold cap-<bore> torque none\n\
                part cap-tray\nfit cap-*\ntighten cap-bolts-*\nfit cap-tray\n";
    let plan = good(text);
    assert_eq!(names(&plan, &plan.steps[0].targets), ["cap-1", "cap-2"]);
    assert_eq!(
        names(&plan, &plan.steps[1].targets),
        ["cap-bolts-1", "cap-bolts-2"]
    );
}

#[test]
fn a_star_without_a_series_means_the_names_that_begin_so() {
    let plan = good("part cap-left\npart cap-right\npart cup\nfit cap-*\nfit cup\n");
    assert_eq!(
        names(&plan, &plan.steps[0].targets),
        ["cap-left", "cap-right"]
    );
}

#[test]
fn a_star_that_means_nothing_is_unknown() {
    let text = "series bore 1..2\npart cap-<bore>\nfit cup-*\nfit cap-*\n";
    assert_eq!(problems(&plan(text)), ["3: unknown cup-* near cap-*"]);
}

#[test]
fn a_hole_outside_its_stage_means_all() {
    let plan = good(
        "series bore 1..2\npart cap-<bore>\npart lid covers cap-<bore>\nfit cap-<bore>\nfit lid\n",
    );
    assert_eq!(names(&plan, &plan.steps[0].targets), ["cap-1", "cap-2"]);
    assert_eq!(thing(&plan, "cap-2").blockers[0].by, id(&plan, "lid"));
}

#[test]
fn a_stage_is_gone_through_member_by_member() {
    let text = "series bore 1..3\npart rod-<bore>\npart cap-<bore>\n\
                stage \"Rods\" for each bore in 2, 1, 3\nfit rod-<bore>\nfit cap-<bore>\nstage \"End\"\ndo \"Look\"\n";
    let plan = good(text);
    let done: Vec<String> = plan
        .steps
        .iter()
        .map(|step| names(&plan, &step.targets).join(" "))
        .collect();
    assert_eq!(
        done,
        ["rod-2", "cap-2", "rod-1", "cap-1", "rod-3", "cap-3", ""]
    );
    let member = |step: usize| plan.steps[step].member.as_deref();
    assert_eq!(
        (member(0), member(2), member(6)),
        (Some("2"), Some("1"), None)
    );
    assert_eq!((plan.stages[0].steps.0.0, plan.stages[0].steps.1.0), (0, 6));
    assert_eq!(plan.steps[0].item, plan.steps[2].item);
}

#[test]
fn step_names_with_holes_bind_in_their_stage() {
    let text = "series bore 1..2\npart cap-<bore>\nstage \"A\" for each bore\nfit cap-<bore> as on-<bore>\n\
                stage \"B\"\ndo \"Look\" after on-2\ndo \"Look\" after on-*\n";
    let plan = good(text);
    assert_eq!(plan.steps[1].name.as_ref().unwrap().text, "on-2");
    assert_eq!(after(&plan, 3), ["#2 Done"]);
    assert_eq!(after(&plan, 4), ["#1 Done", "#2 Done"]);
}

#[test]
fn within_a_pass_a_step_name_means_that_pass() {
    let text = "series bore 1..2\npart cap-<bore>\nstage \"A\" for each bore\n\
                measure cap-<bore> as reading\nfit cap-<bore> after reading\n";
    let plan = good(text);
    assert_eq!(after(&plan, 2), ["#1 Done"]);
    assert_eq!(after(&plan, 4), ["#3 Done"]);
}

#[test]
fn two_series_in_one_stage_go_the_second_inside_the_first() {
    let text = "series bore 1..2\nseries port in, out\npart seat-<bore>-<port>\n\
                stage \"Seats\" for each bore for each port\nfit seat-<bore>-<port>\n";
    let plan = good(text);
    let members: Vec<&str> = plan
        .steps
        .iter()
        .filter_map(|s| s.member.as_deref())
        .collect();
    assert_eq!(members, ["1, in", "1, out", "2, in", "2, out"]);
}

#[test]
fn members_run_as_people_count() {
    let names = |text: &str| -> Vec<String> {
        good(text)
            .things
            .iter()
            .map(|thing| thing.name.clone())
            .collect()
    };
    assert_eq!(
        names("series n 3..1\npart a-<n>\nfit a-*\n"),
        ["a-3", "a-2", "a-1"]
    );
    assert_eq!(
        names("series n 09..11\npart a-<n>\nfit a-*\n"),
        ["a-09", "a-10", "a-11"]
    );
}

#[test]
fn a_member_that_is_none_is_told() {
    let text = "series port inlet, exhaust\npart seat-<port>\nstage \"S\" for each port in inlet, exhuast\nfit seat-<port>\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["3: member exhuast of port near exhaust"]);
    assert_eq!(plan.steps.len(), 1);
}

#[test]
fn an_unknown_series_spoils_only_what_it_names() {
    let text = "series bore 1..2\npart cap-<boer>\npart rod onto cap-<boer>\nfit cap-<boer>\nfit cap-1\nfit rod\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["2: unknown boer near bore"]);
    assert!(thing(&plan, "cap-<boer>").uncertain);
    let text = "part cap\nstage \"S\" for each boer\nfit cap\n";
    let plan = self::plan(text);
    assert_eq!(problems(&plan), ["2: unknown boer"]);
    assert_eq!(plan.steps.len(), 1);
}

#[test]
fn a_member_named_twice_is_told_and_counts_once() {
    let plan = plan("series port inlet, exhaust, inlet\npart seat-<port>\nfit seat-*\n");
    assert_eq!(problems(&plan), ["1: twice inlet"]);
    assert_eq!(plan.things.len(), 2);
}

#[test]
fn a_hand_made_thing_may_have_the_name_of_a_member() {
    let plan = plan("series bore 1..2\npart cap-2\npart cap-<bore>\nfit cap-1, cap-2\n");
    assert_eq!(problems(&plan), ["3: twice cap-2"]);
    assert_eq!(plan.things.len(), 2);
}
