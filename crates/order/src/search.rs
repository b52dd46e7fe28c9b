//! The mixed class: ways that ask for steps both behind and before.
//!
//! "b after one of a, c" with "b before one of a, c" says that b lies between a
//! and c, so this class contains Betweenness, which is NP-complete (J. Opatrny,
//! SIAM Journal on Computing 8(1), 1979, 111-114). It is answered exactly, by
//! search, up to a stated bound.
//!
//! 1. **Cut.** Draw every arc that any way might ask for. Between the strongly
//!    connected components of that graph everything can be kept at once, so
//!    each component is searched on its own.
//! 2. **Test.** At a node some waits have a way chosen. The peel from either end
//!    is a relaxation (see [`crate::peel`]): if it sticks, no completion exists.
//! 3. **Guess late.** A careful peel gives a candidate order. If it keeps every
//!    wait the search is over, however many waits were never decided. If not,
//!    the waits that it breaks are decided, first the one with the fewest ways
//!    open, for each the way that the written order already keeps first.
//! 4. **Jump back.** When a peel sticks, the chosen ways that keep it stuck are
//!    read off; a choice that is not among them is not to blame, and its other
//!    ways are not tried (conflict-directed backjumping: P. Prosser,
//!    Computational Intelligence 9(3), 1993, 268-299).
//!
//! Ending: each frame tries each way of its wait at most once under the same
//! choices above it. Exactness: a wait must take one of its ways, so the blame of
//! all its ways, less itself, is the blame of the node.

use crate::bits::Bits;
use crate::effort::Budget;
use crate::graph::strong_components;
use crate::instance::{Instance, StepId, places_in};
use crate::part::{Cutter, Outside};
use crate::peel::{End, OPEN, Overlay, left_over, peel_careful};
use crate::rows::Rows;
use crate::trace::{decisions, follow};

/// What the search says.
pub(crate) enum Verdict {
    /// A way for each wait that is mixed, [`OPEN`] for the others, with which the
    /// peel from the last step takes everything.
    Chosen(Vec<u32>),
    /// There is no order, and the facts among these steps show it.
    Never(Vec<StepId>),
    /// The bound was met.
    Unknown,
}

/// Chooses ways so that an order exists, in an instance that a peel from the
/// last step takes whole.
pub(crate) fn decide(inst: &Instance, budget: &mut Budget) -> Verdict {
    if let Some(order) = lucky(inst, Overlay::default()) {
        return Verdict::Chosen(mixed_only(inst, ways_kept(inst, &order)));
    }
    let mut chosen = vec![OPEN; inst.open_waits() as usize];
    let mut cutter = Cutter::new(inst);
    let mut unknown = false;
    for component in strong_components(&possible_arcs(inst)) {
        let part = cutter.cut(component, Outside::Kept);
        for &(wait, way) in &part.settled {
            chosen[wait as usize] = way;
        }
        if part.inst.open_waits() == 0 {
            continue;
        }
        match search(&part.inst, budget) {
            Ok(here) => {
                for (i, &way) in here.iter().enumerate() {
                    let wait = part.waits[i];
                    let offset = way - part.inst.ways(i as u32).start;
                    chosen[wait as usize] = inst.ways(wait).start + offset;
                }
            }
            Err(Failure::Proved) => return Verdict::Never(part.steps),
            Err(Failure::BoundMet) => unknown = true,
        }
    }
    if unknown {
        Verdict::Unknown
    } else {
        Verdict::Chosen(mixed_only(inst, chosen))
    }
}

/// The other waits are left to the peel, which keeps more of the written order.
fn mixed_only(inst: &Instance, mut chosen: Vec<u32>) -> Vec<u32> {
    for wait in 0..inst.open_waits() {
        if !inst.wait_is_mixed(wait) {
            chosen[wait as usize] = OPEN;
        }
    }
    chosen
}

/// A careful peel that happens to keep every wait.
pub(crate) fn lucky(inst: &Instance, over: Overlay<'_>) -> Option<Vec<StepId>> {
    let mut order = peel_careful(inst, End::Last, over, None);
    order.reverse();
    (order.len() == inst.steps() && inst.allows(&order)).then_some(order)
}

/// For each open wait a way that this order keeps.
pub(crate) fn ways_kept(inst: &Instance, order: &[StepId]) -> Vec<u32> {
    let place = places_in(order, inst.steps());
    let kept = |wait| inst.ways(wait).find(|&way| inst.way_holds(way, &place));
    (0..inst.open_waits())
        .map(|wait| kept(wait).unwrap_or(OPEN))
        .collect()
}

/// Every arc there is or any way might ask for.
fn possible_arcs(inst: &Instance) -> Rows {
    let waiter = |way: u32| inst.wait_step[inst.way_wait[way as usize] as usize];
    let later = inst.later.pairs().map(|(way, b)| (waiter(way), b));
    let earlier = inst.earlier.pairs().map(|(way, a)| (a, waiter(way)));
    let pairs = inst.succ.pairs().chain(later).chain(earlier);
    Rows::from_pairs(inst.steps(), pairs, |_| ())
}

struct Frame {
    wait: u32,
    ways: Vec<u32>,
    next: usize,
    /// Waits whose choices are to blame for the ways that failed.
    blame: Vec<u32>,
}

enum Node {
    Done(Vec<StepId>),
    Dead(Vec<u32>),
    /// Waits that the candidate breaks, the one to decide first in front.
    Branch(Vec<u32>),
}

enum Failure {
    Proved,
    BoundMet,
}

