//! What a step does to a group of fasteners, and how.

use super::acts::Acts;
use super::torque::torque;
use super::{Fastening, Held, Stage};
use crate::look::harmless;
use crate::words::{Numbers, thing, threaded};
use plan::model::{CounterholdBy, Fasteners, Lock, Plan, Sort, StepId, ThingId};
use syntax::tree::Verb;

/// What the step at place `at` of the order does to `group`; none when it does nothing to
/// fasteners.
pub(super) fn fastening(
    plan: &Plan,
    numbers: &Numbers,
    acts: &Acts<'_>,
    (at, id): (usize, StepId),
    group: ThingId,
) -> Option<Fastening> {
    let step = plan.step(id);
    let fasteners = plan.thing(group).fasteners()?;
    let stage = stage(step.verb, step.trial, threaded(fasteners))?;
    let turned = !matches!(stage, Stage::Locked | Stage::Unlocked);
    let loosened = matches!(stage, Stage::Slack | Stage::Out) && acts.is_tight(group, at);
    let hard = matches!(stage, Stage::Final | Stage::Trial) || loosened;
    let tightened = matches!(stage, Stage::Final | Stage::Trial);
    let lock_step = acts.next(group, at, Verb::Lock);
    let locked_by = match stage {
        Stage::Locked => locks(plan, fasteners, true),
        Stage::Unlocked => locks(plan, fasteners, false),
        Stage::Final => locks(plan, fasteners, false),
        _ => Vec::new(),
    };
    Some(Fastening {
        name: thing(plan, group),
        stage,
        group: turned.then(|| group_words(fasteners)).flatten(),
        drive: turned.then(|| drive(fasteners)).flatten(),
        torque: tightened.then(|| torque(plan, fasteners)),
        pattern: tightened.then(|| pattern(fasteners)).flatten(),
        lubricated: matches!(
            stage,
            Stage::Started | Stage::Snug | Stage::Final | Stage::Trial
        )
        .then(|| lubricated(plan, fasteners))
        .flatten(),
        counterhold: hard.then(|| counterhold(plan, fasteners)).flatten(),
        lock_number: (stage == Stage::Final && !locked_by.is_empty())
            .then(|| lock_step.map(|step| numbers.number(step)))
            .flatten(),
        locked_by,
        left_hand: fasteners.left_hand && turned,
    })
}

fn stage(verb: Verb, trial: bool, threaded: bool) -> Option<Stage> {
    Some(match (verb, threaded) {
        (Verb::Fit | Verb::Start | Verb::Snug | Verb::Tighten, false) => Stage::In,
        (Verb::Fit | Verb::Start, true) => Stage::Started,
        (Verb::Snug, true) => Stage::Snug,
        (Verb::Tighten, true) if trial => Stage::Trial,
        (Verb::Tighten, true) => Stage::Final,
        (Verb::Lock, _) => Stage::Locked,
        (Verb::Unlock, _) => Stage::Unlocked,
        (Verb::Slacken, _) => Stage::Slack,
        (Verb::Undo | Verb::Remove, _) => Stage::Out,
        _ => return None,
    })
}

/// `8 x M6x1 class 8.8`, `2 x clip`.
fn group_words(fasteners: &Fasteners) -> Option<String> {
    let what = [
        fasteners
            .thread
            .as_ref()
            .map(|thread| harmless(&thread.text)),
        fasteners.called.as_deref().map(harmless),
        fasteners
            .class
            .as_ref()
            .map(|class| format!("class {}", harmless(&class.text))),
    ];
    let what: Vec<String> = what.into_iter().flatten().collect();
    match (fasteners.count, what.is_empty()) {
        (Some(count), false) => Some(format!("{count} x {}", what.join(" "))),
        (Some(count), true) => Some(format!("{count} off")),
        (None, false) => Some(what.join(" ")),
        (None, true) => None,
    }
}

fn drive(fasteners: &Fasteners) -> Option<String> {
    let (kind, size, series, _) = fasteners.drive.as_ref()?;
    let mut said = harmless(kind);
    if let Some(size) = size {
        said += &format!(" {}", harmless(size));
    }
    if let Some(series) = series {
        said += &format!(", {} series", harmless(series));
    }
    Some(said)
}

fn pattern(fasteners: &Fasteners) -> Option<String> {
    let (words, layout, _) = fasteners.pattern.as_ref()?;
    let numbered = words
        .iter()
        .all(|word| word.chars().all(|c| c.is_ascii_digit()));
    let mut said = if numbered {
        format!("in the order {}", words.join(", "))
    } else {
        words.join(" ")
    };
    if let Some(layout) = layout {
        said += &format!(", {layout}");
    }
    Some(harmless(&said))
}

fn lubricated(plan: &Plan, fasteners: &Fasteners) -> Option<String> {
    let (supply, words) = fasteners.lubricated.as_ref()?;
    Some(supply.map_or_else(|| harmless(words), |supply| thing(plan, supply)))
}

fn counterhold(plan: &Plan, fasteners: &Fasteners) -> Option<Held> {
    Some(match fasteners.counterhold.as_ref()? {
        CounterholdBy::Part(part) => Held::ByPart(thing(plan, part.thing)),
        CounterholdBy::Tool(tool) => Held::ByTool(super::entry::tool(plan, tool)),
    })
}

/// What stops a group turning. A supply goes on with the fasteners and is said there, so that it
/// is left out where only later locks are wanted.
fn locks(plan: &Plan, fasteners: &Fasteners, supplies: bool) -> Vec<String> {
    let locks = fasteners.locked_by.iter().filter_map(|lock| match lock {
        Lock::Thing(by) if !supplies && plan.thing(by.thing).sort == Sort::Supply => None,
        Lock::Thing(by) => Some(thing(plan, by.thing)),
        Lock::Words(words) => Some(harmless(&words.text)),
    });
    locks.collect()
}
