//! Strength of fasteners.

use workshop::class::{BoltClass, proof_load};
use workshop::quantity::Length;

use crate::{thread, within};

fn class(text: &str) -> BoltClass {
    BoltClass::read(text, None).unwrap()
}

const CLASSES: [&str; 9] = [
    "4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9",
];

/// Proof loads in N, coarse thread, as printed in EN ISO 898-1 (two reproduced
/// copies); 0 where the standard has none.
const PROOF_LOADS: &[(&str, [u32; 9])] = &[
    ("M3", [1130, 1560, 1410, 1910, 2210, 2920, 3270, 4180, 4880]),
    ("M4", [1980, 2720, 2460, 3340, 3860, 5100, 5710, 7290, 8520]),
    (
        "M5",
        [3200, 4400, 3980, 5400, 6250, 8230, 9230, 11800, 13800],
    ),
    (
        "M6",
        [4520, 6230, 5630, 7640, 8840, 11600, 13100, 16700, 19500],
    ),
    (
        "M8",
        [8240, 11400, 10200, 13900, 16100, 21200, 23800, 30400, 35500],
    ),
    (
        "M10",
        [
            13000, 18000, 16200, 22000, 25500, 33700, 37700, 48100, 56300,
        ],
    ),
    (
        "M12",
        [
            19000, 26100, 23600, 32000, 37100, 48900, 54800, 70000, 81800,
        ],
    ),
    (
        "M14",
        [
            25900, 35600, 32200, 43700, 50600, 66700, 74800, 95500, 112000,
        ],
    ),
    (
        "M16",
        [
            35300, 48700, 44000, 59700, 69100, 91000, 102000, 130000, 152000,
        ],
    ),
    (
        "M18",
        [43200, 59500, 53800, 73000, 84500, 115000, 0, 159000, 186000],
    ),
    (
        "M20",
        [
            55100, 76000, 68600, 93100, 108000, 147000, 0, 203000, 238000,
        ],
    ),
    (
        "M22",
        [
            68200, 93900, 84800, 115000, 133000, 182000, 0, 252000, 294000,
        ],
    ),
    (
        "M24",
        [
            79400, 109000, 98800, 134000, 155000, 212000, 0, 293000, 342000,
        ],
    ),
];

/// The printed loads mix two ways of rounding, so 0.7 % and never equality.
#[test]
fn proof_loads_are_those_of_the_standard() {
    let mut compared = 0;
    for (text, loads) in PROOF_LOADS {
        for (name, printed) in CLASSES.iter().zip(loads) {
            let found = proof_load(&thread(text), class(name));
            if *printed == 0 {
                assert!(found.is_none(), "{text} {name}");
            } else {
                within(
                    found.unwrap().value.in_newtons(),
                    f64::from(*printed),
                    0.007,
                );
                compared += 1;
            }
        }
    }
    assert_eq!(compared, 113);
}

/// M20 8.8 is of 600 MPa, because that class steps up above 16 mm.
#[test]
fn the_step_of_class_8_8() {
    within(
        proof_load(&thread("M8"), class("8.8"))
            .unwrap()
            .value
            .in_newtons(),
        21_200.0,
        0.007,
    );
    within(
        proof_load(&thread("M10"), class("12.9"))
            .unwrap()
            .value
            .in_newtons(),
        56_300.0,
        0.007,
    );
    within(
        proof_load(&thread("M20"), class("8.8"))
            .unwrap()
            .value
            .in_newtons(),
        147_000.0,
        0.007,
    );
    let proof = |mm: f64| {
        class("8.8")
            .strength(Length::millimetres(mm))
            .unwrap()
            .proof
            .in_megapascals()
    };
    assert_eq!((proof(16.0), proof(16.1)), (580.0, 600.0));
}

/// SAE J429 by Shigley and Mischke, 5th ed., p. 341.
#[test]
fn the_steps_of_the_inch_grades() {
    let strength = |name: &str, inches: f64| {
        let found = class(name).strength(Length::inches(inches)).unwrap();
        [found.proof, found.yield_strength, found.tensile].map(|stress| stress.in_ksi().round())
    };
    assert_eq!(strength("SAE 2", 0.75), [55.0, 57.0, 74.0]);
    assert_eq!(strength("SAE 2", 0.875), [33.0, 36.0, 60.0]);
    assert_eq!(strength("SAE 5", 0.75), [85.0, 92.0, 120.0]);
    assert_eq!(strength("SAE 5", 1.0), [85.0, 92.0, 120.0]);
    assert_eq!(strength("SAE 5", 1.125), [74.0, 81.0, 105.0]);
    assert_eq!(strength("SAE 8", 1.5), [120.0, 130.0, 150.0]);
    assert!(class("SAE 5").strength(Length::inches(1.75)).is_none());
}

/// ISO 3506-1, from memory: 0.2 % proof strength and tensile strength.
#[test]
fn stainless_classes() {
    let strength = |name: &str| {
        let found = class(name).strength(Length::millimetres(8.0)).unwrap();
        (found.proof.in_megapascals(), found.tensile.in_megapascals())
    };
    assert_eq!(strength("A2-70"), (450.0, 700.0));
    assert_eq!(strength("A4-80"), (600.0, 800.0));
}
