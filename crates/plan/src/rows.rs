//! Many short lists in two allocations.

/// For each number from 0 a list, all held in one stretch of memory.
#[derive(Clone, Debug)]
pub struct Rows<T> {
    starts: Vec<u32>,
    all: Vec<T>,
}

impl<T: Copy> Rows<T> {
    /// Rows for `count` numbers from pairs of number and entry; within a row the order of the
    /// pairs is kept. Pairs beyond `count` are left out.
    pub(crate) fn of(count: usize, pairs: &[(u32, T)]) -> Rows<T> {
        let mut starts = vec![0u32; count + 1];
        for (row, _) in pairs {
            if let Some(next) = starts.get_mut(*row as usize + 1) {
                *next += 1;
            }
        }
        for row in 0..count {
            starts[row + 1] += starts[row];
        }
        // A stable sort by row lays the entries out in the same order as counting did.
        let mut sorted: Vec<&(u32, T)> = pairs
            .iter()
            .filter(|(row, _)| (*row as usize) < count)
            .collect();
        sorted.sort_by_key(|(row, _)| *row);
        Rows {
            starts,
            all: sorted.into_iter().map(|(_, entry)| *entry).collect(),
        }
    }
}

impl<T> Rows<T> {
    /// The list of number `row`; empty for a number there is no row for.
    pub fn row(&self, row: u32) -> &[T] {
        let row = row as usize;
        match (self.starts.get(row), self.starts.get(row + 1)) {
            (Some(from), Some(to)) => &self.all[*from as usize..*to as usize],
            _ => &[],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_keep_the_order_of_their_pairs() {
        let rows = Rows::of(3, &[(2, 'a'), (0, 'b'), (2, 'c'), (7, 'x')]);
        assert_eq!(rows.row(0), ['b']);
        assert!(rows.row(1).is_empty());
        assert_eq!(rows.row(2), ['a', 'c']);
        assert!(rows.row(3).is_empty());
    }
}
