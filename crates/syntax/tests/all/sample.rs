//! The sample plan of the language.

use crate::plain;

pub const SAMPLE: &str = include_str!("../../../../tests/plans/sample.rebuild");

#[test]
fn it_reads_without_problems() {
    let tree = syntax::read(SAMPLE);
    assert_eq!(tree.problems, []);
    assert_eq!(plain::items(&tree).len(), 42);
}
