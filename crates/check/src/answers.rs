//! Answers for those who print: windows, last chances, reasons, freedom, the nearest order.

use crate::asks::{Around, reach_ways};
use crate::bench::Bench;
use crate::chain::Aspect;
use crate::demand::{Atom, What, Why};
use crate::finding::Finding;
use crate::say;
use crate::view::{Arranged, Freedom, LastChance, Link, ReachRow, Window};
use order::windows::{Blocked, windows};
use order::{Count, Effort};
use plan::model::{Sort, StepId, ThingId};
use syntax::tree::Verb;

/// Orders are counted up to this many sets of finished steps; a bound on memory as much as on
/// time.
const MOST_SETS: usize = 1_000_000;

impl Bench<'_> {
    /// The nearest order that meets every condition.
    ///
    /// # Errors
    /// The findings that say why no order does.
    pub fn arrange(&self) -> Result<Arranged, Vec<Finding>> {
        if !self.solved.tangles.is_empty() {
            let told = |f: &&Finding| f.rule.name == crate::rules::no_order::RULE.name;
            return Err(self.findings().iter().filter(told).cloned().collect());
        }
        let order: Vec<StepId> = match &self.solved.nearest {
            Some(nearest) => nearest.iter().map(|s| StepId(*s)).collect(),
            None => self.order().to_vec(),
        };
        let mut moved: Vec<StepId> = self.solved.moved.iter().map(|m| StepId(m.step)).collect();
        moved.sort_by_key(|s| order.iter().position(|o| o == s));
        let place = |s: StepId| order.iter().position(|o| *o == s);
        let behind = |s: StepId| place(s).and_then(|p| p.checked_sub(1)).map(|p| order[p]);
        let (item_moves, unwritable) = match crate::item_moves::item_moves(self, &moved) {
            Ok(moves) => (moves, Vec::new()),
            Err(homeless) => (Vec::new(), homeless),
        };
        Ok(Arranged {
            item_moves,
            unwritable,
            moved: moved.iter().map(|s| (*s, behind(*s))).collect(),
            fewest: self.solved.fewest,
            order,
        })
    }

    /// When each thing that must be reached can be reached, in the order meant.
    pub fn windows(&self) -> Vec<ReachRow> {
        let mut rows = Vec::new();
        for (id, thing) in self.plan.things() {
            let in_question = !thing.ways.is_empty() || !thing.blockers.is_empty();
            let of_use = match thing.sort {
                Sort::Point | Sort::Fasteners => true,
                Sort::Part | Sort::Unit | Sort::Item => {
                    !thing.must.is_empty() || !self.worked_on(id).is_empty()
                }
                _ => false,
            };
            if in_question && of_use {
                rows.push(ReachRow {
                    thing: id,
                    used: self.reaching(id),
                    windows: self.windows_of(id),
                });
            }
        }
        rows
    }

    /// When one thing can be reached by some way, in the order meant.
    pub fn windows_of(&self, thing: ThingId) -> Vec<Window> {
        let around = Around {
            plan: self.plan,
            index: &self.index,
            lives: &self.lives,
        };
        let end = self.plan.steps.len() + 1;
        let ways: Vec<Vec<Blocked>> = reach_ways(&around, thing, &[], true)
            .iter()
            .map(|way| {
                way.atoms
                    .iter()
                    .filter(|a| !self.of_a_position(a))
                    .flat_map(|a| self.blocked(a, end))
                    .collect()
            })
            .collect();
        let last = self.plan.steps.len().saturating_sub(1);
        windows(&self.solved.order, &ways)
            .into_iter()
            .filter(|w| w.from <= last)
            .map(|w| Window {
                from: w.from,
                until: w.to.min(last),
                opened_by: w.opener.map(StepId),
                closed_by: w.closer.map(StepId),
            })
            .collect()
    }

    /// Whether an atom asks for the place of a position. That can be turned to at any time, so it
    /// opens and closes no way in.
    fn of_a_position(&self, atom: &Atom) -> bool {
        matches!(atom.what, What::Chain(chain, _) if self.lives.chain(chain).aspect == Aspect::Place)
    }

    /// The moments at which an atom does not hold.
    fn blocked(&self, atom: &Atom, end: usize) -> Vec<Blocked> {
        let place = |step: u32| self.solved.at[step as usize] as usize;
        let (chain, test) = match atom.what {
            What::Chain(chain, test) => (chain, test),
            What::Done(step, true) => {
                return vec![Blocked {
                    from: 0,
                    until: place(step) + 1,
                    by: step,
                }];
            }
            What::Done(step, false) => {
                return vec![Blocked {
                    from: place(step) + 1,
                    until: end,
                    by: step,
                }];
            }
            What::Never => {
                return vec![Blocked {
                    from: 0,
                    until: end,
                    by: 0,
                }];
            }
        };
        let acts = &self.lives.chain(chain).acts;
        let mut found = Vec::new();
        let (mut from, mut by) = (0, 0);
        for stretch in self.lives.chain(chain).stretches(test) {
            let open = stretch.open.map(|a| acts[a as usize].step);
            found.push(Blocked {
                from,
                until: open.map_or(0, |s| place(s) + 1),
                by: open.unwrap_or(by),
            });
            match stretch.close.map(|a| acts[a as usize].step) {
                Some(step) => (from, by) = (place(step) + 1, step),
                None => return found,
            }
        }
        found.push(Blocked {
            from,
            until: end,
            by,
        });
        found
    }

    /// The steps that need to reach a thing.
    fn reaching(&self, thing: ThingId) -> Vec<StepId> {
        let mut steps: Vec<StepId> = self
            .demands
            .iter()
            .filter(|d| d.thing == thing && d.why == Why::Reach)
            .map(|d| StepId(d.step))
            .collect();
        steps.sort_by_key(|s| self.solved.at[s.0 as usize]);
        steps.dedup();
        steps
    }

    /// The steps that work at a thing, fitting and taking off left out.
    fn worked_on(&self, thing: ThingId) -> Vec<StepId> {
        let works = |s: &StepId| {
            !matches!(
                self.plan.step(*s).verb,
                Verb::Fit | Verb::DryFit | Verb::Remove | Verb::Undo
            )
        };
        let mut steps = self.reaching(thing);
        steps.retain(works);
        steps
    }

    /// For each step that closes the last way to something: what will be shut in, and whether
    /// its work is done by then.
    pub fn last_chances(&self) -> Vec<LastChance> {
        let mut found = Vec::new();
        for row in self.windows() {
            let Some(last) = row.windows.last() else {
                continue;
            };
            let Some(step) = last.closed_by else { continue };
            let closes = self.solved.at[step.0 as usize];
            let before = |s: &StepId| self.solved.at[s.0 as usize] < closes;
            let (done_by, missed_by): (Vec<_>, Vec<_>) = row
                .used
                .iter()
                .copied()
                .filter(|s| *s != step)
                .partition(before);
            let fitted_only = done_by
                .iter()
                .all(|s| matches!(self.plan.step(*s).verb, Verb::Fit | Verb::Remove));
            let part = matches!(
                self.plan.thing(row.thing).sort,
                Sort::Part | Sort::Unit | Sort::Item
            );
            if part
                && fitted_only
                && missed_by.is_empty()
                && self.plan.thing(row.thing).must.is_empty()
            {
                continue;
            }
            found.push(LastChance {
                step,
                thing: row.thing,
                done_by,
                missed_by,
            });
        }
        self.owed_by_rule(&mut found);
        found.sort_by_key(|l| (self.solved.at[l.step.0 as usize], l.thing));
        found
    }

    /// What a standing rule wants done before a step: from that step on it is too late, whether
    /// or not anything is shut in.
    fn owed_by_rule(&self, found: &mut Vec<LastChance>) {
        for (n, demand) in self.demands.iter().enumerate() {
            if !matches!(demand.why, Why::MustBefore(_)) {
                continue;
            }
            let step = StepId(demand.step);
            if found
                .iter()
                .any(|l| l.step == step && l.thing == demand.thing)
            {
                continue;
            }
            let mut works: Vec<StepId> = demand
                .ways
                .iter()
                .filter(|w| !w.elsewhere)
                .flat_map(|w| &w.atoms)
                .filter_map(|a| match a.what {
                    What::Chain(chain, test) => Some((chain, test)),
                    _ => None,
                })
                .flat_map(|(chain, test)| {
                    let acts = &self.lives.chain(chain).acts;
                    acts.iter().filter(move |a| test.passes(a.value))
                })
                .map(|a| StepId(a.step))
                .collect();
            works.sort_by_key(|s| self.solved.at[s.0 as usize]);
            works.dedup();
            let closes = self.solved.at[step.0 as usize];
            let before = |s: &StepId| self.solved.at[s.0 as usize] < closes;
            let (done_by, mut missed_by): (Vec<_>, Vec<_>) =
                works.into_iter().filter(|s| *s != step).partition(before);
            // Where the rule is kept as it stands, what is done at it later is missed by nobody;
            // and where it is kept without any work, this step takes no chance away.
            if !self.solved.failed.contains(&(n as u32)) {
                if done_by.is_empty() {
                    continue;
                }
                missed_by.clear();
            }
            found.push(LastChance {
                step,
                thing: demand.thing,
                done_by,
                missed_by,
            });
        }
    }

    /// The shortest chain of reasons that puts `a` before `b`.
    pub fn why(&self, a: StepId, b: StepId) -> Option<Vec<Link>> {
        let problem = self.problem();
        let place = |s: StepId| self.solved.at[s.0 as usize];
        let step = |p: u32| StepId(self.solved.order[p as usize]);
        let chain = order::chain(&problem.instance, place(a), place(b))?;
        Some(
            chain
                .into_iter()
                .map(|(from, why, to)| {
                    let (says, at) = say::reason(self, &problem.sources[why.0 as usize]);
                    Link {
                        before: step(from),
                        after: step(to),
                        says,
                        place: at,
                    }
                })
                .collect(),
        )
    }

    /// How many valid orders there are, and between which places each step can stand.
    pub fn freedom(&self) -> Freedom {
        let problem = self.problem();
        let orders = match order::count_orders(&problem.instance, MOST_SETS) {
            Count::Exact(n) => Some(n.to_string()),
            _ => None,
        };
        let by_place = order::places(&problem.instance, Effort::default());
        let places = self
            .solved
            .at
            .iter()
            .filter_map(|p| by_place.get(*p as usize))
            .map(|p| (p.earliest, p.latest, p.exact))
            .collect();
        Freedom {
            orders,
            bound: MOST_SETS,
            places,
        }
    }
}
