//! What declarations say of their things, and what means nothing where it stands.

use plan::model::{Body, CounterholdBy, Lock, Pass};

use crate::{good, names, plan, problems, thing};

#[test]
fn fasteners_are_read_in_full() {
    let text = "part head given\nitem tabs at nuts\nsupply lock-paste\npart pin given\n\
        fasteners nuts \"Head nuts\" 8 x studs M8x1.25 class 10.9\n  hold head\n  into Aluminum 16 mm\n  drive hex 13mm series iso\n\
        \x20 passes 10 N.m, slacken, mark, turn 60 deg from \"sheet 7\"\n  pattern 1, 3, 2, 4 in two rows\n  counterhold pin\n\
        \x20 locked by tabs, lock-paste, \"wire\"\n  frees when slack\n  moves with others\n  left-hand\n  lubricated with \"thin oil\"\n\
        fasteners others 1 x clips hold pin\n  counterhold ring-wrench 17 mm\ntighten nuts, others\n";
    let plan = good(text);
    let nuts = thing(&plan, "nuts");
    assert_eq!(nuts.label.as_deref(), Some("Head nuts"));
    assert_eq!(nuts.called(), "Head nuts");
    let group = nuts.fasteners().unwrap();
    assert_eq!(
        (group.count, group.noun.as_deref()),
        (Some(8), Some("stud"))
    );
    assert_eq!(group.class.as_ref().unwrap().text, "10.9");
    let (material, depth, _) = group.into.as_ref().unwrap();
    assert_eq!(
        (material.as_str(), depth.as_ref().unwrap().text.as_str()),
        ("aluminium", "16 mm")
    );
    let (kind, size, series, _) = group.drive.as_ref().unwrap();
    assert_eq!(
        (kind.as_str(), size.as_deref(), series.as_deref()),
        ("hex", Some("13 mm"), Some("iso"))
    );
    let passes = &group.passes.as_ref().unwrap().passes;
    assert!(matches!(
        passes[..],
        [Pass::Torque(_), Pass::Slacken, Pass::Mark, Pass::Turn(_)]
    ));
    let (order, layout, _) = group.pattern.as_ref().unwrap();
    assert_eq!((order.len(), layout.as_deref()), (4, Some("in two rows")));
    assert!(matches!(group.counterhold, Some(CounterholdBy::Part(_))));
    assert!(matches!(
        group.locked_by[..],
        [Lock::Thing(_), Lock::Thing(_), Lock::Words(_)]
    ));
    assert!(group.frees_when_slack && group.left_hand);
    assert_eq!(group.lubricated, Some((None, "thin oil".to_owned())));
    let Some(CounterholdBy::Tool(tool)) = &thing(&plan, "others").fasteners().unwrap().counterhold
    else {
        panic!();
    };
    assert_eq!(tool.kind.as_deref(), Some("ring-spanner"));
    assert_eq!(
        thing(&plan, "others").fasteners().unwrap().noun.as_deref(),
        Some("clip")
    );
}

#[test]
fn parts_are_read_in_full() {
    let text = "part a given\npart b onto a pressed\n  mass 3 kg\n  side Left\n  facing \"up\"\n  single-use\n  temporary count 4\n\
        \x20 takes 5 min\n  hazard pinch, hot-oil\n  matched with a\n  material gray-iron\nfit b\n";
    let plan = good(text);
    let b = thing(&plan, "b");
    assert!(b.onto.is_empty());
    assert_eq!(names(&plan, &b.pressed_onto), ["a"]);
    assert_eq!(b.side.as_ref().unwrap().0, "left");
    assert_eq!(
        (b.count, b.material.as_deref()),
        (Some(4), Some("grey-iron"))
    );
    assert_eq!(b.hazards, ["pinch", "hot-oil"]);
    assert!(b.single_use.is_some() && b.temporary.is_some() && thing(&plan, "a").given.is_some());
}

#[test]
fn holds_without_an_amount_is_sorted_by_what_carries_it() {
    let text = "supply coolant\npart a\npoint p on a holds coolant\npoint q on a holds \"old oil\" unknown\n\
                point r on a holds coolant 4.5 L\nfasteners f 1 x M6 holds a torque none\nfit a\ntighten f\nfill p, q, r with coolant\n";
    let plan = good(text);
    let holds = |name: &str| thing(&plan, name).point().unwrap().holds.clone().unwrap();
    assert!(holds("p").0.is_some() && holds("p").2.is_none());
    assert_eq!(holds("q").1, "old oil");
    assert!(holds("q").2.unwrap().unknown);
    assert_eq!(holds("r").2.unwrap().text, "4.5 L");
    assert_eq!(
        names(&plan, &thing(&plan, "f").fasteners().unwrap().hold),
        ["a"]
    );
}

