//! The classes of bolts, screws and studs, and how they are written.

use super::{Strength, tables};
use crate::quantity::Length;
use crate::thread::Thread;

/// A class of ISO 898-1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SteelClass {
    /// 4.6
    C4_6,
    /// 4.8
    C4_8,
    /// 5.6
    C5_6,
    /// 5.8
    C5_8,
    /// 6.8
    C6_8,
    /// 8.8
    C8_8,
    /// 9.8
    C9_8,
    /// 10.9
    C10_9,
    /// 12.9
    C12_9,
}

/// A grade of SAE J429.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SaeGrade {
    /// 1
    G1,
    /// 2
    G2,
    /// 4 (studs)
    G4,
    /// 5
    G5,
    /// 5.2
    G5_2,
    /// 8
    G8,
    /// 8.2
    G8_2,
}

/// A stainless class of ISO 3506-1: the steel (A2 or A4) and the number that is
/// a tenth of the tensile strength in MPa.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StainlessClass {
    /// A2-50 or A4-50
    C50 {
        /// 2 for A2, 4 for A4.
        steel: u8,
    },
    /// A2-70 or A4-70
    C70 {
        /// 2 for A2, 4 for A4.
        steel: u8,
    },
    /// A2-80 or A4-80
    C80 {
        /// 2 for A2, 4 for A4.
        steel: u8,
    },
}

/// The class of a bolt, screw or stud.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BoltClass {
    /// ISO 898-1.
    Steel(SteelClass),
    /// SAE J429.
    Sae(SaeGrade),
    /// ISO 3506-1.
    Stainless(StainlessClass),
}

/// Why a text could not be read as a bolt's class.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ClassProblem {
    /// No class known here.
    Unknown {
        /// The text as written.
        given: String,
    },
    /// A bare number: the grade of an inch bolt and the class of a nut look
    /// the same.
    GradeOrNut {
        /// The text as written.
        given: String,
    },
}

impl ClassProblem {
    /// The problem in plain words.
    pub fn describe(&self) -> String {
        match self {
            ClassProblem::Unknown { given } => {
                let given: String = given.chars().take(40).collect();
                format!(
                    "“{given}” is not a strength class known here; write 8.8, 10.9, A2-70 or SAE 5 as it is stamped on the head"
                )
            }
            ClassProblem::GradeOrNut { given } => format!(
                "“{given}” alone may be an inch grade or the class of a nut; write SAE {given} for the grade, or both figures of the class, as in 8.8"
            ),
        }
    }
}

const STEEL: [(&str, SteelClass); 9] = [
    ("4.6", SteelClass::C4_6),
    ("4.8", SteelClass::C4_8),
    ("5.6", SteelClass::C5_6),
    ("5.8", SteelClass::C5_8),
    ("6.8", SteelClass::C6_8),
    ("8.8", SteelClass::C8_8),
    ("9.8", SteelClass::C9_8),
    ("10.9", SteelClass::C10_9),
    ("12.9", SteelClass::C12_9),
];

const SAE: [(&str, SaeGrade); 7] = [
    ("1", SaeGrade::G1),
    ("2", SaeGrade::G2),
    ("4", SaeGrade::G4),
    ("5", SaeGrade::G5),
    ("5.2", SaeGrade::G5_2),
    ("8", SaeGrade::G8),
    ("8.2", SaeGrade::G8_2),
];

impl BoltClass {
    /// Reads `8.8`, `A2-70`, `SAE 5`, `grade 8`. A bare `5` is a grade on an
    /// inch thread and is asked about on any other.
    ///
    /// # Errors
    /// When it is no class, or could be two things; see [`ClassProblem`].
    pub fn read(text: &str, thread: Option<&Thread>) -> Result<BoltClass, ClassProblem> {
        let given = text.trim();
        let upper = given.to_ascii_uppercase();
        let bare = ["CLASS ", "PROPERTY CLASS "]
            .iter()
            .find_map(|word| upper.strip_prefix(word));
        let bare = bare.unwrap_or(&upper).trim();
        if let Some((_, class)) = STEEL.iter().find(|(name, _)| *name == bare) {
            return Ok(BoltClass::Steel(*class));
        }
        if let Some(class) = stainless(bare) {
            return Ok(BoltClass::Stainless(class));
        }
        let named = ["SAE GRADE ", "SAE-", "SAE", "GRADE-", "GRADE", "GR.", "GR "];
        let grade = named.iter().find_map(|word| bare.strip_prefix(word));
        let found = SAE
            .iter()
            .find(|(name, _)| *name == grade.unwrap_or(bare).trim());
        match (found, grade, thread) {
            (Some((_, found)), Some(_), _) | (Some((_, found)), None, Some(Thread::Unified(_))) => {
                Ok(BoltClass::Sae(*found))
            }
            (Some(_), None, _) => Err(ClassProblem::GradeOrNut {
                given: given.to_owned(),
            }),
            (None, ..) => Err(ClassProblem::Unknown {
                given: given.to_owned(),
            }),
        }
    }

