//! The tree of one text: items, their details, and where each stands.
//!
//! A tree is a value made from one text. It holds no meaning: a name is a
//! stretch of the text and nothing here knows whether it was ever declared.

use std::fmt;

/// A stretch of the original text, in bytes; `end` is not included.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
pub struct Span {
    /// First byte.
    pub start: u32,
    /// One past the last byte.
    pub end: u32,
}

impl Span {
    /// A span from `start` up to but not including `end`.
    pub fn new(start: u32, end: u32) -> Self {
        Span { start, end }
    }
    /// The smallest span that holds both.
    pub fn to(self, other: Span) -> Span {
        Span::new(self.start.min(other.start), self.end.max(other.end))
    }
    /// The span as a range usable on the text.
    pub fn range(self) -> std::ops::Range<usize> {
        self.start as usize..self.end as usize
    }
    /// Whether `at` lies inside.
    pub fn contains(self, at: u32) -> bool {
        self.start <= at && at < self.end
    }
}

impl fmt::Debug for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}..{}", self.start, self.end)
    }
}

/// A name as written: words joined by hyphens, maybe with `<series>` holes, maybe ending in `*`.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Name {
    /// Where it stands.
    pub span: Span,
}

/// A quoted text with its quotes.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Quoted {
    /// Where it stands, quotes included.
    pub span: Span,
}

/// A bare word or number taken as it stands (a material, a side, a date, a count …).
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Word {
    /// Where it stands.
    pub span: Span,
}

/// A figure, range or toleranced figure, with or without its unit, or `unknown`.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Quantity {
    /// All of it as written: `5..25 N.m`, `22 +- 2 N.m`, `15/16 in`, `unknown`.
    pub span: Span,
    /// The unit, if one was written.
    pub unit: Option<Span>,
    /// Whether the writer said `unknown` instead of a figure.
    pub unknown: bool,
}

/// A tool where it is used: a declared tool's name, or a kind and perhaps a size.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct ToolRef {
    /// All of it.
    pub span: Span,
    /// The name or the kind.
    pub name: Name,
    /// The size behind a kind: `13 mm`, `5/8 in`, `T30`.
    pub size: Option<Span>,
}

/// The state a condition speaks of.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, PartialOrd, Ord)]
#[allow(missing_docs)] // the words themselves
pub enum State {
    Fitted,
    Off,
    Out,
    Started,
    Slack,
    Snug,
    Tight,
    Locked,
    Covered,
    Bled,
    Filled,
    Drained,
    Primed,
    Measured,
    Set,
    Marked,
    Inspected,
    Cleaned,
    Heated,
    Chilled,
    Turned,
    Reached,
    Signed,
    Applied,
    Cured,
    Done,
}

/// A state word where it stands, or `at tdc` of a position.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct StateRef {
    /// Where it stands.
    pub span: Span,
    /// Which state, or the place of a position.
    pub what: StateWord,
}

/// What stands behind `is` in a condition.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum StateWord {
    /// One of the known states.
    State(State),
    /// `at tdc`: a place of a position.
    At(Name),
}

/// `the timing-gears and rod are fitted and snug`, or a bare `first-run`.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Clause {
    /// All of it.
    pub span: Span,
    /// The things spoken of.
    pub names: Vec<Name>,
    /// The states wanted; none for bare names, which mean "done" for a step and "in place" for a thing.
    pub states: Vec<StateRef>,
}

/// Clauses that must all hold.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Condition {
    /// All of it.
    pub span: Span,
    /// Its clauses, in order.
    pub clauses: Vec<Clause>,
}

/// What sort of declaration an item is.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, PartialOrd, Ord)]
#[allow(missing_docs)] // the words themselves
pub enum Kind {
    Plan,
    Part,
    Unit,
    Item,
    Fasteners,
    Point,
    Position,
    Tool,
    Supply,
    Series,
    Use,
    Stage,
}

/// What a step does.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, PartialOrd, Ord)]
#[allow(missing_docs)] // the words themselves
pub enum Verb {
    Fit,
    DryFit,
    Start,
    Snug,
    Tighten,
    Lock,
    Unlock,
    Slacken,
    Undo,
    Remove,
    Apply,
    Measure,
    Set,
    Mark,
    Bleed,
    Fill,
    Drain,
    Prime,
    Inspect,
    Clean,
    Heat,
    Chill,
    Turn,
    Reach,
    Sign,
    Do,
}

