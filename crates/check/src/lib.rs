//! Plan to findings.
//!
//! Works out from a [`plan::model::Plan`] what must hold at each step, makes of
//! it an instance of the ordering core, and runs the rules. One rule is one
//! file under `rules/`, with its statement, its reason, examples and every
//! sentence a mechanic reads about it.
//!
//! It must never know of files, terminals, pages or protocols, and it reads no
//! text but lines that could not be read, to say what was meant by them. What it
//! knows of the rest of the text are places.

mod answers;
pub mod asks;
pub mod bench;
pub mod chain;
pub mod demand;
pub mod faults;
pub mod finding;
pub mod item_moves;
pub mod joints;
pub mod lives;
pub mod mend;
mod merge;
mod other_words;
pub mod problem;
pub mod rules;
pub mod say;
mod slips;
pub mod solve;
pub mod view;
pub mod words;

pub use bench::Bench;
pub use finding::{Because, Finding, Mend, MendEdit, Severity};
