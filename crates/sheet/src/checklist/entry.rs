//! One step and all that a person at the bench needs with it.

use super::chances::chances;
use super::fastening::fastening;
use super::{
    Entry, Loose, Manner, NewItem, OldItem, PartNote, Reading, SupplyUse, Trouble, Wait, Wanted,
    Worked,
};
use crate::cautions::caution;
use crate::findings::Texts;
use crate::look::harmless;
use crate::words::{self, Numbers, thing};
use check::Severity;
use plan::model::{
    Amount, Body, Clause, Condition, Plan, Sort, State, Step, StepId, Subject, ThingId, To, ToolUse,
};
use syntax::tree::{State as Word, Verb};

/// A rule whose warning says no more than the blank that the sheet leaves anyway.
const SAID_BY_THE_BLANK: &str = "torque-missing";

/// Makes entries.
pub(super) struct Maker<'w> {
    worked: &'w Worked<'w>,
    texts: Texts<'w>,
    /// The numbers of the steps.
    pub numbers: Numbers,
}

impl<'w> Maker<'w> {
    /// A maker for one sheet.
    pub fn of(worked: &'w Worked<'w>) -> Maker<'w> {
        Maker {
            worked,
            texts: Texts::of(worked.plan),
            numbers: Numbers::of(worked.plan, &worked.order),
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
            known_as: step.name.as_ref().map(|name| harmless(&name.text)),
            line: self.texts.start(step.place).line,
            last_chances: chances(self.worked, &self.numbers, id),
            troubles: self.troubles(id),
            cautions: cautions(plan, step),
            waits: self.waits(at, step),
            wanted: wanted(plan, step),
            tools: tools(plan, step),
            supplies: supplies(plan, id),
            new_items: step
                .news
                .iter()
                .map(|new| new_item(plan, new.thing))
                .collect(),
            old_items: step
                .olds
                .iter()
                .map(|(old, because)| OldItem {
                    name: thing(plan, old.thing),
                    because: because.as_deref().map(harmless),
                })
                .collect(),
            parts: part_notes(plan, step),
            fastenings: step
                .targets
                .iter()
                .filter_map(|target| fastening(self.worked, &self.numbers, at, id, target.thing))
                .collect(),
            reading: reading(step),
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

    /// Errors and warnings, each at one step only: the one it stands in, else the first it is
    /// about.
    fn troubles(&self, id: StepId) -> Vec<Trouble> {
        let plan = self.worked.plan;
        let home = |finding: &check::Finding| {
            let stands_in = finding.steps.iter().copied().find(|step| {
                let place = plan.step(*step).place;
                place.file == finding.place.file && place.span.contains(finding.place.span.start)
            });
            stands_in.or_else(|| finding.steps.first().copied())
        };
        let findings = self.worked.findings.iter();
        findings
            .filter(|finding| {
                finding.severity > Severity::Hint && finding.rule.name != SAID_BY_THE_BLANK
            })
            .filter(|finding| home(finding) == Some(id))
            .map(|finding| Trouble {
                severity: finding.severity,
                rule: finding.rule.name,
                says: harmless(&finding.says),
            })
            .collect()
    }

    fn waits(&self, at: usize, step: &Step) -> Vec<Wait> {
        let plan = self.worked.plan;
        step.lags
            .iter()
            .map(|lag| Wait {
                at_least: lag.at_least,
                time: text_or_blank(&lag.time),
                after: words::condition(plan, &lag.after),
                number: self.made_by(at, &lag.after),
            })
            .collect()
    }

    fn loose(&self, at: usize, id: StepId) -> Vec<Loose> {
        let plan = self.worked.plan;
        let tightened = |group: ThingId| {
            self.worked.order[at..]
                .iter()
                .copied()
                .skip(1)
                .find(|later| {
                    let later = plan.step(*later);
                    later.verb == Verb::Tighten
                        && !later.trial
                        && later.targets.iter().any(|target| target.thing == group)
                })
        };
        self.worked
            .loose
            .iter()
            .filter(|(step, _, _)| *step == id)
            .map(|(_, group, until)| Loose {
                name: thing(plan, *group),
                until: words::condition(plan, until),
                because: until.because.as_deref().map(harmless),
                number: tightened(*group).map(|step| self.numbers.number(step)),
            })
            .collect()
    }

    /// The number of the last step before place `at` that made the condition true, as far as that
    /// can be told from what the step does; only to help the eye find it.
    fn made_by(&self, at: usize, condition: &Condition) -> Option<usize> {
        let plan = self.worked.plan;
        let before = self.worked.order[..at].iter().rev();
        before
            .copied()
            .find(|id| {
                condition
                    .clauses
                    .iter()
                    .any(|clause| makes(plan, *id, clause))
            })
            .map(|id| self.numbers.number(id))
    }
}

/// Whether a step is one that makes the clause true.
fn makes(plan: &Plan, id: StepId, clause: &Clause) -> bool {
    let step = plan.step(id);
    let subject = match &clause.subject {
        Subject::Steps(steps) => return steps.contains(&id),
        Subject::Thing(thing) => *thing,
    };
    let State::Is(state) = clause.state else {
        return step.verb == Verb::Turn
            && step.targets.iter().any(|target| target.thing == subject);
    };
    let verbs: &[Verb] = match state {
        Word::Applied | Word::Cured => {
            return step.uses.iter().any(|used| used.thing == subject)
                || step.verb == Verb::Apply
                    && step.targets.iter().any(|target| target.thing == subject);
        }
        Word::Fitted => &[Verb::Fit],
        Word::Off => &[Verb::Remove],
        Word::Out => &[Verb::Undo, Verb::Remove],
        Word::Started => &[Verb::Start, Verb::Snug, Verb::Tighten],
        Word::Slack => &[Verb::Slacken, Verb::Undo],
        Word::Snug => &[Verb::Snug, Verb::Tighten],
        Word::Tight => &[Verb::Tighten],
        Word::Locked => &[Verb::Lock],
        Word::Bled => &[Verb::Bleed],
        Word::Filled => &[Verb::Fill],
        Word::Drained => &[Verb::Drain],
        Word::Primed => &[Verb::Prime],
        Word::Measured => &[Verb::Measure],
        Word::Set => &[Verb::Set],
        Word::Marked => &[Verb::Mark],
        Word::Inspected => &[Verb::Inspect],
        Word::Cleaned => &[Verb::Clean],
        Word::Heated => &[Verb::Heat],
        Word::Chilled => &[Verb::Chill],
        Word::Turned => &[Verb::Turn],
        Word::Reached => &[Verb::Reach],
        Word::Signed => &[Verb::Sign],
        Word::Covered | Word::Done => &[],
    };
    verbs.contains(&step.verb) && step.targets.iter().any(|target| target.thing == subject)
}

fn text_or_blank(amount: &Amount) -> String {
    if amount.unknown {
        "______".into()
    } else {
        harmless(&amount.text)
    }
}

/// The writer's own cautions, then the line of every kind of hazard that this step meets.
fn cautions(plan: &Plan, step: &Step) -> Vec<String> {
    let mut kinds: Vec<&str> = step.hazards.iter().map(String::as_str).collect();
    for target in &step.targets {
        let what = plan.thing(target.thing);
        kinds.extend(what.hazards.iter().map(String::as_str));
        // Undoing the fasteners is what lets a loaded spring or a pressure go, not the lifting
        // of the part afterwards.
        if let Some(fasteners) = what.fasteners()
            && matches!(step.verb, Verb::Slacken | Verb::Undo | Verb::Remove)
        {
            let held = fasteners
                .hold
                .iter()
                .flat_map(|held| &plan.thing(held.thing).hazards);
            kinds.extend(held.map(String::as_str));
        }
    }
    match step.verb {
        Verb::Heat => kinds.push("heat"),
        Verb::Chill => kinds.push("cold"),
        _ => {}
    }
    let mut lines: Vec<String> = step.cautions.iter().map(|c| harmless(&c.text)).collect();
    for kind in kinds {
        let line = caution(kind);
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    lines
}

/// What things want so that this may be done to them.
fn wanted(plan: &Plan, step: &Step) -> Vec<Wanted> {
    let asked = |sort: Sort| match sort {
        Sort::Part | Sort::Unit | Sort::Item => matches!(step.verb, Verb::Fit | Verb::DryFit),
        Sort::Fasteners => matches!(step.verb, Verb::Tighten | Verb::Slacken | Verb::Undo),
        Sort::Point => true,
        Sort::Position | Sort::Tool | Sort::Supply => false,
    };
    let mut wanted: Vec<Wanted> = Vec::new();
    for target in &step.targets {
        let what = plan.thing(target.thing);
        if !asked(what.sort) {
            continue;
        }
        for need in &what.needs {
            // Parts that go on with this step are on its line already.
            let clauses = need.clauses.iter();
            if clauses.clone().all(|clause| {
                matches!(clause.subject, Subject::Thing(id) if step.targets.iter().any(|t| t.thing == id))
            }) {
                continue;
            }
            let entry = Wanted {
                condition: words::condition(plan, need),
                because: need.because.as_deref().map(harmless),
            };
            if !wanted.contains(&entry) {
                wanted.push(entry);
            }
        }
    }
    wanted
}

fn tools(plan: &Plan, step: &Step) -> Vec<String> {
    let tools = step.with.iter();
    tools
        .filter(|tool| {
            !tool
                .thing
                .is_some_and(|id| plan.thing(id).sort == Sort::Supply)
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

fn supplies(plan: &Plan, id: StepId) -> Vec<SupplyUse> {
    let step = plan.step(id);
    let mut used: Vec<ThingId> = Vec::new();
    if step.verb == Verb::Apply {
        used.extend(step.targets.iter().map(|target| target.thing));
    }
    used.extend(step.uses.iter().map(|used| used.thing));
    used.extend(words::fluids(plan, id));
    let mut supplies: Vec<SupplyUse> = Vec::new();
    for supply in used {
        let name = thing(plan, supply);
        if supplies.iter().any(|s| s.name == name) {
            continue;
        }
        let facts = plan.thing(supply).supply();
        let time = |amount: Option<&Amount>| amount.map(text_or_blank);
        supplies.push(SupplyUse {
            amount: amount_held(plan, step, supply),
            close_within: time(facts.and_then(|f| f.close_within.as_ref())),
            fixes_in: time(facts.and_then(|f| f.fixes_in.as_ref())),
            cures_in: time(facts.and_then(|f| f.cures_in.as_ref())),
            name,
        });
    }
    supplies
}

/// How much of a fluid the filled point holds.
fn amount_held(plan: &Plan, step: &Step, supply: ThingId) -> Option<String> {
    if step.verb != Verb::Fill {
        return None;
    }
    step.targets.iter().find_map(|target| {
        let (fluid, _, amount) = plan.thing(target.thing).point()?.holds.as_ref()?;
        let same = fluid.is_none_or(|fluid| fluid == supply);
        same.then(|| amount.as_ref().map(text_or_blank)).flatten()
    })
}

fn new_item(plan: &Plan, id: ThingId) -> NewItem {
    let what = plan.thing(id);
    NewItem {
        name: thing(plan, id),
        count: what.count,
        size: match &what.body {
            Body::Item { size, .. } => size.as_deref().map(harmless),
            _ => None,
        },
    }
}

/// Which way round, which side, whose mate: for every part that has something to say.
fn part_notes(plan: &Plan, step: &Step) -> Vec<PartNote> {
    let goes_on = matches!(step.verb, Verb::Fit | Verb::DryFit);
    if !goes_on && step.verb != Verb::Remove {
        return Vec::new();
    }
    let targets = step.targets.iter().filter(|target| {
        let sort = plan.thing(target.thing).sort;
        matches!(sort, Sort::Part | Sort::Unit | Sort::Item)
    });
    targets
        .map(|target| {
            let part = plan.thing(target.thing);
            let matched = part
                .matched_with
                .iter()
                .map(|mate| thing(plan, mate.thing))
                .collect();
            PartNote {
                name: thing(plan, target.thing),
                facing: part
                    .facing
                    .as_ref()
                    .filter(|_| goes_on)
                    .map(|facing| harmless(&facing.text)),
                side: part
                    .side
                    .as_ref()
                    .filter(|_| goes_on)
                    .map(|(side, _)| harmless(side)),
                matched_with: if goes_on { matched } else { Vec::new() },
                mass: part
                    .mass
                    .as_ref()
                    .filter(|mass| !mass.unknown)
                    .map(|mass| harmless(&mass.text)),
                temporary: part.temporary.map(|_| part.count.unwrap_or(1)),
            }
        })
        .filter(|note| {
            note.facing.is_some()
                || note.side.is_some()
                || !note.matched_with.is_empty()
                || note.mass.is_some()
                || note.temporary.is_some()
        })
        .collect()
}

fn reading(step: &Step) -> Option<Reading> {
    let set_to = match &step.to {
        Some(To::Amount(amount)) if step.verb == Verb::Set => Some(amount),
        _ => None,
    };
    if !matches!(step.verb, Verb::Measure | Verb::Set) && step.expect.is_none() {
        return None;
    }
    let figure = step.expect.as_ref().or(set_to);
    let unit = figure
        .and_then(|amount| amount.measure.as_ref())
        .map(|m| m.unit_as_written().to_owned());
    Some(Reading {
        expected: step
            .expect
            .as_ref()
            .filter(|amount| !amount.unknown)
            .map(|amount| harmless(&amount.text)),
        unit,
    })
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
