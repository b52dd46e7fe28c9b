//! The conflict order of a stretch: pairs that the arcs put one way round,
//! through any number of arcs, and that are written the other way round.
//!
//! Only *uppers* (steps that must precede something written before them) and
//! *lowers* (steps that must follow something written after them) take part,
//! and every step on a path from an upper to its lower is one or the other. So
//! the closure is formed over those alone, never over the whole stretch. Where
//! even that would not fit, each upper's row is found by a search that goes no
//! further than such steps.

use super::stretch::Stretch;
use crate::pairs::{Pairs, Table};
use crate::rows::Rows;

/// What may be held at most.
#[derive(Clone, Copy)]
pub(super) struct Limits {
    /// Bits of a closure; beyond, conflicts are held as lists.
    pub bits: u64,
    /// Conflicts in lists; beyond, they are not held at all.
    pub pairs: usize,
    /// Conflicts among steps that tie, up to which the tie is settled by degree.
    pub tied: usize,
    /// Conflicts up to which a cheapest set is computed.
    pub flow: usize,
}

/// Some 256 MB each.
pub(super) const LIMITS: Limits = Limits {
    bits: 1 << 31,
    pairs: 1 << 26,
    tied: 1 << 22,
    flow: 1 << 22,
};

pub(super) struct Conflicts {
    /// Steps of the stretch, rising.
    pub uppers: Vec<u32>,
    pub lowers: Vec<u32>,
    /// Uppers with lowers, both by place.
    pub pairs: Pairs,
}

impl Conflicts {
    /// The conflicts; `None` if there are too many to hold.
    pub fn new(stretch: Stretch<'_>, topo: &[u32], limits: Limits) -> Option<Self> {
        let n = stretch.len() as u32;
        // The first written step that each must precede, and the last written
        // one that it must follow.
        let mut first: Vec<u32> = (0..n).collect();
        for &v in topo.iter().rev() {
            for w in stretch.succ(v) {
                first[v as usize] = first[v as usize].min(first[w as usize]);
            }
        }
        let mut last: Vec<u32> = (0..n).collect();
        for &v in topo {
            for w in stretch.pred(v) {
                last[v as usize] = last[v as usize].max(last[w as usize]);
            }
        }
        let uppers: Vec<u32> = (0..n).filter(|&v| first[v as usize] < v).collect();
        let lowers: Vec<u32> = (0..n).filter(|&v| last[v as usize] > v).collect();
        let takes_part = |v: u32| first[v as usize] < v || last[v as usize] > v;
        let members = topo.iter().filter(|&&v| takes_part(v)).count();
        let table = if members as u64 * lowers.len() as u64 <= limits.bits {
            closure(stretch, topo, &uppers, &lowers, members, takes_part)
        } else {
            lists(stretch, &uppers, &lowers, &first, limits.pairs)?
        };
        let pairs = Pairs {
            rows: uppers.len(),
            columns: lowers.len(),
            table,
        };
        Some(Self {
            uppers,
            lowers,
            pairs,
        })
    }
}

fn closure(
    stretch: Stretch<'_>,
    topo: &[u32],
    uppers: &[u32],
    lowers: &[u32],
    members: usize,
    takes_part: impl Fn(u32) -> bool,
) -> Table {
    const NONE: u32 = u32::MAX;
    let words = lowers.len().div_ceil(64);
    let mut column = vec![NONE; stretch.len()];
    for (i, &v) in lowers.iter().enumerate() {
        column[v as usize] = i as u32;
    }
    let mut row_of = vec![NONE; stretch.len()];
    let mut reach = vec![0u64; members * words];
    let backwards = topo.iter().rev().filter(|&&v| takes_part(v));
    for (rows, &v) in backwards.enumerate() {
        let (done, rest) = reach.split_at_mut(rows * words);
        let own = &mut rest[..words];
        for w in stretch.succ(v) {
            let c = column[w as usize];
            if c != NONE {
                own[c as usize / 64] |= 1 << (c % 64);
            }
            let r = row_of[w as usize];
            if r != NONE {
                let other = &done[r as usize * words..][..words];
                own.iter_mut().zip(other).for_each(|(x, y)| *x |= y);
            }
        }
        row_of[v as usize] = rows as u32;
    }
    let mut bits = Vec::with_capacity(uppers.len() * words);
    for &v in uppers {
        let row = &reach[row_of[v as usize] as usize * words..][..words];
        // Only lowers written before the upper are in conflict with it.
        let before = lowers.partition_point(|&w| w < v);
        bits.extend(row.iter().enumerate().map(|(i, &x)| {
            let keep = before.saturating_sub(i * 64).min(64);
            if keep == 64 { x } else { x & ((1 << keep) - 1) }
        }));
    }
    Table::Bits { words, bits }
}

fn lists(
    stretch: Stretch<'_>,
    uppers: &[u32],
    lowers: &[u32],
    first: &[u32],
    most: usize,
) -> Option<Table> {
    let mut start = vec![0u32];
    let mut item: Vec<u32> = Vec::new();
    let mut round = vec![0u32; stretch.len()];
    let mut todo = Vec::new();
    for (i, &v) in uppers.iter().enumerate() {
        let now = i as u32 + 1;
        let from = item.len();
        todo.push(v);
        while let Some(x) = todo.pop() {
            for w in stretch.succ(x) {
                // Beyond a step from which nothing written before `v` can be
                // reached there is no conflict with it.
                if round[w as usize] != now && first[w as usize] < v {
                    round[w as usize] = now;
                    todo.push(w);
                    if w < v {
                        item.push(w);
                    }
                }
            }
        }
        if item.len() > most {
            return None;
        }
        item[from..].sort_unstable();
        for w in &mut item[from..] {
            *w = lowers.partition_point(|l| l < w) as u32;
        }
        start.push(item.len() as u32);
    }
    Some(Table::Lists(Rows::from_parts(start, item)))
}
