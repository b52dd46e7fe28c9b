//! For each step, steps that come off before it in every order.
//!
//! The largest sets M with
//!
//! > M(s) = {s} ∪ M(b) for each b that an arc puts behind s
//! >          ∪, for each wait of s, what the M of all its ways have in common,
//! >            the M of a way being the union of those of its later steps
//!
//! found by starting with everything and shrinking until nothing changes. Each
//! member of M(s) is indeed forced: follow any peel; when s is taken, all b
//! and the later steps of some way are off, each with its M off by induction,
//! and those contain the right-hand side. (That the largest solution misses no
//! forced step either: E. Keyder, S. Richter, M. Helmert, Sound and complete
//! landmarks for AND/OR graphs, ECAI 2010, 335-340; from memory. Nothing here
//! rests on that part.) A pass costs O(size of the instance · n / 64), and a few
//! passes are enough.

use crate::instance::{Instance, StepId};
use crate::peel::{End, Overlay, peel};

/// Above this the sets would not fit; 32 MB.
pub(super) const MOST_STEPS: usize = 1 << 14;

/// M of every step, as bits.
pub(super) struct Forced {
    words: usize,
    bits: Vec<u64>,
}

impl Forced {
    /// The sets seen from one end, mixed waits relaxed as the peel does; `None`
    /// if there are too many steps.
    pub fn new(inst: &Instance, end: End) -> Option<Self> {
        let n = inst.steps();
        if n > MOST_STEPS {
            return None;
        }
        let (ahead, near) = match end {
            End::Last => (&inst.succ, &inst.later),
            End::First => (&inst.pred, &inst.earlier),
        };
        let words = n.div_ceil(64);
        let everything: Vec<u64> = (0..words)
            .map(|i| u64::MAX >> (64 - (n - i * 64).min(64)))
            .collect();
        let mut out = Self {
            words,
            bits: everything.repeat(n),
        };
        let order = peel(inst, end, Overlay::default());
        let (mut own, mut of_way, mut common) = (vec![0; words], vec![0; words], vec![0; words]);
        let mut changed = true;
        while changed {
            changed = false;
            for &s in &order {
                own.fill(0);
                own[s as usize / 64] |= 1 << (s % 64);
                for &b in ahead.row(s) {
                    join(&mut own, out.row(b));
                }
                for &wait in inst.waits_of.row(s) {
                    common.copy_from_slice(&everything);
                    for way in inst.ways(wait) {
                        of_way.fill(0);
                        for &b in near.row(way) {
                            join(&mut of_way, out.row(b));
                        }
                        common.iter_mut().zip(&of_way).for_each(|(x, y)| *x &= y);
                    }
                    join(&mut own, &common);
                }
                let row = &mut out.bits[s as usize * words..][..words];
                if *row != *own {
                    row.copy_from_slice(&own);
                    changed = true;
                }
            }
        }
        Some(out)
    }

    /// M of a step, the step itself included.
    pub fn row(&self, step: StepId) -> &[u64] {
        &self.bits[step as usize * self.words..][..self.words]
    }

    /// How many steps come off before this one in every order.
    pub fn count(&self, step: StepId) -> usize {
        let ones: u32 = self.row(step).iter().map(|w| w.count_ones()).sum();
        ones as usize - 1
    }
}

fn join(to: &mut [u64], from: &[u64]) {
    to.iter_mut().zip(from).for_each(|(x, y)| *x |= y);
}
