//! The peel: taking steps off from one end of the order.
//!
//! # Why it is right
//!
//! Read the build backwards. A step may be *taken off* once every step that
//! an arc puts behind it is off, and, for each of its waits, the `later` steps
//! of at least one way are off. Nothing that has become free is ever shut
//! again, because both demands only ask for steps to *be* off. So two steps
//! that are free may be taken in either order, and any peel that goes on until
//! nothing is free takes the same largest set U (if a peel stopped short of
//! another, the first step that the other took next would be free in it too).
//!
//! * All steps taken: the reverse of the peel is a valid order. And every valid
//!   order, reversed, is a peel, so the search loses nothing.
//! * Some set X left: each step in X has an arc to a step in X, or a wait each
//!   of whose ways names a step in X. In any order take the last step of X: what
//!   it needs behind it is before it. So no order exists, and X is the largest
//!   set with that property, for the union of two such sets is one again.
//!
//! Each arc and each step named in a way is looked at once: the cost is linear
//! in the size of the instance. This is the algorithm for AND/OR precedence of
//! R. Möhring, M. Skutella, F. Stork, SIAM Journal on Computing 33(2), 2004,
//! 393-415, without the auxiliary jobs they introduce for ways with more than
//! one step. The sets that can be off form an antimatroid, which is what lets
//! the taker choose freely among free steps.
//!
//! # What it leaves out
//!
//! A way that also names `earlier` steps is treated as if it named only its
//! `later` ones, unless it has been chosen, when it counts as plain arcs. For
//! the mixed class the peel is therefore a relaxation: stuck means that there
//! is no order, but an order it gives still has to be tested. The same peel
//! runs from the other end with the roles of `later` and `earlier` exchanged.

mod careful;

use crate::bits::{Bits, LargestFirst};
use crate::instance::{Instance, StepId};
use crate::rows::Rows;

pub(crate) use careful::peel_careful;

/// No way chosen.
pub(crate) const OPEN: u32 = u32::MAX;

/// From which end steps are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum End {
    /// From the last step to the first, as in teardown.
    Last,
    /// From the first step to the last.
    First,
}

/// What is laid over an instance for one question.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Overlay<'a> {
    /// The way chosen for each open wait, or [`OPEN`]; empty if none is.
    pub chosen: &'a [u32],
    /// Further arcs; few.
    pub extra: &'a [(StepId, StepId)],
    /// A step that must not be taken.
    pub withheld: Option<StepId>,
}

impl Overlay<'_> {
    pub fn way_of(&self, wait: u32) -> u32 {
        self.chosen.get(wait as usize).copied().unwrap_or(OPEN)
    }
}

/// An instance seen from one end: `ahead` must be taken before, `near` are the
/// steps of a way that must be taken before, `far` those that must not be.
#[derive(Clone, Copy)]
struct View<'a> {
    ahead: &'a Rows,
    behind: &'a Rows,
    near: &'a Rows,
    near_of: &'a Rows,
    far: &'a Rows,
    far_of: &'a Rows,
}

impl<'a> View<'a> {
    fn new(inst: &'a Instance, end: End) -> Self {
        match end {
            End::Last => Self {
                ahead: &inst.succ,
                behind: &inst.pred,
                near: &inst.later,
                near_of: &inst.later_of,
                far: &inst.earlier,
                far_of: &inst.earlier_of,
            },
            End::First => Self {
                ahead: &inst.pred,
                behind: &inst.succ,
                near: &inst.earlier,
                near_of: &inst.earlier_of,
                far: &inst.later,
                far_of: &inst.later_of,
            },
        }
    }
}

/// A peel under way.
pub(crate) struct Peel<'a> {
    inst: &'a Instance,
    view: View<'a>,
    end: End,
    over: Overlay<'a>,
    /// Demands of each step that are not met yet.
    need: Vec<u32>,
    /// Steps of each way that are still on.
    on: Vec<u32>,
    met: Bits,
    off: Bits,
}

