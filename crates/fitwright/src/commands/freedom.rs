//! `freedom`: how many orders work, and how far each step can move.

use super::each_titled;
use crate::cli::Plans;
use crate::input;
use crate::outcome::Outcome;
use sheet::Look;

/// Does it.
pub fn run(plans: &Plans, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let plans = input::plans(plans, &mut outcome);
    each_titled(&plans, &mut outcome, |bench| {
        sheet::freedom::freedom(bench.plan, bench.order(), &bench.freedom(), look)
    });
    outcome
}
