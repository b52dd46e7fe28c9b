//! Units that would hold themselves.

use crate::desk::Desk;
use crate::model::{Body, ProblemKind, Thing};

/// How far the walk has come with a thing.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Seen {
    Not,
    Open,
    Done,
}

/// Drops every membership that closes a circle, so that whoever goes from a unit to its members
/// comes to an end. The walk keeps its own trail: units can nest deeper than the stack.
pub(crate) fn cut_circles(desk: &mut Desk<'_>, things: &mut [Thing]) {
    let mut seen = vec![Seen::Not; things.len()];
    for root in 0..things.len() {
        if seen[root] == Seen::Done || things[root].members().is_empty() {
            continue;
        }
        seen[root] = Seen::Open;
        let mut trail: Vec<(usize, usize)> = vec![(root, 0)];
        while let Some((unit, next)) = trail.last().copied() {
            let Some(member) = things[unit].members().get(next).copied() else {
                seen[unit] = Seen::Done;
                trail.pop();
                continue;
            };
            let inner = member.thing.0 as usize;
            if seen[inner] == Seen::Open {
                let name = things[inner].name.clone();
                desk.problem(member.place, ProblemKind::UnitInItself { name });
                drop_member(&mut things[unit], next);
                continue;
            }
            if let Some(last) = trail.last_mut() {
                last.1 += 1;
            }
            if seen[inner] == Seen::Not {
                seen[inner] = Seen::Open;
                trail.push((inner, 0));
            }
        }
    }
}

fn drop_member(unit: &mut Thing, number: usize) {
    unit.uncertain = true;
    if let Body::Unit { of } = &mut unit.body {
        of.remove(number);
    }
}
