//! What only units, items, points, positions, tools and supplies say of themselves.

use std::collections::HashMap;

use syntax::tree::{Detail, Name, NameOrWords, Says};

use crate::amounts;
use crate::desk::{Desk, Here};
use crate::model::{Amount, Body, Place, Point, Supply, Thing, ThingId, Tool};
use crate::names::Named;
use crate::near;
use crate::pattern;
use crate::sorts;
use crate::spelling;
use crate::tools;
use crate::unknown::Wanted;
use crate::{kinds, model};

/// Reads a detail that only one sort of thing has; false when it is none of those.
pub(crate) fn read(desk: &mut Desk<'_>, here: &Here, detail: &Detail, thing: &mut Thing) -> bool {
    match &mut thing.body {
        Body::Unit { of } => match &detail.says {
            Says::Of(names) => of.extend(desk.refs(here, names, sorts::BODIES)),
            _ => return false,
        },
        Body::Item { at, size } => match &detail.says {
            Says::At(names) | Says::On(names) | Says::Onto { names, .. } => {
                at.extend(desk.refs(here, names, sorts::JOINTS));
            }
            Says::Size(span) => {
                *size = Some(tools::unquoted(desk.at(here.by, *span)).to_owned());
            }
            _ => return false,
        },
        Body::Point(point) => return of_point(desk, here, detail, point),
        Body::Position { places } => match &detail.says {
            Says::Of(names) => {
                for name in names {
                    place_names(desk, here, *name, places);
                }
            }
            _ => return false,
        },
        Body::Tool(tool) => return of_tool(desk, here, detail, tool),
        Body::Supply(supply) => return of_supply(desk, here, detail, supply),
        Body::Part | Body::Fasteners(_) => return false,
    }
    true
}

fn of_point(desk: &mut Desk<'_>, here: &Here, detail: &Detail, point: &mut Point) -> bool {
    match &detail.says {
        Says::On(names) | Says::Onto { names, .. } | Says::At(names) => {
            point.on.extend(desk.refs(here, names, sorts::BODIES));
        }
        Says::ClosedBy(names) => point
            .closed_by
            .extend(desk.refs(here, names, sorts::BODIES)),
        Says::Holds { fluid, amount } => {
            let (supply, words) = fluid_of(desk, here, fluid);
            let amount = amount.map(|amount| desk.amount(here, amount, amounts::FILLING));
            point.holds = Some((supply, words, amount));
        }
        Says::Hold(names) => {
            // Without an amount the tree cannot tell `holds coolant` from `hold cover`.
            let Some(name) = names.first() else {
                return false;
            };
            let (supply, words) = fluid_of(desk, here, &NameOrWords::Name(*name));
            point.holds = Some((supply, words, None));
        }
        Says::ServiceEvery(every) => {
            let place = desk.place(here.by, detail.span);
            point.service = Some((desk.amount(here, *every, amounts::INTERVAL), place));
        }
        _ => return false,
    }
    true
}

/// A fluid, lubricant or the like: a declared supply, or a word or words that say what it is. A
/// word that is a slip for a declared supply is noted.
pub(crate) fn fluid_of(
    desk: &mut Desk<'_>,
    here: &Here,
    fluid: &NameOrWords,
) -> (Option<ThingId>, String) {
    let name = match fluid {
        NameOrWords::Words(quoted) => return (None, desk.text(here.by, *quoted).text),
        NameOrWords::Name(name) => *name,
    };
    let written = desk.at(here.by, name.span);
    let words = spelling::one(written).into_owned();
    let looked = desk.known(here, name);
    if looked.complete {
        let mut refs = Vec::new();
        desk.keep(here, name, &looked.found, sorts::SUPPLY, &mut refs);
        return (refs.first().map(|found| found.thing), words);
    }
    if let Some(allowed) = kinds::slips_allowed(&words) {
        let supplies = desk
            .names
            .entries()
            .iter()
            .filter(|entry| matches!(entry.what, Named::Thing(_, model::Sort::Supply)));
        let meant = near::nearest(&words, supplies.map(|e| &*e.name), allowed);
        if let Some(meant) = meant.map(str::to_owned) {
            desk.slip(desk.place(here.by, name.span), written, meant);
        }
    } else if pattern::is_pattern(written) {
        let place = desk.place(here.by, name.span);
        desk.missing(place, written, Wanted::things(sorts::SUPPLY));
    }
    (None, words)
}

