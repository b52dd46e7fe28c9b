//! Why a set of steps is stuck: one cause for each, followed until it closes.
//!
//! Each step of a stuck set X has an arc to X or a wait all of whose ways name
//! a step of X. Choosing one such cause for a step, then for the steps it
//! names, and so on, ends in a subset of X that the chosen causes alone keep
//! stuck. That subset is usually far smaller than X.

use crate::bits::Bits;
use crate::instance::{Instance, Reason, StepId};
use crate::peel::{End, OPEN, Overlay};
use crate::rows::Rows;

/// One fact that keeps a step stuck.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Cause {
    /// A plain arc.
    Arc(StepId, StepId),
    /// One of the arcs laid over the instance.
    Extra,
    /// A wait, whose ways are shut by the `Named` that follow.
    Wait(u32),
    /// A way that names a step, in `later` or in `earlier`.
    Named {
        way: u32,
        other: StepId,
        later: bool,
    },
}

struct Tracer<'a> {
    inst: &'a Instance,
    over: Overlay<'a>,
    end: End,
    stuck: &'a Bits,
    seen: Bits,
    todo: Vec<StepId>,
    out: Vec<Cause>,
}

/// The causes met when following from `start`; `None` when they would be more
/// than `most`. `stuck` must be what a peel with the same overlay left.
pub(crate) fn follow(
    inst: &Instance,
    end: End,
    over: Overlay<'_>,
    stuck: &Bits,
    start: StepId,
    most: usize,
) -> Option<Vec<Cause>> {
    let mut tracer = Tracer {
        inst,
        over,
        end,
        stuck,
        seen: Bits::new(inst.steps()),
        todo: vec![start],
        out: Vec::new(),
    };
    tracer.seen.add(start);
    while let Some(step) = tracer.todo.pop() {
        tracer.cause_of(step);
        if tracer.out.len() > most {
            return None;
        }
    }
    Some(tracer.out)
}

impl Tracer<'_> {
    /// Of these, one that is stuck, best one that has been met already.
    fn stuck_one(&self, of: &[StepId]) -> Option<StepId> {
        let mut found = None;
        for &other in of {
            if self.stuck.has(other) {
                if self.seen.has(other) {
                    return Some(other);
                }
                found = found.or(Some(other));
            }
        }
        found
    }

    fn goes_to(&mut self, other: StepId) {
        if self.seen.add(other) {
            self.todo.push(other);
        }
    }

    fn near(&self) -> &Rows {
        match self.end {
            End::Last => &self.inst.later,
            End::First => &self.inst.earlier,
        }
    }

    fn cause_of(&mut self, step: StepId) {
        let inst = self.inst;
        let last = self.end == End::Last;
        let ahead = if last { &inst.succ } else { &inst.pred };
        if let Some(other) = self.stuck_one(ahead.row(step)) {
            self.out.push(if last {
                Cause::Arc(step, other)
            } else {
                Cause::Arc(other, step)
            });
            self.goes_to(other);
            return;
        }
        let over = self.over;
        for &wait in inst.waits_of.row(step) {
            if over.way_of(wait) == OPEN && self.shut(wait, inst.ways(wait)) {
                return;
            }
        }
        for &(a, b) in over.extra {
            let (waiting, other) = if last { (a, b) } else { (b, a) };
            if waiting == step && self.stuck.has(other) {
                self.out.push(Cause::Extra);
                self.goes_to(other);
                return;
            }
        }
        for &wait in inst.waits_of.row(step) {
            let way = over.way_of(wait);
            if way != OPEN && self.shut(wait, way..way + 1) {
                return;
            }
        }
        let far_of = if last {
            &inst.earlier_of
        } else {
            &inst.later_of
        };
        for &way in far_of.row(step) {
            let wait = inst.way_wait[way as usize];
            let waiter = inst.wait_step[wait as usize];
            if over.way_of(wait) == way && self.stuck.has(waiter) {
                self.out.push(Cause::Wait(wait));
                self.out.push(Cause::Named {
                    way,
                    other: step,
                    later: !last,
                });
                self.goes_to(waiter);
                return;
            }
        }
    }

    /// Notes the wait and a stuck step on each of these ways, if all have one.
    fn shut(&mut self, wait: u32, ways: std::ops::Range<u32>) -> bool {
        let mut named = Vec::new();
        for way in ways {
            match self.stuck_one(self.near().row(way)) {
                Some(other) => named.push((way, other)),
                None => return false,
            }
        }
        let later = self.end == End::Last;
        self.out.push(Cause::Wait(wait));
        for (way, other) in named {
            self.out.push(Cause::Named { way, other, later });
            self.goes_to(other);
        }
        true
    }
}

/// The waits on whose chosen way these causes rest, rising.
pub(crate) fn decisions(inst: &Instance, over: Overlay<'_>, causes: &[Cause]) -> Vec<u32> {
    let mut out: Vec<u32> = causes
        .iter()
        .filter_map(|cause| match *cause {
            Cause::Wait(wait) if over.way_of(wait) != OPEN => Some(wait),
            Cause::Named { way, .. } => {
                let wait = inst.way_wait[way as usize];
                (over.way_of(wait) != OPEN).then_some(wait)
            }
            _ => None,
        })
        .collect();
    out.sort_unstable();
    out.dedup();
    out
}

/// The reasons behind these causes, rising.
pub(crate) fn reasons(inst: &Instance, causes: &[Cause]) -> Vec<Reason> {
    let mut out = Vec::new();
    for cause in causes {
        match *cause {
            Cause::Arc(a, b) => {
                if let Some(arc) = inst.succ.range(a).find(|&at| inst.succ.items()[at] == b) {
                    out.push(inst.succ_why[arc]);
                    out.extend(inst.also(arc));
                }
            }
            Cause::Extra => {}
            Cause::Wait(wait) => out.push(inst.wait_why[wait as usize]),
            Cause::Named { way, other, later } => {
                let (rows, why) = if later {
                    (&inst.later, &inst.later_why)
                } else {
                    (&inst.earlier, &inst.earlier_why)
                };
                let at = rows.range(way).find(|&at| rows.items()[at] == other);
                out.extend(at.map(|at| why[at]));
            }
        }
    }
    out.sort_unstable();
    out.dedup();
    out
}
