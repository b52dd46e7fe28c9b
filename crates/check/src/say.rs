//! From failed demands to findings: the frame into which each rule puts its sentences.

use crate::bench::Bench;
use crate::chain::{Aspect, Test, tightness};
use crate::demand::{Atom, Demand, Standing, What, Why};
use crate::faults::Fault;
use crate::finding::{Because, Finding, Mend};
use crate::mend;
use crate::problem::Source;
use crate::rules::{self, Rule};
use crate::words;
use plan::model::{Body, Condition, Place, Sort, StepId, ThingId};

/// What is said of one failed demand.
pub struct Said {
    /// Where to look first.
    pub place: Place,
    /// What it is about, in the language's words.
    pub about: String,
    /// The sentence.
    pub says: String,
    /// The lines that cause it.
    pub because: Vec<Because>,
    /// A way out in words.
    pub advice: Option<String>,
}

impl Finding {
    /// A finding of `rule` at `place`, with its usual severity and nothing more.
    pub fn new(
        rule: &'static Rule,
        place: Place,
        about: impl Into<String>,
        says: String,
    ) -> Finding {
        Finding {
            rule,
            severity: rule.severity,
            place,
            about: about.into(),
            says,
            because: Vec::new(),
            advice: None,
            mend: None,
            steps: Vec::new(),
        }
    }

    /// The same with a line that has a part in it.
    pub fn because(mut self, place: Place, says: impl Into<String>) -> Finding {
        self.because.push(Because {
            place,
            says: says.into(),
        });
        self
    }

    /// The same with a way out in words.
    pub fn advice(mut self, words: impl Into<String>) -> Finding {
        self.advice = Some(words.into());
        self
    }
}

/// The findings of all faults that speak through `rule`.
pub fn faults(bench: &Bench, rule: &'static Rule, found: &mut Vec<Finding>) {
    let standing = bench.standing();
    for fault in bench.faults_of(rule.name) {
        found.push(fault_finding(bench, &standing, rule, fault));
    }
}

/// The same, with a mend of the rule's own where no move mends a fault.
pub fn faults_with(
    bench: &Bench,
    rule: &'static Rule,
    found: &mut Vec<Finding>,
    offer: impl Fn(&Bench, &Standing, u32) -> Option<Mend>,
) {
    let before = found.len();
    faults(bench, rule, found);
    let standing = bench.standing();
    for (finding, fault) in found[before..].iter_mut().zip(bench.faults_of(rule.name)) {
        if finding.mend.is_none()
            && let Some(d) = fault.demands.first()
            && let Some(mend) = offer(bench, &standing, *d)
        {
            finding.mend = Some(mend);
            finding.advice = None;
        }
    }
}

/// The same, where the mend is to take what is spent or missing new.
pub fn faults_taken_new(bench: &Bench, rule: &'static Rule, found: &mut Vec<Finding>) {
    let before = found.len();
    faults(bench, rule, found);
    for finding in &mut found[before..] {
        if finding.mend.is_none()
            && let Some(step) = finding.steps.first().copied()
        {
            let add = format!("new {}", mend::name_on_line(bench, step, &finding.about));
            let title = format!("Say “{add}” on “{}”.", words::step(bench.plan, step));
            finding.mend = Some(mend::say_on_step(bench, step, &add, title));
        }
    }
}

fn fault_finding(
    bench: &Bench,
    standing: &Standing,
    rule: &'static Rule,
    fault: &Fault,
) -> Finding {
    let mut said: Vec<Said> = fault
        .demands
        .iter()
        .map(|d| sentence(bench, standing, *d))
        .collect();
    said.extend(
        fault
            .crossed
            .iter()
            .map(|c| rules::out_of_turn::crossed(bench, *c)),
    );
    let mut said = said.into_iter();
    let Some(first) = said.next() else {
        return Finding::new(rule, Place::default(), "", String::new());
    };
    let mut finding = Finding::new(rule, first.place, first.about, first.says);
    finding.because = first.because;
    finding.advice = first.advice;
    for further in said {
        let mut further_because = vec![Because {
            place: further.place,
            says: further.says,
        }];
        further_because.extend(further.because);
        for because in further_because {
            if because.place != finding.place
                && !finding.because.iter().any(|b| b.place == because.place)
            {
                finding.because.push(because);
            }
        }
    }
    finding.steps = fault
        .demands
        .iter()
        .map(|d| StepId(bench.demands[*d as usize].step))
        .collect();
    finding.mend = mend::moves(bench, &fault.moved);
    if finding.mend.is_none() && !fault.moved.is_empty() {
        finding.advice = mend::move_title(bench, &fault.moved).or(finding.advice);
    }
    // Where the move mends it there is no more to say, unless there is quite another way out.
    let another_way = matches!(rule.name, "out-of-turn" | "tight-too-soon");
    if finding.mend.is_some() && !another_way {
        finding.advice = None;
    }
    finding
}

