//! The plans that a command was asked for: found, read, resolved.

use crate::cli::Plans;
use crate::outcome::Outcome;
use crate::shelf::Shelf;
use plan::model::{FileId, Plan, ProblemKind};
use sheet::findings::Texts;
use std::collections::HashSet;
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use syntax::LONGEST;

/// How the name of a plan's file ends.
const ENDING: &str = "rebuild";

/// What standard input is called when nobody says.
const STANDARD_INPUT: &str = "standard input";

/// A plan that was asked for.
pub struct Asked {
    /// Its file; none for standard input.
    pub file: Option<PathBuf>,
    /// Its text, to the byte.
    pub text: Arc<str>,
    /// The plan.
    pub plan: Plan,
    /// The files it uses, all links followed.
    uses: Vec<PathBuf>,
    /// Found in a folder, not named.
    found: bool,
}

impl Asked {
    /// Its name for people.
    pub fn name(&self) -> String {
        Texts::of(&self.plan).name(FileId(0))
    }

    /// The same plan with another text, the files it uses read again.
    ///
    /// # Errors
    /// When a file it uses is no longer there.
    pub fn with_text(&self, text: String) -> Result<Plan, String> {
        resolved(&self.name(), text).map(|asked| asked.plan)
    }

    /// Its name as an argument of a command that the reader may type.
    pub fn argument(&self) -> String {
        match &self.file {
            None => "-".into(),
            Some(_) => {
                let name = self.name();
                let plain = |c: char| c.is_alphanumeric() || "/._-+,:@".contains(c);
                if name.chars().all(plain) {
                    name
                } else {
                    format!("'{}'", name.replace('\'', "'\\''"))
                }
            }
        }
    }
}

/// All plans asked for. What cannot be read is said in `outcome`, and the others are still there.
pub fn plans(asked: &Plans, outcome: &mut Outcome) -> Vec<Asked> {
    let mut seen = HashSet::new();
    let mut plans = Vec::new();
    for argument in &asked.plans {
        if argument.as_os_str() == "-" {
            if seen.insert(PathBuf::from("-")) {
                take(standard_input(asked.named.as_deref()), &mut plans, outcome);
            }
            continue;
        }
        if !argument.is_dir() {
            if seen.insert(fs::canonicalize(argument).unwrap_or_else(|_| argument.clone())) {
                take(file(argument, false), &mut plans, outcome);
            }
            continue;
        }
        let mut files = Vec::new();
        if let Err(error) = gather(argument, &mut files) {
            outcome.fail(format!(
                "cannot look through {}: {}",
                argument.display(),
                why_not(&error)
            ));
            continue;
        }
        if files.is_empty() {
            outcome.fail(format!(
                "there is no plan (*.{ENDING}) in {}",
                argument.display()
            ));
        }
        for path in files {
            if seen.insert(fs::canonicalize(&path).unwrap_or_else(|_| path.clone())) {
                take(file(&path, true), &mut plans, outcome);
            }
        }
    }
    without_parts(plans)
}

/// One plan, for commands that take no more.
pub fn one(path: &Path, named: Option<&Path>, outcome: &mut Outcome) -> Option<Asked> {
    let read = if path.as_os_str() == "-" {
        standard_input(named)
    } else {
        file(path, false)
    };
    let mut plans = Vec::new();
    take(read, &mut plans, outcome);
    plans.pop()
}

fn take(read: Result<Asked, String>, plans: &mut Vec<Asked>, outcome: &mut Outcome) {
    match read {
        Ok(asked) => plans.push(asked),
        Err(why) => outcome.fail(why),
    }
}

/// Leaves out what was found in a folder and is used by another plan: it is looked at as a part
/// of that one, and by itself would seem to lack everything else.
fn without_parts(plans: Vec<Asked>) -> Vec<Asked> {
    let real: Vec<Option<PathBuf>> = plans
        .iter()
        .map(|asked| {
            asked
                .file
                .as_ref()
                .and_then(|file| fs::canonicalize(file).ok())
        })
        .collect();
    let mut kept = vec![true; plans.len()];
    for (at, asked) in plans.iter().enumerate() {
        let used = |(other, user): (usize, &Asked)| {
            other != at
                && kept[other]
                && real[at]
                    .as_ref()
                    .is_some_and(|real| user.uses.contains(real))
        };
        if asked.found && plans.iter().enumerate().any(used) {
            kept[at] = false;
        }
    }
    plans
        .into_iter()
        .zip(kept)
        .filter_map(|(asked, kept)| kept.then_some(asked))
        .collect()
}

