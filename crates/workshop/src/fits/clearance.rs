//! Clearances by subtraction.

use crate::quantity::{Length, plain};
use crate::source::Source;
use crate::working::{Worked, Working};

/// Diametral clearance of a shaft in a bore: bore - shaft. Below nothing it is
/// an interference. Shown in the bore's unit.
pub fn clearance(bore: Length, shaft: Length) -> Worked<Length> {
    let left = minus(bore, &[shaft]);
    let working = Working::new().line(
        "clearance",
        "bore - shaft",
        format!(
            "{} - {}",
            bore.amount().as_given(),
            shaft.amount().as_given()
        ),
        left.amount().as_given(),
    );
    Worked::new(left, working)
}

/// What is left of a housing's depth when its parts lie in it: depth - Σ parts.
/// Below nothing, they do not go in. Shown in the depth's unit.
pub fn end_float(depth: Length, parts: &[Length]) -> Worked<Length> {
    let left = minus(depth, parts);
    let each: Vec<String> = parts.iter().map(|part| part.amount().as_given()).collect();
    let working = Working::new().line(
        "end-float",
        "depth - all that lies in it",
        [vec![depth.amount().as_given()], each].concat().join(" - "),
        left.amount().as_given(),
    );
    Worked::new(left, working)
}

/// A rule of thumb for the oil clearance of a plain bearing: 0.001 of the
/// journal's diameter (a magazine's bearing guide, 2008). Only for telling a
/// plausible figure from a slip of the pen; a maker's limits go before it.
pub fn bearing_clearance_rule(journal: Length) -> Worked<Length> {
    let clearance = scaled(journal, 0.001);
    let working = Working::new()
        .line(
            "usual oil clearance",
            "0.001 × journal",
            format!("0.001 × {}", journal.amount().as_given()),
            clearance.amount().as_given(),
        )
        .source(Source::read(
            "a magazine's bearing guide (2008): 0.001 in for each inch of journal",
        ));
    Worked::new(clearance, working)
}

/// A length less others, in its own unit, without the dust of binary fractions
/// that subtraction leaves (0.3 - 0.1 is 0.2).
pub(super) fn minus(from: Length, others: &[Length]) -> Length {
    let taken: f64 = others.iter().map(|other| other.figure_like(from)).sum();
    clean(from, from.amount().figure() - taken)
}

/// A length times a number, in its own unit.
pub(super) fn scaled(length: Length, by: f64) -> Length {
    clean(length, length.amount().figure() * by)
}

fn clean(like: Length, figure: f64) -> Length {
    like.with_figure(plain(figure).parse().unwrap_or(figure))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn subtraction_leaves_no_dust() {
        let left = clearance(Length::millimetres(0.3), Length::millimetres(0.1));
        assert_eq!(left.value.amount().figure(), 0.2);
        let tight = clearance(Length::millimetres(25.0), Length::millimetres(25.02)).value;
        assert_eq!(tight.to_string(), "-0.02 mm");
    }

    /// An ATV maker's middle gear: 75.01 - 4.48 - 15.0 - 55 = 0.53 mm.
    #[test]
    fn a_shim_is_what_is_left() {
        let parts = [4.48, 15.0, 55.0].map(Length::millimetres);
        let left = end_float(Length::millimetres(75.01), &parts);
        assert_eq!(left.value.amount().as_given(), "0.53 mm");
        assert_eq!(
            left.working.lines[0].numbers,
            "75.01 mm - 4.48 mm - 15 mm - 55 mm"
        );
    }

    /// Journal of 2.375 in: 0.0024 in.
    #[test]
    fn bearing_clearance_by_rule_of_thumb() {
        assert_eq!(
            bearing_clearance_rule(Length::inches(2.375))
                .value
                .amount()
                .as_given(),
            "0.002375 in"
        );
    }
}
