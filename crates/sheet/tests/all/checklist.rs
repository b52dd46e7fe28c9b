//! What the sheet says with each step.

use crate::bench::{entry, page, sheet};
use sheet::checklist::{Manner, Stage, Work};

const COVER: &str = "part case given\npart cover onto case\n";

/// The texts behind this leading word, each as one line.
fn said(text: &str, lead: &str) -> Vec<String> {
    let page = page(text);
    let mut texts: Vec<(String, String)> = Vec::new();
    for line in page.lines().filter(|line| line.starts_with("        ")) {
        let rest = &line[8..];
        match rest.strip_prefix("          ") {
            Some(more) => texts.last_mut().unwrap().1 += &format!(" {more}"),
            None => {
                let (word, text) = rest.split_at(10);
                texts.push((word.trim().to_owned(), text.to_owned()));
            }
        }
    }
    texts
        .into_iter()
        .filter(|(word, _)| word == lead)
        .map(|(_, text)| text)
        .collect()
}

#[test]
fn steps_have_one_number_and_one_name() {
    let sheet = sheet(
        "plan \"Pump\"\npart case \"Pump case\" given\npart cover \"Front cover\" onto case\n\
         stage \"Inside\"\nfit cover\nremove cover\nstage \"Again\"\nfit cover as closed\n",
    );
    let names: Vec<(usize, String)> = sheet
        .entries()
        .map(|e| (e.number, e.name.clone()))
        .collect();
    let wanted = [
        (1, "Fit Front cover"),
        (2, "Remove Front cover"),
        (3, "Fit Front cover"),
    ];
    assert_eq!(names, wanted.map(|(n, name)| (n, name.to_owned())));
    let titles: Vec<Option<&str>> = sheet.sections.iter().map(|s| s.title.as_deref()).collect();
    assert_eq!(titles, [Some("Inside"), Some("Again")]);
    assert_eq!(
        sheet.sections[1].entries[0].known_as.as_deref(),
        Some("closed")
    );
    assert_eq!(sheet.sections[1].entries[0].line, 8);
}

#[test]
fn a_stage_for_each_member_is_a_section_a_member() {
    let sheet = sheet(
        "series leg left, right\npart yoke given\npart tube-<leg> \"Tube\" onto yoke\n\
         stage \"Legs\" for each leg\nfit tube-<leg>\n",
    );
    let sections: Vec<(Option<&str>, &str)> = sheet
        .sections
        .iter()
        .map(|s| (s.member.as_deref(), s.entries[0].name.as_str()))
        .collect();
    assert_eq!(
        sections,
        [
            (Some("left"), "Fit Tube (left)"),
            (Some("right"), "Fit Tube (right)")
        ]
    );
}

#[test]
fn a_torque_comes_with_its_source_and_never_without_being_given() {
    let with = |torque: &str| {
        let text = format!(
            "{COVER}fasteners screws 4 x M6 hold cover {torque}\nfit cover\ntighten screws\n"
        );
        said(&text, "final").join(" ")
    };
    assert_eq!(
        with("torque 9 N.m from \"sheet 3\""),
        "9 N.m (80 lbf.in) (sheet 3)"
    );
    assert_eq!(
        with("torque 9 N.m then turn 60 deg from \"sheet 3\""),
        "9 N.m (80 lbf.in), then turn 60 deg (sheet 3)"
    );
    assert_eq!(with("torque 9 N.m"), "9 N.m (80 lbf.in) (no source given)");
    assert_eq!(
        with("passes 4 N.m, slacken, 9 N.m, mark, turn 90 deg from \"sheet 3\""),
        "[ ] 4 N.m (35 lbf.in), [ ] slacken off, [ ] 9 N.m (80 lbf.in), [ ] mark, [ ] turn 90 deg (sheet 3)"
    );
    assert_eq!(
        with("torque unknown"),
        "torque not known: ________, from ________________"
    );
    assert_eq!(
        with(""),
        "no torque in the plan: ________, from ________________"
    );
    assert_eq!(with("torque none"), "no torque: leave it where it is right");
}

