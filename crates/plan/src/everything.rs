//! `everything is tight`: all that a plan works on, in one word.

use std::collections::HashSet;
use std::rc::Rc;

use syntax::tree::{Head, State as Word, StateRef, StateWord, Verb};

use crate::conditions::Facts;
use crate::desk::{Desk, Here};
use crate::model::{Body, Clause, Place, ProblemKind, Sort, State, Subject, ThingId};
use crate::names::Named;

/// The word. No thing may be called so.
pub(crate) const WORD: &str = "everything";

/// Which things a state asks of when it is asked of everything.
#[derive(Clone, Copy)]
enum Scope {
    /// All parts and units.
    Built,
    /// All groups of fasteners.
    Fasteners,
    /// All groups of fasteners that have a lock.
    WithLock,
}

impl Desk<'_> {
    /// The clauses that `everything` comes to. Only what some step puts on, takes off or turns is
    /// meant: the rest never changes, or its step is missing and that is said elsewhere. Nor is
    /// what the condition itself stands on, nor what is out again before the end.
    pub fn everything(
        &mut self,
        here: &Here,
        facts: &Facts,
        states: &[StateRef],
        place: Place,
        clauses: &mut Vec<Clause>,
    ) {
        let mut asked: Vec<(Scope, Word)> = Vec::new();
        for state in states {
            match state.what {
                StateWord::State(word) if scope(word).is_some() => {
                    asked.extend(scope(word));
                }
                _ => {
                    self.doubt = true;
                    let state = Some(self.at(here.by, state.span).to_owned());
                    self.problem(place, ProblemKind::Everything { state });
                }
            }
        }
        if states.is_empty() {
            asked = vec![
                (Scope::Built, Word::Fitted),
                (Scope::Fasteners, Word::Tight),
            ];
        }
        let worked = self.worked(facts);
        let own = self.own(here);
        let mut meant: Vec<(ThingId, Word)> = Vec::new();
        for (scope, word) in asked {
            for entry in self.names.entries() {
                if let Named::Thing(thing, sort) = entry.what
                    && entry.by != here.by
                    && worked.contains(&thing)
                    && !own.contains(&thing)
                    && facts.things[thing.0 as usize].temporary.is_none()
                    && within(scope, sort, &facts.things[thing.0 as usize].body)
                {
                    meant.push((thing, word));
                }
            }
        }
        if meant.len() > 1 && !self.room_for_mentions(meant.len() as u64, WORD, place) {
            return;
        }
        clauses.extend(meant.into_iter().map(|(thing, word)| Clause {
            subject: Subject::Thing(thing),
            state: State::Is(word),
            place,
        }));
    }

    /// The things that the step here is done to.
    fn own(&mut self, here: &Here) -> HashSet<ThingId> {
        let targets = match &self.item(here.by).head {
            Head::Step { targets, .. } => targets.as_slice(),
            _ => &[],
        };
        let mut own = HashSet::new();
        for target in targets {
            let looked = self.known(here, *target);
            own.extend(looked.found.entries().iter().filter_map(|entry| {
                match self.names.entry(*entry).what {
                    Named::Thing(thing, _) => Some(thing),
                    Named::Steps(_) => None,
                }
            }));
        }
        own
    }

    /// All that steps put on, take off or turn.
    fn worked(&mut self, facts: &Facts) -> Rc<HashSet<ThingId>> {
        if let Some(known) = &self.worked {
            return known.clone();
        }
        let mut worked = HashSet::new();
        for seed in facts.steps {
            let by = (0, seed.item);
            let changes = match &self.item(by).head {
                Head::Step { verb, .. } => changes(*verb),
                _ => false,
            };
            if changes {
                let here = Here {
                    by,
                    bound: &seed.bound,
                    step: None,
                };
                worked.extend(self.own(&here));
            }
        }
        let worked = Rc::new(worked);
        self.worked = Some(worked.clone());
        worked
    }
}

/// Of what a state is asked, and the state it is then; none for those that are no state of
/// everything.
fn scope(word: Word) -> Option<(Scope, Word)> {
    Some(match word {
        Word::Fitted | Word::Off => (Scope::Built, word),
        Word::Out | Word::Started | Word::Slack | Word::Snug | Word::Tight => {
            (Scope::Fasteners, word)
        }
        Word::Locked => (Scope::WithLock, word),
        _ => return None,
    })
}

fn within(scope: Scope, sort: Sort, body: &Body) -> bool {
    match scope {
        Scope::Built => matches!(sort, Sort::Part | Sort::Unit),
        Scope::Fasteners => sort == Sort::Fasteners,
        Scope::WithLock => {
            matches!(body, Body::Fasteners(group) if !group.locked_by.is_empty())
        }
    }
}

/// Whether a step of this sort puts things on, takes them off, or turns them.
fn changes(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Fit
            | Verb::DryFit
            | Verb::Start
            | Verb::Snug
            | Verb::Tighten
            | Verb::Lock
            | Verb::Unlock
            | Verb::Slacken
            | Verb::Undo
            | Verb::Remove
    )
}
