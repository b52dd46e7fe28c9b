//! Smaller instances cut from a larger one.

use crate::instance::{Builder, Instance, Reason, StepId, Wait, Way};
use crate::rows::Rows;

/// Some steps of an instance as an instance of their own. Arcs to other steps
/// are taken as kept.
pub(crate) struct Part {
    pub inst: Instance,
    /// Number here to number in the whole.
    pub steps: Vec<StepId>,
    /// Open wait here to open wait in the whole.
    pub waits: Vec<u32>,
    /// Open waits of the whole, at steps of this part, that need no decision
    /// here, with the way that is left without anything to ask.
    pub settled: Vec<(u32, u32)>,
}

const OUTSIDE: u32 = u32::MAX;

/// What becomes of a way that names steps outside the part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Outside {
    /// What it asks of them is taken as kept.
    Kept,
    /// They stay where they are written: what it asks of them is either kept or
    /// rules the way out.
    AsWritten,
}

/// Cuts parts; keeps one table over all steps, so that many small parts cost
/// no more than they hold.
pub(crate) struct Cutter<'a> {
    whole: &'a Instance,
    here: Vec<u32>,
}

impl<'a> Cutter<'a> {
    pub fn new(whole: &'a Instance) -> Self {
        Self {
            whole,
            here: vec![OUTSIDE; whole.steps()],
        }
    }

    /// The part of these steps, numbered in the order given.
    pub fn cut(&mut self, steps: Vec<StepId>, outside: Outside) -> Part {
        let whole = self.whole;
        for (i, &step) in steps.iter().enumerate() {
            self.here[step as usize] = i as u32;
        }
        let mut builder = Builder::new(steps.len());
        let (mut waits, mut settled) = (Vec::new(), Vec::new());
        for (i, &step) in steps.iter().enumerate() {
            for at in whole.succ.range(step) {
                let other = self.here[whole.succ.items()[at] as usize];
                if other != OUTSIDE {
                    let (why, also) = (whole.succ_why[at], whole.also(at));
                    builder.arc_of_wait(i as u32, other, why, also.unwrap_or(why));
                }
            }
            for &number in whole.waits_of.row(step) {
                let mut wait = Wait {
                    step: i as u32,
                    ways: Vec::new(),
                    why: whole.wait_why[number as usize],
                };
                let mut free = None;
                for way in whole.ways(number) {
                    if outside == Outside::AsWritten && self.ruled_out(step, way) {
                        continue;
                    }
                    let cut = Way {
                        later: self.inside(&whole.later, &whole.later_why, way),
                        earlier: self.inside(&whole.earlier, &whole.earlier_why, way),
                    };
                    if cut.later.is_empty() && cut.earlier.is_empty() {
                        free = free.or(Some(way));
                    }
                    wait.ways.push(cut);
                }
                match free {
                    Some(way) => settled.push((number, way)),
                    None => {
                        waits.push(number);
                        builder.wait(wait);
                    }
                }
            }
        }
        for &step in &steps {
            self.here[step as usize] = OUTSIDE;
        }
        Part {
            inst: builder.build(),
            steps,
            waits,
            settled,
        }
    }

    /// Whether a way asks of a step outside what the written order denies.
    fn ruled_out(&self, step: StepId, way: u32) -> bool {
        let out = |other: &StepId| self.here[*other as usize] == OUTSIDE;
        let (later, earlier) = (self.whole.later.row(way), self.whole.earlier.row(way));
        later.iter().any(|b| *b < step && out(b)) || earlier.iter().any(|a| *a > step && out(a))
    }

    fn inside(&self, rows: &Rows, why: &[Reason], way: u32) -> Vec<(StepId, Reason)> {
        rows.range(way)
            .map(|at| (self.here[rows.items()[at] as usize], why[at]))
            .filter(|&(step, _)| step != OUTSIDE)
            .collect()
    }
}

/// The facts whose every reason is kept, over the steps that they name.
/// A step named in a way drops out with its reason, a whole wait with its own.
pub(crate) fn restrict(whole: &Instance, keep: impl Fn(Reason) -> bool) -> Part {
    let named = |rows: &Rows, why: &[Reason], way: u32| -> Vec<(StepId, Reason)> {
        rows.range(way)
            .filter(|&at| keep(why[at]))
            .map(|at| (rows.items()[at], why[at]))
            .collect()
    };
    let mut arcs = Vec::new();
    for a in 0..whole.steps() as u32 {
        for at in whole.succ.range(a) {
            let why = whole.succ_why[at];
            if keep(why) {
                let also = whole.also(at).unwrap_or(why);
                if keep(also) {
                    arcs.push((a, whole.succ.items()[at], why, also));
                }
            }
        }
    }
    let (mut waits, mut origin, mut settled) = (Vec::new(), Vec::new(), Vec::new());
    for number in 0..whole.open_waits() {
        let why = whole.wait_why[number as usize];
        if !keep(why) {
            continue;
        }
        let ways: Vec<Way> = whole
            .ways(number)
            .map(|way| Way {
                later: named(&whole.later, &whole.later_why, way),
                earlier: named(&whole.earlier, &whole.earlier_why, way),
            })
            .collect();
        let free = ways
            .iter()
            .position(|way| way.later.is_empty() && way.earlier.is_empty());
        if let Some(way) = free {
            settled.push((number, whole.ways(number).start + way as u32));
            continue;
        }
        let step = whole.wait_step[number as usize];
        origin.push(number);
        waits.push(Wait { step, ways, why });
    }
    let mut steps: Vec<StepId> = arcs.iter().flat_map(|a| [a.0, a.1]).collect();
    for wait in &waits {
        steps.push(wait.step);
        let ways = wait.ways.iter();
        steps.extend(ways.flat_map(|way| way.later.iter().chain(&way.earlier).map(|x| x.0)));
    }
    steps.sort_unstable();
    steps.dedup();
    let here = |step: &mut StepId| {
        *step = steps.binary_search(step).map_or(OUTSIDE, |i| i as u32);
    };
    let mut builder = Builder::new(steps.len());
    for (mut a, mut b, why, also) in arcs {
        here(&mut a);
        here(&mut b);
        builder.arc_of_wait(a, b, why, also);
    }
    for mut wait in waits {
        here(&mut wait.step);
        for way in &mut wait.ways {
            for (step, _) in way.later.iter_mut().chain(&mut way.earlier) {
                here(step);
            }
        }
        builder.wait(wait);
    }
    Part {
        inst: builder.build(),
        steps,
        waits: origin,
        settled,
    }
}
