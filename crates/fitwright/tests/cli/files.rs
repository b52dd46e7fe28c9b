//! Files that cannot be read, pipes, standard input.

use crate::bench::{BAD, GOOD, command, folder, ran, run, run_with, with};
use std::fs::{self, File};
use std::io::Read;
use std::path::Path;
use std::process::Stdio;

/// The program says one thing, on standard error, and its status is 2.
fn refused(folder: &Path, arguments: &[&str], wanted: &str) {
    let ran = run(folder, arguments);
    assert_eq!((ran.status, ran.out.as_str()), (2, ""), "{}", ran.err);
    assert_eq!(ran.err, format!("fitwright: {wanted}\n"));
}

#[test]
fn what_cannot_be_read_is_named_once() {
    let folder = folder("files-refused");
    fs::create_dir(folder.join("empty")).unwrap();
    fs::write(folder.join("picture.rebuild"), b"\x89PNG\n\x00\x01").unwrap();
    fs::write(
        folder.join("latin.rebuild"),
        b"plan \"x\"\npart k\xfchler\n",
    )
    .unwrap();
    fs::write(folder.join("wide.rebuild"), b"\xff\xfep\x00a\x00").unwrap();
    File::create(folder.join("huge.rebuild"))
        .unwrap()
        .set_len((64 << 20) + 1)
        .unwrap();
    let all = [
        ("none.rebuild", "there is no such file"),
        (
            "picture.rebuild",
            "it is not a text file (there is a zero byte in line 2)",
        ),
        (
            "latin.rebuild",
            "byte 0xfc in line 2 is not UTF-8; save the file as UTF-8",
        ),
        ("wide.rebuild", "it is saved as UTF-16; save it as UTF-8"),
        ("huge.rebuild", "it is larger than 64 MiB, and no plan is"),
    ];
    for (name, why) in all {
        for command in ["check", "sheet", "arrange", "tidy", "windows", "freedom"] {
            refused(
                &folder,
                &[command, name],
                &format!("cannot read {name}: {why}"),
            );
        }
        refused(
            &folder,
            &["why", name, "1", "2"],
            &format!("cannot read {name}: {why}"),
        );
    }
    refused(
        &folder,
        &["check", "empty"],
        "there is no plan (*.rebuild) in empty",
    );
}

#[test]
fn one_bad_file_does_not_keep_the_others_back() {
    let folder = with("files-others", "pump.rebuild", BAD);
    let ran = run(&folder, &["check", "none.rebuild", "pump.rebuild"]);
    assert_eq!(ran.status, 2);
    assert!(ran.out.contains("error shut-in"), "{}", ran.out);
    assert_eq!(
        ran.err,
        "fitwright: cannot read none.rebuild: there is no such file\n"
    );
}

#[test]
fn a_use_must_stay_in_the_folder_of_the_plan() {
    let folder = folder("files-use");
    fs::create_dir_all(folder.join("plans/parts")).unwrap();
    fs::write(folder.join("secret.rebuild"), "part secret\n").unwrap();
    fs::write(
        folder.join("plans/parts/map.rebuild"),
        "part a given\npart b onto a\n",
    )
    .unwrap();
    let using = |path: &str| {
        fs::write(
            folder.join("plans/plan.rebuild"),
            format!("plan \"P\"\nuse \"{path}\"\nfit b\n"),
        )
        .unwrap();
    };
    let outside = "it lies outside the plan's folder (plans)";
    for (path, why) in [
        ("../secret.rebuild", outside),
        ("parts/../../secret.rebuild", outside),
        ("../not-there.rebuild", outside),
        ("/etc/passwd", outside),
        ("parts/none.rebuild", "there is no such file"),
        ("parts", "it is not a file"),
    ] {
        using(path);
        refused(
            &folder,
            &["check", "plans/plan.rebuild"],
            &format!("cannot read \"{path}\", used at plans/plan.rebuild:2:5: {why}"),
        );
    }
    using("parts/map.rebuild");
    assert_eq!(run(&folder, &["check", "plans/plan.rebuild"]).status, 0);
}

#[cfg(unix)]
#[test]
fn a_link_that_leads_out_is_no_way_around() {
    let folder = folder("files-link");
    fs::create_dir(folder.join("plans")).unwrap();
    fs::write(folder.join("secret.rebuild"), "part b given\n").unwrap();
    std::os::unix::fs::symlink("../secret.rebuild", folder.join("plans/map.rebuild")).unwrap();
    fs::write(
        folder.join("plans/plan.rebuild"),
        "use \"map.rebuild\"\nfit b\n",
    )
    .unwrap();
    refused(
        &folder,
        &["check", "plans/plan.rebuild"],
        "cannot read \"map.rebuild\", used at plans/plan.rebuild:1:5: it lies outside the plan's folder (plans)",
    );
}

