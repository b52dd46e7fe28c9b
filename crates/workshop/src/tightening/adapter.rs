//! Extensions and crowfoot adapters on a torque wrench.

use crate::quantity::{Angle, Length, Torque, plain, trimmed};
use crate::source::Source;
use crate::working::{Worked, Working};

/// An adapter that moves the fastener away from the wrench's drive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Adapter {
    /// L: from the centre of the drive to the middle of the grip. None when
    /// nobody said; then nothing can be worked out.
    pub wrench_length: Option<Length>,
    /// E: from the centre of the drive to the centre of the fastener.
    pub reach: Length,
    /// Angle between adapter and wrench: 0 straight on, 90 to the side, 180
    /// back under the grip.
    pub angle: Angle,
}

/// Why nothing can be worked out for an adapter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AdapterProblem {
    /// The length of the wrench is not known. It is never guessed: a formula
    /// with the wrong length gives the wrong torque without a sign of it.
    NoWrenchLength,
    /// The wrench's length is nothing or less.
    WrenchLength,
    /// The adapter's reach is less than nothing.
    AdapterReach,
    /// The adapter points back so far that the fastener lies at or behind the
    /// grip.
    BehindTheGrip,
}

impl AdapterProblem {
    /// The problem in plain words.
    pub fn describe(self) -> &'static str {
        match self {
            AdapterProblem::NoWrenchLength => {
                "an adapter changes the torque by the length of the wrench, and that is not given; measure from the middle of the drive to the middle of the grip"
            }
            AdapterProblem::WrenchLength => "the length of the wrench must be more than nothing",
            AdapterProblem::AdapterReach => {
                "the adapter's length must not be less than nothing; say 180 deg for one that points back"
            }
            AdapterProblem::BehindTheGrip => {
                "the adapter points back as far as the grip or farther, so that the wrench measures nothing of use"
            }
        }
    }
}

const COSINE_RULE: Source =
    Source::read("TM 1-1500-204-23-9 fig. 8-16; TM 9-254 fig. 4-6 for the angle");

/// What to set the wrench to, so that the fastener gets the wanted torque:
/// T × L / (L + E × cos a). Straight on (0°) the setting is lower, back under
/// the grip (180°) higher, at right angles unchanged. It holds only with the
/// hand at the point that L was measured to.
///
/// # Errors
/// When the wrench's length is not known, or the lengths make no sense.
pub fn setting(wanted: Torque, adapter: &Adapter) -> Result<Worked<Torque>, AdapterProblem> {
    let (length, effective) = lengths(adapter)?;
    let result = scaled(wanted, length.amount().figure(), effective);
    let working = Working::new()
        .line(
            "setting",
            "T × L / (L + E × cos a)",
            numbers(wanted, adapter, length, false),
            result,
        )
        .source(COSINE_RULE)
        .assuming("the hand pulls at the middle of the grip, where the wrench was measured to");
    Ok(Worked::new(result, working))
}

/// What the fastener gets when the wrench is set to a figure: setting × (L + E
/// × cos a) / L. The reverse of [`setting`].
///
/// # Errors
/// As [`setting`].
pub fn delivered(set: Torque, adapter: &Adapter) -> Result<Worked<Torque>, AdapterProblem> {
    let (length, effective) = lengths(adapter)?;
    let result = scaled(set, effective, length.amount().figure());
    let working = Working::new()
        .line(
            "torque at the fastener",
            "setting × (L + E × cos a) / L",
            numbers(set, adapter, length, true),
            result,
        )
        .source(COSINE_RULE)
        .assuming("the hand pulls at the middle of the grip, where the wrench was measured to");
    Ok(Worked::new(result, working))
}

