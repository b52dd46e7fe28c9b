//! ISO metric threads.

use super::Profile;
use crate::quantity::{Length, plain, same};

/// Diameter, coarse pitch, fine pitches, all in mm.
///
/// Source: ISO 261 and ISO 262, from memory; the coarse pitches M3 to M30 and
/// the fine ones of M6 to M24 are also those of the ISO 898-1 load tables.
const SIZES: &[(f64, f64, &[f64])] = &[
    (1.0, 0.25, &[0.2]),
    (1.2, 0.25, &[0.2]),
    (1.4, 0.3, &[0.2]),
    (1.6, 0.35, &[0.2]),
    (1.8, 0.35, &[0.2]),
    (2.0, 0.4, &[0.25]),
    (2.2, 0.45, &[0.25]),
    (2.5, 0.45, &[0.35]),
    (3.0, 0.5, &[0.35]),
    (3.5, 0.6, &[0.35]),
    (4.0, 0.7, &[0.5]),
    (4.5, 0.75, &[0.5]),
    (5.0, 0.8, &[0.5]),
    (6.0, 1.0, &[0.75]),
    (7.0, 1.0, &[0.75]),
    (8.0, 1.25, &[1.0, 0.75]),
    (9.0, 1.25, &[1.0, 0.75]),
    (10.0, 1.5, &[1.25, 1.0, 0.75]),
    (11.0, 1.5, &[1.0, 0.75]),
    (12.0, 1.75, &[1.5, 1.25, 1.0]),
    (14.0, 2.0, &[1.5, 1.25, 1.0]),
    (16.0, 2.0, &[1.5, 1.0]),
    (18.0, 2.5, &[2.0, 1.5, 1.0]),
    (20.0, 2.5, &[2.0, 1.5, 1.0]),
    (22.0, 2.5, &[2.0, 1.5, 1.0]),
    (24.0, 3.0, &[2.0, 1.5, 1.0]),
    (27.0, 3.0, &[2.0, 1.5, 1.0]),
    (30.0, 3.5, &[3.0, 2.0, 1.5, 1.0]),
    (33.0, 3.5, &[3.0, 2.0, 1.5]),
    (36.0, 4.0, &[3.0, 2.0, 1.5]),
    (39.0, 4.0, &[3.0, 2.0, 1.5]),
    (42.0, 4.5, &[4.0, 3.0, 2.0, 1.5]),
    (45.0, 4.5, &[4.0, 3.0, 2.0, 1.5]),
    (48.0, 5.0, &[4.0, 3.0, 2.0, 1.5]),
    (52.0, 5.0, &[4.0, 3.0, 2.0, 1.5]),
    (56.0, 5.5, &[4.0, 3.0, 2.0, 1.5]),
    (60.0, 5.5, &[4.0, 3.0, 2.0, 1.5]),
    (64.0, 6.0, &[4.0, 3.0, 2.0, 1.5]),
];

/// Sizes that have fine pitches only (ISO 261, from memory).
const FINE_ONLY: &[(f64, &[f64])] = &[
    (5.5, &[0.5]),
    (15.0, &[1.5, 1.0]),
    (17.0, &[1.5, 1.0]),
    (25.0, &[2.0, 1.5, 1.0]),
    (26.0, &[1.5]),
    (28.0, &[2.0, 1.5, 1.0]),
    (32.0, &[2.0, 1.5]),
    (35.0, &[1.5]),
    (38.0, &[1.5]),
    (40.0, &[3.0, 2.0, 1.5]),
    (50.0, &[3.0, 2.0, 1.5]),
];

/// The pitches in mm that ISO 261 lists for a diameter in mm, the coarse one
/// first where there is one. Empty for a diameter that it does not list.
pub fn metric_pitches(diameter_mm: f64) -> Vec<f64> {
    if let Some((_, coarse, fine)) = SIZES.iter().find(|(d, ..)| same(*d, diameter_mm)) {
        return std::iter::once(*coarse)
            .chain(fine.iter().copied())
            .collect();
    }
    let fine = FINE_ONLY.iter().find(|(d, _)| same(*d, diameter_mm));
    fine.map(|(_, pitches)| pitches.to_vec())
        .unwrap_or_default()
}

/// The coarse pitch of a diameter, both in mm.
pub(super) fn coarse_pitch(diameter_mm: f64) -> Option<f64> {
    let size = SIZES.iter().find(|(d, ..)| same(*d, diameter_mm));
    size.map(|(_, coarse, _)| *coarse)
}

/// An ISO metric thread, the 60 degree triangle of ISO 68-1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MetricThread {
    diameter_mm: f64,
    pitch_mm: f64,
    pitch_written: bool,
}

impl MetricThread {
    /// A thread of the given diameter and pitch, both in mm. Without a pitch
    /// it is the coarse one. `None` when the size has no coarse pitch, or when
    /// no thread could have these numbers.
    pub fn new(diameter_mm: f64, pitch_mm: Option<f64>) -> Option<MetricThread> {
        let pitch = match pitch_mm {
            Some(pitch) => pitch,
            None => coarse_pitch(diameter_mm)?,
        };
        // A pitch of more than a third of the diameter would leave no core.
        let possible = diameter_mm.is_finite()
            && (0.5..=1000.0).contains(&diameter_mm)
            && pitch > 0.0
            && pitch <= diameter_mm / 3.0;
        possible.then_some(MetricThread {
            diameter_mm,
            pitch_mm: pitch,
            pitch_written: pitch_mm.is_some(),
        })
    }

    /// Nominal diameter in mm.
    pub fn diameter_mm(&self) -> f64 {
        self.diameter_mm
    }

    /// Pitch in mm.
    pub fn pitch_mm(&self) -> f64 {
        self.pitch_mm
    }

    /// Whether the pitch is the coarse one of this size.
    pub fn is_coarse(&self) -> bool {
        coarse_pitch(self.diameter_mm).is_some_and(|pitch| same(pitch, self.pitch_mm))
    }

    /// Whether the pitch was written, or is the coarse one taken for granted.
    pub fn pitch_was_written(&self) -> bool {
        self.pitch_written
    }

    pub(super) fn designation(&self) -> String {
        format!("M{}x{}", plain(self.diameter_mm), plain(self.pitch_mm))
    }

    pub(super) fn profile(&self) -> Profile {
        let (d, p) = (self.diameter_mm, self.pitch_mm);
        Profile {
            diameter: Length::millimetres(d),
            pitch: Length::millimetres(p),
            pitch_diameter: Length::millimetres(d - 0.649_519 * p),
            minor_internal: Length::millimetres(d - 1.082_532 * p),
            minor_external: Length::millimetres(d - 1.226_869 * p),
        }
    }
}
