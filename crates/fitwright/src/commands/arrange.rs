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
use sheet::findings::{Texts, counted, finding};
use sheet::words::Numbers;

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
        outcome.say(format!("{name}: nothing has to move."));
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

/// The text with every moved step in its new place.
fn moved(plan: &Plan, text: &str, arranged: &Arranged) -> Result<String, String> {
    let Some(source) = plan.sources.first() else {
        return Ok(text.to_owned());
    };
    let edits = syntax::edit::move_items(&source.tree, &arranged.item_moves);
    syntax::edit::apply(text, &edits)
        .map_err(|_| format!("{}: the steps cannot be moved in the text", source.name))
}

/// For each step that moves: where to, and why.
fn reasons(bench: &Bench<'_>, arranged: &Arranged) -> Vec<String> {
    let plan = bench.plan;
    let numbers = Numbers::of(plan, bench.order());
    let texts = Texts::of(plan);
    let mut lines = Vec::new();
    for (step, behind) in &arranged.moved {
        let goes = match behind {
            Some(behind) => format!("goes behind {}", numbers.long(plan, *behind)),
            None => "goes first".into(),
        };
        let line = format!("{} {goes}", capital(&numbers.long(plan, *step)));
        lines.push(match link(bench, arranged, *step) {
            Some(link) => {
                let says = link.says.trim_end_matches('.');
                format!("{line}: {says} ({}).", texts.line(link.place))
            }
            // Where more than one way leads out, no single condition ties the step down; what
            // was found at it says what is wrong there.
            None => match bench.findings().iter().find(|f| f.steps.contains(step)) {
                Some(finding) => format!("{line}. As it stands: {}", finding.says),
                None => format!("{line}."),
            },
        });
    }
    if let Err(at_least) = arranged.fewest {
        lines.push(format!(
            "There may be a way that moves fewer steps; none moves fewer than {at_least}."
        ));
    }
    lines
}

/// The condition that ties a step to one that it was on the wrong side of.
fn link(bench: &Bench<'_>, arranged: &Arranged, step: StepId) -> Option<Link> {
    let place = |order: &[StepId], step: StepId| order.iter().position(|other| *other == step);
    let written = bench.order();
    let (was, is) = (place(written, step)?, place(&arranged.order, step)?);
    for other in written.iter().copied().filter(|other| *other != step) {
        let (other_was, other_is) = (place(written, other)?, place(&arranged.order, other)?);
        let link = if was < other_was && other_is < is {
            bench
                .why(other, step)
                .and_then(|links| links.into_iter().next_back())
        } else if other_was < was && is < other_is {
            bench
                .why(step, other)
                .and_then(|links| links.into_iter().next())
        } else {
            None
        };
        if link.is_some() {
            return link;
        }
    }
    None
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
