//! What must hold for every value.

use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed};
use workshop::class::{BoltClass, proof_load};
use workshop::fits::choose_shims;
use workshop::joint::{Joint, check_joint};
use workshop::preload::{NutFactor, clamp_load, torque_for};
use workshop::quantity::{
    Amount, Angle, Force, Length, Measure, Pressure, Torque, Unit, plain, spellings,
};
use workshop::source::Source;
use workshop::strip::{Hole, Material, MaterialFamily, strip_load};
use workshop::thread::Thread;
use workshop::tightening::pattern::{
    Layout, Pattern, check_order, loosening_order, opposite_pairs, quarter_start, tightening_order,
};
use workshop::tightening::{Adapter, delivered, setting};

/// The same cases every time, and no file of failures in the tree: a failure is
/// made into a test with a name.
fn config(cases: u32) -> Config {
    Config {
        cases,
        rng_seed: RngSeed::Fixed(0x5eed_0001),
        failure_persistence: None,
        ..Config::default()
    }
}

fn any_unit() -> impl Strategy<Value = Unit> {
    prop::sample::select(Unit::all().collect::<Vec<_>>())
}

fn any_thread() -> impl Strategy<Value = Thread> {
    let names = [
        "M5", "M6", "M8", "M8x1", "M10", "M12x1.25", "M16", "M24", "#10-32", "1/4-20", "3/8-24",
        "1/2-13",
    ];
    prop::sample::select(names.map(|name| Thread::read(name).unwrap()).to_vec())
}

fn factor(k: f64) -> NutFactor {
    NutFactor::exactly(k, Source::given("a test")).unwrap()
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1e-9)
}

