//! What every part of the resolving works with: the texts, the names, the problems so far.

use std::collections::{HashMap, HashSet};
use std::rc::Rc;

use syntax::tree::{Head, Item, Quoted, Span};
use workshop::quantity::Measure;

use crate::model::{Place, Problem, ProblemKind, StepId, Text, ThingId};
use crate::names::{Entry, ItemAt, Names};

use crate::room::Room;
use crate::series::{AllSeries, Bound};
use crate::spelling::small;
use crate::unknown::{Hazy, Unknown};
use crate::uses;

/// Where the reading stands: whose names are being looked up, and with which members.
#[derive(Clone, Copy)]
pub(crate) struct Here<'a> {
    /// The text and the item in it.
    pub by: ItemAt,
    /// The members that its holes stand for.
    pub bound: &'a [Bound],
    /// The step that is being read.
    pub step: Option<StepId>,
}

/// A thing's declaration and the members it is written out for.
pub(crate) struct Seed {
    /// The item that declares it.
    pub by: ItemAt,
    /// The members.
    pub bound: Box<[Bound]>,
}

/// A step's item and the pass it is written out for.
pub(crate) struct StepSeed {
    /// The item in the asked text.
    pub item: u32,
    /// The members of a `for each` stage.
    pub bound: Box<[Bound]>,
    /// The stage.
    pub stage: Option<u32>,
}

/// The steps of one `as` name.
pub(crate) struct Group {
    /// The item that gives the name.
    pub item: u32,
    /// Its steps, in order.
    pub steps: Vec<StepId>,
}

/// The desk.
pub(crate) struct Desk<'t> {
    pub texts: &'t [uses::Text],
    pub names: Names,
    pub series: AllSeries,
    pub hazy: Hazy,
    /// Things whose sort could only be guessed.
    pub guessed: HashSet<ThingId>,
    /// Items that a line which could not be read may belong to.
    pub damaged: HashSet<ItemAt>,
    pub groups: Vec<Group>,
    pub steps: Vec<StepSeed>,
    /// Kind and size of each declared tool.
    pub tools: HashMap<ThingId, (Option<String>, Option<String>)>,
    /// For tool words that nothing declares: what they are a slip for.
    pub tool_slips: HashMap<(String, bool), Option<String>>,
    /// Figures that have been read, as written.
    pub measures: HashMap<&'t str, Measure>,
    /// The things that steps put on, take off or turn; made when `everything` is first met.
    pub worked: Option<Rc<HashSet<ThingId>>>,
    pub problems: Vec<Problem>,
    pub unknown: Vec<Unknown>,
    /// Set when something that was just read cannot be relied on; whoever reads takes it back.
    pub doubt: bool,
    /// Set while details are read that may belong to an item whose own line was lost. What does
    /// not suit the item above them is then no fault.
    pub shaky: bool,
    pub room: Room,
}

impl<'t> Desk<'t> {
    /// A desk with the texts on it and nothing known.
    pub fn new(texts: &'t [uses::Text]) -> Desk<'t> {
        Desk {
            texts,
            names: Names::default(),
            series: AllSeries::default(),
            hazy: Hazy::default(),
            guessed: HashSet::new(),
            damaged: HashSet::new(),
            groups: Vec::new(),
            steps: Vec::new(),
            tools: HashMap::new(),
            tool_slips: HashMap::new(),
            measures: HashMap::new(),
            worked: None,
            problems: Vec::new(),
            unknown: Vec::new(),
            doubt: false,
            shaky: false,
            room: Room::default(),
        }
    }

    /// An item.
    pub fn item(&self, by: ItemAt) -> &'t Item {
        &self.texts[by.0 as usize].tree.items[by.1 as usize]
    }

    /// What stands at a span.
    pub fn at(&self, by: ItemAt, span: Span) -> &'t str {
        self.texts[by.0 as usize].tree.at(span)
    }

    /// The place of a span.
    pub fn place(&self, by: ItemAt, span: Span) -> Place {
        Place {
            file: self.texts[by.0 as usize].file,
            span,
        }
    }

    /// A quoted text.
    pub fn text(&self, by: ItemAt, quoted: Quoted) -> Text {
        Text {
            text: self.texts[by.0 as usize].tree.quoted(quoted),
            place: self.place(by, quoted.span),
        }
    }

    /// The words behind `because`.
    pub fn because(&self, by: ItemAt, quoted: Option<Quoted>) -> Option<String> {
        quoted.map(|q| self.texts[by.0 as usize].tree.quoted(q))
    }

    /// Notes a problem.
    pub fn problem(&mut self, place: Place, kind: ProblemKind) {
        let unsuited = matches!(
            kind,
            ProblemKind::WrongSort { .. }
                | ProblemKind::StateNotHere { .. }
                | ProblemKind::NamesStep { .. }
        );
        if !(self.shaky && unsuited) {
            self.problems.push(Problem { place, kind });
        }
    }

    /// Whether something was doubtful since this was last asked.
    pub fn take_doubt(&mut self) -> bool {
        std::mem::take(&mut self.doubt)
    }

    /// The name of an entry as its item gives it: with its holes, behind the prefix of its file.
    pub fn full_name(&self, entry: &Entry) -> String {
        let item = self.item(entry.by);
        let scope = &self.texts[entry.by.0 as usize].scopes[0];
        let name = match &item.head {
            Head::Declaration { name, .. } | Head::Unreadable { name, .. } => *name,
            Head::Step { .. } => None,
        };
        match name {
            Some(name) => format!("{scope}{}", small(self.at(entry.by, name.span))),
            None => entry.name.to_string(),
        }
    }

    /// The item that gives a group of steps its name.
    pub fn group_place(&self, group: u32) -> Place {
        let by = (0, self.groups[group as usize].item);
        self.place(by, self.item(by).span)
    }
}
