//! A mark never made, or a reading wanted after its subject came off.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Mend, Severity};
use crate::mend;
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::{State, StepId};
use syntax::tree::{State as Word, Verb};
use crate::demand::Why;
use crate::rules::closed_unseen;

/// The rule.
pub const RULE: Rule = Rule {
    name: "unmarked",
    severity: Severity::Error,
    statement: "Something is aligned to a mark that was never made, or a reading is wanted after its subject came off.",
    reason: "The position, the reading or the mark existed only while the thing was still together; afterwards it is a guess.",
    bad: r#"plan "Gear off and on"
  starts assembled
part gear
remove gear
fit gear to its mark
"#,
    good: r#"plan "Gear off and on"
  starts assembled
part gear
mark gear
remove gear
fit gear to its mark
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let before = found.len();
    say::faults(bench, &RULE, found);
    let standing = bench.standing();
    for (finding, fault) in found[before..].iter_mut().zip(bench.faults_of(RULE.name)) {
        if finding.mend.is_none()
            && let Some(d) = fault.demands.first()
        {
            finding.mend = do_it_first(bench, &standing, *d);
        }
    }
}

/// Writes the missing mark or reading in front of the step that takes the thing off.
fn do_it_first(bench: &Bench, standing: &Standing, d: u32) -> Option<Mend> {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    if let Some(atom) = say::failing(standing, demand).first()
        && say::comes_later(standing, demand, atom).is_some()
    {
        return None;
    }
    let (step, verb) = if demand.why == Why::Mark {
        let chain = bench.lives.chain(bench.lives.main(demand.thing));
        let off = chain.acts.iter().rev().find(|a| a.value == 0 && a.step < demand.step)?;
        (StepId(off.step), Verb::Mark)
    } else {
        let Why::MustBefore(n) = demand.why else { return None };
        let must = &plan.thing(demand.thing).must[n as usize];
        let verb = must.states.iter().find_map(|s| match s {
            State::Is(Word::Marked) => Some(Verb::Mark),
            State::Is(Word::Measured) => Some(Verb::Measure),
            State::Is(Word::Inspected) => Some(Verb::Inspect),
            _ => None,
        })?;
        (StepId(demand.step), verb)
    };
    let line = format!("{} {}", words::verb_word(verb), name(bench, demand.thing));
    let title = format!("Write “{line}” in front of “{}”.", words::step(plan, step));
    mend::step_in_front(bench, step, &line, title)
}

/// What is said of a mark or reading that is not there when it is wanted.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    if demand.why != Why::Mark {
        return closed_unseen::owed(bench, standing, d, "off");
    }
    let step = StepId(demand.step);
    let thing = words::called(plan, demand.thing);
    let later = say::failing(standing, demand)
        .first()
        .and_then(|a| say::comes_later(standing, demand, a));
    let says = if later.is_some() {
        format!("{thing} goes to its mark here, but the mark is made only later.")
    } else {
        format!("{thing} goes to its mark here, but no step makes that mark.")
    };
    Said {
        place: words::step_place(plan, step),
        about: name(bench, demand.thing),
        says: words::capital(&says),
        because: later
            .map(|s| at_step(bench, s, "marked only here"))
            .into_iter()
            .chain(std::iter::once(Because {
                place: demand.place,
                says: "this wants the mark".into(),
            }))
            .collect(),
        advice: Some(format!(
            "Write “mark {}” while it is still together, or declare the maker's mark as a point that is given.",
            plan.thing(demand.thing).name
        )),
    }
}
