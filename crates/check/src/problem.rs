//! From demands to an instance of the ordering core.
//!
//! A test on a chain holds in a few stretches, each between two acts; asking a
//! step to stand in one stretch is asking it to come after one step and before
//! another. Where the written order already lies in a stretch that is the one
//! meant ("the written order says which period a condition belongs to"), else
//! the nearest stretch before and the nearest behind are offered as
//! alternatives.

use crate::demand::{Atom, Demand, Standing, What, possible};
use order::{Builder, Instance, Reason, Wait};

/// Where an arc of the instance comes from.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Source {
    /// A demand (by its number) and the atom of it.
    Demand(u32, Atom),
    /// Two acts of one chain that must follow one another.
    Link {
        /// The chain.
        chain: u32,
        /// The earlier act, by its place in the chain.
        first: u32,
        /// The later act.
        second: u32,
    },
}

/// An instance, and what each of its reasons stands for.
pub struct Problem {
    /// The instance; its steps are places in the order looked at.
    pub instance: Instance,
    /// By reason.
    pub sources: Vec<Source>,
}

/// What a demand asks of its step in one way: steps that come earlier, steps that come later.
#[derive(Clone, Default)]
struct Option1 {
    earlier: Vec<(u32, Atom)>,
    later: Vec<(u32, Atom)>,
}

/// More combinations of stretches than this are not offered for one way.
const MOST_CHOICES: usize = 16;

/// The instance of `demands` for the order in which `standing` looks at them; `left_out` marks
/// demands that are not to take part.
pub fn build(standing: &Standing, demands: &[Demand], left_out: &[bool]) -> Problem {
    let mut builder = Builder::new(standing.at.len());
    let mut sources = Vec::new();
    let reason = |sources: &mut Vec<Source>, source: Source| {
        sources.push(source);
        Reason((sources.len() - 1) as u32)
    };
    for (c, chain) in (0u32..).zip(&standing.lives.chains) {
        for (a, b) in chain.links() {
            let (first, second) = (chain.acts[a].step, chain.acts[b].step);
            if first != second {
                let source = Source::Link {
                    chain: c,
                    first: a as u32,
                    second: b as u32,
                };
                let why = reason(&mut sources, source);
                builder.before(
                    standing.at[first as usize],
                    standing.at[second as usize],
                    why,
                );
            }
        }
    }
    for (d, demand) in (0u32..).zip(demands) {
        if left_out[d as usize] {
            continue;
        }
        let options = options(standing, demand);
        if options
            .iter()
            .any(|o| o.earlier.is_empty() && o.later.is_empty())
        {
            continue;
        }
        let here = standing.at[demand.step as usize];
        let place = |step: u32| standing.at[step as usize];
        if let [only] = options.as_slice() {
            for &(step, atom) in &only.earlier {
                let why = reason(&mut sources, Source::Demand(d, atom));
                builder.before(place(step), here, why);
            }
            for &(step, atom) in &only.later {
                let why = reason(&mut sources, Source::Demand(d, atom));
                builder.before(here, place(step), why);
            }
        } else if let Some(first) = options.first() {
            let any = first.earlier.first().or(first.later.first());
            let Some(&(_, atom)) = any else { continue };
            let why = reason(&mut sources, Source::Demand(d, atom));
            let ways = options
                .iter()
                .map(|o| order::Way {
                    later: o
                        .later
                        .iter()
                        .map(|&(s, a)| (place(s), reason(&mut sources, Source::Demand(d, a))))
                        .collect(),
                    earlier: o
                        .earlier
                        .iter()
                        .map(|&(s, a)| (place(s), reason(&mut sources, Source::Demand(d, a))))
                        .collect(),
                })
                .collect();
            builder.wait(Wait {
                step: here,
                ways,
                why,
            });
        }
    }
    Problem {
        instance: builder.build(),
        sources,
    }
}

/// The ways in which a demand can be met by the place of its step; the one that holds now first.
fn options(standing: &Standing, demand: &Demand) -> Vec<Option1> {
    let mut all: Vec<Option1> = Vec::new();
    let now = standing.way(demand);
    let ways = now
        .into_iter()
        .chain((0..demand.ways.len()).filter(|w| Some(*w) != now));
    for way in ways {
        let atoms = &demand.ways[way].atoms;
        if !atoms.iter().all(|a| possible(standing.lives, a)) {
            continue;
        }
        let mut combined = vec![Option1::default()];
        for atom in atoms {
            let choices = choices(standing, demand, atom);
            let mut next = Vec::with_capacity(combined.len() * choices.len());
            for base in &combined {
                for &(open, close) in &choices {
                    let mut one = base.clone();
                    one.earlier.extend(open.map(|s| (s, *atom)));
                    one.later.extend(close.map(|s| (s, *atom)));
                    next.push(one);
                }
            }
            next.truncate(MOST_CHOICES);
            combined = next;
        }
        all.extend(combined);
    }
    all
}

/// The step to come after and the step to come before, for each stretch that could serve.
fn choices(standing: &Standing, demand: &Demand, atom: &Atom) -> Vec<(Option<u32>, Option<u32>)> {
    match atom.what {
        What::Never => Vec::new(),
        What::Done(step, _) if step == demand.step => vec![(None, None)],
        What::Done(step, true) => vec![(Some(step), None)],
        What::Done(step, false) => vec![(None, Some(step))],
        What::Chain(chain, test) => {
            let slot = (standing.at[demand.step as usize], demand.sub);
            let acts = &standing.lives.chain(chain).acts;
            let step_of = |act: Option<u32>| {
                act.map(|a| acts[a as usize].step)
                    .filter(|s| *s != demand.step)
            };
            if let Some(s) = standing.stretch_at(chain, test, slot, demand.together) {
                return vec![(step_of(s.open), step_of(s.close))];
            }
            let all = standing.stretches(chain, test);
            let behind = all
                .iter()
                .rev()
                .find(|s| s.close.is_some_and(|a| standing.slot(chain, a) <= slot));
            let ahead = all
                .iter()
                .find(|s| s.open.is_some_and(|a| standing.slot(chain, a) >= slot));
            let mut found: Vec<_> = ahead
                .into_iter()
                .chain(behind)
                .map(|s| (step_of(s.open), step_of(s.close)))
                .collect();
            if found.is_empty() {
                found.extend(all.iter().map(|s| (step_of(s.open), step_of(s.close))));
            }
            found.dedup();
            found
        }
    }
}
