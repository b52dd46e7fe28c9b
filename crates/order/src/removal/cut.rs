//! Leaving out what cannot matter.
//!
//! * A route through something that never comes off is never clear, one through
//!   the thing itself never in time; one that holds all of another route of the
//!   same condition is clear no sooner than that.
//! * Nothing is ever needed that no route from the targets leads to.
//! * A thing is in every solution if without it the targets are out of reach.
//!   It need only be tried for the things of one solution. If nothing that it
//!   depends on, directly or not, depends on it, its conditions become
//!   conditions of the goal and it counts as gone: given a set that clears these,
//!   the part of it that the thing depends on comes off without it, then the
//!   thing, then the rest. In a circle of dependence that would let the
//!   thing support itself, and so it stays, at no cost.
//! * What is left may fall into pieces without anything in common, each with
//!   its own share of the goal's conditions; their cheapest sets add up.

use super::peel::{all_that_come_off, thin};
use super::shape::Shape;
use super::{Condition, Removals, ThingId};
use crate::bits::Bits;
use crate::graph::strong_components;
use crate::rows::Rows;

/// What has been decided and what has not.
pub(crate) struct Reduced {
    /// In every solution.
    pub forced: Vec<ThingId>,
    pub pieces: Vec<Piece>,
}

/// A part of the question that can be answered by itself.
pub(crate) struct Piece {
    pub shape: Shape,
    /// Things, as numbered here, that are in every solution and paid for.
    pub always: Vec<u32>,
    names: Vec<ThingId>,
}

impl Piece {
    /// The names outside of things numbered here.
    pub fn whole(&self, things: &[u32]) -> Vec<ThingId> {
        things.iter().map(|&t| self.names[t as usize]).collect()
    }
}

/// Reduces a question whose targets can be reached; `can` are the things that
/// come off at all.
pub(crate) fn reduce(question: &Removals, can: &Bits) -> Reduced {
    let goal = question.things();
    let mut work = Work {
        cost: &question.cost,
        conditions: question.conditions.clone(),
        gone: vec![false; goal],
        can,
    };
    work.conditions.push(question.targets.clone());
    question.gone.iter().for_each(|&t| work.take(t, false));
    work.simplify();
    let forced = work.forced();
    let circles = work.in_circles();
    for &t in forced.iter().filter(|&&t| !circles.has(t)) {
        work.take(t, true);
    }
    work.simplify();
    let pieces = work.pieces(&forced);
    Reduced { forced, pieces }
}

struct Work<'a> {
    cost: &'a [u64],
    /// The goal's conditions come last.
    conditions: Vec<Vec<Condition>>,
    gone: Vec<bool>,
    can: &'a Bits,
}

