//! The rules: one file each, one list.

use crate::bench::Bench;
use crate::finding::{Finding, Severity};

/// A rule: its name in the trade's words, the page that explains it, and how it finds.
#[derive(Debug)]
pub struct Rule {
    /// The name.
    pub name: &'static str,
    /// How bad a finding of it usually is.
    pub severity: Severity,
    /// One sentence: what it finds.
    pub statement: &'static str,
    /// Why that matters at the bench.
    pub reason: &'static str,
    /// A plan that breaks it.
    pub bad: &'static str,
    /// The same plan put right.
    pub good: &'static str,
    /// Finds.
    pub find: fn(&Bench, &mut Vec<Finding>),
}

impl PartialEq for Rule {
    fn eq(&self, other: &Rule) -> bool {
        self.name == other.name
    }
}

impl Eq for Rule {}

/// Makes the modules and the table from one list.
macro_rules! rules {
    ($($module:ident),+ $(,)?) => {
        $(pub mod $module;)+
        /// Every rule, in the order in which the pages list them.
        pub const ALL: &[&Rule] = &[$(&$module::RULE),+];
    };
}

rules! {
    shut_in,
    out_of_turn,
    no_order,
    never_so,
    tight_too_soon,
    left_loose,
    unlocked,
    still_locked,
    never_fitted,
    twice_fitted,
    left_off,
    left_in,
    closed_unseen,
    disturbed,
    used_twice,
    not_renewed,
    unmarked,
    wrong_place,
    no_counterhold,
    torque_missing,
    torque_unsourced,
    torque_high,
    wrench_range,
    wrench_missing,
    wrong_drive,
    pattern_incomplete,
    one_unit,
    wrong_locker,
    too_hot,
    wrong_fluid,
    heavy,
    implied,
    unknown_name,
    twice_named,
    unused,
    unreadable,
    misplaced,
}

/// The rule of this name.
pub fn named(name: &str) -> Option<&'static Rule> {
    ALL.iter().copied().find(|r| r.name == name)
}

/// Runs every rule; findings by place, then by rule.
pub fn run(bench: &Bench) -> Vec<Finding> {
    let mut found = Vec::new();
    for rule in ALL {
        (rule.find)(bench, &mut found);
    }
    let mut found = crate::merge::like_of_series(bench, found);
    found.sort_by(|a, b| (a.place, a.rule.name, &a.says).cmp(&(b.place, b.rule.name, &b.says)));
    found
}
