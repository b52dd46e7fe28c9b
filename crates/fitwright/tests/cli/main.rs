//! The program as a user meets it: the real binary, real files, real pipes.

// A helper that meets what cannot be should end the test that called it.
#![allow(clippy::unwrap_used)]

mod arrange;
mod bench;
mod check;
mod files;
mod json;
mod other;
mod sheet;
