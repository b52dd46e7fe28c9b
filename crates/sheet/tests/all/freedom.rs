//! The freedom of an order.

use crate::bench::{ASCII, plan};
use check::Bench;
use sheet::freedom::freedom;

fn told(text: &str) -> String {
    let plan = plan(text);
    let bench = Bench::of(&plan);
    freedom(&plan, bench.order(), &bench.freedom(), ASCII)
}

#[test]
fn a_chain_has_one_order() {
    let page = told("part a given\npart b onto a\npart c onto b\nfit b\nfit c\n");
    assert!(
        page.starts_with("Only one order of the 2 steps works"),
        "{page}"
    );
    assert!(page.contains("  1  Fit b "), "{page}");
}

#[test]
fn free_steps_can_stand_anywhere() {
    let page =
        told("part a given\npart b onto a\npart c onto a\npart d onto a\nfit b\nfit c\nfit d\n");
    assert!(page.starts_with("6 orders of the 3 steps work."), "{page}");
    let row = page.lines().find(|line| line.contains("Fit c")).unwrap();
    assert!(row.contains("-#-") && row.ends_with("1      3"), "{row}");
    assert!(page.lines().all(|line| line.len() <= 80), "{page}");
}

#[test]
fn no_steps_no_table() {
    assert_eq!(told("part a given\n").lines().count(), 1);
}
