//! Random plans, each with what it says.
//!
//! A plan is drawn from a list of choices, so that a failing one shrinks with
//! its list. What a plan says is put together here from the meaning of the
//! language, never by reading.

/// A piece of text and what it says in the form of `plain`.
#[derive(Clone, Default)]
pub struct Piece {
    pub text: String,
    pub says: String,
}

fn piece(text: impl Into<String>, says: impl Into<String>) -> Piece {
    Piece {
        text: text.into(),
        says: says.into(),
    }
}

/// A plan: its text, and one line for each item of it.
pub struct Plan {
    pub text: String,
    pub items: Vec<String>,
}

pub struct Generator<'c> {
    choices: std::slice::Iter<'c, u16>,
}

const STATES: &[(&str, &str)] = &[
    ("fitted", "Fitted"),
    ("installed", "Fitted"),
    ("in place", "Fitted"),
    ("on", "Fitted"),
    ("off", "Off"),
    ("removed", "Off"),
    ("out", "Out"),
    ("undone", "Out"),
    ("started", "Started"),
    ("slack", "Slack"),
    ("slackened", "Slack"),
    ("loose", "Slack"),
    ("snug", "Snug"),
    ("snugged", "Snug"),
    ("tight", "Tight"),
    ("tightened", "Tight"),
    ("locked", "Locked"),
    ("covered", "Covered"),
    ("bled", "Bled"),
    ("filled", "Filled"),
    ("drained", "Drained"),
    ("primed", "Primed"),
    ("measured", "Measured"),
    ("set", "Set"),
    ("marked", "Marked"),
    ("inspected", "Inspected"),
    ("cleaned", "Cleaned"),
    ("clean", "Cleaned"),
    ("heated", "Heated"),
    ("chilled", "Chilled"),
    ("turned", "Turned"),
    ("reached", "Reached"),
    ("signed", "Signed"),
    ("applied", "Applied"),
    ("cured", "Cured"),
    ("done", "Done"),
];

const VERBS: &[(&str, &str)] = &[
    ("fit", "Fit"),
    ("dry-fit", "DryFit"),
    ("dry fit", "DryFit"),
    ("start", "Start"),
    ("snug", "Snug"),
    ("tighten", "Tighten"),
    ("lock", "Lock"),
    ("unlock", "Unlock"),
    ("slacken", "Slacken"),
    ("undo", "Undo"),
    ("remove", "Remove"),
    ("apply", "Apply"),
    ("measure", "Measure"),
    ("set", "Set"),
    ("mark", "Mark"),
    ("bleed", "Bleed"),
    ("fill", "Fill"),
    ("drain", "Drain"),
    ("prime", "Prime"),
    ("inspect", "Inspect"),
    ("clean", "Clean"),
    ("heat", "Heat"),
    ("chill", "Chill"),
    ("turn", "Turn"),
    ("reach", "Reach"),
    ("sign", "Sign"),
];

const KINDS: &[(&str, &str)] = &[
    ("part", "Part"),
    ("unit", "Unit"),
    ("item", "Item"),
    ("fasteners", "Fasteners"),
    ("point", "Point"),
    ("position", "Position"),
    ("tool", "Tool"),
    ("supply", "Supply"),
    ("series", "Series"),
];

/// How many kinds of detail there are to draw from.
const DETAILS: usize = 82;

impl<'c> Generator<'c> {
    pub fn new(choices: &'c [u16]) -> Self {
        Generator {
            choices: choices.iter(),
        }
    }

    pub fn plan(&mut self) -> Plan {
        let mut plan = Plan {
            text: self.one_of(&["", "", "\u{feff}"]).to_owned(),
            items: Vec::new(),
        };
        let end_of_line = self.one_of(&["\n", "\n", "\r\n", "\r"]);
        for _ in 0..=self.upto(6) {
            for _ in 0..self.rarely() {
                plan.text +=
                    self.one_of(&["", " ", "# fit nothing \"here", "  # nor: here, ", "#"]);
                plan.text += end_of_line;
            }
            let item = self.item(end_of_line);
            plan.text += &item.text;
            plan.items.push(item.says);
            plan.text += end_of_line;
        }
        if self.upto(3) == 0 {
            plan.text.truncate(plan.text.len() - end_of_line.len());
        }
        plan
    }

