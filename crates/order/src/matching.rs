//! A largest matching between two sides.
//!
//! J. Hopcroft and R. Karp, SIAM Journal on Computing 2(4), 1973, 225-231:
//! all shortest augmenting paths at once, in at most about √n rounds. With bit
//! rows a round reads each row once, against the columns of one layer at a time.

use crate::pairs::{Pairs, Table};

/// Without a mate.
pub(crate) const FREE: u32 = u32::MAX;

pub(crate) struct Matching {
    /// Column of each row, row of each column.
    pub of_row: Vec<u32>,
    pub of_column: Vec<u32>,
}

impl Matching {
    pub fn size(&self) -> usize {
        self.of_row.iter().filter(|&&m| m != FREE).count()
    }
}

/// A largest matching; the same one every time.
pub(crate) fn largest(pairs: &Pairs) -> Matching {
    let mut matching = Matching {
        of_row: vec![FREE; pairs.rows],
        of_column: vec![FREE; pairs.columns],
    };
    while let Some(mut layers) = Layers::new(pairs, &matching) {
        for root in 0..pairs.rows as u32 {
            if matching.of_row[root as usize] == FREE {
                layers.augment(&mut matching, root);
            }
        }
    }
    matching
}

const UNSEEN: u32 = u32::MAX;

/// Rows and columns by the layer in which a breadth-first search from the free
/// rows first met them. It ends with the first layer that holds a free column.
struct Layers<'a> {
    pairs: &'a Pairs,
    depth: u32,
    of_row: Vec<u32>,
    of_column: Vec<u32>,
    /// With bit rows: the columns of each layer that are not used up yet.
    masks: Vec<Vec<u64>>,
    /// How far each row has been read.
    read: Vec<u32>,
}

impl<'a> Layers<'a> {
    /// The layers; `None` if no free column can be reached.
    fn new(pairs: &'a Pairs, matching: &Matching) -> Option<Self> {
        let words = match pairs.table {
            Table::Bits { words, .. } => words,
            Table::Lists(_) => 0,
        };
        let mut unseen = vec![u64::MAX; words];
        let mut out = Self {
            pairs,
            depth: 0,
            of_row: vec![UNSEEN; pairs.rows],
            of_column: vec![UNSEEN; pairs.columns],
            masks: Vec::new(),
            read: vec![0; pairs.rows],
        };
        let mut front: Vec<u32> = (0..pairs.rows as u32)
            .filter(|&row| matching.of_row[row as usize] == FREE)
            .collect();
        let mut reached_free = false;
        while !front.is_empty() && !reached_free {
            let mut next = Vec::new();
            let mut mask = vec![0u64; words];
            let depth = out.depth;
            for &row in &front {
                out.of_row[row as usize] = depth;
                let layer_of = &mut out.of_column;
                let mut meet = |column: u32| {
                    if layer_of[column as usize] == UNSEEN {
                        layer_of[column as usize] = depth;
                        match matching.of_column[column as usize] {
                            FREE => reached_free = true,
                            mate => next.push(mate),
                        }
                    }
                };
                match &pairs.table {
                    Table::Bits { words, bits } => {
                        let row = &bits[row as usize * words..][..*words];
                        for i in 0..*words {
                            let mut new = row[i] & unseen[i];
                            unseen[i] &= !new;
                            mask[i] |= new;
                            while new != 0 {
                                meet(i as u32 * 64 + new.trailing_zeros());
                                new &= new - 1;
                            }
                        }
                    }
                    Table::Lists(rows) => {
                        rows.row(row).iter().for_each(|&column| meet(column));
                    }
                }
            }
            out.masks.push(mask);
            out.depth += 1;
            front = next;
        }
        reached_free.then_some(out)
    }

    /// Follows the layers down from a free row to a free column, if that can
    /// still be done. Each column is tried once a round.
    fn augment(&mut self, matching: &mut Matching, root: u32) {
        let mut path: Vec<(u32, u32)> = Vec::new();
        let mut row = root;
        loop {
            let Some(column) = self.next_column(row) else {
                match path.pop() {
                    Some((back, _)) => row = back,
                    None => return,
                }
                continue;
            };
            let mate = matching.of_column[column as usize];
            if mate == FREE {
                path.push((row, column));
                for &(r, c) in &path {
                    matching.of_row[r as usize] = c;
                    matching.of_column[c as usize] = r;
                }
                return;
            }
            // Beyond the last layer there is nothing to look for.
            if self.of_row[row as usize] + 1 < self.depth {
                path.push((row, column));
                row = mate;
            }
        }
    }

    /// The next untried column in the layer of this row.
    fn next_column(&mut self, row: u32) -> Option<u32> {
        let layer = self.of_row[row as usize];
        let read = &mut self.read[row as usize];
        match &self.pairs.table {
            Table::Bits { words, bits } => {
                let row = &bits[row as usize * words..][..*words];
                let mask = &mut self.masks[layer as usize];
                while (*read as usize) < *words {
                    let i = *read as usize;
                    let both = row[i] & mask[i];
                    if both != 0 {
                        let bit = both.trailing_zeros();
                        mask[i] &= !(1 << bit);
                        return Some(i as u32 * 64 + bit);
                    }
                    *read += 1;
                }
                None
            }
            Table::Lists(rows) => {
                while let Some(&column) = rows.row(row).get(*read as usize) {
                    *read += 1;
                    if self.of_column[column as usize] == layer {
                        self.of_column[column as usize] = UNSEEN;
                        return Some(column);
                    }
                }
                None
            }
        }
    }
}
