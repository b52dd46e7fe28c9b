//! Every name taken in before any is looked up: series first, then things.

use std::rc::Rc;

use syntax::tree::{Head, Kind, Name, Quoted, Says, Word};

use crate::desk::{Desk, Here, Seed};
use crate::details;
use crate::everything;
use crate::model::{Member, ProblemKind, Sort, Thing, ThingId};
use crate::names::{ItemAt, Named};
use crate::pattern::{self, Piece};
use crate::room;
use crate::series::{self, Bound, Series};
use crate::sorts;
use crate::spelling::small;
use crate::unknown::Wanted;

/// Takes in all series.
pub(crate) fn series(desk: &mut Desk<'_>, walk: &[ItemAt]) {
    for by in walk {
        let item = desk.item(*by);
        if let Head::Declaration {
            kind: Kind::Series,
            name: Some(name),
            ..
        } = &item.head
        {
            one_series(desk, *by, *name);
        }
    }
}

fn one_series(desk: &mut Desk<'_>, by: ItemAt, name: Name) {
    let item = desk.item(by);
    let place = desk.place(by, name.span);
    let text = &desk.texts[by.0 as usize];
    let written = small(text.tree.name(name)).into_owned();
    let mut read = series::Read::default();
    let mut said = false;
    let here = Here {
        by,
        bound: &[],
        step: None,
    };
    details::each(desk, &here, item, |desk, detail| match &detail.says {
        Says::Members(members) if !said => {
            said = true;
            let at = |word: Word| desk.place(by, word.span);
            read = series::read_members(&text.tree, members, &written, at, false);
            true
        }
        _ => false,
    });
    read.short |= desk.take_doubt();
    if !said {
        if !desk.damaged.contains(&by) {
            let wanted = vec!["its members, such as 1..6"];
            let kind = syntax::tree::ProblemKind::Unreadable { wanted, near: None };
            desk.problem(place, ProblemKind::Text(kind));
        }
        read.short = true;
    }
    for (word, kind) in read.problems {
        desk.problem(desk.place(by, word.span), kind);
    }
    let numbers = read.members.iter().cloned().zip(0u32..).collect();
    let series = Series {
        name: format!("{}{written}", text.scopes[0]),
        members: read.members,
        numbers,
        place,
        mentioned: false,
        uncertain: read.short,
    };
    if let Err(first) = desk.series.declare(series) {
        let name = written;
        desk.problem(place, ProblemKind::TwiceNamed { name, first });
    }
}

/// Things as declared, and where each comes from.
#[derive(Default)]
pub(crate) struct Declared {
    /// The things, with nothing but their names.
    pub things: Vec<Thing>,
    /// One for each.
    pub seeds: Vec<Seed>,
}

/// Takes in all things. Those whose line could only be half read come last, so that they never
/// take a name from one that can be read.
pub(crate) fn things(desk: &mut Desk<'_>, walk: &[ItemAt]) -> Declared {
    // A thing is large, and its table would be moved again and again as it grows.
    let declares = |by: &&ItemAt| matches!(desk.item(**by).head, Head::Declaration { .. });
    let count = walk.iter().filter(declares).count();
    desk.names.expect(count);
    let mut declared = Declared {
        things: Vec::with_capacity(count),
        seeds: Vec::with_capacity(count),
    };
    for by in walk {
        if let Head::Declaration {
            kind,
            name: Some(name),
            label,
            ..
        } = &desk.item(*by).head
            && let Some(sort) = sorts::of_kind(*kind)
        {
            let head = ThingHead {
                by: *by,
                sort,
                name: *name,
                label: *label,
                readable: true,
            };
            head.declare(desk, &mut declared);
        }
    }
    for by in walk {
        let item = desk.item(*by);
        if let Head::Unreadable {
            kind,
            verb: None,
            name: Some(name),
            ..
        } = &item.head
        {
            let sort = match kind {
                Some(kind) => sorts::of_kind(*kind),
                None => Some(sorts::guess(item)),
            };
            let Some(sort) = sort else { continue };
            let head = ThingHead {
                by: *by,
                sort,
                name: *name,
                label: None,
                readable: false,
            };
            let from = declared.things.len();
            head.declare(desk, &mut declared);
            if kind.is_none() {
                let ids = from as u32..declared.things.len() as u32;
                desk.guessed.extend(ids.map(ThingId));
            }
        }
    }
    declared
}

