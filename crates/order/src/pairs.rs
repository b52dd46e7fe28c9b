//! Pairs between two numbered sides, as bits or as lists.

use crate::bits::ones;
use crate::rows::Rows;

/// Which columns each row is paired with.
pub(crate) struct Pairs {
    pub rows: usize,
    pub columns: usize,
    pub table: Table,
}

pub(crate) enum Table {
    /// `words` words for each row.
    Bits {
        words: usize,
        bits: Vec<u64>,
    },
    Lists(Rows),
}

impl Pairs {
    /// Calls `each` with every column of a row, rising.
    pub fn each(&self, row: u32, mut each: impl FnMut(u32)) {
        match &self.table {
            Table::Bits { words, bits } => {
                ones(&bits[row as usize * words..][..*words]).for_each(each);
            }
            Table::Lists(rows) => rows.row(row).iter().for_each(|&c| each(c)),
        }
    }

    /// How many pairs there are.
    pub fn count(&self) -> usize {
        match &self.table {
            Table::Bits { bits, .. } => bits.iter().map(|w| w.count_ones() as usize).sum(),
            Table::Lists(rows) => rows.items().len(),
        }
    }
}
