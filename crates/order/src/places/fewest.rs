//! The fewest steps that must come off before one can, by branch and bound.
//!
//! A node is a set of steps that are to come off, each with all that is forced to
//! come off before it, and the ways chosen so far. Its size is the bound: choosing more
//! ways only adds steps. It is finished when, with only its steps coming off,
//! the goal comes off. Exactness: a least set W comes off in some order, which
//! takes for each wait in it a first way that has opened. Following those ways
//! down the search the node's set stays within W, and at the end its steps come
//! off by those very ways; so the search ends with a set no larger than W.

use super::forced::Forced;
use crate::bits::Bits;
use crate::effort::Budget;
use crate::instance::{Instance, StepId};

/// The least number of steps that must come off before `goal` in an instance
/// without mixed waits that has an order, or a lower bound on it; and whether it
/// is exact. Of `forced`, seen from the last step, the more is known the better.
pub(super) fn fewest(
    inst: &Instance,
    forced: Option<&Forced>,
    goal: StepId,
    budget: &mut Budget,
) -> (usize, bool) {
    let search = Search { inst, forced, goal };
    let root = Node {
        set: Bits::new(inst.steps()),
        size: 0,
        bound: 0,
        decided: Vec::new(),
    };
    let root = search.grown(&root, &[goal]);
    let floor = root.size;
    let mut best = usize::MAX;
    let mut stack = vec![root];
    while let Some(node) = stack.pop() {
        if node.bound >= best {
            continue;
        }
        let (bound, mut children) = match search.finish(&node) {
            Finish::Done => {
                best = best.min(node.size);
                continue;
            }
            Finish::Never => continue,
            Finish::Decide { bound, children } => (bound, children),
        };
        if !budget.spend(inst.steps()) {
            let open = stack.iter().map(|n| n.bound).chain([bound]);
            let bound = open.fold(best, usize::min).max(floor);
            return (bound - 1, false);
        }
        for child in &mut children {
            child.bound = child.bound.max(bound);
        }
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
    forced: Option<&'a Forced>,
    goal: StepId,
}

#[derive(Clone)]
struct Node {
    /// The steps that are to come off, the goal among them.
    set: Bits,
    size: usize,
    /// No finished set that comes of this one is smaller.
    bound: usize,
    /// Ways chosen.
    decided: Vec<u32>,
}

enum Finish {
    /// The goal comes off.
    Done,
    /// Some wait has to be decided: a node for each of its ways, and a bound on
    /// all of them.
    Decide { bound: usize, children: Vec<Node> },
    /// It does not, and there is nothing left to decide.
    Never,
}

impl Search<'_> {
    /// A node with further steps and all that is forced with them.
    fn grown(&self, node: &Node, steps: &[StepId]) -> Node {
        let mut out = node.clone();
        let mut todo: Vec<StepId> = steps.to_vec();
        while let Some(s) = todo.pop() {
            if out.set.has(s) {
                continue;
            }
            match self.forced {
                Some(forced) => out.size += out.set.join(forced.row(s)),
                None => {
                    out.set.add(s);
                    out.size += 1;
                    todo.extend(self.inst.succ.row(s));
                }
            }
        }
        out.bound = out.bound.max(out.size);
        out
    }

    fn children(&self, node: &Node, wait: u32) -> Vec<Node> {
        let child = |way: u32| {
            let mut child = self.grown(node, self.inst.later.row(way));
            child.decided.push(way);
            child
        };
        self.inst.ways(wait).map(child).collect()
    }

    /// Of the waits that hold the goal up, the one whose best way adds the most
    /// steps is to be decided; that raises the bound soonest.
    fn finish(&self, node: &Node) -> Finish {
        let off = self.coming_off(node);
        if off.has(self.goal) {
            return Finish::Done;
        }
        let mut waits: Vec<(usize, Vec<Node>)> = Vec::new();
        let mut circular = None;
        for step in node.set.iter().filter(|&s| !off.has(s)) {
            for &wait in self.inst.waits_of.row(step) {
                let ways = self.inst.ways(wait);
                let open_in = |set: &Bits| ways.clone().any(|way| self.all_in(way, set));
                let decided = node.decided.iter().any(|way| ways.contains(way));
                if decided || open_in(&off) {
                    continue;
                }
                // A wait some way of which the set holds goes round in a circle.
                if open_in(&node.set) {
                    circular = circular.or(Some(wait));
                    continue;
                }
                let children = self.children(node, wait);
                let least = children.iter().map(|child| child.size).min();
                waits.push((least.unwrap_or(node.size) - node.size, children));
            }
        }
        waits.sort_by_key(|wait| std::cmp::Reverse(wait.0));
        let bound = node.bound.max(node.size + packed(node, &waits));
        match (waits.into_iter().next(), circular) {
            (Some((_, children)), _) => Finish::Decide { bound, children },
            (None, Some(wait)) => Finish::Decide {
                bound,
                children: self.children(node, wait),
            },
            (None, None) => Finish::Never,
        }
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

/// A bound on what is still to be added: waits no two of which have a way that
/// adds a common step cost the sum of their best ways.
fn packed(node: &Node, waits: &[(usize, Vec<Node>)]) -> usize {
    let mut used = node.set.clone();
    let mut sum = 0;
    for (least, children) in waits {
        let apart = |child: &Node| child.set.common(&used) == node.size;
        if children.iter().all(apart) {
            sum += least;
            for child in children {
                used.join(child.set.words());
            }
        }
    }
    sum
}
