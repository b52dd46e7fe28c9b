//! The sheet that goes to the bench, as data: what each step needs a person to know.
//!
//! Nothing here is laid out. [`crate::terminal`], [`crate::markdown`] and
//! [`crate::json`] each show the same checklist.

mod acts;
mod chances;
mod entry;
mod fastening;
mod make;
mod parts;
mod supplies;
mod torque;

use crate::findings::Counts;
use check::Bench;
use check::Finding;
use check::Severity;
use check::view::LastChance;
use plan::model::{Condition, Plan, StepId, ThingId};

/// What the checker worked out about a plan and the sheet shows.
pub struct Worked<'p> {
    /// The plan.
    pub plan: &'p Plan,
    /// The order meant.
    pub order: Vec<StepId>,
    /// What was found.
    pub findings: &'p [Finding],
    /// Which step closes the way to what.
    pub last_chances: Vec<LastChance>,
    /// What a step must leave loose, and until when.
    pub loose: Vec<(StepId, ThingId, &'p Condition)>,
}

impl<'p> Worked<'p> {
    /// From a bench.
    pub fn of(bench: &'p Bench<'p>) -> Worked<'p> {
        Worked {
            plan: bench.plan,
            order: bench.order().to_vec(),
            findings: bench.findings(),
            last_chances: bench.last_chances(),
            loose: bench.leave_loose(),
        }
    }
}

/// A sheet.
#[derive(Clone, PartialEq, Debug)]
pub struct Checklist {
    /// What stands at its head.
    pub heading: Heading,
    /// The steps under their headings.
    pub sections: Vec<Section>,
    /// What must be out again before the end.
    pub temporaries: Vec<Temporary>,
    /// The line every sheet ends with.
    pub deference: &'static str,
}

/// The head of a sheet.
#[derive(Clone, PartialEq, Debug)]
pub struct Heading {
    /// The plan's title, or the name of its file.
    pub title: String,
    /// The machine.
    pub machine: Option<String>,
    /// The revision as written.
    pub revision: Option<String>,
    /// The plan's file.
    pub file: String,
    /// Whether the machine stands assembled at the first step.
    pub assembled: bool,
    /// How many people work at once, where the plan says so.
    pub people: Option<u32>,
    /// Who reviewed it and when.
    pub reviewed: Vec<(String, String)>,
    /// How many steps there are.
    pub steps: usize,
    /// What the checker found.
    pub found: Counts,
    /// Tightenings whose torque is still to be found.
    pub torques_owed: Vec<Owed>,
}

/// A figure that the plan does not have.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Owed {
    /// Of what.
    pub thing: String,
    /// The number of the step that wants it.
    pub number: usize,
}

/// Steps under one heading.
#[derive(Clone, PartialEq, Debug)]
pub struct Section {
    /// The stage's title, none for steps before the first stage.
    pub title: Option<String>,
    /// Which pass through the stage: the member of the series.
    pub member: Option<String>,
    /// Whether the stage has no order of its own.
    pub any_order: bool,
    /// Its steps.
    pub entries: Vec<Entry>,
}

/// One step and all that is said with it.
#[derive(Clone, PartialEq, Debug)]
pub struct Entry {
    /// Its number.
    pub number: usize,
    /// The step.
    pub step: StepId,
    /// Its words.
    pub name: String,
    /// What it acts on, by name.
    pub targets: Vec<String>,
    /// Its `as` name in the plan.
    pub known_as: Option<String>,
    /// Its line in the plan.
    pub line: usize,
    /// What this step shuts in.
    pub last_chances: Vec<Chance>,
    /// Errors and warnings that stand at it.
    pub troubles: Vec<Trouble>,
    /// Cautions.
    pub cautions: Vec<Caution>,
    /// Times to keep.
    pub waits: Vec<Wait>,
    /// What the writer wants to be so before it is done, where no reason is given with it.
    pub only_after: Vec<String>,
    /// What must be so while it is done.
    pub wanted: Vec<Wanted>,
    /// Tools.
    pub tools: Vec<String>,
    /// Supplies.
    pub supplies: Vec<SupplyUse>,
    /// Taken new.
    pub new_items: Vec<NewItem>,
    /// Used again on purpose.
    pub old_items: Vec<OldItem>,
    /// Which way round, which side, whose mate.
    pub parts: Vec<PartNote>,
    /// How tight.
    pub fastenings: Vec<Fastening>,
    /// Readings to take.
    pub readings: Vec<Reading>,
    /// What stays loose.
    pub leave_loose: Vec<Loose>,
    /// Ways of doing it that change what it counts for.
    pub manner: Vec<Manner>,
    /// How long it takes.
    pub takes: Option<String>,
    /// What it spoils, to be done again.
    pub disturbs: Vec<String>,
    /// Why it stands here, in the writer's words.
    pub reasons: Vec<String>,
    /// Notes and remarks.
    pub notes: Vec<String>,
    /// Whether someone signs for it.
    pub sign: bool,
}

/// A caution.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Caution {
    /// The whole of it.
    pub says: String,
    /// The kind of hazard, in words; none for a caution that the writer worded.
    pub kind: Option<String>,
    /// The number of the step that says it first, where that is an earlier one.
    pub first_at: Option<usize>,
}

/// Something that a step is about to shut in.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Chance {
    /// What.
    pub thing: String,
    /// What has been done at it by then, the last time each: `measured at step 2`.
    pub done: Vec<Work>,
    /// What the plan still wants done at it afterwards.
    pub missed: Vec<Work>,
}