#[test]
fn torques_are_shown_in_the_unit_of_the_plan_beside_that_of_their_source() {
    let text = format!(
        "plan \"P\"\n  torque in N.m\n{COVER}fasteners screws 4 x M6 hold cover torque 65 lbf.ft from \"sheet 1\"\n\
         fasteners plug 1 x plug M10 torque unknown\nfit cover\ntighten screws\ntighten plug\n"
    );
    assert_eq!(
        said(&text, "final"),
        [
            "88 N.m (65 lbf.ft) (sheet 1)",
            "torque not known: ________ N.m, from ________________"
        ]
    );
    let sheet = sheet(&text);
    let owed: Vec<(&str, usize)> = sheet
        .heading
        .torques_owed
        .iter()
        .map(|owed| (owed.thing.as_str(), owed.number))
        .collect();
    assert_eq!(owed, [("plug", 3)]);
}

#[test]
fn every_stage_of_tightness_is_told_from_final() {
    let text = format!(
        "{COVER}fasteners screws 4 x M6 hold cover torque 9 N.m from \"sheet 3\"\nfit cover\nstart screws\n\
         snug screws\ntighten screws trial\nslacken screws\ntighten screws\nundo screws for good\n"
    );
    let sheet = sheet(&text);
    let stages: Vec<Stage> = sheet
        .entries()
        .flat_map(|entry| &entry.fastenings)
        .map(|fastening| fastening.stage)
        .collect();
    use Stage::{Final, Out, Slack, Snug, Started, Trial};
    assert_eq!(stages, [Started, Snug, Trial, Slack, Final, Out]);
    assert_eq!(
        said(&text, "trial"),
        ["9 N.m (80 lbf.in) (sheet 3); will be undone again"]
    );
    assert_eq!(said(&text, "final").len(), 1);
    assert_eq!(
        said(&text, "started"),
        ["in by hand, a few threads; still free to move"]
    );
}

#[test]
fn clips_have_no_torque() {
    let text = format!("{COVER}fasteners clips 2 x clip hold cover\nfit cover\ntighten clips\n");
    let clips = &entry(&text, 2).fastenings[0];
    assert_eq!((clips.stage, &clips.torque), (Stage::In, &None));
    assert_eq!(clips.group.as_deref(), Some("2 x clip"));
}

#[test]
fn what_must_float_is_left_loose_until() {
    let text = "part block given\npart bracket onto block\npart belt \"Belt\" onto bracket\n\
                fasteners bolts \"Bracket bolts\" 2 x M8 hold bracket torque 22 N.m from \"sheet 5\"\n  \
                floats until belt is fitted because \"the belt pulls it true\"\n\
                fit bracket\nstart bolts\nfit belt\ntighten bolts\n";
    let loose = &entry(text, 2).leave_loose[0];
    assert_eq!(loose.name, "Bracket bolts");
    assert_eq!(loose.until, "Belt is fitted");
    assert_eq!(loose.because.as_deref(), Some("the belt pulls it true"));
    assert_eq!(loose.number, Some(4));
}

const CLOSING: &str = "part case given\npart gear \"Gear\" onto case\n\
     part cover \"Cover\" onto case covers gear\npoint play \"Backlash\" on gear\n  \
     must be measured before first-run\n";

#[test]
fn a_last_chance_says_whether_the_work_is_done() {
    let done = format!("{CLOSING}fit gear\nmeasure play\nfit cover\ndo \"Run\" as first-run\n");
    let chance = &entry(&done, 3).last_chances[0];
    assert_eq!(chance.thing, "Backlash");
    let measured = |number| {
        vec![Work {
            of: None,
            what: "measured",
            number,
        }]
    };
    assert_eq!((&chance.done, chance.missed.len()), (&measured(2), 0));
    assert!(page(&done).contains(
        "\nLAST CHANCE before step 3:\n    [ ] Backlash: measured at step 2\n[ ]  3  Fit Cover\n"
    ));

    let missed = format!("{CLOSING}fit gear\nfit cover\nmeasure play\ndo \"Run\" as first-run\n");
    let chance = &entry(&missed, 2).last_chances[0];
    assert_eq!((chance.done.len(), &chance.missed), (0, &measured(3)));
    assert!(page(&missed).contains("    [ ] Backlash: NOT DONE YET, to be measured at step 3\n"));
}

#[test]
fn errors_stand_at_their_step_and_at_the_head() {
    let text = format!("{CLOSING}fit gear\nfit cover\nmeasure play\ndo \"Run\" as first-run\n");
    let trouble = &entry(&text, 3).troubles[0];
    assert_eq!(trouble.rule, "shut-in");
    let page = page(&text);
    assert!(
        page.contains("NOT READY FOR THE BENCH: 1 error in this plan."),
        "{page}"
    );
    assert_eq!(page.matches("(shut-in)").count(), 1);
    assert!(page.contains("        ERROR     Backlash "), "{page}");
}

