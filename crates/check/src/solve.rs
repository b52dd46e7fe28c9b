//! The written order against its demands, and the nearest order that meets them all.

use crate::chain::{Aspect, Test};
use crate::demand::{Atom, Demand, Standing, What, Why, possible};
use crate::lives::Lives;
use crate::problem::{Problem, Source, build};
use order::{Builder, Effort, Reason};
use plan::model::Plan;
use syntax::tree::{State, Verb};

/// Conditions that no order can satisfy together.
#[derive(Clone, Debug)]
pub struct Tangle {
    /// What says so; no one of them can be dropped.
    pub sources: Vec<Source>,
    /// Where they form a circle of steps, each before the next and the last before the first:
    /// earlier step, what says so, later step. Empty when ways in are involved.
    pub circle: Vec<(u32, Source, u32)>,
}

/// A step that moves in the nearest order.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Moved {
    /// The step, by its written number.
    pub step: u32,
    /// Later (true) or earlier.
    pub later: bool,
}

/// What came of it.
#[derive(Debug)]
pub struct Solved {
    /// The place of each step in the order meant: the written one, with stages in any order put
    /// into an order that works.
    pub at: Vec<u32>,
    /// The order meant.
    pub order: Vec<u32>,
    /// Demands that fail in the order meant.
    pub failed: Vec<u32>,
    /// Demands that nothing in the plan could ever meet.
    pub impossible: Vec<bool>,
    /// Neighbouring acts of one chain that stand the wrong way round: chain, first, second.
    pub crossed: Vec<(u32, u32, u32)>,
    /// Circles of conditions.
    pub tangles: Vec<Tangle>,
    /// The nearest order, when the order meant is not it.
    pub nearest: Option<Vec<u32>>,
    /// The steps that move in it.
    pub moved: Vec<Moved>,
    /// No valid order moves fewer steps, or only that at least this many must move.
    pub fewest: Result<(), usize>,
    /// Pairs of steps (written numbers) of which the first must come before the second; filled
    /// when something moves.
    pub arcs: Vec<(u32, u32)>,
}

/// A plan tangled in more ways than this is reported up to here; the rest shows once these are
/// mended.
const MOST_TANGLES: usize = 16;

/// Judges the written order and finds the nearest one that works.
pub fn solve(plan: &Plan, lives: &Lives, demands: &[Demand]) -> Solved {
    let steps = plan.steps.len();
    let mut at: Vec<u32> = (0..steps as u32).collect();
    let stays_in = |atom: &Atom| match atom.what {
        // What is left in for good is in the way for good: the fault is that it is never taken
        // out, not the turn of whatever it hinders.
        What::Chain(chain, Test::AtMost(0)) => {
            let chain = lives.chain(chain);
            plan.thing(chain.thing).temporary.is_some() && chain.last_value() > 0
        }
        _ => false,
    };
    let impossible: Vec<bool> = demands
        .iter()
        .map(|d| {
            !d.ways
                .iter()
                .any(|w| w.atoms.iter().all(|a| possible(lives, a) && !stays_in(a)))
        })
        .collect();
    settle_any_order(plan, lives, demands, &impossible, &mut at);
    let standing = Standing::new(lives, &at);
    let failed = failing(&standing, demands);
    let crossed = crossed_links(&standing);
    let mut impossible = impossible;
    for &d in &failed {
        let demand = &demands[d as usize];
        impossible[d as usize] |= spoilt(&standing, demand)
            || never_put_back(plan, &standing, demand)
            || turned_away(&standing, demand)
            || never_seen_to(lives, demand);
    }
    let mut solved = Solved {
        order: by_place(&at),
        failed,
        crossed,
        tangles: Vec::new(),
        nearest: None,
        moved: Vec::new(),
        fewest: Ok(()),
        arcs: Vec::new(),
        at: at.clone(),
        impossible,
    };
    let mendable = solved
        .failed
        .iter()
        .any(|d| !solved.impossible[*d as usize]);
    if mendable || !solved.crossed.is_empty() {
        rearrange(plan, &standing, demands, &mut solved);
    }
    solved
}

/// Whether a standing rule asks for something that no step does at all.
fn never_seen_to(lives: &Lives, demand: &Demand) -> bool {
    matches!(demand.why, Why::MustBefore(_))
        && !demand
            .ways
            .iter()
            .filter(|w| !w.elsewhere)
            .any(|w| w.atoms.iter().all(|a| possible(lives, a)))
}

/// Whether a demand fails only because a position stands elsewhere: it is turned once more, and
/// nothing has to move for that.
fn turned_away(standing: &Standing, demand: &Demand) -> bool {
    let failing = crate::say::failing(standing, demand);
    !failing.is_empty()
        && failing.iter().all(|atom| match atom.what {
            What::Chain(chain, _) => standing.lives.chain(chain).aspect == Aspect::Place,
            _ => false,
        })
        && demand.why == Why::Reach
}