    fn item(&mut self, end_of_line: &str) -> Piece {
        let head = self.head();
        let mut item = head;
        let mut details = Vec::new();
        if let Some(members) = self.members_of_series(&mut item) {
            details.push(members);
        }
        // Behind the name of a series, any word would be one of its members.
        let mut open = !details.is_empty() || !item.says.starts_with("Declaration(Series");
        for _ in 0..self.upto(6) {
            let (detail, own_line, ends_line) = self.detail();
            let wraps = own_line || !open || self.upto(2) == 0;
            if wraps {
                if self.upto(4) == 0 {
                    item.text += &self.blank();
                    item.text += "# aside: \"x";
                }
                item.text += end_of_line;
                for _ in 0..self.rarely() {
                    item.text += self.one_of(&["", "# at the margin", "\t# indented, about it"]);
                    item.text += end_of_line;
                }
                item.text += self.one_of(&["  ", " ", "\t", "      "]);
            } else {
                item.text += &self.blank();
            }
            item.text += &detail.text;
            details.push(detail.says);
            open = !ends_line;
        }
        item.text += self.one_of(&["", "", " ", "\t", " # done", "#done"]);
        let quoted: Vec<String> = details
            .iter()
            .map(|detail| format!("\"{detail}\""))
            .collect();
        piece(item.text, format!("{} [{}]", item.says, quoted.join(", ")))
    }

    fn head(&mut self) -> Piece {
        let b = self.blank();
        match self.upto(10) {
            0 => match self.upto(2) {
                0 => piece("plan", "Declaration(Plan, plan, no name, no label)"),
                _ => {
                    let label = self.quoted();
                    piece(
                        format!("plan{b}{label}"),
                        format!("Declaration(Plan, plan, no name, {label})"),
                    )
                }
            },
            1 => {
                let (word, kind) = self.one_of(&[("use", "Use"), ("stage", "Stage")]);
                let label = self.quoted();
                piece(
                    format!("{word}{b}{label}"),
                    format!("Declaration({kind}, {word}, no name, {label})"),
                )
            }
            2..=4 => {
                let (word, kind) = self.one_of(KINDS);
                let name = self.new_name();
                if self.upto(2) == 0 {
                    return piece(
                        format!("{word}{b}{name}"),
                        format!("Declaration({kind}, {word}, {name}, no label)"),
                    );
                }
                let label = self.quoted();
                piece(
                    format!("{word}{b}{name}{}{label}", self.blank()),
                    format!("Declaration({kind}, {word}, {name}, {label})"),
                )
            }
            5 => {
                let (word, verb) = self.one_of(&[("do", "Do"), ("sign", "Sign")]);
                let words = self.quoted();
                piece(
                    format!("{word}{b}{words}"),
                    format!("Step({verb}, {word}, [], {words})"),
                )
            }
            _ => {
                let (word, verb) = self.one_of(VERBS);
                let bare = word.replace(' ', "");
                let names = self.names();
                if self.upto(3) != 0 {
                    return piece(
                        format!("{word}{b}{}", names.text),
                        format!("Step({verb}, {bare}, [{}], no words)", names.says),
                    );
                }
                let words = self.quoted();
                piece(
                    format!("{word}{b}{}{}{words}", names.text, self.blank()),
                    format!("Step({verb}, {bare}, [{}], {words})", names.says),
                )
            }
        }
    }

    /// Members behind the head of a series, and what they say.
    fn members_of_series(&mut self, item: &mut Piece) -> Option<String> {
        if !item.says.starts_with("Declaration(Series") || self.upto(4) == 0 {
            return None;
        }
        let members = self.members();
        item.text += &self.blank();
        item.text += &members.text;
        let keyword = if members.says.contains(" to ") {
            members.says.replace(" to ", "..")
        } else {
            members
                .says
                .trim_start_matches('[')
                .split([',', ']'])
                .next()
                .unwrap()
                .to_owned()
        };
        Some(format!("{keyword}: Members({})", members.says))
    }

