//! Figures with their units.

use super::{all_say, detail};

#[test]
fn figures() {
    for figure in [
        "22", "0.12", ".005", "15/16", "1 1/2", "1-1/2", "-40", "−40", "+5", "5..25", "5 .. 25",
        "-5..40",
    ] {
        let bare = figure.replace(' ', "");
        assert_eq!(
            detail(&format!("to {figure} mm")),
            format!("to: To(Quantity({bare}mm, mm))")
        );
        assert_eq!(
            detail(&format!("to {figure}mm")),
            format!("to: To(Quantity({bare}mm, mm))")
        );
        assert_eq!(
            detail(&format!("expect {figure}")),
            format!("expect: Expect({bare})")
        );
    }
    all_say(
        "expect: Expect(",
        &[
            "expect 22 ± 2 mm",
            "expect 22+-2 mm",
            "expect 22 +/- 2 mm",
            "expect 22 mm ±10 %",
        ],
    );
    assert_eq!(
        detail("expect 0.05 mm .. 0.12 mm"),
        "expect: Expect(0.05mm..0.12mm, mm)"
    );
    // A bare inch only straight behind a number.
    assert_eq!(detail("length 15/16 in"), "length: Length(15/16in, in)");
}

#[test]
fn a_reading_may_be_said_in_words() {
    for said in [
        "0.1 to 0.2 mm",
        "0.1 mm to 0.2 mm",
        "at most 0.2 mm",
        "at least 3 mm",
        "up to 0.2 mm",
        "max 0.2 mm",
        "min 3 mm",
        "maximum 3 mm",
        "minimum 3 mm",
    ] {
        for keyword in ["expect", "torque", "to"] {
            let tree = syntax::read(format!("set x {keyword} {said} takes 5 min"));
            assert_eq!(tree.problems, [], "{keyword} {said}");
            let details = &tree.items[0].details;
            assert_eq!(details.len(), 2, "{keyword} {said}");
            let end = keyword.len() + 1;
            assert_eq!(&tree.at(details[0].span)[end..], said);
        }
    }
    for half in ["at most", "at least 3 mm 4 mm", "max", "min to 3 mm"] {
        let tree = syntax::read(format!("measure x expect {half}"));
        assert_eq!(tree.problems.len(), 1, "{half}");
    }
}
