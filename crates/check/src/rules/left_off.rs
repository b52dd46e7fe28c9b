//! Taken off, or dry-fitted, and not refitted.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::chain::presence;
use crate::words;
use plan::model::{Sort, StepId};

/// The rule.
pub const RULE: Rule = Rule {
    name: "left-off",
    severity: Severity::Error,
    statement: "Something was taken off or only dry-fitted, and no later step fits it for good.",
    reason: "This is the part left over on the bench, or the one that was only tried on and is still standing there without its sealant and torque.",
    bad: r#"part cover
  given
remove cover
fit guard
part guard
"#,
    good: r#"part cover
  given
remove cover
fit guard
part guard
fit cover
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    if bench.only_strips() {
        return;
    }
    let plan = bench.plan;
    for (id, thing) in plan.things() {
        if bench.in_doubt(id) || thing.temporary.is_some() || thing.sort == Sort::Item {
            continue;
        }
        let chain = bench.lives.chain(bench.lives.main(id));
        let Some(last) = chain.acts.last() else { continue };
        let step = StepId(last.step);
        let held = thing.fasteners().map_or(&[][..], |f| &f.hold);
        if held.iter().any(|h| bench.never_made_good(h.thing)) {
            // They are left with the part they hold, which is said once.
            continue;
        }
        let fit_comes = |a: &crate::chain::Act| a.step > last.step && a.value == presence::ON;
        if chain.surplus.iter().any(fit_comes) {
            continue;
        }
        let fasteners = thing.sort == Sort::Fasteners;
        let dry = !fasteners && last.value == presence::DRY;
        if !(last.value == presence::OFF || dry) || plan.step(step).for_good {
            continue;
        }
        let are = words::is_or_are(plan, id);
        let says = if dry {
            format!("{} is only tried on here and is never fitted for good.", thing.called())
        } else if chain.acts.iter().any(|a| a.value == presence::DRY) && !chain.acts.iter().any(|a| a.value == presence::ON) && chain.initial == presence::OFF {
            format!("{} came off again after its dry fit and is never fitted for good.", thing.called())
        } else {
            let off = if fasteners { "undone" } else { "taken off" };
            format!("{} {are} {off} here and never put back.", thing.called())
        };
        let mut finding = Finding::new(&RULE, words::step_place(plan, step), thing.name.as_str(), words::capital(&says))
            .because(thing.place, "declared here")
            .advice(format!("Write the step that puts {} back, or say “for good” on this step if {} to stay off.", thing.name, if are == "is" { "it is" } else { "they are" }));
        for d in bench.missed_for(id) {
            let needing = StepId(bench.demands[d as usize].step);
            finding = finding.because(words::step_place(plan, needing), "it is needed here");
        }
        finding.steps = vec![step];
        found.push(finding);
    }
}
