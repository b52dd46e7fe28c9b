//! How the parts of a step go on.

use super::PartNote;
use super::acts::Acts;
use crate::look::harmless;
use crate::words::{Numbers, thing};
use plan::model::{Amount, Plan, Sort, StepId, ThingId};
use std::collections::HashSet;
use syntax::tree::Verb;
use workshop::quantity::Mass;

/// What a part weighs, with what the plan knows of that travels on it or in it.
fn mass(plan: &Plan, acts: &Acts<'_>, at: usize, id: ThingId) -> Option<String> {
    let own = plan.thing(id).mass.as_ref().filter(|mass| !mass.unknown);
    let written = own.map(|mass| harmless(&mass.text));
    let alone = own.and_then(kilograms).unwrap_or(0.0);
    let all = weighed(plan, acts, at, id);
    if all > alone + 0.05 {
        // Rounded down, so that "at least" stays true.
        let shown = if all < 10.0 {
            (all * 10.0 + 1e-6).floor() / 10.0
        } else {
            (all + 1e-6).floor()
        };
        return Some(format!("at least {shown} kg with what is on it"));
    }
    written
}

/// The known masses of a thing, of the members of a unit and of what is on them by then and
/// comes along, in kg, each counted once.
fn weighed(plan: &Plan, acts: &Acts<'_>, at: usize, id: ThingId) -> f64 {
    let mut seen = HashSet::from([id]);
    let mut open = vec![(id, false)];
    let mut sum = 0.0;
    while let Some((id, counted)) = open.pop() {
        let thing = plan.thing(id);
        let known = thing.mass.as_ref().and_then(kilograms);
        if !counted {
            sum += known.unwrap_or(0.0);
        }
        // A mass that is said of a unit is that of all its members together.
        let whole = counted || known.is_some();
        for member in thing.members() {
            if seen.insert(member.thing) {
                open.push((member.thing, whole));
            }
        }
        let rides = plan.things().filter(|(rider, what)| {
            what.temporary.is_none()
                && what.pressed_onto.iter().any(|on| on.thing == id)
                && acts.is_on(*rider, at)
        });
        for (rider, _) in rides {
            if seen.insert(rider) {
                open.push((rider, counted));
            }
        }
    }
    sum
}

fn kilograms(amount: &Amount) -> Option<f64> {
    let low = amount.measure.as_ref()?.low();
    Some(Mass::try_from(low).ok()?.in_kilograms())
}

/// Which way round, which side, whose mate: for every part that has something to say.
pub(super) fn part_notes(
    plan: &Plan,
    numbers: &Numbers,
    acts: &Acts<'_>,
    (at, id): (usize, StepId),
) -> Vec<PartNote> {
    let step = plan.step(id);
    let goes_on = matches!(step.verb, Verb::Fit | Verb::DryFit);
    if !goes_on && step.verb != Verb::Remove {
        return Vec::new();
    }
    let targets = step.targets.iter().filter(|target| {
        let sort = plan.thing(target.thing).sort;
        matches!(sort, Sort::Part | Sort::Unit | Sort::Item)
    });
    targets
        .map(|target| {
            let part = plan.thing(target.thing);
            let matched = part
                .matched_with
                .iter()
                .map(|mate| thing(plan, mate.thing))
                .collect();
            PartNote {
                name: thing(plan, target.thing),
                facing: part
                    .facing
                    .as_ref()
                    .filter(|_| goes_on)
                    .map(|facing| harmless(&facing.text)),
                side: part
                    .side
                    .as_ref()
                    .filter(|_| goes_on)
                    .map(|(side, _)| harmless(side)),
                matched_with: if goes_on { matched } else { Vec::new() },
                mass: mass(plan, acts, at, target.thing),
                // What comes out one at a time need not be called temporary once more.
                temporary: part
                    .temporary
                    .map(|_| part.count.unwrap_or(1))
                    .filter(|count| goes_on || *count > 1),
                out_at: part
                    .temporary
                    .filter(|_| goes_on)
                    .and_then(|_| acts.next(target.thing, at, Verb::Remove))
                    .map(|step| numbers.number(step)),
            }
        })
        .filter(|note| {
            note.facing.is_some()
                || note.side.is_some()
                || !note.matched_with.is_empty()
                || note.mass.is_some()
                || note.temporary.is_some()
        })
        .collect()
}
