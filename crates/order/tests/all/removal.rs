//! The cheapest way in: against every subset, and the published rows.

use crate::brute::Dice;
use order::removal::{Blocked, Condition, Outcome, Reached, Removals, Subject, ThingId};
use order::{Effort, Optimum};

/// A question kept beside what the core is given, to be answered by hand.
#[derive(Clone, Debug, Default)]
struct Machine {
    cost: Vec<u64>,
    conditions: Vec<Vec<Condition>>,
    targets: Vec<Condition>,
    gone: Vec<ThingId>,
}

impl Machine {
    fn question(&self) -> Removals {
        let mut out = Removals::new(&self.cost);
        for (thing, list) in self.conditions.iter().enumerate() {
            for condition in list {
                if condition.is_empty() {
                    out.never(thing as u32);
                } else {
                    out.condition(thing as u32, condition.clone());
                }
            }
        }
        self.targets.iter().for_each(|t| out.target(t.clone()));
        self.gone.iter().for_each(|&t| out.gone(t));
        out
    }

    fn random(dice: &mut Dice) -> Self {
        let n = dice.between(1, 9).max(dice.between(1, 9));
        let zero = dice.chance(10);
        let cost = (0..n).map(|_| dice.between(usize::from(!zero), 9) as u64);
        let mut out = Self {
            cost: cost.collect(),
            ..Self::default()
        };
        for _ in 0..n {
            let conditions = dice.below(3);
            let list = (0..conditions).map(|_| some(dice, n, 20));
            out.conditions.push(list.collect());
        }
        for _ in 0..dice.between(1, 3) {
            out.targets.push(some(dice, n, 3));
        }
        for t in 0..n as u32 {
            if dice.chance(5) {
                out.gone.push(t);
            }
        }
        out
    }

    fn mask(things: &[ThingId]) -> u32 {
        things.iter().fold(0, |m, t| m | 1 << t)
    }

    fn holds(condition: &Condition, off: u32) -> bool {
        condition.iter().any(|route| Self::mask(route) & !off == 0)
    }

    /// What comes off when only these may.
    fn comes_off(&self, allowed: u32) -> u32 {
        let mut off = Self::mask(&self.gone);
        loop {
            let free = |&t: &u32| {
                let list = &self.conditions[t as usize];
                allowed & !off & 1 << t != 0 && list.iter().all(|c| Self::holds(c, off))
            };
            match (0..self.cost.len() as u32).find(free) {
                Some(t) => off |= 1 << t,
                None => return off,
            }
        }
    }

    fn reaches(&self, off: u32) -> bool {
        self.targets.iter().all(|c| Self::holds(c, off))
    }

    fn solves(&self, set: u32) -> bool {
        let off = self.comes_off(set);
        off & set == set && self.reaches(off)
    }

    fn paid(&self, set: u32) -> u64 {
        let things = (0..self.cost.len()).filter(|&t| set >> t & 1 == 1);
        things.map(|t| self.cost[t]).sum()
    }

    /// Every set that comes off and reaches the targets.
    fn solutions(&self) -> Vec<u32> {
        let gone = Self::mask(&self.gone);
        let sets = (0..1u32 << self.cost.len()).filter(|set| set & gone == 0);
        sets.filter(|&set| self.solves(set)).collect()
    }

    fn check_way_in(&self, found: &Reached) {
        let mut off = Self::mask(&self.gone);
        for &t in &found.order {
            assert_eq!(off >> t & 1, 0, "{t} comes off twice");
            let list = &self.conditions[t as usize];
            assert!(list.iter().all(|c| Self::holds(c, off)), "{t} is held");
            off |= 1 << t;
        }
        assert!(self.reaches(off));
        let set = Self::mask(&found.order);
        assert_eq!(self.paid(set), found.cost);
        for t in &found.order {
            let less = self.comes_off(set & !(1 << t));
            assert!(!self.reaches(less), "{t} can be left out");
        }
    }

