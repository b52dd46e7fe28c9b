//! Reading a quantity from text.

use super::dimension::Dimension;
use super::figure::{Figure, FigureProblem};
use super::measure::{Measure, Shape};
use super::problem::MeasureProblem;
use super::spelling::{doubtful_at_start, nearest_spelling, unit_at_start};
use super::unit::Unit;

/// A unit and how it was written.
type Written<'a> = (Unit, &'a str);

pub(super) fn measure(text: &str, wanted: Option<Dimension>) -> Result<Measure, MeasureProblem> {
    let text = text.trim();
    if text.is_empty() {
        return Err(MeasureProblem::Nothing);
    }
    let (bound, figures) = bound(text);
    let (first, rest) = figure(figures)?;
    let bare = |given: &Figure| MeasureProblem::NoUnit {
        given: given.as_written().to_owned(),
        wanted,
    };
    let rest = rest.trim_start();
    let no_unit_wanted = wanted == Some(Dimension::Number);

    let (shape, (unit, unit_written)) = if let Some(bound) = bound {
        let unit = unit_to_the_end(rest, no_unit_wanted)?.ok_or_else(|| bare(&first))?;
        (bound(first), unit)
    } else if let Some(behind) = after_range_sign(rest) {
        let (high, behind) = figure(behind)?;
        let unit = unit_to_the_end(behind, no_unit_wanted)?.ok_or_else(|| bare(&high))?;
        (range(first, high)?, unit)
    } else if let Some(behind) = after_tolerance_sign(rest) {
        let (by, behind) = figure(behind)?;
        let unit = unit_to_the_end(behind, no_unit_wanted)?.ok_or_else(|| bare(&by))?;
        (tolerance(first, by, false)?, unit)
    } else if rest.is_empty() {
        let unit = unit_to_the_end(rest, no_unit_wanted)?.ok_or_else(|| bare(&first))?;
        (Shape::Single(first), unit)
    } else {
        range_slip(&first, rest)?;
        let (unit, behind) = unit_at(rest)?;
        (behind_unit(first, unit, behind.trim_start())?, unit)
    };

    let dimension = settle(text, unit, wanted)?;
    Ok(Measure {
        written: text.to_owned(),
        shape,
        unit,
        unit_written: unit_written.to_owned(),
        dimension,
    })
}

pub(super) fn list(text: &str, wanted: Option<Dimension>) -> Result<Vec<Measure>, MeasureProblem> {
    let items: Vec<&str> = text.split(',').collect();
    let last = measure(items.last().copied().unwrap_or_default(), wanted)?;
    let read = |item: &&str| match measure(item, wanted) {
        Err(MeasureProblem::NoUnit { .. }) => measure(
            &format!("{} {}", item.trim(), last.unit_as_written()),
            wanted,
        ),
        other => other,
    };
    items.iter().map(read).collect()
}

/// What may stand behind the first unit: nothing, or the other end of a range
/// or a tolerance in the same unit, or a tolerance in percent.
fn behind_unit(first: Figure, unit: Written<'_>, rest: &str) -> Result<Shape, MeasureProblem> {
    if rest.is_empty() {
        return Ok(Shape::Single(first));
    }
    let no_unit = |figure: &Figure| MeasureProblem::NoUnit {
        given: figure.as_written().to_owned(),
        wanted: Some(unit.0.dimension()),
    };
    let mixed = |second: Written<'_>| MeasureProblem::MixedUnits {
        first: unit.1.to_owned(),
        second: second.1.to_owned(),
    };
    if let Some(behind) = after_range_sign(rest) {
        let (high, behind) = figure(behind)?;
        let second = unit_to_the_end(behind, false)?.ok_or_else(|| no_unit(&high))?;
        return if second.0 == unit.0 {
            range(first, high)
        } else {
            Err(mixed(second))
        };
    }
    if let Some(behind) = after_tolerance_sign(rest) {
        let (by, behind) = figure(behind)?;
        let second = unit_to_the_end(behind, false)?.ok_or_else(|| no_unit(&by))?;
        return if second.0 == unit.0 {
            tolerance(first, by, false)
        } else if second.0 == Unit::Percent {
            tolerance(first, by, true)
        } else {
            Err(mixed(second))
        };
    }
    Err(MeasureProblem::LeftOver {
        given: rest.to_owned(),
    })
}

