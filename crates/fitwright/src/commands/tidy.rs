//! `tidy`: the plan set out evenly.

use super::diff::diff;
use crate::cli::Tidy;
use crate::outcome::{Outcome, Status};
use crate::{input, write};
use plan::model::FileId;
use sheet::Look;

/// Does it.
pub fn run(arguments: &Tidy, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let plans = input::plans(&arguments.plans, &mut outcome);
    for asked in &plans {
        let Some(source) = asked.plan.sources.get(FileId(0).0 as usize) else {
            continue;
        };
        let tidy = syntax::tidy(&source.tree);
        let name = asked.name();
        if arguments.write {
            let Some(file) = &asked.file else {
                outcome.data(&tidy);
                continue;
            };
            if tidy == *asked.text {
                continue;
            }
            match write::replace(file, asked.text.as_bytes(), tidy.as_bytes()) {
                Ok(()) => outcome.say(format!("{name} is tidy now.")),
                Err(why) => outcome.fail(why),
            }
        } else if tidy != *asked.text {
            if arguments.check {
                outcome.data(&format!("{name} is untidy\n"));
                outcome.worse(Status::Found);
            } else {
                outcome.data(&diff(&name, &asked.text, &tidy, look));
            }
        }
    }
    outcome
}
