//! Every declaration, detail, verb, state and condition of the language: each
//! reads without a problem, as what it is meant to be.

use crate::plain;

/// What the details on `line` say, under an item that may carry anything.
fn details(line: &str) -> Vec<String> {
    let tree = syntax::read(format!("fit x\n  {line}\n"));
    assert_eq!(tree.problems, [], "{line}");
    plain::details(&tree, &tree.items[0])
}

/// What the one detail on `line` says.
fn detail(line: &str) -> String {
    let details = details(line);
    assert_eq!(details.len(), 1, "{line}: {details:?}");
    details.into_iter().next().unwrap()
}

/// What the one item on `line` says.
fn item(line: &str) -> String {
    let tree = syntax::read(line);
    assert_eq!(tree.problems, [], "{line}");
    assert_eq!(tree.items.len(), 1, "{line}");
    plain::item(&tree, &tree.items[0])
}

/// Each line and what it says.
fn says(cases: &[(&str, &str)]) {
    for (line, expected) in cases {
        assert_eq!(detail(line), *expected, "{line}");
    }
}

/// Each line reads as one detail that begins with this.
fn all_say(start: &str, lines: &[&str]) {
    for line in lines {
        let said = detail(line);
        assert!(said.starts_with(start), "{line}: {said}");
    }
}

// ------------------------------------------------------------ declarations

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
fn fastener_groups() {
    says(&[
        ("8 x M6x1 class 8.8", "8x: Group(8, M6x1, 8.8)"),
        ("8x M6 x 1", "8x: Group(8, M6x1)"),
        ("1 × M14×1.5 class 10.9", "1×: Group(1, M14×1.5, 10.9)"),
        ("6 * M10*1.25-6g", "6*: Group(6, M10*1.25-6g)"),
        ("8 x", "8x: Group(8)"),
        ("8 x class A2-70", "8x: Group(8, A2-70)"),
        ("2 x clip", "2x: Group(2, clip)"),
        ("2 x clips", "2x: Group(2, clips)"),
        ("4 x stud M8 grade 5", "4x: Group(4, stud, M8, 5)"),
        ("6 x bolts M8x1.25", "6x: Group(6, bolts, M8x1.25)"),
        (
            "6 x M8x1.25 bolts class 12.9",
            "6x: Group(6, M8x1.25, bolts, 12.9)",
        ),
        ("unknown x M6", "unknownx: Group(unknown, M6)"),
        ("2 x M6 class unknown", "2x: Group(2, M6, unknown)"),
    ]);
    for thread in [
        "M6",
        "M6x1",
        "M6x0.75",
        "m8",
        "1/4-20 UNC",
        "#10-32 UNF",
        "#4-40",
        "7/16-14",
        "1/2-20 UNF",
        "1 1/8-7 UNC",
        "1/4-20 UNC-2B",
        "G1/8",
        "G 1/2",
        "R1/4",
        "Rc1/8",
        "Rp1/2",
        "1/2 BSP",
        "3/4 BSPT",
        "3/8 BSW",
        "1/4 BSF",
        "2 BA",
        "0 BA",
        "1/8 NPT",
        "1/8-27 NPT",
        "Tr20x4",
        "1/4 UNC",
        "#10 UNF",
        "5/16-18 BSW",
        "1/2 BSCY",
        "1/4-20 UNC 2B",
        "M10x1.25-4h6h",
    ] {
        let bare: String = thread.replace(' ', "");
        assert_eq!(
            detail(&format!("4 x {thread} # {thread}")),
            format!("4x: Group(4, {bare})")
        );
    }
    for sort in syntax::words::SORTS {
        assert_eq!(
            detail(&format!("1 x {sort}")),
            format!("1x: Group(1, {sort})")
        );
        assert_eq!(
            detail(&format!("2 x {sort}s")),
            format!("2x: Group(2, {sort}s)")
        );
    }
}

