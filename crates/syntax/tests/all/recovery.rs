//! Lines that do not fit: one problem each, in the right place, and all else read.

use crate::plain;
use syntax::tree::{ProblemKind, Tree};

/// Each problem as line, column and what stands there, with what is said of it.
fn problems(tree: &Tree) -> Vec<String> {
    let said = tree.problems.iter().map(|problem| {
        let before = &tree.text[..problem.span.start as usize];
        let line = before.matches('\n').count() + 1;
        let what = match &problem.kind {
            ProblemKind::Unreadable { wanted, near } => {
                let near = near.map(|near| format!(" ({near}?)")).unwrap_or_default();
                format!("wanted {}{near}", wanted.join(" or "))
            }
            ProblemKind::UnknownWord { near, .. } => {
                let near = near.map(|near| format!(" ({near}?)")).unwrap_or_default();
                format!("unknown{near}")
            }
            kind => format!("{kind:?}"),
        };
        format!("{line} `{}` {what}", tree.at(problem.span))
    });
    said.collect()
}

/// The one problem of a text, and its items.
fn one(text: &str) -> (String, Vec<String>) {
    let tree = syntax::read(text);
    let problems = problems(&tree);
    assert_eq!(problems.len(), 1, "{text}: {problems:?}");
    (problems.into_iter().next().unwrap(), plain::items(&tree))
}

#[track_caller]
fn check(text: &str, problem: &str, items: &[&str]) {
    let (found, read) = one(text);
    assert_eq!(found, problem);
    assert_eq!(read, items);
}

#[test]
fn a_misspelt_first_word_keeps_kind_and_name() {
    check(
        "prat cover \"Cover\" onto block\n  given\n",
        "1 `prat` unknown (part?)",
        &["Unreadable(Some(Part), None, cover, [cover, onto, block]) [\"given: Given\"]"],
    );
    check(
        "tigthen bolts after cover is on",
        "1 `tigthen` unknown (tighten?)",
        &["Unreadable(None, Some(Tighten), no name, [bolts, after, cover, on]) []"],
    );
    check(
        "Part cover",
        "1 `Part` unknown (part?)",
        &["Unreadable(Some(Part), None, cover, [cover]) []"],
    );
    check(
        "install cover",
        "1 `install` unknown",
        &["Unreadable(None, None, no name, [install, cover]) []"],
    );
}

#[test]
fn a_bad_detail_spoils_no_other() {
    check(
        "part cover\n  onto block\n  covres gears\n  mass 2 kg\n",
        "3 `covres` unknown (covers?)",
        &[
            "Declaration(Part, part, cover, no label) [\"onto: Onto { names: [block], pressed: false }\", \
           \"covres: Unreadable([covres, gears])\", \"mass: Mass(2kg, kg)\"]",
        ],
    );
    check(
        "fit a after b wiht c, d # e",
        "1 `wiht` wanted `at` and a place or `is` and a state or a further detail (with?)",
        &[
            "Step(Fit, fit, [a], no words) [\"after: After([b])\", \"wiht: Unreadable([wiht, c, d])\"]",
        ],
    );
}

#[test]
fn a_garbled_end_takes_its_detail_along() {
    // `after b` would mean something else than was written.
    check(
        "fit a with c after b iz on",
        "1 `iz` wanted `at` and a place or `is` and a state or a further detail (is?)",
        &[
            "Step(Fit, fit, [a], no words) [\"with: With([c])\", \"after: Unreadable([after, b, iz, on])\"]",
        ],
    );
    check(
        "fasteners f\n  torque 22 Nmm from \"x\"\n",
        "2 `Nmm` wanted `from` and where it was read or `then turn` and an angle or a unit or a further detail (N.m?)",
        &[
            "Declaration(Fasteners, fasteners, f, no label) [\"torque: Unreadable([torque, Nmm, from])\"]",
        ],
    );
}

#[test]
fn a_line_that_ends_too_early_is_at_fault_at_its_end() {
    check(
        "fit",
        "1 `` wanted a name",
        &["Unreadable(None, Some(Fit), no name, []) []"],
    );
    check(
        "fit a,",
        "1 `` wanted a name",
        &["Step(Fit, fit, [a], no words) [\",: Unreadable([])\"]"],
    );
    check(
        "part p\n  onto\n",
        "2 `` wanted a name",
        &["Declaration(Part, part, p, no label) [\"onto: Unreadable([onto])\"]"],
    );
    check(
        "point p must be bled before",
        "1 `` wanted a name",
        &[
            "Declaration(Point, point, p, no label) [\"must: Unreadable([must, be, bled, before])\"]",
        ],
    );
    check(
        "stage",
        "1 `` wanted a text in quotes",
        &["Unreadable(Some(Stage), None, no name, []) []"],
    );
}

