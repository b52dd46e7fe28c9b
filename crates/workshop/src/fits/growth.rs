//! Growth with heat.

use super::clearance::{minus, scaled};
use crate::quantity::{Length, TemperatureDifference, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

/// How much a material grows with heat.
#[derive(Debug, Clone, PartialEq)]
pub struct Expansion {
    words: String,
    per_kelvin: f64,
    source: Source,
}

impl Expansion {
    /// A coefficient of linear expansion, per kelvin (1.17e-5 for mild steel).
    /// `None` unless it lies between 0 and 0.001.
    pub fn new(words: impl Into<String>, per_kelvin: f64, source: Source) -> Option<Expansion> {
        (0.0..=1e-3).contains(&per_kelvin).then(|| Expansion {
            words: words.into(),
            per_kelvin,
            source,
        })
    }

    /// The material in words.
    pub fn words(&self) -> &str {
        &self.words
    }

    /// The coefficient per kelvin.
    pub fn per_kelvin(&self) -> f64 {
        self.per_kelvin
    }

    /// Where it comes from.
    pub fn source(&self) -> &Source {
        &self.source
    }
}

/// Published coefficients (AISC Manual table, quoted in a forum; given per
/// degree Fahrenheit, 1.8 times that per kelvin).
pub fn expansions() -> Vec<Expansion> {
    let rows = [
        ("aluminium", 12.8e-6),
        ("grey cast iron", 5.9e-6),
        ("mild steel", 6.5e-6),
        ("magnesium", 16.0e-6),
        ("copper", 9.3e-6),
    ];
    let row = |(words, per_fahrenheit): (&str, f64)| Expansion {
        words: words.to_owned(),
        per_kelvin: per_fahrenheit * 1.8,
        source: Source::copied("AISC Manual, coefficients of expansion"),
    };
    rows.into_iter().map(row).collect()
}

/// Why a temperature for a fit cannot be given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FitProblem {
    /// Heating this part makes no room: its material does not grow.
    DoesNotGrow,
    /// The size of the part is nothing or less.
    NoSize,
}

/// Growth of a length with a rise in temperature: ΔL = α × L × ΔT, in the unit
/// of L, with α per kelvin and ΔT in kelvin (a rise of 10 °C, which is 18 °F).
pub fn growth(length: Length, of: &Expansion, rise: TemperatureDifference) -> Worked<Length> {
    let grown = scaled(length, of.per_kelvin * rise.in_kelvin());
    let working = Working::new()
        .line(
            "growth",
            "α × L × ΔT",
            format!(
                "{} per K × {} × {} K",
                per_million(of.per_kelvin),
                length.amount().as_given(),
                trimmed(rise.in_kelvin(), 6)
            ),
            grown,
        )
        .source(of.source.clone())
        .assuming(format!(
            "the whole part is at one temperature, and {} grows evenly",
            of.words
        ));
    Worked::new(grown, working)
}

/// Diametral clearance of a shaft in a bore after both have warmed up:
/// bore × (1 + αb × ΔTb) - shaft × (1 + αs × ΔTs). Each has its own rise,
/// because a piston runs hotter than its cylinder.
pub fn clearance_when_hot(
    bore: (Length, &Expansion, TemperatureDifference),
    shaft: (Length, &Expansion, TemperatureDifference),
) -> Worked<Length> {
    let bore_growth = growth(bore.0, bore.1, bore.2);
    let shaft_growth = growth(shaft.0, shaft.1, shaft.2);
    let cold = minus(bore.0, &[shaft.0]);
    let hot = minus(cold, &[shaft_growth.value, scaled(bore_growth.value, -1.0)]);
    let working = Working::new()
        .line(
            "clearance when hot",
            "bore - shaft + growth of the bore - growth of the shaft",
            format!(
                "{} - {} + {} - {}",
                bore.0.amount().as_given(),
                shaft.0.amount().as_given(),
                bore_growth.value,
                shaft_growth.value
            ),
            hot,
        )
        .after(shaft_growth.working)
        .after(bore_growth.working);
    Worked::new(hot, working)
}

