//! A largest matching between uppers and lowers.
//!
//! J. Hopcroft and R. Karp, SIAM Journal on Computing 2(4), 1973, 225-231:
//! all shortest augmenting paths at once, in at most about √n rounds. With bit
//! rows a round reads each row once, against the columns of one layer at a time.

use super::conflict::{Conflicts, Table};

pub(super) const FREE: u32 = u32::MAX;

pub(super) struct Matching {
    /// Lower of each upper, upper of each lower, by place.
    pub of_upper: Vec<u32>,
    pub of_lower: Vec<u32>,
}

impl Matching {
    pub fn size(&self) -> usize {
        self.of_upper.iter().filter(|&&m| m != FREE).count()
    }
}

pub(super) fn largest(conflicts: &Conflicts) -> Matching {
    let mut matching = Matching {
        of_upper: vec![FREE; conflicts.uppers.len()],
        of_lower: vec![FREE; conflicts.lowers.len()],
    };
    while round(conflicts, &mut matching) {}
    matching
}

const UNSEEN: u32 = u32::MAX;

/// Columns by the layer in which a breadth-first search first met them.
struct Layers {
    of_lower: Vec<u32>,
    /// With bit rows: the columns of each layer not used up yet.
    masks: Vec<Vec<u64>>,
}

fn round(conflicts: &Conflicts, matching: &mut Matching) -> bool {
    let uppers = conflicts.uppers.len() as u32;
    let mut layers = Layers {
        of_lower: vec![UNSEEN; conflicts.lowers.len()],
        masks: Vec::new(),
    };
    let words = match conflicts.table {
        Table::Bits { words, .. } => words,
        Table::Lists(_) => 0,
    };
    let mut unseen = vec![u64::MAX; words];
    let mut row_layer = vec![UNSEEN; uppers as usize];
    let mut front: Vec<u32> = (0..uppers)
        .filter(|&u| matching.of_upper[u as usize] == FREE)
        .collect();
    let mut depth = 0;
    let mut reached_free = false;
    while !front.is_empty() && !reached_free {
        let mut next = Vec::new();
        let mut mask = vec![0u64; words];
        for &u in &front {
            row_layer[u as usize] = depth;
            match &conflicts.table {
                Table::Bits { words, bits } => {
                    let row = &bits[u as usize * words..][..*words];
                    for i in 0..*words {
                        let mut new = row[i] & unseen[i];
                        unseen[i] &= !new;
                        mask[i] |= new;
                        while new != 0 {
                            let w = i as u32 * 64 + new.trailing_zeros();
                            new &= new - 1;
                            layers.of_lower[w as usize] = depth;
                            match matching.of_lower[w as usize] {
                                FREE => reached_free = true,
                                mate => next.push(mate),
                            }
                        }
                    }
                }
                Table::Lists(rows) => {
                    for &w in rows.row(u) {
                        if layers.of_lower[w as usize] == UNSEEN {
                            layers.of_lower[w as usize] = depth;
                            match matching.of_lower[w as usize] {
                                FREE => reached_free = true,
                                mate => next.push(mate),
                            }
                        }
                    }
                }
            }
        }
        layers.masks.push(mask);
        depth += 1;
        front = next;
    }
    if !reached_free {
        return false;
    }
    let mut at = vec![0u32; uppers as usize];
    for root in 0..uppers {
        if matching.of_upper[root as usize] == FREE {
            augment(conflicts, matching, &mut layers, &row_layer, &mut at, root);
        }
    }
    true
}

/// Follows layers down from a free upper; each column is tried once a round.
fn augment(
    conflicts: &Conflicts,
    matching: &mut Matching,
    layers: &mut Layers,
    row_layer: &[u32],
    at: &mut [u32],
    root: u32,
) {
    let last = layers.masks.len() as u32 - 1;
    let mut path: Vec<(u32, u32)> = Vec::new();
    let mut upper = root;
    loop {
        let layer = row_layer[upper as usize];
        match take_column(conflicts, layers, layer, &mut at[upper as usize], upper) {
            Some(lower) => {
                let mate = matching.of_lower[lower as usize];
                if mate == FREE {
                    path.push((upper, lower));
                    for &(u, w) in &path {
                        matching.of_upper[u as usize] = w;
                        matching.of_lower[w as usize] = u;
                    }
                    return;
                }
                if layer < last {
                    path.push((upper, lower));
                    upper = mate;
                }
            }
            None => match path.pop() {
                Some((back, _)) => upper = back,
                None => return,
            },
        }
    }
}

/// The next untried column of this layer that conflicts with the upper.
fn take_column(
    conflicts: &Conflicts,
    layers: &mut Layers,
    layer: u32,
    at: &mut u32,
    upper: u32,
) -> Option<u32> {
    match &conflicts.table {
        Table::Bits { words, bits } => {
            let row = &bits[upper as usize * words..][..*words];
            let mask = &mut layers.masks[layer as usize];
            while (*at as usize) < *words {
                let i = *at as usize;
                let both = row[i] & mask[i];
                if both != 0 {
                    let bit = both.trailing_zeros();
                    mask[i] &= !(1 << bit);
                    return Some(i as u32 * 64 + bit);
                }
                *at += 1;
            }
            None
        }
        Table::Lists(rows) => {
            while let Some(&w) = rows.row(upper).get(*at as usize) {
                *at += 1;
                if layers.of_lower[w as usize] == layer {
                    layers.of_lower[w as usize] = UNSEEN;
                    return Some(w);
                }
            }
            None
        }
    }
}
