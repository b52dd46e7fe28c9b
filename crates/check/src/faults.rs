//! One fault, one finding: failed demands gathered by the move that mends them.

use crate::bench::Bench;
use crate::chain::Aspect;
use crate::demand::{Demand, Standing, What, Why};
use plan::model::{StepId, ThingId};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// Failed demands that the same move mends, or one that no move mends.
#[derive(Clone, Debug)]
pub struct Fault {
    /// The rule that speaks for it.
    pub rule: &'static str,
    /// The failed demands, the one to speak of first.
    pub demands: Vec<u32>,
    /// Acts of one chain that stand the wrong way round: chain, first, second.
    pub crossed: Vec<(u32, u32, u32)>,
    /// The steps that move together, in written order.
    pub moved: Vec<StepId>,
    /// The acts stand in the wrong order within one step.
    pub within_step: bool,
}

/// Rules about order, the most telling first: where one move mends several faults, this decides
/// which of them the finding is named after.
const SPEAKS_FIRST: [&str; 12] = [
    "shut-in",
    "closed-unseen",
    "unmarked",
    "tight-too-soon",
    "no-counterhold",
    "wrong-place",
    "still-locked",
    "not-renewed",
    "used-twice",
    "twice-fitted",
    "never-so",
    "out-of-turn",
];

/// The rule that a demand belongs to.
pub fn rule_of(bench: &Bench, d: u32) -> &'static str {
    let demand = &bench.demands[d as usize];
    match demand.why {
        Why::Reach => "shut-in",
        Why::Floats => "tight-too-soon",
        Why::Counterhold => "no-counterhold",
        Why::Position => "wrong-place",
        Why::StillLocked => "still-locked",
        Why::Joint if spent_item(bench, demand) => "used-twice",
        Why::Joint => "not-renewed",
        Why::Fresh => "used-twice",
        Why::Mark | Why::MarkMade => "unmarked",
        Why::MustBefore(n) => must_rule(bench, demand.thing, n),
        _ if bench.solved.impossible[d as usize] => never_rule(demand),
        _ => "out-of-turn",
    }
}

/// Whether the item of a joint is a single-use one that was in the joint before.
fn spent_item(bench: &Bench, demand: &Demand) -> bool {
    demand.ways.iter().flat_map(|w| &w.atoms).any(|a| {
        let What::Chain(chain, _) = a.what else {
            return false;
        };
        let chain = bench.lives.chain(chain);
        let before = |act: &&crate::chain::Act| (act.step, act.sub) < (demand.step, demand.sub);
        bench.plan.thing(chain.thing).single_use.is_some()
            && chain
                .acts
                .iter()
                .rfind(before)
                .is_some_and(|a| a.value == 0)
    })
}

/// A condition the writer wrote on a state that nothing makes is `never-so`; what the map asks
/// and never gets is still a matter of turn.
fn never_rule(demand: &Demand) -> &'static str {
    match demand.why {
        Why::After
        | Why::Lag
        | Why::Before
        | Why::MustAfter(_)
        | Why::Needs
        | Why::LockWantsTight => "never-so",
        _ => "out-of-turn",
    }
}

/// A standing rule broken by covering is `closed-unseen`, by taking off `unmarked`.
fn must_rule(bench: &Bench, thing: ThingId, n: u32) -> &'static str {
    use plan::model::State;
    use syntax::tree::State as Word;
    let must = &bench.plan.thing(thing).must[n as usize];
    let speaks_of = |words: &[Word]| {
        must.condition
            .clauses
            .iter()
            .any(|c| matches!(c.state, State::Is(w) if words.contains(&w)))
    };
    let seen = must.states.iter().any(|s| {
        matches!(
            s,
            State::Is(
                Word::Measured
                    | Word::Inspected
                    | Word::Set
                    | Word::Marked
                    | Word::Cleaned
                    | Word::Turned
                    | Word::Bled
                    | Word::Filled
                    | Word::Primed
                    | Word::Signed
                    | Word::Reached
                    | Word::Drained
            )
        )
    });
    if seen && speaks_of(&[Word::Covered]) {
        "closed-unseen"
    } else if seen && speaks_of(&[Word::Off, Word::Out]) {
        "unmarked"
    } else {
        "out-of-turn"
    }
}

