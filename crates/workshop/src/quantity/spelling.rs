//! From a spelling to its unit: longest first, with a word boundary behind.

use std::sync::LazyLock;

use super::unit::Unit;

/// One way of writing a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spelling {
    /// The text.
    pub text: &'static str,
    /// What it means.
    pub unit: Unit,
}

/// A word that means one size in the US and another in Britain. It is never
/// read; the writer is asked which.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Doubtful {
    /// The text.
    pub text: &'static str,
    /// What it means in the US.
    pub us: Unit,
    /// What it means in Britain.
    pub imperial: Unit,
}

static SPELLINGS: LazyLock<Vec<Spelling>> = LazyLock::new(|| {
    let mut all: Vec<Spelling> = Unit::all()
        .flat_map(|unit| unit.spellings().map(move |text| Spelling { text, unit }))
        .collect();
    // Longest first, so that `N.m` is tried before `N`; then by the alphabet,
    // so that the list never depends on anything else.
    all.sort_by(|a, b| {
        let lengths = b.text.chars().count().cmp(&a.text.chars().count());
        lengths.then_with(|| a.text.cmp(b.text))
    });
    all
});

/// Every spelling of every unit, longest first. This is the list that the
/// language's unit rule is tested against.
pub fn spellings() -> &'static [Spelling] {
    &SPELLINGS
}

/// The words that are asked about rather than read, longest first.
pub fn doubtful_spellings() -> &'static [Doubtful] {
    const PINT: (Unit, Unit) = (Unit::UsPint, Unit::ImperialPint);
    const QUART: (Unit, Unit) = (Unit::UsQuart, Unit::ImperialQuart);
    const GALLON: (Unit, Unit) = (Unit::UsGallon, Unit::ImperialGallon);
    const FLUID_OUNCE: (Unit, Unit) = (Unit::UsFluidOunce, Unit::ImperialFluidOunce);
    const fn doubtful(text: &'static str, (us, imperial): (Unit, Unit)) -> Doubtful {
        Doubtful { text, us, imperial }
    }
    const ALL: &[Doubtful] = &[
        doubtful("fluid ounces", FLUID_OUNCE),
        doubtful("fluid ounce", FLUID_OUNCE),
        doubtful("gallons", GALLON),
        doubtful("gallon", GALLON),
        doubtful("quarts", QUART),
        doubtful("fl oz", FLUID_OUNCE),
        doubtful("fl-oz", FLUID_OUNCE),
        doubtful("pints", PINT),
        doubtful("quart", QUART),
        doubtful("floz", FLUID_OUNCE),
        doubtful("pint", PINT),
        doubtful("gal", GALLON),
        doubtful("pt", PINT),
        doubtful("qt", QUART),
    ];
    ALL
}

/// The unit that `text` begins with, and what stands behind it. `None` when no
/// spelling fits up to a word boundary.
pub fn unit_at_start(text: &str) -> Option<(Spelling, &str)> {
    spellings().iter().find_map(|spelling| {
        let rest = text.strip_prefix(spelling.text)?;
        ends_a_word(spelling.text, rest).then_some((*spelling, rest))
    })
}

/// As [`unit_at_start`], for the words that are asked about.
pub(super) fn doubtful_at_start(text: &str) -> Option<Doubtful> {
    let mut all = doubtful_spellings().iter();
    all.find(|doubtful| {
        text.strip_prefix(doubtful.text)
            .is_some_and(|rest| ends_a_word(doubtful.text, rest))
    })
    .copied()
}

/// Whether a unit may end here: nothing behind it that would make it part of a
/// longer word, such as the `.n` that makes `N.n` no newton.
fn ends_a_word(spelling: &str, rest: &str) -> bool {
    if spelling == "%" {
        return true;
    }
    let mut behind = rest.chars();
    match behind.next() {
        None => true,
        Some('.' | '-' | '·' | '⋅' | '/') => !behind.next().is_some_and(char::is_alphanumeric),
        Some(next) => !(next.is_alphanumeric() || next == '°'),
    }
}

