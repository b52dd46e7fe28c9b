//! Names that nothing declares: which of them to speak of, and what was probably meant.
//!
//! A line that could not be read may have declared anything. One fault is one
//! finding, so a name that may have stood on such a line is not called unknown.

use std::collections::{HashMap, HashSet};

use syntax::tree::{self, Span, Tree};

use crate::model::{Place, Problem, ProblemKind, Sort, Source};
use crate::names::{Named, Names};
use crate::near;
use crate::series::AllSeries;

/// The most unknown names for which a near one is looked for.
const MOST_SUGGESTED: usize = 100;

/// What could stand where a name stands.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub(crate) struct Wanted {
    /// Things of these sorts.
    pub sorts: &'static [Sort],
    /// The `as` name of a step.
    pub steps: bool,
    /// A series, and nothing else.
    pub series: bool,
}

impl Wanted {
    /// A series.
    pub const SERIES: Wanted = Wanted {
        sorts: &[],
        steps: false,
        series: true,
    };

    /// Things of these sorts only.
    pub const fn things(sorts: &'static [Sort]) -> Wanted {
        Wanted {
            sorts,
            steps: false,
            series: false,
        }
    }
}

/// A name that was looked for and not found.
pub(crate) struct Unknown {
    /// Where it stands.
    pub place: Place,
    /// As written.
    pub written: String,
    /// In small letters.
    pub name: String,
    /// What could stand there.
    pub wanted: Wanted,
    /// What was meant, where that is known already.
    pub meant: Option<String>,
}

/// Names that lines mention which could not be read.
#[derive(Default)]
pub(crate) struct Hazy {
    names: HashSet<String>,
    beginnings: HashSet<String>,
    /// The names on each such line.
    lines: Vec<Vec<String>>,
    /// Names among them that were looked for in vain elsewhere.
    used: HashSet<String>,
}

impl Hazy {
    /// Takes in a line that could not be read, with the names it mentions in small letters.
    pub fn add_line(&mut self, names: Vec<String>) {
        for name in &names {
            self.add(name);
        }
        self.lines.push(names);
    }

    /// Takes in a name that may be declared though nothing says so. One with holes stands for all
    /// that begin like it.
    pub fn add(&mut self, name: &str) {
        match name.find(['<', '*']) {
            Some(0) => {}
            Some(at) => {
                self.beginnings.insert(name[..at].to_owned());
            }
            None => {
                self.names.insert(name.to_owned());
            }
        }
    }

    /// Whether the name may be declared on a line that could not be read.
    pub fn has(&mut self, name: &str) -> bool {
        let found = self.names.contains(name)
            || (!self.beginnings.is_empty()
                && name
                    .char_indices()
                    .any(|(at, _)| self.beginnings.contains(&name[..at])));
        if found && !self.used.contains(name) {
            self.used.insert(name.to_owned());
        }
        found
    }

    /// Whether some line could not be read at all, or in part.
    pub fn any(&self) -> bool {
        !self.lines.is_empty()
    }

    /// How many lines are so far gone that no name on them is known or used elsewhere. Each may
    /// have declared one name that cannot even be guessed at.
    fn lost_lines(&self, names: &Names) -> usize {
        let told = |name: &String| names.get(name).is_some() || self.used.contains(name);
        let lost = |line: &&Vec<String>| !line.iter().any(told);
        self.lines.iter().filter(lost).count()
    }
}

