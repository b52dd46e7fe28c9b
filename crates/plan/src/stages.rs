//! The steps in their written order, stages written out for each member, `as` names taken in.

use std::rc::Rc;

use syntax::tree::{Head, Kind, Members, Name, Says};

use crate::desk::{Desk, Group, Here, StepSeed};
use crate::details;
use crate::everything;
use crate::model::{ProblemKind, Stage, StepId, Text};
use crate::names::{ItemAt, Named};
use crate::near;
use crate::pattern;
use crate::room;
use crate::series::{self, Bound, Turns};
use crate::sorts;
use crate::spelling::small;
use crate::unknown::Wanted;

/// Lays out the steps of the asked text. Steps of used files are no part of the plan.
pub(crate) fn lay_out(desk: &mut Desk<'_>) -> Vec<Stage> {
    let mut stages = Vec::new();
    let mut open = Open::default();
    let tree = &desk.texts[0].tree;
    for (number, item) in (0u32..).zip(&tree.items) {
        match &item.head {
            Head::Step { .. } => open.items.push(number),
            Head::Declaration {
                kind: Kind::Stage, ..
            } => {
                open.close(desk, &mut stages);
                open = begin(desk, (0, number), &mut stages);
            }
            // What stage the steps below are in is not known.
            Head::Unreadable {
                kind: Some(Kind::Stage),
                ..
            } => {
                open.close(desk, &mut stages);
                open = Open::default();
            }
            _ => {}
        }
    }
    open.close(desk, &mut stages);
    names(desk);
    stages
}

/// A stage whose steps are still being gathered.
#[derive(Default)]
struct Open {
    stage: Option<u32>,
    /// For each series that it is gone through for, the members in order.
    each: Vec<Vec<Bound>>,
    items: Vec<u32>,
}

impl Open {
    fn close(self, desk: &mut Desk<'_>, stages: &mut [Stage]) {
        let Some(first) = self.items.first() else {
            return;
        };
        let first = (0, *first);
        let stage = self.stage.and_then(|stage| stages.get_mut(stage as usize));
        let title = stage.as_ref().map_or("", |stage| &stage.title.text);
        let sizes: Vec<u32> = self.each.iter().map(|each| each.len() as u32).collect();
        let count = sizes.iter().map(|size| u64::from(*size));
        let further = count.fold(1, u64::saturating_mul).saturating_sub(1);
        let mut room = 0;
        if further > 0 {
            let spans = self.items.iter().map(|item| desk.item((0, *item)).span);
            let weight = spans.map(|span| room::weight(span.end - span.start)).sum();
            let place = desk.place(first, desk.item(first).span);
            room = desk.room_for_copies(further, weight, title, place);
        }
        let from = StepId(desk.steps.len() as u32);
        // Two series are gone through the second inside the first.
        for pass in Turns::new(sizes).take(room as usize + 1) {
            let members = self.each.iter().zip(pass);
            let bound: Vec<Bound> = members.map(|(each, at)| each[at as usize]).collect();
            for item in &self.items {
                desk.steps.push(StepSeed {
                    item: *item,
                    bound: bound.as_slice().into(),
                    stage: self.stage,
                });
            }
        }
        if let Some(stage) = stage {
            stage.steps = (from, StepId(desk.steps.len() as u32));
        }
    }
}

fn begin(desk: &mut Desk<'_>, by: ItemAt, stages: &mut Vec<Stage>) -> Open {
    let item = desk.item(by);
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
    let mut all = Vec::new();
    let here = Here {
        by,
        bound: &[],
        step: None,
    };
    details::each(desk, &here, item, |desk, detail| {
        match &detail.says {
            Says::InAnyOrder => any_order = true,
            Says::ForEach { series, members } => {
                all.extend(for_each(desk, by, *series, members.as_ref()));
            }
            _ => return false,
        }
        true
    });
    // A doubtful stage spoils none of its steps: what each of them names is looked up on its own.
    desk.take_doubt();
    let stage = stages.len() as u32;
    let next = StepId(desk.steps.len() as u32);
    stages.push(Stage {
        title,
        place: desk.place(by, item.span),
        any_order,
        // Put right when its steps are known; without any it is where they would begin.
        steps: (next, next),
    });
    Open {
        stage: Some(stage),
        each: all,
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
    if desk.no_room_for_mentions() {
        return None;
    }
    let tree = &desk.texts[by.0 as usize].tree;
    let at = |word: syntax::tree::Word| desk.place(by, word.span);
    let read = series::read_members(tree, members, written, at, true);
    let mut problems = read.problems;
    let place = desk.place(by, name.span);
    desk.room_for_mentions(read.members.len() as u64, written, place);
    let series = desk.series.one(number);
    let mut bounds = Vec::with_capacity(read.members.len());
    let mut strangers = Vec::new();
    for (at, member) in read.members.iter().enumerate() {
        match series.numbers.get(member) {
            Some(number_in) => bounds.push((number, *number_in)),
            None if series.uncertain => {}
            None => {
                let word = match members {
                    Members::List(words) => words[at],
                    Members::Range(_, to) => *to,
                };
                strangers.push((word, member));
            }
        }
    }
    for (word, member) in strangers {
        let mut near = None;
        if desk.room_for_suggestion() {
            let all = desk.series.one(number).members.iter();
            near = near::nearest(member, all.map(String::as_str), 1).map(str::to_owned);
        }
        let (name, series) = (member.clone(), written.to_owned());
        problems.push((word, ProblemKind::UnknownMember { name, series, near }));
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
    if full == everything::WORD {
        desk.problem(place, ProblemKind::Everything { state: None });
    }
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
