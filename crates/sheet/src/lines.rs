//! What stands under a step, line by line: a leading word and a text. Terminal and Markdown show
//! the same lines in their own way.

use crate::checklist::{
    Chance, Entry, Fastening, Heading, Held, Manner, NewItem, PartNote, Reading, Stage, SupplyUse,
    Temporary, Torque, Wait, Work,
};
use crate::findings::{counted, severity_word};
use crate::words::joined;
use check::Severity;

/// A place to write something by hand.
const BLANK: &str = "________";

/// How much a line must stand out.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Weight {
    /// Like any other.
    Plain,
    /// A caution.
    Caution,
    /// An error or a warning of the checker.
    Trouble(Severity),
}

/// One line under a step.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Line {
    /// How much it stands out.
    pub weight: Weight,
    /// The word it begins with.
    pub lead: &'static str,
    /// The rest.
    pub text: String,
}

fn plain(lead: &'static str, text: impl Into<String>) -> Line {
    Line {
        weight: Weight::Plain,
        lead,
        text: text.into(),
    }
}

/// The lines under a step, in the order in which a person needs them: what is wrong, what is
/// dangerous, what to wait for, what to have ready, how to do it, what to write down.
pub fn lines(entry: &Entry) -> Vec<Line> {
    let mut lines = Vec::new();
    lines.extend(entry.troubles.iter().map(|trouble| Line {
        weight: Weight::Trouble(trouble.severity),
        lead: severity_word(trouble.severity),
        text: format!("{} ({})", trouble.says, trouble.rule),
    }));
    lines.extend(entry.cautions.iter().map(|caution| Line {
        weight: Weight::Caution,
        lead: "caution",
        text: match (&caution.kind, caution.first_at) {
            (Some(kind), Some(number)) => format!("{kind}, as at step {number}"),
            _ => caution.says.clone(),
        },
    }));
    lines.extend(entry.waits.iter().map(wait));
    lines.extend(
        entry
            .only_after
            .iter()
            .map(|said| plain("only when", said.clone())),
    );
    lines.extend(
        entry
            .wanted
            .iter()
            .map(|wanted| plain("check", because(&wanted.condition, &wanted.because))),
    );
    if !entry.tools.is_empty() {
        lines.push(plain("tool", entry.tools.join(", ")));
    }
    lines.extend(entry.new_items.iter().map(new_item));
    for old in &entry.old_items {
        lines.push(plain(
            "old",
            because(
                &format!("{}, used again on purpose", old.name),
                &old.because,
            ),
        ));
    }
    lines.extend(entry.supplies.iter().map(supply));
    lines.extend(
        entry
            .manner
            .iter()
            .filter_map(|manner| self::manner(*manner)),
    );
    let all = entry.targets.len();
    each(&mut lines, &entry.parts, all, |part, several| {
        vec![part_note(part, several)]
    });
    each(&mut lines, &entry.fastenings, all, fastening_lines);
    for loose in &entry.leave_loose {
        let mut text = format!(
            "leave {} loose until {}",
            loose.name,
            because(&loose.until, &loose.because)
        );
        if let Some(number) = loose.number {
            text += &format!("; tightened at step {number}");
        }
        lines.push(plain("loose", text));
    }
    let several = entry.readings.len() > 1;
    lines.extend(
        entry
            .readings
            .iter()
            .map(|reading| self::reading(reading, several)),
    );
    if !entry.disturbs.is_empty() {
        let text = format!("this spoils {}: to be done again", joined(&entry.disturbs));
        lines.push(plain("spoils", text));
    }
    lines.extend(
        entry
            .takes
            .iter()
            .map(|takes| plain("time", format!("about {takes}"))),
    );
    lines.extend(
        entry
            .reasons
            .iter()
            .map(|reason| plain("why here", reason.clone())),
    );
    lines.extend(entry.notes.iter().map(|note| plain("note", note.clone())));
    if entry.sign {
        lines.push(plain("signed", format!("{BLANK}{BLANK}, date {BLANK}")));
    }
    lines
}

/// The lines of each of several things, by name; without names, once, where they are all alike
/// and are all that the step acts on.
fn each<T>(
    lines: &mut Vec<Line>,
    things: &[T],
    targets: usize,
    said: impl Fn(&T, bool) -> Vec<Line>,
) {
    let plain: Vec<Vec<Line>> = things.iter().map(|thing| said(thing, false)).collect();
    if things.len() == targets && plain.windows(2).all(|pair| pair[0] == pair[1]) {
        // A size that is said once for several groups is that of each of them, not their sum.
        let each = things.len() > 1;
        lines.extend(
            plain
                .into_iter()
                .next()
                .unwrap_or_default()
                .into_iter()
                .map(|mut line| {
                    if each && line.lead == "size" {
                        line.text += ", each";
                    }
                    line
                }),
        );
    } else {
        lines.extend(things.iter().flat_map(|thing| said(thing, true)));
    }
}

fn because(said: &str, because: &Option<String>) -> String {
    match because {
        Some(reason) => format!("{said} ({reason})"),
        None => said.to_owned(),
    }
}

