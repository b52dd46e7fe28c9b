//! The known name nearest to one that is not known.
//!
//! Asked only when something is wrong. A hostile text can hold tens of thousands
//! of unknown names among tens of thousands of known ones, so the comparing is
//! bounded and says nothing once it is used up.

/// The nearest of `known` within `allowed` slips; the first by the alphabet of several.
pub(crate) fn nearest<'k>(
    word: &str,
    known: impl Iterator<Item = &'k str>,
    allowed: usize,
) -> Option<&'k str> {
    let wanted = Outline::of(word);
    known
        .filter(|name| wanted.could_be(&Outline::of(name), allowed))
        .map(|name| (strsim::osa_distance(word, name), name))
        .filter(|(slips, _)| *slips <= allowed)
        .min()
        .map(|(_, name)| name)
}

/// How many slips a suggestion may be away from a word that is surely wrong. In a short word two
/// slips make another word: `all` is not meant for `oil`.
pub(crate) fn slips_for(word: &str) -> usize {
    match word.chars().count() {
        0..=4 => 1,
        5..=7 => 2,
        _ => 3,
    }
}

/// What is enough to see that two words are far apart, without comparing them letter by letter.
struct Outline {
    length: usize,
    letters: u64,
}

impl Outline {
    fn of(word: &str) -> Outline {
        let mut letters = 0u64;
        let mut length = 0;
        for c in word.chars() {
            letters |= 1 << (u32::from(c) % 64);
            length += 1;
        }
        Outline { length, letters }
    }

    /// One slip changes the length by at most one and the set of letters by at most two.
    fn could_be(&self, other: &Outline, allowed: usize) -> bool {
        self.length.abs_diff(other.length) <= allowed
            && (self.letters ^ other.letters).count_ones() as usize <= 2 * allowed
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nearest_and_first() {
        let known = ["timing-cover", "timing-gears", "cover", "covet"];
        let find = |word| nearest(word, known.iter().copied(), slips_for(word));
        assert_eq!(find("timing-covr"), Some("timing-cover"));
        assert_eq!(find("tiiming-gear"), Some("timing-gears"));
        assert_eq!(find("coves"), Some("cover"));
        assert_eq!(find("sump"), None);
    }

    #[test]
    fn outlines_never_hide_a_near_name() {
        // The quick refusal must agree with the full comparison.
        let words = [
            "cap", "cap-1", "cpa", "äöü", "äöx", "clamp", "clap", "x", "",
        ];
        for a in words {
            for b in words {
                for allowed in 0..4 {
                    if strsim::osa_distance(a, b) <= allowed {
                        assert!(Outline::of(a).could_be(&Outline::of(b), allowed), "{a} {b}");
                    }
                }
            }
        }
    }
}
