//! The plain graph questions, against an independent graph library and against
//! every subset.

use crate::brute::{Dice, Facts, Sort};
use order::graph;
use petgraph::graph::{DiGraph, NodeIndex};

fn as_graph(facts: &Facts) -> DiGraph<(), ()> {
    let mut out = DiGraph::new();
    let nodes: Vec<NodeIndex> = (0..facts.n).map(|_| out.add_node(())).collect();
    for &(a, b, _) in &facts.arcs {
        out.add_edge(nodes[a as usize], nodes[b as usize], ());
    }
    out
}

#[test]
fn components_agree() {
    let mut dice = Dice::new(81);
    for _ in 0..10_000 {
        let facts = Facts::random(
            &mut dice,
            Sort {
                most_steps: 12,
                ..Sort::PLAIN
            },
        );
        let mut theirs: Vec<Vec<u32>> = petgraph::algo::kosaraju_scc(&as_graph(&facts))
            .into_iter()
            .map(|component| {
                let mut c: Vec<u32> = component.iter().map(|v| v.index() as u32).collect();
                c.sort_unstable();
                c
            })
            .collect();
        let ours = graph::components(&facts.instance());
        let mut of = vec![0; facts.n];
        for (i, component) in ours.iter().enumerate() {
            component.iter().for_each(|&s| of[s as usize] = i);
        }
        assert!(
            facts
                .arcs
                .iter()
                .all(|&(a, b, _)| of[a as usize] <= of[b as usize])
        );
        let mut sorted = ours;
        sorted.sort_unstable();
        theirs.sort_unstable();
        assert_eq!(sorted, theirs);
    }
}

#[test]
fn orders_and_chains_agree() {
    let mut dice = Dice::new(82);
    let mut closed = 0;
    for round in 0..10_000 {
        let sort = if round % 3 == 0 {
            Sort::PLAIN
        } else {
            Sort::ACYCLIC
        };
        let facts = Facts::random(&mut dice, sort);
        let inst = facts.instance();
        let theirs = petgraph::algo::toposort(&as_graph(&facts), None);
        let Some(order) = graph::topological(&inst) else {
            assert!(theirs.is_err());
            assert_eq!(graph::width(&inst), None);
            assert_eq!(graph::longest_chain(&inst), None);
            closed += 1;
            continue;
        };
        assert!(theirs.is_ok() && facts.kept_by(&order));
        let closure = graph::Closure::new(&inst).unwrap();
        let mut pairs = 0;
        for a in 0..facts.n as u32 {
            let behind: Vec<u32> = closure.behind(a).collect();
            for b in 0..facts.n as u32 {
                let theirs = a != b
                    && petgraph::algo::has_path_connecting(
                        &as_graph(&facts),
                        NodeIndex::new(a as usize),
                        NodeIndex::new(b as usize),
                        None,
                    );
                assert_eq!(closure.before(a, b), theirs);
                assert_eq!(behind.contains(&b), theirs);
                pairs += usize::from(theirs);
            }
        }
        assert_eq!(closure.pairs(), pairs);
        if facts.n > 1 {
            let strength = graph::order_strength(&inst).unwrap();
            let all = facts.n * (facts.n - 1) / 2;
            assert!((strength * all as f64 - pairs as f64).abs() < 1e-9);
        }
        let (mut width, mut chain) = (0, 0);
        for set in 0u32..1 << facts.n {
            let members: Vec<u32> = (0..facts.n as u32).filter(|s| set >> s & 1 == 1).collect();
            let ordered = |&a: &u32, &b: &u32| closure.before(a, b) || closure.before(b, a);
            let each = |want: bool| {
                members
                    .iter()
                    .enumerate()
                    .all(|(i, a)| members[i + 1..].iter().all(|b| ordered(a, b) == want))
            };
            if each(false) {
                width = width.max(members.len());
            }
            if each(true) {
                chain = chain.max(members.len());
            }
        }
        assert_eq!(graph::width(&inst), Some(width));
        assert_eq!(graph::longest_chain(&inst), Some(chain));
    }
    assert!(closed > 500, "{closed}");
}
