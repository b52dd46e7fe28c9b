//! `windows`: the reach chart.

use super::each_titled;
use crate::cli::Plans;
use crate::input;
use crate::outcome::Outcome;
use sheet::{Look, chart};

/// Does it.
pub fn run(plans: &Plans, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let plans = input::plans(plans, &mut outcome);
    each_titled(&plans, &mut outcome, |bench| {
        chart::chart(bench.plan, bench.order(), &bench.windows(), look)
    });
    outcome
}