    /// Nothing in the list can start, and with any thing of it gone, and all
    /// others, the target can be reached.
    fn check_blocked(&self, blocked: &Blocked) {
        let all = (1u32 << self.cost.len()) - 1;
        let off = self.comes_off(all);
        let shut = |k: &usize| !Self::holds(&self.targets[*k], off);
        let targets: Vec<usize> = (0..self.targets.len()).filter(shut).collect();
        assert_eq!(blocked.targets, targets);
        assert_eq!(blocked.shut[0].subject, Subject::Target(targets[0]));
        let things: Vec<ThingId> = blocked.shut[1..]
            .iter()
            .map(|shut| match shut.subject {
                Subject::Thing(t) => t,
                Subject::Target(_) => panic!("a second target"),
            })
            .collect();
        assert!(things.is_sorted());
        let held = Self::mask(&things);
        for shut in &blocked.shut {
            let condition = match shut.subject {
                Subject::Target(k) => &self.targets[k],
                Subject::Thing(t) => &self.conditions[t as usize][shut.condition],
            };
            assert_eq!(condition.len(), shut.by.len());
            for (route, by) in condition.iter().zip(&shut.by) {
                assert!(route.contains(by) && held >> by & 1 == 1);
            }
        }
        for t in things {
            let mut freed = self.clone();
            freed.gone = (0..self.cost.len() as u32)
                .filter(|x| *x == t || held >> x & 1 == 0)
                .collect();
            let off = freed.comes_off(all);
            assert!(Self::holds(&self.targets[targets[0]], off), "{t} is idle");
        }
    }
}

fn some(dice: &mut Dice, n: usize, free: usize) -> Condition {
    if dice.chance(free) {
        return vec![Vec::new()];
    }
    let routes = if dice.chance(2) {
        0
    } else {
        dice.between(1, 3)
    };
    let route = |dice: &mut Dice| (0..dice.between(1, 3)).map(|_| dice.step(n)).collect();
    (0..routes).map(|_| route(dice)).collect()
}

fn reached(outcome: Outcome) -> Reached {
    match outcome {
        Outcome::Reached(found) => found,
        Outcome::Blocked(blocked) => panic!("{blocked:?}"),
    }
}

/// The least cost of a set that meets all landmarks.
fn least_meeting(machine: &Machine, landmarks: &[Vec<ThingId>]) -> u64 {
    let rows: Vec<u32> = landmarks.iter().map(|row| Machine::mask(row)).collect();
    let meets = |set: &u32| rows.iter().all(|row| row & set != 0);
    let sets = (0..1u32 << machine.cost.len()).filter(meets);
    sets.map(|set| machine.paid(set)).min().unwrap()
}

#[test]
fn random_machines_against_every_subset() {
    let mut dice = Dice::new(77);
    let (mut reached_ones, mut blocked_ones, mut tied, mut chosen) = (0, 0, 0, 0);
    for _ in 0..10_000 {
        let machine = Machine::random(&mut dice);
        let question = machine.question();
        let solutions = machine.solutions();
        let Some(least) = solutions.iter().map(|&set| machine.paid(set)).min() else {
            blocked_ones += 1;
            match question.cheapest(Effort::default()) {
                Outcome::Blocked(blocked) => machine.check_blocked(&blocked),
                Outcome::Reached(found) => panic!("{machine:?} {found:?}"),
            }
            assert!(question.ties(5, Effort::default()).sets.is_empty());
            continue;
        };
        reached_ones += 1;
        let found = reached(question.cheapest(Effort::default()));
        machine.check_way_in(&found);
        assert_eq!(found.cost, least, "{machine:?}");
        assert_eq!(found.proof, Optimum::Proved, "{machine:?}");
        for landmark in &found.landmarks {
            let row = Machine::mask(landmark);
            assert!(solutions.iter().all(|set| set & row != 0), "{machine:?}");
        }
        chosen += usize::from(found.landmarks.iter().any(|row| row.len() > 1));
        assert_eq!(least_meeting(&machine, &found.landmarks), least);

        let cheapest = solutions.iter().filter(|&&set| machine.paid(set) == least);
        let minimal = |set: &&u32| {
            let less = |other: &&u32| *other != *set && **other & !**set == 0;
            !solutions.iter().any(|other| less(&other))
        };
        let mut sets: Vec<Vec<ThingId>> = cheapest
            .filter(minimal)
            .map(|set| (0..32).filter(|t| set >> t & 1 == 1).collect())
            .collect();
        sets.sort();
        let ties = question.ties(sets.len(), Effort::default());
        assert!(ties.all, "{machine:?}");
        assert_eq!(ties.sets, sets, "{machine:?}");
        if sets.len() > 1 {
            tied += 1;
            let fewer = question.ties(sets.len() - 1, Effort::default());
            assert!(!fewer.all);
            assert_eq!(fewer.sets.len(), sets.len() - 1);
            assert!(fewer.sets.iter().all(|set| sets.contains(set)));
        }
    }
    let drawn = (reached_ones, blocked_ones, tied, chosen);
    assert!(reached_ones > 3000 && blocked_ones > 1000, "{drawn:?}");
    assert!(tied > 100 && chosen > 500, "{drawn:?}");
}

