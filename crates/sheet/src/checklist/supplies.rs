//! What is used up by a step: supplies, new items, and old ones used again.

use super::entry::text_or_blank;
use super::{NewItem, OldItem, SupplyUse};
use crate::look::harmless;
use crate::words::{self, thing};
use plan::model::{Amount, Body, Plan, Step, StepId, ThingId};
use syntax::tree::Verb;

/// The supplies of a step, each once.
pub(super) fn supplies(plan: &Plan, id: StepId) -> Vec<SupplyUse> {
    let step = plan.step(id);
    let mut used: Vec<ThingId> = Vec::new();
    if step.verb == Verb::Apply {
        used.extend(step.targets.iter().map(|target| target.thing));
    }
    used.extend(step.uses.iter().map(|used| used.thing));
    used.extend(words::fluids(plan, id));
    let mut supplies: Vec<SupplyUse> = Vec::new();
    for supply in used {
        let name = thing(plan, supply);
        if supplies.iter().any(|s| s.name == name) {
            continue;
        }
        let facts = plan.thing(supply).supply();
        let time = |amount: Option<&Amount>| amount.map(text_or_blank);
        supplies.push(SupplyUse {
            amount: amount_held(plan, step, supply),
            close_within: time(facts.and_then(|f| f.close_within.as_ref())),
            fixes_in: time(facts.and_then(|f| f.fixes_in.as_ref())),
            cures_in: time(facts.and_then(|f| f.cures_in.as_ref())),
            name,
        });
    }
    supplies
}

/// How much of a fluid the filled point holds.
fn amount_held(plan: &Plan, step: &Step, supply: ThingId) -> Option<String> {
    if step.verb != Verb::Fill {
        return None;
    }
    step.targets.iter().find_map(|target| {
        let (fluid, _, amount) = plan.thing(target.thing).point()?.holds.as_ref()?;
        let same = fluid.is_none_or(|fluid| fluid == supply);
        same.then(|| amount.as_ref().map(text_or_blank)).flatten()
    })
}

fn new_item(plan: &Plan, id: ThingId) -> NewItem {
    let what = plan.thing(id);
    NewItem {
        name: thing(plan, id),
        count: what.count,
        size: match &what.body {
            Body::Item { size, .. } => size.as_deref().map(harmless),
            _ => None,
        },
    }
}

/// What a step takes new.
pub(super) fn new_items(plan: &Plan, step: &Step) -> Vec<NewItem> {
    step.news
        .iter()
        .map(|new| new_item(plan, new.thing))
        .collect()
}

/// What a step uses again on purpose.
pub(super) fn old_items(plan: &Plan, step: &Step) -> Vec<OldItem> {
    let olds = step.olds.iter();
    olds.map(|(old, because)| OldItem {
        name: thing(plan, old.thing),
        because: because.as_deref().map(harmless),
    })
    .collect()
}
