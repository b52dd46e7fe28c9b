//! A tool that does not fit the fastener.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::joints;
use crate::rules::Rule;
use crate::words;
use plan::model::{CounterholdBy, Fasteners, Place, Thing, ThingId, ToolUse};
use std::collections::HashSet;
use syntax::tree::Verb;
use workshop::drive::{HeadSeries, drive_size};
use workshop::quantity::{Length, Measure};

/// The rule.
pub const RULE: Rule = Rule {
    name: "wrong-drive",
    severity: Severity::Error,
    statement: "The tool does not fit the fastener, or the fastener's size is not that of its thread in the series named.",
    reason: "A spanner one size off rounds the head; a key one size off rounds the socket, and then it has to be drilled out.",
    bad: r#"part cover
fasteners cover-bolts
  6 x M8
  hold cover
  drive hex 13 mm
  torque 22 N.m from "maker's sheet 3"
fit cover
tighten cover-bolts with socket 12 mm
"#,
    good: r#"part cover
fasteners cover-bolts
  6 x M8
  hold cover
  drive hex 13 mm
  torque 22 N.m from "maker's sheet 3"
fit cover
tighten cover-bolts with socket 13 mm
"#,
    find,
};

/// How a tool takes hold of a fastener.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Hold {
    /// A hexagon, outside or inside: the plan does not say which.
    Hexagon,
    /// Around a hexagon.
    Around,
    /// A hexagon key in a socket.
    Key,
    /// A six-lobed bit.
    Lobes,
}

impl Hold {
    /// Whether a tool that takes hold like this can turn a head made for `head`.
    fn turns(self, head: Hold) -> bool {
        self == head || (head == Hold::Hexagon && self != Hold::Lobes)
    }

    fn words(self) -> &'static str {
        match self {
            Hold::Hexagon => "a hexagon",
            Hold::Around => "a hexagon head",
            Hold::Key => "a hexagon socket",
            Hold::Lobes => "a six-lobed socket",
        }
    }
}

/// What a fastener takes: how it is held, its size, where that is said.
struct Head {
    hold: Hold,
    size: Option<Size>,
    place: Place,
}

/// A size: across flats, or a code such as T30.
#[derive(Clone, PartialEq)]
enum Size {
    Flats(Length),
    Code(String),
}

impl Size {
    fn read(text: &str) -> Option<Size> {
        if text.starts_with(|c: char| c.is_ascii_digit()) {
            let measure = Measure::read(text).ok()?;
            return Length::try_from(measure.middle()).ok().map(Size::Flats);
        }
        Some(Size::Code(text.to_uppercase()))
    }

    fn fits(&self, other: &Size) -> bool {
        match (self, other) {
            (Size::Flats(a), Size::Flats(b)) => workshop::quantity::same(a.si(), b.si()),
            (Size::Code(a), Size::Code(b)) => a == b,
            // A code and a figure cannot be compared.
            _ => true,
        }
    }

    /// As [`Size::fits`], and sure: figure against figure, code against code.
    fn same(&self, other: &Size) -> bool {
        std::mem::discriminant(self) == std::mem::discriminant(other) && self.fits(other)
    }

    fn words(&self) -> String {
        match self {
            Size::Flats(flats) => flats.amount().as_given(),
            Size::Code(code) => code.clone(),
        }
    }
}

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    let plan = bench.plan;
    for thing in &plan.things {
        let Some(group) = thing.fasteners() else {
            continue;
        };
        if thing.uncertain {
            continue;
        }
        if let Some(finding) = against_series(thing, group) {
            found.push(finding);
            continue;
        }
        let Some(head) = head(group) else { continue };
        for way in &thing.ways {
            found.extend(against_tools(thing, group, &head, &way.tools));
        }
    }
    let mut seen: HashSet<(ThingId, Place)> = HashSet::new();
    for (id, step) in plan.steps() {
        let turns = matches!(
            step.verb,
            Verb::Tighten | Verb::Snug | Verb::Slacken | Verb::Undo | Verb::Start
        );
        if !turns || step.uncertain {
            continue;
        }
        for target in &bench.lives.targets[id.0 as usize] {
            let thing = plan.thing(target.thing);
            let Some(group) = thing.fasteners().filter(|_| !thing.uncertain) else {
                continue;
            };
            let Some(head) = head(group) else { continue };
            if let Some(mut finding) = against_tools(thing, group, &head, &step.with)
                && seen.insert((target.thing, finding.place))
            {
                finding.steps = vec![id];
                found.push(finding);
            }
        }
    }
}

