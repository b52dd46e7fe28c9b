//! What the tests work with: a folder of their own, the program, small plans.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// A plan with nothing wrong in it.
pub const GOOD: &str = r#"plan "Wash pump"
  revision 2
  machine "Wash pump, belt-driven"
  torque in N.m

part housing "Pump housing" given
part impeller "Impeller" onto housing mass 2 kg
part cover "Pump cover" onto housing covers impeller
fasteners cover-screws "Cover screws" 6 x M5 hold cover torque 4 N.m from "sheet 2"
point tip-gap "Gap at the tip" on impeller
  must be measured before impeller is covered

stage "Inside"

fit impeller
measure tip-gap expect 0.1..0.3 mm

stage "Closing"

fit cover
tighten cover-screws with small-wrench
tool small-wrench "Small torque wrench"
  kind torque-wrench
  range 2..10 N.m
"#;

/// The same with the measuring left until the cover is on.
pub const BAD: &str = r#"plan "Wash pump"

part housing "Pump housing" given
part impeller "Impeller" onto housing
part cover "Pump cover" onto housing covers impeller
fasteners cover-screws "Cover screws" 6 x M5 hold cover torque 4 N.m from "sheet 2"
point tip-gap "Gap at the tip" on impeller

fit impeller
fit cover
tighten cover-screws
# With the thin feelers.
measure tip-gap expect 0.1..0.3 mm   # three places
"#;

/// Two parts that each want the other first.
pub const KNOT: &str = r#"plan "Knot"

part housing given
part left onto housing needs right
part right onto housing needs left

fit left
fit right
"#;

/// A folder for one test, emptied first.
pub fn folder(test: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(test);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

/// A folder with one file in it.
pub fn with(test: &str, name: &str, text: impl AsRef<[u8]>) -> PathBuf {
    let folder = folder(test);
    fs::write(folder.join(name), text).unwrap();
    folder
}

/// What came of a run.
pub struct Ran {
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
    /// The exit status.
    pub status: i32,
}

/// The program, run in `folder`, with surroundings that do not depend on who runs the tests.
pub fn command(folder: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_fitwright"));
    command
        .current_dir(folder)
        .args(arguments)
        .env_remove("NO_COLOR")
        .env_remove("LC_CTYPE")
        .env_remove("COLUMNS")
        .env("LC_ALL", "C.UTF-8")
        .env("TERM", "xterm-256color");
    command
}

/// Runs it.
pub fn run(folder: &Path, arguments: &[&str]) -> Ran {
    ran(&mut command(folder, arguments), None)
}

/// Runs it with something on standard input.
pub fn run_with(folder: &Path, arguments: &[&str], input: &[u8]) -> Ran {
    ran(&mut command(folder, arguments), Some(input))
}

/// Runs a command.
pub fn ran(command: &mut Command, input: Option<&[u8]>) -> Ran {
    command
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .stdin(Stdio::piped());
    let mut child = command.spawn().unwrap();
    let mut stdin = child.stdin.take().unwrap();
    if let Some(input) = input {
        // It may have said no before it has read everything.
        let _ = stdin.write_all(input);
    }
    drop(stdin);
    let output = child.wait_with_output().unwrap();
    let ran = Ran {
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
        status: output.status.code().unwrap_or(-1),
    };
    assert!(!ran.err.contains("panicked"), "{}", ran.err);
    ran
}
