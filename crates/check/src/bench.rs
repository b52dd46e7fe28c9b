//! Everything worked out about one plan, once.

use crate::asks::{self, Asked};
use crate::chain::{Aspect, Test, presence, tightness};
use crate::demand::{Demand, Standing, What, Why};
use crate::faults::{self, Fault};
use crate::finding::Finding;
use crate::item_moves::Moving;
use crate::lives::{Lives, made_value};
use crate::problem::{Problem, build};
use crate::rules;
use crate::solve::{Solved, solve};
use plan::index::Index;
use plan::model::{Condition, Plan, Sort, StepId, ThingId};
use std::cell::OnceCell;
use std::collections::{HashMap, HashSet};
use syntax::tree::Verb;

/// A plan and what follows from it.
pub struct Bench<'p> {
    /// The plan.
    pub plan: &'p Plan,
    /// Who stands on, holds and closes what.
    pub index: Index,
    /// What each step does to which thing.
    pub lives: Lives,
    /// What must hold at each step.
    pub demands: Vec<Demand>,
    /// Standing rules whose state no step ever brings about.
    pub never_done: Vec<(ThingId, u32)>,
    /// The order against the demands.
    pub solved: Solved,
    /// Things that no step ever puts in, though they belong in.
    pub never_fitted: Vec<ThingId>,
    /// Demands that fail only because something is never fitted.
    missed: Vec<(ThingId, u32)>,
    /// The name with its holes, of each thing that is a member of a series.
    pub stems: HashMap<String, String>,
    /// Things of which nothing may be said to be missing: a line about them could not be read.
    doubted: HashSet<ThingId>,
    /// The heading could not be read whole, so that even how the plan starts is in doubt.
    pub heading_in_doubt: bool,
    order: Vec<StepId>,
    problem: OnceCell<Problem>,
    moving: OnceCell<Moving>,
    faults: OnceCell<Vec<Fault>>,
    findings: OnceCell<Vec<Finding>>,
}

impl<'p> Bench<'p> {
    /// Works out everything that the rules and sheets need.
    pub fn of(plan: &'p Plan) -> Bench<'p> {
        let index = Index::of(plan);
        let lives = Lives::of(plan, &index);
        let Asked {
            demands,
            never_done,
        } = asks::all(plan, &index, &lives);
        let solved = solve(plan, &lives, &demands);
        let order = solved.order.iter().map(|s| StepId(*s)).collect();
        let mut bench = Bench {
            plan,
            index,
            lives,
            demands,
            never_done,
            solved,
            never_fitted: Vec::new(),
            missed: Vec::new(),
            stems: plan
                .things
                .iter()
                .filter_map(|t| Some((t.name.clone(), t.member.as_ref()?.stem.clone())))
                .collect(),
            doubted: doubted(plan),
            heading_in_doubt: heading_in_doubt(plan),
            order,
            problem: OnceCell::new(),
            moving: OnceCell::new(),
            faults: OnceCell::new(),
            findings: OnceCell::new(),
        };
        bench.never_fitted = bench.find_never_fitted();
        bench.missed = bench.find_missed();
        bench
    }

    /// All findings, by place, then by rule.
    pub fn findings(&self) -> &[Finding] {
        self.findings.get_or_init(|| rules::run(self))
    }

    /// The faults of order that speak through `rule`.
    pub fn faults_of<'a>(&'a self, rule: &'a str) -> impl Iterator<Item = &'a Fault> {
        self.faults().iter().filter(move |f| f.rule == rule)
    }

    /// All faults of order.
    pub fn faults(&self) -> &[Fault] {
        self.faults.get_or_init(|| faults::gather(self))
    }

    /// The order meant: the written one, with stages in any order put into one that works.
    pub fn order(&self) -> &[StepId] {
        &self.order
    }

    /// The instance of the ordering core for the order meant, without what nothing could meet.
    pub fn problem(&self) -> &Problem {
        self.problem
            .get_or_init(|| build(&self.standing(), &self.demands, &self.solved.impossible))
    }

    /// Who stays and who moves in the nearest order.
    pub fn moving(&self) -> &Moving {
        self.moving
            .get_or_init(|| Moving::of(self.plan, &self.solved))
    }

    /// The steps that finish a joint, a setting or a reading: after one of them it can be
    /// disturbed, and another makes it good again.
    pub fn steps_that_finish(&self, thing: ThingId) -> Vec<StepId> {
        let finishes = |s: &StepId| {
            matches!(
                self.plan.step(*s).verb,
                Verb::Tighten
                    | Verb::Fit
                    | Verb::Lock
                    | Verb::Measure
                    | Verb::Set
                    | Verb::Bleed
                    | Verb::Fill
                    | Verb::Prime
                    | Verb::Mark
                    | Verb::Inspect
            )
        };
        self.plan
            .steps()
            .map(|(id, _)| id)
            .filter(|id| {
                self.lives.targets[id.0 as usize]
                    .iter()
                    .any(|t| t.thing == thing)
            })
            .filter(finishes)
            .collect()
    }

    /// Whether a thing is finished before the first step.
    pub fn made_at_start(&self, thing: ThingId) -> bool {
        self.lives.chain(self.lives.main(thing)).initial >= made_value(self.plan.thing(thing).sort)
    }

    /// The order meant, to ask what holds where.
    pub fn standing(&self) -> Standing<'_> {
        Standing::new(&self.lives, &self.solved.at)
    }

