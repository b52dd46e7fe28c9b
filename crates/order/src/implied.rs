//! Arcs that the others already imply.
//!
//! In a graph without cycles an arc a → b is implied exactly if some path of two
//! or more arcs leads from a to b, and all implied arcs can be left out at once
//! (A. Aho, M. Garey, J. Ullman, SIAM Journal on Computing 1(2), 1972, 131-137).
//! Of arcs that say the same, all but the first are implied.
//!
//! An arc between neighbouring levels (steps on a longest chain up to a step) is
//! never implied. For the others the ends are taken in blocks of 256 along a
//! topological order: one sweep back from the block, as far as the earliest start
//! of an arc in question, gives for each step which ends of the block it reaches.
//! Time is O(sum over blocks of what lies in its sweep), at worst n · m / 256;
//! memory is O(n + m); no closure is held.

use crate::effort::Effort;
use crate::graph::topological;
use crate::instance::{Instance, Reason, StepId};

const BLOCK: usize = 256;
type Ends = [u64; BLOCK / 64];

/// Arcs that the others imply.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Implied {
    /// The arcs, in the order of [`Instance::arcs`].
    pub arcs: Vec<(StepId, StepId, Reason)>,
    /// Whether these are all. Every arc listed is implied in any case.
    pub complete: bool,
}

/// Reasons that the plain arcs of an instance could do without: each stands for
/// arcs only, not for a wait with alternatives, and all its arcs are implied by
/// those that remain. Rising. Empty if the arcs close on themselves.
///
/// Spends about a second at most; on graphs of several hundred thousand steps
/// with very long arcs it may leave some out (see [`implied_arcs`]).
pub fn implied(inst: &Instance) -> Vec<Reason> {
    let spare = spare(inst, WORK).0;
    let mut needed: Vec<Reason> = Vec::new();
    let mut out: Vec<Reason> = Vec::new();
    for (arc, &spare) in spare.iter().enumerate() {
        let to = if spare { &mut out } else { &mut needed };
        to.push(inst.succ_why[arc]);
        to.extend(inst.also(arc));
    }
    needed.extend(inst.wait_why.iter().chain(&inst.later_why));
    needed.extend(&inst.earlier_why);
    needed.sort_unstable();
    needed.dedup();
    out.sort_unstable();
    out.dedup();
    out.retain(|why| needed.binary_search(why).is_err());
    out
}

/// Steps swept over by [`implied`] at most.
const WORK: u64 = 1 << 29;

/// The plain arcs that the others imply; for this question a node of `effort`
/// is a sweep over 4096 steps and arcs. Empty and complete if the arcs close on
/// themselves.
pub fn implied_arcs(inst: &Instance, effort: Effort) -> Implied {
    let (spare, complete) = spare(inst, effort.nodes.saturating_mul(4096));
    Implied {
        arcs: inst
            .arcs()
            .zip(spare)
            .filter_map(|(arc, spare)| spare.then_some(arc))
            .collect(),
        complete,
    }
}

/// For each arc whether it is implied, and whether all could be looked at.
fn spare(inst: &Instance, mut work: u64) -> (Vec<bool>, bool) {
    let mut out = vec![false; inst.arc_count()];
    let Some(order) = topological(inst) else {
        return (out, true);
    };
    let n = inst.steps();
    let mut place = vec![0u32; n];
    for (i, &s) in order.iter().enumerate() {
        place[s as usize] = i as u32;
    }
    let mut level = vec![0u32; n];
    for &a in &order {
        for &b in inst.succ.row(a) {
            level[b as usize] = level[b as usize].max(level[a as usize] + 1);
        }
    }
    // Arcs in question by the block of their end; repeated ones are settled.
    let mut asked: Vec<Vec<(u32, u32)>> = vec![Vec::new(); n.div_ceil(BLOCK)];
    let mut met = vec![u32::MAX; n];
    for a in 0..n as u32 {
        for arc in inst.succ.range(a) {
            let b = inst.succ.items()[arc];
            if met[b as usize] == a {
                out[arc] = true;
            } else if level[b as usize] > level[a as usize] + 1 {
                asked[place[b as usize] as usize / BLOCK].push((a, arc as u32));
            }
            met[b as usize] = a;
        }
    }
    // Cheap sweeps first, so that a bound leaves out the fewest arcs.
    let arcs_up_to: Vec<u64> = order
        .iter()
        .scan(0, |sum, &s| {
            *sum += 1 + u64::from(inst.succ.row_len(s));
            Some(*sum)
        })
        .collect();
    let mut sweeps: Vec<(u64, usize, usize)> = asked
        .iter()
        .enumerate()
        .filter_map(|(block, arcs)| {
            let first = arcs.iter().map(|a| place[a.0 as usize]).min()? as usize;
            let end = ((block + 1) * BLOCK).min(n);
            let price = arcs_up_to[end - 1] - first.checked_sub(1).map_or(0, |p| arcs_up_to[p]);
            Some((price, block, first))
        })
        .collect();
    sweeps.sort_unstable();
    let mut reach: Vec<Ends> = Vec::new();
    for &(price, block, first) in &sweeps {
        if price > work {
            return (out, false);
        }
        work -= price;
        let from = block * BLOCK;
        let end = (from + BLOCK).min(n);
        reach.clear();
        reach.resize(end - first, [0; BLOCK / 64]);
        for at in (first..end).rev() {
            let mut own: Ends = [0; BLOCK / 64];
            for &b in inst.succ.row(order[at]) {
                let p = place[b as usize] as usize;
                if p < end {
                    let other = &reach[p - first];
                    own.iter_mut().zip(other).for_each(|(x, y)| *x |= y);
                    if p >= from {
                        own[(p - from) / 64] |= 1 << ((p - from) % 64);
                    }
                }
            }
            reach[at - first] = own;
        }
        for &(a, arc) in &asked[block] {
            let bit = place[inst.succ.items()[arc as usize] as usize] as usize - from;
            out[arc as usize] = inst.succ.row(a).iter().any(|&c| {
                let p = place[c as usize] as usize;
                p < end && reach[p - first][bit / 64] >> (bit % 64) & 1 == 1
            });
        }
    }
    (out, true)
}
