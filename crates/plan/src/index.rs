//! Who has to do with whom, as rows: what goes onto a part, what holds it, what is on it.

use crate::model::{Body, Plan, Ref, Thing, ThingId};
pub use crate::rows::Rows;

/// For each thing, the things that name it in one way or another. All rows are in the order in
/// which the naming things are declared.
#[derive(Clone, Debug)]
pub struct Index {
    stands_on: Rows<ThingId>,
    held_by: Rows<ThingId>,
    points_on: Rows<ThingId>,
    items_at: Rows<ThingId>,
    closes: Rows<ThingId>,
    units_of: Rows<ThingId>,
}

impl Index {
    /// Makes the rows of a plan.
    pub fn of(plan: &Plan) -> Index {
        Index::of_things(&plan.things)
    }

    pub(crate) fn of_things(things: &[Thing]) -> Index {
        let rows = |named: &dyn for<'t> Fn(&'t Thing) -> [&'t [Ref]; 2]| {
            let mut pairs: Vec<(u32, ThingId)> = Vec::new();
            for (by, thing) in (0u32..).map(ThingId).zip(things) {
                let from = pairs.len();
                for refs in named(thing) {
                    pairs.extend(refs.iter().map(|named| (named.thing.0, by)));
                }
                // A thing that names another twice stands in its row once.
                let own = &mut pairs[from..];
                own.sort_unstable();
                let mut kept = from;
                for at in from..pairs.len() {
                    if at == from || pairs[at] != pairs[at - 1] {
                        pairs[kept] = pairs[at];
                        kept += 1;
                    }
                }
                pairs.truncate(kept);
            }
            Rows::of(things.len(), &pairs)
        };
        Index {
            stands_on: rows(&|thing| [&thing.onto, &thing.pressed_onto]),
            held_by: rows(&|thing| [thing.fasteners().map_or(&[], |f| &f.hold), &[]]),
            points_on: rows(&|thing| [thing.point().map_or(&[], |p| &p.on), &[]]),
            items_at: rows(&|thing| match &thing.body {
                Body::Item { at, .. } => [at, &[]],
                _ => [&[], &[]],
            }),
            closes: rows(&|thing| [thing.point().map_or(&[], |p| &p.closed_by), &[]]),
            units_of: rows(&|thing| [thing.members(), &[]]),
        }
    }

    /// What goes onto this thing, pressed or not.
    pub fn stands_on(&self, thing: ThingId) -> &[ThingId] {
        self.stands_on.row(thing.0)
    }

    /// The fasteners that hold it.
    pub fn held_by(&self, thing: ThingId) -> &[ThingId] {
        self.held_by.row(thing.0)
    }

    /// The points on it.
    pub fn points_on(&self, thing: ThingId) -> &[ThingId] {
        self.points_on.row(thing.0)
    }

    /// The items that belong to it.
    pub fn items_at(&self, thing: ThingId) -> &[ThingId] {
        self.items_at.row(thing.0)
    }

    /// The points that these fasteners (or this part) close.
    pub fn closes(&self, thing: ThingId) -> &[ThingId] {
        self.closes.row(thing.0)
    }

    /// The units that it is a direct member of; more than one only where a plan says so.
    pub fn units_of(&self, thing: ThingId) -> &[ThingId] {
        self.units_of.row(thing.0)
    }

    /// The unit that it is a direct member of: the first, where a plan names several.
    pub fn unit_of(&self, thing: ThingId) -> Option<ThingId> {
        self.units_of(thing).first().copied()
    }
}