struct ThingHead {
    by: ItemAt,
    sort: Sort,
    name: Name,
    label: Option<Quoted>,
    readable: bool,
}

impl ThingHead {
    fn declare(&self, desk: &mut Desk<'_>, declared: &mut Declared) {
        let (by, texts) = (self.by, desk.texts);
        let scope = &texts[by.0 as usize].scopes[0];
        let written = desk.at(by, self.name.span);
        if !pattern::is_pattern(written) {
            let full = format!("{scope}{}", small(written));
            self.one(desk, declared, full, None, Box::default());
            return;
        }
        let pieces = pattern::pieces(written);
        let place = desk.place(by, self.name.span);
        if pieces.contains(&Piece::Star) {
            if self.readable {
                let wanted = vec!["a name without a star"];
                let kind = syntax::tree::ProblemKind::Unreadable { wanted, near: None };
                desk.problem(place, ProblemKind::Text(kind));
            }
            desk.hazy.add(&small(written));
            return;
        }
        let holes = match desk.holes(by, &pieces) {
            Ok(holes) => holes,
            Err(series) => {
                if self.readable {
                    desk.missing(place, series, Wanted::SERIES);
                }
                // It is kept as one thing under the name as written, for those who write it alike.
                desk.hazy.add(&small(written));
                let full = format!("{scope}{}", small(written));
                let from = declared.things.len();
                self.one(desk, declared, full, None, Box::default());
                declared.things[from..]
                    .iter_mut()
                    .for_each(|thing| thing.uncertain = true);
                return;
            }
        };
        if holes.iter().any(|hole| desk.series.one(*hole).uncertain) {
            desk.hazy.add(&small(written));
        }
        let count = desk.series.count(&holes, &[]);
        let further = count.saturating_sub(1);
        let span = desk.item(by).span;
        let weight = room::weight(span.end - span.start);
        let room = desk.room_for_copies(further, weight, written, place);
        if room < further {
            desk.hazy.add(&small(written));
        }
        let ways: Vec<Vec<Bound>> = desk
            .series
            .ways(&holes, &[])
            .take(room as usize + 1)
            .collect();
        let stem: Rc<str> = format!("{scope}{}", small(written)).into();
        for way in ways {
            let full = format!("{scope}{}", desk.series.filled(&pieces, &holes, &[&way]));
            self.one(desk, declared, full, Some(&stem), way.into());
        }
    }

    fn one(
        &self,
        desk: &mut Desk<'_>,
        declared: &mut Declared,
        full: String,
        stem: Option<&Rc<str>>,
        bound: Box<[Bound]>,
    ) {
        let id = ThingId(declared.things.len() as u32);
        let place = desk.place(self.by, self.name.span);
        let what = Named::Thing(id, self.sort);
        if let Err(first) = desk.names.declare(&full, stem, what, place, self.by) {
            let first = desk.names.entry(first).place;
            if self.readable {
                let name = full;
                desk.problem(place, ProblemKind::TwiceNamed { name, first });
            }
            return;
        }
        if full == everything::WORD && self.readable {
            desk.problem(place, ProblemKind::Everything { state: None });
        }
        let mut thing = Thing::new(self.sort, full, place);
        thing.item = desk.place(self.by, desk.item(self.by).span);
        thing.uncertain = desk.damaged.contains(&self.by);
        thing.member = stem.map(|stem| Member {
            stem: stem.to_string(),
            which: desk.series.which(&bound),
        });
        // The members of a series are written with one label; without the member behind it
        // nobody could tell one fork leg from the other.
        let label = self.label.map(|label| desk.text(self.by, label).text);
        thing.label = label.map(|label| match &thing.member {
            Some(member) => format!("{label} ({})", member.which),
            None => label,
        });
        declared.things.push(thing);
        declared.seeds.push(Seed { by: self.by, bound });
    }
}

/// Where a thing's details are read.
pub(crate) fn here(seed: &Seed) -> Here<'_> {
    Here {
        by: seed.by,
        bound: &seed.bound,
        step: None,
    }
}
