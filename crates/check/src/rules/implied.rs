//! A condition that the others already imply.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};
use crate::rules::Rule;
use crate::demand::{What, Why};
use crate::problem::Source;
use crate::say;
use order::{Effort, Reason};
use plan::model::{Place, StepId};
use std::collections::{HashMap, VecDeque};

/// The rule.
pub const RULE: Rule = Rule {
    name: "implied",
    severity: Severity::Hint,
    statement: "A condition on a step says what other conditions already imply.",
    reason: "It does no harm, but who changes the plan later has to keep it true in two places, and may take it for a reason of its own.",
    bad: r#"part first
part second
part third
fit first as a
fit second after a as b
fit third after b and a
"#,
    good: r#"part first
part second
part third
fit first as a
fit second after a as b
fit third after b
"#,
    find,
};

fn find(bench: &Bench, found: &mut Vec<Finding>) {
    if !bench.solved.tangles.is_empty() || !bench.solved.failed.is_empty() {
        return;
    }
    // Of all that one word stands for, some always goes without saying, and nobody wrote it.
    let one_by_one = |place: Place| {
        let text = bench.plan.text(place);
        !(text.contains('*') || text.contains("everything"))
    };
    let written = |d: u32| {
        let demand = &bench.demands[d as usize];
        matches!(demand.why, Why::After | Why::Before) && one_by_one(demand.place)
    };
    let mut first_said: HashMap<(u32, What), u32> = HashMap::new();
    let mut twice: Vec<(u32, u32)> = Vec::new();
    for (d, demand) in (0u32..).zip(&bench.demands) {
        if let ([way], true) = (demand.ways.as_slice(), written(d))
            && let [atom] = way.atoms.as_slice()
        {
            match first_said.get(&(demand.step, atom.what)) {
                Some(first) => twice.push((d, *first)),
                None => {
                    first_said.insert((demand.step, atom.what), d);
                }
            }
        }
    }
    for &(d, first) in &twice {
        let by = &bench.demands[first as usize];
        found.push(finding(bench, d, &[(by.place, "said here already")]));
    }
    let problem = bench.problem();
    let implied = order::implied_arcs(&problem.instance, Effort::default());
    let mut next: Option<HashMap<u32, Vec<(u32, Reason)>>> = None;
    let mut said: Vec<u32> = twice.iter().map(|t| t.0).collect();
    for (from, to, why) in implied.arcs {
        let Source::Demand(d, _) = problem.sources[why.0 as usize] else {
            continue;
        };
        if !written(d) || said.contains(&d) || bench.demands[d as usize].ways.len() > 1 {
            continue;
        }
        let next = next.get_or_insert_with(|| {
            let mut next: HashMap<u32, Vec<(u32, Reason)>> = HashMap::new();
            for (a, b, why) in problem.instance.arcs() {
                next.entry(a).or_default().push((b, why));
            }
            next
        });
        // Saying on the step what the map says of the very same pair is a help to the reader;
        // only a chain through other steps makes a condition superfluous.
        let Some(chain) = chain_through_others(next, from, to) else {
            continue;
        };
        let becauses: Vec<(Place, &str)> = chain
            .iter()
            .map(|why| (say::reason(bench, &problem.sources[why.0 as usize]).1, "this sees to it"))
            .collect();
        said.push(d);
        found.push(finding(bench, d, &becauses));
    }
}

fn finding(bench: &Bench, d: u32, because: &[(Place, &str)]) -> Finding {
    let demand = &bench.demands[d as usize];
    let text = say::asked(bench, demand);
    let about = bench.plan.text(demand.place);
    let says = format!("“{text}” goes without saying here: other conditions already see to it.");
    let mut finding = Finding::new(&RULE, demand.place, about, says);
    for &(place, says) in because {
        if place != demand.place && !finding.because.iter().any(|b| b.place == place) {
            finding = finding.because(place, says);
        }
    }
    finding.steps = vec![StepId(demand.step)];
    finding
}

/// The reasons of a shortest chain of two or more links from `from` to `to`.
fn chain_through_others(next: &HashMap<u32, Vec<(u32, Reason)>>, from: u32, to: u32) -> Option<Vec<Reason>> {
    let mut came: HashMap<u32, (u32, Reason)> = HashMap::new();
    let mut open = VecDeque::from([from]);
    while let Some(at) = open.pop_front() {
        for &(then, why) in next.get(&at).into_iter().flatten() {
            if (at == from && then == to) || then == from || came.contains_key(&then) {
                continue;
            }
            came.insert(then, (at, why));
            if then == to {
                let mut chain = Vec::new();
                let mut back = to;
                while back != from {
                    let (before, why) = came.get(&back)?;
                    chain.push(*why);
                    back = *before;
                }
                chain.reverse();
                return Some(chain);
            }
            open.push_back(then);
        }
    }
    None
}