fn range(low: Figure, high: Figure) -> Result<Shape, MeasureProblem> {
    if low.value() > high.value() {
        return Err(MeasureProblem::Backwards {
            low: low.as_written().to_owned(),
            high: high.as_written().to_owned(),
        });
    }
    Ok(Shape::Range { low, high })
}

fn tolerance(middle: Figure, by: Figure, percent: bool) -> Result<Shape, MeasureProblem> {
    if by.value() < 0.0 {
        return Err(MeasureProblem::NegativeTolerance {
            given: by.as_written().to_owned(),
        });
    }
    Ok(Shape::Tolerance {
        middle,
        by,
        percent,
    })
}

fn figure(text: &str) -> Result<(Figure, &str), MeasureProblem> {
    let text = text.trim_start();
    let given = || text.to_owned();
    Figure::at_start(text).map_err(|problem| match problem {
        FigureProblem::None => MeasureProblem::NotANumber { given: given() },
        FigureProblem::Comma => MeasureProblem::DecimalComma { given: given() },
        FigureProblem::OverZero => MeasureProblem::OverZero { given: given() },
        FigureProblem::TooBig => MeasureProblem::TooBig { given: given() },
    })
}

/// Makes a shape with one end of a figure.
type Bound = fn(Figure) -> Shape;

/// What a bounded quantity begins with, and what it makes of its figure.
const BOUNDS: &[(&str, Bound)] = &[
    ("at most ", Shape::AtMost),
    ("up to ", Shape::AtMost),
    ("maximum ", Shape::AtMost),
    ("max ", Shape::AtMost),
    ("at least ", Shape::AtLeast),
    ("minimum ", Shape::AtLeast),
    ("min ", Shape::AtLeast),
];

/// The bound that the text begins with, and what is behind it.
fn bound(text: &str) -> (Option<Bound>, &str) {
    let words = |bound: &str| {
        let mut rest = text;
        for word in bound.split_whitespace() {
            rest = rest.trim_start().strip_prefix(word)?;
            rest.starts_with([' ', '\t']).then_some(())?;
        }
        Some(rest)
    };
    BOUNDS
        .iter()
        .find_map(|(bound, shape)| Some((Some(*shape), words(bound)?)))
        .unwrap_or((None, text))
}

/// What stands behind `..`, or behind `to` with a figure behind it.
fn after_range_sign(text: &str) -> Option<&str> {
    text.strip_prefix("..").or_else(|| {
        let behind = text.strip_prefix("to")?.strip_prefix([' ', '\t'])?;
        Figure::at_start(behind.trim_start())
            .is_ok()
            .then_some(behind)
    })
}

fn after_tolerance_sign(text: &str) -> Option<&str> {
    ["+-", "+/-", "±"]
        .iter()
        .find_map(|sign| text.strip_prefix(sign))
}

/// A dash with a number behind it is a range in another notation, and
/// saying so helps more than calling `-25` an unknown unit.
fn range_slip(first: &Figure, rest: &str) -> Result<(), MeasureProblem> {
    let signs = ["-", "–", "—", "…", "~"];
    let Some(behind) = signs.iter().find_map(|sign| rest.strip_prefix(sign)) else {
        return Ok(());
    };
    match Figure::at_start(behind.trim_start()) {
        Ok(_) => Err(MeasureProblem::DashForRange {
            low: first.as_written().to_owned(),
            behind: rest.to_owned(),
        }),
        Err(_) => Ok(()),
    }
}