/// Work at a thing.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Work {
    /// `measured`.
    pub what: &'static str,
    /// The supply put on, where that is what is done.
    pub of: Option<String>,
    /// The number of the step.
    pub number: usize,
}

/// A finding at a step.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Trouble {
    /// How bad.
    pub severity: Severity,
    /// The rule's name.
    pub rule: &'static str,
    /// What will happen.
    pub says: String,
}

/// A time to keep.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Wait {
    /// `at least` (true) or `at most`.
    pub at_least: bool,
    /// How long.
    pub time: String,
    /// After what.
    pub after: String,
    /// The step that makes it so, where one can be named.
    pub number: Option<usize>,
}

/// Something that must be so.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Wanted {
    /// `Crank locking pin is fitted`.
    pub condition: String,
    /// Why, in the writer's words.
    pub because: Option<String>,
}

/// A supply and its times.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SupplyUse {
    /// Which.
    pub name: String,
    /// How much, where the point says it.
    pub amount: Option<String>,
    /// The joint must be closed within this.
    pub close_within: Option<String>,
    /// It holds after this.
    pub fixes_in: Option<String>,
    /// It has set after this.
    pub cures_in: Option<String>,
}

/// Something taken new.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct NewItem {
    /// What.
    pub name: String,
    /// How many, where said.
    pub count: Option<u32>,
    /// Which size, where said.
    pub size: Option<String>,
}

/// Something used again.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OldItem {
    /// What.
    pub name: String,
    /// Why that is all right, in the writer's words.
    pub because: Option<String>,
}

/// How a part goes on.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PartNote {
    /// Which part; several may stand on one step.
    pub name: String,
    /// Which way round.
    pub facing: Option<String>,
    /// Which side.
    pub side: Option<String>,
    /// What it belongs with.
    pub matched_with: Vec<String>,
    /// What it weighs.
    pub mass: Option<String>,
    /// Whether it is a helper that comes out again, and how many of it there are.
    pub temporary: Option<u32>,
    /// The step that takes a helper out again.
    pub out_at: Option<usize>,
}

/// How far a group of fasteners is tightened, or loosened, by a step.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Stage {
    /// In by hand.
    Started,
    /// Touching.
    Snug,
    /// Tight, to be undone again.
    Trial,
    /// Tight for good.
    Final,
    /// In, with no thread to tighten.
    In,
    /// Stopped from turning.
    Locked,
    /// Its lock undone.
    Unlocked,
    /// Loose, but in.
    Slack,
    /// All the way out.
    Out,
}

/// What a step does to a group of fasteners.
#[derive(Clone, PartialEq, Debug)]
pub struct Fastening {
    /// Which.
    pub name: String,
    /// How far.
    pub stage: Stage,
    /// `8 x M6x1 class 8.8`.
    pub group: Option<String>,
    /// What the tool fits on: `hex 13 mm`.
    pub drive: Option<String>,
    /// To what torque; only where the step tightens.
    pub torque: Option<Torque>,
    /// In which order.
    pub pattern: Option<String>,
    /// What goes on the threads.
    pub lubricated: Option<String>,
    /// What holds the other side.
    pub counterhold: Option<Held>,
    /// What stops it turning.
    pub locked_by: Vec<String>,
    /// The step that makes the lock, where that is another one.
    pub lock_number: Option<usize>,
    /// Whether the thread is left-hand.
    pub left_hand: bool,
}

/// What holds a group against turning.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Held {
    /// A second tool.
    ByTool(String),
    /// A part or a fastener in its place.
    ByPart(String),
}

/// To what torque a group is tightened.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Torque {
    /// Known.
    Known {
        /// The passes, one or more, as said in words: `22 N.m then turn 60 deg`.
        passes: Vec<String>,
        /// Where the figures come from.
        source: Option<String>,
    },
    /// The plan says `unknown`, or nothing at all: a blank to fill in. Holds the unit to write
    /// it in, if the plan names one.
    Owed {
        /// Whether the writer said so.
        said: bool,
        /// The plan's unit.
        unit: Option<String>,
    },
    /// In the writer's words: `firm by hand`. With where that is said.
    Words {
        /// The words.
        words: String,
        /// Where they come from.
        source: Option<String>,
    },
    /// There is nothing to tighten to.
    None,
}

/// A reading to take or a value to set.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Reading {
    /// Of what.
    pub name: String,
    /// What it should be.
    pub expected: Option<String>,
    /// The unit to write it in.
    pub unit: Option<String>,
}

/// Something that must stay loose.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Loose {
    /// What.
    pub name: String,
    /// Until what.
    pub until: String,
    /// Why, in the writer's words.
    pub because: Option<String>,
    /// The step that tightens it, if one does.
    pub number: Option<usize>,
}

/// A way of doing a step that changes what it counts for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Manner {
    /// A tightening that will be undone.
    Trial,
    /// Fitted to try, without sealant.
    DryFit,
    /// Taken off to stay off.
    ForGood,
    /// Lined up with a mark.
    ToItsMark,
}

/// A helper that must be out again.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Temporary {
    /// What.
    pub name: String,
    /// How many.
    pub count: Option<u32>,
    /// The numbers of the steps that put it in.
    pub into: Vec<usize>,
    /// The numbers of the steps that take it out.
    pub out: Vec<usize>,
}

impl Checklist {
    /// Makes the sheet of a plan.
    pub fn of(worked: &Worked<'_>) -> Checklist {
        make::checklist(worked)
    }

    /// All entries, section by section.
    pub fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.sections.iter().flat_map(|section| &section.entries)
    }
}
