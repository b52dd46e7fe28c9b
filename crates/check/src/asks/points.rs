//! What filling and draining ask.

use super::Asker;
use crate::chain::{Test, presence, tightness};
use crate::demand::Why;
use crate::lives::Target;
use plan::model::{Body, Condition, Sort, State, Step, StepId, Subject, ThingId};
use syntax::tree::{State as Word, Verb};

impl<'a> Asker<'a> {
    pub(super) fn fluid(&mut self, id: StepId, step: &'a Step, target: &Target) {
        self.work_at(id, step, target);
        let Some(point) = self.plan.thing(target.thing).point() else {
            return;
        };
        for closer in &point.closed_by {
            let atom = self.away(closer.thing, closer.place);
            self.ask_one(id, step, target, Why::Opening, atom);
        }
        // A vent is opened to drain, so only filling asks for the rest to be shut. Where the
        // writer says that one of them is to be out (a level plug), the writer knows better.
        if step.verb != Verb::Fill {
            return;
        }
        for part in &point.on {
            for &other in self.index.points_on(part.thing) {
                if other == target.thing {
                    continue;
                }
                let Some(closes) = self.plan.thing(other).point().map(|p| &p.closed_by) else {
                    continue;
                };
                for closer in closes {
                    let own = point.closed_by.iter().any(|c| c.thing == closer.thing);
                    if !own && !self.wanted_out(step, target.thing, closer.thing) {
                        let least = if self.plan.thing(closer.thing).sort == Sort::Fasteners {
                            tightness::TIGHT
                        } else {
                            presence::DRY
                        };
                        let atom = super::main(
                            self.lives,
                            closer.thing,
                            Test::AtLeast(least),
                            closer.place,
                        );
                        self.ask_one(id, step, target, Why::OtherClosing, atom);
                    }
                }
            }
        }
    }

    fn wanted_out(&self, step: &Step, point: ThingId, closer: ThingId) -> bool {
        let says = |c: &Condition| {
            c.clauses.iter().any(|clause| {
                clause.subject == Subject::Thing(closer)
                    && matches!(
                        clause.state,
                        State::Is(Word::Out | Word::Off | Word::Slack | Word::Started)
                    )
            })
        };
        let this = self.plan.thing(point);
        debug_assert!(matches!(this.body, Body::Point(_)));
        step.after.iter().any(says)
            || this.needs.iter().any(says)
            || this.ways.iter().any(|w| says(&w.needs))
    }
}
