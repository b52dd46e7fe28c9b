//! Orders of least cost: against every order, and the instances of TSPLIB.

use crate::brute::{Dice, Facts, Sort};
use order::sequence::{Costs, cheapest_order, count_cheapest};
use order::{Builder, Effort, Instance, NoOrder, Optimum, Reason, StepId};

/// A cost table in which some tie, and an order's cost in it.
struct Table {
    n: usize,
    cost: Vec<u64>,
}

impl Table {
    fn random(dice: &mut Dice, n: usize) -> Self {
        let most = *[1, 3, 100].get(dice.below(3)).unwrap();
        let cost = (0..n * n).map(|_| dice.between(0, most) as u64).collect();
        Self { n, cost }
    }

    fn paid(&self, order: &[StepId]) -> u64 {
        let pairs = order.windows(2);
        pairs
            .map(|p| self.cost[p[0] as usize * self.n + p[1] as usize])
            .sum()
    }

    fn costs(&self) -> Costs {
        Costs::between(self.n, |a, b| self.cost[a as usize * self.n + b as usize])
    }
}

fn changes(tools: &[Option<u32>], order: &[StepId]) -> u64 {
    let used = order.iter().filter_map(|&s| tools[s as usize]);
    let used: Vec<u32> = used.collect();
    used.windows(2).filter(|p| p[0] != p[1]).count() as u64
}

fn compare(facts: &Facts, costs: &Costs, paid: impl Fn(&[StepId]) -> u64) {
    let inst = facts.instance();
    let all: Vec<u64> = facts.orders().iter().map(|order| paid(order)).collect();
    let found = cheapest_order(&inst, costs, Effort::default());
    let Some(least) = all.iter().min() else {
        assert!(matches!(found, Err(NoOrder::Stuck(_))), "{facts:?}");
        assert!(count_cheapest(&inst, costs, Effort::default()).is_none());
        return;
    };
    let found = found.unwrap();
    assert!(facts.kept_by(&found.order), "{facts:?}");
    assert_eq!(found.cost, *least, "{facts:?} {costs:?}");
    assert_eq!(paid(&found.order), *least);
    assert_eq!(found.proof, Optimum::Proved);
    let number = all.iter().filter(|x| *x == least).count();
    let counted = count_cheapest(&inst, costs, Effort::default());
    assert_eq!(counted, Some((*least, number.into())), "{facts:?}");

    let hasty = cheapest_order(&inst, costs, Effort { nodes: 0 });
    match hasty {
        Ok(hasty) => {
            assert!(facts.kept_by(&hasty.order));
            assert_eq!(paid(&hasty.order), hasty.cost);
            match hasty.proof {
                Optimum::Proved => assert_eq!(hasty.cost, *least),
                Optimum::AtLeast(bound) => assert!(bound <= *least && hasty.cost >= *least),
            }
        }
        Err(none) => assert!(inst.is_mixed() && matches!(none, NoOrder::Unknown { .. })),
    }
}

#[test]
fn random_steps_against_every_order() {
    let mut dice = Dice::new(404);
    for round in 0..10_000 {
        let sort = [
            Sort::PLAIN,
            Sort::ACYCLIC,
            Sort::ACYCLIC,
            Sort::ACCESS,
            Sort::MIXED,
        ];
        let sort = Sort {
            most_steps: 7,
            ..sort[round % sort.len()]
        };
        let facts = Facts::random(&mut dice, sort);
        if dice.chance(50) {
            let table = Table::random(&mut dice, facts.n);
            compare(&facts, &table.costs(), |order| table.paid(order));
        } else {
            let kinds = dice.between(1, 4);
            let tool = |dice: &mut Dice| (!dice.chance(15)).then(|| 10 * dice.below(kinds) as u32);
            let tools: Vec<_> = (0..facts.n).map(|_| tool(&mut dice)).collect();
            compare(&facts, &Costs::tools(&tools), |order| {
                changes(&tools, order)
            });
        }
    }
}