/// The first words of an item.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Head {
    /// A declaration.
    Declaration {
        /// Its sort.
        kind: Kind,
        /// The keyword.
        keyword: Span,
        /// Its name; `plan`, `use` and `stage` have none.
        name: Option<Name>,
        /// The quoted text: the label, the file of a `use`, the heading of a `stage`.
        label: Option<Quoted>,
    },
    /// A step.
    Step {
        /// What is done.
        verb: Verb,
        /// The verb's word.
        keyword: Span,
        /// What it is done to, in the order written; for `apply` the supplies.
        targets: Vec<Name>,
        /// The quoted text of `do` and `sign`, or a remark behind the targets or at the end of
        /// the step's line.
        words: Option<Quoted>,
    },
    /// A line at the margin that could not be read. What could be told from it is kept so
    /// that its users are not called unknown.
    Unreadable {
        /// The sort of declaration it seems to be.
        kind: Option<Kind>,
        /// The step it seems to be.
        verb: Option<Verb>,
        /// The name it seems to declare.
        name: Option<Name>,
        /// Every word in the line that could be a name.
        mentions: Vec<Name>,
    },
}

/// `a thing`, or `crank at tdc`, or `bolts are tight` behind `needs`.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Need {
    /// All of it.
    pub span: Span,
    /// The thing needed.
    pub name: Name,
    /// The state it is needed in; bare means in place.
    pub state: Option<StateRef>,
}

/// How many and what: `8 x M6x1 class 8.8`, `2 x clip`.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct GroupSize {
    /// How many.
    pub count: Word,
    /// `M6x1`, `1/4-20 UNC`, `G1/8` …
    pub thread: Option<Word>,
    /// `pin`, `clip`, `ring`, `bolt`, `nut`, `stud`, `screw` … in the singular or plural as written.
    pub sort: Option<Word>,
    /// The strength class behind `class` or `grade`.
    pub class: Option<Word>,
}

/// One pass of a tightening.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Pass {
    /// To a torque.
    Torque(Quantity),
    /// Through an angle: `turn 60 deg`.
    Turn(Quantity),
    /// Back to no load.
    Slacken(Span),
    /// A paint mark before the next pass.
    Mark(Span),
}

/// What stands behind `torque`.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Torque {
    /// A value or a range; `unknown` is a quantity too.
    Value(Quantity),
    /// `none`: nothing to tighten to.
    None(Span),
    /// In words: `"firm by hand"`.
    Words(Quoted),
}

/// What stands behind `counterhold`.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Counterhold {
    /// A tool, a drive size (`hex 17 mm`), or the name of a part: told apart when names are known.
    ToolOrPart(ToolRef),
}

/// What stands behind `to` on a step.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum To {
    /// `set gap to 0.10..0.15 mm`, `heat housing to 120 C`.
    Quantity(Quantity),
    /// `turn crank to tdc`, `apply sealant to cover, housing`.
    Names(Vec<Name>),
    /// `set governor to "the second hole"`.
    Words(Quoted),
}

/// What a `locked by` names.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LockedBy {
    /// An item or a supply.
    Name(Name),
    /// In words.
    Words(Quoted),
}

/// What `holds`, `lubricated with` and the like name: a declared thing, or words.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum NameOrWords {
    /// A name.
    Name(Name),
    /// In words.
    Words(Quoted),
}

/// Before or after, in a standing rule.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[allow(missing_docs)]
pub enum When {
    Before,
    After,
}

/// How a series or a stage lists its members.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Members {
    /// `1..6`.
    Range(Word, Word),
    /// `1, 6, 2, 5` or `inlet, exhaust`.
    List(Vec<Word>),
}

/// One detail of an item.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Detail {
    /// All of it, `because` included.
    pub span: Span,
    /// Its first word or words.
    pub keyword: Span,
    /// What it says.
    pub says: Says,
    /// The reason given behind it.
    pub because: Option<Quoted>,
}

