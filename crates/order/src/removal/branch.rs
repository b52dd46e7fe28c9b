//! The search: which things to take, so that every landmark is met, new
//! landmarks being made when a set meets all that are known and still does not
//! reach the targets.

use super::bound::{Bound, Question, bound};
use super::peel::{Peel, thin};
use super::shape::Shape;
use crate::effort::Budget;

/// What is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Goal {
    /// One cheapest set.
    Cheapest,
    /// Any set that costs less than this.
    Below(i128),
    /// Up to so many sets that cost as much as this, the least cost.
    All(i128, usize),
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum State {
    Open,
    In,
    Out,
}

/// Where the search may still go: without the thing, from so long a trail.
struct Turn {
    thing: u32,
    trail: usize,
    bound: i128,
}

enum Node {
    /// Nothing (more) is to be found here.
    Closed,
    /// To be split by this thing.
    Split(u32, i128),
    /// The bound on effort was met, or enough was found.
    Stopped(i128),
}

/// A search for sets that meet the landmarks.
pub(crate) struct Search<'a> {
    /// None if the landmarks given are all there is.
    shape: Option<(&'a Shape, &'a [u32])>,
    /// Costs in multiples of `unit`, so that bounds can be rounded up to it.
    cost: Vec<u64>,
    unit: u64,
    goal: Goal,
    rows: Vec<Vec<u32>>,
    weight: Vec<f64>,
    rows_of: Vec<Vec<u32>>,
    entries: usize,
    state: Vec<State>,
    met: Vec<u32>,
    open: Vec<u32>,
    paid: i128,
    trail: Vec<u32>,
    best: Vec<u32>,
    best_cost: i128,
    found: Vec<Vec<u32>>,
    lower: i128,
    complete: bool,
}

/// Landmarks made at a time from one set.
const AT_A_TIME: usize = 16;

impl<'a> Search<'a> {
    /// Sets that reach the goal of this shape, with these things at hand anyway.
    pub fn new(shape: &'a Shape, always: &'a [u32], goal: Goal) -> Self {
        let mut out = Self::empty(&shape.cost, goal);
        out.shape = Some((shape, always));
        out
    }

    /// Sets that meet these landmarks.
    pub fn over(cost: &[u64], rows: impl Iterator<Item = Vec<u32>>, goal: Goal) -> Self {
        let mut out = Self::empty(cost, goal);
        rows.for_each(|row| out.add_row(row, 0.0));
        out
    }

    fn empty(cost: &[u64], goal: Goal) -> Self {
        let unit = cost.iter().copied().fold(0, gcd).max(1);
        let goal = match goal {
            Goal::Below(limit) => Goal::Below(
                limit.div_euclid(i128::from(unit))
                    + i128::from(limit.rem_euclid(i128::from(unit)) > 0),
            ),
            other => other,
        };
        Self {
            shape: None,
            cost: cost.iter().map(|c| c / unit).collect(),
            unit,
            goal,
            rows: Vec::new(),
            weight: Vec::new(),
            rows_of: vec![Vec::new(); cost.len()],
            entries: 0,
            state: vec![State::Open; cost.len()],
            met: Vec::new(),
            open: Vec::new(),
            paid: 0,
            trail: Vec::new(),
            best: Vec::new(),
            best_cost: i128::MAX,
            found: Vec::new(),
            lower: 0,
            complete: false,
        }
    }

    /// The same question, asking for all sets; what has been learnt is kept.
    pub fn for_all(mut self, most: usize) -> Self {
        self.undo(0);
        self.goal = Goal::All(self.best_cost, most);
        self
    }

    /// The cheapest set found.
    pub fn best(&self) -> &[u32] {
        &self.best
    }

    /// What it costs.
    pub fn best_cost(&self) -> u128 {
        self.best_cost.max(0) as u128 * u128::from(self.unit)
    }

    /// No set costs less.
    pub fn bound(&self) -> u128 {
        self.lower.max(0) as u128 * u128::from(self.unit)
    }

    /// Whether the search came to its end.
    pub fn complete(&self) -> bool {
        self.complete
    }

    /// The sets asked for.
    pub fn found(&self) -> &[Vec<u32>] {
        &self.found
    }

