//! As few landmarks as still prove the cost.

use super::branch::{Goal, Search};
use crate::effort::{Budget, Effort};

/// How much may be spent on trying to do with fewer landmarks, and on one try.
const IN_ALL: Effort = Effort { nodes: 20_000 };
const ON_ONE: Effort = Effort { nodes: 1_000 };

/// Landmarks of a search that has ended, no more than are needed for its bound
/// as far as the tries allow: half of them are left out, then a quarter, at last
/// one by one, the longest first.
pub(crate) fn few(search: &Search) -> Vec<Vec<u32>> {
    let bound = search.bound() as i128;
    if bound == 0 {
        return Vec::new();
    }
    let cost: Vec<u64> = search.costs().collect();
    let mut left = Budget::new(IN_ALL);
    let mut proves = |rows: &[&Vec<u32>]| {
        let share = Effort {
            nodes: ON_ONE.nodes.min(left.rest().nodes),
        };
        let mut own = Budget::new(share);
        let given = rows.iter().map(|row| (*row).clone());
        let mut test = Search::over(&cost, given, Goal::Below(bound));
        test.run(&mut own);
        left.used(share, &own);
        test.bound() >= search.bound()
    };
    let mut rows: Vec<&Vec<u32>> = search.rows().iter().collect();
    let heavy = rows
        .iter()
        .zip(search.weights())
        .filter(|(_, w)| **w > 1e-3);
    let heavy: Vec<_> = heavy.map(|(row, _)| *row).collect();
    if proves(&heavy) {
        rows = heavy;
    }
    rows.sort_by(|x, y| y.len().cmp(&x.len()).then_with(|| x.cmp(y)));
    let mut chunk = rows.len().div_ceil(2);
    while chunk > 0 {
        let mut at = 0;
        while at < rows.len() {
            let end = rows.len().min(at + chunk);
            let rest = [&rows[..at], &rows[end..]].concat();
            if proves(&rest) {
                rows = rest;
            } else {
                at = end;
            }
        }
        chunk /= 2;
    }
    rows.into_iter().cloned().collect()
}
