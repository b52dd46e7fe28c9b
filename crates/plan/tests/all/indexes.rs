//! The rows of who has to do with whom.

use plan::index::Index;
use plan::model::{Plan, ThingId};

use crate::{good, id};

#[test]
fn rows_say_who_names_a_thing() {
    let text = "part a given\npart b onto a, a\npart c onto a pressed\nfasteners f 2 x M6 hold b, c torque none\n\
                fasteners plug 1 x M6 torque none\npoint p on b closed by plug\npoint q on b, plug\nitem g at b, f\n\
                part base\nunit u of base, b\nfit b, c, u\ntighten f, plug\nmark p, q\nfit g\n";
    let plan = good(text);
    let index = Index::of(&plan);
    let names = |ids: &[ThingId]| names(&plan, ids);
    let row = |name: &str| id(&plan, name);
    assert_eq!(names(index.stands_on(row("a"))), ["b", "c"]);
    assert_eq!(names(index.held_by(row("b"))), ["f"]);
    assert_eq!(names(index.points_on(row("b"))), ["p", "q"]);
    assert_eq!(names(index.points_on(row("plug"))), ["q"]);
    assert_eq!(names(index.items_at(row("f"))), ["g"]);
    assert_eq!(names(index.closes(row("plug"))), ["p"]);
    assert_eq!(index.unit_of(row("b")), Some(row("u")));
    assert_eq!(index.unit_of(row("a")), None);
    assert!(index.stands_on(ThingId(9_999)).is_empty());
}

fn names(plan: &Plan, ids: &[ThingId]) -> Vec<String> {
    ids.iter().map(|id| plan.thing(*id).name.clone()).collect()
}

#[test]
fn an_empty_plan_has_empty_rows() {
    let index = Index::of(&good(""));
    assert!(index.held_by(ThingId(0)).is_empty());
}