/// The sentence of a failed demand, by the rule that it belongs to.
pub fn sentence(bench: &Bench, standing: &Standing, d: u32) -> Said {
    match crate::faults::rule_of(bench, d) {
        "shut-in" => rules::shut_in::sentence(bench, standing, d),
        "closed-unseen" => rules::closed_unseen::sentence(bench, standing, d),
        "unmarked" => rules::unmarked::sentence(bench, standing, d),
        "tight-too-soon" => rules::tight_too_soon::sentence(bench, standing, d),
        "no-counterhold" => rules::no_counterhold::sentence(bench, standing, d),
        "wrong-place" => rules::wrong_place::sentence(bench, standing, d),
        "still-locked" => rules::still_locked::sentence(bench, standing, d),
        "not-renewed" => rules::not_renewed::sentence(bench, standing, d),
        "used-twice" => rules::used_twice::sentence(bench, standing, d),
        "never-so" => rules::never_so::sentence(bench, standing, d),
        _ => rules::out_of_turn::sentence(bench, standing, d),
    }
}

/// The atoms that fail in the way that comes nearest to holding.
pub fn failing<'d>(standing: &Standing, demand: &'d Demand) -> Vec<&'d Atom> {
    demand
        .ways
        .iter()
        .filter(|way| !way.elsewhere)
        .map(|way| {
            way.atoms
                .iter()
                .filter(|a| !standing.holds(demand, a))
                .collect::<Vec<_>>()
        })
        .min_by_key(Vec::len)
        .unwrap_or_default()
}

/// The step that last changed what the atom asks about, before the demand's own act.
pub fn changed_by(standing: &Standing, demand: &Demand, atom: &Atom) -> Option<StepId> {
    let slot = (standing.at[demand.step as usize], demand.sub);
    match atom.what {
        What::Done(step, false) => Some(StepId(step)),
        What::Chain(chain, _) => (0u32..)
            .zip(&standing.lives.chain(chain).acts)
            .filter(|(i, _)| standing.slot(chain, *i) < slot)
            .max_by_key(|(i, _)| standing.slot(chain, *i))
            .map(|(_, a)| StepId(a.step)),
        _ => None,
    }
}

/// The next step behind the demand's own act that makes the atom true.
pub fn comes_later(standing: &Standing, demand: &Demand, atom: &Atom) -> Option<StepId> {
    let slot = (standing.at[demand.step as usize], demand.sub);
    match atom.what {
        What::Done(step, true) => Some(StepId(step)),
        What::Chain(chain, test) => (0u32..)
            .zip(&standing.lives.chain(chain).acts)
            .filter(|(i, a)| test.passes(a.value) && standing.slot(chain, *i) >= slot)
            .min_by_key(|(i, _)| standing.slot(chain, *i))
            .map(|(_, a)| StepId(a.step)),
        _ => None,
    }
}

/// The name of a thing, for `about`.
pub fn name(bench: &Bench, thing: ThingId) -> String {
    bench
        .plan
        .things
        .get(thing.0 as usize)
        .map_or(String::new(), |t| t.name.clone())
}

/// A step as a cause.
pub fn at_step(bench: &Bench, step: StepId, says: impl Into<String>) -> Because {
    Because {
        place: words::step_place(bench.plan, step),
        says: says.into(),
    }
}

/// `, because …` where the writer gave a reason.
pub fn writers_reason(demand: &Demand) -> String {
    demand
        .because
        .as_ref()
        .map_or(String::new(), |b| format!(" ({b})"))
}

