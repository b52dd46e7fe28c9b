//! The rules: their list, and the page of each.

use crate::findings::{severity_ink, severity_word};
use crate::look::{Ink, Look};
use crate::wrap::{fill, hang};
use check::rules::Rule;

/// All rules, a line each.
pub fn rules(rules: &[&Rule], look: Look) -> String {
    let widest = rules.iter().map(|rule| rule.name.len()).max().unwrap_or(0);
    let mut page = String::new();
    for rule in rules {
        let severity = fill(severity_word(rule.severity), 7);
        let lead = format!(
            "{}  {}  ",
            look.ink(Ink::Strong, &fill(rule.name, widest)),
            look.ink(severity_ink(rule.severity), &severity)
        );
        page += &hang(&lead, rule.statement, look.columns());
    }
    page
}

/// The page of one rule.
pub fn rule(rule: &Rule, look: Look) -> String {
    let width = look.columns();
    let mut page = format!(
        "{} ({})\n\n",
        look.ink(Ink::Strong, rule.name),
        look.ink(severity_ink(rule.severity), severity_word(rule.severity))
    );
    page += &hang("", rule.statement, width);
    page.push('\n');
    page += &hang("", rule.reason, width);
    for (title, plan) in [("Wrong:", rule.bad), ("Right:", rule.good)] {
        page += &format!("\n{}\n\n", look.ink(Ink::Strong, title));
        for line in plan.trim_matches('\n').lines() {
            page += format!("    {line}").trim_end();
            page.push('\n');
        }
    }
    page
}
