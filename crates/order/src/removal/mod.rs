//! The cheapest set of things to take off (or undo) so that something can be
//! reached.
//!
//! # The question
//!
//! A thing can be taken off once each of its *conditions* holds; a condition
//! is a list of *routes*, and holds once everything on one of them is gone. A
//! target is a condition too. Wanted is the cheapest set that can be taken off
//! one thing after the other and clears all targets. Taking off one after the
//! other is the point: parts that hold each other in a circle satisfy "each has
//! a clear route within the set" and still cannot be started on.
//!
//! With one route everywhere the set is a closure. With alternatives and
//! shared costs the question is NP-hard and as hard to approximate as set cover
//! (a target behind fasteners, each of which can be reached by taking off any
//! one of several parts). It is the least-cost hyperpath with shared costs
//! (G. Ausiello, A. D'Atri, D. Saccà, Journal of the ACM 30, 1983), and planning
//! without deletions (T. Bylander, Artificial Intelligence 69, 1994).
//!
//! # The method
//!
//! 1. `cut` leaves out what cannot matter, takes what is in every solution,
//!    and falls apart into pieces that share nothing.
//! 2. A *landmark* is a set of which every solution takes something. If with
//!    the things A alone the targets are not reached, all others together are a
//!    landmark; letting A grow as long as the targets stay out of reach makes it
//!    one from which nothing can be left out (`peel`).
//! 3. The cheapest set that meets all landmarks found so far costs no more than
//!    any solution. `branch` searches for it, with a Lagrangian lower bound
//!    (`bound`); whenever a set meets all known landmarks without reaching the
//!    targets, the search is given the landmarks that it misses, and goes on.
//! 4. `explain` keeps as few landmarks as still prove the cost: these say why
//!    nothing cheaper exists.
//!
//! Finding the optimum as a hitting set over landmarks made as they are missed
//! is due to B. Bonet and M. Helmert (ECAI 2010) and P. Haslum, J. Slaney and
//! S. Thiébaux (ICAPS 2012). Bounds are summed up in whole numbers, so no
//! rounding enters a proof.
//!
//! # Limits
//!
//! Exact within the [`Effort`] given, which is ample for machines of some
//! hundred parts; beyond it the best set found comes with a lower bound. Random
//! tangles in which every part has many equal alternatives are the worst case.
//!
//! ```
//! use order::Effort;
//! use order::removal::{Outcome, Removals};
//!
//! // 0 cover (4 min), 1 side plate (3 min), 2 guard (2 min) in front of the
//! // side plate. The valve is reached with the cover or the side plate off.
//! let mut machine = Removals::new(&[4, 3, 2]);
//! machine.condition(1, vec![vec![2]]);
//! machine.target(vec![vec![0], vec![1]]);
//! let Outcome::Reached(found) = machine.cheapest(Effort::default()) else {
//!     panic!("there is a way in");
//! };
//! assert_eq!((found.order, found.cost), (vec![0], 4));
//! assert_eq!(found.landmarks, [[0, 1], [0, 2]]);
//! ```

mod blocked;
mod bound;
mod branch;
mod cut;
mod explain;
mod peel;
mod shape;

use crate::bits::{Bits, LargestFirst};
use crate::effort::{Budget, Effort, Optimum};
use branch::{Goal, Search};
use cut::Reduced;
use shape::Shape;

pub use blocked::{Blocked, Shut, Subject};

/// A thing, numbered from 0.
pub type ThingId = u32;

/// Things that must all be gone.
pub type Route = Vec<ThingId>;

/// Routes of which one must be clear. With none it never holds; with an empty
/// route it always does.
pub type Condition = Vec<Route>;

/// Things that can be taken off, what each asks for first, and what is to be
/// reached.
#[derive(Clone, Debug, Default)]
pub struct Removals {
    cost: Vec<u64>,
    conditions: Vec<Vec<Condition>>,
    targets: Vec<Condition>,
    gone: Vec<ThingId>,
}

/// What came of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// There is a way in.
    Reached(Reached),
    /// There is none, whatever is taken off.
    Blocked(Blocked),
}

/// A way in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reached {
    /// What to take off, in an order in which it can be taken: always the
    /// smallest number that is free. Nothing in it can be left out.
    pub order: Vec<ThingId>,
    /// The sum of the costs (the largest number there is if they run over).
    pub cost: u64,
    /// Whether no way in costs less.
    pub proof: Optimum,
    /// Sets of which *every* way in takes at least one thing, each rising, the
    /// shortest first. Meeting all of them costs no less than `proof` says, so
    /// they are the reason why nothing cheaper exists. A set of one thing is a
    /// removal that cannot be avoided.
    pub landmarks: Vec<Vec<ThingId>>,
}

/// All cheapest ways in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ties {
    /// The sets, each rising, in lexical order.
    pub sets: Vec<Vec<ThingId>>,
    /// Whether that is all of them.
    pub all: bool,
}

impl Removals {
    /// Things with these costs, all free to come off. A cost may be 0.
    pub fn new(cost: &[u64]) -> Self {
        Self {
            cost: cost.to_vec(),
            conditions: vec![Vec::new(); cost.len()],
            ..Self::default()
        }
    }

    /// How many things there are.
    pub fn things(&self) -> usize {
        self.cost.len()
    }

    /// One more condition of a thing; all of its conditions must hold before it
    /// comes off. So "b, and one of c and d" is a condition with the route b and
    /// another with the routes c and d, or one with the routes b + c and b + d.
    /// A route that names the thing itself is never clear in time.
    ///
    /// # Panics
    /// If a number is not that of a thing.
    pub fn condition(&mut self, thing: ThingId, routes: Condition) {
        self.must_exist(thing);
        routes.iter().flatten().for_each(|&t| self.must_exist(t));
        self.conditions[thing as usize].push(routes);
    }

