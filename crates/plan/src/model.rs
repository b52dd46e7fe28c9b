//! The plan: things, steps and what is said of them, with every name resolved.
//!
//! Series are already spread out: each member is a thing of its own and each
//! pass through a `for each` stage has steps of its own. Everything remembers
//! the place in the text that said it.

use syntax::tree::{Span, State as Word};

pub use crate::problem::{Problem, ProblemKind};

/// Which text of the plan: 0 is the file the check was asked for.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug, Default)]
pub struct FileId(pub u32);

/// A stretch of one of the texts.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug, Default)]
pub struct Place {
    /// The text.
    pub file: FileId,
    /// The stretch.
    pub span: Span,
}

/// A thing, by its place in [`Plan::things`].
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
pub struct ThingId(pub u32);

/// A step, by its place in [`Plan::steps`]: the written order.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
pub struct StepId(pub u32);

/// A stage, by its place in [`Plan::stages`].
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
pub struct StageId(pub u32);

/// What sort of thing.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
#[allow(missing_docs)] // the words themselves
pub enum Sort {
    Part,
    Unit,
    Item,
    Fasteners,
    Point,
    Position,
    Tool,
    Supply,
}

/// A thing named somewhere, and where.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Ref {
    /// The thing.
    pub thing: ThingId,
    /// Where it is named.
    pub place: Place,
}

/// A figure as written, for people; its meaning where it could be read.
#[derive(Clone, PartialEq, Debug)]
pub struct Amount {
    /// As written, `unknown` included.
    pub text: String,
    /// Where.
    pub place: Place,
    /// Whether the writer said `unknown`.
    pub unknown: bool,
    /// The measure, when it is known, has a unit and could be read.
    pub measure: Option<workshop::quantity::Measure>,
}

/// A text a person wrote between quotes, and where.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Text {
    /// Without its quotes.
    pub text: String,
    /// Where, quotes included.
    pub place: Place,
}

/// Which member of a series a thing or step is.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Member {
    /// The name with its holes as written: `cap-<bore>`.
    pub stem: String,
    /// The member: `3`, or `3, inlet` where series cross.
    pub which: String,
}

/// A tool as asked for: a declared one, or a kind and perhaps a size.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolUse {
    /// The declared tool, if that is what the name is.
    pub thing: Option<ThingId>,
    /// The kind in one spelling (`spanner` for `wrench`), or the declared tool's kind.
    pub kind: Option<String>,
    /// The size in one spelling: `13 mm`, `5/8 in`, `T30`.
    pub size: Option<String>,
    /// As written, for people.
    pub text: String,
    /// Where.
    pub place: Place,
}

/// The state a clause asks for.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
pub enum State {
    /// A state of the language.
    Is(Word),
    /// A position stands at its n-th place.
    At(u32),
}

/// What a clause speaks of.
#[derive(Clone, PartialEq, Eq, Debug, Hash)]
pub enum Subject {
    /// A thing.
    Thing(ThingId),
    /// Every step of this `as` name.
    Steps(Vec<StepId>),
}

/// One thing in one state.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Clause {
    /// Of what.
    pub subject: Subject,
    /// In which state.
    pub state: State,
    /// The clause in the text.
    pub place: Place,
}

/// Clauses that must all hold, with the reason the writer gave.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Condition {
    /// All must hold.
    pub clauses: Vec<Clause>,
    /// All of it in the text.
    pub place: Place,
    /// The words behind `because`.
    pub because: Option<String>,
    /// Whether a name in it could not be resolved, so that it must not be relied on.
    pub uncertain: bool,
}

/// A stretch of time that must, or may at most, pass after a condition came to hold.
#[derive(Clone, PartialEq, Debug)]
pub struct Lag {
    /// How long.
    pub time: Amount,
    /// After what.
    pub after: Condition,
    /// `at least` (true) or `at most` (false).
    pub at_least: bool,
}

/// A standing rule: `must be STATE before CONDITION`.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Must {
    /// The states wanted of the thing that carries the rule.
    pub states: Vec<State>,
    /// `before` (true) or `after` (false).
    pub before: bool,
    /// Before or after what.
    pub condition: Condition,
    /// The whole detail.
    pub place: Place,
}

/// One way to reach a thing.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct WayIn {
    /// The side it comes from.
    pub side: Option<String>,
    /// The tools it takes; empty for any.
    pub tools: Vec<ToolUse>,
    /// What must be off or out.
    pub clear_of: Vec<Ref>,
    /// What must be in place.
    pub needs: Condition,
    /// The line that says it.
    pub place: Place,
}

