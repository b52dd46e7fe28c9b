//! Torques in several units, and inch-pounds taken for foot-pounds.

use crate::bench::Bench;
use crate::finding::{Finding, Mend, MendEdit, Severity};
use crate::joints;
use crate::rules::Rule;
use plan::model::{Amount, Place};
use syntax::tree::Span;
use workshop::quantity::Unit;

/// The rule.
pub const RULE: Rule = Rule {
    name: "one-unit",
    severity: Severity::Hint,
    statement: "Torques stand in several units, or one makes sense only in another unit than the one written.",
    reason: "A sheet with two units on it is read wrong sooner or later; between inch-pounds and foot-pounds the slip is twelvefold.",
    bad: r#"part cover
part bracket
fasteners cover-screws
  6 x M6
  hold cover
  torque 8 N.m from "maker's sheet 3"
fasteners bracket-bolts
  2 x M10
  hold bracket
  torque 30 lbf.ft from "old sheet"
fit cover
tighten cover-screws
fit bracket
tighten bracket-bolts
"#,
    good: r#"plan "Cover and bracket"
  torque in N.m
part cover
part bracket
fasteners cover-screws
  6 x M6
  hold cover
  torque 8 N.m from "maker's sheet 3"
fasteners bracket-bolts
  2 x M10
  hold bracket
  torque 30 lbf.ft from "old sheet"
fit cover
tighten cover-screws
fit bracket
tighten bracket-bolts
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    let mut units: Vec<(Unit, usize, &str, &Amount)> = Vec::new();
    for thing in &plan.things {
        let Some(group) = thing.fasteners() else {
            continue;
        };
        for wanted in joints::torques(group) {
            if !thing.uncertain
                && let Some(slip) = joints::slip(group, wanted.torque)
            {
                let other = slip.meant.unit().symbol();
                let says = format!(
                    "{} is far from what {} of this size {} tightened to; the same figure in {other} would not be.",
                    wanted.amount.text,
                    thing.called(),
                    if group.count == Some(1) { "is" } else { "are" },
                );
                let mut finding =
                    Finding::new(&RULE, wanted.amount.place, thing.name.as_str(), says);
                finding.severity = Severity::Warning;
                if let Some(thread) = &group.thread {
                    finding = finding.because(thread.place, "the size");
                }
                found.push(
                    finding.advice(
                        "Look it up again: foot-pounds and inch-pounds lie twelvefold apart.",
                    ),
                );
            }
            let unit = wanted.torque.unit();
            match units.iter_mut().find(|(known, ..)| *known == unit) {
                Some((_, count, ..)) => *count += 1,
                None => units.push((unit, 1, &thing.name, wanted.amount)),
            }
        }
    }
    // Where the plan says in which unit the sheets are to show torques, they all do.
    if units.len() < 2 || plan.heading.torque_in.is_some() {
        return;
    }
    let most = units.iter().map(|(_, count, ..)| *count).max();
    let Some(usual) = units.iter().position(|(_, count, ..)| Some(*count) == most) else {
        return;
    };
    let (usual, _, _, like) = units.remove(usual);
    let Some((unit, _, name, amount)) = units.first() else {
        return;
    };
    let says = format!(
        "This torque stands in {}, others in this plan in {}: on one sheet that is read wrong sooner or later.",
        unit.symbol(),
        usual.symbol()
    );
    let mut finding = Finding::new(&RULE, amount.place, *name, says)
        .because(like.place, format!("in {}", usual.symbol()));
    let line = format!("torque in {}", usual.symbol());
    match plan.heading.place {
        Some(heading) => finding.mend = Some(say_in_heading(bench, heading, &line)),
        None => {
            finding = finding.advice(format!(
                "Give the plan a heading and say “{line}” in it: every sheet then shows that unit first."
            ));
        }
    }
    found.push(finding);
}

/// A mend that adds a line to the plan's heading.
fn say_in_heading(bench: &Bench, heading: Place, line: &str) -> Mend {
    let text = bench.plan.sources.get(heading.file.0 as usize);
    let text = text.map_or("", |source| &source.tree.text);
    let end = if text.contains("\r\n") { "\r\n" } else { "\n" };
    let at = heading.span.end as usize;
    let rest = text.get(at..).unwrap_or("");
    let at = at + rest.find(['\n', '\r']).unwrap_or(rest.len());
    Mend {
        title: format!("Say “{line}” in the heading: every sheet then shows that unit first."),
        edits: vec![MendEdit {
            file: heading.file,
            span: Span::new(at as u32, at as u32),
            new: format!("{end}  {line}"),
        }],
    }
}
