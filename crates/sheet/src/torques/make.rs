//! From the plan to the rows of the torque sheet.

use super::figure::Figure;
use super::{Group, Sorting, Stage};
use crate::look::harmless;
use crate::words::{Numbers, thing};
use check::{Bench, joints};
use plan::model::{Amount, Body, Fasteners, Lock, Pass, Plan, StepId, ThingId, ToolUse};
use workshop::quantity::{Length, Torque, unit_at_start};
use workshop::tightening::{Adapter, setting};

/// The groups, those without a torque, and the drawn orders.
pub(super) fn groups(
    bench: &Bench<'_>,
    sorting: Sorting,
) -> (Vec<Group>, Vec<String>, Vec<Figure>) {
    let plan = bench.plan;
    let numbers = Numbers::of(plan, bench.order());
    let mut uses: Vec<(ThingId, Vec<StepId>)> = Vec::new();
    for (step, id) in joints::tightenings(bench) {
        match uses.iter_mut().find(|(known, _)| *known == id) {
            Some((_, steps)) => steps.push(step),
            None => uses.push((id, vec![step])),
        }
    }
    // What no step tightens (yet) stands behind what one does.
    for (id, thing) in plan.things() {
        if thing.fasteners().is_some() && uses.iter().all(|(known, _)| *known != id) {
            uses.push((id, Vec::new()));
        }
    }
    let (mut all, mut by_feel, mut figures) = (Vec::new(), Vec::new(), Vec::new());
    for (id, steps) in uses {
        let Some(fasteners) = plan.thing(id).fasteners() else {
            continue;
        };
        if !joints::threaded(fasteners) {
            continue;
        }
        if fasteners.passes.is_none()
            && fasteners.torque.as_ref().is_some_and(|t| t.value.is_none())
        {
            by_feel.push(thing(plan, id));
            continue;
        }
        let figure = Figure::of(plan, id).map(|figure| {
            let drawn = |known: &Figure| known.same_drawing(&figure);
            figures.iter().position(drawn).unwrap_or_else(|| {
                figures.push(figure);
                figures.len() - 1
            })
        });
        all.push(group(plan, &numbers, id, fasteners, &steps, figure));
    }
    if sorting == Sorting::Place {
        all.sort_by(|a, b| (&a.holds, &a.fasteners).cmp(&(&b.holds, &b.fasteners)));
    }
    (all, by_feel, figures)
}

fn group(
    plan: &Plan,
    numbers: &Numbers,
    id: ThingId,
    fasteners: &Fasteners,
    steps: &[StepId],
    figure: Option<usize>,
) -> Group {
    let mut tools: Vec<String> = Vec::new();
    let mut settings: Vec<String> = Vec::new();
    for step in steps {
        for tool in &plan.step(*step).with {
            let said = tool
                .thing
                .map_or_else(|| harmless(&tool.text), |t| thing(plan, t));
            if !tools.contains(&said) {
                tools.push(said);
            }
        }
        settings.extend(through_adapter(plan, fasteners, &plan.step(*step).with));
    }
    settings.dedup();
    let size = [
        fasteners
            .thread
            .as_ref()
            .map(|thread| harmless(&thread.text)),
        fasteners.noun.as_deref().map(harmless),
        fasteners
            .class
            .as_ref()
            .map(|class| class_words(&class.text)),
    ];
    let size: Vec<String> = size.into_iter().flatten().collect();
    let words = |(words, layout, _): &(Vec<String>, Option<String>, _)| {
        let layout = layout
            .as_deref()
            .map_or_else(String::new, |layout| format!(" {layout}"));
        harmless(&format!("{}{layout}", words.join(" ")))
    };
    Group {
        fasteners: thing(plan, id),
        name: plan.thing(id).name.clone(),
        holds: fasteners
            .hold
            .iter()
            .map(|held| thing(plan, held.thing))
            .collect(),
        count: fasteners.count,
        size: (!size.is_empty()).then(|| size.join(" ")),
        stages: stages(plan, fasteners),
        threads: threads(plan, fasteners, steps),
        locked_by: fasteners
            .locked_by
            .iter()
            .map(|lock| match lock {
                Lock::Thing(by) => thing(plan, by.thing),
                Lock::Words(words) => harmless(&words.text),
            })
            .collect(),
        tools,
        settings,
        source: source(fasteners),
        pattern: match figure {
            Some(_) => None,
            None => fasteners.pattern.as_ref().map(words),
        },
        figure,
        left_hand: fasteners.left_hand,
        steps: steps.iter().map(|step| numbers.number(*step)).collect(),
        step_ids: steps.to_vec(),
    }
}

/// `8.8` speaks for itself; the `5` of an inch grade behind a thread does not.
fn class_words(class: &str) -> String {
    if class.bytes().all(|b| b.is_ascii_digit()) {
        format!("grade {class}")
    } else {
        harmless(class)
    }
}

fn source(fasteners: &Fasteners) -> Option<String> {
    let source = match (&fasteners.passes, &fasteners.torque) {
        (Some(passes), _) => passes.source.as_ref(),
        (None, torque) => torque.as_ref().and_then(|torque| torque.source.as_ref()),
    };
    source.map(|source| harmless(&source.text))
}

