//! Where a number comes from.

use std::borrow::Cow;
use std::fmt;

/// How far a source can be leaned on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Read in the document named.
    Read,
    /// Read in a copy of the document named, such as a catalogue's table.
    Copied,
    /// Recalled, not read again.
    Memory,
    /// Common practice; nobody publishes it as theirs.
    Practice,
    /// Said by whoever gave the number.
    Given,
}

/// Where a number or a formula comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    text: Cow<'static, str>,
    standing: Standing,
}

impl Source {
    pub(crate) const fn read(text: &'static str) -> Source {
        Source {
            text: Cow::Borrowed(text),
            standing: Standing::Read,
        }
    }

    pub(crate) const fn copied(text: &'static str) -> Source {
        Source {
            text: Cow::Borrowed(text),
            standing: Standing::Copied,
        }
    }

    pub(crate) const fn memory(text: &'static str) -> Source {
        Source {
            text: Cow::Borrowed(text),
            standing: Standing::Memory,
        }
    }

    pub(crate) const fn practice(text: &'static str) -> Source {
        Source {
            text: Cow::Borrowed(text),
            standing: Standing::Practice,
        }
    }

    /// A source named by whoever gives the number: "maker's sheet 3".
    pub fn given(text: impl Into<String>) -> Source {
        Source {
            text: Cow::Owned(text.into()),
            standing: Standing::Given,
        }
    }

    /// The document, or whoever gave the number.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// How far it can be leaned on.
    pub fn standing(&self) -> Standing {
        self.standing
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)?;
        f.write_str(match self.standing {
            Standing::Read | Standing::Given => "",
            Standing::Copied => " (read in a copy)",
            Standing::Memory => " (from memory)",
            Standing::Practice => " (common practice, no source)",
        })
    }
}
