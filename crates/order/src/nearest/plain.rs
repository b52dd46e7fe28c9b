//! The nearest order under arcs alone.

use super::conflict::{Conflicts, LIMITS};
use super::cover::{Cover, cheapest, fewest};
use super::landing::land;
use super::stretch::{Graph, Stretch, spans};
use std::ops::Range;

/// What is paid for moving a step.
#[derive(Clone, Copy)]
pub(super) struct Costs<'a> {
    /// Its weight; 1 without weights.
    pub weight: Option<&'a [u32]>,
    /// By how many facts it is tied up; this only settles ties.
    pub degree: &'a [u32],
}

impl<'a> Costs<'a> {
    /// Those of a run of steps.
    pub fn of(&self, steps: &Range<u32>) -> Costs<'a> {
        let run = steps.start as usize..steps.end as usize;
        Costs {
            weight: self.weight.map(|w| &w[run.clone()]),
            degree: &self.degree[run],
        }
    }
}

/// A nearest order.
pub(super) struct Mended {
    pub order: Vec<u32>,
    /// Steps moved, rising.
    pub moved: Vec<u32>,
    pub cost: u64,
    /// No order costs less than this.
    pub bound: u64,
}

/// The order nearest to 0, 1, 2, ... that keeps every arc, at the least cost. `None` if the arcs close on
/// themselves.
pub(super) fn mend(graph: Graph<'_>, costs: Costs<'_>) -> Option<Mended> {
    let n = graph.succ.len();
    let mut out = Mended {
        order: (0..n as u32).collect(),
        moved: Vec::new(),
        cost: 0,
        bound: 0,
    };
    for span in spans(graph) {
        let stretch = Stretch::new(graph, span.clone());
        let topo = stretch.topological()?;
        let from = span.start;
        let weigh = |v: u32| {
            costs
                .weight
                .map_or(1, |w| u64::from(w[(v + from) as usize]))
        };
        let tie = |v: u32| 1 + u64::from(costs.degree[(v + from) as usize]);
        let cover = Conflicts::new(stretch, &topo, LIMITS)
            .and_then(|conflicts| match costs.weight {
                None => Some(fewest(&conflicts, tie, LIMITS)),
                Some(_) => cheapest(&conflicts, weigh, tie, LIMITS),
            })
            .unwrap_or_else(|| rough(stretch, &topo, weigh));
        let order = land(stretch, &topo, &cover.moved);
        for (slot, v) in out.order[from as usize..].iter_mut().zip(order) {
            *slot = v + from;
        }
        out.bound += cover.bound;
        out.cost += cover.moved.iter().map(|&v| weigh(v)).sum::<u64>();
        out.moved.extend(cover.moved.iter().map(|&v| v + from));
    }
    Some(out)
}

/// A set that meets every conflict where there are too many to hold: everything
/// is moved but a heaviest run of steps that already stand in a topological
/// order. The bound is that of the violated arcs alone, no two of which share a
/// step.
pub(super) fn rough(stretch: Stretch<'_>, topo: &[u32], weigh: impl Fn(u32) -> u64) -> Cover {
    let n = stretch.len();
    // A heaviest rising subsequence of the topological order, by a tree of
    // running maxima over written places.
    let mut best = vec![(0u64, u32::MAX); n + 1];
    let mut back = vec![u32::MAX; n];
    for &v in topo {
        let mut at = v as usize;
        let mut top = (0, u32::MAX);
        while at > 0 {
            if best[at].0 > top.0 {
                top = best[at];
            }
            at &= at - 1;
        }
        back[v as usize] = top.1;
        let here = (top.0 + weigh(v), v);
        let mut at = v as usize + 1;
        while at <= n {
            if here.0 > best[at].0 {
                best[at] = here;
            }
            at += at & at.wrapping_neg();
        }
    }
    let mut kept = vec![false; n];
    let mut at = best.iter().max_by_key(|b| b.0).map_or(u32::MAX, |b| b.1);
    while at != u32::MAX {
        kept[at as usize] = true;
        at = back[at as usize];
    }
    let mut used = vec![false; n];
    let mut bound = 0;
    for a in 0..n as u32 {
        if let Some(b) = stretch
            .succ(a)
            .find(|&b| b < a && !used[a as usize] && !used[b as usize])
        {
            used[a as usize] = true;
            used[b as usize] = true;
            bound += weigh(a).min(weigh(b));
        }
    }
    Cover {
        moved: (0..n as u32).filter(|&v| !kept[v as usize]).collect(),
        bound,
    }
}
