//! Small pieces of sentences shared by the rules and the sheets.

use plan::model::{
    Body, Clause, Condition, Place, Plan, State, Step, StepId, Subject, ThingId, To, ToolUse,
};
use syntax::tree::{Span, State as Word, Verb};

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
    let mut text = format!("{} {}", verb_word(step.verb), commas(&names));
    if step.together {
        text += " together";
    }
    match &step.to {
        Some(To::Things(things)) => {
            let on: Vec<String> = things.iter().map(|t| name(t.thing)).collect();
            text += &format!(" to {}", commas(&on));
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

/// Names with commas between, or semicolons where a label has a comma of its own.
fn commas(names: &[String]) -> String {
    let apart = if names.iter().any(|n| n.contains(',')) {
        "; "
    } else {
        ", "
    };
    names.join(apart)
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
    // A remark at the end of the line stands behind the details.
    if let Some(words) = &step.words {
        let between = Place {
            file: step.keyword.file,
            span: Span::new(span.end, words.place.span.start),
        };
        if plan.text(between).trim().is_empty() {
            span = span.to(words.place.span);
        }
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

/// `is` or `are`.
pub fn is_or_are(plan: &Plan, thing: ThingId) -> &'static str {
    verb(plan, thing, "is", "are")
}

/// The form of a verb that goes with a thing: by its count where that is known, else by the last
/// word of what it is called.
pub fn verb<'a>(plan: &Plan, thing: ThingId, one: &'a str, several: &'a str) -> &'a str {
    let it = plan.thing(thing);
    let count = match it.fasteners() {
        Some(f) => f.count,
        None => it.count,
    };
    match count {
        Some(1) => one,
        Some(_) => several,
        None if sounds_plural(it.called()) => several,
        None => one,
    }
}

fn sounds_plural(called: &str) -> bool {
    // A label may go on behind a comma or bracket: "Bearings, drive side".
    let head = called.split([',', '(']).next().unwrap_or(called).trim();
    let singular = ["ss", "us", "is", "as", "lens"];
    head.ends_with('s') && !singular.iter().any(|end| head.ends_with(end))
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

/// A condition in words, with labels and with the members of series named.
pub fn condition(plan: &Plan, condition: &Condition) -> String {
    let clauses: Vec<String> = condition.clauses.iter().map(|c| clause(plan, c)).collect();
    list(&clauses)
}

/// One clause in words: `the thing is tight`, `step “…” is done`.
pub fn clause(plan: &Plan, clause: &Clause) -> String {
    match &clause.subject {
        Subject::Steps(steps) => {
            let named: Vec<String> = steps
                .iter()
                .map(|s| match &plan.step(*s).name {
                    Some(name) => format!("{} (“{}”)", name.text, step_label(plan, *s)),
                    None => format!("“{}”", step_label(plan, *s)),
                })
                .collect();
            format!(
                "{} {} done",
                list(&named),
                if named.len() == 1 { "is" } else { "are" }
            )
        }
        Subject::Thing(thing) => {
            let called = called(plan, *thing);
            let are = is_or_are(plan, *thing);
            format!("{called} {are} {}", state(plan, *thing, clause.state))
        }
    }
}

/// A state in words.
pub fn state(plan: &Plan, thing: ThingId, state: State) -> String {
    match state {
        State::At(n) => {
            let place = match &plan.thing(thing).body {
                Body::Position { places } => places.get(n as usize).map(|(name, _)| name.as_str()),
                _ => None,
            };
            format!("at {}", place.unwrap_or("its place"))
        }
        State::Is(word) => word_of(word).to_string(),
    }
}

/// A state of the language as it is said.
pub fn word_of(word: Word) -> &'static str {
    match word {
        Word::Fitted => "fitted",
        Word::Off => "off",
        Word::Out => "out",
        Word::Started => "started",
        Word::Slack => "slack",
        Word::Snug => "snug",
        Word::Tight => "tight",
        Word::Locked => "locked",
        Word::Covered => "covered",
        Word::Bled => "bled",
        Word::Filled => "filled",
        Word::Drained => "drained",
        Word::Primed => "primed",
        Word::Measured => "measured",
        Word::Set => "set",
        Word::Marked => "marked",
        Word::Inspected => "inspected",
        Word::Cleaned => "cleaned",
        Word::Heated => "heated",
        Word::Chilled => "chilled",
        Word::Turned => "turned",
        Word::Reached => "reached",
        Word::Signed => "signed",
        Word::Applied => "applied",
        Word::Cured => "cured",
        Word::Done => "done",
    }
}
