//! Published facts about threadlockers and sealants.

use crate::quantity::{Temperature, Time};
use crate::source::Source;

/// How long a threadlocker must stand before it is asked to hold.
#[derive(Debug, Clone, PartialEq)]
pub struct CureTime {
    /// At which temperature, or how it was warmed.
    pub at: Temperature,
    /// At the least.
    pub least: Time,
    /// At the most; as long as `least` where one time is published.
    pub most: Time,
    /// Where it comes from.
    pub source: Source,
}

/// Cure of an anaerobic threadlocker on clean machined steel. The maker's sheet
/// goes before it.
pub fn threadlocker_cures() -> Vec<CureTime> {
    let manual = || Source::read("TM 5-3820-256-24-5");
    let cure = |celsius: f64, least: f64, most: f64| CureTime {
        at: Temperature::celsius(celsius),
        least: Time::hours(least),
        most: Time::hours(most),
        source: manual(),
    };
    vec![
        cure(10.0, 72.0, 72.0),
        cure(23.0, 6.0, 24.0),
        cure(65.0, 1.0, 1.0),
        cure(93.0, 0.75, 0.75),
        cure(120.0, 0.5, 0.5),
    ]
}

/// The range in which an ordinary anaerobic threadlocker may serve: -54 to
/// 149 °C (TM 10-3930-643-20 par. 2-12). Grades for high temperature reach
/// about 230 °C by a trade note that is no standard.
pub fn threadlocker_service() -> (Temperature, Temperature, Source) {
    (
        Temperature::celsius(-54.0),
        Temperature::celsius(149.0),
        Source::read("TM 10-3930-643-20 par. 2-12"),
    )
}

/// Below this a threadlocker wants a primer: 10 °C (TM 5-3820-256-24-5).
pub fn threadlocker_primer_below() -> (Temperature, Source) {
    (
        Temperature::celsius(10.0),
        Source::read("TM 5-3820-256-24-5"),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn warmer_is_faster() {
        let cures = threadlocker_cures();
        for pair in cures.windows(2) {
            assert!(pair[1].at.exceeds(pair[0].at));
            assert!(pair[0].most.exceeds(pair[1].most));
        }
    }
}
