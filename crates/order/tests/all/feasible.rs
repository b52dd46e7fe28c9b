//! Whether an order exists, against every order.

use crate::brute::{Dice, Facts, Sort};
use order::{
    Answer, Broken, Builder, Effort, Feasibility, Reason, Wait, Way, feasible, must_precede,
    stuck_set,
};

fn agrees(seed: u64, cases: usize, sort: Sort) {
    let mut dice = Dice::new(seed);
    let (mut yes, mut no) = (0, 0);
    for _ in 0..cases {
        let facts = Facts::random(&mut dice, sort);
        let inst = facts.instance();
        match feasible(&inst, Effort::default()) {
            Feasibility::Order(order) => {
                assert!(facts.kept_by(&order), "{order:?} breaks {facts:?}");
                assert!(inst.allows(&order));
                assert_eq!(inst.broken(&order), []);
                yes += 1;
            }
            Feasibility::Stuck(_) => {
                assert!(!facts.has_order(), "there is an order of {facts:?}");
                no += 1;
            }
            Feasibility::Unknown { .. } => panic!("bound met on {facts:?}"),
        }
    }
    assert!(yes > cases / 10 && no > cases / 10, "{yes} and {no}");
}

#[test]
fn plain() {
    agrees(11, 10_000, Sort::PLAIN);
}

#[test]
fn access() {
    agrees(12, 20_000, Sort::ACCESS);
}

#[test]
fn mixed() {
    agrees(13, 20_000, Sort::MIXED);
}

#[test]
fn mixed_with_arcs_that_may_close() {
    agrees(
        14,
        10_000,
        Sort {
            acyclic: false,
            ..Sort::MIXED
        },
    );
}

#[test]
fn a_valid_written_order_is_given_back() {
    let mut dice = Dice::new(15);
    let mut met = 0;
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::MIXED);
        let written: Vec<u32> = (0..facts.n as u32).collect();
        if facts.kept_by(&written) {
            met += 1;
            let found = feasible(&facts.instance(), Effort::default());
            assert_eq!(found, Feasibility::Order(written));
        }
    }
    assert!(met > 500, "{met}");
}

#[test]
fn an_order_allowed_is_one_that_keeps_every_fact() {
    let mut dice = Dice::new(16);
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::MIXED);
        let inst = facts.instance();
        let mut order: Vec<u32> = (0..facts.n as u32).collect();
        dice.shuffle(&mut order);
        let broken = inst.broken(&order);
        assert_eq!(inst.allows(&order), facts.kept_by(&order));
        assert_eq!(broken.is_empty(), facts.kept_by(&order));
        for fact in broken {
            let place = |s: u32| order.iter().position(|&x| x == s);
            match fact {
                Broken::Arc { before, after, .. } => assert!(place(before) >= place(after)),
                Broken::Wait { number, step, why } => {
                    let wait = &facts.waits[number];
                    assert_eq!((wait.step, wait.why), (step, why));
                    let alone = Facts {
                        arcs: Vec::new(),
                        waits: vec![wait.clone()],
                        ..facts
                    };
                    assert!(!alone.kept_by(&order));
                }
            }
        }
    }
}

/// What is left is the union of all sets in which every step has an arc to the
/// set or a wait all of whose ways name a step of it.
#[test]
fn the_stuck_set_is_the_largest_closed_one() {
    let mut dice = Dice::new(17);
    let mut met = 0;
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::ACCESS);
        let mut union = 0u32;
        for set in 1u32..1 << facts.n {
            let has = |s: u32| set >> s & 1 == 1;
            let closed = (0..facts.n as u32).filter(|&s| has(s)).all(|s| {
                facts.arcs.iter().any(|&(a, b, _)| a == s && has(b))
                    || facts.waits.iter().any(|wait| {
                        wait.step == s
                            && wait
                                .ways
                                .iter()
                                .all(|way| way.later.iter().any(|&(b, _)| has(b)))
                    })
            });
            if closed {
                union |= set;
            }
        }
        let expected: Vec<u32> = (0..facts.n as u32)
            .filter(|s| union >> s & 1 == 1)
            .collect();
        assert_eq!(stuck_set(&facts.instance()), expected, "{facts:?}");
        met += usize::from(!expected.is_empty());
    }
    assert!(met > 1000, "{met}");
}

#[test]
fn what_must_precede_what() {
    let mut dice = Dice::new(18);
    for round in 0..10_000 {
        let sort = [Sort::PLAIN, Sort::ACCESS, Sort::MIXED][round % 3];
        let facts = Facts::random(
            &mut dice,
            Sort {
                most_steps: 6,
                ..sort
            },
        );
        let inst = facts.instance();
        let mut always = vec![vec![true; facts.n]; facts.n];
        facts.each_order(|order| {
            for (i, &b) in order.iter().enumerate() {
                for &a in &order[i..] {
                    always[a as usize][b as usize] = false;
                }
            }
        });
        for (a, row) in always.iter().enumerate() {
            for (b, &always) in row.iter().enumerate() {
                let found = must_precede(&inst, a as u32, b as u32, Effort::default());
                let expected = if always { Answer::Yes } else { Answer::No };
                assert_eq!(found, expected, "{a} before {b} in {facts:?}");
            }
        }
    }
}

