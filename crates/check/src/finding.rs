//! What the checker says: findings, their reasons and their mends.

use crate::rules::Rule;
use plan::model::{FileId, Place, StepId};
use syntax::tree::Span;

/// How bad it is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug, Hash)]
pub enum Severity {
    /// Worth knowing.
    Hint,
    /// The build may go wrong.
    Warning,
    /// The build goes wrong.
    Error,
}

/// A line that has a part in it, and what it has to do with it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Because {
    /// Where.
    pub place: Place,
    /// In words.
    pub says: String,
}

/// A replacement of a stretch of one text.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct MendEdit {
    /// The text.
    pub file: FileId,
    /// What is replaced; empty for an insertion.
    pub span: Span,
    /// By what.
    pub new: String,
}

/// A change of the text that takes the finding away.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Mend {
    /// What it does, as an order to the reader: "Move … to after …".
    pub title: String,
    /// The change.
    pub edits: Vec<MendEdit>,
}

/// One fault.
#[derive(Clone, PartialEq, Debug)]
pub struct Finding {
    /// The rule it breaks.
    pub rule: &'static Rule,
    /// How bad.
    pub severity: Severity,
    /// Where to look first.
    pub place: Place,
    /// What it is about, as written there: a thing's name, a step's words.
    pub about: String,
    /// One plain sentence: what will happen at the bench.
    pub says: String,
    /// The lines that cause it.
    pub because: Vec<Because>,
    /// A way out in words, where no single change of the text is sure.
    pub advice: Option<String>,
    /// The mend, where there is a sure one.
    pub mend: Option<Mend>,
    /// The steps it is about, for sheets.
    pub steps: Vec<StepId>,
}
