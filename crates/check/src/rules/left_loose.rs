//! Started or snug and never tightened.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::asks::condition_ways;
use crate::chain::{presence, tightness};
use crate::demand::What;
use crate::mend;
use crate::words;
use plan::model::{Sort, StepId, ThingId};
use syntax::tree::Verb;

/// The rule.
pub const RULE: Rule = Rule {
    name: "left-loose",
    severity: Severity::Error,
    statement: "Fasteners were started, snugged or slackened, and no later step tightens them.",
    reason: "They look done, and work loose: this is how adjuster nuts end in the sump and wheels overtake their cars.",
    bad: r#"part cover
fasteners cover-screws
  6 x M5
  hold cover
  torque none
fit cover
start cover-screws
"#,
    good: r#"part cover
fasteners cover-screws
  6 x M5
  hold cover
  torque none
fit cover
start cover-screws
tighten cover-screws
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    if bench.only_strips() {
        return;
    }
    let plan = bench.plan;
    for (id, thing) in plan.things() {
        if thing.sort != Sort::Fasteners || bench.in_doubt(id) || thing.temporary.is_some() {
            continue;
        }
        // An adjusting screw that holds nothing and has no torque is set, not tightened.
        let adjuster = thing.fasteners().is_some_and(|f| {
            f.hold.is_empty() && f.torque.as_ref().is_some_and(|t| t.value.is_none())
        });
        if adjuster {
            continue;
        }
        let chain = bench.lives.chain(bench.lives.main(id));
        let Some(last) = chain.acts.last() else { continue };
        let loose = (tightness::STARTED..tightness::TIGHT).contains(&last.value);
        let only_tried = last.trial && last.value == tightness::TIGHT;
        if !loose && !only_tried {
            continue;
        }
        let step = StepId(last.step);
        let left = match (last.value, plan.step(step).verb) {
            (tightness::TIGHT, _) => "tightened here on trial, and never for good: no later step tightens them",
            (_, Verb::Slacken) => "slackened here and never tightened again",
            (tightness::SNUG, _) => "only snug from here on: no later step tightens them",
            _ => "only started from here on: no later step tightens them",
        };
        let one = words::is_or_are(plan, id) == "is";
        let left = if one { left.replace(" them", " it") } else { left.to_string() };
        let says = format!("{} {} {left}.", thing.called(), words::is_or_are(plan, id));
        let mut finding = Finding::new(&RULE, words::step_place(plan, step), thing.name.as_str(), words::capital(&says))
            .because(thing.place, "declared here");
        finding.steps = vec![step];
        let line = format!("tighten {}", thing.name);
        match settled(bench, id, step) {
            Some(behind) => {
                let title = format!("Write “{line}” behind “{}”.", words::step(plan, behind));
                finding.mend = mend::step_behind(bench, behind, &line, title);
            }
            None => finding.advice = Some(format!("Write “{line}” where it is to be final.")),
        }
        for d in bench.missed_for(id) {
            let needing = StepId(bench.demands[d as usize].step);
            finding = finding.because(words::step_place(plan, needing), "it counts on it");
        }
        found.push(finding);
    }
}

/// The step behind which the group may be tightened: its own last one, the last that fits what
/// it holds, or the one that ends the time for which it must float. What was slackened on purpose
/// and holds nothing new has no such step: only the writer knows what it was slackened for.
fn settled(bench: &Bench, id: ThingId, step: StepId) -> Option<StepId> {
    let f = bench.plan.thing(id).fasteners()?;
    let fitted = f.hold.iter().filter_map(|h| {
        let acts = &bench.lives.chain(bench.lives.main(h.thing)).acts;
        let last = acts.iter().rev().find(|a| a.value == presence::ON)?;
        (last.step > step.0).then_some(last.step)
    });
    let fitted: Vec<u32> = fitted.collect();
    let made = f
        .floats_until
        .iter()
        .flat_map(|c| condition_ways(bench.plan, &bench.lives, &bench.index, c))
        .flatten()
        .filter_map(|atom| match atom.what {
            What::Done(step, true) => Some(step),
            What::Chain(chain, test) => {
                let acts = &bench.lives.chain(chain).acts;
                acts.iter().find(|a| test.passes(a.value)).map(|a| a.step)
            }
            _ => None,
        });
    let made: Vec<u32> = made.chain(fitted).collect();
    if made.is_empty() && bench.plan.step(step).verb == Verb::Slacken {
        return None;
    }
    made.into_iter()
        .map(StepId)
        .chain(std::iter::once(step))
        .max_by_key(|s| bench.solved.at[s.0 as usize])
}
