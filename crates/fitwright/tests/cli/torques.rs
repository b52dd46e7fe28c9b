//! `torques`: the torque sheet.

use crate::bench::{run, with};
use std::fmt::Write;

const PLAN: &str = r#"plan "Pump"
  torque in N.m
part housing given
part cover "Cover" onto housing
part flange "Flange" onto housing
supply threadlock "Threadlocker" kind threadlocker
tool small-wrench "Small wrench" kind torque-wrench range 5..50 N.m length 250 mm
tool crow "Crowfoot 13 mm" kind crowfoot length 50 mm
fasteners cover-screws "Cover screws" 8 x M6 class 8.8 hold cover
  passes 4 N.m, 8 N.m from "sheet 2"
  pattern cross in ring
fasteners flange-bolts "Flange bolts" 2 x M8 hold flange
  torque 16 lbf.ft then turn 30 deg from "sheet 3"
  locked by threadlock
fasteners drain-plug "Drain plug" 1 x M12 torque unknown
fasteners flap-nut "Flap nut" 1 x M6 torque none

fit flange
tighten flange-bolts use threadlock with small-wrench, crow
fit cover
tighten cover-screws
tighten drain-plug
tighten flap-nut
"#;

fn torques(test: &str, arguments: &[&str]) -> String {
    let folder = with(test, "pump.rebuild", PLAN);
    let mut all = vec!["torques", "pump.rebuild"];
    all.extend(arguments);
    let ran = run(&folder, &all);
    assert_eq!(ran.status, 0, "{}", ran.err);
    ran.out
}

#[test]
fn both_units_passes_angle_blank_and_source() {
    let out = torques("torques-text", &[]);
    for part in [
        "4, 8 N.m",
        "35, 71 lbf.in",
        "22 N.m, turn 30 deg",
        "16 lbf.ft",
        "________ N.m",
        "from sheet 2",
        "By feel: Flap nut",
        "1 5 3 7 2 6 4 8",
    ] {
        assert!(out.contains(part), "no {part} in\n{out}");
    }
    // 16 lbf.ft x 250 mm / (250 mm + 50 mm) = 13.33 lbf.ft.
    assert!(
        out.contains("set Small wrench to 13.33 lbf.ft with Crowfoot 13 mm straight on"),
        "{out}"
    );
}

#[test]
fn sorted_by_use_or_by_place() {
    let place = |out: &str, name: &str| out.find(name).unwrap();
    let out = torques("torques-use", &[]);
    assert!(place(&out, "Flange bolts") < place(&out, "Cover screws"));
    let out = torques("torques-place", &["--by", "place"]);
    assert!(place(&out, "Cover screws") < place(&out, "Flange bolts"));
}

#[test]
fn as_markdown_json_and_a_picture() {
    let markdown = torques("torques-markdown", &["--as", "markdown"]);
    assert!(
        markdown.contains("| 4 | Cover screws | 8 x M6 8.8 | 4, 8 N.m | 35, 71 lbf.in | F1 "),
        "{markdown}"
    );
    let json: serde_json::Value =
        serde_json::from_str(&torques("torques-json", &["--as", "json"])).unwrap();
    assert_eq!(json["format"], "fitwright-torques");
    let groups = json["sheets"][0]["groups"].as_array().unwrap();
    assert_eq!(groups[2]["stages"][0]["figure"], serde_json::Value::Null);
    let svg = torques("torques-svg", &["--as", "svg", "--of", "cover-screws"]);
    assert!(svg.starts_with("<svg ") && svg.matches("<circle").count() == 8);
}

#[test]
fn a_picture_that_cannot_be_drawn_says_why() {
    let folder = with("torques-no-svg", "pump.rebuild", PLAN);
    let ran = run(
        &folder,
        &[
            "torques",
            "pump.rebuild",
            "--as",
            "svg",
            "--of",
            "drain-plug",
        ],
    );
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("cover-screws"), "{}", ran.err);
}

#[test]
fn forty_groups_fit_on_one_page() {
    // 60 lines of 80 columns is a page of A4 or Letter in the usual small type.
    let mut plan = String::from("plan \"Engine\"\n  torque in N.m\n");
    for n in 1..=40 {
        let source = n % 5;
        writeln!(
            plan,
            "part part-{n}\nfasteners bolts-{n} \"Bolts of casting no. {n}\" 6 x M8x1.25 class 8.8 hold part-{n} torque 22 N.m then turn 60 deg from \"sheet {source}\""
        )
        .unwrap();
    }
    for n in 1..=40 {
        writeln!(plan, "fit part-{n}\ntighten bolts-{n}").unwrap();
    }
    let folder = with("torques-forty", "engine.rebuild", plan);
    let ran = run(&folder, &["torques", "engine.rebuild"]);
    let lines: Vec<&str> = ran.out.lines().collect();
    assert!(lines.len() <= 60, "{} lines\n{}", lines.len(), ran.out);
    assert!(
        lines.iter().all(|line| line.chars().count() <= 80),
        "{}",
        ran.out
    );
}
