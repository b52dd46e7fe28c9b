//! One file a command.

mod arrange;
mod calc;
mod check;
mod diff;
mod explain;
mod freedom;
mod kit;
mod rules;
mod sheet;
mod tidy;
mod torques;
mod windows;

use crate::cli::{Cli, Command};
use crate::input::Asked;
use crate::outcome::Outcome;
use ::check::Bench;
use ::sheet::Look;

/// Does what the command line asks for.
pub fn run(cli: &Cli, look: Look) -> Outcome {
    match &cli.command {
        Command::Check(arguments) => check::run(arguments, look),
        Command::Sheet(arguments) => sheet::run(arguments, look),
        Command::Arrange(arguments) => arrange::run(arguments, look),
        Command::Why(arguments) => explain::run(arguments, look),
        Command::Windows(plans) => windows::run(plans, look),
        Command::Freedom(plans) => freedom::run(plans, look),
        Command::Tidy(arguments) => tidy::run(arguments, look),
        Command::Torques(arguments) => torques::run(arguments, look),
        Command::Kit(arguments) => kit::run(arguments, look),
        Command::Calc(arguments) => calc::run(arguments, look),
        Command::Rules(arguments) => rules::run(arguments, look),
    }
}

/// A page for each plan, under the plan's name where there are several.
fn each_titled(plans: &[Asked], outcome: &mut Outcome, page: impl Fn(&Bench<'_>) -> String) {
    for (n, asked) in plans.iter().enumerate() {
        if plans.len() > 1 {
            let gap = if n > 0 { "\n" } else { "" };
            outcome.data(&format!("{gap}{}\n", asked.name()));
        }
        outcome.data(&page(&Bench::of(&asked.plan)));
    }
}
