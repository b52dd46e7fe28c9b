//! Sets of small numbers as bits, and a queue that gives the largest first.

/// A set of numbers below a fixed bound.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Bits {
    word: Vec<u64>,
}

impl Bits {
    pub fn new(bound: usize) -> Self {
        Self {
            word: vec![0; bound.div_ceil(64)],
        }
    }

    pub fn has(&self, i: u32) -> bool {
        self.word[i as usize >> 6] >> (i & 63) & 1 == 1
    }

    /// Adds `i`; true if it was not there.
    pub fn add(&mut self, i: u32) -> bool {
        let word = &mut self.word[i as usize >> 6];
        let old = *word;
        *word |= 1 << (i & 63);
        old != *word
    }

    /// How many numbers are in both.
    pub fn common(&self, other: &Self) -> usize {
        let words = self.word.iter().zip(&other.word);
        words.map(|(x, y)| (x & y).count_ones() as usize).sum()
    }

    pub fn words(&self) -> &[u64] {
        &self.word
    }

    /// Adds all of a set given as words; tells how many were not there.
    pub fn join(&mut self, words: &[u64]) -> usize {
        let mut new = 0;
        for (word, more) in self.word.iter_mut().zip(words) {
            new += (more & !*word).count_ones() as usize;
            *word |= more;
        }
        new
    }

    pub fn remove(&mut self, i: u32) {
        self.word[i as usize >> 6] &= !(1 << (i & 63));
    }

    pub fn iter(&self) -> impl Iterator<Item = u32> + '_ {
        ones(&self.word)
    }
}

/// The numbers whose bits are set, rising.
pub(crate) fn ones(words: &[u64]) -> impl Iterator<Item = u32> + '_ {
    words.iter().enumerate().flat_map(|(i, &w)| {
        let mut rest = w;
        std::iter::from_fn(move || {
            if rest == 0 {
                return None;
            }
            let bit = rest.trailing_zeros();
            rest &= rest - 1;
            Some(i as u32 * 64 + bit)
        })
    })
}

/// A queue of numbers below a fixed bound that gives the largest first.
///
/// Levels of bits, each 64 times smaller than the one below: adding and taking
/// cost one word a level, which is four levels for sixteen million numbers. A
/// binary heap would cost twenty comparisons spread over memory.
#[derive(Clone, Debug)]
pub(crate) struct LargestFirst {
    level: Vec<Vec<u64>>,
}

impl LargestFirst {
    pub fn new(bound: usize) -> Self {
        let mut level = Vec::new();
        let mut size = bound.max(1);
        loop {
            size = size.div_ceil(64);
            level.push(vec![0; size]);
            if size == 1 {
                break;
            }
        }
        Self { level }
    }

    pub fn add(&mut self, i: u32) {
        let mut i = i as usize;
        for level in &mut self.level {
            level[i >> 6] |= 1 << (i & 63);
            i >>= 6;
        }
    }

    pub fn remove(&mut self, i: u32) {
        let mut i = i as usize;
        for level in &mut self.level {
            level[i >> 6] &= !(1 << (i & 63));
            if level[i >> 6] != 0 {
                break;
            }
            i >>= 6;
        }
    }

    pub fn take(&mut self) -> Option<u32> {
        let mut at = 0usize;
        for level in self.level.iter().rev() {
            let word = level[at];
            if word == 0 {
                return None;
            }
            at = at * 64 + 63 - word.leading_zeros() as usize;
        }
        self.remove(at as u32);
        Some(at as u32)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_queue_gives_the_largest_first() {
        let mut queue = LargestFirst::new(70_000);
        for i in [5, 69_999, 64, 63, 4096, 4095, 0] {
            queue.add(i);
        }
        queue.remove(4096);
        let out: Vec<_> = std::iter::from_fn(|| queue.take()).collect();
        assert_eq!(out, [69_999, 4095, 64, 63, 5, 0]);
    }

    #[test]
    fn ones_are_listed_rising() {
        let mut bits = Bits::new(200);
        for i in [199, 0, 64, 63] {
            assert!(bits.add(i));
        }
        assert!(!bits.add(64));
        assert_eq!(bits.iter().collect::<Vec<_>>(), [0, 63, 64, 199]);
    }
}
