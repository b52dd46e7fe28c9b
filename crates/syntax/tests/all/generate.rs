//! Random plans, each with what it says.
//!
//! A plan is drawn from a list of choices, so that a failing one shrinks with
//! its list. What a plan says is put together here from the meaning of the
//! language, never by reading.

mod details;
mod longer;
mod values;

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
        let mut on_first_line = true;
        if let Some(members) = self.members_of_series(&mut item) {
            details.push(members);
        }
        // Behind the name of a series, any word would be one of its members.
        let mut open = !details.is_empty() || !item.says.starts_with("Declaration(Series");
        for _ in 0..self.upto(6) {
            let (detail, own_line, ends_line) = self.detail();
            let wraps = own_line || !open || self.upto(2) == 0;
            if wraps {
                self.remark(&mut item, &mut details, on_first_line);
                on_first_line = false;
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
        self.remark(&mut item, &mut details, on_first_line);
        item.text += self.one_of(&["", "", " ", "\t", " # done", "#done"]);
        let quoted: Vec<String> = details
            .iter()
            .map(|detail| format!("\"{detail}\""))
            .collect();
        piece(item.text, format!("{} [{}]", item.says, quoted.join(", ")))
    }

    /// Perhaps a text at the end of a line. It is the remark of a step that has none, if it
    /// stands on the step's line; else a note.
    fn remark(&mut self, item: &mut Piece, details: &mut Vec<String>, on_first_line: bool) {
        let step = item.says.starts_with("Step(");
        if self.upto(8) != 0 || (details.is_empty() && !step) {
            return;
        }
        let words = self.quoted();
        item.text += &self.blank();
        item.text += &words;
        if on_first_line && step && item.says.ends_with("no words)") {
            item.says = item.says.replace("no words)", &format!("{words})"));
        } else {
            details.push(format!("{words}: Note({words})"));
        }
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
        let which = self.upto(details::COUNT);
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
