//! Findings as a person reads them: what is wrong, the lines that make it so, the way out.

use crate::look::{Ink, Look, harmless};
use crate::snippet::{Label, Page};
use crate::wrap::hang;
use check::{Finding, Severity};
use plan::model::{FileId, Place, Plan};
use std::cell::OnceCell;

/// How many lines one finding may point at before the rest is only counted.
const MOST_LABELS: usize = 8;

/// The texts of a plan, each made ready the first time something in it is shown.
pub struct Texts<'p> {
    plan: &'p Plan,
    pages: Vec<OnceCell<Page<'p>>>,
}

impl<'p> Texts<'p> {
    /// The texts of `plan`.
    pub fn of(plan: &'p Plan) -> Texts<'p> {
        Texts {
            plan,
            pages: plan.sources.iter().map(|_| OnceCell::new()).collect(),
        }
    }

    /// The name of a text for people.
    pub fn name(&self, file: FileId) -> String {
        let source = self.plan.sources.get(file.0 as usize);
        source.map_or_else(String::new, |source| harmless(&source.name))
    }

    /// Line and column of the beginning of `place`.
    pub fn start(&self, place: Place) -> Position {
        self.position(place.file, place.span.start)
    }

    /// Line and column of the end of `place`.
    pub fn end(&self, place: Place) -> Position {
        self.position(place.file, place.span.end)
    }

    /// `sallow.rebuild:12:3`.
    pub fn whereabouts(&self, place: Place) -> String {
        let at = self.start(place);
        format!("{}:{}:{}", self.name(place.file), at.line, at.column)
    }

    /// `sallow.rebuild, line 12`, the file only where it is not the asked one.
    pub fn line(&self, place: Place) -> String {
        let line = self.start(place).line;
        if place.file == FileId(0) {
            format!("line {line}")
        } else {
            format!("{}, line {line}", self.name(place.file))
        }
    }

    fn position(&self, file: FileId, at: u32) -> Position {
        let (line, column) = self.page(file).map_or((1, 1), |page| page.position(at));
        Position { line, column }
    }

    fn page(&self, file: FileId) -> Option<&Page<'p>> {
        let source = self.plan.sources.get(file.0 as usize)?;
        let cell = self.pages.get(file.0 as usize)?;
        Some(cell.get_or_init(|| Page::of(&source.tree.text)))
    }
}

/// The word for a severity.
pub fn severity_word(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "error",
        Severity::Warning => "warning",
        Severity::Hint => "hint",
    }
}

/// The colour of a severity.
pub(crate) fn severity_ink(severity: Severity) -> Ink {
    match severity {
        Severity::Error => Ink::Error,
        Severity::Warning => Ink::Warning,
        Severity::Hint => Ink::Hint,
    }
}

/// A line and a column, both from 1; the column counts characters.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Position {
    /// Line.
    pub line: usize,
    /// Column.
    pub column: usize,
}

/// One finding, ended by an empty line.
pub fn finding(texts: &Texts<'_>, finding: &Finding, look: Look) -> String {
    let width = look.columns();
    let mut page = format!(
        "{} {}  {}\n",
        look.ink(
            severity_ink(finding.severity),
            severity_word(finding.severity)
        ),
        look.ink(Ink::Strong, finding.rule.name),
        texts.whereabouts(finding.place),
    );
    page += &hang("  ", &harmless(&finding.says), width);
    page += &lines_with_notes(texts, finding, look);
    // The sure way out first, what else helps behind it.
    if let Some(mend) = &finding.mend {
        page += &hang("  Mend: ", &harmless(&mend.title), width);
    }
    if let Some(advice) = &finding.advice {
        page += &hang("  What helps: ", &harmless(advice), width);
    }
    page.push('\n');
    page
}

/// The lines that a finding is about, text by text, the one it stands in first.
fn lines_with_notes(texts: &Texts<'_>, finding: &Finding, look: Look) -> String {
    let mut files = vec![finding.place.file];
    for because in &finding.because {
        if !files.contains(&because.place.file) {
            files.push(because.place.file);
        }
    }
    let shown = &finding.because[..finding.because.len().min(MOST_LABELS)];
    let mut page = String::new();
    for file in files {
        let mut labels = Vec::new();
        if file == finding.place.file {
            labels.push(Label {
                span: finding.place.span,
                says: String::new(),
            });
        }
        let here = shown.iter().filter(|because| because.place.file == file);
        labels.extend(here.clone().map(|because| Label {
            span: because.place.span,
            says: harmless(&because.says),
        }));
        if file != finding.place.file
            && let Some(first) = here.clone().next()
        {
            page += &format!("  {}\n", texts.whereabouts(first.place));
        }
        if let Some(text) = texts.page(file) {
            page += &text.draw(&labels, look);
        }
    }
    match finding.because.len().saturating_sub(MOST_LABELS) {
        0 => {}
        1 => page += "  and one more line like these\n",
        more => page += &format!("  and {more} more lines like these\n"),
    }
    page
}

/// How many findings of each severity.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Counts {
    /// Errors.
    pub errors: usize,
    /// Warnings.
    pub warnings: usize,
    /// Hints.
    pub hints: usize,
}

impl Counts {
    /// Counts `findings`.
    pub fn of<'f>(findings: impl IntoIterator<Item = &'f Finding>) -> Counts {
        let mut counts = Counts::default();
        for finding in findings {
            match finding.severity {
                Severity::Error => counts.errors += 1,
                Severity::Warning => counts.warnings += 1,
                Severity::Hint => counts.hints += 1,
            }
        }
        counts
    }

    /// How many stand at `level` or above it.
    pub fn at_or_above(&self, level: Severity) -> usize {
        match level {
            Severity::Error => self.errors,
            Severity::Warning => self.errors + self.warnings,
            Severity::Hint => self.errors + self.warnings + self.hints,
        }
    }

    /// `2 errors, 1 warning and 3 hints`; `nothing` when there are none.
    pub fn words(&self) -> String {
        let parts: Vec<String> = [
            (self.errors, "error"),
            (self.warnings, "warning"),
            (self.hints, "hint"),
        ]
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, word)| counted(count, word))
        .collect();
        match parts.as_slice() {
            [] => "nothing".into(),
            [one] => one.clone(),
            [most @ .., last] => format!("{} and {last}", most.join(", ")),
        }
    }
}

impl std::ops::AddAssign for Counts {
    fn add_assign(&mut self, other: Counts) {
        self.errors += other.errors;
        self.warnings += other.warnings;
        self.hints += other.hints;
    }
}

/// `1 step`, `3 steps`.
pub fn counted(count: usize, word: &str) -> String {
    format!("{count} {word}{}", if count == 1 { "" } else { "s" })
}
