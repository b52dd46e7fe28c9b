//! `arrange`: the nearest order that works, shown as a change of the text or written into it.

use super::diff::diff;
use crate::cli::Arrange;
use crate::input::{self, Asked};
use crate::outcome::{Outcome, Status};
use crate::write;
use check::Bench;
use check::view::{Arranged, Link};
use plan::model::{Plan, StepId};
use sheet::Look;
use sheet::findings::{Counts, Texts, counted, finding};
use sheet::words::Numbers;
use std::collections::HashSet;

/// Does it.
pub fn run(arguments: &Arrange, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let plans = input::plans(&arguments.plans, &mut outcome);
    for asked in &plans {
        one(asked, arguments.write, look, &mut outcome);
    }
    outcome
}

fn one(asked: &Asked, write: bool, look: Look, outcome: &mut Outcome) {
    let name = asked.name();
    let bench = Bench::of(&asked.plan);
    let arranged = match bench.arrange() {
        Ok(arranged) => arranged,
        Err(findings) => {
            let texts = Texts::of(&asked.plan);
            for one in &findings {
                outcome.data(&finding(&texts, one, look));
            }
            outcome.say(format!("{name}: no order works, so nothing was moved."));
            outcome.worse(Status::Found);
            return;
        }
    };
    if arranged.moved.is_empty() {
        outcome.say(match remaining(&bench) {
            None => format!("{name}: nothing has to move."),
            Some(rest) => format!(
                "{name}: nothing to move; {rest}; see `fitwright check {}`.",
                asked.argument()
            ),
        });
        if write && asked.file.is_none() {
            outcome.data(&asked.text);
        }
        return;
    }
    for line in reasons(&bench, &arranged) {
        outcome.say(sheet::wrap::hang("", &line, look.columns()).trim_end());
    }
    if let Some(line) = alone_in_a_series(&bench, &arranged) {
        outcome.fail(format!("{name}: {line}"));
        return;
    }
    let new = match moved(&asked.plan, &asked.text, &arranged) {
        Ok(new) => new,
        Err(why) => {
            outcome.fail(why);
            return;
        }
    };
    if let Ok(after) = asked.with_text(new.clone())
        && let Some(rest) = remaining(&Bench::of(&after))
    {
        outcome.say(format!(
            "{name}: {rest}; see `fitwright check {}`.",
            asked.argument()
        ));
    }
    match (&asked.file, write) {
        (Some(file), true) => match write::replace(file, asked.text.as_bytes(), new.as_bytes()) {
            Ok(()) => outcome.say(format!(
                "{name}: {} moved.",
                counted(arranged.moved.len(), "step")
            )),
            Err(why) => outcome.fail(why),
        },
        (None, true) => outcome.data(&new),
        (_, false) => outcome.data(&diff(&name, &asked.text, &new, look)),
    }
}

/// What is still wrong with a plan when all that a move can mend is mended; none when nothing is.
fn remaining(bench: &Bench<'_>) -> Option<String> {
    let errors = Counts::of(bench.findings()).errors;
    let remain = if errors == 1 { "remains" } else { "remain" };
    (errors > 0).then(|| {
        let errors = counted(errors, "error");
        format!("{errors} {remain} that moving does not mend")
    })
}

/// The text with every moved step in its new place.
///
/// # Errors
/// When the text cannot be changed so.
pub(super) fn moved(plan: &Plan, text: &str, arranged: &Arranged) -> Result<String, String> {
    let Some(source) = plan.sources.first() else {
        return Ok(text.to_owned());
    };
    let edits = syntax::edit::move_items(&source.tree, &arranged.item_moves);
    syntax::edit::apply(text, &edits)
        .map_err(|_| format!("{}: the steps cannot be moved in the text", source.name))
}

/// How many moves are told one by one.
const MOST_TOLD: usize = 30;