#[test]
fn tools_and_supplies_are_read_in_full() {
    let text = "tool w\n  kind torque-wrench\n  range 5..25 N.m\n  full-scale 25 N.m\n  length 250 mm\n  accuracy 4 %\n  have\n\
        supply s\n  kind Threadlocker medium\n  close within 10 min\n  fixes in 20 min\n  cures in 24 h\n  good to 150 C\n  not on rubber, aluminum\n\
        part p\napply s to p with w\n";
    let plan = good(text);
    let Body::Tool(tool) = &thing(&plan, "w").body else {
        panic!()
    };
    assert!(tool.have && tool.range.as_ref().unwrap().measure.is_some());
    assert_eq!(tool.kind.as_deref(), Some("torque-wrench"));
    let supply = thing(&plan, "s").supply().unwrap();
    assert_eq!(supply.kind, ["threadlocker", "medium"]);
    assert_eq!(supply.not_on, ["rubber", "aluminium"]);
    assert_eq!(supply.good_to.as_ref().unwrap().text, "150 C");
}

#[test]
fn items_points_and_positions_are_read_in_full() {
    let text = "part a\nitem g at a size \"paper, 0.5 mm\" single-use count 2\npoint p on a closed by b service every 500 h given\n\
                point k on a service every 5000 km\nfasteners b 1 x M6 torque none\nposition c of tdc, bdc\n\
                fit a new g\ntighten b\nmark p, k\nturn c to bdc\n";
    let plan = good(text);
    let Body::Item { at, size } = &thing(&plan, "g").body else {
        panic!()
    };
    assert_eq!(
        (names(&plan, at), size.as_deref()),
        (vec!["a".to_owned()], Some("paper, 0.5 mm"))
    );
    let point = thing(&plan, "p").point().unwrap();
    assert_eq!(names(&plan, &point.closed_by), ["b"]);
    assert_eq!(point.service.as_ref().unwrap().0.text, "500 h");
    let Body::Position { places } = &thing(&plan, "c").body else {
        panic!()
    };
    assert_eq!(places.len(), 2);
}

#[test]
fn the_heading_is_read_in_full() {
    let text = "plan \"Pump\"\n  revision 4a\n  machine \"Pump, two-stage\"\n  starts assembled\n  torque in lb-ft\n  length in mm\n  people 2\n\
                \x20 reviewed by \"KT\" on 2031-05-14\n";
    let heading = good(text).heading;
    assert_eq!(heading.revision.as_deref(), Some("4a"));
    assert!(heading.assembled);
    assert_eq!(heading.torque_in.as_deref(), Some("lb-ft"));
    assert_eq!(heading.reviewed[0].0, "KT");
    assert_eq!(heading.reviewed[0].1, "2031-05-14");
    assert!(!good("part a\nfit a\n").heading.assembled);
}

#[test]
fn a_detail_that_says_nothing_there_is_told() {
    let text = "part a\n  torque 5 N.m\n  trial\npoint p on a\n  of a\nfit a\n  mass 3 kg\nmark p\n\
                stage \"S\"\n  onto a\nseries n 1..2\n  onto a\ndo \"x\"\n";
    assert_eq!(
        problems(&plan(text)),
        [
            "2: detail torque on part",
            "3: detail trial on part",
            "5: detail of on point",
            "7: detail mass on fit",
            "10: detail onto on stage",
            "12: detail onto on series",
        ]
    );
}

#[test]
fn what_is_said_again_otherwise_is_told_and_the_first_counts() {
    let text = "fasteners f 1 x M6\n  torque 5 N.m\n  torque 7 N.m\n  single-use\n  single-use\ntighten f\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["3: again torque"]);
    let torque = thing(&plan, "f")
        .fasteners()
        .unwrap()
        .torque
        .as_ref()
        .unwrap();
    assert_eq!(torque.value.as_ref().unwrap().text, "5 N.m");
}

