//! The checklist.

use super::VERSION;
use crate::checklist as inner;
use crate::findings::severity_word;
use serde::Serialize;

/// The sheets of all plans asked for.
#[derive(Serialize, Debug)]
pub struct Sheets {
    format: &'static str,
    version: u32,
    sheets: Vec<Sheet>,
}

/// The sheet of one plan.
#[derive(Serialize, Debug)]
pub struct Sheet {
    title: String,
    machine: Option<String>,
    revision: Option<String>,
    file: String,
    starts: &'static str,
    people: Option<u32>,
    reviewed: Vec<Review>,
    errors: usize,
    warnings: usize,
    torques_owed: Vec<Owed>,
    sections: Vec<Section>,
    temporaries: Vec<Temporary>,
    deference: String,
}

#[derive(Serialize, Debug)]
struct Review {
    by: String,
    on: String,
}

#[derive(Serialize, Debug)]
struct Owed {
    thing: String,
    number: usize,
}

#[derive(Serialize, Debug)]
struct Section {
    title: Option<String>,
    member: Option<String>,
    any_order: bool,
    steps: Vec<Step>,
}

#[derive(Serialize, Debug)]
struct Step {
    number: usize,
    name: String,
    targets: Vec<String>,
    known_as: Option<String>,
    line: usize,
    last_chances: Vec<Chance>,
    troubles: Vec<Trouble>,
    cautions: Vec<String>,
    waits: Vec<Wait>,
    only_after: Vec<String>,
    wanted: Vec<Wanted>,
    tools: Vec<String>,
    supplies: Vec<Supply>,
    new_items: Vec<NewItem>,
    old_items: Vec<OldItem>,
    parts: Vec<Part>,
    fastenings: Vec<Fastening>,
    readings: Vec<Reading>,
    leave_loose: Vec<Loose>,
    trial: bool,
    dry_fit: bool,
    for_good: bool,
    to_its_mark: bool,
    takes: Option<String>,
    disturbs: Vec<String>,
    reasons: Vec<String>,
    notes: Vec<String>,
    sign: bool,
}

#[derive(Serialize, Debug)]
struct Chance {
    thing: String,
    done: Vec<Work>,
    missed: Vec<Work>,
}

#[derive(Serialize, Debug)]
struct Work {
    what: &'static str,
    of: Option<String>,
    number: usize,
}

#[derive(Serialize, Debug)]
struct Trouble {
    severity: &'static str,
    rule: &'static str,
    says: String,
}

#[derive(Serialize, Debug)]
struct Wait {
    bound: &'static str,
    time: String,
    after: String,
    number: Option<usize>,
}

#[derive(Serialize, Debug)]
struct Wanted {
    condition: String,
    because: Option<String>,
}

#[derive(Serialize, Debug)]
struct Supply {
    name: String,
    amount: Option<String>,
    close_within: Option<String>,
    fixes_in: Option<String>,
    cures_in: Option<String>,
}

#[derive(Serialize, Debug)]
struct NewItem {
    name: String,
    count: Option<u32>,
    size: Option<String>,
}

#[derive(Serialize, Debug)]
struct OldItem {
    name: String,
    because: Option<String>,
}

#[derive(Serialize, Debug)]
struct Part {
    name: String,
    facing: Option<String>,
    side: Option<String>,
    matched_with: Vec<String>,
    mass: Option<String>,
    temporary: bool,
    count: Option<u32>,
    out_at: Option<usize>,
}

#[derive(Serialize, Debug)]
struct Fastening {
    name: String,
    stage: &'static str,
    group: Option<String>,
    drive: Option<String>,
    torque: Option<Torque>,
    pattern: Option<String>,
    lubricated: Option<String>,
    counterhold: Option<String>,
    locked_by: Vec<String>,
    locked_at: Option<usize>,
    left_hand: bool,
}

#[derive(Serialize, Debug)]
struct Torque {
    known: &'static str,
    passes: Vec<String>,
    source: Option<String>,
    unit: Option<String>,
}

