//! What can be wrong with the names, figures and files of a plan: the bare facts.

use crate::model::{Place, Sort};

/// Something about names that is wrong, or a file that could not be had. Typed, without prose.
#[derive(Clone, PartialEq, Debug)]
pub struct Problem {
    /// Where.
    pub place: Place,
    /// What.
    pub kind: ProblemKind,
}

/// What is wrong.
#[derive(Clone, PartialEq, Debug)]
pub enum ProblemKind {
    /// The text could not be read here.
    Text(syntax::tree::ProblemKind),
    /// No thing, step or series has this name.
    UnknownName {
        /// As written.
        name: String,
        /// The nearest known name.
        near: Option<String>,
    },
    /// The name is taken already.
    TwiceNamed {
        /// The name.
        name: String,
        /// The first declaration.
        first: Place,
    },
    /// The thing is of a sort that cannot stand here.
    WrongSort {
        /// The name.
        name: String,
        /// What it is.
        is: Sort,
        /// What could stand here.
        wanted: Vec<Sort>,
    },
    /// This detail says nothing on this sort of item.
    DetailNotHere {
        /// The detail's keyword.
        detail: String,
        /// The item's keyword.
        item: String,
    },
    /// This sort of thing is never in this state.
    StateNotHere {
        /// The name.
        name: String,
        /// Its sort.
        is: Sort,
        /// The state as written.
        state: String,
    },
    /// The position has no such place.
    UnknownPlace {
        /// As written.
        name: String,
        /// The position.
        position: String,
        /// The nearest place.
        near: Option<String>,
    },
    /// `everything` where it cannot stand: as the name of a thing, or where one is named.
    Everything {
        /// The state asked of it, where that is what is wrong.
        state: Option<String>,
    },
    /// A figure with its unit stands behind a word of a step that can have none.
    NoFigureHere {
        /// The step's word.
        verb: syntax::tree::Verb,
        /// The figure as written.
        text: String,
        /// Whether it is a torque.
        torque: bool,
    },
    /// A figure that cannot be read as what is wanted here.
    Figure {
        /// As written.
        text: String,
        /// What is wrong with it, as the workshop says it.
        why: workshop::quantity::MeasureProblem,
    },
    /// A figure of the wrong dimension.
    WrongDimension {
        /// As written.
        text: String,
        /// What is wanted.
        wanted: workshop::quantity::Dimension,
    },
    /// A `use` whose file is not there or cannot be read; the words of the one who looked.
    UseMissing {
        /// The path as written.
        path: String,
        /// Why, in a few words.
        why: String,
    },
    /// A `use` that leads back to its own file.
    UseCycle {
        /// The path as written.
        path: String,
    },
    /// A second heading.
    TwoPlans {
        /// The first.
        first: Place,
    },
    /// The name belongs to a step, and no step can stand here or be in this state.
    NamesStep {
        /// The name.
        name: String,
        /// The state as written; none where a thing is wanted.
        state: Option<String>,
        /// The step of that name.
        step: Place,
    },
    /// The series has no such member.
    UnknownMember {
        /// As written.
        name: String,
        /// The series.
        series: String,
        /// The nearest member.
        near: Option<String>,
    },
    /// Written out for every member this comes to more than can be handled; it is cut short.
    TooMany {
        /// The series, name or file that does it.
        name: String,
        /// The most that is read.
        most: u32,
    },
    /// A unit that is, through its members, a member of itself.
    UnitInItself {
        /// The unit.
        name: String,
    },
    /// A detail that can be said once is said again with other words; the first counts.
    TwiceSaid {
        /// The detail's keyword.
        detail: String,
        /// Where it is said first.
        first: Place,
    },
}
