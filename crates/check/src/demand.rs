//! What must hold at an act: the language's meaning, spelled out as tests on chains.
//!
//! Every rule about order comes down to demands. A demand belongs to one act of
//! one step; it is met when at least one of its ways is; a way is met when all
//! its atoms are. The same demands judge the written order, become the instance
//! that the ordering core rearranges, and judge the new order again, so there is
//! never a second opinion.

use crate::chain::{Stretch, Test};
use crate::lives::Lives;
use plan::model::{Place, ThingId};
use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

/// A test on one chain, or that a step was done.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum What {
    /// The chain's value passes.
    Chain(u32, Test),
    /// The step comes earlier (true), or does not (false).
    Done(u32, bool),
    /// Nothing makes this true: a state on a chain that does not exist.
    Never,
}

/// One thing that must hold, and what says so.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Atom {
    /// What.
    pub what: What,
    /// The thing it is about: what is in the way, what is missing.
    pub about: Option<ThingId>,
    /// The line that says so.
    pub place: Place,
}

/// Atoms that must all hold.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Way {
    /// All of them.
    pub atoms: Vec<Atom>,
    /// Which reach line of the thing this is, for sentences.
    pub line: Option<usize>,
    /// It holds while the thing, or what is in its way, lies elsewhere on the bench: true to the
    /// machine, but nothing to speak of when the way on the machine is shut.
    pub elsewhere: bool,
}

/// What kind of demand it is, with what its sentence needs.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Why {
    /// A part goes onto another.
    Onto,
    /// A unit is built up before it is fitted as one.
    Built,
    /// What a part needs when it is fitted.
    Needs,
    /// What a group of fasteners needs when turned hard.
    Counterhold,
    /// What the fasteners hold must be in place.
    Hold,
    /// Nothing may stand on a part that comes off.
    StandsOn,
    /// The fasteners of a part that comes off must be out.
    Fastened,
    /// A clear way in.
    Reach,
    /// `after …` on the step.
    After,
    /// The same where it starts a clock: `at least 24 h after …`.
    Lag,
    /// `before …` on the step.
    Before,
    /// `floats until …`.
    Floats,
    /// `must be … before …`, by its place among the thing's standing rules.
    MustBefore(u32),
    /// `must be … after …`.
    MustAfter(u32),
    /// What closes a point must be out to fill or drain it.
    Opening,
    /// The other closing things of the part must be tight to fill it.
    OtherClosing,
    /// A locked group must be unlocked first.
    StillLocked,
    /// Only a tight group can be locked.
    LockWantsTight,
    /// The item of a joint must be in it when it is made.
    Joint,
    /// A single-use thing must be new.
    Fresh,
    /// A position must stand at its place.
    Position,
    /// Aligned to a mark that must have been made.
    Mark,
    /// That mark is made while the thing is still together.
    MarkMade,
}

/// What must hold at one act.
#[derive(Clone, PartialEq, Debug)]
pub struct Demand {
    /// The step, by its written number.
    pub step: u32,
    /// Which of its acts.
    pub sub: u16,
    /// Acts of the same step at the same time count as done (`together`).
    pub together: bool,
    /// The thing acted on.
    pub thing: ThingId,
    /// At least one must hold.
    pub ways: Vec<Way>,
    /// What kind.
    pub why: Why,
    /// The line that asks it.
    pub place: Place,
    /// The words behind `because`, by their place; read from the plan when a sentence is made.
    pub because: Option<Because>,
}

/// Words behind `because`.
pub type Because = Rc<str>;

/// The stretches of each test asked for so far.
type Stretches = HashMap<(u32, Test), Rc<[Stretch]>>;

/// Positions of steps in some order, and what holds where.
pub struct Standing<'a> {
    /// The chains.
    pub lives: &'a Lives,
    /// The place of each step (by written number) in the order looked at.
    pub at: &'a [u32],
    stretches: RefCell<Stretches>,
    /// Chains whose acts do not stand in their own order here.
    scrambled: Vec<bool>,
}

/// An act's place: its step's place in the order, then its place within the step.
pub type Slot = (u32, u16);

impl<'a> Standing<'a> {
    /// Looks at `lives` in the order given by the place of each step.
    pub fn new(lives: &'a Lives, at: &'a [u32]) -> Self {
        let slot = |a: &crate::chain::Act| (at[a.step as usize], a.sub);
        let scrambled = lives
            .chains
            .iter()
            .map(|c| !c.acts.is_sorted_by_key(slot))
            .collect();
        Standing {
            lives,
            at,
            stretches: RefCell::default(),
            scrambled,
        }
    }

    /// The stretches of a test, worked out once.
    pub fn stretches(&self, chain: u32, test: Test) -> Rc<[Stretch]> {
        Rc::clone(
            self.stretches
                .borrow_mut()
                .entry((chain, test))
                .or_insert_with(|| self.lives.chain(chain).stretches(test).into()),
        )
    }

    /// Where an act of a chain stands.
    pub fn slot(&self, chain: u32, act: u32) -> Slot {
        let act = &self.lives.chain(chain).acts[act as usize];
        (self.at[act.step as usize], act.sub)
    }

    /// Whether the stretch holds at `slot`.
    pub fn inside(&self, chain: u32, stretch: Stretch, slot: Slot, together: bool) -> bool {
        let opened = stretch.open.is_none_or(|act| {
            let open = self.slot(chain, act);
            open < slot || (together && open == slot)
        });
        let closed = stretch
            .close
            .is_some_and(|act| self.slot(chain, act) < slot);
        opened && !closed
    }

    /// The stretch in which `slot` lies, if any.
    pub fn stretch_at(
        &self,
        chain: u32,
        test: Test,
        slot: Slot,
        together: bool,
    ) -> Option<Stretch> {
        let all = self.stretches(chain, test);
        if self.scrambled[chain as usize] {
            return all
                .iter()
                .copied()
                .find(|s| self.inside(chain, *s, slot, together));
        }
        let opened_before = all.partition_point(|s| {
            s.open.is_none_or(|act| {
                let open = self.slot(chain, act);
                open < slot || (together && open == slot)
            })
        });
        let last = all[opened_before.checked_sub(1)?];
        self.inside(chain, last, slot, together).then_some(last)
    }

    /// Whether the atom holds for this demand.
    pub fn holds(&self, demand: &Demand, atom: &Atom) -> bool {
        let slot = (self.at[demand.step as usize], demand.sub);
        match atom.what {
            What::Never => false,
            What::Done(step, wanted) => {
                let earlier = self.at[step as usize] < slot.0;
                let same = step == demand.step;
                if wanted { earlier } else { !earlier || same }
            }
            What::Chain(chain, test) => self
                .stretch_at(chain, test, slot, demand.together)
                .is_some(),
        }
    }

    /// The first way that holds.
    pub fn way(&self, demand: &Demand) -> Option<usize> {
        demand
            .ways
            .iter()
            .position(|way| way.atoms.iter().all(|atom| self.holds(demand, atom)))
    }
}

/// Whether anything could ever make the atom true.
pub fn possible(lives: &Lives, atom: &Atom) -> bool {
    match atom.what {
        What::Never => false,
        What::Done(..) => true,
        What::Chain(chain, test) => {
            let chain = lives.chain(chain);
            test.passes(chain.initial) || chain.acts.iter().any(|a| test.passes(a.value))
        }
    }
}
