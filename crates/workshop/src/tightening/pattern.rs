//! The order in which the fasteners of a group are tightened.
//!
//! Published orders for one and the same count differ (those of 12 and of 16
//! do), so an order is judged by what they have in common: every fastener once,
//! and on a ring of even count each pair opposite.

mod check;
mod layout;
mod line;
mod ring;
mod rows;

pub use check::{OrderProblem, check_order, opposite_pairs, quarter_start};
pub use layout::{Layout, Place};

/// How to go over a layout.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pattern {
    /// Each fastener opposite, or across from, the one before.
    Cross,
    /// From the middle outwards, round and round.
    Spiral,
    /// One after the other as they are numbered: the last, checking pass.
    Round,
}

impl Pattern {
    /// The pattern by its word: `cross` (also `star`), `spiral`, `round`.
    pub fn read(word: &str) -> Option<Pattern> {
        match word.trim() {
            "cross" | "star" | "crosswise" | "criss-cross" => Some(Pattern::Cross),
            "spiral" | "centre-out" | "center-out" => Some(Pattern::Spiral),
            "round" | "in-order" => Some(Pattern::Round),
            _ => None,
        }
    }

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Pattern::Cross => "cross",
            Pattern::Spiral => "spiral",
            Pattern::Round => "round",
        }
    }
}

/// The most fasteners that an order is made for: more than any joint has, and
/// few enough to be made at once.
pub const MOST: usize = 1000;

/// The order in which to tighten a layout's fasteners, numbered from 1. Every
/// number stands in it once. Empty for an empty layout, and for one of more
/// than [`MOST`].
///
/// - Ring, cross: pairs of opposites, each next pair as far as can be from
///   those already done (so the second is square to the first where the count
///   divides by 4). For 4, 8, 12 and 16 this is the order of ASME PCC-1 (from
///   memory; the 8 also read in a maker's manual), and it shares its first
///   eight with fig. 4 of MIL-HDBK-60. An odd ring goes on by just under half
///   the count each time, the star of a five-stud wheel: common practice, no
///   source.
/// - Line: from the middle out, side by side (TM 5-3805-298-23-2 WP 0176). Two
///   alternate.
/// - Two rows: from the middle column out; cross goes across the corners,
///   spiral round them: common practice, no source.
pub fn tightening_order(layout: Layout, pattern: Pattern) -> Vec<usize> {
    let count = layout.count();
    if count == 0 || count > MOST {
        return Vec::new();
    }
    match (layout, pattern) {
        (_, Pattern::Round) | (Layout::Ring(_), Pattern::Spiral) => (1..=count).collect(),
        (Layout::Ring(_), Pattern::Cross) => ring::cross(count),
        (Layout::Line(_), Pattern::Cross | Pattern::Spiral) => line::middle_out(count),
        (Layout::TwoRows { first, second }, Pattern::Cross) => rows::order(first, second, true),
        (Layout::TwoRows { first, second }, Pattern::Spiral) => rows::order(first, second, false),
    }
}

/// The order in which to loosen: the tightening order backwards, from the
/// outside in, so that no part is left bowed by its last fasteners (common
/// practice, no source).
pub fn loosening_order(layout: Layout, pattern: Pattern) -> Vec<usize> {
    let mut order = tightening_order(layout, pattern);
    order.reverse();
    order
}
