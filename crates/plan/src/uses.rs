//! The files of a plan: the asked one and those it uses, each read in the place of its `use`.

use std::collections::HashSet;
use std::sync::Arc;

use syntax::tree::{Head, Item, Kind, Says, Tree};

use crate::Shelf;
use crate::model::{FileId, Place, Problem, ProblemKind, Source};
use crate::pattern;
use crate::spelling::small;

/// The most texts that are read for one plan. More is a `use` gone wild: files that use each
/// other under ever new prefixes double with each step.
const MOST_TEXTS: u32 = 500;

/// How deep files may use files. Deeper is a file that leads to itself by another name.
const DEEPEST: usize = 60;

/// One reading of a file. A file used under two prefixes is read twice.
pub(crate) struct Text {
    /// The file.
    pub file: FileId,
    /// What stands in it.
    pub tree: Arc<Tree>,
    /// The beginnings to try before a name that stands in it, the longest first. The first is
    /// what its own names begin with; the last is empty.
    pub scopes: Vec<String>,
}

/// All files, and all their items in the order in which names are declared.
pub(crate) struct Files {
    /// One for each file, the asked one first.
    pub sources: Vec<Source>,
    /// The readings, the asked file's first.
    pub texts: Vec<Text>,
    /// Text and item, used files in the place of their `use`.
    pub walk: Vec<(u32, u32)>,
    /// What went wrong.
    pub problems: Vec<Problem>,
    /// Whether the names of some file are not known, so that no name may be called unknown.
    pub names_missing: bool,
}

/// Brings all files in.
pub(crate) fn gather(name: &str, tree: Arc<Tree>, shelf: &dyn Shelf) -> Files {
    let mut gather = Gather {
        files: Files {
            sources: Vec::new(),
            texts: Vec::new(),
            walk: Vec::with_capacity(tree.items.len()),
            problems: Vec::new(),
            names_missing: false,
        },
        shelf,
        read: HashSet::new(),
        trail: Vec::new(),
        full: false,
    };
    gather.read_text(name.to_owned(), tree, vec![String::new()]);
    gather.files
}

struct Gather<'s> {
    files: Files,
    shelf: &'s dyn Shelf,
    /// File names and the prefix they were read under.
    read: HashSet<(String, String)>,
    /// The files that lead to the present one.
    trail: Vec<String>,
    full: bool,
}

impl Gather<'_> {
    fn read_text(&mut self, name: String, tree: Arc<Tree>, scopes: Vec<String>) {
        let file = self.file(&name, &tree);
        let text = self.files.texts.len() as u32;
        self.files.texts.push(Text {
            file,
            tree: tree.clone(),
            scopes: scopes.clone(),
        });
        self.read.insert((name.clone(), scopes[0].clone()));
        self.trail.push(name);
        for (number, item) in (0u32..).zip(&tree.items) {
            match &item.head {
                Head::Declaration {
                    kind: Kind::Use, ..
                } => self.use_file(file, &tree, item, &scopes),
                Head::Unreadable {
                    kind: Some(Kind::Use),
                    ..
                } => {
                    self.files.names_missing = true;
                    self.files.walk.push((text, number));
                }
                _ => self.files.walk.push((text, number)),
            }
        }
        self.trail.pop();
    }

    fn file(&mut self, name: &str, tree: &Arc<Tree>) -> FileId {
        let known = self.files.sources.iter().position(|s| s.name == name);
        let number = known.unwrap_or_else(|| {
            self.files.sources.push(Source {
                name: name.to_owned(),
                tree: tree.clone(),
            });
            self.files.sources.len() - 1
        });
        FileId(number as u32)
    }

    fn use_file(&mut self, file: FileId, tree: &Tree, item: &Item, scopes: &[String]) {
        let at = |span| Place { file, span };
        let Head::Declaration {
            label: Some(label),
            keyword,
            ..
        } = &item.head
        else {
            // The tree has said that the file's name is missing.
            self.files.names_missing = true;
            return;
        };
        let place = at(label.span);
        let path = tree.quoted(*label);
        let prefix = self.prefix(file, tree, item, tree.at(*keyword));
        if self.full {
            self.files.names_missing = true;
            return;
        }
        let from = self.trail.last().map_or("", String::as_str);
        let (name, used) = match self.shelf.take(from, &path) {
            Ok(taken) => taken,
            Err(why) => return self.missing(place, ProblemKind::UseMissing { path, why }),
        };
        if self.trail.contains(&name) {
            return self.missing(place, ProblemKind::UseCycle { path });
        }
        if self.trail.len() >= DEEPEST || self.files.texts.len() as u32 >= MOST_TEXTS {
            self.full = true;
            let most = MOST_TEXTS;
            return self.missing(place, ProblemKind::TooMany { name: path, most });
        }
        let own = format!("{}{prefix}", scopes[0]);
        if self.read.contains(&(name.clone(), own.clone())) {
            return;
        }
        let mut inner = scopes.to_vec();
        if own != scopes[0] {
            inner.insert(0, own);
        }
        self.read_text(name, used, inner);
    }

    /// What `as PREFIX` puts before the names of a used file.
    fn prefix(&mut self, file: FileId, tree: &Tree, item: &Item, keyword: &str) -> String {
        let mut prefix = String::new();
        let mut damaged = false;
        for detail in &item.details {
            match &detail.says {
                Says::As(name) if prefix.is_empty() && !pattern::is_pattern(tree.name(*name)) => {
                    prefix = format!("{}-", small(tree.name(*name)));
                }
                // The prefix may have stood on the line that could not be read.
                Says::Unreadable { .. } => damaged = true,
                _ if damaged => {}
                _ => self.files.problems.push(Problem {
                    place: Place {
                        file,
                        span: detail.span,
                    },
                    kind: ProblemKind::DetailNotHere {
                        detail: tree.at(detail.keyword).to_owned(),
                        item: keyword.to_owned(),
                    },
                }),
            }
        }
        self.files.names_missing |= damaged;
        prefix
    }

    fn missing(&mut self, place: Place, kind: ProblemKind) {
        self.files.names_missing = true;
        self.files.problems.push(Problem { place, kind });
    }
}
