//! Which sort of thing can be in which state.

use syntax::tree::State;

use crate::model::{Fasteners, Sort, Thing};

/// What a state asked of a thing comes to.
pub(crate) enum Answer {
    /// This state of the thing.
    Is(State),
    /// This state of the fasteners that hold it.
    Holders(State),
    /// A thing of this sort is never so.
    Never,
}

/// What the bare name of a thing asks for; none where that would be a guess.
pub(crate) fn bare(sort: Sort) -> Option<State> {
    match sort {
        Sort::Part | Sort::Unit | Sort::Item => Some(State::Fitted),
        Sort::Fasteners => Some(State::Tight),
        Sort::Supply => Some(State::Applied),
        Sort::Point => Some(State::Done),
        Sort::Position | Sort::Tool => None,
    }
}

/// What a state asked of a thing comes to.
pub(crate) fn of(thing: &Thing, state: State) -> Answer {
    let known = match thing.sort {
        Sort::Part | Sort::Unit => match state {
            State::Off | State::Out => Some(State::Off),
            State::Slack | State::Started | State::Snug | State::Tight | State::Locked => {
                return Answer::Holders(state);
            }
            State::Fitted | State::Covered => Some(state),
            state => work(state),
        },
        Sort::Item => match state {
            State::Off | State::Out => Some(State::Off),
            State::Fitted
            | State::Covered
            | State::Inspected
            | State::Measured
            | State::Cleaned
            | State::Marked
            | State::Heated
            | State::Chilled => Some(state),
            _ => None,
        },
        Sort::Fasteners => match state {
            State::Off | State::Out => Some(State::Out),
            State::Fitted => match thing.fasteners().is_some_and(has_no_thread) {
                true => Some(State::Tight),
                false => Some(State::Started),
            },
            State::Slack
            | State::Started
            | State::Snug
            | State::Tight
            | State::Locked
            | State::Covered
            | State::Inspected
            | State::Marked
            | State::Measured
            | State::Set
            | State::Cleaned
            | State::Reached
            | State::Heated
            | State::Chilled => Some(state),
            _ => None,
        },
        Sort::Point => match state {
            State::Covered | State::Done => Some(state),
            state => work(state),
        },
        Sort::Supply => match state {
            State::Applied | State::Cured => Some(state),
            _ => None,
        },
        Sort::Position | Sort::Tool => None,
    };
    known.map_or(Answer::Never, Answer::Is)
}

/// Work that can be done at a place.
fn work(state: State) -> Option<State> {
    matches!(
        state,
        State::Bled
            | State::Filled
            | State::Drained
            | State::Primed
            | State::Measured
            | State::Set
            | State::Marked
            | State::Inspected
            | State::Cleaned
            | State::Heated
            | State::Chilled
            | State::Turned
            | State::Reached
    )
    .then_some(state)
}

/// Whether a group is simply in or out: a pin, a clip, a ring, and nothing with a thread.
fn has_no_thread(group: &Fasteners) -> bool {
    let plain = |noun: &String| {
        matches!(
            noun.as_str(),
            "pin" | "clip" | "ring" | "dowel" | "key" | "clamp" | "strap"
        )
    };
    group.thread.is_none() && group.noun.as_ref().is_some_and(plain)
}