    /// The thing never comes off.
    ///
    /// # Panics
    /// If the number is not that of a thing.
    pub fn never(&mut self, thing: ThingId) {
        self.condition(thing, Vec::new());
    }

    /// The thing is off already, whatever its conditions, and costs nothing.
    ///
    /// # Panics
    /// If the number is not that of a thing.
    pub fn gone(&mut self, thing: ThingId) {
        self.must_exist(thing);
        self.gone.push(thing);
    }

    /// One more target, numbered from 0 in the order in which they are given;
    /// all are to be reached. To have a thing off, name it as the only route.
    ///
    /// # Panics
    /// If a number is not that of a thing.
    pub fn target(&mut self, routes: Condition) {
        routes.iter().flatten().for_each(|&t| self.must_exist(t));
        self.targets.push(routes);
    }

    fn must_exist(&self, thing: ThingId) {
        let n = self.cost.len();
        assert!((thing as usize) < n, "thing {thing} of {n}");
    }

    /// The cheapest way in. Among equally cheap ones it gives the same one
    /// every time.
    pub fn cheapest(&self, effort: Effort) -> Outcome {
        let shape = self.shape();
        let reduced = match self.reduce(&shape) {
            Ok(reduced) => reduced,
            Err(blocked) => return Outcome::Blocked(blocked),
        };
        let mut budget = Budget::new(effort);
        let mut set = reduced.forced.clone();
        let mut landmarks: Vec<Vec<ThingId>> = set.iter().map(|&t| vec![t]).collect();
        let mut bound: u128 = set.iter().map(|&t| u128::from(self.cost[t as usize])).sum();
        for piece in &reduced.pieces {
            let mut search = Search::new(&piece.shape, &piece.always, Goal::Cheapest);
            search.run(&mut budget);
            bound += search.bound();
            let rows = explain::few(&search);
            set.extend(piece.whole(search.best()));
            landmarks.extend(rows.iter().map(|row| piece.whole(row)));
        }
        for row in &mut landmarks {
            row.sort_unstable();
        }
        landmarks.sort_by(|x, y| x.len().cmp(&y.len()).then_with(|| x.cmp(y)));
        let cost: u128 = set.iter().map(|&t| u128::from(self.cost[t as usize])).sum();
        let fits = |x: u128| u64::try_from(x).unwrap_or(u64::MAX);
        Outcome::Reached(Reached {
            order: self.in_order(&shape, &set),
            cost: fits(cost),
            proof: if bound >= cost {
                Optimum::Proved
            } else {
                Optimum::AtLeast(fits(bound))
            },
            landmarks,
        })
    }

    /// The cheapest ways in, if there is one, at most `most` of them: those sets
    /// of which nothing can be left out.
    pub fn ties(&self, most: usize, effort: Effort) -> Ties {
        let mut out = Ties {
            sets: Vec::new(),
            all: true,
        };
        let shape = self.shape();
        let Ok(reduced) = self.reduce(&shape) else {
            return out;
        };
        let mut budget = Budget::new(effort);
        out.sets.push(reduced.forced.clone());
        for piece in &reduced.pieces {
            let mut first = Search::new(&piece.shape, &piece.always, Goal::Cheapest);
            first.run(&mut budget);
            let mut search = first.for_all(most);
            let proved = search.bound() >= search.best_cost();
            if proved {
                search.run(&mut budget);
            }
            out.all &= proved && search.complete();
            let found: Vec<_> = search.found().iter().map(|s| piece.whole(s)).collect();
            let product = found.iter().flat_map(|more| {
                let with = |set: &Vec<ThingId>| [set.as_slice(), more].concat();
                out.sets.iter().map(with)
            });
            let product: Vec<_> = product.take(most + 1).collect();
            out.all &= product.len() <= most;
            out.sets = product;
            out.sets.truncate(most);
        }
        out.sets.iter_mut().for_each(|set| set.sort_unstable());
        out.sets.sort();
        out
    }

    fn shape(&self) -> Shape {
        let mut conditions = self.conditions.clone();
        for &t in &self.gone {
            conditions[t as usize].clear();
        }
        conditions.push(self.targets.clone());
        Shape::new(&self.cost, &conditions)
    }

    fn reduce(&self, shape: &Shape) -> Result<Reduced, Blocked> {
        let reachable = peel::all_that_come_off(shape, |_| true);
        if !reachable.has(shape.goal()) {
            return Err(blocked::explain(shape));
        }
        Ok(cut::reduce(self, &reachable))
    }

    fn in_order(&self, shape: &Shape, set: &[ThingId]) -> Vec<ThingId> {
        let mut wanted = Bits::new(self.things());
        set.iter().for_each(|&t| {
            wanted.add(t);
        });
        let mut peel = peel::Peel::new(shape);
        for &t in &self.gone {
            peel.allow(t);
        }
        let mirrored = |t: ThingId| self.things() as u32 - 1 - t;
        let mut queue = LargestFirst::new(self.things());
        let mut out = Vec::with_capacity(set.len());
        loop {
            for t in wanted.iter().filter(|&t| peel.is_free(t)) {
                queue.add(mirrored(t));
            }
            let Some(t) = queue.take().map(mirrored) else {
                return out;
            };
            wanted.remove(t);
            peel.allow(t);
            out.push(t);
        }
    }
}
