//! Wire thread inserts.

use std::f64::consts::PI;

use super::area::bare;
use crate::quantity::{Area, Force, Length, Pressure, System};
use crate::source::Source;
use crate::thread::Thread;
use crate::working::{Worked, Working};

/// A published strip area of an insert's seat.
#[derive(Debug, Clone, PartialEq)]
pub struct InsertSize {
    /// The screw's thread.
    pub thread: &'static str,
    /// Area of the seat that shears.
    pub area: Area,
    /// Where it is published.
    pub source: Source,
}

/// Strip areas of insert seats, in in2 (NASA TM-106943 Table IV).
pub fn published_inserts() -> Vec<InsertSize> {
    let rows = [
        ("#2-56 UNC", 0.0157),
        ("#4-40 UNC", 0.0302),
        ("#8-32 UNC", 0.0669),
        ("#10-32 UNF", 0.0945),
        ("1/4-28 UNF", 0.1726),
        ("5/16-24 UNF", 0.2321),
        ("3/8-24 UNF", 0.3366),
        ("7/16-20 UNF", 0.4606),
        ("1/2-20 UNF", 0.5831),
    ];
    let row = |(thread, area)| InsertSize {
        thread,
        area: Area::square_inches(area),
        source: Source::read("NASA TM-106943 (1995) Table IV"),
    };
    rows.into_iter().map(row).collect()
}

/// Area that shears around an insert: (3/4) × π × D2 × LE, with D2 the pitch
/// diameter of the seat, d + 0.649 519 P (the seat's thread is the screw's own
/// triangle, one size up). Any length unit, its square for the area.
///
/// The simplified area is that of FED-STD-H28/2B Table II.B.1, the seat's
/// diameter from memory (DIN 8140). A maker's own figure goes before it.
/// `None` for a thread that is not computed.
pub fn insert_area(thread: &Thread, engagement: Length) -> Option<Worked<Area>> {
    let profile = thread.profile()?;
    let system = System::of(profile.pitch.unit());
    let seat = profile.diameter.inner() + 0.649_519 * profile.pitch.inner();
    let area = Area::from_inner(0.75 * PI * seat * engagement.inner(), system);
    let seat = Length::from_inner(seat, system);
    let working = Working::new()
        .line(
            "pitch diameter of the insert's seat D2",
            "d + 0.6495 × P",
            format!(
                "{} + 0.6495 × {}",
                bare(profile.diameter, system),
                bare(profile.pitch, system)
            ),
            seat,
        )
        .line(
            "strip area of the seat",
            "(3/4) × π × D2 × LE",
            format!("0.75 × π × {seat} × {}", engagement.amount().as_given()),
            area,
        )
        .source(Source::read(
            "FED-STD-H28/2B (1991) Table II.B.1, simplified area",
        ))
        .source(Source::memory("DIN 8140, the insert's seat"));
    Some(Worked::new(area, working))
}

/// Load that pulls an insert out: area of its seat times shear strength, N
/// from mm2 and MPa, lbf from in2 and psi (NASA TM-106943 Table V).
pub fn insert_pull_out(area: Area, shear: Pressure) -> Worked<Force> {
    let load = Force::from_inner(area.inner() * shear.inner(), System::of(area.unit()));
    let working = Working::new()
        .line(
            "pull-out load",
            "As × shear strength",
            format!("{area} × {shear}"),
            load,
        )
        .source(Source::read("NASA TM-106943 (1995) Tables IV and V"));
    Worked::new(load, working)
}
