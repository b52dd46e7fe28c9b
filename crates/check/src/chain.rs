//! The life of one aspect of one thing: off and on, out to locked, measured or not.
//!
//! A chain is the list of acts on one aspect in the order in which they must
//! follow one another, with the value each leaves behind. A condition on a
//! state is a test on the chain's value, and a test holds in a few stretches
//! between two acts. That is all the ordering core ever needs to know of
//! states: "after the act that opens a stretch, before the act that closes it".

use plan::model::ThingId;
use syntax::tree::State as Word;

/// Values of a part, unit or item: off, tried on, on.
pub mod presence {
    /// Not there.
    pub const OFF: u8 = 0;
    /// Dry-fitted: in the way, but not fitted.
    pub const DRY: u8 = 1;
    /// Fitted.
    pub const ON: u8 = 2;
}

/// Values of a group of fasteners.
pub mod tightness {
    /// Not in.
    pub const OUT: u8 = 0;
    /// Threads engaged.
    pub const STARTED: u8 = 1;
    /// Touching.
    pub const SNUG: u8 = 2;
    /// Final.
    pub const TIGHT: u8 = 3;
    /// Tight and locked.
    pub const LOCKED: u8 = 4;
}

/// Which aspect of a thing a chain follows.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Aspect {
    /// Off or on for things fitted, out to locked for fasteners.
    Main,
    /// Whether something has happened to it (and has not been disturbed since).
    Happened(Word),
    /// Where a position stands: 0 unknown, n + 1 its n-th place.
    Place,
    /// Whether a single-use thing is still good for one more use.
    Fresh,
    /// Whether the item lies good in this joint.
    InJoint(ThingId),
}

/// One act on a chain.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Act {
    /// The step, by its written number.
    pub step: u32,
    /// Which of the acts of that step.
    pub sub: u16,
    /// The value it leaves.
    pub value: u8,
    /// A tightening that will be undone and spends nothing.
    pub trial: bool,
    /// Put in by `fit`, as pins and clips are: something that is in already cannot be.
    pub fits: bool,
}

/// What is asked of a chain's value.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Test {
    /// This or more.
    AtLeast(u8),
    /// This or less.
    AtMost(u8),
    /// Just this.
    Is(u8),
    /// Anything else.
    Not(u8),
}

impl Test {
    /// Whether `value` passes.
    pub fn passes(self, value: u8) -> bool {
        match self {
            Test::AtLeast(v) => value >= v,
            Test::AtMost(v) => value <= v,
            Test::Is(v) => value == v,
            Test::Not(v) => value != v,
        }
    }
    /// The test that passes just where this one does not.
    pub fn opposite(self) -> Test {
        match self {
            // No value is the largest one, so this asks for what never is.
            Test::AtLeast(0) => Test::Is(u8::MAX),
            Test::AtLeast(v) => Test::AtMost(v - 1),
            Test::AtMost(v) => Test::AtLeast(v.saturating_add(1)),
            Test::Is(v) => Test::Not(v),
            Test::Not(v) => Test::Is(v),
        }
    }
}

/// A stretch in which a test holds: after one act, before another, both as indices into the
/// chain's acts; none means from the start, or to the end.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Stretch {
    /// The act that opens it.
    pub open: Option<u32>,
    /// The act that closes it.
    pub close: Option<u32>,
}

/// The life of one aspect of one thing.
#[derive(Clone, Debug)]
pub struct Chain {
    /// The thing.
    pub thing: ThingId,
    /// The aspect.
    pub aspect: Aspect,
    /// The value before the first step.
    pub initial: u8,
    /// The acts, in the order in which they must follow one another.
    pub acts: Vec<Act>,
    /// Acts that change nothing where they stand: fitted while on, undone while out.
    pub surplus: Vec<Act>,
}

