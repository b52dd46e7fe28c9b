//! Which steps to move: the fewest, or the cheapest, and of several such
//! choices always the same one.
//!
//! # What is to be found
//!
//! A set of steps can keep its written relative order exactly if no two of it
//! are in conflict. (If none are, the written order of the kept steps together
//! with all arcs closes on nothing: any path of arcs between two kept steps goes
//! the way they are written, or the two would be in conflict.) So what has to be
//! moved is a set that meets every conflict, and what is kept an antichain of
//! the conflict order, which is transitive, being the intersection of two
//! orders.
//!
//! Split each step into an upper and a lower copy and draw the conflicts between
//! the two sides. A cover of that graph by copies gives a set that meets every
//! conflict. The other way round: in a transitive relation each step of a
//! smallest such set needs only one copy (below), so the two have the same size,
//! and that is the size of a largest matching (D. Kőnig 1931; R. Dilworth, Annals
//! of Mathematics 51, 1950). With costs it is a maximum flow in the same graph
//! (R. Möhring in I. Rival, Graphs and Order, 1985).
//!
//! # A moved step goes one way only
//!
//! Let m be moved and suppose it had to go behind kept step k, and before kept
//! step l: (k, m) and (m, l) are conflicts, hence (k, l) is one by transitivity,
//! and both are kept: impossible. And it is in conflict with some kept step, or
//! it could be kept too. So each moved step has only to go later (it is covered
//! by its lower copy), or only earlier (by its upper copy).
//!
//! # Which of several
//!
//! Among the cheapest sets: one with the least sum of degrees (facts that
//! name the moved steps), so that of two steps each of which would do the one less
//! tied up moves; among those, the one with the most steps going later. The sets
//! that remain form a lattice and the last rule picks its top, so the choice is
//! unique. If a tie would take more conflicts to settle than [`Limits`] allows,
//! the first of these rules is left out.

use super::conflict::{Conflicts, Limits};
use super::flow::{Network, UNBOUNDED};
use crate::matching::{FREE, Matching, largest};

/// Steps of a stretch to be moved, rising.
pub(super) struct Cover {
    pub moved: Vec<u32>,
    /// No set costs less than this.
    pub bound: u64,
}

/// The fewest steps that meet every conflict.
pub(super) fn fewest(conflicts: &Conflicts, tie: impl Fn(u32) -> u64, limits: Limits) -> Cover {
    let matching = largest(&conflicts.pairs);
    let size = matching.size();
    let (uppers, lowers) = (conflicts.uppers.len(), conflicts.lowers.len());

    // From a free upper, lowers must be covered; their mates need not be.
    let mut upper_kept = vec![false; uppers];
    let mut lower_moved = vec![false; lowers];
    let mut todo: Vec<u32> = (0..uppers as u32)
        .filter(|&u| matching.of_row[u as usize] == FREE)
        .collect();
    todo.iter().for_each(|&u| upper_kept[u as usize] = true);
    while let Some(u) = todo.pop() {
        conflicts.pairs.each(u, |w| {
            if !lower_moved[w as usize] {
                lower_moved[w as usize] = true;
                let mate = matching.of_column[w as usize];
                if mate != FREE && !upper_kept[mate as usize] {
                    upper_kept[mate as usize] = true;
                    todo.push(mate);
                }
            }
        });
    }
    let tied: Vec<u32> = (0..uppers as u32)
        .filter(|&u| !upper_kept[u as usize])
        .collect();
    settle(
        conflicts,
        tie,
        limits.tied,
        &matching,
        &tied,
        &mut upper_kept,
        &mut lower_moved,
    );
    Cover {
        moved: collect(conflicts, &upper_kept, &lower_moved),
        bound: size as u64,
    }
}

fn collect(conflicts: &Conflicts, upper_kept: &[bool], lower_moved: &[bool]) -> Vec<u32> {
    let early = conflicts.uppers.iter().zip(upper_kept);
    let late = conflicts.lowers.iter().zip(lower_moved);
    let mut moved: Vec<u32> = early
        .filter(|x| !x.1)
        .chain(late.filter(|x| *x.1))
        .map(|x| *x.0)
        .collect();
    moved.sort_unstable();
    moved.dedup();
    moved
}

