//! Thread families that are known by name and not computed.

/// A thread family that is known by name. Its form differs from the 60 degree
/// triangle (Whitworth's is 55, BA's 47.5), or it is a pipe thread whose size
/// is not its diameter, so that a formula for the others would be wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Family {
    /// British Standard Pipe, parallel (G; ISO 228-1).
    BspParallel,
    /// British Standard Pipe, taper (R, Rc, Rp; ISO 7-1).
    BspTaper,
    /// British Standard Whitworth.
    Whitworth,
    /// British Standard Fine.
    WhitworthFine,
    /// British Association.
    Association,
    /// British Standard Cycle.
    Cycle,
    /// British Standard Brass.
    Brass,
    /// American National Pipe, taper.
    AmericanPipe,
    /// ISO trapezoidal, for lead screws.
    Trapezoidal,
}

/// The words that name each family. Longer ones stand first where one begins
/// another.
const WORDS: &[(&str, Family)] = &[
    ("BSPT", Family::BspTaper),
    ("BSPP", Family::BspParallel),
    ("BSP", Family::BspParallel),
    ("RC", Family::BspTaper),
    ("RP", Family::BspTaper),
    ("R", Family::BspTaper),
    ("G", Family::BspParallel),
    ("BSW", Family::Whitworth),
    ("WHITWORTH", Family::Whitworth),
    ("BSF", Family::WhitworthFine),
    ("BSCY", Family::Cycle),
    ("BSC", Family::Cycle),
    ("CEI", Family::Cycle),
    ("BA", Family::Association),
    ("NPTF", Family::AmericanPipe),
    ("NPT", Family::AmericanPipe),
    ("BSB", Family::Brass),
    ("TR", Family::Trapezoidal),
];

impl Family {
    /// The letters of the family.
    pub fn letters(self) -> &'static str {
        match self {
            Family::BspParallel => "BSPP",
            Family::BspTaper => "BSPT",
            Family::Whitworth => "BSW",
            Family::WhitworthFine => "BSF",
            Family::Association => "BA",
            Family::Cycle => "BSC",
            Family::Brass => "BSB",
            Family::AmericanPipe => "NPT",
            Family::Trapezoidal => "Tr",
        }
    }

    /// The family in words.
    pub fn words(self) -> &'static str {
        match self {
            Family::BspParallel => "British Standard Pipe, parallel",
            Family::BspTaper => "British Standard Pipe, taper",
            Family::Whitworth => "British Standard Whitworth",
            Family::WhitworthFine => "British Standard Fine",
            Family::Association => "British Association",
            Family::Cycle => "British Standard Cycle",
            Family::Brass => "British Standard Brass",
            Family::AmericanPipe => "American National Pipe, taper",
            Family::Trapezoidal => "ISO trapezoidal",
        }
    }

    fn of(word: &str) -> Option<Family> {
        let upper = word.to_ascii_uppercase();
        WORDS
            .iter()
            .find(|(name, _)| *name == upper)
            .map(|(_, family)| *family)
    }
}

/// A thread of a family that is known by name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NamedThread {
    family: Family,
    size: String,
}

impl NamedThread {
    /// The family.
    pub fn family(&self) -> Family {
        self.family
    }

    /// The size as written: `1/4`, `2`.
    pub fn size(&self) -> &str {
        &self.size
    }

    pub(super) fn designation(&self) -> String {
        format!("{} {}", self.size, self.family.letters())
    }

    /// Reads `G 1/4`, `G1/4`, `1/4 BSP`, `BSP 1/4`, `2BA`, `5/16-18 BSW`, `Tr 20x4`.
    pub(super) fn read(text: &str) -> Option<NamedThread> {
        let starts_size = |c: char| c.is_ascii_digit() || c == '.';
        let letters_first = text.find(starts_size).filter(|at| *at > 0);
        let (word, size) = match letters_first {
            Some(at) => (text[..at].trim(), text[at..].trim()),
            None => {
                let letters = text.find(|c: char| c.is_ascii_alphabetic())?;
                (text[letters..].trim(), text[..letters].trim())
            }
        };
        let family = Family::of(word)?;
        let is_size = size.starts_with(starts_size)
            && size
                .chars()
                .all(|c| c.is_ascii_digit() || matches!(c, '/' | '.' | '-' | ' ' | 'x'));
        is_size.then(|| NamedThread {
            family,
            size: size.to_owned(),
        })
    }
}
