//! The reach chart.

use crate::bench::{ASCII, plan};
use check::Bench;
use sheet::Look;
use sheet::chart::chart;

fn drawn(text: &str, look: Look) -> String {
    let plan = plan(text);
    let bench = Bench::of(&plan);
    chart(&plan, bench.order(), &bench.windows(), look)
}

const TEXT: &str = "part case given\npart gear \"Gear\" onto case\npart cover \"Cover\" onto case covers gear\n\
     point play \"Backlash\" on gear\nfit gear\nmeasure play\nfit cover\n";

#[test]
fn a_row_shows_when_a_thing_is_in_reach_and_used() {
    assert_eq!(
        drawn(TEXT, ASCII),
        "step      1 3
Backlash  =O=
    open from the start, closed by step 3 (Fit Cover); wanted at step 2

= in reach   . shut in   O worked at   X worked at while shut in
"
    );
}

#[test]
fn work_at_what_is_shut_in_is_crossed() {
    let text = format!("{TEXT}measure play\ndo \"Wipe it\"\n");
    let page = drawn(&text, ASCII);
    assert!(page.contains("Backlash  =O=X.\n"), "{page}");
}

#[test]
fn many_steps_share_columns() {
    let text = format!("{TEXT}{}", "do \"Wipe it\"\n".repeat(300));
    let page = drawn(&text, ASCII);
    assert!(page.lines().all(|line| line.len() <= 80), "{page}");
    assert!(page.contains("Each column stands for 5 steps."), "{page}");
    assert!(page.contains("Backlash  O....."), "{page}");
}

#[test]
fn nothing_to_reach_is_said() {
    assert_eq!(
        drawn("part a\nfit a\n", ASCII),
        "Nothing in this plan has to be reached.\n"
    );
}
