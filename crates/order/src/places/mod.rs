//! The earliest and the latest place of a step over all valid orders.
//!
//! Steps that no fact connects do not bind each other, so each connected group
//! is looked at alone, with all others put behind it for the earliest and before
//! it for the latest places.
//!
//! *Arcs only.* Earliest: behind all that must precede it. Latest: before all
//! that must follow.
//!
//! *With alternatives.* Earliest: withhold the step and peel from the last place.
//! What comes off is the largest set U that can stand behind it, and since the
//! sets that can be off form an antimatroid there is an order with exactly U
//! behind it: one peel, exact. Latest: the fewest steps that must come off
//! before it, which is NP-hard (hitting set): see [`fewest`].
//!
//! *The mixed class.* Both ends are hard. Where the sets of steps that can be off
//! are few they are all gone through ([`layers`]). Otherwise what is given are
//! peels from both ends with mixed waits relaxed: right, but perhaps wide.

mod fewest;
mod layers;

use crate::bits::Bits;
use crate::effort::{Budget, Effort};
use crate::feasible::{Feasibility, feasible};
use crate::graph::{connected_to, numbers_behind, topological, unconnected};
use crate::instance::{Instance, StepId};
use crate::part::{Cutter, Outside};
use crate::peel::{End, Overlay, peel};

/// The first and last place that a step can have, counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// No valid order has it before this place.
    pub earliest: usize,
    /// No valid order has it behind this place.
    pub latest: usize,
    /// Some valid orders have it at these very places.
    pub exact: bool,
}

/// The places of all steps; empty if no order is valid.
///
/// Groups with arcs only take O(n · m / 256) time, groups with alternatives a
/// peel and a search for each step; `effort` is shared among them.
pub fn places(inst: &Instance, effort: Effort) -> Vec<Place> {
    if matches!(feasible(inst, effort), Feasibility::Stuck(_)) {
        return Vec::new();
    }
    let n = inst.steps();
    let nowhere = Place {
        earliest: 1,
        latest: n,
        exact: false,
    };
    let mut out = vec![nowhere; n];
    let mut budget = Budget::new(effort);
    let mut cutter = Cutter::new(inst);
    let mut to_come = n as u64;
    for group in unconnected(inst) {
        let size = group.len() as u64;
        let share = Effort {
            nodes: budget.rest().nodes.saturating_mul(size) / to_come,
        };
        to_come -= size;
        let part = cutter.cut(group, Outside::Kept);
        let mut own = Budget::new(share);
        let here = in_group(&part.inst, &mut own);
        budget.used(share, &own);
        for (&step, place) in part.steps.iter().zip(here) {
            out[step as usize] = among(place, part.steps.len(), n);
        }
    }
    out
}

/// The places of one step, in an instance that has a valid order. As [`places`],
/// but only the group of the step is looked at.
///
/// # Panics
/// If `step` is not the number of a step.
pub fn place_of(inst: &Instance, step: StepId, effort: Effort) -> Place {
    let mut budget = Budget::new(effort);
    let group = connected_to(inst, step, &mut Bits::new(inst.steps()));
    let at = group.partition_point(|&s| s < step);
    let part = Cutter::new(inst).cut(group, Outside::Kept);
    let sets = if part.inst.is_mixed() {
        layers::by_sets(&part.inst, effort.nodes)
    } else {
        None
    };
    let place = sets.map_or_else(
        || alone(&part.inst, at as StepId, &mut budget),
        |places| places[at],
    );
    among(place, part.steps.len(), inst.steps())
}

/// A place within a group of so many as a place in the whole.
fn among(place: Place, group: usize, whole: usize) -> Place {
    Place {
        latest: place.latest + whole - group,
        ..place
    }
}

fn in_group(inst: &Instance, budget: &mut Budget) -> Vec<Place> {
    let n = inst.steps();
    if inst.open_waits() == 0
        && let Some(order) = topological(inst)
    {
        let behind = numbers_behind(&inst.succ, &order);
        let backwards: Vec<StepId> = order.into_iter().rev().collect();
        let before = numbers_behind(&inst.pred, &backwards);
        let place = |(before, behind): (u32, u32)| Place {
            earliest: before as usize + 1,
            latest: n - behind as usize,
            exact: true,
        };
        return before.into_iter().zip(behind).map(place).collect();
    }
    if inst.is_mixed()
        && let Some(out) = layers::by_sets(inst, budget.rest().nodes)
    {
        return out;
    }
    (0..n as u32)
        .map(|step| {
            let share = Effort {
                nodes: budget.rest().nodes / (n as u64 - u64::from(step)),
            };
            let mut own = Budget::new(share);
            let place = alone(inst, step, &mut own);
            budget.used(share, &own);
            place
        })
        .collect()
}

/// The places of one step by peels and, for the latest, a search.
fn alone(inst: &Instance, step: StepId, budget: &mut Budget) -> Place {
    let n = inst.steps();
    let over = Overlay {
        withheld: Some(step),
        ..Overlay::default()
    };
    let earliest = n - peel(inst, End::Last, over).len();
    // With mixed waits this leaves out what they ask of earlier steps, so it is
    // still a lower bound.
    let (fewest, proven) = fewest::fewest(inst, step, budget);
    let latest = n - fewest;
    if !inst.is_mixed() {
        return Place {
            earliest,
            latest,
            exact: proven,
        };
    }
    // From the front: what can be done without it is all that can precede it.
    let before = peel(inst, End::First, over).len();
    Place {
        earliest,
        latest: latest.min(before + 1),
        exact: false,
    }
}
