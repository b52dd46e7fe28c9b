//! Proof load: what a fastener bears without lasting stretch.

use super::BoltClass;
use crate::quantity::{Force, System};
use crate::thread::Thread;
use crate::working::{Worked, Working};

/// Fp = As × Sp: stress area times proof stress, N or lbf (ISO 898-1; SAE
/// J429). `None` for a thread that is not computed and outside the sizes of
/// the class.
///
/// The standard prints loads from areas rounded to three digits, and rounds
/// some loads down and some to nearest; its figures differ from this by up to
/// 0.7 %.
pub fn proof_load(thread: &Thread, class: BoltClass) -> Option<Worked<Force>> {
    let area = thread.stress_area()?;
    let strength = class.strength(thread.diameter()?)?;
    let system = System::of(area.value.unit());
    let load = Force::from_inner(area.value.inner() * strength.proof.inner(), system);
    let working = Working::new()
        .line(
            "proof stress Sp",
            "",
            String::new(),
            format!("{} (class {class})", strength.proof),
        )
        .line(
            "proof load Fp",
            "As × Sp",
            format!("{} × {}", area.value, strength.proof),
            load,
        )
        .source(strength.source)
        .after(area.working);
    Some(Worked::new(load, working))
}
