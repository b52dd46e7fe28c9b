//! What fitting and taking off ask.

use super::Asker;
use super::reach::{Around, in_place_ways, reach_ways};
use crate::asks::conditions::plain;
use crate::chain::{Aspect, Test, presence, tightness};
use crate::demand::{Atom, What, Why};
use crate::lives::Target;
use plan::model::{Lock, Sort, Step, StepId, ThingId};
use syntax::tree::Verb;

impl<'a> Asker<'a> {
    pub(super) fn around(&self) -> Around<'a> {
        Around {
            plan: self.plan,
            index: self.index,
            lives: self.lives,
        }
    }

    pub(super) fn fit(&mut self, id: StepId, step: &'a Step, target: &Target) {
        let thing = self.plan.thing(target.thing);
        let unit = self.index.unit_of(target.thing);
        for base in &thing.onto {
            let pressed = thing.pressed_onto.iter().any(|p| p.thing == base.thing);
            // A part goes onto its own unit by going onto its base; and what is pressed on may
            // be pressed on at the bench, before its shaft is anywhere near the machine.
            if !pressed && Some(base.thing) != unit {
                let mut atom = self.in_place(base.thing, base.place);
                if step.verb == Verb::Fit && self.plan.thing(base.thing).sort != Sort::Fasteners {
                    // What is only tried in place is nothing to build upon for good.
                    atom = super::main(
                        self.lives,
                        base.thing,
                        Test::AtLeast(presence::ON),
                        base.place,
                    );
                }
                self.ask_one(id, step, target, Why::Onto, atom);
            }
        }
        for member in thing.members().iter().skip(1) {
            let least = if step.verb == Verb::Fit {
                presence::ON
            } else {
                presence::DRY
            };
            let atom = super::main(self.lives, member.thing, Test::AtLeast(least), member.place);
            self.ask_one(id, step, target, Why::Built, atom);
        }
        self.needs(id, step, target, Why::Needs);
        let ways = reach_ways(&self.around(), target.thing, &step.with, false);
        self.ask(id, step, target, Why::Reach, target.named.place, ways);
        if step.verb == Verb::Fit {
            self.made(id, step, target);
        }
    }

    /// The `needs` of a thing, clause by clause; a position is a demand of its own kind.
    pub(super) fn needs(&mut self, id: StepId, step: &'a Step, target: &Target, why: Why) {
        let thing = self.plan.thing(target.thing);
        for need in thing.needs.iter().filter(|n| !n.uncertain) {
            for clause in &need.clauses {
                let ways = in_place_ways(&self.around(), clause);
                let why = match clause.state {
                    plan::model::State::At(_) => Why::Position,
                    plan::model::State::Is(_) => why,
                };
                self.ask(id, step, target, why, clause.place, plain(ways));
                if let Some(last) = self.asked.demands.last_mut() {
                    last.because = need.because.as_deref().map(Into::into);
                }
            }
        }
    }

    /// What making a joint for good asks of the items and single-use things in it.
    pub(super) fn made(&mut self, id: StepId, step: &'a Step, target: &Target) {
        let locking = step.verb == Verb::Lock;
        for &item in self.index.items_at(target.thing) {
            // A split pin or tab goes in when the lock is made, all else when the joint is.
            if self.plan.thing(item).uncertain || self.locks(item, target.thing) != locking {
                continue;
            }
            let what = self
                .lives
                .get(item, Aspect::InJoint(target.thing))
                .map_or(What::Never, |c| What::Chain(c, Test::AtLeast(1)));
            let atom = Atom {
                what,
                about: Some(item),
                place: self.plan.thing(item).place,
            };
            self.ask_one(id, step, target, Why::Joint, atom);
        }
        if let Some(place) = self
            .plan
            .thing(target.thing)
            .single_use
            .filter(|_| !locking)
            && let Some(chain) = self.lives.get(target.thing, Aspect::Fresh)
        {
            let atom = Atom {
                what: What::Chain(chain, Test::AtLeast(1)),
                about: Some(target.thing),
                place,
            };
            self.ask_one(id, step, target, Why::Fresh, atom);
        }
    }

    /// Whether the item is what locks the joint.
    fn locks(&self, item: ThingId, joint: ThingId) -> bool {
        let by = self
            .plan
            .thing(joint)
            .fasteners()
            .map(|f| f.locked_by.as_slice());
        by.unwrap_or_default()
            .iter()
            .any(|l| matches!(l, Lock::Thing(r) if r.thing == item))
    }

    pub(super) fn take_off(&mut self, id: StepId, step: &'a Step, target: &Target) {
        for &group in self.index.held_by(target.thing) {
            let f = self.plan.thing(group).fasteners();
            let most = if f.is_some_and(|f| f.frees_when_slack) {
                tightness::STARTED
            } else {
                tightness::OUT
            };
            let place = f
                .and_then(|f| f.hold.iter().find(|h| h.thing == target.thing))
                .map_or(self.plan.thing(group).place, |h| h.place);
            let atom = super::main(self.lives, group, Test::AtMost(most), place);
            self.ask_one(id, step, target, Why::Fastened, atom);
        }
        for (on, place) in self.left_standing(target.thing) {
            let atom = self.away(on, place);
            self.ask_one(id, step, target, Why::StandsOn, atom);
        }
        let ways = reach_ways(&self.around(), target.thing, &step.with, false);
        self.ask(id, step, target, Why::Reach, target.named.place, ways);
    }

    /// What stands on a part and does not travel with it when it comes off.
    ///
    /// What is pressed on travels, and so do the members of a unit; whatever stands wholly on
    /// things that travel does too. Anything else has to be off first.
    fn left_standing(&self, thing: ThingId) -> Vec<(ThingId, plan::model::Place)> {
        let plan = self.plan;
        let is_unit = plan.thing(thing).sort == Sort::Unit;
        let mut travels: Vec<ThingId> = plan
            .thing(thing)
            .members()
            .iter()
            .map(|m| m.thing)
            .collect();
        let pressed = |on: &ThingId| {
            plan.thing(*on)
                .pressed_onto
                .iter()
                .any(|p| p.thing == thing)
        };
        travels.extend(self.index.stands_on(thing).iter().copied().filter(pressed));
        let mut next = 0;
        while next < travels.len() {
            let carrier = travels[next];
            next += 1;
            for &on in self.index.stands_on(carrier) {
                let all = plan
                    .thing(on)
                    .onto
                    .iter()
                    .all(|b| travels.contains(&b.thing) || (is_unit && b.thing == thing));
                if all && !travels.contains(&on) {
                    travels.push(on);
                }
            }
        }
        let mut left = Vec::new();
        for carrier in std::iter::once(thing).chain(travels.iter().copied()) {
            for &on in self.index.stands_on(carrier) {
                let alone = is_unit && plan.thing(on).onto.iter().all(|b| b.thing == thing);
                if !travels.contains(&on) && !alone && !left.iter().any(|(l, _)| *l == on) {
                    let place = plan
                        .thing(on)
                        .onto
                        .iter()
                        .find(|b| b.thing == carrier)
                        .map_or(plan.thing(on).place, |b| b.place);
                    left.push((on, place));
                }
            }
        }
        left
    }
}
