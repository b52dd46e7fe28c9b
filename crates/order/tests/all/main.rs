//! One binary for all tests of the core from outside.

// A helper that meets what cannot be should end the test that called it.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod brute;
mod count;
mod feasible;
mod graph;
mod implied;
mod large;
mod nearest;
mod places;
mod published;
mod removal;
mod sequence;
mod stuck;
mod windows;