/// All faults of order, by the place of their first demand.
pub fn gather(bench: &Bench) -> Vec<Fault> {
    let solved = &bench.solved;
    let standing = bench.standing();
    let later: HashMap<u32, bool> = solved.moved.iter().map(|m| (m.step, m.later)).collect();
    let mut by_move: BTreeMap<Vec<u32>, Fault> = BTreeMap::new();
    let mut alone = Vec::new();
    let in_tangle: BTreeSet<u32> = solved
        .tangles
        .iter()
        .flat_map(|t| &t.sources)
        .filter_map(|s| match s {
            crate::problem::Source::Demand(d, _) => Some(*d),
            crate::problem::Source::Link { .. } => None,
        })
        .collect();
    let forced = Forced::new(&solved.arcs, &later);
    for &d in solved.failed.iter().filter(|d| !in_tangle.contains(d)) {
        if bench.explained_elsewhere(d) {
            continue;
        }
        let demand = &bench.demands[d as usize];
        let blank = Fault {
            rule: rule_of(bench, d),
            demands: vec![d],
            crossed: Vec::new(),
            moved: Vec::new(),
            within_step: false,
        };
        let movers = movers(&standing, demand, &later);
        match movers.is_empty() {
            false if !solved.impossible[d as usize] => {
                let group = forced.group(&movers);
                by_move
                    .entry(group.clone())
                    .and_modify(|f| f.demands.push(d))
                    .or_insert(Fault {
                        moved: group.into_iter().map(StepId).collect(),
                        ..blank
                    });
            }
            _ => alone.push(Fault {
                within_step: !solved.impossible[d as usize] && by_own_step(&standing, demand),
                ..blank
            }),
        }
    }
    for &(chain, a, b) in &solved.crossed {
        let acts = &bench.lives.chain(chain).acts;
        let (first, second) = (acts[a as usize].step, acts[b as usize].step);
        let Some(mover) = [first, second].into_iter().find(|s| later.contains_key(s)) else {
            continue;
        };
        let group = forced.group(&[mover]);
        let fault = by_move.entry(group.clone()).or_insert(Fault {
            rule: crossed_rule(bench, chain, a),
            demands: Vec::new(),
            crossed: Vec::new(),
            moved: group.into_iter().map(StepId).collect(),
            within_step: false,
        });
        fault.crossed.push((chain, a, b));
    }
    let alone = merge_within_steps(bench, alone);
    let mut faults = merge_of_one_thing(bench, by_move.into_values().collect());
    faults.extend(merge_alike(bench, alone));
    for fault in &mut faults {
        let rank = |d: &u32| {
            let rule = rule_of(bench, *d);
            let rank = SPEAKS_FIRST.iter().position(|r| *r == rule);
            (rank, bench.demands[*d as usize].step, *d)
        };
        fault.demands.sort_by_key(rank);
        if let Some(first) = fault.demands.first() {
            fault.rule = rule_of(bench, *first);
        }
        if fault.within_step {
            fault.rule = "out-of-turn";
        }
    }
    faults
}

/// Acts of one step in the wrong order are one fault of that step, and a matter of turn.
fn merge_within_steps(bench: &Bench, alone: Vec<Fault>) -> Vec<Fault> {
    let mut merged: Vec<Fault> = Vec::new();
    for fault in alone {
        let step = |f: &Fault| bench.demands[f.demands[0] as usize].step;
        let same = merged
            .iter_mut()
            .find(|m| m.within_step && fault.within_step && step(m) == step(&fault));
        match same {
            Some(one) => one.demands.extend(fault.demands),
            None => merged.push(fault),
        }
    }
    merged
}

/// Work at one thing that fails by one rule is one fault, however many of its steps have to move:
/// a bolt that cannot be reached can be neither started nor tightened.
fn merge_of_one_thing(bench: &Bench, faults: Vec<Fault>) -> Vec<Fault> {
    let mut merged: Vec<Fault> = Vec::new();
    let about = |f: &Fault| {
        let d = *f.demands.first()?;
        Some((rule_of(bench, d), bench.demands[d as usize].thing))
    };
    // What is taken off with all that stands on it, or built up before it is put back, is one
    // fault however much stands on it.
    let stands = |f: &Fault| {
        let demand = &bench.demands[*f.demands.first()? as usize];
        match demand.why {
            Why::StandsOn => Some((demand.step, demand.thing)),
            Why::Onto => {
                let base = demand.ways.first()?.atoms.first()?.about?;
                Some((u32::MAX, base))
            }
            _ => None,
        }
    };
    for fault in faults {
        let same = merged.iter_mut().find(|m| {
            (about(m).is_some()
                && about(m) == about(&fault)
                && m.moved.iter().any(|s| fault.moved.contains(s)))
                || (stands(m).is_some() && stands(m) == stands(&fault))
        });
        match same {
            Some(one) => {
                one.demands.extend(fault.demands);
                one.crossed.extend(fault.crossed);
                one.moved.extend(fault.moved);
                one.moved.sort();
                one.moved.dedup();
            }
            None => merged.push(fault),
        }
    }
    merged
}

