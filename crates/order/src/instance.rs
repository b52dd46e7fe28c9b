//! What is to be ordered: steps, arcs and waits, each with its reason.
//!
//! Waits are normalised as they are taken in. A wait with one way is plain
//! arcs; a wait with a way that asks nothing always holds; a wait with no way
//! never does. What remains has at least two ways that each ask something,
//! and only those count as *alternatives* below.

use crate::rows::Rows;

/// A step, numbered from 0 in written order.
pub type StepId = u32;

/// Where a fact came from. The core carries it and never looks inside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Reason(pub u32);

/// `step` needs at least one of `ways` to hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wait {
    /// The step that waits.
    pub step: StepId,
    /// The ways; one of them must hold. With none the wait can never hold.
    pub ways: Vec<Way>,
    /// Why the step waits at all.
    pub why: Reason,
}

/// One way: `step` comes before every step of `later` and after every step of
/// `earlier`. With both empty the way always holds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Way {
    /// Steps that must still be to come.
    pub later: Vec<(StepId, Reason)>,
    /// Steps that must have been done.
    pub earlier: Vec<(StepId, Reason)>,
}

/// What became of a wait when it was taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Slot {
    /// It needs no decision; this way is taken.
    Settled(u32),
    /// It is the open wait of this number.
    Open(u32),
}

/// Takes facts in and lays them out.
#[derive(Clone, Debug, Default)]
pub struct Builder {
    steps: usize,
    arcs: Vec<(StepId, StepId, Reason)>,
    /// Further reasons of an arc, by its number in `arcs`, rising.
    also: Vec<(u32, Reason)>,
    slots: Vec<Slot>,
    wait_step: Vec<StepId>,
    wait_why: Vec<Reason>,
    way_start: Vec<u32>,
    later_start: Vec<u32>,
    later: Vec<u32>,
    later_why: Vec<Reason>,
    earlier_start: Vec<u32>,
    earlier: Vec<u32>,
    earlier_why: Vec<Reason>,
}

impl Builder {
    /// An instance of so many steps without any fact.
    pub fn new(steps: usize) -> Self {
        Self {
            steps,
            way_start: vec![0],
            later_start: vec![0],
            earlier_start: vec![0],
            ..Self::default()
        }
    }

    /// `a` comes before `b`. With `a == b` no order can hold it.
    ///
    /// # Panics
    /// If `a` or `b` is not the number of a step.
    pub fn before(&mut self, a: StepId, b: StepId, why: Reason) {
        self.must_exist(a);
        self.must_exist(b);
        self.arcs.push((a, b, why));
    }

    /// `wait.step` waits for one of `wait.ways`.
    ///
    /// # Panics
    /// If a step named in it is not the number of a step.
    pub fn wait(&mut self, wait: Wait) {
        self.must_exist(wait.step);
        for way in &wait.ways {
            for &(other, _) in way.later.iter().chain(&way.earlier) {
                self.must_exist(other);
            }
        }
        let asks_nothing = |way: &Way| way.later.is_empty() && way.earlier.is_empty();
        if let Some(free) = wait.ways.iter().position(asks_nothing) {
            self.slots.push(Slot::Settled(free as u32));
            return;
        }
        if let [way] = wait.ways.as_slice() {
            self.slots.push(Slot::Settled(0));
            for &(other, why) in &way.later {
                self.arc_of_wait(wait.step, other, why, wait.why);
            }
            for &(other, why) in &way.earlier {
                self.arc_of_wait(other, wait.step, why, wait.why);
            }
            return;
        }
        self.slots.push(Slot::Open(self.wait_step.len() as u32));
        self.wait_step.push(wait.step);
        self.wait_why.push(wait.why);
        for way in &wait.ways {
            for &(other, why) in &way.later {
                self.later.push(other);
                self.later_why.push(why);
            }
            for &(other, why) in &way.earlier {
                self.earlier.push(other);
                self.earlier_why.push(why);
            }
            self.later_start.push(self.later.len() as u32);
            self.earlier_start.push(self.earlier.len() as u32);
        }
        self.way_start.push(self.later_start.len() as u32 - 1);
    }

    fn must_exist(&self, step: StepId) {
        assert!(
            (step as usize) < self.steps,
            "step {step} of an instance of {} steps",
            self.steps
        );
    }

    /// An arc that has the reason of its wait beside its own.
    pub(crate) fn arc_of_wait(&mut self, a: StepId, b: StepId, why: Reason, wait: Reason) {
        if wait != why {
            self.also.push((self.arcs.len() as u32, wait));
        }
        self.arcs.push((a, b, why));
    }

