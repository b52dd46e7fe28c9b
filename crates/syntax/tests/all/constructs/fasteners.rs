//! Groups of fasteners.

use super::{detail, says};

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
