//! Property classes: how strong a fastener is.
//!
//! ISO 898-1 bolts and screws, SAE J429 grades, stainless A2 and A4, and the
//! nuts of ISO 898-2 that go with them.

mod bolt;
mod nut;
mod proof;
mod tables;

pub use bolt::{BoltClass, ClassProblem, SaeGrade, StainlessClass, SteelClass};
pub use nut::NutClass;
pub use proof::proof_load;

use crate::quantity::Pressure;
use crate::source::Source;

/// What a class guarantees at a given size.
#[derive(Debug, Clone, PartialEq)]
pub struct Strength {
    /// The stress it bears without lasting stretch. For stainless steel, which
    /// has no proof stress, the 0.2 % proof strength.
    pub proof: Pressure,
    /// The yield strength, or the 0.2 % proof strength.
    pub yield_strength: Pressure,
    /// The tensile strength.
    pub tensile: Pressure,
    /// Where the numbers come from.
    pub source: Source,
}