/// Something that is in the way of a thing while it is on: from `covers` on the one or
/// `behind` on the other, spread to the points on a covered part.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Blocker {
    /// What is in the way.
    pub by: ThingId,
    /// Only for this tool.
    pub tool: Option<ToolUse>,
    /// Only from this side.
    pub side: Option<String>,
    /// The line that says it.
    pub place: Place,
    /// The words behind `because`.
    pub because: Option<String>,
    /// The part this thing is covered with, when it is a point on a covered part or a member
    /// of a covered unit.
    pub through: Option<ThingId>,
}

/// A declared thing.
#[derive(Clone, PartialEq, Debug)]
pub struct Thing {
    /// Its sort.
    pub sort: Sort,
    /// Its full name.
    pub name: String,
    /// Its label for people.
    pub label: Option<String>,
    /// The name in its declaration.
    pub place: Place,
    /// The whole declaration.
    pub item: Place,
    /// Which member of a series it is.
    pub member: Option<Member>,
    /// Its declaration, or a line that names it, could not be read: nothing may be said of what
    /// is missing about it.
    pub uncertain: bool,
    /// There from the start.
    pub given: Option<Place>,
    /// Comes out again before the end.
    pub temporary: Option<Place>,
    /// Spent once disturbed.
    pub single_use: Option<Place>,
    /// How many.
    pub count: Option<u32>,
    /// What it goes onto.
    pub onto: Vec<Ref>,
    /// What it is pressed onto, and so comes and goes with.
    pub pressed_onto: Vec<Ref>,
    /// What must hold when it is fitted (parts) or turned hard (fasteners).
    pub needs: Vec<Condition>,
    /// The ways to reach it; none means that nothing but its blockers is in the way.
    pub ways: Vec<WayIn>,
    /// What is in the way of it while on.
    pub blockers: Vec<Blocker>,
    /// Its standing rules.
    pub must: Vec<Must>,
    /// Kinds of hazard.
    pub hazards: Vec<String>,
    /// Time to fit.
    pub takes: Option<Amount>,
    /// Mass.
    pub mass: Option<Amount>,
    /// Material in one spelling.
    pub material: Option<String>,
    /// `left`, `right` …
    pub side: Option<(String, Place)>,
    /// Which way round.
    pub facing: Option<Text>,
    /// Parts it belongs with.
    pub matched_with: Vec<Ref>,
    /// What only this sort has.
    pub body: Body,
}

/// What only one sort of thing has.
#[derive(Clone, PartialEq, Debug)]
pub enum Body {
    /// A part.
    Part,
    /// A unit: its members, the first the base on the bench.
    Unit {
        /// The members, in order.
        of: Vec<Ref>,
    },
    /// Something used up.
    Item {
        /// The joints it belongs to.
        at: Vec<Ref>,
        /// Its size in words.
        size: Option<String>,
    },
    /// A group tightened alike.
    Fasteners(Box<Fasteners>),
    /// A place that must be reached.
    Point(Box<Point>),
    /// Something turned or set: its places by name.
    Position {
        /// The places, in order.
        places: Vec<(String, Place)>,
    },
    /// A tool of one's own.
    Tool(Box<Tool>),
    /// Sealant, threadlocker, lubricant, fluid.
    Supply(Box<Supply>),
}

/// What only fasteners have.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Fasteners {
    /// How many.
    pub count: Option<u32>,
    /// The thread as written.
    pub thread: Option<Text>,
    /// What it behaves like: `pin`, `clip`, `ring`, `bolt` … in the singular; `screw` for a
    /// grub-screw, `clip` for a circlip.
    pub noun: Option<String>,
    /// What the writer calls it, in the singular: `grub-screw`.
    pub called: Option<String>,
    /// The strength class as written.
    pub class: Option<Text>,
    /// The parts they hold.
    pub hold: Vec<Ref>,
    /// What they screw into, and how deep.
    pub into: Option<(String, Option<Amount>, Place)>,
    /// Drive: kind, size, series.
    pub drive: Option<(String, Option<String>, Option<String>, Place)>,
    /// What holds the other side.
    pub counterhold: Option<CounterholdBy>,
    /// `torque`.
    pub torque: Option<Torque>,
    /// `passes`.
    pub passes: Option<Passes>,
    /// Pattern words or numbers, layout.
    pub pattern: Option<(Vec<String>, Option<String>, Place)>,
    /// Must stay loose until this holds.
    pub floats_until: Vec<Condition>,
    /// What locks them.
    pub locked_by: Vec<Lock>,
    /// The held parts come off when these are slack.
    pub frees_when_slack: bool,
    /// Turned together with.
    pub moves_with: Vec<Ref>,
    /// Left-hand thread.
    pub left_hand: bool,
    /// Lubricant: a supply or words.
    pub lubricated: Option<(Option<ThingId>, String)>,
}

