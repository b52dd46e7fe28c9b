//! Tools by name, by kind and by slip.

use plan::model::CounterholdBy;

use crate::{good, id, plan, problems, thing};

#[test]
fn a_tool_is_declared_or_a_kind_with_or_without_a_size() {
    let text = "tool hook\n  kind puller\n  size 12 mm\npart a\nfit a with hook, Wrench 13mm, torx-bit T30, home-made-thing\n";
    let plan = plan(text);
    let with = &plan.steps[0].with;
    assert_eq!(with[0].thing, Some(id(&plan, "hook")));
    assert_eq!(
        (with[0].kind.as_deref(), with[0].size.as_deref()),
        (Some("puller"), Some("12 mm"))
    );
    assert_eq!(
        (with[1].kind.as_deref(), with[1].size.as_deref()),
        (Some("spanner"), Some("13 mm"))
    );
    assert_eq!(with[2].size.as_deref(), Some("T30"));
    assert_eq!(
        with.last().unwrap().kind.as_deref(),
        Some("home-made-thing")
    );
    assert!(with.iter().all(|tool| !tool.text.is_empty()));
}

#[test]
fn a_slip_for_a_tool_is_told() {
    let text = "tool small-hook\npart a\nfit a with smal-hook\nfit a with spaner 13 mm\nfit a with sokcet\nfit a with hanger\n";
    assert_eq!(
        problems(&plan(text)),
        [
            "3: unknown smal-hook near small-hook",
            "4: unknown spaner near spanner",
            "5: unknown sokcet near socket",
        ]
    );
}

#[test]
fn a_part_may_serve_as_a_tool() {
    let text = "part pin temporary\npart a\nfasteners f 2 x M6 hold a torque none\npoint p on a\nfit a with pin, f\nfit a with p\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["6: sort p Point"]);
    assert_eq!(plan.steps[0].with.len(), 2);
    assert_eq!(plan.steps[0].with[0].thing, Some(id(&plan, "pin")));
}

#[test]
fn use_and_with_are_forgiving() {
    let plan = good("tool hook\nsupply glue\npart a\nfit a use glue, hook\n");
    assert_eq!((plan.steps[0].with.len(), plan.steps[0].uses.len()), (1, 1));
}

#[test]
fn what_holds_against_is_a_part_a_group_or_a_tool() {
    let text = "part pin\nfasteners nut 1 x M8 torque none\nfasteners a 1 x M8 counterhold pin torque none\n\
                fasteners b 1 x M8 counterhold nut torque none\nfasteners c 1 x M8 counterhold hex 17 mm torque none\n\
                fasteners d 1 x M8 counterhold pinn torque none\nfit pin\ntighten nut, a, b, c, d\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["6: unknown pinn near pin"]);
    let by = |name: &str| thing(&plan, name).fasteners().unwrap().counterhold.clone();
    assert!(matches!(by("a"), Some(CounterholdBy::Part(r)) if r.thing == id(&plan, "pin")));
    assert!(matches!(by("b"), Some(CounterholdBy::Part(r)) if r.thing == id(&plan, "nut")));
    assert!(
        matches!(by("c"), Some(CounterholdBy::Tool(tool)) if tool.size.as_deref() == Some("17 mm"))
    );
    assert!(by("d").is_none() && thing(&plan, "d").uncertain);
}

#[test]
fn a_fluid_may_be_a_word_but_not_a_slip() {
    let text = "supply engine-oil\npart a\npoint p on a holds gear-oil 1 L\npoint q on a holds engin-oil 1 L\n\
                fasteners f 1 x M6 lubricated with engine-oil torque none\nfit a\nfill p, q with engine-oil\ntighten f\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["4: unknown engin-oil near engine-oil"]);
    assert_eq!(
        thing(&plan, "p").point().unwrap().holds.as_ref().unwrap().1,
        "gear-oil"
    );
    assert!(
        thing(&plan, "f")
            .fasteners()
            .unwrap()
            .lubricated
            .as_ref()
            .unwrap()
            .0
            .is_some()
    );
}
