//! What the details of a declaration say of the thing, other than conditions and what is in
//! the way: those wait until it is known what holds and covers what.

use syntax::tree::{Detail, Says};

use crate::amounts;
use crate::desk::{Desk, Here, Seed};
use crate::model::{Body, Place, Ref, Sort, Thing};
use crate::spelling;
use crate::{bodies, declare, details, fasteners, sorts};

impl Thing {
    /// A thing of which nothing but its name is known.
    pub(crate) fn new(sort: Sort, name: String, place: Place) -> Thing {
        Thing {
            sort,
            name,
            label: None,
            place,
            item: place,
            member: None,
            uncertain: false,
            given: None,
            temporary: None,
            single_use: None,
            count: None,
            onto: Vec::new(),
            pressed_onto: Vec::new(),
            needs: Vec::new(),
            ways: Vec::new(),
            blockers: Vec::new(),
            must: Vec::new(),
            hazards: Vec::new(),
            takes: None,
            mass: None,
            material: None,
            side: None,
            facing: None,
            matched_with: Vec::new(),
            body: match sort {
                Sort::Part => Body::Part,
                Sort::Unit => Body::Unit { of: Vec::new() },
                Sort::Item => Body::Item {
                    at: Vec::new(),
                    size: None,
                },
                Sort::Fasteners => Body::Fasteners(Box::default()),
                Sort::Point => Body::Point(Box::default()),
                Sort::Position => Body::Position { places: Vec::new() },
                Sort::Tool => Body::Tool(Box::default()),
                Sort::Supply => Body::Supply(Box::default()),
            },
        }
    }
}

/// Reads what a thing is, and what it goes with.
pub(crate) fn read(desk: &mut Desk<'_>, seed: &Seed, thing: &mut Thing) {
    let here = declare::here(seed);
    let item = desk.item(seed.by);
    let sort = thing.sort;
    details::each(desk, &here, item, |desk, detail| {
        let known = match sort {
            Sort::Fasteners => fasteners::read(desk, &here, detail, thing),
            _ => bodies::read(desk, &here, detail, thing),
        };
        known || common(desk, &here, detail, thing)
    });
    if let Body::Fasteners(group) = &mut thing.body
        && group.count.is_none()
    {
        group.count = thing.count;
    }
    thing.uncertain |= desk.take_doubt();
}

/// What may be said of things of several sorts.
fn common(desk: &mut Desk<'_>, here: &Here, detail: &Detail, thing: &mut Thing) -> bool {
    let sort = thing.sort;
    let body = sorts::BODIES.contains(&sort);
    let whole = desk.place(here.by, detail.span);
    match &detail.says {
        // Read where conditions and ways are, see there.
        Says::MustBe { .. } => true,
        Says::Needs(_) | Says::Reach { .. } | Says::Behind { .. } => {
            sorts::COVERABLE.contains(&sort)
        }
        Says::Covers { .. } => body,
        Says::Hazard(words) => {
            let words = words.iter().map(|word| desk.at(here.by, word.span));
            let words = words.map(|word| spelling::one(word).into_owned());
            thing.hazards.extend(words);
            true
        }
        Says::Count(word) => {
            thing.count = desk.count(here, *word);
            true
        }
        Says::Given if body || sort == Sort::Point => {
            thing.given = Some(whole);
            true
        }
        Says::Takes(time) if sorts::WORKED_AT.contains(&sort) => {
            thing.takes = Some(desk.amount(here, *time, amounts::TIME));
            true
        }
        Says::Side(word) if sorts::WORKED_AT.contains(&sort) => {
            let side = spelling::small(desk.at(here.by, word.span)).into_owned();
            thing.side = Some((side, desk.place(here.by, word.span)));
            true
        }
        Says::Facing(words) if body => {
            thing.facing = Some(desk.text(here.by, *words));
            true
        }
        Says::Temporary if body => {
            thing.temporary = Some(whole);
            true
        }
        Says::SingleUse if body => {
            thing.single_use = Some(whole);
            true
        }
        Says::Material(word) if body => {
            let material = spelling::one(desk.at(here.by, word.span));
            thing.material = Some(material.into_owned());
            true
        }
        Says::Mass(mass) if body => {
            thing.mass = Some(desk.amount(here, *mass, amounts::MASS));
            true
        }
        Says::MatchedWith(names) if body => {
            let refs = desk.refs(here, names, sorts::BODIES);
            thing.matched_with.extend(refs);
            true
        }
        Says::Onto { names, pressed } if matches!(sort, Sort::Part | Sort::Unit) => {
            // `onto shaft travels with shaft` says one thing, and the second says it more closely.
            let refs = desk.refs(here, names, sorts::BODIES);
            let same = |a: &Ref, b: &Ref| a.thing == b.thing;
            if *pressed {
                thing
                    .onto
                    .retain(|on| !refs.iter().any(|new| same(on, new)));
                thing.pressed_onto.extend(refs);
            } else {
                let pressed = &thing.pressed_onto;
                let new = refs.into_iter();
                let new = new.filter(|new| !pressed.iter().any(|on| same(on, new)));
                thing.onto.extend(new);
            }
            true
        }
        Says::On(names) if matches!(sort, Sort::Part | Sort::Unit) => {
            let refs = desk.refs(here, names, sorts::BODIES);
            thing.onto.extend(refs);
            true
        }
        _ => false,
    }
}
