//! The numbers of the classes.

use super::{SaeGrade, StainlessClass, SteelClass, Strength};
use crate::quantity::{Length, Pressure, SAME_WITHIN};
use crate::source::Source;

/// ISO 898-1:2013. Proof stress recovered from 113 printed proof loads (load
/// over stress area); yield and tensile strength read in summaries of BS EN
/// ISO 898-1. All in MPa.
pub(super) fn steel(class: SteelClass, diameter: Length) -> Option<Strength> {
    // 8.8 is heat-treated otherwise above 16 mm, and 9.8 ends there.
    let small = diameter.in_millimetres() <= 16.0 * (1.0 + SAME_WITHIN);
    let (proof, yields, tensile) = match class {
        SteelClass::C4_6 => (225.0, 240.0, 400.0),
        SteelClass::C4_8 => (310.0, 340.0, 420.0),
        SteelClass::C5_6 => (280.0, 300.0, 500.0),
        SteelClass::C5_8 => (380.0, 420.0, 520.0),
        SteelClass::C6_8 => (440.0, 480.0, 600.0),
        SteelClass::C8_8 if small => (580.0, 640.0, 800.0),
        SteelClass::C8_8 => (600.0, 660.0, 830.0),
        SteelClass::C9_8 if small => (650.0, 720.0, 900.0),
        SteelClass::C9_8 => return None,
        SteelClass::C10_9 => (830.0, 940.0, 1040.0),
        SteelClass::C12_9 => (970.0, 1100.0, 1220.0),
    };
    Some(Strength {
        proof: Pressure::megapascals(proof),
        yield_strength: Pressure::megapascals(yields),
        tensile: Pressure::megapascals(tensile),
        source: Source::copied("ISO 898-1:2013"),
    })
}

/// SAE J429, as tabled in Shigley and Mischke, 5th ed. (1989), p. 341. All in
/// ksi, sizes in inches. The table begins at 1/4 in; smaller screws are taken
/// as its smallest.
pub(super) fn sae(grade: SaeGrade, diameter: Length) -> Option<Strength> {
    let d = diameter.in_inches();
    let up_to = |limit: f64| d <= limit * (1.0 + SAME_WITHIN);
    let (proof, yields, tensile) = match grade {
        SaeGrade::G1 if up_to(1.5) => (33.0, 36.0, 60.0),
        SaeGrade::G2 if up_to(0.75) => (55.0, 57.0, 74.0),
        SaeGrade::G2 if up_to(1.5) => (33.0, 36.0, 60.0),
        SaeGrade::G4 if up_to(1.5) => (65.0, 100.0, 115.0),
        SaeGrade::G5 | SaeGrade::G5_2 if up_to(1.0) => (85.0, 92.0, 120.0),
        SaeGrade::G5 if up_to(1.5) => (74.0, 81.0, 105.0),
        SaeGrade::G8 if up_to(1.5) => (120.0, 130.0, 150.0),
        SaeGrade::G8_2 if up_to(1.0) => (120.0, 130.0, 150.0),
        _ => return None,
    };
    Some(Strength {
        proof: Pressure::ksi(proof),
        yield_strength: Pressure::ksi(yields),
        tensile: Pressure::ksi(tensile),
        source: Source::copied("SAE J429, by Shigley and Mischke, 5th ed., p. 341"),
    })
}

/// ISO 3506-1, from memory; the tensile strength is ten times the number in
/// the class. 0.2 % proof strength and tensile strength in MPa.
pub(super) fn stainless(class: StainlessClass) -> Strength {
    let (proof, tensile) = match class {
        StainlessClass::C50 { .. } => (210.0, 500.0),
        StainlessClass::C70 { .. } => (450.0, 700.0),
        StainlessClass::C80 { .. } => (600.0, 800.0),
    };
    Strength {
        proof: Pressure::megapascals(proof),
        yield_strength: Pressure::megapascals(proof),
        tensile: Pressure::megapascals(tensile),
        source: Source::memory("ISO 3506-1"),
    }
}
