//! Which shim to fit.

use super::clearance::minus;
use crate::quantity::{Dimension, Length, Measure, same};
use crate::source::Source;
use crate::working::{Worked, Working};

/// Thickness of a new shim that brings a clearance to its target:
/// N = T + (A - V), old shim plus measured clearance less wanted clearance (a
/// motorcycle maker's chart, ch. 1).
pub fn replacement_shim(old: Length, measured: Length, wanted: Length) -> Worked<Length> {
    let rest = minus(wanted, &[measured]);
    let new = minus(old, &[rest]);
    let working = Working::new()
        .line(
            "new shim N",
            "T + (A - V)",
            format!(
                "{} + ({} - {})",
                old.amount().as_given(),
                measured.amount().as_given(),
                wanted.amount().as_given()
            ),
            new.amount().as_given(),
        )
        .source(Source::read(
            "a motorcycle maker's manual, valve shim chart",
        ));
    Worked::new(new, working)
}

/// Thickness of shim that leaves a wanted clearance of a measured gap: gap -
/// wanted (a car maker's thrust shim example).
pub fn shim_for_gap(gap: Length, wanted: Length) -> Worked<Length> {
    let shim = minus(gap, &[wanted]);
    let working = Working::new()
        .line(
            "shim",
            "measured gap - wanted clearance",
            format!(
                "{} - {}",
                gap.amount().as_given(),
                wanted.amount().as_given()
            ),
            shim.amount().as_given(),
        )
        .source(Source::read("a car maker's manual, thrust shim example"));
    Worked::new(shim, working)
}

/// Thickness of shims to add that takes up a clearance and adds a preload:
/// clearance + preload (a marine diesel maker's manual).
pub fn pack_for_preload(clearance: Length, preload: Length) -> Worked<Length> {
    let taken = minus(
        Length::millimetres(0.0).shown_in(clearance.unit()),
        &[preload],
    );
    let pack = minus(clearance, &[taken]);
    let working = Working::new()
        .line(
            "shims to add",
            "clearance + preload",
            format!(
                "{} + {}",
                clearance.amount().as_given(),
                preload.amount().as_given()
            ),
            pack.amount().as_given(),
        )
        .source(Source::read("a marine diesel maker's manual"));
    Worked::new(pack, working)
}

/// Shims chosen from a stock.
#[derive(Debug, Clone, PartialEq)]
pub struct ShimChoice {
    /// The shims, thickest first; empty when none is needed.
    pub shims: Vec<Length>,
    /// Their thickness together.
    pub thickness: Length,
    /// The clearance that they leave.
    pub clearance: Length,
    /// Whether that clearance lies within the target. When not, this is the
    /// nearest that the stock can do.
    pub within: bool,
}

/// Why no shim can be chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShimProblem {
    /// The target is no length.
    NotALength,
    /// No shim in stock, or none of a thickness above nothing.
    NoStock,
    /// The gap is already smaller than the target allows: no shim helps.
    TooTight,
    /// More sizes in stock than can be tried.
    TooMany,
}

impl ShimProblem {
    /// The problem in plain words.
    pub fn describe(self) -> &'static str {
        match self {
            ShimProblem::NotALength => "the clearance to reach must be a length",
            ShimProblem::NoStock => "no shims are listed to choose from",
            ShimProblem::TooTight => {
                "the measured gap is already smaller than it should be; no shim makes it larger, so something is in the way or the wrong part is fitted"
            }
            ShimProblem::TooMany => {
                "more shim sizes are listed than can be tried against each other"
            }
        }
    }
}

/// The most sizes in stock that are tried.
const MOST_SIZES: usize = 60;

/// Chooses from the stock what leaves a clearance within the target, measured
/// without any shim: the fewest shims, at most `most` together (and never more
/// than 4), and of those the nearest to the middle of the target. Several of
/// one size may be used. With none within, the nearest that the stock can do.
///
/// # Errors
/// See [`ShimProblem`].
pub fn choose_shims(
    gap: Length,
    target: &Measure,
    stock: &[Length],
    most: usize,
) -> Result<Worked<ShimChoice>, ShimProblem> {
    if target.dimension() != Dimension::Length {
        return Err(ShimProblem::NotALength);
    }
    let mut sizes: Vec<Length> = stock
        .iter()
        .copied()
        .filter(|size| size.si() > 0.0)
        .collect();
    sizes.sort_by(|a, b| b.si().total_cmp(&a.si()));
    sizes.dedup_by(|a, b| same(a.si(), b.si()));
    if sizes.is_empty() {
        return Err(ShimProblem::NoStock);
    }
    if sizes.len() > MOST_SIZES {
        return Err(ShimProblem::TooMany);
    }
    let (low, high) = (target.low().si(), target.high().si());
    if gap.si() < low && !same(gap.si(), low) {
        return Err(ShimProblem::TooTight);
    }
    let middle = target.middle().si();
    let mut best = Best {
        middle,
        low,
        high,
        gap: gap.si(),
        found: None,
    };
    let mut pack = Vec::new();
    try_packs(&sizes, 0, most.clamp(1, 4), &mut pack, &mut best);
    let shims = best.found.map(|(_, shims)| shims).unwrap_or_default();
    let clearance = minus(gap, &shims);
    let zero = Length::millimetres(0.0).shown_in(gap.unit());
    let thickness = minus(zero, &[minus(zero, &shims)]);
    let within = target.contains_amount(clearance.amount());
    let wanted = shim_for_gap(gap, middle_of(target, gap));
    let each: Vec<String> = shims.iter().map(|shim| shim.amount().as_given()).collect();
    let fitted = if each.is_empty() {
        "none".to_owned()
    } else {
        each.join(" + ")
    };
    let working = Working::new()
        .line("nearest in stock", "", String::new(), &fitted)
        .line(
            "clearance left",
            "measured gap - shims",
            [vec![gap.amount().as_given()], each].concat().join(" - "),
            clearance.amount().as_given(),
        )
        .after(wanted.working);
    Ok(Worked::new(
        ShimChoice {
            shims,
            thickness,
            clearance,
            within,
        },
        working,
    ))
}

