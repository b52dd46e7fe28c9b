//! What is done to each thing, and when.

use super::Worked;
use plan::model::{Clause, Condition, Plan, State, StepId, Subject, ThingId};
use std::collections::HashMap;
use syntax::tree::{State as Word, Verb};

/// The steps that act on each thing, as places in the order shown.
pub(super) struct Acts<'w> {
    worked: &'w Worked<'w>,
    on: HashMap<ThingId, Vec<usize>>,
}

impl<'w> Acts<'w> {
    /// Gathers them.
    pub fn of(worked: &'w Worked<'w>) -> Acts<'w> {
        let mut on: HashMap<ThingId, Vec<usize>> = HashMap::new();
        for (at, id) in worked.order.iter().enumerate() {
            let step = worked.plan.step(*id);
            for thing in step.targets.iter().chain(&step.uses) {
                on.entry(thing.thing).or_default().push(at);
            }
        }
        Acts { worked, on }
    }

    /// The steps that act on `thing` before place `at`, the last first.
    fn before(&self, thing: ThingId, at: usize) -> impl Iterator<Item = StepId> {
        let places = self.on.get(&thing).map_or(&[][..], Vec::as_slice);
        let until = places.partition_point(|place| *place < at);
        places[..until]
            .iter()
            .rev()
            .map(|place| self.worked.order[*place])
    }

    /// The first step behind place `at` that does `verb` to `thing`, not on trial.
    pub fn next(&self, thing: ThingId, at: usize, verb: Verb) -> Option<StepId> {
        let places = self.on.get(&thing).map_or(&[][..], Vec::as_slice);
        let from = places.partition_point(|place| *place <= at);
        let mut later = places[from..].iter().map(|place| self.worked.order[*place]);
        later.find(|id| {
            let step = self.worked.plan.step(*id);
            step.verb == verb && !step.trial
        })
    }

    /// The next step behind place `at` that turns `group` one way or the other.
    pub fn next_turn(&self, group: ThingId, at: usize) -> Option<StepId> {
        let places = self.on.get(&group).map_or(&[][..], Vec::as_slice);
        let from = places.partition_point(|place| *place <= at);
        let mut later = places[from..].iter().map(|place| self.worked.order[*place]);
        later.find(|id| {
            let step = self.worked.plan.step(*id);
            matches!(
                step.verb,
                Verb::Start
                    | Verb::Snug
                    | Verb::Tighten
                    | Verb::Slacken
                    | Verb::Undo
                    | Verb::Remove
                    | Verb::Fit
            )
        })
    }

    /// Whether a part is on before place `at`.
    pub fn is_on(&self, part: ThingId, at: usize) -> bool {
        let last = self
            .before(part, at)
            .find_map(|id| match self.worked.plan.step(id).verb {
                Verb::Fit | Verb::DryFit => Some(true),
                Verb::Remove => Some(false),
                _ => None,
            });
        last.unwrap_or_else(|| {
            self.worked.plan.heading.assembled || self.worked.plan.thing(part).given.is_some()
        })
    }

    /// Whether a group is tight before place `at`: what it needs and what holds against it is
    /// asked when it is broken loose, not when it is wound out.
    pub fn is_tight(&self, group: ThingId, at: usize) -> bool {
        let turned = self
            .before(group, at)
            .find_map(|id| match self.worked.plan.step(id).verb {
                Verb::Tighten => Some(true),
                Verb::Start
                | Verb::Snug
                | Verb::Slacken
                | Verb::Undo
                | Verb::Fit
                | Verb::Remove => Some(false),
                _ => None,
            });
        turned.unwrap_or_else(|| {
            self.worked.plan.heading.assembled || self.worked.plan.thing(group).given.is_some()
        })
    }

    /// The last step before place `at` that made the condition true, as far as that can be told
    /// from what the step does; only to help the eye find it.
    pub fn made_by(&self, at: usize, condition: &Condition) -> Option<StepId> {
        let place = |id: StepId| self.worked.order.iter().position(|other| *other == id);
        let makers = condition
            .clauses
            .iter()
            .filter_map(|clause| match &clause.subject {
                Subject::Thing(thing) => self
                    .before(*thing, at)
                    .find(|id| makes(self.worked.plan, *id, *thing, clause)),
                Subject::Steps(steps) => {
                    let done = steps
                        .iter()
                        .copied()
                        .filter(|id| place(*id).is_some_and(|place| place < at));
                    done.max_by_key(|id| place(*id))
                }
            });
        makers.max_by_key(|id| place(*id))
    }
}

/// Whether a step is one that makes the clause true.
fn makes(plan: &Plan, id: StepId, subject: ThingId, clause: &Clause) -> bool {
    let step = plan.step(id);
    let State::Is(state) = clause.state else {
        return step.verb == Verb::Turn
            && step.targets.iter().any(|target| target.thing == subject);
    };
    let verbs: &[Verb] = match state {
        Word::Applied | Word::Cured => {
            return step.uses.iter().any(|used| used.thing == subject)
                || step.verb == Verb::Apply
                    && step.targets.iter().any(|target| target.thing == subject);
        }
        Word::Fitted => &[Verb::Fit],
        Word::Off => &[Verb::Remove],
        Word::Out => &[Verb::Undo, Verb::Remove],
        Word::Started => &[Verb::Start, Verb::Snug, Verb::Tighten],
        Word::Slack => &[Verb::Slacken, Verb::Undo],
        Word::Snug => &[Verb::Snug, Verb::Tighten],
        Word::Tight => &[Verb::Tighten],
        Word::Locked => &[Verb::Lock],
        Word::Bled => &[Verb::Bleed],
        Word::Filled => &[Verb::Fill],
        Word::Drained => &[Verb::Drain],
        Word::Primed => &[Verb::Prime],
        Word::Measured => &[Verb::Measure],
        Word::Set => &[Verb::Set],
        Word::Marked => &[Verb::Mark],
        Word::Inspected => &[Verb::Inspect],
        Word::Cleaned => &[Verb::Clean],
        Word::Heated => &[Verb::Heat],
        Word::Chilled => &[Verb::Chill],
        Word::Turned => &[Verb::Turn],
        Word::Reached => &[Verb::Reach],
        Word::Signed => &[Verb::Sign],
        Word::Covered | Word::Done => &[],
    };
    verbs.contains(&step.verb) && step.targets.iter().any(|target| target.thing == subject)
}
