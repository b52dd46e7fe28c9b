//! A result of bench arithmetic with its working: the formula, the formula with the numbers put
//! in, where it comes from and what was taken for granted.

use crate::look::{Ink, Look};
use crate::wrap::hang;
use workshop::working::Working;

/// `result` in a line of its own, and how it was worked out below.
pub fn page(result: &str, working: &Working, look: Look) -> String {
    let width = look.columns();
    let mut page = hang("", &look.ink(Ink::Strong, result), width);
    for line in &working.lines {
        page.push('\n');
        if line.formula.is_empty() {
            page += &hang("  ", &format!("{} = {}", line.what, line.result), width);
            continue;
        }
        page += &hang("  ", &format!("{} = {}", line.what, line.formula), width);
        page += &hang("      = ", &line.numbers, width);
        page += &hang("      = ", &line.result, width);
    }
    if !working.assumptions.is_empty() || !working.sources.is_empty() {
        page.push('\n');
    }
    for assumption in &working.assumptions {
        page += &hang("  taking it that ", assumption, width);
    }
    for source in &working.sources {
        page += &hang("  source: ", &source.to_string(), width);
    }
    page
}
