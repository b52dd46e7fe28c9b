//! Why no order exists, in as few reasons as can be shown.
//!
//! Where plain arcs close on themselves the answer is a shortest such cycle.
//! Otherwise alternatives are involved and the answer is no cycle: every way of
//! each step quoted has to be shown shut. The smallest such set is NP-hard to
//! find (a step with many ways, each shut by things that wait for the step in
//! turn, is a hitting set), so what is given is a set no reason of which can be
//! left out, and it is never called shortest.
//!
//! # Why leaving out is sound
//!
//! Taking a reason away takes facts away: an arc, a step named in a way, or a
//! whole wait. Every order valid before is valid after, because a way that asks
//! for less holds wherever it held. So "no order exists" is monotone in the set
//! of reasons, and a set of which it is true, and no longer true with any one
//! reason less, is minimal. The test of a set is one peel (one search in the
//! mixed class). Which sets to test is the plan of U. Junker, QuickXplain,
//! AAAI 2004, 167-172: about k log(n / k) + k tests for k reasons out of n,
//! where trying them one by one (J. Chinneck and E. Dravnieks, ORSA Journal on
//! Computing 3(2), 1991, 157-168) takes n.
//!
//! A test whose search meets its bound counts as "an order may exist". The set
//! given is then still enough to exclude every order, but may be too large, and
//! says so.

use crate::bits::Bits;
use crate::cycle::{ARCS_LOOKED_AT, Link, shortest_cycle};
use crate::effort::{Budget, Effort};
use crate::instance::{Instance, Reason, StepId};
use crate::part::{Cutter, Outside, restrict};
use crate::peel::{End, Overlay, left_over, peel};
use crate::search::{Verdict, decide};
use crate::trace::{Cause, follow, reasons};

/// Facts that no order satisfies.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stuck {
    /// The steps concerned: in the order of the cycle, otherwise rising.
    pub steps: Vec<StepId>,
    /// The reasons, each once, rising. Together they exclude every order.
    pub reasons: Vec<Reason>,
    /// What is known of them.
    pub kind: StuckKind,
}

/// What is known of the reasons in a [`Stuck`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StuckKind {
    /// Arcs that close on themselves. If each has a reason of its own, those
    /// are minimal too.
    Cycle {
        /// From step to step, back to the first one.
        links: Vec<Link>,
        /// No cycle of plain arcs has fewer. Not so only in tangles so large
        /// that the search was cut off.
        shortest: bool,
    },
    /// Alternatives are involved.
    Minimal {
        /// With any one reason less an order exists. Not so only when a search
        /// met its bound.
        proven: bool,
    },
}

/// Starts from which a small closed set is looked for.
const STARTS: usize = 64;

/// Explains an instance known to have no order. `within` are steps the facts
/// among which are known to show it.
pub(crate) fn explain(inst: &Instance, within: Option<&[StepId]>, effort: Effort) -> Stuck {
    let all = Overlay::default();
    let budget = &mut Budget::new(effort);
    for wait in 0..inst.open_waits() {
        if inst.ways(wait).is_empty() {
            return Stuck {
                steps: vec![inst.wait_step[wait as usize]],
                reasons: vec![inst.wait_why[wait as usize]],
                kind: StuckKind::Minimal { proven: true },
            };
        }
    }
    if let Some(cycle) = shortest_cycle(inst, ARCS_LOOKED_AT) {
        let also = cycle.arcs.iter().filter_map(|&arc| inst.also(arc));
        let mut reasons: Vec<_> = cycle.links.iter().map(|l| l.1).chain(also).collect();
        reasons.sort_unstable();
        reasons.dedup();
        return Stuck {
            steps: cycle.links.iter().map(|l| l.0).collect(),
            reasons,
            kind: StuckKind::Cycle {
                links: cycle.links,
                shortest: cycle.shortest,
            },
        };
    }
    for end in [End::Last, End::First] {
        let stuck = left_over(inst, end, all);
        if !stuck.is_empty() {
            return smallest(inst, reasons(inst, &small_core(inst, end, &stuck)), budget);
        }
    }
    // No peel shows it: every fact is suspect.
    let part = within.map(|steps| Cutter::new(inst).cut(steps.to_vec(), Outside::Kept));
    let from = part.as_ref().map_or(inst, |part| &part.inst);
    let mut suspects: Vec<Reason> = from.succ_why.clone();
    suspects.extend((0..from.arc_count()).filter_map(|arc| from.also(arc)));
    suspects.extend(&from.wait_why);
    suspects.extend(from.later_why.iter().chain(&from.earlier_why));
    suspects.sort_unstable();
    suspects.dedup();
    smallest(inst, suspects, budget)
}

/// Of the closed sets reached from some steps of a stuck set, the smallest.
fn small_core(inst: &Instance, end: End, stuck: &[StepId]) -> Vec<Cause> {
    let mut member = Bits::new(inst.steps());
    for &step in stuck {
        member.add(step);
    }
    let stride = stuck.len().div_ceil(STARTS);
    let mut best: Option<Vec<Cause>> = None;
    for &start in stuck.iter().step_by(stride) {
        let most = best.as_ref().map_or(usize::MAX, |b| b.len() - 1);
        let found = follow(inst, end, Overlay::default(), &member, start, most);
        best = found.or(best);
    }
    best.unwrap_or_default()
}

/// A minimal subset of reasons that exclude every order.
fn smallest(inst: &Instance, suspects: Vec<Reason>, budget: &mut Budget) -> Stuck {
    let among = |set: &[Reason], why: Reason| set.binary_search(&why).is_ok();
    let small = restrict(inst, |why| among(&suspects, why));
    let mut proven = true;
    let mut excluded = |set: &[Reason]| {
        let mut set = set.to_vec();
        set.sort_unstable();
        let part = restrict(&small.inst, |why| among(&set, why)).inst;
        if peel(&part, End::Last, Overlay::default()).len() < part.steps() {
            return true;
        }
        if !part.is_mixed() {
            return false;
        }
        match decide(&part, budget) {
            Verdict::Never(_) => true,
            Verdict::Chosen(_) => false,
            Verdict::Unknown => {
                proven = false;
                false
            }
        }
    };
    let mut kept = needed(&mut Vec::new(), false, &suspects, &mut excluded);
    kept.sort_unstable();
    let core = restrict(inst, |why| among(&kept, why));
    Stuck {
        steps: core.steps,
        reasons: kept,
        kind: StuckKind::Minimal { proven },
    }
}

/// The reasons among `open` that are needed on top of `given`, which together
/// with `open` exclude every order. `grown` tells that `given` has grown since
/// it was last tested. The recursion is as deep as the logarithm of `open`.
fn needed(
    given: &mut Vec<Reason>,
    grown: bool,
    open: &[Reason],
    excluded: &mut impl FnMut(&[Reason]) -> bool,
) -> Vec<Reason> {
    if grown && excluded(given) {
        return Vec::new();
    }
    if open.len() <= 1 {
        return open.to_vec();
    }
    let (front, back) = open.split_at(open.len() / 2);
    let base = given.len();
    given.extend(front);
    let mut out = needed(given, true, back, excluded);
    given.truncate(base);
    given.extend(&out);
    let more = needed(given, !out.is_empty(), front, excluded);
    given.truncate(base);
    out.extend(more);
    out
}
