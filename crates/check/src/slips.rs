//! Lines that cannot be read, where it is plain what was meant.

use crate::bench::Bench;
use crate::finding::{Finding, Mend};
use crate::mend;
use crate::other_words::Other;
use crate::rules::unreadable::RULE;
use plan::model::{Place, Plan};
use syntax::tree::{Detail, Head, Item, Says, Span, Verb};

/// What was meant.
pub struct Slip {
    says: String,
    advice: Option<String>,
    mend: Option<Mend>,
}

impl Slip {
    fn new(says: impl Into<String>) -> Slip {
        Slip {
            says: says.into(),
            advice: None,
            mend: None,
        }
    }

    /// Puts it into the finding in place of what could have stood there.
    pub fn tell(self, finding: &mut Finding) {
        finding.says = self.says;
        finding.advice = self.advice;
        finding.mend = self.mend;
    }
}

/// A line, and where in it reading stopped.
struct Line<'p> {
    text: &'p str,
    /// Where it begins in its text.
    start: u32,
    /// Byte of the line at which reading stopped.
    at: usize,
    place: Place,
}

impl<'p> Line<'p> {
    fn of(plan: &'p Plan, place: Place) -> Option<Line<'p>> {
        let text = &plan.sources.get(place.file.0 as usize)?.tree.text;
        let (before, behind) = text.split_at_checked(place.span.start as usize)?;
        let start = before.rfind(['\n', '\r']).map_or(0, |end| end + 1);
        let length = behind.find(['\n', '\r']).unwrap_or(behind.len());
        Some(Line {
            text: text.get(start..before.len() + length)?,
            start: start as u32,
            at: before.len() - start,
            place,
        })
    }

    fn before(&self) -> &'p str {
        &self.text[..self.at]
    }

    fn behind(&self) -> &'p str {
        &self.text[self.at..]
    }

    /// The place of the bytes `from..to` of the line.
    fn part(&self, from: usize, to: usize) -> Place {
        let at = |byte: usize| self.start + byte as u32;
        Place {
            span: Span::new(at(from), at(to)),
            ..self.place
        }
    }

    /// The last word in front of where reading stopped, and where it begins.
    fn last_word(&self) -> (usize, &'p str) {
        let before = self.before().trim_end_matches(' ');
        let start = before.rfind([' ', ',', '\t']).map_or(0, |at| at + 1);
        (start, &before[start..])
    }
}

/// What was meant by the line that could not be read at `place`; none where that is not plain.
pub fn slip(bench: &Bench, place: Place, wanted: &[&str], near: Option<&str>) -> Option<Slip> {
    let plan = bench.plan;
    let line = Line::of(plan, place)?;
    decimal_comma(&line)
        .or_else(|| dash(&line))
        .or_else(|| hyphen(plan, &line))
        .or_else(|| torque_in_words(&line))
        .or_else(|| no_keyword(plan, &line))
        .or_else(|| text(plan, &line))
        .or_else(|| match near {
            None => remark(plan, &line, wanted),
            Some(_) => None,
        })
}

/// `0,5 N.m`
fn decimal_comma(line: &Line) -> Option<Slip> {
    let behind = line.behind().strip_prefix(',')?;
    let digit = |c: char| c.is_ascii_digit();
    if !(line.before().ends_with(digit) && behind.starts_with(digit)) {
        return None;
    }
    let mut slip = Slip::new("A figure has a point and no comma in it.");
    let comma = line.part(line.at, line.at + 1);
    slip.mend = Some(mend::replace(comma, ".", "Write a point.".into()));
    Some(slip)
}

/// `0.1-0.2 mm`
fn dash(line: &Line) -> Option<Slip> {
    let dash = ["-", "–", "—", "…"];
    let dash = dash.into_iter().find(|d| line.behind().starts_with(d))?;
    let behind = line.behind()[dash.len()..].trim_start();
    let figure = line
        .before()
        .trim_end()
        .ends_with(|c: char| c.is_alphanumeric());
    if !(figure && behind.starts_with(|c: char| c.is_ascii_digit())) {
        return None;
    }
    let mut slip = Slip::new("From one figure to another is written with two points: 0.1..0.2 mm.");
    let from = line.before().trim_end().len();
    let to = line.text.len() - behind.len();
    slip.mend = Some(mend::replace(
        line.part(from, to),
        "..",
        "Write two points.".into(),
    ));
    Some(slip)
}

