//! Threadlocker or sealant on what it must not touch.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::words;
use plan::model::{Lock, Place, Plan, Ref, Step, Supply, ThingId, To};
use std::collections::HashSet;
use syntax::tree::Verb;
use workshop::strip::MaterialFamily;

/// Plastics that plans name besides the word itself.
const PLASTICS: [&str; 7] = [
    "abs",
    "acetal",
    "acrylic",
    "pc",
    "polyamide",
    "polycarbonate",
    "polypropylene",
];

/// Kinds of supply that lock nothing.
const NO_LOCK: [&str; 7] = [
    "oil",
    "grease",
    "anti-seize",
    "lubricant",
    "coolant",
    "brake-fluid",
    "fluid",
];

/// The rule.
pub const RULE: Rule = Rule {
    name: "wrong-locker",
    severity: Severity::Error,
    statement: "A threadlocker, sealant or other supply is put on a material that it must not touch, or is said to lock what it cannot.",
    reason: "Threadlocker cracks many plastics within days; a sealant that attacks its material lets go later, out of sight.",
    bad: r#"supply threadlock
  kind threadlocker medium
part lid
  material plastic
fasteners lid-screws
  4 x M4
  hold lid
  torque 1.5 N.m from "maker's sheet 2"
fit lid
tighten lid-screws use threadlock
"#,
    good: r#"supply threadlock
  kind threadlocker medium
part lid
  material steel
fasteners lid-screws
  4 x M4
  hold lid
  torque 1.5 N.m from "maker's sheet 2"
fit lid
tighten lid-screws use threadlock
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    let mut told = HashSet::new();
    for (id, step) in plan.steps() {
        for (supply, things) in meetings(bench, id.0, step) {
            for thing in things {
                if let Some(finding) = meeting(plan, supply, thing) {
                    told.insert((supply.thing, thing));
                    found.push(Finding {
                        steps: vec![id],
                        ..finding
                    });
                }
            }
        }
    }
    for (id, thing) in plan.things() {
        for lock in thing.fasteners().iter().flat_map(|group| &group.locked_by) {
            let Lock::Thing(by) = lock else { continue };
            let Some(supply) = plan.thing(by.thing).supply() else {
                continue;
            };
            if let Some(kind) = supply
                .kind
                .iter()
                .find(|kind| NO_LOCK.contains(&kind.as_str()))
            {
                let says = format!(
                    "{} {} said to be locked by {}, and {kind} locks nothing.",
                    words::capital(thing.called()),
                    words::is_or_are(plan, id),
                    plan.thing(by.thing).called()
                );
                let mut finding =
                    Finding::new(&RULE, by.place, plan.thing(by.thing).name.as_str(), says)
                        .because(plan.thing(by.thing).place, format!("kind {kind}"))
                        .advice(
                            "Name what locks them, or say “lubricated with” where that is meant.",
                        );
                finding.severity = Severity::Warning;
                found.push(finding);
            } else if !told.contains(&(by.thing, id)) {
                found.extend(meeting(plan, *by, id));
            }
        }
    }
}

/// What a step brings together: each supply with the things that it goes on.
fn meetings(bench: &Bench, step_number: u32, step: &Step) -> Vec<(Ref, Vec<ThingId>)> {
    let targets = || -> Vec<ThingId> {
        let targets = &bench.lives.targets[step_number as usize];
        targets.iter().map(|target| target.thing).collect()
    };
    match (step.verb, &step.to) {
        (Verb::Apply, Some(To::Things(on))) => {
            let on: Vec<ThingId> = on.iter().map(|on| on.thing).collect();
            let supplies = step.targets.iter().chain(&step.uses);
            supplies.map(|supply| (*supply, on.clone())).collect()
        }
        (Verb::Fit | Verb::Start | Verb::Snug | Verb::Tighten, _) => step
            .uses
            .iter()
            .map(|supply| (*supply, targets()))
            .collect(),
        _ => Vec::new(),
    }
}

fn meeting(plan: &Plan, supply: Ref, thing: ThingId) -> Option<Finding> {
    let named = plan.thing(supply.thing);
    let body = named.supply()?;
    let (material, place) = touched(plan, thing)
        .into_iter()
        .find(|(material, _)| barred(body, material).is_some())?;
    let why = barred(body, &material)?;
    let says = format!(
        "{} goes on {} here, which {} {material}, and {}.",
        words::capital(named.called()),
        plan.thing(thing).called(),
        if plan.thing(thing).fasteners().is_some() {
            "meets"
        } else {
            "is of"
        },
        match why {
            Barred::Said => "is not to touch it",
            Barred::Plastic => "threadlocker cracks many plastics (common practice, no source)",
        }
    );
    let mut finding = Finding::new(&RULE, supply.place, named.name.as_str(), says)
        .because(place, material.clone());
    if why == Barred::Said {
        finding = finding.because(named.place, format!("not on {material}"));
    } else {
        finding.severity = Severity::Warning;
    }
    Some(finding.advice("Read the supply's own sheet, and take another or none."))
}

/// Why a supply must not touch a material.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Barred {
    /// The plan says so.
    Said,
    /// Threadlocker on plastic.
    Plastic,
}

fn barred(supply: &Supply, material: &str) -> Option<Barred> {
    let same = |other: &String| {
        other == material
            || family(other).is_some_and(|family| self::family(material) == Some(family))
    };
    if supply.not_on.iter().any(same) {
        return Some(Barred::Said);
    }
    let locker = supply.kind.iter().any(|kind| kind == "threadlocker");
    (locker && family(material) == Some(MaterialFamily::Plastic)).then_some(Barred::Plastic)
}

fn family(material: &str) -> Option<MaterialFamily> {
    if PLASTICS.contains(&material) {
        return Some(MaterialFamily::Plastic);
    }
    MaterialFamily::read(material)
}

/// The materials that what goes on a thing comes to touch, and where they are said.
fn touched(plan: &Plan, thing: ThingId) -> Vec<(String, Place)> {
    let of = |id: ThingId| {
        let thing = plan.thing(id);
        thing
            .material
            .clone()
            .map(|material| (material, thing.place))
    };
    let mut all: Vec<(String, Place)> = of(thing).into_iter().collect();
    if let Some(group) = plan.thing(thing).fasteners() {
        if let Some((material, _, place)) = &group.into {
            all.push((material.clone(), *place));
        }
        all.extend(group.hold.iter().filter_map(|held| of(held.thing)));
    }
    if let Some(point) = plan.thing(thing).point() {
        all.extend(point.on.iter().filter_map(|on| of(on.thing)));
    }
    all
}