/// What a detail says. Which details an item may carry is not the tree's business.
#[derive(Clone, PartialEq, Eq, Debug)]
#[allow(missing_docs)] // each is the detail of that name in the language reference
pub enum Says {
    // plan
    Revision(Word),
    Machine(Quoted),
    StartsApart,
    StartsAssembled,
    TorqueIn(Word),
    LengthIn(Word),
    People(Word),
    Reviewed {
        by: Quoted,
        on: Word,
        digest: Option<Word>,
    },
    // things in place
    Given,
    /// `onto X pressed` and `travels with X` say the same.
    Onto {
        names: Vec<Name>,
        pressed: bool,
    },
    Covers {
        names: Vec<Name>,
        to: Option<ToolRef>,
        from: Option<Word>,
    },
    Behind {
        names: Vec<Name>,
        to: Option<ToolRef>,
        from: Option<Word>,
    },
    Needs(Vec<Need>),
    Reach {
        from: Option<Word>,
        with: Vec<ToolRef>,
        clear_of: Vec<Name>,
        needs: Vec<Need>,
    },
    Material(Word),
    Mass(Quantity),
    Side(Word),
    Facing(Quoted),
    SingleUse,
    Temporary,
    Count(Word),
    MatchedWith(Vec<Name>),
    Takes(Quantity),
    Hazard(Vec<Word>),
    MustBe {
        states: Vec<StateRef>,
        when: When,
        condition: Condition,
    },
    Of(Vec<Name>),
    At(Vec<Name>),
    Size(Span),
    // fasteners
    Group(GroupSize),
    Hold(Vec<Name>),
    Into {
        material: Word,
        depth: Option<Quantity>,
    },
    Drive {
        kind: Word,
        size: Option<Span>,
        series: Option<Word>,
    },
    Counterhold(Counterhold),
    Torque {
        torque: Torque,
        then_turn: Option<Quantity>,
        source: Option<Quoted>,
    },
    Passes {
        passes: Vec<Pass>,
        source: Option<Quoted>,
    },
    Pattern {
        order: Vec<Word>,
        layout: Option<Span>,
    },
    FloatsUntil(Condition),
    LockedBy(Vec<LockedBy>),
    FreesWhenSlack,
    MovesWith(Vec<Name>),
    LeftHand,
    LubricatedWith(NameOrWords),
    // point
    On(Vec<Name>),
    ClosedBy(Vec<Name>),
    Holds {
        fluid: NameOrWords,
        amount: Option<Quantity>,
    },
    ServiceEvery(Quantity),
    // tool and supply
    Kind(Vec<Word>),
    Range(Quantity),
    FullScale(Quantity),
    Length(Quantity),
    Accuracy(Quantity),
    Have,
    CloseWithin(Quantity),
    FixesIn(Quantity),
    CuresIn(Quantity),
    GoodTo(Quantity),
    NotOn(Vec<Word>),
    // series, use, stage
    Members(Members),
    As(Name),
    InAnyOrder,
    ForEach {
        series: Name,
        members: Option<Members>,
    },
    // step
    Together,
    After(Condition),
    Before(Condition),
    With(Vec<ToolRef>),
    Use(Vec<Name>),
    New(Vec<Name>),
    Old(Vec<Name>),
    Spends(Vec<Name>),
    Trial,
    ForGood,
    ToItsMark,
    To(To),
    Disturbs(Vec<Name>),
    AtLeast {
        time: Quantity,
        after: Condition,
    },
    AtMost {
        time: Quantity,
        after: Condition,
    },
    Expect(Quantity),
    Caution(Quoted),
    Note(Quoted),
    /// An indented line that could not be read. Its names are uncertain.
    Unreadable {
        mentions: Vec<Name>,
    },
}

/// A declaration or a step with its details.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Item {
    /// From the margin of its first line to the end of its last line's content (no line end).
    pub span: Span,
    /// Its first words.
    pub head: Head,
    /// Its details, in the order written, wherever they stand.
    pub details: Vec<Detail>,
    /// Whole lines that belong to it when it moves: the comment lines directly above it (no
    /// blank line between), its own lines and comments among them, with their line ends.
    pub lines: Span,
}

/// Something in the text that could not be read or should not be there. Typed, without prose.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Problem {
    /// Where.
    pub span: Span,
    /// What.
    pub kind: ProblemKind,
}

/// What is wrong with a stretch of text.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum ProblemKind {
    /// The line could not be read at this place. `wanted` are phrases such as "a name".
    Unreadable {
        /// What could stand here, in plain words.
        wanted: Vec<&'static str>,
        /// The known word nearest to what stands here.
        near: Option<&'static str>,
    },
    /// The first word of a line is none that begins an item or a detail.
    UnknownWord {
        /// The nearest word that could stand here.
        near: Option<&'static str>,
        /// Whether the line is indented, hence a detail.
        detail: bool,
    },
    /// An indented line with no item above it.
    DetailWithoutItem,
    /// A quoted text that does not end on its line.
    OpenQuote,
    /// A name with capital letters.
    Capitals,
    /// A control or bidirectional character that hides or reorders text.
    HiddenCharacter(char),
}

/// One text and all that was read from it.
#[derive(Clone, Debug)]
pub struct Tree {
    /// The text itself, byte-order mark and line ends included.
    pub text: std::sync::Arc<str>,
    /// The items in the order written.
    pub items: Vec<Item>,
    /// What could not be read, by place.
    pub problems: Vec<Problem>,
}

impl Tree {
    /// The text at `span`.
    pub fn at(&self, span: Span) -> &str {
        self.text.get(span.range()).unwrap_or("")
    }
    /// A name as written.
    pub fn name(&self, name: Name) -> &str {
        self.at(name.span)
    }
    /// A bare word as written.
    pub fn word(&self, word: Word) -> &str {
        self.at(word.span)
    }
    /// The text between the quotes, doubled quotes undone.
    pub fn quoted(&self, quoted: Quoted) -> String {
        let raw = self.at(quoted.span);
        let inner = raw.strip_prefix('"').unwrap_or(raw);
        inner
            .strip_suffix('"')
            .unwrap_or(inner)
            .replace("\"\"", "\"")
    }
}
