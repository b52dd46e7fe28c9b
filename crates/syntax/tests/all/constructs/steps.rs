//! Verbs and the details of steps.

use super::{detail, details, item, says};
use crate::plain;

#[test]
fn verbs() {
    for (word, verb) in syntax::words::VERBS {
        if *word == "do" {
            continue;
        }
        assert_eq!(
            item(&format!("{word} a, the b and cap-* \"with care\"")),
            format!("Step({verb:?}, {word}, [a, b, cap-*], \"with care\") []")
        );
        assert_eq!(
            item(&format!("{word} a")),
            format!("Step({verb:?}, {word}, [a], no words) []")
        );
    }
    assert_eq!(item("dry fit a"), "Step(DryFit, dryfit, [a], no words) []");
    assert_eq!(
        item("do \"Run until warm\""),
        "Step(Do, do, [], \"Run until warm\") []"
    );
    assert_eq!(
        item("sign \"Clearances seen\""),
        "Step(Sign, sign, [], \"Clearances seen\") []"
    );
}

#[test]
fn lists_join_with_commas_and_ands() {
    for list in [
        "a, b, c",
        "a,b,c",
        "a and b and c",
        "a, b and c",
        "a, b, and c",
        "a ,b , and c",
        "the a, the b,and the c",
    ] {
        assert_eq!(
            item(&format!("fit {list}")),
            "Step(Fit, fit, [a, b, c], no words) []",
            "{list}"
        );
    }
}

#[test]
fn step_details() {
    says(&[
        ("as first-run", "as: As(first-run)"),
        ("as torque-<bore>", "as: As(torque-<bore>)"),
        ("after first-run", "after: After([first-run])"),
        (
            "before the gears are covered",
            "before: Before([gears Covered])",
        ),
        (
            "with socket 11 mm, small-wrench",
            "with: With([socket of 11mm, small-wrench])",
        ),
        (
            "with the socket 5/8 in and bit PH2",
            "with: With([socket of 5/8in, bit of PH2])",
        ),
        ("with spanner 13", "with: With([spanner of 13])"),
        ("with coolant", "with: With([coolant])"),
        ("use threadlock", "use: Use([threadlock])"),
        (
            "new drain-washer, o-ring",
            "new: New([drain-washer, o-ring])",
        ),
        (
            "old washer because \"first run only\"",
            "old: Old([washer]) because \"first run only\"",
        ),
        ("spends washer", "spends: Spends([washer])"),
        ("trial", "trial: Trial"),
        ("together", "together: Together"),
        ("for  good", "forgood: ForGood"),
        ("to its mark", "toitsmark: ToItsMark"),
        ("to their marks", "totheirmarks: ToItsMark"),
        ("to 0.1..0.15 mm", "to: To(Quantity(0.1..0.15mm, mm))"),
        ("to unknown", "to: To(Quantity(unknown))"),
        ("to tdc", "to: To(Names([tdc]))"),
        ("to 2nd-gear", "to: To(Names([2nd-gear]))"),
        ("to cover, housing", "to: To(Names([cover, housing]))"),
        (
            "to \"the second hole\"",
            "to: To(Words(\"the second hole\"))",
        ),
        ("disturbs pipe, clamp", "disturbs: Disturbs([pipe, clamp])"),
        (
            "at least 24 h after cover-screws are tight",
            "atleast: AtLeast { time: 24h, h, after: [cover-screws Tight] }",
        ),
        (
            "at  most 10 min after sealant is applied because \"it skins\"",
            "atmost: AtMost { time: 10min, min, after: [sealant Applied] } because \"it skins\"",
        ),
        (
            "at least unknown after a is cured",
            "atleast: AtLeast { time: unknown, after: [a Cured] }",
        ),
        ("expect 0.05..0.12 mm", "expect: Expect(0.05..0.12mm, mm)"),
        ("caution \"hot parts\"", "caution: Caution(\"hot parts\")"),
        (
            "note \"6 # 8 are not comments\" # but this is",
            "note: Note(\"6 # 8 are not comments\")",
        ),
    ]);
}

#[test]
fn a_reason_belongs_to_the_detail_before_it() {
    assert_eq!(
        details("after a because \"x\" before b because \"y\" trial"),
        [
            "after: After([a]) because \"x\"",
            "before: Before([b]) because \"y\"",
            "trial: Trial",
        ]
    );
    let tree = syntax::read("fit x after a\n  because \"x\"\n");
    assert_eq!(tree.problems, []);
    assert_eq!(
        plain::details(&tree, &tree.items[0]),
        ["after: After([a]) because \"x\""]
    );
}

#[test]
fn a_text_at_the_end_of_a_step_is_its_remark() {
    for (line, words, details) in [
        ("remove a, b together \"Sharp tugs\"", "\"Sharp tugs\"", 1),
        ("fit a \"x\" new b \"Gap up\" # seen", "\"x\"", 2),
        ("measure a expect 1 mm \"Pump  it\"", "\"Pump  it\"", 1),
        ("do \"Run\" as run \"Listen\"", "\"Run\"", 2),
        ("fit a after b because \"so\" \"Gap up\"", "\"Gap up\"", 1),
    ] {
        let tree = syntax::read(line);
        assert_eq!(tree.problems, [], "{line}");
        let syntax::tree::Head::Step { words: said, .. } = &tree.items[0].head else {
            panic!("{line}")
        };
        assert_eq!(said.map(|said| tree.at(said.span)), Some(words), "{line}");
        assert_eq!(tree.items[0].details.len(), details, "{line}");
        assert_eq!(syntax::tidy(&tree).trim_end(), line.replace(" # ", "  # "));
    }
    assert_eq!(detail("\"Gap up\""), "\"Gap up\": Note(\"Gap up\")");
    let early = syntax::read("remove a \"x\" together \"Sharp tugs\" after b");
    assert_eq!(early.problems.len(), 1);
}