/// A search cut short says so, and is never wrong.
#[test]
fn little_effort_is_never_wrong() {
    let mut dice = Dice::new(19);
    let mut unknown = 0;
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::MIXED);
        let effort = Effort {
            nodes: dice.below(3) as u64,
        };
        match feasible(&facts.instance(), effort) {
            Feasibility::Order(order) => assert!(facts.kept_by(&order)),
            Feasibility::Stuck(stuck) => {
                let enough = facts.only(|why| stuck.reasons.contains(&why));
                assert!(!enough.has_order(), "{stuck:?} of {facts:?}");
            }
            Feasibility::Unknown { tried } => {
                assert!(tried <= effort.nodes);
                unknown += 1;
            }
        }
    }
    assert!(unknown > 10, "{unknown}");
}

/// "After one of a, c" and "before one of a, c" say that b lies between them.
/// Betweenness is NP-complete, so it must be searched, and a peel that treated
/// it as easy would accept what cannot be.
#[test]
fn betweenness_is_searched_not_peeled() {
    let between = |builder: &mut Builder, a: u32, b: u32, c: u32| {
        let r = Reason;
        let way = |later: Vec<u32>, earlier: Vec<u32>| Way {
            later: later.into_iter().map(|s| (s, r(s))).collect(),
            earlier: earlier.into_iter().map(|s| (s, r(s))).collect(),
        };
        builder.wait(Wait {
            step: b,
            ways: vec![way(vec![], vec![a]), way(vec![], vec![c])],
            why: r(100),
        });
        builder.wait(Wait {
            step: b,
            ways: vec![way(vec![a], vec![]), way(vec![c], vec![])],
            why: r(101),
        });
    };
    // b between a and c, c between b and d, d between c and a: a chain a b c d
    // cannot have d between c and a.
    let mut builder = Builder::new(4);
    between(&mut builder, 0, 1, 2);
    between(&mut builder, 1, 2, 3);
    let inst = builder.build();
    assert!(inst.is_mixed());
    let Feasibility::Order(order) = feasible(&inst, Effort::default()) else {
        panic!("0 1 2 3 is an order");
    };
    assert_eq!(order, [0, 1, 2, 3]);

    let mut builder = Builder::new(4);
    between(&mut builder, 0, 1, 2);
    between(&mut builder, 1, 2, 3);
    between(&mut builder, 2, 3, 0);
    let inst = builder.build();
    assert_eq!(stuck_set(&inst), [], "the peel alone sees nothing");
    let found = feasible(&inst, Effort::default());
    assert!(matches!(found, Feasibility::Stuck(_)), "{found:?}");
    let found = feasible(&inst, Effort { nodes: 0 });
    assert!(matches!(found, Feasibility::Unknown { .. }), "{found:?}");
}

/// Random betweenness against every permutation.
#[test]
fn random_betweenness() {
    let mut dice = Dice::new(20);
    let (mut yes, mut no) = (0, 0);
    for _ in 0..10_000 {
        let n = dice.between(4, 7);
        let mut facts = Facts {
            n,
            arcs: Vec::new(),
            waits: Vec::new(),
        };
        for _ in 0..dice.between(2, 6) {
            let mut steps: Vec<u32> = (0..n as u32).collect();
            dice.shuffle(&mut steps);
            let entry = |s: u32| vec![(s, Reason(s))];
            let (later, earlier): (Vec<Way>, Vec<Way>) = [steps[0], steps[2]]
                .map(|s| {
                    let later = Way {
                        later: entry(s),
                        ..Way::default()
                    };
                    let earlier = Way {
                        earlier: entry(s),
                        ..Way::default()
                    };
                    (later, earlier)
                })
                .into_iter()
                .unzip();
            for ways in [later, earlier] {
                facts.waits.push(Wait {
                    step: steps[1],
                    ways,
                    why: Reason(50 + facts.waits.len() as u32),
                });
            }
        }
        let found = feasible(&facts.instance(), Effort::default());
        match found {
            Feasibility::Order(order) => {
                assert!(facts.kept_by(&order));
                yes += 1;
            }
            Feasibility::Stuck(_) => {
                assert!(!facts.has_order());
                no += 1;
            }
            Feasibility::Unknown { .. } => panic!("bound met on {facts:?}"),
        }
    }
    assert!(yes > 500 && no > 500, "{yes} and {no}");
}
