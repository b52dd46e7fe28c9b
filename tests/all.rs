//! One binary for every test that crosses crates.
