//! A line that cannot be read.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::{mend, other_words, slips, words};
use plan::model::{Place, ProblemKind};
use syntax::tree::{ProblemKind as Text, Span};
use workshop::quantity::{Dimension, MeasureProblem};

/// The rule.
pub const RULE: Rule = Rule {
    name: "unreadable",
    severity: Severity::Error,
    statement: "A line cannot be read.",
    reason: "What it says is not checked; all other lines are.",
    bad: r#"part cover
fitt cover
"#,
    good: r#"part cover
fit cover
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    for problem in &plan.problems {
        let place = problem.place;
        let text = plan.text(place);
        let about = text.split_whitespace().next().unwrap_or("").to_string();
        let (says, near) = match &problem.kind {
            ProblemKind::Text(kind) => match kind {
                Text::Unreadable { wanted, near } => (cannot_read(&about, wanted), *near),
                Text::UnknownWord { detail, .. } if slips::stands_elsewhere(bench, place) => {
                    found.push(slips::wrong_margin(bench, place, &about, *detail));
                    continue;
                }
                Text::UnknownWord { near, detail: false } => {
                    let says = format!("A line at the margin begins with a thing to declare or a step to do, and “{about}” is neither.");
                    let meant = near.is_none().then(|| other_words::nearest(&about)).flatten();
                    if let Some(other) = other_words::other(meant.unwrap_or(&about)) {
                        found.push(slips::other_word(place, &about, says, other));
                        continue;
                    }
                    (says, *near)
                }
                Text::UnknownWord { near, detail: true } => (
                    format!("An indented line says something about the item above it, and “{about}” is no such word."),
                    *near,
                ),
                Text::DetailWithoutItem => (
                    "This line is indented, but there is nothing above it that it could belong to.".into(),
                    None,
                ),
                Text::OpenQuote => ("The quoted text does not end on this line.".into(), None),
                Text::Capitals => {
                    let lower = text.to_lowercase();
                    let says = format!("Names are written in small letters: {lower}.");
                    let mut finding = Finding::new(&RULE, place, text, says);
                    finding.severity = Severity::Warning;
                    finding.mend = Some(mend::replace(place, &lower, format!("Write {lower}.")));
                    found.push(finding);
                    continue;
                }
                Text::HiddenCharacter(c) => {
                    let says = format!("There is a character here that cannot be seen (U+{:04X}); it can hide or turn round what the line says.", u32::from(*c));
                    let mut finding = Finding::new(&RULE, place, format!("U+{:04X}", u32::from(*c)), says);
                    finding.mend = Some(mend::replace(place, "", "Take it out.".into()));
                    found.push(finding);
                    continue;
                }
            },
            ProblemKind::TooMany { name, most } => (
                format!("{name} comes to more than can be handled: only the first {most} are read."),
                None,
            ),
            ProblemKind::Figure { why, .. } if matches!(why, MeasureProblem::NoUnit { .. }) => {
                let says = why.describe();
                let end = if says.ends_with('?') { "" } else { "." };
                (format!("{says}{end}"), None)
            }
            ProblemKind::Figure { text, why } => (format!("{text}: {}", why.describe()), None),
            ProblemKind::WrongDimension { text, wanted } => {
                (format!("{text} is not {} as is wanted here.", a_measure(*wanted)), None)
            }
            _ => continue,
        };
        let mut finding = Finding::new(&RULE, place, about.as_str(), says);
        if let ProblemKind::Text(Text::Unreadable { wanted, .. }) = &problem.kind
            && let Some(slip) = slips::slip(bench, place, wanted, near)
        {
            slip.tell(&mut finding);
        } else if let Some(near) = near {
            finding.says += &format!(" Did you mean “{near}”?");
            let word = Place {
                span: Span::new(place.span.start, place.span.start + about.len() as u32),
                ..place
            };
            finding.mend = (!about.is_empty()).then(|| mend::replace(word, near, format!("Write {near}.")));
        }
        found.push(finding);
    }
}

fn cannot_read(about: &str, wanted: &[&str]) -> String {
    let here = if about.is_empty() {
        "The line ends too soon".to_string()
    } else {
        format!("This line cannot be read from “{about}” on")
    };
    if wanted.is_empty() {
        return format!("{here}.");
    }
    let wanted = words::list(wanted).replace(" and ", " or ");
    format!("{here}: {wanted} could stand here.")
}

/// A dimension as people say it.
fn a_measure(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Torque => "a torque",
        Dimension::Length => "a length",
        Dimension::Area => "an area",
        Dimension::Force => "a force",
        Dimension::Pressure => "a pressure",
        Dimension::Angle => "an angle",
        Dimension::Mass => "a mass",
        Dimension::Volume => "a volume",
        Dimension::Temperature | Dimension::TemperatureDifference => "a temperature",
        Dimension::Time => "a time",
        Dimension::Distance => "a distance",
        Dimension::Percent => "a percentage",
        Dimension::Number => "a number",
    }
}
