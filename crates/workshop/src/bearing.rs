//! Pressure under a head or nut.

use std::f64::consts::FRAC_PI_4;

use crate::preload::Bearing;
use crate::quantity::{Area, Force, Pressure, System};
use crate::source::Source;
use crate::working::{Worked, Working};

/// A material and the pressure under the head that it bears.
#[derive(Debug, Clone, PartialEq)]
pub struct BearingLimit {
    /// The material.
    pub material: &'static str,
    /// The pressure that it bears.
    pub limit: Pressure,
    /// Whether the guideline calls its own figure not yet verified.
    pub unverified: bool,
    /// Where it comes from.
    pub source: Source,
}

/// Limits of pressure under the head, MPa, by VDI 2230:2003 Table A9 as
/// reproduced in a fastener catalogue, p. 678. The edition of 1986 is lower for
/// mild steel (260 instead of 490).
const LIMITS: &[(&str, f64, bool)] = &[
    ("steel S235", 490.0, false),
    ("steel E295", 710.0, false),
    ("steel S355", 760.0, false),
    ("steel C45", 630.0, true),
    ("steel 34CrMo4", 870.0, true),
    ("steel 16MnCr5", 900.0, true),
    ("stainless X5CrNi18-12", 630.0, false),
    ("grey iron GJL-250", 900.0, false),
    ("nodular iron GJS-400-15", 700.0, true),
    ("nodular iron GJS-500-7", 900.0, true),
    ("aluminium AW-6082", 260.0, true),
    ("aluminium AW-5083", 230.0, true),
    ("aluminium AW-7075", 410.0, true),
    ("aluminium AlSi9Cu3, gravity cast", 220.0, true),
    ("aluminium AlSi9Cu3, die cast", 290.0, true),
    ("aluminium AlSi7Mg T6, cast", 380.0, true),
    ("magnesium AZ91", 280.0, true),
    ("titanium Ti6Al4V", 890.0, false),
];

/// Published limits of pressure under the head. None is published for plain
/// plastic: there a metal sleeve must carry the load.
pub fn bearing_limits() -> Vec<BearingLimit> {
    let row = |(material, limit, unverified): &(&'static str, f64, bool)| BearingLimit {
        material,
        limit: Pressure::megapascals(*limit),
        unverified: *unverified,
        source: Source::copied("VDI 2230:2003 Table A9"),
    };
    LIMITS.iter().map(row).collect()
}

/// Pressure under a head: p = F / ((π/4) × (dw² - dh²)), MPa from N and mm, ksi
/// from lbf and in (VDI 2230). dw is the outer diameter of the bearing face, dh
/// that of the hole.
pub fn bearing_pressure(load: Force, bearing: Bearing) -> Worked<Pressure> {
    let area = ring(bearing);
    let system = System::of(bearing.outer().unit());
    let pressure = Pressure::from_inner(load.inner() / area.value.inner(), system);
    let working = Working::new()
        .line(
            "pressure under the head p",
            "F / A",
            format!("{load} / {}", area.value),
            pressure,
        )
        .after(area.working);
    Worked::new(pressure, working)
}

/// Clamp load at which the face under a head reaches a limit of pressure: F = A
/// × limit. Units and source as for [`bearing_pressure`].
pub fn bearing_capacity(bearing: Bearing, limit: Pressure, source: Source) -> Worked<Force> {
    let area = ring(bearing);
    let load = area.value.inner() * limit.inner();
    let load = Force::from_inner(load, System::of(bearing.outer().unit()));
    let working = Working::new()
        .line(
            "load that the face bears",
            "A × limit of pressure",
            format!("{} × {limit}", area.value),
            load,
        )
        .source(source)
        .after(area.working);
    Worked::new(load, working)
}

/// The ring of metal under a head: A = (π/4) × (dw² - dh²).
fn ring(bearing: Bearing) -> Worked<Area> {
    let (outer, hole) = (bearing.outer().inner(), bearing.hole().inner());
    let area = FRAC_PI_4 * (outer * outer - hole * hole);
    let area = Area::from_inner(area, System::of(bearing.outer().unit()));
    let working = Working::new()
        .line(
            "bearing area A",
            "(π/4) × (dw² - dh²)",
            format!(
                "(π/4) × ({}² - {}²)",
                bearing.outer().amount().as_given(),
                bearing.hole().amount().as_given()
            ),
            area,
        )
        .source(Source::memory("VDI 2230, surface pressure under the head"));
    Worked::new(area, working)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Length;

    #[test]
    fn a_load_over_its_ring() {
        // 21.2 kN on a ring of 11.63 and 9 mm: 21 200 / 42.61 = 497.5 MPa.
        let bearing = Bearing::new(Length::millimetres(11.63), Length::millimetres(9.0)).unwrap();
        let found = bearing_pressure(Force::newtons(21_200.0), bearing).value;
        assert!((found.in_megapascals() - 497.5).abs() < 0.2, "{found}");
        assert!(Bearing::new(Length::millimetres(9.0), Length::millimetres(9.0)).is_none());
    }

    #[test]
    fn soft_metals_bear_less_than_iron() {
        let limit = |name: &str| {
            let all = bearing_limits();
            let found = all.iter().find(|row| row.material.starts_with(name));
            found.map(|row| row.limit).unwrap()
        };
        assert!(limit("grey iron").exceeds(limit("aluminium AlSi9Cu3, die")));
        assert!(limit("aluminium AW-7075").exceeds(limit("aluminium AW-6082")));
    }
}
