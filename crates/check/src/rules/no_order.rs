//! Conditions that no order satisfies.

use crate::bench::Bench;
use crate::finding::{Because, Finding, Severity};
use crate::problem::Source;
use crate::rules::Rule;
use crate::say;
use crate::solve::Tangle;
use crate::words;
use plan::model::{Place, StepId};
use syntax::tree::Verb;

/// The rule.
pub const RULE: Rule = Rule {
    name: "no-order",
    severity: Severity::Error,
    statement: "Some conditions contradict each other, so that no order of the steps can satisfy them all.",
    reason: "However the steps are moved about, one of them always waits for another that waits for it: something in the map or in the conditions is not as it is on the machine.",
    bad: r#"part left-half
part right-half
fit left-half after right-half is fitted
fit right-half after left-half is fitted
"#,
    good: r#"part left-half
part right-half
fit left-half, right-half together
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    for tangle in &bench.solved.tangles {
        found.push(finding(bench, tangle));
    }
}

fn finding(bench: &Bench, tangle: &Tangle) -> Finding {
    let plan = bench.plan;
    let mut because: Vec<Because> = Vec::new();
    let mut steps: Vec<StepId> = Vec::new();
    for source in &tangle.sources {
        let (step, says, place) = link(bench, source);
        if !steps.contains(&step) {
            steps.push(step);
        }
        for (place, says) in [(words::step_place(plan, step), says.clone()), (place, says)] {
            if !because.iter().any(|b| b.place == place) {
                because.push(Because { place, says });
            }
        }
    }
    let says = if tangle.circle.is_empty() {
        let reasons: Vec<String> = tangle
            .sources
            .iter()
            .take(4)
            .map(|s| link(bench, s).1)
            .collect();
        format!(
            "No order works, whichever way in is taken: {}.",
            reasons.join("; ")
        )
    } else {
        let links: Vec<String> = tangle
            .circle
            .iter()
            .take(5)
            .map(|(before, source, after)| {
                format!(
                    "“{}” has to come after “{}” ({})",
                    words::step(plan, StepId(*after)),
                    words::step(plan, StepId(*before)),
                    link(bench, source).1
                )
            })
            .collect();
        format!("No order works: {}.", links.join("; "))
    };
    let first = steps.first().copied().unwrap_or(StepId(0));
    let place = words::step_place(plan, first);
    because.retain(|b| b.place != place);
    Finding {
        because,
        steps,
        ..Finding::new(&RULE, place, words::step(plan, first), says)
    }
    .advice(way_out(bench, tangle))
}

/// A step that does several things may have to stand on both sides of another; else some line is
/// wrong.
fn way_out(bench: &Bench, tangle: &Tangle) -> String {
    let plan = bench.plan;
    let several = tangle
        .circle
        .iter()
        .map(|(_, _, after)| StepId(*after))
        .find(|s| plan.step(*s).targets.len() > 1 && !plan.step(*s).together);
    let fits: Vec<StepId> = tangle
        .circle
        .iter()
        .map(|(_, _, after)| StepId(*after))
        .filter(|s| plan.step(*s).verb == Verb::Fit && plan.step(*s).targets.len() == 1)
        .collect();
    if let ([a, b], 2) = (fits.as_slice(), tangle.circle.len()) {
        let name = |s: &StepId| plan.thing(plan.step(*s).targets[0].thing).name.clone();
        return format!(
            "If the two only go on at once, write one step: “fit {}, {} together”. Else one of \
             these lines does not say what is so on the machine.",
            name(a),
            name(b)
        );
    }
    match several {
        Some(step) => format!(
            "“{}” does several things in one step: write them as steps of their own, so that each \
             can have its turn. Or one of these lines does not say what is so on the machine.",
            words::step(plan, step)
        ),
        None => "One of these lines does not say what is so on the machine: find it and change it."
            .to_string(),
    }
}

/// The step that waits, why, and the line that says so.
fn link(bench: &Bench, source: &Source) -> (StepId, String, Place) {
    let (says, place) = say::reason(bench, source);
    let step = match source {
        Source::Demand(d, _) => bench.demands[*d as usize].step,
        Source::Link { chain, second, .. } => bench.lives.chain(*chain).acts[*second as usize].step,
    };
    (StepId(step), says, place)
}
