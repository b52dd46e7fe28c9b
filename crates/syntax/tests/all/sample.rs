//! The sample plan of the language.

use crate::plain;

pub const SAMPLE: &str = include_str!("../../../../tests/plans/sample.rebuild");

/// What the sample says, item by item.
const SAID: &str = include_str!("sample.said");

#[test]
fn it_reads_as_meant_and_without_problems() {
    let tree = syntax::read(SAMPLE);
    assert_eq!(tree.problems, []);
    let said: Vec<String> = plain::items(&tree);
    assert_eq!(said, SAID.lines().collect::<Vec<_>>());
}