    /// The landmarks made.
    pub fn rows(&self) -> &[Vec<u32>] {
        &self.rows
    }

    /// By landmark, the weight it has in the bound.
    pub fn weights(&self) -> &[f64] {
        &self.weight
    }

    /// Costs as they were given.
    pub fn costs(&self) -> impl Iterator<Item = u64> + '_ {
        self.cost.iter().map(|c| c * self.unit)
    }

    fn limit(&self) -> i128 {
        match self.goal {
            Goal::Cheapest => self.best_cost,
            Goal::Below(limit) => limit.min(self.best_cost),
            Goal::All(cost, _) => cost + 1,
        }
    }

    /// Searches until all is known or the budget is spent.
    pub fn run(&mut self, budget: &mut Budget) {
        if self.goal == Goal::Cheapest {
            self.ascend();
        }
        self.complete = true;
        let mut turns: Vec<Turn> = Vec::new();
        let mut from = 0;
        self.lower = loop {
            match self.node(from, turns.is_empty(), budget) {
                Node::Split(thing, bound) => {
                    turns.push(Turn {
                        thing,
                        trail: self.trail.len(),
                        bound,
                    });
                    from = bound;
                    self.take(thing);
                }
                Node::Closed => {
                    let Some(turn) = turns.pop() else {
                        break self.limit();
                    };
                    self.undo(turn.trail);
                    from = turn.bound;
                    self.leave(turn.thing);
                }
                Node::Stopped(bound) => {
                    self.complete = false;
                    let open = turns.iter().map(|turn| turn.bound);
                    break open.fold(bound, i128::min).min(self.limit());
                }
            }
        };
        if let Goal::All(cost, _) = self.goal {
            self.lower = cost;
        }
    }

    /// A first bound and solution: landmarks from what is still unpaid, each
    /// paid for by its cheapest thing, until what is paid for in full reaches
    /// the goal. (The dual of meeting sets, ascended greedily.)
    fn ascend(&mut self) {
        let Some((shape, always)) = self.shape else {
            return;
        };
        let mut unpaid = self.cost.clone();
        let mut peel = Peel::new(shape);
        always.iter().for_each(|&t| peel.allow(t));
        let mut order: Vec<u32> = (0..shape.goal()).collect();
        loop {
            for t in 0..shape.goal() {
                if unpaid[t as usize] == 0 {
                    peel.allow(t);
                }
            }
            if peel.reached() {
                break;
            }
            order.sort_by_key(|&t| (unpaid[t as usize], t));
            let row = peel.missed(order.iter().copied());
            let least = row.iter().map(|&t| unpaid[t as usize]).min().unwrap_or(0);
            row.iter().for_each(|&t| unpaid[t as usize] -= least);
            if row.is_empty() {
                break;
            }
            self.add_row(row, least as f64);
        }
        let taken: Vec<_> = peel.taken().to_vec();
        let set: Vec<_> = taken.into_iter().filter(|&t| t != shape.goal()).collect();
        self.offer(&set);
    }

    fn node(&mut self, from: i128, root: bool, budget: &mut Budget) -> Node {
        let mut least = from.max(self.paid);
        let mut rounds = if root { 100 } else { 2 };
        let mut first = root;
        loop {
            if !budget.spend(self.cost.len() / 4 + self.entries / 16) || self.enough() {
                return Node::Stopped(least);
            }
            if !self.follow() {
                return Node::Closed;
            }
            let rows = self.unmet();
            if rows.is_empty() {
                let chosen = self.chosen(&[]);
                let missed = self.missed(&chosen, None);
                if missed.is_empty() {
                    self.offer(&chosen);
                    return Node::Closed;
                }
                missed.into_iter().for_each(|row| self.add_row(row, 0.0));
                continue;
            }
            let open = self.open_things();
            let question = Question {
                cost: &self.cost,
                open: &open,
                rows: &rows,
                known: (self.limit().min(self.total()) - self.paid) as f64,
            };
            let steps = if first { 300 } else { 20 };
            first = false;
            let bound = bound(&question, &mut self.weight, steps);
            least = least.max(self.paid + bound.least());
            if least >= self.limit() {
                return Node::Closed;
            }
            if self.fix(&open, &bound) {
                continue;
            }
            let cover = self.cover(&open, &rows, &bound);
            if rounds > 0 {
                rounds -= 1;
                let chosen = self.chosen(&cover);
                let missed = self.missed(&chosen, Some(&bound));
                if !missed.is_empty() {
                    for row in missed {
                        self.add_row(row, 0.0);
                    }
                    continue;
                }
                if !matches!(self.goal, Goal::All(..)) {
                    self.offer(&chosen);
                    if least >= self.limit() {
                        return Node::Closed;
                    }
                }
            }
            let rest = |t: &u32| (bound.rest[*t as usize], *t);
            return match cover.iter().copied().min_by_key(rest) {
                Some(thing) => Node::Split(thing, least),
                None => Node::Closed,
            };
        }
    }

    fn enough(&self) -> bool {
        match self.goal {
            Goal::Cheapest => false,
            Goal::Below(limit) => self.best_cost < limit,
            Goal::All(_, most) => self.found.len() > most,
        }
    }

    /// Takes what is alone in a landmark; false if one can no longer be met or
    /// too much is paid.
    fn follow(&mut self) -> bool {
        loop {
            let mut alone = None;
            for row in 0..self.rows.len() {
                if self.met[row] == 0 {
                    match self.open[row] {
                        0 => return false,
                        1 => {
                            alone = Some(row);
                            break;
                        }
                        _ => (),
                    }
                }
            }
            let Some(row) = alone else {
                return self.paid < self.limit();
            };
            let is_open = |t: &&u32| self.state[**t as usize] == State::Open;
            if let Some(&t) = self.rows[row].iter().find(is_open) {
                self.take(t);
            }
        }
    }

    /// Decides what the bound decides; true if that was anything.
    fn fix(&mut self, open: &[u32], bound: &Bound) -> bool {
        let room = self.limit() - self.paid;
        let mut any = false;
        for &t in open {
            if bound.with(t) >= room {
                self.leave(t);
                any = true;
            } else if bound.without(t) >= room {
                self.take(t);
                any = true;
            }
        }
        any
    }

    /// A cheap set of open things that meets the rows, by what the bound leaves
    /// of their costs; nothing in it can be left out.
    fn cover(&self, open: &[u32], rows: &[(u32, Vec<u32>)], bound: &Bound) -> Vec<u32> {
        let mut meets = vec![0u32; self.cost.len()];
        let mut times = vec![u32::MAX; self.rows.len()];
        for (number, row) in rows {
            times[*number as usize] = 0;
            row.iter().for_each(|&t| meets[t as usize] += 1);
        }
        let (mut left, mut out) = (rows.len(), Vec::new());
        while left > 0 {
            let value = |t: u32| {
                let (rest, meets) = (bound.rest[t as usize] as f64, f64::from(meets[t as usize]));
                if rest > 0.0 {
                    rest / meets
                } else {
                    rest * meets
                }
            };
            let useful = open.iter().copied().filter(|&t| meets[t as usize] > 0);
            let Some(t) = useful.min_by(|&x, &y| value(x).total_cmp(&value(y))) else {
                break;
            };
            out.push(t);
            for &row in &self.rows_of[t as usize] {
                if times[row as usize] == u32::MAX {
                    continue;
                }
                times[row as usize] += 1;
                if times[row as usize] == 1 {
                    left -= 1;
                    self.rows[row as usize].iter().for_each(|&x| {
                        // Things that are decided may run below nought unseen.
                        meets[x as usize] = meets[x as usize].saturating_sub(1);
                    });
                }
            }
        }
        out.sort_by_key(|&t| std::cmp::Reverse((self.cost[t as usize], t)));
        out.retain(|&t| {
            let own = &self.rows_of[t as usize];
            let spare = own.iter().all(|&r| times[r as usize] > 1);
            if spare {
                for &r in own {
                    let times = &mut times[r as usize];
                    *times -= u32::from(*times != u32::MAX);
                }
            }
            !spare
        });
        out
    }

    /// Landmarks that a set misses; none if it reaches the goal.
    fn missed(&self, chosen: &[u32], bound: Option<&Bound>) -> Vec<Vec<u32>> {
        let Some((shape, always)) = self.shape else {
            return Vec::new();
        };
        let mut peel = Peel::new(shape);
        always.iter().chain(chosen).for_each(|&t| peel.allow(t));
        // What stays out of the landmark is what is allowed first: things of
        // which the bound leaves little; last what is left off here anyway.
        let mut order: Vec<u32> = (0..shape.goal()).collect();
        order.sort_by_key(|&t| {
            let rest = bound.map_or(i128::from(self.cost[t as usize]), |b| b.rest[t as usize]);
            (self.state[t as usize] == State::Out, rest, t)
        });
        let mut out = Vec::new();
        while !peel.reached() && out.len() < AT_A_TIME {
            let row = peel.missed(order.iter().copied());
            row.iter().for_each(|&t| peel.allow(t));
            out.push(row);
        }
        out
    }

    /// Takes note of a set that does what is asked.
    fn offer(&mut self, set: &[u32]) {
        let mut set = match self.shape {
            Some((shape, always)) => thin(shape, set, always),
            None => set.to_vec(),
        };
        set.sort_unstable();
        let cost = set.iter().map(|&t| i128::from(self.cost[t as usize])).sum();
        match self.goal {
            // What comes here in that case is all that was taken; if something
            // in it can be left out, the search comes to the rest without it.
            Goal::All(least, _) => {
                let taken = self
                    .trail
                    .iter()
                    .filter(|&&t| self.state[t as usize] == State::In);
                if cost == least && taken.count() == set.len() {
                    self.found.push(set);
                }
            }
            _ if cost < self.best_cost => (self.best, self.best_cost) = (set, cost),
            _ => (),
        }
    }

    fn unmet(&self) -> Vec<(u32, Vec<u32>)> {
        let unmet = (0..self.rows.len()).filter(|&row| self.met[row] == 0);
        let open = |t: &&u32| self.state[**t as usize] == State::Open;
        let row = |row: usize| self.rows[row].iter().filter(open).copied().collect();
        unmet.map(|r| (r as u32, row(r))).collect()
    }

    fn open_things(&self) -> Vec<u32> {
        let things = 0..self.cost.len() as u32;
        things
            .filter(|&t| self.state[t as usize] == State::Open)
            .collect()
    }

    fn chosen(&self, more: &[u32]) -> Vec<u32> {
        let taken = self.trail.iter().copied();
        let mut out: Vec<u32> = taken
            .filter(|&t| self.state[t as usize] == State::In)
            .collect();
        out.extend_from_slice(more);
        out
    }

    fn total(&self) -> i128 {
        self.cost.iter().map(|&c| i128::from(c)).sum()
    }

    fn add_row(&mut self, row: Vec<u32>, weight: f64) {
        let number = self.rows.len() as u32;
        let count = |state: State| {
            row.iter()
                .filter(|&&t| self.state[t as usize] == state)
                .count()
        };
        self.met.push(count(State::In) as u32);
        self.open.push(count(State::Open) as u32);
        self.entries += row.len();
        row.iter()
            .for_each(|&t| self.rows_of[t as usize].push(number));
        self.rows.push(row);
        self.weight.push(weight);
    }

    fn take(&mut self, thing: u32) {
        self.decide(thing, State::In);
        self.paid += i128::from(self.cost[thing as usize]);
    }

    fn leave(&mut self, thing: u32) {
        self.decide(thing, State::Out);
    }

    fn decide(&mut self, thing: u32, state: State) {
        self.state[thing as usize] = state;
        self.trail.push(thing);
        for &row in &self.rows_of[thing as usize] {
            self.open[row as usize] -= 1;
            self.met[row as usize] += u32::from(state == State::In);
        }
    }

    fn undo(&mut self, trail: usize) {
        while self.trail.len() > trail {
            let Some(thing) = self.trail.pop() else {
                return;
            };
            let was = std::mem::replace(&mut self.state[thing as usize], State::Open);
            if was == State::In {
                self.paid -= i128::from(self.cost[thing as usize]);
            }
            for &row in &self.rows_of[thing as usize] {
                self.open[row as usize] += 1;
                self.met[row as usize] -= u32::from(was == State::In);
            }
        }
    }
}

fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { gcd(b, a % b) }
}
