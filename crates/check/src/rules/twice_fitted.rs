//! Fitted while on, or taken off while off.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::chain::{Aspect, presence, tightness};
use crate::say;
use crate::words;
use plan::model::{Sort, StepId};
use syntax::tree::Verb;

/// The rule.
pub const RULE: Rule = Rule {
    name: "twice-fitted",
    severity: Severity::Error,
    statement: "A part is fitted while it is already on, or taken off while it is already off.",
    reason: "One of the two steps is a slip of the pen, or a step between them is missing; at the bench somebody will look for a second part.",
    bad: r#"part cover
fit cover
fit cover
"#,
    good: r#"part cover
fit cover
remove cover
fit cover
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults(bench, &RULE, found);
    let plan = bench.plan;
    for chain in &bench.lives.chains {
        if chain.aspect != Aspect::Main || bench.in_doubt(chain.thing) || bench.heading_in_doubt {
            continue;
        }
        let thing = plan.thing(chain.thing);
        let fasteners = thing.sort == Sort::Fasteners;
        for act in &chain.surplus {
            let step = StepId(act.step);
            let off = act.value == presence::OFF || (fasteners && lowers(plan.step(step).verb));
            let puts_in = matches!(
                plan.step(step).verb,
                Verb::Fit | Verb::Start | Verb::Snug
            );
            if (fasteners && !off && !puts_in) || (off && bench.put_back_missing(chain.thing, act.step)) {
                continue;
            }
            let before = chain
                .acts
                .iter()
                .rev()
                .find(|a| (a.step, a.sub) < (act.step, act.sub));
            let are = words::is_or_are(plan, chain.thing);
            let says = match (off, before) {
                (true, _) if fasteners => {
                    let level = before.map_or(chain.initial, |a| a.value);
                    let it = if are == "is" { "it" } else { "them" };
                    match level {
                        tightness::TIGHT.. if plan.step(step).verb == Verb::Unlock => {
                            format!("{} {are} not locked when this step comes to unlock {it}.", thing.called())
                        }
                        tightness::OUT => format!("{} {are} not in when this step comes to loosen {it}.", thing.called()),
                        _ => format!("{} {are} slack already when this step comes to loosen {it}.", thing.called()),
                    }
                }
                (true, _) => format!("{} is off already when this step comes to take it off.", thing.called()),
                (false, Some(a)) if a.value == presence::DRY => {
                    format!("{} is still on from its dry fit when this step comes to fit it.", thing.called())
                }
                (false, _) if fasteners => format!("{} {are} in and tight already when this step comes to put {} in.", thing.called(), if are == "is" { "it" } else { "them" }),
                (false, _) => format!("{} {are} on already when this step comes to fit {}.", thing.called(), if are == "is" { "it" } else { "them" }),
            };
            let mut finding = Finding::new(&RULE, words::step_place(plan, step), thing.name.as_str(), words::capital(&says));
            finding.steps = vec![step];
            match before {
                Some(a) => {
                    let says = if a.value == 0 { "it came off here" } else { "it went on here" };
                    finding = finding.because(words::step_place(plan, StepId(a.step)), says);
                }
                None if chain.initial > 0 => {
                    let place = thing.given.unwrap_or(thing.place);
                    finding = finding.because(place, "it is there from the start");
                }
                None => finding = finding.because(thing.place, "it is not there at the start"),
            }
            for d in bench.missed_for(chain.thing) {
                let hindered = StepId(bench.demands[d as usize].step);
                finding = finding.because(words::step_place(plan, hindered), "it is still on here");
            }
            let never_there = off && before.is_none() && !plan.heading.assembled;
            let from_the_start = !off && before.is_none();
            let remove = format!("Write “remove {}” before this step, or take this step out.", thing.name);
            found.push(finding.advice(if from_the_start {
                remove.as_str()
            } else if never_there {
                "Leave this step out; or, if the machine is together at the start, say “starts \
                 assembled” under the plan, and if only this is, say “given” on it."
            } else {
                "Take one of the two steps out, or write the step between them that is missing."
            }));
        }
    }
}

fn lowers(verb: Verb) -> bool {
    matches!(verb, Verb::Undo | Verb::Remove | Verb::Slacken | Verb::Unlock)
}
