//! End gaps of piston rings.

use std::f64::consts::PI;

use super::clearance::{minus, scaled};
use crate::quantity::{Length, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

/// Change of the end gap where the bore is larger or smaller by so much: π ×
/// change (TM 5-3825-229-14&P p. 6-24). A ring measured high in a worn bore
/// shows more gap than it has where it runs.
pub fn gap_change(bore_change: Length) -> Worked<Length> {
    let change = scaled(bore_change, PI);
    let working = Working::new()
        .line(
            "change of the gap",
            "π × change of the bore",
            format!("π × {}", bore_change.amount().as_given()),
            change,
        )
        .source(Source::read("TM 5-3825-229-14&P p. 6-24"));
    Worked::new(change, working)
}

/// What must still be filed off the ends: wanted gap - measured gap. Below
/// nothing the ring already gapes.
pub fn filed_gap(measured: Length, wanted: Length) -> Worked<Length> {
    let left = minus(wanted, &[measured]);
    let working = Working::new().line(
        "to file off",
        "wanted gap - measured gap",
        format!(
            "{} - {}",
            wanted.amount().as_given(),
            measured.amount().as_given()
        ),
        left.amount().as_given(),
    );
    Worked::new(left, working)
}

/// Rules of thumb for the end gap, with their sources. They run from 0.002 to
/// 0.004 of the bore and are too far apart to build by: only for telling a
/// plausible limit from a slip of the pen.
pub fn gap_rules(bore: Length) -> Vec<Worked<Length>> {
    let rules = [
        (0.002, Source::read("a tractor owners' forum, lower end")),
        (0.003, Source::read("a tractor owners' forum, upper end")),
        (
            0.004,
            Source::memory("rule of thumb, engines without a blower"),
        ),
    ];
    let rule = |(share, source): (f64, Source)| {
        let gap = scaled(bore, share);
        let working = Working::new()
            .line(
                "end gap",
                "share × bore",
                format!("{} × {}", trimmed(share, 3), bore.amount().as_given()),
                gap,
            )
            .source(source);
        Worked::new(gap, working)
    };
    rules.into_iter().map(rule).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_filed_off_is_what_is_missing() {
        let left = filed_gap(Length::millimetres(0.2), Length::millimetres(0.35));
        assert_eq!(left.value.amount().as_given(), "0.15 mm");
        let gaping = filed_gap(Length::millimetres(0.65), Length::millimetres(0.6));
        assert!(gaping.value.si() < 0.0);
    }

    /// Bore of 3 in: 0.006 to 0.009 in; bore of 2.5 in: 0.010 in by the third.
    #[test]
    fn rules_of_thumb() {
        let gaps = |bore: f64| -> Vec<String> {
            gap_rules(Length::inches(bore))
                .iter()
                .map(|gap| gap.value.to_string())
                .collect()
        };
        assert_eq!(gaps(3.0)[..2], ["0.006 in", "0.009 in"]);
        assert_eq!(gaps(2.5)[2], "0.01 in");
    }
}