/// Routes such as `2+8 | 3+11`, counted from 1 there and from 0 here.
fn routes(text: &str) -> Condition {
    let thing = |x: &str| x.trim().parse::<u32>().unwrap() - 1;
    text.split('|')
        .map(|route| match route.trim() {
            "free" => Vec::new(),
            named => named.split('+').map(thing).collect(),
        })
        .collect()
}

#[test]
fn computed_rework_sets() {
    let text = include_str!("../data/rework_sets.csv");
    let (mut rows, mut traps, mut blocked) = (0, 0, 0);
    for line in text.lines().skip(1) {
        let cells: Vec<&str> = line.split(',').collect();
        let name = cells[0];
        let numbers = |text: &str| -> Vec<u64> {
            text.split_whitespace()
                .map(|x| x.parse().unwrap())
                .collect()
        };
        let mut machine = Machine {
            cost: numbers(cells[2]),
            ..Machine::default()
        };
        assert_eq!(machine.cost.len() as u64, numbers(cells[1])[0], "{name}");
        for (i, own) in cells[3].split(';').enumerate() {
            let (thing, list) = own.split_once(':').unwrap();
            assert_eq!(thing.trim().parse(), Ok(i + 1), "{name}");
            machine.conditions.push(vec![routes(list)]);
        }
        machine.targets.push(routes(cells[4]));
        let question = machine.question();
        rows += 1;
        if cells[5] == "unreachable" {
            blocked += 1;
            match question.cheapest(Effort::default()) {
                Outcome::Blocked(why) => machine.check_blocked(&why),
                Outcome::Reached(found) => panic!("{name}: {found:?}"),
            }
            assert_eq!(cells[7], "0", "{name}");
            continue;
        }
        let found = reached(question.cheapest(Effort::default()));
        machine.check_way_in(&found);
        assert_eq!(found.cost, numbers(cells[5])[0], "{name}");
        assert_eq!(found.proof, Optimum::Proved, "{name}");
        let ties = question.ties(100, Effort::default());
        assert!(ties.all, "{name}");
        assert_eq!(ties.sets.len() as u64, numbers(cells[7])[0], "{name}");
        let listed = numbers(cells[6]).iter().map(|&t| t as u32 - 1).collect();
        assert!(ties.sets.contains(&listed), "{name}");
        // Parts that support each other would seem to be cheaper.
        let trap = numbers(cells[8])[0];
        assert!(trap <= found.cost, "{name}");
        traps += usize::from(trap < found.cost);
    }
    assert_eq!((rows, blocked, traps), (24, 4, 5));
}