/// `torque wrench`: two words that are one name.
fn hyphen(plan: &Plan, line: &Line) -> Option<Slip> {
    let (start, last) = line.last_word();
    let word = |c: char| c.is_alphanumeric() || c == '-';
    let behind = line.behind();
    let length = behind.find(|c| !word(c)).unwrap_or(behind.len());
    if last.is_empty() || length == 0 || !last.chars().all(word) {
        return None;
    }
    let joined = format!("{last}-{}", &behind[..length]);
    let named = plan.things.iter().any(|thing| thing.name == joined);
    if !(named || plan::is_tool_kind(&joined)) {
        return None;
    }
    let mut slip = Slip::new(format!(
        "The words of a name are joined by hyphens. Did you mean “{joined}”?"
    ));
    let place = line.part(start, line.at + length);
    slip.mend = Some(mend::replace(place, &joined, format!("Write {joined}.")));
    Some(slip)
}

/// `torque hand-tight`
fn torque_in_words(line: &Line) -> Option<Slip> {
    let (_, last) = line.last_word();
    let rest = line.behind();
    let words = rest.starts_with(char::is_alphabetic) && !rest.contains(['"', '#']);
    if last != "torque" || !words {
        return None;
    }
    let mut slip = Slip::new(
        "Behind “torque” stands a figure with its unit, unknown, none, or words in quotes such as \"firm by hand\".",
    );
    slip.mend = quotes(line, line.at);
    Some(slip)
}

/// `measure gap 0.1..0.2 mm`, `set gap max 0.2 mm`: a figure with nothing to say what it is.
fn no_keyword(plan: &Plan, line: &Line) -> Option<Slip> {
    let keyword = match step_at(plan, line.place)? {
        Verb::Measure => "expect",
        Verb::Set | Verb::Heat | Verb::Chill | Verb::Turn => "to",
        _ => return None,
    };
    let before = line.before();
    let figure = before.trim_end_matches(|c: char| c.is_ascii_digit() || ".,/ ".contains(c));
    let bound = [
        "at most", "at least", "max", "min", "maximum", "minimum", "up to",
    ];
    let at = if line.behind().starts_with(|c: char| c.is_ascii_digit()) {
        line.at
    } else if let Some(bound) = bound.iter().find(|b| line.behind().starts_with(**b))
        && line.behind()[bound.len()..].starts_with(' ')
    {
        line.at
    } else if let Some(at) = before.rfind(" at most ").or(before.rfind(" at least ")) {
        at + 1
    } else if before[figure.len()..]
        .trim_start()
        .starts_with(|c: char| c.is_ascii_digit())
    {
        before.len() - before[figure.len()..].trim_start().len()
    } else {
        return None;
    };
    // Behind a keyword the figure is in its place, and something else is wrong.
    let known = ["expect", "to", "after", "takes"];
    if known.contains(&before[..at].trim_end().rsplit(' ').next()?) {
        return None;
    }
    let mut slip = Slip::new(match keyword {
        "expect" => "A reading stands behind “expect”.",
        _ => "What a thing is brought to stands behind “to”.",
    });
    let place = line.part(at, at);
    let new = format!("{keyword} ");
    slip.mend = Some(mend::replace(
        place,
        &new,
        format!("Write “{keyword}” before the figure."),
    ));
    Some(slip)
}

