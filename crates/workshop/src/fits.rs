//! Clearances: shims, ring gaps, running fits, backlash, and what heat does to
//! them.

mod backlash;
mod clearance;
mod growth;
mod readings;
mod ring_gap;
mod shim;

pub use backlash::shim_for_backlash;
pub use clearance::{bearing_clearance_rule, clearance, end_float};
pub use growth::{
    Expansion, FitProblem, clearance_when_hot, expansions, growth, temperature_to_clear,
};
pub use readings::{Readings, Verdict, judge};
pub use ring_gap::{filed_gap, gap_change, gap_rules};
pub use shim::{
    ShimChoice, ShimProblem, choose_shims, pack_for_preload, replacement_shim, shim_for_gap,
};