#[test]
fn parts_that_hold_each_other_are_no_way_in() {
    // 0 and 1 hold each other; 2 is free and dear, and frees 0.
    let mut machine = Removals::new(&[1, 1, 50]);
    machine.condition(0, vec![vec![1], vec![2]]);
    machine.condition(1, vec![vec![0]]);
    machine.target(vec![vec![1]]);
    let found = reached(machine.cheapest(Effort::default()));
    assert_eq!(found.order, [2, 0, 1]);
    assert_eq!(found.landmarks, [[0], [1], [2]]);

    machine.never(2);
    match machine.cheapest(Effort::default()) {
        Outcome::Blocked(blocked) => {
            let by: Vec<_> = blocked
                .shut
                .iter()
                .map(|s| (s.subject, s.by.clone()))
                .collect();
            let thing = Subject::Thing;
            let circle = [
                (Subject::Target(0), vec![1]),
                (thing(0), vec![1, 2]),
                (thing(1), vec![0]),
                (thing(2), vec![]),
            ];
            assert_eq!(by, circle);
        }
        Outcome::Reached(found) => panic!("{found:?}"),
    }
}

/// A target behind fasteners, each reached by taking off any one of several
/// parts, is a hitting set: the least number of parts that meets all lines of
/// the projective plane of order 3 (13 lines of 4 points) is a line, 4 points,
/// and there are 13 of these.
#[test]
fn the_projective_plane_of_order_3() {
    let line = |shift: u32| [0, 1, 3, 9].map(|x| (x + shift) % 13);
    let mut plane = Removals::new(&[5; 13]);
    for shift in 0..13 {
        plane.target(line(shift).iter().map(|&x| vec![x]).collect());
    }
    let found = reached(plane.cheapest(Effort::default()));
    assert_eq!((found.cost, found.proof), (20, Optimum::Proved));
    let ties = plane.ties(100, Effort::default());
    let mut lines: Vec<Vec<u32>> = (0..13).map(|s| line(s).to_vec()).collect();
    lines.iter_mut().for_each(|l| l.sort_unstable());
    lines.sort();
    assert_eq!((ties.sets, ties.all), (lines, true));
}

#[test]
fn without_effort_there_is_still_a_way_in_and_a_bound() {
    let mut dice = Dice::new(5);
    let mut open = 0;
    for _ in 0..300 {
        let machine = Machine::random(&mut dice);
        let question = machine.question();
        let Outcome::Reached(exact) = question.cheapest(Effort::default()) else {
            continue;
        };
        let found = reached(question.cheapest(Effort { nodes: 0 }));
        machine.check_way_in(&found);
        match found.proof {
            Optimum::Proved => assert_eq!(found.cost, exact.cost),
            Optimum::AtLeast(bound) => {
                open += 1;
                assert!(bound <= exact.cost && exact.cost <= found.cost);
                assert!(least_meeting(&machine, &found.landmarks) >= bound);
            }
        }
    }
    assert!(open > 20);
}

#[test]
fn costs_near_the_end_of_numbers() {
    let mut machine = Removals::new(&[u64::MAX, u64::MAX, u64::MAX - 1]);
    machine.target(vec![vec![0], vec![1, 2]]);
    machine.target(vec![vec![1], vec![0]]);
    let found = reached(machine.cheapest(Effort::default()));
    assert_eq!((found.order, found.cost), (vec![0], u64::MAX));
    assert_eq!(found.proof, Optimum::Proved);
    machine.target(vec![vec![2]]);
    let found = reached(machine.cheapest(Effort::default()));
    assert_eq!((found.order.len(), found.cost), (2, u64::MAX));
}

#[test]
fn nothing_asked_is_nothing_done() {
    let found = reached(Removals::new(&[]).cheapest(Effort::default()));
    assert_eq!((found.cost, found.proof), (0, Optimum::Proved));
    let mut machine = Removals::new(&[3, 4]);
    machine.never(0);
    machine.gone(0);
    machine.target(vec![vec![0]]);
    let found = reached(machine.cheapest(Effort::default()));
    assert!(found.order.is_empty() && found.landmarks.is_empty());
    machine.target(Vec::new());
    match machine.cheapest(Effort::default()) {
        Outcome::Blocked(blocked) => assert_eq!(blocked.targets, [1]),
        Outcome::Reached(found) => panic!("{found:?}"),
    }
}