/// A text in the middle of a line.
fn text(plan: &Plan, line: &Line) -> Option<Slip> {
    let quoted = line.behind().starts_with('"') || line.before().trim_end().ends_with('"');
    step_at(plan, line.place)?;
    let start = match line.behind().starts_with('"') {
        true => line.at,
        false => line.before().trim_end().strip_suffix('"')?.rfind('"')?,
    };
    let keyword = line.text[..start].trim_end().rsplit(' ').next()?;
    let taken = ["note", "caution", "because", "from", "to", "torque"].contains(&keyword);
    if !quoted || taken || start == 0 {
        return None;
    }
    let mut slip = Slip::new(
        "A remark stands at the end of the step’s line; anywhere else it wants “note” before it.",
    );
    let place = line.part(start, start);
    slip.mend = Some(mend::replace(
        place,
        "note ",
        "Write “note” before the text.".into(),
    ));
    Some(slip)
}

/// `inspect bearing for cracks`: words for people, without quotes.
fn remark(plan: &Plan, line: &Line, wanted: &[&str]) -> Option<Slip> {
    step_at(plan, line.place)?;
    let (start, last) = line.last_word();
    let at = match last {
        "for" | "in" | "on" | "at" | "from" => start,
        _ if wanted.contains(&"a further detail") => line.at,
        _ => return None,
    };
    let rest = &line.text[at..];
    if !rest.starts_with(char::is_alphabetic) || rest.contains(['"', '#']) {
        return None;
    }
    let mut slip = Slip::new(format!(
        "Nothing that could stand on a step begins with “{rest}”. A remark is put in quotes."
    ));
    slip.mend = quotes(line, at);
    Some(slip)
}

/// Quotes round the rest of the line.
fn quotes(line: &Line, at: usize) -> Option<Mend> {
    let rest = line.text[at..].trim_end();
    let place = line.part(at, at + rest.len());
    let new = format!("\"{rest}\"");
    Some(mend::replace(
        place,
        &new,
        "Put the words in quotes.".into(),
    ))
}

/// The item that the place lies in.
fn item_at(plan: &Plan, place: Place) -> Option<&Item> {
    let items = &plan.sources.get(place.file.0 as usize)?.tree.items;
    let behind = items.partition_point(|item| item.span.start <= place.span.start);
    items.get(behind.checked_sub(1)?)
}

/// What the step does that the place lies in.
fn step_at(plan: &Plan, place: Place) -> Option<Verb> {
    match &item_at(plan, place)?.head {
        Head::Step { verb, .. } => Some(*verb),
        _ => None,
    }
}

/// Whether the line reads well, and only its margin is wrong.
pub fn stands_elsewhere(bench: &Bench, place: Place) -> bool {
    item_at(bench.plan, place).is_some_and(|item| {
        let begins = |span: Span| span.start == place.span.start;
        let head = match &item.head {
            Head::Declaration { keyword, .. } | Head::Step { keyword, .. } => begins(*keyword),
            Head::Unreadable { .. } => false,
        };
        let detail = |detail: &Detail| {
            begins(detail.keyword) && !matches!(detail.says, Says::Unreadable { .. })
        };
        head || item.details.iter().any(detail)
    })
}

/// A line that has lost its indent, or has one too many.
pub fn wrong_margin(bench: &Bench, place: Place, about: &str, indented: bool) -> Finding {
    let says = match indented {
        true => format!(
            "“{about}” begins a thing or a step of its own, and such a line stands at the margin."
        ),
        false => format!(
            "“{about}” says something about the item above it, and such a line is indented."
        ),
    };
    let mut finding = Finding::new(&RULE, place, about, says);
    if let Some(line) = Line::of(bench.plan, place) {
        finding.mend = Some(match indented {
            true => mend::replace(line.part(0, line.at), "", "Move it to the margin.".into()),
            false => mend::replace(line.part(line.at, line.at), "  ", "Indent it.".into()),
        });
    }
    finding
}

/// A line that begins with a word for which the language has another.
pub fn other_word(place: Place, about: &str, says: String, other: &Other) -> Finding {
    let mut finding = Finding::new(&RULE, place, about, says);
    match other.write {
        Some(write) => {
            let word = Place {
                span: Span::new(place.span.start, place.span.start + about.len() as u32),
                ..place
            };
            finding.mend = Some(mend::replace(word, write, other.advice.to_owned()));
        }
        None => finding.advice = Some(other.advice.to_owned()),
    }
    finding
}