    /// Whether the step is the only one written by its item: not one pass of a `for each` stage.
    pub fn alone_in_its_item(&self, step: StepId) -> bool {
        let same = |s: Option<&plan::model::Step>| {
            s.is_some_and(|s| s.item == self.plan.step(step).item && s.place.file.0 == 0)
        };
        self.plan.step(step).member.is_none()
            && !same(self.plan.steps.get(step.0 as usize + 1))
            && !step
                .0
                .checked_sub(1)
                .is_some_and(|i| same(self.plan.steps.get(i as usize)))
    }

    /// Whether a plan only takes things apart: nothing that stays is ever fitted.
    pub fn only_strips(&self) -> bool {
        only_strips(self.plan)
    }

    /// Whether a thing is taken off or slackened and is meant to be made good, and never is.
    pub fn never_made_good(&self, thing: ThingId) -> bool {
        never_made_good(self.plan, &self.lives, thing)
    }

    /// Whether a step before `step` needs a temporary thing that went before and never came back:
    /// then it is that step which is missing, and not this removal which is too many.
    pub fn put_back_missing(&self, thing: ThingId, step: u32) -> bool {
        self.plan.thing(thing).temporary.is_some()
            && self.solved.failed.iter().any(|d| {
                let demand = &self.demands[*d as usize];
                self.solved.impossible[*d as usize]
                    && demand.step <= step
                    && demand
                        .ways
                        .iter()
                        .flat_map(|w| &w.atoms)
                        .any(|a| a.about == Some(thing))
            })
    }

    /// Whether a line about the thing could not be read, so that nothing may be said of what is
    /// missing about it.
    pub fn in_doubt(&self, thing: ThingId) -> bool {
        self.doubted.contains(&thing)
    }

    fn find_never_fitted(&self) -> Vec<ThingId> {
        if self.plan.steps.is_empty() || self.plan.heading.assembled || self.heading_in_doubt {
            return Vec::new();
        }
        let meant: Vec<&str> = self
            .plan
            .problems
            .iter()
            .filter_map(|p| match &p.kind {
                plan::model::ProblemKind::UnknownName { near, .. } => near.as_deref(),
                _ => None,
            })
            .collect();
        let asked_for =
            |id: ThingId| {
                self.solved.failed.iter().any(|d| {
                    let demand = &self.demands[*d as usize];
                    self.solved.impossible[*d as usize]
                        && demand.ways.iter().flat_map(|w| &w.atoms).any(|a| {
                            a.about == Some(id) && !crate::demand::possible(&self.lives, a)
                        })
                })
            };
        let mut found = Vec::new();
        for (id, thing) in self.plan.things() {
            let fitted_once = matches!(thing.sort, Sort::Part | Sort::Unit | Sort::Fasteners);
            let chain = self.lives.chain(self.lives.main(id));
            let touched = !chain.acts.is_empty() || !chain.surplus.is_empty();
            if fitted_once
                && thing.given.is_none()
                && (thing.temporary.is_none() || asked_for(id))
                && !self.in_doubt(id)
                && chain.initial == presence::OFF
                && !touched
                // A misspelt name is one fault, not also the absence of what was meant.
                && !meant.contains(&thing.name.as_str())
            {
                found.push(id);
            }
        }
        found
    }

    /// Demands that nothing could meet because something is never fitted at all: they are further
    /// reasons of that finding, not findings of their own.
    fn find_missed(&self) -> Vec<(ThingId, u32)> {
        let mut missed = Vec::new();
        let standing = self.standing();
        for &d in &self.solved.failed {
            if !self.solved.impossible[d as usize] {
                continue;
            }
            let demand = &self.demands[d as usize];
            let failing = demand
                .ways
                .iter()
                .flat_map(|w| &w.atoms)
                .filter(|a| !standing.holds(demand, a));
            let speaks_for_it = failing.filter_map(|a| match a.what {
                What::Chain(chain, test) if self.lives.chain(chain).aspect == Aspect::Main => {
                    let about = a.about?;
                    let thing = self.plan.thing(about);
                    let surplus = &self.lives.chain(self.lives.main(about)).surplus;
                    let never_off = test == Test::AtMost(0)
                        && surplus.iter().any(|a| a.step > demand.step && a.value > 0);
                    let left_in = thing.temporary.is_some() && test == Test::AtMost(0);
                    let unlocked = test == Test::AtLeast(tightness::LOCKED)
                        && crate::rules::unlocked::holds(self, about);
                    (self.never_fitted.contains(&about)
                        || thing.uncertain
                        || left_in
                        || never_off
                        || (matches!(test, Test::AtLeast(_)) && self.never_made_good(about))
                        || unlocked)
                        .then_some(about)
                }
                _ => None,
            });
            if let Some(first) = speaks_for_it.into_iter().next() {
                missed.push((first, d));
            }
        }
        missed
    }

