//! The units that the language reads are those that the arithmetic knows.

use syntax::tree::Says;
use workshop::quantity::{doubtful_spellings, spellings};

#[test]
fn every_spelling_of_a_unit_is_read() {
    let asked_about = doubtful_spellings().iter().map(|doubtful| doubtful.text);
    let known = spellings().iter().map(|spelling| spelling.text);
    let mut missed = Vec::new();
    for unit in known.chain(asked_about) {
        for gap in [" ", ""] {
            let text = format!("measure x\n  expect 5{gap}{unit} note \"x\"\n");
            let tree = syntax::read(text);
            let unit_read = tree.items[0]
                .details
                .first()
                .and_then(|detail| match &detail.says {
                    Says::Expect(quantity) => quantity.unit.map(|span| tree.at(span)),
                    _ => None,
                });
            if unit_read != Some(unit) || !tree.problems.is_empty() {
                missed.push(format!("5{gap}{unit}"));
            }
        }
    }
    assert!(missed.is_empty(), "not read: {missed:?}");
}

#[test]
fn every_unit_offered_for_a_misspelt_one_has_a_meaning() {
    for unit in syntax::words::UNITS {
        assert!(
            workshop::quantity::Measure::read(&format!("5 {unit}")).is_ok(),
            "{unit}"
        );
    }
}
