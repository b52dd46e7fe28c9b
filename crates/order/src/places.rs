//! The earliest and the latest place of a step over all valid orders.
//!
//! Earliest: withhold the step and peel from the last place. What comes off is
//! the largest set U that can stand behind it, and since the sets that can be off
//! form an antimatroid there is an order with exactly U behind it. One peel, exact,
//! alternatives included.
//!
//! Latest: as few steps as can be must come off before it. Without alternatives
//! those are the steps that must follow it. With alternatives they are a least
//! set that holds, with each step, everything that an arc puts behind it and all
//! later steps of one way of each of its waits, and that can come off in some
//! order (steps must not open ways for each other in a circle). Finding it is
//! NP-hard (hitting set), so it is a branch and bound over choices of ways; the
//! set forced by the ways chosen so far is the bound.
//!
//! In the mixed class both ends are hard. What is given are bounds that are
//! right but may be wide: peels from both ends with mixed waits relaxed.

use crate::bits::Bits;
use crate::effort::{Budget, Effort};
use crate::feasible::{Feasibility, feasible};
use crate::instance::{Instance, StepId};
use crate::peel::{End, Overlay, peel};

/// The first and last place that a step can have, counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// No valid order has it before this place.
    pub earliest: usize,
    /// No valid order has it behind this place.
    pub latest: usize,
    /// Some valid orders have it at these very places.
    pub exact: bool,
}

/// The places of all steps; empty if no order is valid. As [`place_of`] for
/// each, with `effort` shared among those with alternatives.
pub fn places(inst: &Instance, effort: Effort) -> Vec<Place> {
    if matches!(feasible(inst, effort), Feasibility::Stuck(_)) {
        return Vec::new();
    }
    let n = inst.steps() as u64;
    let mut budget = Budget::new(effort);
    (0..inst.steps() as u32)
        .map(|step| {
            let share = Effort {
                nodes: (budget.rest().nodes / (n - u64::from(step))).max(1),
            };
            let mut own = Budget::new(share);
            let place = place(inst, step, &mut own);
            budget.used(share, &own);
            place
        })
        .collect()
}

/// The places of one step, in an instance that has a valid order; linear in the
/// size of the instance but for the search that alternatives need.
///
/// # Panics
/// If `step` is not the number of a step.
pub fn place_of(inst: &Instance, step: StepId, effort: Effort) -> Place {
    place(inst, step, &mut Budget::new(effort))
}

fn place(inst: &Instance, step: StepId, budget: &mut Budget) -> Place {
    let n = inst.steps();
    let over = Overlay {
        withheld: Some(step),
        ..Overlay::default()
    };
    let earliest = n - peel(inst, End::Last, over).len();
    let (fewest, proven) = Search::new(inst, step).fewest(budget);
    let latest = n - fewest;
    if !inst.is_mixed() {
        return Place {
            earliest,
            latest,
            exact: proven,
        };
    }
    let before = peel(inst, End::First, over).len();
    Place {
        earliest,
        latest: latest.min(before + 1),
        exact: false,
    }
}

/// A search for the fewest steps that must come off before one can.
struct Search<'a> {
    inst: &'a Instance,
    goal: StepId,
}

/// A set under construction.
#[derive(Clone)]
struct Node {
    /// The steps that are to come off, the goal among them.
    set: Bits,
    size: usize,
    /// Waits whose way is chosen.
    decided: Vec<u32>,
}

impl<'a> Search<'a> {
    fn new(inst: &'a Instance, goal: StepId) -> Self {
        Self { inst, goal }
    }

    /// The least number of steps other than the goal, and whether that is proved.
    fn fewest(&self, budget: &mut Budget) -> (usize, bool) {
        let mut root = Node {
            set: Bits::new(self.inst.steps()),
            size: 0,
            decided: Vec::new(),
        };
        self.grow(&mut root, &[self.goal]);
        let floor = root.size;
        let mut best = usize::MAX;
        let mut stack = vec![root];
        while let Some(node) = stack.pop() {
            if node.size >= best {
                continue;
            }
            if !budget.spend(self.inst.steps()) {
                let open = stack.iter().map(|n| n.size).chain([node.size]);
                let bound = open.fold(best, usize::min).max(floor);
                return (bound - 1, false);
            }
            match self.undecided(&node) {
                None => best = node.size,
                Some(None) => {}
                Some(Some(wait)) => {
                    let mut children: Vec<Node> = self
                        .inst
                        .ways(wait)
                        .map(|way| {
                            let mut child = node.clone();
                            child.decided.push(way);
                            self.grow(&mut child, self.inst.later.row(way));
                            child
                        })
                        .collect();
                    children.sort_by_key(|child| std::cmp::Reverse(child.size));
                    stack.extend(children);
                }
            }
        }
        match best {
            usize::MAX => (0, false),
            best => (best - 1, true),
        }
    }

    /// Adds steps and all that arcs put behind them.
    fn grow(&self, node: &mut Node, steps: &[StepId]) {
        let mut todo: Vec<StepId> = steps.to_vec();
        while let Some(s) = todo.pop() {
            if node.set.add(s) {
                node.size += 1;
                todo.extend(self.inst.succ.row(s));
            }
        }
    }

    /// `None` if all of the set can come off by itself. Otherwise a wait of a
    /// step that cannot and whose way is open; none if there is no such wait.
    fn undecided(&self, node: &Node) -> Option<Option<u32>> {
        let off = self.taken(node);
        let mut candidate = None;
        if off.has(self.goal) {
            return None;
        }
        for step in node.set.iter().filter(|&s| !off.has(s)) {
            for &wait in self.inst.waits_of.row(step) {
                let ways = self.inst.ways(wait);
                let decided = node.decided.iter().any(|way| ways.contains(way));
                let met = ways.clone().any(|way| self.all_in(way, &off));
                if decided || met {
                    continue;
                }
                // A wait no way of which the set holds has to be decided in any
                // case; one that only goes round in a circle can wait.
                if !ways.into_iter().any(|way| self.all_in(way, &node.set)) {
                    return Some(Some(wait));
                }
                candidate = candidate.or(Some(wait));
            }
        }
        Some(candidate)
    }

    fn all_in(&self, way: u32, set: &Bits) -> bool {
        self.inst.later.row(way).iter().all(|&b| set.has(b))
    }

    /// What comes off if only steps of the set may.
    fn taken(&self, node: &Node) -> Bits {
        let inst = self.inst;
        let mut off = Bits::new(inst.steps());
        let can = |s: StepId, off: &Bits| {
            inst.succ.row(s).iter().all(|&b| off.has(b))
                && inst
                    .waits_of
                    .row(s)
                    .iter()
                    .all(|&wait| inst.ways(wait).any(|way| self.all_in(way, off)))
        };
        let mut todo: Vec<StepId> = node.set.iter().collect();
        while let Some(s) = todo.pop() {
            if off.has(s) || !node.set.has(s) || !can(s, &off) {
                continue;
            }
            off.add(s);
            todo.extend(inst.pred.row(s));
            let ways = inst.later_of.row(s).iter();
            todo.extend(ways.map(|&way| inst.wait_step[inst.way_wait[way as usize] as usize]));
        }
        off
    }
}
