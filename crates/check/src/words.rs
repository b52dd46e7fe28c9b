//! Small pieces of sentences shared by the rules and the sheets.

use plan::model::{Place, Plan, Step, StepId, ThingId, To, ToolUse};
use syntax::tree::{Span, Verb};

/// A step in the language's own words: `fit heat-exchanger`.
pub fn step(plan: &Plan, id: StepId) -> String {
    said(plan, plan.step(id), |t| plan.thing(t).name.clone())
}

/// A step in words for people, with labels: `fit Heat exchanger`.
pub fn step_label(plan: &Plan, id: StepId) -> String {
    said(plan, plan.step(id), |t| plan.thing(t).called().to_string())
}

fn said(plan: &Plan, step: &Step, name: impl Fn(ThingId) -> String) -> String {
    if matches!(step.verb, Verb::Do | Verb::Sign) || step.targets.is_empty() {
        let words = step.words.as_ref().map_or("", |w| w.text.as_str());
        return match step.verb {
            Verb::Do => words.to_string(),
            verb => format!("{} {words}", verb_word(verb))
                .trim_end()
                .to_string(),
        };
    }
    let names: Vec<String> = step.targets.iter().map(|t| name(t.thing)).collect();
    let mut text = format!("{} {}", verb_word(step.verb), names.join(", "));
    match &step.to {
        Some(To::Things(things)) => {
            let on: Vec<String> = things.iter().map(|t| name(t.thing)).collect();
            text += &format!(" to {}", on.join(", "));
        }
        Some(To::Place(n, _)) => {
            if let Some(target) = step.targets.first()
                && let plan::model::Body::Position { places } = &plan.thing(target.thing).body
                && let Some((place, _)) = places.get(*n as usize)
            {
                text += &format!(" to {place}");
            }
        }
        Some(To::Amount(a)) => text += &format!(" to {}", a.text),
        Some(To::Words(w)) => text += &format!(" to {}", w.text),
        None => {}
    }
    text
}

/// The verb as written in the language.
pub fn verb_word(verb: Verb) -> &'static str {
    match verb {
        Verb::Fit => "fit",
        Verb::DryFit => "dry-fit",
        Verb::Start => "start",
        Verb::Snug => "snug",
        Verb::Tighten => "tighten",
        Verb::Lock => "lock",
        Verb::Unlock => "unlock",
        Verb::Slacken => "slacken",
        Verb::Undo => "undo",
        Verb::Remove => "remove",
        Verb::Apply => "apply",
        Verb::Measure => "measure",
        Verb::Set => "set",
        Verb::Mark => "mark",
        Verb::Bleed => "bleed",
        Verb::Fill => "fill",
        Verb::Drain => "drain",
        Verb::Prime => "prime",
        Verb::Inspect => "inspect",
        Verb::Clean => "clean",
        Verb::Heat => "heat",
        Verb::Chill => "chill",
        Verb::Turn => "turn",
        Verb::Reach => "reach",
        Verb::Sign => "sign",
        Verb::Do => "do",
    }
}

/// Where a step says what it does: from its verb to its last target, without its details.
pub fn step_place(plan: &Plan, id: StepId) -> Place {
    let step = plan.step(id);
    let mut span = step.keyword.span;
    for target in &step.targets {
        if target.place.file == step.keyword.file {
            span = span.to(target.place.span);
        }
    }
    if let Some(words) = &step.words {
        span = span.to(words.place.span);
    }
    Place {
        file: step.keyword.file,
        span: Span::new(step.keyword.span.start, span.end),
    }
}

/// The thing in a sentence.
pub fn called(plan: &Plan, thing: ThingId) -> &str {
    plan.things
        .get(thing.0 as usize)
        .map_or("this", |t| t.called())
}

/// `is` or `are`, by the sort of the thing: groups of fasteners are spoken of in the plural.
pub fn is_or_are(plan: &Plan, thing: ThingId) -> &'static str {
    let one = plan.thing(thing);
    match one.fasteners() {
        Some(f) => match f.count {
            Some(1) => "is",
            Some(_) => "are",
            // Nobody counted them, so the name has to tell.
            None if one.called().ends_with('s') && !one.called().ends_with("ss") => "are",
            None => "is",
        },
        None => "is",
    }
}

/// `a`, `a and b`, `a, b and c`.
pub fn list<S: AsRef<str>>(items: &[S]) -> String {
    match items {
        [] => String::new(),
        [one] => one.as_ref().to_string(),
        [first @ .., last] => {
            let first: Vec<&str> = first.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", first.join(", "), last.as_ref())
        }
    }
}

/// Tools as one phrase: `socket 11 mm and extension`.
pub fn tools(tools: &[ToolUse]) -> String {
    list(&tools.iter().map(|t| t.text.as_str()).collect::<Vec<_>>())
}

/// The first letter in upper case.
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map(|c| c.to_uppercase().collect::<String>() + chars.as_str())
        .unwrap_or_default()
}