    /// The class as stamped: `8.8`, `A2-70`, `SAE 5`.
    pub fn designation(self) -> String {
        match self {
            BoltClass::Steel(class) => {
                let found = STEEL.iter().find(|(_, of)| *of == class);
                found.map_or_else(String::new, |(name, _)| (*name).to_owned())
            }
            BoltClass::Sae(grade) => {
                let found = SAE.iter().find(|(_, of)| *of == grade);
                found.map_or_else(String::new, |(name, _)| format!("SAE {name}"))
            }
            BoltClass::Stainless(StainlessClass::C50 { steel }) => format!("A{steel}-50"),
            BoltClass::Stainless(StainlessClass::C70 { steel }) => format!("A{steel}-70"),
            BoltClass::Stainless(StainlessClass::C80 { steel }) => format!("A{steel}-80"),
        }
    }

    /// What the class guarantees at a nominal diameter. `None` outside the
    /// sizes that the standard covers.
    pub fn strength(self, diameter: Length) -> Option<Strength> {
        match self {
            BoltClass::Steel(class) => tables::steel(class, diameter),
            BoltClass::Sae(grade) => tables::sae(grade, diameter),
            BoltClass::Stainless(class) => Some(tables::stainless(class)),
        }
    }
}

/// `A2-70`, `A4-80`; the low-carbon `A4L-80` is as strong.
fn stainless(text: &str) -> Option<StainlessClass> {
    let (steel, number) = text.split_once('-')?;
    let steel = match steel {
        "A2" | "A2L" => 2,
        "A4" | "A4L" => 4,
        _ => return None,
    };
    match number {
        "50" => Some(StainlessClass::C50 { steel }),
        "70" => Some(StainlessClass::C70 { steel }),
        "80" => Some(StainlessClass::C80 { steel }),
        _ => None,
    }
}

impl std::fmt::Display for BoltClass {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.designation())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_what_is_stamped_on_the_head() {
        let read = |text: &str| BoltClass::read(text, None).map(BoltClass::designation);
        for text in [
            "4.6", "8.8", "10.9", "12.9", "A2-70", "A4-80", "SAE 5", "SAE 8.2",
        ] {
            assert_eq!(read(text), Ok(text.to_owned()));
        }
        assert_eq!(read("class 8.8"), Ok("8.8".to_owned()));
        assert_eq!(read("grade 8"), Ok("SAE 8".to_owned()));
        assert_eq!(read("SAE grade 2"), Ok("SAE 2".to_owned()));
        assert_eq!(read("a4l-80"), Ok("A4-80".to_owned()));
    }

    #[test]
    fn a_bare_number_is_a_grade_only_on_an_inch_thread() {
        let inch = Thread::read("3/8-24 UNF").unwrap();
        let metric = Thread::read("M8").unwrap();
        assert_eq!(
            BoltClass::read("5", Some(&inch)),
            Ok(BoltClass::Sae(SaeGrade::G5))
        );
        assert!(matches!(
            BoltClass::read("8", Some(&metric)),
            Err(ClassProblem::GradeOrNut { .. })
        ));
        assert!(matches!(
            BoltClass::read("8", None),
            Err(ClassProblem::GradeOrNut { .. })
        ));
        assert!(matches!(
            BoltClass::read("8.9", None),
            Err(ClassProblem::Unknown { .. })
        ));
        assert!(matches!(
            BoltClass::read("", None),
            Err(ClassProblem::Unknown { .. })
        ));
    }
}
