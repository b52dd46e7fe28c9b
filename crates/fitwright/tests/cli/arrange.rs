//! `arrange`: what is moved, and that nothing else is touched.

use crate::bench::{BAD, GOOD, KNOT, folder, run, run_with, with};
use std::fs;

/// BAD with its measuring and the comment above it where they belong.
fn mended() -> String {
    let moved = "# With the thin feelers.\nmeasure tip-gap expect 0.1..0.3 mm   # three places\n";
    let rest = BAD.strip_suffix(moved).unwrap();
    rest.replace("fit impeller\n", &format!("fit impeller\n{moved}"))
}

#[test]
fn the_change_is_shown_and_nothing_written() {
    let folder = with("arrange-diff", "pump.rebuild", BAD);
    let ran = run(&folder, &["arrange", "pump.rebuild"]);
    assert_eq!(ran.status, 0, "{}", ran.err);
    assert_eq!(
        ran.out,
        "--- pump.rebuild
+++ pump.rebuild
@@ -7,7 +7,7 @@
 point tip-gap \"Gap at the tip\" on impeller
 
 fit impeller
+# With the thin feelers.
+measure tip-gap expect 0.1..0.3 mm   # three places
 fit cover
 tighten cover-screws
-# With the thin feelers.
-measure tip-gap expect 0.1..0.3 mm   # three places
"
    );
    assert!(
        ran.err
            .starts_with("Step 4 (Measure Gap at the tip) goes behind step 1 (Fit Impeller)"),
        "{}",
        ran.err
    );
    assert_eq!(
        fs::read_to_string(folder.join("pump.rebuild")).unwrap(),
        BAD
    );
}

#[test]
fn written_to_the_byte() {
    let folder = folder("arrange-write");
    let mut all = vec![(BAD.to_owned(), mended())];
    all.push((BAD.replace('\n', "\r\n"), mended().replace('\n', "\r\n")));
    all.push((format!("\u{feff}{BAD}"), format!("\u{feff}{}", mended())));
    let odd = |text: &str| text.replace("fit cover", "fit\tcover \t# öl 油\u{301}");
    all.push((odd(BAD), odd(&mended())));
    for (n, (before, after)) in all.iter().enumerate() {
        let name = format!("{n}.rebuild");
        fs::write(folder.join(&name), before).unwrap();
        let ran = run(&folder, &["arrange", "--write", &name]);
        assert_eq!((ran.status, ran.out.as_str()), (0, ""), "{}", ran.err);
        assert!(
            ran.err.ends_with(&format!("{name}: 1 step moved.\n")),
            "{}",
            ran.err
        );
        assert_eq!(&fs::read_to_string(folder.join(&name)).unwrap(), after);
        assert_eq!(run(&folder, &["check", &name]).status, 0);
    }
    let files = fs::read_dir(&folder).unwrap().count();
    assert_eq!(files, all.len(), "nothing else is left in the folder");
}

#[test]
fn a_sound_plan_is_not_touched() {
    let folder = with("arrange-good", "pump.rebuild", GOOD);
    let path = folder.join("pump.rebuild");
    let before = fs::metadata(&path).unwrap().modified().unwrap();
    let ran = run(&folder, &["arrange", "--write", "pump.rebuild"]);
    assert_eq!((ran.status, ran.out.as_str()), (0, ""));
    assert_eq!(ran.err, "pump.rebuild: nothing has to move.\n");
    assert_eq!(fs::metadata(&path).unwrap().modified().unwrap(), before);
}

#[test]
fn what_no_move_mends_is_told() {
    let plan = "part case given\npart pin onto case temporary\nfit pin\n";
    let folder = with("arrange-left-in", "pump.rebuild", plan);
    let ran = run(&folder, &["arrange", "pump.rebuild"]);
    assert_eq!(
        ran.err,
        "pump.rebuild: nothing to move; 1 error remains that moving does not mend; \
         see `fitwright check pump.rebuild`.\n"
    );
}

#[test]
fn where_no_order_works_it_says_why() {
    let folder = with("arrange-knot", "knot.rebuild", KNOT);
    let ran = run(&folder, &["arrange", "--write", "knot.rebuild"]);
    assert_eq!(ran.status, 1);
    assert!(
        ran.out.starts_with("error no-order  knot.rebuild:"),
        "{}",
        ran.out
    );
    assert_eq!(
        ran.err,
        "knot.rebuild: no order works, so nothing was moved.\n"
    );
    assert_eq!(
        fs::read_to_string(folder.join("knot.rebuild")).unwrap(),
        KNOT
    );
}

#[test]
fn standard_input_is_written_to_standard_output() {
    let folder = folder("arrange-stdin");
    let ran = run_with(&folder, &["arrange", "--write", "-"], BAD.as_bytes());
    assert_eq!((ran.status, ran.out), (0, mended()));
    let good = run_with(&folder, &["arrange", "--write", "-"], GOOD.as_bytes());
    assert_eq!((good.status, good.out.as_str()), (0, GOOD));
}

#[cfg(unix)]
#[test]
fn permissions_and_links_stay() {
    use std::os::unix::fs::{PermissionsExt, symlink};
    let folder = with("arrange-mode", "pump.rebuild", BAD);
    let path = folder.join("pump.rebuild");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).unwrap();
    symlink("pump.rebuild", folder.join("link.rebuild")).unwrap();
    assert_eq!(
        run(&folder, &["arrange", "--write", "link.rebuild"]).status,
        0
    );
    assert_eq!(
        fs::metadata(&path).unwrap().permissions().mode() & 0o777,
        0o640
    );
    assert!(
        fs::symlink_metadata(folder.join("link.rebuild"))
            .unwrap()
            .is_symlink()
    );
    assert_eq!(fs::read_to_string(&path).unwrap(), mended());
}

#[cfg(unix)]
#[test]
fn a_write_protected_plan_stays_as_it_is() {
    use std::os::unix::fs::PermissionsExt;
    let folder = with("arrange-protected", "pump.rebuild", BAD);
    let path = folder.join("pump.rebuild");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o444)).unwrap();
    let ran = run(&folder, &["arrange", "--write", "pump.rebuild"]);
    assert_eq!(ran.status, 2);
    assert!(
        ran.err
            .ends_with("fitwright: cannot write pump.rebuild: it is write-protected\n"),
        "{}",
        ran.err
    );
    assert_eq!(fs::read_to_string(&path).unwrap(), BAD);
}

#[test]
fn of_very_many_moves_only_some_are_told() {
    let mut text = String::from("part case given\n");
    for n in 0..40 {
        text += &format!("part gear-{n} onto case\npart lid-{n} onto case covers gear-{n}\n");
    }
    for n in 0..40 {
        text += &format!("fit lid-{n}\nfit gear-{n}\n");
    }
    let folder = with("arrange-many", "many.rebuild", text);
    let ran = run(&folder, &["arrange", "--write", "many.rebuild"]);
    assert_eq!(ran.status, 0, "{}", ran.err);
    assert_eq!(ran.err.matches(" goes ").count(), 30, "{}", ran.err);
    assert!(
        ran.err
            .ends_with("10 more move: see the change itself.\nmany.rebuild: 40 steps moved.\n"),
        "{}",
        ran.err
    );
    assert_eq!(run(&folder, &["check", "many.rebuild"]).status, 0);
}
