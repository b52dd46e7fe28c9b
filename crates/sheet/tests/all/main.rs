//! What is printed, from plans in the language to the page.

mod bench;
mod chart;
mod checklist;
mod findings;
mod freedom;
mod json;
mod markdown;
mod terminal;
mod why;
