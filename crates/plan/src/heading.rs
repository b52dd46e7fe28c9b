//! The heading of the plan.

use syntax::tree::{Detail, Head, Kind, Says};

use crate::desk::{Desk, Here};
use crate::details;
use crate::model::{Heading, ProblemKind};

/// Reads the heading of the asked text. Those of used files are about other plans.
pub(crate) fn read(desk: &mut Desk<'_>) -> Heading {
    let mut heading = Heading::default();
    let tree = &desk.texts[0].tree;
    for (number, item) in (0u32..).zip(&tree.items) {
        let Head::Declaration {
            kind: Kind::Plan,
            label,
            ..
        } = &item.head
        else {
            continue;
        };
        let here = Here {
            by: (0, number),
            bound: &[],
            step: None,
        };
        let place = desk.place(here.by, item.span);
        if let Some(first) = heading.place {
            desk.problem(place, ProblemKind::TwoPlans { first });
            continue;
        }
        heading.place = Some(place);
        heading.title = label.map(|label| desk.text(here.by, label).text);
        details::each(desk, &here, item, |desk, detail| {
            one(desk, &here, detail, &mut heading)
        });
        desk.take_doubt();
    }
    heading
}

fn one(desk: &mut Desk<'_>, here: &Here, detail: &Detail, heading: &mut Heading) -> bool {
    let word = |word: syntax::tree::Word| desk.at(here.by, word.span).to_owned();
    match &detail.says {
        Says::Revision(revision) => heading.revision = Some(word(*revision)),
        Says::Machine(machine) => heading.machine = Some(desk.text(here.by, *machine).text),
        Says::StartsApart => heading.assembled = false,
        Says::StartsAssembled => heading.assembled = true,
        Says::TorqueIn(unit) => heading.torque_in = Some(word(*unit)),
        Says::LengthIn(unit) => heading.length_in = Some(word(*unit)),
        Says::People(people) => heading.people = desk.count(here, *people),
        Says::Reviewed { by, on, digest } => {
            let by = desk.text(here.by, *by).text;
            let place = desk.place(here.by, detail.span);
            heading
                .reviewed
                .push((by, word(*on), digest.map(word), place));
        }
        _ => return false,
    }
    true
}
