//! Plans in words: steps, things and conditions as every page calls them.

use crate::look::harmless;
use plan::model::{Clause, Condition, Plan, Sort, State, StepId, Subject, ThingId, To};
use syntax::tree::{State as Word, Verb};

/// The numbers of the steps on the sheet, from 1, in the order shown.
pub struct Numbers {
    of: Vec<Option<usize>>,
}

impl Numbers {
    /// Numbers the steps of `plan` in `order`.
    pub fn of(plan: &Plan, order: &[StepId]) -> Numbers {
        let mut of = vec![None; plan.steps.len()];
        for (n, step) in order.iter().enumerate() {
            if let Some(slot) = of.get_mut(step.0 as usize) {
                *slot = Some(n + 1);
            }
        }
        Numbers { of }
    }

    /// The number of a step; 0 for one that is not in the order.
    pub fn number(&self, step: StepId) -> usize {
        self.of.get(step.0 as usize).copied().flatten().unwrap_or(0)
    }

    /// `step 12`.
    pub fn short(&self, step: StepId) -> String {
        format!("step {}", self.number(step))
    }

    /// `step 12 (Fit Heat exchanger)`: in a sentence.
    pub fn long(&self, plan: &Plan, step: StepId) -> String {
        format!("step {} ({})", self.number(step), self::step(plan, step))
    }

    /// `12  Fit Heat exchanger`: at the head of a line.
    pub fn head(&self, plan: &Plan, step: StepId) -> String {
        format!("{:>3}  {}", self.number(step), self::step(plan, step))
    }

    /// How many columns the widest number takes, at least three.
    pub fn width(&self) -> usize {
        self.of.len().to_string().len().max(3)
    }
}

/// What to call a thing.
pub fn thing(plan: &Plan, id: ThingId) -> String {
    harmless(plan.thing(id).called())
}

/// A step in words, with labels: `Fit Heat exchanger`.
pub fn step(plan: &Plan, id: StepId) -> String {
    let step = plan.step(id);
    let targets: Vec<String> = step.targets.iter().map(|t| thing(plan, t.thing)).collect();
    let words = step.words.as_ref().map(|w| harmless(&w.text));
    let mut said = match step.verb {
        Verb::Do => words.unwrap_or_else(|| "Do".into()),
        Verb::Sign => format!("Sign: {}", words.unwrap_or_default()),
        verb => format!("{} {}", imperative(verb), joined(&targets)),
    };
    match &step.to {
        Some(To::Amount(amount)) => said += &format!(" to {}", harmless(&amount.text)),
        Some(To::Place(place, _)) => {
            if let Some(name) = step
                .targets
                .first()
                .and_then(|t| place_name(plan, t.thing, *place))
            {
                said += &format!(" to {name}");
            }
        }
        Some(To::Things(things)) => {
            let things: Vec<String> = things.iter().map(|t| thing(plan, t.thing)).collect();
            said += &format!(" to {}", joined(&things));
        }
        Some(To::Words(words)) => said += &format!(" to {}", harmless(&words.text)),
        None => {}
    }
    if matches!(step.verb, Verb::Fill | Verb::Prime) {
        let fluids: Vec<String> = fluids(plan, id)
            .iter()
            .map(|fluid| thing(plan, *fluid))
            .collect();
        if !fluids.is_empty() {
            said += &format!(" with {}", joined(&fluids));
        }
    }
    if step.together {
        said += " together";
    }
    if step.trial {
        said += ", on trial";
    }
    said
}

/// The supplies that a filling or priming step puts in.
pub fn fluids(plan: &Plan, id: StepId) -> Vec<ThingId> {
    let step = plan.step(id);
    let with = step.with.iter().filter_map(|tool| tool.thing);
    let used = step.uses.iter().map(|used| used.thing);
    let mut fluids: Vec<ThingId> = with
        .chain(used)
        .filter(|t| plan.thing(*t).sort == Sort::Supply)
        .collect();
    fluids.dedup();
    fluids
}

/// The name of the n-th place of a position.
pub fn place_name(plan: &Plan, position: ThingId, place: u32) -> Option<String> {
    match &plan.thing(position).body {
        plan::model::Body::Position { places } => {
            places.get(place as usize).map(|(name, _)| harmless(name))
        }
        _ => None,
    }
}