/// Why one step must stand behind another, in words, and the line that says so.
pub fn reason(bench: &Bench, source: &Source) -> (String, Place) {
    let plan = bench.plan;
    match source {
        Source::Demand(d, atom) => {
            let demand = &bench.demands[*d as usize];
            let about = atom.about.map_or("", |t| words::called(plan, t));
            let thing = words::called(plan, demand.thing);
            let away = matches!(atom.what, What::Chain(_, Test::AtMost(_)));
            let says = match demand.why {
                Why::After | Why::Lag | Why::Before => {
                    let word = if demand.why == Why::Before {
                        "before"
                    } else {
                        "after"
                    };
                    format!("this step is to come {word} {}", asked(bench, demand))
                }
                Why::MustBefore(_) | Why::MustAfter(_) => {
                    format!("{thing} {}", asked(bench, demand))
                }
                Why::Floats => format!("{thing} must float until {}", asked(bench, demand)),
                Why::Onto => format!("{thing} goes onto {about}"),
                Why::Built => format!("{thing} must have {about} in it before it goes in"),
                Why::Hold => format!("{thing} must have {about} to hold"),
                Why::StandsOn => format!("{about} stands on {thing}"),
                Why::Fastened => {
                    format!(
                        "{about} must be {} for {thing} to come off",
                        wanted(bench, atom)
                    )
                }
                Why::Joint => format!("{about} belongs in the joint at {thing}"),
                Why::Opening => format!("{about} closes {thing}"),
                Why::OtherClosing => {
                    format!("{about} must be tight for what goes in at {thing} to stay in")
                }
                Why::Mark => format!("{thing} goes to a mark made earlier"),
                Why::Reach if away && on_the_bench(demand, atom) => {
                    format!("{thing} could then only be got at while {about} lies on the bench")
                }
                Why::Reach if away => format!("{about} would be in the way of {thing}"),
                _ if away => format!("{thing} wants {about} {}", wanted(bench, atom)),
                _ => format!("{thing} needs {about}"),
            };
            (
                words::capital(&(says + &writers_reason(demand))),
                atom.place,
            )
        }
        Source::Link {
            chain,
            first,
            second,
        } => {
            let chain = bench.lives.chain(*chain);
            let act = &chain.acts[*first as usize];
            let step = StepId(act.step);
            let thing = words::called(plan, chain.thing);
            let it = words::verb(plan, chain.thing, "it", "they");
            let fasteners = plan.thing(chain.thing).sort == Sort::Fasteners;
            let lowered = chain.acts[*second as usize].value < act.value;
            let says = match (chain.aspect, fasteners, lowered) {
                (Aspect::Main, false, true) => {
                    format!("{thing} can only come off after {it} went on")
                }
                (Aspect::Main, false, false) => {
                    format!("{thing} can only go on again after {it} came off")
                }
                (Aspect::Main, true, true) => {
                    format!("{thing} can only be loosened after {it} went in")
                }
                (Aspect::Main, true, false) if act.value == 0 => {
                    format!("{thing} can only go in again after {it} came out")
                }
                _ => format!("{thing}: this follows “{}”", words::step(plan, step)),
            };
            (words::capital(&says), words::step_place(plan, step))
        }
    }
}

/// The state that an atom wants, as one word or two.
pub fn wanted<'b>(bench: &'b Bench, atom: &Atom) -> &'b str {
    let fasteners = atom
        .about
        .is_some_and(|t| bench.plan.thing(t).sort == Sort::Fasteners);
    match atom.what {
        What::Chain(c, test) => match (bench.lives.chain(c).aspect, test) {
            (Aspect::Main, Test::AtLeast(v)) if fasteners => match v {
                tightness::LOCKED => "locked",
                tightness::TIGHT => "tight",
                tightness::SNUG => "snug",
                _ => "in",
            },
            (Aspect::Main, Test::AtMost(0)) if fasteners => "out",
            (Aspect::Main, Test::AtMost(_)) if fasteners => "slack",
            (Aspect::Main, Test::AtMost(_)) => "off",
            (Aspect::Happened(word), Test::AtLeast(_)) => words::word_of(word),
            (Aspect::Place, Test::Is(n)) => match atom.about.map(|t| &bench.plan.thing(t).body) {
                Some(Body::Position { places }) => places
                    .get(usize::from(n).saturating_sub(1))
                    .map_or("at its place", |(name, _)| name.as_str()),
                _ => "at its place",
            },
            _ => "there",
        },
        _ => "there",
    }
}

