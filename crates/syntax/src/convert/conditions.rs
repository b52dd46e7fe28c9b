//! States of things, and what must be so before or after something else.

use super::parts::Parts;
use crate::grammar::Rule;
use crate::tree::{Clause, Condition, Name, Need, Span, State, StateRef, StateWord};
use crate::words;

/// One thing of a condition, as it stands.
struct Thing {
    span: Span,
    name: Name,
    says: Option<Says>,
}

enum Says {
    /// `… is fitted and snug`.
    Is(Vec<StateRef>),
    /// `… at tdc`.
    At(StateRef),
}

impl<'i, 's> Parts<'i, 's> {
    pub(crate) fn condition(&mut self) -> Option<Condition> {
        let piece = self.take(Rule::condition)?;
        let span = self.span_of(&piece);
        let mut inner = self.within(piece);
        Some(Condition {
            span,
            clauses: clauses(std::iter::from_fn(|| inner.thing())),
        })
    }

    /// What stands behind `needs`. Here each thing speaks for itself alone.
    pub(crate) fn needs(&mut self) -> Vec<Need> {
        let mut needs = Vec::new();
        for Thing { span, name, says } in std::iter::from_fn(|| self.thing()) {
            match says {
                None => needs.push(Need {
                    span,
                    name,
                    state: None,
                }),
                Some(Says::At(state)) => needs.push(Need {
                    span,
                    name,
                    state: Some(state),
                }),
                Some(Says::Is(states)) => needs.extend(states.into_iter().map(|state| Need {
                    span,
                    name,
                    state: Some(state),
                })),
            }
        }
        needs
    }

    pub(crate) fn states(&mut self) -> Vec<StateRef> {
        std::iter::from_fn(|| self.place().or_else(|| self.state())).collect()
    }

    fn thing(&mut self) -> Option<Thing> {
        let piece = self.take(Rule::thing)?;
        let span = self.span_of(&piece);
        let mut inner = self.within(piece);
        let name = inner.name()?;
        let says = if inner.skip(Rule::is) {
            Some(Says::Is(inner.states()))
        } else {
            inner.place().map(Says::At)
        };
        Some(Thing { span, name, says })
    }

    fn place(&mut self) -> Option<StateRef> {
        let piece = self.take(Rule::place)?;
        let span = self.span_of(&piece);
        let name = self.within(piece).name()?;
        Some(StateRef {
            span,
            what: StateWord::At(name),
        })
    }

    fn state(&mut self) -> Option<StateRef> {
        let piece = self.take(Rule::state)?;
        let state = state_of(piece.as_str())?;
        Some(StateRef {
            span: self.span_of(&piece),
            what: StateWord::State(state),
        })
    }
}

/// The state a word means. The blanks of `in place` may be any.
fn state_of(word: &str) -> Option<State> {
    match words::state(word) {
        None if word.ends_with("place") => Some(State::Fitted),
        found => found,
    }
}

/// Names before an `is` share its states; all others stand for themselves.
fn clauses(things: impl Iterator<Item = Thing>) -> Vec<Clause> {
    let mut clauses = Vec::new();
    let mut waiting: Vec<(Name, Span)> = Vec::new();
    for Thing { span, name, says } in things {
        match says {
            None => waiting.push((name, span)),
            Some(Says::At(state)) => {
                alone(&mut waiting, &mut clauses);
                clauses.push(Clause {
                    span,
                    names: vec![name],
                    states: vec![state],
                });
            }
            Some(Says::Is(states)) => {
                let span = waiting.first().map_or(span, |(_, first)| first.to(span));
                let mut names: Vec<Name> = waiting.drain(..).map(|(name, _)| name).collect();
                names.push(name);
                clauses.push(Clause {
                    span,
                    names,
                    states,
                });
            }
        }
    }
    alone(&mut waiting, &mut clauses);
    clauses
}

fn alone(waiting: &mut Vec<(Name, Span)>, clauses: &mut Vec<Clause>) {
    clauses.extend(waiting.drain(..).map(|(name, span)| Clause {
        span,
        names: vec![name],
        states: Vec::new(),
    }));
}
