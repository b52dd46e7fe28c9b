//! The nearest known word to one that is not known.

/// The candidate nearest to `word` by Damerau-Levenshtein distance (letters
/// added, dropped, changed, or swapped with their neighbour), capitals put
/// aside. It may be away by a third of the word's length, and by one letter in
/// any word of two letters or more. Of several equally near ones the first.
pub fn nearest_word<'a>(
    word: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let word = word.to_lowercase();
    let length = word.chars().count();
    // A word of one letter is one letter away from all others. One longer than
    // any name would only cost time.
    if !(2..=64).contains(&length) {
        return None;
    }
    let mut allowed = (length / 3).max(1);
    let mut nearest = None;
    for candidate in candidates {
        let known = candidate.to_lowercase();
        if known.chars().count().abs_diff(length) > allowed {
            continue;
        }
        match strsim::damerau_levenshtein(&word, &known) {
            0 => return Some(candidate),
            away if away < allowed || (away == allowed && nearest.is_none()) => {
                (allowed, nearest) = (away, Some(candidate));
            }
            _ => {}
        }
    }
    nearest
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_is_mended() {
        let words = [
            "fit",
            "tighten",
            "fasteners",
            "timing-cover",
            "timing-gears",
        ];
        assert_eq!(nearest_word("fti", words), Some("fit"));
        assert_eq!(nearest_word("tihgten", words), Some("tighten"));
        assert_eq!(nearest_word("Fastener", words), Some("fasteners"));
        assert_eq!(nearest_word("timing-covr", words), Some("timing-cover"));
        assert_eq!(nearest_word("FIT", words), Some("fit"));
    }

    #[test]
    fn what_is_far_away_is_not_offered() {
        assert_eq!(nearest_word("banana", ["fit", "tighten"]), None);
        assert_eq!(nearest_word("x", ["y"]), None);
        assert_eq!(nearest_word("", ["a"]), None);
        assert_eq!(nearest_word("fit", []), None);
        assert_eq!(nearest_word(&"a".repeat(100_000), ["a"]), None);
    }

    #[test]
    fn of_equals_the_first_is_taken() {
        assert_eq!(nearest_word("cat", ["car", "cap"]), Some("car"));
        assert_eq!(nearest_word("cat", ["cap", "car"]), Some("cap"));
    }
}
