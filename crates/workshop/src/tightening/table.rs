//! A published torque table: FAA AC 43.13-1B (9/8/98) Table 7-1, for oil-free
//! cadmium-plated threads, in lbf.in.
//!
//! It is looked up and never computed: the nut factor behind its rows runs from
//! 0.13 to 0.23. It holds for aircraft bolts and nuts of its own kind and is no
//! ground for a torque that a machine's maker does not give.

use crate::quantity::{Torque, same};
use crate::source::Source;
use crate::thread::Thread;

/// Which nut a torque is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TorqueColumn {
    /// A nut loaded in tension.
    Tension,
    /// A thin nut loaded in shear.
    Shear,
}

/// What the table says about a thread.
#[derive(Debug, Clone, PartialEq)]
pub struct TableTorque {
    /// Lowest recommended torque.
    pub low: Torque,
    /// Highest recommended torque.
    pub high: Torque,
    /// Never above this.
    pub limit: Torque,
    /// Whether the table's footnote calls its figures estimated.
    pub estimated: bool,
    /// Where it comes from.
    pub source: Source,
}

/// Diameter in inches, threads per inch; tension low, high; shear low, high;
/// limit in tension, in shear; estimated.
type Row = (f64, f64, [f64; 6], bool);

const ROWS: &[Row] = &[
    (0.164, 36.0, [12.0, 15.0, 7.0, 9.0, 20.0, 12.0], false),
    (0.190, 32.0, [20.0, 25.0, 12.0, 15.0, 40.0, 25.0], false),
    (0.25, 28.0, [50.0, 70.0, 30.0, 40.0, 100.0, 60.0], false),
    (
        0.3125,
        24.0,
        [100.0, 140.0, 60.0, 85.0, 225.0, 140.0],
        false,
    ),
    (
        0.375,
        24.0,
        [160.0, 190.0, 95.0, 110.0, 390.0, 240.0],
        false,
    ),
    (
        0.4375,
        20.0,
        [450.0, 500.0, 270.0, 300.0, 840.0, 500.0],
        false,
    ),
    (
        0.5,
        20.0,
        [480.0, 690.0, 290.0, 410.0, 1100.0, 660.0],
        false,
    ),
    (
        0.5625,
        18.0,
        [800.0, 1000.0, 480.0, 600.0, 1600.0, 960.0],
        false,
    ),
    (
        0.625,
        18.0,
        [1100.0, 1300.0, 600.0, 780.0, 2400.0, 1400.0],
        false,
    ),
    (
        0.75,
        16.0,
        [2300.0, 2500.0, 1300.0, 1500.0, 5000.0, 3000.0],
        false,
    ),
    (
        0.875,
        14.0,
        [2500.0, 3000.0, 1500.0, 1800.0, 7000.0, 4200.0],
        false,
    ),
    (
        1.0,
        14.0,
        [3700.0, 5500.0, 2200.0, 3300.0, 10_000.0, 6000.0],
        true,
    ),
    (
        1.125,
        12.0,
        [5000.0, 7000.0, 3000.0, 4200.0, 15_000.0, 9000.0],
        true,
    ),
    (
        1.25,
        12.0,
        [9000.0, 11_000.0, 5400.0, 6600.0, 25_000.0, 15_000.0],
        true,
    ),
    (0.164, 32.0, [12.0, 15.0, 7.0, 9.0, 20.0, 12.0], false),
    (0.190, 24.0, [20.0, 25.0, 12.0, 15.0, 35.0, 21.0], false),
    (0.25, 20.0, [40.0, 50.0, 25.0, 30.0, 75.0, 45.0], false),
    (0.3125, 18.0, [80.0, 90.0, 48.0, 55.0, 160.0, 100.0], false),
    (
        0.375,
        16.0,
        [160.0, 185.0, 95.0, 100.0, 275.0, 170.0],
        false,
    ),
    (
        0.4375,
        14.0,
        [235.0, 255.0, 140.0, 155.0, 475.0, 280.0],
        false,
    ),
    (0.5, 13.0, [400.0, 480.0, 240.0, 290.0, 880.0, 520.0], false),
    (
        0.5625,
        12.0,
        [500.0, 700.0, 300.0, 420.0, 1100.0, 650.0],
        false,
    ),
    (
        0.625,
        11.0,
        [700.0, 900.0, 420.0, 540.0, 1500.0, 900.0],
        false,
    ),
    (
        0.75,
        10.0,
        [1150.0, 1600.0, 700.0, 950.0, 2500.0, 1500.0],
        false,
    ),
    (
        0.875,
        9.0,
        [2200.0, 3000.0, 1300.0, 1800.0, 4600.0, 2700.0],
        false,
    ),
];

/// What the table says about a unified thread. `None` for a thread that it
/// does not list.
pub fn table_torque(thread: &Thread, column: TorqueColumn) -> Option<TableTorque> {
    let Thread::Unified(thread) = thread else {
        return None;
    };
    let (.., figures, estimated) = ROWS
        .iter()
        .find(|(d, n, ..)| same(*d, thread.diameter_in()) && same(*n, thread.threads_per_inch()))?;
    let (low, high, limit) = match column {
        TorqueColumn::Tension => (figures[0], figures[1], figures[4]),
        TorqueColumn::Shear => (figures[2], figures[3], figures[5]),
    };
    Some(TableTorque {
        low: Torque::pound_force_inches(low),
        high: Torque::pound_force_inches(high),
        limit: Torque::pound_force_inches(limit),
        estimated: *estimated,
        source: Source::read("FAA AC 43.13-1B (9/8/98) Table 7-1"),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_rises_and_shear_is_below_tension() {
        for (_, _, [low, high, shear_low, shear_high, limit, shear_limit], _) in ROWS {
            assert!(low < high && high < limit);
            assert!(shear_low < shear_high && shear_high < shear_limit);
            assert!(shear_low < low && shear_high < high && shear_limit < limit);
        }
        assert_eq!(ROWS.len(), 25);
    }

    #[test]
    fn what_is_not_listed_is_none() {
        let found = |text: &str| table_torque(&Thread::read(text).unwrap(), TorqueColumn::Tension);
        assert!(found("M8").is_none());
        assert!(found("1/4-32 UNEF").is_none());
        assert!(found("1-14 UNS").unwrap().estimated);
    }
}
