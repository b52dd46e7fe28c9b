//! Quantities as a mechanic writes them: the figure, its unit, and the value.
//!
//! [`Measure`] is what was written (`22 +- 2 N.m`, `0.05..0.12 mm`,
//! `15/16 in`), kept to the letter and printed back unchanged. [`Amount`] is
//! one value with the unit it is shown in, and [`Torque`], [`Length`] and their
//! kin are amounts whose kind the compiler checks. [`Unit`] is a closed list.

mod amount;
mod companion;
mod dimension;
mod figure;
mod kinds;
mod measure;
mod problem;
mod read;
mod rounding;
mod spelling;
mod system;
mod unit;

pub use amount::Amount;
pub use dimension::Dimension;
pub use figure::Figure;
pub use kinds::{
    Angle, Area, Force, Length, Mass, Pressure, Temperature, TemperatureDifference, Time, Torque,
    Volume,
};
pub use measure::{Measure, SAME_WITHIN, Shape, same};
pub use problem::MeasureProblem;
pub use rounding::{plain, rounded, trimmed};
pub use spelling::{
    Doubtful, Spelling, doubtful_spellings, nearest_spelling, spellings, unit_at_start,
};
pub use system::System;
pub use unit::Unit;
