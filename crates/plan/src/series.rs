//! Series and their members, and the writing out of names that have holes.

use std::collections::{HashMap, HashSet};

use syntax::tree::{Members, Tree, Word};
use workshop::quantity::MeasureProblem;

use crate::model::{Place, ProblemKind};
use crate::pattern::Piece;
use crate::spelling::small;

/// The most members of one series. The rows of a large heat exchanger have some hundreds.
pub(crate) const MOST_MEMBERS: u32 = 1_000;

/// A series and one of its members, by number.
pub(crate) type Bound = (u32, u32);

/// One series.
pub(crate) struct Series {
    /// Its full name.
    pub name: String,
    /// Its members in order.
    pub members: Vec<String>,
    /// Where it is declared.
    pub place: Place,
    /// The number of each member.
    pub numbers: HashMap<String, u32>,
    /// Whether anything uses it.
    pub mentioned: bool,
    /// Whether its members could not all be read.
    pub uncertain: bool,
}

/// All series.
#[derive(Default)]
pub(crate) struct AllSeries {
    numbers: HashMap<String, u32>,
    all: Vec<Series>,
    members: HashSet<String>,
}

impl AllSeries {
    /// Takes a series in. `Err` gives the place of the one that has the name already.
    pub fn declare(&mut self, series: Series) -> Result<(), Place> {
        if let Some(first) = self.numbers.get(&series.name) {
            return Err(self.all[*first as usize].place);
        }
        self.members.extend(series.members.iter().cloned());
        self.numbers
            .insert(series.name.clone(), self.all.len() as u32);
        self.all.push(series);
        Ok(())
    }

    /// The series of exactly this name.
    pub fn get(&self, name: &str) -> Option<u32> {
        self.numbers.get(name).copied()
    }

    /// A series.
    pub fn one(&self, number: u32) -> &Series {
        &self.all[number as usize]
    }

    /// A series, to be noted as mentioned.
    pub fn mention(&mut self, number: u32) {
        self.all[number as usize].mentioned = true;
    }

    /// All series in the order declared.
    pub fn all(&self) -> &[Series] {
        &self.all
    }

    /// The member as text.
    pub fn member(&self, bound: Bound) -> &str {
        &self.one(bound.0).members[bound.1 as usize]
    }

    /// The members of several series in one text: `3, inlet`.
    pub fn which(&self, bound: &[Bound]) -> String {
        let members: Vec<&str> = bound.iter().map(|b| self.member(*b)).collect();
        members.join(", ")
    }

    /// Whether some series has this member.
    pub fn has_member(&self, word: &str) -> bool {
        self.members.contains(word)
    }

    /// In how many ways the holes that `bound` leaves open can be filled.
    pub fn count(&self, holes: &[u32], bound: &[Bound]) -> u64 {
        let open = open(holes, bound);
        let sizes = open
            .iter()
            .map(|series| self.one(*series).members.len() as u64);
        sizes.fold(1, u64::saturating_mul)
    }

    /// Every way of filling the holes that `bound` leaves open, in series order, the last hole
    /// turning fastest. `holes` may name a series twice; it then has the same member in both.
    pub fn ways(&self, holes: &[u32], bound: &[Bound]) -> impl Iterator<Item = Vec<Bound>> {
        let open = open(holes, bound);
        let sizes = open
            .iter()
            .map(|series| self.one(*series).members.len() as u32);
        let turns = Turns::new(sizes.collect());
        turns.map(move |at| open.iter().copied().zip(at).collect())
    }

    /// The name that pieces make with these members; stars stay stars. `holes` gives the series
    /// of each hole in order.
    pub fn filled(&self, pieces: &[Piece<'_>], holes: &[u32], bound: &[&[Bound]]) -> String {
        let mut name = String::new();
        let mut holes = holes.iter();
        for piece in pieces {
            match piece {
                Piece::Letters(letters) => name.push_str(&small(letters)),
                Piece::Star => name.push('*'),
                Piece::Hole(_) => {
                    let hole = holes.next();
                    let found = bound
                        .iter()
                        .flat_map(|b| b.iter())
                        .find(|b| Some(&b.0) == hole);
                    if let Some(found) = found {
                        name.push_str(self.member(*found));
                    }
                }
            }
        }
        name
    }
}

/// The series of the holes that `bound` leaves open, each once.
fn open(holes: &[u32], bound: &[Bound]) -> Vec<u32> {
    let mut open: Vec<u32> = Vec::new();
    for hole in holes {
        if !open.contains(hole) && !bound.iter().any(|(series, _)| series == hole) {
            open.push(*hole);
        }
    }
    open
}

/// All ways of choosing one of several from each of several lists, the last list turning fastest.
/// Of no lists there is one way: to choose nothing.
pub(crate) struct Turns {
    sizes: Vec<u32>,
    next: Option<Vec<u32>>,
}

impl Turns {
    /// For lists of these sizes.
    pub fn new(sizes: Vec<u32>) -> Turns {
        let next = (!sizes.contains(&0)).then(|| vec![0; sizes.len()]);
        Turns { sizes, next }
    }
}

impl Iterator for Turns {
    type Item = Vec<u32>;

