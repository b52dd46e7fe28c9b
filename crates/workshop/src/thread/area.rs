//! Stress areas.

use std::f64::consts::FRAC_PI_4;

use super::{MetricThread, UnifiedThread};
use crate::quantity::{Area, Length, System, plain};
use crate::source::Source;
use crate::working::{Worked, Working};

/// As = (π/4) × (d - 0.9382 P)², mm2.
///
/// The factor is half of 0.649 519 + 1.226 869: the mean of the pitch diameter
/// and the minor diameter at the rounded root.
pub(super) fn metric(thread: &MetricThread) -> Worked<Area> {
    let (d, p) = (thread.diameter_mm(), thread.pitch_mm());
    let carrying = Length::millimetres(d - 0.9382 * p).inner();
    let area = Area::from_inner(FRAC_PI_4 * carrying * carrying, System::Metric);
    let working = Working::new()
        .line(
            "stress area As",
            "(π/4) × (d - 0.9382 × P)²",
            format!("(π/4) × ({} - 0.9382 × {})² mm2", plain(d), plain(p)),
            area,
        )
        .source(Source::copied("ISO 898-1:2013, nominal stress area"));
    Worked::new(area, working)
}

/// At = 0.7854 × (d - 0.9743/n)², in2, where 0.7854 is π/4.
pub(super) fn unified(thread: &UnifiedThread) -> Worked<Area> {
    let (d, n) = (thread.diameter_in(), thread.threads_per_inch());
    let carrying = Length::inches(d - 0.9743 / n).inner();
    let area = Area::from_inner(FRAC_PI_4 * carrying * carrying, System::Inch);
    let working = Working::new()
        .line(
            "stress area At",
            "0.7854 × (d - 0.9743/n)²",
            format!("0.7854 × ({} - 0.9743/{})² in2", plain(d), plain(n)),
            area,
        )
        .source(Source::read(
            "FED-STD-H28/2B (1991) App. B formula 1b; NSTS 08307 Rev A App. A",
        ));
    Worked::new(area, working)
}
