//! Taking off what can be taken off from among what is allowed.
//!
//! What is free stays free while more comes off, so the largest set that comes
//! off is the same in whichever order it is taken, and every set of it that was
//! taken one after the other is well-founded by itself. Each thing on a route
//! is looked at once: the cost is linear.

use super::ThingId;
use super::shape::Shape;
use crate::bits::Bits;

/// What is allowed and what of it has come off; it can be turned back.
#[derive(Clone)]
pub(crate) struct Peel<'a> {
    shape: &'a Shape,
    allowed: Bits,
    gone: Bits,
    /// Conditions of a thing that do not hold yet.
    conditions_left: Vec<u32>,
    /// Routes of a condition that are clear.
    clear: Vec<u32>,
    /// Things on a route that are not gone yet.
    route_left: Vec<u32>,
    taken: Vec<ThingId>,
    stack: Vec<ThingId>,
}

impl<'a> Peel<'a> {
    /// Nothing is allowed yet but the goal.
    pub fn new(shape: &'a Shape) -> Self {
        let routes = 0..shape.routes();
        let things = shape.conditions.len();
        let mut out = Self {
            shape,
            allowed: Bits::new(things),
            gone: Bits::new(things),
            conditions_left: shape.conditions.clone(),
            clear: vec![0; shape.of_thing.len()],
            route_left: routes.clone().map(|r| shape.needs.row_len(r)).collect(),
            taken: Vec::new(),
            stack: Vec::new(),
        };
        for route in routes {
            if out.route_left[route as usize] == 0 {
                out.cleared(route);
            }
        }
        out.allow(shape.goal());
        out
    }

    /// Whether everything that the thing asks for holds.
    pub fn is_free(&self, thing: ThingId) -> bool {
        self.conditions_left[thing as usize] == 0
    }

    pub fn holds(&self, condition: usize) -> bool {
        self.clear[condition] > 0
    }

    pub fn is_allowed(&self, thing: ThingId) -> bool {
        self.allowed.has(thing)
    }

    pub fn reached(&self) -> bool {
        self.gone.has(self.shape.goal())
    }

    pub fn gone(&self) -> &Bits {
        &self.gone
    }

    /// What has come off, in the order in which it did.
    pub fn taken(&self) -> &[ThingId] {
        &self.taken
    }

    /// Allows a thing and takes off all that this lets come off.
    pub fn allow(&mut self, thing: ThingId) {
        if self.allowed.add(thing) && self.is_free(thing) {
            self.take_off(thing);
        }
    }

    /// Takes a thing for gone, whatever it asks for.
    pub fn take_off(&mut self, thing: ThingId) {
        self.stack.push(thing);
        while let Some(t) = self.stack.pop() {
            if !self.gone.add(t) {
                continue;
            }
            self.taken.push(t);
            let shape = self.shape;
            for &route in shape.named_in.row(t) {
                self.route_left[route as usize] -= 1;
                if self.route_left[route as usize] == 0 {
                    self.cleared(route);
                }
            }
        }
    }

    fn cleared(&mut self, route: u32) {
        let condition = self.shape.of_condition[route as usize] as usize;
        self.clear[condition] += 1;
        if self.clear[condition] > 1 {
            return;
        }
        let thing = self.shape.of_thing[condition];
        self.conditions_left[thing as usize] -= 1;
        if self.conditions_left[thing as usize] == 0 && self.allowed.has(thing) {
            self.stack.push(thing);
        }
    }

    /// Turns back to where so many things had come off; what has been allowed
    /// since must be disallowed too.
    pub fn turn_back(&mut self, taken: usize) {
        while self.taken.len() > taken {
            let Some(t) = self.taken.pop() else { return };
            self.gone.remove(t);
            let shape = self.shape;
            for &route in shape.named_in.row(t) {
                if self.route_left[route as usize] == 0 {
                    let condition = shape.of_condition[route as usize] as usize;
                    self.clear[condition] -= 1;
                    if self.clear[condition] == 0 {
                        self.conditions_left[shape.of_thing[condition] as usize] += 1;
                    }
                }
                self.route_left[route as usize] += 1;
            }
        }
    }

    pub fn disallow(&mut self, thing: ThingId) {
        self.allowed.remove(thing);
    }

    /// A landmark that what is allowed now misses: lets the allowed set grow in
    /// this order as long as the goal stays out of reach. What is left is a
    /// landmark, for no solution lies within the allowed set, and one of which
    /// nothing can be left out, for what is allowed together with any one of
    /// its things reaches the goal. The peel is as before afterwards.
    pub fn missed(&mut self, order: impl Iterator<Item = ThingId>) -> Vec<ThingId> {
        let before = self.taken.len();
        let (mut grown, mut out) = (Vec::new(), Vec::new());
        for t in order {
            if self.is_allowed(t) {
                continue;
            }
            let mark = self.taken.len();
            self.allow(t);
            if self.reached() {
                self.turn_back(mark);
                self.disallow(t);
                out.push(t);
            } else {
                grown.push(t);
            }
        }
        self.turn_back(before);
        grown.iter().for_each(|&t| self.disallow(t));
        out
    }
}

/// The largest set that comes off when only these things are allowed.
pub(crate) fn all_that_come_off(shape: &Shape, allowed: impl Fn(ThingId) -> bool) -> Bits {
    let mut peel = Peel::new(shape);
    (0..shape.goal())
        .filter(|&t| allowed(t))
        .for_each(|t| peel.allow(t));
    peel.gone
}

/// Leaves out of a set that reaches the goal all that is not needed, the
/// dearest first; `keep` is never left out, nor part of what is given back.
pub(crate) fn thin(shape: &Shape, set: &[ThingId], keep: &[ThingId]) -> Vec<ThingId> {
    let mut peel = Peel::new(shape);
    keep.iter().chain(set).for_each(|&t| peel.allow(t));
    // What came off behind the goal cannot have helped to reach it.
    let taken = peel.taken();
    let until = taken.iter().position(|&t| t == shape.goal());
    let mut left = Bits::new(shape.conditions.len());
    keep.iter().for_each(|&t| {
        left.add(t);
    });
    let kept = left.clone();
    for &t in &taken[..until.unwrap_or(taken.len())] {
        left.add(t);
    }
    let mut order: Vec<_> = left.iter().filter(|&t| !kept.has(t)).collect();
    order.sort_by_key(|&t| std::cmp::Reverse((shape.cost[t as usize], t)));
    for t in order {
        left.remove(t);
        if !all_that_come_off(shape, |x| left.has(x)).has(shape.goal()) {
            left.add(t);
        }
    }
    left.iter().filter(|&t| !kept.has(t)).collect()
}
