//! Going through the details of an item: which may stand there, which only once.

use std::mem::{Discriminant, discriminant};

use syntax::tree::{Detail, Item, Says, Span};

use crate::desk::{Desk, Here};
use crate::model::ProblemKind;
use crate::sorts;

/// Gives each detail of an item to `take`, which says whether it means anything there.
///
/// Behind a line that could not be read nothing is said to be out of place: that line may have
/// begun an item of its own.
pub(crate) fn each<'t>(
    desk: &mut Desk<'t>,
    here: &Here,
    item: &'t Item,
    mut take: impl FnMut(&mut Desk<'t>, &'t Detail) -> bool,
) {
    let mut damaged = desk.damaged.contains(&here.by) && sorts::keyword(item) == item.span;
    let mut said: Vec<(Discriminant<Says>, Span)> = Vec::new();
    for detail in &item.details {
        if let Says::Unreadable { .. } = detail.says {
            damaged = true;
            desk.doubt = true;
            continue;
        }
        if once(&detail.says) {
            let kind = discriminant(&detail.says);
            if let Some((_, first)) = said.iter().find(|(said, _)| *said == kind) {
                let first = *first;
                let same = desk.at(here.by, first) == desk.at(here.by, detail.span);
                if !damaged && !same {
                    let kind = ProblemKind::TwiceSaid {
                        detail: desk.at(here.by, detail.keyword).to_owned(),
                        first: desk.place(here.by, first),
                    };
                    desk.problem(desk.place(here.by, detail.span), kind);
                }
                continue;
            }
            said.push((kind, detail.span));
        }
        desk.shaky = damaged;
        let known = take(desk, detail);
        desk.shaky = false;
        if !known && !damaged {
            let kind = ProblemKind::DetailNotHere {
                detail: desk.at(here.by, detail.keyword).to_owned(),
                item: desk.at(here.by, sorts::keyword(item)).to_owned(),
            };
            desk.problem(desk.place(here.by, detail.span), kind);
        }
    }
}

/// Gives each detail of an item to `take` once more, when it has been said which of them mean
/// anything there.
pub(crate) fn again<'t>(
    desk: &mut Desk<'t>,
    item: &'t Item,
    mut take: impl FnMut(&mut Desk<'t>, &'t Detail),
) {
    for detail in &item.details {
        match detail.says {
            Says::Unreadable { .. } => desk.shaky = true,
            _ => take(desk, detail),
        }
    }
    desk.shaky = false;
}

/// Whether a detail gives the one value of something.
fn once(says: &Says) -> bool {
    matches!(
        says,
        Says::Revision(_)
            | Says::Machine(_)
            | Says::TorqueIn(_)
            | Says::LengthIn(_)
            | Says::People(_)
            | Says::Material(_)
            | Says::Mass(_)
            | Says::Side(_)
            | Says::Facing(_)
            | Says::Count(_)
            | Says::Takes(_)
            | Says::Size(_)
            | Says::Group(_)
            | Says::Into { .. }
            | Says::Drive { .. }
            | Says::Counterhold(_)
            | Says::Torque { .. }
            | Says::Passes { .. }
            | Says::Pattern { .. }
            | Says::LubricatedWith(_)
            | Says::Holds { .. }
            | Says::ServiceEvery(_)
            | Says::Kind(_)
            | Says::Range(_)
            | Says::FullScale(_)
            | Says::Length(_)
            | Says::Accuracy(_)
            | Says::CloseWithin(_)
            | Says::FixesIn(_)
            | Says::CuresIn(_)
            | Says::GoodTo(_)
            | Says::To(_)
            | Says::Expect(_)
    )
}
