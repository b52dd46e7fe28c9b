//! Standing rules: `must be … before …` and `must be … after …`.

use super::Asker;
use super::conditions::{clause_ways, condition_ways, plain, state_ways};
use super::reach::product;
use crate::chain::Stretch;
use crate::demand::{Atom, Demand, Way, What, Why};
use plan::model::{Must, ThingId};

impl<'a> Asker<'a> {
    pub(super) fn standing_rules(&mut self) {
        for (id, thing) in self.plan.things() {
            for (n, must) in (0u32..).zip(&thing.must) {
                if must.condition.uncertain {
                    continue;
                }
                if must.before {
                    self.must_before(id, n, must);
                } else {
                    self.must_after(id, n, must);
                }
            }
        }
    }

    /// The state must hold at every act that makes the condition true. Where the condition has
    /// several parts, such an act only counts while the other parts hold: so the state must
    /// hold, or one of the others must not.
    fn must_before(&mut self, id: ThingId, n: u32, must: &'a Must) {
        let wanted = self.wanted(id, must);
        let mut whole = vec![Vec::new()];
        for clause in &must.condition.clauses {
            whole = product(
                &whole,
                &clause_ways(self.plan, self.lives, self.index, clause),
            );
        }
        for together in &whole {
            for (i, atom) in together.iter().enumerate() {
                for (step, sub) in self.made_true(*atom) {
                    let mut ways = plain(wanted.clone());
                    for (j, other) in together.iter().enumerate() {
                        if i != j
                            && let What::Chain(chain, test) = other.what
                        {
                            ways.push(Way {
                                atoms: vec![Atom {
                                    what: What::Chain(chain, test.opposite()),
                                    ..*other
                                }],
                                line: None,
                                elsewhere: true,
                            });
                        }
                    }
                    self.asked.demands.push(Demand {
                        step,
                        sub,
                        together: false,
                        thing: id,
                        ways,
                        why: Why::MustBefore(n),
                        place: must.place,
                        because: must.condition.because.as_deref().map(Into::into),
                    });
                }
            }
        }
    }

    /// That the condition has come about for the last time, where acts bring it about: a joint
    /// opened and made again after the bleeding wants another bleeding.
    fn made_for_the_last_time(&self, atom: Atom) -> Atom {
        match self.made_true(atom).last() {
            Some(&(step, _)) => Atom {
                what: What::Done(step, true),
                ..atom
            },
            None => atom,
        }
    }

    /// The last act that brings the state about must come when the condition holds.
    fn must_after(&mut self, id: ThingId, n: u32, must: &'a Must) {
        for way in self.wanted(id, must) {
            for atom in way {
                let Some((step, sub)) = self.last_made(atom) else {
                    self.asked.never_done.push((id, n));
                    continue;
                };
                let ways = condition_ways(self.plan, self.lives, self.index, &must.condition)
                    .into_iter()
                    .map(|way| {
                        way.into_iter()
                            .map(|a| self.made_for_the_last_time(a))
                            .collect()
                    })
                    .collect();
                self.asked.demands.push(Demand {
                    step,
                    sub,
                    together: false,
                    thing: id,
                    ways: plain(ways),
                    why: Why::MustAfter(n),
                    place: must.place,
                    because: must.condition.because.as_deref().map(Into::into),
                });
            }
        }
    }

    /// The last act that brings the state about, whether or not it held already.
    fn last_made(&self, atom: Atom) -> Option<(u32, u16)> {
        match atom.what {
            What::Chain(chain, test) => {
                let acts = &self.lives.chain(chain).acts;
                let last = acts.iter().rev().find(|a| test.passes(a.value))?;
                Some((last.step, last.sub))
            }
            _ => self.made_true(atom).last().copied(),
        }
    }

    fn wanted(&self, id: ThingId, must: &Must) -> Vec<Vec<Atom>> {
        let mut wanted = vec![Vec::new()];
        for &state in &must.states {
            let one = state_ways(self.plan, self.lives, self.index, id, state, must.place);
            wanted = product(&wanted, &one);
        }
        wanted
    }

    /// The acts that make an atom true, in the order they must have.
    fn made_true(&self, atom: Atom) -> Vec<(u32, u16)> {
        match atom.what {
            What::Never | What::Done(_, false) => Vec::new(),
            What::Done(step, true) => vec![(step, 0)],
            What::Chain(chain, test) => {
                let chain = self.lives.chain(chain);
                chain
                    .stretches(test)
                    .into_iter()
                    .filter_map(|Stretch { open, .. }| open)
                    .map(|act| {
                        let act = &chain.acts[act as usize];
                        (act.step, act.sub)
                    })
                    .collect()
            }
        }
    }
}
