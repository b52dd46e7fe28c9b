//! The workshop held against published values, and against itself.
//!
//! Every value has its source beside it. A printed worked example is met to
//! half its last digit, a definition to one part in a million million.

#![allow(clippy::unwrap_used, reason = "a failed test may stop where it stands")]

mod classes;
mod fits;
mod preload;
mod properties;
mod strip;
mod threads;
mod tightening;
mod units;

/// Within a share of the wanted value.
fn within(found: f64, wanted: f64, share: f64) {
    let off = (found - wanted).abs() / wanted.abs();
    assert!(off <= share, "{found} against {wanted}: off by {off:e}");
}

/// Within an absolute distance.
fn near(found: f64, wanted: f64, by: f64) {
    assert!((found - wanted).abs() <= by, "{found} against {wanted}");
}

fn thread(text: &str) -> workshop::thread::Thread {
    workshop::thread::Thread::read(text).unwrap()
}
