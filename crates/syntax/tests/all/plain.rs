//! A tree in a form that two texts share when they say the same: places are
//! replaced by what stands there, without the blanks outside quotes.

use syntax::tree::*;

/// One line an item.
pub fn items(tree: &Tree) -> Vec<String> {
    tree.items
        .iter()
        .map(|item| self::item(tree, item))
        .collect()
}

/// One item and its details.
pub fn item(tree: &Tree, item: &Item) -> String {
    format!("{} [{}]", Plain(tree).head(&item.head), {
        let quoted = details(tree, item)
            .into_iter()
            .map(|detail| format!("\"{detail}\""));
        quoted.collect::<Vec<_>>().join(", ")
    })
}

/// The details of an item.
pub fn details(tree: &Tree, item: &Item) -> Vec<String> {
    item.details
        .iter()
        .map(|detail| self::detail(tree, detail))
        .collect()
}

/// One detail: its keyword, what it says, and why.
pub fn detail(tree: &Tree, detail: &Detail) -> String {
    let plain = Plain(tree);
    let because = detail
        .because
        .map(|quoted| format!(" because {}", plain.at(quoted.span)));
    format!(
        "{}: {}{}",
        plain.at(detail.keyword),
        plain.says(&detail.says),
        because.unwrap_or_default()
    )
}

struct Plain<'t>(&'t Tree);

