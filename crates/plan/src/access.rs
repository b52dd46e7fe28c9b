//! What is in the way of what: `covers` and `behind`, spread to what is on or in the covered.

use std::collections::HashSet;

use syntax::tree::{Detail, Says};

use crate::conditions::Facts;
use crate::declare;
use crate::desk::{Desk, Here, Seed};
use crate::details;
use crate::index::Index;
use crate::model::{Blocker, Place, Ref, Sort, Thing, ThingId, ToolUse, WayIn};
use crate::sorts;
use crate::spelling::small;

/// One `covers` or `behind`, for one pair of things.
struct Cover {
    by: ThingId,
    over: ThingId,
    tool: Option<ToolUse>,
    side: Option<String>,
    place: Place,
    because: Option<String>,
}

/// Reads all `covers` and `behind` and tells every thing what is in its way.
pub(crate) fn read(desk: &mut Desk<'_>, seeds: &[Seed], things: &mut [Thing], index: &Index) {
    let mut covers = Vec::new();
    for (id, seed) in (0u32..).zip(seeds) {
        let here = declare::here(seed);
        let sort = things[id as usize].sort;
        let item = desk.item(seed.by);
        details::again(desk, item, |desk, detail| {
            one(desk, &here, detail, (ThingId(id), sort), &mut covers);
        });
        things[id as usize].uncertain |= desk.take_doubt();
    }
    for cover in covers {
        spread(desk, &cover, things, index);
    }
}

fn one(
    desk: &mut Desk<'_>,
    here: &Here,
    detail: &Detail,
    (thing, sort): (ThingId, Sort),
    covers: &mut Vec<Cover>,
) {
    let body = sorts::BODIES.contains(&sort);
    let (names, to, from, covering) = match &detail.says {
        Says::Covers { names, to, from } if body => (names, to, from, true),
        Says::Behind { names, to, from } if sorts::COVERABLE.contains(&sort) => {
            (names, to, from, false)
        }
        _ => return,
    };
    let others = match covering {
        true => desk.refs(here, names, sorts::COVERABLE),
        false => desk.refs(here, names, sorts::BODIES),
    };
    let tools = to.map(|tool| desk.tool_uses(here, &[tool], None));
    // For a tool that is not known the cover is left out rather than made to bar every tool.
    let tools: Vec<Option<ToolUse>> = match tools {
        Some(tools) => tools.into_iter().map(Some).collect(),
        None => vec![None],
    };
    let because = desk.because(here.by, detail.because);
    let weight = weight(because.as_ref());
    let count = (others.len() * tools.len()) as u64 * weight;
    let place = desk.place(here.by, detail.span);
    if others.len() > 1 && !desk.room_for_mentions(count, desk.at(here.by, detail.span), place) {
        return;
    }
    for other in others {
        for tool in &tools {
            let (by, over) = match covering {
                true => (thing, other.thing),
                false => (other.thing, thing),
            };
            covers.push(Cover {
                by,
                over,
                tool: tool.clone(),
                side: from.map(|side| small(desk.at(here.by, side.span)).into_owned()),
                place,
                because: because.clone(),
            });
        }
    }
}

/// For how many mentions one with such a reason counts: the reason is kept with each.
fn weight(because: Option<&String>) -> u64 {
    1 + because.map_or(0, |because| because.len() as u64 / 64)
}

/// Puts a cover on the thing it names, on the points there, and on what a covered unit holds.
fn spread(desk: &mut Desk<'_>, cover: &Cover, things: &mut [Thing], index: &Index) {
    let by_units = units_around(index, cover.by);
    let over_units = units_around(index, cover.over);
    // Nothing is in the way of itself, nor of the unit that it is a member of.
    if cover.by == cover.over || by_units.contains(&cover.over) || over_units.contains(&cover.by) {
        return;
    }
    put(cover, cover.over, None, things);
    if desk.no_room_for_mentions() {
        return;
    }
    let mut seen = HashSet::from([cover.over]);
    let mut inside = vec![cover.over];
    while let Some(inner) = inside.pop() {
        if !matches!(things[inner.0 as usize].sort, Sort::Part | Sort::Unit) {
            continue;
        }
        let points = index.points_on(inner);
        let members: Vec<ThingId> = things[inner.0 as usize]
            .members()
            .iter()
            .map(|member| member.thing)
            .collect();
        let ons = points
            .iter()
            .filter_map(|point| things[point.0 as usize].point());
        let count = members.len() + ons.map(|point| 1 + point.on.len()).sum::<usize>();
        let count = count as u64 * weight(cover.because.as_ref());
        if count > 0 {
            let name = things[inner.0 as usize].name.clone();
            if !desk.room_for_mentions(count, &name, cover.place) {
                return;
            }
        }
        for point in points {
            let own = |on: &Ref| {
                on.thing == cover.by || units_around(index, on.thing).contains(&cover.by)
            };
            let on_itself = things[point.0 as usize]
                .point()
                .is_some_and(|p| p.on.iter().any(own));
            if !on_itself && seen.insert(*point) {
                put(cover, *point, Some(cover.over), things);
            }
        }
        for member in members {
            if member != cover.by && seen.insert(member) {
                put(cover, member, Some(cover.over), things);
                inside.push(member);
            }
        }
    }
}

fn put(cover: &Cover, over: ThingId, through: Option<ThingId>, things: &mut [Thing]) {
    things[over.0 as usize].blockers.push(Blocker {
        by: cover.by,
        tool: cover.tool.clone(),
        side: cover.side.clone(),
        place: cover.place,
        because: cover.because.clone(),
        through,
    });
}

/// The most units that are looked for around a thing; no machine nests so deep.
const MOST_UNITS_AROUND: usize = 200;

/// The units that a thing is in, directly or within other units.
fn units_around(index: &Index, thing: ThingId) -> Vec<ThingId> {
    let mut around: Vec<ThingId> = index.units_of(thing).to_vec();
    around.truncate(MOST_UNITS_AROUND);
    let mut at = 0;
    while let Some(unit) = around
        .get(at)
        .copied()
        .filter(|_| around.len() < MOST_UNITS_AROUND)
    {
        for outer in index.units_of(unit) {
            if !around.contains(outer) {
                around.push(*outer);
            }
        }
        at += 1;
    }
    around
}

/// A line that says how to reach a thing.
pub(crate) fn way_in(
    desk: &mut Desk<'_>,
    here: &Here,
    facts: &Facts,
    detail: &Detail,
) -> Option<WayIn> {
    let Says::Reach {
        from,
        with,
        clear_of,
        needs,
    } = &detail.says
    else {
        return None;
    };
    let place = desk.place(here.by, detail.span);
    Some(WayIn {
        side: from.map(|side| small(desk.at(here.by, side.span)).into_owned()),
        tools: desk.tool_uses(here, with, None),
        clear_of: desk.refs(here, clear_of, sorts::BODIES),
        needs: desk.needs(here, facts, needs, place, detail.because),
        place,
    })
}