    /// Takes in every fact of an instance of as many steps.
    pub(crate) fn copy(&mut self, inst: &Instance) {
        for a in 0..inst.steps as u32 {
            for at in inst.succ.range(a) {
                let why = inst.succ_why[at];
                let also = inst.also(at).unwrap_or(why);
                self.arc_of_wait(a, inst.succ.items()[at], why, also);
            }
        }
        let named = |rows: &Rows, why: &[Reason], way: u32| -> Vec<(StepId, Reason)> {
            let range = rows.range(way);
            range.map(|at| (rows.items()[at], why[at])).collect()
        };
        for wait in 0..inst.open_waits() {
            let ways = inst.ways(wait).map(|way| Way {
                later: named(&inst.later, &inst.later_why, way),
                earlier: named(&inst.earlier, &inst.earlier_why, way),
            });
            self.wait(Wait {
                step: inst.wait_step[wait as usize],
                ways: ways.collect(),
                why: inst.wait_why[wait as usize],
            });
        }
    }

    /// Lays everything out. Linear in the number of facts.
    pub fn build(self) -> Instance {
        let n = self.steps;
        let arcs = self.arcs;
        let mut succ_why = vec![Reason(0); arcs.len()];
        let mut also = Vec::with_capacity(self.also.len());
        let mut more = self.also.iter().peekable();
        let mut number = 0usize;
        let succ = Rows::from_pairs(n, arcs.iter().map(|&(a, b, _)| (a, b)), |at| {
            succ_why[at] = arcs[number].2;
            if let Some(&(_, why)) = more.next_if(|&&(arc, _)| arc as usize == number) {
                also.push((at as u32, why));
            }
            number += 1;
        });
        drop(arcs);
        also.sort_unstable();
        let pred = Rows::from_pairs(n, succ.pairs().map(|(a, b)| (b, a)), |_| ());

        let mut way_wait = Vec::with_capacity(self.later_start.len() - 1);
        for (wait, ends) in self.way_start.windows(2).enumerate() {
            way_wait.resize(ends[1] as usize, wait as u32);
        }
        let later = Rows::from_parts(self.later_start, self.later);
        let earlier = Rows::from_parts(self.earlier_start, self.earlier);
        let turned = |rows: &Rows| Rows::from_pairs(n, rows.pairs().map(|(w, s)| (s, w)), |_| ());
        let waits = self.wait_step.iter().enumerate();
        Instance {
            steps: n,
            waits_of: Rows::from_pairs(n, waits.map(|(w, &s)| (s, w as u32)), |_| ()),
            later_of: turned(&later),
            earlier_of: turned(&earlier),
            succ,
            succ_why,
            also,
            pred,
            slots: self.slots,
            wait_step: self.wait_step,
            wait_why: self.wait_why,
            way_start: self.way_start,
            way_wait,
            later,
            later_why: self.later_why,
            earlier,
            earlier_why: self.earlier_why,
        }
    }
}

/// Steps and what orders them, in compressed rows; it does not change.
#[derive(Clone, Debug)]
pub struct Instance {
    steps: usize,
    /// Step to the steps that an arc puts behind it; `succ_why` runs beside.
    pub(crate) succ: Rows,
    pub(crate) succ_why: Vec<Reason>,
    /// Second reasons of arcs that were a wait with one way, by place in `succ`.
    also: Vec<(u32, Reason)>,
    pub(crate) pred: Rows,
    /// One for every wait given to the builder.
    pub(crate) slots: Vec<Slot>,
    /// From here on only open waits: two or more ways, each asking something.
    pub(crate) wait_step: Vec<StepId>,
    pub(crate) wait_why: Vec<Reason>,
    pub(crate) way_start: Vec<u32>,
    pub(crate) way_wait: Vec<u32>,
    /// Way to steps.
    pub(crate) later: Rows,
    pub(crate) later_why: Vec<Reason>,
    pub(crate) earlier: Rows,
    pub(crate) earlier_why: Vec<Reason>,
    /// Step to open waits, and to the ways that name it.
    pub(crate) waits_of: Rows,
    pub(crate) later_of: Rows,
    pub(crate) earlier_of: Rows,
}

impl Instance {
    /// How many steps there are.
    pub fn steps(&self) -> usize {
        self.steps
    }

    /// How many plain arcs there are, those from waits with one way included.
    pub fn arc_count(&self) -> usize {
        self.succ.items().len()
    }