impl Plain<'_> {
    fn at(&self, span: Span) -> String {
        let mut quoted = false;
        let keep = |c: &char| {
            quoted ^= *c == '"';
            quoted || !matches!(*c, ' ' | '\t' | '\u{a0}')
        };
        self.0.text[span.range()].chars().filter(keep).collect()
    }

    fn list<T>(&self, all: &[T], one: impl Fn(&T) -> String) -> String {
        format!("[{}]", all.iter().map(one).collect::<Vec<_>>().join(", "))
    }

    fn option<T>(&self, one: &Option<T>, say: impl Fn(&T) -> String) -> String {
        one.as_ref()
            .map_or("None".to_owned(), |one| format!("Some({})", say(one)))
    }

    fn names(&self, names: &[Name]) -> String {
        self.list(names, |name| self.at(name.span))
    }

    fn words(&self, words: &[Word]) -> String {
        self.list(words, |word| self.at(word.span))
    }

    fn word(&self, word: &Option<Word>) -> String {
        self.option(word, |word| self.at(word.span))
    }

    fn quantity(&self, quantity: &Quantity) -> String {
        assert!(quantity.unknown || self.at(quantity.span) != "unknown");
        match quantity.unit {
            Some(unit) => format!("{}, {}", self.at(quantity.span), self.at(unit)),
            None => self.at(quantity.span),
        }
    }

    fn tool(&self, tool: &ToolRef) -> String {
        let name = self.at(tool.name.span);
        match tool.size {
            Some(size) => {
                let all = self.at(tool.span);
                assert!(all.starts_with(&name) && all.ends_with(&self.at(size)));
                format!("{name} of {}", self.at(size))
            }
            None => name,
        }
    }

    fn state(&self, state: &StateRef) -> String {
        match state.what {
            StateWord::State(state) => format!("{state:?}"),
            StateWord::At(place) => format!("at {}", self.at(place.span)),
        }
    }

    fn need(&self, need: &Need) -> String {
        let name = self.at(need.name.span);
        need.state.as_ref().map_or(name.clone(), |state| {
            format!("{name} {}", self.state(state))
        })
    }

    fn condition(&self, condition: &Condition) -> String {
        let within =
            |inner: Span, outer: Span| outer.start <= inner.start && inner.end <= outer.end;
        self.list(&condition.clauses, |clause| {
            assert!(within(clause.span, condition.span));
            assert!(
                clause
                    .names
                    .iter()
                    .all(|name| within(name.span, clause.span))
            );
            assert!(
                clause
                    .states
                    .iter()
                    .all(|state| within(state.span, clause.span))
            );
            let names = clause.names.iter().map(|name| self.at(name.span));
            let states = clause.states.iter().map(|state| self.state(state));
            names.chain(states).collect::<Vec<_>>().join(" ")
        })
    }

    fn members(&self, members: &Members) -> String {
        match members {
            Members::Range(first, last) => {
                format!("{} to {}", self.at(first.span), self.at(last.span))
            }
            Members::List(list) => self.words(list),
        }
    }

    fn name_or_words(&self, either: &NameOrWords) -> String {
        match either {
            NameOrWords::Name(name) => format!("Name({})", self.at(name.span)),
            NameOrWords::Words(words) => format!("Words({})", self.at(words.span)),
        }
    }

    fn head(&self, head: &Head) -> String {
        match head {
            Head::Declaration {
                kind,
                keyword,
                name,
                label,
            } => format!(
                "Declaration({kind:?}, {}, {}, {})",
                self.at(*keyword),
                name.map_or("no name".to_owned(), |name| self.at(name.span)),
                label.map_or("no label".to_owned(), |label| self.at(label.span)),
            ),
            Head::Step {
                verb,
                keyword,
                targets,
                words,
            } => format!(
                "Step({verb:?}, {}, {}, {})",
                self.at(*keyword),
                self.names(targets),
                words.map_or("no words".to_owned(), |words| self.at(words.span)),
            ),
            Head::Unreadable {
                kind,
                verb,
                name,
                mentions,
            } => format!(
                "Unreadable({kind:?}, {verb:?}, {}, {})",
                name.map_or("no name".to_owned(), |name| self.at(name.span)),
                self.names(mentions),
            ),
        }
    }

    fn way(&self, names: &[Name], to: &Option<ToolRef>, from: &Option<Word>) -> String {
        let names = self.names(names);
        let to = self.option(to, |tool| self.tool(tool));
        format!("{{ names: {names}, to: {to}, from: {} }}", self.word(from))
    }

    fn says(&self, says: &Says) -> String {
        let named = |variant: &str, names: &[Name]| format!("{variant}({})", self.names(names));
        let amount = |variant: &str, one: &Quantity| format!("{variant}({})", self.quantity(one));
        let text = |variant: &str, span: Span| format!("{variant}({})", self.at(span));
        match says {
            Says::Revision(word) => text("Revision", word.span),
            Says::Machine(quoted) => text("Machine", quoted.span),
            Says::StartsApart => "StartsApart".to_owned(),
            Says::StartsAssembled => "StartsAssembled".to_owned(),
            Says::TorqueIn(word) => text("TorqueIn", word.span),
            Says::LengthIn(word) => text("LengthIn", word.span),
            Says::People(word) => text("People", word.span),
            Says::Reviewed { by, on, digest } => format!(
                "Reviewed {{ by: {}, on: {}, digest: {} }}",
                self.at(by.span),
                self.at(on.span),
                self.word(digest)
            ),
            Says::Given => "Given".to_owned(),
            Says::Onto { names, pressed } => {
                format!(
                    "Onto {{ names: {}, pressed: {pressed} }}",
                    self.names(names)
                )
            }
            Says::Covers { names, to, from } => format!("Covers {}", self.way(names, to, from)),
            Says::Behind { names, to, from } => format!("Behind {}", self.way(names, to, from)),
            Says::Needs(needs) => format!("Needs({})", self.list(needs, |need| self.need(need))),
            Says::Reach {
                from,
                with,
                clear_of,
                needs,
            } => format!(
                "Reach {{ from: {}, with: {}, clear_of: {}, needs: {} }}",
                self.word(from),
                self.list(with, |tool| self.tool(tool)),
                self.names(clear_of),
                self.list(needs, |need| self.need(need))
            ),
            Says::Material(word) => text("Material", word.span),
            Says::Mass(mass) => amount("Mass", mass),
            Says::Side(word) => text("Side", word.span),
            Says::Facing(quoted) => text("Facing", quoted.span),
            Says::SingleUse => "SingleUse".to_owned(),
            Says::Temporary => "Temporary".to_owned(),
            Says::Count(word) => text("Count", word.span),
            Says::MatchedWith(names) => named("MatchedWith", names),
            Says::Takes(time) => amount("Takes", time),
            Says::Hazard(words) => format!("Hazard({})", self.words(words)),
            Says::MustBe {
                states,
                when,
                condition,
            } => format!(
                "MustBe {{ states: {}, when: {when:?}, condition: {} }}",
                self.list(states, |state| self.state(state)),
                self.condition(condition)
            ),
            Says::Of(names) => named("Of", names),
            Says::At(names) => named("At", names),
            Says::Size(span) => text("Size", *span),
            Says::Group(GroupSize {
                count,
                thread,
                sort,
                class,
            }) => {
                let mut said: Vec<Span> = [thread, sort]
                    .into_iter()
                    .flatten()
                    .map(|word| word.span)
                    .collect();
                said.sort();
                said.insert(0, count.span);
                said.extend(class.map(|word| word.span));
                let said: Vec<String> = said.into_iter().map(|span| self.at(span)).collect();
                format!("Group({})", said.join(", "))
            }
            Says::Hold(names) => named("Hold", names),
            Says::Into { material, depth } => format!(
                "Into {{ material: {}, depth: {} }}",
                self.at(material.span),
                self.option(depth, |depth| self.quantity(depth))
            ),
            Says::Drive { kind, size, series } => format!(
                "Drive {{ kind: {}, size: {}, series: {} }}",
                self.at(kind.span),
                self.option(size, |size| self.at(*size)),
                self.word(series)
            ),
            Says::Counterhold(Counterhold::ToolOrPart(tool)) => {
                format!("Counterhold(ToolOrPart({}))", self.tool(tool))
            }
            Says::Torque {
                torque,
                then_turn,
                source,
            } => format!(
                "Torque {{ torque: {}, then_turn: {}, source: {} }}",
                match torque {
                    Torque::Value(value) => amount("Value", value),
                    Torque::None(span) => text("None", *span),
                    Torque::Words(words) => text("Words", words.span),
                },
                self.option(then_turn, |turn| self.quantity(turn)),
                self.option(source, |source| self.at(source.span))
            ),
            Says::Passes { passes, source } => format!(
                "Passes {{ passes: {}, source: {} }}",
                self.list(passes, |pass| match pass {
                    Pass::Torque(torque) => amount("Torque", torque),
                    Pass::Turn(turn) => amount("Turn", turn),
                    Pass::Slacken(span) => text("Slacken", *span),
                    Pass::Mark(span) => text("Mark", *span),
                }),
                self.option(source, |source| self.at(source.span))
            ),
            Says::Pattern { order, layout } => format!(
                "Pattern {{ order: {}, layout: {} }}",
                self.words(order),
                self.option(layout, |layout| self.at(*layout))
            ),
            Says::FloatsUntil(condition) => format!("FloatsUntil({})", self.condition(condition)),
            Says::LockedBy(lockers) => format!(
                "LockedBy({})",
                self.list(lockers, |locker| match locker {
                    LockedBy::Name(name) => text("Name", name.span),
                    LockedBy::Words(words) => text("Words", words.span),
                })
            ),
            Says::FreesWhenSlack => "FreesWhenSlack".to_owned(),
            Says::MovesWith(names) => named("MovesWith", names),
            Says::LeftHand => "LeftHand".to_owned(),
            Says::LubricatedWith(with) => format!("LubricatedWith({})", self.name_or_words(with)),
            Says::On(names) => named("On", names),
            Says::ClosedBy(names) => named("ClosedBy", names),
            Says::Holds { fluid, amount } => format!(
                "Holds {{ fluid: {}, amount: {} }}",
                self.name_or_words(fluid),
                self.option(amount, |amount| self.quantity(amount))
            ),
            Says::ServiceEvery(interval) => amount("ServiceEvery", interval),
            Says::Kind(words) => format!("Kind({})", self.words(words)),
            Says::Range(range) => amount("Range", range),
            Says::FullScale(torque) => amount("FullScale", torque),
            Says::Length(length) => amount("Length", length),
            Says::Accuracy(accuracy) => amount("Accuracy", accuracy),
            Says::Have => "Have".to_owned(),
            Says::CloseWithin(time) => amount("CloseWithin", time),
            Says::FixesIn(time) => amount("FixesIn", time),
            Says::CuresIn(time) => amount("CuresIn", time),
            Says::GoodTo(temperature) => amount("GoodTo", temperature),
            Says::NotOn(words) => format!("NotOn({})", self.words(words)),
            Says::Members(members) => format!("Members({})", self.members(members)),
            Says::As(name) => text("As", name.span),
            Says::InAnyOrder => "InAnyOrder".to_owned(),
            Says::ForEach {
                series,
                members: None,
            } => text("ForEach", series.span),
            Says::ForEach {
                series,
                members: Some(members),
            } => {
                format!(
                    "ForEach({} in {})",
                    self.at(series.span),
                    self.members(members)
                )
            }
            Says::Together => "Together".to_owned(),
            Says::After(condition) => format!("After({})", self.condition(condition)),
            Says::Before(condition) => format!("Before({})", self.condition(condition)),
            Says::With(tools) => format!("With({})", self.list(tools, |tool| self.tool(tool))),
            Says::Use(names) => named("Use", names),
            Says::New(names) => named("New", names),
            Says::Old(names) => named("Old", names),
            Says::Spends(names) => named("Spends", names),
            Says::Trial => "Trial".to_owned(),
            Says::ForGood => "ForGood".to_owned(),
            Says::ToItsMark => "ToItsMark".to_owned(),
            Says::To(To::Quantity(quantity)) => format!("To({})", amount("Quantity", quantity)),
            Says::To(To::Names(names)) => format!("To({})", named("Names", names)),
            Says::To(To::Words(words)) => format!("To({})", text("Words", words.span)),
            Says::Disturbs(names) => named("Disturbs", names),
            Says::AtLeast { time, after } => format!(
                "AtLeast {{ time: {}, after: {} }}",
                self.quantity(time),
                self.condition(after)
            ),
            Says::AtMost { time, after } => format!(
                "AtMost {{ time: {}, after: {} }}",
                self.quantity(time),
                self.condition(after)
            ),
            Says::Expect(range) => amount("Expect", range),
            Says::Caution(quoted) => text("Caution", quoted.span),
            Says::Note(quoted) => text("Note", quoted.span),
            Says::Unreadable { mentions } => named("Unreadable", mentions),
        }
    }
}
