//! Steps: what they are done to, with what, and under which conditions.

use syntax::tree::{self, Detail, Head, Name, Quantity, Says, Verb};
use workshop::quantity::Dimension;

use crate::amounts;
use crate::conditions::{Facts, Named};
use crate::desk::{Desk, Here};
use crate::details;
use crate::model::{Condition, Lag, ProblemKind, Ref, Sort, StageId, Step, StepId, Text, To};
use crate::names;
use crate::sorts;
use crate::spelling;

/// Reads the step of this number.
pub(crate) fn read(desk: &mut Desk<'_>, facts: &Facts, number: u32) -> Option<Step> {
    let seed = &facts.steps[number as usize];
    let here = Here {
        by: (0, seed.item),
        bound: &seed.bound,
        step: Some(StepId(number)),
    };
    let item = desk.item(here.by);
    let Head::Step {
        verb,
        keyword,
        targets,
        words,
    } = &item.head
    else {
        return None;
    };
    let mut step = Step {
        verb: *verb,
        keyword: desk.place(here.by, *keyword),
        targets: Vec::new(),
        words: words.map(|words| desk.text(here.by, words)),
        name: None,
        stage: seed.stage.map(StageId),
        member: (!seed.bound.is_empty()).then(|| desk.series.which(&seed.bound)),
        place: desk.place(here.by, item.span),
        item: seed.item,
        uncertain: desk.damaged.contains(&here.by),
        together: false,
        after: Vec::new(),
        before: Vec::new(),
        lags: Vec::new(),
        with: Vec::new(),
        uses: Vec::new(),
        news: Vec::new(),
        olds: Vec::new(),
        spends: Vec::new(),
        disturbs: Vec::new(),
        trial: false,
        for_good: false,
        to_its_mark: None,
        to: None,
        expect: None,
        takes: None,
        hazards: Vec::new(),
        cautions: Vec::new(),
        notes: Vec::new(),
    };
    for target in targets {
        one_target(desk, &here, *verb, *target, &mut step.targets);
    }
    let mut reading = Reading {
        here,
        facts,
        targets,
        step: &mut step,
    };
    details::each(desk, &here, item, |desk, detail| {
        reading.detail(desk, detail)
    });
    step.uncertain |= desk.take_doubt();
    Some(step)
}

/// What a step is done to. A position is turned or set, and can be looked at; it is never fitted.
fn one_target(desk: &mut Desk<'_>, here: &Here, verb: Verb, name: Name, targets: &mut Vec<Ref>) {
    const WITH_POSITIONS: &[Sort] = sorts::COVERABLE;
    let wanted = match verb {
        Verb::Apply => sorts::SUPPLY,
        Verb::Turn | Verb::Set | Verb::Measure | Verb::Mark | Verb::Inspect | Verb::Reach => {
            WITH_POSITIONS
        }
        _ => sorts::WORKED_AT,
    };
    targets.extend(desk.refs(here, &[name], wanted));
}

struct Reading<'a> {
    here: Here<'a>,
    facts: &'a Facts<'a>,
    targets: &'a [Name],
    step: &'a mut Step,
}

