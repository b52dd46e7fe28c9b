//! Conditions: which things they speak of, and in which states.

use syntax::tree::{self, Name, Need, Quoted, StateRef, StateWord, Verb};

use crate::bodies::Places;
use crate::desk::{Desk, Here, StepSeed};
use crate::everything;
use crate::index::Index;
use crate::model::{
    Clause, Condition, Place, ProblemKind, Sort, State, StepId, Subject, Thing, ThingId,
};
use crate::names;
use crate::sorts;
use crate::spelling::small;
use crate::states::{self, Answer};
use crate::unknown::Wanted;

/// What is known by the time conditions are read.
#[derive(Clone, Copy)]
pub(crate) struct Facts<'a> {
    pub things: &'a [Thing],
    pub index: &'a Index,
    pub places: &'a Places,
    pub steps: &'a [StepSeed],
    /// Some fasteners are not fully known, so that it cannot be said that nothing holds a part.
    pub holders_unsure: bool,
}

/// A name and the states it is asked for in.
struct Asked<'a> {
    name: Name,
    states: &'a [StateRef],
    place: Place,
    /// Whether other names share the states.
    listed: bool,
}

/// A name where it stands, for what has to be said of it.
#[derive(Clone, Copy)]
pub(crate) struct Named<'a> {
    pub name: &'a str,
    pub place: Place,
}

const WANTED: Wanted = Wanted {
    sorts: sorts::WITH_STATES,
    steps: true,
    series: false,
};

