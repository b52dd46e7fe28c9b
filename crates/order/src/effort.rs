//! How hard a search may try before it says that it does not know.

/// A bound on search.
///
/// Some questions here are NP-hard. They are answered exactly by search, and
/// when the bound is reached the answer says so; it is never guessed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Effort {
    /// How many nodes a search may visit. A node over many steps counts for
    /// more, one for every 64 steps begun, so that the bound stands for about
    /// the same time at any size.
    pub nodes: u64,
}

impl Default for Effort {
    /// A hundred thousand nodes, some seconds at most.
    fn default() -> Self {
        Self { nodes: 100_000 }
    }
}

/// What is known about a cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Optimum {
    /// Nothing costs less.
    Proved,
    /// The search met its bound: nothing costs less than this, but there may be
    /// something that costs less than what is given.
    AtLeast(u64),
}

/// What is left of an [`Effort`].
#[derive(Clone, Debug)]
pub(crate) struct Budget {
    left: u64,
    spent: u64,
}

impl Budget {
    pub fn new(effort: Effort) -> Self {
        Self {
            left: effort.nodes,
            spent: 0,
        }
    }

    /// Pays for one node over an instance of `size` steps; false when the
    /// bound is reached.
    pub fn spend(&mut self, size: usize) -> bool {
        let price = 1 + size as u64 / 64;
        if self.left < price {
            self.left = 0;
            return false;
        }
        self.left -= price;
        self.spent += 1;
        true
    }

    /// Nodes visited so far.
    pub fn spent(&self) -> u64 {
        self.spent
    }

    /// Pays for what a part of the work used of its share.
    pub fn used(&mut self, share: Effort, part: &Budget) {
        self.left = self.left.saturating_sub(share.nodes - part.left);
        self.spent += part.spent;
    }

    /// What is left, as a bound for a part of the work.
    pub fn rest(&self) -> Effort {
        Effort { nodes: self.left }
    }
}
