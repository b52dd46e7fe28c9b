//! Why something cannot be reached whatever is taken off.

use super::ThingId;
use super::peel::Peel;
use super::shape::Shape;

/// Things that keep each other in place, or never come off, and with them a
/// target.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Blocked {
    /// Every target that cannot be reached, rising.
    pub targets: Vec<usize>,
    /// For the first of them and each thing that keeps it shut, a condition
    /// that stays unmet because each of its routes has a thing from this list
    /// on it. Nobody can start anywhere, and no thing can be left out of the
    /// list. The target comes first, then the things, rising.
    pub shut: Vec<Shut>,
}

/// A condition that stays unmet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shut {
    /// Whose condition it is.
    pub subject: Subject,
    /// Which of its conditions, counted from 0; for a target 0.
    pub condition: usize,
    /// For each route, in the order given, a thing on it that cannot come off.
    /// Without any the condition has no route: the thing never comes off.
    pub by: Vec<ThingId>,
}

/// A target by its number, or a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// A target.
    Target(usize),
    /// A thing.
    Thing(ThingId),
}

/// Explains it.
///
/// The list is found by taking things for gone, one after the other, as long as
/// the target stays shut; so those that are left are all needed.
pub(crate) fn explain(shape: &Shape) -> Blocked {
    let goal = shape.goal();
    let asked = (0..shape.of_thing.len()).filter(|&c| shape.of_thing[c] == goal);
    let asked: Vec<usize> = asked.collect();
    let mut peel = Peel::new(shape);
    (0..goal).for_each(|t| peel.allow(t));
    let targets: Vec<usize> = (0..asked.len())
        .filter(|&k| !peel.holds(asked[k]))
        .collect();
    let Some(&first) = targets.first() else {
        return Blocked {
            targets,
            shut: Vec::new(),
        };
    };
    let mut stuck: Vec<ThingId> = (0..goal).filter(|&t| !peel.gone().has(t)).collect();
    stuck.retain(|&t| {
        let mark = peel.taken().len();
        peel.take_off(t);
        let opened = peel.holds(asked[first]);
        if opened {
            peel.turn_back(mark);
        }
        opened
    });
    let mut shut = vec![show(shape, &peel, asked[first], Subject::Target(first), 0)];
    let mut start = vec![0usize; goal as usize + 1];
    for (condition, &thing) in shape.of_thing.iter().enumerate().rev() {
        start[thing as usize] = condition;
    }
    for t in stuck {
        let own = start[t as usize]..start[t as usize] + shape.conditions[t as usize] as usize;
        for (number, condition) in own.enumerate() {
            if !peel.holds(condition) {
                shut.push(show(shape, &peel, condition, Subject::Thing(t), number));
                break;
            }
        }
    }
    Blocked { targets, shut }
}

fn show(shape: &Shape, peel: &Peel, condition: usize, subject: Subject, number: usize) -> Shut {
    let routes =
        (0..shape.routes()).filter(|&r| shape.of_condition[r as usize] as usize == condition);
    let by = routes.filter_map(|route| {
        let named = shape.needs.row(route).iter().copied();
        { named }.find(|&t| !peel.gone().has(t))
    });
    Shut {
        subject,
        condition: number,
        by: by.collect(),
    }
}
