//! What a step is about to shut in, and whether the work at it is done.

use super::{Chance, Work};
use crate::words::{Numbers, participle, thing};
use check::view::LastChance;
use plan::model::{Plan, StepId};

/// Work that only opens.
const TAKES_APART: [&str; 4] = ["slackened", "undone", "removed", "unlocked"];

/// What the sheet says of a last chance.
pub(super) fn chance(plan: &Plan, numbers: &Numbers, last: &LastChance) -> Chance {
    let works = |steps: &[StepId]| -> Vec<Work> {
        let mut works: Vec<Work> = steps
            .iter()
            .map(|step| Work {
                what: participle(plan.step(*step).verb),
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
                && !kept.iter().any(|later| later.what == work.what)
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
