//! How many valid orders there are.
//!
//! An order is counted from its end: by the sets of steps that can be off,
//! layer by layer, each with the number of ways to come to it. Whether a step
//! can be taken next depends only on the set, mixed waits included: a way holds
//! if its later steps are in the set and its earlier ones are not. The number
//! of such sets is at most the product of chain length + 1 over any partition
//! into chains, so narrow instances are counted quickly and wide ones are not;
//! counting is #P-complete (G. Brightwell and P. Winkler, Order 8, 1991,
//! 225-242). Two cuts come first. Steps without any connection are counted on
//! their own and shuffled (a multinomial). And where everything before a point
//! must precede everything after it, the numbers of both sides multiply.

use crate::graph::{Closure, unconnected};
use crate::instance::{Instance, StepId};
use crate::part::{Cutter, Outside};
use crate::peel::stuck_set;
use crate::sets::{Rules, Set, SetMap};
use num_bigint::BigUint;

/// How many valid orders there are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Count {
    /// Exactly so many.
    Exact(BigUint),
    /// Not counted: more than so many sets of steps would have to be held (or
    /// there are more than 16,384 steps).
    Above {
        /// The limit that was given.
        limit: usize,
    },
}

/// Counts the valid orders, holding at most `limit` sets of steps in all.
pub fn count_orders(inst: &Instance, limit: usize) -> Count {
    if !stuck_set(inst).is_empty() {
        return Count::Exact(BigUint::ZERO);
    }
    if inst.steps() > MOST_STEPS {
        return Count::Above { limit };
    }
    let mut left = limit;
    match count(inst, &mut left) {
        Some(number) => Count::Exact(number),
        None => Count::Above { limit },
    }
}

/// How many sets of steps are closed under what must follow (the order ideals
/// when there are arcs only, the feasible sets of the antimatroid with waits);
/// `None` if more than `limit`. Mixed waits may make some of the sets dead
/// ends; they are counted too.
pub fn count_sets(inst: &Instance, limit: usize) -> Option<usize> {
    if inst.steps() > MOST_STEPS {
        return None;
    }
    let mut left = limit;
    tally::<u128>(inst, &mut left).map(|_| limit - left)
}

/// Steps at most: a rule is a set of steps, so the rules of all steps grow with
/// their square.
const MOST_STEPS: usize = 1 << 14;

fn count(inst: &Instance, left: &mut usize) -> Option<BigUint> {
    let components = unconnected(inst);
    if components.len() > 1 {
        let mut cutter = Cutter::new(inst);
        let (mut product, mut placed) = (BigUint::from(1u32), 0u64);
        for component in components {
            let size = component.len() as u64;
            let part = cutter.cut(component, Outside::Kept).inst;
            product *= count(&part, left)?;
            placed += size;
            product *= binomial(placed, size);
        }
        return Some(product);
    }
    let blocks = series_blocks(inst);
    if blocks.len() > 1 {
        let mut cutter = Cutter::new(inst);
        let mut product = BigUint::from(1u32);
        for block in blocks {
            product *= count(&cutter.cut(block, Outside::Kept).inst, left)?;
        }
        return Some(product);
    }
    let before = *left;
    match tally::<u128>(inst, left)? {
        Some(number) => Some(BigUint::from(number)),
        None => {
            *left = before;
            tally::<BigUint>(inst, left)?
        }
    }
}

fn binomial(n: u64, k: u64) -> BigUint {
    let k = k.min(n - k);
    (0..k).fold(BigUint::from(1u32), |product, i| {
        product * BigUint::from(n - i) / BigUint::from(i + 1)
    })
}

/// The steps in groups each of which the arcs put before all later ones, as
/// many as can be; one group if a wait reaches across any of them.
fn series_blocks(inst: &Instance) -> Vec<Vec<StepId>> {
    let n = inst.steps();
    let all = || (0..n as u32).collect::<Vec<_>>();
    let Some(closure) = Closure::new(inst) else {
        return vec![all()];
    };
    // Steps by how many need not follow them. The first k come before all the
    // others exactly if what follows every one of them includes all the others.
    let follow = |s: u32| closure.row(s).iter().map(|w| w.count_ones()).sum::<u32>() as usize;
    let mut by: Vec<(usize, StepId)> = (0..n as u32).map(|s| (n - follow(s), s)).collect();
    by.sort_unstable();
    let mut common = vec![u64::MAX; n.div_ceil(64)];
    let mut out = Vec::new();
    let mut from = 0;
    for k in 1..=n {
        let row = closure.row(by[k - 1].1);
        common.iter_mut().zip(row).for_each(|(x, y)| *x &= y);
        let follows = |&(_, s): &(usize, StepId)| common[s as usize / 64] >> (s % 64) & 1 == 1;
        if k == n || (by[k].0 > k && by[k..].iter().all(follows)) {
            let mut block: Vec<StepId> = by[from..k].iter().map(|x| x.1).collect();
            block.sort_unstable();
            out.push(block);
            from = k;
        }
    }
    if out.iter().any(|block| crossing_wait(inst, block)) {
        return vec![all()];
    }
    out
}

fn crossing_wait(inst: &Instance, front: &[StepId]) -> bool {
    let inside = |s: StepId| front.binary_search(&s).is_ok();
    (0..inst.open_waits()).any(|wait| {
        let here = inside(inst.wait_step[wait as usize]);
        inst.ways(wait).any(|way| {
            let mut named = inst.later.row(way).iter().chain(inst.earlier.row(way));
            named.any(|&s| inside(s) != here)
        })
    })
}

/// A number of orders; addition may run over.
trait Number: Clone + Default {
    fn one() -> Self;
    /// False if it ran over.
    fn add(&mut self, other: &Self) -> bool;
}

impl Number for u128 {
    fn one() -> Self {
        1
    }
    fn add(&mut self, other: &Self) -> bool {
        let (sum, over) = self.overflowing_add(*other);
        *self = sum;
        !over
    }
}

impl Number for BigUint {
    fn one() -> Self {
        1u32.into()
    }
    fn add(&mut self, other: &Self) -> bool {
        *self += other;
        true
    }
}

/// `None` if the limit was met, `Some(None)` if the number ran over.
fn tally<N: Number>(inst: &Instance, left: &mut usize) -> Option<Option<N>> {
    match inst.steps().div_ceil(64) {
        0 | 1 => layers::<N, [u64; 1]>(inst, left),
        2 => layers::<N, [u64; 2]>(inst, left),
        3 | 4 => layers::<N, [u64; 4]>(inst, left),
        _ => layers::<N, Box<[u64]>>(inst, left),
    }
}

fn layers<N: Number, S: Set>(inst: &Instance, left: &mut usize) -> Option<Option<N>> {
    let n = inst.steps();
    let rules = Rules::<S>::new(inst);
    let mut layer: SetMap<S, N> = SetMap::default();
    layer.insert(S::empty(n.div_ceil(64)), N::one());
    *left = left.checked_sub(1)?;
    for _ in 0..n {
        let mut next: SetMap<S, N> = SetMap::default();
        for (off, number) in layer {
            for step in 0..n as u32 {
                if !rules.can_go(&off, step) {
                    continue;
                }
                let more = off.with(step);
                match next.get_mut(&more) {
                    Some(sum) => {
                        if !sum.add(&number) {
                            return Some(None);
                        }
                    }
                    None => {
                        *left = left.checked_sub(1)?;
                        next.insert(more, number.clone());
                    }
                }
            }
        }
        layer = next;
    }
    Some(Some(layer.into_values().next().unwrap_or_default()))
}
