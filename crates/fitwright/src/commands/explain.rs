//! `why`: the chain of reasons between two steps.

use crate::cli::Why;
use crate::outcome::Outcome;
use crate::{input, pick};
use check::Bench;
use sheet::{Look, why};

/// Does it.
pub fn run(arguments: &Why, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let Some(asked) = input::one(&arguments.plan, arguments.named.as_deref(), &mut outcome) else {
        return outcome;
    };
    let bench = Bench::of(&asked.plan);
    let order = bench.order();
    let picked = [&arguments.one, &arguments.other].map(|said| pick::step(&asked, order, said));
    let (one, other) = match picked {
        [Ok(one), Ok(other)] => (one, other),
        [one, other] => {
            for why in [one, other].into_iter().filter_map(Result::err) {
                outcome.fail(why);
            }
            return outcome;
        }
    };
    if one == other {
        outcome.fail("both are the same step");
        return outcome;
    }
    let page = [(one, other), (other, one)]
        .into_iter()
        .find_map(|(before, after)| {
            let links = bench.why(before, after)?;
            Some(why::chain(&asked.plan, order, before, after, &links, look))
        });
    outcome.data(&page.unwrap_or_else(|| why::free(&asked.plan, order, one, other, look)));
    outcome
}
