//! Regions of the written order that are mended one by one.
//!
//! A region is a run of written steps that keeps its place as a whole. At first
//! the regions are the stretches that hold a violated arc, and each step that
//! has a wait which the written order does not keep. Everything else stays as it
//! is written, and that breaks no arc and no wait outside a region.
//!
//! Waits can reach from one region into another. A region is therefore solved
//! with what its ways ask of steps outside *taken as kept*: the cost is a bound,
//! since the order of the region's steps within any valid order costs no less.
//! If the order found can do with ways that the written order keeps outside, or
//! if another one that can costs no more, the region is done, and exactly.
//! Otherwise a way that reaches out has to be looked into: the region is widened
//! to hold it, swallowing the regions that it meets, and solved again. A region
//! that holds all it asks for is exact by itself, so this ends. The costs of
//! regions that are done add up to a bound for the whole, which their orders meet.

use super::branch::{Found, branch};
use super::plain::{Costs, Mended};
use super::stretch::{Graph, spans};
use crate::effort::{Budget, Effort};
use crate::instance::{Instance, StepId, places_in};
use crate::part::{Cutter, Outside};
use std::collections::BTreeMap;
use std::ops::Range;

/// The nearest order of an instance of which one valid order is known.
pub(super) fn mend_all(
    inst: &Instance,
    costs: Costs<'_>,
    known: &[StepId],
    effort: Effort,
) -> Mended {
    let mut todo = first_regions(inst);
    let mut done: BTreeMap<u32, (u32, Mended)> = BTreeMap::new();
    let place = places_in(known, inst.steps());
    let mut cutter = Cutter::new(inst);
    let mut budget = Budget::new(effort);
    while let Some((from, to)) = todo.pop_first() {
        let share = Effort {
            nodes: budget.rest().nodes / (todo.len() as u64 + 1),
        };
        let mut own = Budget::new(share);
        let region = from..to;
        // The steps of the region as the known order has them.
        let mut known: Vec<u32> = (0..to - from).collect();
        known.sort_by_key(|&v| place[(v + from) as usize]);
        let outcome = solve(
            inst,
            costs.of(&region),
            &known,
            region,
            &mut cutter,
            &mut own,
        );
        budget.used(share, &own);
        match outcome {
            Outcome::Done(mended) => {
                done.insert(from, (to, mended));
            }
            Outcome::Widen(wider) => {
                let mut wider = wider;
                // Whatever it meets becomes part of it.
                loop {
                    let joined = |start: u32, end: u32| wider.start.min(start)..wider.end.max(end);
                    if let Some(start) = meeting(&todo, &wider, |end| *end) {
                        wider = joined(start, todo.remove(&start).unwrap_or(start));
                    } else if let Some(start) = meeting(&done, &wider, |region| region.0) {
                        wider = joined(start, done.remove(&start).map_or(start, |r| r.0));
                    } else {
                        break;
                    }
                }
                todo.insert(wider.start, wider.end);
            }
        }
    }
    let mut out = Mended {
        order: (0..inst.steps() as u32).collect(),
        moved: Vec::new(),
        cost: 0,
        bound: 0,
    };
    for (from, (_, mended)) in done {
        for (slot, v) in out.order[from as usize..].iter_mut().zip(mended.order) {
            *slot = v + from;
        }
        out.moved.extend(mended.moved.iter().map(|&v| v + from));
        out.cost += mended.cost;
        out.bound += mended.bound;
    }
    out
}

/// The first of these regions that overlaps another.
fn meeting<R>(
    regions: &BTreeMap<u32, R>,
    other: &Range<u32>,
    end: impl Fn(&R) -> u32,
) -> Option<u32> {
    // Regions never overlap among themselves, so only the last one that starts
    // before the end of the other can reach furthest.
    let (&start, region) = regions.range(..other.end).next_back()?;
    (end(region) > other.start).then_some(start)
}

