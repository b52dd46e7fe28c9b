//! Why a text could not be read as a quantity.

use super::dimension::Dimension;
use super::unit::Unit;

/// Why a text could not be read as a quantity: the bare facts. Texts are as
/// the writer gave them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MeasureProblem {
    /// Nothing was written.
    Nothing,
    /// No number where one was wanted.
    NotANumber {
        /// What stood there.
        given: String,
    },
    /// A comma between digits, where the language wants a point.
    DecimalComma {
        /// The text from the number on.
        given: String,
    },
    /// More digits than any measurement has.
    TooBig {
        /// The text from the number on.
        given: String,
    },
    /// A fraction over zero.
    OverZero {
        /// The text from the number on.
        given: String,
    },
    /// A dash or `to` between two numbers, where a range wants `..`.
    DashForRange {
        /// The first number.
        low: String,
        /// What stood behind it.
        behind: String,
    },
    /// The figure has no unit.
    NoUnit {
        /// The figure.
        given: String,
        /// What was wanted, if that was known.
        wanted: Option<Dimension>,
    },
    /// The unit is not on the list.
    UnknownUnit {
        /// The unit as written.
        given: String,
        /// The spelling that was probably meant.
        near: Option<&'static str>,
    },
    /// A pint, quart, gallon or fluid ounce without saying whose.
    WhichPint {
        /// The unit as written.
        given: String,
        /// What it would be in the US.
        us: Unit,
        /// What it would be in Britain.
        imperial: Unit,
    },
    /// One quantity in two units.
    MixedUnits {
        /// The first unit as written.
        first: String,
        /// The second.
        second: String,
    },
    /// A range that runs from the larger value to the smaller.
    Backwards {
        /// The figure that was written first.
        low: String,
        /// The figure that was written behind it.
        high: String,
    },
    /// A tolerance below zero.
    NegativeTolerance {
        /// The tolerance as written.
        given: String,
    },
    /// A quantity of another kind than wanted.
    WrongKind {
        /// The quantity as written.
        given: String,
        /// The unit it was read in.
        unit: Unit,
        /// What was wanted.
        wanted: Dimension,
    },
    /// Something behind the quantity that does not belong to it.
    LeftOver {
        /// What stood there.
        given: String,
    },
}

impl MeasureProblem {
    /// The problem in plain words: what was given, what was wanted, the likely
    /// slip.
    pub fn describe(&self) -> String {
        match self {
            MeasureProblem::Nothing => {
                "nothing is written here; write a figure and its unit".to_owned()
            }
            MeasureProblem::NotANumber { given } => {
                format!("“{}” does not begin with a number", clipped(given))
            }
            MeasureProblem::DecimalComma { given } => format!(
                "“{}” has a comma in the number; write a point for the decimal, and nothing between thousands",
                clipped(given)
            ),
            MeasureProblem::TooBig { given } => {
                format!(
                    "the number “{}” has more digits than anything that can be measured",
                    clipped(given)
                )
            }
            MeasureProblem::OverZero { given } => {
                format!(
                    "the fraction in “{}” has nothing under the line",
                    clipped(given)
                )
            }
            MeasureProblem::DashForRange { low, behind } => format!(
                "“{low}” is followed by “{}”; a range is written with two points, as in 5..25 N.m",
                clipped(behind)
            ),
            MeasureProblem::NoUnit { given, wanted } => no_unit(given, *wanted),
            MeasureProblem::UnknownUnit { given, near } => {
                let offer = near
                    .map(|near| format!("; did you mean {near}?"))
                    .unwrap_or_default();
                format!("“{}” is not a unit known here{offer}", clipped(given))
            }
            MeasureProblem::WhichPint {
                given,
                us,
                imperial,
            } => format!(
                "“{given}” is one size in the US and another in Britain (a fifth apart for a pint); write {us} or {imperial}"
            ),
            MeasureProblem::MixedUnits { first, second } => {
                format!(
                    "one quantity in two units, {first} and {second}; write both figures in the same one"
                )
            }
            MeasureProblem::Backwards { low, high } => {
                format!(
                    "the range runs backwards, from {low} to {high}; write the smaller figure first"
                )
            }
            MeasureProblem::NegativeTolerance { given } => {
                format!(
                    "a tolerance of {} is less than nothing; write it without the sign",
                    clipped(given)
                )
            }
            MeasureProblem::WrongKind {
                given,
                unit,
                wanted,
            } => wrong_kind(given, *unit, *wanted),
            MeasureProblem::LeftOver { given } => {
                format!(
                    "“{}” stands behind the quantity and does not belong to it",
                    clipped(given)
                )
            }
        }
    }
}

fn no_unit(given: &str, wanted: Option<Dimension>) -> String {
    match wanted.map(|wanted| (wanted, wanted.usual_units())) {
        Some((wanted, units)) if !units.is_empty() => {
            let offers: Vec<String> = units.iter().map(|unit| format!("{given} {unit}")).collect();
            format!(
                "“{given}” has no unit, and {wanted} needs one: {}?",
                offers.join(" or ")
            )
        }
        _ => format!(
            "“{given}” has no unit; write which it is, for example {given} mm or {given} N.m"
        ),
    }
}

fn wrong_kind(given: &str, unit: Unit, wanted: Dimension) -> String {
    let given = clipped(given);
    let is = unit.dimension();
    let slip = match (unit, wanted) {
        (Unit::Newton, Dimension::Torque) => "; did you mean N.m?",
        (Unit::KilogramForce | Unit::Kilogram, Dimension::Torque) => "; did you mean kgf.m?",
        (Unit::Pound | Unit::PoundForce, Dimension::Torque) => "; did you mean lbf.ft or lbf.in?",
        (Unit::Foot | Unit::Inch, Dimension::Torque) => "; did you mean lbf.ft or lbf.in?",
        (Unit::Kilogram, Dimension::Force) => "; did you mean kgf?",
        (Unit::Pound, Dimension::Force) => "; did you mean lbf?",
        (Unit::Pound | Unit::PoundForce, Dimension::Pressure) => "; did you mean psi?",
        (Unit::Ounce, Dimension::Volume) => "; did you mean us-fl-oz or imp-fl-oz?",
        (Unit::Metre, Dimension::Time) => "; did you mean min?",
        (Unit::Metre, Dimension::Distance) => "; did you mean km or miles?",
        (Unit::Celsius | Unit::Fahrenheit, Dimension::Angle) => "; did you mean deg?",
        (Unit::Degree, Dimension::Temperature | Dimension::TemperatureDifference) => {
            "; did you mean °C or °F?"
        }
        _ => "",
    };
    format!("“{given}” is {is}; what is wanted here is {wanted}{slip}")
}

/// A text short enough to stand in a sentence.
fn clipped(text: &str) -> String {
    const MOST: usize = 40;
    if text.chars().count() <= MOST {
        return text.to_owned();
    }
    let start: String = text.chars().take(MOST).collect();
    format!("{start}…")
}
