//! Unified inch threads.

use super::Profile;
use crate::quantity::{Length, plain, same};

/// A unified series.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnifiedSeries {
    /// Coarse.
    Unc,
    /// Fine.
    Unf,
    /// Extra fine.
    Unef,
    /// One pitch for many diameters.
    Un,
    /// Special.
    Uns,
}

impl UnifiedSeries {
    /// The letters of the series.
    pub fn letters(self) -> &'static str {
        match self {
            UnifiedSeries::Unc => "UNC",
            UnifiedSeries::Unf => "UNF",
            UnifiedSeries::Unef => "UNEF",
            UnifiedSeries::Un => "UN",
            UnifiedSeries::Uns => "UNS",
        }
    }

    pub(super) fn read(letters: &str) -> Option<UnifiedSeries> {
        let upper = letters.to_ascii_uppercase();
        let all = [
            UnifiedSeries::Unc,
            UnifiedSeries::Unf,
            UnifiedSeries::Unef,
            UnifiedSeries::Un,
            UnifiedSeries::Uns,
        ];
        // The J and R series have a rounder root and the same pitches.
        let plain = upper.replace("UNJ", "UN").replace("UNR", "UN");
        all.into_iter().find(|series| series.letters() == plain)
    }
}

/// Size as written, diameter in inches, threads per inch of UNC, UNF, UNEF (0
/// where the series has none).
///
/// Source: ASME B1.1. UNC and UNF from #4 to 1 in read in Shigley, 9th ed.,
/// Table 8-2 and a reproduced UNF table; the rest from memory.
const SIZES: &[(&str, f64, [f64; 3])] = &[
    ("#0", 0.060, [0.0, 80.0, 0.0]),
    ("#1", 0.073, [64.0, 72.0, 0.0]),
    ("#2", 0.086, [56.0, 64.0, 0.0]),
    ("#3", 0.099, [48.0, 56.0, 0.0]),
    ("#4", 0.112, [40.0, 48.0, 0.0]),
    ("#5", 0.125, [40.0, 44.0, 0.0]),
    ("#6", 0.138, [32.0, 40.0, 0.0]),
    ("#8", 0.164, [32.0, 36.0, 0.0]),
    ("#10", 0.190, [24.0, 32.0, 0.0]),
    ("#12", 0.216, [24.0, 28.0, 32.0]),
    ("1/4", 0.25, [20.0, 28.0, 32.0]),
    ("5/16", 0.3125, [18.0, 24.0, 32.0]),
    ("3/8", 0.375, [16.0, 24.0, 32.0]),
    ("7/16", 0.4375, [14.0, 20.0, 28.0]),
    ("1/2", 0.5, [13.0, 20.0, 28.0]),
    ("9/16", 0.5625, [12.0, 18.0, 24.0]),
    ("5/8", 0.625, [11.0, 18.0, 24.0]),
    ("11/16", 0.6875, [0.0, 0.0, 24.0]),
    ("3/4", 0.75, [10.0, 16.0, 20.0]),
    ("13/16", 0.8125, [0.0, 0.0, 20.0]),
    ("7/8", 0.875, [9.0, 14.0, 20.0]),
    ("15/16", 0.9375, [0.0, 0.0, 20.0]),
    ("1", 1.0, [8.0, 12.0, 20.0]),
    ("1-1/16", 1.0625, [0.0, 0.0, 18.0]),
    ("1-1/8", 1.125, [7.0, 12.0, 18.0]),
    ("1-3/16", 1.1875, [0.0, 0.0, 18.0]),
    ("1-1/4", 1.25, [7.0, 12.0, 18.0]),
    ("1-5/16", 1.3125, [0.0, 0.0, 18.0]),
    ("1-3/8", 1.375, [6.0, 12.0, 18.0]),
    ("1-7/16", 1.4375, [0.0, 0.0, 18.0]),
    ("1-1/2", 1.5, [6.0, 12.0, 18.0]),
    ("1-3/4", 1.75, [5.0, 0.0, 0.0]),
    ("2", 2.0, [4.5, 0.0, 0.0]),
];

const LISTED: [UnifiedSeries; 3] = [UnifiedSeries::Unc, UnifiedSeries::Unf, UnifiedSeries::Unef];

/// The series and threads per inch that ASME B1.1 lists for a diameter in
/// inches.
pub fn unified_listed(diameter_in: f64) -> Vec<(UnifiedSeries, f64)> {
    let Some((.., threads)) = SIZES.iter().find(|(_, d, _)| same(*d, diameter_in)) else {
        return Vec::new();
    };
    LISTED
        .into_iter()
        .zip(*threads)
        .filter(|(_, tpi)| *tpi > 0.0)
        .collect()
}

/// Diameter in inches of a numbered size: 0.060 + 0.013 × number (ASME B1.1).
pub(super) fn numbered(number: u8) -> Option<f64> {
    let name = format!("#{number}");
    SIZES
        .iter()
        .find(|(size, ..)| *size == name)
        .map(|(_, diameter, _)| *diameter)
}

/// A unified thread; the same 60 degree triangle as the metric one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UnifiedThread {
    diameter_in: f64,
    threads_per_inch: f64,
    series: Option<UnifiedSeries>,
}

impl UnifiedThread {
    /// A thread of the given diameter in inches and threads per inch. The
    /// series is looked up where it is not given. `None` when no thread could
    /// have these numbers.
    pub fn new(
        diameter_in: f64,
        threads_per_inch: f64,
        series: Option<UnifiedSeries>,
    ) -> Option<UnifiedThread> {
        let possible = diameter_in.is_finite()
            && (0.02..=40.0).contains(&diameter_in)
            && threads_per_inch > 0.0
            && 1.0 / threads_per_inch <= diameter_in / 3.0;
        let listed = || {
            let mut all = unified_listed(diameter_in).into_iter();
            all.find(|(_, tpi)| same(*tpi, threads_per_inch))
                .map(|(series, _)| series)
        };
        possible.then(|| UnifiedThread {
            diameter_in,
            threads_per_inch,
            series: series.or_else(listed),
        })
    }

    /// Nominal diameter in inches.
    pub fn diameter_in(&self) -> f64 {
        self.diameter_in
    }

    /// Threads per inch.
    pub fn threads_per_inch(&self) -> f64 {
        self.threads_per_inch
    }

    /// The series, where one was given or lists this pitch.
    pub fn series(&self) -> Option<UnifiedSeries> {
        self.series
    }

    pub(super) fn designation(&self) -> String {
        let size = SIZES.iter().find(|(_, d, _)| same(*d, self.diameter_in));
        let size = size.map_or_else(|| plain(self.diameter_in), |(name, ..)| (*name).to_owned());
        let series = self.series.map(|series| format!(" {}", series.letters()));
        format!(
            "{size}-{}{}",
            plain(self.threads_per_inch),
            series.unwrap_or_default()
        )
    }

    pub(super) fn profile(&self) -> Profile {
        let (d, p) = (self.diameter_in, 1.0 / self.threads_per_inch);
        Profile {
            diameter: Length::inches(d),
            pitch: Length::inches(p),
            pitch_diameter: Length::inches(d - 0.649_519 * p),
            minor_internal: Length::inches(d - 1.082_532 * p),
            minor_external: Length::inches(d - 1.299_038 * p),
        }
    }
}
