//! An order of least total cost: sequential ordering with precedence.
//!
//! Every step costs something that depends on the step before it: a change of
//! tool, a turn of the machine, a walk across the shop. Wanted is a valid order
//! in which these costs add up to the least. That is the sequential ordering
//! problem, a travelling salesman who has to keep an order (L. Escudero,
//! European Journal of Operational Research 37, 1988), and NP-hard.
//!
//! # The method
//!
//! Orders are built from their end, as in teardown, because then plain arcs and
//! ways in that close are both decided by what is off. What is still to pay
//! depends only on the set of steps that are off and on the one taken last (for
//! tools: on the tool last in hand), so of all that lead to the same such
//! *state* only the cheapest is kept: the dynamic program of M. Held and R. Karp
//! (Journal of the SIAM 10, 1962), over the sets that can be off instead of all
//! sets. It is run layer by layer. A state is left out if what it has cost and
//! what the rest must cost at least come to no less than an order that is known;
//! and if a layer is wider than allowed, the least promising are left out too.
//! The least that one of those could have come to is a lower bound. The width
//! grows from pass to pass until nothing had to be left out for want of room,
//! which proves the optimum, or the effort is spent.
//!
//! * What the rest must cost is read off the dual of an assignment of steps to
//!   the steps behind them (`assignment`), or, for tools, off how often each
//!   tool must be taken up again along some chain of arcs (`visits`).
//! * For tools, a step that needs the tool in hand, or none, is taken as soon as
//!   it is free. That loses nothing: what is free stays free, and taking the step
//!   out of its later place and putting it here adds no change. (Not where ways
//!   are mixed, for there what is free can be shut again.)
//!
//! # Limits
//!
//! Exact whenever sixteen times the [`Effort`]'s nodes are enough states: always
//! up to about 16 steps, and usually far beyond that with arcs that bind or with
//! few tools. Otherwise the order comes with a bound. Among orders of the same
//! cost one near the written order is preferred, the nearest is not promised.
//! Above 600 steps the assignment, and above 16,384 steps the search, is left
//! out.
//!
//! ```
//! use order::sequence::{Costs, cheapest_order};
//! use order::{Builder, Effort, Reason};
//!
//! // 0 and 2 want the spanner, 1 and 3 the driver; 4 is done by hand. 0 before 1.
//! let mut build = Builder::new(5);
//! build.before(0, 1, Reason(0));
//! let costs = Costs::tools(&[Some(7), Some(8), Some(7), Some(8), None]);
//! let found = cheapest_order(&build.build(), &costs, Effort::default()).expect("an order");
//! assert_eq!((found.order, found.cost), (vec![0, 2, 1, 3, 4], 1));
//! ```

mod assignment;
mod costs;
mod layers;
mod visits;

use crate::effort::{Budget, Effort, Optimum};
use crate::feasible::{Feasibility, feasible};
use crate::instance::{Instance, StepId};
use crate::nearest::NoOrder;
use crate::sets::Set;
use layers::Layers;
use num_bigint::BigUint;

pub use costs::Costs;

/// A valid order and what it costs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sequence {
    /// All steps.
    pub order: Vec<StepId>,
    /// The sum of the costs from each step to the next, or the number of
    /// changes of tool (the largest number there is if the costs run over).
    pub cost: u64,
    /// Whether no valid order costs less.
    pub proof: Optimum,
}

/// Steps at most for which a search is tried: a rule is a set of steps, so the
/// rules of all steps grow with their square.
const MOST_STEPS: usize = 1 << 14;

/// The width of layers in the first pass, and how it grows.
const FIRST_WIDTH: usize = 64;
const WIDER: usize = 8;

/// A valid order of least cost. Sixteen states count as one node of the effort.
///
/// # Errors
/// If no order is valid, or the search for one met its bound.
///
/// # Panics
/// If the costs are for another number of steps.
pub fn cheapest_order(inst: &Instance, costs: &Costs, effort: Effort) -> Result<Sequence, NoOrder> {
    assert_eq!(costs.steps(), inst.steps(), "costs for each step");
    let known = match feasible(inst, effort) {
        Feasibility::Order(order) => order,
        Feasibility::Stuck(stuck) => return Err(NoOrder::Stuck(stuck)),
        Feasibility::Unknown { tried } => return Err(NoOrder::Unknown { tried }),
    };
    let words = inst.steps().div_ceil(64);
    let (order, bound) = match words {
        _ if inst.steps() > MOST_STEPS => (known, 0),
        0 | 1 => widen::<[u64; 1]>(inst, costs, known, effort),
        2 => widen::<[u64; 2]>(inst, costs, known, effort),
        3 | 4 => widen::<[u64; 4]>(inst, costs, known, effort),
        _ => widen::<Box<[u64]>>(inst, costs, known, effort),
    };
    let fits = |x: u128| u64::try_from(x).unwrap_or(u64::MAX);
    let cost = costs.of(&order);
    Ok(Sequence {
        order,
        cost: fits(cost),
        proof: if bound >= cost {
            Optimum::Proved
        } else {
            Optimum::AtLeast(fits(bound))
        },
    })
}

fn widen<S: Set>(
    inst: &Instance,
    costs: &Costs,
    known: Vec<StepId>,
    effort: Effort,
) -> (Vec<StepId>, u128) {
    let layers = Layers::<S>::new(inst, costs, true);
    let mut budget = Budget::new(effort);
    let (mut best, mut bound) = (known, 0);
    let mut cost = costs.of(&best);
    // The first pass may also give another order of the same cost, for it
    // prefers what is near the written one.
    let mut limit = cost + 1;
    let mut width = FIRST_WIDTH;
    while bound < cost {
        let Some(pass) = layers.pass(width, limit, &mut budget) else {
            break;
        };
        if let Some(order) = pass.order {
            cost = costs.of(&order);
            best = order;
        }
        limit = cost;
        bound = pass
            .dropped
            .map_or(cost, |least| least.min(cost))
            .max(bound);
        width = width.saturating_mul(WIDER);
    }
    (best, bound)
}

/// In how many valid orders the least cost is met, and what it is; `None` if no
/// order is valid or that many states cannot be gone through. Counted exactly,
/// so ties are not cut short, and fewer steps can be done than by
/// [`cheapest_order`].
///
/// # Panics
/// If the costs are for another number of steps.
pub fn count_cheapest(inst: &Instance, costs: &Costs, effort: Effort) -> Option<(u64, BigUint)> {
    let found = cheapest_order(inst, costs, effort).ok()?;
    if found.proof != Optimum::Proved {
        return None;
    }
    let budget = &mut Budget::new(effort);
    let least = costs.of(&found.order);
    let number = match inst.steps().div_ceil(64) {
        0 | 1 => Layers::<[u64; 1]>::new(inst, costs, false).count(least, budget),
        2 => Layers::<[u64; 2]>::new(inst, costs, false).count(least, budget),
        _ => Layers::<Box<[u64]>>::new(inst, costs, false).count(least, budget),
    };
    Some((found.cost, number?))
}
