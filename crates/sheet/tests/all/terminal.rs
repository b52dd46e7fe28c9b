//! The sheet on a terminal and on paper.

use crate::bench::{page, sheet};
use sheet::Look;
use sheet::terminal;

const TEXT: &str = "plan \"Wash pump\"\n  revision 2\n  machine \"Wash pump, belt-driven\"\n  people 2\n  \
     reviewed by \"KT\" on 2031-05-14\npart case \"Case\" given\npart cover \"Cover\" onto case\n\
     fasteners screws \"Screws\" 6 x M5 hold cover torque 4 N.m from \"sheet 2\"\nstage \"Closing\" in any order\n\
     tighten screws\nfit cover\n";

#[test]
fn the_whole_page() {
    assert_eq!(
        page(TEXT),
        "Wash pump
Wash pump, belt-driven.
2 steps from its parts, 2 people. Plan: pump.rebuild, revision 2.
Reviewed by KT on 2031-05-14.

Closing
These steps have no fixed order; this one works.
--------------------------------------------------------------------------------
[ ]  1  Fit Cover
[ ]  2  Tighten Screws
        size      6 x M5
        final     4 N.m (35 lbf.in) (sheet 2)

--------------------------------------------------------------------------------
The maker's manual, local codes and a licensed or qualified person come before
this sheet. Where they say otherwise, stop and do what they say.
"
    );
}

#[test]
fn nothing_runs_over_the_edge() {
    let long =
        "A name that is a good deal longer than anybody would want to write on a sheet of paper";
    let text = format!(
        "plan \"{long}\"\n  machine \"{long}\"\npart case \"{long}\" given\npart cover \"{long}, cover\" onto case covers gap\n\
         point gap \"{long}, gap\" on case\nstage \"{long}\"\nmeasure gap note \"{long}\" caution \"{long}\"\nfit cover\n"
    );
    for width in [60, 80, 100] {
        let page = terminal::sheet(
            &sheet(&text),
            Look {
                width,
                ..Look::PAPER
            },
        );
        for line in page.lines() {
            assert!(sheet::look::columns_of(line) <= width, "{width}: {line}");
        }
    }
}

#[test]
fn colour_never_spans_a_line_end() {
    let painted = terminal::sheet(
        &sheet(TEXT),
        Look {
            color: true,
            ..Look::PAPER
        },
    );
    for line in painted.lines() {
        let (on, off) = (
            line.matches("\u{1b}[").count(),
            line.matches("\u{1b}[0m").count(),
        );
        assert_eq!(on, 2 * off, "{line:?}");
    }
}