impl<'a> Peel<'a> {
    /// A peel in which nothing is off yet; tells `free` the steps that can
    /// be taken at once, rising.
    pub fn new(
        inst: &'a Instance,
        end: End,
        over: Overlay<'a>,
        mut free: impl FnMut(StepId),
    ) -> Self {
        let n = inst.steps();
        let view = View::new(inst, end);
        let mut need: Vec<u32> = (0..n as u32).map(|s| view.ahead.row_len(s)).collect();
        let on: Vec<u32> = (0..view.near.len() as u32)
            .map(|way| view.near.row_len(way))
            .collect();
        let mut met = Bits::new(inst.open_waits() as usize);
        for wait in 0..inst.open_waits() {
            let step = inst.wait_step[wait as usize];
            let chosen = over.way_of(wait);
            let open = if chosen == OPEN {
                inst.ways(wait).any(|way| on[way as usize] == 0)
            } else {
                for &other in view.far.row(chosen) {
                    need[other as usize] += 1;
                }
                on[chosen as usize] == 0
            };
            if open {
                met.add(wait);
            } else {
                need[step as usize] += 1;
            }
        }
        for &(a, b) in over.extra {
            let waiting = if end == End::Last { a } else { b };
            need[waiting as usize] += 1;
        }
        if let Some(step) = over.withheld {
            need[step as usize] += 1;
        }
        for step in 0..n as u32 {
            if need[step as usize] == 0 {
                free(step);
            }
        }
        Self {
            inst,
            view,
            end,
            over,
            need,
            on,
            met,
            off: Bits::new(n),
        }
    }

    /// Takes a free step off; tells `free` the steps that this frees.
    pub fn take(&mut self, step: StepId, mut free: impl FnMut(StepId)) {
        debug_assert_eq!(self.need[step as usize], 0);
        self.off.add(step);
        let need = &mut self.need;
        let mut less = |other: StepId| {
            let left = &mut need[other as usize];
            *left -= 1;
            if *left == 0 {
                free(other);
            }
        };
        for &other in self.view.behind.row(step) {
            less(other);
        }
        for &way in self.view.near_of.row(step) {
            let left = &mut self.on[way as usize];
            *left -= 1;
            if *left > 0 {
                continue;
            }
            let wait = self.inst.way_wait[way as usize];
            let chosen = self.over.way_of(wait);
            if (chosen == OPEN || chosen == way) && self.met.add(wait) {
                less(self.inst.wait_step[wait as usize]);
            }
        }
        if !self.over.chosen.is_empty() {
            for &wait in self.inst.waits_of.row(step) {
                let chosen = self.over.way_of(wait);
                if chosen != OPEN {
                    for &other in self.view.far.row(chosen) {
                        less(other);
                    }
                }
            }
        }
        for &(a, b) in self.over.extra {
            let (taken, waiting) = match self.end {
                End::Last => (b, a),
                End::First => (a, b),
            };
            if taken == step {
                less(waiting);
            }
        }
    }
}

/// Peels until nothing is free, in whatever order is quickest; gives what was
/// taken, in the order of taking.
pub(crate) fn peel(inst: &Instance, end: End, over: Overlay<'_>) -> Vec<StepId> {
    let mut out = Vec::with_capacity(inst.steps());
    let mut peel = Peel::new(inst, end, over, |step| out.push(step));
    let mut next = 0;
    while next < out.len() {
        let step = out[next];
        next += 1;
        peel.take(step, |free| out.push(free));
    }
    out
}

/// Peels from the last step, always taking the free step that is written last;
/// gives what was taken, in the order of taking. Where the written order is
/// itself valid this gives it back.
pub(crate) fn peel_written(inst: &Instance, over: Overlay<'_>) -> Vec<StepId> {
    let mut queue = LargestFirst::new(inst.steps());
    let mut out = Vec::with_capacity(inst.steps());
    let mut peel = Peel::new(inst, End::Last, over, |step| queue.add(step));
    while let Some(step) = queue.take() {
        out.push(step);
        peel.take(step, |free| queue.add(free));
    }
    out
}

/// The largest set of steps no one of which can ever be taken off; empty if
/// the peel takes everything. For the mixed class an empty set proves nothing.
/// Rising.
pub fn stuck_set(inst: &Instance) -> Vec<StepId> {
    left_over(inst, End::Last, Overlay::default())
}

pub(crate) fn left_over(inst: &Instance, end: End, over: Overlay<'_>) -> Vec<StepId> {
    let taken = peel(inst, end, over);
    if taken.len() == inst.steps() {
        return Vec::new();
    }
    let mut off = Bits::new(inst.steps());
    for &step in &taken {
        off.add(step);
    }
    (0..inst.steps() as u32).filter(|&s| !off.has(s)).collect()
}
