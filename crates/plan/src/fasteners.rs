//! What only fasteners say of themselves, other than conditions.

use syntax::tree::{self, Counterhold, Detail, GroupSize, LockedBy, NameOrWords, Says, Span};

use crate::amounts;
use crate::bodies;
use crate::desk::{Desk, Here};
use crate::model::{Body, CounterholdBy, Fasteners, Lock, Pass, Passes, Text, Thing, Torque};
use crate::sorts;
use crate::spelling;

/// Reads a detail that only fasteners have; false when it is none of those.
pub(crate) fn read(desk: &mut Desk<'_>, here: &Here, detail: &Detail, thing: &mut Thing) -> bool {
    let Body::Fasteners(group) = &mut thing.body else {
        return false;
    };
    let whole = desk.place(here.by, detail.span);
    match &detail.says {
        Says::Group(size) => group_size(desk, here, size, group),
        Says::Hold(names) => group.hold.extend(desk.refs(here, names, sorts::HELD)),
        Says::Holds {
            fluid: NameOrWords::Name(name),
            amount: None,
        } => group.hold.extend(desk.refs(here, &[*name], sorts::HELD)),
        Says::Into { material, depth } => {
            let material = spelling::one(desk.at(here.by, material.span)).into_owned();
            let depth = depth.map(|depth| desk.amount(here, depth, amounts::LENGTH));
            group.into = Some((material, depth, whole));
        }
        Says::Drive { kind, size, series } => {
            let word = |span: Span| spelling::one(desk.at(here.by, span)).into_owned();
            let size = size.map(|span| spelling::size(desk.at(here.by, span)));
            group.drive = Some((word(kind.span), size, series.map(|s| word(s.span)), whole));
        }
        Says::Counterhold(Counterhold::ToolOrPart(tool)) => {
            let (things, tools) = desk.counterhold(here, tool);
            group.counterhold = match (things.first(), tools.into_iter().next()) {
                (Some(thing), _) => Some(CounterholdBy::Part(*thing)),
                (None, Some(tool)) => Some(CounterholdBy::Tool(tool)),
                (None, None) => None,
            };
        }
        Says::Torque {
            torque,
            then_turn,
            source,
        } => {
            let value = match torque {
                tree::Torque::Value(value) => Some(desk.amount(here, *value, amounts::TORQUE)),
                tree::Torque::None(_) | tree::Torque::Words(_) => None,
            };
            let words = match torque {
                tree::Torque::Words(words) => Some(desk.text(here.by, *words)),
                _ => None,
            };
            let then_turn = then_turn.map(|turn| desk.amount(here, turn, amounts::ANGLE));
            let source = source.map(|source| desk.text(here.by, source));
            group.torque = Some(Torque {
                value,
                words,
                then_turn,
                source,
                place: whole,
            });
        }
        Says::Passes { passes, source } => {
            let passes = passes
                .iter()
                .map(|pass| one_pass(desk, here, pass))
                .collect();
            let source = source.map(|source| desk.text(here.by, source));
            group.passes = Some(Passes {
                passes,
                source,
                place: whole,
            });
        }
        Says::Pattern { order, layout } => {
            let word = |span: Span| spelling::one(desk.at(here.by, span)).into_owned();
            let order = order.iter().map(|order| word(order.span)).collect();
            let layout = layout.map(|span| {
                let words: Vec<&str> = desk.at(here.by, span).split_whitespace().collect();
                words.join(" ")
            });
            group.pattern = Some((order, layout, whole));
        }
        // A condition: read when it is known what holds what.
        Says::FloatsUntil(_) => {}
        Says::LockedBy(locks) => {
            for lock in locks {
                locked_by(desk, here, lock, group);
            }
        }
        Says::FreesWhenSlack => group.frees_when_slack = true,
        Says::MovesWith(names) => {
            const MOVES: &[crate::model::Sort] = sorts::BODIES;
            group.moves_with.extend(desk.refs(here, names, MOVES));
        }
        Says::LeftHand => group.left_hand = true,
        Says::LubricatedWith(with) => {
            group.lubricated = Some(bodies::fluid_of(desk, here, with));
        }
        _ => return false,
    }
    true
}

fn group_size(desk: &mut Desk<'_>, here: &Here, size: &GroupSize, group: &mut Fasteners) {
    let text = |word: tree::Word| Text {
        text: desk.at(here.by, word.span).to_owned(),
        place: desk.place(here.by, word.span),
    };
    group.thread = size.thread.map(text);
    group.class = size.class.map(text);
    let called = size
        .sort
        .map(|sort| spelling::singular(desk.at(here.by, sort.span)));
    group.noun = called.as_deref().map(spelling::base_noun);
    group.called = called;
    group.count = desk.count(here, size.count);
}

fn one_pass(desk: &mut Desk<'_>, here: &Here, pass: &tree::Pass) -> Pass {
    match pass {
        tree::Pass::Torque(torque) => Pass::Torque(desk.amount(here, *torque, amounts::TORQUE)),
        tree::Pass::Turn(turn) => Pass::Turn(desk.amount(here, *turn, amounts::ANGLE)),
        tree::Pass::Slacken(_) => Pass::Slacken,
        tree::Pass::Mark(_) => Pass::Mark,
    }
}

fn locked_by(desk: &mut Desk<'_>, here: &Here, lock: &LockedBy, group: &mut Fasteners) {
    match lock {
        LockedBy::Name(name) => {
            let refs = desk.refs(here, &[*name], sorts::LOCKS);
            group.locked_by.extend(refs.into_iter().map(Lock::Thing));
        }
        LockedBy::Words(words) => {
            let words = desk.text(here.by, *words);
            group.locked_by.push(Lock::Words(words));
        }
    }
}
