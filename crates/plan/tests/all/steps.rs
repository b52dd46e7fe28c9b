//! Steps and their details.

use plan::model::To;
use syntax::tree::Verb;

use crate::{good, names, plan, problems};

#[test]
fn a_step_is_read_in_full() {
    let text = "part a\nitem g at a\nitem h at a\nsupply glue\npoint p on a\n\
        fit a \"gently\" as placed\n  new g\n  old h because \"soft copper\"\n  spends g\n  disturbs p\n  use glue\n  trial\n  to its mark\n  takes 15 min\n\
        \x20 hazard pinch\n  caution \"Sharp\"\n  note \"Long bolt left\"\nremove a for good\nfit a, g together\n";
    let plan = good(text);
    let step = &plan.steps[0];
    assert_eq!(step.words.as_ref().unwrap().text, "gently");
    assert_eq!(step.name.as_ref().unwrap().text, "placed");
    assert_eq!(names(&plan, &step.news), ["g"]);
    assert_eq!(step.olds[0].1.as_deref(), Some("soft copper"));
    assert_eq!(names(&plan, &step.spends), ["g"]);
    assert_eq!(names(&plan, &step.disturbs), ["p"]);
    assert_eq!(names(&plan, &step.uses), ["glue"]);
    assert!(step.trial && step.to_its_mark.is_some());
    assert_eq!(step.takes.as_ref().unwrap().text, "15 min");
    assert_eq!(step.hazards, ["pinch"]);
    assert_eq!(
        (step.cautions[0].text.as_str(), step.notes[0].text.as_str()),
        ("Sharp", "Long bolt left")
    );
    assert!(plan.steps[1].for_good);
    assert!(plan.steps[2].together);
    assert!(plan.steps.iter().all(|step| !step.uncertain));
}

#[test]
fn to_means_what_the_step_makes_of_it() {
    let text = "part a\npart b\nposition crank of tdc, bdc\nsupply glue\npoint gap on a\n\
                turn crank to bdc\napply glue to a, b\nset gap to 0.1..0.2 mm\nset gap to \"the second hole\"\nheat a to 120 C\n\
                turn crank\nfit a to b\n";
    let plan = good(text);
    let to = |step: usize| plan.steps[step - 1].to.as_ref();
    assert!(matches!(to(1), Some(To::Place(1, _))));
    assert!(matches!(to(2), Some(To::Things(refs)) if names(&plan, refs) == ["a", "b"]));
    assert!(matches!(to(3), Some(To::Amount(amount)) if amount.measure.is_some()));
    assert!(matches!(to(4), Some(To::Words(words)) if words.text == "the second hole"));
    assert!(matches!(to(5), Some(To::Amount(_))));
    assert!(to(6).is_none());
    assert!(matches!(to(7), Some(To::Things(_))));
    assert_eq!(names(&plan, &plan.steps[1].targets), ["glue"]);
    assert_eq!(plan.steps[1].verb, Verb::Apply);
    let text = "position crank of tdc, bdc\nturn crank to bcd\n";
    assert_eq!(
        problems(&self::plan(text)),
        ["2: place bcd of crank near bdc"]
    );
}

#[test]
fn fluids_behind_with_are_used() {
    let text = "supply coolant\npart pump\npoint p on pump\nfill p with coolant\nprime pump with coolant, syringe\n";
    let plan = good(text);
    assert_eq!(names(&plan, &plan.steps[0].uses), ["coolant"]);
    assert!(plan.steps[0].with.is_empty());
    assert_eq!(plan.steps[1].with.len(), 1);
}

#[test]
fn anything_that_can_be_worked_at_may_be() {
    good(
        "part a\nitem i at a\nfasteners f 1 x clip hold a\npoint p on a\nposition c of x, y\nunit u of a\n\
         fit f, i\nremove f\nmark f, i, a, p, c\nmeasure a\ninspect f, u\nclean i\nreach f, p\nheat i\nturn c to x\n",
    );
}

#[test]
fn a_position_is_never_fitted() {
    assert_eq!(
        problems(&plan("position c of x\nfit c\n")),
        ["2: sort c Position"]
    );
}

#[test]
fn steps_and_declarations_may_be_mixed() {
    let plan = good("fit a\npart a\nstage \"S\"\npart b\nfit b\npart c\nfit c\n");
    assert_eq!(plan.steps.len(), 3);
    assert_eq!(plan.steps[0].stage, None);
    assert_eq!((plan.stages[0].steps.0.0, plan.stages[0].steps.1.0), (1, 3));
}