/// That an atom does not hold, said of the thing it is about: `the bolts are not tight yet`.
pub fn not_so(bench: &Bench, standing: &Standing, demand: &Demand, atom: &Atom) -> String {
    let plan = bench.plan;
    let Some(about) = atom.about else {
        return "that is not so yet".into();
    };
    let called = words::called(plan, about);
    let state = wanted(bench, atom);
    if let What::Chain(c, _) = atom.what
        && bench.lives.chain(c).aspect == Aspect::Place
    {
        return format!("{called} does not stand at {state}");
    }
    let are = words::is_or_are(plan, about);
    let later = comes_later(standing, demand, atom).is_some();
    match (held_before(standing, demand, atom), later) {
        (true, _) => format!("{called} {are} not {state} any more"),
        (false, true) => format!("{called} {are} not {state} yet"),
        (false, false) => format!("{called} {are} never {state}"),
    }
}

/// Whether the atom held at some time before the demand's own act.
pub fn held_before(standing: &Standing, demand: &Demand, atom: &Atom) -> bool {
    let slot = (standing.at[demand.step as usize], demand.sub);
    match atom.what {
        What::Chain(chain, test) => {
            let c = standing.lives.chain(chain);
            let made = (0u32..)
                .zip(&c.acts)
                .any(|(i, a)| test.passes(a.value) && standing.slot(chain, i) < slot);
            made || test.passes(c.initial)
        }
        _ => false,
    }
}

/// Whether an atom wants the thing itself, or what carries it, away from the machine.
fn on_the_bench(demand: &Demand, atom: &Atom) -> bool {
    let elsewhere = |w: &&crate::demand::Way| w.elsewhere && w.atoms.contains(atom);
    let plainly = |w: &&crate::demand::Way| !w.elsewhere && w.atoms.contains(atom);
    demand.ways.iter().any(|w| elsewhere(&w)) && !demand.ways.iter().any(|w| plainly(&w))
}

/// What a demand of the writer's own asks, in words with labels: the clause behind `after`, the
/// condition behind `before` or `floats until`, a whole standing rule.
pub fn asked(bench: &Bench, demand: &Demand) -> String {
    let plan = bench.plan;
    let step = &plan.steps[demand.step as usize];
    let thing = plan.things.get(demand.thing.0 as usize);
    let found = match demand.why {
        Why::After | Why::Lag => {
            let lags = step.lags.iter().map(|l| &l.after);
            let clauses = step.after.iter().chain(lags).flat_map(|c| &c.clauses);
            clauses
                .filter(|c| c.place == demand.place)
                .find(|c| concerns(demand, c))
                .map(|c| words::clause(plan, c))
        }
        Why::Before => {
            let at = |c: &&Condition| c.place == demand.place;
            step.before
                .iter()
                .find(at)
                .map(|c| words::condition(plan, c))
        }
        Why::Floats => thing
            .and_then(|t| t.fasteners())
            .and_then(|f| f.floats_until.iter().find(|c| c.place == demand.place))
            .map(|c| words::condition(plan, c)),
        Why::MustBefore(n) | Why::MustAfter(n) => thing.map(|t| {
            let must = &t.must[n as usize];
            let states: Vec<String> = must
                .states
                .iter()
                .map(|s| words::state(plan, demand.thing, *s))
                .collect();
            let when = if must.before { "before" } else { "after" };
            format!(
                "must be {} {when} {}",
                words::list(&states),
                words::condition(plan, &must.condition)
            )
        }),
        _ => None,
    };
    found.unwrap_or_else(|| plan.text(demand.place).to_string())
}

/// Whether a clause is the one that a demand was made from: one name of several in a list has
/// the same place as the others.
fn concerns(demand: &Demand, clause: &plan::model::Clause) -> bool {
    let mut about = demand
        .ways
        .iter()
        .flat_map(|w| &w.atoms)
        .filter_map(|a| a.about);
    match &clause.subject {
        plan::model::Subject::Thing(thing) => about.any(|a| a == *thing),
        plan::model::Subject::Steps(_) => about.next().is_none(),
    }
}
