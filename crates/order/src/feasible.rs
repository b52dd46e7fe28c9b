//! Whether any order keeps every fact.

use crate::effort::{Budget, Effort};
use crate::instance::{Builder, Instance, Reason, StepId};
use crate::peel::{End, Overlay, peel, peel_written};
use crate::search::{Verdict, decide, lucky};
use crate::stuck::{Stuck, explain};

/// Whether an order exists.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Feasibility {
    /// It does; here is one.
    Order(Vec<StepId>),
    /// It does not; here is why.
    Stuck(Stuck),
    /// The search met its bound.
    Unknown {
        /// Nodes visited.
        tried: u64,
    },
}

/// Decides whether any order keeps every fact.
///
/// Without mixed waits (see [`Instance::is_mixed`]) this is one peel, linear in
/// the size of the instance, and `effort` is not touched. With them it is a
/// search under `effort`, and the explanation of a failure is another one. The order given takes, from the last place to the first, the free
/// step that is written last, so a written order that is valid is given back.
pub fn feasible(inst: &Instance, effort: Effort) -> Feasibility {
    let mut order = peel_written(inst, Overlay::default());
    if order.len() < inst.steps() {
        return Feasibility::Stuck(explain(inst, None, effort));
    }
    order.reverse();
    if !inst.is_mixed() || inst.allows(&order) {
        return Feasibility::Order(order);
    }
    if let Some(order) = lucky(inst, Overlay::default()) {
        return Feasibility::Order(order);
    }
    let mut budget = Budget::new(effort);
    match decide(inst, &mut budget) {
        Verdict::Chosen(chosen) => {
            let mut order = peel_written(
                inst,
                Overlay {
                    chosen: &chosen,
                    ..Overlay::default()
                },
            );
            order.reverse();
            Feasibility::Order(order)
        }
        Verdict::Never(within) => Feasibility::Stuck(explain(inst, Some(&within), effort)),
        Verdict::Unknown => Feasibility::Unknown {
            tried: budget.spent(),
        },
    }
}

/// An answer that may have been out of reach.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// Yes, proved.
    Yes,
    /// No, proved.
    No,
    /// The search met its bound.
    Unknown,
}

/// Whether `a` comes before `b` in every valid order. Where there is no valid
/// order, and where `a == b` and there is one, that is so and not so.
///
/// `a` precedes `b` always exactly if putting `b` before `a` leaves no order:
/// one peel, or one search in the mixed class.
///
/// # Panics
/// If `a` or `b` is not the number of a step.
pub fn must_precede(inst: &Instance, a: StepId, b: StepId, effort: Effort) -> Answer {
    let mut budget = Budget::new(effort);
    let extra = [(b, a)];
    let over = Overlay {
        extra: if a == b { &[] } else { &extra },
        ..Overlay::default()
    };
    if peel(inst, End::Last, over).len() < inst.steps() {
        return Answer::Yes;
    }
    if !inst.is_mixed() {
        return Answer::No;
    }
    // The whole question again with one more arc.
    let mut with = Builder::new(inst.steps());
    with.copy(inst);
    if a != b {
        with.before(b, a, Reason(0));
    }
    match decide(&with.build(), &mut budget) {
        Verdict::Chosen(_) => Answer::No,
        Verdict::Never(_) => Answer::Yes,
        Verdict::Unknown => Answer::Unknown,
    }
}