#[test]
fn the_second_word_of_a_keyword_is_told_from_the_first() {
    for (line, problem) in [
        ("must bee bled before x", "2 `bee` wanted `be` (be?)"),
        ("frees whem slack", "2 `whem` wanted `when slack` (when?)"),
        ("left hadn", "2 `hadn` wanted `hand` (hand?)"),
        (
            "starts apert",
            "2 `apert` wanted `apart` or `assembled` (apart?)",
        ),
        ("cures inn 24 h", "2 `inn` wanted `in` (in?)"),
        ("locked bye pin", "2 `bye` wanted `by` (by?)"),
        (
            "reach form above",
            "2 `form` wanted `from` and a side or `with` and a tool or `clear of` and a name or `needs` and a name (from?)",
        ),
        (
            "floats untill x is on",
            "2 `untill` wanted `until` (until?)",
        ),
        (
            "after x is fited",
            "2 `fited` wanted `at` and a place or a state such as `fitted` or `tight` (fitted?)",
        ),
        ("8 y M6", "2 `y` wanted `x`"),
        (
            "mass 2 kq",
            "2 `kq` wanted a unit or a further detail (kg?)",
        ),
    ] {
        assert_eq!(one(&format!("part p\n  {line}\n")).0, problem, "{line}");
    }
}

#[test]
fn a_way_in_is_from_one_side() {
    let (problem, _) = one("point p\n  reach from above with a from below clear of b\n");
    assert!(problem.starts_with("2 `from` wanted "), "{problem}");
}

#[test]
fn something_else_than_a_blank_behind_a_keyword() {
    check(
        "fit: a",
        "1 `:` wanted a blank",
        &["Unreadable(None, Some(Fit), no name, [a]) []"],
    );
}

#[test]
fn an_open_quote_ends_with_its_line() {
    check(
        "stage \"Front end\nfit a\n",
        "1 `\"Front end` OpenQuote",
        &[
            "Declaration(Stage, stage, no name, \"Front end) []",
            "Step(Fit, fit, [a], no words) []",
        ],
    );
    check(
        "part a \"The cover onto b",
        "1 `\"The cover onto b` OpenQuote",
        &["Declaration(Part, part, a, \"The cover onto b) []"],
    );
    // An inch mark inside a text.
    let (problem, items) = one("fit a\n  note \"use the 1/2\" socket\" # x\n");
    assert_eq!(problem, "2 `\" # x` OpenQuote");
    assert_eq!(
        items,
        [
            "Step(Fit, fit, [a], no words) [\"note: Note(\"use the 1/2\")\", \"socket: Unreadable([socket])\"]"
        ]
    );
}

#[test]
fn an_open_quote_is_read_back_without_it() {
    let tree = syntax::read("stage \"Front end\n");
    let syntax::tree::Head::Declaration {
        label: Some(label), ..
    } = tree.items[0].head
    else {
        panic!("a stage has a label");
    };
    assert_eq!(tree.quoted(label), "Front end");
}

#[test]
fn details_above_the_first_item_are_one_problem() {
    check(
        "# x\n  onto block\n  mass 2 kg\nfit a\n",
        "2 `onto block` DetailWithoutItem",
        &[
            "Unreadable(None, None, no name, []) [\"onto: Onto { names: [block], pressed: false }\", \"mass: Mass(2kg, kg)\"]",
            "Step(Fit, fit, [a], no words) []",
        ],
    );
}

#[test]
fn a_lost_indent_is_found_again() {
    check(
        "part a\nonto block\n  mass 2 kg\n",
        "2 `onto` unknown",
        &[
            "Declaration(Part, part, a, no label) [\"onto: Onto { names: [block], pressed: false }\", \"mass: Mass(2kg, kg)\"]",
        ],
    );
}

#[test]
fn an_item_indented_by_mistake_is_an_item() {
    let tree = syntax::read("stage \"S\"\n  fit a after b\n    given\n  part c,\n");
    assert_eq!(problems(&tree), ["2 `fit` unknown", "4 `part` unknown"]);
    assert_eq!(
        plain::items(&tree),
        [
            "Declaration(Stage, stage, no name, \"S\") []",
            "Step(Fit, fit, [a], no words) [\"after: After([b])\", \"given: Given\", \"part: Unreadable([part, c])\"]",
        ]
    );
}