#[test]
fn figures_are_held_against_what_is_wanted() {
    let text = "part a mass 3 mm\npart b mass 3\npart c mass unknown\nfit a, b, c takes 3 kg\nheat a to 3 mm\nmeasure b expect 25..5 mm\n";
    let plan = plan(text);
    assert_eq!(
        problems(&plan),
        [
            "1: dimension 3 mm for Mass",
            "2: figure 3",
            "4: dimension 3 kg for Time",
            "5: dimension 3 mm for Temperature",
            "6: figure 25..5 mm",
        ]
    );
    // Without a unit the figure is kept, but means nothing.
    let b = thing(&plan, "b").mass.as_ref().unwrap();
    assert!(b.measure.is_none() && !b.unknown && b.text == "3");
    assert!(thing(&plan, "c").mass.as_ref().unwrap().unknown);
}

#[test]
fn what_is_of_a_sort_that_cannot_stand_there_is_told() {
    let text = "part a\nsupply oil\nfasteners f 1 x M6 hold p\n  torque none\npoint p on oil\npart b onto p\nunit u of oil\n\
                item i at oil\nfit oil\napply a to b\nfit b, u new p\ntighten f use i\n";
    assert_eq!(
        problems(&plan(text)),
        [
            "3: sort p Point",
            "5: sort oil Supply",
            "6: sort p Point",
            "7: sort oil Supply",
            "8: sort oil Supply",
            "9: sort oil Supply",
            "10: sort a Part",
            "11: sort p Point",
            "12: sort i Item",
        ]
    );
}

#[test]
fn a_unit_is_no_member_of_itself() {
    let text = "part a\nunit u of a, v\nunit v of a, w\nunit w of u\nfit u\n";
    let plan = plan(text);
    assert_eq!(problems(&plan), ["4: in itself u"]);
    assert_eq!(names(&plan, thing(&plan, "v").members()), ["a", "w"]);
    assert!(thing(&plan, "w").members().is_empty() && thing(&plan, "w").uncertain);
}

#[test]
fn what_travels_with_a_part_is_pressed_onto_it() {
    let plan = good(
        "part shaft\npart key travels with shaft\npart wheel onto shaft travels with shaft\nfit key\n",
    );
    for name in ["key", "wheel"] {
        let thing = thing(&plan, name);
        assert_eq!(thing.pressed_onto.len(), 1, "{name}");
        assert_eq!(thing.onto, [], "{name}");
    }
}

#[test]
fn a_torque_in_words_is_no_figure() {
    let plan = good(
        "part lid\nfasteners screws 2 x grub-screws M4 hold lid torque \"firm by hand\" from \"sheet 1\"\nfit lid\n",
    );
    let group = thing(&plan, "screws").fasteners().unwrap();
    let torque = group.torque.as_ref().unwrap();
    assert_eq!(torque.value, None);
    assert_eq!(torque.words.as_ref().unwrap().text, "firm by hand");
    assert_eq!(group.noun.as_deref(), Some("screw"));
    assert_eq!(group.called.as_deref(), Some("grub-screw"));
}

#[test]
fn a_figure_on_a_step_stands_only_where_it_can_be_meant() {
    let head = "part lid\nfasteners screws 2 x M4 hold lid torque max 9 N.m from \"sheet 1\"\npoint gap on lid\n";
    for (step, said) in [
        (
            "tighten screws to 12 N.m",
            "4: no figure Tighten 12 N.m true",
        ),
        ("snug screws to 2 N.m", "4: no figure Snug 2 N.m true"),
        ("tighten screws to 12", "4: no figure Tighten 12 true"),
        ("measure gap to 0.2 mm", "4: no figure Measure 0.2 mm false"),
        ("measure gap expect 0.1", "4: figure 0.1"),
        (
            "measure gap expect 0.1 mm to 3 N.m",
            "4: figure 0.1 mm to 3 N.m",
        ),
        ("turn screws to 3 kg", "4: dimension 3 kg for Angle"),
    ] {
        assert_eq!(problems(&plan(&format!("{head}{step}\n"))), [said]);
    }
    for step in [
        "measure gap expect 3 kg",
        "set gap to at most 0.2 mm",
        "set gap to 1.2 N.m",
        "slacken screws to 1/2 turn",
        "heat lid to at least 90 C",
        "set gap to 0.1 to 0.2 mm",
    ] {
        good(&format!("{head}{step}\n"));
    }
}
