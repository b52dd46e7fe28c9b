//! Plain graph questions, asked about the arcs alone: waits with alternatives
//! play no part in what is public here.

use crate::bits::Bits;
use crate::instance::{Instance, StepId};
use crate::matching::largest;
use crate::pairs::{Pairs, Table};
use crate::rows::Rows;

/// A topological order of the arcs, always the smallest free step next; `None`
/// if they close on themselves. O((n + m) log₆₄ n).
pub fn topological(inst: &Instance) -> Option<Vec<StepId>> {
    let n = inst.steps();
    let mirrored = |s: u32| n as u32 - 1 - s;
    let mut need: Vec<u32> = (0..n as u32).map(|s| inst.pred.row_len(s)).collect();
    let mut queue = crate::bits::LargestFirst::new(n);
    for s in 0..n as u32 {
        if need[s as usize] == 0 {
            queue.add(mirrored(s));
        }
    }
    let mut out = Vec::with_capacity(n);
    while let Some(s) = queue.take().map(mirrored) {
        out.push(s);
        for &b in inst.succ.row(s) {
            need[b as usize] -= 1;
            if need[b as usize] == 0 {
                queue.add(mirrored(b));
            }
        }
    }
    (out.len() == n).then_some(out)
}

/// The strongly connected components of the arcs, each rising, in an order in
/// which arcs between components only go forward. O(n + m).
pub fn components(inst: &Instance) -> Vec<Vec<StepId>> {
    strong_components(&inst.succ)
}

/// Tarjan's algorithm with its own stack, so that a chain of a million steps
/// does not end the process. R. Tarjan, SIAM Journal on Computing 1(2), 1972.
pub(crate) fn strong_components(succ: &Rows) -> Vec<Vec<StepId>> {
    const NEW: u32 = u32::MAX;
    let n = succ.len();
    let mut number = vec![NEW; n];
    let mut low = vec![0u32; n];
    let mut on_path = Bits::new(n);
    let (mut path, mut calls) = (Vec::new(), Vec::<(u32, u32)>::new());
    let mut next = 0u32;
    let mut out = Vec::new();
    for root in 0..n as u32 {
        if number[root as usize] != NEW {
            continue;
        }
        calls.push((root, 0));
        while let Some(&mut (v, ref mut at)) = calls.last_mut() {
            if *at == 0 {
                number[v as usize] = next;
                low[v as usize] = next;
                next += 1;
                path.push(v);
                on_path.add(v);
            }
            if let Some(&w) = succ.row(v).get(*at as usize) {
                *at += 1;
                if number[w as usize] == NEW {
                    calls.push((w, 0));
                } else if on_path.has(w) {
                    low[v as usize] = low[v as usize].min(number[w as usize]);
                }
                continue;
            }
            calls.pop();
            if let Some(&(parent, _)) = calls.last() {
                low[parent as usize] = low[parent as usize].min(low[v as usize]);
            }
            if low[v as usize] == number[v as usize] {
                let mut component = Vec::new();
                while let Some(w) = path.pop() {
                    on_path.remove(w);
                    component.push(w);
                    if w == v {
                        break;
                    }
                }
                component.sort_unstable();
                out.push(component);
            }
        }
    }
    out.reverse();
    out
}

/// Which steps the arcs put behind which, through any number of arcs.
#[derive(Clone, Debug)]
pub struct Closure {
    words: usize,
    bits: Vec<u64>,
}

impl Closure {
    /// The transitive closure; `None` if the arcs close on themselves.
    /// O(n · m / 64) time and n² / 8 bytes: for a thousand steps, not a million.
    pub fn new(inst: &Instance) -> Option<Self> {
        let order = topological(inst)?;
        let words = inst.steps().div_ceil(64);
        let mut bits = vec![0u64; words * inst.steps()];
        for &a in order.iter().rev() {
            for &b in inst.succ.row(a) {
                let (a, b) = (a as usize, b as usize);
                bits[a * words + b / 64] |= 1 << (b % 64);
                // The rows are disjoint: an acyclic graph has no self arc.
                for k in 0..words {
                    bits[a * words + k] |= bits[b * words + k];
                }
            }
        }
        Some(Self { words, bits })
    }

    /// Whether `a` must come before `b`.
    pub fn before(&self, a: StepId, b: StepId) -> bool {
        self.row(a)[b as usize / 64] >> (b % 64) & 1 == 1
    }

    /// The steps that must come behind `a`, rising.
    pub fn behind(&self, a: StepId) -> impl Iterator<Item = StepId> + '_ {
        crate::bits::ones(self.row(a))
    }

    /// How many pairs are ordered.
    pub fn pairs(&self) -> usize {
        self.bits.iter().map(|w| w.count_ones() as usize).sum()
    }

    pub(crate) fn row(&self, a: StepId) -> &[u64] {
        &self.bits[a as usize * self.words..][..self.words]
    }
}