/// The problems that unknown names make.
pub(crate) fn settle(
    mut unknown: Vec<Unknown>,
    names: &Names,
    series: &AllSeries,
    hazy: &Hazy,
    sources: &[Source],
) -> Vec<Problem> {
    let damaged: Vec<Vec<Span>> = sources.iter().map(|source| damaged(&source.tree)).collect();
    unknown.retain(|one| {
        let lines = &damaged[one.place.file.0 as usize];
        let at = one.place.span.start;
        let before = lines.partition_point(|line| line.start <= at);
        before == 0 || at > lines[before - 1].end
    });
    let lost = hazy.lost_lines(names);
    if lost > 0 {
        let families: HashSet<String> = unknown.iter().map(|u| family(&u.name, series)).collect();
        if families.len() <= lost {
            return Vec::new();
        }
    }
    let mut asked: HashMap<(&str, Wanted), Option<String>> = HashMap::new();
    let mut problems = Vec::with_capacity(unknown.len());
    for one in &unknown {
        let key = (one.name.as_str(), one.wanted);
        if !asked.contains_key(&key) && asked.len() < MOST_SUGGESTED {
            asked.insert(key, suggestion(one, names, series));
        }
        let near = asked.get(&key).cloned().flatten();
        // With lines lost, only a name that looks like a slip for another is surely wrong.
        if lost > 0 && near.is_none() {
            continue;
        }
        problems.push(Problem {
            place: one.place,
            kind: ProblemKind::UnknownName {
                name: one.written.clone(),
                near,
            },
        });
    }
    problems
}

/// A name with a hole for every member of a series in it: all that one line can declare.
fn family(name: &str, series: &AllSeries) -> String {
    let hole = |word: &str| word.contains(['<', '*']) || series.has_member(word);
    let words: Vec<&str> = name
        .split('-')
        .map(|word| if hole(word) { "<>" } else { word })
        .collect();
    words.join("-")
}

/// The lines of a text on which something could not be read, in order. Nothing is said of the
/// names there: what is wrong with the line has been said.
fn damaged(tree: &Tree) -> Vec<Span> {
    let mut lines: Vec<Span> = Vec::new();
    for problem in &tree.problems {
        let at = problem.span.start;
        let readable = matches!(
            problem.kind,
            tree::ProblemKind::Capitals | tree::ProblemKind::HiddenCharacter(_)
        );
        if readable || lines.last().is_some_and(|line| at <= line.end) {
            continue;
        }
        let (before, behind) = match tree.text.split_at_checked(at as usize) {
            Some(parts) => parts,
            None => continue,
        };
        let start = before.rfind('\n').map_or(0, |end| end as u32 + 1);
        let length = behind.find('\n').unwrap_or(behind.len()) as u32;
        lines.push(Span::new(start, at + length));
    }
    lines
}

/// The known name that was probably meant: the nearest of what could stand there, else the only
/// one that ends in what was written.
fn suggestion(unknown: &Unknown, names: &Names, series: &AllSeries) -> Option<String> {
    let name = unknown.name.as_str();
    let allowed = near::slips_for(name);
    if unknown.meant.is_some() {
        return unknown.meant.clone();
    }
    if unknown.wanted.series {
        let all = series.all().iter().map(|one| one.name.as_str());
        return near::nearest(name, all, allowed).map(str::to_owned);
    }
    if let Some(before) = name.strip_suffix('*') {
        let stems = names.stems().filter_map(|stem| stem.split('<').next());
        let near = near::nearest(before, stems, near::slips_for(before))?;
        return Some(format!("{near}*"));
    }
    if name.contains('<') {
        return near::nearest(name, names.stems(), allowed).map(str::to_owned);
    }
    let fits = |what: Named| match what {
        Named::Thing(_, sort) => unknown.wanted.sorts.contains(&sort),
        Named::Steps(_) => unknown.wanted.steps,
    };
    let all = || names.entries().iter();
    let fitting = all().filter(|e| fits(e.what)).map(|e| &*e.name);
    if let Some(near) = near::nearest(name, fitting, allowed) {
        return Some(near.to_owned());
    }
    let ending = format!("-{name}");
    let mut longer = all().filter(|e| fits(e.what) && e.name.ends_with(&ending));
    match (longer.next(), longer.next()) {
        (Some(only), None) => Some(only.name.to_string()),
        _ => None,
    }
}
