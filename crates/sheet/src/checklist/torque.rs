//! Torques as the sheet says them. None is ever made up.

use super::Torque;
use crate::look::harmless;
use plan::model::{Amount, Fasteners, Pass, Plan};
use workshop::quantity::{Unit, unit_at_start};

/// To what a group is tightened, in the plan's unit where it names one.
pub(super) fn torque(plan: &Plan, fasteners: &Fasteners) -> Torque {
    let unit = plan.heading.torque_in.as_deref();
    if let Some(passes) = &fasteners.passes {
        return Torque::Known {
            passes: passes
                .passes
                .iter()
                .map(|pass| self::pass(plan, pass))
                .collect(),
            source: passes.source.as_ref().map(|source| harmless(&source.text)),
        };
    }
    let owed = |said| Torque::Owed {
        said,
        unit: unit.map(harmless),
    };
    match &fasteners.torque {
        Some(torque) => match &torque.value {
            Some(value) if value.unknown => owed(true),
            Some(value) => {
                let mut said = amount(plan, value);
                if let Some(turn) = &torque.then_turn {
                    said += &format!(", then turn {}", blank_if_unknown(turn));
                }
                Torque::Known {
                    passes: vec![said],
                    source: torque.source.as_ref().map(|source| harmless(&source.text)),
                }
            }
            None => match &torque.words {
                Some(words) => Torque::Words {
                    words: harmless(&words.text),
                    source: torque.source.as_ref().map(|source| harmless(&source.text)),
                },
                None => Torque::None,
            },
        },
        None => owed(false),
    }
}

fn pass(plan: &Plan, pass: &Pass) -> String {
    match pass {
        Pass::Torque(value) => amount(plan, value),
        Pass::Turn(angle) => format!("turn {}", blank_if_unknown(angle)),
        Pass::Slacken => "slacken off".into(),
        Pass::Mark => "mark".into(),
    }
}

/// A torque in both units: the plan's first, where it names one. The figure of the source always
/// stands in one of the two, because that is the one to check against the manual.
fn amount(plan: &Plan, value: &Amount) -> String {
    if value.unknown {
        return blank_if_unknown(value);
    }
    let written = harmless(&value.text);
    let shown = plan
        .heading
        .torque_in
        .as_deref()
        .and_then(unit_named)
        .zip(value.measure.as_ref())
        .filter(|(unit, measure)| *unit != measure.unit())
        .and_then(|(unit, measure)| measure.in_unit(unit));
    let other = || value.measure.as_ref()?.other_unit();
    match (shown, other()) {
        (Some(shown), _) => format!("{shown} ({written})"),
        (None, Some(other)) => format!("{written} ({other})"),
        (None, None) => written,
    }
}

/// The unit that is all of `text`.
fn unit_named(text: &str) -> Option<Unit> {
    unit_at_start(text)
        .filter(|(_, rest)| rest.is_empty())
        .map(|(spelling, _)| spelling.unit)
}

fn blank_if_unknown(amount: &Amount) -> String {
    if amount.unknown {
        "______".into()
    } else {
        harmless(&amount.text)
    }
}
