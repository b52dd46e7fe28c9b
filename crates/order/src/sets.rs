//! Sets of steps that are off, and what may come off next.
//!
//! Whether a step can be taken depends only on the set of steps that are off,
//! mixed waits included: a way holds if its later steps are in the set and its
//! earlier ones are not.

use crate::instance::{Instance, StepId};
use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hash, Hasher};

/// Values by sets.
pub(crate) type SetMap<S, V> = HashMap<S, V, BuildHasherDefault<Mix>>;

/// Sets of steps as words. Short ones stay on the stack.
pub(crate) trait Set: Clone + Eq + Hash {
    fn empty(words: usize) -> Self;
    fn words(&self) -> &[u64];
    fn words_mut(&mut self) -> &mut [u64];
    fn with(&self, step: StepId) -> Self {
        let mut out = self.clone();
        out.words_mut()[step as usize / 64] |= 1 << (step % 64);
        out
    }
}

impl<const W: usize> Set for [u64; W] {
    fn empty(_: usize) -> Self {
        [0; W]
    }
    fn words(&self) -> &[u64] {
        self
    }
    fn words_mut(&mut self) -> &mut [u64] {
        self
    }
}

impl Set for Box<[u64]> {
    fn empty(words: usize) -> Self {
        vec![0; words].into()
    }
    fn words(&self) -> &[u64] {
        self
    }
    fn words_mut(&mut self) -> &mut [u64] {
        self
    }
}

/// What each step needs off and on, as sets.
pub(crate) struct Rules<S> {
    behind: Vec<S>,
    /// For each step its waits, for each wait its ways: off and on.
    waits: Vec<Vec<Vec<(S, S)>>>,
}

impl<S: Set> Rules<S> {
    pub fn new(inst: &Instance) -> Self {
        let words = inst.steps().div_ceil(64);
        let set = |steps: &[StepId]| {
            let mut out = S::empty(words);
            for &s in steps {
                out.words_mut()[s as usize / 64] |= 1 << (s % 64);
            }
            out
        };
        let way = |way: u32| (set(inst.later.row(way)), set(inst.earlier.row(way)));
        let waits = |step: u32| {
            let of = inst.waits_of.row(step).iter();
            of.map(|&wait| inst.ways(wait).map(way).collect()).collect()
        };
        let steps = || 0..inst.steps() as u32;
        Self {
            behind: steps().map(|s| set(inst.succ.row(s))).collect(),
            waits: steps().map(waits).collect(),
        }
    }

    pub fn can_go(&self, off: &S, step: u32) -> bool {
        // A way that names the step itself holds neither before nor behind it.
        let with = off.with(step);
        let (off, with) = (off.words(), with.words());
        let within = |set: &S| set.words().iter().zip(off).all(|(x, o)| x & !o == 0);
        let apart = |set: &S| set.words().iter().zip(with).all(|(x, o)| x & o == 0);
        off[step as usize / 64] >> (step % 64) & 1 == 0
            && within(&self.behind[step as usize])
            && self.waits[step as usize].iter().all(|ways| {
                ways.iter()
                    .any(|(later, earlier)| within(later) && apart(earlier))
            })
    }
}

/// A quick hash of words: the keys are no one's to choose, so it need not
/// withstand an opponent.
#[derive(Default)]
pub(crate) struct Mix(u64);

impl Hasher for Mix {
    fn write(&mut self, bytes: &[u8]) {
        for chunk in bytes.chunks(8) {
            let mut word = [0; 8];
            word[..chunk.len()].copy_from_slice(chunk);
            self.write_u64(u64::from_le_bytes(word));
        }
    }

    fn write_u64(&mut self, word: u64) {
        self.0 = (self.0.rotate_left(29) ^ word).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    }

    fn write_usize(&mut self, word: usize) {
        self.write_u64(word as u64);
    }

    fn finish(&self) -> u64 {
        self.0 ^ (self.0 >> 32)
    }
}
