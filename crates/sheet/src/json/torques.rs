//! The torque sheet.

use super::VERSION;
use crate::torques as inner;
use serde::Serialize;

/// The torque sheets of all plans asked for.
#[derive(Serialize, Debug)]
pub struct TorqueSheets {
    format: &'static str,
    version: u32,
    sheets: Vec<TorqueSheet>,
}

/// The torque sheet of one plan.
#[derive(Serialize, Debug)]
pub struct TorqueSheet {
    title: String,
    machine: Option<String>,
    revision: Option<String>,
    groups: Vec<Group>,
    by_feel: Vec<String>,
    deference: String,
}

#[derive(Serialize, Debug)]
struct Group {
    fasteners: String,
    name: String,
    holds: Vec<String>,
    count: Option<u32>,
    size: Option<String>,
    stages: Vec<Stage>,
    order: Option<Vec<usize>>,
    pattern: Option<String>,
    threads: Option<String>,
    locked_by: Vec<String>,
    tools: Vec<String>,
    settings: Vec<String>,
    source: Option<String>,
    left_hand: bool,
    steps: Vec<usize>,
}

#[derive(Serialize, Debug)]
struct Stage {
    does: &'static str,
    figure: Option<String>,
    other: Option<String>,
}

impl TorqueSheets {
    /// Of these sheets.
    pub fn of(sheets: &[inner::TorqueSheet]) -> TorqueSheets {
        TorqueSheets {
            format: "fitwright-torques",
            version: VERSION,
            sheets: sheets.iter().map(sheet).collect(),
        }
    }
}

fn sheet(sheet: &inner::TorqueSheet) -> TorqueSheet {
    TorqueSheet {
        title: sheet.title.clone(),
        machine: sheet.machine.clone(),
        revision: sheet.revision.clone(),
        groups: sheet.groups.iter().map(|one| group(sheet, one)).collect(),
        by_feel: sheet.by_feel.clone(),
        deference: sheet.deference.to_owned(),
    }
}

fn group(sheet: &inner::TorqueSheet, group: &inner::Group) -> Group {
    let figure = group.figure.and_then(|figure| sheet.figures.get(figure));
    Group {
        fasteners: group.fasteners.clone(),
        name: group.name.clone(),
        holds: group.holds.clone(),
        count: group.count,
        size: group.size.clone(),
        stages: group.stages.iter().map(stage).collect(),
        order: figure.map(|figure| figure.order.clone()),
        pattern: figure
            .map(|figure| figure.words.clone())
            .or_else(|| group.pattern.clone()),
        threads: group.threads.clone(),
        locked_by: group.locked_by.clone(),
        tools: group.tools.clone(),
        settings: group.settings.clone(),
        source: group.source.clone(),
        left_hand: group.left_hand,
        steps: group.steps.clone(),
    }
}

fn stage(stage: &inner::Stage) -> Stage {
    let (does, figure, other) = match stage {
        inner::Stage::Torque { shown, other } => ("torque", Some(shown.clone()), other.clone()),
        inner::Stage::Blank { .. } => ("torque", None, None),
        inner::Stage::Turn(angle) => ("turn", Some(angle.clone()), None),
        inner::Stage::TurnBlank => ("turn", None, None),
        inner::Stage::Slacken => ("slacken", None, None),
        inner::Stage::Mark => ("mark", None, None),
    };
    Stage {
        does,
        figure,
        other,
    }
}
