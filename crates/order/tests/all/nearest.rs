//! The nearest order, against every order.

use crate::brute::{Dice, Facts, Sort};
use order::{Direction, Effort, Nearest, NoOrder, Proof, nearest, nearest_weighted};

/// The most that can be kept of the written order in this one: the heaviest
/// rising subsequence.
fn most_kept(order: &[u32], weight: &[u32]) -> u64 {
    let mut best = vec![0u64; order.len()];
    for i in 0..order.len() {
        let before = (0..i).filter(|&j| order[j] < order[i]).map(|j| best[j]);
        best[i] = before.max().unwrap_or(0) + u64::from(weight[order[i] as usize]);
    }
    best.into_iter().max().unwrap_or(0)
}

fn cheapest(facts: &Facts, weight: &[u32]) -> Option<u64> {
    let all: u64 = weight.iter().map(|&w| u64::from(w)).sum();
    let mut best = None;
    facts.each_order(|order| {
        let cost = all - most_kept(order, weight);
        best = Some(best.map_or(cost, |b: u64| b.min(cost)));
    });
    best
}

/// Everything that can be said of an answer without knowing the best one.
fn is_sound(facts: &Facts, found: &Nearest) {
    assert!(facts.kept_by(&found.order), "{found:?} breaks {facts:?}");
    let is_moved = |s: u32| found.moved.iter().any(|m| m.step == s);
    let kept: Vec<u32> = found
        .order
        .iter()
        .copied()
        .filter(|&s| !is_moved(s))
        .collect();
    assert!(kept.is_sorted(), "{found:?}");
    let place = |s: u32| found.order.iter().position(|&x| x == s).unwrap();
    assert!(found.moved.is_sorted_by_key(|m| place(m.step)));
    // One after another, each put directly behind the step that it names.
    let mut order: Vec<u32> = (0..facts.n as u32).collect();
    for m in &found.moved {
        order.retain(|&s| s != m.step);
        let at = m.behind.map_or(0, |behind| {
            order.iter().position(|&s| s == behind).unwrap() + 1
        });
        order.insert(at, m.step);
        assert_eq!(
            m.behind,
            place(m.step).checked_sub(1).map(|p| found.order[p])
        );
    }
    assert_eq!(order, found.order, "{found:?}");
    // A moved step passes kept steps, and only in its direction.
    for m in &found.moved {
        let passed = |back: bool| {
            kept.iter()
                .filter(|&&k| (k < m.step) != (place(k) < place(m.step)) && (k < m.step) == back)
                .count()
        };
        let (later, earlier) = (passed(false), passed(true));
        match m.direction {
            Direction::Later => assert!(later > 0 && earlier == 0, "{m:?} in {found:?}"),
            Direction::Earlier => assert!(later == 0 && earlier > 0, "{m:?} in {found:?}"),
        }
    }
    assert_eq!(found.choices.len(), facts.waits.len());
    for (wait, &choice) in facts.waits.iter().zip(&found.choices) {
        let way = &wait.ways[choice];
        assert!(way.later.iter().all(|&(b, _)| place(wait.step) < place(b)));
        assert!(
            way.earlier
                .iter()
                .all(|&(a, _)| place(a) < place(wait.step))
        );
    }
}

fn agrees(seed: u64, cases: usize, sort: Sort, weighted: bool) {
    let mut dice = Dice::new(seed);
    let (mut moves, mut without) = (0, 0);
    for _ in 0..cases {
        let facts = Facts::random(&mut dice, sort);
        let inst = facts.instance();
        let weight: Vec<u32> = (0..facts.n)
            .map(|_| {
                if weighted {
                    dice.between(1, 9) as u32
                } else {
                    1
                }
            })
            .collect();
        let found = if weighted {
            nearest_weighted(&inst, &weight, Effort::default())
        } else {
            nearest(&inst, Effort::default())
        };
        let best = cheapest(&facts, &weight);
        match found {
            Ok(found) => {
                is_sound(&facts, &found);
                let paid = found
                    .moved
                    .iter()
                    .map(|m| u64::from(weight[m.step as usize]));
                assert_eq!(paid.sum::<u64>(), found.cost);
                assert_eq!(found.proof, Proof::Fewest);
                assert_eq!(Some(found.cost), best, "{found:?} for {facts:?}");
                moves += found.moved.len();
            }
            Err(NoOrder::Stuck(_)) => {
                without += 1;
                assert_eq!(best, None);
            }
            Err(NoOrder::Unknown { .. }) => panic!("bound met on {facts:?}"),
        }
    }
    assert!(
        moves > cases / 3,
        "{moves} moves, {without} without an order"
    );
}