proptest! {
    #![proptest_config(config(512))]

    #[test]
    fn a_conversion_comes_back(figure in -1e6..1e6f64, from in any_unit(), to in any_unit()) {
        match from.convert(figure, to) {
            None => prop_assert_ne!(from.dimension(), to.dimension()),
            Some(there) => {
                let back = to.convert(there, from).unwrap();
                // A point on a temperature scale loses what the shift of the
                // zero takes from its digits.
                prop_assert!((back - figure).abs() <= 1e-9 * figure.abs().max(1.0), "{figure} {from:?} {to:?} {back}");
                let difference = from.convert_difference(figure, to).unwrap();
                let back = to.convert_difference(difference, from).unwrap();
                prop_assert!(close(back, figure));
            }
        }
    }

    #[test]
    fn what_is_written_is_printed_and_read_back(figure in 0..1_000_000u32, decimals in 0..5usize, at in 0..spellings().len()) {
        let spelling = spellings()[at];
        let text = format!("{:.decimals$} {}", f64::from(figure) / 1000.0, spelling.text);
        let measure = Measure::read(&text).unwrap();
        prop_assert_eq!(measure.unit(), spelling.unit);
        prop_assert_eq!(measure.to_string(), text);
        prop_assert!(measure.contains(&measure) && measure.same_as(&measure));
        let again = Measure::read(Measure::of(measure.low()).as_written()).unwrap();
        prop_assert!(again.same_as(&measure));
    }

    #[test]
    fn a_range_holds_its_ends_and_nothing_beyond(low in 0..10_000i32, width in 1..10_000i32, unit in any_unit()) {
        prop_assume!(unit != Unit::Number);
        let figures = [low, low + width].map(|figure| plain(f64::from(figure) / 100.0));
        let range = Measure::read(&format!("{}..{} {unit}", figures[0], figures[1])).unwrap();
        for figure in &figures {
            let end = Measure::read(&format!("{figure} {unit}")).unwrap();
            prop_assert!(range.contains(&end));
        }
        let beyond = Amount::new(f64::from(low + width) / 100.0 + 0.001, unit);
        prop_assert!(!range.contains_amount(beyond));
    }

    #[test]
    fn the_other_unit_is_the_same_quantity_rounded(figure in 100..100_000u32, unit in any_unit()) {
        prop_assume!(unit != Unit::Number);
        let measure = Measure::read(&format!("{figure} {unit}")).unwrap();
        if let Some(other) = measure.other_unit() {
            let back = other.middle().in_unit(unit).unwrap().figure();
            // Three digits or more were given, so half a per cent at most is
            // lost, or half a degree where the scale is shifted.
            let allowed = 0.005 * f64::from(figure) + 1.0;
            prop_assert!((back - f64::from(figure)).abs() <= allowed, "{measure} {other}");
        }
    }

    #[test]
    fn no_text_brings_the_reader_down(text in "\\PC{0,40}") {
        if let Err(problem) = Measure::read(&text) {
            prop_assert!(!problem.describe().is_empty());
        }
        if let Err(problem) = Thread::read(&text) {
            prop_assert!(!problem.describe().is_empty());
        }
        if let Err(problem) = BoltClass::read(&text, None) {
            prop_assert!(!problem.describe().is_empty());
        }
    }

    #[test]
    fn almost_a_quantity_does_not_either(text in "[-+.,/0-9 ]{0,12}(N|N.m|in|lb|deg|°|pint|%|\\.\\.|\\+-){0,3}[-0-9. ]{0,6}(mm|F|N){0,1}") {
        if let Err(problem) = Measure::read(&text) {
            prop_assert!(!problem.describe().is_empty());
        }
    }

    #[test]
    fn torque_and_clamp_load_are_each_others_reverse(torque in 0.1..2000.0f64, d in 2.0..40.0f64, k in 0.05..0.5f64) {
        let load = clamp_load(Torque::newton_metres(torque), Length::millimetres(d), &factor(k)).value;
        let back = torque_for(load, Length::millimetres(d), &factor(k)).value;
        prop_assert!(close(back.in_newton_metres(), torque));
    }

    #[test]
    fn a_setting_delivers_what_was_wanted(torque in 0.1..2000.0f64, length in 50.0..1500.0f64, reach in 0.0..49.0f64, angle in -360.0..360.0f64) {
        let adapter = Adapter {
            wrench_length: Some(Length::millimetres(length)),
            reach: Length::millimetres(reach),
            angle: Angle::degrees(angle),
        };
        let set = setting(Torque::newton_metres(torque), &adapter).unwrap().value;
        let got = delivered(set, &adapter).unwrap().value;
        prop_assert!(close(got.in_newton_metres(), torque));
        // Straight on takes less than at any angle, back under the grip most.
        let straight = setting(Torque::newton_metres(torque), &Adapter { angle: Angle::degrees(0.0), ..adapter });
        let back = setting(Torque::newton_metres(torque), &Adapter { angle: Angle::degrees(180.0), ..adapter });
        prop_assert!(!straight.unwrap().value.exceeds(set));
        prop_assert!(!set.exceeds(back.unwrap().value));
    }

    #[test]
    fn more_torque_never_passes_fewer_limits(thread in any_thread(), low in 0.1..200.0f64, more in 1.0..3.0f64, depth in 0.5..3.0f64) {
        let material = Material::usual(MaterialFamily::Aluminium).unwrap();
        let engagement = Length::millimetres(depth * thread.diameter().unwrap().in_millimetres());
        let joint = Joint {
            class: BoltClass::read("8.8", None).ok(),
            hole: Some(Hole { material, engagement, insert: false }),
            ..Joint::new(thread, NutFactor::condition_unknown())
        };
        let passing = |torque: f64| {
            let check = check_joint(Torque::newton_metres(torque), &joint).unwrap();
            check.worst().map(|limit| limit.passing)
        };
        prop_assert!(passing(low * more) >= passing(low));
    }

    #[test]
    fn deeper_and_harder_holes_carry_more(thread in any_thread(), depth in 1.0..60.0f64, deeper in 1.001..3.0f64, shear in 20.0..400.0f64, harder in 1.001..3.0f64) {
        let load = |depth: f64, shear: f64| {
            let material = Material::from_shear(
                MaterialFamily::Aluminium,
                "an alloy",
                Pressure::megapascals(shear),
                Source::given("a test"),
            );
            let hole = Hole { material, engagement: Length::millimetres(depth), insert: false };
            strip_load(&thread, &hole, None).unwrap().load().value
        };
        prop_assert!(load(depth * deeper, shear).exceeds(load(depth, shear)));
        prop_assert!(load(depth, shear * harder).exceeds(load(depth, shear)));
    }

    #[test]
    fn a_stronger_class_bears_more(thread in any_thread()) {
        let names = ["4.6", "5.6", "4.8", "5.8", "6.8", "8.8", "10.9", "12.9"];
        let loads: Vec<Force> = names
            .iter()
            .map(|name| proof_load(&thread, BoltClass::read(name, None).unwrap()).unwrap().value)
            .collect();
        prop_assert!(loads.windows(2).all(|two| two[1].exceeds(two[0])));
    }

    #[test]
    fn a_chosen_shim_leaves_what_it_says(gap in 0..300u32, low in 1..30u32, width in 0..20u32, sizes in prop::collection::vec(1..60u32, 1..8), most in 1..4usize) {
        let mm = |hundredths: u32| Length::millimetres(f64::from(hundredths) / 100.0);
        let stock: Vec<Length> = sizes.iter().copied().map(mm).collect();
        let target = Measure::read(&format!(
            "{}..{} mm", plain(f64::from(low) / 100.0), plain(f64::from(low + width) / 100.0)
        )).unwrap();
        let Ok(found) = choose_shims(mm(gap), &target, &stock, most) else {
            prop_assert!(gap < low);
            return Ok(());
        };
        let choice = found.value;
        prop_assert!(choice.shims.len() <= most);
        let packed: f64 = choice.shims.iter().map(|shim| shim.in_millimetres()).sum();
        prop_assert!(close(packed + choice.clearance.in_millimetres(), f64::from(gap) / 100.0));
        // Brute force over whole hundredths: within if any pack is.
        let mut reachable = std::collections::BTreeSet::from([0u32]);
        for _ in 0..most {
            let more: Vec<u32> = reachable.iter().flat_map(|sum| sizes.iter().map(move |size| sum + size)).collect();
            reachable.extend(more);
        }
        let can = reachable.iter().any(|sum| *sum <= gap && (low..=low + width).contains(&(gap - sum)));
        prop_assert_eq!(choice.within, can);
    }
}

