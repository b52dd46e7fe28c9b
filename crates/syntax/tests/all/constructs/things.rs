//! Declarations and their details.

use super::{all_say, detail, details, item, says};

#[test]
fn plan() {
    assert_eq!(
        item("plan \"To first run\""),
        "Declaration(Plan, plan, no name, \"To first run\") []"
    );
    assert_eq!(
        item("plan"),
        "Declaration(Plan, plan, no name, no label) []"
    );
    says(&[
        ("revision 4", "revision: Revision(4)"),
        ("revision 4.1b", "revision: Revision(4.1b)"),
        (
            "machine \"a \"\"big\"\" pump\"",
            "machine: Machine(\"a \"\"big\"\" pump\")",
        ),
        ("starts apart", "startsapart: StartsApart"),
        ("starts  assembled", "startsassembled: StartsAssembled"),
        ("torque in N.m", "torquein: TorqueIn(N.m)"),
        ("torque in lb-ft", "torquein: TorqueIn(lb-ft)"),
        ("length in mm", "lengthin: LengthIn(mm)"),
        ("people 2", "people: People(2)"),
        (
            "reviewed by \"Second fitter\" on 2031-05-02",
            "reviewedby: Reviewed { by: \"Second fitter\", on: 2031-05-02, digest: None }",
        ),
        (
            "reviewed by \"Second fitter\" on 2031-05-02 digest 9f3ac01b",
            "reviewedby: Reviewed { by: \"Second fitter\", on: 2031-05-02, digest: Some(9f3ac01b) }",
        ),
    ]);
}

#[test]
fn things_have_a_name_and_perhaps_a_label() {
    for (word, kind) in syntax::words::KINDS
        .iter()
        .filter(|(word, _)| !["plan", "use", "stage"].contains(word))
    {
        assert_eq!(
            item(&format!("{word} cover-2")),
            format!("Declaration({kind:?}, {word}, cover-2, no label) []")
        );
        assert_eq!(
            item(&format!("{word} cover \"The cover\"")),
            format!("Declaration({kind:?}, {word}, cover, \"The cover\") []")
        );
    }
}

#[test]
fn names_are_of_any_script() {
    for name in [
        "a",
        "2",
        "2nd-gear",
        "water-pump",
        "zylinderkopf-größe",
        "крышка",
        "カバー-3",
        "غطاء",
        "می\u{200c}خواهم",
        "e\u{301}crou",
        "cap-<bore>",
        "valve-<bore>-<port>",
        "<bore>-cap",
        "cap<bore>b",
        "lock",
        "mark",
        "the-cover",
        "is-it",
        "and-so",
    ] {
        let said = item(&format!("part {name}"));
        assert_eq!(
            said,
            format!("Declaration(Part, part, {name}, no label) []")
        );
    }
}

#[test]
fn keywords_can_be_names() {
    let mut words: Vec<&str> = syntax::words::item_words().collect();
    for detail in syntax::words::DETAILS {
        words.extend(detail.word.split(' '));
    }
    words.extend(
        syntax::words::STATES
            .iter()
            .flat_map(|(word, _)| word.split(' ')),
    );
    for word in words {
        assert!(
            item(&format!("part {word}")).contains(&format!(", {word}, ")),
            "{word}"
        );
        let onto = detail(&format!("onto {word}, x and the {word}"));
        assert_eq!(
            onto,
            format!("onto: Onto {{ names: [{word}, x, {word}], pressed: false }}")
        );
    }
    for word in syntax::words::RESERVED {
        assert_ne!(syntax::read(format!("part {word}")).problems, [], "{word}");
        assert_ne!(
            syntax::read(format!("fit a, {word}")).problems,
            [],
            "{word}"
        );
    }
}

#[test]
fn details_stand_on_the_items_line_as_well() {
    assert_eq!(
        item("part cover \"Cover\" onto block, sump material aluminium mass 2 kg given # there"),
        "Declaration(Part, part, cover, \"Cover\") [\"onto: Onto { names: [block, sump], pressed: false }\", \
         \"material: Material(aluminium)\", \"mass: Mass(2kg, kg)\", \"given: Given\"]"
    );
    assert_eq!(
        details("onto block covers gears from front"),
        [
            "onto: Onto { names: [block], pressed: false }",
            "covers: Covers { names: [gears], to: None, from: Some(front) }",
        ]
    );
}

