//! All names of things and steps, each known by a number once it is declared.

use std::cell::OnceCell;
use std::collections::HashMap;
use std::rc::Rc;

use crate::model::{Place, Sort, ThingId};
use crate::spelling;

/// What a name belongs to.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Named {
    /// A thing, and its sort.
    Thing(ThingId, Sort),
    /// The steps of one `as` name, by the number of their group.
    Steps(u32),
}

/// A text by number and an item in it: who declares or mentions something.
pub(crate) type ItemAt = (u32, u32);

/// A declared name.
pub(crate) struct Entry {
    /// The full name.
    pub name: Rc<str>,
    /// What it belongs to.
    pub what: Named,
    /// Where it is declared.
    pub place: Place,
    /// The item that declares it.
    pub by: ItemAt,
    /// Whether any other item mentions it.
    pub mentioned: bool,
}

/// The one table of names.
#[derive(Default)]
pub(crate) struct Names {
    numbers: HashMap<Rc<str>, u32>,
    entries: Vec<Entry>,
    /// For names of a series: the name with its holes, and the entry.
    stems: Vec<(Rc<str>, u32)>,
    /// Entries by name; made when a `*` is first met.
    by_name: OnceCell<Vec<(Rc<str>, u32)>>,
    /// Stems in order; made when a `*` is first met.
    by_stem: OnceCell<Vec<(Rc<str>, u32)>>,
    /// Names that have another spelling, in the one spelling; made when a name is not found.
    alike: OnceCell<HashMap<String, u32>>,
}

impl Names {
    /// Makes room for so many names.
    pub fn expect(&mut self, count: usize) {
        self.numbers.reserve(count);
        self.entries.reserve(count);
    }

    /// Takes a name in. `Err` gives the entry that has it already.
    pub fn declare(
        &mut self,
        name: &str,
        stem: Option<&Rc<str>>,
        what: Named,
        place: Place,
        by: ItemAt,
    ) -> Result<u32, u32> {
        if let Some(number) = self.numbers.get(name) {
            return Err(*number);
        }
        let number = self.entries.len() as u32;
        let name: Rc<str> = name.into();
        self.numbers.insert(name.clone(), number);
        if let Some(stem) = stem {
            self.stems.push((stem.clone(), number));
        }
        self.entries.push(Entry {
            name,
            what,
            place,
            by,
            mentioned: false,
        });
        Ok(number)
    }

    /// The entry of exactly this name.
    pub fn get(&self, name: &str) -> Option<u32> {
        self.numbers.get(name).copied()
    }

    /// The entry of a name that differs only in the spelling of a pair read alike.
    pub fn get_alike(&self, name: &str) -> Option<u32> {
        let alike = self.alike.get_or_init(|| {
            let mut alike = HashMap::new();
            for (number, entry) in (0u32..).zip(&self.entries) {
                let one = spelling::one(&entry.name);
                if *one != *entry.name {
                    alike.entry(one.into_owned()).or_insert(number);
                }
            }
            alike
        });
        let one = spelling::one(name);
        self.get(&one).or_else(|| alike.get(&*one).copied())
    }

    /// The entries that `before*behind` stands for, in the order declared. Names of a series
    /// whose hole stands where the star does come first and then alone; so `cap-*` is the caps
    /// and not also the `cap-nut-<bore>`.
    /// With nothing before the star there is no family that it stands for: `*-nuts` is all that
    /// ends so, be it alone or with a member of a series behind it.
    pub fn matching(&self, before: &str, behind: &str) -> Vec<u32> {
        if before.is_empty() {
            return self.ending(behind);
        }
        let by_stem = self.by_stem.get_or_init(|| sorted(self.stems.clone()));
        let stems = beginning_with(by_stem, before);
        let exact = stems.iter().filter(|(stem, _)| {
            let open = stem.find('<').unwrap_or(stem.len());
            let close = stem.rfind('>').map_or(0, |at| at + 1);
            open == before.len() && &stem[close..] == behind
        });
        let exact = numbers(exact);
        if !exact.is_empty() {
            return exact;
        }
        let loose = numbers(stems.iter().filter(|(stem, _)| stem.ends_with(behind)));
        if !loose.is_empty() {
            return loose;
        }
        let by_name = self.by_name.get_or_init(|| {
            let names = self.entries.iter().map(|entry| entry.name.clone());
            sorted(names.zip(0u32..).collect())
        });
        let enough = before.len() + behind.len();
        numbers(
            beginning_with(by_name, before)
                .iter()
                .filter(|(name, _)| name.len() > enough && name.ends_with(behind)),
        )
    }

    fn ending(&self, behind: &str) -> Vec<u32> {
        let mut found: Vec<u32> = (0u32..)
            .zip(&self.entries)
            .filter(|(_, entry)| entry.name.len() > behind.len() && entry.name.ends_with(behind))
            .map(|(number, _)| number)
            .collect();
        let before_hole = |stem: &Rc<str>| {
            let family = stem.split("-<").next().unwrap_or(stem);
            family.len() > behind.len() && family.ends_with(behind)
        };
        let families = self.stems.iter().filter(|(stem, _)| before_hole(stem));
        found.extend(families.map(|(_, number)| *number));
        found.sort_unstable();
        found.dedup();
        found
    }

    /// An entry.
    pub fn entry(&self, number: u32) -> &Entry {
        &self.entries[number as usize]
    }

    /// All entries in the order declared.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The names of series with their holes, once for each member.
    pub fn stems(&self) -> impl Iterator<Item = &str> {
        self.stems.iter().map(|(stem, _)| &**stem)
    }

    /// Notes that `by` mentions a name; its own item does not count.
    pub fn mention(&mut self, number: u32, by: ItemAt) {
        let entry = &mut self.entries[number as usize];
        entry.mentioned |= entry.by != by;
    }
}

fn sorted(mut names: Vec<(Rc<str>, u32)>) -> Vec<(Rc<str>, u32)> {
    names.sort();
    names
}

fn beginning_with<'n>(sorted: &'n [(Rc<str>, u32)], before: &str) -> &'n [(Rc<str>, u32)] {
    let from = sorted.partition_point(|(name, _)| &**name < before);
    let length = sorted[from..].partition_point(|(name, _)| name.starts_with(before));
    &sorted[from..from + length]
}

fn numbers<'n>(found: impl Iterator<Item = &'n (Rc<str>, u32)>) -> Vec<u32> {
    let mut numbers: Vec<u32> = found.map(|(_, number)| *number).collect();
    numbers.sort_unstable();
    numbers
}
