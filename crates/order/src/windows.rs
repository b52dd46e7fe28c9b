//! From when to when a thing can be reached.
//!
//! A *moment* of an order of n steps is a number from 0 to n: moment p lies
//! after the first p steps and before the next. What is in the way changes only
//! with a step, so the step that makes the difference between moment p - 1 and
//! moment p is the one in place p of the order, counted from 1.
//!
//! A thing is reachable at a moment when at least one of its ways is blocked by
//! nothing then. A thing without any way is never reachable; one with nothing
//! in the way has one way that nothing blocks.

use crate::instance::StepId;

/// A way is blocked at the moments `from`, `from + 1`, ... up to, not
/// including, `until`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Blocked {
    /// The first moment at which it is blocked.
    pub from: usize,
    /// The first moment at which this no longer blocks it.
    pub until: usize,
    /// The step answerable for it, such as the one that fitted what is in the
    /// way, or the one that will fit what is missing.
    pub by: StepId,
}

/// A stretch of moments at all of which a thing can be reached, as long as can be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Window {
    /// The first moment.
    pub from: usize,
    /// The last moment, itself included.
    pub to: usize,
    /// The step that opens it; none if it is open from the start.
    pub opener: Option<StepId>,
    /// The step that closes it; none if it stays open to the end.
    pub closer: Option<StepId>,
}

/// The windows of a thing with these ways, in the order given, first to last.
/// O(k log k) for k blocked spans. Spans may overlap, touch, be empty, and
/// reach beyond the last moment.
pub fn windows(order: &[StepId], ways: &[Vec<Blocked>]) -> Vec<Window> {
    let end = order.len() + 1;
    // At each boundary, by how many the number of open ways changes.
    let mut change: Vec<(usize, i64)> = Vec::new();
    for way in ways {
        change.push((0, 1));
        for (from, until) in merged(way, end) {
            change.push((from, -1));
            change.push((until, 1));
        }
    }
    change.sort_unstable_by_key(|c| c.0);
    let step_before = |moment: usize| moment.checked_sub(1).map(|place| order[place]);
    let mut out = Vec::new();
    let (mut open, mut opened) = (0i64, None);
    let mut i = 0;
    while i < change.len() && change[i].0 < end {
        let at = change[i].0;
        while i < change.len() && change[i].0 == at {
            open += change[i].1;
            i += 1;
        }
        match opened {
            None if open > 0 => opened = Some(at),
            Some(from) if open == 0 => {
                out.push(Window {
                    from,
                    to: at - 1,
                    opener: step_before(from),
                    closer: step_before(at),
                });
                opened = None;
            }
            _ => {}
        }
    }
    if let Some(from) = opened {
        out.push(Window {
            from,
            to: end - 1,
            opener: step_before(from),
            closer: None,
        });
    }
    out
}

/// What blocks each way at a moment, the blocker that has stood there longest
/// first named; `None` if some way is open then.
pub fn blockers_at(moment: usize, ways: &[Vec<Blocked>]) -> Option<Vec<StepId>> {
    ways.iter()
        .map(|way| {
            way.iter()
                .filter(|span| span.from <= moment && moment < span.until)
                .min_by_key(|span| span.from)
                .map(|span| span.by)
        })
        .collect()
}

/// Disjoint spans, rising, that together block what these block before `end`.
fn merged(way: &[Blocked], end: usize) -> Vec<(usize, usize)> {
    let mut spans: Vec<(usize, usize)> = way
        .iter()
        .map(|span| (span.from, span.until.min(end)))
        .filter(|(from, until)| from < until)
        .collect();
    spans.sort_unstable();
    let mut out: Vec<(usize, usize)> = Vec::with_capacity(spans.len());
    for (from, until) in spans {
        match out.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(until),
            _ => out.push((from, until)),
        }
    }
    out
}
