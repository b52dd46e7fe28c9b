//! `calc`: figures with their working.

use crate::bench::run;
use std::path::Path;

/// Nothing is read from it or written to it.
const NOWHERE: &str = env!("CARGO_TARGET_TMPDIR");

fn calc(arguments: &[&str]) -> String {
    let mut all = vec!["calc"];
    all.extend(arguments);
    let ran = run(Path::new(NOWHERE), &all);
    assert_eq!(ran.status, 0, "{}", ran.err);
    ran.out
}

fn refused(arguments: &[&str]) -> String {
    let mut all = vec!["calc"];
    all.extend(arguments);
    let ran = run(Path::new(NOWHERE), &all);
    assert_eq!((ran.status, ran.out.as_str()), (2, ""));
    ran.err
}

#[test]
fn converts_as_finely_as_given() {
    assert!(calc(&["convert", "22", "N.m", "to", "lbf.ft"]).starts_with("22 N.m = 16 lbf.ft\n"));
    assert!(calc(&["convert", "-40 C"]).starts_with("-40 C = -40 °F\n"));
    assert!(calc(&["convert", "0.05..0.12 mm"]).starts_with("0.05..0.12 mm = 0.0020..0.0047 in\n"));
    assert!(refused(&["convert", "22 N.m to mm"]).contains("a torque"));
    assert!(refused(&["convert", "22"]).contains("22"));
}

#[test]
fn an_adapter_needs_the_length_of_the_wrench() {
    // 300 lbf.in x 10 in / 14 in = 214.3 lbf.in (TM 1-1500-204-23-9 fig. 8-16).
    let page = calc(&[
        "adapter",
        "300 lbf.in",
        "--length",
        "10 in",
        "--reach",
        "4 in",
    ]);
    assert!(
        page.starts_with("set the wrench to: 214.3 lbf.in"),
        "{page}"
    );
    assert!(
        page.contains("T × L / (L + E × cos a)") && page.contains("source: TM 1-1500-204-23-9")
    );
    let back = calc(&[
        "adapter",
        "214.2857 lbf.in",
        "--length",
        "10 in",
        "--reach",
        "4 in",
        "--set",
    ]);
    assert!(back.starts_with("at the fastener: 300 lbf.in"), "{back}");
    assert!(refused(&["adapter", "40 N.m", "--reach", "50 mm"]).contains("length of the wrench"));
}

#[test]
fn a_preload_shows_formula_numbers_source_and_assumption() {
    let page = calc(&["preload", "22 N.m", "M8", "--class", "8.8"]);
    for part in [
        "13.75 kN",
        "T / (K × d)",
        "22 N.m / (0.2 × 8 mm)",
        "source: ",
        "taking it that",
        "65 % of the proof load",
    ] {
        assert!(page.contains(part), "no {part} in\n{page}");
    }
    assert!(refused(&["preload", "22 N.m", "G1/4"]).contains("by name only"));
    assert!(refused(&["preload", "20..24 N.m", "M8"]).contains("one figure"));
}

#[test]
fn stripping_says_what_goes_first() {
    let short = calc(&[
        "strip",
        "M8",
        "--into",
        "aluminium",
        "--depth",
        "6 mm",
        "--class",
        "10.9",
    ]);
    assert!(
        one_line(&short).contains("the thread strips before the screw stretches"),
        "{short}"
    );
    let deep = calc(&[
        "strip", "M8", "--into", "steel", "--depth", "12 mm", "--class", "8.8",
    ]);
    assert!(
        one_line(&deep).contains("the screw stretches before the thread strips"),
        "{deep}"
    );
    assert!(refused(&["strip", "M8", "--into", "plastic", "--depth", "12 mm"]).contains("plastic"));
}

#[test]
fn shims_come_from_stock() {
    let page = calc(&[
        "shim",
        "0.42 mm",
        "--to",
        "0.05..0.10 mm",
        "--from",
        "0.10, 0.15, 0.20 mm",
    ]);
    assert!(
        page.contains("0.2 mm and 0.15 mm: leaves 0.07 mm"),
        "{page}"
    );
    assert!(
        refused(&[
            "shim",
            "0.02 mm",
            "--to",
            "0.05..0.10 mm",
            "--from",
            "0.10 mm"
        ])
        .contains("already smaller")
    );
}

#[test]
fn a_pattern_is_drawn_and_loosened_backwards() {
    assert!(calc(&["pattern", "8"]).starts_with("8 in a ring, cross: 1 5 3 7 2 6 4 8\n"));
    assert!(calc(&["pattern", "8", "--loosen"]).contains("8 4 6 2 7 3 5 1"));
    let svg = calc(&[
        "pattern", "10", "--layout", "two-rows", "--order", "spiral", "--as", "svg",
    ]);
    assert!(svg.starts_with("<svg ") && svg.matches("<circle").count() == 10);
    assert!(refused(&["pattern", "0"]).contains("1 to 1000"));
}

#[test]
fn growth_takes_the_rise_from_two_temperatures() {
    // 12.8e-6 per °F x 1.8 x 60 mm x 90 K = 0.1244 mm.
    let page = calc(&["growth", "60 mm", "--of", "aluminum", "--to", "110 C"]);
    assert!(page.starts_with("it grows by 0.1244 mm"), "{page}");
    assert!(refused(&["growth", "60 mm", "--of", "cheese", "--to", "110 C"]).contains("aluminium"));
}

/// The text without its line breaks.
fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
