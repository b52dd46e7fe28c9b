//! Details of fasteners and of what closes, holds and locks.

use super::parts::Parts;
use crate::grammar::Rule;
use crate::tree::{
    Counterhold, GroupSize, LockedBy, NameOrWords, Pass, Quantity, Quoted, Says, Torque,
};

pub(super) fn group(parts: &mut Parts<'_, '_>) -> Option<Says> {
    let count = parts.word_of(Rule::how_many)?;
    parts.skip(Rule::times);
    let before = parts.word_of(Rule::sort);
    let thread = parts.word_of(Rule::thread);
    let sort = before.or_else(|| parts.word_of(Rule::sort));
    let class = parts
        .open(Rule::class)
        .and_then(|mut class| class.word_of(Rule::code));
    Some(Says::Group(GroupSize {
        count,
        thread,
        sort,
        class,
    }))
}

pub(super) fn drive(parts: &mut Parts<'_, '_>) -> Option<Says> {
    let kind = parts.word()?;
    let size = parts.tool_size();
    let series = parts
        .open(Rule::drive_series)
        .and_then(|mut series| series.word_of(Rule::code));
    Some(Says::Drive { kind, size, series })
}

pub(super) fn counterhold(parts: &mut Parts<'_, '_>) -> Option<Says> {
    Some(Says::Counterhold(Counterhold::ToolOrPart(parts.tool()?)))
}

pub(super) fn torque(parts: &mut Parts<'_, '_>) -> Option<Says> {
    let torque = match parts.span(Rule::no_torque) {
        Some(span) => Torque::None(span),
        None => match parts.quoted() {
            Some(words) => Torque::Words(words),
            None => Torque::Value(parts.quantity()?),
        },
    };
    parts.skip(Rule::then);
    let then_turn = turn(parts);
    Some(Says::Torque {
        torque,
        then_turn,
        source: source(parts),
    })
}

pub(super) fn passes(parts: &mut Parts<'_, '_>) -> Says {
    let passes = std::iter::from_fn(|| pass(parts)).collect();
    Says::Passes {
        passes,
        source: source(parts),
    }
}

fn pass(parts: &mut Parts<'_, '_>) -> Option<Pass> {
    match parts.peek()? {
        Rule::turn => turn(parts).map(Pass::Turn),
        Rule::slacken => parts.span(Rule::slacken).map(Pass::Slacken),
        Rule::mark => parts.span(Rule::mark).map(Pass::Mark),
        _ => parts.quantity().map(Pass::Torque),
    }
}

fn turn(parts: &mut Parts<'_, '_>) -> Option<Quantity> {
    parts.open(Rule::turn)?.quantity()
}

fn source(parts: &mut Parts<'_, '_>) -> Option<Quoted> {
    parts.open(Rule::source)?.quoted()
}

pub(super) fn pattern(parts: &mut Parts<'_, '_>) -> Says {
    let named = parts.word();
    let numbers = std::iter::from_fn(|| parts.word_of(Rule::number));
    let order = named.into_iter().chain(numbers).collect();
    Says::Pattern {
        order,
        layout: parts.span(Rule::layout),
    }
}

pub(super) fn locked_by(parts: &mut Parts<'_, '_>) -> Says {
    parts.skip(Rule::by);
    Says::LockedBy(
        std::iter::from_fn(|| {
            let words = parts.quoted().map(LockedBy::Words);
            words.or_else(|| parts.name().map(LockedBy::Name))
        })
        .collect(),
    )
}

pub(super) fn name_or_words(parts: &mut Parts<'_, '_>) -> Option<NameOrWords> {
    let words = parts.quoted().map(NameOrWords::Words);
    words.or_else(|| parts.name().map(NameOrWords::Name))
}
