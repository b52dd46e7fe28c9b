//! Plan to findings.
//!
//! Works out from a [`plan::model::Plan`] what must hold at each step, makes of
//! it an instance of the ordering core, and runs the rules. One rule is one
//! file under `rules/`, with its statement, its reason, examples and every
//! sentence a mechanic reads about it.
//!
//! It must never know of files, terminals, pages or protocols, and it never
//! reads text: what it knows of the text are places.

pub mod finding;
pub mod rules;

pub use finding::{Because, Finding, Mend, MendEdit, Severity};
pub mod view;
