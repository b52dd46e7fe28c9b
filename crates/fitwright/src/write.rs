//! Changing a file: all of it or nothing.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// Puts `new` in the place of what stands in the file, which must still be `old`. The text goes
/// into a new file in the same folder first, so that at no moment a half-written plan is there;
/// permissions stay. A link keeps pointing where it points.
///
/// # Errors
/// When the file has changed since it was read, or cannot be written: then it is as it was.
pub fn replace(path: &Path, old: &[u8], new: &[u8]) -> Result<(), String> {
    let name = path.display();
    let real = fs::canonicalize(path).map_err(|error| format!("cannot write {name}: {error}"))?;
    let now = fs::read(&real).map_err(|error| format!("cannot write {name}: {error}"))?;
    if now != old {
        return Err(format!(
            "{name} has changed since it was read, so nothing was written"
        ));
    }
    if old == new {
        return Ok(());
    }
    let meta = fs::metadata(&real).map_err(|error| format!("cannot write {name}: {error}"))?;
    if meta.permissions().readonly() {
        return Err(format!("cannot write {name}: it is write-protected"));
    }
    let (beside, mut file) =
        beside(&real).map_err(|error| format!("cannot write {name}: {error}"))?;
    let done = fill(&mut file, new, &meta).and_then(|()| fs::rename(&beside, &real));
    done.map_err(|error| {
        // The new file is of no use to anyone; the plan is untouched.
        let _ = fs::remove_file(&beside);
        format!("cannot write {name}: {error}")
    })
}

fn fill(file: &mut File, new: &[u8], meta: &fs::Metadata) -> io::Result<()> {
    file.write_all(new)?;
    file.set_permissions(meta.permissions())?;
    file.sync_all()
}

/// A new file in the same folder as `path`.
fn beside(path: &Path) -> io::Result<(PathBuf, File)> {
    let folder = path.parent().unwrap_or(Path::new("."));
    let name = path
        .file_name()
        .map(|name| name.to_string_lossy())
        .unwrap_or_default();
    let mut last = io::Error::from(io::ErrorKind::AlreadyExists);
    for n in 0..100 {
        let beside = folder.join(format!(".{name}.{}-{n}.new", std::process::id()));
        match OpenOptions::new()
            .write(true)
            .create_new(true)
            .open(&beside)
        {
            Ok(file) => return Ok((beside, file)),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => last = error,
            Err(error) => return Err(error),
        }
    }
    Err(last)
}
