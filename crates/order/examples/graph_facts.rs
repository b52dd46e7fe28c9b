//! Reads graphs from standard input and prints what the ordering core says of
//! each, one JSON object a line, so that another program can compare.
//!
//! A graph is a line `graph N`, a line of N weights, and lines `a b` for its
//! arcs, steps counted from 0. Reasons are the numbers of the arcs.

use order::{
    Builder, Effort, Feasibility, Instance, Proof, Reason, StuckKind, feasible, graph,
    implied_arcs, nearest, nearest_weighted,
};
use std::io::Read;

fn main() {
    let mut text = String::new();
    if let Err(error) = std::io::stdin().read_to_string(&mut text) {
        eprintln!("cannot read standard input: {error}");
        std::process::exit(2);
    }
    for part in text.split("graph ").skip(1) {
        match read(part) {
            Some((inst, weights)) => println!("{}", facts(&inst, &weights)),
            None => {
                eprintln!("not a graph: {part}");
                std::process::exit(2);
            }
        }
    }
}

fn read(text: &str) -> Option<(Instance, Vec<u32>)> {
    let mut lines = text.lines();
    let n: usize = lines.next()?.trim().parse().ok()?;
    let weights: Vec<u32> = lines
        .next()?
        .split_whitespace()
        .map(|w| w.parse().ok())
        .collect::<Option<_>>()?;
    let mut builder = Builder::new(n);
    for (i, line) in lines.enumerate() {
        let (a, b) = line.split_once(' ')?;
        let (a, b): (u32, u32) = (a.parse().ok()?, b.parse().ok()?);
        if a as usize >= n || b as usize >= n {
            return None;
        }
        builder.before(a, b, Reason(i as u32));
    }
    (weights.len() == n).then(|| (builder.build(), weights))
}

fn facts(inst: &Instance, weights: &[u32]) -> String {
    let mut out = vec![
        field("steps", inst.steps()),
        field("components", lists(graph::components(inst))),
    ];
    match feasible(inst, Effort::default()) {
        Feasibility::Order(order) => out.push(field("order", list(order))),
        Feasibility::Stuck(stuck) => {
            if let StuckKind::Cycle { links, .. } = stuck.kind {
                let arcs = links.iter().map(|l| vec![l.0, l.2]);
                out.push(field("cycle", lists(arcs)));
            }
            return format!("{{{}}}", out.join(","));
        }
        Feasibility::Unknown { .. } => return "{}".to_owned(),
    }
    if let Some(closure) = graph::Closure::new(inst) {
        let behind = (0..inst.steps() as u32).map(|a| closure.behind(a).collect::<Vec<_>>());
        out.push(field("behind", lists(behind)));
    }
    if let Some(order) = graph::topological(inst) {
        out.push(field("topological", list(order)));
    }
    let spare = implied_arcs(inst, Effort::default());
    out.push(field("implied", list(spare.arcs.iter().map(|a| a.2.0))));
    if let (Some(width), Some(chain)) = (graph::width(inst), graph::longest_chain(inst)) {
        out.push(field("width", width));
        out.push(field("longest_chain", chain));
    }
    for (name, found) in [
        ("nearest", nearest(inst, Effort::default())),
        (
            "nearest_weighted",
            nearest_weighted(inst, weights, Effort::default()),
        ),
    ] {
        if let Ok(found) = found
            && found.proof == Proof::Fewest
        {
            let moved = list(found.moved.iter().map(|m| m.step));
            let order = list(found.order);
            let cost = found.cost;
            let value = format!(r#"{{"cost":{cost},"order":{order},"moved":{moved}}}"#);
            out.push(field(name, value));
        }
    }
    format!("{{{}}}", out.join(","))
}

fn field(name: &str, value: impl std::fmt::Display) -> String {
    format!(r#""{name}":{value}"#)
}

fn list<T: std::fmt::Display>(items: impl IntoIterator<Item = T>) -> String {
    let items: Vec<String> = items.into_iter().map(|x| x.to_string()).collect();
    format!("[{}]", items.join(","))
}

fn lists(items: impl IntoIterator<Item = Vec<u32>>) -> String {
    list(items.into_iter().map(list))
}
