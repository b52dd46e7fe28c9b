//! Inch-pounds taken for foot-pounds, or the other way round.

use crate::quantity::{Torque, Unit};

/// The same figure in the unit that was probably meant.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UnitSlip {
    /// The torque as given.
    pub given: Torque,
    /// The same figure in the other unit.
    pub meant: Torque,
}

/// Whether a torque makes sense only with lbf.ft and lbf.in exchanged: as given
/// it lies outside `lowest..highest`, and the same figure in the other unit
/// lies inside. The two units are a factor of twelve apart, so a slip shows.
/// `None` when it is in neither unit, or is right as it stands.
pub fn inch_foot_slip(given: Torque, lowest: Torque, highest: Torque) -> Option<UnitSlip> {
    let other = match given.unit() {
        Unit::PoundForceFoot => Unit::PoundForceInch,
        Unit::PoundForceInch => Unit::PoundForceFoot,
        _ => return None,
    };
    let inside = |torque: Torque| !lowest.exceeds(torque) && !torque.exceeds(highest);
    let meant = Torque::new(given.amount().figure(), other)?;
    (!inside(given) && inside(meant)).then_some(UnitSlip { given, meant })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_factor_of_twelve_shows() {
        let (low, high) = (Torque::newton_metres(15.0), Torque::newton_metres(35.0));
        let slip =
            |torque: Torque| inch_foot_slip(torque, low, high).map(|slip| slip.meant.to_string());
        assert_eq!(
            slip(Torque::pound_force_inches(18.0)),
            Some("18 lbf.ft".to_owned())
        );
        assert_eq!(
            slip(Torque::pound_force_feet(190.0)),
            Some("190 lbf.in".to_owned())
        );
        assert_eq!(slip(Torque::pound_force_feet(18.0)), None);
        assert_eq!(slip(Torque::pound_force_feet(1000.0)), None);
        assert_eq!(slip(Torque::newton_metres(2.0)), None);
    }
}
