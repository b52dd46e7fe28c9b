//! Classes of nuts.

use super::{BoltClass, SteelClass};
use crate::quantity::Pressure;
use crate::source::Source;

/// A nut's class of ISO 898-2. A nut of full height carries, without
/// stripping, the bolt whose first number is no higher than its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum NutClass {
    /// 04, thin
    Thin04,
    /// 05, thin
    Thin05,
    /// 5
    N5,
    /// 6
    N6,
    /// 8
    N8,
    /// 9
    N9,
    /// 10
    N10,
    /// 12
    N12,
}

impl NutClass {
    /// Reads `8`, `10`, `04`.
    pub fn read(text: &str) -> Option<NutClass> {
        Some(match text.trim() {
            "04" => NutClass::Thin04,
            "05" => NutClass::Thin05,
            "5" => NutClass::N5,
            "6" => NutClass::N6,
            "8" => NutClass::N8,
            "9" => NutClass::N9,
            "10" => NutClass::N10,
            "12" => NutClass::N12,
            _ => return None,
        })
    }

    /// The class as stamped.
    pub fn designation(self) -> &'static str {
        match self {
            NutClass::Thin04 => "04",
            NutClass::Thin05 => "05",
            NutClass::N5 => "5",
            NutClass::N6 => "6",
            NutClass::N8 => "8",
            NutClass::N9 => "9",
            NutClass::N10 => "10",
            NutClass::N12 => "12",
        }
    }

    /// Whether a nut of this class is as strong as a bolt of that one (ISO
    /// 898-2, Table 1, from memory). `None` for grades and stainless, which
    /// have nuts of their own.
    pub fn carries(self, bolt: BoltClass) -> Option<bool> {
        let BoltClass::Steel(class) = bolt else {
            return None;
        };
        let needed = match class {
            SteelClass::C4_6 | SteelClass::C4_8 | SteelClass::C5_6 | SteelClass::C5_8 => {
                NutClass::N5
            }
            SteelClass::C6_8 => NutClass::N6,
            SteelClass::C8_8 => NutClass::N8,
            SteelClass::C9_8 => NutClass::N9,
            SteelClass::C10_9 => NutClass::N10,
            SteelClass::C12_9 => NutClass::N12,
        };
        Some(self >= needed)
    }

    /// Stress at proof load of a thin nut, whose thread strips before its bolt
    /// breaks: 380 MPa for 04, 500 MPa for 05 (ISO 898-2 and 898-6, read in a
    /// copy of the latter). `None` for nuts of full height.
    pub fn thin_proof_stress(self) -> Option<(Pressure, Source)> {
        let stress = match self {
            NutClass::Thin04 => 380.0,
            NutClass::Thin05 => 500.0,
            _ => return None,
        };
        Some((
            Pressure::megapascals(stress),
            Source::copied("ISO 898-6, stress under proof load"),
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_nut_carries_the_bolt_of_its_own_number_and_below() {
        let bolt = |text: &str| BoltClass::read(text, None).unwrap();
        let nut = |text: &str| NutClass::read(text).unwrap();
        assert_eq!(nut("8").carries(bolt("8.8")), Some(true));
        assert_eq!(nut("8").carries(bolt("10.9")), Some(false));
        assert_eq!(nut("10").carries(bolt("4.6")), Some(true));
        assert_eq!(nut("04").carries(bolt("4.6")), Some(false));
        assert_eq!(nut("8").carries(bolt("SAE 5")), None);
        for text in ["04", "05", "5", "6", "8", "9", "10", "12"] {
            assert_eq!(nut(text).designation(), text);
        }
        assert_eq!(NutClass::read("8.8"), None);
    }
}
