//! The steps in their written order, stages written out for each member, `as` names taken in.

use std::rc::Rc;

use syntax::tree::{Head, Item, Kind, Members, Name, Says};

use crate::desk::{Desk, Group, Here, StepSeed};
use crate::model::{ProblemKind, Stage, StepId, Text};
use crate::names::{ItemAt, Named};
use crate::pattern;
use crate::series::{self, Bound};
use crate::sorts;
use crate::spelling::small;
use crate::unknown::Wanted;

/// Lays out the steps of the asked text. Steps of used files are no part of the plan.
pub(crate) fn lay_out(desk: &mut Desk<'_>) -> Vec<Stage> {
    let mut stages = Vec::new();
    let mut open = Open::none();
    let tree = &desk.texts[0].tree;
    for (number, item) in (0u32..).zip(&tree.items) {
        match &item.head {
            Head::Step { .. } => open.items.push(number),
            Head::Declaration {
                kind: Kind::Stage, ..
            } => {
                open.close(desk, &mut stages);
                open = begin(desk, (0, number), item, &mut stages);
            }
            // What stage the steps below are in is not known.
            Head::Unreadable {
                kind: Some(Kind::Stage),
                ..
            } => {
                open.close(desk, &mut stages);
                open = Open::none();
            }
            _ => {}
        }
    }
    open.close(desk, &mut stages);
    names(desk);
    stages
}

/// A stage whose steps are still being gathered.
struct Open {
    stage: Option<u32>,
    passes: Vec<Vec<Bound>>,
    items: Vec<u32>,
}

impl Open {
    fn none() -> Open {
        Open {
            stage: None,
            passes: vec![Vec::new()],
            items: Vec::new(),
        }
    }

    fn close(mut self, desk: &mut Desk<'_>, stages: &mut [Stage]) {
        let from = StepId(desk.steps.len() as u32);
        let stage = self.stage.and_then(|stage| stages.get_mut(stage as usize));
        if let (Some(stage), [first, further @ ..]) = (&stage, self.items.as_slice())
            && self.passes.len() > 1
        {
            let each = 1 + further.len();
            let wanted = each * (self.passes.len() - 1);
            let by = (0, *first);
            let place = desk.place(by, desk.item(by).span);
            let room = desk.room_for_copies(wanted, &stage.title.text, place);
            self.passes.truncate(1 + room / each);
        }
        for pass in &self.passes {
            for item in &self.items {
                desk.steps.push(StepSeed {
                    item: *item,
                    bound: pass.as_slice().into(),
                    stage: self.stage,
                });
            }
        }
        if let Some(stage) = stage {
            stage.steps = (from, StepId(desk.steps.len() as u32));
        }
    }
}

fn begin(desk: &mut Desk<'_>, by: ItemAt, item: &Item, stages: &mut Vec<Stage>) -> Open {
    let label = match &item.head {
        Head::Declaration { label, .. } => *label,
        _ => None,
    };
    let keyword = sorts::keyword(item);
    let title = match label {
        Some(label) => desk.text(by, label),
        None => Text {
            text: String::new(),
            place: desk.place(by, keyword),
        },
    };
    let mut any_order = false;
    let mut passes: Vec<Vec<Bound>> = vec![Vec::new()];
    for detail in &item.details {
        match &detail.says {
            Says::InAnyOrder => any_order = true,
            Says::ForEach { series, members } => {
                let each = for_each(desk, by, *series, members.as_ref());
                let Some(each) = each else { continue };
                // Two series are gone through the second inside the first.
                passes = passes
                    .iter()
                    .flat_map(|pass| {
                        each.iter().map(|bound| {
                            let mut pass = pass.clone();
                            pass.push(*bound);
                            pass
                        })
                    })
                    .take(crate::desk::MOST_COPIES as usize + 1)
                    .collect();
            }
            Says::Unreadable { .. } => {}
            _ => {
                let kind = ProblemKind::DetailNotHere {
                    detail: desk.at(by, detail.keyword).to_owned(),
                    item: desk.at(by, keyword).to_owned(),
                };
                desk.problem(desk.place(by, detail.span), kind);
            }
        }
    }
    let stage = stages.len() as u32;
    stages.push(Stage {
        title,
        place: desk.place(by, item.span),
        any_order,
        steps: (StepId(0), StepId(0)),
    });
    Open {
        stage: Some(stage),
        passes,
        items: Vec::new(),
    }
}

