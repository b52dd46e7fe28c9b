//! Conditions as ways: what `after`, `before`, `needs` and the standing rules ask.

use super::places::carriers;
use super::reach::product;
use super::{Asker, main};
use crate::chain::{Aspect, Test, presence, tightness};
use crate::demand::{Atom, Demand, Way, What, Why};
use crate::lives::{Lives, locks_by_step, place_value};
use plan::index::Index;
use plan::model::{
    Body, Clause, Condition, Place, Plan, Sort, State, Step, StepId, Subject, ThingId,
};
use syntax::tree::State as Word;

/// More combinations than this and the rest are left out: nobody writes such a condition, and
/// leaving ways out can only make the checker stricter, never let a fault through.
const MOST_WAYS: usize = 64;

impl<'a> Asker<'a> {
    /// What a step's own `after`, `before` and time conditions ask.
    pub(super) fn step_conditions(&mut self, id: StepId, step: &'a Step) {
        let after = step.after.iter().map(|c| (c, Why::After));
        let lags = step.lags.iter().map(|l| (&l.after, Why::Lag));
        for (condition, why) in after.chain(lags).filter(|(c, _)| !c.uncertain) {
            for clause in &condition.clauses {
                let ways = clause_ways(self.plan, self.lives, self.index, clause);
                self.condition(id, clause.place, why, condition, ways);
            }
        }
        for condition in step.before.iter().filter(|c| !c.uncertain) {
            let ways = not_condition_ways(self.plan, self.lives, self.index, condition);
            self.condition(id, condition.place, Why::Before, condition, ways);
        }
    }

    fn condition(
        &mut self,
        id: StepId,
        place: Place,
        why: Why,
        condition: &Condition,
        ways: Vec<Vec<Atom>>,
    ) {
        let step = self.plan.step(id);
        let thing = step.targets.first().map_or(ThingId(u32::MAX), |t| t.thing);
        self.asked.demands.push(Demand {
            step: id.0,
            sub: 0,
            together: false,
            thing,
            ways: plain(ways),
            why,
            place,
            because: condition.because.as_deref().map(Into::into),
        });
    }
}

/// Ways that belong to no reach line.
pub fn plain(ways: Vec<Vec<Atom>>) -> Vec<Way> {
    ways.into_iter()
        .map(|atoms| Way {
            atoms,
            line: None,
            elsewhere: false,
        })
        .collect()
}

/// The ways in which a whole condition holds.
pub fn condition_ways(
    plan: &Plan,
    lives: &Lives,
    index: &Index,
    condition: &Condition,
) -> Vec<Vec<Atom>> {
    let mut ways = vec![Vec::new()];
    for clause in &condition.clauses {
        ways = product(&ways, &clause_ways(plan, lives, index, clause));
        ways.truncate(MOST_WAYS);
    }
    ways
}

/// The ways in which a condition does not hold.
pub fn not_condition_ways(
    plan: &Plan,
    lives: &Lives,
    index: &Index,
    condition: &Condition,
) -> Vec<Vec<Atom>> {
    let mut ways = Vec::new();
    for clause in &condition.clauses {
        // Not (this way or that way) is: some atom of this way fails and some of that.
        let mut none_holds = vec![Vec::new()];
        for way in clause_ways(plan, lives, index, clause) {
            let fails: Vec<Vec<Atom>> = way.iter().map(|a| opposite(*a)).collect();
            none_holds = product(&none_holds, &fails);
            none_holds.truncate(MOST_WAYS);
        }
        ways.extend(none_holds);
    }
    ways
}

fn opposite(atom: Atom) -> Vec<Atom> {
    let what = match atom.what {
        What::Chain(chain, test) => What::Chain(chain, test.opposite()),
        What::Done(step, wanted) => What::Done(step, !wanted),
        What::Never => return Vec::new(),
    };
    vec![Atom { what, ..atom }]
}

/// The ways in which one clause holds.
pub fn clause_ways(plan: &Plan, lives: &Lives, index: &Index, clause: &Clause) -> Vec<Vec<Atom>> {
    match &clause.subject {
        Subject::Steps(steps) => vec![
            steps
                .iter()
                .map(|s| Atom {
                    what: What::Done(s.0, true),
                    about: None,
                    place: clause.place,
                })
                .collect(),
        ],
        Subject::Thing(thing) => state_ways(plan, lives, index, *thing, clause.state, clause.place),
    }
}

