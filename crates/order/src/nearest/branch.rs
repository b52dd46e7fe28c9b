//! The nearest order where steps have alternatives.
//!
//! The valid orders are then a union over choices of ways, and the fewest moves
//! are NP-hard to find (they contain hitting set). Branch and bound: with some
//! ways chosen, the arcs alone give a nearest order, and its cost is a bound for
//! every completion, because a further way only adds arcs. If that order happens
//! to keep every wait it is the best completion. If not, a wait that it breaks
//! is branched on, the way that the written order already keeps first. A node
//! whose peel sticks, or whose bound is no better than the best order known, is
//! given up.
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

/// What the search found.
pub(super) struct Found {
    /// The best order met.
    pub best: Option<Mended>,
    /// No order costs less than this.
    pub bound: u64,
    /// Nothing was left out: without a best order there is none.
    pub complete: bool,
}

struct Frame {
    wait: u32,
    ways: Vec<u32>,
    next: usize,
    bound: u64,
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
        // No order that was looked at or given up can cost less than this.
        let mut least = u64::MAX;
        let mut frames: Vec<Frame> = Vec::new();
        let mut node = Some((root, self.first_of(broken)));
        loop {
            if let Some((bound, wait)) = node {
                frames.push(Frame {
                    wait,
                    ways: ways_by_promise(self.inst, wait),
                    next: 0,
                    bound,
                });
            }
            // On to the next way that can still lead to something better.
            loop {
                let Some(frame) = frames.last_mut() else {
                    return (least.min(self.cost()).max(root), true);
                };
                let hopeful = self.best.as_ref().is_none_or(|b| frame.bound < b.cost);
                if hopeful && frame.next < frame.ways.len() {
                    self.chosen[frame.wait as usize] = frame.ways[frame.next];
                    frame.next += 1;
                    break;
                }
                self.chosen[frame.wait as usize] = OPEN;
                frames.pop();
            }
            let above = frames.last().map_or(root, |frame| frame.bound);
            if !budget.spend(self.inst.steps()) {
                let open = frames.iter().filter(|f| f.next < f.ways.len());
                let bound = open.map(|f| f.bound).fold(least.min(above), u64::min);
                return (bound, false);
            }
            node = None;
            if let Some((found, broken)) = self.look() {
                let bound = found.bound.max(above);
                if bound >= self.cost() {
                    continue;
                }
                if !broken.is_empty() {
                    node = Some((bound, self.first_of(&broken)));
                    continue;
                }
                least = least.min(bound);
                if found.cost < self.cost() {
                    self.best = Some(found);
                }
            }
        }
    }

    /// Of broken waits the one with the fewest ways.
    fn first_of(&self, broken: &[u32]) -> u32 {
        let ways = |wait: &&u32| self.inst.ways(**wait).len();
        broken.iter().min_by_key(ways).copied().unwrap_or(0)
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