/// L, and the figure of L + E cos a in the unit of L. Staying in that unit
/// keeps round figures round.
fn lengths(adapter: &Adapter) -> Result<(Length, f64), AdapterProblem> {
    let length = adapter
        .wrench_length
        .ok_or(AdapterProblem::NoWrenchLength)?;
    if length.si().is_nan() || length.si() <= 0.0 {
        return Err(AdapterProblem::WrenchLength);
    }
    if adapter.reach.si().is_nan() || adapter.reach.si() < 0.0 {
        return Err(AdapterProblem::AdapterReach);
    }
    let reach = adapter.reach.figure_like(length);
    let effective = length.amount().figure() + reach * cosine(adapter.angle);
    // Within a hundredth of the wrench's length of the grip a hair's change
    // in the angle would change the setting out of all reason.
    if effective.is_nan() || effective < 0.01 * length.amount().figure() {
        return Err(AdapterProblem::BehindTheGrip);
    }
    Ok((length, effective))
}

/// The cosine, exact at right angles, where an adapter must change nothing.
fn cosine(angle: Angle) -> f64 {
    let degrees = angle.in_degrees().rem_euclid(360.0);
    if degrees == 90.0 || degrees == 270.0 {
        0.0
    } else {
        degrees.to_radians().cos()
    }
}

fn scaled(torque: Torque, by: f64, over: f64) -> Torque {
    torque.with_figure(torque.amount().figure() * by / over)
}

fn numbers(torque: Torque, adapter: &Adapter, length: Length, upside_down: bool) -> String {
    let length = length.amount().as_given();
    let reach = adapter.reach.amount().as_given();
    let angle = plain(adapter.angle.in_degrees());
    let sum = format!("({length} + {reach} × cos {angle}°)");
    let torque = torque.amount().as_given();
    if upside_down {
        format!("{torque} × {sum} / {length}")
    } else {
        format!("{torque} × {length} / {sum}")
    }
}

impl Adapter {
    /// An adapter straight on.
    pub fn straight(wrench_length: Option<Length>, reach: Length) -> Adapter {
        Adapter {
            wrench_length,
            reach,
            angle: Angle::degrees(0.0),
        }
    }
}

impl std::fmt::Display for Adapter {
    /// `100 mm straight on`, `100 mm at 45°`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let degrees = self.angle.in_degrees();
        let reach = self.reach.amount().as_given();
        if degrees == 0.0 {
            write!(f, "{reach} straight on")
        } else {
            write!(f, "{reach} at {}°", trimmed(degrees, 4))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_a_length_nothing_is_guessed() {
        let adapter = Adapter::straight(None, Length::millimetres(50.0));
        let problem = setting(Torque::newton_metres(40.0), &adapter).unwrap_err();
        assert_eq!(problem, AdapterProblem::NoWrenchLength);
        assert!(problem.describe().contains("middle of the grip"));
    }

    #[test]
    fn lengths_that_make_no_sense_are_refused() {
        let adapter = |length: f64, reach: f64, angle: f64| Adapter {
            wrench_length: Some(Length::millimetres(length)),
            reach: Length::millimetres(reach),
            angle: Angle::degrees(angle),
        };
        let problem =
            |adapter: Adapter| setting(Torque::newton_metres(40.0), &adapter).unwrap_err();
        assert_eq!(
            problem(adapter(0.0, 50.0, 0.0)),
            AdapterProblem::WrenchLength
        );
        assert_eq!(
            problem(adapter(f64::NAN, 50.0, 0.0)),
            AdapterProblem::WrenchLength
        );
        assert_eq!(
            problem(adapter(300.0, -50.0, 0.0)),
            AdapterProblem::AdapterReach
        );
        assert_eq!(
            problem(adapter(300.0, 300.0, 180.0)),
            AdapterProblem::BehindTheGrip
        );
        assert_eq!(
            problem(adapter(300.0, 400.0, 180.0)),
            AdapterProblem::BehindTheGrip
        );
        assert_eq!(
            problem(adapter(300.0, 50.0, f64::NAN)),
            AdapterProblem::BehindTheGrip
        );
    }

    #[test]
    fn the_working_shows_the_numbers() {
        let adapter = Adapter::straight(Some(Length::inches(10.0)), Length::inches(4.0));
        let found = setting(Torque::pound_force_inches(300.0), &adapter).unwrap();
        assert_eq!(found.value.to_string(), "214.3 lbf.in");
        assert_eq!(
            found.working.lines[0].numbers,
            "300 lbf.in × 10 in / (10 in + 4 in × cos 0°)"
        );
    }
}
