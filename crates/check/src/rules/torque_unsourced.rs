//! A torque with no word of where it comes from.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::joints;
use crate::rules::Rule;
use crate::words;

/// The rule.
pub const RULE: Rule = Rule {
    name: "torque-unsourced",
    severity: Severity::Hint,
    statement: "A torque is given without saying where it comes from.",
    reason: "Whoever holds the sheet can look up a figure again only when it says where it stands; without that, a slip of the pen cannot be told from the maker's word.",
    bad: r#"part cover
fasteners cover-screws
  6 x M6
  hold cover
  torque 8 N.m
fit cover
tighten cover-screws
"#,
    good: r#"part cover
fasteners cover-screws
  6 x M6
  hold cover
  torque 8 N.m from "maker's sheet 3"
fit cover
tighten cover-screws
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    for thing in &bench.plan.things {
        let Some(group) = thing.fasteners() else {
            continue;
        };
        if thing.uncertain || joints::torques(group).is_empty() {
            continue;
        }
        let (place, source) = match (&group.passes, &group.torque) {
            (Some(passes), _) => (passes.place, &passes.source),
            (None, Some(torque)) => (torque.place, &torque.source),
            (None, None) => continue,
        };
        if source.is_none() {
            let says = format!(
                "Nothing says where the torque of {} comes from, so nobody can look it up again.",
                thing.called()
            );
            found.push(
                Finding::new(&RULE, place, thing.name.as_str(), words::capital(&says))
                    .advice("Write the source behind it: from \"maker's sheet 3\"."),
            );
        }
    }
}