/// Rise in temperature that opens a part by so much: ΔT = needed / (α × L).
/// For warming a housing until its bearing drops in: needed is the interference
/// and the room to handle it.
///
/// # Errors
/// When the material does not grow or the part has no size.
pub fn temperature_to_clear(
    size: Length,
    of: &Expansion,
    needed: Length,
) -> Result<Worked<TemperatureDifference>, FitProblem> {
    if of.per_kelvin <= 0.0 {
        return Err(FitProblem::DoesNotGrow);
    }
    if size.si().is_nan() || size.si() <= 0.0 {
        return Err(FitProblem::NoSize);
    }
    let rise = TemperatureDifference::kelvin(needed.si() / (of.per_kelvin * size.si()));
    let working = Working::new()
        .line(
            "rise in temperature",
            "needed / (α × L)",
            format!(
                "{} / ({} per K × {})",
                needed.amount().as_given(),
                per_million(of.per_kelvin),
                size.amount().as_given()
            ),
            rise,
        )
        .source(of.source.clone())
        .assuming("seals, coatings and heat treatment bear that temperature; the maker's limit goes before it");
    Ok(Worked::new(rise, working))
}

/// A coefficient as people write it: 23.04e-6.
fn per_million(per_kelvin: f64) -> String {
    format!("{}e-6", trimmed(per_kelvin * 1e6, 4))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn given(words: &str, per_kelvin: f64) -> Expansion {
        Expansion::new(words, per_kelvin, Source::given("a problem")).unwrap()
    }

    /// A textbook problem: an 80 mm aluminium piston with 0.75 mm all round in
    /// an iron bore at 15 °C has 0.7130 mm at 120 °C (19e-6 and 10e-6 per K).
    #[test]
    fn a_piston_grows_in_its_bore() {
        let rise = TemperatureDifference::kelvin(105.0);
        let (iron, aluminium) = (given("iron", 10e-6), given("aluminium", 19e-6));
        let hot = clearance_when_hot(
            (Length::millimetres(81.5), &iron, rise),
            (Length::millimetres(80.0), &aluminium, rise),
        );
        assert!(
            (hot.value.in_millimetres() / 2.0 - 0.7130).abs() < 5e-5,
            "{}",
            hot.value
        );
        assert!(
            hot.working
                .to_string()
                .contains("19e-6 per K × 80 mm × 105 K")
        );
    }

    #[test]
    fn a_rise_in_fahrenheit_is_a_rise() {
        let steel = given("steel", 11.7e-6);
        let by = |rise| {
            growth(Length::millimetres(100.0), &steel, rise)
                .value
                .in_millimetres()
        };
        let celsius = TemperatureDifference::new(100.0, crate::quantity::Unit::Celsius).unwrap();
        let fahrenheit =
            TemperatureDifference::new(180.0, crate::quantity::Unit::Fahrenheit).unwrap();
        assert!((by(celsius) - by(fahrenheit)).abs() < 1e-12);
    }

    #[test]
    fn a_housing_is_warmed_until_its_bearing_drops_in() {
        let aluminium = &expansions()[0];
        let rise = temperature_to_clear(
            Length::millimetres(52.0),
            aluminium,
            Length::millimetres(0.08),
        )
        .unwrap();
        assert!(
            (rise.value.in_kelvin() - 66.77).abs() < 0.01,
            "{}",
            rise.value
        );
        let invar = given("a metal that does not grow", 0.0);
        let problem =
            temperature_to_clear(Length::millimetres(52.0), &invar, Length::millimetres(0.08));
        assert_eq!(problem.unwrap_err(), FitProblem::DoesNotGrow);
        assert!(Expansion::new("a slip of the pen", 23.0, Source::given("a note")).is_none());
    }
}
