//! A mark never made, or a reading wanted after its subject came off.

use crate::bench::Bench;
use crate::demand::Standing;
use crate::finding::{Because, Finding, Mend, Severity};
use crate::mend;
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::StepId;
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
    say::faults_with(bench, &RULE, found, do_it_first);
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
    if demand.why != Why::Mark {
        return mend::owed_first(bench, d);
    }
    let chain = bench.lives.chain(bench.lives.main(demand.thing));
    let off = chain
        .acts
        .iter()
        .rev()
        .find(|a| a.value == 0 && a.step < demand.step)?;
    let step = StepId(off.step);
    let line = format!("mark {}", name(bench, demand.thing));
    let title = format!("Write “{line}” in front of “{}”.", words::step(plan, step));
    mend::step_in_front(bench, step, &line, title)
}

/// What is said of a mark or reading that is not there when it is wanted.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    if demand.why == Why::MarkMade {
        let off = say::failing(standing, demand)
            .first()
            .and_then(|a| say::changed_by(standing, demand, a));
        let thing = words::called(plan, demand.thing);
        return Said {
            place: words::step_place(plan, StepId(demand.step)),
            about: name(bench, demand.thing),
            says: words::capital(&format!(
                "{thing} {} marked here only after coming off, and the mark says nothing any more.",
                words::is_or_are(plan, demand.thing)
            )),
            because: off
                .map(|s| at_step(bench, s, "it comes off here"))
                .into_iter()
                .chain(std::iter::once(Because {
                    place: demand.place,
                    says: "this goes by the mark".into(),
                }))
                .collect(),
            advice: None,
        };
    }
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