/// An instance and its costs; what cannot be used stands as `x`.
fn published(text: &str) -> (Instance, Costs) {
    let number = |text: &str| text.parse::<u64>().unwrap();
    let (mut n, mut rows, mut pairs) = (0, Vec::new(), Vec::new());
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        let words: Vec<&str> = line.split_whitespace().collect();
        match words.as_slice() {
            ["n", count] => n = number(count) as usize,
            ["c", row, cells @ ..] => {
                assert_eq!((number(row) as usize, cells.len()), (rows.len() + 1, n));
                let cell = |c: &&str| if *c == "x" { 0 } else { number(c) };
                rows.push(cells.iter().map(cell).collect::<Vec<u64>>());
            }
            ["p", a, b] => pairs.push((number(a) as u32 - 1, number(b) as u32 - 1)),
            other => panic!("{other:?}"),
        }
    }
    let mut builder = Builder::new(n);
    for (i, &(a, b)) in pairs.iter().enumerate() {
        builder.before(a, b, Reason(i as u32));
    }
    let costs = Costs::between(n, |a, b| rows[a as usize][b as usize]);
    (builder.build(), costs)
}

fn row(name: &str) -> Vec<String> {
    let text = include_str!("../data/sop/optima.csv");
    let line = text
        .lines()
        .find(|line| line.split(',').next() == Some(name));
    line.unwrap().split(',').map(str::to_owned).collect()
}

fn reach_optimum(name: &str, text: &str, effort: Effort) {
    let (inst, costs) = published(text);
    let row = row(name);
    assert_eq!(inst.steps().to_string(), row[1], "{name}");
    assert_eq!(inst.arc_count().to_string(), row[2], "{name}");
    let found = cheapest_order(&inst, &costs, effort).unwrap();
    assert!(inst.allows(&found.order), "{name}");
    assert_eq!(found.cost.to_string(), row[3], "{name}");
    assert_eq!(found.proof, Optimum::Proved, "{name}");
    if !row[4].is_empty() {
        let (cost, number) = count_cheapest(&inst, &costs, effort).unwrap();
        assert_eq!(
            (cost.to_string(), number.to_string()),
            (row[3].clone(), row[4].clone())
        );
    }
}

#[test]
fn published_least_costs() {
    let all = Effort::default();
    reach_optimum("esc07", include_str!("../data/sop/esc07.txt"), all);
    reach_optimum("esc11", include_str!("../data/sop/esc11.txt"), all);
    reach_optimum("esc12", include_str!("../data/sop/esc12.txt"), all);
    reach_optimum("br17.10", include_str!("../data/sop/br17.10.txt"), all);
    reach_optimum("esc25", include_str!("../data/sop/esc25.txt"), all);
}

/// Too wide to be gone through: an order and a bound close to each other, with
/// the published optimum between them.
#[test]
fn published_least_cost_of_rbg048a_lies_within_the_bound() {
    let (inst, costs) = published(include_str!("../data/sop/rbg048a.txt"));
    let effort = Effort { nodes: 20_000 };
    let found = cheapest_order(&inst, &costs, effort).unwrap();
    assert!(inst.allows(&found.order));
    let least: u64 = row("rbg048a")[3].parse().unwrap();
    match found.proof {
        Optimum::Proved => assert_eq!(found.cost, least),
        Optimum::AtLeast(bound) => {
            assert!(bound <= least && least <= found.cost);
            assert!(found.cost - bound <= least / 20, "{bound} {}", found.cost);
        }
    }
}

/// What is in hand stays in hand: no more changes than there are tools, though
/// the steps are written with the tools in turn.
#[test]
fn free_steps_are_done_tool_by_tool() {
    let tools: Vec<Option<u32>> = (0..90).map(|s| (s % 10 > 0).then_some(s % 10)).collect();
    let inst = Builder::new(90).build();
    let found = cheapest_order(&inst, &Costs::tools(&tools), Effort::default()).unwrap();
    assert_eq!((found.cost, found.proof), (8, Optimum::Proved));
    assert!(inst.allows(&found.order));
}
