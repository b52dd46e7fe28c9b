//! The dynamic program, layer by layer, from the end of the order.

use super::assignment::Dual;
use super::costs::{Costs, NONE};
use super::visits::Visits;
use crate::effort::Budget;
use crate::instance::{Instance, StepId};
use crate::sets::{Rules, Set, SetMap};
use num_bigint::BigUint;

/// What was found with layers of one width.
pub(crate) struct Pass {
    /// An order that costs less than the limit.
    pub order: Option<Vec<StepId>>,
    /// The least that what was left out for want of room could have come to.
    pub dropped: Option<u128>,
}

enum Rest {
    Tools(Visits),
    Steps(Dual),
}

/// States that count as one node.
const STATES_PER_NODE: u32 = 16;

pub(crate) struct Layers<'a, S> {
    inst: &'a Instance,
    costs: &'a Costs,
    rules: Rules<S>,
    rest: Rest,
    /// Whether what goes on with the tool in hand is taken at once.
    at_once: bool,
}

struct State<S> {
    off: S,
    held: u32,
    paid: u128,
    /// Steps put before one that is written before them.
    swaps: u64,
    /// What the numbers of the dual come to for what is left.
    dual: i128,
    /// At least so much in all.
    least: u128,
    parent: u32,
    step: StepId,
}

impl<'a, S: Set> Layers<'a, S> {
    pub fn new(inst: &'a Instance, costs: &'a Costs, at_once: bool) -> Self {
        Self {
            inst,
            costs,
            rules: Rules::new(inst),
            rest: match costs.as_tools() {
                Some((tools, tool)) => Rest::Tools(Visits::new(inst, tools, tool)),
                None => Rest::Steps(Dual::new(inst, costs)),
            },
            at_once: at_once && !inst.is_mixed(),
        }
    }

    fn start(&self) -> State<S> {
        let dual = match &self.rest {
            Rest::Tools(_) => 0,
            Rest::Steps(dual) => dual.before.iter().chain(&dual.behind).sum(),
        };
        State {
            off: S::empty(self.inst.steps().div_ceil(64)),
            held: NONE,
            paid: 0,
            swaps: 0,
            dual,
            least: 0,
            parent: 0,
            step: 0,
        }
    }

    /// The steps that can be taken next, or as many as need be looked at.
    fn next(&self, state: &State<S>) -> Vec<StepId> {
        let steps = 0..self.inst.steps() as u32;
        let free: Vec<_> = steps
            .rev()
            .filter(|&s| self.rules.can_go(&state.off, s))
            .collect();
        if self.at_once && self.costs.as_tools().is_some() {
            let goes_on = |&&s: &&u32| self.costs.hold(s, state.held) == state.held;
            if let Some(&s) = free.iter().find(goes_on) {
                return vec![s];
            }
        }
        free
    }

    fn with(&self, state: &State<S>, parent: usize, step: StepId) -> State<S> {
        let off = state.off.with(step);
        let held = self.costs.hold(step, state.held);
        let paid = state.paid + u128::from(self.costs.cost(step, state.held));
        let (dual, rest) = match &self.rest {
            Rest::Tools(visits) => {
                let steps = self.inst.steps();
                let goes_on = |s: u32| self.costs.hold(s, held) == held;
                let mut ones = (0..steps as u32).filter(|&s| goes_on(s));
                let free = held == NONE || ones.any(|s| self.rules.can_go(&off, s));
                (0, visits.changes(off.words(), steps, free).into())
            }
            Rest::Steps(numbers) => {
                // The step now has its place behind it; only that before it is open.
                let behind = match state.held {
                    NONE => self.inst.steps(),
                    held => held as usize,
                };
                let dual = state.dual - numbers.before[step as usize] - numbers.behind[behind];
                (dual, u128::try_from(dual).unwrap_or(0))
            }
        };
        State {
            swaps: state.swaps + self.written_behind(&state.off, step),
            least: (paid + rest).max(state.least),
            parent: parent as u32,
            off,
            held,
            paid,
            dual,
            step,
        }
    }