    /// A detail, whether it must begin a line, and whether nothing may follow it there. These are
    /// the details that would be read as part of their neighbour.
    fn detail(&mut self) -> (Piece, bool, bool) {
        let which = self.upto(DETAILS);
        let detail = self.detail_of(which);
        let own_line = ["atd: ", "at: ", "to", "inanyorder", "holds: Hold("]
            .iter()
            .any(|start| detail.says.starts_with(start))
            || detail.says.contains(": Group(");
        let ends_line = ["kind: ", "reach: ", "covers: ", "behind: "]
            .iter()
            .any(|start| detail.says.starts_with(start));
        let mut detail = detail;
        if self.upto(8) == 0 {
            let reason = self.quoted();
            detail.text += &format!("{}because{}{reason}", self.blank(), self.blank());
            detail.says += &format!(" because {reason}");
        }
        (detail, own_line, ends_line)
    }

    fn detail_of(&mut self, which: usize) -> Piece {
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
                let amount = self.quantity();
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
            80 => self.measured("expect", "Expect"),
            _ => {
                let (word, variant) = self.one_of(&[("caution", "Caution"), ("note", "Note")]);
                self.quoting(word, variant)
            }
        }
    }

    fn reach(&mut self) -> Piece {
        let side = self.one_of(&[None, Some("above"), Some("left-side")]);
        let with = self.maybe(|me| me.list(Self::tool));
        let clear_of = self.maybe(Self::names);
        let needs = self.needs();
        let mut ways = vec![format!("needs {}", needs.text)];
        ways.extend(
            with.iter()
                .map(|with| format!("with{}{}", self.blank(), with.text)),
        );
        ways.extend(
            clear_of
                .iter()
                .map(|names| format!("clear{}of {}", self.blank(), names.text)),
        );
        ways.extend(side.map(|side| format!("from {side}")));
        let turn = self.upto(ways.len());
        ways.rotate_left(turn);
        let said = |piece: Option<Piece>| piece.map(|piece| piece.says).unwrap_or_default();
        piece(
            format!("reach {}", ways.join(" ")),
            format!(
                "reach: Reach {{ from: {}, with: [{}], clear_of: [{}], needs: [{}] }}",
                side.map_or("None".to_owned(), |side| format!("Some({side})")),
                said(with),
                said(clear_of),
                needs.says
            ),
        )
    }

    fn group(&mut self) -> Piece {
        let count = self.one_of(&["1", "8", "16", "unknown"]);
        let times = self.one_of(&["x", "x", "×"]);
        let thread = self.one_of(&[
            "",
            "M6x1",
            "M14 x 1.5",
            "1/4-20 UNC",
            "#10-32 UNF",
            "G1/8",
            "2 BA",
            "3/8 BSW",
        ]);
        let sort = self.one_of(&["", "bolts", "pin", "clips", "stud"]);
        let (class, class_says) = self.one_of(&[
            ("", ""),
            (" class 8.8", "8.8"),
            (" grade 5", "5"),
            (" class A2-70", "A2-70"),
        ]);
        let what = match (thread, sort, self.upto(2)) {
            ("", "", _) => String::new(),
            ("", one, _) | (one, "", _) => format!(" {one}"),
            (thread, sort, 0) => format!(" {thread} {sort}"),
            (thread, sort, _) => format!(" {sort} {thread}"),
        };
        let (thread, sort) = (thread.replace(' ', ""), sort.to_owned());
        let mut said: Vec<String> = if what.trim_start().starts_with(&sort) && !sort.is_empty() {
            vec![sort, thread]
        } else {
            vec![thread, sort]
        };
        said.retain(|said| !said.is_empty());
        said.insert(0, count.to_owned());
        if !class_says.is_empty() {
            said.push(class_says.to_owned());
        }
        piece(
            format!("{count}{}{times}{what}{class}", self.blank()),
            format!("{count}{times}: Group({})", said.join(", ")),
        )
    }

    fn torque(&mut self) -> Piece {
        let torque = match self.upto(5) {
            0 => piece("none", "None(none)"),
            _ => {
                let amount = self.quantity();
                piece(amount.text, format!("Value({})", amount.says))
            }
        };
        let turn = self.one_of(&[("", "None"), (" then turn 60 deg", "Some(60deg, deg)")]);
        let source = self.maybe(|me| {
            let words = me.quoted();
            piece(format!(" from {words}"), format!("Some({words})"))
        });
        let source = source.unwrap_or(piece("", "None"));
        piece(
            format!("torque {}{}{}", torque.text, turn.0, source.text),
            format!(
                "torque: Torque {{ torque: {}, then_turn: {}, source: {} }}",
                torque.says, turn.1, source.says
            ),
        )
    }

    fn passes(&mut self) -> Piece {
        let passes = self.list(|me| match me.upto(5) {
            0 => piece("slacken", "Slacken(slacken)"),
            1 => piece("mark", "Mark(mark)"),
            2 => piece("turn  90 deg", "Turn(90deg, deg)"),
            _ => {
                let amount = me.quantity();
                piece(amount.text, format!("Torque({})", amount.says))
            }
        });
        let source = self.maybe(|me| {
            let words = me.quoted();
            piece(format!(" from {words}"), format!("Some({words})"))
        });
        let source = source.unwrap_or(piece("", "None"));
        piece(
            format!("passes {}{}", passes.text, source.text),
            format!(
                "passes: Passes {{ passes: [{}], source: {} }}",
                passes.says, source.says
            ),
        )
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

    /// Names shared by an `is`, names at a place, and bare names at the end, which nothing
    /// behind them takes along.
    fn condition(&mut self) -> Piece {
        let mut texts = Vec::new();
        let mut says = Vec::new();
        for _ in 0..self.upto(3) {
            if self.upto(4) == 0 {
                let name = self.thing_name();
                texts.push(format!("{}{}at tdc", name.text, self.blank()));
                says.push(format!("{} at tdc", name.says));
                continue;
            }
            let names = self.list(Self::thing_name);
            let states = self.states();
            let is = self.one_of(&["is", "are"]);
            texts.push(format!(
                "{}{}{is}{}{}",
                names.text,
                self.blank(),
                self.blank(),
                states.text
            ));
            says.push(format!(
                "{} {}",
                names.says.replace(", ", " "),
                states.says.replace('|', " ")
            ));
        }
        let bare = if texts.is_empty() {
            1 + self.upto(3)
        } else {
            self.upto(3)
        };
        for _ in 0..bare {
            let name = self.thing_name();
            texts.push(name.text);
            says.push(name.says);
        }
        piece(self.joined(&texts), says.join(", "))
    }

    fn needs(&mut self) -> Piece {
        self.list(|me| {
            let name = me.thing_name();
            match me.upto(4) {
                0 => {
                    let (word, state) = me.one_of(STATES);
                    piece(
                        format!("{} are {word}", name.text),
                        format!("{} {state}", name.says),
                    )
                }
                1 => piece(
                    format!("{}{}at tdc", name.text, me.blank()),
                    format!("{} at tdc", name.says),
                ),
                _ => name,
            }
        })
    }

    /// What each says is parted by a `|`.
    fn states(&mut self) -> Piece {
        let states = self.list(|me| {
            let (word, state) = me.one_of(STATES);
            let spread = word.replace(' ', &me.blank());
            piece(spread, state)
        });
        piece(states.text, states.says.replace(", ", "|"))
    }

    fn tool(&mut self) -> Piece {
        let name = self.name();
        let (size, says) = self.one_of(&[
            ("", ""),
            (" 11 mm", "11mm"),
            (" 5/8 in", "5/8in"),
            (" T30", "T30"),
            (" 13", "13"),
            (" 1 1/2 in", "11/2in"),
        ]);
        if size.is_empty() {
            return name;
        }
        piece(
            format!("{}{size}", name.text),
            format!("{} of {says}", name.says),
        )
    }

    fn quantity(&mut self) -> Piece {
        if self.upto(8) == 0 {
            return piece("unknown", "unknown");
        }
        let figure = self.one_of(&[
            "22",
            "0.12",
            ".005",
            "15/16",
            "1 1/2",
            "-40",
            "5..25",
            "0.05 .. 0.12",
            "22 +- 2",
            "22±0.5",
        ]);
        let (unit, tolerance) = match self.upto(6) {
            0 => ("", ""),
            1 => (self.one_of(&["N.m", "kg", "L"]), " +- 10 %"),
            _ => (
                self.one_of(&[
                    "N.m", "mm", "h", "min", "kg", "L", "deg", "in", "%", "lb-ft", "°C", "bar",
                    "ft lb",
                ]),
                "",
            ),
        };
        let tolerance = if figure.contains(['.', '+', '±']) && figure != "0.12" {
            ""
        } else {
            tolerance
        };
        let gap = self.one_of(&[" ", " ", ""]);
        let gap = if unit.is_empty() { "" } else { gap };
        let text = format!("{figure}{gap}{unit}{tolerance}");
        let bare = text.replace(' ', "");
        let says = if unit.is_empty() {
            bare
        } else {
            format!("{bare}, {}", unit.replace(' ', ""))
        };
        piece(text, says)
    }

    fn members(&mut self) -> Piece {
        let (text, says) = self.one_of(&[
            ("1..6", "1 to 6"),
            ("1 .. 4", "1 to 4"),
            ("1, 6,2 and 5", "[1, 6, 2, 5]"),
            ("inlet, exhaust", "[inlet, exhaust]"),
            ("3", "[3]"),
        ]);
        piece(text, says)
    }

    fn quoted(&mut self) -> String {
        self.one_of(&[
            "\"x\"",
            "\"\"",
            "\"a, b and c # d\"",
            "\"1/2\"\" socket  is fitted\"",
            "\"größer 🔧\"",
            "\"fit\"",
        ])
        .to_owned()
    }

    fn names(&mut self) -> Piece {
        self.list(Self::name)
    }

    fn name(&mut self) -> Piece {
        let name = self.one_of(&[
            "belt",
            "timing-cover",
            "bolt-2",
            "2nd-gear",
            "cap-<bore>",
            "cap-*",
            "valve-<bore>-*",
            "größe",
            "крышка",
            "カバー",
            "lock",
            "after",
            "to",
            "with",
            "set",
            "x",
            "e\u{301}crou",
            "in",
            "the-one",
            "unknown-part",
        ]);
        self.perhaps_the(name)
    }

    /// A name that is no state, where states and names stand side by side.
    fn thing_name(&mut self) -> Piece {
        let name = self.one_of(&[
            "belt",
            "timing-cover",
            "cap-*",
            "first-run",
            "größe",
            "mark",
            "before",
            "valve-<bore>",
        ]);
        self.perhaps_the(name)
    }

    fn perhaps_the(&mut self, name: &str) -> Piece {
        match self.upto(5) {
            0 => piece(format!("the{}{name}", self.blank()), name),
            _ => piece(name, name),
        }
    }

    fn new_name(&mut self) -> String {
        self.one_of(&[
            "belt",
            "timing-cover",
            "bolt-2",
            "2nd-gear",
            "cap-<bore>",
            "größe",
            "крышка",
            "part",
            "is-it",
            "e\u{301}crou",
        ])
        .to_owned()
    }

    fn list(&mut self, one: impl Fn(&mut Self) -> Piece) -> Piece {
        let count = 1 + [0, 0, 0, 1, 2][self.upto(5)];
        let all: Vec<Piece> = (0..count).map(|_| one(self)).collect();
        let texts: Vec<String> = all.iter().map(|one| one.text.clone()).collect();
        let says: Vec<&str> = all.iter().map(|one| one.says.as_str()).collect();
        piece(self.joined(&texts), says.join(", "))
    }

    fn joined(&mut self, texts: &[String]) -> String {
        let mut out = String::new();
        for (place, text) in texts.iter().enumerate() {
            if place > 0 {
                out += self.one_of(&[", ", ", ", ",", " and ", ", and ", " , ", "  and\t"]);
            }
            out += text;
        }
        out
    }

    fn maybe(&mut self, one: impl Fn(&mut Self) -> Piece) -> Option<Piece> {
        (self.upto(2) == 0).then(|| one(self))
    }

    /// Mostly nought.
    fn rarely(&mut self) -> usize {
        [0, 0, 0, 1, 2][self.upto(5)]
    }

    fn blank(&mut self) -> String {
        self.one_of(&[" ", " ", " ", " ", "  ", "\t", " \t ", "\u{a0}"])
            .to_owned()
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.upto(all.len())]
    }

    fn upto(&mut self, count: usize) -> usize {
        let choice = self.choices.next().copied().unwrap_or(0);
        usize::from(choice) % count
    }
}
