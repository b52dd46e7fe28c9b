//! The chains of a whole plan: what each step does to which thing.

use crate::chain::{
    Act, Aspect, Chain, LOWERS, Test, presence, settle_presence, settle_tightness, tightness,
};
use plan::index::Index;
use plan::model::{Body, Lock, Plan, Ref, Sort, Step, ThingId, To};
use std::collections::HashMap;
use syntax::tree::{State as Word, Verb};

/// What one target of one step is, once verbs of tightness on a part are spread to the
/// fasteners that hold it.
#[derive(Clone, Copy, Debug)]
pub struct Target {
    /// The thing acted on.
    pub thing: ThingId,
    /// The name in the text.
    pub named: Ref,
    /// Which of the step's acts it is.
    pub sub: u16,
}

/// All chains of a plan.
#[derive(Debug, Default)]
pub struct Lives {
    /// The chains.
    pub chains: Vec<Chain>,
    by_key: HashMap<(ThingId, Aspect), u32>,
    /// The targets of each step, in the order in which they are acted on.
    pub targets: Vec<Vec<Target>>,
}

impl Lives {
    /// The chains of `plan`.
    pub fn of(plan: &Plan, index: &Index) -> Lives {
        let mut lives = Lives::default();
        for (id, thing) in plan.things() {
            let initial = initial_main(plan, index, id);
            lives.chains.push(Chain::new(id, Aspect::Main, initial));
            let _ = thing;
        }
        let mut disturbs = Vec::new();
        for (id, step) in plan.steps() {
            lives.targets.push(spread_targets(plan, index, step));
            lives.step(plan, id.0, step, &mut disturbs);
        }
        lives.start_values(plan);
        lives.settle(plan, index);
        lives.openings(plan, index);
        lives.disturbances(index, &disturbs);
        lives
    }

    /// The main chain of a thing.
    pub fn main(&self, thing: ThingId) -> u32 {
        thing.0
    }

    /// The chain of another aspect, if any act or starting value made one.
    pub fn get(&self, thing: ThingId, aspect: Aspect) -> Option<u32> {
        if aspect == Aspect::Main {
            return Some(thing.0);
        }
        self.by_key.get(&(thing, aspect)).copied()
    }

    /// A chain by its number.
    pub fn chain(&self, id: u32) -> &Chain {
        &self.chains[id as usize]
    }

    fn make(&mut self, thing: ThingId, aspect: Aspect, initial: u8) -> u32 {
        if aspect == Aspect::Main {
            return thing.0;
        }
        *self.by_key.entry((thing, aspect)).or_insert_with(|| {
            self.chains.push(Chain::new(thing, aspect, initial));
            (self.chains.len() - 1) as u32
        })
    }

    fn act(&mut self, thing: ThingId, aspect: Aspect, at: (u32, u16), value: u8, trial: bool) {
        let chain = self.make(thing, aspect, 0);
        self.chains[chain as usize].acts.push(Act {
            step: at.0,
            sub: at.1,
            value,
            trial,
            fits: false,
        });
    }

    fn step(&mut self, plan: &Plan, id: u32, step: &Step, disturbs: &mut Vec<(ThingId, u32, u16)>) {
        for used in &step.uses {
            self.act(
                used.thing,
                Aspect::Happened(Word::Applied),
                (id, 0),
                1,
                false,
            );
        }
        for fresh in step.news.iter().chain(step.olds.iter().map(|(r, _)| r)) {
            self.renew(plan, fresh.thing, (id, 0));
        }
        if step.verb == Verb::Apply {
            for supply in &step.targets {
                self.act(
                    supply.thing,
                    Aspect::Happened(Word::Applied),
                    (id, 1),
                    1,
                    false,
                );
            }
        }
        for target in self.targets[id as usize].clone() {
            self.target(plan, step, target.thing, (id, target.sub));
        }
        let last = slot_of(1 + self.targets[id as usize].len());
        for spent in &step.spends {
            self.spend(plan, spent.thing, (id, last));
        }
        for disturbed in &step.disturbs {
            disturbs.push((disturbed.thing, id, last));
        }
    }

