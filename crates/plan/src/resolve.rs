//! From trees to a plan, in passes: files, names, what things are, what holds what, conditions,
//! steps.

use std::collections::HashMap;
use std::mem::{discriminant, take};
use std::sync::Arc;

use syntax::tree::Tree;

use crate::Shelf;
use crate::bodies::Places;
use crate::conditions::Facts;
use crate::declare::{self, Declared};
use crate::desk::Desk;
use crate::index::Index;
use crate::model::{FileId, Place, Plan, Problem, ProblemKind, Sort, Thing, ThingId};
use crate::names::{ItemAt, Named};
use crate::rules::Rules;
use crate::{access, damage, heading, rules, stages, steps, things, tools, units, unknown, uses};

/// Resolves a plan: `name` is what the asked file is called, `tree` what stands in it, `shelf`
/// where the files are that it uses. Nothing is refused; what is wrong is in [`Plan::problems`],
/// by place.
pub fn resolve(name: &str, tree: Arc<Tree>, shelf: &dyn Shelf) -> Plan {
    let files = uses::gather(name, tree, shelf);
    let mut desk = Desk::new(&files.texts);
    damage::take_in(&mut desk, &files.walk);
    declare::series(&mut desk, &files.walk);
    let Declared { mut things, seeds } = declare::things(&mut desk, &files.walk);
    let stages = stages::lay_out(&mut desk);
    let step_seeds = take(&mut desk.steps);
    damage::mark(&mut desk, &files.walk, &mut things);
    tools::take_in(&mut desk, &mut things, &seeds);

    let heading = heading::read(&mut desk);
    for (thing, seed) in things.iter_mut().zip(&seeds) {
        things::read(&mut desk, seed, thing);
    }
    units::cut_circles(&mut desk, &mut things);

    let index = Index::of_things(&things);
    access::read(&mut desk, &seeds, &mut things, &index);
    let places = Places::of(&things);
    let unsure = |thing: &Thing| thing.sort == Sort::Fasteners && thing.uncertain;
    let holders_unsure = desk.hazy.any() || files.names_missing || things.iter().any(unsure);
    let facts = Facts {
        things: &things,
        index: &index,
        places: &places,
        steps: &step_seeds,
        holders_unsure,
    };
    let ids = (0u32..).map(ThingId);
    let said: Vec<Rules> = ids
        .zip(&seeds)
        .map(|(id, seed)| rules::read(&mut desk, &facts, seed, id))
        .collect();
    let steps = (0..step_seeds.len() as u32)
        .filter_map(|number| steps::read(&mut desk, &facts, number))
        .collect();
    rules::put(said, &mut things);

    let unmentioned = unmentioned(&desk);
    let Desk {
        names,
        series,
        hazy,
        unknown,
        problems,
        ..
    } = desk;
    let mut all = files.problems;
    all.extend(problems);
    if !files.names_missing {
        all.extend(unknown::settle(
            unknown,
            &names,
            &series,
            &hazy,
            &files.sources,
        ));
    }
    for (number, source) in (0u32..).zip(&files.sources) {
        let file = FileId(number);
        all.extend(source.tree.problems.iter().map(|problem| Problem {
            place: Place {
                file,
                span: problem.span,
            },
            kind: ProblemKind::Text(problem.kind.clone()),
        }));
    }
    Plan {
        heading,
        sources: files.sources,
        things,
        steps,
        stages,
        problems: in_order(all),
        unmentioned,
    }
}

/// The problems by place, each once: what is written out for every member of a series is wrong
/// in one line.
fn in_order(mut problems: Vec<Problem>) -> Vec<Problem> {
    problems.sort_by_key(|problem| problem.place);
    let mut kept: Vec<Problem> = Vec::with_capacity(problems.len());
    for problem in problems {
        let same = |other: &Problem| match (&other.kind, &problem.kind) {
            (ProblemKind::Text(a), ProblemKind::Text(b)) => a == b,
            (a, b) => discriminant(a) == discriminant(b),
        };
        let beside = kept
            .iter()
            .rev()
            .take_while(|other| other.place == problem.place);
        if !beside.into_iter().any(same) {
            kept.push(problem);
        }
    }
    kept
}

/// The things and series that no other item mentions. A series thing is one, under its name
/// with the holes.
fn unmentioned(desk: &Desk<'_>) -> Vec<(String, Place)> {
    let mut items: HashMap<ItemAt, bool> = HashMap::new();
    for entry in desk.names.entries() {
        *items.entry(entry.by).or_default() |= entry.mentioned;
    }
    let mut all: Vec<(String, Place)> = Vec::new();
    for entry in desk.names.entries() {
        if let Named::Thing(..) = entry.what
            && let Some(false) = items.insert(entry.by, true)
        {
            all.push((desk.full_name(entry), entry.place));
        }
    }
    let series = desk.series.all().iter().filter(|series| !series.mentioned);
    all.extend(series.map(|series| (series.name.clone(), series.place)));
    all.sort_by_key(|(_, place)| *place);
    all
}
