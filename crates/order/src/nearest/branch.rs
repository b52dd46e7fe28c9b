//! The nearest order where steps have alternatives.
//!
//! The valid orders are then a union over choices of ways, and the fewest moves
//! are NP-hard to find (they contain hitting set). Branch and bound: with some
//! ways chosen, the arcs alone give a nearest order and its cost is a bound for
//! every completion, because a further way only adds arcs. If that order happens
//! to keep every wait it is the best completion. If not, a wait that it breaks
//! is branched on, the way that the written order already keeps first. A node
//! whose peel sticks, or whose bound is no better than the best order known, is
//! given up.

use super::plain::{Costs, Mended, mend};
use super::stretch::Graph;
use crate::effort::Budget;
use crate::instance::{Instance, StepId, places_in};
use crate::peel::{End, OPEN, Overlay, peel};
use crate::rows::Rows;
use crate::search::{ways_by_promise, ways_kept};

struct Frame {
    wait: u32,
    ways: Vec<u32>,
    next: usize,
    bound: u64,
}

/// The nearest order of an instance of which one valid order is known.
pub(super) fn branch(
    inst: &Instance,
    costs: Costs<'_>,
    known: &[StepId],
    budget: &mut Budget,
) -> Option<Mended> {
    let mut best: Option<Mended> = None;
    let mut chosen = vec![OPEN; inst.open_waits() as usize];
    let mut frames: Vec<Frame> = Vec::new();
    // No completion that was looked at or left out can cost less than this.
    let mut least = u64::MAX;
    loop {
        let above = frames.last().map_or(0, |f| f.bound);
        if !budget.spend(inst.steps()) {
            let open = frames.iter().filter(|f| f.next < f.ways.len());
            least = open.map(|f| f.bound).chain([above]).fold(least, u64::min);
            break;
        }
        if let Some((node, broken)) = look(inst, costs, &chosen)
            && best.as_ref().is_none_or(|b| node.bound < b.cost)
        {
            match broken {
                Some(wait) => {
                    let ways = ways_by_promise(inst, wait);
                    chosen[wait as usize] = ways[0];
                    frames.push(Frame {
                        wait,
                        ways,
                        next: 1,
                        bound: node.bound,
                    });
                    continue;
                }
                None => {
                    least = least.min(node.bound);
                    if best.as_ref().is_none_or(|b| node.cost < b.cost) {
                        best = Some(node);
                    }
                }
            }
        }
        // On to the next way that can still lead to something better.
        while let Some(frame) = frames.last_mut() {
            let hopeless = best.as_ref().is_some_and(|b| b.cost <= frame.bound);
            if !hopeless && frame.next < frame.ways.len() {
                chosen[frame.wait as usize] = frame.ways[frame.next];
                frame.next += 1;
                break;
            }
            chosen[frame.wait as usize] = OPEN;
            frames.pop();
        }
        if frames.is_empty() {
            break;
        }
    }
    let mut out = match best {
        Some(best) => best,
        None => {
            let ways = ways_kept(inst, known);
            let (node, _) = look(inst, costs, &ways)?;
            node
        }
    };
    out.bound = least.min(out.cost);
    Some(out)
}

/// The nearest order under the arcs and the chosen ways, with a wait that it
/// breaks; `None` if no completion exists.
fn look(inst: &Instance, costs: Costs<'_>, chosen: &[u32]) -> Option<(Mended, Option<u32>)> {
    let over = Overlay {
        chosen,
        ..Overlay::default()
    };
    if peel(inst, End::Last, over).len() < inst.steps() {
        return None;
    }
    if inst.is_mixed() && peel(inst, End::First, over).len() < inst.steps() {
        return None;
    }
    let open = (0..inst.open_waits()).filter(|&wait| chosen[wait as usize] != OPEN);
    let added = open.flat_map(|wait| {
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
    let mended = mend(graph, costs)?;
    let place = places_in(&mended.order, inst.steps());
    let broken = (0..inst.open_waits()).filter(|&wait| {
        chosen[wait as usize] == OPEN && !inst.ways(wait).any(|way| inst.way_holds(way, &place))
    });
    let wait = broken.min_by_key(|&wait| inst.ways(wait).len());
    Some((mended, wait))
}
