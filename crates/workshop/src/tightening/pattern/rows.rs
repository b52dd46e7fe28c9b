//! Over two rows.

use super::line::middle_out;

/// From the middle column out. `across` goes over the corners of each pair of
/// columns, otherwise round them.
pub(super) fn order(first: usize, second: usize, across: bool) -> Vec<usize> {
    let count = first + second;
    let columns = first.max(second);
    // A shorter row stands in the middle of the longer one. Counting half
    // columns keeps a row of 4 over a row of 5 where it stands.
    let upper = |column: usize| at(first, columns, column);
    let lower = |column: usize| at(second, columns, column).map(|number| first + number);
    let mut order: Vec<usize> = Vec::with_capacity(count);
    let mut take = |number: Option<usize>| {
        if let Some(number) = number.filter(|number| !order.contains(number)) {
            order.push(number);
        }
    };
    let middle = columns.div_ceil(2);
    let mut rings: Vec<(usize, usize)> = Vec::new();
    if columns % 2 == 1 {
        take(upper(middle));
        take(lower(middle));
        rings.extend((1..middle).map(|step| (middle - step, middle + step)));
    } else {
        rings.extend((0..middle).map(|step| (middle - step, middle + 1 + step)));
    }
    for (left, right) in rings {
        if across {
            for number in [upper(left), lower(right), lower(left), upper(right)] {
                take(number);
            }
        } else {
            for number in [lower(left), upper(left), upper(right), lower(right)] {
                take(number);
            }
        }
    }
    // Rows of unlike parity leave one column of the shorter row between two of
    // the longer; what the walk missed goes last, from the middle out.
    for number in middle_out(first) {
        take(Some(number));
    }
    for number in middle_out(second) {
        take(Some(first + number));
    }
    order
}

/// The number within its own row that stands in a column of the longer row.
fn at(row: usize, columns: usize, column: usize) -> Option<usize> {
    let number = column.checked_sub((columns - row) / 2)?;
    (1..=row).contains(&number).then_some(number)
}
