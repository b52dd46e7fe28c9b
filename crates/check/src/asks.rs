//! From the plan to its demands, verb by verb.

mod conditions;
mod fasteners;
mod parts;
mod places;
mod points;
mod reach;
mod standing;

use crate::chain::{Aspect, Test, presence, tightness};
use crate::demand::{Atom, Demand, Way, What, Why};
use crate::lives::{Lives, Target};
use plan::index::Index;
use plan::model::{Place, Plan, Sort, Step, StepId, ThingId};
use syntax::tree::Verb;

pub use conditions::{clause_ways, condition_ways, not_condition_ways};
pub use places::carriers;
pub use reach::{Around, reach_ways};

/// All demands of a plan, and the standing rules that no step ever meets.
#[derive(Debug, Default)]
pub struct Asked {
    /// The demands, by step.
    pub demands: Vec<Demand>,
    /// `must be … after …` of a thing (by its place among the thing's rules) with no step that
    /// would ever do it.
    pub never_done: Vec<(ThingId, u32)>,
}

/// What the demands are made from, and where they are gathered.
pub struct Asker<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Who stands on, holds and closes what.
    pub index: &'a Index,
    /// The chains.
    pub lives: &'a Lives,
    asked: Asked,
}

/// Everything that the plan asks.
pub fn all(plan: &Plan, index: &Index, lives: &Lives) -> Asked {
    let mut asker = Asker {
        plan,
        index,
        lives,
        asked: Asked::default(),
    };
    for (id, step) in plan.steps() {
        asker.step_conditions(id, step);
        for target in &lives.targets[id.0 as usize] {
            asker.target(id, step, target);
        }
    }
    asker.standing_rules();
    asker.asked
}

impl<'a> Asker<'a> {
    fn target(&mut self, id: StepId, step: &'a Step, target: &Target) {
        let sort = self.plan.thing(target.thing).sort;
        match (step.verb, sort) {
            (Verb::Fit | Verb::DryFit, Sort::Part | Sort::Unit | Sort::Item) => {
                self.fit(id, step, target);
            }
            (Verb::Remove | Verb::Undo, Sort::Part | Sort::Unit | Sort::Item) => {
                self.take_off(id, step, target);
            }
            (_, Sort::Fasteners) => self.fasteners(id, step, target),
            (Verb::Fill | Verb::Drain, _) => self.fluid(id, step, target),
            (
                Verb::Measure
                | Verb::Set
                | Verb::Mark
                | Verb::Bleed
                | Verb::Inspect
                | Verb::Clean
                | Verb::Reach
                | Verb::Apply,
                _,
            ) => self.work_at(id, step, target),
            (Verb::Prime | Verb::Turn, Sort::Point) => self.work_at(id, step, target),
            _ => {}
        }
        if let Some(place) = step.to_its_mark {
            self.mark(id, step, target, place);
        }
    }

    fn ask(
        &mut self,
        id: StepId,
        step: &Step,
        target: &Target,
        why: Why,
        place: Place,
        ways: Vec<Way>,
    ) {
        self.asked.demands.push(Demand {
            step: id.0,
            sub: target.sub,
            together: step.together,
            thing: target.thing,
            ways,
            why,
            place,
            because: None,
        });
    }

    fn ask_one(&mut self, id: StepId, step: &Step, target: &Target, why: Why, atom: Atom) {
        let place = atom.place;
        let way = Way {
            atoms: vec![atom],
            line: None,
            elsewhere: false,
        };
        self.ask(id, step, target, why, place, vec![way]);
    }

    /// The thing is there: tried on counts.
    fn in_place(&self, thing: ThingId, place: Place) -> Atom {
        let least = if self.plan.thing(thing).sort == Sort::Fasteners {
            tightness::STARTED
        } else {
            presence::DRY
        };
        main(self.lives, thing, Test::AtLeast(least), place)
    }

    /// The thing is not in the way: off, or out.
    fn away(&self, thing: ThingId, place: Place) -> Atom {
        main(self.lives, thing, Test::AtMost(0), place)
    }

    /// A mark that a part goes back to is made before the part comes off: if it was ever on
    /// before it was marked, it must be on when it is marked.
    fn marked_while_together(&mut self, thing: ThingId, place: Place) {
        let main = self.lives.chain(self.lives.main(thing));
        let Some(chain) = self
            .lives
            .get(thing, Aspect::Happened(syntax::tree::State::Marked))
        else {
            return;
        };
        let already = self
            .asked
            .demands
            .iter()
            .any(|d| d.why == Why::MarkMade && d.thing == thing);
        let Some(act) = self.lives.chain(chain).acts.iter().find(|a| a.value > 0) else {
            return;
        };
        let on_before =
            main.initial > 0 || main.acts.iter().any(|a| a.value > 0 && a.step < act.step);
        if already || !on_before || self.plan.thing(thing).sort == Sort::Fasteners {
            return;
        }
        self.asked.demands.push(Demand {
            step: act.step,
            sub: act.sub,
            together: false,
            thing,
            ways: vec![Way {
                atoms: vec![self.in_place(thing, place)],
                line: None,
                elsewhere: false,
            }],
            why: Why::MarkMade,
            place,
            because: None,
        });
    }

    fn mark(&mut self, id: StepId, step: &Step, target: &Target, place: Place) {
        use syntax::tree::State as Word;
        let marked = std::iter::once(target.thing)
            .chain(self.index.points_on(target.thing).iter().copied())
            .filter_map(|t| self.lives.get(t, Aspect::Happened(Word::Marked)))
            .map(|chain| Way {
                atoms: vec![Atom {
                    what: What::Chain(chain, Test::AtLeast(1)),
                    about: Some(target.thing),
                    place,
                }],
                line: None,
                elsewhere: false,
            });
        let ways: Vec<Way> = marked.collect();
        self.marked_while_together(target.thing, place);
        self.ask(id, step, target, Why::Mark, place, ways);
    }
}

/// A test on the main chain of a thing.
pub fn main(lives: &Lives, thing: ThingId, test: Test, place: Place) -> Atom {
    Atom {
        what: What::Chain(lives.main(thing), test),
        about: Some(thing),
        place,
    }
}