#[test]
fn standard_input_is_a_plan_too() {
    let folder = folder("files-stdin");
    let ran = run_with(&folder, &["check", "-"], BAD.as_bytes());
    assert_eq!(ran.status, 1);
    assert!(
        ran.out.starts_with("error shut-in  standard input:13:1\n"),
        "{}",
        ran.out
    );
    let named = run_with(
        &folder,
        &["check", "-", "--named", "plans/pump.rebuild"],
        BAD.as_bytes(),
    );
    assert!(
        named
            .out
            .starts_with("error shut-in  plans/pump.rebuild:13:1\n"),
        "{}",
        named.out
    );
}

#[test]
fn a_named_standard_input_finds_what_it_uses() {
    let folder = folder("files-stdin-use");
    fs::create_dir(folder.join("plans")).unwrap();
    fs::write(
        folder.join("plans/map.rebuild"),
        "part a given\npart b onto a\n",
    )
    .unwrap();
    let plan = b"plan \"P\"\nuse \"map.rebuild\"\nfit b\n";
    let ran = run_with(
        &folder,
        &["check", "-", "--named", "plans/new.rebuild"],
        plan,
    );
    assert_eq!((ran.status, ran.err.as_str()), (0, ""), "{}", ran.out);
    assert_eq!(run_with(&folder, &["check", "-"], plan).status, 2);
}

#[test]
fn a_reader_that_goes_away_is_no_fault() {
    let folder = folder("files-pipe");
    let mut long = GOOD.to_owned();
    for n in 0..20_000 {
        long += &format!("do \"Wipe it, time {n}\"\n");
    }
    fs::write(folder.join("long.rebuild"), long).unwrap();
    let mut child = command(&folder, &["sheet", "long.rebuild"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut first = [0; 10];
    let mut out = child.stdout.take().unwrap();
    out.read_exact(&mut first).unwrap();
    drop(out);
    let output = child.wait_with_output().unwrap();
    assert_eq!(&first, b"Wash pump\n");
    assert_eq!(
        (output.status.code(), output.stderr.as_slice()),
        (Some(0), &b""[..])
    );
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_a_fault() {
    let folder = with("files-full", "pump.rebuild", GOOD);
    let full = fs::OpenOptions::new()
        .write(true)
        .open("/dev/full")
        .unwrap();
    let output = command(&folder, &["sheet", "pump.rebuild"])
        .stdout(full)
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(
        said.starts_with("fitwright: cannot write the result: "),
        "{said}"
    );
}

#[test]
fn labels_from_a_plan_cannot_drive_the_terminal() {
    let text = BAD.replace("Gap at the tip", "Gap\u{1b}[2J\u{202e}");
    let folder = with("files-escape", "pump.rebuild", text);
    for arguments in [
        &["check", "pump.rebuild"][..],
        &["sheet", "pump.rebuild"],
        &["windows", "pump.rebuild"],
        &["sheet", "pump.rebuild", "--as", "markdown"],
    ] {
        let ran = run(&folder, arguments);
        assert!(
            !ran.out.contains(['\u{1b}', '\u{202e}']),
            "{arguments:?}: {}",
            ran.out
        );
        assert!(
            !ran.err.contains(['\u{1b}', '\u{202e}']),
            "{arguments:?}: {}",
            ran.err
        );
    }
}

#[test]
fn any_line_ends_and_a_byte_order_mark_will_do() {
    let folder = folder("files-ends");
    for (name, text) in [
        ("crlf", BAD.replace('\n', "\r\n")),
        ("cr", BAD.replace('\n', "\r")),
        ("bom", format!("\u{feff}{BAD}")),
        ("open", BAD.trim_end().to_owned()),
    ] {
        let name = format!("{name}.rebuild");
        fs::write(folder.join(&name), text).unwrap();
        let ran = run(&folder, &["check", &name]);
        assert_eq!(ran.status, 1, "{}", ran.err);
        assert!(
            ran.out
                .starts_with(&format!("error shut-in  {name}:13:1\n")),
            "{}",
            ran.out
        );
        assert!(!ran.out.contains('\r'), "{}", ran.out);
    }
}

#[test]
fn a_plan_may_come_through_a_pipe_with_a_name() {
    let folder = with("files-same", "pump.rebuild", GOOD);
    let twice = run(&folder, &["check", "pump.rebuild", "./pump.rebuild"]);
    assert!(
        twice.out.starts_with("pump.rebuild: nothing wrong"),
        "{}",
        twice.out
    );
    let mut none = command(&folder, &["check"]);
    assert_eq!(ran(&mut none, None).status, 2, "a plan must be named");
}
