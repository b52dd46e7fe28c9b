//! The chain of reasons between two steps.

use crate::bits::Bits;
use crate::cycle::Link;
use crate::instance::{Instance, StepId};

/// A shortest chain of plain arcs that puts `a` before `b`, from `a` to `b`;
/// `None` if there is none. Waits with one way are plain arcs. A step that
/// precedes another only because every alternative says so has no chain; for
/// that see [`crate::must_precede`]. O(n + m), and only what lies behind `a`
/// is visited.
///
/// # Panics
/// If `a` or `b` is not the number of a step.
pub fn chain(inst: &Instance, a: StepId, b: StepId) -> Option<Vec<Link>> {
    assert!((b as usize) < inst.steps(), "step {b} does not exist");
    let mut seen = Bits::new(inst.steps());
    // Each arc reached, with the place in this list of the arc before it.
    let mut reached: Vec<(Link, usize)> = Vec::new();
    const START: usize = usize::MAX;
    let mut next = 0;
    let mut at = (a, START);
    loop {
        let (step, by) = at;
        for arc in inst.succ.range(step) {
            let other = inst.succ.items()[arc];
            let link = (step, inst.succ_why[arc], other);
            if other == b {
                let mut out = vec![link];
                let mut by = by;
                while by != START {
                    out.push(reached[by].0);
                    by = reached[by].1;
                }
                out.reverse();
                return Some(out);
            }
            if seen.add(other) {
                reached.push((link, by));
            }
        }
        at = (reached.get(next)?.0.2, next);
        next += 1;
    }
}
