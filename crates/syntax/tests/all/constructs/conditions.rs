//! States and conditions.

use super::{detail, details};

#[test]
fn states() {
    for (word, state) in syntax::words::STATES {
        let spread = word.replace(' ', "   ");
        assert_eq!(
            detail(&format!("after x is {spread}")),
            format!("after: After([x {state:?}])")
        );
        assert_eq!(
            detail(&format!("after x, y are {word}")),
            format!("after: After([x y {state:?}])")
        );
        assert_eq!(
            detail(&format!("must be {word} before x")),
            format!("mustbe: MustBe {{ states: [{state:?}], when: Before, condition: [x] }}")
        );
    }
}

#[test]
fn conditions() {
    let after = |condition: &str, expected: &str| {
        assert_eq!(
            detail(&format!("after {condition}")),
            format!("after: After([{expected}])"),
            "{condition}"
        );
    };
    after("first-run", "first-run");
    after("the belt is fitted", "belt Fitted");
    after(
        "the timing-gears and rod are fitted and snug",
        "timing-gears rod Fitted Snug",
    );
    after("a is fitted, b is tight", "a Fitted, b Tight");
    after("a is fitted and b is tight and c", "a Fitted, b Tight, c");
    after(
        "a is fitted and tight, b are locked",
        "a Fitted Tight, b Locked",
    );
    after("a is fitted and tight and locked", "a Fitted Tight Locked");
    // Bare names stand for themselves, unless a later `is` takes them along.
    after("a, b and c", "a, b, c");
    after("a, b are fitted", "a b Fitted");
    after("a is fitted and b, c are tight", "a Fitted, b c Tight");
    // Behind a state a word is a state, unless an `is` makes it a thing.
    after("a is fitted and set", "a Fitted Set");
    after("a is fitted and set is tight", "a Fitted, set Tight");
    after(
        "a is fitted and tight and cover is on",
        "a Fitted Tight, cover Fitted",
    );
    after("a is fitted and cover", "a Fitted, cover");
    // Positions.
    after("crank at tdc", "crank at tdc");
    after("crank is at tdc", "crank at tdc");
    after("pin, crank at tdc", "pin, crank at tdc");
    after(
        "cap is on, crank at tdc and locked-pin",
        "cap Fitted, crank at tdc, locked-pin",
    );
    after("crank is at tdc and locked", "crank at tdc Locked");
    after("a is fitted and crank at tdc", "a Fitted, crank at tdc");
}

#[test]
fn a_condition_ends_where_a_detail_begins() {
    assert_eq!(
        details("after a is on at most 10 min after b"),
        [
            "after: After([a Fitted])",
            "atmost: AtMost { time: 10min, min, after: [b] }",
        ]
    );
    assert_eq!(
        details("after a at least 1 h after b is off with c"),
        [
            "after: After([a])",
            "atleast: AtLeast { time: 1h, h, after: [b Off] }",
            "with: With([c])",
        ]
    );
    assert_eq!(
        details("after a is tight and set at least 1 h after b"),
        [
            "after: After([a Tight Set])",
            "atleast: AtLeast { time: 1h, h, after: [b] }",
        ]
    );
}
