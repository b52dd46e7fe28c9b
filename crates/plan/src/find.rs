//! Looking up a step or a thing by what a person says of it.

use syntax::tree::Span;

use crate::model::{FileId, Plan, Step, StepId, Thing, ThingId};
use crate::near;
use crate::spelling;

/// Why no one thing was found.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct NoThing {
    /// The things that it could be, where there are several.
    pub several: Vec<ThingId>,
    /// The thing that was probably meant, where there is none.
    pub near: Option<ThingId>,
}

/// The thing of this name or label. Capitals and the spelling pairs of the trade make no
/// difference; a member of a series is asked for by its own name (`cap-3`).
///
/// # Errors
/// When no thing or more than one is called so: see [`NoThing`].
pub fn thing(plan: &Plan, said: &str) -> Result<ThingId, NoThing> {
    let said = words(said);
    let named = |thing: &Thing| thing.name == said || spelling::one(&thing.name) == said;
    let labelled = |thing: &Thing| labelled(thing, &said);
    let ending = |thing: &Thing| {
        let stem = thing.name.strip_suffix(said.as_str());
        stem.is_some_and(|stem| stem.ends_with('-'))
    };
    let ways: [&dyn Fn(&Thing) -> bool; 3] = [&named, &labelled, &ending];
    for way in ways {
        let found: Vec<ThingId> = plan
            .things()
            .filter(|(_, thing)| way(thing))
            .map(|(id, _)| id)
            .collect();
        match found.as_slice() {
            [] => {}
            [one] => return Ok(*one),
            _ => {
                let (several, near) = (found, None);
                return Err(NoThing { several, near });
            }
        }
    }
    Err(NoThing {
        several: Vec::new(),
        near: nearest_thing(plan, &said),
    })
}

/// Whether these words are the label of the thing, with or without the member of its series.
fn labelled(thing: &Thing, said: &str) -> bool {
    thing.label.as_deref().is_some_and(|label| {
        let of_member = thing
            .member
            .as_ref()
            .and_then(|member| label.strip_suffix(format!(" ({})", member.which).as_str()));
        words(label) == said || of_member.is_some_and(|label| words(label) == said)
    })
}

fn nearest_thing(plan: &Plan, said: &str) -> Option<ThingId> {
    let allowed = near::slips_for(said);
    let names = plan.things.iter().map(|thing| thing.name.as_str());
    if let Some(near) = near::nearest(said, names, allowed) {
        return plan
            .things()
            .find(|(_, t)| t.name == near)
            .map(|(id, _)| id);
    }
    let label = |thing: &Thing| thing.label.as_ref().map(|label| words(label));
    let labels: Vec<String> = plan.things.iter().filter_map(label).collect();
    let near = near::nearest(said, labels.iter().map(String::as_str), allowed)?;
    let mut things = plan.things();
    things
        .find(|(_, t)| label(t).is_some_and(|label| label == near))
        .map(|(id, _)| id)
}

/// The step that a person means: by its `as` name, its number (`14` is the fourteenth), its line
/// in the asked text (`line:30`), or its words (`tighten cover-screws`). Of several steps with
/// the same words a member of a series may be named behind them (`fit cap 3`).
///
/// # Errors
/// The steps that it could be: none, or more than one.
pub fn step(plan: &Plan, said: &str) -> Result<StepId, Vec<StepId>> {
    let said = words(said);
    if let Some(line) = said.strip_prefix("line:") {
        let line: usize = line.trim().parse().map_err(|_| Vec::new())?;
        return one(on_line(plan, line));
    }
    let named = matching(plan, |step| {
        step.name.as_ref().is_some_and(|name| name.text == said)
    });
    if !named.is_empty() {
        return one(named);
    }
    if let Ok(number) = said.parse::<u32>() {
        let known = number >= 1 && (number as usize) <= plan.steps.len();
        return if known {
            Ok(StepId(number - 1))
        } else {
            Err(Vec::new())
        };
    }
    one(by_words(plan, &said))
}

