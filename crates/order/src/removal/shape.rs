//! Conditions laid out flat, with the targets as the conditions of one more
//! thing, the goal.

use super::{Condition, ThingId};
use crate::rows::Rows;

/// Things and their conditions; the goal is the thing behind the last.
pub(crate) struct Shape {
    pub cost: Vec<u64>,
    /// How many conditions each thing has.
    pub conditions: Vec<u32>,
    /// Condition to thing.
    pub of_thing: Vec<ThingId>,
    /// Route to condition.
    pub of_condition: Vec<u32>,
    /// Route to the things on it.
    pub needs: Rows,
    /// Thing to the routes that name it.
    pub named_in: Rows,
}

impl Shape {
    /// `conditions` has one entry more than `cost`: the goal's.
    pub fn new(cost: &[u64], conditions: &[Vec<Condition>]) -> Self {
        let (mut of_thing, mut of_condition) = (Vec::new(), Vec::new());
        let (mut start, mut item) = (vec![0u32], Vec::new());
        for (thing, list) in conditions.iter().enumerate() {
            for condition in list {
                for route in condition {
                    let from = item.len();
                    item.extend_from_slice(route);
                    item[from..].sort_unstable();
                    // A thing named twice must not be counted twice.
                    let mut last = from;
                    for at in from..item.len() {
                        if at == from || item[at] != item[last - 1] {
                            item[last] = item[at];
                            last += 1;
                        }
                    }
                    item.truncate(last);
                    start.push(item.len() as u32);
                    of_condition.push(of_thing.len() as u32);
                }
                of_thing.push(thing as u32);
            }
        }
        let needs = Rows::from_parts(start, item);
        let turned = needs.pairs().map(|(route, thing)| (thing, route));
        Self {
            cost: cost.to_vec(),
            conditions: conditions.iter().map(|list| list.len() as u32).collect(),
            named_in: Rows::from_pairs(conditions.len(), turned, |_| ()),
            of_thing,
            of_condition,
            needs,
        }
    }

    pub fn goal(&self) -> ThingId {
        self.cost.len() as u32
    }

    pub fn routes(&self) -> u32 {
        self.of_condition.len() as u32
    }
}