#[test]
fn every_order_is_a_permutation_and_loosening_its_reverse() {
    let mut layouts: Vec<Layout> = Vec::new();
    for count in 0..=64 {
        layouts.extend([
            Layout::Ring(count),
            Layout::Line(count),
            Layout::two_rows(count),
        ]);
    }
    for first in 0..=9 {
        layouts.extend((0..=9).map(|second| Layout::TwoRows { first, second }));
    }
    for layout in layouts {
        for pattern in [Pattern::Cross, Pattern::Spiral, Pattern::Round] {
            let order = tightening_order(layout, pattern);
            assert!(
                check_order(&order, layout.count()).is_empty(),
                "{layout:?} {pattern:?} {order:?}"
            );
            let mut back = loosening_order(layout, pattern);
            back.reverse();
            assert_eq!(back, order);
            assert_eq!(layout.places().len(), layout.count());
        }
    }
}

#[test]
fn even_rings_go_by_opposite_pairs() {
    for count in (2..=200).step_by(2) {
        let order = tightening_order(Layout::Ring(count), Pattern::Cross);
        assert!(opposite_pairs(&order), "{count}");
        assert!(quarter_start(&order), "{count}");
    }
}

#[test]
fn two_rows_never_come_back_inwards() {
    for columns in 1..=20usize {
        let layout = Layout::TwoRows {
            first: columns,
            second: columns,
        };
        for pattern in [Pattern::Cross, Pattern::Spiral] {
            let from_middle = |number: usize| {
                let column = (number - 1) % columns;
                (2 * column + 1).abs_diff(columns)
            };
            let order = tightening_order(layout, pattern);
            let away: Vec<usize> = order.iter().map(|number| from_middle(*number)).collect();
            assert!(
                away.windows(2).all(|two| two[0] <= two[1]),
                "{columns} {pattern:?}"
            );
        }
    }
}

#[test]
fn a_layout_too_large_to_be_real_makes_no_order() {
    assert!(tightening_order(Layout::Ring(1_000_000), Pattern::Cross).is_empty());
    assert_eq!(Layout::Ring(1_000_000).places().len(), 1000);
    assert_eq!(
        tightening_order(Layout::Ring(1000), Pattern::Cross).len(),
        1000
    );
    let huge = Layout::TwoRows {
        first: usize::MAX,
        second: usize::MAX,
    };
    assert!(tightening_order(huge, Pattern::Cross).is_empty());
}
