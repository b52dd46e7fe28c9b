//! The kit.

use super::VERSION;
use crate::kit as inner;
use serde::Serialize;

/// The kits of all plans asked for.
#[derive(Serialize, Debug)]
pub struct Kits {
    format: &'static str,
    version: u32,
    kits: Vec<Kit>,
}

#[derive(Serialize, Debug)]
struct Kit {
    title: String,
    assembled: bool,
    parts: Vec<Part>,
    used_up: Vec<UsedUp>,
    fasteners: Vec<Fastener>,
    supplies: Vec<Supply>,
    tools: Vec<Tool>,
    temporary: Vec<Part>,
    missing: Vec<String>,
}

#[derive(Serialize, Debug)]
struct Part {
    name: String,
    count: Option<u32>,
    mass: Option<String>,
    material: Option<String>,
    matched_with: Vec<String>,
}

#[derive(Serialize, Debug)]
struct UsedUp {
    name: String,
    needed: u32,
    times: u32,
    each: u32,
    size: Option<String>,
    at: Vec<String>,
    single_use: bool,
}

#[derive(Serialize, Debug)]
struct Fastener {
    name: String,
    count: Option<u32>,
    size: Option<String>,
}

#[derive(Serialize, Debug)]
struct Supply {
    name: String,
    kind: Option<String>,
    amounts: Vec<String>,
    uses: usize,
    notes: Vec<String>,
    have: bool,
}

#[derive(Serialize, Debug)]
struct Tool {
    name: String,
    kind: Option<String>,
    notes: Vec<String>,
    steps: Vec<usize>,
    declared: bool,
    have: bool,
}

impl Kits {
    /// Of these kits.
    pub fn of(kits: &[inner::Kit]) -> Kits {
        Kits {
            format: "fitwright-kit",
            version: VERSION,
            kits: kits.iter().map(kit).collect(),
        }
    }
}

fn kit(kit: &inner::Kit) -> Kit {
    let fastener = |one: &inner::Fastener| Fastener {
        name: one.name.clone(),
        count: one.count,
        size: one.size.clone(),
    };
    let used_up = |one: &inner::UsedUp| UsedUp {
        name: one.name.clone(),
        needed: one.needed,
        times: one.times,
        each: one.each,
        size: one.size.clone(),
        at: one.at.clone(),
        single_use: one.single_use,
    };
    let supply = |one: &inner::Supply| Supply {
        name: one.name.clone(),
        kind: one.kind.clone(),
        amounts: one.amounts.clone(),
        uses: one.uses,
        notes: one.notes.clone(),
        have: one.have,
    };
    let tool = |one: &inner::Tool| Tool {
        name: one.name.clone(),
        kind: one.kind.clone(),
        notes: one.notes.clone(),
        steps: one.steps.clone(),
        declared: one.declared,
        have: one.have,
    };
    Kit {
        title: kit.title.clone(),
        assembled: kit.assembled,
        parts: kit.parts.iter().map(part).collect(),
        used_up: kit.used_up.iter().map(used_up).collect(),
        fasteners: kit.fasteners.iter().map(fastener).collect(),
        supplies: kit.supplies.iter().map(supply).collect(),
        tools: kit.tools.iter().map(tool).collect(),
        temporary: kit.temporary.iter().map(part).collect(),
        missing: kit.missing.clone(),
    }
}

fn part(part: &inner::Part) -> Part {
    Part {
        name: part.name.clone(),
        count: part.count,
        mass: part.mass.clone(),
        material: part.material.clone(),
        matched_with: part.matched_with.clone(),
    }
}