#[test]
fn parts() {
    says(&[
        ("given", "given: Given"),
        (
            "onto block",
            "onto: Onto { names: [block], pressed: false }",
        ),
        (
            "onto the block and the pump pressed",
            "onto: Onto { names: [block, pump], pressed: true }",
        ),
        (
            "covers gears, chain",
            "covers: Covers { names: [gears, chain], to: None, from: None }",
        ),
        (
            "covers gears to socket 11 mm",
            "covers: Covers { names: [gears], to: Some(socket of 11mm), from: None }",
        ),
        (
            "covers gears from front",
            "covers: Covers { names: [gears], to: None, from: Some(front) }",
        ),
        (
            "covers cap-* to spanner from left",
            "covers: Covers { names: [cap-*], to: Some(spanner), from: Some(left) }",
        ),
        (
            "behind belt",
            "behind: Behind { names: [belt], to: None, from: None }",
        ),
        (
            "behind belt from above to t-bar",
            "behind: Behind { names: [belt], to: Some(t-bar), from: Some(above) }",
        ),
        ("material aluminium", "material: Material(aluminium)"),
        ("material GG25", "material: Material(GG25)"),
        ("material unknown", "material: Material(unknown)"),
        ("mass 11 kg", "mass: Mass(11kg, kg)"),
        ("mass unknown", "mass: Mass(unknown)"),
        ("side left", "side: Side(left)"),
        (
            "facing \"arrow to the front\"",
            "facing: Facing(\"arrow to the front\")",
        ),
        ("single-use", "single-use: SingleUse"),
        ("single use", "singleuse: SingleUse"),
        ("temporary", "temporary: Temporary"),
        ("count 3", "count: Count(3)"),
        ("count unknown", "count: Count(unknown)"),
        (
            "matched with rod-<bore>",
            "matchedwith: MatchedWith([rod-<bore>])",
        ),
        ("takes 5 min", "takes: Takes(5min, min)"),
        (
            "hazard rotating-parts, hot-coolant and sparks",
            "hazard: Hazard([rotating-parts, hot-coolant, sparks])",
        ),
        ("of block, crank", "of: Of([block, crank])"),
    ]);
}

#[test]
fn needs() {
    says(&[
        ("needs crank-pin", "needs: Needs([crank-pin])"),
        ("needs crank at tdc", "needs: Needs([crank at tdc])"),
        ("needs bolts are tight", "needs: Needs([bolts Tight])"),
        ("needs crank is at tdc", "needs: Needs([crank at tdc])"),
        (
            "needs bolts are tight and locked",
            "needs: Needs([bolts Tight, bolts Locked])",
        ),
        (
            "needs crank-pin, bolts are tight",
            "needs: Needs([crank-pin, bolts Tight])",
        ),
        (
            "needs bolts are tight, crank-pin and the hoist",
            "needs: Needs([bolts Tight, crank-pin, hoist])",
        ),
        (
            "needs pin and crank at tdc",
            "needs: Needs([pin, crank at tdc])",
        ),
        (
            "needs pin because \"it turns\"",
            "needs: Needs([pin]) because \"it turns\"",
        ),
    ]);
}

#[test]
fn reach() {
    says(&[
        (
            "reach from above with socket 11 mm clear of heat-exchanger",
            "reach: Reach { from: Some(above), with: [socket of 11mm], clear_of: [heat-exchanger], needs: [] }",
        ),
        (
            "reach with spanner 13 mm, ratchet and bit T30",
            "reach: Reach { from: None, with: [spanner of 13mm, ratchet, bit of T30], clear_of: [], needs: [] }",
        ),
        (
            "reach clear  of belt, bracket needs hoist, crank at tdc from side",
            "reach: Reach { from: Some(side), with: [], clear_of: [belt, bracket], needs: [hoist, crank at tdc] }",
        ),
    ]);
}

#[test]
fn items_used_up() {
    says(&[
        ("at drain-plug", "at: At([drain-plug])"),
        ("at least-used-bolt", "at: At([least-used-bolt])"),
        ("size 16 x 22 x 1.5 mm", "size: Size(16x22x1.5mm)"),
        ("size 40x2.5", "size: Size(40x2.5)"),
        ("size M8", "size: Size(M8)"),
        ("size #10-32 UNF", "size: Size(#10-32UNF)"),
        ("size 1/2 BSP", "size: Size(1/2BSP)"),
        ("size \"the thick one\"", "size: Size(\"the thick one\")"),
        ("size B40", "size: Size(B40)"),
        ("size unknown", "size: Size(unknown)"),
    ]);
}

#[test]
fn points() {
    says(&[
        ("on block, sump", "on: On([block, sump])"),
        ("closed by drain-plug", "closedby: ClosedBy([drain-plug])"),
        (
            "holds coolant 4.5 L",
            "holds: Holds { fluid: Name(coolant), amount: Some(4.5L, L) }",
        ),
        (
            "holds coolant unknown",
            "holds: Holds { fluid: Name(coolant), amount: Some(unknown) }",
        ),
        (
            "holds \"engine oil\" unknown",
            "holds: Holds { fluid: Words(\"engine oil\"), amount: Some(unknown) }",
        ),
        (
            "holds \"engine oil\"",
            "holds: Holds { fluid: Words(\"engine oil\"), amount: None }",
        ),
        ("service every 500 h", "serviceevery: ServiceEvery(500h, h)"),
        (
            "service every 20000 km",
            "serviceevery: ServiceEvery(20000km, km)",
        ),
    ]);
}

