//! `rules`: the list of rules, and the page of one.

use crate::cli::Rules;
use crate::outcome::Outcome;
use check::rules::{ALL, named};
use sheet::{Look, pages};

/// Does it.
pub fn run(arguments: &Rules, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let Some(name) = &arguments.rule else {
        outcome.data(&pages::rules(ALL, look));
        return outcome;
    };
    match named(name) {
        Some(rule) => outcome.data(&pages::rule(rule, look)),
        None => {
            let known: Vec<&str> = ALL.iter().map(|rule| rule.name).collect();
            outcome.fail(match syntax::nearest_word(name, known) {
                Some(near) => format!("there is no rule \"{name}\"; did you mean {near}?"),
                None => format!("there is no rule \"{name}\"; `fitwright rules` lists them"),
            });
        }
    }
    outcome
}
