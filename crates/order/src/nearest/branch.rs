//! The nearest order where steps have alternatives.
//!
//! The valid orders are then a union over choices of ways, and the fewest moves
//! are NP-hard to find (they contain hitting set). Branch and bound: with some
//! ways chosen, the arcs alone give a nearest order, and its cost is a bound for
//! every completion, because a further way only adds arcs. If that order happens
//! to keep every wait it is the best completion. If not, a wait that it breaks
//! is branched on, of a few the one that raises the bound most, and its cheapest
//! way first, of equal ones the one that the written order keeps. A node whose
//! peel sticks, or whose bound is no better than the best order known, is given
//! up.
//!
//! Before that comes a dive: all waits that break are given a way at once, again
//! and again, the one that the written order keeps, and if that leads nowhere
//! the one that a known order keeps. It often ends with an order that costs no
//! more than the bound at the root, and then there is nothing to search.

use super::plain::{Costs, Mended, mend};
use super::stretch::Graph;
use crate::effort::Budget;
use crate::instance::{Instance, StepId, places_in};
use crate::peel::{End, OPEN, Overlay, peel};
use crate::rows::Rows;
use crate::search::{ways_by_promise, ways_kept};
use std::collections::VecDeque;

/// What the search found.
pub(super) struct Found {
    /// The best order met.
    pub best: Option<Mended>,
    /// No order costs less than this.
    pub bound: u64,
    /// Nothing was left out: without a best order there is none.
    pub complete: bool,
}

/// Broken waits of a node that are looked into.
const PROBES: usize = 8;

/// A wait that is branched on, and the nodes below that are still to come.
struct Frame {
    wait: u32,
    children: VecDeque<Child>,
}

struct Child {
    way: u32,
    bound: u64,
    broken: Vec<u32>,
}

/// The nearest order of an instance. `known` is an order that may be valid,
/// `floor` a cost known to be a bound.
pub(super) fn branch(
    inst: &Instance,
    costs: Costs<'_>,
    known: &[StepId],
    floor: u64,
    budget: &mut Budget,
) -> Found {
    let mut search = Search {
        inst,
        costs,
        chosen: vec![OPEN; inst.open_waits() as usize],
        best: None,
        least: u64::MAX,
    };
    // The root is always looked at, whatever is left of the budget.
    let more = budget.spend(inst.steps());
    let Some((root, broken)) = search.look() else {
        return Found {
            best: None,
            bound: u64::MAX,
            complete: true,
        };
    };
    let bound = root.bound.max(floor);
    if broken.is_empty() {
        return Found {
            best: Some(root),
            bound,
            complete: true,
        };
    }
    if more {
        let promising = |wait: u32| ways_by_promise(inst, wait).first().copied();
        search.dive(&broken, promising, budget);
        if search.best.is_none() {
            let place = places_in(known, inst.steps());
            let kept = |wait: u32| inst.ways(wait).find(|&way| inst.way_holds(way, &place));
            search.dive(&broken, kept, budget);
        }
    }
    if search.best.is_none() && inst.allows(known) {
        search.chosen = ways_kept(inst, known);
        search.best = search.look().map(|(node, _)| node);
        search.chosen.fill(OPEN);
    }
    let (bound, complete) = search.go_through(bound, &broken, budget);
    let best = search.best;
    Found {
        bound: best.as_ref().map_or(bound, |b| bound.min(b.cost)),
        best,
        complete,
    }
}

struct Search<'a> {
    inst: &'a Instance,
    costs: Costs<'a>,
    chosen: Vec<u32>,
    best: Option<Mended>,
    /// No order that was looked at costs less than this.
    least: u64,
}

