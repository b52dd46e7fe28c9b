//! One detail of each sort.

use super::{Generator, Piece, piece};

/// How many sorts of detail there are to draw from.
pub const COUNT: usize = 83;

impl Generator<'_> {
    pub fn detail_of(&mut self, which: usize) -> Piece {
        let b = self.blank();
        let bare = |word: &str| piece(word, format!("{}: ", word.replace(' ', "")));
        let flag =
            |word: &str, says: &str| piece(word, format!("{}: {says}", word.replace(' ', "")));
        match which {
            0 => self.worded("revision", "Revision", &["4", "4.1", "b", "2a", "2031-05"]),
            1 => self.quoting("machine", "Machine"),
            2 => flag("starts apart", "StartsApart"),
            3 => flag("starts assembled", "StartsAssembled"),
            4 => self.worded("torque in", "TorqueIn", &["N.m", "lb-ft", "kgf.m"]),
            5 => self.worded("length in", "LengthIn", &["mm", "in", "thou"]),
            6 => self.worded("people", "People", &["1", "2", "unknown"]),
            7 => {
                let by = self.quoted();
                let (digest, says) =
                    self.one_of(&[("", "None"), (" digest 9f3a-01b", "Some(9f3a-01b)")]);
                piece(
                    format!("reviewed by{b}{by} on 2031-05-02{digest}"),
                    format!("reviewedby: Reviewed {{ by: {by}, on: 2031-05-02, digest: {says} }}"),
                )
            }
            8 => flag("given", "Given"),
            9 => {
                let names = self.names();
                let (pressed, says) = self.one_of(&[("", "false"), (" pressed", "true")]);
                piece(
                    format!("onto{b}{}{pressed}", names.text),
                    format!("onto: Onto {{ names: [{}], pressed: {says} }}", names.says),
                )
            }
            10 | 11 => {
                let (word, variant) = [("covers", "Covers"), ("behind", "Behind")][which - 10];
                let names = self.names();
                let tool = self.maybe(Self::tool);
                let side = self.one_of(&[None, Some("front"), Some("left-side")]);
                let mut ways: Vec<String> = tool
                    .iter()
                    .map(|tool| format!("to{b}{}", tool.text))
                    .collect();
                ways.extend(side.map(|side| format!("from {side}")));
                // A size would go on into a side; the other way round nothing can.
                if self.upto(2) == 0 {
                    ways.reverse();
                }
                let ways: String = ways.iter().map(|way| format!(" {way}")).collect();
                let to = tool.map_or("None".to_owned(), |tool| format!("Some({})", tool.says));
                let from = side.map_or("None".to_owned(), |side| format!("Some({side})"));
                piece(
                    format!("{word}{b}{}{ways}", names.text),
                    format!(
                        "{word}: {variant} {{ names: [{}], to: {to}, from: {from} }}",
                        names.says
                    ),
                )
            }
            12 => {
                let needs = self.needs();
                piece(
                    format!("needs{b}{}", needs.text),
                    format!("needs: Needs([{}])", needs.says),
                )
            }
            13 => self.reach(),
            14 => self.worded(
                "material",
                "Material",
                &["aluminium", "cast-iron", "GG25", "unknown", "steel"],
            ),
            15 => self.measured("mass", "Mass"),
            16 => self.worded("side", "Side", &["left", "timing-side"]),
            17 => self.quoting("facing", "Facing"),
            18 => flag("single-use", "SingleUse"),
            19 => flag("temporary", "Temporary"),
            20 => self.worded("count", "Count", &["1", "16", "unknown"]),
            21 => self.naming("matched with", "MatchedWith"),
            22 => self.measured("takes", "Takes"),
            23 => self.wording("hazard", "Hazard"),
            24 => {
                let states = self.states();
                let when = self.one_of(&[("before", "Before"), ("after", "After")]);
                let condition = self.condition();
                piece(
                    format!("must{b}be {} {}{b}{}", states.text, when.0, condition.text),
                    format!(
                        "mustbe: MustBe {{ states: [{}], when: {}, condition: [{}] }}",
                        states.says.replace('|', ", "),
                        when.1,
                        condition.says
                    ),
                )
            }
            25 => self.naming("of", "Of"),
            26 => self.naming("at", "At"),
            27 => self.worded(
                "size",
                "Size",
                &[
                    "16x22",
                    "40x2.5",
                    "M8",
                    "B40",
                    "\"the thick one\"",
                    "1/2",
                    "#10-32",
                ],
            ),
            28..=31 => self.group(),
            32 => self.naming("hold", "Hold"),
            33 => self.naming("holds", "Hold"),
            34 => {
                let material = self.one_of(&["aluminium", "cast-iron", "GG25"]);
                match self.maybe(Self::quantity) {
                    Some(depth) => piece(
                        format!("into{b}{material}{b}{}", depth.text),
                        format!(
                            "into: Into {{ material: {material}, depth: Some({}) }}",
                            depth.says
                        ),
                    ),
                    None => piece(
                        format!("into{b}{material}"),
                        format!("into: Into {{ material: {material}, depth: None }}"),
                    ),
                }
            }
            35 => {
                let kind = self.one_of(&["hex", "torx", "slot"]);
                let (size, size_says) = self.one_of(&[
                    ("", "None"),
                    (" 13 mm", "Some(13mm)"),
                    (" T30", "Some(T30)"),
                    (" 5/8 in", "Some(5/8in)"),
                ]);
                let (series, series_says) = self.one_of(&[
                    ("", "None"),
                    (" series iso", "Some(iso)"),
                    (" series din", "Some(din)"),
                ]);
                piece(
                    format!("drive{b}{kind}{size}{series}"),
                    format!(
                        "drive: Drive {{ kind: {kind}, size: {size_says}, series: {series_says} }}"
                    ),
                )
            }
            36 => {
                let tool = self.tool();
                piece(
                    format!("counterhold{b}{}", tool.text),
                    format!("counterhold: Counterhold(ToolOrPart({}))", tool.says),
                )
            }
            37..=40 => self.torque(),
            41..=43 => self.passes(),
            44 => {
                let (order, says) = self.one_of(&[
                    ("cross", "[cross]"),
                    ("1, 3,2", "[1, 3, 2]"),
                    ("1 3 2 4", "[1, 3, 2, 4]"),
                    ("spiral-out", "[spiral-out]"),
                ]);
                let (layout, layout_says) = self.one_of(&[
                    ("", "None"),
                    (" in ring", "Some(inring)"),
                    (" in two rows", "Some(intworows)"),
                    (" in line", "Some(inline)"),
                ]);
                piece(
                    format!("pattern{b}{order}{layout}"),
                    format!("pattern: Pattern {{ order: {says}, layout: {layout_says} }}"),
                )
            }
            45 => self.conditional("floats until", "FloatsUntil"),
            46 => {
                let words = self.quoted();
                let name = self.name();
                piece(
                    format!("locked by{b}{}, {words}", name.text),
                    format!("lockedby: LockedBy([Name({}), Words({words})])", name.says),
                )
            }
            47 => flag("frees when slack", "FreesWhenSlack"),
            48 => self.naming("moves with", "MovesWith"),
            49 => flag("left-hand", "LeftHand"),
            50 => {
                let name = self.name();
                piece(
                    format!("lubricated with{b}{}", name.text),
                    format!("lubricatedwith: LubricatedWith(Name({}))", name.says),
                )
            }
            51 => {
                let words = self.quoted();
                piece(
                    format!("lubricated with{b}{words}"),
                    format!("lubricatedwith: LubricatedWith(Words({words}))"),
                )
            }
            52 => self.naming("on", "On"),
            53 => self.naming("closed by", "ClosedBy"),
            54 => {
                let name = self.name();
                let amount = self.quantity();
                piece(
                    format!("holds{b}{}{b}{}", name.text, amount.text),
                    format!(
                        "holds: Holds {{ fluid: Name({}), amount: Some({}) }}",
                        name.says, amount.says
                    ),
                )
            }
            55 => {
                let words = self.quoted();
                piece(
                    format!("holds{b}{words}"),
                    format!("holds: Holds {{ fluid: Words({words}), amount: None }}"),
                )
            }
            56 => self.measured("service every", "ServiceEvery"),
            57 => {
                let (words, says) = self.one_of(&[
                    ("sealant", "[sealant]"),
                    ("threadlocker  medium", "[threadlocker, medium]"),
                ]);
                piece(format!("kind{b}{words}"), format!("kind: Kind({says})"))
            }
            58 => self.measured("range", "Range"),
            59 => self.measured("full-scale", "FullScale"),
            60 => self.measured("length", "Length"),
            61 => self.measured("accuracy", "Accuracy"),
            62 => flag("have", "Have"),
            63 => self.measured("close within", "CloseWithin"),
            64 => self.measured("fixes in", "FixesIn"),
            65 => self.measured("cures in", "CuresIn"),
            66 => self.measured("good to", "GoodTo"),
            67 => self.wording("not on", "NotOn"),
            68 => {
                let name = self.new_name();
                piece(format!("as{b}{name}"), format!("as: As({name})"))
            }
            69 => flag("in any order", "InAnyOrder"),
            70 => {
                let name = self.name();
                let name = piece(name.says.clone(), name.says);
                match self.maybe(Self::members) {
                    Some(members) => piece(
                        format!("for each{b}{} in {}", name.text, members.text),
                        format!("foreach: ForEach({} in {})", name.says, members.says),
                    ),
                    None => piece(
                        format!("for each{b}{}", name.text),
                        format!("foreach: ForEach({})", name.says),
                    ),
                }
            }
            71 => self.one_of_pieces(&[
                ("together", "Together"),
                ("trial", "Trial"),
                ("for good", "ForGood"),
                ("to its mark", "ToItsMark"),
            ]),
            72 => self.conditional("after", "After"),
            73 => self.conditional("before", "Before"),
            74 => {
                let tools = self.list(Self::tool);
                piece(
                    format!("with{b}{}", tools.text),
                    format!("with: With([{}])", tools.says),
                )
            }
            75 => {
                let (word, variant) = self.one_of(&[
                    ("use", "Use"),
                    ("new", "New"),
                    ("old", "Old"),
                    ("spends", "Spends"),
                    ("disturbs", "Disturbs"),
                ]);
                self.naming(word, variant)
            }
            76 => {
                let amount = self.amount();
                piece(
                    format!("to{b}{}", amount.text),
                    format!("to: To(Quantity({}))", amount.says),
                )
            }
            77 => {
                let names = self.names();
                piece(
                    format!("to{b}top, {}", names.text),
                    format!("to: To(Names([top, {}]))", names.says),
                )
            }
            78 => {
                let words = self.quoted();
                piece(format!("to{b}{words}"), format!("to: To(Words({words}))"))
            }
            79 => {
                let (word, variant) =
                    self.one_of(&[("at least", "AtLeast"), ("at most", "AtMost")]);
                let time = self.quantity();
                let condition = self.condition();
                piece(
                    format!("{word}{b}{}{b}after {}", time.text, condition.text),
                    format!(
                        "{}{variant} {{ time: {}, after: [{}] }}",
                        bare(word).says,
                        time.says,
                        condition.says
                    ),
                )
            }
            80 => {
                let amount = self.amount();
                piece(
                    format!("expect{b}{}", amount.text),
                    format!("expect: Expect({})", amount.says),
                )
            }
            81 => {
                let names = self.names();
                piece(
                    format!("travels{b}with {}", names.text),
                    format!(
                        "travelswith: Onto {{ names: [{}], pressed: true }}",
                        names.says
                    ),
                )
            }
            _ => {
                let (word, variant) = self.one_of(&[("caution", "Caution"), ("note", "Note")]);
                self.quoting(word, variant)
            }
        }
    }

    fn naming(&mut self, word: &str, variant: &str) -> Piece {
        let names = self.names();
        self.with_keyword(word, &names.text, format!("{variant}([{}])", names.says))
    }

    fn conditional(&mut self, word: &str, variant: &str) -> Piece {
        let condition = self.condition();
        self.with_keyword(
            word,
            &condition.text,
            format!("{variant}([{}])", condition.says),
        )
    }

    fn measured(&mut self, word: &str, variant: &str) -> Piece {
        let amount = self.quantity();
        self.with_keyword(word, &amount.text, format!("{variant}({})", amount.says))
    }

    fn quoting(&mut self, word: &str, variant: &str) -> Piece {
        let words = self.quoted();
        self.with_keyword(word, &words.clone(), format!("{variant}({words})"))
    }

    fn worded(&mut self, word: &str, variant: &str, values: &[&'static str]) -> Piece {
        let value = self.one_of(values);
        self.with_keyword(word, value, format!("{variant}({value})"))
    }

    fn wording(&mut self, word: &str, variant: &str) -> Piece {
        let words = self.list(|me| {
            let word = me.one_of(&["steel", "hot-coolant", "PTFE", "brass"]);
            piece(word, word)
        });
        self.with_keyword(word, &words.text, format!("{variant}([{}])", words.says))
    }

    fn with_keyword(&mut self, word: &str, rest: &str, says: String) -> Piece {
        let spread: Vec<&str> = word.split(' ').collect();
        let keyword = spread.join(&self.blank());
        piece(
            format!("{keyword}{}{rest}", self.blank()),
            format!("{}: {says}", spread.concat()),
        )
    }

    fn one_of_pieces(&mut self, all: &[(&'static str, &'static str)]) -> Piece {
        let (word, says) = self.one_of(all);
        piece(word, format!("{}: {says}", word.replace(' ', "")))
    }
}
