//! A lower bound from assigning to every step the one behind it.
//!
//! In any order each step but the last has one step behind it, and each but the
//! first one before it. The cheapest such assignment, circles allowed, costs no
//! more than any order. Its dual gives a number to each step as the one before
//! and another as the one behind, no two of which come to more than the cost
//! between them; so the numbers of what is still to be put in order bound what
//! it must cost, and can be summed up step by step. By shortest augmenting paths
//! (H. Kuhn, Naval Research Logistics Quarterly 2, 1955; N. Tomizawa, Networks
//! 1, 1971), O(n³).

use super::costs::Costs;
use crate::graph::Closure;
use crate::instance::Instance;

/// More than any sum of costs that a machine can hold.
const NEVER: i128 = 1 << 100;

/// Steps at most for which it is worked out; above it all numbers are 0.
const MOST_STEPS: usize = 600;

/// The numbers; the place behind the last step stands for the start among
/// `before` and for the end among `behind`.
pub(crate) struct Dual {
    pub before: Vec<i128>,
    pub behind: Vec<i128>,
}

impl Dual {
    pub fn new(inst: &Instance, costs: &Costs) -> Self {
        let n = inst.steps();
        let closure = match Closure::new(inst) {
            Some(closure) if n <= MOST_STEPS => closure,
            _ => {
                return Self {
                    before: vec![0; n + 1],
                    behind: vec![0; n + 1],
                };
            }
        };
        let mut cost = vec![NEVER; (n + 1) * (n + 1)];
        for a in 0..n as u32 {
            for b in 0..n as u32 {
                let between = || closure.behind(a).any(|k| closure.before(k, b));
                if a != b && !closure.before(b, a) && !(closure.before(a, b) && between()) {
                    cost[a as usize * (n + 1) + b as usize] = i128::from(costs.cost(a, b));
                }
            }
            if inst.succ.row(a).is_empty() {
                cost[a as usize * (n + 1) + n] = 0;
            }
            if inst.pred.row(a).is_empty() {
                cost[n * (n + 1) + a as usize] = 0;
            }
        }
        assign(&cost, n + 1)
    }
}

fn assign(cost: &[i128], n: usize) -> Dual {
    // Row and column 0 stand for none; so everything is counted from 1 here.
    let (mut u, mut v) = (vec![0i128; n + 1], vec![0i128; n + 1]);
    let mut row_of = vec![0usize; n + 1];
    for row in 1..=n {
        row_of[0] = row;
        let mut least = vec![i128::MAX; n + 1];
        let mut from = vec![0usize; n + 1];
        let mut used = vec![false; n + 1];
        let mut column = 0;
        while row_of[column] != 0 {
            used[column] = true;
            let row = row_of[column];
            let (mut step, mut next) = (i128::MAX, 0);
            for c in (1..=n).filter(|&c| !used[c]) {
                let value = cost[(row - 1) * n + c - 1] - u[row] - v[c];
                if value < least[c] {
                    (least[c], from[c]) = (value, column);
                }
                if least[c] < step {
                    (step, next) = (least[c], c);
                }
            }
            for c in 0..=n {
                if used[c] {
                    u[row_of[c]] += step;
                    v[c] -= step;
                } else if c > 0 {
                    least[c] -= step;
                }
            }
            column = next;
        }
        while column != 0 {
            row_of[column] = row_of[from[column]];
            column = from[column];
        }
    }
    Dual {
        before: u.split_off(1),
        behind: v.split_off(1),
    }
}
