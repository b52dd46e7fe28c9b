//! The rules.

use crate::finding::Severity;

/// A rule: its name in the trade's words and the page that explains it.
#[derive(Debug, PartialEq)]
pub struct Rule {
    /// The name.
    pub name: &'static str,
    /// How bad a finding of it usually is.
    pub severity: Severity,
    /// One sentence: what it finds.
    pub statement: &'static str,
    /// Why that matters at the bench.
    pub reason: &'static str,
    /// A plan that breaks it.
    pub bad: &'static str,
    /// The same plan put right.
    pub good: &'static str,
}