#[test]
fn fasteners() {
    says(&[
        ("hold cover, sump", "hold: Hold([cover, sump])"),
        ("holds cover", "holds: Hold([cover])"),
        (
            "into aluminium 12 mm",
            "into: Into { material: aluminium, depth: Some(12mm, mm) }",
        ),
        (
            "into cast-iron unknown",
            "into: Into { material: cast-iron, depth: Some(unknown) }",
        ),
        ("into steel", "into: Into { material: steel, depth: None }"),
        (
            "drive hex 13 mm",
            "drive: Drive { kind: hex, size: Some(13mm), series: None }",
        ),
        (
            "drive torx T30",
            "drive: Drive { kind: torx, size: Some(T30), series: None }",
        ),
        (
            "drive hex series iso",
            "drive: Drive { kind: hex, size: None, series: Some(iso) }",
        ),
        (
            "drive hex 16 mm series din",
            "drive: Drive { kind: hex, size: Some(16mm), series: Some(din) }",
        ),
        (
            "drive hex 5/8 in",
            "drive: Drive { kind: hex, size: Some(5/8in), series: None }",
        ),
        (
            "drive slot",
            "drive: Drive { kind: slot, size: None, series: None }",
        ),
        (
            "counterhold hex 17 mm",
            "counterhold: Counterhold(ToolOrPart(hex of 17mm))",
        ),
        (
            "counterhold crank-pin",
            "counterhold: Counterhold(ToolOrPart(crank-pin))",
        ),
        (
            "locked by split-pins, \"safety wire\"",
            "lockedby: LockedBy([Name(split-pins), Words(\"safety wire\")])",
        ),
        ("frees when slack", "freeswhenslack: FreesWhenSlack"),
        (
            "moves with bracket and pipe",
            "moveswith: MovesWith([bracket, pipe])",
        ),
        ("left-hand", "left-hand: LeftHand"),
        (
            "lubricated with oil",
            "lubricatedwith: LubricatedWith(Name(oil))",
        ),
        (
            "lubricated with \"light oil\"",
            "lubricatedwith: LubricatedWith(Words(\"light oil\"))",
        ),
        (
            "floats until belt is fitted",
            "floatsuntil: FloatsUntil([belt Fitted])",
        ),
    ]);
}

