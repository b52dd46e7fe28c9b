//! One step and all that a person at the bench needs with it.

use super::acts::Acts;
use super::chances::chance;
use super::fastening::fastening;
use super::parts::part_notes;
use super::supplies::{new_items, old_items, supplies};
use super::{Caution, Chance, Entry, Loose, Manner, Reading, Trouble, Wait, Wanted, Worked};
use crate::cautions::caution;
use crate::findings::Texts;
use crate::look::harmless;
use crate::words::{self, Numbers, thing};
use check::{Finding, Severity};
use plan::model::{
    Amount, Clause, Condition, Plan, Sort, Step, StepId, Subject, ThingId, To, ToolUse,
};
use std::collections::HashMap;
use syntax::tree::Verb;

/// A rule whose warning says no more than the blank that the sheet leaves anyway.
const SAID_BY_THE_BLANK: &str = "torque-missing";

/// Makes entries.
pub(super) struct Maker<'w> {
    worked: &'w Worked<'w>,
    texts: Texts<'w>,
    /// The numbers of the steps.
    pub numbers: Numbers,
    acts: Acts<'w>,
    chances: HashMap<StepId, Vec<Chance>>,
    troubles: HashMap<StepId, Vec<Trouble>>,
    loose: HashMap<StepId, Vec<(ThingId, &'w Condition)>>,
}

impl<'w> Maker<'w> {
    /// A maker for one sheet.
    pub fn of(worked: &'w Worked<'w>) -> Maker<'w> {
        let numbers = Numbers::of(worked.plan, &worked.order);
        let mut chances: HashMap<StepId, Vec<Chance>> = HashMap::new();
        for last in &worked.last_chances {
            chances
                .entry(last.step)
                .or_default()
                .push(chance(worked.plan, &numbers, last));
        }
        let mut loose: HashMap<StepId, Vec<(ThingId, &Condition)>> = HashMap::new();
        for (step, group, until) in &worked.loose {
            loose.entry(*step).or_default().push((*group, until));
        }
        Maker {
            worked,
            texts: Texts::of(worked.plan),
            acts: Acts::of(worked),
            chances,
            troubles: troubles(worked),
            loose,
            numbers,
        }
    }

    /// The entry of a step that stands at place `at` of the order.
    pub fn entry(&self, at: usize, id: StepId) -> Entry {
        let plan = self.worked.plan;
        let step = plan.step(id);
        Entry {
            number: self.numbers.number(id),
            step: id,
            name: words::step(plan, id),
            targets: step
                .targets
                .iter()
                .map(|target| thing(plan, target.thing))
                .collect(),
            known_as: step.name.as_ref().map(|name| harmless(&name.text)),
            line: self.texts.start(step.place).line,
            last_chances: self.chances.get(&id).cloned().unwrap_or_default(),
            troubles: self.troubles.get(&id).cloned().unwrap_or_default(),
            cautions: cautions(plan, step),
            waits: self.waits(at, step),
            only_after: only_after(plan, step),
            wanted: self.wanted(at, step),
            tools: tools(plan, step),
            supplies: supplies(plan, id),
            new_items: new_items(plan, step),
            old_items: old_items(plan, step),
            parts: part_notes(plan, &self.numbers, &self.acts, (at, id)),
            fastenings: step
                .targets
                .iter()
                .filter_map(|target| {
                    fastening(plan, &self.numbers, &self.acts, (at, id), target.thing)
                })
                .collect(),
            readings: readings(plan, step),
            leave_loose: self.loose(at, id),
            manner: manner(step),
            takes: step
                .takes
                .as_ref()
                .filter(|t| !t.unknown)
                .map(|t| harmless(&t.text)),
            disturbs: step
                .disturbs
                .iter()
                .map(|what| thing(plan, what.thing))
                .collect(),
            reasons: reasons(plan, step),
            notes: notes(step),
            sign: step.verb == Verb::Sign,
        }
    }

    fn waits(&self, at: usize, step: &Step) -> Vec<Wait> {
        let plan = self.worked.plan;
        step.lags
            .iter()
            .map(|lag| Wait {
                at_least: lag.at_least,
                time: text_or_blank(&lag.time),
                after: words::condition(plan, &lag.after),
                number: self
                    .acts
                    .made_by(at, &lag.after)
                    .map(|step| self.numbers.number(step)),
            })
            .collect()
    }

    /// What stays loose behind this step, said once: at the last step that leaves it so before it
    /// is tightened, and not where it is loosened to come off.
    fn loose(&self, at: usize, id: StepId) -> Vec<Loose> {
        let plan = self.worked.plan;
        let loose = self.loose.get(&id).map_or(&[][..], Vec::as_slice);
        loose
            .iter()
            .filter(|(group, _)| {
                let next = self.acts.next_turn(*group, at);
                next.is_none_or(|id| plan.step(id).verb == Verb::Tighten)
            })
            .map(|(group, until)| Loose {
                name: thing(plan, *group),
                until: words::condition(plan, until),
                because: until.because.as_deref().map(harmless),
                number: self
                    .acts
                    .next(*group, at, Verb::Tighten)
                    .map(|step| self.numbers.number(step)),
            })
            .collect()
    }

    /// What things want so that this may be done to them.
    fn wanted(&self, at: usize, step: &Step) -> Vec<Wanted> {
        let plan = self.worked.plan;
        let asked = |id: ThingId| match plan.thing(id).sort {
            Sort::Part | Sort::Unit | Sort::Item => matches!(step.verb, Verb::Fit | Verb::DryFit),
            Sort::Fasteners => {
                step.verb == Verb::Tighten
                    || matches!(step.verb, Verb::Slacken | Verb::Undo) && self.acts.is_tight(id, at)
            }
            Sort::Point => true,
            Sort::Position | Sort::Tool | Sort::Supply => false,
        };
        // What goes on with this step stands on its line already.
        let is_target = |clause: &Clause| matches!(clause.subject, Subject::Thing(id) if step.targets.iter().any(|t| t.thing == id));
        // What is shut in behind a plug nobody can check while it is undone; a helper put in for
        // the job, and how the machine stands, are there to be seen.
        let loosens = matches!(step.verb, Verb::Slacken | Verb::Undo);
        let seen = |clause: &Clause| match clause.subject {
            Subject::Thing(id) => {
                let what = plan.thing(id);
                what.temporary.is_some() || what.sort == Sort::Position
            }
            Subject::Steps(_) => false,
        };
        let mut wanted: Vec<(Option<&str>, Vec<&Condition>)> = Vec::new();
        for target in step.targets.iter().filter(|target| asked(target.thing)) {
            for need in &plan.thing(target.thing).needs {
                if need.clauses.iter().all(is_target) || loosens && !need.clauses.iter().all(seen) {
                    continue;
                }
                // What is wanted for one reason is said once with it.
                let because = need.because.as_deref();
                let same = wanted
                    .iter_mut()
                    .find(|(other, _)| because.is_some() && *other == because);
                match same {
                    Some((_, needs)) => needs.push(need),
                    None => wanted.push((because, vec![need])),
                }
            }
        }
        let mut said: Vec<Wanted> = Vec::new();
        for (because, needs) in wanted {
            let one = Wanted {
                condition: words::conditions(plan, &needs),
                because: because.map(harmless),
            };
            if !said.contains(&one) {
                said.push(one);
            }
        }
        said
    }
}

