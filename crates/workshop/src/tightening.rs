//! Tightening: what to set the wrench to, through an adapter, above running
//! torque, in passes, in which order.

mod adapter;
mod passes;
pub mod pattern;
mod running;
mod slip;
mod table;
mod wrench;

pub use adapter::{Adapter, AdapterProblem, delivered, setting};
pub use passes::{
    PassScheme, Stage, StageProblem, Turn, check_stages, pass_schemes, pass_torques, schedule,
    total_turn,
};
pub use running::{RunningTorqueProblem, castle_nut, with_running_torque};
pub use slip::{UnitSlip, inch_foot_slip};
pub use table::{TableTorque, TorqueColumn, table_torque};
pub use wrench::{DEPENDABLE_FROM, Reach, Wrench, WrenchProblem, clicker_accuracy};
