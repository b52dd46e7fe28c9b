//! The kit: all that must lie on the bench before the first step.
//!
//! Parts, what is used up and how often, supplies with their times, tools,
//! helpers that come out again, and which of it nobody has said to have.

mod make;
mod page;

pub use page::{markdown, text};

use check::Bench;

/// The kit of a plan.
#[derive(Clone, PartialEq, Debug)]
pub struct Kit {
    /// The plan's title, or the name of its file.
    pub title: String,
    /// Whether the machine stands assembled at first, so that parts and fasteners come out of it.
    pub assembled: bool,
    /// What is fitted and was not there from the start.
    pub parts: Vec<Part>,
    /// What is used up, counted.
    pub used_up: Vec<UsedUp>,
    /// Fasteners by size.
    pub fasteners: Vec<Fastener>,
    /// Supplies.
    pub supplies: Vec<Supply>,
    /// Tools.
    pub tools: Vec<Tool>,
    /// Helpers that come out again.
    pub temporary: Vec<Part>,
    /// What is not said to be on the shelf.
    pub missing: Vec<String>,
}

/// A part to lay out.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Part {
    /// Its name for people.
    pub name: String,
    /// How many, where said.
    pub count: Option<u32>,
    /// What it weighs, in both units.
    pub mass: Option<String>,
    /// Its material.
    pub material: Option<String>,
    /// What it belongs with.
    pub matched_with: Vec<String>,
}

/// Something that is used up.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct UsedUp {
    /// Its name for people.
    pub name: String,
    /// How many are needed in all; none where it depends on a count that is not said.
    pub needed: u32,
    /// How often the plan takes a new one.
    pub times: u32,
    /// How many at once.
    pub each: u32,
    /// Its size.
    pub size: Option<String>,
    /// Where it belongs.
    pub at: Vec<String>,
    /// Whether one is spent by being disturbed, so that a spare is well kept.
    pub single_use: bool,
}

/// A group of fasteners to lay out.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Fastener {
    /// Its name for people.
    pub name: String,
    /// How many.
    pub count: Option<u32>,
    /// Thread, noun and class.
    pub size: Option<String>,
}

/// A supply.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Supply {
    /// Its name for people.
    pub name: String,
    /// Its kind and grade.
    pub kind: Option<String>,
    /// How much, each filling on its own.
    pub amounts: Vec<String>,
    /// How many steps use it.
    pub uses: usize,
    /// Its times and limits.
    pub notes: Vec<String>,
    /// Whether it is said to be on the shelf.
    pub have: bool,
}

/// A tool.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Tool {
    /// As asked for, or its name for people.
    pub name: String,
    /// Its kind, where it has a name of its own.
    pub kind: Option<String>,
    /// What it can be relied on for, how long it is.
    pub notes: Vec<String>,
    /// The numbers of the steps that ask for it.
    pub steps: Vec<usize>,
    /// Whether it is one of the plan's own, with limits that matter.
    pub declared: bool,
    /// Whether it is said to be on the shelf.
    pub have: bool,
}

impl Kit {
    /// The kit of a plan.
    pub fn of(bench: &Bench<'_>) -> Kit {
        make::kit(bench)
    }
}
