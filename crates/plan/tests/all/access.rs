//! What is in the way of what.

use plan::model::Plan;

use crate::{clauses, good, names, plan, problems, thing};

/// The blockers of a thing as `by` or `by through`.
fn blockers(plan: &Plan, name: &str) -> Vec<String> {
    let name_of = |id| plan.thing(id).name.as_str();
    let one = |blocker: &plan::model::Blocker| match blocker.through {
        Some(through) => format!("{} through {}", name_of(blocker.by), name_of(through)),
        None => name_of(blocker.by).to_owned(),
    };
    thing(plan, name).blockers.iter().map(one).collect()
}

#[test]
fn covers_and_behind_say_the_same() {
    let text =
        "part a\npart b behind a because \"no room\"\npart c\npart d covers c\nfit a, b, c, d\n";
    let plan = good(text);
    assert_eq!(blockers(&plan, "b"), ["a"]);
    assert_eq!(
        thing(&plan, "b").blockers[0].because.as_deref(),
        Some("no room")
    );
    assert_eq!(blockers(&plan, "c"), ["d"]);
    assert!(blockers(&plan, "a").is_empty() && blockers(&plan, "d").is_empty());
}

#[test]
fn tools_and_sides_stay_with_the_cover() {
    let text = "part a covers b to wrench 13mm from Above\npart b behind c to socket\npart c\nfit b, a, c\n";
    let plan = plan(text);
    let blockers = &thing(&plan, "b").blockers;
    let first = blockers[0].tool.as_ref().unwrap();
    assert_eq!(first.kind.as_deref(), Some("spanner"));
    assert_eq!(first.size.as_deref(), Some("13 mm"));
    assert_eq!(blockers[0].side.as_deref(), Some("above"));
    assert_eq!(
        blockers[1].tool.as_ref().unwrap().kind.as_deref(),
        Some("socket")
    );
}

#[test]
fn covering_a_part_covers_its_points_and_not_its_fasteners() {
    let text = "part gear\npart lid covers gear\npoint mark on gear\nfasteners nut 1 x M8 hold gear torque none\n\
                point own on lid\nfit gear\ntighten nut\nmark mark\nfit lid\nmeasure own\n";
    let plan = good(text);
    assert_eq!(blockers(&plan, "mark"), ["lid through gear"]);
    assert!(blockers(&plan, "nut").is_empty());
    assert!(blockers(&plan, "own").is_empty());
}

#[test]
fn covering_a_unit_covers_what_is_in_it() {
    let text = "part base\npart wheel\npart inner-base\nunit inner of inner-base, wheel\nunit outer of base, inner\n\
                point nipple on wheel\npart lid covers outer\nfit wheel\nfit inner\nfit outer\nbleed nipple\nfit lid\n";
    let plan = good(text);
    assert_eq!(blockers(&plan, "outer"), ["lid"]);
    for name in ["base", "wheel", "inner", "inner-base", "nipple"] {
        assert_eq!(blockers(&plan, name), ["lid through outer"], "{name}");
    }
}

#[test]
fn nothing_is_in_its_own_way() {
    let text = "part base\npart lid\nunit box of base, lid\npart self covers self\n\
                point face on lid\nfit lid, self\nfit box\nmeasure face\n";
    let plan = good(text);
    assert!(blockers(&plan, "self").is_empty());
    // A member that says it covers its unit covers its fellows only where it says so.
    let text = "part base\npart lid covers box, base\nunit box of base, lid\npoint face on lid, base\nfit lid\nfit box\nmeasure face\n";
    let plan = good(text);
    assert!(blockers(&plan, "box").is_empty() && blockers(&plan, "lid").is_empty());
    assert_eq!(blockers(&plan, "base"), ["lid"]);
    assert!(blockers(&plan, "face").is_empty());
    // A unit covers none of its members.
    let text = "part base\npart wheel\nunit box of base, wheel covers wheel\nfit wheel\nfit box\n";
    assert!(blockers(&good(text), "wheel").is_empty());
}

#[test]
fn fasteners_and_points_can_be_named_outright() {
    let text = "part lid covers nut, mark\npart gear\npoint mark on gear\nfasteners nut 1 x M8 hold gear behind bolt torque none\n\
                fasteners bolt 1 x M8 torque none\nfit gear, lid\ntighten nut, bolt\nmark mark\n";
    let plan = good(text);
    assert_eq!(blockers(&plan, "nut"), ["lid", "bolt"]);
    assert_eq!(blockers(&plan, "mark"), ["lid"]);
}

#[test]
fn a_star_covers_the_whole_series() {
    let text = "series n 1..2\npart cap-<n>\npoint mark-<n> on cap-<n>\npart lid covers cap-*\nfit cap-*\nmark mark-*\nfit lid\n";
    let plan = good(text);
    assert_eq!(blockers(&plan, "cap-2"), ["lid"]);
    assert_eq!(blockers(&plan, "mark-2"), ["lid through cap-2"]);
}

#[test]
fn only_bodies_are_in_the_way() {
    let text = "supply oil\npoint p on a behind oil\npart a covers oil, q\npoint q on a\nposition r of x, y behind a\n\
                fit a\nmark p, q\nturn r to x\n";
    assert_eq!(
        problems(&plan(text)),
        ["2: sort oil Supply", "3: sort oil Supply"]
    );
}

#[test]
fn a_way_in_is_read_in_full() {
    let text = "part a\npart b\nposition crank of tdc\npoint p on a\n  reach from Above with socket 11 mm, hook clear of b needs a, crank at tdc\n\
                tool hook\nfit a, b\nmark p\nturn crank to tdc\n";
    let plan = plan(text);
    let way = &thing(&plan, "p").ways[0];
    assert_eq!(way.side.as_deref(), Some("above"));
    assert_eq!(way.tools.len(), 2);
    assert!(way.tools[1].thing.is_some());
    assert_eq!(names(&plan, &way.clear_of), ["b"]);
    assert_eq!(
        clauses(&plan, &way.needs.clauses),
        ["a Fitted", "crank at 0"]
    );
    let text = "point p on a reach clear of q\npoint q on a\npart a\nfit a\nmark p, q\n";
    assert_eq!(problems(&self::plan(text)), ["1: sort q Point"]);
}
