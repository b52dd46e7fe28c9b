//! The kinds of tools known by name, and when a word is a slip for one of them.
//!
//! A plan may ask for any tool. The list only serves to tell `spaner` from a
//! tool nobody here has heard of, and `ring-wrench` from `ring-spanner`.

use std::borrow::Cow;

use crate::near;
use crate::spelling;

/// Tools by their usual names, and the drives that stand for the tool that fits them.
/// Common practice, no source.
const KNOWN: &[&str] = &[
    "adjustable-spanner",
    "alignment-tool",
    "angle-gauge",
    "bit",
    "bore-gauge",
    "box-spanner",
    "breaker-bar",
    "brush",
    "c-spanner",
    "caliper",
    "chain-wrench",
    "circlip-pliers",
    "clamp",
    "compressor",
    "crowfoot",
    "deep-socket",
    "depth-gauge",
    "dial-gauge",
    "die",
    "drain-pan",
    "drift",
    "extension",
    "extractor",
    "feeler-gauge",
    "flare-spanner",
    "freezer",
    "funnel",
    "grease-gun",
    "hammer",
    "hand-pump",
    "heat-gun",
    "hex",
    "hex-bit",
    "hex-key",
    "hoist",
    "hot-plate",
    "impact-driver",
    "jack",
    "mallet",
    "micrometer",
    "multimeter",
    "oil-can",
    "open-spanner",
    "oven",
    "pin-spanner",
    "plastic-gauge",
    "pliers",
    "press",
    "pressure-gauge",
    "protractor",
    "puller",
    "punch",
    "ratchet",
    "ring-compressor",
    "ring-spanner",
    "scale",
    "scraper",
    "screwdriver",
    "side-cutters",
    "slide-hammer",
    "socket",
    "soldering-iron",
    "spanner",
    "spline-bit",
    "spring-balance",
    "spring-compressor",
    "stand",
    "straight-edge",
    "strap-wrench",
    "stroboscope",
    "syringe",
    "tap",
    "thread-insert-kit",
    "timing-light",
    "torch",
    "torque-driver",
    "torque-wrench",
    "torx",
    "torx-bit",
    "torx-key",
    "vacuum-pump",
    "vernier",
    "vice",
    "wire-brush",
];

/// Whether this is a kind of tool known by name.
pub(crate) fn known(kind: &str) -> bool {
    KNOWN.binary_search(&kind).is_ok()
}

/// The kind in one spelling: `wrench` is a `spanner`, except where the trade everywhere says
/// wrench; several of a kind are that kind.
pub(crate) fn one(written: &str) -> Cow<'_, str> {
    let kind = spelling::one(written);
    if known(&kind) {
        return kind;
    }
    if let Some(stem) = kind.strip_suffix("wrench")
        && (stem.is_empty() || stem.ends_with('-'))
    {
        return Cow::Owned(format!("{stem}spanner"));
    }
    if let Some(stem) = kind.strip_suffix("spanner") {
        let wrench = format!("{stem}wrench");
        if known(&wrench) {
            return Cow::Owned(wrench);
        }
    }
    match kind
        .strip_suffix('s')
        .map(|single| one(single).into_owned())
    {
        Some(single) if known(&single) => Cow::Owned(single),
        _ => kind,
    }
}

/// The known kind that `kind` is a slip for. `None` for words of three letters and fewer, which
/// are one slip from everything.
pub(crate) fn meant(kind: &str) -> Option<&'static str> {
    let allowed = slips_allowed(kind)?;
    near::nearest(kind, KNOWN.iter().copied(), allowed)
}

/// How many slips may lie between a word and the one that was probably meant, when the word
/// might well be right as it stands.
pub(crate) fn slips_allowed(word: &str) -> Option<usize> {
    match word.chars().count() {
        0..=3 => None,
        4..=7 => Some(1),
        _ => Some(2),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_can_be_searched() {
        assert!(KNOWN.is_sorted());
    }

    #[test]
    fn wrenches_are_spanners_except_where_nobody_says_so() {
        assert_eq!(one("wrench"), "spanner");
        assert_eq!(one("ring-wrench"), "ring-spanner");
        assert_eq!(one("torque-wrench"), "torque-wrench");
        assert_eq!(one("torque-spanner"), "torque-wrench");
        assert_eq!(one("strap-spanner"), "strap-wrench");
        assert_eq!(one("feeler-gages"), "feeler-gauge");
        assert_eq!(one("pliers"), "pliers");
        assert_eq!(one("home-made-hook"), "home-made-hook");
    }

    #[test]
    fn slips_are_noticed_and_other_words_left_alone() {
        assert_eq!(meant("spaner"), Some("spanner"));
        assert_eq!(meant("sokcet"), Some("socket"));
        assert_eq!(meant("hook"), None);
        assert_eq!(meant("die"), None);
        assert_eq!(meant("oil"), None);
    }
}
