//! Limits of size, for strip areas: the slackest pair that the usual tolerance
//! allows.

use super::{MetricThread, UnifiedSeries, UnifiedThread};
use crate::quantity::{Length, same};
use crate::source::Source;

/// The slackest pair of threads that the usual tolerance allows.
#[derive(Debug, Clone, PartialEq)]
pub struct Limits {
    /// Smallest major diameter of the screw, d min.
    pub major_external_min: Length,
    /// Smallest pitch diameter of the screw, d2 min.
    pub pitch_external_min: Length,
    /// Largest pitch diameter of the hole, D2 max.
    pub pitch_internal_max: Length,
    /// Largest minor diameter of the hole, D1 max.
    pub minor_internal_max: Length,
    /// Tolerance classes and where they come from.
    pub source: Source,
}

/// Pitch in mm; deviation g, tolerance of the screw's major diameter (grade
/// 6) and of the hole's minor diameter (grade 6), all in µm.
///
/// Source: ISO 965-1, from memory. For M5 to M12 they reproduce ten published
/// strip areas to five digits.
const BY_PITCH: &[(f64, f64, f64, f64)] = &[
    (0.35, 19.0, 85.0, 100.0),
    (0.4, 19.0, 95.0, 112.0),
    (0.45, 20.0, 100.0, 125.0),
    (0.5, 20.0, 106.0, 140.0),
    (0.6, 21.0, 125.0, 160.0),
    (0.7, 22.0, 140.0, 180.0),
    (0.75, 22.0, 140.0, 190.0),
    (0.8, 24.0, 150.0, 200.0),
    (1.0, 26.0, 180.0, 236.0),
    (1.25, 28.0, 212.0, 265.0),
    (1.5, 32.0, 236.0, 300.0),
    (1.75, 34.0, 265.0, 335.0),
    (2.0, 38.0, 280.0, 375.0),
    (2.5, 42.0, 335.0, 450.0),
    (3.0, 48.0, 375.0, 500.0),
    (3.5, 53.0, 425.0, 560.0),
    (4.0, 60.0, 475.0, 600.0),
];

/// Pitch in mm; tolerance of the screw's and of the hole's pitch diameter in µm.
type PitchTolerances = &'static [(f64, f64, f64)];

/// Over and up to which diameter in mm; pitch in mm; tolerance of the screw's
/// and of the hole's pitch diameter (grade 6), in µm. Source as above.
const BY_SIZE: &[(f64, f64, PitchTolerances)] = &[
    (
        1.4,
        2.8,
        &[(0.35, 63.0, 85.0), (0.4, 67.0, 90.0), (0.45, 71.0, 95.0)],
    ),
    (
        2.8,
        5.6,
        &[
            (0.35, 67.0, 90.0),
            (0.5, 75.0, 100.0),
            (0.6, 85.0, 112.0),
            (0.7, 90.0, 118.0),
            (0.75, 90.0, 118.0),
            (0.8, 95.0, 125.0),
        ],
    ),
    (
        5.6,
        11.2,
        &[
            (0.75, 100.0, 132.0),
            (1.0, 112.0, 150.0),
            (1.25, 118.0, 160.0),
            (1.5, 132.0, 180.0),
        ],
    ),
    (
        11.2,
        22.4,
        &[
            (1.0, 118.0, 160.0),
            (1.25, 132.0, 180.0),
            (1.5, 140.0, 190.0),
            (1.75, 150.0, 200.0),
            (2.0, 160.0, 212.0),
            (2.5, 170.0, 224.0),
        ],
    ),
    (
        22.4,
        45.0,
        &[
            (1.0, 125.0, 170.0),
            (1.5, 150.0, 200.0),
            (2.0, 170.0, 224.0),
            (3.0, 200.0, 265.0),
            (3.5, 212.0, 280.0),
            (4.0, 224.0, 300.0),
        ],
    ),
];

/// 6g on the screw, 6H in the hole.
pub(super) fn metric(thread: &MetricThread) -> Option<Limits> {
    let (d, p) = (thread.diameter_mm(), thread.pitch_mm());
    let (_, deviation, major, minor) = BY_PITCH.iter().find(|row| same(row.0, p)).copied()?;
    let (.., pitches) = BY_SIZE.iter().find(|(over, to, _)| d > *over && d <= *to)?;
    let (_, screw, hole) = pitches.iter().find(|row| same(row.0, p)).copied()?;
    let pitch_diameter = d - 0.649_519 * p;
    let minor_diameter = d - 1.082_532 * p;
    Some(Limits {
        major_external_min: Length::millimetres(micron(d - (deviation + major) / 1000.0)),
        pitch_external_min: Length::millimetres(micron(
            pitch_diameter - (deviation + screw) / 1000.0,
        )),
        pitch_internal_max: Length::millimetres(micron(pitch_diameter + hole / 1000.0)),
        minor_internal_max: Length::millimetres(micron(minor_diameter + minor / 1000.0)),
        source: Source::memory("ISO 965-1, 6g screw in 6H hole"),
    })
}

/// The standard gives limits in whole micrometres.
fn micron(millimetres: f64) -> f64 {
    (millimetres * 1000.0).round() / 1000.0
}

