//! The table of details.

use super::{DetailWord, Place};
use crate::tree::Kind;

const PLAN: Place = Place::Declaration(Kind::Plan);
const PART: Place = Place::Declaration(Kind::Part);
const UNIT: Place = Place::Declaration(Kind::Unit);
const ITEM: Place = Place::Declaration(Kind::Item);
const FASTENERS: Place = Place::Declaration(Kind::Fasteners);
const POINT: Place = Place::Declaration(Kind::Point);
const POSITION: Place = Place::Declaration(Kind::Position);
const TOOL: Place = Place::Declaration(Kind::Tool);
const SUPPLY: Place = Place::Declaration(Kind::Supply);
const USE: Place = Place::Declaration(Kind::Use);
const STAGE: Place = Place::Declaration(Kind::Stage);
const STEP: Place = Place::Step;

/// Parts, and units of parts.
const BUILT: &[Place] = &[PART, UNIT];
/// Whatever a rule can be stated of.
const THINGS: &[Place] = &[PART, UNIT, ITEM, FASTENERS, POINT, POSITION, TOOL, SUPPLY];

const fn word(word: &'static str, places: &'static [Place], sample: &'static str) -> DetailWord {
    DetailWord {
        word,
        places,
        sample,
    }
}

/// Every detail: plan, things in place, fasteners,
/// points, tools and supplies, stages, steps.
pub const DETAILS: &[DetailWord] = &[
    word("revision", &[PLAN], "revision 4"),
    word("machine", &[PLAN], "machine \"Two-cylinder boat engine\""),
    word("starts apart", &[PLAN], "starts apart"),
    word("starts assembled", &[PLAN], "starts assembled"),
    word("torque in", &[PLAN], "torque in N.m"),
    word("length in", &[PLAN], "length in mm"),
    word("people", &[PLAN], "people 1"),
    word(
        "reviewed by",
        &[PLAN],
        "reviewed by \"Second fitter\" on 2031-05-02",
    ),
    word("given", &[PART, UNIT, FASTENERS, POINT], "given"),
    word("onto", BUILT, "onto block"),
    word("travels with", BUILT, "travels with shaft"),
    word("covers", BUILT, "covers gears from front"),
    word(
        "behind",
        &[PART, UNIT, FASTENERS, POINT],
        "behind belt to socket 11 mm",
    ),
    word(
        "needs",
        &[PART, UNIT, FASTENERS, POINT],
        "needs crank at tdc",
    ),
    word(
        "reach",
        &[PART, UNIT, FASTENERS, POINT],
        "reach from above with socket 11 mm clear of bracket",
    ),
    word("material", BUILT, "material aluminium"),
    word("mass", BUILT, "mass 11 kg"),
    word("side", BUILT, "side left"),
    word("facing", BUILT, "facing \"arrow to the front\""),
    word("single-use", &[PART, UNIT, ITEM, FASTENERS], "single-use"),
    word("temporary", BUILT, "temporary"),
    word("count", &[PART, UNIT, ITEM, TOOL, SUPPLY], "count 2"),
    word("matched with", BUILT, "matched with rod"),
    word("takes", &[PART, UNIT, STEP], "takes 15 min"),
    word("hazard", &[PART, UNIT, STEP], "hazard rotating-parts"),
    word(
        "must be",
        THINGS,
        "must be measured before gears are covered",
    ),
    word("of", &[UNIT, POSITION], "of block, crank"),
    word("at", &[ITEM], "at drain-plug"),
    word("size", &[ITEM], "size 16 x 22 x 1.5 mm"),
    word("x", &[FASTENERS], "8 x M6x1 class 8.8"),
    word("hold", &[FASTENERS], "hold cover"),
    word("into", &[FASTENERS], "into aluminium 12 mm"),
    word("drive", &[FASTENERS], "drive hex 13 mm"),
    word("counterhold", &[FASTENERS], "counterhold spanner 17 mm"),
    word("torque", &[FASTENERS], "torque 22 N.m from \"sheet 5\""),
    word(
        "passes",
        &[FASTENERS],
        "passes 4 N.m, 8 N.m from \"sheet 3\"",
    ),
    word("pattern", &[FASTENERS], "pattern cross"),
    word("floats until", &[FASTENERS], "floats until belt is fitted"),
    word("locked by", &[FASTENERS], "locked by split-pins"),
    word("frees when slack", &[FASTENERS], "frees when slack"),
    word("moves with", &[FASTENERS], "moves with bracket"),
    word("left-hand", &[FASTENERS], "left-hand"),
    word("lubricated with", &[FASTENERS], "lubricated with oil"),
    word("on", &[POINT], "on block"),
    word("closed by", &[POINT], "closed by drain-plug"),
    word("holds", &[POINT], "holds coolant 4.5 L"),
    word("service every", &[POINT], "service every 500 h"),
    word("kind", &[TOOL, SUPPLY], "kind torque-wrench"),
    word("range", &[TOOL], "range 5..25 N.m"),
    word("full-scale", &[TOOL], "full-scale 110 N.m"),
    word("length", &[TOOL], "length 250 mm"),
    word("accuracy", &[TOOL], "accuracy 4 %"),
    word("have", &[TOOL, SUPPLY], "have"),
    word("close within", &[SUPPLY], "close within 10 min"),
    word("fixes in", &[SUPPLY], "fixes in 10 min"),
    word("cures in", &[SUPPLY], "cures in 24 h"),
    word("good to", &[SUPPLY], "good to 150 C"),
    word("not on", &[SUPPLY], "not on brass"),
    word("as", &[USE, STEP], "as first-run"),
    word("in any order", &[STAGE], "in any order"),
    word("for each", &[STAGE], "for each bore in 1, 6, 2"),
    word("together", &[STEP], "together"),
    word("after", &[STEP], "after belt is fitted"),
    word("before", &[STEP], "before gears are covered"),
    word("with", &[STEP], "with socket 11 mm"),
    word("use", &[STEP], "use threadlock"),
    word("new", &[STEP], "new washer"),
    word("old", &[STEP], "old washer"),
    word("spends", &[STEP], "spends washer"),
    word("trial", &[STEP], "trial"),
    word("for good", &[STEP], "for good"),
    word("to its mark", &[STEP], "to its mark"),
    word("to", &[STEP], "to 0.10..0.15 mm"),
    word("disturbs", &[STEP], "disturbs cover"),
    word(
        "at least",
        &[STEP],
        "at least 24 h after sealant is applied",
    ),
    word(
        "at most",
        &[STEP],
        "at most 10 min after sealant is applied",
    ),
    word("expect", &[STEP], "expect 0.05..0.12 mm"),
    word("caution", &[STEP], "caution \"hot parts\""),
    word("note", &[STEP], "note \"long lug to the front\""),
];
