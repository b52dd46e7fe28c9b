//! Around a ring.

/// Opposites in turn, each next pair as far as can be from those done.
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
    let mut nearest_done = vec![usize::MAX; pairs];
    let mut done = vec![false; pairs];
    let mut order = Vec::with_capacity(count);
    let mut last = 0;
    for _ in 0..pairs {
        // Farthest from all that are done; of those, farthest from the last
        // one; of those, the lowest number.
        let next = (0..pairs).filter(|pair| !done[*pair]).max_by_key(|pair| {
            (
                nearest_done[*pair],
                apart(*pair, last),
                std::cmp::Reverse(*pair),
            )
        });
        let Some(next) = next else { break };
        done[next] = true;
        last = next;
        order.push(next + 1);
        order.push(next + 1 + pairs);
        for (pair, nearest) in nearest_done.iter_mut().enumerate() {
            *nearest = (*nearest).min(apart(pair, next));
        }
    }
    order
}

/// On by just under half the count each time. Half of one less than an odd
/// count shares no factor with it, so every fastener is met once.
fn star(count: usize) -> Vec<usize> {
    let step = ((count - 1) / 2).max(1);
    (0..count).map(|turn| turn * step % count + 1).collect()
}
