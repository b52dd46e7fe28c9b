//! Around a ring.

/// Opposites in turn, each next pair as far as can be from those done. The
/// count is not 0.
pub(super) fn cross(count: usize) -> Vec<usize> {
    if count % 2 == 1 {
        return star(count);
    }
    let pairs = count / 2;
    // Pair p is fasteners p and p + half; pair numbers go round too, because
    // a half turn brings the ring onto itself.
    let apart = |a: usize, b: usize| {
        let straight = a.abs_diff(b);
        straight.min(pairs - straight)
    };
    // How far each pair is from the nearest one done; the first is done.
    let mut nearest_done: Vec<usize> = (0..pairs).map(|pair| apart(pair, 0)).collect();
    let mut left: Vec<usize> = (1..pairs).collect();
    let mut order = vec![1, 1 + pairs];
    let mut last = 0;
    // Next is the farthest from all that are done; of those, the farthest from
    // the last one; of those, the lowest number.
    while let Some(next) = left.iter().copied().max_by_key(|pair| {
        (
            nearest_done[*pair],
            apart(*pair, last),
            std::cmp::Reverse(*pair),
        )
    }) {
        left.retain(|pair| *pair != next);
        order.extend([next + 1, next + 1 + pairs]);
        for (pair, nearest) in nearest_done.iter_mut().enumerate() {
            *nearest = (*nearest).min(apart(pair, next));
        }
        last = next;
    }
    order
}

/// On by just under half the count each time. Half of one less than an odd
/// count shares no factor with it, so every fastener is met once.
fn star(count: usize) -> Vec<usize> {
    let step = ((count - 1) / 2).max(1);
    (0..count).map(|turn| turn * step % count + 1).collect()
}
