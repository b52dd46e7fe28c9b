//! What a name stands for, seen from where it stands.

use syntax::tree::Name;

use crate::desk::{Desk, Here};
use crate::everything;
use crate::model::{Place, ProblemKind, Ref, Sort};
use crate::names::{ItemAt, Named};
use crate::pattern::{self, Piece};
use crate::spelling::small;
use crate::unknown::{Unknown, Wanted};

/// The entries that a name stands for.
pub(crate) enum Found {
    /// A plain name.
    One([u32; 1]),
    /// A name with holes or a star.
    Several {
        /// In the order declared or written out.
        all: Vec<u32>,
        /// Whether it was a star, which may take in things that were not meant.
        star: bool,
    },
}

impl Found {
    fn none() -> Found {
        Found::Several {
            all: Vec::new(),
            star: false,
        }
    }

    /// The entries.
    pub fn entries(&self) -> &[u32] {
        match self {
            Found::One(one) => one,
            Found::Several { all, .. } => all,
        }
    }

    /// Whether things of a sort that cannot stand here are simply not meant.
    pub fn star(&self) -> bool {
        matches!(self, Found::Several { star: true, .. })
    }
}

/// What looking a name up gave.
pub(crate) struct LookedUp<'t> {
    /// What was found.
    pub found: Found,
    /// Whether all of it was.
    pub complete: bool,
    /// A series in its holes that is not known.
    pub no_series: Option<&'t str>,
}

impl LookedUp<'_> {
    fn all(found: Found) -> Self {
        LookedUp {
            found,
            complete: true,
            no_series: None,
        }
    }
}

impl<'t> LookedUp<'t> {
    fn nothing(no_series: Option<&'t str>) -> Self {
        LookedUp {
            found: Found::none(),
            complete: false,
            no_series,
        }
    }
}

impl<'t> Desk<'t> {
    /// The entry of a plain name, seen from a text.
    pub fn plain(&self, text: u32, name: &str) -> Option<u32> {
        let scopes = &self.texts[text as usize].scopes;
        let scoped = |get: &dyn Fn(&str) -> Option<u32>| {
            scopes.iter().find_map(|scope| match scope.is_empty() {
                true => get(name),
                false => get(&format!("{scope}{name}")),
            })
        };
        scoped(&|full| self.names.get(full)).or_else(|| scoped(&|full| self.names.get_alike(full)))
    }

    /// A series, seen from a text.
    pub fn series_called(&self, text: u32, name: &str) -> Option<u32> {
        let scopes = &self.texts[text as usize].scopes;
        let name = small(name);
        scopes
            .iter()
            .find_map(|scope| self.series.get(&format!("{scope}{name}")))
    }