/// The unit that fills the rest of the text. `Ok(None)` when there is no text;
/// when none is wanted that stands for the bare number.
fn unit_to_the_end(text: &str, bare_is_right: bool) -> Result<Option<Written<'_>>, MeasureProblem> {
    let text = text.trim_start();
    if text.is_empty() {
        return Ok(bare_is_right.then_some((Unit::Number, "")));
    }
    let (unit, rest) = unit_at(text)?;
    let rest = rest.trim_start();
    if rest.is_empty() {
        Ok(Some(unit))
    } else {
        Err(MeasureProblem::LeftOver {
            given: rest.to_owned(),
        })
    }
}

fn unit_at(text: &str) -> Result<(Written<'_>, &str), MeasureProblem> {
    if let Some((spelling, rest)) = unit_at_start(text) {
        return Ok(((spelling.unit, spelling.text), rest));
    }
    if let Some(doubtful) = doubtful_at_start(text) {
        return Err(MeasureProblem::WhichPint {
            given: doubtful.text.to_owned(),
            us: doubtful.us,
            imperial: doubtful.imperial,
        });
    }
    let end = [" ", "\t", "..", "+-", "±", "+/-"]
        .iter()
        .filter_map(|stop| text.find(stop))
        .min();
    let given = &text[..end.unwrap_or(text.len())];
    Err(MeasureProblem::UnknownUnit {
        given: given.to_owned(),
        near: nearest_spelling(given).map(|spelling| spelling.text),
    })
}

