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
//! before it, which is NP-hard (hitting set): see [`fewest`]. What is [`forced`]
//! to come off is mostly all, and then there is nothing to search.
//!
//! *The mixed class.* Both ends are hard: see [`extreme`].

mod extreme;
mod fewest;
mod forced;

use crate::bits::Bits;
use crate::effort::{Budget, Effort};
use crate::feasible::{Feasibility, feasible};
use crate::graph::{connected_to, numbers_behind, topological, unconnected};
use crate::instance::{Instance, StepId};
use crate::part::{Cutter, Outside};
use crate::peel::{End, Overlay, peel};
use forced::Forced;

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
    let place = Known::new(&part.inst).place(at as StepId, &mut budget);
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
    let known = Known::new(inst);
    (0..n as u32)
        .map(|step| {
            let share = Effort {
                nodes: budget.rest().nodes / (n as u64 - u64::from(step)),
            };
            let mut own = Budget::new(share);
            let place = known.place(step, &mut own);
            budget.used(share, &own);
            place
        })
        .collect()
}

/// What is worked out once for all steps of a group.
struct Known<'a> {
    inst: &'a Instance,
    behind: Option<Forced>,
    /// Only for the mixed class.
    before: Option<Forced>,
}

impl<'a> Known<'a> {
    fn new(inst: &'a Instance) -> Self {
        let mixed = inst.is_mixed();
        Self {
            inst,
            behind: Forced::new(inst, End::Last),
            before: mixed.then(|| Forced::new(inst, End::First)).flatten(),
        }
    }

    fn place(&self, step: StepId, budget: &mut Budget) -> Place {
        let (inst, n) = (self.inst, self.inst.steps());
        let over = Overlay {
            withheld: Some(step),
            ..Overlay::default()
        };
        if !inst.is_mixed() {
            let (fewest, exact) = fewest::fewest(inst, self.behind.as_ref(), step, budget);
            return Place {
                earliest: n - peel(inst, End::Last, over).len(),
                latest: n - fewest,
                exact,
            };
        }
        // What is forced to one side of the step bounds what the other can hold.
        let room = |forced: &Option<Forced>| {
            let forced = forced.as_ref().map_or(0, |forced| forced.count(step));
            n - 1 - forced
        };
        let half = Effort {
            nodes: budget.rest().nodes / 2,
        };
        let mut first_half = Budget::new(half);
        let (behind, exact) =
            extreme::most(inst, step, End::Last, room(&self.before), &mut first_half);
        budget.used(half, &first_half);
        let (before, exact_too) = extreme::most(inst, step, End::First, room(&self.behind), budget);
        Place {
            earliest: n - behind,
            latest: before + 1,
            exact: exact && exact_too,
        }
    }
}