    fn renew(&mut self, plan: &Plan, thing: ThingId, at: (u32, u16)) {
        self.act(thing, Aspect::Fresh, at, 1, false);
        if let Body::Item { at: joints, .. } = &plan.thing(thing).body {
            let here: Vec<ThingId> = joints
                .iter()
                .map(|j| j.thing)
                .filter(|j| self.targets[at.0 as usize].iter().any(|t| t.thing == *j))
                .collect();
            let all = here.is_empty();
            for joint in joints {
                if all || here.contains(&joint.thing) {
                    self.act(thing, Aspect::InJoint(joint.thing), at, 1, false);
                }
            }
        }
    }

    fn spend(&mut self, plan: &Plan, thing: ThingId, at: (u32, u16)) {
        self.act(thing, Aspect::Fresh, at, 0, false);
        if let Body::Item { at: joints, .. } = &plan.thing(thing).body {
            for joint in joints {
                self.act(thing, Aspect::InJoint(joint.thing), at, 0, false);
            }
        }
    }

    fn target(&mut self, plan: &Plan, step: &Step, thing: ThingId, at: (u32, u16)) {
        let sort = plan.thing(thing).sort;
        let fasteners = sort == Sort::Fasteners;
        let main = |lives: &mut Lives, value: u8| {
            lives.act(thing, Aspect::Main, at, value, step.trial);
        };
        let happened = |lives: &mut Lives, word: Word, value: u8| {
            lives.act(thing, Aspect::Happened(word), at, value, false);
        };
        match step.verb {
            Verb::Fit if fasteners => {
                let level = fitted_level(plan, thing);
                main(self, level);
                if let Some(act) = self.chains[thing.0 as usize].acts.last_mut() {
                    act.fits = level >= tightness::TIGHT;
                }
            }
            Verb::DryFit if fasteners => main(self, tightness::STARTED),
            Verb::Fit if sort == Sort::Item => {
                main(self, presence::ON);
                self.renew(plan, thing, at);
            }
            Verb::Fit => main(self, presence::ON),
            Verb::DryFit => main(self, presence::DRY),
            Verb::Remove | Verb::Undo if fasteners => main(self, tightness::OUT | LOWERS),
            Verb::Remove | Verb::Undo => main(self, presence::OFF),
            Verb::Start if fasteners => main(self, tightness::STARTED),
            Verb::Snug if fasteners => main(self, tightness::SNUG),
            Verb::Tighten if fasteners => main(self, tightness::TIGHT),
            Verb::Lock if fasteners => main(self, tightness::LOCKED),
            Verb::Unlock if fasteners => main(self, tightness::TIGHT | LOWERS),
            Verb::Slacken if fasteners => main(self, tightness::STARTED | LOWERS),
            Verb::Start
            | Verb::Snug
            | Verb::Tighten
            | Verb::Lock
            | Verb::Unlock
            | Verb::Slacken => {}
            Verb::Fill => {
                happened(self, Word::Filled, 1);
                happened(self, Word::Drained, 0);
            }
            Verb::Drain => {
                happened(self, Word::Drained, 1);
                happened(self, Word::Filled, 0);
            }
            Verb::Set | Verb::Turn => {
                happened(
                    self,
                    if step.verb == Verb::Set {
                        Word::Set
                    } else {
                        Word::Turned
                    },
                    1,
                );
                if step.verb == Verb::Set {
                    // Setting a thing to a figure is measuring it.
                    happened(self, Word::Measured, 1);
                }
                if sort == Sort::Position {
                    let value = match step.to {
                        Some(To::Place(n, _)) => place_value(n),
                        _ => 0,
                    };
                    self.act(thing, Aspect::Place, at, value, false);
                }
            }
            verb => {
                if let Some(word) = participle(verb) {
                    happened(self, word, 1);
                }
            }
        }
        if sort == Sort::Point {
            happened(self, Word::Done, 1);
        }
    }

    /// Values that hold before the first step.
    fn start_values(&mut self, plan: &Plan) {
        for (id, thing) in plan.things() {
            match &thing.body {
                Body::Point(point) => {
                    if plan.heading.assembled && point.holds.is_some() {
                        let chain = self.make(id, Aspect::Happened(Word::Filled), 0);
                        self.chains[chain as usize].initial = 1;
                    }
                    if thing.given.is_some() {
                        let chain = self.make(id, Aspect::Happened(Word::Marked), 0);
                        self.chains[chain as usize].initial = 1;
                    }
                }
                Body::Item { at, .. } => {
                    for joint in at {
                        let in_place = started_made(plan, joint.thing);
                        let chain = self.make(id, Aspect::InJoint(joint.thing), 0);
                        self.chains[chain as usize].initial = u8::from(in_place);
                    }
                }
                _ => {}
            }
            if thing.single_use.is_some() {
                let chain = self.make(id, Aspect::Fresh, 1);
                self.chains[chain as usize].initial = 1;
            }
        }
    }

