//! `kit`: what to lay out.

use crate::bench::{GOOD, run, with};

const USED: &str = r#"plan "Pump" starts assembled
part housing
part cover onto housing
item gasket "Cover gasket" at cover single-use count 2 size "85 x 70"
fasteners cover-screws "Cover screws" 6 x M5 hold cover torque 4 N.m from "sheet 2"
supply grease "Pump grease" kind grease have
supply sealant "Sealant" kind sealant cures in 24 h
point oil on housing holds grease 0.5 L
tool small-wrench "Small wrench" kind torque-wrench range 2..10 N.m

undo cover-screws
remove cover
fill oil
fit cover new gasket
tighten cover-screws with small-wrench
undo cover-screws
remove cover
fit cover new gasket
tighten cover-screws with small-wrench, socket 8 mm
"#;

#[test]
fn single_use_things_are_counted_by_how_often_they_are_disturbed() {
    let folder = with("kit-used", "pump.rebuild", USED);
    let ran = run(&folder, &["kit", "pump.rebuild"]);
    assert_eq!(ran.status, 0, "{}", ran.err);
    for line in [
        "[ ] 4 x Cover gasket: 85 x 70; at cover; taken new 2 times, 2 each time; single",
        "Parts, out of the machine",
        "[ ] Pump grease: grease; 0.5 L (0.53 us-quart)",
        "[ ] socket 8 mm: step 9",
    ] {
        assert!(ran.out.contains(line), "no {line} in\n{}", ran.out);
    }
}

#[test]
fn single_use_fasteners_go_in_new_the_first_time() {
    let plan = |new: &str| {
        format!(
            "part wheel\nfasteners nut \"Wheel nut\" 1 x M16 hold wheel single-use torque none\n\
             fit wheel\ntighten nut{new}\nundo nut\ntighten nut new nut\n"
        )
    };
    for (test, new) in [("kit-first", ""), ("kit-first-said", " new nut")] {
        let folder = with(test, "wheel.rebuild", plan(new));
        let out = run(&folder, &["kit", "wheel.rebuild"]).out;
        assert!(
            out.contains("[ ] 2 x Wheel nut: M16; at wheel; taken new 2 times, 1 each time"),
            "{out}"
        );
    }
}

#[test]
fn what_is_not_said_to_be_there_stands_first() {
    let folder = with("kit-missing", "pump.rebuild", USED);
    let out = run(&folder, &["kit", "pump.rebuild"]).out;
    let missing = out.split("\n\n").nth(1).unwrap();
    assert_eq!(
        missing,
        "Not said to be there\n[ ] Sealant\n[ ] Small wrench"
    );
    let folder = with("kit-silent", "pump.rebuild", GOOD);
    assert!(
        !run(&folder, &["kit", "pump.rebuild"])
            .out
            .contains("Not said")
    );
}

#[test]
fn the_kit_is_to_be_had_for_programs() {
    let folder = with("kit-json", "pump.rebuild", USED);
    let out = run(&folder, &["kit", "pump.rebuild", "--as", "json"]).out;
    let kits: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!(kits["format"], "fitwright-kit");
    assert_eq!(kits["kits"][0]["used_up"][0]["needed"], 4);
    assert_eq!(kits["kits"][0]["missing"][0], "Sealant");
}
