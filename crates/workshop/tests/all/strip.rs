//! Thread stripping.

use workshop::quantity::{Area, Force, Length, Pressure};
use workshop::strip::{
    MaterialFamily, engagement_equal_strength, engagement_rule, engagement_soft_hole,
    engagement_strong_hole, hole_area, insert_area, insert_pull_out, published_inserts, screw_area,
    shear_area_ratio, simplified_hole_area,
};

use crate::{near, thread, within};

/// FED-STD-H28/2B (20 August 1991) App. B par. 90.1: a hollow part with
/// 1.500-8UN, stress area 1.492 in2 less a bore of 0.792 in: 0.777 in, and
/// 0.714 with half the tolerance on the hole.
#[test]
fn engagement_of_a_hollow_part() {
    let hollow = 1.492 - std::f64::consts::FRAC_PI_4 * 0.792 * 0.792;
    let engagement = |minor: f64| {
        engagement_strong_hole(
            Area::square_inches(hollow),
            Length::inches(0.125),
            Length::inches(minor),
            Length::inches(1.4093),
        )
        .value
        .in_inches()
    };
    near(engagement(1.390), 0.777, 0.0005);
    near(engagement(1.3775), 0.714, 0.0005);
}

/// FED-STD-H28/2B par. 90.2: 1-1/8-7UNC into cast iron of 20 ksi, screw of 60
/// ksi. R1 0.863, R2 0.333, engagement 1.729 in, which is less than the 1.750 at
/// hand. The print has a multiplication sign for a plus and labels R2 as R1; its
/// results are right.
#[test]
fn engagement_in_cast_iron() {
    let bolt = thread("1-1/8-7 UNC");
    let ratio = shear_area_ratio(&bolt, &bolt.limits().unwrap())
        .unwrap()
        .value;
    near(ratio, 0.863, 0.0005);
    let engagement = engagement_soft_hole(&bolt, Area::square_inches(0.763), 20.0 / 60.0).unwrap();
    near(engagement.value.in_inches(), 1.729, 0.0005);
    assert!(engagement.value.in_inches() <= 1.750);
    // With hole and screw alike the screw's own thread decides.
    assert!(engagement_soft_hole(&bolt, Area::square_inches(0.763), 1.0).is_none());
}

/// FED-STD-H28/2B formula 13 on the same bolt: 4 × 0.763 / (π × 1.0322).
#[test]
fn engagement_of_like_materials() {
    let found = engagement_equal_strength(Area::square_inches(0.763), Length::inches(1.0322));
    near(found.value.in_inches(), 0.9412, 0.0005);
}

/// Bickford, 4th ed., table of metric threads: strip areas in mm2 for an
/// engagement of one diameter, 6g in 6H.
#[test]
fn metric_strip_areas_to_five_digits() {
    let rows = [
        ("M5", 35.366, 49.994, 0.0005),
        ("M6", 51.875, 73.145, 0.0005),
        ("M8", 97.290, 134.63, 0.005),
        ("M10", 155.80, 214.77, 0.005),
        // 227.7148, printed 227.72: the table rounded twice.
        ("M12", 227.72, 313.41, 0.0055),
    ];
    for (text, external, internal, half) in rows {
        let screw = thread(text);
        let (profile, limits) = (screw.profile().unwrap(), screw.limits().unwrap());
        let found = screw_area(profile.pitch, &limits, profile.diameter).value;
        near(found.in_square_millimetres(), external, half);
        let found = hole_area(profile.pitch, &limits, profile.diameter).value;
        near(found.in_square_millimetres(), internal, half);
    }
}

/// A distributor's sheet: strip area of the hole for each inch of engagement,
/// 2A in 2B.
#[test]
fn unified_strip_areas() {
    for (text, printed, half) in [
        ("1/4-20", 0.539, 0.0005),
        ("3/8-16", 0.828, 0.0005),
        ("1/2-13", 1.12, 0.005),
    ] {
        let screw = thread(text);
        let (profile, limits) = (screw.profile().unwrap(), screw.limits().unwrap());
        let found = hole_area(profile.pitch, &limits, Length::inches(1.0)).value;
        near(found.in_square_inches(), printed, half);
    }
}

/// The simplified area is within an eighth of the full one.
#[test]
fn the_simplified_area_is_close() {
    for text in ["M6", "M8", "M12", "1/4-20", "3/8-16"] {
        let screw = thread(text);
        let profile = screw.profile().unwrap();
        let full = hole_area(profile.pitch, &screw.limits().unwrap(), profile.diameter).value;
        let simple = simplified_hole_area(&screw, profile.diameter)
            .unwrap()
            .value;
        within(simple.si(), full.si(), 0.125);
    }
}

/// NASA TM-106943 Tables IV and V: inserts in 6061-T6 of 27 ksi.
#[test]
fn inserts_in_aluminium() {
    let printed = [
        424.0, 815.0, 1806.0, 2552.0, 4660.0, 6267.0, 9088.0, 12_436.0, 15_744.0,
    ];
    for (insert, printed) in published_inserts().iter().zip(printed) {
        let load = insert_pull_out(insert.area, Pressure::ksi(27.0)).value;
        near(load.in_pounds_force(), printed, 1.0);
    }
    let quarter = insert_pull_out(Area::square_inches(0.1726), Pressure::ksi(27.0)).value;
    near(quarter.in_pounds_force(), 4660.0, 1.0);
    assert!(quarter.exceeds(Force::pounds_force(4000.0)));
}

/// The seat of an insert is wider than the screw, so it carries more.
#[test]
fn a_seat_is_wider_than_its_screw() {
    let screw = thread("M8");
    let engagement = Length::millimetres(12.0);
    let seat = insert_area(&screw, engagement).unwrap().value;
    let bare = simplified_hole_area(&screw, engagement).unwrap().value;
    assert!(seat.exceeds(bare));
}

/// TM 9-6115-604-34 Table 1-2 note 6: two screw diameters in aluminium.
#[test]
fn rules_of_thumb_for_engagement() {
    assert_eq!(engagement_rule(MaterialFamily::Aluminium).diameters, 2.0);
    assert_eq!(engagement_rule(MaterialFamily::CastIron).diameters, 1.25);
    assert_eq!(engagement_rule(MaterialFamily::Steel).diameters, 1.0);
}