impl Search<'_> {
    fn cost(&self) -> u64 {
        self.best.as_ref().map_or(u64::MAX, |best| best.cost)
    }

    /// Decides all broken waits at once until none is broken any more.
    fn dive(&mut self, broken: &[u32], choose: impl Fn(u32) -> Option<u32>, budget: &mut Budget) {
        let mut broken = broken.to_vec();
        while budget.spend(self.inst.steps()) {
            for &wait in &broken {
                self.chosen[wait as usize] = choose(wait).unwrap_or(OPEN);
            }
            match self.look() {
                None => break,
                Some((node, rest)) if rest.is_empty() => {
                    self.best = Some(node);
                    break;
                }
                // Nothing more to choose, or nothing has come of it.
                Some((_, rest)) if rest == broken => break,
                Some((_, rest)) => broken = rest,
            }
        }
        self.chosen.fill(OPEN);
    }

    /// Depth first, from a root with this bound and these broken waits. Gives a
    /// bound on all orders and whether every one has been dealt with.
    fn go_through(&mut self, root: u64, broken: &[u32], budget: &mut Budget) -> (u64, bool) {
        let mut frames: Vec<Frame> = Vec::new();
        let mut node = Some((root, broken.to_vec()));
        loop {
            if let Some((bound, broken)) = node.take() {
                let Some(frame) = self.expand(bound, broken, budget) else {
                    let open = frames.iter().flat_map(|frame| &frame.children);
                    let bound = open.map(|child| child.bound).fold(bound, u64::min);
                    return (bound.min(self.least), false);
                };
                frames.push(frame);
            }
            // On to the next way that can still lead to something better.
            loop {
                let Some(frame) = frames.last_mut() else {
                    return (self.least.min(self.cost()).max(root), true);
                };
                if let Some(child) = frame.children.pop_front() {
                    if child.bound < self.best.as_ref().map_or(u64::MAX, |best| best.cost) {
                        self.chosen[frame.wait as usize] = child.way;
                        node = Some((child.bound, child.broken));
                        break;
                    }
                    continue;
                }
                self.chosen[frame.wait as usize] = OPEN;
                frames.pop();
            }
        }
    }

    /// Looks at every way of a few broken waits and settles on the wait whose best way
    /// costs most; it raises the bound soonest. `None` when the budget runs out.
    fn expand(&mut self, bound: u64, mut broken: Vec<u32>, budget: &mut Budget) -> Option<Frame> {
        broken.sort_by_key(|&wait| self.inst.ways(wait).len());
        broken.truncate(PROBES);
        let mut settled: Option<(u64, Frame)> = None;
        for wait in broken {
            let mut children = Vec::new();
            for way in ways_by_promise(self.inst, wait) {
                if !budget.spend(self.inst.steps()) {
                    self.chosen[wait as usize] = OPEN;
                    return None;
                }
                self.chosen[wait as usize] = way;
                let Some((found, broken)) = self.look() else {
                    continue;
                };
                let bound = found.bound.max(bound);
                if !broken.is_empty() {
                    children.push(Child { way, bound, broken });
                } else if bound < self.cost() {
                    self.least = self.least.min(bound);
                    if found.cost < self.cost() {
                        self.best = Some(found);
                    }
                }
            }
            self.chosen[wait as usize] = OPEN;
            let cost = self.cost();
            children.retain(|child| child.bound < cost);
            children.sort_by_key(|child| child.bound);
            let least = children.first().map_or(u64::MAX, |child| child.bound);
            if settled.as_ref().is_none_or(|s| least > s.0) {
                let children = children.into();
                settled = Some((least, Frame { wait, children }));
            }
            if least > bound {
                break;
            }
        }
        settled.map(|(_, frame)| frame)
    }

    /// The nearest order under the arcs and the chosen ways, and the waits
    /// without a chosen way that it breaks; `None` if no completion exists.
    fn look(&self) -> Option<(Mended, Vec<u32>)> {
        let inst = self.inst;
        if inst.open_waits() == 0 {
            let graph = Graph {
                succ: &inst.succ,
                pred: &inst.pred,
            };
            return Some((mend(graph, self.costs)?, Vec::new()));
        }
        let over = Overlay {
            chosen: &self.chosen,
            ..Overlay::default()
        };
        if peel(inst, End::Last, over).len() < inst.steps()
            || (inst.is_mixed() && peel(inst, End::First, over).len() < inst.steps())
        {
            return None;
        }
        let mended = mend_with(inst, &self.chosen, self.costs)?;
        let place = places_in(&mended.order, inst.steps());
        let broken = (0..inst.open_waits()).filter(|&wait| {
            self.chosen[wait as usize] == OPEN
                && !inst.ways(wait).any(|way| inst.way_holds(way, &place))
        });
        let broken = broken.collect();
        Some((mended, broken))
    }
}

/// The nearest order under the arcs and the chosen ways.
fn mend_with(inst: &Instance, chosen: &[u32], costs: Costs<'_>) -> Option<Mended> {
    let decided = (0..inst.open_waits()).filter(|&wait| chosen[wait as usize] != OPEN);
    let added = decided.flat_map(|wait| {
        let step = inst.wait_step[wait as usize];
        let way = chosen[wait as usize];
        let later = inst.later.row(way).iter().map(move |&b| (step, b));
        later.chain(inst.earlier.row(way).iter().map(move |&a| (a, step)))
    });
    let succ = Rows::from_pairs(inst.steps(), inst.succ.pairs().chain(added), |_| ());
    let turned = succ.pairs().map(|(a, b)| (b, a));
    let pred = Rows::from_pairs(inst.steps(), turned, |_| ());
    let graph = Graph {
        succ: &succ,
        pred: &pred,
    };
    mend(graph, costs)
}
