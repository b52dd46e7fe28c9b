//! Lines that could not be read: what may have stood on them.
//!
//! A wrong line spoils one line. So the names on it count as perhaps declared,
//! the things it names as not fully known, and nothing is said of either.

use syntax::tree::{
    Clause, Condition, Counterhold, Head, LockedBy, Name, NameOrWords, Need, ProblemKind, Says,
    StateRef, StateWord, To, ToolRef,
};

use crate::desk::{Desk, Here};
use crate::model::{Thing, ThingId};
use crate::names::{ItemAt, Named};
use crate::sorts;
use crate::spelling::small;

/// Takes in all lines that could not be read, before any name is looked up.
pub(crate) fn take_in(desk: &mut Desk<'_>, walk: &[ItemAt]) {
    let mut above: Option<ItemAt> = None;
    for by in walk {
        let item = desk.item(*by);
        if let Head::Unreadable {
            kind,
            verb,
            name,
            mentions,
        } = &item.head
        {
            desk.damaged.insert(*by);
            line(desk, *by, name.iter().chain(mentions));
            // It may be a detail that lost its indent, with more of them below it.
            if kind.is_none()
                && verb.is_none()
                && let Some(above) = above.filter(|above| above.0 == by.0)
            {
                desk.damaged.insert(above);
            }
        } else if let Head::Declaration {
            name: None, kind, ..
        } = &item.head
            && sorts::of_kind(*kind).is_some()
        {
            line(desk, *by, [].iter());
        }
        for detail in &item.details {
            if let Says::Unreadable { mentions } = &detail.says {
                desk.damaged.insert(*by);
                line(desk, *by, mentions.iter());
            }
        }
        above = Some(*by);
    }
    for text in 0..desk.texts.len() as u32 {
        open_quotes(desk, text);
    }
}

/// A quote that is never closed takes in the rest of its line, whatever that says.
fn open_quotes(desk: &mut Desk<'_>, text: u32) {
    let tree = &desk.texts[text as usize].tree;
    for problem in &tree.problems {
        if problem.kind != ProblemKind::OpenQuote {
            continue;
        }
        let items = &tree.items;
        let behind = items.partition_point(|item| item.span.start <= problem.span.start);
        let mut named = false;
        if let Some(item) = behind.checked_sub(1) {
            desk.damaged.insert((text, item as u32));
            named = matches!(items[item].head, Head::Declaration { name: Some(_), .. });
        }
        let words = tree.at(problem.span).split([' ', '\t', ',', '"']);
        let words = words.filter(|word| !word.is_empty());
        let words: Vec<String> = words.map(|word| small(word).into_owned()).collect();
        match named {
            // Its own name is known, and it can give no other.
            true => words.iter().for_each(|word| desk.hazy.add(word)),
            false => desk.hazy.add_line(words),
        }
    }
}

fn line<'n>(desk: &mut Desk<'_>, by: ItemAt, names: impl Iterator<Item = &'n Name>) {
    let names = names.map(|name| small(desk.at(by, name.span)).into_owned());
    let names = names.collect();
    desk.hazy.add_line(names);
}

/// Marks the things that are named where something could not be read.
pub(crate) fn mark(desk: &mut Desk<'_>, walk: &[ItemAt], things: &mut [Thing]) {
    for by in walk {
        if !desk.damaged.contains(by) {
            continue;
        }
        let item = desk.item(*by);
        let mut names: Vec<Name> = Vec::new();
        let mut headless = false;
        if let Head::Unreadable { name, mentions, .. } = &item.head {
            headless = true;
            names.extend(name);
            names.extend(mentions);
        }
        for detail in &item.details {
            match &detail.says {
                Says::Unreadable { mentions } => names.extend(mentions),
                // Whose details these are is not sure.
                says if headless => each_name(says, &mut |name| names.push(name)),
                _ => {}
            }
        }
        let here = Here {
            by: *by,
            bound: &[],
            step: None,
        };
        for name in names {
            let looked = desk.known(&here, name);
            for entry in looked.found.entries() {
                if let Named::Thing(ThingId(id), _) = desk.names.entry(*entry).what {
                    things[id as usize].uncertain = true;
                }
            }
        }
    }
}

/// Gives every name that a detail mentions.
fn each_name(says: &Says, give: &mut impl FnMut(Name)) {
    match says {
        Says::Onto { names, .. }
        | Says::MatchedWith(names)
        | Says::Of(names)
        | Says::At(names)
        | Says::Hold(names)
        | Says::MovesWith(names)
        | Says::On(names)
        | Says::ClosedBy(names)
        | Says::Use(names)
        | Says::New(names)
        | Says::Old(names)
        | Says::Spends(names)
        | Says::Disturbs(names) => names.iter().copied().for_each(give),
        Says::Covers { names, to, .. } | Says::Behind { names, to, .. } => {
            names.iter().copied().for_each(&mut *give);
            to.iter().for_each(|tool| give(tool.name));
        }
        Says::Needs(needs) => each_need(needs, give),
        Says::Reach {
            with,
            clear_of,
            needs,
            ..
        } => {
            each_tool(with, give);
            clear_of.iter().copied().for_each(&mut *give);
            each_need(needs, give);
        }
        Says::With(tools) => each_tool(tools, give),
        Says::Counterhold(Counterhold::ToolOrPart(tool)) => give(tool.name),
        Says::LockedBy(locks) => locks.iter().for_each(|lock| {
            if let LockedBy::Name(name) = lock {
                give(*name);
            }
        }),
        Says::LubricatedWith(NameOrWords::Name(name))
        | Says::Holds {
            fluid: NameOrWords::Name(name),
            ..
        } => give(*name),
        Says::MustBe {
            states, condition, ..
        } => {
            states.iter().for_each(|state| each_state(state, give));
            each_condition(condition, give);
        }
        Says::FloatsUntil(condition)
        | Says::After(condition)
        | Says::Before(condition)
        | Says::AtLeast {
            after: condition, ..
        }
        | Says::AtMost {
            after: condition, ..
        } => each_condition(condition, give),
        Says::To(To::Names(names)) => names.iter().copied().for_each(give),
        _ => {}
    }
}

fn each_tool(tools: &[ToolRef], give: &mut impl FnMut(Name)) {
    tools.iter().for_each(|tool| give(tool.name));
}

fn each_need(needs: &[Need], give: &mut impl FnMut(Name)) {
    for need in needs {
        give(need.name);
        need.state.iter().for_each(|state| each_state(state, give));
    }
}

fn each_state(state: &StateRef, give: &mut impl FnMut(Name)) {
    if let StateWord::At(place) = state.what {
        give(place);
    }
}

fn each_condition(condition: &Condition, give: &mut impl FnMut(Name)) {
    for Clause { names, states, .. } in &condition.clauses {
        names.iter().copied().for_each(&mut *give);
        states.iter().for_each(|state| each_state(state, give));
    }
}
