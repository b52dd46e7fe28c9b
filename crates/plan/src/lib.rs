//! Tree to plan: names resolved, series spread out, the access map built.
//!
//! Takes the trees of a plan and of the files it uses and gives one
//! [`model::Plan`] and its problems as typed data. Texts come through the small
//! [`Shelf`] trait, so that tests, the command line and the editor bring their
//! own. [`index`] turns a plan round (what holds this part?), [`find`] looks a
//! step or thing up by what a person calls it.
//!
//! It must never know of files, screens, severities or sentences for people,
//! and nothing of how an order is found.

mod access;
mod amounts;
mod bodies;
mod conditions;
mod damage;
mod declare;
mod desk;
mod details;
mod everything;
mod fasteners;
pub mod find;
mod heading;
pub mod index;
mod kinds;
mod lookup;
pub mod model;
mod names;
mod near;
mod pattern;
mod problem;
mod resolve;
mod room;
mod rows;
mod rules;
mod series;
mod sorts;
mod spelling;
mod stages;
mod states;
mod steps;
mod things;
mod tools;
mod units;
mod unknown;
mod uses;

pub use resolve::resolve;

/// Whether this is a kind of tool known by name: `torque-wrench`, `feeler-gage`.
pub fn is_tool_kind(word: &str) -> bool {
    kinds::known(&kinds::one(word))
}

/// Gives the texts behind `use`.
pub trait Shelf {
    /// The tree of the file `path`, as written in the `use` of the text named `from`; with the
    /// name to show for it. `Err` is why not, in a few words.
    fn take(
        &self,
        from: &str,
        path: &str,
    ) -> Result<(String, std::sync::Arc<syntax::tree::Tree>), String>;
}

/// A shelf with nothing on it.
pub struct EmptyShelf;

impl Shelf for EmptyShelf {
    fn take(
        &self,
        _: &str,
        _: &str,
    ) -> Result<(String, std::sync::Arc<syntax::tree::Tree>), String> {
        Err("there is nowhere to look for it".into())
    }
}
