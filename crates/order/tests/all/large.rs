//! Sizes at which a recursion or a closure would end the process. No time is
//! asserted.

use crate::brute::Dice;
use order::{
    Builder, Direction, Effort, Feasibility, Proof, Reason, StuckKind, Wait, Way, chain, feasible,
    graph, implied, nearest, stuck_set,
};

const MILLION: u32 = 1_000_000;

#[test]
fn a_chain_of_a_million_steps() {
    let mut builder = Builder::new(MILLION as usize);
    for i in 0..MILLION - 1 {
        builder.before(i, i + 1, Reason(i));
    }
    let inst = builder.build();
    let Feasibility::Order(order) = feasible(&inst, Effort::default()) else {
        panic!("a chain is an order");
    };
    assert!(order.iter().copied().eq(0..MILLION));
    assert_eq!(graph::components(&inst).len(), MILLION as usize);
    assert_eq!(graph::longest_chain(&inst), Some(MILLION as usize));
    assert_eq!(implied(&inst), []);
    let links = chain(&inst, 0, MILLION - 1).expect("it leads there");
    assert_eq!(links.len(), MILLION as usize - 1);
    assert_eq!(chain(&inst, MILLION - 1, 0), None);
}

#[test]
fn a_cycle_of_a_million_steps() {
    let mut builder = Builder::new(MILLION as usize);
    for i in 0..MILLION {
        builder.before(i, (i + 1) % MILLION, Reason(i));
    }
    let inst = builder.build();
    assert_eq!(graph::components(&inst).len(), 1);
    assert_eq!(stuck_set(&inst).len(), MILLION as usize);
    let Feasibility::Stuck(stuck) = feasible(&inst, Effort::default()) else {
        panic!("a cycle is no order");
    };
    assert_eq!(stuck.reasons.len(), MILLION as usize);
    assert_eq!(stuck.steps[..3], [0, 1, 2]);
    let StuckKind::Cycle { links, shortest } = stuck.kind else {
        panic!("it is a cycle");
    };
    assert!(shortest && links.len() == MILLION as usize);
}

/// One short cycle far inside a long one.
#[test]
fn the_short_cycle_among_long_ones() {
    let n = 100_000u32;
    let mut builder = Builder::new(n as usize);
    for i in 0..n {
        builder.before(i, (i + 1) % n, Reason(i));
    }
    builder.before(70_004, 70_000, Reason(n));
    let Feasibility::Stuck(stuck) = feasible(&builder.build(), Effort::default()) else {
        panic!("a cycle is no order");
    };
    assert_eq!(stuck.steps, [70_000, 70_001, 70_002, 70_003, 70_004]);
}

/// A chain in which the last step is written first: one step moves, past all
/// the others, and no closure of a million steps is formed.
#[test]
fn one_step_moved_past_a_million() {
    let mut builder = Builder::new(MILLION as usize);
    for i in 1..MILLION - 1 {
        builder.before(i, i + 1, Reason(i));
    }
    builder.before(MILLION - 1, 0, Reason(0));
    let found = nearest(&builder.build(), Effort::default()).expect("there is an order");
    assert_eq!(found.proof, Proof::Fewest);
    let [only] = found.moved.as_slice() else {
        panic!("{} moved", found.moved.len());
    };
    assert_eq!((only.step, only.direction), (0, Direction::Later));
    assert_eq!(only.behind, Some(MILLION - 1));
}

/// Three arcs and one wait a step, along an order in which some steps have been
/// displaced.
#[test]
fn a_million_steps_with_waits() {
    let n = MILLION as usize;
    let mut dice = Dice::new(91);
    let mut hidden: Vec<u32> = (0..MILLION).collect();
    for _ in 0..100 {
        let at = dice.below(n - 300);
        hidden[at..at + dice.between(2, 300)].rotate_left(1);
    }
    let mut builder = Builder::new(n);
    let ahead = |dice: &mut Dice, i: usize| (i + dice.between(1, 100)).min(n - 1);
    for i in 0..n - 1 {
        for k in 0..3 {
            let j = ahead(&mut dice, i);
            builder.before(hidden[i], hidden[j], Reason(k));
        }
        let (good, other) = (ahead(&mut dice, i), dice.below(n));
        let way = |j: usize| Way {
            later: vec![(hidden[j], Reason(4))],
            earlier: Vec::new(),
        };
        builder.wait(Wait {
            step: hidden[i],
            ways: vec![way(good), way(other)],
            why: Reason(5),
        });
    }
    let inst = builder.build();
    let Feasibility::Order(order) = feasible(&inst, Effort::default()) else {
        panic!("the hidden order keeps everything");
    };
    assert!(inst.allows(&order));
    let found = nearest(&inst, Effort::default()).expect("there is an order");
    assert!(inst.allows(&found.order));
    assert!(found.cost <= 100, "{}", found.cost);
}

#[test]
fn nothing_at_all() {
    let inst = Builder::new(0).build();
    assert_eq!(
        feasible(&inst, Effort::default()),
        Feasibility::Order(Vec::new())
    );
    let found = nearest(&inst, Effort::default()).expect("no step, no fault");
    assert_eq!(
        (found.order, found.cost, found.proof),
        (Vec::new(), 0, Proof::Fewest)
    );
    assert_eq!(order::places(&inst, Effort::default()), []);
    assert_eq!(
        order::count_orders(&inst, 1),
        order::Count::Exact(1u32.into())
    );
    assert_eq!(graph::width(&inst), Some(0));
    assert_eq!(graph::longest_chain(&inst), Some(0));
    assert_eq!(implied(&inst), []);
}
