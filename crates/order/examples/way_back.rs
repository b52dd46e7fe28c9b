//! Reads removal questions from standard input and prints what the ordering
//! core answers to each, one JSON object a line, so that another program can
//! compare.
//!
//! A question is a line `question N`, a line of N costs, and then lines
//! `gone T`, `condition T: ROUTE | ROUTE`, `target: ROUTE | ROUTE`, where a
//! route is things joined by `+`, or `free`; nothing behind the colon is no
//! route at all. Things are counted from 0.

use order::removal::{Condition, Outcome, Removals, Subject};
use order::{Effort, Optimum};
use std::io::Read;

fn main() {
    let mut text = String::new();
    if let Err(error) = std::io::stdin().read_to_string(&mut text) {
        eprintln!("cannot read standard input: {error}");
        std::process::exit(2);
    }
    for part in text.split("question ").skip(1) {
        match read(part) {
            Some(question) => println!("{}", answer(&question)),
            None => {
                eprintln!("not a question: {part}");
                std::process::exit(2);
            }
        }
    }
}

fn read(text: &str) -> Option<Removals> {
    let mut lines = text.lines();
    let n: usize = lines.next()?.trim().parse().ok()?;
    let costs = lines.next()?.split_whitespace();
    let cost: Vec<u64> = costs.map(|c| c.parse().ok()).collect::<Option<_>>()?;
    if cost.len() != n {
        return None;
    }
    let mut out = Removals::new(&cost);
    let thing = |text: &str| text.trim().parse().ok().filter(|&t: &u32| (t as usize) < n);
    let routes = |text: &str| -> Option<Condition> {
        let routes = text.split('|').filter(|route| !route.trim().is_empty());
        routes
            .map(|route| match route.trim() {
                "free" => Some(Vec::new()),
                named => named.split('+').map(thing).collect(),
            })
            .collect()
    };
    for line in lines {
        if let Some(named) = line.strip_prefix("gone ") {
            out.gone(thing(named)?);
        } else if let Some(named) = line.strip_prefix("target:") {
            out.target(routes(named)?);
        } else {
            let (named, list) = line.strip_prefix("condition ")?.split_once(':')?;
            out.condition(thing(named)?, routes(list)?);
        }
    }
    Some(out)
}

fn answer(question: &Removals) -> String {
    match question.cheapest(Effort::default()) {
        Outcome::Reached(found) => {
            let bound = match found.proof {
                Optimum::Proved => found.cost,
                Optimum::AtLeast(bound) => bound,
            };
            let landmarks = found.landmarks.iter().map(list);
            format!(
                r#"{{"order":{},"cost":{},"bound":{bound},"landmarks":{}}}"#,
                list(&found.order),
                found.cost,
                list(landmarks)
            )
        }
        Outcome::Blocked(blocked) => {
            let things = blocked.shut.iter().filter_map(|shut| match shut.subject {
                Subject::Thing(thing) => Some(thing),
                Subject::Target(_) => None,
            });
            format!(
                r#"{{"blocked":{},"shut":{}}}"#,
                list(&blocked.targets),
                list(things)
            )
        }
    }
}

fn list<T: std::fmt::Display>(items: impl IntoIterator<Item = T>) -> String {
    let items: Vec<String> = items.into_iter().map(|x| x.to_string()).collect();
    format!("[{}]", items.join(","))
}
