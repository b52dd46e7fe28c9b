//! Files that use files.

use crate::{Texts, id, names, problems, thing};

const PUMP: &str =
    "plan \"Not this one\"\npart body\npart wheel\n  onto body\nfit wheel\nstage \"None\"\n";

#[test]
fn declarations_come_in_and_steps_do_not() {
    let texts = Texts::of(&[
        ("main", "use \"pump\"\nplan \"Mine\"\nfit body\nfit wheel\n"),
        ("pump", PUMP),
    ]);
    let plan = texts.plan("main");
    assert!(problems(&plan).is_empty(), "{:?}", problems(&plan));
    assert_eq!(plan.heading.title.as_deref(), Some("Mine"));
    assert_eq!(
        (plan.steps.len(), plan.stages.len(), plan.sources.len()),
        (2, 0, 2)
    );
    assert_eq!(thing(&plan, "wheel").place.file.0, 1);
    assert_eq!(plan.sources[1].name, "pump");
}

#[test]
fn a_file_used_under_two_prefixes_is_there_twice() {
    let main = "use \"pump\" as left\nuse \"pump\" as right\nfit left-body, right-body\nfit left-wheel, right-wheel\n";
    let plan = Texts::of(&[("main", main), ("pump", PUMP)]).plan("main");
    assert!(problems(&plan).is_empty(), "{:?}", problems(&plan));
    assert_eq!(
        names(&plan, &thing(&plan, "right-wheel").onto),
        ["right-body"]
    );
    assert_eq!(plan.sources.len(), 2);
}

#[test]
fn names_in_a_prefixed_file_fall_back_to_those_around_it() {
    let main = "part bed given\npart body\nuse \"p\" as left\nfit body, left-body, left-lid\n";
    let plan = Texts::of(&[
        ("main", main),
        ("p", "part body onto bed\npart lid onto body\n"),
    ])
    .plan("main");
    assert!(problems(&plan).is_empty(), "{:?}", problems(&plan));
    assert_eq!(names(&plan, &thing(&plan, "left-body").onto), ["bed"]);
    assert_eq!(names(&plan, &thing(&plan, "left-lid").onto), ["left-body"]);
}

#[test]
fn series_in_a_prefixed_file_are_its_own() {
    let part = "series n 1..2\npart foot-<n>\npart pad-<n> onto foot-<n>\n";
    let main = "use \"p\" as left\nuse \"p\" as right\nfit left-foot-*, right-foot-*\nfit left-pad-*\nfit right-pad-<right-n>\n";
    let plan = Texts::of(&[("main", main), ("p", part)]).plan("main");
    assert!(problems(&plan).is_empty(), "{:?}", problems(&plan));
    assert_eq!(
        names(&plan, &thing(&plan, "right-pad-2").onto),
        ["right-foot-2"]
    );
    assert_eq!(
        names(&plan, &plan.steps[1].targets),
        ["left-pad-1", "left-pad-2"]
    );
}

#[test]
fn prefixes_add_up() {
    let texts = [
        ("main", "use \"a\" as x\nfit x-y-bolt\n"),
        ("a", "use \"b\" as y\n"),
        ("b", "part bolt\n"),
    ];
    let plan = Texts::of(&texts).plan("main");
    assert!(problems(&plan).is_empty(), "{:?}", problems(&plan));
}

#[test]
fn a_file_met_by_two_ways_is_read_once() {
    let texts = [
        ("main", "use \"a\"\nuse \"b\"\nfit body\n"),
        ("a", "use \"common\"\n"),
        ("b", "use \"common\"\n"),
        ("common", "part body\n"),
    ];
    let plan = Texts::of(&texts).plan("main");
    assert!(problems(&plan).is_empty(), "{:?}", problems(&plan));
    assert_eq!(plan.things.len(), 1);
}

#[test]
fn a_circle_is_told_at_the_use_that_closes_it() {
    let texts = [
        ("main", "use \"a\"\npart mine\nfit mine, theirs\n"),
        ("a", "part theirs\nuse \"main\"\n"),
    ];
    let plan = Texts::of(&texts).plan("main");
    assert_eq!(problems(&plan), ["a 2: circle main"]);
    assert_eq!(plan.steps[0].targets.len(), 2);
    let own = Texts::of(&[("main", "use \"main\"\n")]).plan("main");
    assert_eq!(problems(&own), ["1: circle main"]);
}

#[test]
fn a_missing_file_is_one_fault() {
    let plan = Texts::of(&[(
        "main",
        "use \"gone\"\npart cover onto block\nfit cover after bolts are tight\n",
    )])
    .plan("main");
    assert_eq!(problems(&plan), ["1: missing gone"]);
    assert!(thing(&plan, "cover").uncertain && plan.steps[0].uncertain);
}

#[test]
fn a_name_taken_in_two_files_is_told_where_it_comes_second() {
    let texts = [
        ("main", "use \"a\"\npart body\nfit body\n"),
        ("a", "part body\n"),
    ];
    assert_eq!(problems(&Texts::of(&texts).plan("main")), ["2: twice body"]);
    let texts = [
        ("main", "part body\nuse \"a\"\nfit body\n"),
        ("a", "part body\n"),
    ];
    let plan = Texts::of(&texts).plan("main");
    assert_eq!(problems(&plan), ["a 1: twice body"]);
    assert_eq!(thing(&plan, "body").place.file.0, 0);
    let _ = id(&plan, "body");
}

#[test]
fn what_is_wrong_in_a_used_file_is_told_with_its_file() {
    let texts = [
        ("main", "use \"a\"\nfit body\n"),
        (
            "a",
            "part body onto blok\npart block\nitem ring at bodyy\n%%\n",
        ),
    ];
    let plan = Texts::of(&texts).plan("main");
    assert_eq!(
        problems(&plan),
        [
            "a 1: unknown blok near block",
            "a 3: unknown bodyy near body",
            "a 4: text"
        ]
    );
}

#[test]
fn files_that_double_without_end_are_cut_short() {
    let texts: Vec<(String, String)> = (0..40)
        .map(|n| {
            let next = n + 1;
            (
                format!("f{n}"),
                format!("use \"f{next}\" as a\nuse \"f{next}\" as b\npart p\n"),
            )
        })
        .collect();
    let mut texts: Vec<(&str, &str)> = texts
        .iter()
        .map(|(a, b)| (a.as_str(), b.as_str()))
        .collect();
    texts.push(("f40", "part p\n"));
    let plan = Texts::of(&texts).plan("f0");
    assert_eq!(problems(&plan).len(), 1);
    assert!(
        problems(&plan)[0].contains("too many"),
        "{:?}",
        problems(&plan)
    );
}
