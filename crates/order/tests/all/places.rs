//! Earliest and latest places, against every order.

use crate::brute::{Dice, Facts, Sort};
use order::{Effort, place_of, places};

fn agrees(seed: u64, cases: usize, sort: Sort) {
    let mut dice = Dice::new(seed);
    let mut met = 0;
    for _ in 0..cases {
        let facts = Facts::random(&mut dice, sort);
        let inst = facts.instance();
        let mut seen = vec![(usize::MAX, 0); facts.n];
        facts.each_order(|order| {
            for (i, &s) in order.iter().enumerate() {
                let (first, last) = &mut seen[s as usize];
                *first = (*first).min(i + 1);
                *last = (*last).max(i + 1);
            }
        });
        let found = places(&inst, Effort::default());
        if seen.first().is_some_and(|s| s.1 == 0) {
            assert!(found.is_empty(), "{facts:?}");
            continue;
        }
        assert_eq!(found.len(), facts.n);
        for (step, (place, &(first, last))) in found.iter().zip(&seen).enumerate() {
            assert!(place.exact, "{facts:?}");
            assert_eq!(
                (place.earliest, place.latest),
                (first, last),
                "{step} of {facts:?}"
            );
            assert_eq!(*place, place_of(&inst, step as u32, Effort::default()));
            met += usize::from(first < last);
        }
    }
    assert!(met > cases, "{met}");
}

#[test]
fn plain() {
    agrees(41, 10_000, Sort::ACYCLIC);
}

#[test]
fn access() {
    agrees(42, 15_000, Sort::ACCESS);
}

#[test]
fn mixed() {
    agrees(43, 15_000, Sort::MIXED);
}

/// With next to no effort the places may be wide, never wrong.
#[test]
fn bounds_hold_when_the_search_is_cut_short() {
    let mut dice = Dice::new(44);
    let mut wide = 0;
    for round in 0..10_000 {
        let sort = if round % 2 == 0 {
            Sort::ACCESS
        } else {
            Sort::MIXED
        };
        let facts = Facts::random(&mut dice, sort);
        if !facts.has_order() {
            continue;
        }
        let inst = facts.instance();
        let found: Vec<_> = (0..facts.n as u32)
            .map(|step| place_of(&inst, step, Effort { nodes: 2 }))
            .collect();
        let mut reached = vec![(false, false); facts.n];
        facts.each_order(|order| {
            for (i, &s) in order.iter().enumerate() {
                let place = found[s as usize];
                assert!(place.earliest <= i + 1 && i < place.latest, "{facts:?}");
                reached[s as usize].0 |= place.earliest == i + 1;
                reached[s as usize].1 |= place.latest == i + 1;
            }
        });
        for (place, reached) in found.iter().zip(reached) {
            if place.exact {
                assert_eq!(reached, (true, true), "{place:?} of {facts:?}");
            } else {
                wide += 1;
            }
        }
    }
    assert!(wide > 100, "{wide}");
}
