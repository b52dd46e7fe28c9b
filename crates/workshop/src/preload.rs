//! Torque and clamp load.
//!
//! How much of a torque becomes clamp load depends on friction, and the
//! published factors disagree by two to one. So friction is always an input
//! with its source ([`NutFactor`], [`Friction`]), and no function here has one
//! of its own.

mod long_form;
mod nut_factor;
mod proof_share;
mod sample;
mod scatter;
mod short_form;
mod yield_limit;

pub use long_form::{Bearing, Friction, handbook_long_form, textbook_long_form};
pub use nut_factor::{FrictionCondition, NutFactor, published_frictions, published_nut_factors};
pub use proof_share::{load_for_share, share_of_proof};
pub use sample::{PreloadSample, SampleProblem};
pub use scatter::{
    ControlMethod, LoadSpread, TorqueFactors, control_methods, spread, torque_factors,
};
pub use short_form::{clamp_load, nut_factor_from_test, torque_for};
pub use yield_limit::{YieldLimit, yield_limit};
