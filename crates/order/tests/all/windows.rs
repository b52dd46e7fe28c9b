//! Windows, against a look at every moment.

use crate::brute::Dice;
use order::windows::{Blocked, Window, blockers_at, windows};

fn open_at(moment: usize, ways: &[Vec<Blocked>]) -> bool {
    ways.iter().any(|way| {
        way.iter()
            .all(|span| moment < span.from || moment >= span.until)
    })
}

#[test]
fn every_moment_agrees() {
    let mut dice = Dice::new(71);
    let (mut met, mut none) = (0, 0);
    for _ in 0..20_000 {
        let n = dice.below(9);
        let mut order: Vec<u32> = (0..n as u32).collect();
        dice.shuffle(&mut order);
        let ways: Vec<Vec<Blocked>> = (0..dice.below(4))
            .map(|_| {
                (0..dice.below(4))
                    .map(|_| Blocked {
                        from: dice.below(n + 3),
                        until: dice.below(n + 3),
                        by: dice.below(9) as u32,
                    })
                    .collect()
            })
            .collect();
        let mut expected: Vec<Window> = Vec::new();
        let mut was_open = false;
        for moment in 0..=n {
            let open = open_at(moment, &ways);
            let step = moment.checked_sub(1).map(|p| order[p]);
            match (was_open, open) {
                (false, true) => expected.push(Window {
                    from: moment,
                    to: moment,
                    opener: step,
                    closer: None,
                }),
                (true, true) => expected.last_mut().unwrap().to = moment,
                (true, false) => expected.last_mut().unwrap().closer = step,
                (false, false) => {}
            }
            was_open = open;
            match blockers_at(moment, &ways) {
                None => assert!(open),
                Some(by) => {
                    assert!(!open);
                    assert_eq!(by.len(), ways.len());
                    for (by, way) in by.iter().zip(&ways) {
                        assert!(way.iter().any(|span| {
                            span.by == *by && span.from <= moment && moment < span.until
                        }));
                    }
                }
            }
        }
        assert_eq!(windows(&order, &ways), expected, "{ways:?}");
        met += usize::from(expected.len() > 1);
        none += usize::from(expected.is_empty());
    }
    assert!(met > 1000 && none > 1000, "{met} and {none}");
}

/// Fit bracket (2), fit cover (4), take bracket off (5): a socket way shut by
/// the cover for good, a spanner way shut by the bracket for a while.
#[test]
fn the_step_that_closes_the_last_way_is_named() {
    let order = [0, 1, 2, 3, 4, 5, 6];
    let span = |from, until, by| Blocked { from, until, by };
    let ways = [vec![span(5, 8, 4)], vec![span(3, 6, 2)]];
    let open = |from, to, opener, closer| Window {
        from,
        to,
        opener,
        closer,
    };
    assert_eq!(
        windows(&order, &ways),
        [open(0, 4, None, Some(4)), open(6, 7, Some(5), None)]
    );
    assert_eq!(blockers_at(5, &ways), Some(vec![4, 2]));
    // Nothing in the way: always; no way at all: never.
    assert_eq!(windows(&order, &[Vec::new()]), [open(0, 7, None, None)]);
    assert_eq!(windows(&order, &[]), []);
}