    fn next(&mut self) -> Option<Vec<u32>> {
        let now = self.next.take()?;
        let turning = (0..now.len()).rev().find(|i| now[*i] + 1 < self.sizes[*i]);
        if let Some(turning) = turning {
            let mut next = now.clone();
            next[turning] += 1;
            next[turning + 1..].fill(0);
            self.next = Some(next);
        }
        Some(now)
    }
}

/// What was read of a list of members.
#[derive(Default)]
pub(crate) struct Read {
    /// The members, each once, in order.
    pub members: Vec<String>,
    /// What is wrong with them, and at which word.
    pub problems: Vec<(Word, ProblemKind)>,
    /// Whether some are missing.
    pub short: bool,
}

/// Reads `1..6` or `inlet, exhaust`. `twice` says whether a member may come again.
pub(crate) fn read_members(
    tree: &Tree,
    members: &Members,
    name: &str,
    at: impl Fn(Word) -> Place,
    twice: bool,
) -> Read {
    let mut read = Read::default();
    match members {
        Members::Range(from, to) => range(tree, *from, *to, name, &mut read),
        Members::List(words) => {
            let mut seen: HashMap<String, Word> = HashMap::new();
            for word in words {
                let member = small(tree.word(*word)).into_owned();
                if read.members.len() as u32 == MOST_MEMBERS {
                    let kind = too_many(name);
                    read.problems.push((*word, kind));
                    read.short = true;
                    break;
                }
                if !twice && let Some(first) = seen.insert(member.clone(), *word) {
                    let first = at(first);
                    let name = member;
                    read.problems
                        .push((*word, ProblemKind::TwiceNamed { name, first }));
                    continue;
                }
                read.members.push(member);
            }
        }
    }
    read
}

fn range(tree: &Tree, from: Word, to: Word, name: &str, read: &mut Read) {
    let (first, last) = (tree.word(from), tree.word(to));
    if let (Some(a), Some(b)) = (one_letter(first), one_letter(last)) {
        // Letters run from a to z only, so a range of them is never long.
        let letters: Vec<String> = (a.min(b)..=a.max(b))
            .map(|c| char::from(c).into())
            .collect();
        read.members = if a <= b {
            letters
        } else {
            letters.into_iter().rev().collect()
        };
        return;
    }
    let (a, b) = match (number(first), number(last)) {
        (Ok(a), Ok(b)) => (a, b),
        (a, b) => {
            let (word, why) = match (a, b) {
                (Err(why), _) => (from, why),
                (_, Err(why)) => (to, why),
                _ => return,
            };
            let text = tree.word(word).to_owned();
            read.problems
                .push((word, ProblemKind::Figure { text, why }));
            read.short = true;
            return;
        }
    };
    // `01..12` has members of two figures each.
    let width = if first.starts_with('0') {
        first.len().min(20)
    } else {
        0
    };
    let count = u64::from(MOST_MEMBERS).min(a.abs_diff(b).saturating_add(1));
    if a.abs_diff(b) >= u64::from(MOST_MEMBERS) {
        read.problems.push((to, too_many(name)));
        read.short = true;
    }
    read.members = (0..count)
        .map(|i| if a <= b { a + i } else { a - i })
        .map(|n| format!("{n:0width$}"))
        .collect();
}

fn one_letter(word: &str) -> Option<u8> {
    match word.as_bytes() {
        [letter] if letter.is_ascii_alphabetic() => Some(letter.to_ascii_lowercase()),
        _ => None,
    }
}

fn number(word: &str) -> Result<u64, MeasureProblem> {
    let given = word.to_owned();
    if word.is_empty() || !word.bytes().all(|b| b.is_ascii_digit()) {
        return Err(MeasureProblem::NotANumber { given });
    }
    word.parse().map_err(|_| MeasureProblem::TooBig { given })
}

fn too_many(name: &str) -> ProblemKind {
    ProblemKind::TooMany {
        name: name.to_owned(),
        most: MOST_MEMBERS,
    }
}
