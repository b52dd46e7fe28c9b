//! How the parts of a step go on.

use super::PartNote;
use super::acts::Acts;
use crate::look::harmless;
use crate::words::{Numbers, thing};
use plan::model::{Plan, Sort, StepId};
use syntax::tree::Verb;

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
                mass: part
                    .mass
                    .as_ref()
                    .filter(|mass| !mass.unknown)
                    .map(|mass| harmless(&mass.text)),
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