    /// How many of those that are left are written behind the step, though they
    /// will come before it.
    fn written_behind(&self, off: &S, step: StepId) -> u64 {
        let n = self.inst.steps() as u32;
        let left = off.words().iter().enumerate().map(|(i, word)| {
            let from = i as u32 * 64;
            let mut left = !word;
            if step >= from + 63 {
                return 0;
            }
            if step >= from {
                left &= u64::MAX << (step - from + 1);
            }
            if n < from + 64 {
                left &= (1u64 << (n - from)) - 1;
            }
            u64::from(left.count_ones())
        });
        left.sum()
    }

    /// One pass; `None` if the budget is spent.
    pub fn pass(&self, width: usize, limit: u128, budget: &mut Budget) -> Option<Pass> {
        let mut layer = vec![self.start()];
        let mut history: Vec<Vec<(u32, StepId)>> = Vec::new();
        let (mut dropped, mut looked_at) = (None, 0u32);
        for _ in 0..self.inst.steps() {
            let mut at: SetMap<(S, u32), u32> = SetMap::default();
            let mut next: Vec<State<S>> = Vec::new();
            for (parent, state) in layer.iter().enumerate() {
                looked_at += 1;
                if looked_at == STATES_PER_NODE {
                    looked_at = 0;
                    if !budget.spend(self.inst.steps()) {
                        return None;
                    }
                }
                for step in self.next(state) {
                    let new = self.with(state, parent, step);
                    if new.least >= limit {
                        continue;
                    }
                    let place = at.entry((new.off.clone(), new.held));
                    let place = *place.or_insert(next.len() as u32) as usize;
                    if place == next.len() {
                        next.push(new);
                    } else if (new.paid, new.swaps) < (next[place].paid, next[place].swaps) {
                        next[place] = new;
                    }
                }
            }
            if next.len() > width {
                next.sort_by_key(|s| (s.least, s.paid, s.swaps, s.parent, s.step));
                let least = next[width].least;
                dropped = Some(dropped.map_or(least, |d: u128| d.min(least)));
                next.truncate(width);
            }
            history.push(next.iter().map(|s| (s.parent, s.step)).collect());
            layer = next;
        }
        let ends = layer.iter().enumerate();
        let best = ends.min_by_key(|(i, s)| (s.paid, s.swaps, *i));
        let order = best.map(|(end, _)| {
            let mut at = end;
            let mut order = Vec::with_capacity(history.len());
            for layer in history.iter().rev() {
                let (parent, step) = layer[at];
                order.push(step);
                at = parent as usize;
            }
            order
        });
        Some(Pass { order, dropped })
    }

    /// How many orders cost as much as this, the least cost.
    pub fn count(&self, least: u128, budget: &mut Budget) -> Option<BigUint> {
        let mut layer = vec![(self.start(), BigUint::from(1u32))];
        let mut looked_at = 0u32;
        for _ in 0..self.inst.steps() {
            let mut at: SetMap<(S, u32), u32> = SetMap::default();
            let mut next: Vec<(State<S>, BigUint)> = Vec::new();
            for (state, number) in &layer {
                looked_at += 1;
                if looked_at == STATES_PER_NODE {
                    looked_at = 0;
                    if !budget.spend(self.inst.steps()) {
                        return None;
                    }
                }
                for step in self.next(state) {
                    let new = self.with(state, 0, step);
                    if new.least > least {
                        continue;
                    }
                    let place = at.entry((new.off.clone(), new.held));
                    let place = *place.or_insert(next.len() as u32) as usize;
                    match next.get_mut(place) {
                        None => next.push((new, number.clone())),
                        Some(old) if new.paid == old.0.paid => old.1 += number,
                        Some(old) if new.paid < old.0.paid => *old = (new, number.clone()),
                        Some(_) => (),
                    }
                }
            }
            layer = next;
        }
        Some(layer.into_iter().map(|(_, number)| number).sum())
    }
}