fn one(found: Vec<StepId>) -> Result<StepId, Vec<StepId>> {
    match found.as_slice() {
        [one] => Ok(*one),
        _ => Err(found),
    }
}

fn matching(plan: &Plan, fits: impl Fn(&Step) -> bool) -> Vec<StepId> {
    let fitting = plan.steps().filter(|(_, step)| fits(step));
    fitting.map(|(id, _)| id).collect()
}

/// The steps whose lines take in this line, counted from 1.
fn on_line(plan: &Plan, line: usize) -> Vec<StepId> {
    let Some(text) = plan.sources.first().map(|source| &source.tree.text) else {
        return Vec::new();
    };
    let Some(before) = line.checked_sub(1) else {
        return Vec::new();
    };
    let mut start = 0;
    for _ in 0..before {
        match text[start..].find('\n') {
            Some(at) => start += at + 1,
            None => return Vec::new(),
        }
    }
    let length = text[start..].find('\n').unwrap_or(text.len() - start);
    let line = Span::new(start as u32, (start + length) as u32);
    matching(plan, |step| {
        let place = step.place;
        place.file == FileId(0) && place.span.start < line.end && line.start < place.span.end
    })
}

/// The steps that these words describe: those that say exactly this, else those that say it and
/// more.
fn by_words(plan: &Plan, said: &str) -> Vec<StepId> {
    let (first, rest) = said.split_once(' ').unwrap_or((said, ""));
    let doing: Vec<StepId> = matching(plan, |step| {
        spelling::small(plan.text(step.keyword)) == first
    });
    // Without the verb, the words may still be those of a `do` or `sign`.
    if doing.is_empty() {
        return matching(plan, |step| says(step, said));
    }
    let asked: Vec<&str> = rest
        .split([',', ' '])
        .filter(|word| !matches!(*word, "" | "and" | "the"))
        .collect();
    let names = |step: &StepId| -> Vec<&Thing> {
        let targets = plan.step(*step).targets.iter();
        targets.map(|target| plan.thing(target.thing)).collect()
    };
    let called = |thing: &Thing, word: &str| {
        let stem = thing
            .member
            .as_ref()
            .and_then(|member| member.stem.split("-<").next());
        thing.name == word || stem == Some(word)
    };
    let labelled = |step: &StepId| names(step).iter().any(|thing| labelled(thing, rest));
    let of_member = |step: &StepId, word: &str| plan.step(*step).member.as_deref() == Some(word);
    let all = |step: &StepId| {
        asked.iter().all(|word| {
            names(step).iter().any(|thing| called(thing, word)) || of_member(step, word)
        })
    };
    let exactly = |step: &StepId| {
        all(step)
            && names(step)
                .iter()
                .all(|t| asked.iter().any(|word| called(t, word)))
    };
    let narrow = |fits: &dyn Fn(&StepId) -> bool| -> Vec<StepId> {
        doing.iter().copied().filter(|step| fits(step)).collect()
    };
    let quoted = rest.trim_matches('"');
    let ways: [&dyn Fn(&StepId) -> bool; 4] = [
        &exactly,
        &labelled,
        &|step| !asked.is_empty() && all(step),
        &|step| says(plan.step(*step), quoted),
    ];
    for way in ways {
        let found = narrow(way);
        if !found.is_empty() {
            return found;
        }
    }
    if rest.is_empty() { doing } else { Vec::new() }
}

/// Whether the quoted words of a step contain these.
fn says(step: &Step, said: &str) -> bool {
    let own = step.words.as_ref().map(|own| words(&own.text));
    !said.is_empty() && own.is_some_and(|own| own.contains(said))
}

/// In small letters, one blank between words.
fn words(said: &str) -> String {
    let words: Vec<&str> = said.split_whitespace().collect();
    spelling::small(&words.join(" ")).into_owned()
}
