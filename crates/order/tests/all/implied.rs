//! Arcs that could be left out, and chains of reasons.

use crate::brute::{Dice, Facts, Sort};
use order::{Builder, Effort, Reason, chain, implied, implied_arcs};
use std::collections::BTreeSet;

/// Pairs `a` before `b` through arcs, by repeated joining.
fn closure(n: usize, arcs: &[(u32, u32)]) -> Vec<Vec<bool>> {
    let mut out = vec![vec![false; n]; n];
    for &(a, b) in arcs {
        out[a as usize][b as usize] = true;
    }
    for k in 0..n {
        for i in 0..n {
            for j in 0..n {
                out[i][j] |= out[i][k] && out[k][j];
            }
        }
    }
    out
}

#[test]
fn what_is_implied_and_nothing_else() {
    let mut dice = Dice::new(61);
    let mut met = 0;
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::ACYCLIC);
        let inst = facts.instance();
        let pairs: Vec<(u32, u32)> = facts.arcs.iter().map(|a| (a.0, a.1)).collect();
        let whole = closure(facts.n, &pairs);
        // One at a time, from the last: an arc is implied if the others that
        // are still there say it. What is left does not depend on the order,
        // but for repeated arcs, of which the first is to stay.
        let mut left = facts.arcs.clone();
        let mut expected = BTreeSet::new();
        for i in (0..left.len()).rev() {
            let others: Vec<(u32, u32)> = (0..left.len())
                .filter(|&j| j != i)
                .map(|j| (left[j].0, left[j].1))
                .collect();
            if closure(facts.n, &others) == whole {
                expected.insert(left.remove(i).2);
            }
        }
        let found = implied(&inst);
        assert_eq!(
            found,
            expected.iter().copied().collect::<Vec<_>>(),
            "{facts:?}"
        );
        let arcs = implied_arcs(&inst, Effort::default());
        assert!(arcs.complete);
        assert_eq!(
            arcs.arcs.iter().map(|a| a.2).collect::<BTreeSet<_>>(),
            expected
        );
        met += found.len();
    }
    assert!(met > 5000, "{met}");
}

/// A reason is spare only if everything it stands for is, and never if a wait
/// with alternatives rests on it.
#[test]
fn a_shared_reason_is_spare_only_as_a_whole() {
    let mut dice = Dice::new(62);
    let (mut met, mut spared) = (0, 0);
    for _ in 0..10_000 {
        let facts = Facts::random(
            &mut dice,
            Sort {
                shared_reasons: true,
                ..Sort::ACCESS
            },
        );
        let inst = facts.instance();
        let spare = implied(&inst);
        if !facts.has_order() {
            continue;
        }
        let less = facts.only(|why| !spare.contains(&why));
        assert_eq!(facts.orders(), less.orders());
        let open = |wait: &&order::Wait| {
            wait.ways.len() != 1
                && wait
                    .ways
                    .iter()
                    .all(|w| !w.later.is_empty() || !w.earlier.is_empty())
        };
        for wait in facts.waits.iter().filter(open) {
            assert!(!spare.contains(&wait.why));
            let named = wait
                .ways
                .iter()
                .flat_map(|w| w.later.iter().chain(&w.earlier));
            named.for_each(|x| assert!(!spare.contains(&x.1)));
            met += 1;
        }
        spared += spare.len();
    }
    assert!(met > 1000 && spared > 500, "{met} and {spared}");
}

/// A ladder with long rungs on 3000 steps: sweeps over many blocks.
#[test]
fn long_arcs_over_many_blocks() {
    let n = 3000u32;
    let mut builder = Builder::new(n as usize);
    for i in 0..n - 1 {
        builder.before(i, i + 1, Reason(i));
    }
    for i in (0..n - 1000).step_by(7) {
        builder.before(i, i + 999, Reason(10_000 + i));
    }
    builder.before(0, n - 1, Reason(9_999));
    let inst = builder.build();
    let mut expected: Vec<Reason> = (0..n - 1000)
        .step_by(7)
        .map(|i| Reason(10_000 + i))
        .collect();
    expected.insert(0, Reason(9_999));
    assert_eq!(implied(&inst), expected);
    // With a bound: some are left out, none is wrong.
    let some = implied_arcs(&inst, Effort { nodes: 2 });
    assert!(!some.complete && some.arcs.len() < expected.len());
    assert!(some.arcs.iter().all(|a| expected.contains(&a.2)));
}

#[test]
fn a_chain_is_a_shortest_one() {
    let mut dice = Dice::new(63);
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::PLAIN);
        let inst = facts.instance();
        for a in 0..facts.n as u32 {
            // Steps reached after so many arcs.
            let mut length = vec![None; facts.n];
            let mut here = 1u32 << a;
            for k in 1..=facts.n {
                let arcs = facts.arcs.iter().filter(|x| here >> x.0 & 1 == 1);
                here = arcs.fold(0, |set, x| set | 1 << x.1);
                for (b, length) in length.iter_mut().enumerate() {
                    if here >> b & 1 == 1 && length.is_none() {
                        *length = Some(k);
                    }
                }
            }
            for b in 0..facts.n as u32 {
                let found = chain(&inst, a, b);
                assert_eq!(
                    found.as_ref().map(Vec::len),
                    length[b as usize],
                    "{facts:?}"
                );
                let mut at = a;
                for (from, why, to) in found.into_iter().flatten() {
                    assert_eq!(from, at);
                    assert!(facts.arcs.contains(&(from, to, why)));
                    at = to;
                }
                assert!(length[b as usize].is_none() || at == b);
            }
        }
    }
}