/// The ways in which a thing is in a state.
pub fn state_ways(
    plan: &Plan,
    lives: &Lives,
    index: &Index,
    thing: ThingId,
    state: State,
    place: Place,
) -> Vec<Vec<Atom>> {
    let at_main = |test| vec![vec![main(lives, thing, test, place)]];
    let aspect = |aspect, test| {
        let what = lives
            .get(thing, aspect)
            .map_or(What::Never, |chain| What::Chain(chain, test));
        vec![vec![Atom {
            what,
            about: Some(thing),
            place,
        }]]
    };
    let word = match state {
        State::At(n) => return aspect(Aspect::Place, Test::Is(place_value(n))),
        State::Is(word) => word,
    };
    match word {
        Word::Fitted if plan.thing(thing).sort == Sort::Item => item_in(plan, lives, thing, place),
        Word::Fitted => at_main(Test::AtLeast(presence::ON)),
        Word::Off | Word::Out => at_main(Test::AtMost(0)),
        Word::Started => at_main(Test::AtLeast(tightness::STARTED)),
        Word::Slack => at_main(Test::AtMost(tightness::STARTED)),
        Word::Snug => at_main(Test::AtLeast(tightness::SNUG)),
        Word::Tight => at_main(Test::AtLeast(tightness::TIGHT)),
        Word::Locked if locks_by_step(plan, thing) => at_main(Test::AtLeast(tightness::LOCKED)),
        Word::Locked => at_main(Test::AtLeast(tightness::TIGHT)),
        Word::Covered => covered_ways(plan, lives, index, thing, place),
        Word::Cured => aspect(Aspect::Happened(Word::Applied), Test::AtLeast(1)),
        word => aspect(Aspect::Happened(word), Test::AtLeast(1)),
    }
}

fn item_in(plan: &Plan, lives: &Lives, thing: ThingId, place: Place) -> Vec<Vec<Atom>> {
    let mut ways = vec![vec![main(lives, thing, Test::AtLeast(presence::ON), place)]];
    if let Body::Item { at, .. } = &plan.thing(thing).body {
        for joint in at {
            if let Some(chain) = lives.get(thing, Aspect::InJoint(joint.thing)) {
                ways.push(vec![Atom {
                    what: What::Chain(chain, Test::AtLeast(1)),
                    about: Some(thing),
                    place,
                }]);
            }
        }
    }
    ways
}

/// A thing is covered while something that covers it is really on, in the same place. What only
/// gets in the way of one tool or from one side covers nothing, unless there is nothing else.
pub fn covered_ways(
    plan: &Plan,
    lives: &Lives,
    index: &Index,
    thing: ThingId,
    place: Place,
) -> Vec<Vec<Atom>> {
    let blockers = &plan.thing(thing).blockers;
    let whole = |b: &&plan::model::Blocker| b.tool.is_none() && b.side.is_none();
    let any_whole = blockers.iter().any(|b| whole(&b));
    let own = carriers(plan, index, thing);
    let mut ways = Vec::new();
    for blocker in blockers.iter().filter(|b| !any_whole || whole(b)) {
        let least = if plan.thing(blocker.by).sort == Sort::Fasteners {
            tightness::STARTED
        } else {
            presence::ON
        };
        let mut atoms = vec![main(lives, blocker.by, Test::AtLeast(least), blocker.place)];
        let theirs = carriers(plan, index, blocker.by);
        let between = own
            .iter()
            .filter(|c| !theirs.contains(c) && **c != blocker.by)
            .chain(theirs.iter().filter(|c| !own.contains(c)));
        for &carrier in between {
            atoms.push(main(lives, carrier, Test::AtLeast(presence::DRY), place));
        }
        ways.push(atoms);
    }
    if ways.is_empty() {
        ways.push(vec![Atom {
            what: What::Never,
            about: Some(thing),
            place,
        }]);
    }
    ways
}
