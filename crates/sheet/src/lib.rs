//! Everything printed, and nothing decided.
//!
//! Takes a plan and what the checker found out about it and gives text: the
//! findings, the checklist (for a terminal, as Markdown, as JSON), the reach
//! chart, the freedom of the order, the chain of reasons between two steps.
//! Every step has one name in all of them: its number and its words.
//!
//! It must never know of files, of the environment or of where its text goes,
//! and it works out nothing about the order: what is not in a finding or a view
//! of the checker is not on a page.

pub mod cautions;
pub mod chart;
pub mod checklist;
pub mod findings;
pub mod freedom;
pub mod json;
pub mod kit;
mod lines;
pub mod look;
pub mod markdown;
pub mod pages;
mod snippet;
pub mod sums;
pub mod terminal;
pub mod torques;
pub mod why;
pub mod words;
pub mod wrap;

pub use look::Look;
