//! Judging an order.

/// What is wrong with an order. Numbers are those of the fasteners.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OrderProblem {
    /// A fastener that the order leaves out.
    Missing(usize),
    /// A fastener that stands in it twice.
    Repeated(usize),
    /// A number that no fastener has.
    NoSuch(usize),
}

/// What is wrong with an order of `count` fasteners numbered from 1: first the
/// numbers that are none or stand twice, as they come, then those left out,
/// from the lowest.
pub fn check_order(order: &[usize], count: usize) -> Vec<OrderProblem> {
    let mut problems = Vec::new();
    let mut seen = std::collections::BTreeSet::new();
    for number in order {
        if *number == 0 || *number > count {
            problems.push(OrderProblem::NoSuch(*number));
        } else if !seen.insert(*number) {
            problems.push(OrderProblem::Repeated(*number));
        }
    }
    problems.extend(
        (1..=count)
            .filter(|number| !seen.contains(number))
            .map(OrderProblem::Missing),
    );
    problems
}

/// Whether the first and second, third and fourth … of an order around a ring
/// stand opposite each other. False for an odd count and for an order that is
/// not complete.
pub fn opposite_pairs(order: &[usize]) -> bool {
    let count = order.len();
    count > 0
        && count.is_multiple_of(2)
        && check_order(order, count).is_empty()
        && order
            .chunks(2)
            .all(|pair| pair[0].abs_diff(pair[1]) == count / 2)
}

/// Whether the second pair of an order around a ring stands square to the
/// first, as it can where the count divides by 4. True for every other count.
pub fn quarter_start(order: &[usize]) -> bool {
    let count = order.len();
    count < 4 || !count.is_multiple_of(4) || {
        let apart = order[0].abs_diff(order[2]) % (count / 2);
        apart == count / 4
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_missing_and_what_is_twice_is_named() {
        assert!(check_order(&[1, 3, 2, 4], 4).is_empty());
        assert_eq!(
            check_order(&[1, 3, 3, 0, 9], 4),
            [
                OrderProblem::Repeated(3),
                OrderProblem::NoSuch(0),
                OrderProblem::NoSuch(9),
                OrderProblem::Missing(2),
                OrderProblem::Missing(4)
            ]
        );
        assert_eq!(check_order(&[], 1), [OrderProblem::Missing(1)]);
    }

    #[test]
    fn published_orders_keep_their_pairs_opposite() {
        // MIL-HDBK-60 fig. 4; TB 9-3950-253-13&P; ASME PCC-1 (from memory).
        let published: [&[usize]; 4] = [
            &[1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 4, 12, 6, 14, 8, 16],
            &[1, 7, 4, 10, 2, 8, 6, 12, 5, 11, 9, 3],
            &[1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
            &[
                1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19,
            ],
        ];
        for order in published {
            assert!(opposite_pairs(order) && quarter_start(order), "{order:?}");
        }
        assert!(!opposite_pairs(&[1, 2, 3, 4]));
        assert!(!opposite_pairs(&[1, 3, 2, 5]));
        assert!(!opposite_pairs(&[1, 2, 3]));
        assert!(!quarter_start(&[1, 5, 2, 6, 3, 7, 4, 8]));
    }
}
