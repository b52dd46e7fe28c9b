//! Mends: changes of the text that take a finding away.

use crate::bench::Bench;
use crate::demand::Why;
use crate::finding::{Mend, MendEdit};
use crate::item_moves::item_moves;
use crate::words;
use plan::model::{FileId, Place, State, StepId};
use syntax::tree::{Span, State as Word, Verb};

/// A mend that moves these steps to where the nearest order has them; none when one of them is
/// written once for several members of a series, so that the text has no single place for it.
pub fn moves(bench: &Bench, moved: &[StepId]) -> Option<Mend> {
    if moved.is_empty() {
        return None;
    }
    let tree = &bench.plan.sources.first()?.tree;
    let item_moves = item_moves(bench, moved).ok()?;
    let edits = syntax::edit::move_items(tree, &item_moves)
        .into_iter()
        .map(|e| MendEdit {
            file: FileId(0),
            span: e.span,
            new: e.new,
        })
        .collect();
    Some(Mend {
        title: move_title(bench, moved)?,
        edits,
    })
}

/// What the move does, as an order to the reader.
pub fn move_title(bench: &Bench, moved: &[StepId]) -> Option<String> {
    let plan = bench.plan;
    bench.solved.nearest.as_ref()?;
    let moving = bench.moving();
    let first = moved.first()?.0;
    if !moving.moves[first as usize] {
        return None;
    }
    let later = moving.later[first as usize];
    let anchor = if later {
        let before = moving.before(first);
        before.map(|s| format!("behind “{}”", words::step(plan, StepId(s))))
    } else {
        let behind = moving.behind(first);
        behind.map(|s| format!("in front of “{}”", words::step(plan, StepId(s))))
    };
    let names: Vec<String> = moved
        .iter()
        .map(|s| format!("“{}”", words::step(plan, *s)))
        .collect();
    let way = if later { "down" } else { "up" };
    Some(match anchor {
        Some(anchor) => format!("Move {} {way}, {anchor}.", words::list(&names)),
        None => format!("Move {} {way}.", words::list(&names)),
    })
}

/// A mend that adds words behind a step's targets.
pub fn say_on_step(bench: &Bench, step: StepId, add: &str, title: String) -> Mend {
    let place = words::step_place(bench.plan, step);
    Mend {
        title,
        edits: vec![MendEdit {
            file: place.file,
            span: Span::new(place.span.end, place.span.end),
            new: format!(" {add}"),
        }],
    }
}

/// A mend that writes a new step on a line of its own in front of another.
pub fn step_in_front(bench: &Bench, step: StepId, line: &str, title: String) -> Option<Mend> {
    bench.alone_in_its_item(step).then(|| {
        let place = bench.plan.step(step).keyword;
        Mend {
            title,
            edits: vec![MendEdit {
                file: place.file,
                span: Span::new(place.span.start, place.span.start),
                new: format!("{line}{}", newline(bench, place)),
            }],
        }
    })
}

/// A mend that writes a new step on a line of its own behind another.
pub fn step_behind(bench: &Bench, step: StepId, line: &str, title: String) -> Option<Mend> {
    let place = bench.plan.step(step).place;
    let tree = &bench.plan.sources.get(place.file.0 as usize)?.tree;
    // Behind the whole line, so that a comment at its end stays with its step.
    let rest = tree.text.get(place.span.end as usize..)?;
    let to_line_end = rest.find(['\n', '\r']).unwrap_or(rest.len());
    let at = place.span.end + to_line_end as u32;
    Some(Mend {
        title,
        edits: vec![MendEdit {
            file: place.file,
            span: Span::new(at, at),
            new: format!("{}{line}", newline(bench, place)),
        }],
    })
}

/// A mend that puts other words in place of some.
pub fn replace(place: Place, new: &str, title: String) -> Mend {
    Mend {
        title,
        edits: vec![MendEdit {
            file: place.file,
            span: place.span,
            new: new.to_string(),
        }],
    }
}

/// The line end that the text uses.
fn newline(bench: &Bench, place: Place) -> &'static str {
    let text = bench
        .plan
        .sources
        .get(place.file.0 as usize)
        .map_or("", |s| &s.tree.text);
    if text.contains("\r\n") { "\r\n" } else { "\n" }
}

/// A mend that writes the step which a standing rule asks for in front of the step that comes too
/// soon for it, where no step does it at all.
pub fn owed_first(bench: &Bench, d: u32) -> Option<Mend> {
    let plan = bench.plan;
    let demand = &bench.demands[d as usize];
    let Why::MustBefore(n) = demand.why else {
        return None;
    };
    if !bench.solved.impossible[d as usize] {
        return None;
    }
    let must = &plan.thing(demand.thing).must[n as usize];
    let verb = must.states.iter().find_map(|s| match s {
        State::Is(word) => verb_for(*word),
        State::At(_) => None,
    })?;
    let step = StepId(demand.step);
    let line = format!(
        "{} {}",
        words::verb_word(verb),
        plan.thing(demand.thing).name
    );
    let title = format!("Write “{line}” in front of “{}”.", words::step(plan, step));
    step_in_front(bench, step, &line, title)
}

/// The verb that brings a participle about.
fn verb_for(word: Word) -> Option<Verb> {
    Some(match word {
        Word::Marked => Verb::Mark,
        Word::Measured => Verb::Measure,
        Word::Inspected => Verb::Inspect,
        Word::Cleaned => Verb::Clean,
        Word::Bled => Verb::Bleed,
        Word::Primed => Verb::Prime,
        Word::Turned => Verb::Turn,
        Word::Reached => Verb::Reach,
        _ => return None,
    })
}

/// How a thing is named on the line of a step: with its series holes where the line stands for
/// every member.
pub fn name_on_line(bench: &Bench, step: StepId, name: &str) -> String {
    match bench.stems.get(name) {
        Some(stem) if !bench.alone_in_its_item(step) => stem.clone(),
        _ => name.to_string(),
    }
}
