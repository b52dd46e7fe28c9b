//! What texts resolve to, through the public interface.

mod access;
mod conditions;
mod damage;
mod details;
mod finding;
mod hostile;
mod indexes;
mod names;
mod sample;
mod series;
mod steps;
mod tools;
mod uses;

use std::collections::HashMap;
use std::sync::Arc;

use plan::model::{Clause, Plan, ProblemKind, Ref, State, Subject, Thing, ThingId};
use plan::{EmptyShelf, Shelf};
use syntax::tree::Tree;

/// The plan of a text that uses no other.
pub fn plan(text: &str) -> Plan {
    plan::resolve("asked", Arc::new(syntax::read(text)), &EmptyShelf)
}

/// The plan of a text in which nothing is wrong.
pub fn good(text: &str) -> Plan {
    let plan = plan(text);
    assert_eq!(problems(&plan), Vec::<String>::new(), "{text}");
    plan
}

/// Each problem as `line: what "where it stands" …`.
pub fn problems(plan: &Plan) -> Vec<String> {
    let one = |problem: &plan::model::Problem| {
        let source = &plan.sources[problem.place.file.0 as usize];
        let before = &source.tree.text[..problem.place.span.start as usize];
        let line = before.matches('\n').count() + 1;
        let file = match problem.place.file.0 {
            0 => String::new(),
            _ => format!("{} ", source.name),
        };
        format!("{file}{line}: {}", kind(&problem.kind))
    };
    plan.problems.iter().map(one).collect()
}

fn kind(kind: &ProblemKind) -> String {
    let near = |near: &Option<String>| match near {
        Some(near) => format!(" near {near}"),
        None => String::new(),
    };
    match kind {
        ProblemKind::Text(_) => "text".to_owned(),
        ProblemKind::UnknownName { name, near: n } => format!("unknown {name}{}", near(n)),
        ProblemKind::Everything { state } => match state {
            Some(state) => format!("everything {state}"),
            None => "everything".to_owned(),
        },
        ProblemKind::NoFigureHere { verb, text, torque } => {
            format!("no figure {verb:?} {text} {torque}")
        }
        ProblemKind::TwiceNamed { name, .. } => format!("twice {name}"),
        ProblemKind::WrongSort { name, is, .. } => format!("sort {name} {is:?}"),
        ProblemKind::DetailNotHere { detail, item } => format!("detail {detail} on {item}"),
        ProblemKind::StateNotHere { name, is, state } => format!("state {name} {is:?} {state:?}"),
        ProblemKind::UnknownPlace {
            name,
            position,
            near: n,
        } => format!("place {name} of {position}{}", near(n)),
        ProblemKind::Figure { text, .. } => format!("figure {text}"),
        ProblemKind::WrongDimension { text, wanted } => format!("dimension {text} for {wanted:?}"),
        ProblemKind::UseMissing { path, .. } => format!("missing {path}"),
        ProblemKind::UseCycle { path } => format!("circle {path}"),
        ProblemKind::TwoPlans { .. } => "two plans".to_owned(),
        ProblemKind::NamesStep { name, state, .. } => format!("step {name} {state:?}"),
        ProblemKind::UnknownMember {
            name,
            series,
            near: n,
        } => format!("member {name} of {series}{}", near(n)),
        ProblemKind::TooMany { name, most } => format!("too many {name} {most}"),
        ProblemKind::UnitInItself { name } => format!("in itself {name}"),
        ProblemKind::TwiceSaid { detail, .. } => format!("again {detail}"),
    }
}

/// The thing of this name.
pub fn thing<'p>(plan: &'p Plan, name: &str) -> &'p Thing {
    plan.thing(id(plan, name))
}

/// The id of the thing of this name.
pub fn id(plan: &Plan, name: &str) -> ThingId {
    let found = plan.things().find(|(_, thing)| thing.name == name);
    found.unwrap_or_else(|| panic!("no thing {name}")).0
}

/// The names of things.
pub fn names(plan: &Plan, refs: &[Ref]) -> Vec<String> {
    refs.iter()
        .map(|r| plan.thing(r.thing).name.clone())
        .collect()
}

/// Clauses as `name Is(State)`.
pub fn clauses(plan: &Plan, clauses: &[Clause]) -> Vec<String> {
    let one = |clause: &Clause| {
        let subject = match &clause.subject {
            Subject::Thing(thing) => plan.thing(*thing).name.clone(),
            Subject::Steps(steps) => {
                let steps: Vec<String> = steps.iter().map(|s| (s.0 + 1).to_string()).collect();
                format!("#{}", steps.join("+"))
            }
        };
        match clause.state {
            State::Is(state) => format!("{subject} {state:?}"),
            State::At(place) => format!("{subject} at {place}"),
        }
    };
    clauses.iter().map(one).collect()
}

/// The clauses of the conditions that the step of this number (from 1) comes after.
pub fn after(plan: &Plan, step: usize) -> Vec<String> {
    let after = plan.steps[step - 1].after.iter();
    after
        .flat_map(|condition| clauses(plan, &condition.clauses))
        .collect()
}

/// A shelf of texts by name; names are taken as they stand.
#[derive(Default)]
pub struct Texts(HashMap<String, Arc<Tree>>);

impl Texts {
    /// A shelf with these texts.
    pub fn of(texts: &[(&str, &str)]) -> Texts {
        let read =
            |(name, text): &(&str, &str)| ((*name).to_owned(), Arc::new(syntax::read(*text)));
        Texts(texts.iter().map(read).collect())
    }

    /// The plan of one of them.
    pub fn plan(&self, name: &str) -> Plan {
        plan::resolve(name, self.0[name].clone(), self)
    }
}

impl Shelf for Texts {
    fn take(&self, _: &str, path: &str) -> Result<(String, Arc<Tree>), String> {
        match self.0.get(path) {
            Some(tree) => Ok((path.to_owned(), tree.clone())),
            None => Err("there is no such file".to_owned()),
        }
    }
}