#[test]
fn capitals_are_read_and_told() {
    let tree = syntax::read(
        "part Cover onto block, SUMP\nfit Ärmel after überwurf is on\nfit m8 with Bit T30\n",
    );
    let said: Vec<String> = problems(&tree);
    assert_eq!(
        said,
        [
            "1 `Cover` Capitals",
            "1 `SUMP` Capitals",
            "2 `Ärmel` Capitals",
            "3 `Bit` Capitals"
        ]
    );
    assert_eq!(
        plain::items(&tree)[0],
        "Declaration(Part, part, Cover, no label) [\"onto: Onto { names: [block, SUMP], pressed: false }\"]"
    );
}

#[test]
fn hidden_characters_are_told_and_read_over() {
    let tree = syntax::read("fit be\u{202e}lt, c\u{200b} # x\u{2066}y\nnote\u{7}x\n");
    assert_eq!(
        problems(&tree)[..3],
        [
            "1 `\u{202e}` HiddenCharacter('\\u{202e}')",
            "1 `\u{200b}` HiddenCharacter('\\u{200b}')",
            "1 `\u{2066}` HiddenCharacter('\\u{2066}')",
        ]
    );
    // The name keeps the character that stands inside it, for whoever shows the place.
    assert_eq!(
        plain::items(&tree)[0],
        "Step(Fit, fit, [be\u{202e}lt, c], no words) []"
    );
}

#[test]
fn a_reason_without_anything_to_be_the_reason_for() {
    let tree = syntax::read(
        "fit a because \"x\"\nfit b\n  because \"y\"\nfit c after d because \"z\" because \"z\"\n",
    );
    let said: Vec<String> = problems(&tree);
    assert_eq!(
        said,
        [
            "1 `because \"x\"` wanted a further detail",
            "3 `because \"y\"` wanted a further detail",
            "4 `because \"z\"` wanted a further detail",
        ]
    );
    assert_eq!(tree.items.len(), 3);
}

#[test]
fn a_line_too_long_to_be_a_plan_is_not_read() {
    let text = format!("part a\n  onto {}b\nfit c\n", "a, ".repeat(200_000));
    let tree = syntax::read(text);
    assert_eq!(tree.problems.len(), 1);
    assert_eq!(tree.items.len(), 2);
}

#[test]
fn long_lists_take_time_in_proportion() {
    // Twenty thousand names on one line; anything that reads a list twice for each of its
    // names would not come back.
    let list = "a, ".repeat(20_000) + "b";
    for line in [
        format!("fit {list}"),
        format!("fit {list} are"),
        format!("fit x after {list}"),
        format!("fit x after {list} are fitted"),
        format!("fit x after {list} are fitted nonsense"),
        format!("fit x needs {list} at"),
        format!("fit x to {list} ,"),
        format!("fit x for each a in {list} ,"),
        format!("fit x kind {}", "a ".repeat(20_000)),
        format!("fit x pattern {}", "1 ".repeat(20_000)),
        format!("fit x after a is {}on", "on, ".repeat(20_000)),
        format!("part {}", "a-".repeat(20_000)),
    ] {
        assert_eq!(syntax::read(line).items.len(), 1);
    }
}

#[test]
fn files_that_are_no_text_are_refused() {
    use syntax::{LONGEST, Refused, read_bytes};
    assert_eq!(read_bytes(b"fit a\n").unwrap().items.len(), 1);
    assert_eq!(
        read_bytes(b"fit a\xff\n").unwrap_err(),
        Refused::NotText { at: 5 }
    );
    assert_eq!(
        read_bytes(&vec![b'#'; LONGEST + 1]).unwrap_err(),
        Refused::TooLong {
            length: LONGEST + 1
        }
    );
    assert_eq!(read_bytes(&vec![b'#'; LONGEST]).unwrap().problems, []);
}

#[test]
fn lines_belong_to_items() {
    let text = "# of the file\nplan \"x\"\n\n# loose\n\n# about a\n# more\npart a # here\n  onto b\n\n  # between\n  given\n  # behind\n\n# about s\nstage \"s\"\nfit a\n  # last";
    let tree = syntax::read(text);
    let lines: Vec<&str> = tree.items.iter().map(|item| tree.at(item.lines)).collect();
    assert_eq!(
        lines,
        [
            "# of the file\nplan \"x\"\n",
            "# about a\n# more\npart a # here\n  onto b\n\n  # between\n  given\n  # behind\n",
            "# about s\nstage \"s\"\n",
            "fit a\n  # last",
        ]
    );
    let spans: Vec<&str> = tree.items.iter().map(|item| tree.at(item.span)).collect();
    assert_eq!(
        spans,
        [
            "plan \"x\"",
            "part a # here\n  onto b\n\n  # between\n  given",
            "stage \"s\"",
            "fit a"
        ]
    );
}
