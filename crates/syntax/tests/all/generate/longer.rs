//! The details with the most to them.

use super::{Generator, Piece, piece};

impl Generator<'_> {
    pub fn reach(&mut self) -> Piece {
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

    pub fn group(&mut self) -> Piece {
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
        let sort = self.one_of(&[
            "",
            "bolts",
            "pin",
            "clips",
            "stud",
            "grub-screws",
            "circlip",
        ]);
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

    pub fn torque(&mut self) -> Piece {
        let torque = match self.upto(5) {
            0 => piece("none", "None(none)"),
            1 => {
                let words = self.quoted();
                piece(words.clone(), format!("Words({words})"))
            }
            _ => {
                let amount = self.amount();
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

    pub fn passes(&mut self) -> Piece {
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
}
