//! One binary for every test that crosses crates.

// A test that cannot go on should fall over where it stands.
#![allow(clippy::unwrap_used)]

mod examples;
mod house;
mod many;
mod pages;
mod plans;
mod rules;
mod spoilt;
mod support;
mod units;
mod wherever;
