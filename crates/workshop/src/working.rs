//! A result together with how it was worked out.

use std::fmt;

use crate::source::Source;

/// A result together with how it was worked out.
#[derive(Debug, Clone, PartialEq)]
pub struct Worked<T> {
    /// The result.
    pub value: T,
    /// How it was worked out.
    pub working: Working,
}

impl<T> Worked<T> {
    pub(crate) fn new(value: T, working: Working) -> Worked<T> {
        Worked { value, working }
    }

    /// The same working under another value, such as one field of the result.
    pub fn map<U>(self, with: impl FnOnce(T) -> U) -> Worked<U> {
        Worked {
            value: with(self.value),
            working: self.working,
        }
    }
}

/// How a result was worked out: lines of arithmetic, where the formulas come
/// from, and what was taken for granted.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Working {
    /// The arithmetic, in order.
    pub lines: Vec<Line>,
    /// The formulas' and tables' sources, each once.
    pub sources: Vec<Source>,
    /// What was taken for granted, each a sentence without its full stop.
    pub assumptions: Vec<String>,
}

/// One line of arithmetic.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What is worked out: "stress area".
    pub what: &'static str,
    /// The formula in letters; empty where a value was looked up.
    pub formula: &'static str,
    /// The formula with the numbers put in.
    pub numbers: String,
    /// The result with its unit.
    pub result: String,
}

impl Working {
    pub(crate) fn new() -> Working {
        Working::default()
    }

    pub(crate) fn line(
        mut self,
        what: &'static str,
        formula: &'static str,
        numbers: String,
        result: impl fmt::Display,
    ) -> Working {
        self.lines.push(Line {
            what,
            formula,
            numbers,
            result: result.to_string(),
        });
        self
    }

    pub(crate) fn source(mut self, source: Source) -> Working {
        if !self.sources.contains(&source) {
            self.sources.push(source);
        }
        self
    }

    pub(crate) fn assuming(mut self, sentence: impl Into<String>) -> Working {
        let sentence = sentence.into();
        if !self.assumptions.contains(&sentence) {
            self.assumptions.push(sentence);
        }
        self
    }

    /// This working with another's in front of it: the result of the other
    /// went into this one.
    pub(crate) fn after(self, earlier: Working) -> Working {
        let mut all = earlier;
        for line in self.lines {
            if !all.lines.contains(&line) {
                all.lines.push(line);
            }
        }
        for source in self.sources {
            all = all.source(source);
        }
        for assumption in self.assumptions {
            all = all.assuming(assumption);
        }
        all
    }
}

impl fmt::Display for Working {
    /// Lines of text, each ended: the arithmetic, the assumptions, the sources.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for line in &self.lines {
            if line.formula.is_empty() {
                writeln!(f, "{} = {}", line.what, line.result)?;
            } else {
                writeln!(f, "{} = {}", line.what, line.formula)?;
                writeln!(f, "  = {}", line.numbers)?;
                writeln!(f, "  = {}", line.result)?;
            }
        }
        for assumption in &self.assumptions {
            writeln!(f, "taking it that {assumption}")?;
        }
        for source in &self.sources {
            writeln!(f, "source: {source}")?;
        }
        Ok(())
    }
}