#[test]
fn supplies_items_and_tools_stand_with_the_step() {
    let text = format!(
        "{COVER}supply paste \"Sealing paste\" kind sealant close within 10 min cures in 24 h\n\
         supply oil \"Gear oil\" kind oil\nitem gasket \"Cover gasket\" at cover single-use size \"paper, 0.5 mm\"\n\
         item washers \"Copper washers\" at plug single-use count 2\nfasteners plug 1 x plug M10 torque none\n\
         point filler on case closed by plug holds oil 0.6 L\n\
         apply paste to cover\nfit cover new gasket with mallet, press\nfill filler with oil\n\
         tighten plug old washers because \"soft copper, annealed\"\n"
    );
    let paste = &entry(&text, 1).supplies[0];
    assert_eq!(
        (paste.name.as_str(), paste.close_within.as_deref()),
        ("Sealing paste", Some("10 min"))
    );
    assert_eq!(
        said(&text, "use"),
        [
            "Sealing paste, close within 10 min, cures in 24 h",
            "Gear oil, 0.6 L"
        ]
    );
    assert_eq!(said(&text, "new"), ["Cover gasket, paper, 0.5 mm"]);
    assert_eq!(said(&text, "tool"), ["mallet, press"]);
    assert_eq!(
        said(&text, "old"),
        ["Copper washers, used again on purpose (soft copper, annealed)"]
    );
    assert!(entry(&text, 3).tools.is_empty(), "a fluid is no tool");
}

#[test]
fn cautions_are_the_writers_and_those_of_every_hazard_once() {
    let text = "part case given\npart spring onto case hazard spring\n\
                fasteners cap 1 x plug M30 hold spring torque 20 N.m from \"sheet 1\"\n\
                fit spring hazard spring caution \"Mind the circlip\"\ntighten cap\nundo cap\nremove spring\n\
                heat case to 90 C hazard loose-dog\n";
    let fit = entry(text, 1).cautions;
    assert_eq!(fit.len(), 2, "{fit:?}");
    assert_eq!(
        (fit[0].says.as_str(), &fit[0].kind),
        ("Mind the circlip", &None)
    );
    assert!(fit[1].says.contains("spring is loaded"));
    assert!(entry(text, 2).cautions.is_empty());
    let undo = entry(text, 3).cautions;
    assert_eq!(
        undo[0].says, fit[1].says,
        "undoing is what lets the spring go"
    );
    assert_eq!((fit[1].first_at, undo[0].first_at), (None, Some(1)));
    assert_eq!(said(text, "CAUTION")[2], "spring, as at step 1");
    let heat = entry(text, 5).cautions;
    assert!(
        heat[0].says == "Beware: loose dog." && heat[1].says.starts_with("Heating"),
        "{heat:?}"
    );
}

#[test]
fn times_name_the_step_they_count_from() {
    let text = format!(
        "{COVER}supply paste \"Paste\" kind sealant\n\
         fasteners screws \"Cover screws\" 4 x M6 hold cover torque 9 N.m from \"sheet 3\"\n\
         apply paste to cover\nfit cover at most 10 min after paste is applied\ntighten screws takes 5 min\n\
         do \"Fill it\" at least 24 h after screws are tight\n"
    );
    assert_eq!(
        said(&text, "within"),
        ["10 min after Paste is applied (step 1)"]
    );
    assert_eq!(
        said(&text, "wait"),
        ["at least 24 h after Cover screws are tight (step 3)"]
    );
    assert_eq!(said(&text, "time"), ["about 5 min"]);
}

#[test]
fn what_must_be_so_is_said_where_it_is_asked() {
    let text = "position crank \"Crank\" of tdc, bdc\npart block given\npart wheel onto block needs crank at tdc\n\
                part pin \"Locking pin\" onto block temporary\n\
                fasteners bolt 1 x M14 hold wheel torque 90 N.m from \"sheet 3\"\n  \
                needs pin because \"nothing else stops it turning\"\n\
                turn crank to tdc\nfit wheel, pin\ntighten bolt\nslacken bolt\nundo bolt\ntighten bolt\nremove pin\n";
    assert_eq!(entry(text, 2).wanted[0].condition, "Crank is at tdc");
    let pin = &entry(text, 3).wanted[0];
    assert_eq!(pin.condition, "Locking pin is fitted");
    assert_eq!(
        pin.because.as_deref(),
        Some("nothing else stops it turning")
    );
    assert_eq!(entry(text, 4).wanted.len(), 1, "asked when broken loose");
    assert!(entry(text, 5).wanted.is_empty(), "not asked when wound out");
    assert_eq!(entry(text, 1).name, "Turn Crank to tdc");
    assert_eq!(
        said(text, "part"),
        ["Locking pin: temporary, out again at step 7"]
    );
}

