//! A torque that is more than its joint bears.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::joints;
use crate::rules::Rule;
use plan::model::{Fasteners, Place, Thing};
use workshop::joint::{Joint, JointCheck, Limit, Passing, Weakest, check_joint};
use workshop::working::Working;

/// The rule.
pub const RULE: Rule = Rule {
    name: "torque-high",
    severity: Severity::Error,
    statement: "A torque is more than the screw or the thread in the hole bears.",
    reason: "The screw stretches until it breaks, or the thread pulls out of the casting, often on the last few degrees of the last screw.",
    bad: r#"part cover
fasteners cover-screws
  6 x M6 class 8.8
  hold cover
  into aluminium 12 mm
  torque 80 N.m from "maker's sheet 3"
fit cover
tighten cover-screws
"#,
    good: r#"part cover
fasteners cover-screws
  6 x M6 class 8.8
  hold cover
  into aluminium 12 mm
  torque 8 N.m from "maker's sheet 3"
fit cover
tighten cover-screws
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    for thing in &bench.plan.things {
        if let Some(group) = thing.fasteners()
            && !thing.uncertain
            && let Some(finding) = too_much(thing, group)
        {
            found.push(finding);
        }
    }
}

fn too_much(thing: &Thing, group: &Fasteners) -> Option<Finding> {
    let torques = joints::torques(group);
    let wanted = torques
        .iter()
        .max_by(|a, b| a.torque.si().total_cmp(&b.torque.si()))?;
    // The same fault is told as what it most likely is: a slip between two units.
    if joints::slip(group, wanted.torque).is_some() {
        return None;
    }
    let thread = joints::thread(group)?;
    let joint = Joint {
        class: joints::class(group, &thread),
        hole: joints::hole(group),
        ..Joint::new(thread.clone(), joints::nut_factor(group))
    };
    let check = check_joint(wanted.torque, &joint)?;
    let limit = check
        .worst()
        .filter(|limit| limit.passing >= Passing::Likely)?;
    let gives_way = match limit.weakest {
        Weakest::Screw => format!("a screw of this class stretches for good at {}", limit.load),
        Weakest::HoleThread => {
            let family = group.into.as_ref().map_or("", |(material, ..)| material);
            format!("the thread in the {family} strips at {}", limit.load)
        }
        _ => format!("the screw's own thread strips at {}", limit.load),
    };
    let load = match limit.passing {
        Passing::Certain => format!(
            "about {}, and with {} even where friction takes the most of it",
            check.loads[1], check.loads[0]
        ),
        _ => format!("about {}", check.loads[1]),
    };
    let says = format!(
        "{} makes {} pull with {load}; {gives_way}.",
        wanted.amount.text,
        if group.count == Some(1) {
            thing.called().to_owned()
        } else {
            format!("each of {}", thing.called())
        }
    );
    let mut finding = Finding::new(&RULE, wanted.amount.place, thing.name.as_str(), says);
    finding.severity = severity(&check);
    let thread_place = group.thread.as_ref()?.place;
    finding = finding.because(thread_place, chain(&check.working));
    if let Some(place) = limit_place(group, limit) {
        finding = finding.because(place, chain(&limit.working));
    }
    Some(finding.advice(terms(&check.working, &limit.working)))
}

/// The strength of a hole is that of a weak material of its kind, so a hole alone makes no error.
fn severity(check: &JointCheck) -> Severity {
    let sure =
        |limit: &Limit| limit.passing == Passing::Certain && limit.weakest != Weakest::HoleThread;
    if check.limits.iter().any(sure) {
        Severity::Error
    } else {
        Severity::Warning
    }
}

/// Where the plan says what gives way.
fn limit_place(group: &Fasteners, limit: &Limit) -> Option<Place> {
    match limit.weakest {
        Weakest::Screw => group.class.as_ref().map(|class| class.place),
        _ => group.into.as_ref().map(|(_, _, place)| *place),
    }
}

/// The arithmetic, one line behind the other.
fn chain(working: &Working) -> String {
    let lines: Vec<String> = working
        .lines
        .iter()
        .map(|line| {
            if line.formula.is_empty() {
                format!("{} = {}", line.what, line.result)
            } else {
                format!(
                    "{} = {} = {} = {}",
                    line.what, line.formula, line.numbers, line.result
                )
            }
        })
        .collect();
    lines.join("; ")
}

/// What was taken for granted, and where the sums come from.
fn terms(load: &Working, limit: &Working) -> String {
    let mut assumptions: Vec<&str> = Vec::new();
    let mut sources: Vec<String> = Vec::new();
    for working in [load, limit] {
        for assumption in &working.assumptions {
            if !assumptions.contains(&assumption.as_str()) {
                assumptions.push(assumption);
            }
        }
        for source in &working.sources {
            let source = source.to_string();
            if !sources.contains(&source) {
                sources.push(source);
            }
        }
    }
    let taken = if assumptions.is_empty() {
        String::new()
    } else {
        format!("Taking it that {}. ", assumptions.join("; that "))
    };
    format!(
        "Look the figure up again, its unit too. {taken}Sums from: {}.",
        sources.join("; ")
    )
}