/// Ordered pairs as a share of all pairs, from 0 (no order at all) to 1 (one
/// order only); `None` if the arcs close on themselves or there are fewer than
/// two steps. A. Scholl (1993) calls it order strength.
pub fn order_strength(inst: &Instance) -> Option<f64> {
    let n = inst.steps();
    if n < 2 {
        return None;
    }
    let pairs = Closure::new(inst)?.pairs();
    Some(pairs as f64 / (n * (n - 1) / 2) as f64)
}

/// Steps on a longest chain of arcs; `None` if they close on themselves.
/// O(n + m).
pub fn longest_chain(inst: &Instance) -> Option<usize> {
    heaviest_chain(inst, &vec![1; inst.steps()]).map(|x| x as usize)
}

/// The largest sum of weights along a chain of arcs; `None` if they close on
/// themselves. O(n + m).
///
/// # Panics
/// If there is not one weight for each step.
pub fn heaviest_chain(inst: &Instance, weight: &[u64]) -> Option<u64> {
    assert_eq!(weight.len(), inst.steps());
    let mut to = weight.to_vec();
    for a in topological(inst)? {
        for &b in inst.succ.row(a) {
            to[b as usize] = to[b as usize].max(to[a as usize] + weight[b as usize]);
        }
    }
    Some(to.into_iter().max().unwrap_or(0))
}

/// The most steps no two of which the arcs order: how many could be worked on
/// side by side. `None` if the arcs close on themselves. By a matching on the
/// closure (R. Dilworth, Annals of Mathematics 51, 1950), so for thousands of
/// steps, not a million.
pub fn width(inst: &Instance) -> Option<usize> {
    let closure = Closure::new(inst)?;
    let pairs = Pairs {
        rows: inst.steps(),
        columns: inst.steps(),
        table: Table::Bits {
            words: closure.words,
            bits: closure.bits,
        },
    };
    Some(inst.steps() - largest(&pairs).size())
}

/// Groups of steps that no fact connects with one another, waits included, each
/// rising. O(size of the instance).
pub(crate) fn unconnected(inst: &Instance) -> Vec<Vec<StepId>> {
    let mut seen = Bits::new(inst.steps());
    let mut out = Vec::new();
    for start in 0..inst.steps() as u32 {
        if !seen.has(start) {
            out.push(connected_to(inst, start, &mut seen));
        }
    }
    out
}

/// The steps that facts connect with one, rising; adds them to `seen`.
pub(crate) fn connected_to(inst: &Instance, start: StepId, seen: &mut Bits) -> Vec<StepId> {
    seen.add(start);
    let mut out = vec![start];
    let mut at = 0;
    while let Some(&s) = out.get(at) {
        at += 1;
        let mut meet = |other: StepId| {
            if seen.add(other) {
                out.push(other);
            }
        };
        let own = inst.waits_of.row(s).iter().flat_map(|&w| inst.ways(w));
        let named_in = inst.later_of.row(s).iter().chain(inst.earlier_of.row(s));
        for way in own.chain(named_in.copied()) {
            meet(inst.wait_step[inst.way_wait[way as usize] as usize]);
            inst.later.row(way).iter().for_each(|&x| meet(x));
            inst.earlier.row(way).iter().for_each(|&x| meet(x));
        }
        inst.succ.row(s).iter().for_each(|&x| meet(x));
        inst.pred.row(s).iter().for_each(|&x| meet(x));
    }
    out.sort_unstable();
    out
}

/// How many steps lie behind each, given the rows and an order along them.
/// Blocks of 256 ends are swept at a time: O(n · m / 256) time, O(n) memory.
pub(crate) fn numbers_behind(succ: &Rows, order: &[StepId]) -> Vec<u32> {
    const WORDS: usize = 4;
    let n = order.len();
    let mut out = vec![0u32; n];
    let mut reach = vec![[0u64; WORDS]; n];
    for (first, block) in order.chunks(64 * WORDS).enumerate() {
        let from = first * 64 * WORDS;
        let end = from + block.len();
        reach.fill([0; WORDS]);
        for (i, &s) in block.iter().enumerate() {
            reach[s as usize][i / 64] |= 1 << (i % 64);
        }
        for &s in order[..end].iter().rev() {
            let mut own = reach[s as usize];
            for &b in succ.row(s) {
                let other = reach[b as usize];
                own.iter_mut().zip(other).for_each(|(x, y)| *x |= y);
            }
            reach[s as usize] = own;
            out[s as usize] += own.iter().map(|w| w.count_ones()).sum::<u32>();
        }
    }
    // Each has been counted behind itself.
    out.iter_mut().for_each(|x| *x -= 1);
    out
}