#[test]
fn wants_of_one_reason_are_said_once() {
    let text = "part block given\npart spring-a onto block\npart spring-b onto block\n\
                fasteners bolt-a 1 x M8 needs spring-a because \"else it turns\" torque none\n\
                fasteners bolt-b 1 x M8 needs spring-b because \"else it turns\" torque none\n\
                fit spring-a, spring-b\ntighten bolt-a, bolt-b\n";
    assert_eq!(
        said(text, "check"),
        ["spring-a and spring-b are fitted (else it turns)"]
    );
    assert_eq!(
        said(text, "final"),
        ["no torque: leave it where it is right"],
        "alike, so once"
    );
}

#[test]
fn parts_say_which_way_round_and_whose_they_are() {
    let text = "part block given side left\npart rod onto block\npart cap onto rod matched with rod side left \
                mass 2 kg facing \"number to the front\"\npart rag onto block temporary count 4\n\
                fit rag\nfit rod\nfit cap\nremove rag\n";
    assert_eq!(
        said(text, "part"),
        [
            "temporary, out again at step 4: 4 of them, count them ________",
            "facing: number to the front; left side; belongs with rod; 2 kg",
            "temporary: 4 of them, count them ________",
        ]
    );
    let sheet = sheet(text);
    assert_eq!(
        (&sheet.temporaries[0].into, &sheet.temporaries[0].out),
        (&vec![1], &vec![4])
    );
    assert!(page(text).contains("[ ] 4 x rag: in at step 1, out at step 4\n"));
}

#[test]
fn a_helper_that_stays_in_is_shouted_about() {
    let text = "part block given\npart rag onto block temporary\nfit rag\n";
    assert!(page(text).contains("[ ] rag: in at step 1, NO STEP TAKES IT OUT\n"));
}

#[test]
fn readings_have_a_blank_each() {
    let text = "part block given\npoint gap \"Gap\" on block\npoint lift \"Lift\" on block\n\
                measure gap expect 0.1..0.3 mm\nmeasure gap, lift\nset gap to 0.2 mm\nmeasure gap expect unknown\n";
    assert_eq!(
        said(text, "reading"),
        [
            "________ mm, expect 0.1..0.3 mm",
            "Gap: ________",
            "Lift: ________",
            "________ mm",
            "________"
        ]
    );
}

#[test]
fn ways_of_doing_it_that_change_what_it_counts_for() {
    let text = "plan \"P\"\n  starts assembled\npart case\npart cover onto case\npart old-clip onto case\n\
                mark cover\nremove cover\nremove old-clip for good\ndry-fit cover\nremove cover\nfit cover to its mark\n";
    let manner = |number| entry(text, number).manner;
    assert_eq!(manner(3), [Manner::ForGood]);
    assert_eq!(manner(4), [Manner::DryFit]);
    assert_eq!(manner(6), [Manner::ToItsMark]);
    assert!(page(text).contains("from the assembled machine"));
}

#[test]
fn left_hand_threads_and_locks_are_told() {
    let text = "part spindle given\npart wheel onto spindle\nitem pin \"Split pin\" at nut single-use\n\
                fasteners nut 1 x nut M14 hold wheel left-hand torque 50 N.m from \"sheet 2\" \
                counterhold hex 17 mm locked by pin\n\
                fit wheel\ntighten nut\nlock nut new pin\nunlock nut\nundo nut for good\n";
    assert_eq!(
        said(text, "thread"),
        [
            "left-hand: anticlockwise to tighten",
            "left-hand: clockwise to undo"
        ]
    );
    assert_eq!(
        said(text, "lock"),
        [
            "with Split pin at step 3",
            "with Split pin",
            "free it of Split pin"
        ]
    );
    assert_eq!(
        said(text, "hold"),
        [
            "the other side with hex 17 mm",
            "the other side with hex 17 mm"
        ]
    );
}