    fn settle(&mut self, plan: &Plan, index: &Index) {
        for (id, thing) in plan.things() {
            let chain = &mut self.chains[id.0 as usize];
            // The base of a unit lies on the bench without a step of its own, but a writer may
            // well begin the unit by putting it there.
            let put_there = chain.acts.first().is_some_and(|a| a.value != presence::OFF);
            if put_there && is_base(plan, index, id) && !started_made(plan, id) {
                chain.initial = presence::OFF;
            }
            if thing.sort == Sort::Fasteners {
                settle_tightness(chain);
            } else if thing.sort == Sort::Item {
                // A fresh one may be put in as often as the joint is made; the joint keeps count.
            } else {
                let for_good = chain
                    .acts
                    .last()
                    .is_some_and(|a| plan.steps[a.step as usize].for_good);
                let off = thing.temporary.is_some() || for_good;
                settle_presence(chain, if off { presence::OFF } else { presence::ON });
            }
        }
    }

    /// What opening a made joint spends: the items in it, and the joint's own single-use parts.
    fn openings(&mut self, plan: &Plan, index: &Index) {
        for (id, thing) in plan.things() {
            let items = index.items_at(id);
            let single_use = thing.single_use.is_some();
            if items.is_empty() && !single_use {
                continue;
            }
            let made_at = made_value(thing.sort);
            let mut made = started_made(plan, id);
            let mut opened = Vec::new();
            for act in &self.chains[id.0 as usize].acts {
                if act.value >= made_at && !act.trial {
                    made = true;
                } else if act.value == 0 {
                    if made {
                        opened.push((act.step, act.sub));
                    }
                    made = false;
                }
            }
            for at in opened {
                for &item in items {
                    self.act(item, Aspect::InJoint(id), at, 0, false);
                }
                if single_use {
                    self.act(id, Aspect::Fresh, at, 0, false);
                }
            }
        }
        for chain in &mut self.chains {
            if matches!(chain.aspect, Aspect::InJoint(_) | Aspect::Fresh) {
                chain.acts.sort_by_key(|a| (a.step, a.sub));
            }
        }
    }

    /// What is disturbed has not happened any more: readings and settings of the thing, and of
    /// the points on it.
    fn disturbances(&mut self, index: &Index, disturbs: &[(ThingId, u32, u16)]) {
        if disturbs.is_empty() {
            return;
        }
        let mut happened: HashMap<ThingId, Vec<u32>> = HashMap::new();
        for (&(thing, aspect), &chain) in &self.by_key {
            if matches!(aspect, Aspect::Happened(_)) {
                happened.entry(thing).or_default().push(chain);
            }
        }
        for &(thing, step, sub) in disturbs {
            for on in std::iter::once(thing).chain(index.points_on(thing).iter().copied()) {
                for &chain in happened.get(&on).into_iter().flatten() {
                    let acts = &mut self.chains[chain as usize].acts;
                    acts.push(Act {
                        step,
                        sub,
                        value: 0,
                        trial: false,
                        fits: false,
                    });
                    acts.sort_by_key(|a| (a.step, a.sub));
                }
            }
        }
    }

    /// Whether any act or starting value ever lets `test` pass on this aspect.
    pub fn ever(&self, thing: ThingId, aspect: Aspect, test: Test) -> bool {
        match self.get(thing, aspect) {
            Some(chain) => {
                let chain = self.chain(chain);
                test.passes(chain.initial) || chain.acts.iter().any(|a| test.passes(a.value))
            }
            None => test.passes(0),
        }
    }
}

/// The value of the main chain from which a joint counts as made.
pub fn made_value(sort: Sort) -> u8 {
    if sort == Sort::Fasteners {
        tightness::TIGHT
    } else {
        presence::ON
    }
}