    /// The series of each hole, or the first hole whose series is not known.
    pub fn holes(&mut self, by: ItemAt, pieces: &[Piece<'t>]) -> Result<Vec<u32>, &'t str> {
        let mut holes = Vec::new();
        for piece in pieces {
            let Piece::Hole(name) = piece else { continue };
            let series = self.series_called(by.0, name).ok_or(*name)?;
            self.series.mention(series);
            holes.push(series);
        }
        Ok(holes)
    }

    /// What a name stands for, without a word about what is missing.
    pub fn known(&mut self, here: &Here, name: Name) -> LookedUp<'t> {
        let written = self.at(here.by, name.span);
        let place = self.place(here.by, name.span);
        if !pattern::is_pattern(written) {
            return match self.plain(here.by.0, &small(written)) {
                Some(entry) => {
                    self.names.mention(entry, here.by);
                    LookedUp::all(Found::One([entry]))
                }
                None => LookedUp::nothing(None),
            };
        }
        let pieces = pattern::pieces(written);
        let holes = match self.holes(here.by, &pieces) {
            Ok(holes) => holes,
            Err(hole) => {
                // The thing that is declared with the same hole bears its name as written.
                return match self.plain(here.by.0, &small(written)) {
                    Some(entry) => {
                        self.names.mention(entry, here.by);
                        LookedUp::all(Found::One([entry]))
                    }
                    None => LookedUp::nothing(Some(hole)),
                };
            }
        };
        let count = self.series.count(&holes, here.bound);
        if count > 1 && !self.room_for_mentions(count, written, place) {
            return LookedUp::all(Found::none());
        }
        let star = pieces.contains(&Piece::Star);
        if star && self.no_room_for_mentions() {
            self.doubt = true;
            return LookedUp::all(Found::none());
        }
        let mut all = Vec::with_capacity(count as usize);
        let mut complete = count > 0;
        for way in self.series.ways(&holes, here.bound) {
            let name = self.series.filled(&pieces, &holes, &[here.bound, &way]);
            if star {
                let matching = self.matching(here.by.0, &name);
                complete &= !matching.is_empty();
                all.extend(matching);
            } else {
                match self.plain(here.by.0, &name) {
                    Some(entry) => all.push(entry),
                    None => complete = false,
                }
            }
        }
        if star && !self.room_for_mentions(all.len() as u64, written, place) {
            return LookedUp::all(Found::none());
        }
        for entry in &all {
            self.names.mention(*entry, here.by);
        }
        LookedUp {
            found: Found::Several { all, star },
            complete,
            no_series: None,
        }
    }

    /// A name that is not looked up, in small letters and with its holes written out.
    pub fn written_out(&mut self, here: &Here, name: Name) -> Vec<String> {
        let written = self.at(here.by, name.span);
        if !pattern::is_pattern(written) {
            return vec![small(written).into_owned()];
        }
        let pieces = pattern::pieces(written);
        let holes = match self.holes(here.by, &pieces) {
            Ok(holes) => holes,
            Err(series) => {
                let place = self.place(here.by, name.span);
                self.missing(place, series, Wanted::SERIES);
                return vec![small(written).into_owned()];
            }
        };
        let count = self.series.count(&holes, here.bound);
        let place = self.place(here.by, name.span);
        if count > 1 && !self.room_for_mentions(count, written, place) {
            return Vec::new();
        }
        let ways = self.series.ways(&holes, here.bound);
        ways.map(|way| self.series.filled(&pieces, &holes, &[here.bound, &way]))
            .collect()
    }

    /// The entries that a name with a star stands for.
    fn matching(&self, text: u32, name: &str) -> Vec<u32> {
        let (before, behind) = name.split_once('*').unwrap_or((name, ""));
        let scopes = &self.texts[text as usize].scopes;
        let all = scopes.iter().map(|scope| match scope.is_empty() {
            true => self.names.matching(before, behind),
            false => self.names.matching(&format!("{scope}{before}"), behind),
        });
        all.into_iter()
            .find(|found| !found.is_empty())
            .unwrap_or_default()
    }

    /// What a name stands for. What is missing is noted and makes for doubt.
    pub fn look_up(&mut self, here: &Here, name: Name, wanted: Wanted) -> Found {
        let written = self.at(here.by, name.span);
        let looked = self.known(here, name);
        if let Some(series) = looked.no_series {
            let wanted = Wanted::SERIES;
            self.missing(self.place(here.by, name.span), series, wanted);
        } else if !looked.complete {
            self.missing(self.place(here.by, name.span), written, wanted);
        }
        looked.found
    }

    /// Notes a name that nothing declares.
    pub fn missing(&mut self, place: Place, written: &str, wanted: Wanted) {
        self.doubt = true;
        let name = small(written);
        if name == everything::WORD {
            return self.problem(place, ProblemKind::Everything { state: None });
        }
        if self.hazy.has(&name) {
            return;
        }
        self.unknown.push(Unknown {
            place,
            written: written.to_owned(),
            name: name.into_owned(),
            wanted,
            meant: None,
        });
    }

    /// Notes a word that nothing declares and that is a slip for a known one.
    pub fn slip(&mut self, place: Place, written: &str, meant: String) {
        self.doubt = true;
        self.unknown.push(Unknown {
            place,
            written: written.to_owned(),
            name: small(written).into_owned(),
            wanted: Wanted::things(&[]),
            meant: Some(meant),
        });
    }

    /// The things that names stand for, as far as they are of a sort that can stand here.
    pub fn refs(&mut self, here: &Here, names: &[Name], sorts: &'static [Sort]) -> Vec<Ref> {
        let mut refs = Vec::with_capacity(names.len());
        for name in names {
            let found = self.look_up(here, *name, Wanted::things(sorts));
            self.keep(here, *name, &found, sorts, &mut refs);
        }
        refs
    }

    /// Of what a name stands for, keeps what is of a sort that can stand here.
    pub fn keep(
        &mut self,
        here: &Here,
        name: Name,
        found: &Found,
        sorts: &'static [Sort],
        refs: &mut Vec<Ref>,
    ) {
        let place = self.place(here.by, name.span);
        let before = refs.len();
        let mut other = None;
        for entry in found.entries() {
            match self.names.entry(*entry).what {
                Named::Thing(thing, sort) if sorts.contains(&sort) => {
                    refs.push(Ref { thing, place });
                }
                what => other = other.or(Some(what)),
            }
        }
        if let Some(other) = other
            && !(found.star() && refs.len() > before)
        {
            self.misplaced(here, name, other, sorts);
        }
    }

    /// Notes that something of this sort cannot stand here.
    pub fn misplaced(&mut self, here: &Here, name: Name, what: Named, wanted: &[Sort]) {
        self.doubt = true;
        let place = self.place(here.by, name.span);
        let written = self.at(here.by, name.span).to_owned();
        match what {
            Named::Thing(thing, _) if self.guessed.contains(&thing) => {}
            Named::Thing(_, is) => {
                let (name, wanted) = (written, wanted.to_vec());
                self.problem(place, ProblemKind::WrongSort { name, is, wanted });
            }
            Named::Steps(group) => {
                let step = self.group_place(group);
                let (name, state) = (written, None);
                self.problem(place, ProblemKind::NamesStep { name, state, step });
            }
        }
    }
}