/// The size given for the head against that of its thread, where the series is named.
fn against_series(thing: &Thing, group: &Fasteners) -> Option<Finding> {
    let (_, size, series, place) = group.drive.as_ref()?;
    let series = HeadSeries::read(series.as_ref()?)?;
    let given = Size::read(size.as_ref()?)?;
    let thread = joints::thread(group)?;
    let right = drive_size(&thread, series)?;
    if given.fits(&Size::Flats(right.across_flats)) {
        return None;
    }
    let says = format!(
        "{} of {} {} {}, not {} ({}).",
        thread.designation(),
        series.words(),
        if series.is_key() {
            "takes a key of"
        } else {
            "is turned with"
        },
        right.across_flats.amount().as_given(),
        given.words(),
        right.source
    );
    let says = words::capital(&says);
    let mut finding = Finding::new(&RULE, *place, thing.name.as_str(), says);
    if let Some(thread) = &group.thread {
        finding = finding.because(thread.place, "the thread");
    }
    Some(finding.advice("Measure the head. Another series has other sizes: name the one it is."))
}

/// What a fastener takes, where the plan says enough.
fn head(group: &Fasteners) -> Option<Head> {
    let (kind, size, series, place) = group.drive.as_ref()?;
    let series = series.as_deref().and_then(HeadSeries::read);
    let hold = match kind.as_str() {
        "hex" if series.is_some_and(HeadSeries::is_key) => Hold::Key,
        // “Hex” is said of heads and of sockets alike.
        "hex" | "hexagon" if series.is_none() => Hold::Hexagon,
        "hex" | "hexagon" => Hold::Around,
        "hex-key" | "hex-socket" | "hex-bit" => Hold::Key,
        "torx" | "torx-key" | "torx-bit" => Hold::Lobes,
        _ => return None,
    };
    let size = match (size, series) {
        (Some(size), _) => Size::read(size),
        (None, Some(series)) => joints::thread(group)
            .and_then(|thread| drive_size(&thread, series))
            .map(|size| Size::Flats(size.across_flats)),
        (None, None) => None,
    };
    Some(Head {
        hold,
        size,
        place: *place,
    })
}

/// How a kind of tool takes hold; none for tools that turn nothing, or anything.
fn hold(kind: &str) -> Option<Hold> {
    Some(match kind {
        "spanner" | "socket" | "deep-socket" | "ring-spanner" | "open-spanner" | "box-spanner"
        | "flare-spanner" | "crowfoot" => Hold::Around,
        "hex-key" | "hex-bit" => Hold::Key,
        "torx" | "torx-key" | "torx-bit" => Hold::Lobes,
        _ => return None,
    })
}

fn against_tools(
    thing: &Thing,
    group: &Fasteners,
    head: &Head,
    tools: &[ToolUse],
) -> Option<Finding> {
    let holds_other_side = |tool: &ToolUse| match &group.counterhold {
        Some(CounterholdBy::Tool(other)) => other.kind == tool.kind && other.size == tool.size,
        _ => false,
    };
    let turning: Vec<(&ToolUse, Hold)> = tools
        .iter()
        .filter_map(|tool| Some((tool, hold(tool.kind.as_deref()?)?)))
        .collect();
    let fits = |(tool, hold): &(&ToolUse, Hold)| {
        let size = tool.size.as_deref().and_then(Size::read);
        let sized = size.zip(head.size.as_ref());
        if hold.turns(head.hold) {
            return sized.is_none_or(|(size, wanted)| size.fits(wanted));
        }
        // Bits, and the bells for lobes outside, are called sockets too: `socket E10`.
        *hold == Hold::Around && sized.is_some_and(|(size, wanted)| size.same(wanted))
    };
    if turning.iter().any(fits) {
        return None;
    }
    // A socket may well drive a bit.
    let bit_inside = !matches!(head.hold, Hold::Around | Hold::Hexagon)
        && turning
            .iter()
            .all(|(tool, hold)| *hold == Hold::Around && tool.size.is_none());
    let wrong = turning.iter().find(|(tool, _)| !holds_other_side(tool));
    let (tool, hold) = wrong.filter(|_| !bit_inside)?;
    let wanted = match (&head.size, hold.turns(head.hold)) {
        (Some(size), true) if head.hold != Hold::Hexagon => size.words(),
        (Some(size), _) => format!("{} of {}", head.hold.words(), size.words()),
        (None, _) => head.hold.words().to_string(),
    };
    let one = group.count == Some(1);
    let says = format!(
        "{} does not fit {}: {} {wanted}.",
        words::capital(&tool.text),
        thing.called(),
        if one { "it has" } else { "they have" },
    );
    Some(
        Finding::new(&RULE, tool.place, thing.name.as_str(), says)
            .because(head.place, "what the tool must fit"),
    )
}
