//! The torque sheet: every thread that a plan tightens, on one page.
//!
//! The figures are those of the plan, as written, with the other unit beside
//! them. Where the plan has none there is a blank to fill in. What many groups
//! share (a source, a tool, a locker) is said once, as a note.

pub mod figure;
mod make;
mod page;

pub use page::{markdown, text};

use crate::cautions::DEFERENCE;
use check::Bench;
use figure::Figure;
use plan::model::StepId;

/// In which order the groups stand.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sorting {
    /// As they are first tightened.
    Use,
    /// By what they hold.
    Place,
}

/// A torque sheet.
#[derive(Clone, PartialEq, Debug)]
pub struct TorqueSheet {
    /// The plan's title, or the name of its file.
    pub title: String,
    /// The machine.
    pub machine: Option<String>,
    /// The revision as written.
    pub revision: Option<String>,
    /// The groups.
    pub groups: Vec<Group>,
    /// Groups that the plan tightens to nothing measured.
    pub by_feel: Vec<String>,
    /// The drawn orders, numbered from 1 as they stand.
    pub figures: Vec<Figure>,
    /// The line every sheet ends with.
    pub deference: &'static str,
}

/// One group of fasteners.
#[derive(Clone, PartialEq, Debug)]
pub struct Group {
    /// Its name for people.
    pub fasteners: String,
    /// Its name in the plan.
    pub name: String,
    /// What it holds.
    pub holds: Vec<String>,
    /// How many.
    pub count: Option<u32>,
    /// Thread and class, or the noun.
    pub size: Option<String>,
    /// The passes, one or more, in order.
    pub stages: Vec<Stage>,
    /// `dry`, or what is on the threads; none where the plan does not say.
    pub threads: Option<String>,
    /// What locks it.
    pub locked_by: Vec<String>,
    /// The tools that its tightening names.
    pub tools: Vec<String>,
    /// What to set the wrench to, where an adapter changes it.
    pub settings: Vec<String>,
    /// Where the figures come from.
    pub source: Option<String>,
    /// Which drawn order it has, as an index into the figures.
    pub figure: Option<usize>,
    /// A pattern in words that cannot be drawn.
    pub pattern: Option<String>,
    /// Whether the thread is left-hand.
    pub left_hand: bool,
    /// The numbers of the steps that tighten it.
    pub steps: Vec<usize>,
    /// The steps themselves.
    pub step_ids: Vec<StepId>,
}

/// One stage of tightening a group.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Stage {
    /// To a torque: in the sheet's unit, and in the other.
    Torque {
        /// In the plan's unit, or as written.
        shown: String,
        /// In the other unit.
        other: Option<String>,
    },
    /// A torque that the plan does not have, with the unit to write it in.
    Blank {
        /// The unit.
        unit: Option<String>,
    },
    /// Through an angle.
    Turn(String),
    /// Through an angle that the plan does not have.
    TurnBlank,
    /// Slacken off.
    Slacken,
    /// Mark the heads.
    Mark,
}

impl TorqueSheet {
    /// The sheet of a plan.
    pub fn of(bench: &Bench<'_>, sorting: Sorting) -> TorqueSheet {
        let plan = bench.plan;
        let (groups, by_feel, figures) = make::groups(bench, sorting);
        let harmless = |text: &Option<String>| text.as_deref().map(crate::look::harmless);
        TorqueSheet {
            title: harmless(&plan.heading.title).unwrap_or_else(|| {
                plan.sources
                    .first()
                    .map_or_else(String::new, |source| crate::look::harmless(&source.name))
            }),
            machine: harmless(&plan.heading.machine),
            revision: harmless(&plan.heading.revision),
            groups,
            by_feel,
            figures,
            deference: DEFERENCE,
        }
    }
}
