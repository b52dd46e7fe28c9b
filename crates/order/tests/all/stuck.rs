//! Why no order exists: every reason is needed, and together they are enough.

use crate::brute::{Dice, Facts, Sort};
use order::{Effort, Feasibility, Reason, Stuck, StuckKind, feasible};

fn explained(facts: &Facts) -> Option<Stuck> {
    match feasible(&facts.instance(), Effort::default()) {
        Feasibility::Stuck(stuck) => Some(stuck),
        _ => None,
    }
}

/// The length of a shortest closed walk of plain arcs, by trying every step.
fn shortest_cycle(facts: &Facts) -> Option<usize> {
    let mut best = None;
    for start in 0..facts.n as u32 {
        let mut here = 1u32 << start;
        for length in 1..=facts.n {
            let arcs = facts.arcs.iter().filter(|a| here >> a.0 & 1 == 1);
            here = arcs.fold(0, |set, a| set | 1 << a.1);
            if here >> start & 1 == 1 {
                best = Some(best.map_or(length, |b: usize| b.min(length)));
                break;
            }
        }
    }
    best
}

#[test]
fn a_cycle_is_a_shortest_one() {
    let mut dice = Dice::new(21);
    let mut met = 0;
    for _ in 0..12_000 {
        let facts = Facts::random(&mut dice, Sort::PLAIN);
        let Some(stuck) = explained(&facts) else {
            assert_eq!(shortest_cycle(&facts), None);
            continue;
        };
        met += 1;
        let StuckKind::Cycle { links, shortest } = stuck.kind else {
            panic!("not a cycle: {facts:?}");
        };
        assert!(shortest);
        assert_eq!(Some(links.len()), shortest_cycle(&facts), "{facts:?}");
        for (i, &(a, why, b)) in links.iter().enumerate() {
            assert!(facts.arcs.contains(&(a, b, why)));
            assert_eq!(b, links[(i + 1) % links.len()].0);
            assert_eq!(a, stuck.steps[i]);
        }
        let mut reasons: Vec<Reason> = links.iter().map(|l| l.1).collect();
        reasons.sort_unstable();
        assert_eq!(reasons, stuck.reasons);
        // With a reason for each arc a shortest cycle is also minimal.
        each_is_needed(&facts, &stuck.reasons);
    }
    assert!(met > 2000, "{met}");
}

fn each_is_needed(facts: &Facts, reasons: &[Reason]) {
    let with = facts.only(|why| reasons.contains(&why));
    assert!(!with.has_order(), "not enough: {reasons:?} of {facts:?}");
    for &out in reasons {
        let less = facts.only(|why| why != out && reasons.contains(&why));
        assert!(
            less.has_order(),
            "{out:?} is not needed among {reasons:?} of {facts:?}"
        );
    }
}

fn minimal(seed: u64, cases: usize, sort: Sort) {
    let mut dice = Dice::new(seed);
    let (mut cycles, mut others) = (0, 0);
    let mut tried = 0;
    while cycles + others < cases {
        tried += 1;
        assert!(tried < 40 * cases, "too few without an order");
        let facts = Facts::random(&mut dice, sort);
        let Some(stuck) = explained(&facts) else {
            continue;
        };
        match stuck.kind {
            StuckKind::Cycle { links, .. } => {
                cycles += 1;
                // Reasons that stand for several facts may let a cycle be
                // explained by fewer of them; it is only claimed to be shortest.
                let with = facts.only(|why| stuck.reasons.contains(&why));
                assert!(!with.has_order());
                for (a, why, b) in links {
                    let arc = facts.arcs.contains(&(a, b, why));
                    let single = facts.waits.iter().any(|wait| match wait.ways.as_slice() {
                        [way] => {
                            (wait.step == a && way.later.contains(&(b, why)))
                                || (wait.step == b && way.earlier.contains(&(a, why)))
                        }
                        _ => false,
                    });
                    assert!(arc || single, "{a} {why:?} {b} of {facts:?}");
                }
                if !sort.shared_reasons {
                    each_is_needed(&facts, &stuck.reasons);
                }
            }
            StuckKind::Minimal { proven } => {
                others += 1;
                assert!(proven);
                each_is_needed(&facts, &stuck.reasons);
                assert!(!stuck.steps.is_empty());
            }
        }
    }
    assert!(others > cases / 10, "{cycles} cycles and {others} others");
}

#[test]
fn access_reasons_are_minimal() {
    minimal(22, 10_000, Sort::ACCESS);
}

#[test]
fn mixed_reasons_are_minimal() {
    minimal(23, 10_000, Sort::MIXED);
}

#[test]
fn shared_reasons_are_minimal() {
    minimal(
        24,
        10_000,
        Sort {
            shared_reasons: true,
            ..Sort::MIXED
        },
    );
}
