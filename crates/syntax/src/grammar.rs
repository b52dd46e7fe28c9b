//! The one grammar, made into a reader of single lines by pest.

use pest::Parser;
use pest::error::InputLocation;
use pest::iterators::{Pair, Pairs};

#[derive(pest_derive::Parser)]
#[grammar = "../../grammar/rebuild.pest"]
struct Grammar;

pub(crate) type Piece<'i> = Pair<'i, Rule>;
pub(crate) type Pieces<'i> = Pairs<'i, Rule>;

/// Why a line could not be read.
pub(crate) struct Stop {
    /// Where reading got to, in bytes of the line.
    pub at: usize,
    /// What would have been read there.
    pub wanted: Vec<Rule>,
}

/// As much of the line as `rule` reads from its start.
pub(crate) fn read_start(rule: Rule, line: &str) -> Option<Piece<'_>> {
    Grammar::parse(rule, line).ok()?.next()
}

/// How far `rule` gets in a line that it cannot read to its end.
pub(crate) fn stop(rule: Rule, line: &str) -> Option<Stop> {
    // With a blank behind it, a line that ends too early is at fault at its end
    // rather than at the keyword that misses something.
    let line = format!("{line} ");
    let error = Grammar::parse(rule, &line).err()?;
    let at = match error.location {
        InputLocation::Pos(at) | InputLocation::Span((at, _)) => at,
    };
    let wanted = match error.variant {
        pest::error::ErrorVariant::ParsingError { positives, .. } => positives,
        pest::error::ErrorVariant::CustomError { .. } => Vec::new(),
    };
    Some(Stop { at, wanted })
}
