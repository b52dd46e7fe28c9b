//! From a text to its findings, the one way that all tests here go.

use check::{Finding, Severity};
use plan::model::{FileId, Place, Plan};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use syntax::edit::Edit;
use syntax::tree::Tree;

/// The top of the repository.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// All files below `folder` that end in `ending`, sorted, so that no test depends on how a disk
/// lists them.
pub fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.to_str().unwrap().ends_with(ending) {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

/// A plan as it lies in a folder, and the texts that were changed since.
#[derive(Clone, Debug, Default)]
pub struct Bench {
    folder: PathBuf,
    name: String,
    texts: BTreeMap<String, String>,
}

impl Bench {
    /// The plan in the file `path`; what it uses is looked up from there.
    pub fn of_file(path: &Path) -> Bench {
        let folder = path.parent().unwrap().to_owned();
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        let text = std::fs::read_to_string(path).unwrap();
        Bench {
            folder,
            texts: BTreeMap::from([(name.clone(), text)]),
            name,
        }
    }

    /// A plan that lies nowhere.
    pub fn of_text(text: &str) -> Bench {
        let name = "plan.rebuild".to_owned();
        Bench {
            folder: PathBuf::new(),
            texts: BTreeMap::from([(name.clone(), text.to_owned())]),
            name,
        }
    }

    /// The text of the plan itself.
    pub fn text(&self) -> &str {
        &self.texts[&self.name]
    }

    /// The same plan with another text.
    pub fn with_text(&self, text: String) -> Bench {
        let mut other = self.clone();
        other.texts.insert(self.name.clone(), text);
        other
    }

    /// The plan and what is found in it.
    pub fn check(&self) -> Checked {
        let shelf = Shelf {
            bench: self,
            taken: RefCell::default(),
        };
        let tree = Arc::new(syntax::read(self.text()));
        let plan = plan::resolve(&self.name, tree, &shelf);
        let findings = check::Bench::of(&plan).findings().to_vec();
        Checked { plan, findings }
    }

    /// The same plan with one mend made.
    pub fn mended(&self, plan: &Plan, mend: &check::Mend) -> Bench {
        let mut other = self.clone();
        for (file, source) in (0..).map(FileId).zip(&plan.sources) {
            let here = mend.edits.iter().filter(|e| e.file == file);
            let edits: Vec<_> = here
                .map(|e| Edit {
                    span: e.span,
                    new: e.new.clone(),
                })
                .collect();
            if !edits.is_empty() {
                other
                    .texts
                    .insert(source.name.clone(), apply(&source.tree.text, &edits));
            }
        }
        other
    }

    /// The plan with its steps in the nearest order that works.
    ///
    /// # Errors
    /// When there is none, or when it cannot be had by moving lines.
    pub fn arranged(&self) -> Result<Bench, String> {
        let plan = self.check().plan;
        let bench = check::Bench::of(&plan);
        let said = |findings: &[Finding]| {
            findings
                .iter()
                .map(|f| f.says.clone())
                .collect::<Vec<_>>()
                .join("\n")
        };
        let arranged = bench.arrange().map_err(|findings| said(&findings))?;
        if !arranged.unwritable.is_empty() {
            return Err("a step of one member of a series would have to move alone".into());
        }
        let edits = syntax::edit::move_items(&plan.sources[0].tree, &arranged.item_moves);
        let text = apply(self.text(), &edits);
        Ok(self.with_text(text))
    }

    /// The plan with every offered mend made, one after another, each looked for anew.
    ///
    /// # Errors
    /// When no mend was offered, or when the mends never come to an end.
    pub fn with_every_mend(&self) -> Result<Bench, String> {
        let mut bench = self.clone();
        let mut made = Vec::new();
        while made.len() < 30 {
            let checked = bench.check();
            let Some(mend) = checked.findings.iter().find_map(|f| f.mend.as_ref()) else {
                return if made.is_empty() {
                    Err("no mend is offered".into())
                } else {
                    Ok(bench)
                };
            };
            made.push(mend.title.clone());
            bench = bench.mended(&checked.plan, mend);
        }
        Err(format!("the mends never end: {made:#?}"))
    }
}

/// Gives a plan the files that lie beside it.
struct Shelf<'a> {
    bench: &'a Bench,
    taken: RefCell<BTreeMap<String, Arc<Tree>>>,
}