/// Whether a demand fails because a step is missing that no move can stand in for: what it needs
/// came off and never goes back, or fasteners that hold a part are never undone.
fn never_put_back(plan: &Plan, standing: &Standing, demand: &Demand) -> bool {
    crate::say::failing(standing, demand).iter().any(|atom| {
        let What::Chain(chain, test) = atom.what else {
            return false;
        };
        let chain = standing.lives.chain(chain);
        if crate::say::comes_later(standing, demand, atom).is_some() {
            return false;
        }
        if matches!(chain.aspect, Aspect::Happened(State::Filled)) {
            return crate::say::held_before(standing, demand, atom);
        }
        if chain.aspect != Aspect::Main {
            return false;
        }
        let surplus_fit = |a: &crate::chain::Act| a.step > demand.step && a.value > 0;
        demand.why == Why::Fastened
            || (test == Test::AtMost(0) && chain.surplus.iter().any(surplus_fit))
            || (matches!(test, Test::AtLeast(_))
                && plan.thing(chain.thing).temporary.is_some()
                && chain
                    .surplus
                    .iter()
                    .any(|a| a.value == 0 && a.step > demand.step)
                && crate::say::held_before(standing, demand, atom))
            || (matches!(test, Test::AtLeast(_))
                && crate::bench::never_made_good(plan, standing.lives, chain.thing))
    })
}

/// Whether a demand fails because a reading or setting it asks for was taken and then disturbed.
/// Moving steps about is no help there: it has to be taken again.
fn spoilt(standing: &Standing, demand: &Demand) -> bool {
    crate::say::failing(standing, demand).iter().any(|atom| {
        let What::Chain(chain, _) = atom.what else {
            return false;
        };
        let taken = |a: &crate::chain::Act| {
            (standing.at[a.step as usize], a.sub) < (standing.at[demand.step as usize], demand.sub)
        };
        let chain = standing.lives.chain(chain);
        let fluid = matches!(
            chain.aspect,
            Aspect::Happened(State::Filled | State::Drained)
        );
        matches!(chain.aspect, Aspect::Happened(_))
            && !fluid
            && chain.acts.iter().any(|a| a.value > 0 && taken(a))
    })
}

fn by_place(at: &[u32]) -> Vec<u32> {
    let mut order = vec![0; at.len()];
    for (step, place) in (0u32..).zip(at) {
        order[*place as usize] = step;
    }
    order
}

/// The demands that fail in the order looked at.
pub fn failing(standing: &Standing, demands: &[Demand]) -> Vec<u32> {
    (0u32..)
        .zip(demands)
        .filter(|(_, d)| standing.way(d).is_none())
        .map(|(i, _)| i)
        .collect()
}

fn crossed_links(standing: &Standing) -> Vec<(u32, u32, u32)> {
    let mut crossed = Vec::new();
    for (c, chain) in (0u32..).zip(&standing.lives.chains) {
        for (a, b) in chain.links() {
            let (first, second) = (&chain.acts[a], &chain.acts[b]);
            let place = |act: &crate::chain::Act| (standing.at[act.step as usize], act.sub);
            if place(first) > place(second) {
                crossed.push((c, a as u32, b as u32));
            }
        }
    }
    crossed
}

/// Nearest order, setting aside conditions that contradict each other until the rest can be met.
fn rearrange(plan: &Plan, standing: &Standing, demands: &[Demand], solved: &mut Solved) {
    let mut left_out = solved.impossible.clone();
    for _ in 0..MOST_TANGLES {
        let problem = build(standing, demands, &left_out);
        match order::nearest(&problem.instance, Effort::default()) {
            Ok(nearest) => {
                let nearest = the_handiest(plan, &problem, nearest, &solved.order);
                let step_at = |place: u32| solved.order[place as usize];
                solved.moved = nearest
                    .moved
                    .iter()
                    .map(|m| Moved {
                        step: step_at(m.step),
                        later: m.direction == order::Direction::Later,
                    })
                    .collect();
                solved.nearest = Some(nearest.order.iter().map(|p| step_at(*p)).collect());
                solved.fewest = match nearest.proof {
                    order::Proof::Fewest => Ok(()),
                    order::Proof::AtLeast(k) => Err(k as usize),
                };
                solved.arcs = problem
                    .instance
                    .arcs()
                    .map(|(a, b, _)| (step_at(a), step_at(b)))
                    .collect();
                return;
            }
            Err(order::NoOrder::Stuck(stuck)) => {
                let tangle = tangle(&problem, &stuck, &solved.order);
                let hopeless = hopeless(demands, &tangle);
                for &d in &hopeless {
                    left_out[d as usize] = true;
                    solved.impossible[d as usize] = true;
                }
                if !hopeless.is_empty() {
                    continue;
                }
                let mut dropped = false;
                for source in &tangle.sources {
                    if let Source::Demand(d, _) = source {
                        left_out[*d as usize] = true;
                        dropped = true;
                    }
                }
                solved.tangles.push(tangle);
                if !dropped {
                    return;
                }
            }
            Err(order::NoOrder::Unknown { .. }) => {
                solved.fewest = Err(0);
                return;
            }
        }
    }
}