#[test]
fn torques() {
    says(&[
        (
            "torque 22 N.m",
            "torque: Torque { torque: Value(22N.m, N.m), then_turn: None, source: None }",
        ),
        (
            "torque 20..24 N.m",
            "torque: Torque { torque: Value(20..24N.m, N.m), then_turn: None, source: None }",
        ),
        (
            "torque 22 +- 2 N.m",
            "torque: Torque { torque: Value(22+-2N.m, N.m), then_turn: None, source: None }",
        ),
        (
            "torque 22 N.m +- 10 %",
            "torque: Torque { torque: Value(22N.m+-10%, N.m), then_turn: None, source: None }",
        ),
        (
            "torque 22",
            "torque: Torque { torque: Value(22), then_turn: None, source: None }",
        ),
        (
            "torque unknown",
            "torque: Torque { torque: Value(unknown), then_turn: None, source: None }",
        ),
        (
            "torque none",
            "torque: Torque { torque: None(none), then_turn: None, source: None }",
        ),
        (
            "torque 130 N.m then turn 60 deg from \"sheet 3\"",
            "torque: Torque { torque: Value(130N.m, N.m), then_turn: Some(60deg, deg), source: Some(\"sheet 3\") }",
        ),
        (
            "torque unknown from \"not in the sheet\"",
            "torque: Torque { torque: Value(unknown), then_turn: None, source: Some(\"not in the sheet\") }",
        ),
        (
            "passes 4 N.m, 8 N.m from \"sheet 3\"",
            "passes: Passes { passes: [Torque(4N.m, N.m), Torque(8N.m, N.m)], source: Some(\"sheet 3\") }",
        ),
        (
            "passes 20 N.m, slacken, 15 N.m and mark then turn 90 deg",
            "passes: Passes { passes: [Torque(20N.m, N.m), Slacken(slacken), Torque(15N.m, N.m), Mark(mark), \
             Turn(90deg, deg)], source: None }",
        ),
        (
            "pattern cross",
            "pattern: Pattern { order: [cross], layout: None }",
        ),
        (
            "pattern spiral in two rows",
            "pattern: Pattern { order: [spiral], layout: Some(intworows) }",
        ),
        (
            "pattern 1, 3, 2, 4 in ring",
            "pattern: Pattern { order: [1, 3, 2, 4], layout: Some(inring) }",
        ),
        (
            "pattern 1 3 2 4",
            "pattern: Pattern { order: [1, 3, 2, 4], layout: None }",
        ),
        (
            "pattern inward in line",
            "pattern: Pattern { order: [inward], layout: Some(inline) }",
        ),
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

// ------------------------------------------------------------ steps

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

// ------------------------------------------------------------ conditions

#[test]
fn states() {
    for (word, state) in syntax::words::STATES {
        let spread = word.replace(' ', "   ");
        assert_eq!(
            detail(&format!("after x is {spread}")),
            format!("after: After([x {state:?}])")
        );
        assert_eq!(
            detail(&format!("after x, y are {word}")),
            format!("after: After([x y {state:?}])")
        );
        assert_eq!(
            detail(&format!("must be {word} before x")),
            format!("mustbe: MustBe {{ states: [{state:?}], when: Before, condition: [x] }}")
        );
    }
}

#[test]
fn conditions() {
    let after = |condition: &str, expected: &str| {
        assert_eq!(
            detail(&format!("after {condition}")),
            format!("after: After([{expected}])"),
            "{condition}"
        );
    };
    after("first-run", "first-run");
    after("the belt is fitted", "belt Fitted");
    after(
        "the timing-gears and rod are fitted and snug",
        "timing-gears rod Fitted Snug",
    );
    after("a is fitted, b is tight", "a Fitted, b Tight");
    after("a is fitted and b is tight and c", "a Fitted, b Tight, c");
    after(
        "a is fitted and tight, b are locked",
        "a Fitted Tight, b Locked",
    );
    after("a is fitted and tight and locked", "a Fitted Tight Locked");
    // Bare names stand for themselves, unless a later `is` takes them along.
    after("a, b and c", "a, b, c");
    after("a, b are fitted", "a b Fitted");
    after("a is fitted and b, c are tight", "a Fitted, b c Tight");
    // Behind a state a word is a state, unless an `is` makes it a thing.
    after("a is fitted and set", "a Fitted Set");
    after("a is fitted and set is tight", "a Fitted, set Tight");
    after(
        "a is fitted and tight and cover is on",
        "a Fitted Tight, cover Fitted",
    );
    after("a is fitted and cover", "a Fitted, cover");
    // Positions.
    after("crank at tdc", "crank at tdc");
    after("crank is at tdc", "crank at tdc");
    after("pin, crank at tdc", "pin, crank at tdc");
    after(
        "cap is on, crank at tdc and locked-pin",
        "cap Fitted, crank at tdc, locked-pin",
    );
    after("crank is at tdc and locked", "crank at tdc Locked");
    after("a is fitted and crank at tdc", "a Fitted, crank at tdc");
}

#[test]
fn a_condition_ends_where_a_detail_begins() {
    assert_eq!(
        details("after a is on at most 10 min after b"),
        [
            "after: After([a Fitted])",
            "atmost: AtMost { time: 10min, min, after: [b] }",
        ]
    );
    assert_eq!(
        details("after a at least 1 h after b is off with c"),
        [
            "after: After([a])",
            "atleast: AtLeast { time: 1h, h, after: [b Off] }",
            "with: With([c])",
        ]
    );
    assert_eq!(
        details("after a is tight and set at least 1 h after b"),
        [
            "after: After([a Tight Set])",
            "atleast: AtLeast { time: 1h, h, after: [b] }",
        ]
    );
}

// ------------------------------------------------------------ figures

#[test]
fn figures() {
    for figure in [
        "22", "0.12", ".005", "15/16", "1 1/2", "1-1/2", "-40", "−40", "+5", "5..25", "5 .. 25",
        "-5..40",
    ] {
        let bare = figure.replace(' ', "");
        assert_eq!(
            detail(&format!("to {figure} mm")),
            format!("to: To(Quantity({bare}mm, mm))")
        );
        assert_eq!(
            detail(&format!("to {figure}mm")),
            format!("to: To(Quantity({bare}mm, mm))")
        );
        assert_eq!(
            detail(&format!("expect {figure}")),
            format!("expect: Expect({bare})")
        );
    }
    all_say(
        "expect: Expect(",
        &[
            "expect 22 ± 2 mm",
            "expect 22+-2 mm",
            "expect 22 +/- 2 mm",
            "expect 22 mm ±10 %",
        ],
    );
    assert_eq!(
        detail("expect 0.05 mm .. 0.12 mm"),
        "expect: Expect(0.05mm..0.12mm, mm)"
    );
    // A bare inch only straight behind a number.
    assert_eq!(detail("length 15/16 in"), "length: Length(15/16in, in)");
}

// ------------------------------------------------------- said in other ways

#[test]
fn what_travels_is_pressed_on() {
    assert_eq!(
        detail("travels with shaft, hub"),
        "travelswith: Onto { names: [shaft, hub], pressed: true }"
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

#[test]
fn a_reading_may_be_said_in_words() {
    for said in [
        "0.1 to 0.2 mm",
        "0.1 mm to 0.2 mm",
        "at most 0.2 mm",
        "at least 3 mm",
        "up to 0.2 mm",
        "max 0.2 mm",
        "min 3 mm",
        "maximum 3 mm",
        "minimum 3 mm",
    ] {
        for keyword in ["expect", "torque", "to"] {
            let tree = syntax::read(format!("set x {keyword} {said} takes 5 min"));
            assert_eq!(tree.problems, [], "{keyword} {said}");
            let details = &tree.items[0].details;
            assert_eq!(details.len(), 2, "{keyword} {said}");
            let end = keyword.len() + 1;
            assert_eq!(&tree.at(details[0].span)[end..], said);
        }
    }
    for half in ["at most", "at least 3 mm 4 mm", "max", "min to 3 mm"] {
        let tree = syntax::read(format!("measure x expect {half}"));
        assert_eq!(tree.problems.len(), 1, "{half}");
    }
}

#[test]
fn a_torque_may_be_said_in_words() {
    assert_eq!(
        detail("torque \"firm by hand\" from \"sheet 1\""),
        "torque: Torque { torque: Words(\"firm by hand\"), then_turn: None, source: Some(\"sheet 1\") }"
    );
}

#[test]
fn sorts_of_fastener_may_be_said_more_closely() {
    for sort in [
        "grub-screws",
        "grub",
        "setscrews",
        "set-screw",
        "capscrew",
        "wing-nut",
        "castle-nut",
        "locknuts",
        "banjo",
        "banjo-bolt",
        "rivets",
        "split-pin",
        "circlips",
        "snap-ring",
        "roll-pin",
        "hose-clip",
    ] {
        let tree = syntax::read(format!("fasteners x 2 x {sort} M8 hold y"));
        assert_eq!(tree.problems, [], "{sort}");
        let syntax::tree::Says::Group(group) = &tree.items[0].details[0].says else {
            panic!("{sort}")
        };
        assert_eq!(group.sort.map(|sort| tree.word(sort)), Some(sort));
    }
    for none in ["gasket", "bolt-x", "-nut", "nutty"] {
        let tree = syntax::read(format!("fasteners x 2 x {none}"));
        assert_eq!(tree.problems.len(), 1, "{none}");
    }
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
