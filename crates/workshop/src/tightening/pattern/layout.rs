//! Where the fasteners of a group stand.

use std::f64::consts::TAU;

/// Where the fasteners of a group stand, and so how they are numbered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Layout {
    /// Around a circle, or around the edge of a cover: numbered clockwise from
    /// the top.
    Ring(usize),
    /// In a line, numbered from the left.
    Line(usize),
    /// In two rows, numbered from the left: first the upper row, then the
    /// lower.
    TwoRows {
        /// How many in the upper row.
        first: usize,
        /// How many in the lower.
        second: usize,
    },
}

/// A place on a drawing one unit wide: x to the right, y downwards, both from 0
/// to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

impl Layout {
    /// How many fasteners it has.
    pub fn count(self) -> usize {
        match self {
            Layout::Ring(count) | Layout::Line(count) => count,
            Layout::TwoRows { first, second } => first.saturating_add(second),
        }
    }

    /// Two rows of a count, the upper one longer where it is odd.
    pub fn two_rows(count: usize) -> Layout {
        Layout::TwoRows {
            first: count.div_ceil(2),
            second: count / 2,
        }
    }

    /// The layout by its word: `ring` (also `circle`), `line` (also `row`),
    /// `two-rows`.
    pub fn read(word: &str, count: usize) -> Option<Layout> {
        match word.trim() {
            "ring" | "circle" => Some(Layout::Ring(count)),
            "line" | "row" | "straight" => Some(Layout::Line(count)),
            "two-rows" | "rows" => Some(Layout::two_rows(count)),
            _ => None,
        }
    }

    /// What is meant when a plan does not say: one or two stand in a line, more
    /// on a ring.
    pub fn usual(count: usize) -> Layout {
        if count <= 2 {
            Layout::Line(count)
        } else {
            Layout::Ring(count)
        }
    }

    /// Where each fastener stands, for a drawing; the first is number 1. At
    /// most [`MOST`](super::MOST) places.
    pub fn places(self) -> Vec<Place> {
        let spread = |number: usize, of: usize| {
            if of <= 1 {
                0.5
            } else {
                number as f64 / (of - 1) as f64
            }
        };
        let row = |of: usize, y: f64| {
            (0..of).map(move |number| Place {
                x: spread(number, of),
                y,
            })
        };
        let all: Vec<Place> = match self {
            Layout::Ring(count) => (0..count.min(super::MOST))
                .map(|number| {
                    let angle = TAU * number as f64 / count as f64;
                    Place {
                        x: 0.5 + 0.5 * angle.sin(),
                        y: 0.5 - 0.5 * angle.cos(),
                    }
                })
                .collect(),
            Layout::Line(count) => row(count.min(super::MOST), 0.5).collect(),
            Layout::TwoRows { first, second } => {
                let upper = first.min(super::MOST);
                let lower = second.min(super::MOST - upper);
                row(upper, 0.0).chain(row(lower, 1.0)).collect()
            }
        };
        all
    }
}
