//! A lower bound on the cost of meeting sets: Lagrangian relaxation.
//!
//! Give each set a weight u ≥ 0. Whatever meets all sets costs at least
//! Σ u + Σ over things of min(0, cost − the weights of the sets that hold it):
//! take the cost of a solution, and take off u (times met − 1) ≥ 0 for each set.
//! Good weights are looked for by steps along the subgradient (M. Held,
//! P. Wolfe and H. Crowder, Mathematical Programming 6, 1974). That runs in
//! floating point, for any weights give a bound; the bound itself is then
//! summed up in whole parts of 1/1024, so that it is no rounding that proves.

/// Whole parts of a unit of cost in which bounds are summed up.
const PARTS: i128 = 1024;

/// What a bound is asked for: some sets, each with the things that are still
/// open in it.
pub(crate) struct Question<'a> {
    /// By thing.
    pub cost: &'a [u64],
    /// The things that are open.
    pub open: &'a [u32],
    /// The sets to be met, by number in `weight`, with their open things.
    pub rows: &'a [(u32, Vec<u32>)],
    /// A cost for which a solution is known, to judge the steps by.
    pub known: f64,
}

/// A bound and what it leaves of each cost.
pub(crate) struct Bound {
    parts: i128,
    /// By thing: cost less weights, in parts.
    pub rest: Vec<i128>,
}

impl Bound {
    /// No solution costs less.
    pub fn least(&self) -> i128 {
        up(self.parts)
    }

    /// No solution with this open thing costs less.
    pub fn with(&self, thing: u32) -> i128 {
        up(self.parts + self.rest[thing as usize].max(0))
    }

    /// No solution without this open thing costs less.
    pub fn without(&self, thing: u32) -> i128 {
        up(self.parts - self.rest[thing as usize].min(0))
    }
}

/// Costs are whole, so a bound counts as the next whole number.
fn up(parts: i128) -> i128 {
    (parts + PARTS - 1).div_euclid(PARTS)
}

/// Improves the weights in so many steps, then sums up.
pub(crate) fn bound(question: &Question, weight: &mut [f64], steps: usize) -> Bound {
    let Question {
        cost, open, rows, ..
    } = *question;
    let mut rest: Vec<f64> = cost.iter().map(|&c| c as f64).collect();
    let mut now: Vec<f64> = rows.iter().map(|r| weight[r.0 as usize]).collect();
    let mut best = now.clone();
    let mut best_value = f64::NEG_INFINITY;
    let (mut pace, mut idle) = (1.0, 0);
    for _ in 0..steps {
        open.iter()
            .for_each(|&t| rest[t as usize] = cost[t as usize] as f64);
        let mut value = 0.0;
        for ((_, row), u) in rows.iter().zip(&now) {
            value += u;
            row.iter().for_each(|&t| rest[t as usize] -= u);
        }
        value += open.iter().map(|&t| rest[t as usize].min(0.0)).sum::<f64>();
        if value > best_value + 1e-6 {
            best_value = value;
            best.copy_from_slice(&now);
            idle = 0;
        } else {
            idle += 1;
            if idle == 4 {
                (pace, idle) = (pace / 2.0, 0);
            }
        }
        let slope: Vec<f64> = rows
            .iter()
            .map(|(_, row)| 1.0 - row.iter().filter(|&&t| rest[t as usize] < 0.0).count() as f64)
            .collect();
        let moved = slope
            .iter()
            .zip(&now)
            .filter(|(g, u)| **g > 0.0 || **u > 0.0);
        let length: f64 = moved.map(|(g, _)| g * g).sum();
        if length < 0.5 {
            break;
        }
        let step = pace * (question.known * 1.02 - value).max(0.01) / length;
        for (u, g) in now.iter_mut().zip(&slope) {
            *u = (*u + step * g).max(0.0);
        }
    }
    let mut parts = 0;
    let mut rest: Vec<i128> = cost.iter().map(|&c| i128::from(c) * PARTS).collect();
    for ((number, row), u) in rows.iter().zip(&best) {
        weight[*number as usize] = *u;
        let u = (u * PARTS as f64) as i128;
        parts += u;
        row.iter().for_each(|&t| rest[t as usize] -= u);
    }
    parts += open.iter().map(|&t| rest[t as usize].min(0)).sum::<i128>();
    Bound { parts, rest }
}
