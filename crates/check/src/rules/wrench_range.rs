//! A torque outside what the tool of the step can be relied on for.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::joints;
use crate::rules::Rule;
use crate::words;
use plan::model::{Place, Tool};
use workshop::tightening::{Reach, Wrench};

/// The rule.
pub const RULE: Rule = Rule {
    name: "wrench-range",
    severity: Severity::Error,
    statement: "The torque lies outside what the torque wrench of the step can be relied on for.",
    reason: "Nothing is promised for the lowest fifth of a torque wrench's scale: it clicks late or not at all, and the screw is gone before anyone doubts the wrench.",
    bad: r#"part cover
fasteners cover-screws
  6 x M6
  hold cover
  torque 8 N.m from "maker's sheet 3"
tool large-wrench
  kind torque-wrench
  full-scale 200 N.m
fit cover
tighten cover-screws with large-wrench
"#,
    good: r#"part cover
fasteners cover-screws
  6 x M6
  hold cover
  torque 8 N.m from "maker's sheet 3"
tool small-wrench
  kind torque-wrench
  full-scale 25 N.m
fit cover
tighten cover-screws with small-wrench
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    for (step, id) in joints::tightenings(bench) {
        let thing = plan.thing(id);
        let tools: Vec<_> = plan
            .step(step)
            .with
            .iter()
            .filter_map(|tool| Some((tool, joints::wrench_of(plan, tool)?)))
            .collect();
        let (Some(group), [(named, (tool_id, tool, wrench)), ..]) = (thing.fasteners(), &*tools)
        else {
            continue;
        };
        let unreached = joints::torques(group).into_iter().filter(|wanted| {
            tools
                .iter()
                .all(|(_, (_, _, wrench))| !reaches(wrench, wanted.torque))
        });
        // The torque on which the clamp load hangs is told rather than one on the way to it.
        let Some(wanted) = unreached.max_by_key(|wanted| wanted.last) else {
            continue;
        };
        let tool_name = plan.thing(*tool_id).called();
        let fifth = if wrench.follows_from_full_scale() {
            ", a fifth of its full scale"
        } else {
            ""
        };
        let wants = if group.count == Some(1) {
            "wants"
        } else {
            "want"
        };
        let says = if wrench.reach(wanted.torque) == Reach::TooSmall {
            format!(
                "{tool_name} cannot be relied on below {}{fifth}, and {} {wants} {}.",
                wrench.low(),
                thing.called(),
                wanted.amount.text
            )
        } else {
            format!(
                "{tool_name} ends at {}, and {} {wants} {}.",
                wrench.high(),
                thing.called(),
                wanted.amount.text
            )
        };
        let mut finding = Finding::new(
            &RULE,
            named.place,
            thing.name.as_str(),
            words::capital(&says),
        )
        .because(wanted.amount.place, "the torque wanted");
        if let Some(place) = range_place(tool) {
            finding = finding.because(place, "what the tool can be relied on for");
        }
        if !wanted.last {
            finding.severity = Severity::Warning;
        }
        finding.steps = vec![step];
        found.push(match other(bench, wanted.torque) {
            Some(better) => finding.advice(format!("{} reaches it.", words::capital(&better))),
            None => {
                finding.advice("Take a torque wrench whose range holds this torque well inside.")
            }
        });
    }
}

fn reaches(wrench: &Wrench, torque: workshop::quantity::Torque) -> bool {
    !matches!(wrench.reach(torque), Reach::TooSmall | Reach::TooLarge)
}

fn range_place(tool: &Tool) -> Option<Place> {
    let said = tool.range.as_ref().or(tool.full_scale.as_ref())?;
    Some(said.place)
}

/// A declared torque tool that does reach.
fn other(bench: &Bench, torque: workshop::quantity::Torque) -> Option<String> {
    bench.plan.things().find_map(|(id, thing)| {
        let (_, wrench) = joints::wrench(bench.plan, id)?;
        reaches(&wrench, torque).then(|| thing.called().to_string())
    })
}
