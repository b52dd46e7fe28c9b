//! Findings and checklists as JSON, for other programs.
//!
//! The types here are the published form, described by the schemas in
//! `crates/sheet/schema/`. They are copied field by field from the inner ones,
//! so that a change inside cannot change what others read. What is not there is
//! `null`, never left out. A change that takes something away or gives it
//! another meaning raises [`VERSION`].

mod check;
mod kit;
mod sheet;
mod torques;

pub use check::{CheckedPlan, Report};
pub use kit::Kits;
pub use sheet::{Sheet, Sheets};
pub use torques::{TorqueSheet, TorqueSheets};

/// The version of both forms.
pub const VERSION: u32 = 1;

/// The schema of [`Report`].
pub const CHECK_SCHEMA: &str = include_str!("../schema/check.schema.json");

/// The schema of [`Sheets`].
pub const SHEET_SCHEMA: &str = include_str!("../schema/sheet.schema.json");

/// The schema of [`TorqueSheets`].
pub const TORQUES_SCHEMA: &str = include_str!("../schema/torques.schema.json");

/// The schema of [`Kits`].
pub const KIT_SCHEMA: &str = include_str!("../schema/kit.schema.json");

/// `value` as JSON text, indented, with a line end.
///
/// # Errors
/// When it cannot be written as JSON; no value of this module is such a one.
pub fn text(value: &impl serde::Serialize) -> Result<String, serde_json::Error> {
    serde_json::to_string_pretty(value).map(|text| text + "\n")
}