impl Chain {
    /// A chain with no acts.
    pub fn new(thing: ThingId, aspect: Aspect, initial: u8) -> Self {
        Chain {
            thing,
            aspect,
            initial,
            acts: Vec::new(),
            surplus: Vec::new(),
        }
    }

    /// The stretches in which `test` holds, in order.
    pub fn stretches(&self, test: Test) -> Vec<Stretch> {
        let mut found = Vec::new();
        let mut open = test.passes(self.initial).then_some(None);
        for (i, act) in (0u32..).zip(&self.acts) {
            match (open, test.passes(act.value)) {
                (None, true) => open = Some(Some(i)),
                (Some(from), false) => {
                    found.push(Stretch {
                        open: from,
                        close: Some(i),
                    });
                    open = None;
                }
                _ => {}
            }
        }
        if let Some(from) = open {
            found.push(Stretch {
                open: from,
                close: None,
            });
        }
        found
    }

    /// The value after the last act.
    pub fn last_value(&self) -> u8 {
        self.acts.last().map_or(self.initial, |a| a.value)
    }

    /// Pairs of neighbouring acts whose order matters, as indices: those that leave different
    /// values, and for the main aspect all of them.
    pub fn links(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        let all = self.aspect == Aspect::Main;
        (1..self.acts.len())
            .map(|i| (i - 1, i))
            .filter(move |&(a, b)| all || self.acts[a].value != self.acts[b].value)
    }
}

/// Puts the acts on a part, unit or item into an order in which each changes something.
///
/// The written order is kept where every act in it does. Otherwise fits and removals are taken
/// in turn; that reading is only accepted when it uses up every act and leaves the thing as it
/// should be at the end, because else the likelier fault is an act too many.
pub fn settle_presence(chain: &mut Chain, wanted_at_end: u8) {
    let written = std::mem::take(&mut chain.acts);
    let effective = |value: u8, act: &Act| (act.value == presence::OFF) != (value == presence::OFF);
    let mut value = chain.initial;
    if written.iter().all(|a| {
        let good = effective(value, a);
        value = a.value;
        good
    }) {
        chain.acts = written;
        return;
    }
    let mut fits = written.iter().filter(|a| a.value != presence::OFF);
    let mut offs = written.iter().filter(|a| a.value == presence::OFF);
    let mut turn = Vec::with_capacity(written.len());
    let mut value = chain.initial;
    while let Some(act) = if value == presence::OFF {
        fits.next()
    } else {
        offs.next()
    } {
        value = act.value;
        turn.push(*act);
    }
    let fine_at_end = (value == presence::OFF) == (wanted_at_end == presence::OFF);
    if turn.len() == written.len() && fine_at_end {
        chain.acts = turn;
        return;
    }
    let mut value = chain.initial;
    for act in written {
        if effective(value, &act) {
            value = act.value;
            chain.acts.push(act);
        } else {
            chain.surplus.push(act);
        }
    }
}

/// Puts the acts on a group of fasteners into the order of the trade: within one run without
/// undoing, start before snug before tighten before lock; acts that undo what is not there are
/// surplus.
pub fn settle_tightness(chain: &mut Chain) {
    let written = std::mem::take(&mut chain.acts);
    // The value when the present run began, and now.
    let (mut began, mut value) = (chain.initial, chain.initial);
    let mut run_from = 0;
    for mut act in written {
        let lowers = act.value & LOWERS != 0;
        act.value &= !LOWERS;
        if lowers && act.value < value {
            chain.acts.push(act);
            value = act.value;
            began = value;
            run_from = chain.acts.len();
        } else if !lowers && act.value >= began && !(act.fits && value >= act.value) {
            let run = &chain.acts[run_from..];
            let at = run_from + run.partition_point(|a| a.value <= act.value);
            chain.acts.insert(at, act);
            value = value.max(act.value);
        } else {
            chain.surplus.push(act);
        }
    }
}

/// Set in the value of an act that lowers tightness until the chain is settled.
pub const LOWERS: u8 = 0x80;
