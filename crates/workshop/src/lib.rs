//! Bench arithmetic: quantities with their units, threads, property classes,
//! torque, clamp load, stripping, patterns, fits and clearances.
//!
//! Everything here is a plain function from given values to a result. Each
//! formula names its source and units in its documentation, and each result
//! carries its working, so that whoever prints it can show where a number came
//! from. Nothing here fills in a torque that nobody gave.
//!
//! This crate must never know plans, steps, findings, files or screens. Types
//! of the unit library stay inside: no public signature shows one.

pub mod source;
pub mod working;

pub mod quantity;

pub mod thread;

pub mod class;
pub mod drive;

pub mod preload;

pub mod bearing;
pub mod strip;

pub mod joint;

pub mod tightening;

pub mod cure;
pub mod fits;
