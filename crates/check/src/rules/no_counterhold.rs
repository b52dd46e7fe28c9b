//! The reacting part or second tool is not there.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Mend, MendEdit, Severity};
use crate::mend;
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;
use plan::model::CounterholdBy;
use syntax::tree::{Span, Verb};

/// The rule.
pub const RULE: Rule = Rule {
    name: "no-counterhold",
    severity: Severity::Error,
    statement: "What holds the other side is not there when fasteners are tightened or broken loose.",
    reason: "The whole thing turns instead of the nut: it cannot be brought to its torque, or something that was never meant to take the load does.",
    bad: r#"part flywheel
part locking-bar
  temporary
fasteners flywheel-nut
  1 x M18x1.5
  hold flywheel
  torque none
  needs locking-bar
fit flywheel
tighten flywheel-nut
fit locking-bar
remove locking-bar
"#,
    good: r#"part flywheel
part locking-bar
  temporary
fasteners flywheel-nut
  1 x M18x1.5
  hold flywheel
  torque none
  needs locking-bar
fit flywheel
fit locking-bar
tighten flywheel-nut
remove locking-bar
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults_with(bench, &RULE, found, put_back_first);
    let plan = bench.plan;
    for (id, step) in plan.steps() {
        if step.with.is_empty() || !matches!(step.verb, Verb::Tighten | Verb::Slacken | Verb::Undo) {
            continue;
        }
        for target in &bench.lives.targets[id.0 as usize] {
            let holds = plan.thing(target.thing).fasteners().and_then(|f| f.counterhold.as_ref());
            // Only a tool that the plan declares by name is missed: a step need not list every
            // spanner that lies on the bench anyway.
            if let Some(CounterholdBy::Tool(tool)) = holds
                && tool.thing.is_some()
                && !step.with.iter().any(|w| w.thing == tool.thing)
            {
                let called = words::called(plan, target.thing);
                let says = format!(
                    "{called} {} held on the other side with {}, and this step does not lay that tool out.",
                    words::is_or_are(plan, target.thing),
                    tool.text
                );
                let title = format!("Say “with {}” on this step as well.", tool.text);
                let mut finding = Finding::new(&RULE, words::step_place(plan, id), name(bench, target.thing), words::capital(&says))
                    .because(tool.place, "the second tool");
                finding.severity = Severity::Warning;
                finding.steps = vec![id];
                if let Some(last) = step.with.last() {
                    finding.mend = Some(Mend {
                        title,
                        edits: vec![MendEdit {
                            file: last.place.file,
                            span: Span::new(last.place.span.end, last.place.span.end),
                            new: format!(", {}", tool.text),
                        }],
                    });
                }
                found.push(finding);
            }
        }
    }
}

/// Puts a temporary thing that went before back in front of the step that needs it again.
fn put_back_first(bench: &Bench, standing: &Standing, d: u32) -> Option<Mend> {
    let demand = &bench.demands[d as usize];
    let atom = say::failing(standing, demand).first().copied()?;
    let thing = bench.plan.thing(atom.about?);
    if thing.temporary.is_none() || !say::held_before(standing, demand, atom) {
        return None;
    }
    let step = StepId(demand.step);
    let line = format!("fit {}", thing.name);
    let title = format!("Write “{line}” in front of “{}”.", words::step(bench.plan, step));
    mend::step_in_front(bench, step, &line, title)
}

/// What is said of fasteners turned with nothing to hold against.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let thing = words::called(plan, demand.thing);
    let failing = say::failing(standing, demand);
    let atom = failing.first().copied().copied();
    let missing = atom.map_or("what holds it is not there".to_string(), |a| {
        say::not_so(bench, standing, demand, &a)
    });
    let lost = atom.is_some_and(|a| say::held_before(standing, demand, &a));
    let later = atom
        .and_then(|a| say::comes_later(standing, demand, &a))
        .filter(|_| !lost);
    let gone = atom.and_then(|a| say::changed_by(standing, demand, &a));
    let group = plan.thing(demand.thing).fasteners();
    let reacts = matches!(
        group.and_then(|f| f.counterhold.as_ref()),
        Some(CounterholdBy::Part(part)) if part.place == demand.place
    );
    let says = if reacts {
        format!(
            "{thing} {} nothing to turn against here: {missing}{}.",
            words::verb(plan, demand.thing, "has", "have"),
            say::writers_reason(demand)
        )
    } else {
        format!(
            "{thing} {} turned hard here without what {}: {missing}{}.",
            words::is_or_are(plan, demand.thing),
            words::verb(plan, demand.thing, "it needs", "they need"),
            say::writers_reason(demand)
        )
    };
    let mut because: Vec<Because> = later
        .map(|s| at_step(bench, s, "it comes only here"))
        .or_else(|| gone.map(|s| at_step(bench, s, gone_label(bench, s))))
        .into_iter()
        .collect();
    because.push(Because {
        place: demand.place,
        says: "this needs it".into(),
    });
    Said {
        place: words::step_place(plan, step),
        about: name(bench, demand.thing),
        says: words::capital(&says),
        because,
        advice: None,
    }
}

/// What a step that took the reaction away did.
fn gone_label(bench: &Bench, step: StepId) -> &'static str {
    match bench.plan.step(step).verb {
        Verb::Slacken | Verb::Undo | Verb::Unlock => "loosened here",
        _ => "it comes off here",
    }
}
