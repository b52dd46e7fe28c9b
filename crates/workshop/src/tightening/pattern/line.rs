//! Along a line.

/// From the middle out, to one side and the other in turn, beginning with the
/// higher number.
pub(super) fn middle_out(count: usize) -> Vec<usize> {
    if count == 0 {
        return Vec::new();
    }
    let middle = count.div_ceil(2);
    let outwards = (1..=count).flat_map(|step| [Some(middle + step), middle.checked_sub(step)]);
    let others = outwards
        .flatten()
        .filter(|number| (1..=count).contains(number));
    std::iter::once(middle).chain(others).collect()
}