/// The plans in a folder and below it, by name. Hidden folders and links to folders are passed by.
fn gather(folder: &Path, files: &mut Vec<PathBuf>) -> io::Result<()> {
    let mut entries: Vec<fs::DirEntry> = fs::read_dir(folder)?.collect::<Result<_, _>>()?;
    entries.sort_by_key(fs::DirEntry::file_name);
    for entry in entries {
        let kind = entry.file_type()?;
        let path = entry.path();
        let hidden = entry.file_name().to_string_lossy().starts_with('.');
        if kind.is_dir() {
            if !hidden {
                gather(&path, files)?;
            }
        } else if !hidden
            && path.extension().is_some_and(|ending| ending == ENDING)
            && path.is_file()
        {
            files.push(path);
        }
    }
    Ok(())
}

fn file(path: &Path, found: bool) -> Result<Asked, String> {
    let name = path.display().to_string();
    let refused = |why: String| format!("cannot read {name}: {why}");
    let bytes = read_file(path).map_err(refused)?;
    let text = text_of(&bytes).map_err(refused)?;
    let mut asked = resolved(&name, text)?;
    asked.file = Some(path.to_path_buf());
    asked.found = found;
    Ok(asked)
}

fn standard_input(named: Option<&Path>) -> Result<Asked, String> {
    let refused = |why: String| format!("cannot read standard input: {why}");
    let bytes = read_all(io::stdin().lock()).map_err(refused)?;
    let text = text_of(&bytes).map_err(refused)?;
    let name = named.map_or_else(
        || STANDARD_INPUT.into(),
        |named| named.display().to_string(),
    );
    resolved(&name, text)
}

/// The plan of a text. A `use` that leads nowhere ends it: without those declarations nothing
/// said about the rest could be trusted.
fn resolved(name: &str, text: String) -> Result<Asked, String> {
    let text: Arc<str> = text.into();
    let tree = Arc::new(syntax::read(text.clone()));
    let shelf = Shelf::of(Path::new(name));
    let plan = plan::resolve(name, tree, &shelf);
    let missing: Vec<String> = plan
        .problems
        .iter()
        .filter_map(|problem| match &problem.kind {
            ProblemKind::UseMissing { path, why } => {
                let at = Texts::of(&plan).whereabouts(problem.place);
                Some(format!("cannot read \"{path}\", used at {at}: {why}"))
            }
            _ => None,
        })
        .collect();
    if !missing.is_empty() {
        return Err(missing.join("\nfitwright: "));
    }
    Ok(Asked {
        file: None,
        text,
        plan,
        uses: shelf.taken(),
        found: false,
    })
}

/// What stands in a file, in bytes.
///
/// # Errors
/// Why it cannot be read, in a few words.
pub fn read_file(path: &Path) -> Result<Vec<u8>, String> {
    let meta = fs::metadata(path).map_err(|error| why_not(&error))?;
    if meta.is_dir() {
        return Err("it is a folder".into());
    }
    if meta.is_file() && meta.len() > LONGEST as u64 {
        return Err(too_large());
    }
    read_all(File::open(path).map_err(|error| why_not(&error))?)
}

/// All that comes, up to the most that a plan may be.
fn read_all(from: impl Read) -> Result<Vec<u8>, String> {
    let mut bytes = Vec::new();
    let most = LONGEST as u64 + 1;
    from.take(most)
        .read_to_end(&mut bytes)
        .map_err(|error| why_not(&error))?;
    if bytes.len() as u64 == most {
        return Err(too_large());
    }
    Ok(bytes)
}

fn too_large() -> String {
    format!(
        "it is larger than {} MiB, and no plan is",
        LONGEST / (1024 * 1024)
    )
}

/// Bytes as text.
///
/// # Errors
/// Why they are none, in a few words.
pub fn text_of(bytes: &[u8]) -> Result<String, String> {
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        return Err("it is saved as UTF-16; save it as UTF-8".into());
    }
    let line = |at: usize| bytes[..at].iter().filter(|byte| **byte == b'\n').count() + 1;
    if let Some(at) = bytes.iter().position(|byte| *byte == 0) {
        return Err(format!(
            "it is not a text file (there is a zero byte in line {})",
            line(at)
        ));
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => Ok(text.to_owned()),
        Err(error) => {
            let at = error.valid_up_to();
            Err(format!(
                "byte {:#04x} in line {} is not UTF-8; save the file as UTF-8",
                bytes[at],
                line(at)
            ))
        }
    }
}

/// Why a file could not be had, in a few words.
pub fn why_not(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::NotFound => "there is no such file".into(),
        io::ErrorKind::PermissionDenied => "you have no leave to read it".into(),
        _ => error.to_string(),
    }
}