/// Chooses, for every matched pair that is still open, which of the two moves.
///
/// If the lower of a pair moves, its upper is kept, and then the lower of every
/// pair that this upper conflicts with must move too: a minimum cut.
fn settle(
    conflicts: &Conflicts,
    tie: impl Fn(u32) -> u64,
    most_arcs: usize,
    matching: &Matching,
    tied: &[u32],
    upper_kept: &mut [bool],
    lower_moved: &mut [bool],
) {
    const NOT_TIED: u32 = u32::MAX;
    let mut pair_of_lower = vec![NOT_TIED; lower_moved.len()];
    for (pair, &u) in tied.iter().enumerate() {
        pair_of_lower[matching.of_row[u as usize] as usize] = pair as u32;
    }
    let mut arcs = 0usize;
    for &u in tied {
        conflicts.pairs.each(u, |_| arcs += 1);
    }
    let by_degree = arcs <= most_arcs;
    let (source, sink) = (tied.len() as u32, tied.len() as u32 + 1);
    let mut network = Network::new(if by_degree { tied.len() + 2 } else { 0 });
    // Pairs whose upper has to move: it conflicts with a lower that no cover of
    // this size can take, because that lower has no mate.
    let mut upper_must = vec![false; tied.len()];
    for (pair, &u) in tied.iter().enumerate() {
        conflicts.pairs.each(u, |w| {
            if lower_moved[w as usize] {
                return;
            }
            match pair_of_lower[w as usize] {
                NOT_TIED => upper_must[pair] = true,
                other if by_degree && other != pair as u32 => {
                    network.arc(pair as u32, other, UNBOUNDED);
                }
                _ => {}
            }
        });
    }
    let lower_moves = if by_degree {
        for (pair, &u) in tied.iter().enumerate() {
            let upper = conflicts.uppers[u as usize];
            let lower = conflicts.lowers[matching.of_row[u as usize] as usize];
            network.arc(source, pair as u32, tie(upper));
            let price = if upper_must[pair] {
                UNBOUNDED
            } else {
                tie(lower)
            };
            network.arc(pair as u32, sink, price);
        }
        network.saturate(source, sink);
        network.source_side_largest(sink)
    } else {
        most_later(conflicts, tied, &pair_of_lower, upper_must)
    };
    for (pair, &u) in tied.iter().enumerate() {
        if lower_moves[pair] {
            upper_kept[u as usize] = true;
            lower_moved[matching.of_row[u as usize] as usize] = true;
        }
    }
}

/// The pairs whose lower can move when degrees are not looked at: all but those
/// whose upper has to, and those that conflict with the lower of one that stays.
fn most_later(
    conflicts: &Conflicts,
    tied: &[u32],
    pair_of_lower: &[u32],
    mut upper_moves: Vec<bool>,
) -> Vec<bool> {
    loop {
        let mut changed = false;
        for (pair, &u) in tied.iter().enumerate() {
            if !upper_moves[pair] {
                let mut must = false;
                conflicts.pairs.each(u, |w| {
                    let other = pair_of_lower[w as usize] as usize;
                    must |= upper_moves.get(other).is_some_and(|&moves| moves);
                });
                upper_moves[pair] = must;
                changed |= must;
            }
        }
        if !changed {
            return upper_moves.into_iter().map(|moves| !moves).collect();
        }
    }
}

/// The cheapest steps that meet every conflict; `None` if there are too many
/// conflicts to compute it.
pub(super) fn cheapest(
    conflicts: &Conflicts,
    weight: impl Fn(u32) -> u64,
    tie: impl Fn(u32) -> u64,
    limits: Limits,
) -> Option<Cover> {
    if conflicts.pairs.count() > limits.flow {
        return None;
    }
    let (uppers, lowers) = (&conflicts.uppers, &conflicts.lowers);
    let members = || uppers.iter().chain(lowers);
    let scale = 1 + members().map(|&v| tie(v)).sum::<u64>();
    let heaviest = members().map(|&v| weight(v)).max().unwrap_or(0);
    let whole = heaviest
        .saturating_mul(scale)
        .saturating_mul(members().count() as u64);
    // Where the two levels do not fit one number the second is only "move no
    // more than needed".
    let price = |v: u32| {
        if whole < UNBOUNDED / 2 {
            weight(v) * scale + tie(v)
        } else {
            weight(v) * (1 << 20) + 1
        }
    };
    let source = (uppers.len() + lowers.len()) as u32;
    let mut network = Network::new(source as usize + 2);
    for (i, &v) in uppers.iter().enumerate() {
        network.arc(source, i as u32, price(v));
        conflicts.pairs.each(i as u32, |w| {
            network.arc(i as u32, uppers.len() as u32 + w, UNBOUNDED);
        });
    }
    for (i, &v) in lowers.iter().enumerate() {
        network.arc((uppers.len() + i) as u32, source + 1, price(v));
    }
    network.saturate(source, source + 1);
    let side = network.source_side_largest(source + 1);
    let moved = collect(
        conflicts,
        &side[..uppers.len()],
        &side[uppers.len()..][..lowers.len()],
    );
    Some(Cover {
        bound: moved.iter().map(|&v| weight(v)).sum(),
        moved,
    })
}