/// Errors and warnings, each at one step only: the one it stands in, else the first it is about.
fn troubles(worked: &Worked<'_>) -> HashMap<StepId, Vec<Trouble>> {
    let plan = worked.plan;
    let home = |finding: &Finding| {
        let stands_in = finding.steps.iter().copied().find(|step| {
            let place = plan.step(*step).place;
            place.file == finding.place.file && place.span.contains(finding.place.span.start)
        });
        stands_in.or_else(|| finding.steps.first().copied())
    };
    let mut troubles: HashMap<StepId, Vec<Trouble>> = HashMap::new();
    for finding in worked.findings {
        let told = finding.severity > Severity::Hint && finding.rule.name != SAID_BY_THE_BLANK;
        if let Some(step) = home(finding).filter(|_| told) {
            troubles.entry(step).or_default().push(Trouble {
                severity: finding.severity,
                rule: finding.rule.name,
                says: harmless(&finding.says),
            });
        }
    }
    troubles
}

/// A figure as written; a blank where it is not known.
pub(super) fn text_or_blank(amount: &Amount) -> String {
    if amount.unknown {
        "______".into()
    } else {
        harmless(&amount.text)
    }
}

/// The writer's own cautions, then the line of every kind of hazard that this step meets.
fn cautions(plan: &Plan, step: &Step) -> Vec<Caution> {
    let mut kinds: Vec<&str> = step.hazards.iter().map(String::as_str).collect();
    // Nothing is lifted while the bolts of a heavy part are turned.
    let lifts = matches!(step.verb, Verb::Fit | Verb::DryFit | Verb::Remove);
    for target in &step.targets {
        let what = plan.thing(target.thing);
        kinds.extend(
            what.hazards
                .iter()
                .map(String::as_str)
                .filter(|kind| lifts || *kind != "heavy"),
        );
        // Undoing the fasteners is what lets a loaded spring or a pressure go, not the lifting
        // of the part afterwards.
        if let Some(fasteners) = what.fasteners()
            && matches!(step.verb, Verb::Slacken | Verb::Undo | Verb::Remove)
        {
            let held = fasteners
                .hold
                .iter()
                .flat_map(|held| &plan.thing(held.thing).hazards);
            kinds.extend(held.map(String::as_str).filter(|kind| *kind != "heavy"));
        }
    }
    match step.verb {
        Verb::Heat => kinds.push("heat"),
        Verb::Chill => kinds.push("cold"),
        _ => {}
    }
    let own = step.cautions.iter().map(|text| Caution {
        says: harmless(&text.text),
        kind: None,
        first_at: None,
    });
    let mut cautions: Vec<Caution> = own.collect();
    for kind in kinds {
        let says = caution(kind);
        if !cautions.iter().any(|other| other.says == says) {
            cautions.push(Caution {
                says,
                kind: Some(harmless(kind).replace('-', " ")),
                first_at: None,
            });
        }
    }
    cautions
}

