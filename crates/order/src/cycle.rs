//! A shortest cycle of plain arcs.
//!
//! A breadth-first search from a step finds a shortest cycle through it, so one
//! search from each step finds a shortest of all, in O(n(n + m)); A. Itai and
//! M. Rodeh, SIAM Journal on Computing 7(4), 1978, 413-423. Two things keep it
//! far below that. A search never goes as deep as the best cycle known. And a
//! step whose search is done is taken out, with everything that then lies on no
//! cycle any more: all further cycles avoid it. So the number of searches is at
//! most the number of steps taken out until no cycle is left.

use crate::bits::Bits;
use crate::graph::strong_components;
use crate::instance::{Instance, Reason, StepId};

/// One link of a chain: a step, the reason why it comes before the next one,
/// and that next one.
pub type Link = (StepId, Reason, StepId);

/// Arcs looked at before a cycle is no longer claimed to be shortest; some
/// seconds of work, reached only by tangles of many thousand steps.
pub(crate) const ARCS_LOOKED_AT: u64 = 1 << 30;

pub(crate) struct Cycle {
    pub links: Vec<Link>,
    /// Places in `succ`.
    pub arcs: Vec<usize>,
    pub shortest: bool,
}

/// A shortest cycle, starting with its smallest step; `None` if there is none.
pub(crate) fn shortest_cycle(inst: &Instance, mut limit: u64) -> Option<Cycle> {
    let mut best: Option<Vec<usize>> = None;
    let mut shortest = true;
    let mut search = Search::new(inst);
    for component in strong_components(&inst.succ) {
        let alone = component.len() == 1 && !inst.succ.row(component[0]).contains(&component[0]);
        if alone {
            continue;
        }
        search.enter(&component);
        for &start in &component {
            if !search.alive.has(start) {
                continue;
            }
            let below = best.as_ref().map_or(usize::MAX, Vec::len);
            if below == 1 || (limit == 0 && best.is_some()) {
                shortest &= below == 1;
                break;
            }
            if let Some(found) = search.through(start, below, &mut limit) {
                best = Some(found);
            }
            search.take_out(start);
        }
    }
    let mut arcs = best?;
    let from = |arc: usize| search.source(arc);
    let first = (0..arcs.len()).min_by_key(|&i| from(arcs[i]))?;
    arcs.rotate_left(first);
    let link = |&arc: &usize| (from(arc), inst.succ_why[arc], inst.succ.items()[arc]);
    Some(Cycle {
        links: arcs.iter().map(link).collect(),
        arcs,
        shortest,
    })
}

struct Search<'a> {
    inst: &'a Instance,
    alive: Bits,
    ins: Vec<u32>,
    outs: Vec<u32>,
    /// The round in which a step was last reached, and the arc that reached it.
    round: Vec<u32>,
    by: Vec<u32>,
    now: u32,
}

impl<'a> Search<'a> {
    fn new(inst: &'a Instance) -> Self {
        let n = inst.steps();
        Self {
            inst,
            alive: Bits::new(n),
            ins: vec![0; n],
            outs: vec![0; n],
            round: vec![0; n],
            by: vec![0; n],
            now: 0,
        }
    }

    fn source(&self, arc: usize) -> StepId {
        let n = self.inst.steps() as u32;
        let (mut low, mut high) = (0, n);
        while high - low > 1 {
            let mid = (low + high) / 2;
            if self.inst.succ.range(mid).start <= arc {
                low = mid;
            } else {
                high = mid;
            }
        }
        low
    }

    fn enter(&mut self, component: &[StepId]) {
        for &s in component {
            self.alive.add(s);
        }
        for &s in component {
            let alive = |&&x: &&u32| self.alive.has(x);
            self.ins[s as usize] = self.inst.pred.row(s).iter().filter(alive).count() as u32;
            self.outs[s as usize] = self.inst.succ.row(s).iter().filter(alive).count() as u32;
        }
    }

    /// A shortest cycle through `start` of fewer than `below` arcs.
    fn through(&mut self, start: StepId, below: usize, limit: &mut u64) -> Option<Vec<usize>> {
        self.now += 1;
        let mut layer = vec![start];
        let mut length = 0;
        while !layer.is_empty() && length + 1 < below {
            length += 1;
            let mut next = Vec::new();
            for &a in &layer {
                *limit = limit.saturating_sub(1 + u64::from(self.inst.succ.row_len(a)));
                for arc in self.inst.succ.range(a) {
                    let b = self.inst.succ.items()[arc];
                    if b == start {
                        return Some(self.back(start, arc));
                    }
                    if self.alive.has(b) && self.round[b as usize] != self.now {
                        self.round[b as usize] = self.now;
                        self.by[b as usize] = arc as u32;
                        next.push(b);
                    }
                }
            }
            layer = next;
        }
        None
    }

    fn back(&self, start: StepId, last: usize) -> Vec<usize> {
        let mut out = vec![last];
        let mut at = self.source(last);
        while at != start {
            let arc = self.by[at as usize] as usize;
            out.push(arc);
            at = self.source(arc);
        }
        out.reverse();
        out
    }

    /// Takes a step out, and whatever then has nothing before or behind it.
    fn take_out(&mut self, step: StepId) {
        let mut out = vec![step];
        self.alive.remove(step);
        while let Some(s) = out.pop() {
            for &b in self.inst.succ.row(s) {
                if self.alive.has(b) {
                    self.ins[b as usize] -= 1;
                    if self.ins[b as usize] == 0 {
                        self.alive.remove(b);
                        out.push(b);
                    }
                }
            }
            for &a in self.inst.pred.row(s) {
                if self.alive.has(a) {
                    self.outs[a as usize] -= 1;
                    if self.outs[a as usize] == 0 {
                        self.alive.remove(a);
                        out.push(a);
                    }
                }
            }
        }
    }
}