/// The members that a stage is gone through for; none when the series is not known.
fn for_each(
    desk: &mut Desk<'_>,
    by: ItemAt,
    name: Name,
    members: Option<&Members>,
) -> Option<Vec<Bound>> {
    let written = desk.at(by, name.span);
    let Some(number) = desk.series_called(by.0, written) else {
        desk.missing(desk.place(by, name.span), written, Wanted::SERIES);
        return None;
    };
    desk.series.mention(number);
    let series = desk.series.one(number);
    let Some(members) = members else {
        let count = series.members.len() as u32;
        return (count > 0).then(|| (0..count).map(|member| (number, member)).collect());
    };
    let tree = &desk.texts[by.0 as usize].tree;
    let at = |word: syntax::tree::Word| desk.place(by, word.span);
    let read = series::read_members(tree, members, written, at, true);
    let mut problems = read.problems;
    let mut bounds = Vec::with_capacity(read.members.len());
    let places: std::collections::HashMap<&str, u32> = series
        .members
        .iter()
        .map(String::as_str)
        .zip(0u32..)
        .collect();
    for (at, member) in read.members.iter().enumerate() {
        match places.get(member.as_str()) {
            Some(place) => bounds.push((number, *place)),
            None if series.uncertain => {}
            None => {
                let all = series.members.iter().map(String::as_str);
                let near = crate::near::nearest(member, all, 1).map(str::to_owned);
                let word = match members {
                    Members::List(words) => words[at],
                    Members::Range(_, to) => *to,
                };
                let (name, series) = (member.clone(), written.to_owned());
                problems.push((word, ProblemKind::UnknownMember { name, series, near }));
            }
        }
    }
    for (word, kind) in problems {
        desk.problem(desk.place(by, word.span), kind);
    }
    // With no member known the stage is gone through once, so that its steps are not lost.
    (!bounds.is_empty()).then_some(bounds)
}

/// Takes in the `as` names of steps.
fn names(desk: &mut Desk<'_>) {
    for number in 0..desk.steps.len() {
        let seed = &desk.steps[number];
        let (by, bound) = ((0, seed.item), seed.bound.clone());
        let here = Here {
            by,
            bound: &bound,
            step: Some(StepId(number as u32)),
        };
        for detail in &desk.item(by).details {
            if let Says::As(name) = &detail.says {
                let written = desk.at(by, name.span);
                let stem = pattern::is_pattern(written).then(|| Rc::from(&*small(written)));
                for full in desk.written_out(&here, *name) {
                    take_in(desk, &here, *name, &full, stem.as_ref());
                }
            }
        }
    }
    // Whatever was doubtful about a name is found again when its step is read.
    desk.take_doubt();
}

fn take_in(desk: &mut Desk<'_>, here: &Here, name: Name, full: &str, stem: Option<&Rc<str>>) {
    let by = here.by;
    let Some(step) = here.step else { return };
    let place = desk.place(by, name.span);
    let group = desk.groups.len() as u32;
    match desk
        .names
        .declare(full, stem, Named::Steps(group), place, by)
    {
        Ok(_) => desk.groups.push(Group {
            item: by.1,
            steps: vec![step],
        }),
        Err(first) => {
            let entry = desk.names.entry(first);
            if let Named::Steps(group) = entry.what
                && entry.by == by
            {
                desk.groups[group as usize].steps.push(step);
                return;
            }
            let (name, first) = (full.to_owned(), entry.place);
            desk.problem(place, ProblemKind::TwiceNamed { name, first });
        }
    }
}
