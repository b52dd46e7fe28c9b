//! Every keyword of the language, by the place where it has its meaning.
//!
//! One table feeds what is offered for a misspelt word, completion in editors
//! and the editors' highlighting. The tests hold it against the grammar, row by
//! row.

mod details;

pub use details::DETAILS;

use crate::tree::{Head, Kind, State, Verb};

/// What a detail stands on: a declaration of some kind, or a step.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash, PartialOrd, Ord)]
pub enum Place {
    /// A declaration of this kind.
    Declaration(Kind),
    /// Any step.
    Step,
}

/// A detail's keyword and where it makes sense.
#[derive(Clone, Copy, Debug)]
pub struct DetailWord {
    /// The keyword, its words separated by one blank each. `x` stands for the
    /// size of a group (`8 x M6`), which begins with a number.
    pub word: &'static str,
    /// What may carry it.
    pub places: &'static [Place],
    /// A whole detail, to show what may stand behind the keyword.
    pub sample: &'static str,
}

/// The words that begin a declaration.
pub const KINDS: &[(&str, Kind)] = &[
    ("plan", Kind::Plan),
    ("part", Kind::Part),
    ("unit", Kind::Unit),
    ("item", Kind::Item),
    ("fasteners", Kind::Fasteners),
    ("point", Kind::Point),
    ("position", Kind::Position),
    ("tool", Kind::Tool),
    ("supply", Kind::Supply),
    ("series", Kind::Series),
    ("use", Kind::Use),
    ("stage", Kind::Stage),
];

/// The words that begin a step.
pub const VERBS: &[(&str, Verb)] = &[
    ("fit", Verb::Fit),
    ("dry-fit", Verb::DryFit),
    ("start", Verb::Start),
    ("snug", Verb::Snug),
    ("tighten", Verb::Tighten),
    ("lock", Verb::Lock),
    ("unlock", Verb::Unlock),
    ("slacken", Verb::Slacken),
    ("undo", Verb::Undo),
    ("remove", Verb::Remove),
    ("apply", Verb::Apply),
    ("measure", Verb::Measure),
    ("set", Verb::Set),
    ("mark", Verb::Mark),
    ("bleed", Verb::Bleed),
    ("fill", Verb::Fill),
    ("drain", Verb::Drain),
    ("prime", Verb::Prime),
    ("inspect", Verb::Inspect),
    ("clean", Verb::Clean),
    ("heat", Verb::Heat),
    ("chill", Verb::Chill),
    ("turn", Verb::Turn),
    ("reach", Verb::Reach),
    ("sign", Verb::Sign),
    ("do", Verb::Do),
];

/// The words for a state and what they are read as. The first word of each
/// state is its name.
pub const STATES: &[(&str, State)] = &[
    ("fitted", State::Fitted),
    ("installed", State::Fitted),
    ("in place", State::Fitted),
    ("on", State::Fitted),
    ("off", State::Off),
    ("removed", State::Off),
    ("out", State::Out),
    ("undone", State::Out),
    ("started", State::Started),
    ("slack", State::Slack),
    ("slackened", State::Slack),
    ("loose", State::Slack),
    ("snug", State::Snug),
    ("snugged", State::Snug),
    ("tight", State::Tight),
    ("tightened", State::Tight),
    ("locked", State::Locked),
    ("covered", State::Covered),
    ("bled", State::Bled),
    ("filled", State::Filled),
    ("drained", State::Drained),
    ("primed", State::Primed),
    ("measured", State::Measured),
    ("set", State::Set),
    ("marked", State::Marked),
    ("inspected", State::Inspected),
    ("cleaned", State::Cleaned),
    ("clean", State::Cleaned),
    ("heated", State::Heated),
    ("chilled", State::Chilled),
    ("turned", State::Turned),
    ("reached", State::Reached),
    ("signed", State::Signed),
    ("applied", State::Applied),
    ("cured", State::Cured),
    ("done", State::Done),
];

