//! Where things are: on the bench with their unit, or on the machine.

use plan::index::Index;
use plan::model::{Body, Plan, ThingId};

/// What must be fitted for `thing` to be on the machine itself, nearest first: the unit it is a
/// member of, what it is pressed onto, and the same for whatever those go onto.
///
/// Two things can be in each other's way only when they are in the same place. While a unit lies
/// on the bench nothing on the machine is in the way inside it, and what travels with a shaft is
/// wherever the shaft is.
pub fn carriers(plan: &Plan, index: &Index, thing: ThingId) -> Vec<ThingId> {
    let mut found = Vec::new();
    let mut at = Some(host(plan, thing).unwrap_or(thing));
    // A circle in `onto` must not hang the walk.
    for _ in 0..64 {
        let Some(here) = at else { break };
        let one = plan.thing(here);
        let carrier = index
            .unit_of(here)
            .or_else(|| one.pressed_onto.first().map(|r| r.thing));
        at = carrier.or_else(|| one.onto.first().map(|r| r.thing));
        if let Some(carrier) = carrier {
            if found.contains(&carrier) {
                break;
            }
            found.push(carrier);
        }
    }
    found
}

/// The part that a point is on or a group of fasteners holds.
pub fn host(plan: &Plan, thing: ThingId) -> Option<ThingId> {
    match &plan.thing(thing).body {
        Body::Point(point) => {
            let on = point.on.first()?.thing;
            Some(host(plan, on).unwrap_or(on))
        }
        Body::Fasteners(f) => f.hold.first().map(|r| r.thing),
        _ => None,
    }
}