/// More moves, or more steps, than these and the first nearest order is taken as it comes.
const MOST_WEIGHED: (usize, usize) = (200, 5_000);

/// Among the orders that move equally few steps, one that moves the steps a mechanic would: the
/// spanner waits rather than the part, and a look is taken sooner rather than a part fitted later.
///
/// Each move costs so much that no sum of the small preferences makes up for one more of them.
fn the_handiest(
    plan: &Plan,
    problem: &Problem,
    nearest: order::Nearest,
    order: &[u32],
) -> order::Nearest {
    let moves = nearest.moved.len();
    if moves == 0 || moves > MOST_WEIGHED.0 || order.len() > MOST_WEIGHED.1 {
        return nearest;
    }
    let weights: Vec<u32> = order
        .iter()
        .map(|s| 1_000 + reluctance(plan.steps[*s as usize].verb))
        .collect();
    match order::nearest_weighted(&problem.instance, &weights, Effort::default()) {
        Ok(weighed) if weighed.moved.len() <= moves => weighed,
        _ => nearest,
    }
}

/// How much rather a step stays where it is.
fn reluctance(verb: Verb) -> u32 {
    match verb {
        Verb::Tighten | Verb::Lock => 0,
        Verb::Measure | Verb::Inspect | Verb::Bleed | Verb::Fill | Verb::Set | Verb::Mark => 1,
        Verb::Do | Verb::Sign => 4,
        Verb::Fit | Verb::DryFit | Verb::Remove => 3,
        _ => 2,
    }
}

/// Demands of a tangle that no order could have met, rather than conditions that contradict each
/// other: a thing that is spent before it is used again, or a single demand against the order in
/// which the acts on its own thing must come.
fn hopeless(demands: &[Demand], tangle: &Tangle) -> Vec<u32> {
    let mut asked: Vec<u32> = tangle
        .sources
        .iter()
        .filter_map(|s| match s {
            Source::Demand(d, _) => Some(*d),
            Source::Link { .. } => None,
        })
        .collect();
    asked.sort_unstable();
    asked.dedup();
    if asked.len() == 1 {
        return asked;
    }
    // What is spent is taken new, and what is turned away is turned back: a step more, not another
    // order.
    let of = |kinds: &[Why]| -> Vec<u32> {
        let asks = |d: &&u32| kinds.contains(&demands[**d as usize].why);
        asked.iter().filter(asks).copied().collect()
    };
    let spent = of(&[Why::Joint, Why::Fresh]);
    if spent.is_empty() {
        of(&[Why::Position])
    } else {
        spent
    }
}

fn tangle(problem: &Problem, stuck: &order::Stuck, order: &[u32]) -> Tangle {
    let mut sources: Vec<Source> = Vec::new();
    let reasons: Vec<Reason> = match &stuck.kind {
        order::StuckKind::Cycle { links, .. } => links.iter().map(|l| l.1).collect(),
        order::StuckKind::Minimal { .. } => stuck.reasons.clone(),
    };
    for reason in reasons {
        let source = problem.sources[reason.0 as usize];
        if !sources.contains(&source) {
            sources.push(source);
        }
    }
    Tangle {
        sources,
        circle: match &stuck.kind {
            order::StuckKind::Cycle { links, .. } => links
                .iter()
                .map(|&(from, why, to)| {
                    let source = problem.sources[why.0 as usize];
                    (order[from as usize], source, order[to as usize])
                })
                .collect(),
            order::StuckKind::Minimal { .. } => Vec::new(),
        },
    }
}

/// Puts each stage `in any order` into an order that works within itself, if there is one, so
/// that only what the rest of the plan makes wrong about it is called wrong.
fn settle_any_order(
    plan: &Plan,
    lives: &Lives,
    demands: &[Demand],
    impossible: &[bool],
    at: &mut [u32],
) {
    if !plan.stages.iter().any(|s| s.any_order) {
        return;
    }
    let arcs: Vec<(u32, u32)> = {
        let standing = Standing::new(lives, at);
        let problem = build(&standing, demands, impossible);
        problem.instance.arcs().map(|(a, b, _)| (a, b)).collect()
    };
    for stage in plan.stages.iter().filter(|s| s.any_order) {
        let (first, end) = (stage.steps.0.0, stage.steps.1.0);
        let mut builder = Builder::new((end - first) as usize);
        let inside = |s: u32| (first..end).contains(&s);
        for &(a, b) in arcs.iter().filter(|(a, b)| inside(*a) && inside(*b)) {
            builder.before(a - first, b - first, Reason(0));
        }
        if let Ok(nearest) = order::nearest(&builder.build(), Effort::default()) {
            for (place, step) in (first..).zip(nearest.order) {
                at[(first + step) as usize] = place;
            }
        }
    }
}
