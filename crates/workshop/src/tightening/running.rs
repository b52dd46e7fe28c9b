//! Running torque of self-locking nuts, which is lost before any clamp load.

use crate::quantity::{Measure, Torque};
use crate::source::Source;
use crate::working::{Worked, Working};

/// Why running torque cannot be added.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RunningTorqueProblem {
    /// One of the two torques is less than nothing.
    LessThanNothing,
    /// What should be a torque is something else.
    NotATorque,
    /// The lowest allowed torque lies above the highest.
    Backwards,
}

/// Torque to set for a self-locking nut: wanted torque + running torque, as
/// measured on this very nut as it runs down the thread (FAA AC 43.13-1B par.
/// 7-40; NASA-STD-5020B Eqs 27 and 28 for a torque "above running torque").
///
/// # Errors
/// When either is less than nothing.
pub fn with_running_torque(
    wanted: Torque,
    running: Torque,
) -> Result<Worked<Torque>, RunningTorqueProblem> {
    if !(wanted.si() >= 0.0 && running.si() >= 0.0) {
        return Err(RunningTorqueProblem::LessThanNothing);
    }
    let sum = wanted.with_figure(wanted.amount().figure() + running.figure_like(wanted));
    let working = Working::new()
        .line(
            "setting",
            "wanted torque + running torque",
            format!(
                "{} + {}",
                wanted.amount().as_given(),
                running.amount().as_given()
            ),
            sum,
        )
        .source(Source::read("FAA AC 43.13-1B par. 7-40"));
    Ok(Worked::new(sum, working))
}

/// The torques between which the slot of a castle nut must meet its hole:
/// lowest and highest of the given range, each with the running torque on top
/// (FAA AC 43.13-1B par. 7-40). Start at the first and never pass the second.
///
/// # Errors
/// When `range` is no torque, or either is less than nothing.
pub fn castle_nut(
    range: &Measure,
    running: Torque,
) -> Result<(Worked<Torque>, Worked<Torque>), RunningTorqueProblem> {
    let torque = |amount| Torque::try_from(amount).map_err(|_| RunningTorqueProblem::NotATorque);
    let (low, high) = (torque(range.low())?, torque(range.high())?);
    if low.exceeds(high) {
        return Err(RunningTorqueProblem::Backwards);
    }
    Ok((
        with_running_torque(low, running)?,
        with_running_torque(high, running)?,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn running_torque_goes_on_top() {
        let sum = with_running_torque(
            Torque::newton_metres(20.0),
            Torque::pound_force_inches(10.0),
        )
        .unwrap();
        assert_eq!(sum.value.to_string(), "21.13 N.m");
        let less = with_running_torque(Torque::newton_metres(-1.0), Torque::newton_metres(0.0));
        assert_eq!(less, Err(RunningTorqueProblem::LessThanNothing));
    }

    #[test]
    fn a_castle_nut_has_a_lowest_and_a_highest() {
        let range = Measure::read("160..190 lbf.in").unwrap();
        let (low, high) = castle_nut(&range, Torque::pound_force_inches(12.0)).unwrap();
        assert_eq!(
            (low.value.to_string(), high.value.to_string()),
            ("172 lbf.in".into(), "202 lbf.in".into())
        );
        let gap = Measure::read("0.1 mm").unwrap();
        assert_eq!(
            castle_nut(&gap, Torque::newton_metres(1.0)),
            Err(RunningTorqueProblem::NotATorque)
        );
    }
}
