//! Compressed rows: a list of short lists in two flat arrays.
//!
//! Every relation of an instance is kept this way, because a plan of a million
//! steps must not cost one small allocation a step.

/// `row(i)` is a slice of one flat array.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Rows {
    start: Vec<u32>,
    item: Vec<u32>,
}

impl Rows {
    /// Rows from pairs `(row, item)`. Within a row the items keep the order in
    /// which the pairs came. `moved` is told, pair by pair, where the item of
    /// that pair ended up.
    pub fn from_pairs(
        rows: usize,
        pairs: impl Iterator<Item = (u32, u32)> + Clone,
        mut moved: impl FnMut(usize),
    ) -> Self {
        let mut start = vec![0u32; rows + 1];
        let mut count = 0usize;
        for (row, _) in pairs.clone() {
            start[row as usize + 1] += 1;
            count += 1;
        }
        for i in 0..rows {
            start[i + 1] += start[i];
        }
        let mut next = start.clone();
        let mut item = vec![0u32; count];
        for (row, value) in pairs {
            let at = next[row as usize] as usize;
            next[row as usize] += 1;
            item[at] = value;
            moved(at);
        }
        Self { start, item }
    }

    /// Rows that lie one behind the other already.
    pub fn from_parts(start: Vec<u32>, item: Vec<u32>) -> Self {
        debug_assert_eq!(start.last().map(|&e| e as usize), Some(item.len()));
        Self { start, item }
    }

    pub fn len(&self) -> usize {
        self.start.len().saturating_sub(1)
    }

    pub fn row(&self, i: u32) -> &[u32] {
        &self.item[self.range(i)]
    }

    pub fn range(&self, i: u32) -> std::ops::Range<usize> {
        self.start[i as usize] as usize..self.start[i as usize + 1] as usize
    }

    pub fn row_len(&self, i: u32) -> u32 {
        self.start[i as usize + 1] - self.start[i as usize]
    }

    pub fn items(&self) -> &[u32] {
        &self.item
    }

    /// All pairs `(row, item)` in row order.
    pub fn pairs(&self) -> impl Iterator<Item = (u32, u32)> + Clone + '_ {
        (0..self.len() as u32).flat_map(move |i| self.row(i).iter().map(move |&x| (i, x)))
    }
}
