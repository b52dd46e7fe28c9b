//! The tidy form.

use crate::plain;

/// The tidy form of a text, which must be its own tidy form and say the same.
fn tidy(text: &str) -> String {
    let tree = syntax::read(text);
    let tidy = syntax::tidy(&tree);
    let again = syntax::read(tidy.as_str());
    assert_eq!(syntax::tidy(&again), tidy, "tidy again: {text:?}");
    assert_eq!(plain::items(&again), plain::items(&tree), "{text:?}");
    let kinds = |tree: &syntax::tree::Tree| -> Vec<_> {
        tree.problems
            .iter()
            .map(|problem| problem.kind.clone())
            .collect()
    };
    assert_eq!(kinds(&again), kinds(&tree), "{text:?}");
    tidy
}

#[test]
fn the_sample_is_tidy_but_for_its_comments() {
    let sample = crate::sample::SAMPLE;
    let expected: Vec<String> = sample
        .lines()
        .map(|line| match line.split_once('#') {
            Some((before, comment)) if !before.trim().is_empty() => {
                format!("{}  #{comment}", before.trim_end())
            }
            _ => line.trim_end().to_owned(),
        })
        .collect();
    assert_eq!(tidy(sample), expected.join("\n") + "\n");
}

#[test]
fn blanks_between_words_are_one() {
    assert_eq!(tidy("fit  a\t,b ,  c   and   d  "), "fit a, b, c and d\n");
    assert_eq!(
        tidy("part a\n\tonto    b\n       mass 2\u{a0}kg\n"),
        "part a\n  onto b\n  mass 2 kg\n"
    );
    assert_eq!(tidy("fit a,and b"), "fit a, and b\n");
}

#[test]
fn words_stay_as_they_were_written() {
    let text = "fit the a and the b after the c are fitted, d is on\n  with wrench 5/8 in\n";
    assert_eq!(tidy(text), text);
}

#[test]
fn figures_stand_apart_from_their_units() {
    assert_eq!(
        tidy(
            "fasteners f 8x M6 torque 20 .. 24N.m\n  torque 22+-2 N.m\n  torque 22 N.m±10%\n  drive hex 13mm\n"
        ),
        "fasteners f 8 x M6 torque 20..24 N.m\n  torque 22 +- 2 N.m\n  torque 22 N.m ± 10 %\n  drive hex 13 mm\n"
    );
    assert_eq!(
        tidy("fasteners f 8× M6x1\n  passes 20N.m then turn 90°\n"),
        "fasteners f 8 × M6x1\n  passes 20 N.m then turn 90°\n"
    );
    assert_eq!(
        tidy("item w size 16x22x1.5mm"),
        "item w size 16x22x1.5 mm\n"
    );
    assert_eq!(tidy("fit a to 150°C"), "fit a to 150 °C\n");
}

#[test]
fn quoted_texts_are_left_alone() {
    let text = "do \"a  b ,c  ..  5N.m \"\"x\"\"\u{a0}\"\n";
    assert_eq!(tidy(text), text);
    assert_eq!(
        tidy("part  a   \"x  y\"   onto  b"),
        "part a \"x  y\" onto b\n"
    );
}

#[test]
fn comments_are_kept() {
    assert_eq!(
        tidy(
            "#first\npart a # one\n      # two\n# three   \n  onto b    # four\nitem w size #10-32 UNF # five\n8"
        ),
        "#first\npart a  # one\n  # two\n# three\n  onto b  # four\nitem w size #10-32 UNF  # five\n8\n"
    );
}

#[test]
fn a_comment_does_not_become_a_thread() {
    assert_eq!(
        tidy("fasteners f\n  2 x bolts#10-32 seen"),
        "fasteners f\n  2 x bolts#10-32 seen\n"
    );
}

#[test]
fn blank_lines_are_one_at_most_and_none_at_the_ends() {
    assert_eq!(
        tidy("\n\n  \nfit a\n\n\n\t\nstage \"S\"\n\nfit b\nfit c\n\n\n"),
        "fit a\n\nstage \"S\"\n\nfit b\nfit c\n"
    );
    assert_eq!(tidy("\n\n"), "");
    assert_eq!(tidy(""), "");
}

#[test]
fn line_ends_are_of_one_kind() {
    assert_eq!(
        tidy("fit a\r\nfit b\r\nfit c\n"),
        "fit a\r\nfit b\r\nfit c\r\n"
    );
    assert_eq!(tidy("fit a\rfit b"), "fit a\rfit b\r");
    assert_eq!(tidy("fit a\nfit b\r\nfit c"), "fit a\nfit b\nfit c\n");
    assert_eq!(tidy("fit a\r\nfit b\nfit c"), "fit a\r\nfit b\r\nfit c\r\n");
    assert_eq!(tidy("fit a"), "fit a\n");
}

#[test]
fn the_byte_order_mark_is_kept() {
    assert_eq!(tidy("\u{feff}fit  a"), "\u{feff}fit a\n");
    assert_eq!(tidy("\u{feff}"), "\u{feff}");
}

#[test]
fn what_cannot_be_read_is_left_byte_for_byte() {
    for line in [
        "prat  a   \"x\"  ",
        "fit  a ,,  b",
        "fit  a   aftr  b  # c",
        "do  \"open  ",
        "fit  be\u{202e}lt  a",
        "torque   22 N.m",
        "fit a  # hid\u{200b}den  ",
    ] {
        assert_eq!(
            tidy(&format!("part p\n{line}\n  onto   q\n")),
            format!("part p\n{line}\n  onto q\n")
        );
    }
    for line in ["  onto   a,  ,b ", "\t fit   a", "   note  \"x"] {
        assert_eq!(
            tidy(&format!("part p\n{line}\n")),
            format!("part p\n{line}\n")
        );
    }
    assert_eq!(
        tidy("    onto   p\n  given   \n"),
        "    onto   p\n  given\n"
    );
}

#[test]
fn capitals_are_no_reason_to_leave_a_line() {
    assert_eq!(tidy("part  Cover   onto  Block"), "part Cover onto Block\n");
}
