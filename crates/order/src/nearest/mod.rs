//! The valid order that is nearest to the written one.
//!
//! Nearest means that the fewest steps are taken out and put back elsewhere (or
//! those that cost least to move), the rest keeping their written relative
//! order. The pieces: [`regions`] mends one part of the written order after
//! another, [`stretch`] cuts those into independent stretches, [`conflict`] finds the pairs written the wrong way round, [`cover`]
//! chooses what to move by [`crate::matching`] or [`flow`], [`landing`] puts it back, and
//! [`branch`] searches where steps have alternatives.

mod branch;
mod conflict;
mod cover;
mod flow;
mod landing;
mod plain;
mod regions;
mod stretch;
#[cfg(test)]
mod tests;

use crate::bits::Bits;
use crate::effort::Effort;
use crate::feasible::{Feasibility, feasible};
use crate::instance::{Instance, Slot, StepId, places_in};
use crate::stuck::Stuck;

/// A valid order near the written one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Nearest {
    /// All steps in their new order.
    pub order: Vec<StepId>,
    /// The steps that were moved, in their new order.
    pub moved: Vec<Move>,
    /// For each wait given to the builder a way, by place, that holds in the
    /// new order; one that held in the written order too, if there is one.
    pub choices: Vec<usize>,
    /// What moving those steps costs: their number, or the sum of their weights.
    pub cost: u64,
    /// Whether that is the least possible.
    pub proof: Proof,
}

/// A step that was moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Move {
    /// The step.
    pub step: StepId,
    /// Which way it went, past steps that were not moved.
    pub direction: Direction,
    /// The step that it now follows directly; none if it now comes first.
    /// Moving the steps one after another, in the order in which they are
    /// listed, each directly behind this one, gives the new order.
    pub behind: Option<StepId>,
}

/// Which way a step was moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Direction {
    /// Towards the end.
    Later,
    /// Towards the start.
    Earlier,
}

/// What is known about the cost of a [`Nearest`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Proof {
    /// No valid order costs less.
    Fewest,
    /// The search met its bound: no valid order costs less than this, but
    /// there may be one that costs less than the one given.
    AtLeast(u64),
}

/// Why there is no nearest order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoOrder {
    /// No order is valid.
    Stuck(Stuck),
    /// Whether any is could not be told within the bound.
    Unknown {
        /// Nodes visited.
        tried: u64,
    },
}

/// The valid order that moves the fewest steps.
///
/// Without open waits it is always exact, except in a tangle of more than 2²⁶
/// conflicting pairs; the cost is that of a peel plus, in each stretch, a
/// closure and a matching. With open waits it is a search under `effort`.
///
/// # Errors
/// If no order is valid, or the search for one met its bound.
pub fn nearest(inst: &Instance, effort: Effort) -> Result<Nearest, NoOrder> {
    solve(inst, None, effort)
}

/// As [`nearest`], but moving a step costs its weight. A step of weight 0 moves
/// freely, but still only if that helps.
///
/// # Errors
/// If no order is valid, or the search for one met its bound.
///
/// # Panics
/// If there is not one weight for each step.
pub fn nearest_weighted(
    inst: &Instance,
    weights: &[u32],
    effort: Effort,
) -> Result<Nearest, NoOrder> {
    assert_eq!(weights.len(), inst.steps(), "one weight for each step");
    solve(inst, Some(weights), effort)
}

fn solve(inst: &Instance, weight: Option<&[u32]>, effort: Effort) -> Result<Nearest, NoOrder> {
    let known = match feasible(inst, effort) {
        Feasibility::Order(order) => order,
        Feasibility::Stuck(stuck) => return Err(NoOrder::Stuck(stuck)),
        Feasibility::Unknown { tried } => return Err(NoOrder::Unknown { tried }),
    };
    let sides = [
        &inst.succ,
        &inst.pred,
        &inst.waits_of,
        &inst.later_of,
        &inst.earlier_of,
    ];
    let degree: Vec<u32> = (0..inst.steps() as u32)
        .map(|v| sides.iter().map(|rows| rows.row_len(v)).sum())
        .collect();
    let costs = plain::Costs {
        weight,
        degree: &degree,
    };
    Ok(finish(inst, regions::mend_all(inst, costs, &known, effort)))
}

fn finish(inst: &Instance, mended: plain::Mended) -> Nearest {
    let plain::Mended {
        order,
        moved: mut rising,
        cost,
        bound,
    } = mended;
    rising.sort_unstable();
    let mut is_moved = Bits::new(inst.steps());
    rising.iter().for_each(|&m| {
        is_moved.add(m);
    });
    // A moved step went later if more kept steps stand before it now than in
    // the written order.
    let mut kept = 0;
    let mut moved = Vec::with_capacity(rising.len());
    for (at, &step) in order.iter().enumerate() {
        if !is_moved.has(step) {
            kept += 1;
            continue;
        }
        let written = step as usize - rising.partition_point(|&m| m < step);
        moved.push(Move {
            step,
            direction: if kept > written {
                Direction::Later
            } else {
                Direction::Earlier
            },
            behind: at.checked_sub(1).map(|before| order[before]),
        });
    }
    let place = places_in(&order, inst.steps());
    let choices = inst.slots.iter().map(|slot| match *slot {
        Slot::Settled(way) => way as usize,
        Slot::Open(wait) => choice(inst, wait, &place),
    });
    Nearest {
        choices: choices.collect(),
        moved,
        cost,
        proof: if cost == bound {
            Proof::Fewest
        } else {
            Proof::AtLeast(bound)
        },
        order,
    }
}

/// A way of this wait that holds, best one that holds as written too.
fn choice(inst: &Instance, wait: u32, place: &[u32]) -> usize {
    let step = inst.wait_step[wait as usize];
    let written = |way: u32| {
        inst.later.row(way).iter().all(|&b| b > step)
            && inst.earlier.row(way).iter().all(|&a| a < step)
    };
    let holds = |way: &u32| inst.way_holds(*way, place);
    let both = inst.ways(wait).find(|way| holds(way) && written(*way));
    let way = both.or_else(|| inst.ways(wait).find(holds));
    way.map_or(0, |way| (way - inst.way_start[wait as usize]) as usize)
}
