//! What a step is about to shut in, and whether the work at it is done.

use super::{Chance, Work};
use crate::words::{Numbers, joined, participle, thing};
use check::view::LastChance;
use plan::model::{Plan, Sort, StepId};
use syntax::tree::Verb;

/// Work that only opens.
const TAKES_APART: [&str; 4] = ["slackened", "undone", "removed", "unlocked"];

/// The supply that an `apply` puts on: it is the supply that is applied, not the thing.
fn put_on(plan: &Plan, id: StepId) -> Option<String> {
    let step = plan.step(id);
    let names: Vec<String> = step
        .targets
        .iter()
        .filter(|target| plan.thing(target.thing).sort == Sort::Supply)
        .map(|target| thing(plan, target.thing))
        .collect();
    (step.verb == Verb::Apply && !names.is_empty()).then(|| joined(&names))
}

/// What the sheet says of a last chance.
pub(super) fn chance(plan: &Plan, numbers: &Numbers, last: &LastChance) -> Chance {
    let works = |steps: &[StepId]| -> Vec<Work> {
        let mut works: Vec<Work> = steps
            .iter()
            .map(|step| Work {
                what: participle(plan.step(*step).verb),
                of: put_on(plan, *step),
                number: numbers.number(*step),
            })
            .collect();
        works.sort_by_key(|work| work.number);
        works
    };
    // Of what was done more than once only the last time counts, and what was only taken apart
    // is no work that could be forgotten.
    let lasting = |works: Vec<Work>| -> Vec<Work> {
        let mut kept: Vec<Work> = Vec::new();
        for work in works.into_iter().rev() {
            if !TAKES_APART.contains(&work.what)
                && !kept
                    .iter()
                    .any(|later| later.what == work.what && later.of == work.of)
            {
                kept.push(work);
            }
        }
        kept.reverse();
        kept
    };
    Chance {
        thing: thing(plan, last.thing),
        done: lasting(works(&last.done_by)),
        missed: works(&last.missed_by),
    }
}