/// For each step that moves: where to, and why.
fn reasons(bench: &Bench<'_>, arranged: &Arranged) -> Vec<String> {
    let plan = bench.plan;
    let numbers = Numbers::of(plan, bench.order());
    let texts = Texts::of(plan);
    let mut ties = Ties::of(bench, arranged);
    let mut lines = Vec::new();
    for (step, behind) in arranged.moved.iter().take(MOST_TOLD) {
        let goes = match behind {
            Some(behind) => format!("goes behind {}", numbers.long(plan, *behind)),
            None => "goes first".into(),
        };
        let line = format!("{} {goes}", capital(&numbers.long(plan, *step)));
        lines.push(match ties.of_step(*step) {
            Some(link) => {
                let says = link.says.trim_end_matches('.');
                format!("{line}: {says} ({}).", texts.line(link.place))
            }
            // Where more than one way leads out, no single condition ties the step down; what
            // was found at it says what is wrong there.
            None => match bench.findings().iter().find(|f| f.steps.contains(step)) {
                Some(finding) => format!("{line}. As it stands: {}", finding.says),
                None => match behind {
                    Some(behind) if ties.moves(*behind) => {
                        format!("{line}: it follows {}.", numbers.short(*behind))
                    }
                    _ => format!("{line}: its place follows from the other moves."),
                },
            },
        });
    }
    let more = arranged.moved.len().saturating_sub(MOST_TOLD);
    if more > 0 {
        lines.push(format!("{more} more move: see the change itself."));
    }
    if let Err(at_least) = arranged.fewest {
        lines.push(format!(
            "There may be a way that moves fewer steps; none moves fewer than {at_least}."
        ));
    }
    lines
}

/// Looks for the condition that ties a step to one that it was on the wrong side of.
struct Ties<'b, 'p> {
    bench: &'b Bench<'p>,
    /// Where each step stands in the order meant, and in the one that works.
    places: Vec<(usize, usize)>,
    /// The steps that move.
    moved: HashSet<StepId>,
    /// How many pairs of steps may still be asked about: a plan with thousands of steps astray
    /// is explained by its findings, not by an hour of looking.
    left: usize,
}

/// How many pairs of steps are asked about in one plan.
const MOST_PAIRS: usize = 300;

impl<'b, 'p> Ties<'b, 'p> {
    fn of(bench: &'b Bench<'p>, arranged: &Arranged) -> Ties<'b, 'p> {
        let mut places = vec![(0, 0); bench.plan.steps.len()];
        for (at, step) in bench.order().iter().enumerate() {
            places[step.0 as usize].0 = at;
        }
        for (at, step) in arranged.order.iter().enumerate() {
            places[step.0 as usize].1 = at;
        }
        Ties {
            bench,
            places,
            moved: arranged.moved.iter().map(|(step, _)| *step).collect(),
            left: MOST_PAIRS,
        }
    }

    fn moves(&self, step: StepId) -> bool {
        self.moved.contains(&step)
    }

    fn of_step(&mut self, step: StepId) -> Option<Link> {
        let (was, is) = self.places[step.0 as usize];
        let written = self.bench.order();
        for other in written.iter().copied().filter(|other| *other != step) {
            let (other_was, other_is) = self.places[other.0 as usize];
            let later = was < other_was && other_is < is;
            let earlier = other_was < was && is < other_is;
            if !later && !earlier {
                continue;
            }
            self.left = self.left.checked_sub(1)?;
            let link = if later {
                let links = self.bench.why(other, step);
                links.and_then(|links| links.into_iter().next_back())
            } else {
                let links = self.bench.why(step, other);
                links.and_then(|links| links.into_iter().next())
            };
            if link.is_some() {
                return link;
            }
        }
        None
    }
}

/// What is said when a step that is written once for all members of a series would have to move
/// for one of them only.
fn alone_in_a_series(bench: &Bench<'_>, arranged: &Arranged) -> Option<String> {
    let numbers = Numbers::of(bench.plan, bench.order());
    let steps: Vec<String> = arranged
        .unwritable
        .iter()
        .map(|step| numbers.long(bench.plan, *step))
        .collect();
    (!steps.is_empty()).then(|| {
        format!(
            "{} cannot be moved in the text, because the line stands for several steps. \
             Write the stage out for each member, or change its order by hand.",
            sheet::words::joined(&steps)
        )
    })
}

fn capital(text: &str) -> String {
    check::words::capital(text)
}
