//! The written order breaks a condition.

use crate::bench::Bench;
use crate::demand::{Atom, Demand, Standing, What, Why};
use crate::chain::tightness;
use crate::finding::{Because, Finding, Mend, Severity};
use crate::mend;
use crate::rules::Rule;
use crate::say::{self, Said, at_step, name};
use crate::words;
use plan::model::{StepId, ThingId};

/// The rule.
pub const RULE: Rule = Rule {
    name: "out-of-turn",
    severity: Severity::Error,
    statement: "The written order breaks a condition: something is asked for at a step that only comes later, or is gone by then.",
    reason: "The step cannot be done when its turn comes, so the work stops there, or it is done all the same and has to be undone.",
    bad: r#"part shaft
part gear
  onto shaft
fit gear
fit shaft
"#,
    good: r#"part shaft
part gear
  onto shaft
fit shaft
fit gear
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let before = found.len();
    say::faults(bench, &RULE, found);
    for (finding, fault) in found[before..].iter_mut().zip(bench.faults_of(RULE.name)) {
        if finding.mend.is_none()
            && fault.moved.is_empty()
            && let Some(d) = fault.demands.first()
        {
            finding.mend = if fault.within_step {
                in_another_order(bench, &fault.demands)
            } else {
                undo_first(bench, *d).or_else(|| mend::owed_first(bench, *d))
            };
            if fault.within_step {
                finding.advice = Some("Things in one step go on in the order written.".into());
            }
        }
    }
}

/// Writes the things of a step in an order that works; or, where each needs another, `together`
/// behind them.
fn in_another_order(bench: &Bench, demands: &[u32]) -> Option<Mend> {
    let plan = bench.plan;
    let step = StepId(bench.demands[*demands.first()? as usize].step);
    let targets = &plan.step(step).targets;
    let place_of = |t: ThingId| targets.iter().position(|r| r.thing == t);
    let mut before: Vec<(usize, usize)> = Vec::new();
    // What the step's acts ask of one another, whether or not it is so as they are written now.
    for demand in bench.demands.iter().filter(|d| d.step == step.0) {
        let Some(this) = place_of(demand.thing) else {
            continue;
        };
        for atom in demand.ways.first().iter().flat_map(|w| &w.atoms) {
            let (What::Chain(chain, test), Some(about)) = (atom.what, atom.about) else {
                continue;
            };
            let acts = &bench.lives.chain(chain).acts;
            let here = acts
                .iter()
                .find(|a| a.step == step.0 && a.sub != demand.sub);
            if let (Some(act), Some(other)) = (here, place_of(about)) {
                before.push(if test.passes(act.value) { (other, this) } else { (this, other) });
            }
        }
    }
    let mut order: Vec<usize> = Vec::new();
    while order.len() < targets.len() {
        let next = (0..targets.len()).find(|i| {
            !order.contains(i)
                && before.iter().all(|(a, b)| b != i || order.contains(a))
        });
        match next {
            Some(next) => order.push(next),
            None => {
                let title = "Write “together” behind them, if they only go on at once.".to_string();
                return Some(mend::say_on_step(bench, step, "together", title));
            }
        }
    }
    let first = targets.first()?.place;
    let last = targets.last()?.place;
    let names: Vec<&str> = order.iter().map(|i| plan.text(targets[*i].place)).collect();
    let new = names.join(", ");
    let all = plan::model::Place {
        file: first.file,
        span: first.span.to(last.span),
    };
    Some(mend::replace(all, &new, format!("Write “{new}”.")))
}

/// Writes the missing undoing of fasteners in front of the step that takes the part off.
fn undo_first(bench: &Bench, d: u32) -> Option<Mend> {
    let demand = &bench.demands[d as usize];
    if demand.why != Why::Fastened {
        return None;
    }
    let group = demand.ways.first()?.atoms.first()?.about?;
    let chain = bench.lives.chain(bench.lives.main(group));
    let before = chain.acts.iter().rfind(|a| a.step < demand.step);
    let locked = before.map_or(chain.initial, |a| a.value) == tightness::LOCKED;
    let step = StepId(demand.step);
    let group = name(bench, group);
    let title = format!("Write “undo {group}” in front of “{}”.", words::step(bench.plan, step));
    let line = if locked { format!("unlock {group}\nundo {group}") } else { format!("undo {group}") };
    mend::step_in_front(bench, step, &line, title)
}

