//! The sorts of things, and which of them may stand where.

use syntax::tree::{Head, Item, Kind, Says};

use crate::model::Sort;

/// What can be on or off, or in or out.
pub(crate) const BODIES: &[Sort] = &[Sort::Part, Sort::Unit, Sort::Item, Sort::Fasteners];
/// What fasteners hold.
pub(crate) const HELD: &[Sort] = &[Sort::Part, Sort::Unit, Sort::Item];
/// What can be covered.
pub(crate) const COVERABLE: &[Sort] = &[
    Sort::Part,
    Sort::Unit,
    Sort::Item,
    Sort::Fasteners,
    Sort::Point,
    Sort::Position,
];
/// What work can be done to.
pub(crate) const WORKED_AT: &[Sort] = &[
    Sort::Part,
    Sort::Unit,
    Sort::Item,
    Sort::Fasteners,
    Sort::Point,
];
/// Where an item belongs.
pub(crate) const JOINTS: &[Sort] = &[Sort::Part, Sort::Unit, Sort::Fasteners, Sort::Point];
/// What locks fasteners.
pub(crate) const LOCKS: &[Sort] = &[Sort::Item, Sort::Supply, Sort::Part, Sort::Fasteners];
/// A supply.
pub(crate) const SUPPLY: &[Sort] = &[Sort::Supply];
/// What a tool can be: a part or a bolt may serve for one.
pub(crate) const TOOLS: &[Sort] = &[Sort::Tool, Sort::Part, Sort::Unit, Sort::Fasteners];
/// What a step may name behind `with`.
pub(crate) const TOOLS_AND_SUPPLIES: &[Sort] = &[
    Sort::Tool,
    Sort::Supply,
    Sort::Part,
    Sort::Unit,
    Sort::Fasteners,
];
/// What a condition can speak of.
pub(crate) const WITH_STATES: &[Sort] = &[
    Sort::Part,
    Sort::Unit,
    Sort::Item,
    Sort::Fasteners,
    Sort::Point,
    Sort::Position,
    Sort::Supply,
];

/// The sort that a keyword declares; none for those that declare no thing.
pub(crate) fn of_kind(kind: Kind) -> Option<Sort> {
    Some(match kind {
        Kind::Part => Sort::Part,
        Kind::Unit => Sort::Unit,
        Kind::Item => Sort::Item,
        Kind::Fasteners => Sort::Fasteners,
        Kind::Point => Sort::Point,
        Kind::Position => Sort::Position,
        Kind::Tool => Sort::Tool,
        Kind::Supply => Sort::Supply,
        Kind::Plan | Kind::Series | Kind::Use | Kind::Stage => return None,
    })
}

/// The sort that an item whose first word could not be read seems to be, from its details. Most
/// things are parts.
pub(crate) fn guess(item: &Item) -> Sort {
    item.details
        .iter()
        .find_map(|detail| match &detail.says {
            Says::Group(_)
            | Says::Hold(_)
            | Says::Torque { .. }
            | Says::Passes { .. }
            | Says::FloatsUntil(_) => Some(Sort::Fasteners),
            Says::On(_) | Says::ClosedBy(_) | Says::ServiceEvery(_) | Says::Holds { .. } => {
                Some(Sort::Point)
            }
            Says::Range(_) | Says::FullScale(_) | Says::Accuracy(_) | Says::Have => {
                Some(Sort::Tool)
            }
            Says::CloseWithin(_) | Says::FixesIn(_) | Says::CuresIn(_) | Says::GoodTo(_) => {
                Some(Sort::Supply)
            }
            Says::At(_) => Some(Sort::Item),
            _ => None,
        })
        .unwrap_or(Sort::Part)
}

/// Where the first word of an item stands.
pub(crate) fn keyword(item: &Item) -> syntax::tree::Span {
    match &item.head {
        Head::Declaration { keyword, .. } | Head::Step { keyword, .. } => *keyword,
        Head::Unreadable { .. } => item.span,
    }
}
