//! What turning fasteners asks.

use super::reach::reach_ways;
use super::{Asker, condition_ways};
use crate::asks::conditions::plain;
use crate::chain::{Test, tightness};
use crate::demand::{Way, Why};
use crate::lives::{Target, made_value};
use plan::model::{CounterholdBy, Sort, Step, StepId};
use syntax::tree::Verb;

impl<'a> Asker<'a> {
    pub(super) fn fasteners(&mut self, id: StepId, step: &'a Step, target: &Target) {
        let group = self.plan.thing(target.thing);
        let Some(f) = group.fasteners() else { return };
        let ends_tight = step.verb == Verb::Tighten
            || (step.verb == Verb::Fit
                && self.value_left(id, target) >= made_value(Sort::Fasteners));
        let reaches = !matches!(
            step.verb,
            Verb::Heat | Verb::Chill | Verb::Prime | Verb::Turn | Verb::Do | Verb::Sign
        );
        if reaches {
            let ways = reach_ways(&self.around(), target.thing, &step.with, false);
            self.ask(id, step, target, Why::Reach, target.named.place, ways);
        }
        // A key lies in its slot and a dowel in its hole before what they hold comes over them.
        let goes_first =
            step.verb == Verb::Fit && matches!(f.noun.as_deref(), Some("key" | "dowel" | "pin"));
        if (ends_tight && !goes_first) || step.verb == Verb::Snug {
            for held in &f.hold {
                let atom = self.in_place(held.thing, held.place);
                self.ask_one(id, step, target, Why::Hold, atom);
            }
        }
        if ends_tight && !step.trial {
            for floats in f.floats_until.iter().filter(|c| !c.uncertain) {
                let ways = condition_ways(self.plan, self.lives, self.index, floats);
                self.ask(id, step, target, Why::Floats, floats.place, plain(ways));
                if let Some(last) = self.asked.demands.last_mut() {
                    last.because = floats.because.as_deref().map(Into::into);
                }
            }
            self.made(id, step, target);
        }
        let loosens = matches!(step.verb, Verb::Slacken | Verb::Undo | Verb::Remove);
        if loosens || matches!(step.verb, Verb::Tighten | Verb::Snug) {
            let atom = super::main(
                self.lives,
                target.thing,
                Test::AtMost(tightness::TIGHT),
                group.place,
            );
            self.ask_one(id, step, target, Why::StillLocked, atom);
        }
        if ends_tight || (loosens && self.tight_before(id, target)) {
            self.needs(id, step, target, Why::Counterhold);
            if let Some(CounterholdBy::Part(part)) = &f.counterhold {
                let atom = self.in_place(part.thing, part.place);
                self.ask_one(id, step, target, Why::Counterhold, atom);
            }
        }
        if step.verb == Verb::Lock {
            self.made(id, step, target);
            let atom = super::main(
                self.lives,
                target.thing,
                Test::AtLeast(tightness::TIGHT),
                group.place,
            );
            self.ask_one(id, step, target, Why::LockWantsTight, atom);
        }
    }

    /// The value that this act leaves on the group.
    fn value_left(&self, id: StepId, target: &Target) -> u8 {
        let chain = self.lives.chain(self.lives.main(target.thing));
        chain
            .acts
            .iter()
            .find(|a| (a.step, a.sub) == (id.0, target.sub))
            .map_or(0, |a| a.value)
    }

    /// Whether the group is tight just before this act, in the order its acts must have.
    fn tight_before(&self, id: StepId, target: &Target) -> bool {
        let chain = self.lives.chain(self.lives.main(target.thing));
        let mut value = chain.initial;
        for act in &chain.acts {
            if (act.step, act.sub) == (id.0, target.sub) {
                return value >= tightness::TIGHT;
            }
            value = act.value;
        }
        false
    }

    pub(super) fn work_at(&mut self, id: StepId, step: &'a Step, target: &Target) {
        let ways: Vec<Way> = reach_ways(&self.around(), target.thing, &step.with, true);
        self.ask(id, step, target, Why::Reach, target.named.place, ways);
        if self.plan.thing(target.thing).sort == Sort::Point {
            self.needs(id, step, target, Why::Needs);
        }
    }
}
