//! What stands behind keywords: names, conditions, figures.

use super::{Generator, Piece, piece};

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

impl Generator<'_> {
    /// Names shared by an `is`, names at a place, and bare names at the end, which nothing
    /// behind them takes along.
    pub fn condition(&mut self) -> Piece {
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

    pub fn needs(&mut self) -> Piece {
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
    pub fn states(&mut self) -> Piece {
        let states = self.list(|me| {
            let (word, state) = me.one_of(STATES);
            let spread = word.replace(' ', &me.blank());
            piece(spread, state)
        });
        piece(states.text, states.says.replace(", ", "|"))
    }

    pub fn tool(&mut self) -> Piece {
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

    pub fn quantity(&mut self) -> Piece {
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

    /// A quantity where it is read off, set or tightened to.
    pub fn amount(&mut self) -> Piece {
        let (text, says) = match self.upto(12) {
            0 => ("0.1 to 0.2 mm", "0.1to0.2mm, mm"),
            1 => ("0.1 mm to  0.2mm", "0.1mmto0.2mm, mm"),
            2 => ("at most 0.2 mm", "atmost0.2mm, mm"),
            3 => ("at least 3 N.m", "atleast3N.m, N.m"),
            4 => ("up  to 0.2 mm", "upto0.2mm, mm"),
            5 => ("max 22 N.m", "max22N.m, N.m"),
            6 => ("min 3", "min3"),
            _ => return self.quantity(),
        };
        piece(text, says)
    }

    pub fn members(&mut self) -> Piece {
        let (text, says) = self.one_of(&[
            ("1..6", "1 to 6"),
            ("1 .. 4", "1 to 4"),
            ("1, 6,2 and 5", "[1, 6, 2, 5]"),
            ("inlet, exhaust", "[inlet, exhaust]"),
            ("3", "[3]"),
        ]);
        piece(text, says)
    }

    pub fn quoted(&mut self) -> String {
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

    pub fn names(&mut self) -> Piece {
        self.list(Self::name)
    }

    pub fn name(&mut self) -> Piece {
        let name = self.one_of(&[
            "belt",
            "timing-cover",
            "bolt-2",
            "2nd-gear",
            "cap-<bore>",
            "cap-*",
            "*-nuts",
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
    pub fn thing_name(&mut self) -> Piece {
        let name = self.one_of(&[
            "belt",
            "timing-cover",
            "cap-*",
            "*-nuts",
            "first-run",
            "größe",
            "mark",
            "before",
            "valve-<bore>",
        ]);
        self.perhaps_the(name)
    }

    pub fn perhaps_the(&mut self, name: &str) -> Piece {
        match self.upto(5) {
            0 => piece(format!("the{}{name}", self.blank()), name),
            _ => piece(name, name),
        }
    }

    pub fn new_name(&mut self) -> String {
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
}
