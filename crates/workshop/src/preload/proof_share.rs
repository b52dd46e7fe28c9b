//! Clamp load as a share of proof load.

use crate::class::{BoltClass, proof_load};
use crate::quantity::{Force, System, trimmed};
use crate::source::Source;
use crate::thread::Thread;
use crate::working::{Worked, Working};

/// The share of its proof load that a clamp load puts on a fastener: F/Fp.
/// Above 1 it stretches for good. `None` as for
/// [`proof_load`](crate::class::proof_load).
pub fn share_of_proof(load: Force, thread: &Thread, class: BoltClass) -> Option<Worked<f64>> {
    let proof = proof_load(thread, class)?;
    let share = (load.inner() / proof.value.inner()).value;
    let working = Working::new()
        .line(
            "share of proof load",
            "F / Fp",
            format!("{load} / {}", proof.value),
            format!("{} %", trimmed(100.0 * share, 3)),
        )
        .after(proof.working);
    Some(Worked::new(share, working))
}

/// The clamp load that is a given share of the proof load: F = share × Fp.
/// Shigley, 9th ed., ch. 8-9 takes 0.75 for a joint that comes apart again and
/// 0.90 for one that stays. `None` as for
/// [`proof_load`](crate::class::proof_load), and for a share outside 0 to 1.
pub fn load_for_share(share: f64, thread: &Thread, class: BoltClass) -> Option<Worked<Force>> {
    if !(share > 0.0 && share <= 1.0) {
        return None;
    }
    let proof = proof_load(thread, class)?;
    let load = Force::from_inner(share * proof.value.inner(), System::of(proof.value.unit()));
    let working = Working::new()
        .line(
            "clamp load F",
            "share × Fp",
            format!("{} × {}", trimmed(share, 3), proof.value),
            load,
        )
        .source(Source::memory(
            "Shigley, 9th ed., ch. 8-9, for 0.75 and 0.90",
        ))
        .after(proof.working);
    Some(Worked::new(load, working))
}