#[derive(Serialize, Debug)]
struct Reading {
    name: String,
    expected: Option<String>,
    unit: Option<String>,
}

#[derive(Serialize, Debug)]
struct Loose {
    name: String,
    until: String,
    because: Option<String>,
    number: Option<usize>,
}

#[derive(Serialize, Debug)]
struct Temporary {
    name: String,
    count: Option<u32>,
    in_at: Vec<usize>,
    out_at: Vec<usize>,
}

impl Sheets {
    /// Of these plans.
    pub fn of(sheets: Vec<Sheet>) -> Sheets {
        Sheets {
            format: "fitwright-sheet",
            version: VERSION,
            sheets,
        }
    }
}

impl Sheet {
    /// Of one plan.
    pub fn of(checklist: &inner::Checklist) -> Sheet {
        let heading = &checklist.heading;
        Sheet {
            title: heading.title.clone(),
            machine: heading.machine.clone(),
            revision: heading.revision.clone(),
            file: heading.file.clone(),
            starts: if heading.assembled {
                "assembled"
            } else {
                "apart"
            },
            people: heading.people,
            reviewed: heading
                .reviewed
                .iter()
                .map(|(by, on)| Review {
                    by: by.clone(),
                    on: on.clone(),
                })
                .collect(),
            errors: heading.found.errors,
            warnings: heading.found.warnings,
            torques_owed: heading
                .torques_owed
                .iter()
                .map(|owed| Owed {
                    thing: owed.thing.clone(),
                    number: owed.number,
                })
                .collect(),
            sections: checklist.sections.iter().map(section).collect(),
            temporaries: checklist.temporaries.iter().map(temporary).collect(),
            deference: checklist.deference.to_owned(),
        }
    }
}

fn section(section: &inner::Section) -> Section {
    Section {
        title: section.title.clone(),
        member: section.member.clone(),
        any_order: section.any_order,
        steps: section.entries.iter().map(step).collect(),
    }
}

fn step(entry: &inner::Entry) -> Step {
    let does = |manner| entry.manner.contains(&manner);
    Step {
        number: entry.number,
        name: entry.name.clone(),
        targets: entry.targets.clone(),
        known_as: entry.known_as.clone(),
        line: entry.line,
        last_chances: entry.last_chances.iter().map(chance).collect(),
        troubles: entry
            .troubles
            .iter()
            .map(|trouble| Trouble {
                severity: severity_word(trouble.severity),
                rule: trouble.rule,
                says: trouble.says.clone(),
            })
            .collect(),
        cautions: entry.cautions.iter().map(|one| one.says.clone()).collect(),
        waits: entry.waits.iter().map(wait).collect(),
        only_after: entry.only_after.clone(),
        wanted: entry
            .wanted
            .iter()
            .map(|wanted| Wanted {
                condition: wanted.condition.clone(),
                because: wanted.because.clone(),
            })
            .collect(),
        tools: entry.tools.clone(),
        supplies: entry.supplies.iter().map(supply).collect(),
        new_items: entry.new_items.iter().map(new_item).collect(),
        old_items: entry
            .old_items
            .iter()
            .map(|old| OldItem {
                name: old.name.clone(),
                because: old.because.clone(),
            })
            .collect(),
        parts: entry.parts.iter().map(part).collect(),
        fastenings: entry.fastenings.iter().map(fastening).collect(),
        readings: entry
            .readings
            .iter()
            .map(|reading| Reading {
                name: reading.name.clone(),
                expected: reading.expected.clone(),
                unit: reading.unit.clone(),
            })
            .collect(),
        leave_loose: entry.leave_loose.iter().map(loose).collect(),
        trial: does(inner::Manner::Trial),
        dry_fit: does(inner::Manner::DryFit),
        for_good: does(inner::Manner::ForGood),
        to_its_mark: does(inner::Manner::ToItsMark),
        takes: entry.takes.clone(),
        disturbs: entry.disturbs.clone(),
        reasons: entry.reasons.clone(),
        notes: entry.notes.clone(),
        sign: entry.sign,
    }
}

