//! From steps that move to items of the text that move.
//!
//! A step written out for each member of a series has one item for all its
//! passes, so it can only move where all passes move alike. A step that would
//! land between two passes, or become one of a series itself, has no place in
//! the text.

use crate::bench::Bench;
use plan::model::{Stage, StepId};
use std::collections::BTreeSet;

/// Puts an item in front of all steps; see [`syntax::edit::move_items`].
const IN_FRONT: usize = usize::MAX;

/// The moves of items that bring `moved` to where the nearest order has them, each an item and
/// the item it then stands behind.
///
/// # Errors
/// The steps that the text has no place for.
pub fn item_moves(bench: &Bench, moved: &[StepId]) -> Result<Vec<(usize, usize)>, Vec<StepId>> {
    let plan = bench.plan;
    let Some(nearest) = &bench.solved.nearest else {
        return Ok(Vec::new());
    };
    let moving: BTreeSet<u32> = bench.solved.moved.iter().map(|m| m.step).collect();
    let ours: BTreeSet<u32> = moved.iter().map(|s| s.0).collect();
    let mut moves: Vec<(usize, usize)> = Vec::new();
    let mut homeless = Vec::new();
    let mut behind: Option<usize> = None;
    // Once a step of a run lands in front of the next step that stays, so do all behind it, or
    // they would change places.
    let mut in_front = false;
    for (place, &step) in nearest.iter().enumerate() {
        if !moving.contains(&step) {
            behind = Some(place);
            in_front = false;
            continue;
        }
        let item = plan.steps[step as usize].item as usize;
        if !ours.contains(&step) || moves.iter().any(|(i, _)| *i == item) {
            continue;
        }
        let landing = if bench.alone_in_its_item(StepId(step)) {
            landing(bench, nearest, place, behind, &moving, &mut in_front)
                .or_else(|| in_front_of_stage(bench, nearest, place, behind, &moving))
        } else {
            common_landing(bench, nearest, step, &moving)
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
fn landing(
    bench: &Bench,
    nearest: &[u32],
    place: usize,
    behind: Option<usize>,
    moving: &BTreeSet<u32>,
    in_front: &mut bool,
) -> Option<usize> {
    let steps = &bench.plan.steps;
    let home = steps[nearest[place] as usize].stage;
    let anchor = behind.map(|p| &steps[nearest[p] as usize]);
    let next = nearest[place..]
        .iter()
        .find(|s| !moving.contains(s))
        .map(|s| &steps[*s as usize]);
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
    let moving_items: BTreeSet<u32> = moving.iter().map(|s| steps[*s as usize].item).collect();
    let before = (0..next.item).rev().find(|i| !moving_items.contains(i));
    Some(before.map_or(IN_FRONT, |i| i as usize))
}

/// A step that would land between two passes of a `for each` stage lands in front of the whole
/// stage, where nothing that it has to follow stands in that stage.
fn in_front_of_stage(
    bench: &Bench,
    nearest: &[u32],
    place: usize,
    behind: Option<usize>,
    moving: &BTreeSet<u32>,
) -> Option<usize> {
    let steps = &bench.plan.steps;
    let anchor = &steps[nearest[behind?] as usize];
    let stage = &bench.plan.stages[anchor.stage?.0 as usize];
    let inside = |s: u32| (stage.steps.0.0..stage.steps.1.0).contains(&s);
    let follows = |(a, b): &(u32, u32)| *b == nearest[place] && inside(*a);
    if bench.solved.arcs.iter().any(follows) {
        return None;
    }
    let heading = stage_item(bench, stage)? as u32;
    let moving_items: BTreeSet<u32> = moving.iter().map(|s| steps[*s as usize].item).collect();
    let before = (0..heading).rev().find(|i| !moving_items.contains(i));
    Some(before.map_or(IN_FRONT, |i| i as usize))
}

/// Where all passes of a repeated step land: behind the same item of their own pass.
fn common_landing(
    bench: &Bench,
    nearest: &[u32],
    step: u32,
    moving: &BTreeSet<u32>,
) -> Option<usize> {
    let steps = &bench.plan.steps;
    let this = &steps[step as usize];
    let stage = &bench.plan.stages[this.stage?.0 as usize];
    let mut found: Option<usize> = None;
    for pass in (stage.steps.0.0..stage.steps.1.0).filter(|s| steps[*s as usize].item == this.item)
    {
        if !moving.contains(&pass) {
            return None;
        }
        let place = nearest.iter().position(|s| *s == pass)?;
        let anchor = nearest[..place].iter().rev().find(|s| !moving.contains(s));
        let same_pass = |s: &&u32| {
            let other = &steps[**s as usize];
            other.stage == this.stage && other.member == steps[pass as usize].member
        };
        let behind = match anchor.filter(same_pass) {
            Some(anchor) => steps[*anchor as usize].item as usize,
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