    /// Whether another finding already speaks of this failed demand, or must stay silent for it.
    pub fn explained_elsewhere(&self, demand: u32) -> bool {
        self.missed.iter().any(|(_, d)| *d == demand)
            || self.uncertain(demand)
            || self.of_surplus_act(demand)
    }

    /// Whether the demand belongs to an act that changes nothing where it stands, which is a
    /// finding of its own.
    fn of_surplus_act(&self, demand: u32) -> bool {
        let demand = &self.demands[demand as usize];
        let written = matches!(
            demand.why,
            Why::After | Why::Lag | Why::Before | Why::StillLocked
        );
        !written
            && self.plan.things.get(demand.thing.0 as usize).is_some()
            && self
                .lives
                .chain(self.lives.main(demand.thing))
                .surplus
                .iter()
                .any(|a| (a.step, a.sub) == (demand.step, demand.sub))
    }

    /// The demands that fail because `thing` is never fitted.
    pub fn missed_for(&self, thing: ThingId) -> impl Iterator<Item = u32> + '_ {
        self.missed
            .iter()
            .filter(move |(t, _)| *t == thing)
            .map(|(_, d)| *d)
    }

    /// Nothing is said of absence where a line could not be read.
    fn uncertain(&self, demand: u32) -> bool {
        let demand = &self.demands[demand as usize];
        self.plan.steps[demand.step as usize].uncertain
            || demand
                .ways
                .iter()
                .flat_map(|w| &w.atoms)
                .filter_map(|a| a.about)
                .any(|t| self.in_doubt(t))
    }

    /// Steps that leave something loose which must float, with what it waits for.
    pub fn leave_loose(&self) -> Vec<(StepId, ThingId, &'p Condition)> {
        let mut found = Vec::new();
        for (id, step) in self.plan.steps() {
            if !matches!(step.verb, Verb::Start | Verb::Snug | Verb::Slacken) {
                continue;
            }
            for target in &self.lives.targets[id.0 as usize] {
                if let Some(f) = self.plan.thing(target.thing).fasteners() {
                    found.extend(f.floats_until.iter().map(|c| (id, target.thing, c)));
                }
            }
        }
        found
    }
}

fn doubted(plan: &Plan) -> HashSet<ThingId> {
    let things = plan.things().filter(|(_, t)| t.uncertain).map(|(id, _)| id);
    let steps = plan.steps.iter().filter(|s| s.uncertain).flat_map(|s| {
        let named = s.targets.iter().chain(&s.uses).chain(&s.news);
        named.map(|r| r.thing)
    });
    // What a misspelt name nearly spells is mentioned there, so nothing of it is missing.
    let nearly: HashSet<&str> = plan
        .problems
        .iter()
        .filter_map(|p| match &p.kind {
            plan::model::ProblemKind::UnknownName { near, .. } => near.as_deref(),
            _ => None,
        })
        .collect();
    let meant = plan
        .things()
        .filter(|(_, t)| nearly.contains(t.name.as_str()))
        .map(|(id, _)| id);
    things.chain(steps).chain(meant).collect()
}

fn heading_in_doubt(plan: &Plan) -> bool {
    use plan::model::ProblemKind;
    let unread = |p: &&plan::model::Problem| matches!(p.kind, ProblemKind::Text(_));
    let inside = |p: &plan::model::Problem| match plan.heading.place {
        Some(h) => {
            h.file == p.place.file
                && h.span.start <= p.place.span.start
                && p.place.span.start <= h.span.end
        }
        None => p.place.file.0 == 0 && p.place.span.start == 0,
    };
    plan.problems.iter().filter(unread).any(inside)
}

/// Whether a plan only takes things apart: nothing that stays is ever fitted.
pub fn only_strips(plan: &Plan) -> bool {
    let takes_apart = plan
        .steps
        .iter()
        .filter(|s| matches!(s.verb, Verb::Remove | Verb::Undo))
        .flat_map(|s| &s.targets)
        .any(|t| plan.thing(t.thing).temporary.is_none());
    let puts_together = plan.steps.iter().any(|s| {
        matches!(
            s.verb,
            Verb::Fit | Verb::DryFit | Verb::Tighten | Verb::Start | Verb::Snug
        ) && s
            .targets
            .iter()
            .map(|t| plan.thing(t.thing))
            .any(|t| t.temporary.is_none() && !t.uncertain)
    });
    takes_apart && !puts_together
}

/// Whether a thing is taken off or slackened and is meant to be made good, and never is: that is
/// a finding of its own, and what waits for it is no fault of order.
pub fn never_made_good(plan: &Plan, lives: &Lives, id: ThingId) -> bool {
    let thing = plan.thing(id);
    let chain = lives.chain(lives.main(id));
    let Some(last) = chain.acts.last() else {
        return false;
    };
    thing.temporary.is_none()
        && matches!(thing.sort, Sort::Part | Sort::Unit | Sort::Fasteners)
        && last.value < made_value(thing.sort)
        && !plan.steps[last.step as usize].for_good
        && !only_strips(plan)
}
