//! From the plan to the lists of the kit.

use super::{Fastener, Kit, Part, Supply, Tool, UsedUp};
use crate::look::harmless;
use crate::words::{Numbers, fluids, thing};
use check::Bench;
use plan::model::{Amount, Body, CounterholdBy, Plan, Sort, StepId, Thing, ThingId, ToolUse};
use std::collections::BTreeMap;
use syntax::tree::Verb;

pub(super) fn kit(bench: &Bench<'_>) -> Kit {
    let plan = bench.plan;
    let numbers = Numbers::of(plan, bench.order());
    let title = plan
        .heading
        .title
        .as_deref()
        .map(harmless)
        .unwrap_or_else(|| {
            let source = plan.sources.first();
            source.map_or_else(String::new, |source| harmless(&source.name))
        });
    let used_up = used_up(bench);
    let supplies = supplies(plan);
    let tools = tools(plan, &numbers, bench.order());
    let mut missing: Vec<String> = Vec::new();
    if says_what_is_there(plan) {
        missing.extend(supplies.iter().filter(|s| !s.have).map(|s| s.name.clone()));
        let absent = tools.iter().filter(|tool| tool.declared && !tool.have);
        missing.extend(absent.map(|tool| tool.name.clone()));
    }
    Kit {
        title,
        assembled: plan.heading.assembled,
        parts: parts(plan, false),
        temporary: parts(plan, true),
        fasteners: fasteners(plan),
        used_up,
        supplies,
        tools,
        missing,
    }
}

/// Whether anything is said of what is on the shelf; without that nothing is called missing.
fn says_what_is_there(plan: &Plan) -> bool {
    plan.things.iter().any(|thing| match &thing.body {
        Body::Tool(tool) => tool.have,
        Body::Supply(supply) => supply.have,
        _ => false,
    })
}

fn parts(plan: &Plan, temporary: bool) -> Vec<Part> {
    let wanted = |one: &Thing| {
        one.sort == Sort::Part
            && one.temporary.is_some() == temporary
            && (temporary || one.given.is_none())
            && one.single_use.is_none()
    };
    let all = plan.things().filter(|(_, one)| wanted(one));
    all.map(|(id, one)| Part {
        name: thing(plan, id),
        count: one.count,
        mass: one.mass.as_ref().filter(|mass| !mass.unknown).map(both),
        material: one.material.as_deref().map(harmless),
        matched_with: one
            .matched_with
            .iter()
            .map(|m| thing(plan, m.thing))
            .collect(),
    })
    .collect()
}

fn fasteners(plan: &Plan) -> Vec<Fastener> {
    plan.things()
        .filter(|(_, one)| one.given.is_none())
        .filter_map(|(id, one)| {
            let group = one.fasteners()?;
            let size = [
                group.thread.as_ref().map(|thread| harmless(&thread.text)),
                group.noun.as_deref().map(harmless),
                group
                    .class
                    .as_ref()
                    .map(|class| format!("class {}", harmless(&class.text))),
            ];
            let size: Vec<String> = size.into_iter().flatten().collect();
            Some(Fastener {
                name: thing(plan, id),
                count: group.count,
                size: (!size.is_empty()).then(|| size.join(" ")),
            })
        })
        .collect()
}

/// A figure as written with the other unit behind it.
fn both(amount: &Amount) -> String {
    let written = harmless(&amount.text);
    match amount
        .measure
        .as_ref()
        .and_then(|measure| measure.other_unit())
    {
        Some(other) => format!("{written} ({other})"),
        None => written,
    }
}

/// Items, and single-use parts and fasteners: how often the plan takes a new one.
fn used_up(bench: &Bench<'_>) -> Vec<UsedUp> {
    let plan = bench.plan;
    let mut all = Vec::new();
    for (id, one) in plan.things() {
        let item = one.sort == Sort::Item;
        if !item && one.single_use.is_none() || one.temporary.is_some() {
            continue;
        }
        let fitted = |step: &plan::model::Step| {
            matches!(step.verb, Verb::Fit) && step.targets.iter().any(|t| t.thing == id)
        };
        let taken = plan
            .steps
            .iter()
            .filter(|step| step.news.iter().any(|new| new.thing == id) || fitted(step))
            .count();
        // Fasteners that are made for one use go in new the first time, without a word.
        let first_in = plan.steps.iter().find(|step| {
            matches!(
                step.verb,
                Verb::Fit | Verb::Start | Verb::Snug | Verb::Tighten
            ) && step.targets.iter().any(|t| t.thing == id)
        });
        let first = one.fasteners().is_some()
            && !plan.heading.assembled
            && one.given.is_none()
            && first_in.is_some_and(|step| {
                !step.news.iter().any(|new| new.thing == id) && step.verb != Verb::Fit
            });
        let times = (taken + usize::from(first)) as u32;
        let each = one
            .count
            .or_else(|| one.fasteners().and_then(|group| group.count))
            .unwrap_or(1);
        let (size, at) = match &one.body {
            Body::Item { at, size } => (
                size.as_deref().map(harmless),
                at.iter().map(|at| thing(plan, at.thing)).collect(),
            ),
            Body::Fasteners(group) => (
                group.thread.as_ref().map(|thread| harmless(&thread.text)),
                group
                    .hold
                    .iter()
                    .map(|held| thing(plan, held.thing))
                    .collect(),
            ),
            _ => (None, Vec::new()),
        };
        all.push(UsedUp {
            name: thing(plan, id),
            needed: times.saturating_mul(each),
            times,
            each,
            size,
            at,
            single_use: one.single_use.is_some(),
        });
    }
    all
}

