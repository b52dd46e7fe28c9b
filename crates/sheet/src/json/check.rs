//! What `check` found.

use super::VERSION;
use crate::findings::{Counts, Texts, severity_word};
use crate::words::{Numbers, step};
use ::check::{Finding, Mend};
use plan::model::{Place as Inner, Plan, StepId};
use serde::Serialize;

/// What was found in all plans asked for.
#[derive(Serialize, Debug)]
pub struct Report {
    format: &'static str,
    version: u32,
    plans: Vec<CheckedPlan>,
    counts: Tally,
}

/// What was found in one plan.
#[derive(Serialize, Debug)]
pub struct CheckedPlan {
    file: String,
    title: Option<String>,
    steps: usize,
    findings: Vec<Found>,
    counts: Tally,
}

#[derive(Serialize, Debug, Clone, Copy)]
struct Tally {
    errors: usize,
    warnings: usize,
    hints: usize,
}

#[derive(Serialize, Debug)]
struct Found {
    rule: &'static str,
    severity: &'static str,
    about: String,
    says: String,
    place: Place,
    because: Vec<Cause>,
    advice: Option<String>,
    mend: Option<Change>,
    steps: Vec<StepName>,
}

/// A stretch of a file: lines and columns in characters from 1, and bytes from 0; neither end
/// is included.
#[derive(Serialize, Debug)]
struct Place {
    file: String,
    line: usize,
    column: usize,
    end_line: usize,
    end_column: usize,
    start: u32,
    end: u32,
}

#[derive(Serialize, Debug)]
struct Cause {
    place: Place,
    says: String,
}

#[derive(Serialize, Debug)]
struct Change {
    title: String,
    edits: Vec<Edit>,
}

#[derive(Serialize, Debug)]
struct Edit {
    place: Place,
    new: String,
}

#[derive(Serialize, Debug)]
struct StepName {
    number: usize,
    name: String,
    line: usize,
}

impl Report {
    /// Of these plans.
    pub fn of(plans: Vec<CheckedPlan>) -> Report {
        let mut counts = Counts::default();
        for plan in &plans {
            counts += Counts {
                errors: plan.counts.errors,
                warnings: plan.counts.warnings,
                hints: plan.counts.hints,
            };
        }
        Report {
            format: "fitwright-check",
            version: VERSION,
            plans,
            counts: tally(counts),
        }
    }
}

impl CheckedPlan {
    /// Of one plan; `order` is the order meant, which gives the steps their numbers.
    pub fn of(plan: &Plan, order: &[StepId], findings: &[Finding]) -> CheckedPlan {
        let texts = Texts::of(plan);
        let numbers = Numbers::of(plan, order);
        CheckedPlan {
            file: plan
                .sources
                .first()
                .map_or_else(String::new, |source| source.name.clone()),
            title: plan.heading.title.clone(),
            steps: plan.steps.len(),
            findings: findings
                .iter()
                .map(|finding| found(plan, &texts, &numbers, finding))
                .collect(),
            counts: tally(Counts::of(findings)),
        }
    }
}

fn tally(counts: Counts) -> Tally {
    Tally {
        errors: counts.errors,
        warnings: counts.warnings,
        hints: counts.hints,
    }
}

fn found(plan: &Plan, texts: &Texts<'_>, numbers: &Numbers, finding: &Finding) -> Found {
    Found {
        rule: finding.rule.name,
        severity: severity_word(finding.severity),
        about: finding.about.clone(),
        says: finding.says.clone(),
        place: place(texts, finding.place),
        because: finding
            .because
            .iter()
            .map(|because| Cause {
                place: place(texts, because.place),
                says: because.says.clone(),
            })
            .collect(),
        advice: finding.advice.clone(),
        mend: finding.mend.as_ref().map(|mend| change(texts, mend)),
        steps: finding
            .steps
            .iter()
            .map(|id| StepName {
                number: numbers.number(*id),
                name: step(plan, *id),
                line: texts.start(plan.step(*id).place).line,
            })
            .collect(),
    }
}

fn change(texts: &Texts<'_>, mend: &Mend) -> Change {
    let edits = mend.edits.iter();
    Change {
        title: mend.title.clone(),
        edits: edits
            .map(|edit| Edit {
                place: place(
                    texts,
                    Inner {
                        file: edit.file,
                        span: edit.span,
                    },
                ),
                new: edit.new.clone(),
            })
            .collect(),
    }
}

fn place(texts: &Texts<'_>, place: Inner) -> Place {
    let (start, end) = (texts.start(place), texts.end(place));
    Place {
        file: texts.name(place.file),
        line: start.line,
        column: start.column,
        end_line: end.line,
        end_column: end.column,
        start: place.span.start,
        end: place.span.end,
    }
}