/// What the quantity measures, held against what was wanted.
fn settle(text: &str, unit: Unit, wanted: Option<Dimension>) -> Result<Dimension, MeasureProblem> {
    match wanted {
        None => Ok(unit.dimension()),
        Some(wanted) if unit.measures(wanted) => Ok(wanted),
        Some(wanted) => Err(MeasureProblem::WrongKind {
            given: text.to_owned(),
            unit,
            wanted,
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Measure {
        Measure::read(text).unwrap_or_else(|problem| panic!("{text}: {problem:?}"))
    }

    fn problem(text: &str) -> MeasureProblem {
        Measure::read(text).unwrap_err()
    }

    /// Low and high in the unit as written.
    fn ends(text: &str) -> (String, String) {
        let measure = read(text);
        (measure.low().as_given(), measure.high().as_given())
    }

    fn pair(low: &str, high: &str) -> (String, String) {
        (low.to_owned(), high.to_owned())
    }

    #[test]
    fn single_values_keep_their_text() {
        for text in [
            "22 N.m",
            "22N.m",
            "90°",
            "10 %",
            "15/16 in",
            "1 1/2 in",
            "-40 °C",
            "65 ft lb",
            "4.5 US pints",
        ] {
            assert_eq!(read(text).to_string(), text);
            assert!(read(text).is_single());
        }
        assert_eq!(read("  22 N·m ").as_written(), "22 N·m");
        assert_eq!(read("22 N·m").unit_as_written(), "N·m");
    }

    #[test]
    fn ranges_and_tolerances_have_ends() {
        assert_eq!(ends("0.05..0.12 mm"), pair("0.05 mm", "0.12 mm"));
        assert_eq!(ends("0.05 mm..0.12 mm"), pair("0.05 mm", "0.12 mm"));
        assert_eq!(ends("-5..40 C"), pair("-5 °C", "40 °C"));
        assert_eq!(ends("22 +- 2 N.m"), pair("20 N.m", "24 N.m"));
        assert_eq!(ends("22 N.m ± 2 N.m"), pair("20 N.m", "24 N.m"));
        assert_eq!(ends("22 N.m +/- 10 %"), pair("19.8 N.m", "24.2 N.m"));
        assert_eq!(ends("100 +- 5 C"), pair("95 °C", "105 °C"));
        assert_eq!(ends("-40 C +- 10 %"), pair("-44 °C", "-36 °C"));
    }

    #[test]
    fn to_between_figures_is_a_range() {
        assert_eq!(ends("0.1 to 0.2 mm"), pair("0.1 mm", "0.2 mm"));
        assert_eq!(ends("0.1 mm to 0.2 mm"), pair("0.1 mm", "0.2 mm"));
        assert_eq!(read("0.1 to 0.2 mm").to_string(), "0.1 to 0.2 mm");
        assert!(matches!(
            problem("0.1 mm to 3 N.m"),
            MeasureProblem::MixedUnits { .. }
        ));
        assert!(matches!(
            problem("0.1 to 0.2"),
            MeasureProblem::NoUnit { .. }
        ));
    }

    #[test]
    fn a_bound_has_one_end() {
        for text in [
            "at most 0.2 mm",
            "up to 0.2 mm",
            "max 0.2 mm",
            "maximum 0.2mm",
        ] {
            let most = read(text);
            assert!(
                most.is_bound() && most.contains(&read("0.2 mm")) && most.contains(&read("0 mm"))
            );
            assert!(!most.contains(&read("0.21 mm")) && !most.contains(&read("-0.1 mm")));
            assert_eq!(most.as_written(), text);
        }
        for text in [
            "at least 3 mm",
            "min 3 mm",
            "minimum 3 mm",
            "at  least 3 mm",
        ] {
            let least = read(text);
            assert!(least.contains(&read("3 mm")) && least.contains(&read("3 m")));
            assert!(!least.contains(&read("2.9 mm")));
            assert_eq!(least.middle().as_given(), "3 mm");
        }
        assert!(read("at most -5 C").contains(&read("-18 C")));
        assert_eq!(
            read("max 5 N.m")
                .other_unit()
                .map(|other| other.to_string()),
            Some("at most 44 lbf.in".to_owned())
        );
        for text in ["at most", "min", "max mm", "at least 3..5 mm", "maxi 3 mm"] {
            assert!(Measure::read(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_value_on_the_edge_lies_inside() {
        assert!(read("0.05..0.12 mm").contains(&read("0.12 mm")));
        assert!(read("0.05..0.12 mm").contains(&read("0.05 mm")));
        assert!(read("0.05..0.12 mm").contains(&read("120 µm")));
        assert!(!read("0.05..0.12 mm").contains(&read("0.1201 mm")));
        assert!(!read("0.05..0.12 mm").contains(&read("0.1 N")));
        assert!(read("22 N.m +- 10 %").contains(&read("19.8 N.m")));
        assert!(read("1 in").same_as(&read("25.4 mm")));
        assert!(!read("1 in").same_as(&read("25.41 mm")));
    }

    #[test]
    fn a_list_may_give_its_unit_once() {
        let list = |text: &str| {
            let all = Measure::read_list(text, Some(Dimension::Length));
            all.map(|all| all.iter().map(Measure::to_string).collect::<Vec<_>>())
        };
        assert_eq!(
            list("0.10, 0.15, 0.20 mm").unwrap(),
            ["0.10 mm", "0.15 mm", "0.20 mm"]
        );
        assert_eq!(list("4 thou, 0.1 mm").unwrap(), ["4 thou", "0.1 mm"]);
        assert!(matches!(
            list("0.10, 0.15"),
            Err(MeasureProblem::NoUnit { .. })
        ));
        assert!(matches!(
            list("0.10, x, 0.2 mm"),
            Err(MeasureProblem::NotANumber { .. })
        ));
        assert!(matches!(list("0.10 mm,"), Err(MeasureProblem::Nothing)));
    }

    #[test]
    fn what_was_wanted_settles_the_kind() {
        let rise = Measure::read_as("10 C", Dimension::TemperatureDifference).unwrap();
        assert_eq!(rise.low().si(), 10.0);
        assert_eq!(read("10 C").low().si(), 283.15);
        let count = Measure::read_as("8", Dimension::Number).unwrap();
        assert_eq!(
            (count.unit(), count.to_string()),
            (Unit::Number, "8".to_owned())
        );
        let wrong = Measure::read_as("22 N", Dimension::Torque).unwrap_err();
        assert!(
            wrong.describe().ends_with("did you mean N.m?"),
            "{}",
            wrong.describe()
        );
    }

    #[test]
    fn a_bare_number_is_asked_which() {
        let given = "22".to_owned();
        assert_eq!(
            problem("22"),
            MeasureProblem::NoUnit {
                given: given.clone(),
                wanted: None
            }
        );
        let asked = Measure::read_as("22", Dimension::Torque).unwrap_err();
        assert_eq!(
            asked,
            MeasureProblem::NoUnit {
                given,
                wanted: Some(Dimension::Torque)
            }
        );
        assert_eq!(
            asked.describe(),
            "“22” has no unit, and a torque needs one: 22 N.m or 22 lbf.ft or 22 lbf.in?"
        );
        assert!(matches!(problem("5..25"), MeasureProblem::NoUnit { .. }));
        assert!(matches!(problem("22 +- 2"), MeasureProblem::NoUnit { .. }));
        assert!(matches!(
            problem("22 N.m +- 2"),
            MeasureProblem::NoUnit { .. }
        ));
    }

    #[test]
    fn a_pint_is_asked_whose() {
        let asked = problem("2 pints");
        assert!(matches!(
            asked,
            MeasureProblem::WhichPint {
                us: Unit::UsPint,
                imperial: Unit::ImperialPint,
                ..
            }
        ));
        assert!(asked.describe().contains("write us-pint or imp-pint"));
        assert!(matches!(
            problem("12 fl oz"),
            MeasureProblem::WhichPint { .. }
        ));
    }

    #[test]
    fn slips_are_named() {
        assert_eq!(
            problem("22 bananas"),
            MeasureProblem::UnknownUnit {
                given: "bananas".to_owned(),
                near: None
            }
        );
        assert_eq!(
            problem("22 NM"),
            MeasureProblem::UnknownUnit {
                given: "NM".to_owned(),
                near: Some("Nm")
            }
        );
        assert!(matches!(
            problem("25..5 N.m"),
            MeasureProblem::Backwards { .. }
        ));
        assert!(matches!(
            problem("5-25 N.m"),
            MeasureProblem::DashForRange { .. }
        ));
        assert!(matches!(
            problem("0,12 mm"),
            MeasureProblem::DecimalComma { .. }
        ));
        assert!(matches!(
            problem("5.. N.m"),
            MeasureProblem::NotANumber { .. }
        ));
        assert!(matches!(
            problem("22 +- -2 N.m"),
            MeasureProblem::NegativeTolerance { .. }
        ));
        assert!(matches!(
            problem("22 N.m +- 2 mm"),
            MeasureProblem::MixedUnits { .. }
        ));
        assert!(matches!(
            problem("1 in..30 mm"),
            MeasureProblem::MixedUnits { .. }
        ));
        assert!(matches!(
            problem("22 N.m dry"),
            MeasureProblem::LeftOver { .. }
        ));
        assert!(matches!(problem("1/0 in"), MeasureProblem::OverZero { .. }));
        assert_eq!(problem("   "), MeasureProblem::Nothing);
    }

    #[test]
    fn no_text_brings_it_down() {
        for text in [
            "",
            ".",
            "..",
            "-",
            "+-",
            "1/",
            "/2",
            "1 /2 in",
            "½ in",
            "22 N.m..",
            "1..2..3 mm",
            "°",
            "%",
            "1 %%",
            "\u{202e}5 mm",
            "5\u{a0}mm",
        ] {
            if let Err(problem) = Measure::read(text) {
                assert!(!problem.describe().is_empty());
            }
        }
    }
}