/// The spelling nearest to a text that is none: first one that differs only in
/// capitals, dots, dashes and blanks, else one a slip of the finger away.
/// `None` when nothing is near enough to be worth offering.
pub fn nearest_spelling(text: &str) -> Option<Spelling> {
    let bare = |text: &str| -> String {
        text.chars()
            .filter(|c| !matches!(c, '.' | '-' | '·' | '⋅' | ' ' | '*'))
            .flat_map(char::to_lowercase)
            .collect()
    };
    // A text far longer than any unit cannot be a slip for one, and the
    // comparison below would cost time for nothing.
    if text.chars().count() > 24 {
        return None;
    }
    let given = bare(text);
    if given.is_empty() {
        return None;
    }
    let same_letters = spellings()
        .iter()
        .filter(|spelling| spelling.text.to_lowercase() == text.to_lowercase());
    if let Some(found) = preferred(same_letters) {
        return Some(found);
    }
    let alike = spellings()
        .iter()
        .filter(|spelling| bare(spelling.text) == given);
    if let Some(found) = preferred(alike) {
        return Some(found);
    }
    // One slip in a short unit is most of the unit, so short texts get none.
    let allowed = match given.chars().count() {
        0..=2 => return None,
        3..=5 => 1,
        _ => 2,
    };
    let nearest = spellings()
        .iter()
        .map(|spelling| slips(&given, &bare(spelling.text)))
        .min()
        .filter(|slips| *slips <= allowed)?;
    preferred(
        spellings()
            .iter()
            .filter(|spelling| slips(&given, &bare(spelling.text)) == nearest),
    )
}

/// Of several spellings the printed symbol of its unit, else the first.
fn preferred<'a>(candidates: impl Iterator<Item = &'a Spelling>) -> Option<Spelling> {
    let candidates: Vec<Spelling> = candidates.copied().collect();
    let symbol = candidates
        .iter()
        .find(|spelling| spelling.unit.symbol() == spelling.text);
    symbol.or(candidates.first()).copied()
}

/// How many letters must be added, dropped, changed or swapped with their
/// neighbour to get from one word to the other.
fn slips(from: &str, to: &str) -> usize {
    let from: Vec<char> = from.chars().collect();
    let to: Vec<char> = to.chars().collect();
    let width = to.len() + 1;
    let mut table = vec![0usize; (from.len() + 1) * width];
    let at = |row: usize, column: usize| row * width + column;
    for row in 0..=from.len() {
        for column in 0..=to.len() {
            table[at(row, column)] = if row == 0 || column == 0 {
                row + column
            } else {
                let changed = usize::from(from[row - 1] != to[column - 1]);
                let mut least = (table[at(row - 1, column)] + 1)
                    .min(table[at(row, column - 1)] + 1)
                    .min(table[at(row - 1, column - 1)] + changed);
                let swapped = row > 1
                    && column > 1
                    && from[row - 1] == to[column - 2]
                    && from[row - 2] == to[column - 1];
                if swapped {
                    least = least.min(table[at(row - 2, column - 2)] + 1);
                }
                least
            };
        }
    }
    table[at(from.len(), to.len())]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_spelling_stands_twice_and_longer_ones_come_first() {
        let texts: Vec<&str> = spellings().iter().map(|spelling| spelling.text).collect();
        let mut sorted = texts.clone();
        sorted.sort_unstable();
        sorted.dedup();
        assert_eq!(sorted.len(), texts.len());
        assert!(
            texts
                .windows(2)
                .all(|two| two[0].chars().count() >= two[1].chars().count())
        );
    }

    #[test]
    fn every_spelling_is_read_as_its_own_unit() {
        for spelling in spellings() {
            assert_eq!(
                unit_at_start(spelling.text),
                Some((*spelling, "")),
                "{}",
                spelling.text
            );
        }
    }

    #[test]
    fn doubtful_words_are_no_unit() {
        for doubtful in doubtful_spellings() {
            assert_eq!(unit_at_start(doubtful.text), None, "{}", doubtful.text);
            assert_eq!(doubtful_at_start(doubtful.text), Some(*doubtful));
        }
    }

    #[test]
    fn a_unit_ends_at_a_word_boundary() {
        assert_eq!(unit_at_start("N.n"), None);
        assert_eq!(unit_at_start("inside"), None);
        assert_eq!(
            unit_at_start("in..3 in").map(|(s, rest)| (s.unit, rest)),
            Some((Unit::Inch, "..3 in"))
        );
        assert_eq!(
            unit_at_start("N.m.").map(|(s, rest)| (s.unit, rest)),
            Some((Unit::NewtonMetre, "."))
        );
        assert_eq!(
            unit_at_start("min").map(|(s, _)| s.unit),
            Some(Unit::Minute)
        );
    }

    #[test]
    fn near_misses_are_offered() {
        let near = |text: &str| nearest_spelling(text).map(|spelling| spelling.text);
        assert_eq!(near("NM"), Some("Nm"));
        assert_eq!(near("n.m"), Some("N.m"));
        assert_eq!(near("Ft-Lbs"), Some("ft-lbs"));
        assert_eq!(near("Bar"), Some("bar"));
        assert_eq!(near("lbf.fr"), Some("lbf.ft"));
        assert_eq!(near("thuo"), Some("thou"));
        assert_eq!(near("bananas"), None);
        assert_eq!(near(&"x".repeat(10_000)), None);
    }
}
