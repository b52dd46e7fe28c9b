//! A wrong line spoils one line.

use plan::model::{Plan, ProblemKind};

use crate::sample::SAMPLE;
use crate::{plan, problems, thing};

/// The problems that are not about the text of some line, with their lines.
fn others(plan: &Plan) -> Vec<String> {
    let all = problems(plan).into_iter();
    all.filter(|problem| !problem.ends_with(": text")).collect()
}

/// A plan with what the sample has not: series, stages gone through for each member, units,
/// positions, names that differ in one word.
const FORK: &str = r#"series leg left, right
series valve 1..2

position crank of tdc, bdc
supply fork-oil
  kind oil
part yoke
  given
part upper-shell-<leg>
  onto yoke
part lower-shell-<leg>
  onto yoke
  needs upper-shell-<leg>, crank at tdc
part tube-<leg>
part slider-<leg>
  onto tube-<leg>
unit fork-<leg> of tube-<leg>, slider-<leg>
  onto yoke
fasteners clamps-<leg>
  2 x M8
  hold fork-<leg>
  torque 22 N.m from "sheet 1"
fasteners cap-<leg>
  1 x plug M34
  torque none
  needs clamps-<leg> are tight
point oil-<leg>
  on slider-<leg>
  closed by cap-<leg>
  holds fork-oil 0.4 L
  must be filled before cap-<leg> is tight
part seat-<valve>-<leg>
  onto yoke

turn crank to tdc
stage "Legs" for each leg in right, left
fit upper-shell-<leg>, lower-shell-<leg> as shells-<leg>
fit slider-<leg>
fit fork-<leg> after shells-<leg>
tighten clamps-<leg> as clamped
fill oil-<leg> with fork-oil
tighten cap-<leg> after clamped and fork-<leg> is tight
stage "Valves"
fit seat-1-<leg>, seat-2-*
do "Look over" after cap-left is tight and shells-right and clamped
"#;

#[test]
fn any_line_may_be_rubbish_and_nothing_else_is_blamed() {
    assert!(
        problems(&plan(FORK)).is_empty(),
        "{:?}",
        problems(&plan(FORK))
    );
    let rubbish = [
        "%%% ???",
        "  %%% ???",
        "lorem ipsum dolor",
        "  lorem ipsum dolor",
        "\"open",
        "12 34",
        "@",
        "part",
        "  of",
        "the",
        "fit",
    ];
    for text in [SAMPLE, FORK] {
        let lines: Vec<&str> = text.lines().collect();
        for (number, line) in lines.iter().enumerate() {
            if line.trim().is_empty() {
                continue;
            }
            for rubbish in rubbish {
                let mut damaged = lines.clone();
                damaged[number] = rubbish;
                let plan = plan(&damaged.join("\n"));
                assert_eq!(others(&plan), Vec::<String>::new(), "{line} -> {rubbish}");
                assert!(!plan.problems.is_empty(), "{line} -> {rubbish}");
            }
        }
    }
}

#[test]
fn any_line_of_the_sample_may_be_cut_short_and_no_name_is_called_unknown() {
    let lines: Vec<&str> = SAMPLE.lines().collect();
    for (number, line) in lines.iter().enumerate() {
        let cuts = line.char_indices().map(|(at, _)| at).filter(|at| *at > 0);
        for cut in cuts {
            let mut damaged = lines.clone();
            damaged[number] = &line[..cut];
            let plan = plan(&damaged.join("\n"));
            // What is left may still be readable, and then be another name or too little of one.
            let readable = plan
                .problems
                .iter()
                .all(|p| !matches!(p.kind, ProblemKind::Text(_)));
            if readable {
                continue;
            }
            let unknown: Vec<String> = others(&plan)
                .into_iter()
                .filter(|problem| problem.contains(": unknown"))
                .collect();
            assert_eq!(unknown, Vec::<String>::new(), "{line} -> {}", &line[..cut]);
        }
    }
}

#[test]
fn a_half_read_declaration_still_declares() {
    let text = "part cover onto\npart lid onto cover\nfit cover, lid after cover is tight\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["1: text"]);
    assert!(thing(&plan, "cover").uncertain);
    assert!(!thing(&plan, "lid").uncertain);
    assert_eq!(plan.steps[0].targets.len(), 2);
}

#[test]
fn a_half_read_detail_makes_its_own_thing_and_those_it_names_uncertain() {
    let text = "part a\npart b\npart c\n  ontoo b, dd\npart e onto dd\nfit a, b, c, e\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["4: text"]);
    assert!(thing(&plan, "c").uncertain && thing(&plan, "b").uncertain);
    assert!(!thing(&plan, "a").uncertain);
    // `dd` may have been declared there.
    assert!(thing(&plan, "e").uncertain);
}

#[test]
fn a_readable_declaration_comes_before_a_half_read_one_of_the_same_name() {
    let text = "prt cover\npart cover mass 2 kg\nfit cover\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["1: text"]);
    assert_eq!(plan.things.len(), 1);
    assert!(thing(&plan, "cover").mass.is_some());
}

#[test]
fn a_slip_far_from_the_damage_is_still_told() {
    let text = "part cover\npart bracket\n%%%\nfit cover\nfit braket\nfit covr\n";
    assert_eq!(
        problems(&plan(text)),
        [
            "3: text",
            "5: unknown braket near bracket",
            "6: unknown covr near cover"
        ]
    );
    // The line names what it is about, so it cannot have declared anything else.
    let text = "part cover\npart bracket\nonto cover\nfit cover\nfit braket\n";
    assert_eq!(
        problems(&plan(text)),
        ["3: text", "5: unknown braket near bracket"]
    );
}

#[test]
fn details_below_a_lost_line_are_blamed_for_nothing() {
    let text = "part cover\n%%%\n  torque 5 N.m\n  hold cover\npart lid onto cover\nfit cover, lid after cover is tight\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["2: text"]);
    assert!(thing(&plan, "cover").uncertain);
    assert!(plan.steps[0].after[0].uncertain);
}

#[test]
fn a_lost_use_may_have_declared_anything() {
    let text = "use pump\npart cover onto body\nfit cover\n";
    assert_eq!(problems(&plan(text)), ["1: text"]);
}

#[test]
fn what_a_lost_line_names_is_mentioned() {
    let text = "part bearing given\nsupply oil\nitem shim\nitem seal\npoint nip on bearing\n\
        oil bearing\npress shim\nmeasure nip zzz \"open\nfit bearing seal\n";
    assert_eq!(plan(text).unmentioned, []);
}