fn supplies(plan: &Plan) -> Vec<Supply> {
    let mut amounts: BTreeMap<ThingId, Vec<String>> = BTreeMap::new();
    let mut uses: BTreeMap<ThingId, usize> = BTreeMap::new();
    for (id, step) in plan.steps() {
        let applied = step.targets.iter().map(|target| target.thing);
        let mut used: Vec<ThingId> = fluids(plan, id);
        used.extend(applied.filter(|t| plan.thing(*t).sort == Sort::Supply));
        if matches!(step.verb, Verb::Fill | Verb::Prime) {
            for target in &step.targets {
                let Some((held, _, amount)) = plan
                    .thing(target.thing)
                    .point()
                    .and_then(|p| p.holds.as_ref())
                else {
                    continue;
                };
                let fluid = used.first().copied().or(*held);
                used.extend(fluid.filter(|fluid| !used.contains(fluid)));
                if let (Some(fluid), Some(amount)) = (fluid, amount)
                    && !amount.unknown
                {
                    amounts.entry(fluid).or_default().push(both(amount));
                }
            }
        }
        for supply in used {
            *uses.entry(supply).or_default() += 1;
        }
    }
    plan.things()
        .filter_map(|(id, one)| {
            let supply = one.supply()?;
            let note = |words: &str, amount: &Option<Amount>| {
                amount.as_ref().map(|amount| match amount.unknown {
                    true => format!("{words} ______"),
                    false => format!("{words} {}", both(amount)),
                })
            };
            let mut notes: Vec<String> = [
                note("close the joint within", &supply.close_within),
                note("fixes in", &supply.fixes_in),
                note("cures in", &supply.cures_in),
                note("good to", &supply.good_to),
            ]
            .into_iter()
            .flatten()
            .collect();
            if !supply.not_on.is_empty() {
                notes.push(format!("not on {}", harmless(&supply.not_on.join(", "))));
            }
            if supply
                .kind
                .iter()
                .any(|kind| kind == "sealant" || kind == "threadlocker")
            {
                notes.push("look at the date on it before you start".into());
            }
            Some(Supply {
                name: thing(plan, id),
                kind: (!supply.kind.is_empty()).then(|| harmless(&supply.kind.join(" "))),
                amounts: amounts.get(&id).cloned().unwrap_or_default(),
                uses: uses.get(&id).copied().unwrap_or(0),
                notes,
                have: supply.have,
            })
        })
        .collect()
}

fn tools(plan: &Plan, numbers: &Numbers, order: &[StepId]) -> Vec<Tool> {
    let mut all: Vec<(Option<ThingId>, Tool)> = plan
        .things()
        .filter_map(|(id, _)| declared(plan, id))
        .collect();
    for id in order {
        let step = plan.step(*id);
        let counterholds = bench_tools(plan, *id);
        for tool in step.with.iter().chain(counterholds) {
            let said = harmless(&tool.text);
            let number = numbers.number(*id);
            let known = all.iter_mut().find(|(thing, known)| match tool.thing {
                Some(_) => *thing == tool.thing,
                None => thing.is_none() && known.name == said,
            });
            match known {
                Some((_, known)) if known.steps.last() != Some(&number) => known.steps.push(number),
                Some(_) => {}
                None => all.push((
                    tool.thing,
                    Tool {
                        name: said,
                        kind: None,
                        notes: Vec::new(),
                        steps: vec![number],
                        declared: false,
                        have: false,
                    },
                )),
            }
        }
    }
    all.into_iter().map(|(_, tool)| tool).collect()
}

/// What holds the other side of what a step turns hard.
fn bench_tools(plan: &Plan, id: StepId) -> impl Iterator<Item = &ToolUse> {
    let step = plan.step(id);
    let hard = matches!(step.verb, Verb::Tighten | Verb::Slacken | Verb::Undo);
    let groups = step.targets.iter().filter(move |_| hard);
    groups.filter_map(|target| {
        match plan.thing(target.thing).fasteners()?.counterhold.as_ref()? {
            CounterholdBy::Tool(tool) => Some(tool),
            CounterholdBy::Part(_) => None,
        }
    })
}

fn declared(plan: &Plan, id: ThingId) -> Option<(Option<ThingId>, Tool)> {
    let Body::Tool(tool) = &plan.thing(id).body else {
        return None;
    };
    let note = |words: &str, amount: &Option<Amount>| {
        amount
            .as_ref()
            .map(|amount| format!("{words}{}", both(amount)))
    };
    let notes = [
        note("", &tool.range),
        note("full scale ", &tool.full_scale),
        note("length ", &tool.length),
        note("accuracy ", &tool.accuracy),
    ];
    let kind = [tool.kind.as_deref(), tool.size.as_deref()];
    let kind: Vec<&str> = kind.into_iter().flatten().collect();
    Some((
        Some(id),
        Tool {
            name: thing(plan, id),
            kind: (!kind.is_empty()).then(|| harmless(&kind.join(" "))),
            notes: notes.into_iter().flatten().collect(),
            steps: Vec::new(),
            declared: true,
            have: tool.have,
        },
    ))
}