fn chance(chance: &inner::Chance) -> Chance {
    let works = |works: &[inner::Work]| {
        let each = works.iter().map(|work| Work {
            what: work.what,
            of: work.of.clone(),
            number: work.number,
        });
        each.collect()
    };
    Chance {
        thing: chance.thing.clone(),
        done: works(&chance.done),
        missed: works(&chance.missed),
    }
}

fn wait(wait: &inner::Wait) -> Wait {
    Wait {
        bound: if wait.at_least { "at least" } else { "at most" },
        time: wait.time.clone(),
        after: wait.after.clone(),
        number: wait.number,
    }
}

fn supply(supply: &inner::SupplyUse) -> Supply {
    Supply {
        name: supply.name.clone(),
        amount: supply.amount.clone(),
        close_within: supply.close_within.clone(),
        fixes_in: supply.fixes_in.clone(),
        cures_in: supply.cures_in.clone(),
    }
}

fn new_item(new: &inner::NewItem) -> NewItem {
    NewItem {
        name: new.name.clone(),
        count: new.count,
        size: new.size.clone(),
    }
}

fn part(part: &inner::PartNote) -> Part {
    Part {
        name: part.name.clone(),
        facing: part.facing.clone(),
        side: part.side.clone(),
        matched_with: part.matched_with.clone(),
        mass: part.mass.clone(),
        temporary: part.temporary.is_some(),
        count: part.temporary,
        out_at: part.out_at,
    }
}

fn fastening(fastening: &inner::Fastening) -> Fastening {
    Fastening {
        name: fastening.name.clone(),
        stage: match fastening.stage {
            inner::Stage::Started => "started",
            inner::Stage::Snug => "snug",
            inner::Stage::Trial => "trial",
            inner::Stage::Final => "final",
            inner::Stage::In => "in",
            inner::Stage::Locked => "locked",
            inner::Stage::Unlocked => "unlocked",
            inner::Stage::Slack => "slack",
            inner::Stage::Out => "out",
        },
        group: fastening.group.clone(),
        drive: fastening.drive.clone(),
        torque: fastening.torque.as_ref().map(torque),
        pattern: fastening.pattern.clone(),
        lubricated: fastening.lubricated.clone(),
        counterhold: fastening.counterhold.as_ref().map(|by| match by {
            inner::Held::ByTool(by) | inner::Held::ByPart(by) => by.clone(),
        }),
        locked_by: fastening.locked_by.clone(),
        locked_at: fastening.lock_number,
        left_hand: fastening.left_hand,
    }
}

fn torque(torque: &inner::Torque) -> Torque {
    match torque {
        inner::Torque::Known { passes, source } => Torque {
            known: "yes",
            passes: passes.clone(),
            source: source.clone(),
            unit: None,
        },
        inner::Torque::Owed { said, unit } => Torque {
            known: if *said { "unknown" } else { "missing" },
            passes: Vec::new(),
            source: None,
            unit: unit.clone(),
        },
        inner::Torque::Words { words, source } => Torque {
            known: "words",
            passes: vec![words.clone()],
            source: source.clone(),
            unit: None,
        },
        inner::Torque::None => Torque {
            known: "none",
            passes: Vec::new(),
            source: None,
            unit: None,
        },
    }
}

fn loose(loose: &inner::Loose) -> Loose {
    Loose {
        name: loose.name.clone(),
        until: loose.until.clone(),
        because: loose.because.clone(),
        number: loose.number,
    }
}

fn temporary(temporary: &inner::Temporary) -> Temporary {
    Temporary {
        name: temporary.name.clone(),
        count: temporary.count,
        in_at: temporary.into.clone(),
        out_at: temporary.out.clone(),
    }
}
