//! The conditions that a declaration sets: what a thing needs, how it is reached, what must
//! always hold of it.

use std::collections::HashMap;

use syntax::tree::{Detail, Says, StateRef, When};

use crate::access;
use crate::conditions::{Facts, Named};
use crate::declare;
use crate::desk::{Desk, Here, Seed};
use crate::details;
use crate::model::{Body, Condition, Must, State, Thing, ThingId, WayIn};

/// The conditions of one declaration.
#[derive(Default)]
pub(crate) struct Rules {
    /// What must hold when the thing is fitted, or turned hard.
    pub needs: Vec<Condition>,
    /// The ways to reach it.
    pub ways: Vec<WayIn>,
    /// Until when it stays loose.
    pub floats_until: Vec<Condition>,
    /// Standing rules, each with the thing it is about: a part that must be tight is a matter
    /// of the fasteners that hold it.
    pub must: Vec<(ThingId, Must)>,
    /// Whether something in it could not be resolved.
    pub uncertain: bool,
}

/// Reads the conditions of a declaration.
pub(crate) fn read(desk: &mut Desk<'_>, facts: &Facts, seed: &Seed, thing: ThingId) -> Rules {
    let here = declare::here(seed);
    let mut rules = Rules::default();
    let item = desk.item(seed.by);
    details::again(desk, item, |desk, detail| {
        let condition = desk.place(here.by, detail.span);
        match &detail.says {
            Says::Needs(needs) => {
                let needs = desk.needs(&here, facts, needs, condition, detail.because);
                rules.needs.push(needs);
            }
            Says::Reach { .. } => rules
                .ways
                .extend(access::way_in(desk, &here, facts, detail)),
            Says::FloatsUntil(until) => {
                let until = desk.condition(&here, facts, until, detail.because);
                rules.floats_until.push(until);
            }
            Says::MustBe { states, .. } => {
                let states = wanted(desk, &here, facts, thing, states);
                must(desk, &here, facts, detail, states, &mut rules);
            }
            _ => {}
        }
    });
    rules.uncertain = desk.take_doubt();
    rules
}

/// The states that a standing rule wants, by the thing that must be in them.
fn wanted(
    desk: &mut Desk<'_>,
    here: &Here,
    facts: &Facts,
    thing: ThingId,
    states: &[StateRef],
) -> Vec<(ThingId, Vec<State>)> {
    let mut wanted: Vec<(ThingId, Vec<State>)> = Vec::new();
    let mut rows: HashMap<ThingId, usize> = HashMap::new();
    if desk.guessed.contains(&thing) {
        return wanted;
    }
    for state in states {
        let about = Named {
            name: &facts.things[thing.0 as usize].name,
            place: desk.place(here.by, state.span),
        };
        for (thing, state) in desk.states(here, facts, about, thing, state) {
            let row = *rows.entry(thing).or_insert(wanted.len());
            match wanted.get_mut(row) {
                Some((_, states)) => states.push(state),
                None => wanted.push((thing, vec![state])),
            }
        }
    }
    wanted
}

fn must(
    desk: &mut Desk<'_>,
    here: &Here,
    facts: &Facts,
    detail: &Detail,
    states: Vec<(ThingId, Vec<State>)>,
    rules: &mut Rules,
) {
    let Says::MustBe {
        when, condition, ..
    } = &detail.says
    else {
        return;
    };
    let condition = desk.condition(here, facts, condition, detail.because);
    let place = desk.place(here.by, detail.span);
    let count = states.len() as u64 * (1 + condition.clauses.len()) as u64;
    let name = desk.at(here.by, detail.keyword);
    if states.len() > 1 && !desk.room_for_mentions(count, name, place) {
        return;
    }
    for (thing, states) in states {
        let must = Must {
            states,
            before: *when == When::Before,
            condition: condition.clone(),
            place,
        };
        rules.must.push((thing, must));
    }
}

/// Gives every thing its conditions.
pub(crate) fn put(said: Vec<Rules>, things: &mut [Thing]) {
    for (id, rules) in said.into_iter().enumerate() {
        let thing = &mut things[id];
        thing.needs = rules.needs;
        thing.ways = rules.ways;
        thing.uncertain |= rules.uncertain;
        if let Body::Fasteners(group) = &mut thing.body {
            group.floats_until = rules.floats_until;
        }
        for (about, must) in rules.must {
            things[about.0 as usize].must.push(must);
        }
    }
}