impl Desk<'_> {
    /// A condition.
    pub fn condition(
        &mut self,
        here: &Here,
        facts: &Facts,
        condition: &tree::Condition,
        because: Option<Quoted>,
    ) -> Condition {
        let place = self.place(here.by, condition.span);
        self.all_of(here, place, because, |desk, clauses| {
            for clause in &condition.clauses {
                for name in &clause.names {
                    let asked = Asked {
                        name: *name,
                        states: &clause.states,
                        place: desk.place(here.by, clause.span),
                        listed: clause.names.len() > 1,
                    };
                    desk.clauses(here, facts, &asked, clauses);
                }
            }
        })
    }

    /// What stands behind `needs`, all of which must hold.
    pub fn needs(
        &mut self,
        here: &Here,
        facts: &Facts,
        needs: &[Need],
        place: Place,
        because: Option<Quoted>,
    ) -> Condition {
        self.all_of(here, place, because, |desk, clauses| {
            for need in needs {
                let asked = Asked {
                    name: need.name,
                    states: need.state.as_slice(),
                    place: desk.place(here.by, need.span),
                    listed: false,
                };
                desk.clauses(here, facts, &asked, clauses);
            }
        })
    }

    fn all_of(
        &mut self,
        here: &Here,
        place: Place,
        because: Option<Quoted>,
        gather: impl FnOnce(&mut Self, &mut Vec<Clause>),
    ) -> Condition {
        let doubt_before = self.take_doubt();
        let mut clauses = Vec::new();
        gather(self, &mut clauses);
        let uncertain = self.doubt;
        self.doubt |= doubt_before;
        Condition {
            clauses,
            place,
            because: self.because(here.by, because),
            uncertain,
        }
    }

    fn clauses(&mut self, here: &Here, facts: &Facts, asked: &Asked, clauses: &mut Vec<Clause>) {
        if *small(self.at(here.by, asked.name.span)) == *everything::WORD {
            return self.everything(here, facts, asked.states, asked.place, clauses);
        }
        let found = self.look_up(here, asked.name, WANTED);
        let about = Named {
            name: self.at(here.by, asked.name.span),
            place: self.place(here.by, asked.name.span),
        };
        let mut unsuited = None;
        let before = clauses.len();
        for entry in found.entries() {
            // A star takes in things that are never so, and they are simply not meant.
            if found.star()
                && let names::Named::Thing(thing, sort) = self.names.entry(*entry).what
                && !can_be(facts, thing, asked.states)
            {
                unsuited = unsuited.or(Some(sort));
                continue;
            }
            match self.names.entry(*entry).what {
                names::Named::Steps(group) => {
                    self.step_clause(here, facts, asked, group, clauses);
                }
                names::Named::Thing(thing, _) if self.guessed.contains(&thing) => {
                    self.doubt = true;
                }
                names::Named::Thing(thing, sort) if asked.states.is_empty() => {
                    match states::bare(sort) {
                        Some(state) => clauses.push(Clause {
                            subject: Subject::Thing(thing),
                            state: State::Is(state),
                            place: asked.place,
                        }),
                        None => self.not_so(about, sort, ""),
                    }
                }
                names::Named::Thing(thing, _) => {
                    for state in asked.states {
                        let states = self.states(here, facts, about, thing, state);
                        clauses.extend(states.into_iter().map(|(thing, state)| Clause {
                            subject: Subject::Thing(thing),
                            state,
                            place: asked.place,
                        }));
                    }
                }
            }
        }
        if let Some(sort) = unsuited
            && clauses.len() == before
            && !self.doubt
        {
            let state = asked.states.first();
            let state = state.map_or("", |state| self.at(here.by, state.span));
            self.not_so(about, sort, state);
        }
    }

    /// What a state asked of a thing comes to: that state, or the state of what holds it. What
    /// it can never be in is noted.
    pub fn states(
        &mut self,
        here: &Here,
        facts: &Facts,
        about: Named,
        thing: ThingId,
        state: &StateRef,
    ) -> Vec<(ThingId, State)> {
        let what = &facts.things[thing.0 as usize];
        let word = match state.what {
            StateWord::At(place) if what.sort == Sort::Position => {
                let mut states = Vec::new();
                for wanted in self.written_out(here, place) {
                    let number = self.place_of(here, facts, about, thing, place, &wanted);
                    states.extend(number.map(|number| (thing, State::At(number))));
                }
                return states;
            }
            StateWord::At(_) => None,
            StateWord::State(word) => Some(word),
        };
        match word.map_or(Answer::Never, |word| states::of(what, word)) {
            Answer::Is(word) => return vec![(thing, State::Is(word))],
            Answer::Holders(word) => {
                let holders = facts.index.held_by(thing);
                let many = holders.len() > 1;
                if many && !self.room_for_mentions(holders.len() as u64, about.name, about.place) {
                    return Vec::new();
                }
                if !holders.is_empty() {
                    let state = State::Is(word);
                    return holders.iter().map(|holder| (*holder, state)).collect();
                }
                if facts.holders_unsure {
                    self.doubt = true;
                    return Vec::new();
                }
            }
            Answer::Never => {}
        }
        self.not_so(about, what.sort, self.at(here.by, state.span));
        Vec::new()
    }

    /// Which of its places a position is asked to stand at. One that it does not have is noted.
    pub fn place_of(
        &mut self,
        here: &Here,
        facts: &Facts,
        about: Named,
        position: ThingId,
        place: Name,
        wanted: &str,
    ) -> Option<u32> {
        let number = facts.places.get(position, wanted);
        if number.is_none() {
            self.doubt = true;
            if !facts.things[position.0 as usize].uncertain {
                let near = match self.room_for_suggestion() {
                    true => facts.places.nearest(position, wanted),
                    false => None,
                };
                let kind = ProblemKind::UnknownPlace {
                    name: self.at(here.by, place.span).to_owned(),
                    position: about.name.to_owned(),
                    near,
                };
                self.problem(self.place(here.by, place.span), kind);
            }
        }
        number
    }

    /// Notes that a thing of this sort is never in such a state.
    fn not_so(&mut self, about: Named, is: Sort, state: &str) {
        self.doubt = true;
        let kind = ProblemKind::StateNotHere {
            name: about.name.to_owned(),
            is,
            state: state.to_owned(),
        };
        self.problem(about.place, kind);
    }

    fn step_clause(
        &mut self,
        here: &Here,
        facts: &Facts,
        asked: &Asked,
        group: u32,
        clauses: &mut Vec<Clause>,
    ) {
        let step = self.item((0, self.groups[group as usize].item));
        let verb = match &step.head {
            tree::Head::Step { verb, .. } => Some(*verb),
            _ => None,
        };
        let fits = |state: &&StateRef| match state.what {
            StateWord::State(tree::State::Done) => true,
            StateWord::State(state) => verb.and_then(participle) == Some(state),
            StateWord::At(_) => false,
        };
        // In a list, the state belongs to the things beside the step.
        let wrong = asked.states.iter().find(|state| !fits(state));
        if let Some(wrong) = wrong.filter(|_| !asked.listed) {
            self.doubt = true;
            let kind = ProblemKind::NamesStep {
                name: self.at(here.by, asked.name.span).to_owned(),
                state: Some(self.at(here.by, wrong.span).to_owned()),
                step: self.group_place(group),
            };
            self.problem(self.place(here.by, asked.name.span), kind);
            return;
        }
        let steps = self.steps_meant(here, facts, group);
        if steps.len() > 1 {
            let name = self.at(here.by, asked.name.span);
            if !self.room_for_mentions(steps.len() as u64, name, asked.place) {
                return;
            }
        }
        clauses.push(Clause {
            subject: Subject::Steps(steps),
            state: State::Is(tree::State::Done),
            place: asked.place,
        });
    }

    /// The steps that an `as` name means. Inside a `for each` stage, a name given in that stage
    /// means the step of the same pass: the next member's turn has not come yet.
    fn steps_meant(&self, here: &Here, facts: &Facts, group: u32) -> Vec<StepId> {
        let all = &self.groups[group as usize].steps;
        let seed = |step: StepId| &facts.steps[step.0 as usize];
        if let Some(own) = here.step.map(seed)
            && !own.bound.is_empty()
            && all.len() > 1
        {
            let same = |step: &StepId| {
                let other = seed(*step);
                other.stage == own.stage && other.bound == own.bound
            };
            let same: Vec<StepId> = all.iter().copied().filter(same).collect();
            if !same.is_empty() {
                return same;
            }
        }
        all.clone()
    }
}

/// Whether a thing can be in all these states.
fn can_be(facts: &Facts, id: ThingId, states: &[StateRef]) -> bool {
    let thing = &facts.things[id.0 as usize];
    if states.is_empty() {
        return states::bare(thing.sort).is_some();
    }
    states.iter().all(|state| match state.what {
        StateWord::At(_) => thing.sort == Sort::Position,
        StateWord::State(word) => match states::of(thing, word) {
            Answer::Is(_) => true,
            Answer::Holders(_) => facts.holders_unsure || !facts.index.held_by(id).is_empty(),
            Answer::Never => false,
        },
    })
}

/// The state that a step of this sort leads to, where a condition may name the step by it.
fn participle(verb: Verb) -> Option<tree::State> {
    use tree::State;
    Some(match verb {
        Verb::Apply => State::Applied,
        Verb::Measure => State::Measured,
        Verb::Set => State::Set,
        Verb::Mark => State::Marked,
        Verb::Bleed => State::Bled,
        Verb::Fill => State::Filled,
        Verb::Drain => State::Drained,
        Verb::Prime => State::Primed,
        Verb::Inspect => State::Inspected,
        Verb::Clean => State::Cleaned,
        Verb::Heat => State::Heated,
        Verb::Chill => State::Chilled,
        Verb::Turn => State::Turned,
        Verb::Reach => State::Reached,
        Verb::Sign => State::Signed,
        _ => return None,
    })
}
