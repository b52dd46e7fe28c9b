//! The first words of an item.

use super::parts::{Ground, Parts};
use crate::grammar::{Piece, Rule};
use crate::tree::{Detail, Head, Kind, Says, Span, Verb};

/// The head that `piece` holds, and the members of a series, which stand behind
/// its name without a keyword and are a detail all the same.
pub(crate) fn head(piece: Piece<'_>, ground: Ground<'_>) -> Option<(Head, Option<Detail>)> {
    let rule = piece.as_rule();
    let start = piece.as_span().start();
    if let Some(verb) = verb(rule) {
        let keyword = keyword(piece.as_str(), rule == Rule::step_dry_fit, start, ground);
        let mut parts = Parts::new(piece, ground);
        parts.skip(Rule::dry_fit);
        let targets = parts.names();
        let words = parts.quoted();
        return Some((
            Head::Step {
                verb,
                keyword,
                targets,
                words,
            },
            None,
        ));
    }
    let kind = kind(rule)?;
    let keyword = keyword(piece.as_str(), false, start, ground);
    let mut parts = Parts::new(piece, ground);
    let name = parts.name();
    let label = parts.quoted();
    let members = members(&mut parts);
    Some((
        Head::Declaration {
            kind,
            keyword,
            name,
            label,
        },
        members,
    ))
}

fn members(parts: &mut Parts<'_, '_>) -> Option<Detail> {
    let from = parts.next_span()?;
    let members = parts.members()?;
    let to = match &members {
        crate::tree::Members::Range(_, last) => last.span,
        crate::tree::Members::List(list) => list.last()?.span,
    };
    let span = from.to(to);
    Some(Detail {
        span,
        keyword: from,
        says: Says::Members(members),
        because: None,
    })
}

/// The first word, or the first two where a blank stands for a hyphen.
fn keyword(text: &str, two: bool, start: usize, ground: Ground<'_>) -> Span {
    let count = if two {
        super::words_of_hyphenated(text)
    } else {
        1
    };
    ground.part(start, start + super::words_length(text, count))
}

fn kind(rule: Rule) -> Option<Kind> {
    Some(match rule {
        Rule::head_plan => Kind::Plan,
        Rule::head_part => Kind::Part,
        Rule::head_unit => Kind::Unit,
        Rule::head_item => Kind::Item,
        Rule::head_fasteners => Kind::Fasteners,
        Rule::head_point => Kind::Point,
        Rule::head_position => Kind::Position,
        Rule::head_tool => Kind::Tool,
        Rule::head_supply => Kind::Supply,
        Rule::head_series => Kind::Series,
        Rule::head_use => Kind::Use,
        Rule::head_stage => Kind::Stage,
        _ => return None,
    })
}

fn verb(rule: Rule) -> Option<Verb> {
    Some(match rule {
        Rule::step_fit => Verb::Fit,
        Rule::step_dry_fit => Verb::DryFit,
        Rule::step_start => Verb::Start,
        Rule::step_snug => Verb::Snug,
        Rule::step_tighten => Verb::Tighten,
        Rule::step_lock => Verb::Lock,
        Rule::step_unlock => Verb::Unlock,
        Rule::step_slacken => Verb::Slacken,
        Rule::step_undo => Verb::Undo,
        Rule::step_remove => Verb::Remove,
        Rule::step_apply => Verb::Apply,
        Rule::step_measure => Verb::Measure,
        Rule::step_set => Verb::Set,
        Rule::step_mark => Verb::Mark,
        Rule::step_bleed => Verb::Bleed,
        Rule::step_fill => Verb::Fill,
        Rule::step_drain => Verb::Drain,
        Rule::step_prime => Verb::Prime,
        Rule::step_inspect => Verb::Inspect,
        Rule::step_clean => Verb::Clean,
        Rule::step_heat => Verb::Heat,
        Rule::step_chill => Verb::Chill,
        Rule::step_turn => Verb::Turn,
        Rule::step_reach => Verb::Reach,
        Rule::step_sign => Verb::Sign,
        Rule::step_do => Verb::Do,
        _ => return None,
    })
}

/// Whether the rule reads the head of an item.
pub(crate) fn is_head(rule: Rule) -> bool {
    kind(rule).is_some() || verb(rule).is_some()
}
