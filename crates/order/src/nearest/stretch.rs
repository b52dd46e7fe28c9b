//! Independent stretches of the written order.
//!
//! An arc is *violated* if its end is written before its start. Cut the written
//! order wherever no violated arc crosses. A path of arcs from a later stretch
//! to an earlier one would cross a cut backwards, so there is none: every
//! conflict lies inside a stretch, and so does every path between its two ends.
//! The stretches can be mended one by one.

use crate::rows::Rows;
use std::ops::Range;

/// Arcs over steps numbered in written order.
#[derive(Clone, Copy)]
pub(super) struct Graph<'a> {
    pub succ: &'a Rows,
    pub pred: &'a Rows,
}

/// The steps `from..to`, renumbered from 0.
#[derive(Clone, Copy)]
pub(super) struct Stretch<'a> {
    graph: Graph<'a>,
    from: u32,
    to: u32,
}

/// Stretches that hold a violated arc, in written order.
pub(super) fn spans(graph: Graph<'_>) -> Vec<Range<u32>> {
    let n = graph.succ.len() as u32;
    // For each step the last one that it must stay together with.
    let mut last: Vec<u32> = (0..n).collect();
    for a in 0..n {
        for &b in graph.succ.row(a) {
            if b < a {
                last[b as usize] = last[b as usize].max(a);
            }
        }
    }
    let mut out = Vec::new();
    let mut at = 0;
    while at < n {
        let from = at;
        let mut end = last[at as usize];
        while at <= end {
            end = end.max(last[at as usize]);
            at += 1;
        }
        // A step that must precede itself is shown as a stretch too, so that
        // whoever sorts it topologically finds out.
        if at - from > 1 || graph.succ.row(from).contains(&from) {
            out.push(from..at);
        }
    }
    out
}

impl<'a> Stretch<'a> {
    pub fn new(graph: Graph<'a>, span: Range<u32>) -> Self {
        Self {
            graph,
            from: span.start,
            to: span.end,
        }
    }

    pub fn len(&self) -> usize {
        (self.to - self.from) as usize
    }

    fn inside(self, row: &'a [u32]) -> impl Iterator<Item = u32> + 'a {
        row.iter()
            .filter(move |&&x| self.from <= x && x < self.to)
            .map(move |&x| x - self.from)
    }

    pub fn succ(self, v: u32) -> impl Iterator<Item = u32> + 'a {
        self.inside(self.graph.succ.row(v + self.from))
    }

    pub fn pred(self, v: u32) -> impl Iterator<Item = u32> + 'a {
        self.inside(self.graph.pred.row(v + self.from))
    }

    /// Some topological order; `None` if the arcs close on themselves.
    pub fn topological(&self) -> Option<Vec<u32>> {
        let n = self.len();
        let mut need: Vec<u32> = (0..n as u32).map(|v| self.pred(v).count() as u32).collect();
        let mut out: Vec<u32> = (0..n as u32).filter(|&v| need[v as usize] == 0).collect();
        let mut at = 0;
        while let Some(&v) = out.get(at) {
            at += 1;
            for w in self.succ(v) {
                need[w as usize] -= 1;
                if need[w as usize] == 0 {
                    out.push(w);
                }
            }
        }
        (out.len() == n).then_some(out)
    }
}
