//! The program as a user meets it: the real binary, real files, real pipes.

// A helper that meets what cannot be should end the test that called it.
#![allow(clippy::unwrap_used)]

mod arrange;
mod bench;
mod calc;
mod check;
mod files;
mod json;
mod kit;
mod other;
mod sheet;
mod torques;
