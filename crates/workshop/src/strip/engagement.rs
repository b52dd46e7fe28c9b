//! How deep a screw must go.

use std::f64::consts::PI;

use super::area::bare;
use super::material::MaterialFamily;
use crate::quantity::{Area, Length, System, trimmed};
use crate::source::Source;
use crate::thread::{Limits, Thread};
use crate::working::{Worked, Working};

/// Engagement at which a screw breaks before it strips, hole and screw of the
/// same material: LE = 4 × As/(π × d2) (FED-STD-H28/2B formula 13).
pub fn engagement_equal_strength(stress_area: Area, pitch_diameter: Length) -> Worked<Length> {
    let system = System::of(pitch_diameter.unit());
    let length = 4.0 * stress_area.inner() / (PI * pitch_diameter.inner());
    let length = Length::from_inner(length, system);
    let working = Working::new()
        .line(
            "engagement LE",
            "4 × As / (π × d2)",
            format!("4 × {stress_area} / (π × {pitch_diameter})"),
            length,
        )
        .source(Source::read("FED-STD-H28/2B (1991) App. B formula 13"));
    Worked::new(length, working)
}

/// Engagement at which a screw breaks before its own thread strips in a
/// stronger hole: LE = 2 × As/(ASs per unit of length)
///
/// = 2 × As / (π × (D1 max/P) × (P/2 + 0.57735 × (d2 min - D1 max)))
/// (FED-STD-H28/2B formula 14). The stress area is given apart, because a
/// hollow screw has less of it.
pub fn engagement_strong_hole(
    stress_area: Area,
    pitch: Length,
    minor_internal_max: Length,
    pitch_external_min: Length,
) -> Worked<Length> {
    let system = System::of(pitch.unit());
    let (p, crest) = (pitch.inner(), minor_internal_max.inner());
    let tooth = p / 2.0 + 0.57735 * (pitch_external_min.inner() - crest);
    let per_length = PI * (crest / p).value * tooth;
    let length = Length::from_inner(2.0 * stress_area.inner() / per_length, system);
    let (p, crest, mate) = (
        bare(pitch, system),
        bare(minor_internal_max, system),
        bare(pitch_external_min, system),
    );
    let working = Working::new()
        .line(
            "engagement LE",
            "2 × As / (π × (D1 max/P) × (P/2 + 0.57735 × (d2 min - D1 max)))",
            format!(
                "2 × {stress_area} / (π × ({crest}/{p}) × ({p}/2 + 0.57735 × ({mate} - {crest})))"
            ),
            length,
        )
        .source(Source::read("FED-STD-H28/2B (1991) App. B formula 14"));
    Worked::new(length, working)
}

/// R1, the ratio of the two strip areas:
///
/// R1 = 0.75 × D1 / ((d min/P) × (P/2 + 0.57735 × (d min - D2 max)))
///
/// with D1 the basic minor diameter of the hole (FED-STD-H28/2B formula 15).
/// `None` for a thread that is not computed.
pub fn shear_area_ratio(thread: &Thread, limits: &Limits) -> Option<Worked<f64>> {
    let profile = thread.profile()?;
    let system = System::of(profile.pitch.unit());
    let (p, crest) = (profile.pitch.inner(), limits.major_external_min.inner());
    let tooth = p / 2.0 + 0.57735 * (crest - limits.pitch_internal_max.inner());
    let ratio = (0.75 * profile.minor_internal.inner() / ((crest / p).value * tooth)).value;
    let (d1, p, crest, mate) = (
        bare(profile.minor_internal, system),
        bare(profile.pitch, system),
        bare(limits.major_external_min, system),
        bare(limits.pitch_internal_max, system),
    );
    let working = Working::new()
        .line(
            "ratio of strip areas R1",
            "0.75 × D1 / ((d min/P) × (P/2 + 0.57735 × (d min - D2 max)))",
            format!("0.75 × {d1} / (({crest}/{p}) × ({p}/2 + 0.57735 × ({crest} - {mate})))"),
            trimmed(ratio, 4),
        )
        .source(Source::read("FED-STD-H28/2B (1991) App. B formula 15"))
        .source(limits.source.clone());
    Some(Worked::new(ratio, working))
}

/// Engagement at which a screw breaks before it strips a softer hole:
///
/// LE = 2 × As/(0.75 × π × D1) × R1/R2
///
/// with R2 the tensile strength of the hole over that of the screw
/// (FED-STD-H28/2B formula 16, which holds where R1/R2 is above 1). `None` for
/// a thread that is not computed, without limits, for R2 not above 0, and
/// where R1/R2 is not above 1: there the screw strips first, and
/// [`engagement_strong_hole`] applies.
pub fn engagement_soft_hole(thread: &Thread, stress_area: Area, r2: f64) -> Option<Worked<Length>> {
    let limits = thread.limits()?;
    let ratio = shear_area_ratio(thread, &limits)?;
    if !(r2 > 0.0 && ratio.value / r2 > 1.0) {
        return None;
    }
    let profile = thread.profile()?;
    let system = System::of(profile.pitch.unit());
    let length =
        2.0 * stress_area.inner() / (0.75 * PI * profile.minor_internal.inner()) * ratio.value / r2;
    let length = Length::from_inner(length, system);
    let working = Working::new()
        .line(
            "engagement LE",
            "2 × As / (0.75 × π × D1) × R1/R2",
            format!(
                "2 × {stress_area} / (0.75 × π × {}) × {} / {}",
                profile.minor_internal,
                trimmed(ratio.value, 4),
                trimmed(r2, 4)
            ),
            length,
        )
        .source(Source::read("FED-STD-H28/2B (1991) App. B formula 16"))
        .after(ratio.working);
    Some(Worked::new(length, working))
}

/// A rule of thumb for engagement, in thread diameters.
#[derive(Debug, Clone, PartialEq)]
pub struct EngagementRule {
    /// Least engagement in thread diameters.
    pub diameters: f64,
    /// Where it comes from.
    pub source: Source,
}

/// The rule of thumb for a material. A torque for steel must not be used
/// where a screw goes less deep.
pub fn engagement_rule(family: MaterialFamily) -> EngagementRule {
    let (diameters, source) = match family {
        MaterialFamily::Steel | MaterialFamily::Stainless => {
            (1.0, Source::practice("one diameter in steel"))
        }
        MaterialFamily::CastIron => (
            1.25,
            Source::read("an engine maker's note: 1.25 diameters in cast iron"),
        ),
        MaterialFamily::Brass => (1.25, Source::practice("1.25 to 1.5 diameters in brass")),
        MaterialFamily::Aluminium => (2.0, Source::read("TM 9-6115-604-34 Table 1-2 note 6")),
        MaterialFamily::Magnesium => (2.0, Source::practice("as in aluminium")),
        MaterialFamily::Plastic => (2.0, Source::practice("2 to 2.5 diameters, or an insert")),
    };
    EngagementRule { diameters, source }
}
