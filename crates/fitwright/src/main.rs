//! The command line: reads files, asks the other crates, prints what they give.
//!
//! Every command is a function from its arguments to an [`outcome::Outcome`]:
//! what goes to standard output, what goes to standard error, and the exit
//! status. Only this crate touches files, and only [`mod@write`] changes any. It
//! must never decide what is right or wrong about a plan, nor lay out a page.

mod cli;
mod commands;
mod input;
mod outcome;
mod pick;
mod shelf;
mod surroundings;
mod write;

use clap::Parser;
use std::process::ExitCode;

fn main() -> ExitCode {
    let cli = cli::Cli::parse();
    let look = surroundings::look(&cli.shown);
    commands::run(&cli, look).deliver()
}
