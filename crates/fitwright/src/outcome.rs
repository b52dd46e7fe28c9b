//! What a command came to, and how it is handed over.

use std::io::{self, ErrorKind, Write};
use std::process::ExitCode;

/// How it went, worst last.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug, Default)]
pub enum Status {
    /// Nothing wrong.
    #[default]
    Fine,
    /// Something was found.
    Found,
    /// The job could not be done.
    Failed,
}

/// What a command came to.
#[derive(Debug, Default)]
pub struct Outcome {
    /// For standard output.
    pub data: String,
    /// For standard error, a line each.
    pub talk: Vec<String>,
    /// The exit status.
    pub status: Status,
}

impl Outcome {
    /// Something for standard output.
    pub fn data(&mut self, text: &str) {
        self.data += text;
    }

    /// A line for standard error.
    pub fn say(&mut self, line: impl Into<String>) {
        self.talk.push(line.into());
    }

    /// Why something could not be done.
    pub fn fail(&mut self, why: impl std::fmt::Display) {
        self.say(format!("fitwright: {why}"));
        self.worse(Status::Failed);
    }

    /// The status is at least this bad.
    pub fn worse(&mut self, status: Status) {
        self.status = self.status.max(status);
    }

    /// Hands it over. A reader that has gone away, such as `head`, is no fault; a full disk is.
    pub fn deliver(mut self) -> ExitCode {
        let mut out = io::stdout().lock();
        let written = out
            .write_all(self.data.as_bytes())
            .and_then(|()| out.flush());
        if let Err(error) = written
            && error.kind() != ErrorKind::BrokenPipe
        {
            self.fail(format!("cannot write the result: {error}"));
        }
        let mut err = io::stderr().lock();
        for line in &self.talk {
            // Where even this cannot be written there is nobody left to tell.
            let _ = writeln!(err, "{}", sheet::look::harmless(line));
        }
        ExitCode::from(match self.status {
            Status::Fine => 0,
            Status::Found => 1,
            Status::Failed => 2,
        })
    }
}