fn middle_of(target: &Measure, gap: Length) -> Length {
    Length::try_from(target.middle())
        .unwrap_or(gap)
        .shown_in(gap.unit())
}

/// The best pack so far, and what it is judged by. Lengths in metres.
struct Best {
    middle: f64,
    low: f64,
    high: f64,
    gap: f64,
    found: Option<(Rank, Vec<Length>)>,
}

/// Within the target first, then fewest shims, then nearest to the middle;
/// outside it, nearest first. A pack that does not go in at all comes last.
type Rank = (bool, bool, usize, f64);

impl Best {
    fn offer(&mut self, pack: &[Length]) {
        let left = self.gap - pack.iter().map(|shim| shim.si()).sum::<f64>();
        let reaches = |edge: f64| same(left, edge) || (left - edge).abs() < 1e-12;
        let within =
            (left > self.low || reaches(self.low)) && (left < self.high || reaches(self.high));
        let off = (left - self.middle).abs();
        let rank = (
            left < -1e-12,
            !within,
            if within { pack.len() } else { 0 },
            off,
        );
        let better = self
            .found
            .as_ref()
            .is_none_or(|(best, _)| before(&rank, best));
        if better {
            self.found = Some((rank, pack.to_vec()));
        }
    }
}

/// Whether one rank goes before another. What lies as far to one side of the
/// middle as to the other counts as equal, and the first found stays.
fn before(a: &Rank, b: &Rank) -> bool {
    (a.0, a.1, a.2).cmp(&(b.0, b.1, b.2)).then_with(|| {
        if (a.3 - b.3).abs() < 1e-12 {
            std::cmp::Ordering::Equal
        } else {
            a.3.total_cmp(&b.3)
        }
    }) == std::cmp::Ordering::Less
}

fn try_packs(sizes: &[Length], from: usize, most: usize, pack: &mut Vec<Length>, best: &mut Best) {
    best.offer(pack);
    if pack.len() == most {
        return;
    }
    for (place, size) in sizes.iter().enumerate().skip(from) {
        pack.push(*size);
        try_packs(sizes, place, most, pack, best);
        pack.pop();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stock(sizes: &[f64]) -> Vec<Length> {
        sizes.iter().copied().map(Length::millimetres).collect()
    }

    fn choose(
        gap: f64,
        target: &str,
        sizes: &[f64],
        most: usize,
    ) -> Result<ShimChoice, ShimProblem> {
        let target = Measure::read(target).unwrap();
        choose_shims(Length::millimetres(gap), &target, &stock(sizes), most)
            .map(|worked| worked.value)
    }

    fn thicknesses(choice: &ShimChoice) -> Vec<f64> {
        choice
            .shims
            .iter()
            .map(|shim| shim.in_millimetres())
            .collect()
    }

    #[test]
    fn one_shim_where_one_will_do() {
        let choice = choose(0.32, "0.05..0.15 mm", &[0.10, 0.15, 0.20], 3).unwrap();
        assert_eq!(thicknesses(&choice), [0.20]);
        assert_eq!(choice.clearance.amount().as_given(), "0.12 mm");
        assert!(choice.within);
    }

    #[test]
    fn several_where_one_will_not() {
        let choice = choose(0.50, "0.05..0.15 mm", &[0.10, 0.15, 0.20], 3).unwrap();
        assert_eq!(thicknesses(&choice), [0.20, 0.20]);
        assert_eq!(choice.thickness.amount().as_given(), "0.4 mm");
        assert_eq!(choice.clearance.amount().as_given(), "0.1 mm");
    }

    #[test]
    fn none_where_none_is_needed_and_the_nearest_where_nothing_fits() {
        assert_eq!(
            thicknesses(&choose(0.10, "0.05..0.15 mm", &[0.10], 3).unwrap()),
            Vec::<f64>::new()
        );
        let choice = choose(2.0, "0.05..0.15 mm", &[0.10, 0.20], 2).unwrap();
        assert_eq!(thicknesses(&choice), [0.20, 0.20]);
        assert!(!choice.within);
    }

    #[test]
    fn a_shim_that_lands_on_the_edge_is_within() {
        let choice = choose(0.25, "0.05..0.15 mm", &[0.20], 1).unwrap();
        assert!(choice.within);
        assert_eq!(choice.clearance.amount().as_given(), "0.05 mm");
    }

    #[test]
    fn what_cannot_be_chosen_is_said() {
        assert_eq!(
            choose(0.3, "0.05..0.15 mm", &[], 1),
            Err(ShimProblem::NoStock)
        );
        assert_eq!(choose(0.3, "5 N", &[0.1], 1), Err(ShimProblem::NotALength));
        assert_eq!(
            choose(0.01, "0.05..0.15 mm", &[0.1], 1),
            Err(ShimProblem::TooTight)
        );
        let many: Vec<f64> = (1..100).map(|size| f64::from(size) / 100.0).collect();
        assert_eq!(
            choose(0.3, "0.05..0.15 mm", &many, 1),
            Err(ShimProblem::TooMany)
        );
    }

    /// A marine diesel maker's manual: 0.009 + 0.004 = 0.013 in.
    #[test]
    fn a_pack_takes_up_the_clearance_and_adds_preload() {
        let pack = pack_for_preload(Length::inches(0.009), Length::inches(0.004));
        assert_eq!(pack.value.amount().as_given(), "0.013 in");
    }
}