#[test]
fn tools_and_supplies() {
    says(&[
        ("kind torque-wrench", "kind: Kind([torque-wrench])"),
        (
            "kind threadlocker medium",
            "kind: Kind([threadlocker, medium])",
        ),
        ("range 5..25 N.m", "range: Range(5..25N.m, N.m)"),
        ("full-scale 110 N.m", "full-scale: FullScale(110N.m, N.m)"),
        ("full  scale 110 N.m", "fullscale: FullScale(110N.m, N.m)"),
        ("length 250 mm", "length: Length(250mm, mm)"),
        ("accuracy 4 %", "accuracy: Accuracy(4%, %)"),
        ("have", "have: Have"),
        (
            "close within 10 min",
            "closewithin: CloseWithin(10min, min)",
        ),
        ("fixes in 10 min", "fixesin: FixesIn(10min, min)"),
        ("cures in 24 h", "curesin: CuresIn(24h, h)"),
        ("good to 150 C", "goodto: GoodTo(150C, C)"),
        (
            "not on brass, zinc and tin",
            "noton: NotOn([brass, zinc, tin])",
        ),
    ]);
    assert_eq!(
        details("kind sealant cures in 24 h not on brass"),
        [
            "kind: Kind([sealant])",
            "curesin: CuresIn(24h, h)",
            "noton: NotOn([brass])",
        ]
    );
    assert_eq!(
        details("kind torque-wrench full scale 110 N.m have"),
        [
            "kind: Kind([torque-wrench])",
            "fullscale: FullScale(110N.m, N.m)",
            "have: Have",
        ]
    );
}

#[test]
fn series_files_and_stages() {
    assert_eq!(
        item("series bore 1..6"),
        "Declaration(Series, series, bore, no label) [\"1..6: Members(1 to 6)\"]"
    );
    assert_eq!(
        item("series port \"Ports\" inlet, exhaust"),
        "Declaration(Series, series, port, \"Ports\") [\"inlet: Members([inlet, exhaust])\"]"
    );
    assert_eq!(
        item("use \"../common/pump.rebuild\" as pump"),
        "Declaration(Use, use, no name, \"../common/pump.rebuild\") [\"as: As(pump)\"]"
    );
    assert_eq!(
        item("stage \"Rods\" for each bore in 1, 6, 2, 5 in any order"),
        "Declaration(Stage, stage, no name, \"Rods\") [\"foreach: ForEach(bore in [1, 6, 2, 5])\", \
         \"inanyorder: InAnyOrder\"]"
    );
    says(&[
        ("for each bore", "foreach: ForEach(bore)"),
        ("for each bore in 1..4", "foreach: ForEach(bore in 1 to 4)"),
        ("in  any order", "inanyorder: InAnyOrder"),
    ]);
}

#[test]
fn standing_rules() {
    says(&[
        (
            "must be measured before timing-gears are covered",
            "mustbe: MustBe { states: [Measured], when: Before, condition: [timing-gears Covered] }",
        ),
        (
            "must  be measured and marked before first-run",
            "mustbe: MustBe { states: [Measured, Marked], when: Before, condition: [first-run] }",
        ),
        (
            "must be tight after belt is fitted because \"it settles\"",
            "mustbe: MustBe { states: [Tight], when: After, condition: [belt Fitted] } because \"it settles\"",
        ),
        (
            "must be at tdc before cap is on",
            "mustbe: MustBe { states: [at tdc], when: Before, condition: [cap Fitted] }",
        ),
    ]);
}

#[test]
fn what_travels_is_pressed_on() {
    assert_eq!(
        detail("travels with shaft, hub"),
        "travelswith: Onto { names: [shaft, hub], pressed: true }"
    );
}

#[test]
fn stage_details_stand_in_either_order() {
    for line in [
        "stage \"S\" for each bore in any order",
        "stage \"S\" in any order for each bore",
        "stage \"S\" for each bore in 1, 3, 2 in any order",
        "stage \"S\" in any order for each bore in 1, 3, 2",
    ] {
        let tree = syntax::read(line);
        assert_eq!(tree.problems, [], "{line}");
        assert_eq!(tree.items[0].details.len(), 2, "{line}");
    }
}

#[test]
fn a_star_may_stand_first() {
    all_say(
        "after: After([",
        &["after *-nuts are tight", "after cover-*, *-pins are tight"],
    );
    all_say("needs: Needs([", &["needs *-nuts"]);
    assert_eq!(syntax::read("part *-nuts").problems.len(), 1);
    assert_eq!(syntax::read("fit *").problems.len(), 1);
}