/// What holds the other side of a fastener.
#[derive(Clone, PartialEq, Debug)]
pub enum CounterholdBy {
    /// A part that must be in place.
    Part(Ref),
    /// A second tool.
    Tool(ToolUse),
}

/// What locks a fastener.
#[derive(Clone, PartialEq, Debug)]
pub enum Lock {
    /// An item or a supply.
    Thing(Ref),
    /// In words.
    Words(Text),
}

/// The tightness wanted.
#[derive(Clone, PartialEq, Debug)]
pub struct Torque {
    /// The value; none for `torque none` and for a torque said in words.
    pub value: Option<Amount>,
    /// The torque in words: `"firm by hand"`. There is then nothing to compute.
    pub words: Option<Text>,
    /// `then turn 60 deg`.
    pub then_turn: Option<Amount>,
    /// Where the figure comes from.
    pub source: Option<Text>,
    /// The whole detail.
    pub place: Place,
}

/// Tightening in passes.
#[derive(Clone, PartialEq, Debug)]
pub struct Passes {
    /// In order.
    pub passes: Vec<Pass>,
    /// Where the figures come from.
    pub source: Option<Text>,
    /// The whole detail.
    pub place: Place,
}

/// One pass.
#[derive(Clone, PartialEq, Debug)]
#[allow(missing_docs)] // the words themselves
pub enum Pass {
    Torque(Amount),
    Turn(Amount),
    Slacken,
    Mark,
}

/// What only points have.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Point {
    /// The part or fasteners it is on.
    pub on: Vec<Ref>,
    /// What closes it.
    pub closed_by: Vec<Ref>,
    /// Fluid (a supply or words) and amount.
    pub holds: Option<(Option<ThingId>, String, Option<Amount>)>,
    /// Service interval.
    pub service: Option<(Amount, Place)>,
}

/// What only tools have.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Tool {
    /// Kind, in one spelling.
    pub kind: Option<String>,
    /// Size.
    pub size: Option<String>,
    /// Dependable range.
    pub range: Option<Amount>,
    /// Full scale.
    pub full_scale: Option<Amount>,
    /// Length from the square to the hand.
    pub length: Option<Amount>,
    /// Accuracy.
    pub accuracy: Option<Amount>,
    /// It is on the shelf.
    pub have: bool,
}

/// What only supplies have.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Supply {
    /// Kind and grade.
    pub kind: Vec<String>,
    /// Must be closed within.
    pub close_within: Option<Amount>,
    /// Fixes in.
    pub fixes_in: Option<Amount>,
    /// Cures in.
    pub cures_in: Option<Amount>,
    /// Temperature limit.
    pub good_to: Option<Amount>,
    /// Materials it must not touch.
    pub not_on: Vec<String>,
    /// It is on the shelf.
    pub have: bool,
}

/// What stands behind `to` on a step.
#[derive(Clone, PartialEq, Debug)]
pub enum To {
    /// A figure.
    Amount(Amount),
    /// A place of the position that the step turns.
    Place(u32, Place),
    /// Things: where a supply is applied.
    Things(Vec<Ref>),
    /// Words.
    Words(Text),
}

/// A step.
#[derive(Clone, PartialEq, Debug)]
pub struct Step {
    /// What is done.
    pub verb: syntax::tree::Verb,
    /// The verb in the text.
    pub keyword: Place,
    /// To what, in the order written; for `apply` the supplies.
    pub targets: Vec<Ref>,
    /// Quoted words: of `do` and `sign`, or a remark.
    pub words: Option<Text>,
    /// Its `as` name.
    pub name: Option<Text>,
    /// The stage it stands in.
    pub stage: Option<StageId>,
    /// Which pass through a `for each` stage.
    pub member: Option<String>,
    /// The whole item.
    pub place: Place,
    /// Index of the item in its text's tree.
    pub item: u32,
    /// A name in it could not be resolved or a line not read.
    pub uncertain: bool,
    /// Several targets go on at once.
    pub together: bool,
    /// Conditions that must hold at it.
    pub after: Vec<Condition>,
    /// Conditions that must not hold yet.
    pub before: Vec<Condition>,
    /// Time conditions.
    pub lags: Vec<Lag>,
    /// Tools; empty when the step does not say.
    pub with: Vec<ToolUse>,
    /// Supplies used.
    pub uses: Vec<Ref>,
    /// Things taken new.
    pub news: Vec<Ref>,
    /// Things used again on purpose, with the reason.
    pub olds: Vec<(Ref, Option<String>)>,
    /// Things it spends.
    pub spends: Vec<Ref>,
    /// Joints and readings it disturbs.
    pub disturbs: Vec<Ref>,
    /// A tightening that will be undone.
    pub trial: bool,
    /// Meant to stay off.
    pub for_good: bool,
    /// Aligned to a mark made earlier.
    pub to_its_mark: Option<Place>,
    /// What stands behind `to`.
    pub to: Option<To>,
    /// The reading expected.
    pub expect: Option<Amount>,
    /// How long it takes.
    pub takes: Option<Amount>,
    /// Kinds of hazard.
    pub hazards: Vec<String>,
    /// Cautions in the writer's words.
    pub cautions: Vec<Text>,
    /// Notes in the writer's words.
    pub notes: Vec<Text>,
}