/// Whether a joint is made before the first step.
fn started_made(plan: &Plan, joint: ThingId) -> bool {
    let thing = plan.thing(joint);
    thing.given.is_some() || (plan.heading.assembled && thing.temporary.is_none())
}

/// Whether a part is the first member of a unit, on which the others are built up.
fn is_base(plan: &Plan, index: &Index, id: ThingId) -> bool {
    index.unit_of(id).is_some_and(|unit| {
        plan.thing(unit)
            .members()
            .first()
            .is_some_and(|b| b.thing == id)
    })
}

fn initial_main(plan: &Plan, index: &Index, id: ThingId) -> u8 {
    let thing = plan.thing(id);
    let there = started_made(plan, id);
    match thing.sort {
        Sort::Fasteners if there => {
            if locks_by_step(plan, id) {
                tightness::LOCKED
            } else {
                tightness::TIGHT
            }
        }
        Sort::Fasteners => tightness::OUT,
        Sort::Part | Sort::Unit | Sort::Item => {
            if there || is_base(plan, index, id) {
                presence::ON
            } else {
                presence::OFF
            }
        }
        _ => 0,
    }
}

/// Whether this group is locked by a `lock` step: by an item or in words, not by a supply alone.
pub fn locks_by_step(plan: &Plan, id: ThingId) -> bool {
    plan.thing(id).fasteners().is_some_and(|f| {
        f.locked_by.iter().any(|l| match l {
            Lock::Thing(r) => plan.thing(r.thing).sort != Sort::Supply,
            Lock::Words(_) => true,
        })
    })
}

/// How far `fit` takes a group: pins, clips and rings are home once they are in.
fn fitted_level(plan: &Plan, id: ThingId) -> u8 {
    let home = plan.thing(id).fasteners().is_some_and(|f| {
        f.thread.is_none()
            && matches!(
                f.noun.as_deref(),
                Some("pin" | "clip" | "ring" | "key" | "dowel" | "clamp" | "strap")
            )
    });
    if home {
        tightness::TIGHT
    } else {
        tightness::STARTED
    }
}

fn spread_targets(plan: &Plan, index: &Index, step: &Step) -> Vec<Target> {
    let tightness_verb = matches!(
        step.verb,
        Verb::Start | Verb::Snug | Verb::Tighten | Verb::Lock | Verb::Unlock | Verb::Slacken
    );
    let named: &[Ref] = match (&step.verb, &step.to) {
        (Verb::Apply, Some(To::Things(on))) => on,
        (Verb::Apply, _) => &[],
        _ => &step.targets,
    };
    let mut targets = Vec::with_capacity(named.len());
    for (i, named) in named.iter().enumerate() {
        let sub = if step.together { 1 } else { slot_of(i) };
        let sort = plan.thing(named.thing).sort;
        let held = index.held_by(named.thing);
        if tightness_verb && matches!(sort, Sort::Part | Sort::Unit) && !held.is_empty() {
            targets.extend(held.iter().map(|&thing| Target {
                thing,
                named: *named,
                sub,
            }));
        } else {
            targets.push(Target {
                thing: named.thing,
                named: *named,
                sub,
            });
        }
    }
    targets
}

/// What has happened to a thing once the verb was done to it.
pub fn participle(verb: Verb) -> Option<Word> {
    Some(match verb {
        Verb::Measure => Word::Measured,
        Verb::Set => Word::Set,
        Verb::Mark => Word::Marked,
        Verb::Bleed => Word::Bled,
        Verb::Fill => Word::Filled,
        Verb::Drain => Word::Drained,
        Verb::Prime => Word::Primed,
        Verb::Inspect => Word::Inspected,
        Verb::Clean => Word::Cleaned,
        Verb::Heat => Word::Heated,
        Verb::Chill => Word::Chilled,
        Verb::Turn => Word::Turned,
        Verb::Reach => Word::Reached,
        Verb::Apply => Word::Applied,
        _ => return None,
    })
}

/// The slot of the n-th act of a step. A step that names more things than there are slots does
/// the last of them at once.
fn slot_of(n: usize) -> u16 {
    u16::try_from(n.saturating_add(1)).unwrap_or(u16::MAX)
}

/// The value of a position at its n-th place. A position with more places than there are values
/// takes the last of them for one.
pub fn place_value(n: u32) -> u8 {
    u8::try_from(n.saturating_add(1)).unwrap_or(u8::MAX)
}
