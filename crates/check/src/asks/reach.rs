//! The ways to reach a thing at a step.

use super::places::{carriers, host};
use super::{clause_ways, main};
use crate::chain::{Test, presence};
use crate::demand::{Atom, Way};
use crate::lives::Lives;
use plan::index::Index;
use plan::model::{
    Blocker, Clause, Place, Plan, Sort, State, Subject, Thing, ThingId, ToolUse, WayIn,
};
use syntax::tree::State as Word;

/// Everything needed to work out ways.
pub struct Around<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Who stands on what.
    pub index: &'a Index,
    /// The chains.
    pub lives: &'a Lives,
}

/// The ways in which `thing` can be reached with `tools` (none named: any). `loose` says that
/// the thing itself may lie on the bench, where nothing is in its way.
///
/// # Which lines count
/// A line counts when all its tools are among those named. When none of the tools named is of a
/// kind that any line speaks of (only a torque wrench is named, say), the step says nothing about
/// the way in and any line may serve.
pub fn reach_ways(around: &Around, thing: ThingId, tools: &[ToolUse], loose: bool) -> Vec<Way> {
    let this = around.plan.thing(thing);
    let mut own = carriers(around.plan, around.index, thing);
    if let (Sort::Point, Some(on)) = (this.sort, host(around.plan, thing)) {
        own.insert(0, on);
    } else if loose && this.sort != Sort::Fasteners {
        own.insert(0, thing);
    }
    let mut ways = Vec::new();
    for (line, way_in) in candidate_lines(this, tools) {
        line_ways(around, this, &own, line, way_in, tools, &mut ways);
    }
    ways
}

/// The lines that count for a step with these tools; none for a thing without lines means that
/// only its blockers matter.
fn candidate_lines<'a>(
    this: &'a Thing,
    tools: &[ToolUse],
) -> Vec<(Option<usize>, Option<&'a WayIn>)> {
    if this.ways.is_empty() {
        return vec![(None, None)];
    }
    let all = || {
        this.ways
            .iter()
            .enumerate()
            .map(|(i, w)| (Some(i), Some(w)))
    };
    if tools.is_empty() {
        return all().collect();
    }
    let spoken_of = |tool: &ToolUse| {
        this.ways
            .iter()
            .flat_map(|w| &w.tools)
            .any(|t| same_kind(t, tool))
    };
    if !tools.iter().any(spoken_of) {
        return all().collect();
    }
    all()
        .filter(|(_, w)| {
            w.is_some_and(|w| {
                w.tools
                    .iter()
                    .all(|t| tools.iter().any(|u| same_tool(t, u)))
            })
        })
        .collect()
}

fn line_ways(
    around: &Around,
    this: &Thing,
    own: &[ThingId],
    line: Option<usize>,
    way_in: Option<&WayIn>,
    tools: &[ToolUse],
    ways: &mut Vec<Way>,
) {
    let mut blockers: Vec<(ThingId, Place)> = way_in
        .map(|w| w.clear_of.iter().map(|r| (r.thing, r.place)).collect())
        .unwrap_or_default();
    for blocker in &this.blockers {
        if blocks(blocker, way_in, tools) && !blockers.iter().any(|(b, _)| *b == blocker.by) {
            blockers.push((blocker.by, blocker.place));
        }
    }
    let mut needs: Vec<Vec<Atom>> = vec![Vec::new()];
    for clause in way_in.iter().flat_map(|w| &w.needs.clauses) {
        needs = product(&needs, &in_place_ways(around, clause));
    }
    // Each blocker with what would have to be elsewhere for it not to be in the same place.
    let apart: Vec<(Atom, Vec<ThingId>)> = blockers
        .iter()
        .map(|&(by, place)| {
            let theirs = carriers(around.plan, around.index, by);
            let between = own
                .iter()
                .filter(|c| !theirs.contains(c) && **c != by)
                .chain(theirs.iter().filter(|c| !own.contains(c)))
                .copied()
                .collect();
            (main(around.lives, by, Test::AtMost(0), place), between)
        })
        .collect();
    let mut aways: Vec<ThingId> = apart.iter().flat_map(|(_, b)| b).copied().collect();
    aways.sort();
    aways.dedup();
    let place = way_in.map_or(this.item, |w| w.place);
    for need in &needs {
        let all = apart.iter().map(|(atom, _)| *atom);
        ways.push(Way {
            atoms: need.iter().copied().chain(all).collect(),
            line,
            elsewhere: false,
        });
        for &away in &aways {
            let elsewhere = main(around.lives, away, Test::AtMost(0), place);
            let rest = apart
                .iter()
                .filter(|(_, between)| !between.contains(&away))
                .map(|(atom, _)| *atom);
            ways.push(Way {
                atoms: need
                    .iter()
                    .copied()
                    .chain(std::iter::once(elsewhere))
                    .chain(rest)
                    .collect(),
                line,
                elsewhere: true,
            });
        }
    }
}

/// The ways in which a clause of `needs` holds: something that only has to be there may be there
/// on trial.
pub fn in_place_ways(around: &Around, clause: &Clause) -> Vec<Vec<Atom>> {
    if let Subject::Thing(thing) = clause.subject
        && clause.state == State::Is(Word::Fitted)
        && matches!(around.plan.thing(thing).sort, Sort::Part | Sort::Unit)
    {
        let there = Test::AtLeast(presence::DRY);
        return vec![vec![main(around.lives, thing, there, clause.place)]];
    }
    clause_ways(around.plan, around.lives, around.index, clause)
}

/// Whether a `covers` or `behind` counts for this line and these tools.
fn blocks(blocker: &Blocker, way_in: Option<&WayIn>, tools: &[ToolUse]) -> bool {
    let side = match (&blocker.side, way_in) {
        (None, _) => true,
        (Some(side), Some(way_in)) => way_in.side.as_ref() == Some(side),
        (Some(_), None) => false,
    };
    let tool = blocker.tool.as_ref().is_none_or(|t| {
        way_in.is_some_and(|w| w.tools.iter().any(|u| same_tool(t, u)))
            || (way_in.is_none_or(|w| w.tools.is_empty()) && tools.iter().any(|u| same_tool(t, u)))
    });
    side && tool
}

/// Whether two tools are the same: the same declared tool, or the same kind with no two
/// different sizes.
pub fn same_tool(a: &ToolUse, b: &ToolUse) -> bool {
    if let (Some(a), Some(b)) = (a.thing, b.thing) {
        return a == b;
    }
    let sizes_agree = match (&a.size, &b.size) {
        (Some(a), Some(b)) => a == b,
        _ => true,
    };
    same_kind(a, b) && sizes_agree
}

fn same_kind(a: &ToolUse, b: &ToolUse) -> bool {
    if let (Some(a), Some(b)) = (a.thing, b.thing) {
        return a == b;
    }
    match (&a.kind, &b.kind) {
        (Some(a), Some(b)) => a == b,
        _ => false,
    }
}

/// Every combination of one of `a` with one of `b`.
pub fn product(a: &[Vec<Atom>], b: &[Vec<Atom>]) -> Vec<Vec<Atom>> {
    let mut all = Vec::with_capacity(a.len() * b.len());
    for x in a {
        for y in b {
            all.push(x.iter().chain(y).copied().collect());
        }
    }
    all
}