/// Faults that no move mends are one when the same thing fails the same step for the same kind
/// of reason.
fn merge_alike(bench: &Bench, alone: Vec<Fault>) -> Vec<Fault> {
    let mut merged: Vec<Fault> = Vec::new();
    let mut seen: HashMap<(Option<u32>, &'static str, Option<ThingId>), usize> = HashMap::new();
    for fault in alone {
        let demand = &bench.demands[fault.demands[0] as usize];
        let missing = demand
            .ways
            .first()
            .and_then(|w| w.atoms.first())
            .and_then(|a| a.about);
        // Fasteners that were never undone hold everything they hold: one step is missing.
        let step = match demand.why {
            Why::Fastened => None,
            _ if fault.rule == "unmarked" => None,
            _ => Some(demand.step),
        };
        let about = if fault.rule == "unmarked" {
            Some(demand.thing)
        } else {
            missing
        };
        let key = (step, fault.rule, about);
        if let Some(&at) = seen.get(&key) {
            merged[at].demands.extend(fault.demands);
        } else {
            seen.insert(key, merged.len());
            merged.push(fault);
        }
    }
    merged
}

/// What crossed acts are called: a second fit before the removal, or just out of turn.
fn crossed_rule(bench: &Bench, chain: u32, first: u32) -> &'static str {
    let chain = bench.lives.chain(chain);
    let off_first = chain.acts[first as usize].value == 0;
    let fastener = bench.plan.thing(chain.thing).sort == plan::model::Sort::Fasteners;
    let second = chain.acts[first as usize + 1].value;
    if fastener && second == crate::chain::tightness::LOCKED {
        "still-locked"
    } else if chain.aspect == Aspect::Main && off_first && !fastener {
        "twice-fitted"
    } else {
        "out-of-turn"
    }
}

/// Whether a demand fails because of another act of its own step.
fn by_own_step(standing: &Standing, demand: &Demand) -> bool {
    let of_turn = !matches!(demand.why, Why::Joint | Why::Fresh | Why::StillLocked);
    of_turn
        && crate::say::failing(standing, demand)
            .iter()
            .any(|atom| match atom.what {
                What::Chain(chain, _) => standing
                    .lives
                    .chain(chain)
                    .acts
                    .iter()
                    .any(|a| a.step == demand.step && a.sub != demand.sub),
                _ => false,
            })
}

/// The steps that move and whose move can mend the demand: its own step, or a step that makes or
/// unmakes what it asks for.
fn movers(standing: &Standing, demand: &Demand, later: &HashMap<u32, bool>) -> Vec<u32> {
    if later.contains_key(&demand.step) {
        return vec![demand.step];
    }
    let failing = |way: &crate::demand::Way| {
        let mut found = Vec::new();
        for atom in way.atoms.iter().filter(|a| !standing.holds(demand, a)) {
            let made = crate::say::comes_later(standing, demand, atom);
            let unmade = crate::say::changed_by(standing, demand, atom);
            let moves = |s: &StepId| later.contains_key(&s.0);
            // One of the two must give way for this atom, or this way is not the one taken.
            let Some(step) = unmade.filter(moves).or(made.filter(moves)) else {
                return Vec::new();
            };
            found.push(step.0);
        }
        found
    };
    let best = demand
        .ways
        .iter()
        .map(failing)
        .filter(|f| !f.is_empty())
        .min_by_key(Vec::len);
    if let Some(found) = best {
        return found;
    }
    // Whichever act on the things concerned moves has a part in it.
    let mut any: Vec<u32> = demand
        .ways
        .iter()
        .flat_map(|w| &w.atoms)
        .flat_map(|atom| match atom.what {
            What::Done(step, _) => vec![step],
            What::Chain(chain, _) => {
                let acts = &standing.lives.chain(chain).acts;
                acts.iter().map(|a| a.step).collect()
            }
            What::Never => Vec::new(),
        })
        .filter(|s| later.contains_key(s))
        .collect();
    any.truncate(1);
    any
}

/// Steps that move because another one does.
struct Forced<'a> {
    later: &'a HashMap<u32, bool>,
    next: HashMap<u32, Vec<u32>>,
}

impl<'a> Forced<'a> {
    fn new(arcs: &[(u32, u32)], later: &'a HashMap<u32, bool>) -> Self {
        let mut next: HashMap<u32, Vec<u32>> = HashMap::new();
        for &(a, b) in arcs {
            match (later.get(&a), later.get(&b)) {
                (Some(true), Some(true)) => next.entry(a).or_default().push(b),
                (Some(false), Some(false)) => next.entry(b).or_default().push(a),
                _ => {}
            }
        }
        Forced { later, next }
    }

    /// The movers and all that has to move the same way with it, in written order.
    fn group(&self, movers: &[u32]) -> Vec<u32> {
        debug_assert!(movers.iter().all(|m| self.later.contains_key(m)));
        let mut group: BTreeSet<u32> = movers.iter().copied().collect();
        let mut open = movers.to_vec();
        while let Some(step) = open.pop() {
            for &then in self.next.get(&step).into_iter().flatten() {
                if group.insert(then) {
                    open.push(then);
                }
            }
        }
        group.into_iter().collect()
    }
}
