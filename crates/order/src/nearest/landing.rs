//! Where moved steps land.
//!
//! The kept steps stand in their written order with gaps before, between and
//! behind them, numbered from 0. A moved step was written in some gap; it may
//! land in any gap behind its last kept predecessor and before its first kept
//! successor, and not in one before that of a moved step that must precede it.
//! Given what is kept, the sum of kept steps crossed by moved ones is as small
//! as can be: an isotonic regression with absolute values on a partial order.
//! It is solved exactly by halving the range of gaps; which half each step
//! belongs to is a minimum cut (D. Hochbaum and M. Queyranne, SIAM Journal on
//! Discrete Mathematics 16(2), 2003). Windows need no care in the cuts: both
//! their ends are monotone along the order, so cutting a monotone solution back
//! to the windows keeps it monotone and makes no distance larger.
//!
//! Inside a gap moved steps stand in an order that the arcs allow, by written
//! place where they leave it open.
//!
//! What is *not* promised: the fewest swaps of neighbours, or the smallest sum of
//! displacements of all steps. Both are NP-hard (F. Brandenburg, A. Gleissner,
//! A. Hofmeier, Journal of Combinatorial Optimization 26, 2013, 310-332). And
//! among several cheapest sets of steps to move, the one taken is not chosen
//! for short ways.

use super::flow::{Network, UNBOUNDED};
use super::stretch::Stretch;

/// The new order of a stretch.
pub(super) fn land(stretch: Stretch<'_>, topo: &[u32], moved: &[u32]) -> Vec<u32> {
    let n = stretch.len();
    const KEPT: u32 = u32::MAX;
    let mut number = vec![KEPT; n];
    for (i, &m) in moved.iter().enumerate() {
        number[m as usize] = i as u32;
    }
    let is_kept = |v: u32| number[v as usize] == KEPT;
    // For each step the number of kept ones written before it.
    let mut before = Vec::with_capacity(n);
    let mut kept = Vec::with_capacity(n - moved.len());
    for v in 0..n as u32 {
        before.push(kept.len() as u32);
        if is_kept(v) {
            kept.push(v);
        }
    }
    let window = windows(stretch, topo, &before, kept.len() as u32, is_kept);
    let wanted: Vec<u32> = moved
        .iter()
        .map(|&m| {
            let (low, high) = window[m as usize];
            before[m as usize].clamp(low, high)
        })
        .collect();
    let mut arcs = Vec::new();
    for (i, &m) in moved.iter().enumerate() {
        let others = stretch.succ(m).filter(|&w| !is_kept(w));
        arcs.extend(others.map(|w| (i as u32, number[w as usize])));
    }
    let gap = closest_rising(&wanted, &arcs);

    let mut by_gap: Vec<u32> = (0..moved.len() as u32).collect();
    by_gap.sort_by_key(|&i| (gap[i as usize], moved[i as usize]));
    let mut out = Vec::with_capacity(n);
    let mut at = 0;
    for here in 0..=kept.len() {
        let from = at;
        while at < by_gap.len() && gap[by_gap[at] as usize] as usize == here {
            at += 1;
        }
        let group: Vec<u32> = by_gap[from..at]
            .iter()
            .map(|&i| moved[i as usize])
            .collect();
        in_order(stretch, group, &mut out);
        out.extend(kept.get(here));
    }
    out
}

/// For each step the first and the last gap that the kept steps leave it.
fn windows(
    stretch: Stretch<'_>,
    topo: &[u32],
    before: &[u32],
    kept: u32,
    is_kept: impl Fn(u32) -> bool,
) -> Vec<(u32, u32)> {
    let mut window = vec![(0, kept); before.len()];
    for &v in topo {
        for u in stretch.pred(v) {
            let low = if is_kept(u) {
                before[u as usize] + 1
            } else {
                window[u as usize].0
            };
            window[v as usize].0 = window[v as usize].0.max(low);
        }
    }
    for &v in topo.iter().rev() {
        for w in stretch.succ(v) {
            let high = if is_kept(w) {
                before[w as usize]
            } else {
                window[w as usize].1
            };
            window[v as usize].1 = window[v as usize].1.min(high);
        }
    }
    window
}

/// Adds a few steps that share a gap, each behind those that must precede it.
fn in_order(stretch: Stretch<'_>, mut group: Vec<u32>, out: &mut Vec<u32>) {
    if group.len() < 2 {
        out.extend(group);
        return;
    }
    group.sort_unstable();
    let at = |v: u32| group.binary_search(&v).ok();
    let mut need = vec![0u32; group.len()];
    for &v in &group {
        for w in stretch.succ(v).filter_map(at) {
            need[w] += 1;
        }
    }
    let mut free: std::collections::BTreeSet<usize> =
        (0..group.len()).filter(|&i| need[i] == 0).collect();
    while let Some(i) = free.pop_first() {
        out.push(group[i]);
        for w in stretch.succ(group[i]).filter_map(at) {
            need[w] -= 1;
            if need[w] == 0 {
                free.insert(w);
            }
        }
    }
}

/// Values that do not fall along any arc and whose summed distance from those
/// wanted is least; the smaller ones where that leaves a choice.
pub(super) fn closest_rising(wanted: &[u32], arcs: &[(u32, u32)]) -> Vec<u32> {
    let mut out = wanted.to_vec();
    let rising = |&(a, b): &(u32, u32)| wanted[a as usize] <= wanted[b as usize];
    if arcs.iter().all(rising) {
        return out;
    }
    let mut values = wanted.to_vec();
    values.sort_unstable();
    values.dedup();
    // Items with the arcs among them and the range of values left for them.
    let all: Vec<u32> = (0..wanted.len() as u32).collect();
    let mut todo = vec![(all, arcs.to_vec(), 0..values.len())];
    let mut here = vec![0u32; wanted.len()];
    while let Some((items, arcs, range)) = todo.pop() {
        if range.len() == 1 || items.is_empty() {
            for &i in &items {
                out[i as usize] = values[range.start];
            }
            continue;
        }
        let middle = (range.start + range.end) / 2;
        for (k, &i) in items.iter().enumerate() {
            here[i as usize] = k as u32;
        }
        // An item in the upper half although it wants the lower, or the other
        // way round, costs one unit of the step between the halves.
        let (source, sink) = (items.len() as u32, items.len() as u32 + 1);
        let mut network = Network::new(items.len() + 2);
        for (k, &i) in items.iter().enumerate() {
            if wanted[i as usize] >= values[middle] {
                network.arc(source, k as u32, 1);
            } else {
                network.arc(k as u32, sink, 1);
            }
        }
        for &(a, b) in &arcs {
            network.arc(here[a as usize], here[b as usize], UNBOUNDED);
        }
        network.saturate(source, sink);
        let side = network.source_side_smallest(source);
        let upper = |&i: &u32| side[here[i as usize] as usize];
        let (high, low): (Vec<u32>, Vec<u32>) = items.iter().partition(|i| upper(i));
        let (within_high, rest): (Vec<_>, Vec<_>) =
            arcs.into_iter().partition(|(a, b)| upper(a) && upper(b));
        let within_low = rest.into_iter().filter(|(a, b)| !upper(a) && !upper(b));
        todo.push((low, within_low.collect(), range.start..middle));
        todo.push((high, within_high, middle..range.end));
    }
    out
}