/// What is said of a condition that does not hold when its step comes.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let step = StepId(demand.step);
    let thing = words::called(plan, demand.thing);
    let failing = say::failing(standing, demand);
    let atom = failing.first().copied();
    let about = atom.and_then(|a| a.about);
    let other = about.map_or("", |t| words::called(plan, t));
    let are = about.map_or("is", |t| words::is_or_are(plan, t));
    let mut because = Vec::new();
    let gone = atom.and_then(|a| say::changed_by(standing, demand, a));
    let later = atom.and_then(|a| say::comes_later(standing, demand, a));
    let are_it = plan
        .things
        .get(demand.thing.0 as usize)
        .map_or("is", |_| words::is_or_are(plan, demand.thing));
    let not_there = atom.map_or("what it needs is not there".to_string(), |a| {
        say::not_so(bench, standing, demand, a)
    });
    let says = match demand.why {
        Why::Onto => format!(
            "{thing} {} onto {other}, but {not_there}.",
            words::verb(plan, demand.thing, "goes", "go")
        ),
        Why::Built => format!("{thing} {are_it} fitted here before being built: {not_there}."),
        Why::Needs => format!(
            "{thing} {} {} here, but {not_there}{}.",
            words::verb(plan, demand.thing, "needs", "need"),
            wanted_state(bench, atom, other),
            say::writers_reason(demand)
        ),
        Why::Hold => format!("{thing} {} nothing to hold: {not_there}.", have(bench, demand)),
        Why::StandsOn => format!("{thing} cannot come off while {other} {are} still on it."),
        Why::Fastened if slack(bench, standing, demand, about) => {
            format!("{thing} cannot come off: {other} {are} only slack, not out.")
        }
        Why::Fastened => format!("{thing} cannot come off while {other} still hold{} it.", one_s(bench, about)),
        Why::Opening => format!("{thing} is still closed here: {other} must be out first."),
        Why::OtherClosing => format!("What goes in at {thing} runs out again: {not_there}."),
        Why::LockWantsTight => format!("{thing} {} locked here before being tight.", words::is_or_are(plan, demand.thing)),
        Why::After | Why::Lag => {
            let wanted = say::asked(bench, demand);
            format!("“{}” is to come after {wanted}{}, and that is not so here.", words::step_label(plan, step), say::writers_reason(demand))
        }
        Why::Before => {
            let wanted = say::asked(bench, demand);
            format!("“{}” is to come before {}{}, and that is past here.",
                words::step_label(plan, step),
                wanted, say::writers_reason(demand))
        }
        Why::MustBefore(_) | Why::MustAfter(_) => must_sentence(bench, demand, later.is_some() || gone.is_some()),
        _ => format!("{thing} is out of turn here: {not_there}."),
    };
    if !matches!(demand.why, Why::After | Why::Lag | Why::Before | Why::MustBefore(_) | Why::MustAfter(_)) {
        if let Some(step) = later {
            because.push(at_step(bench, step, format!("{} only here", comes(bench, step))));
        } else if let Some(step) = gone {
            because.push(at_step(bench, step, "this step makes it so"));
        }
    } else if let Some(step) = later.or(gone) {
        because.push(at_step(bench, step, format!("{} here", comes(bench, step))));
    }
    if let Some(atom) = atom
        && atom.place != demand.place
    {
        because.push(Because {
            place: atom.place,
            says: "this says so".into(),
        });
    } else {
        because.push(Because {
            place: demand.place,
            says: "this asks for it".into(),
        });
    }
    Said {
        place: words::step_place(plan, step),
        about: if plan.things.get(demand.thing.0 as usize).is_some() {
            name(bench, demand.thing)
        } else {
            words::step(plan, step)
        },
        says: words::capital(&says),
        because,
        advice: (matches!(demand.why, Why::StandsOn | Why::Built)
            || (demand.why == Why::Fastened && slack(bench, standing, demand, about))
            || (demand.why == Why::Onto && later.is_some()))
        .then(|| {
            if demand.why == Why::Fastened {
                return format!(
                    "If slack is enough, as with a pinch clamp, say “frees when slack” on {}; \
                     else undo {}.",
                    about.map_or(String::new(), |t| name(bench, t)),
                    if are == "is" { "it" } else { "them" },
                );
            }
            if demand.why == Why::Built {
                return format!(
                    "If {other} {} on only after {thing}, leave it out of the unit.",
                    about.map_or("goes", |t| words::verb(plan, t, "goes", "go")),
                );
            }
            if demand.why == Why::StandsOn {
                return format!(
                    "If {other} comes off together with {thing}, say “travels with” in place of \
                     “onto”, or make the two a unit."
                );
            }
            format!(
                "If {thing} goes onto {other} at the bench and travels with it, say “travels \
                 with” in place of “onto”, or make the two a unit."
            )
        }),
    }
}