fn wait(wait: &Wait) -> Line {
    let at = wait
        .number
        .map(|number| format!(" (step {number})"))
        .unwrap_or_default();
    let text = format!("{} after {}{at}", wait.time, wait.after);
    if wait.at_least {
        plain("wait", format!("at least {text}"))
    } else {
        plain("within", text)
    }
}

fn new_item(new: &NewItem) -> Line {
    let mut text = new.name.clone();
    if let Some(count) = new.count.filter(|count| *count > 1) {
        text = format!("{count} x {text}");
    }
    match new.size.as_deref() {
        Some("unknown") => text += &format!(", size {BLANK}"),
        Some(size) => text += &format!(", {size}"),
        None => {}
    }
    plain("new", text)
}

fn supply(supply: &SupplyUse) -> Line {
    let times = [
        ("close within", &supply.close_within),
        ("holds after", &supply.fixes_in),
        ("cures in", &supply.cures_in),
    ];
    let mut text = supply.name.clone();
    if let Some(amount) = &supply.amount {
        text += &format!(", {amount}");
    }
    for (lead, time) in times {
        if let Some(time) = time {
            text += &format!(", {lead} {time}");
        }
    }
    plain("use", text)
}

fn manner(manner: Manner) -> Option<Line> {
    match manner {
        // Said with the fasteners, where it changes what their torque means.
        Manner::Trial => None,
        Manner::DryFit => Some(plain(
            "trial",
            "to try only: no sealant, nothing used up, comes off again",
        )),
        Manner::ForGood => Some(plain("off", "stays off for good")),
        Manner::ToItsMark => Some(plain("mark", "line it up with its mark")),
    }
}

fn part_note(part: &PartNote, several: bool) -> Line {
    let mut said = Vec::new();
    if let Some(facing) = &part.facing {
        said.push(format!("facing: {facing}"));
    }
    if let Some(side) = &part.side {
        said.push(format!("{side} side"));
    }
    if !part.matched_with.is_empty() {
        said.push(format!("belongs with {}", joined(&part.matched_with)));
    }
    if let Some(mass) = &part.mass {
        said.push(mass.clone());
    }
    if let Some(count) = part.temporary {
        let out = match part.out_at {
            Some(number) => format!(", out again at step {number}"),
            None => String::new(),
        };
        said.push(if count > 1 {
            format!("temporary{out}: {count} of them, count them {BLANK}")
        } else {
            format!("temporary{out}")
        });
    }
    plain("part", named(&part.name, several, &said.join("; ")))
}

fn named(name: &str, several: bool, said: &str) -> String {
    if several {
        format!("{name}: {said}")
    } else {
        said.to_owned()
    }
}

fn fastening_lines(fastening: &Fastening, several: bool) -> Vec<Line> {
    let name = |said: &str| named(&fastening.name, several, said);
    let mut lines = Vec::new();
    let mut size: Vec<String> = Vec::new();
    size.extend(fastening.group.clone());
    size.extend(
        fastening
            .drive
            .as_ref()
            .map(|drive| format!("drive {drive}")),
    );
    if !size.is_empty() {
        lines.push(plain("size", name(&size.join(", "))));
    }
    if let Some(with) = &fastening.lubricated {
        lines.push(plain("threads", name(with)));
    }
    if fastening.left_hand {
        let way = match fastening.stage {
            Stage::Slack | Stage::Out => "clockwise to undo",
            _ => "anticlockwise to tighten",
        };
        lines.push(plain("thread", name(&format!("left-hand: {way}"))));
    }
    if let Some(by) = &fastening.counterhold {
        lines.push(plain(
            "hold",
            name(&match by {
                Held::ByTool(tool) => format!("the other side with {tool}"),
                Held::ByPart(part) => format!("held by {part}"),
            }),
        ));
    }
    lines.extend(stage_line(fastening, several));
    if let Some(pattern) = &fastening.pattern {
        lines.push(plain("pattern", name(pattern)));
    }
    if fastening.stage == Stage::Final && !fastening.locked_by.is_empty() {
        let at = match fastening.lock_number {
            Some(number) => format!(" at step {number}"),
            None => String::new(),
        };
        lines.push(plain(
            "lock",
            name(&format!("with {}{at}", joined(&fastening.locked_by))),
        ));
    }
    lines
}

/// How far the group is tightened: the line nobody may overlook.
fn stage_line(fastening: &Fastening, several: bool) -> Option<Line> {
    let (lead, said) = match fastening.stage {
        Stage::Started => (
            "started",
            "in by hand, a few threads; still free to move".into(),
        ),
        Stage::Snug => ("snug", "touching; can still be shifted".into()),
        Stage::Slack => ("slack", "loose, but left in".into()),
        Stage::Trial => (
            "trial",
            format!("{}; will be undone again", torque(fastening)),
        ),
        Stage::Final => ("final", torque(fastening)),
        Stage::Locked if !fastening.locked_by.is_empty() => {
            ("lock", format!("with {}", joined(&fastening.locked_by)))
        }
        Stage::Unlocked if !fastening.locked_by.is_empty() => (
            "lock",
            format!("free it of {}", joined(&fastening.locked_by)),
        ),
        Stage::In => ("in", "home".into()),
        Stage::Locked | Stage::Unlocked | Stage::Out => return None,
    };
    Some(plain(lead, named(&fastening.name, several, &said)))
}

