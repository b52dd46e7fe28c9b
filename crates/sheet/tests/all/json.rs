//! The published JSON forms. That they keep to their schemas is tested with a schema library by
//! `tests/peers/json_schemas.py`; here, that they say what is so.

use crate::bench::{plan, sheet};
use check::Bench;
use serde_json::Value;
use sheet::json;

const BAD: &str = "part case given\npart gear \"Gear\" onto case\npart cover \"Cover\" onto case covers gear\n\
     point play \"Play\" on gear\nfit gear\nfit cover\nmeasure play\n";

fn read(value: &impl serde::Serialize) -> Value {
    serde_json::from_str(&json::text(value).unwrap()).unwrap()
}

#[test]
fn findings_have_places_in_lines_characters_and_bytes() {
    let plan = plan(BAD);
    let bench = Bench::of(&plan);
    let report = read(&json::Report::of(vec![json::CheckedPlan::of(
        &plan,
        bench.order(),
        bench.findings(),
    )]));
    assert_eq!(report["format"], "fitwright-check");
    assert_eq!(report["version"], json::VERSION);
    assert_eq!(report["counts"]["errors"], 1);
    let found = &report["plans"][0]["findings"][0];
    assert_eq!(found["rule"], "shut-in");
    assert_eq!(found["place"]["file"], "pump.rebuild");
    assert_eq!(found["place"]["line"], 7);
    assert_eq!(found["place"]["column"], 1);
    let start = found["place"]["start"].as_u64().unwrap() as usize;
    assert!(BAD[start..].starts_with("measure play"));
    assert_eq!(found["steps"][0]["number"], 3);
    assert_eq!(found["steps"][0]["name"], "Measure Play");
    let mend = &found["mend"];
    assert!(mend["title"].as_str().unwrap().starts_with("Move"));
    assert!(!mend["edits"].as_array().unwrap().is_empty());
}

#[test]
fn a_sheet_says_what_the_page_says() {
    let sheets = read(&json::Sheets::of(vec![json::Sheet::of(&sheet(BAD))]));
    assert_eq!(sheets["format"], "fitwright-sheet");
    let sheet = &sheets["sheets"][0];
    assert_eq!(sheet["errors"], 1);
    assert_eq!(sheet["starts"], "apart");
    let steps = sheet["sections"][0]["steps"].as_array().unwrap();
    assert_eq!(steps.len(), 3);
    assert_eq!(steps[1]["last_chances"][0]["missed"][0]["what"], "measured");
    assert_eq!(steps[2]["troubles"][0]["rule"], "shut-in");
    assert_eq!(steps[2]["reading"], Value::Null, "no such key");
    assert_eq!(steps[2]["readings"][0]["name"], "Play");
}

#[test]
fn the_schemas_are_of_this_version() {
    for schema in [json::CHECK_SCHEMA, json::SHEET_SCHEMA] {
        let schema: Value = serde_json::from_str(schema).unwrap();
        assert_eq!(schema["properties"]["version"]["const"], json::VERSION);
        let id = schema["$id"].as_str().unwrap();
        assert!(id.ends_with(&format!(":{}", json::VERSION)), "{id}");
    }
}
