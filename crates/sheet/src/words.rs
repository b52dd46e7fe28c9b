//! Plans in words: steps, things and conditions as every page calls them.

use crate::look::harmless;
pub use check::words::list as joined;
use plan::model::{Clause, Condition, Fasteners, Plan, Sort, State, StepId, Subject, ThingId};
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

/// Nouns of things that are in or out, with nothing to tighten.
const NO_THREAD: [&str; 7] = ["pin", "clip", "ring", "key", "dowel", "clamp", "strap"];

/// Whether there is a thread to tighten.
pub(crate) fn threaded(fasteners: &Fasteners) -> bool {
    let noun = fasteners.noun.as_deref().unwrap_or("");
    fasteners.thread.is_some()
        || fasteners.torque.is_some()
        || fasteners.passes.is_some()
        || !NO_THREAD.contains(&noun)
}

/// A step in words, with labels: `Fit Heat exchanger`.
pub fn step(plan: &Plan, id: StepId) -> String {
    let named = harmless(&check::words::capital(&check::words::step_label(plan, id)));
    match named.strip_prefix("Sign ") {
        Some(who) if plan.step(id).verb == Verb::Sign => format!("Signature: {who}"),
        _ => named,
    }
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

/// A condition in words, with labels: `Timing cover screws are tight`.
pub fn condition(plan: &Plan, condition: &Condition) -> String {
    conditions(plan, &[condition])
}

/// Several conditions as one.
pub fn conditions(plan: &Plan, conditions: &[&Condition]) -> String {
    let mut said: Vec<Said> = Vec::new();
    let clauses: Vec<&Clause> = conditions
        .iter()
        .flat_map(|condition| &condition.clauses)
        .collect();
    let mut rest = clauses.as_slice();
    while let Some(first) = rest.first() {
        // What was written as one clause is said as one: `cover and hood are fitted`.
        let alike = rest
            .iter()
            .take_while(|clause| clause.place == first.place)
            .count();
        let (together, behind) = rest.split_at(alike);
        let clause = as_one(plan, together);
        match said.last_mut() {
            Some(last) if last.states == clause.states => {
                clause
                    .subjects
                    .into_iter()
                    .for_each(|subject| push_new(&mut last.subjects, subject));
            }
            _ => said.push(clause),
        }
        rest = behind;
    }
    let said: Vec<String> = said.iter().map(Said::words).collect();
    joined(&said)
}

/// One clause in pieces.
struct Said {
    subjects: Vec<String>,
    states: Vec<String>,
    are: bool,
}

impl Said {
    fn words(&self) -> String {
        let verb = if self.are || self.subjects.len() > 1 {
            "are"
        } else {
            "is"
        };
        format!("{} {verb} {}", joined(&self.subjects), joined(&self.states))
    }
}

/// Clauses that were written as one.
fn as_one(plan: &Plan, clauses: &[&Clause]) -> Said {
    let mut said = Said {
        subjects: Vec::new(),
        states: Vec::new(),
        are: clauses
            .first()
            .is_some_and(|clause| written_are(plan, clause)),
    };
    for clause in clauses {
        push_new(&mut said.subjects, subject(plan, clause));
        push_new(&mut said.states, state(plan, clause));
    }
    said
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
    match &clause.subject {
        Subject::Thing(id) => {
            let home = matches!(
                clause.state,
                State::Is(Word::Tight | Word::Snug | Word::Started)
            ) && plan.thing(*id).fasteners().is_some_and(|f| !threaded(f));
            if home {
                "in".into()
            } else {
                harmless(&check::words::state(plan, *id, clause.state))
            }
        }
        Subject::Steps(_) => "done".into(),
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