fn tools(plan: &Plan, step: &Step) -> Vec<String> {
    let tools = step.with.iter();
    tools
        .filter(|tool| {
            tool.thing
                .is_none_or(|id| plan.thing(id).sort != Sort::Supply)
        })
        .map(|tool| self::tool(plan, tool))
        .collect()
}

/// A tool as a person asks for it.
pub(super) fn tool(plan: &Plan, tool: &ToolUse) -> String {
    match tool.thing {
        Some(id) => thing(plan, id),
        None => harmless(&tool.text),
    }
}

/// A blank for every point that is measured or set.
fn readings(plan: &Plan, step: &Step) -> Vec<Reading> {
    let set_to = match &step.to {
        Some(To::Amount(amount)) if step.verb == Verb::Set => Some(amount),
        _ => None,
    };
    if !matches!(step.verb, Verb::Measure | Verb::Set) && step.expect.is_none() {
        return Vec::new();
    }
    let figure = step.expect.as_ref().or(set_to);
    let unit = figure
        .and_then(|amount| amount.measure.as_ref())
        .map(|m| m.unit_as_written().to_owned());
    let expected = step
        .expect
        .as_ref()
        .filter(|amount| !amount.unknown)
        .map(|amount| harmless(&amount.text));
    let reading = |name| Reading {
        name,
        expected: expected.clone(),
        unit: unit.clone(),
    };
    if step.targets.is_empty() {
        return vec![reading(String::new())];
    }
    step.targets
        .iter()
        .map(|target| reading(thing(plan, target.thing)))
        .collect()
}

fn manner(step: &Step) -> Vec<Manner> {
    let manners = [
        (step.trial, Manner::Trial),
        (step.verb == Verb::DryFit, Manner::DryFit),
        (step.for_good, Manner::ForGood),
        (step.to_its_mark.is_some(), Manner::ToItsMark),
    ];
    manners
        .into_iter()
        .filter_map(|(is, manner)| is.then_some(manner))
        .collect()
}

/// What the writer wants to be so first. Where a reason is given it is said with the reason.
fn only_after(plan: &Plan, step: &Step) -> Vec<String> {
    step.after
        .iter()
        .filter(|condition| condition.because.is_none())
        .map(|condition| words::condition(plan, condition))
        .collect()
}

/// Why the step stands where it stands, where the writer gave a reason.
fn reasons(plan: &Plan, step: &Step) -> Vec<String> {
    let said = |lead: &str, condition: &Condition| {
        let because = condition.because.as_deref()?;
        Some(format!(
            "{lead} {}: {}",
            words::condition(plan, condition),
            harmless(because)
        ))
    };
    let after = step
        .after
        .iter()
        .filter_map(|condition| said("only when", condition));
    let before = step
        .before
        .iter()
        .filter_map(|condition| said("before", condition));
    after.chain(before).collect()
}

/// The remark behind the targets, then the notes.
fn notes(step: &Step) -> Vec<String> {
    let is_remark = !matches!(step.verb, Verb::Do | Verb::Sign);
    let remark = step.words.as_ref().filter(|_| is_remark);
    remark
        .into_iter()
        .chain(&step.notes)
        .map(|text| harmless(&text.text))
        .collect()
}