/// 2A on the screw, 2B in the hole, by the formulas of ASME B1.1, in inches:
///
/// - pitch diameter, 2A: 0.0015 ∛d + 0.0015 √LE + 0.015 ∛P², with LE = d for
///   UNC and UNF and 9 P for all else; 2B is 1.3 times that;
/// - allowance of 2A: 0.3 times its pitch diameter tolerance;
/// - major diameter, 2A: 0.060 ∛P²;
/// - minor diameter, 2B, from 1/4 in: 0.25 P - 0.4 P²; below:
///   0.05 ∛P² + 0.03 P/d - 0.002, but between 0.25 P - 0.4 P² and 0.394 P.
///
/// From memory; they reproduce the limits printed in FED-STD-H28/2B par. 90.2
/// (1-1/8-7) and three published strip areas.
pub(super) fn unified(thread: &UnifiedThread) -> Option<Limits> {
    let (d, p) = (thread.diameter_in(), 1.0 / thread.threads_per_inch());
    if d > 4.0 {
        return None;
    }
    let length = match thread.series() {
        Some(UnifiedSeries::Unc | UnifiedSeries::Unf) => d,
        _ => 9.0 * p,
    };
    let pitch_to_two_thirds = p.powf(2.0 / 3.0);
    let screw = 0.0015 * d.cbrt() + 0.0015 * length.sqrt() + 0.015 * pitch_to_two_thirds;
    let allowance = 0.3 * screw;
    let usual = 0.25 * p - 0.4 * p * p;
    let minor = if d < 0.25 {
        (0.05 * pitch_to_two_thirds + 0.03 * p / d - 0.002)
            .max(usual)
            .min(0.394 * p)
    } else {
        usual
    };
    let pitch_diameter = d - 0.649_519 * p;
    let minor_diameter = d - 1.082_532 * p;
    Some(Limits {
        major_external_min: Length::inches(tenth(
            d - tenth(allowance) - tenth(0.060 * pitch_to_two_thirds),
        )),
        pitch_external_min: Length::inches(tenth(pitch_diameter - allowance - screw)),
        pitch_internal_max: Length::inches(tenth(pitch_diameter + 1.3 * screw)),
        minor_internal_max: Length::inches(tenth(minor_diameter + minor)),
        source: Source::memory("ASME B1.1, 2A screw in 2B hole"),
    })
}

/// The standard gives limits in ten-thousandths of an inch.
fn tenth(inches: f64) -> f64 {
    (inches * 10_000.0).round() / 10_000.0
}

#[cfg(test)]
mod tests {
    use crate::thread::Thread;

    /// d min, d2 min, D2 max, D1 max in the thread's own unit.
    fn limits(text: &str) -> [f64; 4] {
        let limits = Thread::read(text).unwrap().limits().unwrap();
        [
            limits.major_external_min,
            limits.pitch_external_min,
            limits.pitch_internal_max,
            limits.minor_internal_max,
        ]
        .map(|length| length.amount().figure())
    }

    fn close(found: f64, wanted: f64) {
        assert!((found - wanted).abs() < 6e-5, "{found} against {wanted}");
    }

    #[test]
    fn metric_limits_are_those_behind_the_published_strip_areas() {
        // Limits that reproduce the published areas of M5 to M12 (Bickford, 4th ed.).
        let rows = [
            ("M5", [4.826, 4.361, 4.605, 4.334]),
            ("M6", [5.794, 5.212, 5.5, 5.153]),
            ("M8", [7.76, 7.042, 7.348, 6.912]),
            ("M10", [9.732, 8.862, 9.206, 8.676]),
            ("M12", [11.701, 10.679, 11.063, 10.441]),
        ];
        for (text, wanted) in rows {
            for (found, wanted) in limits(text).into_iter().zip(wanted) {
                close(found, wanted);
            }
        }
    }

    #[test]
    fn unified_limits_are_those_printed() {
        // FED-STD-H28/2B par. 90.2 and the limits behind three published strip areas.
        let [major, _, pitch, _] = limits("1-1/8-7 UNC");
        close(major, 1.1064);
        close(pitch, 1.0416);
        for (text, major, pitch) in [
            ("1/4-20", 0.2408, 0.2224),
            ("3/8-16", 0.3643, 0.3401),
            ("1/2-13", 0.4876, 0.4565),
        ] {
            let [found_major, _, found_pitch, _] = limits(text);
            close(found_major, major);
            close(found_pitch, pitch);
        }
    }

    /// The tabled tolerances are the standard's own formulas, rounded to
    /// preferred numbers; a slip of the pen in the table would stand out.
    #[test]
    fn the_metric_table_follows_the_standards_formulas() {
        let near = |tabled: f64, formula: f64, share: f64| {
            assert!(
                (tabled / formula - 1.0).abs() < share,
                "{tabled} against {formula}"
            );
        };
        for (p, deviation, major, minor) in super::BY_PITCH {
            near(*deviation, 15.0 + 11.0 * p, 0.06);
            near(*major, 180.0 * p.powf(2.0 / 3.0) - 3.15 / p.sqrt(), 0.06);
            let formula = if *p < 1.0 {
                433.0 * p - 190.0 * p.powf(1.22)
            } else {
                230.0 * p.powf(0.7)
            };
            near(*minor, formula, 0.06);
        }
        for (over, to, pitches) in super::BY_SIZE {
            let mean = (over * to).sqrt();
            for (p, screw, hole) in *pitches {
                let formula = 90.0 * p.powf(0.4) * mean.powf(0.1);
                near(*screw, formula, 0.06);
                near(*hole, 1.32 * formula, 0.06);
            }
        }
    }
}
