//! The fewest steps that must come off before one can, by branch and bound.
//!
//! A node is a set of steps that are to come off, closed under what arcs put
//! behind them, with the ways chosen so far. Its size is the bound: choosing more
//! ways only adds steps. It is finished when, with only its steps coming off,
//! the goal comes off. Exactness: a least set W comes off in some order, which
//! takes for each wait in it a first way that has opened. Following those ways
//! down the search the node's set stays within W, and at the end its steps come
//! off by those very ways; so the search ends with a set no larger than W.

use crate::bits::Bits;
use crate::effort::Budget;
use crate::instance::{Instance, StepId};

/// The least number of steps that must come off before `goal` in an instance
/// without mixed waits that has an order, or a lower bound on it; and whether it
/// is exact.
pub(super) fn fewest(inst: &Instance, goal: StepId, budget: &mut Budget) -> (usize, bool) {
    let search = Search { inst, goal };
    let mut root = Node {
        set: Bits::new(inst.steps()),
        size: 0,
        decided: Vec::new(),
    };
    search.grow(&mut root, &[goal]);
    let floor = root.size;
    let mut best = usize::MAX;
    let mut stack = vec![root];
    while let Some(node) = stack.pop() {
        if node.size >= best {
            continue;
        }
        let wait = match search.finish(&node) {
            Finish::Done => {
                best = node.size;
                continue;
            }
            Finish::Never => continue,
            Finish::Decide(wait) => wait,
        };
        if !budget.spend(inst.steps()) {
            let open = stack.iter().map(|n| n.size).chain([node.size]);
            let bound = open.fold(best, usize::min).max(floor);
            return (bound - 1, false);
        }
        let child = |way: u32| {
            let mut child = node.clone();
            child.decided.push(way);
            search.grow(&mut child, inst.later.row(way));
            child
        };
        let mut children: Vec<Node> = inst.ways(wait).map(child).collect();
        // The smallest is taken first, of equal ones the first way.
        children.reverse();
        children.sort_by_key(|child| std::cmp::Reverse(child.size));
        stack.extend(children);
    }
    if best == usize::MAX {
        // Only in an instance without any order.
        return (floor - 1, false);
    }
    (best - 1, true)
}

struct Search<'a> {
    inst: &'a Instance,
    goal: StepId,
}

#[derive(Clone)]
struct Node {
    /// The steps that are to come off, the goal among them.
    set: Bits,
    size: usize,
    /// Ways chosen.
    decided: Vec<u32>,
}

enum Finish {
    /// The goal comes off.
    Done,
    /// This wait has to be decided first.
    Decide(u32),
    /// It does not, and there is nothing left to decide.
    Never,
}

impl Search<'_> {
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

    fn finish(&self, node: &Node) -> Finish {
        let off = self.coming_off(node);
        if off.has(self.goal) {
            return Finish::Done;
        }
        let mut circular = None;
        for step in node.set.iter().filter(|&s| !off.has(s)) {
            for &wait in self.inst.waits_of.row(step) {
                let ways = self.inst.ways(wait);
                let open_in = |set: &Bits| ways.clone().any(|way| self.all_in(way, set));
                let decided = node.decided.iter().any(|way| ways.contains(way));
                if decided || open_in(&off) {
                    continue;
                }
                // A wait no way of which the set holds has to be decided in any
                // case; one that only goes round in a circle can wait.
                if !open_in(&node.set) {
                    return Finish::Decide(wait);
                }
                circular = circular.or(Some(wait));
            }
        }
        circular.map_or(Finish::Never, Finish::Decide)
    }

    fn all_in(&self, way: u32, set: &Bits) -> bool {
        self.inst.later.row(way).iter().all(|&b| set.has(b))
    }

    fn can_come_off(&self, step: StepId, off: &Bits) -> bool {
        let waits = self.inst.waits_of.row(step);
        self.inst.succ.row(step).iter().all(|&b| off.has(b))
            && waits
                .iter()
                .all(|&wait| self.inst.ways(wait).any(|way| self.all_in(way, off)))
    }

    /// What comes off if only steps of the set may.
    fn coming_off(&self, node: &Node) -> Bits {
        let inst = self.inst;
        let mut off = Bits::new(inst.steps());
        let mut todo: Vec<StepId> = node.set.iter().collect();
        while let Some(s) = todo.pop() {
            if !off.has(s) && node.set.has(s) && self.can_come_off(s, &off) {
                off.add(s);
                todo.extend(inst.pred.row(s));
                let ways = inst.later_of.row(s).iter();
                todo.extend(ways.map(|&w| inst.wait_step[inst.way_wait[w as usize] as usize]));
            }
        }
        off
    }
}
