//! What a step is about to shut in, and whether the work at it is done.

use super::{Chance, Work, Worked};
use crate::words::{Numbers, participle, thing};
use plan::model::StepId;

/// The last chances before a step, in the order of what they are called.
pub(super) fn chances(worked: &Worked<'_>, numbers: &Numbers, id: StepId) -> Vec<Chance> {
    let works = |steps: &[StepId]| -> Vec<Work> {
        let mut works: Vec<Work> = steps
            .iter()
            .map(|step| Work {
                what: participle(worked.plan.step(*step).verb),
                number: numbers.number(*step),
            })
            .collect();
        works.sort_by_key(|work| work.number);
        works
    };
    worked
        .last_chances
        .iter()
        .filter(|chance| chance.step == id)
        .map(|chance| Chance {
            thing: thing(worked.plan, chance.thing),
            done: works(&chance.done_by),
            missed: works(&chance.missed_by),
        })
        .collect()
}
