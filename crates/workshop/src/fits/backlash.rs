//! Backlash put right with shims.

use super::clearance::{minus, scaled};
use crate::quantity::{Length, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

/// Change of shim that brings backlash from measured to wanted: (wanted -
/// measured) / ratio, with the ratio how much the backlash changes for each
/// unit of shim. The ratio is the maker's, or found by trying one shim; it
/// depends on the angles of the gear, so none is built in. Above nothing: move
/// the gear out of mesh by so much. `None` unless the ratio is above 0 and no
/// more than 2.
pub fn shim_for_backlash(
    measured: Length,
    wanted: Length,
    ratio: f64,
    source: Source,
) -> Option<Worked<Length>> {
    if !(ratio > 0.0 && ratio <= 2.0) {
        return None;
    }
    let change = scaled(minus(wanted, &[measured]), 1.0 / ratio);
    let working = Working::new()
        .line(
            "change of shim",
            "(wanted - measured) / ratio",
            format!(
                "({} - {}) / {}",
                wanted.amount().as_given(),
                measured.amount().as_given(),
                trimmed(ratio, 4)
            ),
            change,
        )
        .source(source);
    Some(Worked::new(change, working))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn too_little_backlash_moves_the_gear_out() {
        let change = |measured: f64, ratio: f64| {
            let (measured, wanted) = (Length::millimetres(measured), Length::millimetres(0.12));
            let found = shim_for_backlash(measured, wanted, ratio, Source::given("maker's sheet"));
            found.map(|found| found.value.to_string())
        };
        assert_eq!(change(0.05, 0.7), Some("0.1 mm".to_owned()));
        assert_eq!(change(0.19, 0.7), Some("-0.1 mm".to_owned()));
        assert_eq!(change(0.05, 0.0), None);
        assert_eq!(change(0.05, f64::NAN), None);
    }
}
