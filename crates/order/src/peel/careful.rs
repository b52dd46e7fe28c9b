//! A peel that tries to keep the mixed waits too.

use super::{End, OPEN, Overlay, Peel};
use crate::bits::{Bits, LargestFirst};
use crate::instance::{Instance, StepId};
use std::cell::Cell;

/// Peels from an end in written order as far as that goes, but puts a step off as long
/// as anything else is free if its own waits would not hold, or if taking it
/// would shut the last way of a step that is still on. For the mixed class this
/// makes it likely, not certain, that the order found keeps every wait. A step
/// that is `held` is taken only when nothing else is left to take.
pub(crate) fn peel_careful(
    inst: &Instance,
    end: End,
    over: Overlay<'_>,
    held: Option<StepId>,
) -> Vec<StepId> {
    let n = inst.steps();
    // The queues give the largest first; from the front that is the smallest.
    let key = |step: StepId| match end {
        End::Last => step,
        End::First => n as u32 - 1 - step,
    };
    let (mut queue, mut put_off) = (LargestFirst::new(n), LargestFirst::new(n));
    let mut waiting = Bits::new(n);
    let mut out = Vec::with_capacity(n);
    let held_is_free = Cell::new(false);
    let free = |step: StepId, queue: &mut LargestFirst| {
        if held == Some(step) {
            held_is_free.set(true);
        } else {
            queue.add(key(step));
        }
    };
    let mut peel = Peel::new(inst, end, over, |step| free(step, &mut queue));
    // Ways that nothing taken stands against, by wait.
    let mut alive: Vec<u32> = (0..inst.open_waits())
        .map(|wait| inst.ways(wait).len() as u32)
        .collect();
    let mut dead = Bits::new(inst.way_wait.len());
    loop {
        let step = match queue.take().map(key) {
            Some(step) if peel.holds_now(step) && !peel.shuts_out(step, &alive, &dead) => step,
            Some(step) => {
                waiting.add(step);
                put_off.add(key(step));
                continue;
            }
            None => match (put_off.take().map(key), held) {
                (Some(step), _) => step,
                (None, Some(step)) if held_is_free.take() => step,
                (None, _) => break,
            },
        };
        waiting.remove(step);
        out.push(step);
        peel.take(step, |other| free(other, &mut queue));
        let mut look_again = |other: StepId| {
            if waiting.has(other) {
                waiting.remove(other);
                put_off.remove(key(other));
                queue.add(key(other));
            }
        };
        for &way in peel.view.far_of.row(step) {
            if dead.add(way) {
                alive[inst.way_wait[way as usize] as usize] -= 1;
            }
        }
        // A way that has lost a near step may hold now; and what this step's
        // ways stood against can go.
        for &way in peel.view.near_of.row(step) {
            look_again(inst.wait_step[inst.way_wait[way as usize] as usize]);
        }
        for &wait in inst.waits_of.row(step) {
            for way in inst.ways(wait) {
                let far = peel.view.far.row(way);
                far.iter().for_each(|&other| look_again(other));
            }
        }
    }
    out
}

impl Peel<'_> {
    /// Whether every wait of a free step holds exactly if it is taken now:
    /// some way has all its near steps off and all its far ones on.
    pub fn holds_now(&self, step: StepId) -> bool {
        self.inst.waits_of.row(step).iter().all(|&wait| {
            let chosen = self.over.way_of(wait);
            chosen != OPEN
                || self.inst.ways(wait).any(|way| {
                    self.on[way as usize] == 0
                        && self
                            .view
                            .far
                            .row(way)
                            .iter()
                            .all(|&x| x != step && !self.off.has(x))
                })
        })
    }

    /// Whether taking a step now would leave a wait of a step that is still on
    /// without any way.
    fn shuts_out(&self, step: StepId, alive: &[u32], dead: &Bits) -> bool {
        self.view.far_of.row(step).iter().any(|&way| {
            let wait = self.inst.way_wait[way as usize];
            let waiter = self.inst.wait_step[wait as usize];
            waiter != step
                && !self.off.has(waiter)
                && !dead.has(way)
                && alive[wait as usize] == 1
                && self.over.way_of(wait) == OPEN
        })
    }
}