impl plan::Shelf for Shelf<'_> {
    fn take(&self, from: &str, path: &str) -> Result<(String, Arc<Tree>), String> {
        let beside = Path::new(from).parent().unwrap_or(Path::new("")).join(path);
        let name = straightened(&beside);
        if let Some(tree) = self.taken.borrow().get(&name) {
            return Ok((name.clone(), Arc::clone(tree)));
        }
        let text = match self.bench.texts.get(&name) {
            Some(text) => text.clone(),
            None => std::fs::read_to_string(self.bench.folder.join(&name))
                .map_err(|_| "there is no such file")?,
        };
        let tree = Arc::new(syntax::read(text.as_str()));
        self.taken
            .borrow_mut()
            .insert(name.clone(), Arc::clone(&tree));
        Ok((name, tree))
    }
}

/// A path without its detours: `a/../b` is `b`.
fn straightened(path: &Path) -> String {
    let mut parts: Vec<String> = Vec::new();
    for part in path.components() {
        match part {
            std::path::Component::ParentDir => {
                parts.pop();
            }
            other => parts.push(other.as_os_str().to_str().unwrap().to_owned()),
        }
    }
    parts.join("/")
}

/// A plan and what was found in it.
pub struct Checked {
    pub plan: Plan,
    pub findings: Vec<Finding>,
}

impl Checked {
    /// What was found in one of the texts, as the fixture crate wants it.
    pub fn actual(&self, file: FileId) -> Vec<fixture::Actual> {
        self.findings
            .iter()
            .filter(|f| f.place.file == file)
            .map(|f| self.plain(f))
            .collect()
    }

    /// The findings as text, one a line, without their lines.
    pub fn said(&self) -> Vec<String> {
        let mut all: Vec<String> = self.findings.iter().map(|f| self.said_of(f)).collect();
        all.sort();
        all
    }

    /// One finding as text.
    pub fn said_of(&self, finding: &Finding) -> String {
        let severity = severity(finding.severity);
        format!(
            "{severity} {} \"{}\": {}",
            finding.rule.name, finding.about, finding.says
        )
    }

    /// The errors among [`Checked::said`].
    pub fn errors(&self) -> Vec<String> {
        self.said()
            .into_iter()
            .filter(|line| line.starts_with("error"))
            .collect()
    }

    /// How often each rule found something.
    pub fn tally(&self) -> BTreeMap<&'static str, usize> {
        let mut count = BTreeMap::new();
        for rule in self.rules() {
            *count.entry(rule).or_default() += 1;
        }
        count
    }

    /// The names of the rules that found something.
    pub fn rules(&self) -> Vec<&'static str> {
        self.findings.iter().map(|f| f.rule.name).collect()
    }

    fn plain(&self, finding: &Finding) -> fixture::Actual {
        let because = |because: &check::Because| fixture::Because {
            line: self.line(because.place),
            text: self.plan.text(because.place).to_owned(),
        };
        fixture::Actual {
            rule: finding.rule.name.to_owned(),
            severity: severity(finding.severity).to_owned(),
            line: self.line(finding.place),
            about: finding.about.clone(),
            message: finding.says.clone(),
            becauses: finding
                .because
                .iter()
                .filter(|b| b.place.file == finding.place.file)
                .map(because)
                .collect(),
        }
    }

    /// The line of a place, counted from 1.
    fn line(&self, place: Place) -> usize {
        let text = &self.plan.sources[place.file.0 as usize].tree.text;
        let before = &text[..place.span.start as usize];
        let pairs = before.matches("\r\n").count();
        1 + before.matches('\n').count() + before.matches('\r').count() - pairs
    }
}

fn apply(text: &str, edits: &[Edit]) -> String {
    syntax::edit::apply(text, edits).unwrap_or_else(|overlap| panic!("{overlap:?} in\n{text}"))
}

fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Error => "error",
        Severity::Warning => "warning",
        Severity::Hint => "hint",
    }
}
