//! Text to tree.
//!
//! Reads one text of the plan language into a [`tree::Tree`]: items with their
//! details, each with its place in the original bytes. Reading never fails: a
//! line that cannot be read becomes a [`tree::Problem`] and everything else is
//! still there. The grammar itself is `grammar/rebuild.pest` at the top of the
//! repository; this crate is the only one that knows pest.
//!
//! It must never know what a name means, whether a detail belongs to its item,
//! or how anything is shown to a person.

pub mod tree;

mod lines;

mod hidden;

mod statement;

mod grammar;
mod phrases;

mod convert;

mod dispatch;
mod found;
mod recover;
mod salvage;
mod trouble;

mod read;
pub use read::{LONGEST, Refused, read, read_bytes};

pub mod edit;
pub mod position;

mod tidy;
pub use tidy::tidy;

pub mod words;

mod near;
pub use near::nearest_word;
