//! A lift that wants a second person or a hoist.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::mend;
use crate::rules::Rule;
use crate::words;
use plan::model::{Place, Plan, Step, ThingId};
use syntax::tree::Verb;
use workshop::quantity::{Mass, Unit};

/// More than this one person should not lift alone, close to the body and from a good height.
/// Common practice, no source.
const ALONE_KG: f64 = 25.0;

/// How deep units in units are weighed.
const DEEPEST: usize = 20;

/// Tools and fixtures that carry the load, or hold it while it is guided.
const CARRIERS: [&str; 9] = [
    "hoist", "jack", "stand", "crane", "sling", "gantry", "winch", "lift", "trolley",
];

/// The rule.
pub const RULE: Rule = Rule {
    name: "heavy",
    severity: Severity::Warning,
    statement: "Something is lifted that is too heavy for one person, and the step says nothing of help.",
    reason: "A back goes, or fingers do; and a casting that is held up by one pair of arms is never set down gently.",
    bad: r#"part bed given
part headstock onto bed mass 60 kg
fit headstock
"#,
    good: r#"part bed given
part headstock onto bed mass 60 kg
fit headstock with hoist
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    if plan.heading.people.is_some_and(|people| people >= 2) {
        return;
    }
    for (id, step) in plan.steps() {
        if !matches!(step.verb, Verb::Fit | Verb::DryFit | Verb::Remove) || helped(plan, step) {
            continue;
        }
        for target in &step.targets {
            let thing = plan.thing(target.thing);
            if thing.hazards.iter().any(|kind| is_lift(kind)) || thing.temporary.is_some() {
                continue;
            }
            let Some((mass, places)) = mass(plan, target.thing, DEEPEST) else {
                continue;
            };
            if mass <= ALONE_KG {
                continue;
            }
            let shown = Mass::kilograms(mass);
            let unit = places.first().map_or(Unit::Kilogram, |(_, unit)| *unit);
            let says = format!(
                "{} weighs {}, and one person alone should not lift more than {} (common practice, no source).",
                words::capital(thing.called()),
                shown.shown_in(unit),
                Mass::kilograms(ALONE_KG).shown_in(unit).amount().rounded(2),
            );
            let mut finding = Finding::new(
                &RULE,
                words::step_place(plan, id),
                thing.name.as_str(),
                says,
            );
            for (place, _) in places {
                finding = finding.because(place, "what it weighs");
            }
            finding.steps = vec![id];
            finding.mend = Some(mend::say_on_step(
                bench,
                id,
                "hazard heavy",
                "Say “hazard heavy” on this step, so that the sheet asks for two people or a hoist."
                    .to_string(),
            ));
            found.push(finding);
            break;
        }
    }
}

/// Whether the step already says who or what helps.
fn helped(plan: &Plan, step: &Step) -> bool {
    let tools = step.with.iter().filter_map(|tool| tool.kind.as_deref());
    let texts = step
        .notes
        .iter()
        .chain(&step.cautions)
        .chain(&step.words)
        .map(|text| text.text.to_lowercase());
    let by_tool = tools.into_iter().any(carries);
    let named = step.with.iter().filter_map(|tool| tool.thing);
    by_tool
        || named
            .map(|t| plan.thing(t))
            .any(|t| carries(&t.name) || carries(t.called()))
        || step.hazards.iter().any(|kind| is_lift(kind))
        || texts.into_iter().any(|text| {
            [
                "two people",
                "second person",
                "two persons",
                "two pairs",
                "helper",
                "together with",
            ]
            .iter()
            .any(|words| text.contains(words))
                || carries(&text)
        })
}

fn carries(words: &str) -> bool {
    words
        .to_lowercase()
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| {
            CARRIERS
                .iter()
                .any(|c| word == *c || word.strip_suffix('s') == Some(c))
        })
}

/// Kinds of hazard whose line on the sheet asks for help already.
fn is_lift(kind: &str) -> bool {
    matches!(kind, "heavy" | "lift" | "top-heavy")
}

/// What a thing weighs at least, in kg, and where that is said. A unit without a mass of its own
/// weighs what is known of its members.
fn mass(plan: &Plan, id: ThingId, deepest: usize) -> Option<(f64, Vec<(Place, Unit)>)> {
    let thing = plan.thing(id);
    if let Some(said) = &thing.mass {
        let measure = said.measure.as_ref()?;
        let low = Mass::try_from(measure.low()).ok()?;
        return Some((low.in_kilograms(), vec![(said.place, measure.unit())]));
    }
    if deepest == 0 {
        return None;
    }
    let (mut sum, mut places) = (0.0, Vec::new());
    for member in thing.members() {
        if let Some((mass, said)) = mass(plan, member.thing, deepest - 1) {
            sum += mass;
            places.extend(said);
        }
    }
    (!places.is_empty()).then_some((sum, places))
}
