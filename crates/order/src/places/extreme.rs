//! The most steps that can stand to one side of a step, in the mixed class.
//!
//! Seen from one end of the order: hold the step back, take whatever else can be
//! taken, then the step, then the rest. With mixed waits relaxed (and from the
//! front every wait that no way is chosen for) the number taken before it is a
//! bound. If the order that comes of it keeps all waits, the bound is met. If
//! not, a wait that it breaks must take one of its ways, and each is tried as
//! plain arcs; arcs only lower the bound. Depth first, with the best order so far
//! cutting off what cannot be better.

use crate::effort::Budget;
use crate::instance::{Instance, StepId, places_in};
use crate::peel::{End, OPEN, Overlay, peel, peel_careful};
use crate::search::ways_by_promise;

struct Frame {
    wait: u32,
    ways: Vec<u32>,
    next: usize,
    bound: usize,
}

/// The most steps that can be taken from this end before `step`, or an upper
/// bound on it, and whether it is exact. `room` is a bound known beforehand. The
/// instance has an order.
pub(super) fn most(
    inst: &Instance,
    step: StepId,
    end: End,
    room: usize,
    budget: &mut Budget,
) -> (usize, bool) {
    let mut chosen = vec![OPEN; inst.open_waits() as usize];
    let mut frames: Vec<Frame> = Vec::new();
    let mut best: Option<usize> = None;
    loop {
        let above = frames.last().map_or(room, |frame| frame.bound);
        match look(inst, step, end, &chosen) {
            Some((bound, broken)) if best.is_none_or(|best| bound > best) => match broken {
                None => best = Some(bound),
                Some(wait) => frames.push(Frame {
                    wait,
                    ways: ways_by_promise(inst, wait),
                    next: 0,
                    bound: bound.min(above),
                }),
            },
            _ => {}
        }
        // On to the next way that can still lead to something better.
        loop {
            let Some(frame) = frames.last_mut() else {
                return match best {
                    Some(best) => (best, true),
                    None => (room, false),
                };
            };
            let hopeful = best.is_none_or(|best| frame.bound > best);
            if hopeful && frame.next < frame.ways.len() {
                chosen[frame.wait as usize] = frame.ways[frame.next];
                frame.next += 1;
                break;
            }
            chosen[frame.wait as usize] = OPEN;
            frames.pop();
        }
        if !budget.spend(inst.steps()) {
            let open = frames.iter().map(|frame| frame.bound).max();
            return (open.max(best).unwrap_or(room), false);
        }
    }
}

/// The number that can be taken before the step with these ways chosen, and a
/// wait that the order found breaks; `None` if no order has these ways.
fn look(inst: &Instance, step: StepId, end: End, chosen: &[u32]) -> Option<(usize, Option<u32>)> {
    let over = Overlay {
        chosen,
        ..Overlay::default()
    };
    let other = match end {
        End::Last => End::First,
        End::First => End::Last,
    };
    if peel(inst, other, over).len() < inst.steps() {
        return None;
    }
    let mut order = peel_careful(inst, end, over, Some(step));
    if order.len() < inst.steps() {
        return None;
    }
    let before = order.iter().position(|&s| s == step)?;
    if end == End::Last {
        order.reverse();
    }
    let place = places_in(&order, inst.steps());
    let broken = (0..inst.open_waits()).filter(|&wait| {
        chosen[wait as usize] == OPEN && !inst.ways(wait).any(|way| inst.way_holds(way, &place))
    });
    Some((before, broken.min_by_key(|&wait| inst.ways(wait).len())))
}
