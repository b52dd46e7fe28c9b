//! A lock that was never made.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::chain::{Aspect, tightness};
use crate::lives::locks_by_step;
use crate::mend;
use crate::words;
use plan::model::{Lock, Sort, StepId, ThingId};
use syntax::tree::Verb;

/// The rule.
pub const RULE: Rule = Rule {
    name: "unlocked",
    severity: Severity::Error,
    statement: "Fasteners that are to be locked are tight at the end, and the lock was never made.",
    reason: "Torque alone does not hold them: the split pin, tab, wire or threadlocker that was left out is what keeps them from turning.",
    bad: r#"part hub
item split-pin
  at hub-nut
  single-use
fasteners hub-nut
  1 x M20x1.5
  hold hub
  torque none
  locked by split-pin
fit hub
tighten hub-nut new split-pin
"#,
    good: r#"part hub
item split-pin
  at hub-nut
  single-use
fasteners hub-nut
  1 x M20x1.5
  hold hub
  torque none
  locked by split-pin
fit hub
tighten hub-nut new split-pin
lock hub-nut
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    for (id, thing) in plan.things() {
        let Some(f) = thing.fasteners() else { continue };
        let Some(step) = left_unlocked(bench, id) else {
            continue;
        };
        let by_step = locks_by_step(plan, id);
        let by: Vec<&str> = f
            .locked_by
            .iter()
            .map(|l| match l {
                Lock::Thing(r) => words::called(plan, r.thing),
                Lock::Words(w) => w.text.as_str(),
            })
            .collect();
        let are = words::is_or_are(plan, id);
        let it = if are == "is" { "it" } else { "them" };
        let says = if by_step {
            format!(
                "{} {are} {} at the end but never locked: no step makes {it} fast with {}.",
                thing.called(),
                if f.thread.is_none() && f.noun.is_some() { "in" } else { "tight" },
                words::list(&by)
            )
        } else {
            format!(
                "{} {are} tight at the end but never locked: no step puts {} on {it}.",
                thing.called(),
                words::list(&by)
            )
        };
        let mut finding = Finding::new(
            &RULE,
            words::step_place(plan, step),
            thing.name.as_str(),
            words::capital(&says),
        );
        let at = f.locked_by.first().map_or(thing.place, |l| match l {
            Lock::Thing(r) => r.place,
            Lock::Words(w) => w.place,
        });
        finding = finding.because(at, "this is to lock it");
        for d in bench.missed_for(id) {
            let step = StepId(bench.demands[d as usize].step);
            finding = finding.because(words::step_place(plan, step), "this step counts on it");
        }
        finding.steps = vec![step];
        finding.mend = if by_step {
            let line = format!("lock {}{}", thing.name, with_new(bench, id));
            let title = format!("Write “{line}” behind “{}”.", words::step(plan, step));
            mend::step_behind(bench, step, &line, title)
        } else {
            f.locked_by.iter().find_map(|l| match l {
                Lock::Thing(r) => {
                    let supply = &plan.thing(r.thing).name;
                    let title = format!("Say “use {supply}” on this step.");
                    Some(mend::say_on_step(bench, step, &format!("use {supply}"), title))
                }
                Lock::Words(_) => None,
            })
        };
        found.push(finding);
    }
}

/// Whether this rule speaks of the group.
pub fn holds(bench: &Bench, id: ThingId) -> bool {
    left_unlocked(bench, id).is_some()
}

/// The step that tightened a group last, if it is to be locked and is not.
fn left_unlocked(bench: &Bench, id: ThingId) -> Option<StepId> {
    let thing = bench.plan.thing(id);
    let f = thing.fasteners()?;
    let chain = bench.lives.chain(bench.lives.main(id));
    let last = chain
        .acts
        .iter()
        .rev()
        .find(|a| a.value == tightness::TIGHT && !a.trial)?;
    let excused = f.locked_by.is_empty()
        || bench.in_doubt(id)
        || chain.last_value() != tightness::TIGHT
        || unlocked_for_good(bench, last.step)
        || (!locks_by_step(bench.plan, id) && supply_used(bench, id));
    (!excused).then_some(StepId(last.step))
}

/// The tight state was reached by `unlock`, and so is on the way to coming off.
fn unlocked_for_good(bench: &Bench, step: u32) -> bool {
    bench.only_strips() && bench.plan.steps[step as usize].verb == Verb::Unlock
}

/// Whether a supply that locks the group was used on it since it was last out.
fn supply_used(bench: &Bench, id: ThingId) -> bool {
    let plan = bench.plan;
    let Some(f) = plan.thing(id).fasteners() else { return false };
    let supplies: Vec<ThingId> = f
        .locked_by
        .iter()
        .filter_map(|l| match l {
            Lock::Thing(r) => Some(r.thing),
            Lock::Words(_) => None,
        })
        .collect();
    let chain = bench.lives.chain(bench.lives.main(id));
    let since = chain
        .acts
        .iter()
        .rev()
        .find(|a| a.value == tightness::OUT)
        .map_or(0, |a| bench.solved.at[a.step as usize]);
    plan.steps().any(|(s, step)| {
        let here = bench.lives.targets[s.0 as usize].iter().any(|t| t.thing == id);
        let used = step.uses.iter().any(|u| supplies.contains(&u.thing))
            || (step.verb == Verb::Apply && step.targets.iter().any(|u| supplies.contains(&u.thing)));
        here && used && bench.solved.at[s.0 as usize] >= since
    })
}

/// ` new split-pin` where what locks the group is used up and not at hand in the joint yet.
fn with_new(bench: &Bench, id: ThingId) -> String {
    let plan = bench.plan;
    let Some(f) = plan.thing(id).fasteners() else {
        return String::new();
    };
    let wanted: Vec<&str> = f
        .locked_by
        .iter()
        .filter_map(|l| match l {
            Lock::Thing(r) if plan.thing(r.thing).sort == Sort::Item => Some(r.thing),
            _ => None,
        })
        .filter(|item| {
            let chain = bench.lives.get(*item, Aspect::InJoint(id));
            chain.is_some_and(|c| bench.lives.chain(c).last_value() == 0)
        })
        .map(|item| plan.thing(item).name.as_str())
        .collect();
    if wanted.is_empty() {
        String::new()
    } else {
        format!(" new {}", wanted.join(", "))
    }
}
