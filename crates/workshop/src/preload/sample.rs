//! What a set of measured clamp loads says about a joint.

use super::short_form::nut_factor_from_test;
use crate::quantity::{Force, Length, System, Torque, rounded, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

/// What a set of measured clamp loads says, all tightened to one torque.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PreloadSample {
    /// Mean load.
    pub mean: Force,
    /// Nut factor at the mean load.
    pub nut_factor: f64,
    /// Standard deviation of the sample (over n - 1).
    pub deviation: Force,
    /// How far the highest lies above the mean, as a share of it.
    pub above: f64,
    /// How far the lowest lies below the mean, as a share of it.
    pub below: f64,
}

/// Why a set of loads says nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SampleProblem {
    /// Fewer than two loads: no scatter to speak of.
    TooFew,
    /// A load of nothing or less.
    NotALoad,
}

impl PreloadSample {
    /// Mean, nut factor and scatter of loads measured at one torque
    /// (NASA-STD-5020B App. A.2 Eqs 32 to 35).
    ///
    /// # Errors
    /// With fewer than two loads, or where one is not above nothing.
    pub fn of(
        loads: &[Force],
        torque: Torque,
        diameter: Length,
    ) -> Result<Worked<PreloadSample>, SampleProblem> {
        if loads.len() < 2 {
            return Err(SampleProblem::TooFew);
        }
        if loads
            .iter()
            .any(|load| load.si().is_nan() || load.si() <= 0.0)
        {
            return Err(SampleProblem::NotALoad);
        }
        let count = loads.len() as f64;
        let mean = loads.iter().map(|load| load.si()).sum::<f64>() / count;
        let squares: f64 = loads.iter().map(|load| (load.si() - mean).powi(2)).sum();
        let highest = loads.iter().map(|load| load.si()).fold(f64::MIN, f64::max);
        let lowest = loads.iter().map(|load| load.si()).fold(f64::MAX, f64::min);
        let unit = System::of(diameter.unit());
        let force = |si: f64| Force::from_inner(Force::newtons(si).inner(), unit);
        let (mean_load, deviation) = (force(mean), force((squares / (count - 1.0)).sqrt()));
        let factor = nut_factor_from_test(torque, diameter, mean_load);
        let sample = PreloadSample {
            mean: mean_load,
            nut_factor: factor.value,
            deviation,
            above: highest / mean - 1.0,
            below: 1.0 - lowest / mean,
        };
        let working = Working::new()
            .line(
                "mean load",
                "sum / n",
                format!("sum of {count} loads / {count}"),
                mean_load,
            )
            .line(
                "standard deviation",
                "√(Σ(F - mean)² / (n - 1))",
                format!("over {count} loads"),
                deviation,
            )
            .line(
                "highest above the mean",
                "F max / mean - 1",
                format!("{} / {mean_load} - 1", force(highest)),
                trimmed(sample.above, 3),
            )
            .line(
                "lowest below the mean",
                "1 - F min / mean",
                format!("1 - {} / {mean_load}", force(lowest)),
                trimmed(sample.below, 3),
            )
            .source(Source::read("NASA-STD-5020B (2021) App. A.2 Eqs 32 to 35"))
            .after(factor.working);
        Ok(Worked::new(sample, working))
    }

    /// The scatter that so many of all joints stay within, as a share of the
    /// mean: factor × deviation / mean. The factor comes from a table of
    /// one-sided tolerance limits for the size of the sample; for 30 loads, 90
    /// of 100 joints at 95 % confidence, NASA-STD-5020B App. A.2 Eq. 36 uses
    /// 2.145.
    pub fn tolerance_scatter(&self, factor: f64) -> Worked<f64> {
        let scatter = factor * self.deviation.si() / self.mean.si();
        let working = Working::new()
            .line(
                "scatter",
                "k × s / mean",
                format!(
                    "{} × {} / {}",
                    trimmed(factor, 4),
                    self.deviation,
                    self.mean
                ),
                rounded(scatter, 3),
            )
            .source(Source::read("NASA-STD-5020B (2021) App. A.2 Eq. 36"));
        Worked::new(scatter, working)
    }
}
