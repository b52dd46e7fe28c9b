//! From steps that move to items of the text that move.
//!
//! A step written out for each member of a series has one item for all its
//! passes, so it can only move where all passes move alike. A step that would
//! land between two passes, or become one of a series itself, has no place in
//! the text.

use crate::bench::Bench;
use crate::solve::Solved;
use plan::model::{Plan, Stage, StepId};
use std::collections::BTreeSet;

/// Puts an item in front of all steps; see [`syntax::edit::move_items`].
const IN_FRONT: usize = usize::MAX;

/// Who stays and who moves in the nearest order, to be asked often.
#[derive(Debug)]
pub struct Moving {
    /// The nearest order.
    pub order: Vec<u32>,
    /// The place of each step in it.
    pub place: Vec<u32>,
    /// Whether the step moves, by step.
    pub moves: Vec<bool>,
    /// Whether it goes later, by step.
    pub later: Vec<bool>,
    /// The items of steps that move.
    items: BTreeSet<u32>,
    /// For each place, the nearest place in front of it with a step that stays.
    stays_in_front: Vec<Option<u32>>,
    /// For each place, the nearest place from it on with a step that stays.
    stays_behind: Vec<Option<u32>>,
}

impl Moving {
    /// Works it out from the solved order.
    pub fn of(plan: &Plan, solved: &Solved) -> Moving {
        let order = solved
            .nearest
            .clone()
            .unwrap_or_else(|| solved.order.clone());
        let mut place = vec![0; order.len()];
        let mut moves = vec![false; order.len()];
        let mut later = vec![false; order.len()];
        for moved in &solved.moved {
            moves[moved.step as usize] = true;
            later[moved.step as usize] = moved.later;
        }
        let mut stays_in_front = Vec::with_capacity(order.len());
        let mut last = None;
        for (at, step) in (0u32..).zip(&order) {
            place[*step as usize] = at;
            stays_in_front.push(last);
            if !moves[*step as usize] {
                last = Some(at);
            }
        }
        let mut stays_behind = vec![None; order.len()];
        let mut next = None;
        for (at, step) in (0..order.len() as u32).zip(&order).rev() {
            if !moves[*step as usize] {
                next = Some(at);
            }
            stays_behind[at as usize] = next;
        }
        let items = solved
            .moved
            .iter()
            .map(|m| plan.steps[m.step as usize].item)
            .collect();
        Moving {
            order,
            place,
            moves,
            later,
            items,
            stays_in_front,
            stays_behind,
        }
    }

    /// The last step in front of a step that stays where it is.
    pub fn before(&self, step: u32) -> Option<u32> {
        let at = self.stays_in_front[self.place[step as usize] as usize]?;
        Some(self.order[at as usize])
    }

    /// The first step behind a step that stays where it is.
    pub fn behind(&self, step: u32) -> Option<u32> {
        let at = self.stays_behind[self.place[step as usize] as usize]?;
        Some(self.order[at as usize])
    }

    /// The last item in front of `item` that does not move.
    fn item_in_front(&self, item: u32) -> usize {
        let before = (0..item).rev().find(|i| !self.items.contains(i));
        before.map_or(IN_FRONT, |i| i as usize)
    }
}

/// The moves of items that bring `moved` to where the nearest order has them, each an item and
/// the item it then stands behind.
///
/// # Errors
/// The steps that the text has no place for.
pub fn item_moves(bench: &Bench, moved: &[StepId]) -> Result<Vec<(usize, usize)>, Vec<StepId>> {
    let plan = bench.plan;
    let moving = bench.moving();
    let mut ours: Vec<u32> = moved.iter().map(|s| s.0).collect();
    ours.retain(|s| moving.moves[*s as usize]);
    ours.sort_by_key(|s| moving.place[*s as usize]);
    let mut moves: Vec<(usize, usize)> = Vec::new();
    let mut homeless = Vec::new();
    // Once a step of a run lands in front of the next step that stays, so do all behind it, or
    // they would change places.
    let mut in_front = false;
    let mut run = None;
    for step in ours {
        if run != Some(moving.before(step)) {
            run = Some(moving.before(step));
            in_front = false;
        }
        let item = plan.steps[step as usize].item as usize;
        if moves.iter().any(|(i, _)| *i == item) {
            continue;
        }
        let landing = if bench.alone_in_its_item(StepId(step)) {
            landing(bench, moving, step, &mut in_front)
                .or_else(|| in_front_of_stage(bench, moving, step))
        } else {
            common_landing(bench, moving, step)
        };
        match landing {
            Some(behind) => moves.push((item, behind)),
            None => homeless.push(StepId(step)),
        }
    }
    if homeless.is_empty() {
        Ok(moves)
    } else {
        Err(homeless)
    }
}

/// Where a step of its own lands. It stays under its own heading where the new order lets it,
/// so that it goes in front of the next step rather than behind the last of another stage; and it
/// never becomes one of a `for each` stage.
fn landing(bench: &Bench, moving: &Moving, step: u32, in_front: &mut bool) -> Option<usize> {
    let steps = &bench.plan.steps;
    let home = steps[step as usize].stage;
    let anchor = moving.before(step).map(|s| &steps[s as usize]);
    let next = moving.behind(step).map(|s| &steps[s as usize]);
    if let Some(anchor) = anchor
        && !*in_front
        && anchor.member.is_none()
        && (anchor.stage == home || next.is_none_or(|n| n.stage != home))
    {
        return Some(anchor.item as usize);
    }
    let Some(next) = next else {
        return anchor.is_none().then_some(IN_FRONT);
    };
    if next.member.is_some() {
        return None;
    }
    *in_front = true;
    Some(moving.item_in_front(next.item))
}

/// A step that would land between two passes of a `for each` stage lands in front of the whole
/// stage, where nothing that it has to follow stands in that stage.
fn in_front_of_stage(bench: &Bench, moving: &Moving, step: u32) -> Option<usize> {
    let anchor = &bench.plan.steps[moving.before(step)? as usize];
    let stage = &bench.plan.stages[anchor.stage?.0 as usize];
    let inside = |s: u32| (stage.steps.0.0..stage.steps.1.0).contains(&s);
    let follows = |(a, b): &(u32, u32)| *b == step && inside(*a);
    if bench.solved.arcs.iter().any(follows) {
        return None;
    }
    Some(moving.item_in_front(stage_item(bench, stage)? as u32))
}

/// Where all passes of a repeated step land: behind the same item of their own pass.
fn common_landing(bench: &Bench, moving: &Moving, step: u32) -> Option<usize> {
    let steps = &bench.plan.steps;
    let this = &steps[step as usize];
    let stage = &bench.plan.stages[this.stage?.0 as usize];
    let mut found: Option<usize> = None;
    for pass in (stage.steps.0.0..stage.steps.1.0).filter(|s| steps[*s as usize].item == this.item)
    {
        if !moving.moves[pass as usize] {
            return None;
        }
        let same_pass = |s: &u32| {
            let other = &steps[*s as usize];
            other.stage == this.stage && other.member == steps[pass as usize].member
        };
        let behind = match moving.before(pass).filter(same_pass) {
            Some(anchor) => steps[anchor as usize].item as usize,
            None => stage_item(bench, stage)?,
        };
        if found.is_some_and(|f| f != behind) {
            return None;
        }
        found = Some(behind);
    }
    found
}

/// The item of the text that is a stage's heading.
fn stage_item(bench: &Bench, stage: &Stage) -> Option<usize> {
    let tree = &bench.plan.sources.get(stage.place.file.0 as usize)?.tree;
    tree.items.iter().position(|i| i.span == stage.place.span)
}
