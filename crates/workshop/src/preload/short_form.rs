//! The short form: T = K × F × d.

use super::nut_factor::NutFactor;
use crate::quantity::{Force, Length, System, Torque, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

const SHORT_FORM: Source = Source::read("Shigley, 9th ed., Eq. 8-27");

/// Torque for a clamp load: T = K × F × d, with F in N and d in m for N.m, or
/// in lbf and in for lbf.in (Shigley, 9th ed., Eq. 8-27). The likely K is
/// used.
pub fn torque_for(load: Force, diameter: Length, k: &NutFactor) -> Worked<Torque> {
    let moment = k.likely() * load.inner() * diameter.inner();
    let torque = Torque::from_inner(moment.into(), System::of(diameter.unit()));
    let working = Working::new()
        .line(
            "torque T",
            "K × F × d",
            format!(
                "{} × {load} × {}",
                trimmed(k.likely(), 4),
                diameter.amount().as_given()
            ),
            torque,
        )
        .source(SHORT_FORM)
        .source(k.source().clone())
        .assuming(format!("the nut factor K is {k}"));
    Worked::new(torque, working)
}

/// Clamp load from a torque: F = T / (K × d), the short form the other way
/// round. The likely K is used; [`NutFactor::at_low`] gives the most load that
/// the torque can make, [`NutFactor::at_high`] the least.
pub fn clamp_load(torque: Torque, diameter: Length, k: &NutFactor) -> Worked<Force> {
    // A torque is work per radian, which is where the length drops out.
    let moment: uom::si::f64::Energy = torque.inner().into();
    let load = moment / (k.likely() * diameter.inner());
    let load = Force::from_inner(load, System::of(diameter.unit()));
    let working = Working::new()
        .line(
            "clamp load F",
            "T / (K × d)",
            format!(
                "{} / ({} × {})",
                torque.amount().as_given(),
                trimmed(k.likely(), 4),
                diameter.amount().as_given()
            ),
            load,
        )
        .source(SHORT_FORM)
        .source(k.source().clone())
        .assuming(format!("the nut factor K is {k}"));
    Worked::new(load, working)
}

/// The nut factor that a test shows: K = T / (d × F), from a torque and the
/// load measured at it (NASA-STD-5020B App. A.2 Eq. 32).
pub fn nut_factor_from_test(torque: Torque, diameter: Length, load: Force) -> Worked<f64> {
    let moment: uom::si::f64::Energy = torque.inner().into();
    let ratio: uom::si::f64::Ratio = moment / (diameter.inner() * load.inner());
    let k = ratio.value;
    let working = Working::new()
        .line(
            "nut factor K",
            "T / (d × F)",
            format!(
                "{} / ({} × {load})",
                torque.amount().as_given(),
                diameter.amount().as_given()
            ),
            trimmed(k, 3),
        )
        .source(Source::read("NASA-STD-5020B (2021) App. A.2 Eq. 32"));
    Worked::new(k, working)
}
