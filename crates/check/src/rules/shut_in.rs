//! Something must be reached after a part has closed the way to it.

use crate::bench::Bench;
use crate::asks::{Around, reach_ways};
use crate::chain::Test;
use crate::demand::{Atom, Demand, Standing, Way, What};
use crate::finding::{Because, Finding, Severity};
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::{Sort, StepId};
use syntax::tree::Verb;

/// The rule.
pub const RULE: Rule = Rule {
    name: "shut-in",
    severity: Severity::Error,
    statement: "Something has to be reached, fitted or taken off after a part has closed the way to it.",
    reason: "The part that is in the way has to come off again, with its fasteners, its seal and its sealant, and all that was built on top of it.",
    bad: r#"part block
  given
part bracket
  onto block
  covers bleed-screw
point bleed-screw
  on block
fit bracket
bleed bleed-screw
"#,
    good: r#"part block
  given
part bracket
  onto block
  covers bleed-screw
point bleed-screw
  on block
bleed bleed-screw
fit bracket
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    say::faults(bench, &RULE, found);
}

/// What is said of a way in that is closed.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let thing = words::called(plan, demand.thing);
    let mut because = Vec::new();
    let mut ways = Vec::new();
    for way in demand.ways.iter().filter(|w| !w.elsewhere) {
        let failing: Vec<&Atom> = way
            .atoms
            .iter()
            .filter(|a| !standing.holds(demand, a))
            .collect();
        let one = Shut::of(bench, standing, demand, way, &failing, &mut because);
        if !ways.contains(&one) {
            ways.push(one);
        }
    }
    let does = match plan.step(step).verb {
        Verb::Fit | Verb::DryFit => format!("{thing} cannot go on"),
        Verb::Remove | Verb::Undo if plan.thing(demand.thing).sort != Sort::Fasteners => {
            format!("{thing} cannot come off")
        }
        _ => format!("{thing} cannot be reached"),
    };
    let says = match ways.as_slice() {
        [] => {
            let used = words::tools(&plan.step(step).with);
            format!("{does} with {used}: none of its ways in takes that tool.")
        }
        [only] => format!("{does}{} here: {}.", only.by, only.why),
        [first, rest @ ..] => {
            let rest: Vec<String> = rest
                .iter()
                .map(|w| format!("{}, {}", if w.by.is_empty() { " otherwise" } else { &w.by }, w.why))
                .collect();
            format!(
                "{does}{} here: {}. The other way in is shut as well:{}.",
                first.by,
                first.why,
                rest.join(";")
            )
        }
    };
    let advice = open_with_another_tool(bench, standing, demand);
    Said {
        place: words::step_place(plan, step),
        about: name(bench, demand.thing),
        says: words::capital(&says),
        because,
        advice,
    }
}

/// One closed way.
#[derive(PartialEq)]
struct Shut {
    /// ` with socket 11 mm from above`.
    by: String,
    /// What is in the way, or missing.
    why: String,
}

impl Shut {
    fn of(
        bench: &Bench,
        standing: &Standing,
        demand: &Demand,
        way: &Way,
        failing: &[&Atom],
        because: &mut Vec<Because>,
    ) -> Shut {
        let plan = bench.plan;
        let line = way.line.and_then(|l| plan.thing(demand.thing).ways.get(l));
        let mut by = String::new();
        let tools = line.map(|l| l.tools.as_slice()).unwrap_or_default();
        if tools.is_empty() {
            let used = words::tools(&plan.step(StepId(demand.step)).with);
            if !used.is_empty() {
                by += &format!(" with {used}");
            }
        } else {
            by += &format!(" with {}", words::tools(tools));
        }
        if let Some(side) = line.and_then(|l| l.side.as_ref()) {
            by += &format!(" from {}", from_side(side));
        }
        let mut parts = Vec::new();
        for atom in failing {
            let Some(about) = atom.about else { continue };
            let called = words::called(plan, about);
            let are = words::is_or_are(plan, about);
            let needed = line.is_some_and(|l| l.needs.clauses.iter().any(|c| c.place == atom.place));
            let in_the_way = !needed && matches!(atom.what, What::Chain(_, Test::AtMost(_)));
            if in_the_way {
                parts.push(format!("{called} {are} in the way"));
                match say::changed_by(standing, demand, atom) {
                    Some(step) => because.push(at_step(
                        bench,
                        step,
                        format!("{} goes on here", words::capital(called)),
                    )),
                    None => parts
                        .last_mut()
                        .into_iter()
                        .for_each(|p| p.push_str(" from the start")),
                }
            } else {
                parts.push(say::not_so(bench, standing, demand, atom));
                if let Some(step) = say::comes_later(standing, demand, atom) {
                    because.push(at_step(bench, step, format!("{called} comes only here")));
                }
            }
            because.push(Because {
                place: atom.place,
                says: format!("this says so of {}", words::called(plan, demand.thing)),
            });
        }
        Shut {
            by,
            why: words::list(&parts),
        }
    }
}

/// `above` alone, but `the side`.
pub fn from_side(side: &str) -> String {
    match side {
        "above" | "below" | "behind" | "inside" | "outside" | "underneath" => side.to_string(),
        _ => format!("the {side}"),
    }
}

/// The other way in, where one is open with a tool that this step does not name.
fn open_with_another_tool(bench: &Bench, standing: &Standing, demand: &Demand) -> Option<String> {
    let plan = bench.plan;
    let step = plan.step(StepId(demand.step));
    if step.with.is_empty() {
        return None;
    }
    let around = Around {
        plan,
        index: &bench.index,
        lives: &bench.lives,
    };
    let any = Demand {
        ways: reach_ways(&around, demand.thing, &[], true),
        ..demand.clone()
    };
    let open = standing.way(&any)?;
    let line = plan.thing(demand.thing).ways.get(any.ways[open].line?)?;
    let side = line
        .side
        .as_ref()
        .map_or(String::new(), |s| format!(" from {}", from_side(s)));
    Some(format!(
        "There is another way in that is still open here: with {}{side}.",
        words::tools(&line.tools)
    ))
}