/// A heading over steps.
#[derive(Clone, PartialEq, Debug)]
pub struct Stage {
    /// The heading.
    pub title: Text,
    /// The whole item.
    pub place: Place,
    /// Its steps have no written order of their own.
    pub any_order: bool,
    /// The steps that stand in it, first and one past the last.
    pub steps: (StepId, StepId),
}

/// The heading of the plan.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Heading {
    /// The whole item, if there is one.
    pub place: Option<Place>,
    /// The title.
    pub title: Option<String>,
    /// Revision as written.
    pub revision: Option<String>,
    /// The machine.
    pub machine: Option<String>,
    /// Starts assembled; false is apart.
    pub assembled: bool,
    /// The unit torques are shown in.
    pub torque_in: Option<String>,
    /// The unit lengths are shown in.
    pub length_in: Option<String>,
    /// How many people.
    pub people: Option<u32>,
    /// `reviewed by … on …`: initials, date, digest.
    pub reviewed: Vec<(String, String, Option<String>, Place)>,
}

/// A text the plan was read from.
#[derive(Clone, Debug)]
pub struct Source {
    /// Its name for people, relative to the plan.
    pub name: String,
    /// Its tree.
    pub tree: std::sync::Arc<syntax::tree::Tree>,
}

/// A plan with all names resolved.
#[derive(Clone, Debug, Default)]
pub struct Plan {
    /// Its heading.
    pub heading: Heading,
    /// The texts, the asked one first.
    pub sources: Vec<Source>,
    /// All things.
    pub things: Vec<Thing>,
    /// The steps in written order.
    pub steps: Vec<Step>,
    /// The stages in written order.
    pub stages: Vec<Stage>,
    /// What could not be read or resolved, by place.
    pub problems: Vec<Problem>,
    /// Names declared but nowhere mentioned again (series, and things of any sort).
    pub unmentioned: Vec<(String, Place)>,
}

impl Plan {
    /// The thing.
    pub fn thing(&self, id: ThingId) -> &Thing {
        &self.things[id.0 as usize]
    }
    /// The step.
    pub fn step(&self, id: StepId) -> &Step {
        &self.steps[id.0 as usize]
    }
    /// All steps with their ids.
    pub fn steps(&self) -> impl Iterator<Item = (StepId, &Step)> {
        (0..).map(StepId).zip(&self.steps)
    }
    /// All things with their ids.
    pub fn things(&self) -> impl Iterator<Item = (ThingId, &Thing)> {
        (0..).map(ThingId).zip(&self.things)
    }
    /// What stands at `place`.
    pub fn text(&self, place: Place) -> &str {
        self.sources
            .get(place.file.0 as usize)
            .map_or("", |s| s.tree.at(place.span))
    }
}

impl Thing {
    /// What to call it in a sentence: its label if it has one, else its name.
    pub fn called(&self) -> &str {
        self.label.as_deref().unwrap_or(&self.name)
    }
    /// Its fastener details, if it is a group of fasteners.
    pub fn fasteners(&self) -> Option<&Fasteners> {
        match &self.body {
            Body::Fasteners(f) => Some(f),
            _ => None,
        }
    }
    /// Its point details, if it is a point.
    pub fn point(&self) -> Option<&Point> {
        match &self.body {
            Body::Point(p) => Some(p),
            _ => None,
        }
    }
    /// Its supply details, if it is a supply.
    pub fn supply(&self) -> Option<&Supply> {
        match &self.body {
            Body::Supply(s) => Some(s),
            _ => None,
        }
    }
    /// The members, if it is a unit.
    pub fn members(&self) -> &[Ref] {
        match &self.body {
            Body::Unit { of } => of,
            _ => &[],
        }
    }
}