/// The joining words. Nothing can be named by one of them.
pub const RESERVED: &[&str] = &["the", "is", "are", "and", "because"];

/// The sorts of fastener that a group may be of, in the singular; each is read
/// in the plural as well.
pub const SORTS: &[&str] = &[
    "bolt", "screw", "nut", "stud", "pin", "clip", "ring", "plug", "union", "clamp", "strap",
    "key", "dowel", "rivet", "banjo", "grub", "setscrew", "capscrew", "locknut", "wingnut",
    "circlip", "cotter",
];

/// The units most often written, each in its usual spelling. The grammar reads
/// more spellings and more units than these.
pub const UNITS: &[&str] = &[
    "N.m",
    "Nm",
    "N·m",
    "cN.m",
    "kgf.m",
    "kgf.cm",
    "lb-ft",
    "lbf.ft",
    "ft-lb",
    "lb-in",
    "in-lb",
    "lbf.in",
    "mm",
    "cm",
    "m",
    "µm",
    "um",
    "in",
    "inch",
    "thou",
    "ft",
    "kg",
    "g",
    "lb",
    "oz",
    "t",
    "L",
    "l",
    "litres",
    "mL",
    "ml",
    "cc",
    "cm3",
    "us-pint",
    "us-quart",
    "us-gallon",
    "min",
    "h",
    "s",
    "days",
    "weeks",
    "months",
    "years",
    "deg",
    "°",
    "turn",
    "turns",
    "C",
    "°C",
    "F",
    "°F",
    "K",
    "bar",
    "psi",
    "kPa",
    "MPa",
    "N",
    "kN",
    "lbf",
    "kgf",
    "%",
    "km",
    "mi",
];

/// The declaration that a word begins.
pub fn kind(word: &str) -> Option<Kind> {
    KINDS
        .iter()
        .find(|(known, _)| *known == word)
        .map(|(_, kind)| *kind)
}

/// The step that a word begins.
pub fn verb(word: &str) -> Option<Verb> {
    VERBS
        .iter()
        .find(|(known, _)| *known == word)
        .map(|(_, verb)| *verb)
}

/// The state that a word means.
pub fn state(word: &str) -> Option<State> {
    STATES
        .iter()
        .find(|(known, _)| *known == word)
        .map(|(_, state)| *state)
}

/// Every word that begins an item.
pub fn item_words() -> impl Iterator<Item = &'static str> {
    let kinds = KINDS.iter().map(|(word, _)| *word);
    kinds.chain(VERBS.iter().map(|(word, _)| *word))
}

/// The details that `place` may carry.
pub fn details_of(place: Place) -> impl Iterator<Item = &'static DetailWord> {
    DETAILS
        .iter()
        .filter(move |detail| detail.places.contains(&place))
}

/// What an item with this head is to its details; `None` where that could not be read.
pub fn place_of(head: &Head) -> Option<Place> {
    match head {
        Head::Declaration { kind, .. } => Some(Place::Declaration(*kind)),
        Head::Step { .. } => Some(Place::Step),
        Head::Unreadable {
            kind: Some(kind), ..
        } => Some(Place::Declaration(*kind)),
        Head::Unreadable { verb: Some(_), .. } => Some(Place::Step),
        Head::Unreadable { .. } => None,
    }
}

/// The keyword of a kind.
pub fn word_of_kind(kind: Kind) -> &'static str {
    KINDS
        .iter()
        .find(|(_, known)| *known == kind)
        .map_or("", |(word, _)| word)
}

/// The word of a step.
pub fn word_of_verb(verb: Verb) -> &'static str {
    VERBS
        .iter()
        .find(|(_, known)| *known == verb)
        .map_or("", |(word, _)| word)
}

/// The first word for a state.
pub fn word_of_state(state: State) -> &'static str {
    STATES
        .iter()
        .find(|(_, known)| *known == state)
        .map_or("", |(word, _)| word)
}