#[test]
fn plain() {
    agrees(31, 10_000, Sort::ACYCLIC, false);
}

#[test]
fn access() {
    agrees(32, 10_000, Sort::ACCESS, false);
}

#[test]
fn mixed() {
    agrees(33, 10_000, Sort::MIXED, false);
}

#[test]
fn plain_with_weights() {
    agrees(34, 10_000, Sort::ACYCLIC, true);
}

#[test]
fn mixed_with_weights() {
    agrees(35, 10_000, Sort::MIXED, true);
}

/// Kept steps crossed by moved ones.
fn crossed(order: &[u32], is_moved: impl Fn(u32) -> bool) -> usize {
    let mut sum = 0;
    for (i, &m) in order.iter().enumerate().filter(|x| is_moved(*x.1)) {
        let behind = order[..i].iter().filter(|&&k| !is_moved(k) && k > m);
        let ahead = order[i..].iter().filter(|&&k| !is_moved(k) && k < m);
        sum += behind.count() + ahead.count();
    }
    sum
}

#[test]
fn moved_steps_land_as_near_as_they_can() {
    let mut dice = Dice::new(36);
    let mut met = 0;
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::ACYCLIC);
        let found = nearest(&facts.instance(), Effort::default()).unwrap();
        let is_moved = |s: u32| found.moved.iter().any(|m| m.step == s);
        let mut least = usize::MAX;
        facts.each_order(|order| {
            if order.iter().filter(|&&s| !is_moved(s)).is_sorted() {
                least = least.min(crossed(order, is_moved));
            }
        });
        assert_eq!(
            crossed(&found.order, is_moved),
            least,
            "{found:?} for {facts:?}"
        );
        met += usize::from(found.moved.len() > 1);
    }
    assert!(met > 1000, "{met}");
}

/// Of the smallest sets to move: least sum of degrees, then most going later.
#[test]
fn ties_are_broken_as_stated() {
    let mut dice = Dice::new(37);
    let mut tied = 0;
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::ACYCLIC);
        let found = nearest(&facts.instance(), Effort::default()).unwrap();
        let degree = facts.degrees();
        // Pairs that every order has the other way round than written.
        let mut conflict: Vec<u32> = (0..facts.n).map(|a| (1 << a) - 1).collect();
        facts.each_order(|order| {
            let mut seen = 0u32;
            for &s in order {
                // What has been seen does not always come behind `s`.
                conflict[s as usize] &= !seen;
                seen |= 1 << s;
            }
        });
        let mut best: Option<(usize, u32, std::cmp::Reverse<usize>)> = None;
        let mut sets = Vec::new();
        for set in 0u32..1 << facts.n {
            let outside = |s: usize| set >> s & 1 == 0;
            let covers = (0..facts.n).all(|a| !outside(a) || conflict[a] & !set == 0);
            if !covers {
                continue;
            }
            let members = || (0..facts.n).filter(|&s| !outside(s));
            let tie = members().map(|s| 1 + degree[s]).sum();
            let later = members()
                .filter(|&s| (0..facts.n).any(|a| outside(a) && conflict[a] >> s & 1 == 1))
                .count();
            let rank = (set.count_ones() as usize, tie, std::cmp::Reverse(later));
            if best.is_none_or(|b| rank < b) {
                sets.clear();
            }
            if best.is_none_or(|b| rank <= b) {
                best = Some(rank);
                sets.push(set);
            }
            tied += usize::from(best.is_some_and(|b| b.0 == rank.0 && b != rank));
        }
        let moved = found.moved.iter().fold(0u32, |set, m| set | 1 << m.step);
        assert_eq!(sets, [moved], "{found:?} for {facts:?}");
    }
    assert!(tied > 1000, "{tied}");
}