/// What is on the threads: a lubricant, or a supply that a tightening or starting step uses.
fn threads(plan: &Plan, fasteners: &Fasteners, steps: &[StepId]) -> Option<String> {
    if let Some((supply, words)) = &fasteners.lubricated {
        let with = supply.map_or_else(|| harmless(words), |supply| thing(plan, supply));
        return Some(if with == "nothing" {
            "dry".to_owned()
        } else {
            with
        });
    }
    let used = steps.iter().flat_map(|step| &plan.step(*step).uses).next();
    let locker = fasteners.locked_by.iter().find_map(|lock| match lock {
        Lock::Thing(by) if plan.thing(by.thing).supply().is_some() => Some(by),
        _ => None,
    });
    used.or(locker).map(|supply| thing(plan, supply.thing))
}

fn stages(plan: &Plan, fasteners: &Fasteners) -> Vec<Stage> {
    let unit = plan.heading.torque_in.as_deref();
    let blank = || Stage::Blank {
        unit: unit.map(harmless),
    };
    let turn = |angle: &Amount| match angle.unknown {
        true => Stage::TurnBlank,
        false => Stage::Turn(harmless(&angle.text)),
    };
    let torque = |amount: &Amount| match amount.unknown {
        true => blank(),
        false => shown(amount, unit),
    };
    if let Some(passes) = &fasteners.passes {
        return passes
            .passes
            .iter()
            .map(|pass| match pass {
                Pass::Torque(amount) => torque(amount),
                Pass::Turn(angle) => turn(angle),
                Pass::Slacken => Stage::Slacken,
                Pass::Mark => Stage::Mark,
            })
            .collect();
    }
    let Some(given) = &fasteners.torque else {
        return vec![blank()];
    };
    let mut all: Vec<Stage> = given.value.iter().map(torque).collect();
    all.extend(given.then_turn.iter().map(turn));
    all
}

/// A torque in the plan's unit, or as written, with the other unit beside it. What was written
/// always stands in one of the two, because that is the figure to check against the source.
fn shown(amount: &Amount, unit: Option<&str>) -> Stage {
    let written = harmless(&amount.text);
    let wanted = unit
        .and_then(|unit| unit_at_start(unit).filter(|(_, rest)| rest.is_empty()))
        .map(|(spelling, _)| spelling.unit);
    let Some(measure) = &amount.measure else {
        return Stage::Torque {
            shown: written,
            other: None,
        };
    };
    let in_plans_unit = wanted
        .filter(|unit| *unit != measure.unit())
        .and_then(|unit| measure.in_unit(unit));
    match in_plans_unit {
        Some(shown) => Stage::Torque {
            shown: shown.to_string(),
            other: Some(written),
        },
        None => Stage::Torque {
            shown: written,
            other: measure.other_unit().map(|other| other.to_string()),
        },
    }
}

/// What to set a wrench to when it works through an adapter, straight on and square.
fn through_adapter(plan: &Plan, fasteners: &Fasteners, with: &[ToolUse]) -> Vec<String> {
    let declared = |tool: &ToolUse| match tool.thing.map(|id| &plan.thing(id).body) {
        Some(Body::Tool(body)) => Some((**body).clone()),
        _ => None,
    };
    let tools: Vec<(&ToolUse, plan::model::Tool)> = with
        .iter()
        .filter_map(|tool| Some((tool, declared(tool)?)))
        .collect();
    let is_adapter = |kind: &Option<String>| {
        matches!(
            kind.as_deref(),
            Some("crowfoot" | "adapter" | "torque-adapter")
        )
    };
    let Some((adapter, reach)) = tools.iter().find_map(|(tool, body)| {
        let reach = body.length.as_ref()?.measure.as_ref()?.middle();
        is_adapter(&body.kind).then_some((tool, Length::try_from(reach).ok()?))
    }) else {
        return Vec::new();
    };
    let Some((wrench, body)) = tools
        .iter()
        .find(|(tool, _)| joints::wrench_of(plan, tool).is_some())
    else {
        return Vec::new();
    };
    let name = |tool: &ToolUse| tool.thing.map_or_else(String::new, |id| thing(plan, id));
    let length = body
        .length
        .as_ref()
        .and_then(|length| length.measure.as_ref());
    let length = length.and_then(|length| Length::try_from(length.middle()).ok());
    let last: Option<Torque> = joints::torques(fasteners)
        .into_iter()
        .find(|wanted| wanted.last)
        .map(|wanted| wanted.torque);
    let Some(wanted) = last else {
        return Vec::new();
    };
    match setting(wanted, &Adapter::straight(length, reach)) {
        Ok(set) => vec![format!(
            "set {} to {} with {} straight on, {} with it square",
            name(wrench),
            set.value,
            name(adapter),
            wanted.amount().as_given()
        )],
        Err(problem) => vec![format!("{}: {}", name(adapter), problem.describe())],
    }
}
