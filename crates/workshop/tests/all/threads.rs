//! Threads: stress areas and head sizes.

use workshop::drive::{HeadSeries, drive_size, series_that_fit};
use workshop::quantity::Length;

use crate::{near, thread, within};

fn area_mm2(text: &str) -> f64 {
    thread(text)
        .stress_area()
        .unwrap()
        .value
        .in_square_millimetres()
}

fn area_in2(text: &str) -> f64 {
    thread(text).stress_area().unwrap().value.in_square_inches()
}

/// Five digits: Bickford, 4th ed., table (also GB/T 16823.1-1997).
#[test]
fn metric_stress_areas_to_five_digits() {
    let rows = [
        ("M3", 5.03, 0.005),
        ("M3.5", 6.78, 0.005),
        ("M4", 8.78, 0.005),
        ("M5", 14.183, 0.001),
        ("M6", 20.123, 0.001),
        ("M7", 28.86, 0.005),
        ("M8", 36.609, 0.001),
        ("M10", 57.990, 0.001),
        ("M12", 84.267, 0.001),
        ("M14", 115.44, 0.005),
        ("M16", 156.67, 0.005),
        ("M18", 192.47, 0.005),
        ("M20", 244.79, 0.005),
        ("M22", 303.40, 0.005),
        ("M24", 352.50, 0.005),
    ];
    for (text, printed, by) in rows {
        near(area_mm2(text), printed, by);
    }
}

/// ISO 898-1 fine thread table; three digits, from memory, each agreeing with
/// the formula.
#[test]
fn metric_fine_stress_areas() {
    near(area_mm2("M10x1.25"), 61.199, 0.005);
    for (text, printed) in [
        ("M8x1", 39.2),
        ("M10x1", 64.5),
        ("M12x1.5", 88.1),
        ("M12x1.25", 92.1),
        ("M14x1.5", 125.0),
        ("M16x1.5", 167.0),
        ("M18x1.5", 216.0),
        ("M20x1.5", 272.0),
        ("M22x1.5", 333.0),
        ("M24x2", 384.0),
        ("M27", 459.0),
        ("M30", 561.0),
    ] {
        within(area_mm2(text), printed, 0.004);
    }
}

/// ASME B1.1 by Shigley, 9th ed., Table 8-2 p. 413 and a reproduced UNF table.
#[test]
fn unified_stress_areas() {
    let rows = [
        ("#4-40 UNC", 0.00604),
        ("#4-48 UNF", 0.00661),
        ("#5-40 UNC", 0.00796),
        ("#6-32 UNC", 0.00909),
        ("#6-40 UNF", 0.01015),
        ("#8-32 UNC", 0.0140),
        ("#8-36 UNF", 0.01474),
        ("#10-24 UNC", 0.0175),
        ("#10-32 UNF", 0.0200),
        ("#12-24 UNC", 0.0242),
        ("#12-28 UNF", 0.0258),
        ("1/4-20 UNC", 0.0318),
        ("1/4-28 UNF", 0.0364),
        ("5/16-18 UNC", 0.0524),
        ("5/16-24 UNF", 0.0580),
        ("3/8-16 UNC", 0.0775),
        ("3/8-24 UNF", 0.0878),
        ("7/16-14 UNC", 0.1063),
        ("7/16-20 UNF", 0.1187),
        ("1/2-13 UNC", 0.1419),
        ("1/2-20 UNF", 0.1599),
        ("9/16-12 UNC", 0.182),
        ("9/16-18 UNF", 0.203),
        ("5/8-11 UNC", 0.226),
        ("5/8-18 UNF", 0.256),
        ("3/4-10 UNC", 0.334),
        ("3/4-16 UNF", 0.373),
        ("7/8-9 UNC", 0.462),
        ("7/8-14 UNF", 0.509),
        ("1-8 UNC", 0.606),
        ("1-12 UNF", 0.663),
    ];
    for (text, printed) in rows {
        within(area_in2(text), printed, 0.002);
    }
    near(area_in2("1/4-28 UNF"), 0.0364, 0.000_06);
    near(area_in2("3/8-24 UNF"), 0.0878, 0.000_06);
}

/// Shigley's Table 8-2 prints 0.008 80 for #5-44; the formula and two other
/// tables give 0.0083.
#[test]
fn number_five_fine_is_not_what_one_table_prints() {
    near(area_in2("#5-44 UNF"), 0.008_31, 0.000_02);
}

#[test]
fn a_pipe_thread_has_no_area_here() {
    assert!(thread("G 1/4").stress_area().is_none());
    assert!(thread("3/8 BSW").profile().is_none());
}

/// ISO 4014/4017/4032, DIN 931/933/934, JIS B 1180 annex, JIS B 1189, ISO
/// 4762: reproduced tables.
#[test]
fn spanner_and_key_sizes_by_series() {
    let rows = [
        (
            HeadSeries::Iso,
            [
                ("M6", 10.0),
                ("M8", 13.0),
                ("M10", 16.0),
                ("M12", 18.0),
                ("M14", 21.0),
            ],
        ),
        (
            HeadSeries::OldDin,
            [
                ("M6", 10.0),
                ("M8", 13.0),
                ("M10", 17.0),
                ("M12", 19.0),
                ("M14", 22.0),
            ],
        ),
        (
            HeadSeries::SocketCap,
            [
                ("M6", 5.0),
                ("M8", 6.0),
                ("M10", 8.0),
                ("M12", 10.0),
                ("M14", 12.0),
            ],
        ),
        (
            HeadSeries::SmallFlange,
            [
                ("M6", 8.0),
                ("M8", 10.0),
                ("M10", 13.0),
                ("M12", 15.0),
                ("M14", 18.0),
            ],
        ),
        (
            HeadSeries::Small,
            [
                ("M8", 12.0),
                ("M10", 14.0),
                ("M12", 17.0),
                ("M14", 19.0),
                ("M16", 22.0),
            ],
        ),
    ];
    for (series, sizes) in rows {
        for (text, size) in sizes {
            let found = drive_size(&thread(text), series).unwrap().across_flats;
            assert_eq!(found.in_millimetres(), size, "{text} {series:?}");
        }
    }
    assert!(drive_size(&thread("M6"), HeadSeries::Small).is_none());
}

/// ASME B18.2.1, two reproduced tables.
#[test]
fn inch_spanner_sizes() {
    for (text, size) in [
        ("1/4-20", 7.0 / 16.0),
        ("5/16-18", 0.5),
        ("3/8-16", 9.0 / 16.0),
        ("1/2-13", 0.75),
        ("5/8-11", 15.0 / 16.0),
        ("1-8", 1.5),
    ] {
        let found = drive_size(&thread(text), HeadSeries::InchHex)
            .unwrap()
            .across_flats;
        assert_eq!(found.in_inches(), size);
    }
}

/// M10 takes 16 (ISO), 17 (old DIN) or 14 mm (small); 15 only with a flange.
#[test]
fn one_thread_many_spanners() {
    let fit = |size: f64| series_that_fit(&thread("M10"), Length::millimetres(size));
    assert_eq!(fit(16.0), [HeadSeries::Iso]);
    assert_eq!(fit(17.0), [HeadSeries::OldDin]);
    assert_eq!(fit(14.0), [HeadSeries::Small]);
    assert!(fit(12.0).is_empty());
}
