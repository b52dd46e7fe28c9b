//! Exact places by going through every set of steps that can be off.
//!
//! The sets are built layer by layer from the end of the order; going back
//! through the layers drops those from which not everything can come off. A
//! step has a place in some valid order exactly if, between two sets that
//! remain, it is what comes off there.

use super::Place;
use crate::instance::Instance;
use crate::sets::{Rules, Set, SetMap};

/// The places of all steps; `None` if more than `limit` sets would be held or
/// no order is valid.
pub(super) fn by_sets(inst: &Instance, limit: u64) -> Option<Vec<Place>> {
    match inst.steps().div_ceil(64) {
        0 | 1 => go::<[u64; 1]>(inst, limit),
        2 => go::<[u64; 2]>(inst, limit),
        3 | 4 => go::<[u64; 4]>(inst, limit),
        // Wider than this there are hardly ever few enough sets.
        5..=8 => go::<[u64; 8]>(inst, limit),
        _ => None,
    }
}

fn go<S: Set>(inst: &Instance, limit: u64) -> Option<Vec<Place>> {
    let n = inst.steps();
    let rules = Rules::<S>::new(inst);
    let mut left = limit;
    let mut layers: Vec<SetMap<S, ()>> = Vec::with_capacity(n + 1);
    let mut layer = SetMap::default();
    layer.insert(S::empty(n.div_ceil(64)), ());
    for _ in 0..n {
        let mut next: SetMap<S, ()> = SetMap::default();
        for off in layer.keys() {
            for step in (0..n as u32).filter(|&s| rules.can_go(off, s)) {
                next.insert(off.with(step), ());
            }
        }
        left = left.checked_sub(next.len() as u64)?;
        layers.push(std::mem::replace(&mut layer, next));
    }
    let none = Place {
        earliest: n,
        latest: 1,
        exact: true,
    };
    let mut out = vec![none; n];
    for (size, mut sets) in layers.into_iter().enumerate().rev() {
        let place = n - size;
        sets.retain(|off, ()| {
            let mut alive = false;
            for step in (0..n as u32).filter(|&s| rules.can_go(off, s)) {
                if layer.contains_key(&off.with(step)) {
                    alive = true;
                    let seen = &mut out[step as usize];
                    seen.earliest = seen.earliest.min(place);
                    seen.latest = seen.latest.max(place);
                }
            }
            alive
        });
        layer = sets;
    }
    (!layer.is_empty()).then_some(out)
}