    /// How many waits were given to the builder.
    pub fn wait_count(&self) -> usize {
        self.slots.len()
    }

    /// How many of the waits need a choice between ways.
    pub fn open_wait_count(&self) -> usize {
        self.wait_step.len()
    }

    /// The plain arcs `(a, b, why)`, by `a`.
    pub fn arcs(&self) -> impl Iterator<Item = (StepId, StepId, Reason)> + '_ {
        self.succ
            .pairs()
            .zip(&self.succ_why)
            .map(|((a, b), &why)| (a, b, why))
    }

    /// Whether some way with alternatives asks for a step that came earlier.
    /// Without that the instance is decided by a linear peel; with it the
    /// question is NP-complete.
    pub fn is_mixed(&self) -> bool {
        !self.earlier.items().is_empty()
    }

    pub(crate) fn open_waits(&self) -> u32 {
        self.wait_step.len() as u32
    }

    pub(crate) fn ways(&self, wait: u32) -> std::ops::Range<u32> {
        self.way_start[wait as usize]..self.way_start[wait as usize + 1]
    }

    pub(crate) fn way_is_mixed(&self, way: u32) -> bool {
        self.earlier.row_len(way) > 0
    }

    pub(crate) fn wait_is_mixed(&self, wait: u32) -> bool {
        self.ways(wait).any(|way| self.way_is_mixed(way))
    }

    /// The second reason of the arc at this place in `succ`.
    pub(crate) fn also(&self, arc: usize) -> Option<Reason> {
        let at = self.also.binary_search_by_key(&(arc as u32), |x| x.0);
        at.ok().map(|i| self.also[i].1)
    }

    /// Whether a way holds when the steps stand at these places.
    pub(crate) fn way_holds(&self, way: u32, place: &[u32]) -> bool {
        let step = self.wait_step[self.way_wait[way as usize] as usize];
        let at = place[step as usize];
        let (later, earlier) = (self.later.row(way), self.earlier.row(way));
        later.iter().all(|&b| place[b as usize] > at)
            && earlier.iter().all(|&a| place[a as usize] < at)
    }

    /// Every fact that `order` breaks, arcs first, each in the order in which
    /// the instance holds it.
    ///
    /// # Panics
    /// If `order` does not hold every step exactly once.
    pub fn broken(&self, order: &[StepId]) -> Vec<Broken> {
        let place = places_in(order, self.steps);
        let arcs = self
            .arcs()
            .filter(|&(a, b, _)| place[a as usize] >= place[b as usize])
            .map(|(before, after, why)| Broken::Arc { before, after, why });
        let mut out: Vec<_> = arcs.collect();
        for (number, slot) in self.slots.iter().enumerate() {
            if let Slot::Open(wait) = *slot
                && !self.ways(wait).any(|way| self.way_holds(way, &place))
            {
                out.push(Broken::Wait {
                    number,
                    step: self.wait_step[wait as usize],
                    why: self.wait_why[wait as usize],
                });
            }
        }
        out
    }

    /// Whether `order` keeps every fact.
    ///
    /// # Panics
    /// If `order` does not hold every step exactly once.
    pub fn allows(&self, order: &[StepId]) -> bool {
        let place = places_in(order, self.steps);
        let arcs = (0..self.steps as u32).all(|a| {
            let at = place[a as usize];
            self.succ.row(a).iter().all(|&b| place[b as usize] > at)
        });
        arcs && (0..self.open_waits())
            .all(|wait| self.ways(wait).any(|way| self.way_holds(way, &place)))
    }
}

/// A fact that an order does not keep.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Broken {
    /// `before` should have come before `after`.
    Arc {
        /// The step that should come first.
        before: StepId,
        /// The step that should come second.
        after: StepId,
        /// Why.
        why: Reason,
    },
    /// None of the ways of a wait holds.
    Wait {
        /// Which wait, in the order given to the builder.
        number: usize,
        /// The step that waits.
        step: StepId,
        /// Why it waits.
        why: Reason,
    },
}

/// The place of every step in `order`.
pub(crate) fn places_in(order: &[StepId], steps: usize) -> Vec<u32> {
    assert_eq!(order.len(), steps, "an order holds every step once");
    let mut place = vec![u32::MAX; steps];
    for (at, &step) in order.iter().enumerate() {
        assert_eq!(place[step as usize], u32::MAX, "a step stands twice");
        place[step as usize] = at as u32;
    }
    place
}