/// The places that a name in a position's `of` gives, holes written out.
fn place_names(desk: &mut Desk<'_>, here: &Here, name: Name, places: &mut Vec<(String, Place)>) {
    let place = desk.place(here.by, name.span);
    let names = desk.written_out(here, name);
    places.extend(names.into_iter().map(|name| (name, place)));
}

fn of_tool(desk: &mut Desk<'_>, here: &Here, detail: &Detail, tool: &mut Tool) -> bool {
    let amount = match &detail.says {
        // Read before all else, since others ask for tools by name.
        Says::Kind(_) | Says::Size(_) => return true,
        Says::Have | Says::Given => {
            tool.have = true;
            return true;
        }
        Says::Range(range) => (&mut tool.range, *range, amounts::TORQUE),
        Says::FullScale(scale) => (&mut tool.full_scale, *scale, amounts::TORQUE),
        Says::Length(length) => (&mut tool.length, *length, amounts::LENGTH),
        Says::Accuracy(share) => (&mut tool.accuracy, *share, amounts::SHARE),
        _ => return false,
    };
    put(desk, here, amount);
    true
}

fn of_supply(desk: &mut Desk<'_>, here: &Here, detail: &Detail, supply: &mut Supply) -> bool {
    let words = |words: &[syntax::tree::Word], desk: &Desk<'_>| -> Vec<String> {
        let words = words.iter().map(|word| desk.at(here.by, word.span));
        words.map(|word| spelling::one(word).into_owned()).collect()
    };
    let amount = match &detail.says {
        Says::Kind(kind) => {
            supply.kind = words(kind, desk);
            return true;
        }
        Says::NotOn(materials) => {
            supply.not_on.extend(words(materials, desk));
            return true;
        }
        Says::Have | Says::Given => {
            supply.have = true;
            return true;
        }
        Says::CloseWithin(time) => (&mut supply.close_within, *time, amounts::TIME),
        Says::FixesIn(time) => (&mut supply.fixes_in, *time, amounts::TIME),
        Says::CuresIn(time) => (&mut supply.cures_in, *time, amounts::TIME),
        Says::GoodTo(limit) => (&mut supply.good_to, *limit, amounts::TEMPERATURE),
        _ => return false,
    };
    put(desk, here, amount);
    true
}

type Figure<'a> = (
    &'a mut Option<Amount>,
    syntax::tree::Quantity,
    &'static [workshop::quantity::Dimension],
);

fn put(desk: &mut Desk<'_>, here: &Here, (into, quantity, wanted): Figure<'_>) {
    *into = Some(desk.amount(here, quantity, wanted));
}

/// The places of every position by name, for those who ask whether it stands at one.
#[derive(Default)]
pub(crate) struct Places(HashMap<ThingId, HashMap<String, u32>>);

impl Places {
    /// Those of all things.
    pub fn of(things: &[Thing]) -> Places {
        let mut all = HashMap::new();
        for (id, thing) in (0u32..).zip(things) {
            if let Body::Position { places } = &thing.body {
                let mut names = HashMap::new();
                for (number, (name, _)) in (0u32..).zip(places) {
                    names.entry(name.clone()).or_insert(number);
                }
                all.insert(ThingId(id), names);
            }
        }
        Places(all)
    }

    /// Which place of a position has this name.
    pub fn get(&self, position: ThingId, name: &str) -> Option<u32> {
        self.0.get(&position)?.get(name).copied()
    }

    /// The place nearest to a name that is none.
    pub fn nearest(&self, position: ThingId, name: &str) -> Option<String> {
        let names = self.0.get(&position)?.keys().map(String::as_str);
        near::nearest(name, names, near::slips_for(name)).map(str::to_owned)
    }
}
