//! Strip areas: the cylinders along which threads shear off.

use std::f64::consts::PI;

use crate::quantity::{Area, Length, System, trimmed};
use crate::source::Source;
use crate::thread::{Limits, Thread};
use crate::working::{Worked, Working};

const TABLE: &str = "FED-STD-H28/2B (1991) Table II.B.1";

/// Area that shears in the hole, at the screw's crests:
///
/// ASn = π × (LE/P) × d min × (P/2 + 0.57735 × (d min - D2 max))
///
/// with LE the length of engagement; 0.57735 is tan 30°. Any length unit, its
/// square for the area (FED-STD-H28/2B Table II.B.1).
pub fn hole_area(pitch: Length, limits: &Limits, engagement: Length) -> Worked<Area> {
    let system = System::of(pitch.unit());
    let (p, le) = (pitch.inner(), engagement.inner());
    let (crest, mate) = (
        limits.major_external_min.inner(),
        limits.pitch_internal_max.inner(),
    );
    let tooth = p / 2.0 + 0.57735 * (crest - mate);
    let area = Area::from_inner(PI * (le / p).value * crest * tooth, system);
    let (p, le, crest, mate) = (
        bare(pitch, system),
        bare(engagement, system),
        bare(limits.major_external_min, system),
        bare(limits.pitch_internal_max, system),
    );
    let working = Working::new()
        .line(
            "strip area of the hole ASn",
            "π × (LE/P) × d min × (P/2 + 0.57735 × (d min - D2 max))",
            format!("π × ({le}/{p}) × {crest} × ({p}/2 + 0.57735 × ({crest} - {mate}))"),
            area,
        )
        .source(Source::read(TABLE))
        .source(limits.source.clone());
    Worked::new(area, working)
}

/// Area that shears on the screw, at the hole's crests:
///
/// ASs = π × (LE/P) × D1 max × (P/2 + 0.57735 × (d2 min - D1 max))
///
/// Units and source as for [`hole_area`].
pub fn screw_area(pitch: Length, limits: &Limits, engagement: Length) -> Worked<Area> {
    let system = System::of(pitch.unit());
    let (p, le) = (pitch.inner(), engagement.inner());
    let (crest, mate) = (
        limits.minor_internal_max.inner(),
        limits.pitch_external_min.inner(),
    );
    let tooth = p / 2.0 + 0.57735 * (mate - crest);
    let area = Area::from_inner(PI * (le / p).value * crest * tooth, system);
    let (p, le, crest, mate) = (
        bare(pitch, system),
        bare(engagement, system),
        bare(limits.minor_internal_max, system),
        bare(limits.pitch_external_min, system),
    );
    let working = Working::new()
        .line(
            "strip area of the screw ASs",
            "π × (LE/P) × D1 max × (P/2 + 0.57735 × (d2 min - D1 max))",
            format!("π × ({le}/{p}) × {crest} × ({p}/2 + 0.57735 × ({mate} - {crest}))"),
            area,
        )
        .source(Source::read(TABLE))
        .source(limits.source.clone());
    Worked::new(area, working)
}

/// Area that shears in the hole where limits of size are not known:
/// ASn = (3/4) × π × D2 × LE, with D2 the basic pitch diameter. Units and
/// source as for [`hole_area`]. `None` for a thread that is not computed.
pub fn simplified_hole_area(thread: &Thread, engagement: Length) -> Option<Worked<Area>> {
    let profile = thread.profile()?;
    let system = System::of(profile.pitch.unit());
    let area = 0.75 * PI * profile.pitch_diameter.inner() * engagement.inner();
    let area = Area::from_inner(area, system);
    let working = Working::new()
        .line(
            "strip area of the hole ASn",
            "(3/4) × π × D2 × LE",
            format!(
                "0.75 × π × {} × {}",
                bare(profile.pitch_diameter, system),
                bare(engagement, system)
            ),
            area,
        )
        .source(Source::read(TABLE))
        .assuming("the simplified strip area holds, as the limits of this thread are not tabled");
    Some(Worked::new(area, working))
}

/// A length as a bare figure in the bench unit of the system, so that the
/// numbers of a long formula can be read.
pub(super) fn bare(length: Length, system: System) -> String {
    trimmed(
        match system {
            System::Metric => length.in_millimetres(),
            System::Inch => length.in_inches(),
        },
        6,
    )
}