impl Reading<'_> {
    fn detail(&mut self, desk: &mut Desk<'_>, detail: &Detail) -> bool {
        let here = self.here;
        let place = desk.place(here.by, detail.span);
        let step = &mut *self.step;
        match &detail.says {
            Says::As(name) => {
                let names = desk.written_out(&here, *name);
                if let (None, Some(text)) = (&step.name, names.into_iter().next()) {
                    let place = desk.place(here.by, name.span);
                    step.name = Some(Text { text, place });
                }
            }
            Says::Together => step.together = true,
            Says::Trial => step.trial = true,
            Says::ForGood => step.for_good = true,
            Says::ToItsMark => step.to_its_mark = Some(place),
            Says::After(condition) => {
                let condition = self.condition(desk, detail, condition);
                self.step.after.push(condition);
            }
            Says::Needs(needs) => {
                let needs = desk.needs(&here, self.facts, needs, place, detail.because);
                step.after.push(needs);
            }
            Says::Before(condition) => {
                let condition = self.condition(desk, detail, condition);
                self.step.before.push(condition);
            }
            Says::AtLeast { time, after } => self.lag(desk, detail, *time, after, true),
            Says::AtMost { time, after } => self.lag(desk, detail, *time, after, false),
            Says::With(tools) => {
                let with = desk.tool_uses(&here, tools, Some(&mut step.uses));
                step.with.extend(with);
            }
            Says::Use(names) => self.uses(desk, names),
            Says::New(names) => self.news(desk, names),
            Says::Old(names) => {
                let because = desk.because(here.by, detail.because);
                let mut refs = desk.refs(&here, names, sorts::BODIES);
                // The reason is kept with each of them.
                let length = because.as_ref().map_or(0, |because| because.len());
                let count = refs.len() as u64 * (1 + length as u64 / 64);
                if refs.len() > 1 && !desk.room_for_mentions(count, "old", place) {
                    refs.clear();
                }
                let olds = refs.into_iter().map(|old| (old, because.clone()));
                step.olds.extend(olds);
            }
            Says::Spends(names) => step.spends.extend(desk.refs(&here, names, sorts::BODIES)),
            Says::Disturbs(names) => {
                step.disturbs
                    .extend(desk.refs(&here, names, sorts::COVERABLE));
            }
            Says::To(to) => self.to(desk, to),
            Says::Expect(reading) => {
                step.expect = Some(desk.amount(&here, *reading, amounts::ANYTHING));
            }
            Says::Takes(time) => step.takes = Some(desk.amount(&here, *time, amounts::TIME)),
            Says::Hazard(words) => {
                let words = words.iter().map(|word| desk.at(here.by, word.span));
                let words = words.map(|word| spelling::one(word).into_owned());
                step.hazards.extend(words);
            }
            Says::Caution(words) => step.cautions.push(desk.text(here.by, *words)),
            Says::Note(words) => step.notes.push(desk.text(here.by, *words)),
            _ => return false,
        }
        true
    }

    fn condition(
        &self,
        desk: &mut Desk<'_>,
        detail: &Detail,
        condition: &tree::Condition,
    ) -> Condition {
        desk.condition(&self.here, self.facts, condition, detail.because)
    }

    fn lag(
        &mut self,
        desk: &mut Desk<'_>,
        detail: &Detail,
        time: Quantity,
        after: &tree::Condition,
        at_least: bool,
    ) {
        let time = desk.amount(&self.here, time, amounts::TIME);
        let after = self.condition(desk, detail, after);
        self.step.lags.push(Lag {
            time,
            after,
            at_least,
        });
    }

    /// `use threadlock`. A tool named there is a tool all the same.
    fn uses(&mut self, desk: &mut Desk<'_>, names: &[Name]) {
        for name in names {
            let tool = desk
                .known(&self.here, *name)
                .found
                .entries()
                .iter()
                .any(|entry| {
                    matches!(
                        desk.names.entry(*entry).what,
                        names::Named::Thing(_, Sort::Tool)
                    )
                });
            if tool {
                let tool = tree::ToolRef {
                    span: name.span,
                    name: *name,
                    size: None,
                };
                let with = desk.tool_uses(&self.here, &[tool], None);
                self.step.with.extend(with);
            } else {
                let refs = desk.refs(&self.here, &[*name], sorts::SUPPLY);
                self.step.uses.extend(refs);
            }
        }
    }

    /// `new gasket`. Fresh fluid is a supply used.
    fn news(&mut self, desk: &mut Desk<'_>, names: &[Name]) {
        const RENEWED: &[Sort] = &[
            Sort::Item,
            Sort::Part,
            Sort::Fasteners,
            Sort::Unit,
            Sort::Supply,
        ];
        for new in desk.refs(&self.here, names, RENEWED) {
            match self.facts.things[new.thing.0 as usize].sort {
                Sort::Supply => self.step.uses.push(new),
                _ => self.step.news.push(new),
            }
        }
    }

    fn to(&mut self, desk: &mut Desk<'_>, to: &tree::To) {
        let here = self.here;
        self.step.to = match to {
            tree::To::Quantity(quantity) => self.to_figure(desk, *quantity),
            tree::To::Words(words) => Some(To::Words(desk.text(here.by, *words))),
            tree::To::Names(names) => match self.place_of_position(desk, names) {
                Some(place) => place,
                None => Some(To::Things(desk.refs(&here, names, sorts::COVERABLE))),
            },
        };
    }

    /// `set gap to 0.1..0.2 mm`. A torque stands on the fasteners, where it is said once and has
    /// its source; on a step it would be a second one beside it. A reading is expected.
    fn to_figure(&self, desk: &mut Desk<'_>, quantity: Quantity) -> Option<To> {
        let verb = self.step.verb;
        let wanted = match verb {
            Verb::Heat | Verb::Chill => amounts::TEMPERATURE,
            Verb::Turn => amounts::ANGLE,
            _ => amounts::ANYTHING,
        };
        let problems = desk.problems.len();
        let amount = desk.amount(&self.here, quantity, wanted);
        let dimension = amount.measure.as_ref().map(|measure| measure.dimension());
        let torque = dimension == Some(Dimension::Torque);
        let refused = match verb {
            Verb::Measure | Verb::Inspect | Verb::Tighten => true,
            Verb::Set | Verb::Reach => false,
            _ => torque,
        };
        if refused {
            desk.problems.truncate(problems);
            let (text, place) = (amount.text, amount.place);
            let torque = torque || verb == Verb::Tighten;
            desk.problem(place, ProblemKind::NoFigureHere { verb, text, torque });
            return None;
        }
        Some(To::Amount(amount))
    }

    /// The place that a position is turned or set to; none when the step turns no position.
    fn place_of_position(&self, desk: &mut Desk<'_>, names: &[Name]) -> Option<Option<To>> {
        let (here, facts) = (self.here, self.facts);
        let position = self
            .step
            .targets
            .iter()
            .map(|target| target.thing)
            .find(|target| facts.things[target.0 as usize].sort == Sort::Position)?;
        let (name, target) = (names.first()?, self.targets.first()?);
        let about = Named {
            name: desk.at(here.by, target.span),
            place: desk.place(here.by, target.span),
        };
        let wanted = desk.written_out(&here, *name).into_iter().next()?;
        let number = desk.place_of(&here, facts, about, position, *name, &wanted);
        let place = desk.place(here.by, name.span);
        Some(number.map(|number| To::Place(number, place)))
    }
}
