//! Several readings of one thing: end-float at four places, backlash around a
//! gear, clearance over three of a strip.

use crate::quantity::{Amount, Dimension, Measure, trimmed};
use crate::working::{Worked, Working};

/// What a set of readings comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Readings {
    /// The smallest.
    pub least: Amount,
    /// The largest.
    pub most: Amount,
    /// Their mean.
    pub mean: Amount,
    /// Largest less smallest: a gear that runs out, a bore that is not round.
    pub spread: Amount,
    /// How they lie to what was wanted.
    pub verdict: Verdict,
}

/// How readings lie to the wanted range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// All within.
    Within,
    /// At least one below, none above.
    Below,
    /// At least one above, none below.
    Above,
    /// Some below and some above: no one shim puts it right.
    Both,
}

/// Holds readings against the wanted range, its ends included. `None` without
/// readings, and when one measures something else than what is wanted.
pub fn judge(readings: &[Amount], wanted: &Measure) -> Option<Worked<Readings>> {
    let unit = readings.first()?.unit();
    let dimension = wanted.dimension();
    if readings
        .iter()
        .any(|reading| reading.dimension() != dimension)
    {
        return None;
    }
    let figures: Vec<f64> = readings
        .iter()
        .filter_map(|reading| reading.in_unit(unit))
        .map(Amount::figure)
        .collect();
    let least = figures.iter().copied().fold(f64::INFINITY, f64::min);
    let most = figures.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mean = figures.iter().sum::<f64>() / figures.len() as f64;
    let amount = |figure: f64| match dimension {
        Dimension::TemperatureDifference => Amount::difference(figure, unit),
        _ => Amount::new(figure, unit),
    };
    let (least, most, mean) = (amount(least), amount(most), amount(mean));
    let spread = Amount::difference(most.figure() - least.figure(), unit);
    let low = !wanted.contains_amount(least) && least.si() < wanted.low().si();
    let high = !wanted.contains_amount(most) && most.si() > wanted.high().si();
    let verdict = match (low, high) {
        (false, false) => Verdict::Within,
        (true, false) => Verdict::Below,
        (false, true) => Verdict::Above,
        (true, true) => Verdict::Both,
    };
    let listed: Vec<String> = figures.iter().map(|figure| trimmed(*figure, 6)).collect();
    let working = Working::new()
        .line(
            "mean",
            "sum / n",
            format!("({}) / {}", listed.join(" + "), figures.len()),
            mean,
        )
        .line(
            "spread",
            "largest - smallest",
            format!("{most} - {least}"),
            spread,
        );
    Some(Worked::new(
        Readings {
            least,
            most,
            mean,
            spread,
            verdict,
        },
        working,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Unit;

    fn judged(figures: &[f64], wanted: &str) -> Option<Readings> {
        let readings: Vec<Amount> = figures
            .iter()
            .map(|figure| Amount::new(*figure, Unit::Millimetre))
            .collect();
        judge(&readings, &Measure::read(wanted).unwrap()).map(|worked| worked.value)
    }

    #[test]
    fn readings_around_a_gear() {
        let found = judged(&[0.08, 0.05, 0.12, 0.11], "0.05..0.12 mm").unwrap();
        assert_eq!(found.verdict, Verdict::Within);
        assert_eq!(found.mean.to_string(), "0.09 mm");
        assert_eq!(found.spread.to_string(), "0.07 mm");
        let verdict = |figures: &[f64]| judged(figures, "0.05..0.12 mm").unwrap().verdict;
        assert_eq!(verdict(&[0.04, 0.08]), Verdict::Below);
        assert_eq!(verdict(&[0.13]), Verdict::Above);
        assert_eq!(verdict(&[0.04, 0.13]), Verdict::Both);
    }

    #[test]
    fn nothing_measured_is_nothing_found() {
        assert!(judged(&[], "0.05..0.12 mm").is_none());
        assert!(judged(&[0.1], "5 N").is_none());
    }
}
