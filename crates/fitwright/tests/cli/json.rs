//! JSON on standard output.

use crate::bench::{BAD, GOOD, folder, run};
use serde_json::Value;
use std::fs;

#[test]
fn one_document_for_all_plans() {
    let folder = folder("json");
    fs::write(folder.join("a.rebuild"), GOOD).unwrap();
    fs::write(folder.join("b.rebuild"), BAD).unwrap();
    let check = run(
        &folder,
        &["check", "--as", "json", "a.rebuild", "b.rebuild"],
    );
    assert_eq!((check.status, check.err.as_str()), (1, ""));
    let value: Value = serde_json::from_str(&check.out).unwrap();
    let files: Vec<&str> = value["plans"]
        .as_array()
        .unwrap()
        .iter()
        .map(|p| p["file"].as_str().unwrap())
        .collect();
    assert_eq!(files, ["a.rebuild", "b.rebuild"]);
    assert_eq!(value["counts"]["errors"], 1);

    let sheet = run(&folder, &["sheet", "--as", "json", "."]);
    let value: Value = serde_json::from_str(&sheet.out).unwrap();
    assert_eq!(value["sheets"].as_array().unwrap().len(), 2);
    assert_eq!(value["sheets"][0]["title"], "Wash pump");
}

#[test]
fn nothing_to_read_is_still_a_document() {
    let folder = folder("json-none");
    let ran = run(&folder, &["check", "--as", "json", "none.rebuild"]);
    assert_eq!(ran.status, 2);
    let value: Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(value["plans"].as_array().unwrap().len(), 0);
}
