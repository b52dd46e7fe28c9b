//! The ways around that small instances never take.

use super::conflict::{Conflicts, LIMITS, Limits};
use super::cover::{Cover, cheapest, fewest};
use super::landing::{closest_rising, land};
use super::plain::rough;
use super::stretch::{Graph, Stretch, spans};
use crate::matching::largest;
use crate::rows::Rows;

struct Dice(u64);

impl Dice {
    fn below(&mut self, bound: usize) -> usize {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        let word = self.0.wrapping_mul(0x2545_F491_4F6C_DD1D);
        ((u128::from(word) * bound as u128) >> 64) as usize
    }
}

/// Arcs along a hidden order.
fn random_rows(dice: &mut Dice, n: usize, arcs: usize) -> (Rows, Rows) {
    let mut hidden: Vec<u32> = (0..n as u32).collect();
    for i in (1..n).rev() {
        hidden.swap(i, dice.below(i + 1));
    }
    let pairs: Vec<(u32, u32)> = (0..arcs)
        .map(|_| (dice.below(n), dice.below(n)))
        .filter(|(i, j)| i != j)
        .map(|(i, j)| (hidden[i.min(j)], hidden[i.max(j)]))
        .collect();
    let succ = Rows::from_pairs(n, pairs.iter().copied(), |_| ());
    let pred = Rows::from_pairs(n, pairs.iter().map(|&(a, b)| (b, a)), |_| ());
    (succ, pred)
}

fn all_pairs(conflicts: &Conflicts) -> Vec<(u32, u32)> {
    let mut out = Vec::new();
    for (i, &upper) in conflicts.uppers.iter().enumerate() {
        conflicts.pairs.each(i as u32, |c| {
            out.push((upper, conflicts.lowers[c as usize]))
        });
    }
    out
}

fn meets_all(conflicts: &Conflicts, cover: &Cover) -> bool {
    all_pairs(conflicts)
        .iter()
        .all(|(a, b)| cover.moved.binary_search(a).is_ok() || cover.moved.binary_search(b).is_ok())
}

fn keeps_arcs(stretch: Stretch<'_>, order: &[u32]) -> bool {
    let mut place = vec![0; order.len()];
    for (i, &v) in order.iter().enumerate() {
        place[v as usize] = i;
    }
    (0..order.len() as u32).all(|v| {
        stretch
            .succ(v)
            .all(|w| place[v as usize] < place[w as usize])
    })
}

#[test]
fn lists_rough_covers_and_plain_ties_agree_with_the_usual_way() {
    let mut dice = Dice(4242);
    let (mut bounds, mut moves) = (0, 0);
    for _ in 0..2000 {
        let n = 2 + dice.below(60);
        let arcs = dice.below(2 * n);
        let (succ, pred) = random_rows(&mut dice, n, arcs);
        let graph = Graph {
            succ: &succ,
            pred: &pred,
        };
        for span in spans(graph) {
            let stretch = Stretch::new(graph, span);
            let topo = stretch.topological().expect("arcs along an order");
            let usual = Conflicts::new(stretch, &topo, LIMITS).expect("few");
            let no_bits = Limits { bits: 0, ..LIMITS };
            let lists = Conflicts::new(stretch, &topo, no_bits).expect("few");
            let pairs = all_pairs(&usual);
            assert_eq!(pairs, all_pairs(&lists));
            assert_eq!(usual.pairs.count(), pairs.len());
            assert_eq!(lists.pairs.count(), pairs.len());
            let none = Limits {
                pairs: pairs.len().saturating_sub(1),
                ..no_bits
            };
            assert!(Conflicts::new(stretch, &topo, none).is_none());

            let size = largest(&usual.pairs).size();
            assert_eq!(largest(&lists.pairs).size(), size);
            let tie = |v: u32| 1 + u64::from(v % 3);
            let best = fewest(&usual, tie, LIMITS);
            assert_eq!((best.moved.len(), best.bound), (size, size as u64));
            assert_eq!(fewest(&lists, tie, LIMITS).moved, best.moved);
            let by_flow = cheapest(&usual, |_| 1, tie, LIMITS).expect("few");
            assert_eq!(by_flow.moved, best.moved);
            let no_flow = Limits { flow: 0, ..LIMITS };
            assert!(cheapest(&usual, |_| 1, tie, no_flow).is_none());
            let plain = fewest(&usual, tie, Limits { tied: 0, ..LIMITS });
            assert_eq!(plain.moved.len(), size);

            let rough = rough(stretch, &topo, |_| 1);
            assert!(rough.bound <= size as u64 && size <= rough.moved.len());
            bounds += rough.bound;
            moves += size as u64;
            for cover in [&best, &plain, &rough] {
                assert!(meets_all(&usual, cover));
                assert!(keeps_arcs(stretch, &land(stretch, &topo, &cover.moved)));
            }
        }
    }
    assert!(bounds * 3 > moves && moves > 5000, "{bounds} of {moves}");
}

#[test]
fn rising_values_are_closest() {
    let mut dice = Dice(77);
    for _ in 0..3000 {
        let n = 1 + dice.below(5);
        let wanted: Vec<u32> = (0..n).map(|_| dice.below(6) as u32).collect();
        let arcs: Vec<(u32, u32)> = (0..dice.below(8))
            .map(|_| (dice.below(n), dice.below(n)))
            .filter(|(i, j)| i < j)
            .map(|(i, j)| (i as u32, j as u32))
            .collect();
        let rises = |x: &[u32]| arcs.iter().all(|&(a, b)| x[a as usize] <= x[b as usize]);
        let far = |x: &[u32]| -> u32 { x.iter().zip(&wanted).map(|(a, b)| a.abs_diff(*b)).sum() };
        let mut best = u32::MAX;
        for code in 0..6u32.pow(n as u32) {
            let x: Vec<u32> = (0..n as u32).map(|i| code / 6u32.pow(i) % 6).collect();
            if rises(&x) {
                best = best.min(far(&x));
            }
        }
        let found = closest_rising(&wanted, &arcs);
        assert!(rises(&found), "{wanted:?} {arcs:?}");
        assert_eq!(far(&found), best, "{wanted:?} {arcs:?}");
    }
}