/// A way for each open wait that together allow an order.
fn search(inst: &Instance, budget: &mut Budget) -> Result<Vec<u32>, Failure> {
    let mut chosen = vec![OPEN; inst.open_waits() as usize];
    let mut frames: Vec<Frame> = Vec::new();
    loop {
        if !budget.spend(inst.steps()) {
            return Err(Failure::BoundMet);
        }
        let mut blame = match look(inst, &chosen) {
            Node::Done(order) => return Ok(ways_kept(inst, &order)),
            Node::Branch(waits) => {
                for wait in waits {
                    let ways = ways_by_promise(inst, wait);
                    chosen[wait as usize] = ways[0];
                    frames.push(Frame {
                        wait,
                        ways,
                        next: 1,
                        blame: Vec::new(),
                    });
                }
                continue;
            }
            Node::Dead(blame) => blame,
        };
        loop {
            let Some(frame) = frames.last_mut() else {
                return Err(Failure::Proved);
            };
            if blame.contains(&frame.wait) {
                blame.retain(|&wait| wait != frame.wait);
                frame.blame.extend(blame);
                frame.blame.sort_unstable();
                frame.blame.dedup();
                if let Some(&way) = frame.ways.get(frame.next) {
                    frame.next += 1;
                    chosen[frame.wait as usize] = way;
                    break;
                }
                blame = std::mem::take(&mut frame.blame);
            }
            chosen[frame.wait as usize] = OPEN;
            frames.pop();
        }
    }
}

fn look(inst: &Instance, chosen: &[u32]) -> Node {
    let over = Overlay {
        chosen,
        ..Overlay::default()
    };
    for end in [End::Last, End::First] {
        let stuck = left_over(inst, end, over);
        if !stuck.is_empty() {
            return Node::Dead(blame(inst, end, over, &stuck));
        }
    }
    let mut order = peel_careful(inst, End::Last, over, None);
    order.reverse();
    let place = places_in(&order, inst.steps());
    let broken = (0..inst.open_waits()).filter(|&wait| {
        chosen[wait as usize] == OPEN && !inst.ways(wait).any(|way| inst.way_holds(way, &place))
    });
    let mut broken: Vec<u32> = broken.collect();
    if broken.is_empty() {
        return Node::Done(order);
    }
    let fewest = (0..broken.len().min(PROBES)).min_by_key(|&i| {
        let wait = broken[i];
        let (before, behind) = around(inst, over, inst.wait_step[wait as usize]);
        inst.ways(wait)
            .filter(|&way| {
                inst.later.row(way).iter().all(|&b| !before.has(b))
                    && inst.earlier.row(way).iter().all(|&a| !behind.has(a))
            })
            .count()
    });
    broken.swap(0, fewest.unwrap_or(0));
    Node::Branch(broken)
}

/// Broken waits looked at before one is branched on.
const PROBES: usize = 8;

/// Choices that alone keep something stuck; the fewest of a few tries.
fn blame(inst: &Instance, end: End, over: Overlay<'_>, stuck: &[StepId]) -> Vec<u32> {
    let mut member = Bits::new(inst.steps());
    for &step in stuck {
        member.add(step);
    }
    let stride = stuck.len().div_ceil(PROBES);
    let starts = stuck.iter().step_by(stride);
    starts
        .filter_map(|&start| follow(inst, end, over, &member, start, usize::MAX))
        .map(|causes| decisions(inst, over, &causes))
        .min_by_key(Vec::len)
        .unwrap_or_default()
}

/// What arcs and chosen ways put before a step and behind it, itself in both.
fn around(inst: &Instance, over: Overlay<'_>, step: StepId) -> (Bits, Bits) {
    let waiter = |way: u32| {
        let wait = inst.way_wait[way as usize];
        (over.way_of(wait) == way).then(|| inst.wait_step[wait as usize])
    };
    let reach = |forward: bool| {
        let mut seen = Bits::new(inst.steps());
        seen.add(step);
        let mut todo = vec![step];
        while let Some(s) = todo.pop() {
            let mut go = |other: StepId| {
                if seen.add(other) {
                    todo.push(other);
                }
            };
            let (arcs, named, names) = if forward {
                (&inst.succ, &inst.earlier_of, &inst.later)
            } else {
                (&inst.pred, &inst.later_of, &inst.earlier)
            };
            arcs.row(s).iter().for_each(|&other| go(other));
            named
                .row(s)
                .iter()
                .filter_map(|&w| waiter(w))
                .for_each(&mut go);
            for &wait in inst.waits_of.row(s) {
                let way = over.way_of(wait);
                if way != OPEN {
                    names.row(way).iter().for_each(|&other| go(other));
                }
            }
        }
        seen
    };
    (reach(false), reach(true))
}

/// The ways of a wait: those that the written order keeps first, then those of
/// which it breaks least, and of these the one where least stands in between.
pub(crate) fn ways_by_promise(inst: &Instance, wait: u32) -> Vec<u32> {
    let step = inst.wait_step[wait as usize];
    let broken = |way: &u32| {
        let later = inst.later.row(*way).iter().filter(|&&b| b <= step);
        let earlier = inst.earlier.row(*way).iter().filter(|&&a| a >= step);
        later.chain(earlier).fold((0, 0), |(count, far), &other| {
            (count + 1, far + u64::from(step.abs_diff(other)))
        })
    };
    let mut ways: Vec<u32> = inst.ways(wait).collect();
    ways.sort_by_key(broken);
    ways
}
