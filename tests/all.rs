//! One binary for every test that crosses crates.

mod examples;
mod house;
mod pages;
mod plans;
mod rules;
mod spoilt;
mod support;
mod units;
mod wherever;