/// With next to no effort the answer is still a valid order, and the bound holds.
#[test]
fn little_effort_gives_a_bound() {
    let mut dice = Dice::new(38);
    let mut open = 0;
    for round in 0..10_000 {
        let sort = if round % 2 == 0 {
            Sort::ACCESS
        } else {
            Sort::MIXED
        };
        let facts = Facts::random(&mut dice, sort);
        let weight = vec![1; facts.n];
        let effort = Effort {
            nodes: dice.below(6) as u64,
        };
        let best = cheapest(&facts, &weight);
        match nearest(&facts.instance(), effort) {
            Ok(found) => {
                is_sound(&facts, &found);
                let best = best.unwrap();
                assert_eq!(found.cost, found.moved.len() as u64);
                match found.proof {
                    Proof::Fewest => assert_eq!(found.cost, best, "{facts:?}"),
                    Proof::AtLeast(bound) => {
                        assert!(bound <= best && best <= found.cost && bound < found.cost);
                        open += 1;
                    }
                }
            }
            Err(NoOrder::Stuck(_)) => assert_eq!(best, None),
            Err(NoOrder::Unknown { tried }) => assert!(tried <= effort.nodes),
        }
    }
    assert!(open > 50, "{open}");
}

/// One step out of place among many that are tied together: it is the one moved,
/// and to the nearest place.
#[test]
fn the_step_out_of_place_is_the_one_that_moves() {
    let mut builder = order::Builder::new(12);
    // 0 to 10 in a row, but step 3 has to come behind 8.
    for i in (0..10).filter(|&i| i != 2 && i != 3) {
        builder.before(i, i + 1, order::Reason(i));
    }
    builder.before(8, 3, order::Reason(90));
    let found = nearest(&builder.build(), Effort::default()).unwrap();
    assert_eq!(found.order, [0, 1, 2, 4, 5, 6, 7, 8, 3, 9, 10, 11]);
    let [only] = found.moved.as_slice() else {
        panic!("{found:?}");
    };
    assert_eq!(
        (only.step, only.direction, only.behind),
        (3, Direction::Later, Some(8))
    );
}

/// Two steps the wrong way round, each of which could move: the one that fewer
/// facts name does; if that leaves a choice, the earlier one goes later.
#[test]
fn the_step_less_tied_up_moves() {
    let mut tied = order::Builder::new(4);
    tied.before(2, 1, order::Reason(0));
    tied.before(0, 1, order::Reason(1));
    let found = nearest(&tied.build(), Effort::default()).unwrap();
    assert_eq!(found.moved.iter().map(|m| m.step).collect::<Vec<_>>(), [2]);
    assert_eq!(found.order, [0, 2, 1, 3]);

    let mut even = order::Builder::new(4);
    even.before(2, 1, order::Reason(0));
    let found = nearest(&even.build(), Effort::default()).unwrap();
    assert_eq!(found.order, [0, 2, 1, 3]);
    assert_eq!(found.moved.iter().map(|m| m.step).collect::<Vec<_>>(), [1]);

    // A weight overrules both.
    let found = nearest_weighted(&even_again(), &[1, 5, 1, 1], Effort::default()).unwrap();
    assert_eq!(found.moved.iter().map(|m| m.step).collect::<Vec<_>>(), [2]);
    assert_eq!(found.cost, 1);
}

fn even_again() -> order::Instance {
    let mut even = order::Builder::new(4);
    even.before(2, 1, order::Reason(0));
    even.build()
}
