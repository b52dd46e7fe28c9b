//! What the checker worked out, for those who print it: plain data, no sentences.

use plan::model::{Place, StepId, ThingId};

/// How long a thing can be reached, in steps of the order shown.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Window {
    /// First step at which it can be reached (counting from 0 in the order shown).
    pub from: usize,
    /// Last step at which it can be reached.
    pub until: usize,
    /// The step that opens the way, if it was not open from the start.
    pub opened_by: Option<StepId>,
    /// The step that closes it, if it stays open to the end.
    pub closed_by: Option<StepId>,
}

/// One row of the reach chart.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ReachRow {
    /// The thing that must be reached.
    pub thing: ThingId,
    /// The steps that need to reach it.
    pub used: Vec<StepId>,
    /// When it can be reached by some way.
    pub windows: Vec<Window>,
}

/// A thing whose last way in is closed by a step.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LastChance {
    /// The step that closes it.
    pub step: StepId,
    /// What will be shut in.
    pub thing: ThingId,
    /// The steps that work at it before the way closes.
    pub done_by: Vec<StepId>,
    /// The steps that work at it after the way closes.
    pub missed_by: Vec<StepId>,
}

/// Why a step must stand behind another: one link of a chain.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Link {
    /// The earlier step.
    pub before: StepId,
    /// The later step.
    pub after: StepId,
    /// Why, in words.
    pub says: String,
    /// The line that says so.
    pub place: Place,
}

/// How free the order is.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Freedom {
    /// How many valid orders there are, in decimal digits; none when more than could be counted.
    pub orders: Option<String>,
    /// The bound on effort that was hit when `orders` is none.
    pub bound: usize,
    /// For each step in written order: earliest and latest place (from 1) and whether exact.
    pub places: Vec<(usize, usize, bool)>,
}

/// The nearest valid order.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Arranged {
    /// All steps in the new order.
    pub order: Vec<StepId>,
    /// The steps that move, each with the step it now stands directly behind.
    pub moved: Vec<(StepId, Option<StepId>)>,
    /// Whether no valid order moves fewer steps (else only that at least this many must move).
    pub fewest: Result<(), usize>,
    /// The moves of items of the text that bring the new order about, each an item of the asked
    /// text and the item it then stands behind (`usize::MAX`: in front of the first step). Empty
    /// when a step has no place in the text.
    pub item_moves: Vec<(usize, usize)>,
    /// Steps that the text has no place for, because they are written once for several members of
    /// a series and do not all move alike.
    pub unwritable: Vec<StepId>,
}
