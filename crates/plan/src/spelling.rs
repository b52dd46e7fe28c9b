//! One spelling for words that the trade spells two ways.
//!
//! The tree keeps what was written. Whoever compares a material with a table, or
//! a tool with another, must not have to know that half the world writes
//! `aluminum`.

use std::borrow::Cow;

/// Pairs read alike, the second being the one the plan keeps. Common practice, no source.
const PAIRS: &[(&str, &str)] = &[
    ("aluminum", "aluminium"),
    ("anodized", "anodised"),
    ("calliper", "caliper"),
    ("callipers", "calipers"),
    ("center", "centre"),
    ("color", "colour"),
    ("fiber", "fibre"),
    ("gage", "gauge"),
    ("gages", "gauges"),
    ("galvanized", "galvanised"),
    ("gray", "grey"),
    ("meter", "metre"),
    ("mold", "mould"),
    ("sulfur", "sulphur"),
    ("tire", "tyre"),
    ("tires", "tyres"),
    ("vise", "vice"),
];

/// The word in small letters; borrowed when it is so already.
pub(crate) fn small(word: &str) -> Cow<'_, str> {
    let capitals = match word.is_ascii() {
        true => word.bytes().any(|b| b.is_ascii_uppercase()),
        false => word.chars().any(char::is_uppercase),
    };
    if capitals {
        Cow::Owned(word.to_lowercase())
    } else {
        Cow::Borrowed(word)
    }
}

/// A word or name in the one spelling: small letters, and each of its hyphened words the
/// British one of its pair.
pub(crate) fn one(word: &str) -> Cow<'_, str> {
    let word = small(word);
    let listed = |part: &str| PAIRS.iter().find(|(other, _)| *other == part);
    if !word.split('-').any(|part| listed(part).is_some()) {
        return word;
    }
    let parts: Vec<&str> = word
        .split('-')
        .map(|part| listed(part).map_or(part, |(_, kept)| *kept))
        .collect();
    Cow::Owned(parts.join("-"))
}

/// A size in one spelling: `13mm` and `13  mm` are `13 mm`, `t30` is `T30`.
pub(crate) fn size(written: &str) -> String {
    let words: Vec<&str> = written.split_whitespace().collect();
    let joined = words.join(" ");
    let begins_with_digit = joined.starts_with(|c: char| c.is_ascii_digit());
    if !begins_with_digit {
        return joined.to_uppercase();
    }
    // Between a figure and a unit written tight against it goes one blank.
    match joined.find(|c: char| c.is_alphabetic()) {
        Some(at) if joined[..at].ends_with(|c: char| c.is_ascii_digit()) => {
            format!("{} {}", &joined[..at], &joined[at..])
        }
        _ => joined,
    }
}

/// The noun of a fastener in the singular: `bolts` is `bolt`.
pub(crate) fn singular(noun: &str) -> String {
    let noun = one(noun);
    match noun.strip_suffix('s') {
        Some(stem) if !stem.ends_with('s') && stem.chars().count() > 2 => stem.to_owned(),
        _ => noun.into_owned(),
    }
}

/// Words for fasteners that do not end in the noun they belong to. A rivet is in or out like a
/// clip. Common practice, no source.
const NOUNS: &[(&str, &str)] = &[
    ("banjo", "bolt"),
    ("capscrew", "screw"),
    ("circlip", "clip"),
    ("cotter", "pin"),
    ("grub", "screw"),
    ("locknut", "nut"),
    ("rivet", "clip"),
    ("setscrew", "screw"),
    ("wingnut", "nut"),
];

/// The noun that says how a fastener behaves, of one in the singular: `nut` for `castle-nut`.
pub(crate) fn base_noun(noun: &str) -> String {
    let last = noun.rsplit('-').next().unwrap_or(noun);
    let listed = NOUNS.iter().find(|(known, _)| *known == last);
    listed.map_or(last, |(_, base)| base).to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pairs_become_one() {
        assert_eq!(one("Aluminum"), "aluminium");
        assert_eq!(one("feeler-gage"), "feeler-gauge");
        assert_eq!(one("gray-iron"), "grey-iron");
        assert!(matches!(one("steel"), Cow::Borrowed("steel")));
    }

    #[test]
    fn sizes_become_one() {
        assert_eq!(size("13mm"), "13 mm");
        assert_eq!(size("13   mm"), "13 mm");
        assert_eq!(size("5/8 in"), "5/8 in");
        assert_eq!(size("5/8in"), "5/8 in");
        assert_eq!(size("t30"), "T30");
        assert_eq!(size("13"), "13");
    }

    #[test]
    fn nouns_become_singular() {
        assert_eq!(singular("bolts"), "bolt");
        assert_eq!(singular("pin"), "pin");
        assert_eq!(singular("split-pins"), "split-pin");
        assert_eq!(singular("boss"), "boss");
        for (word, base) in [
            ("grub-screw", "screw"),
            ("grub", "screw"),
            ("castle-nut", "nut"),
            ("banjo", "bolt"),
            ("banjo-bolt", "bolt"),
            ("split-pin", "pin"),
            ("circlip", "clip"),
            ("snap-ring", "ring"),
            ("dowel", "dowel"),
        ] {
            assert_eq!(base_noun(word), base, "{word}");
        }
    }
}
