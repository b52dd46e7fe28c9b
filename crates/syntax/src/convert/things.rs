//! Details of the plan and of things in place.

use super::parts::Parts;
use crate::grammar::Rule;
use crate::tree::{Name, Says, ToolRef, When, Word};

pub(super) fn reviewed(parts: &mut Parts<'_, '_>) -> Option<Says> {
    parts.skip(Rule::by);
    let by = parts.quoted()?;
    parts.skip(Rule::on);
    let on = parts.word_of(Rule::date)?;
    let digest = parts
        .open(Rule::digest)
        .and_then(|mut digest| digest.word_of(Rule::code));
    Some(Says::Reviewed { by, on, digest })
}

pub(super) fn onto(parts: &mut Parts<'_, '_>) -> Says {
    let names = parts.names();
    Says::Onto {
        names,
        pressed: parts.skip(Rule::pressed),
    }
}

/// `… to TOOL from SIDE`, in either order.
pub(super) fn names_and_way(
    parts: &mut Parts<'_, '_>,
) -> (Vec<Name>, Option<ToolRef>, Option<Word>) {
    let names = parts.names();
    let (mut to, mut from) = (None, None);
    while let Some(piece) = parts.take_any() {
        let rule = piece.as_rule();
        let mut inner = parts.within(piece);
        match rule {
            Rule::to_tool => to = inner.tool(),
            Rule::from_side => from = inner.word(),
            _ => {}
        }
    }
    (names, to, from)
}

pub(super) fn reach(parts: &mut Parts<'_, '_>) -> Says {
    let (mut from, mut with, mut clear_of, mut needs) = (None, Vec::new(), Vec::new(), Vec::new());
    while let Some(piece) = parts.take_any() {
        let rule = piece.as_rule();
        let mut inner = parts.within(piece);
        match rule {
            Rule::from_side => from = inner.word(),
            Rule::with_tools => with.extend(inner.tools()),
            Rule::clear_of => {
                inner.skip(Rule::of);
                clear_of.extend(inner.names());
            }
            Rule::reach_needs => needs.extend(inner.needs()),
            _ => {}
        }
    }
    Says::Reach {
        from,
        with,
        clear_of,
        needs,
    }
}

pub(super) fn must_be(parts: &mut Parts<'_, '_>) -> Option<Says> {
    parts.skip(Rule::be);
    let states = parts.states();
    let when = match parts.take(Rule::when)?.as_str() {
        "before" => When::Before,
        _ => When::After,
    };
    Some(Says::MustBe {
        states,
        when,
        condition: parts.condition()?,
    })
}

pub(super) fn for_each(parts: &mut Parts<'_, '_>) -> Option<Says> {
    parts.skip(Rule::each);
    let series = parts.name()?;
    parts.skip(Rule::r#in);
    Some(Says::ForEach {
        series,
        members: parts.members(),
    })
}
