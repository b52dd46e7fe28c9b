//! Plans for the tests, and their sheets.

use check::Bench;
use plan::model::Plan;
use sheet::Look;
use sheet::checklist::{Checklist, Entry, Worked};
use std::sync::Arc;
use syntax::tree::Tree;

/// Black on white, drawn in ASCII.
pub const ASCII: Look = Look {
    ascii: true,
    ..Look::PAPER
};

/// The plan of a text.
pub fn plan(text: &str) -> Plan {
    plan::resolve(
        "pump.rebuild",
        Arc::new(syntax::read(text)),
        &plan::EmptyShelf,
    )
}

/// A plan that uses other files, each a name and a text.
pub fn plan_with(text: &str, files: &'static [(&'static str, &'static str)]) -> Plan {
    struct Files(&'static [(&'static str, &'static str)]);
    impl plan::Shelf for Files {
        fn take(&self, _: &str, path: &str) -> Result<(String, Arc<Tree>), String> {
            let file = self.0.iter().find(|(name, _)| *name == path);
            let (name, text) = file.ok_or("there is no such file")?;
            Ok(((*name).into(), Arc::new(syntax::read(*text))))
        }
    }
    plan::resolve("pump.rebuild", Arc::new(syntax::read(text)), &Files(files))
}

/// The sheet of a text.
pub fn sheet(text: &str) -> Checklist {
    let plan = plan(text);
    let bench = Bench::of(&plan);
    Checklist::of(&Worked::of(&bench))
}

/// The entry of one step, by its number.
pub fn entry(text: &str, number: usize) -> Entry {
    let sheet = sheet(text);
    sheet
        .entries()
        .find(|entry| entry.number == number)
        .unwrap()
        .clone()
}

/// The whole sheet as a page of 80 columns.
pub fn page(text: &str) -> String {
    sheet::terminal::sheet(&sheet(text), ASCII)
}
