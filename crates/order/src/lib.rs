//! The ordering core: whether steps can be put in an order, why not, and which
//! order is nearest to the written one; which order costs least
//! ([`sequence`]); and the cheapest way in to something ([`removal`]).
//!
//! An [`Instance`] is `n` steps, arcs "a before b", and waits "this step needs
//! one of these ways to hold", each with an opaque [`Reason`] that survives to
//! the report. Steps are numbered in written order; everything is kept in
//! compressed rows; every answer is deterministic. What is NP-hard is answered
//! exactly up to a stated [`Effort`], and beyond it the answer says so.
//!
//! This crate knows no plan, no part and no text, and never will: whoever calls
//! it turns things into steps and reasons back into words.
//!
//! ```
//! use order::{Builder, Effort, Reason, Wait, Way, nearest};
//!
//! // 0 fit cover, 1 fit bracket, 2 bleed: from above while the cover is still to
//! // come, or from the side while the bracket is.
//! let mut build = Builder::new(3);
//! let way = |blocker, why| Way { later: vec![(blocker, Reason(why))], earlier: vec![] };
//! build.wait(Wait { step: 2, ways: vec![way(0, 11), way(1, 12)], why: Reason(10) });
//! build.before(0, 1, Reason(20));
//! let found = nearest(&build.build(), Effort::default()).expect("there is an order");
//! assert_eq!(found.order, [0, 2, 1]);
//! assert_eq!(found.choices, [1]);
//! ```

mod bits;
mod chain;
mod count;
mod cycle;
mod effort;
mod feasible;
pub mod graph;
mod implied;
mod instance;
mod matching;
mod nearest;
mod pairs;
mod part;
mod peel;
mod places;
pub mod removal;
mod rows;
mod search;
pub mod sequence;
mod sets;
mod stuck;
mod trace;
pub mod windows;

pub use chain::chain;
pub use count::{Count, count_orders, count_sets};
pub use cycle::Link;
pub use effort::{Effort, Optimum};
pub use feasible::{Answer, Feasibility, feasible, must_precede};
pub use implied::{Implied, implied, implied_arcs};
pub use instance::{Broken, Builder, Instance, Reason, StepId, Wait, Way};
pub use nearest::{Direction, Move, Nearest, NoOrder, Proof, nearest, nearest_weighted};
pub use peel::stuck_set;
pub use places::{Place, place_of, places};
pub use stuck::{Stuck, StuckKind};