/// Start and end of the regions to begin with.
fn first_regions(inst: &Instance) -> BTreeMap<u32, u32> {
    let graph = Graph {
        succ: &inst.succ,
        pred: &inst.pred,
    };
    let mut out: BTreeMap<u32, u32> = spans(graph)
        .into_iter()
        .map(|span| (span.start, span.end))
        .collect();
    let written: Vec<u32> = (0..inst.steps() as u32).collect();
    for wait in 0..inst.open_waits() {
        let step = inst.wait_step[wait as usize];
        if !inst.ways(wait).any(|way| inst.way_holds(way, &written))
            && meeting(&out, &(step..step + 1), |end| *end).is_none()
        {
            out.insert(step, step + 1);
        }
    }
    out
}

enum Outcome {
    /// The order of the region.
    Done(Mended),
    /// The region has to be this wide.
    Widen(Range<u32>),
}

fn solve(
    inst: &Instance,
    costs: Costs<'_>,
    known: &[u32],
    region: Range<u32>,
    cutter: &mut Cutter<'_>,
    budget: &mut Budget,
) -> Outcome {
    let n = inst.steps() as u32;
    let loose = cutter.cut(region.clone().collect(), Outside::Kept);
    let Found { best, bound, .. } = branch(&loose.inst, costs, known, 0, budget);
    let Some(best) = best else {
        // The known order keeps all that is loose, so this cannot be; if it
        // were, that order would still be a valid one.
        return Outcome::Done(Mended {
            order: known.to_vec(),
            moved: (0..region.len() as u32).collect(),
            cost: region.len() as u64,
            bound: 0,
        });
    };
    let proven = best.cost == bound;
    let done = |best: Mended| Outcome::Done(Mended { bound, ..best });
    if inst.open_waits() == 0 {
        return done(best);
    }
    let strict = cutter.cut(region.clone().collect(), Outside::AsWritten);
    if strict.inst.allows(&best.order) {
        return done(best);
    }
    let within = branch(&strict.inst, costs, known, bound, budget);
    match within.best {
        Some(found) if found.cost == bound || !proven || !within.complete => done(found),
        _ => {
            let wider = reach(inst, &region, &best.order);
            // Where effort has run out there must not be many rounds more.
            let more = if within.complete {
                0
            } else {
                region.len() as u32
            };
            Outcome::Widen(wider.start.saturating_sub(more)..(wider.end + more).min(n))
        }
    }
}

/// The region widened by a way of some wait that this order keeps only if
/// something outside the region gives way.
fn reach(inst: &Instance, region: &Range<u32>, order: &[u32]) -> Range<u32> {
    let place = places_in(order, order.len());
    let inside = |s: u32| region.contains(&s);
    let at = |s: u32| place[(s - region.start) as usize];
    let holds_inside = |way: u32, step: u32| {
        let later = inst.later.row(way).iter().filter(|&&b| inside(b));
        let earlier = inst.earlier.row(way).iter().filter(|&&a| inside(a));
        later.copied().all(|b| at(b) > at(step)) && earlier.copied().all(|a| at(a) < at(step))
    };
    let outside = |way: u32, step: u32| {
        let later = inst.later.row(way).iter().filter(move |&&b| b < step);
        let earlier = inst.earlier.row(way).iter().filter(move |&&a| a > step);
        later.chain(earlier).copied().filter(|&s| !inside(s))
    };
    let widest = |way: u32, step: u32| {
        outside(way, step).fold(region.clone(), |r, s| r.start.min(s)..r.end.max(s + 1))
    };
    region
        .clone()
        .flat_map(|step| {
            inst.waits_of
                .row(step)
                .iter()
                .map(move |&wait| (step, wait))
        })
        .filter_map(|(step, wait)| {
            let mut kept = inst.ways(wait).filter(|&way| holds_inside(way, step));
            let mut without = kept.clone();
            if without.any(|way| outside(way, step).next().is_none()) {
                return None;
            }
            kept.next().map(|way| widest(way, step))
        })
        .next()
        .unwrap_or(0..inst.steps() as u32)
}
