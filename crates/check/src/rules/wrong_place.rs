//! Fitted where its match or side does not belong; a position not held.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Mend, Severity};
use crate::mend;
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;
use plan::model::{Thing, ThingId};

/// The rule.
pub const RULE: Rule = Rule {
    name: "wrong-place",
    severity: Severity::Error,
    statement: "Something is fitted where its match or side does not belong, or a position does not stand where it must.",
    reason: "It often goes together all the same, and shows only when it runs: valves meet pistons, caps pinch, calipers bleed from the bottom.",
    bad: r#"part fork-left
  side left
part caliper
  side right
  onto fork-left
fit fork-left
fit caliper
"#,
    good: r#"part fork-right
  side right
part caliper
  side right
  onto fork-right
fit fork-right
fit caliper
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults_with(bench, &RULE, found, turn_first);
    let plan = bench.plan;
    for (_, thing) in plan.things() {
        if thing.uncertain {
            continue;
        }
        for mate in &thing.matched_with {
            let rival = plan.things.iter().find(|other| {
                other.name < thing.name
                    && of_one_series(other, thing)
                    && other.matched_with.iter().any(|m| m.thing == mate.thing)
            });
            if let Some(rival) = rival {
                let says = format!(
                    "{} and {} are both said to belong with {}.",
                    words::capital(rival.called()),
                    thing.called(),
                    words::called(plan, mate.thing)
                );
                found.push(
                    Finding::new(&RULE, mate.place, thing.name.as_str(), says)
                        .because(rival.place, "the other one"),
                );
            }
        }
        for base in &thing.onto {
            let other = plan.thing(base.thing);
            if let (Some((side, at)), Some((base_side, base_at))) = (&thing.side, &other.side)
                && side != base_side
            {
                let says = format!(
                    "{} is for the {side} and goes onto {}, which is on the {base_side}.",
                    thing.called(),
                    other.called()
                );
                found.push(
                    Finding::new(&RULE, base.place, thing.name.as_str(), words::capital(&says))
                        .because(*at, "its side")
                        .because(*base_at, "the other side"),
                );
            }
            let matched = |t: &Thing, id: ThingId| t.matched_with.iter().find(|m| m.thing == id).copied();
            let sibling = thing.matched_with.iter().find(|m| {
                m.thing != base.thing
                    && like(plan.thing(m.thing), other)
                    && matched(thing, base.thing).is_none()
                    && !thing.onto.iter().any(|o| o.thing == m.thing)
            });
            if let Some(mate) = sibling {
                let says = format!(
                    "{} belongs with {} and is to go onto {}.",
                    thing.called(),
                    plan.thing(mate.thing).called(),
                    other.called()
                );
                found.push(
                    Finding::new(&RULE, base.place, thing.name.as_str(), words::capital(&says))
                        .because(mate.place, "what it is matched with"),
                );
            }
        }
    }
}

/// Whether two things are members of one series.
fn of_one_series(a: &Thing, b: &Thing) -> bool {
    matches!((&a.member, &b.member), (Some(a), Some(b)) if a.stem == b.stem)
}

/// Whether two things are of one sort of thing: members of one series, or names alike but for
/// their last word.
fn like(a: &Thing, b: &Thing) -> bool {
    let stem = |t: &Thing| {
        t.member.as_ref().map(|m| m.stem.clone()).or_else(|| {
            t.name.rsplit_once('-').map(|(stem, _)| stem.to_string())
        })
    };
    stem(a).is_some() && stem(a) == stem(b)
}

/// Turns the position to where it is needed in front of the step that needs it.
fn turn_first(bench: &Bench, standing: &Standing, d: u32) -> Option<Mend> {
    let demand = &bench.demands[d as usize];
    let atom = say::failing(standing, demand).first().copied()?;
    let position = &bench.plan.thing(atom.about?).name;
    let needed = bench.plan.text(demand.place);
    let place = needed.rsplit(' ').next().unwrap_or(needed);
    let line = format!("turn {position} to {place}");
    let step = StepId(demand.step);
    let title = format!("Write “{line}” in front of “{}”.", words::step(bench.plan, step));
    mend::step_in_front(bench, step, &line, title)
}

/// What is said of a position that does not stand where it must.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let atom = say::failing(standing, demand).first().copied().copied();
    let position = atom.and_then(|a| a.about);
    let called = position.map_or("the position", |t| words::called(plan, t));
    let last = atom.and_then(|a| say::changed_by(standing, demand, &a));
    let text = plan.text(demand.place);
    let place = text.rsplit(' ').next().unwrap_or(text);
    let says = match last {
        Some(_) => format!("{called} does not stand at {place} here, where {} needs it.", words::called(plan, demand.thing)),
        None => format!("No step has set {called} to {place} yet, where {} needs it.", words::called(plan, demand.thing)),
    };
    let mut because: Vec<Because> = last
        .map(|s| at_step(bench, s, "last turned here"))
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
        advice: position.map(|t| format!("Write “turn {} to {place}” in front of this step.", plan.thing(t).name)),
    }
}
