//! From plan to sheet: sections, heading, what must be out again.

use super::entry::Maker;
use super::{Checklist, Entry, Heading, Owed, Section, Temporary, Torque, Worked};
use crate::cautions::DEFERENCE;
use crate::findings::Counts;
use crate::look::harmless;
use crate::words::thing;
use plan::model::{Plan, StepId, ThingId};
use std::collections::HashMap;
use syntax::tree::Verb;

/// The sheet of a plan.
pub(super) fn checklist(worked: &Worked<'_>) -> Checklist {
    let maker = Maker::of(worked);
    let mut sections: Vec<Section> = Vec::new();
    let mut last = None;
    for (at, id) in worked.order.iter().enumerate() {
        let step = worked.plan.step(*id);
        let here = (step.stage, step.member.clone());
        if last.as_ref() != Some(&here) {
            sections.push(section(worked.plan, *id));
            last = Some(here);
        }
        if let Some(section) = sections.last_mut() {
            section.entries.push(maker.entry(at, *id));
        }
    }
    say_cautions_once(&mut sections);
    let entries: Vec<&Entry> = sections
        .iter()
        .flat_map(|section| &section.entries)
        .collect();
    Checklist {
        heading: heading(worked, &entries),
        temporaries: temporaries(worked, &maker),
        sections,
        deference: DEFERENCE,
    }
}

/// Marks every caution of a kind that an earlier step has said in full: what is read ten times
/// over is not read.
fn say_cautions_once(sections: &mut [Section]) {
    let mut first: HashMap<String, usize> = HashMap::new();
    for entry in sections.iter_mut().flat_map(|section| &mut section.entries) {
        for caution in &mut entry.cautions {
            let Some(kind) = &caution.kind else { continue };
            match first.get(kind) {
                Some(number) => caution.first_at = Some(*number),
                None => {
                    first.insert(kind.clone(), entry.number);
                }
            }
        }
    }
}

/// An empty section for the stage and the pass that a step belongs to.
fn section(plan: &Plan, id: StepId) -> Section {
    let step = plan.step(id);
    let stage = step
        .stage
        .and_then(|stage| plan.stages.get(stage.0 as usize));
    Section {
        title: stage.map(|stage| harmless(&stage.title.text)),
        member: step.member.as_deref().map(harmless),
        any_order: stage.is_some_and(|stage| stage.any_order),
        entries: Vec::new(),
    }
}

fn heading(worked: &Worked<'_>, entries: &[&Entry]) -> Heading {
    let heading = &worked.plan.heading;
    let file = worked
        .plan
        .sources
        .first()
        .map_or_else(String::new, |source| harmless(&source.name));
    Heading {
        title: heading
            .title
            .as_deref()
            .map_or_else(|| file.clone(), harmless),
        machine: heading.machine.as_deref().map(harmless),
        revision: heading.revision.as_deref().map(harmless),
        file,
        assembled: heading.assembled,
        people: heading.people,
        reviewed: heading
            .reviewed
            .iter()
            .map(|(by, on, _, _)| (harmless(by), harmless(on)))
            .collect(),
        steps: entries.len(),
        found: Counts::of(worked.findings),
        torques_owed: owed(entries),
    }
}

/// The torques that are blanks on this sheet, each where it is first wanted.
fn owed(entries: &[&Entry]) -> Vec<Owed> {
    let mut owed: Vec<Owed> = Vec::new();
    for entry in entries {
        for fastening in &entry.fastenings {
            let blank = matches!(fastening.torque, Some(Torque::Owed { .. }));
            if blank && !owed.iter().any(|o| o.thing == fastening.name) {
                owed.push(Owed {
                    thing: fastening.name.clone(),
                    number: entry.number,
                });
            }
        }
    }
    owed
}

/// What is temporary, with the steps that put it in and take it out, in the order first put in.
fn temporaries(worked: &Worked<'_>, maker: &Maker<'_>) -> Vec<Temporary> {
    let mut seen: Vec<(ThingId, Temporary)> = Vec::new();
    for id in &worked.order {
        let step = worked.plan.step(*id);
        let goes_in = matches!(
            step.verb,
            Verb::Fit | Verb::Start | Verb::Snug | Verb::Tighten
        );
        if !goes_in && !matches!(step.verb, Verb::Remove | Verb::Undo) {
            continue;
        }
        for target in &step.targets {
            let what = worked.plan.thing(target.thing);
            if what.temporary.is_none() {
                continue;
            }
            let at = seen
                .iter()
                .position(|(id, _)| *id == target.thing)
                .unwrap_or_else(|| {
                    seen.push((
                        target.thing,
                        Temporary {
                            name: thing(worked.plan, target.thing),
                            count: what.count,
                            into: Vec::new(),
                            out: Vec::new(),
                        },
                    ));
                    seen.len() - 1
                });
            let number = maker.numbers.number(*id);
            let list = if goes_in {
                &mut seen[at].1.into
            } else {
                &mut seen[at].1.out
            };
            list.push(number);
        }
    }
    seen.into_iter().map(|(_, temporary)| temporary).collect()
}
