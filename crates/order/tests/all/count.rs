//! The number of valid orders, against every order and against known families.

use crate::brute::{Dice, Facts, Sort};
use order::{Builder, Count, Instance, Reason, count_orders, count_sets};

fn exact(inst: &Instance) -> String {
    match count_orders(inst, 2_000_000) {
        Count::Exact(number) => number.to_string(),
        Count::Above { limit } => panic!("above {limit}"),
    }
}

fn agrees(seed: u64, cases: usize, sort: Sort) {
    let mut dice = Dice::new(seed);
    let mut met = 0;
    for _ in 0..cases {
        let facts = Facts::random(&mut dice, sort);
        let mut number = 0u64;
        facts.each_order(|_| number += 1);
        assert_eq!(exact(&facts.instance()), number.to_string(), "{facts:?}");
        met += usize::from(number > 1);
    }
    assert!(met > cases / 5, "{met}");
}

#[test]
fn plain() {
    agrees(51, 10_000, Sort::PLAIN);
    agrees(52, 10_000, Sort::ACYCLIC);
}

#[test]
fn access() {
    agrees(53, 10_000, Sort::ACCESS);
}

#[test]
fn mixed() {
    agrees(54, 10_000, Sort::MIXED);
}

#[test]
fn sets_are_order_ideals() {
    let mut dice = Dice::new(55);
    for _ in 0..10_000 {
        let facts = Facts::random(&mut dice, Sort::ACYCLIC);
        let closed = |set: u32| {
            let mut arcs = facts.arcs.iter();
            arcs.all(|&(a, b, _)| set >> b & 1 == 1 || set >> a & 1 == 0)
        };
        let expected = (0u32..1 << facts.n).filter(|&set| closed(set)).count();
        let inst = facts.instance();
        assert_eq!(count_sets(&inst, 1000), Some(expected));
        assert_eq!(count_sets(&inst, expected), Some(expected));
        assert_eq!(count_sets(&inst, expected - 1), None);
    }
}

fn from_arcs(n: usize, arcs: impl IntoIterator<Item = (u32, u32)>) -> Instance {
    let mut builder = Builder::new(n);
    for (i, (a, b)) in arcs.into_iter().enumerate() {
        builder.before(a, b, Reason(i as u32));
    }
    builder.build()
}

/// 60! / (20!)³: more than 64 bits, by its ideals and by its components.
#[test]
fn three_chains_of_twenty() {
    let chains = (0..60).filter(|i| i % 20 != 19).map(|i| (i, i + 1));
    let inst = from_arcs(60, chains.clone());
    assert_eq!(exact(&inst), "577831214478475823831865900");
    assert_eq!(count_sets(&inst, 10_000), Some(9261));
    // A step in front of all three makes them one component.
    let tied = chains.map(|(a, b)| (a + 1, b + 1));
    let tied = from_arcs(61, tied.chain([(0, 1), (0, 21), (0, 41)]));
    assert_eq!(exact(&tied), "577831214478475823831865900");
}

/// A chain of 5000 blocks of two steps each has 2⁵⁰⁰⁰ orders: the series cut,
/// and a number of many digits.
#[test]
fn a_long_series_is_a_power() {
    let blocks = (0..4999).flat_map(|i| {
        let (a, b) = (2 * i, 2 * i + 1);
        [(a, a + 2), (a, b + 2), (b, a + 2), (b, b + 2)]
    });
    let inst = from_arcs(10_000, blocks);
    let Count::Exact(number) = count_orders(&inst, 20_001) else {
        panic!("not counted");
    };
    assert_eq!(number.bits(), 5001);
    assert_eq!(number.trailing_zeros(), Some(5000));
}

/// Four chains of eighteen, the first step of each before the last one of the
/// next so that nothing falls apart: the count passes 2¹²⁸ and goes over to
/// longer numbers.
#[test]
fn numbers_beyond_128_bits() {
    let chains = (0..72u32).filter(|i| i % 18 != 17).map(|i| (i, i + 1));
    let ring = (0..4u32).map(|i| (18 * i, (18 * i + 35) % 72));
    let inst = from_arcs(72, chains.chain(ring));
    let number = exact(&inst);
    assert!(number.len() > 39);
    assert_eq!(number, count_from_the_front(&inst));
}

/// A second count: by sets of steps done, from the front, in big decimal limbs.
fn count_from_the_front(inst: &Instance) -> String {
    use std::collections::BTreeMap;
    let n = inst.steps();
    let mut before = vec![0u128; n];
    for (a, b, _) in inst.arcs() {
        before[b as usize] |= 1 << a;
    }
    let mut layer = BTreeMap::from([(0u128, (0u128, 1u128))]);
    const HALF: u128 = 10u128.pow(36);
    for _ in 0..n {
        let mut next: BTreeMap<u128, (u128, u128)> = BTreeMap::new();
        for (done, (high, low)) in layer {
            for (s, before) in before.iter().enumerate() {
                if done >> s & 1 == 0 && before & !done == 0 {
                    let sum = next.entry(done | 1 << s).or_default();
                    let total = sum.1 + low;
                    *sum = (sum.0 + high + total / HALF, total % HALF);
                }
            }
        }
        layer = next;
    }
    let (high, low) = layer[&((1u128 << n) - 1)];
    if high == 0 {
        low.to_string()
    } else {
        format!("{high}{low:036}")
    }
}

#[test]
fn a_limit_is_kept() {
    let inst = from_arcs(
        30,
        (0..15)
            .map(|i| (i, 15 + i))
            .chain((0..14).map(|i| (i, 16 + i))),
    );
    assert_eq!(count_orders(&inst, 100), Count::Above { limit: 100 });
}
