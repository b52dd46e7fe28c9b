//! The files behind `use`: only those in the plan's own folder and below it.

use crate::input::{read_file, text_of};
use std::cell::RefCell;
use std::collections::HashMap;
use std::fs;
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;
use syntax::tree::Tree;

/// A folder from which plans may take declarations.
pub struct Shelf {
    /// The folder, all links followed; none when it is not there.
    root: Option<PathBuf>,
    /// The folder as people know it.
    shown: PathBuf,
    /// What has been read already: a file may be used more than once.
    read: RefCell<HashMap<PathBuf, Arc<Tree>>>,
}

impl Shelf {
    /// The shelf of the plan called `name`.
    pub fn of(name: &Path) -> Shelf {
        let shown = match name.parent() {
            Some(parent) if !parent.as_os_str().is_empty() => parent.to_path_buf(),
            _ => PathBuf::from("."),
        };
        Shelf {
            root: fs::canonicalize(&shown).ok(),
            shown,
            read: RefCell::default(),
        }
    }

    /// All files taken from it, all links followed.
    pub fn taken(&self) -> Vec<PathBuf> {
        self.read.borrow().keys().cloned().collect()
    }

    fn outside(&self) -> String {
        format!(
            "it lies outside the plan's folder ({})",
            self.shown.display()
        )
    }
}

impl plan::Shelf for Shelf {
    fn take(&self, from: &str, path: &str) -> Result<(String, Arc<Tree>), String> {
        let asked = Path::new(from).parent().unwrap_or(Path::new("")).join(path);
        let root = self.root.as_ref().ok_or("the plan's folder is not there")?;
        let real = match fs::canonicalize(&asked) {
            Ok(real) => real,
            // Of what is outside not even whether it is there is told.
            Err(_) if climbs_out(&self.shown, &asked) => return Err(self.outside()),
            Err(error) => return Err(crate::input::why_not(&error)),
        };
        if !real.starts_with(root) {
            return Err(self.outside());
        }
        let shown = plainly(&asked).display().to_string();
        if let Some(tree) = self.read.borrow().get(&real) {
            return Ok((shown, tree.clone()));
        }
        if !real.is_file() {
            return Err("it is not a file".into());
        }
        let tree = Arc::new(syntax::read(text_of(&read_file(&real)?)?));
        self.read.borrow_mut().insert(real, tree.clone());
        Ok((shown, tree))
    }
}

/// Whether `path`, read as written, leads out of `folder`.
fn climbs_out(folder: &Path, path: &Path) -> bool {
    let folder = plainly(folder);
    let path = plainly(path);
    path.is_absolute() != folder.is_absolute()
        || !(folder == Path::new("") || path.starts_with(&folder))
        || path.components().next() == Some(Component::ParentDir) && !folder.starts_with("..")
}

/// `path` without `.` and with every `..` that has something before it worked out.
fn plainly(path: &Path) -> PathBuf {
    let mut plain = PathBuf::new();
    for part in path.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir
                if matches!(plain.components().next_back(), Some(Component::Normal(_))) =>
            {
                plain.pop();
            }
            part => plain.push(part),
        }
    }
    plain
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_are_shown_plainly() {
        assert_eq!(plainly(Path::new("./a/../b/./c")), Path::new("b/c"));
        assert_eq!(plainly(Path::new("../a/..")), Path::new(".."));
    }

    #[test]
    fn a_path_that_leads_out_is_told_from_its_words() {
        let out = |folder: &str, path: &str| climbs_out(Path::new(folder), Path::new(path));
        assert!(out(".", "../x"));
        assert!(out("plans", "plans/../x"));
        assert!(out("plans", "/etc/x"));
        assert!(!out(".", "parts/x"));
        assert!(!out("plans", "plans/parts/../x"));
        assert!(!out("../plans", "../plans/x"));
        assert!(out("../plans", "../x"));
    }
}