#[test]
fn reasons_notes_remarks_and_signatures() {
    let text = "part case given\npart cover onto case\nfit cover \"Long side up\" note \"Mind the dowel\" takes unknown\n\
                sign \"Seen by a second person\" after cover is fitted because \"nobody sees it later\"\n";
    assert_eq!(said(text, "note"), ["Long side up", "Mind the dowel"]);
    assert_eq!(said(text, "signed"), ["________________, date ________"]);
    assert!(page(text).contains("why here  only when cover is fitted: nobody sees it later\n"));
    assert!(entry(text, 2).sign);
    assert_eq!(entry(text, 1).takes, None);
}

#[test]
fn what_is_spoilt_is_said() {
    let text = "part lever given\npart sleeve onto lever\npoint play \"Free play\" on lever\n\
                set play to 2..3 mm\nfit sleeve disturbs play\nset play to 2..3 mm\n";
    assert_eq!(
        said(text, "spoils"),
        ["this spoils Free play: to be done again"]
    );
}

#[test]
fn labels_cannot_drive_the_terminal() {
    let text = "part case \"\u{1b}[2JCase\" given\npart cover \"Cover \u{202e}revoc\" onto case\nfit cover\n";
    let page = page(text);
    assert!(!page.contains(['\u{1b}', '\u{202e}']), "{page:?}");
}

#[test]
fn an_empty_plan_has_an_empty_sheet() {
    let sheet = sheet("");
    assert_eq!((sheet.sections.len(), sheet.heading.steps), (0, 0));
    assert_eq!(sheet.heading.title, "pump.rebuild");
    assert!(page("").contains("0 steps from its parts"));
}

#[test]
fn the_size_of_several_groups_is_that_of_each() {
    let text = format!(
        "{COVER}fasteners left 2 x M12 hold cover torque 90 N.m from \"sheet 1\"\n\
         fasteners right 2 x M12 hold cover torque 90 N.m from \"sheet 1\"\n\
         fit cover\nfit left, right\ntighten left, right\n"
    );
    assert_eq!(said(&text, "size"), ["2 x M12, each", "2 x M12, each"]);
}

#[test]
fn each_reading_has_a_blank_of_its_own() {
    let text = "part case given\npoint gap on case\npoint play on case\n\
                measure gap, play expect 0.1..0.2 mm\n";
    assert_eq!(
        said(text, "reading"),
        [
            "gap: ________ mm, expect 0.1..0.2 mm",
            "play: ________ mm, expect 0.1..0.2 mm"
        ]
    );
}

#[test]
fn what_must_be_so_first_is_there_to_check() {
    let text = format!("{COVER}fit cover\ndo \"Run it\" after cover is fitted\n");
    assert_eq!(said(&text, "only when"), ["cover is fitted"]);
}

#[test]
fn what_has_no_thread_is_home_when_it_is_in() {
    let text = format!("{COVER}fasteners dowels 2 x dowel hold cover\nfit cover\nfit dowels\n");
    assert_eq!(said(&text, "in"), ["home"]);
    assert!(said(&text, "started").is_empty());
}

#[test]
fn a_lift_is_weighed_with_what_is_on_it() {
    let text = "plan \"Case\" starts assembled\npart bed given\npart body onto bed mass 20 kg\n\
                part head onto body pressed mass 15 kg\nremove body\n";
    assert_eq!(said(text, "part"), ["at least 35 kg with what is on it"]);
    let bare = text.replace("remove body", "remove head\nremove body");
    assert_eq!(said(&bare, "part"), ["15 kg", "20 kg"]);
}

#[test]
fn what_stays_loose_is_said_once_and_not_while_stripping() {
    let text = "plan \"Leg\" starts assembled\npart yoke given\npart leg onto yoke\n\
                fasteners pinch 1 x M8 hold leg torque 20 N.m from \"sheet 1\"\n  \
                floats until first-bounce is done\n\
                slacken pinch\nundo pinch\nremove leg\nfit leg\nstart pinch\n\
                do \"Bounce it\" as first-bounce\ntighten pinch\n";
    let loose: Vec<usize> = (1..=7)
        .filter(|number| !entry(text, *number).leave_loose.is_empty())
        .collect();
    assert_eq!(loose, [5]);
}

#[test]
fn a_dowel_is_in_and_not_tight() {
    let text = format!(
        "{COVER}fasteners dowels 2 x dowel hold cover\nfit cover\nfit dowels\n\
         do \"Run it\" after dowels are tight\nsign \"Seen running\"\n"
    );
    assert_eq!(said(&text, "only when"), ["dowels are in"]);
    assert_eq!(entry(&text, 4).name, "Signature: Seen running");
}