impl Work<'_> {
    fn goal(&self) -> usize {
        self.cost.len()
    }

    /// Counts the thing as gone, its conditions perhaps as the goal's.
    fn take(&mut self, thing: ThingId, still_asked: bool) {
        self.gone[thing as usize] = true;
        let own = std::mem::take(&mut self.conditions[thing as usize]);
        if still_asked {
            let goal = self.goal();
            self.conditions[goal].extend(own);
        }
    }

    fn simplify(&mut self) {
        let (gone, can) = (&self.gone, self.can);
        for (own, list) in self.conditions.iter_mut().enumerate() {
            if own < gone.len() && !can.has(own as u32) {
                list.clear();
                continue;
            }
            list.retain_mut(|condition| {
                shorten(condition, own as u32, gone, can);
                condition.first().is_none_or(|route| !route.is_empty())
            });
            list.sort();
            list.dedup();
        }
    }

    /// What some chain of routes leads to from the goal.
    fn relevant(&self) -> Bits {
        let mut out = Bits::new(self.goal());
        let mut stack = vec![self.goal() as u32];
        while let Some(at) = stack.pop() {
            for &t in self.conditions[at as usize].iter().flatten().flatten() {
                if out.add(t) {
                    stack.push(t);
                }
            }
        }
        out
    }

    fn forced(&self) -> Vec<ThingId> {
        let shape = Shape::new(self.cost, &self.conditions);
        let relevant = self.relevant();
        let all: Vec<_> = relevant.iter().collect();
        let mut out = thin(&shape, &all, &[]);
        out.retain(|&t| {
            let others = all_that_come_off(&shape, |x| x != t && relevant.has(x));
            !others.has(shape.goal())
        });
        out
    }

    /// The things that depend on themselves through others.
    fn in_circles(&self) -> Bits {
        let pairs: Vec<(u32, u32)> = (0..self.goal())
            .flat_map(|t| {
                let named = self.conditions[t].iter().flatten().flatten();
                named.map(move |&x| (t as u32, x))
            })
            .collect();
        let rows = Rows::from_pairs(self.goal(), pairs.iter().copied(), |_| ());
        let mut out = Bits::new(self.goal());
        for component in strong_components(&rows).iter().filter(|c| c.len() > 1) {
            for &t in component {
                out.add(t);
            }
        }
        out
    }

    fn pieces(&self, forced: &[ThingId]) -> Vec<Piece> {
        let relevant = self.relevant();
        let mut group: Vec<u32> = (0..self.goal() as u32).collect();
        for t in relevant.iter() {
            for &x in self.conditions[t as usize].iter().flatten().flatten() {
                join(&mut group, t, x);
            }
        }
        let asked = &self.conditions[self.goal()];
        for condition in asked {
            let mut named = condition.iter().flatten();
            if let Some(&first) = named.next() {
                named.for_each(|&x| join(&mut group, first, x));
            }
        }
        let mut at = vec![u32::MAX; self.goal()];
        let mut members: Vec<Vec<ThingId>> = Vec::new();
        for t in relevant.iter() {
            let root = find(&mut group, t) as usize;
            if at[root] == u32::MAX {
                at[root] = members.len() as u32;
                members.push(Vec::new());
            }
            members[at[root] as usize].push(t);
        }
        let mut goals: Vec<Vec<Condition>> = vec![Vec::new(); members.len()];
        for condition in asked {
            if let Some(&t) = condition.iter().flatten().next() {
                let root = find(&mut group, t) as usize;
                goals[at[root] as usize].push(condition.clone());
            }
        }
        let pieces = members.into_iter().zip(goals);
        pieces
            .map(|(names, goal)| self.piece(names, goal, forced))
            .collect()
    }

    fn piece(&self, names: Vec<ThingId>, goal: Vec<Condition>, forced: &[ThingId]) -> Piece {
        // The names are rising.
        let number = |t: &ThingId| names.partition_point(|x| x < t) as u32;
        let here = |list: &Vec<Condition>| -> Vec<Condition> {
            let route = |route: &Vec<ThingId>| route.iter().map(number).collect();
            let condition = |c: &Condition| c.iter().map(route).collect();
            list.iter().map(condition).collect()
        };
        let own = |&t: &ThingId| here(&self.conditions[t as usize]);
        let mut conditions: Vec<_> = names.iter().map(own).collect();
        conditions.push(here(&goal));
        let always: Vec<u32> = forced
            .iter()
            .filter(|t| names.binary_search(t).is_ok())
            .map(number)
            .collect();
        let mut cost: Vec<u64> = names.iter().map(|&t| self.cost[t as usize]).collect();
        always.iter().for_each(|&t| cost[t as usize] = 0);
        Piece {
            shape: Shape::new(&cost, &conditions),
            always,
            names,
        }
    }
}

/// Leaves only routes that can be clear in time and hold no other one. An empty
/// route comes first and alone.
fn shorten(condition: &mut Condition, own: ThingId, gone: &[bool], can: &Bits) {
    condition.retain(|route| route.iter().all(|&t| t != own && can.has(t)));
    for route in condition.iter_mut() {
        route.retain(|&t| !gone[t as usize]);
        route.sort_unstable();
        route.dedup();
    }
    condition.sort_by(|x, y| x.len().cmp(&y.len()).then_with(|| x.cmp(y)));
    let mut kept: Condition = Vec::with_capacity(condition.len());
    for route in condition.drain(..) {
        let holds = |other: &Vec<ThingId>| other.iter().all(|t| route.binary_search(t).is_ok());
        if !kept.iter().any(holds) {
            kept.push(route);
        }
    }
    *condition = kept;
}

fn find(group: &mut [u32], t: u32) -> u32 {
    let mut root = t;
    while group[root as usize] != root {
        group[root as usize] = group[group[root as usize] as usize];
        root = group[root as usize];
    }
    root
}

fn join(group: &mut [u32], a: u32, b: u32) {
    let (a, b) = (find(group, a), find(group, b));
    group[a.max(b) as usize] = a.min(b);
}
