//! What is printed, from plans in the language to the page.

// A helper that meets what cannot be should end the test that called it.
#![allow(clippy::unwrap_used)]

mod bench;
mod chart;
mod checklist;
mod findings;
mod freedom;
mod json;
mod markdown;
mod terminal;
mod why;