fn torque(fastening: &Fastening) -> String {
    match &fastening.torque {
        Some(Torque::Known { passes, source }) => {
            let said = match passes.as_slice() {
                [one] => one.clone(),
                passes => {
                    let boxed: Vec<String> =
                        passes.iter().map(|pass| format!("[ ] {pass}")).collect();
                    boxed.join(", ")
                }
            };
            let from = source.as_deref().unwrap_or("no source given");
            format!("{said} ({from})")
        }
        Some(Torque::Owed { said, unit }) => {
            let why = if *said {
                "torque not known"
            } else {
                "no torque in the plan"
            };
            let unit = unit
                .as_deref()
                .map(|unit| format!(" {unit}"))
                .unwrap_or_default();
            format!("{why}: {BLANK}{unit}, from {BLANK}{BLANK}")
        }
        Some(Torque::Words { words, source }) => match source {
            Some(source) => format!("{words} ({source})"),
            None => words.clone(),
        },
        Some(Torque::None) | None => "no torque: leave it where it is right".into(),
    }
}

fn reading(reading: &Reading, several: bool) -> Line {
    let unit = reading
        .unit
        .as_deref()
        .map(|unit| format!(" {unit}"))
        .unwrap_or_default();
    let said = match &reading.expected {
        Some(expected) => format!("{BLANK}{unit}, expect {expected}"),
        None => format!("{BLANK}{unit}"),
    };
    plain("reading", named(&reading.name, several, &said))
}

/// What is about to be shut in, and whether the work at it is done.
pub fn chance(chance: &Chance) -> String {
    let list = |works: &[Work]| {
        let said: Vec<String> = works
            .iter()
            .map(|work| match &work.of {
                Some(of) => format!("{of} {} at step {}", work.what, work.number),
                None => format!("{} at step {}", work.what, work.number),
            })
            .collect();
        joined(&said)
    };
    match (chance.done.is_empty(), chance.missed.is_empty()) {
        (_, false) => format!(
            "{}: NOT DONE YET, to be {}",
            chance.thing,
            list(&chance.missed)
        ),
        (false, true) => format!("{}: {}", chance.thing, list(&chance.done)),
        (true, true) => format!("{}: no step works at it", chance.thing),
    }
}

/// The lines under the title.
pub fn heading(heading: &Heading) -> Vec<String> {
    let mut lines = Vec::new();
    lines.extend(heading.machine.iter().map(|machine| format!("{machine}.")));
    let start = if heading.assembled {
        "the assembled machine"
    } else {
        "its parts"
    };
    let mut work = format!("{} from {start}", counted(heading.steps, "step"));
    match heading.people {
        None => {}
        Some(1) => work += ", one person",
        Some(people) => work += &format!(", {people} people"),
    }
    let revision = heading
        .revision
        .as_ref()
        .map(|revision| format!(", revision {revision}"))
        .unwrap_or_default();
    lines.push(format!("{work}. Plan: {}{revision}.", heading.file));
    if !heading.reviewed.is_empty() {
        let by: Vec<String> = heading
            .reviewed
            .iter()
            .map(|(by, on)| format!("{by} on {on}"))
            .collect();
        lines.push(format!("Reviewed by {}.", joined(&by)));
    }
    if !heading.torques_owed.is_empty() {
        let owed: Vec<String> = heading
            .torques_owed
            .iter()
            .map(|owed| format!("{} (step {})", owed.thing, owed.number))
            .collect();
        lines.push(format!("Torques still to be found: {}.", joined(&owed)));
    }
    lines
}

/// What the head of the sheet says when the plan has errors.
pub fn unfit(heading: &Heading) -> Option<String> {
    let errors = heading.found.errors;
    (errors > 0).then(|| {
        format!(
            "NOT READY FOR THE BENCH: {} in this plan. The sheet shows it as written; \
             each is marked at its step.",
            counted(errors, "error")
        )
    })
}

/// A stage's heading.
pub fn section_title(title: &str, member: Option<&str>) -> String {
    match member {
        Some(member) => format!("{title}: {member}"),
        None => title.to_owned(),
    }
}

/// What must be out again, and where it goes in and comes out.
pub fn temporary(temporary: &Temporary) -> String {
    let steps = |numbers: &[usize]| {
        let said: Vec<String> = numbers.iter().map(|number| number.to_string()).collect();
        joined(&said)
    };
    let name = match temporary.count {
        Some(count) if count > 1 => format!("{count} x {}", temporary.name),
        _ => temporary.name.clone(),
    };
    let into = match temporary.into.as_slice() {
        [] => "in from the start".into(),
        numbers => format!("in at step {}", steps(numbers)),
    };
    let out = match temporary.out.as_slice() {
        [] => "NO STEP TAKES IT OUT".into(),
        numbers => format!("out at step {}", steps(numbers)),
    };
    format!("{name}: {into}, {out}")
}
