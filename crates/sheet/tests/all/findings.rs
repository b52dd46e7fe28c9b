//! Findings on the page.

use crate::bench::{ASCII, plan, plan_with};
use check::{Because, Bench, Finding, Mend, MendEdit, Severity, rules};
use plan::model::{FileId, Place, Plan};
use sheet::Look;
use sheet::findings::{Counts, Texts, finding};
use syntax::tree::Span;

fn place(plan: &Plan, file: u32, what: &str) -> Place {
    let text = &plan.sources[file as usize].tree.text;
    let start = text.find(what).unwrap();
    Place {
        file: FileId(file),
        span: Span::new(start as u32, (start + what.len()) as u32),
    }
}

fn made(place: Place, says: &str) -> Finding {
    Finding {
        rule: rules::named("shut-in").unwrap(),
        severity: Severity::Error,
        place,
        about: "cover".into(),
        says: says.into(),
        because: Vec::new(),
        advice: None,
        mend: None,
        steps: Vec::new(),
    }
}

const TEXT: &str =
    "part case given\npart cover onto case\npart gear onto case\nfit cover\nfit gear\n";

#[test]
fn a_finding_is_said_shown_and_mended() {
    let plan = plan(TEXT);
    let mut one = made(
        place(&plan, 0, "fit gear"),
        "Gear cannot go in: cover is in the way.",
    );
    one.because.push(Because {
        place: place(&plan, 0, "fit cover"),
        says: "cover goes on here".into(),
    });
    one.advice = Some("Fit the gear before the cover.".into());
    one.mend = Some(Mend {
        title: "Move it up.".into(),
        edits: vec![MendEdit {
            file: FileId(0),
            span: Span::new(0, 0),
            new: String::new(),
        }],
    });
    let page = finding(&Texts::of(&plan), &one, ASCII);
    assert_eq!(
        page,
        "error shut-in  pump.rebuild:5:1
  Gear cannot go in: cover is in the way.
   ,----
 4 | fit cover
   : ^^^^|^^^^
   :     `-- cover goes on here
 5 | fit gear
   : ^^^^^^^^
   `----
  Mend: Move it up.
  What helps: Fit the gear before the cover.

"
    );
}

#[test]
fn causes_in_other_files_are_shown_with_their_place() {
    let plan = plan_with(
        "use \"map.rebuild\"\nfit gear\n",
        &[("map.rebuild", "part case given\npart gear onto case\n")],
    );
    let mut one = made(place(&plan, 0, "fit gear"), "Gear cannot go in.");
    one.because.push(Because {
        place: place(&plan, 1, "onto case"),
        says: "it goes on here".into(),
    });
    let page = finding(&Texts::of(&plan), &one, ASCII);
    assert!(page.contains(" 2 | fit gear\n"), "{page}");
    assert!(
        page.contains("  map.rebuild:2:11\n   ,----\n 2 | part gear onto case\n"),
        "{page}"
    );
    assert!(page.contains("`-- it goes on here\n"), "{page}");
}

#[test]
fn places_count_characters_whatever_the_line_ends() {
    for (text, wanted) in [
        (
            "\u{feff}part öl given\r\npart 油泵 onto öl, x\r\nfit 油泵\r\n",
            "2:18",
        ),
        ("part öl given\rpart 油泵 onto öl, x\rfit 油泵", "2:18"),
        ("# 🔧 e\u{301}\n\tpart a\npart öl given part x\n", "3:20"),
    ] {
        let plan = plan(text);
        let at = text.rfind('x').unwrap() as u32;
        let place = Place {
            file: FileId(0),
            span: Span::new(at, at + 1),
        };
        assert_eq!(
            Texts::of(&plan).whereabouts(place),
            format!("pump.rebuild:{wanted}")
        );
    }
}

#[test]
fn colour_is_for_the_eye_only() {
    let plan = plan(TEXT);
    let one = made(place(&plan, 0, "fit gear"), "Gear cannot go in.");
    let texts = Texts::of(&plan);
    let painted = finding(
        &texts,
        &one,
        Look {
            color: true,
            ..ASCII
        },
    );
    let bare: String =
        painted
            .split('\u{1b}')
            .enumerate()
            .fold(String::new(), |mut bare, (n, piece)| {
                bare += if n == 0 {
                    piece
                } else {
                    piece.split_once('m').unwrap().1
                };
                bare
            });
    assert_ne!(painted, bare);
    assert_eq!(bare, finding(&texts, &one, ASCII));
}

#[test]
fn sentences_keep_to_the_width() {
    let plan = plan(TEXT);
    let mut one = made(
        place(&plan, 0, "fit gear"),
        &"A long way to say it. ".repeat(20),
    );
    one.advice = Some("Another long way to say it. ".repeat(9));
    for width in [40, 60, 80, 100] {
        let page = finding(&Texts::of(&plan), &one, Look { width, ..ASCII });
        let widest = page.lines().map(|line| line.chars().count()).max().unwrap();
        assert!(widest <= width, "{width}: {page}");
    }
}

#[test]
fn many_causes_are_counted_not_all_shown() {
    let text = format!("part case given\n{}", "part x onto case\n".repeat(20));
    let plan = plan(&text);
    let mut one = made(place(&plan, 0, "part case given"), "Too much.");
    for n in 0..20 {
        let at = 16 + n * 17;
        one.because.push(Because {
            place: Place {
                file: FileId(0),
                span: Span::new(at, at + 6),
            },
            says: format!("cause {n}"),
        });
    }
    let page = finding(&Texts::of(&plan), &one, ASCII);
    assert!(
        page.contains("cause 7") && !page.contains("cause 8"),
        "{page}"
    );
    assert!(page.contains("  and 12 more lines like these\n"), "{page}");
}

#[test]
fn real_findings_can_all_be_shown() {
    for rule in rules::ALL {
        let plan = plan(rule.bad);
        let bench = Bench::of(&plan);
        let texts = Texts::of(&plan);
        for one in bench.findings() {
            let page = finding(&texts, one, ASCII);
            assert!(
                page.starts_with(&format!(
                    "{} {}  pump.rebuild:",
                    word(one.severity),
                    one.rule.name
                )),
                "{page}"
            );
            assert!(page.contains("`----\n"), "{page}");
        }
    }
}

fn word(severity: Severity) -> &'static str {
    sheet::findings::severity_word(severity)
}

#[test]
fn findings_are_counted_in_words() {
    let counts = |errors, warnings, hints| Counts {
        errors,
        warnings,
        hints,
    };
    assert_eq!(counts(0, 0, 0).words(), "nothing");
    assert_eq!(counts(1, 0, 0).words(), "1 error");
    assert_eq!(counts(2, 1, 3).words(), "2 errors, 1 warning and 3 hints");
    assert_eq!(counts(2, 1, 3).at_or_above(Severity::Warning), 3);
    assert_eq!(counts(0, 0, 3).at_or_above(Severity::Error), 0);
}