/// What is said of two acts on one thing that stand the wrong way round.
pub fn crossed(bench: &Bench, (chain, first, second): (u32, u32, u32)) -> Said {
    let plan = bench.plan;
    let chain = bench.lives.chain(chain);
    let (first, second) = (&chain.acts[first as usize], &chain.acts[second as usize]);
    let (first, second) = (StepId(first.step), StepId(second.step));
    let thing = words::called(plan, chain.thing);
    Said {
        place: words::step_place(plan, second),
        about: name(bench, chain.thing),
        says: words::capital(&format!(
            "{thing}: “{}” comes here before “{}”, which it has to follow.",
            words::step(plan, second),
            words::step(plan, first)
        )),
        because: vec![at_step(bench, first, "this has to come first")],
        advice: None,
    }
}

fn must_sentence(bench: &Bench, demand: &Demand, done: bool) -> String {
    let thing = words::called(bench.plan, demand.thing);
    let rule = say::asked(bench, demand);
    match demand.why {
        _ if !done => format!("{thing} {rule}, and no step does that."),
        Why::MustAfter(_) => format!("{thing} {rule}, and here that is not so yet."),
        _ => format!("{thing} {rule}, and this step comes too soon for that."),
    }
}

/// Whether the fasteners that still hold a part are slack by then.
fn slack(bench: &Bench, standing: &Standing, demand: &Demand, about: Option<ThingId>) -> bool {
    let Some(group) = about else { return false };
    let chain = bench.lives.chain(bench.lives.main(group));
    let slot = (standing.at[demand.step as usize], demand.sub);
    let last = chain
        .acts
        .iter()
        .filter(|a| (standing.at[a.step as usize], a.sub) < slot)
        .max_by_key(|a| standing.at[a.step as usize]);
    last.map_or(chain.initial, |a| a.value) == tightness::STARTED
}

fn comes(bench: &Bench, step: StepId) -> String {
    format!("“{}” comes", words::step(bench.plan, step))
}

fn have(bench: &Bench, demand: &Demand) -> &'static str {
    if words::is_or_are(bench.plan, demand.thing) == "are" { "have" } else { "has" }
}

fn one_s(bench: &Bench, about: Option<ThingId>) -> &'static str {
    match about {
        Some(t) if words::is_or_are(bench.plan, t) == "is" => "s",
        _ => "",
    }
}

/// `the thing in place`, `level plug out`: what is needed, without a verb.
fn wanted_state(bench: &Bench, atom: Option<&Atom>, other: &str) -> String {
    match atom.map(|a| say::wanted(bench, a)) {
        Some("there") | None => format!("{other} in place"),
        Some(state) => format!("{other} {state}"),
    }
}