/// `a`, `a and b`, `a, b and c`.
pub fn joined(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// The verb as an order, at the head of a line.
pub fn imperative(verb: Verb) -> &'static str {
    match verb {
        Verb::Fit => "Fit",
        Verb::DryFit => "Dry-fit",
        Verb::Start => "Start",
        Verb::Snug => "Snug",
        Verb::Tighten => "Tighten",
        Verb::Lock => "Lock",
        Verb::Unlock => "Unlock",
        Verb::Slacken => "Slacken",
        Verb::Undo => "Undo",
        Verb::Remove => "Remove",
        Verb::Apply => "Apply",
        Verb::Measure => "Measure",
        Verb::Set => "Set",
        Verb::Mark => "Mark",
        Verb::Bleed => "Bleed",
        Verb::Fill => "Fill",
        Verb::Drain => "Drain",
        Verb::Prime => "Prime",
        Verb::Inspect => "Inspect",
        Verb::Clean => "Clean",
        Verb::Heat => "Heat",
        Verb::Chill => "Chill",
        Verb::Turn => "Turn",
        Verb::Reach => "Reach",
        Verb::Sign => "Sign",
        Verb::Do => "Do",
    }
}

/// What has happened when the step is done: `fitted`, `tightened`.
pub fn participle(verb: Verb) -> &'static str {
    match verb {
        Verb::Fit => "fitted",
        Verb::DryFit => "dry-fitted",
        Verb::Start => "started",
        Verb::Snug => "snugged",
        Verb::Tighten => "tightened",
        Verb::Lock => "locked",
        Verb::Unlock => "unlocked",
        Verb::Slacken => "slackened",
        Verb::Undo => "undone",
        Verb::Remove => "removed",
        Verb::Apply => "applied",
        Verb::Measure => "measured",
        Verb::Set => "set",
        Verb::Mark => "marked",
        Verb::Bleed => "bled",
        Verb::Fill => "filled",
        Verb::Drain => "drained",
        Verb::Prime => "primed",
        Verb::Inspect => "inspected",
        Verb::Clean => "cleaned",
        Verb::Heat => "heated",
        Verb::Chill => "chilled",
        Verb::Turn => "turned",
        Verb::Reach => "reached",
        Verb::Sign => "signed",
        Verb::Do => "done",
    }
}

/// The word for a state.
pub fn state_word(state: Word) -> &'static str {
    match state {
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
        Word::Cleaned => "clean",
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

/// A condition in words, with labels: `Timing cover screws are tight`.
pub fn condition(plan: &Plan, condition: &Condition) -> String {
    let mut said: Vec<String> = Vec::new();
    let mut rest = condition.clauses.as_slice();
    while let Some(first) = rest.first() {
        // What was written as one clause is said as one: `cover and hood are fitted`.
        let alike = rest
            .iter()
            .take_while(|clause| clause.place == first.place)
            .count();
        let (together, behind) = rest.split_at(alike);
        said.push(clauses(plan, together));
        rest = behind;
    }
    joined(&said)
}

/// Clauses that were written as one.
fn clauses(plan: &Plan, clauses: &[Clause]) -> String {
    let mut subjects: Vec<String> = Vec::new();
    let mut states: Vec<String> = Vec::new();
    for clause in clauses {
        push_new(&mut subjects, subject(plan, clause));
        push_new(&mut states, state(plan, clause));
    }
    let are = subjects.len() > 1
        || clauses
            .first()
            .is_some_and(|clause| written_are(plan, clause));
    format!(
        "{} {} {}",
        joined(&subjects),
        if are { "are" } else { "is" },
        joined(&states)
    )
}

fn push_new(list: &mut Vec<String>, word: String) {
    if !list.contains(&word) {
        list.push(word);
    }
}

fn subject(plan: &Plan, clause: &Clause) -> String {
    match &clause.subject {
        Subject::Thing(id) => thing(plan, *id),
        Subject::Steps(steps) => steps
            .first()
            .map_or_else(String::new, |id| format!("\"{}\"", step(plan, *id))),
    }
}

fn state(plan: &Plan, clause: &Clause) -> String {
    match (clause.state, &clause.subject) {
        (State::Is(word), _) => state_word(word).into(),
        (State::At(place), Subject::Thing(id)) => {
            let name = place_name(plan, *id, place);
            name.map_or_else(|| "in its place".into(), |name| format!("at {name}"))
        }
        (State::At(_), Subject::Steps(_)) => state_word(Word::Done).into(),
    }
}

/// Whether the writer said `are`; where no such word was written, whether there are several.
fn written_are(plan: &Plan, clause: &Clause) -> bool {
    let mut words = plan.text(clause.place).split_whitespace();
    match words.find(|word| matches!(*word, "is" | "are")) {
        Some(word) => word == "are",
        None => match &clause.subject {
            Subject::Thing(id) => {
                let thing = plan.thing(*id);
                thing.fasteners().is_some_and(|f| f.count.unwrap_or(1) > 1)
            }
            Subject::Steps(_) => false,
        },
    }
}
