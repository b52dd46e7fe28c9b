//! Details of steps, and the shapes that many details share.

use super::parts::Parts;
use crate::grammar::Rule;
use crate::tree::{Condition, Name, Quantity, To};

pub(super) fn to(parts: &mut Parts<'_, '_>) -> Option<To> {
    match parts.peek()? {
        Rule::quoted => parts.quoted().map(To::Words),
        Rule::amount => parts.quantity().map(To::Quantity),
        _ => Some(To::Names(parts.names())),
    }
}

pub(super) fn time_after(parts: &mut Parts<'_, '_>) -> Option<(Quantity, Condition)> {
    let time = parts.quantity()?;
    parts.skip(Rule::after);
    Some((time, parts.condition()?))
}

/// Names behind the last word of a keyword.
pub(super) fn names_behind(parts: &mut Parts<'_, '_>, last: Rule) -> Vec<Name> {
    parts.skip(last);
    parts.names()
}

/// A quantity behind the last word of a keyword.
pub(super) fn quantity_behind(parts: &mut Parts<'_, '_>, last: Rule) -> Option<Quantity> {
    parts.skip(last);
    parts.quantity()
}

/// A condition behind the last word of a keyword.
pub(super) fn condition_behind(parts: &mut Parts<'_, '_>, last: Rule) -> Option<Condition> {
    parts.skip(last);
    parts.condition()
}
