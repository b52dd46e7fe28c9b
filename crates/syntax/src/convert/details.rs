//! One detail: its keyword, what it says, and the theme that reads it.

use super::parts::{Ground, Parts};
use super::{fasteners, steps, things};
use crate::grammar::{Piece, Rule};
use crate::tree::{Detail, Quoted, Says};

/// The detail that `piece` holds; `None` for a `because`, which belongs to the
/// detail before it.
pub(crate) fn detail(piece: Piece<'_>, ground: Ground<'_>) -> Option<Detail> {
    let rule = piece.as_rule();
    let text = piece.as_str();
    let start = piece.as_span().start();
    let span = ground.span(&piece);
    if rule == Rule::detail_remark {
        return Some(Detail {
            span,
            keyword: span,
            says: Says::Note(Quoted { span }),
            because: None,
        });
    }
    let length = match rule {
        // `8 x`, which may as well be `8x`.
        Rule::detail_group => {
            let mut inner = piece.clone().into_inner();
            let times = inner.find(|piece| piece.as_rule() == Rule::times);
            times.map_or(0, |times| times.as_span().end() - start)
        }
        _ => super::words_length(text, words_in_keyword(rule, text)),
    };
    let keyword = ground.part(start, start + length);
    let mut parts = Parts::new(piece, ground);
    let says = says(rule, &mut parts)?;
    Some(Detail {
        span,
        keyword,
        says,
        because: None,
    })
}

fn says(rule: Rule, parts: &mut Parts<'_, '_>) -> Option<Says> {
    Some(match rule {
        // The plan.
        Rule::detail_revision => Says::Revision(parts.word_of(Rule::code)?),
        Rule::detail_machine => Says::Machine(parts.quoted()?),
        Rule::detail_starts_apart => Says::StartsApart,
        Rule::detail_starts_assembled => Says::StartsAssembled,
        Rule::detail_torque_in => Says::TorqueIn(parts.word_of(Rule::unit)?),
        Rule::detail_length_in => Says::LengthIn(parts.word_of(Rule::unit)?),
        Rule::detail_people => Says::People(parts.word_of(Rule::count)?),
        Rule::detail_reviewed_by => things::reviewed(parts)?,
        // Things in place.
        Rule::detail_given => Says::Given,
        Rule::detail_onto => things::onto(parts),
        Rule::detail_travels_with => Says::Onto {
            names: steps::names_behind(parts, Rule::with),
            pressed: true,
        },
        Rule::detail_covers => {
            let (names, to, from) = things::names_and_way(parts);
            Says::Covers { names, to, from }
        }
        Rule::detail_behind => {
            let (names, to, from) = things::names_and_way(parts);
            Says::Behind { names, to, from }
        }
        Rule::detail_needs => Says::Needs(parts.needs()),
        Rule::detail_reach => things::reach(parts),
        Rule::detail_material => Says::Material(parts.word()?),
        Rule::detail_mass => Says::Mass(parts.quantity()?),
        Rule::detail_side => Says::Side(parts.word()?),
        Rule::detail_facing => Says::Facing(parts.quoted()?),
        Rule::detail_single_use => Says::SingleUse,
        Rule::detail_temporary => Says::Temporary,
        Rule::detail_count => Says::Count(parts.word_of(Rule::count)?),
        Rule::detail_matched_with => Says::MatchedWith(steps::names_behind(parts, Rule::with)),
        Rule::detail_takes => Says::Takes(parts.quantity()?),
        Rule::detail_hazard => Says::Hazard(parts.words()),
        Rule::detail_must_be => things::must_be(parts)?,
        Rule::detail_of => Says::Of(parts.names()),
        Rule::detail_at => Says::At(parts.names()),
        Rule::detail_size => Says::Size(parts.span(Rule::size)?),
        // Fasteners.
        Rule::detail_group => fasteners::group(parts)?,
        Rule::detail_hold => Says::Hold(parts.names()),
        Rule::detail_into => Says::Into {
            material: parts.word()?,
            depth: parts.quantity(),
        },
        Rule::detail_drive => fasteners::drive(parts)?,
        Rule::detail_counterhold => fasteners::counterhold(parts)?,
        Rule::detail_torque => fasteners::torque(parts)?,
        Rule::detail_passes => fasteners::passes(parts),
        Rule::detail_pattern => fasteners::pattern(parts),
        Rule::detail_floats_until => {
            Says::FloatsUntil(steps::condition_behind(parts, Rule::until)?)
        }
        Rule::detail_locked_by => fasteners::locked_by(parts),
        Rule::detail_frees_when_slack => Says::FreesWhenSlack,
        Rule::detail_moves_with => Says::MovesWith(steps::names_behind(parts, Rule::with)),
        Rule::detail_left_hand => Says::LeftHand,
        Rule::detail_lubricated_with => {
            parts.skip(Rule::with);
            Says::LubricatedWith(fasteners::name_or_words(parts)?)
        }
        // Points.
        Rule::detail_on => Says::On(parts.names()),
        Rule::detail_closed_by => Says::ClosedBy(steps::names_behind(parts, Rule::by)),
        Rule::detail_hold_amount => Says::Holds {
            fluid: fasteners::name_or_words(parts)?,
            amount: parts.quantity(),
        },
        Rule::detail_service_every => {
            Says::ServiceEvery(steps::quantity_behind(parts, Rule::every)?)
        }
        // Tools and supplies.
        Rule::detail_kind => Says::Kind(parts.words()),
        Rule::detail_range => Says::Range(parts.quantity()?),
        Rule::detail_full_scale => Says::FullScale(steps::quantity_behind(parts, Rule::scale)?),
        Rule::detail_length => Says::Length(parts.quantity()?),
        Rule::detail_accuracy => Says::Accuracy(parts.quantity()?),
        Rule::detail_have => Says::Have,
        Rule::detail_close_within => {
            Says::CloseWithin(steps::quantity_behind(parts, Rule::within)?)
        }
        Rule::detail_fixes_in => Says::FixesIn(steps::quantity_behind(parts, Rule::r#in)?),
        Rule::detail_cures_in => Says::CuresIn(steps::quantity_behind(parts, Rule::r#in)?),
        Rule::detail_good_to => Says::GoodTo(steps::quantity_behind(parts, Rule::to)?),
        Rule::detail_not_on => {
            parts.skip(Rule::on);
            Says::NotOn(parts.words())
        }
        // Files used, stages.
        Rule::detail_as => Says::As(parts.name()?),
        Rule::detail_in_any_order => Says::InAnyOrder,
        Rule::detail_for_each => things::for_each(parts)?,
        // Steps.
        Rule::detail_together => Says::Together,
        Rule::detail_after => Says::After(parts.condition()?),
        Rule::detail_before => Says::Before(parts.condition()?),
        Rule::detail_with => Says::With(parts.tools()),
        Rule::detail_use => Says::Use(parts.names()),
        Rule::detail_new => Says::New(parts.names()),
        Rule::detail_old => Says::Old(parts.names()),
        Rule::detail_spends => Says::Spends(parts.names()),
        Rule::detail_trial => Says::Trial,
        Rule::detail_for_good => Says::ForGood,
        Rule::detail_to_its_mark => Says::ToItsMark,
        Rule::detail_to => Says::To(steps::to(parts)?),
        Rule::detail_disturbs => Says::Disturbs(parts.names()),
        Rule::detail_at_least => {
            let (time, after) = steps::time_after(parts)?;
            Says::AtLeast { time, after }
        }
        Rule::detail_at_most => {
            let (time, after) = steps::time_after(parts)?;
            Says::AtMost { time, after }
        }
        Rule::detail_expect => Says::Expect(parts.quantity()?),
        Rule::detail_caution => Says::Caution(parts.quoted()?),
        Rule::detail_note => Says::Note(parts.quoted()?),
        _ => return None,
    })
}

/// How many words of the text are the keyword.
fn words_in_keyword(rule: Rule, text: &str) -> usize {
    match rule {
        Rule::detail_starts_apart
        | Rule::detail_starts_assembled
        | Rule::detail_torque_in
        | Rule::detail_length_in
        | Rule::detail_reviewed_by
        | Rule::detail_matched_with
        | Rule::detail_must_be
        | Rule::detail_floats_until
        | Rule::detail_locked_by
        | Rule::detail_moves_with
        | Rule::detail_travels_with
        | Rule::detail_lubricated_with
        | Rule::detail_closed_by
        | Rule::detail_service_every
        | Rule::detail_close_within
        | Rule::detail_fixes_in
        | Rule::detail_cures_in
        | Rule::detail_good_to
        | Rule::detail_not_on
        | Rule::detail_for_good
        | Rule::detail_for_each
        | Rule::detail_at_least
        | Rule::detail_at_most => 2,
        Rule::detail_frees_when_slack | Rule::detail_in_any_order | Rule::detail_to_its_mark => 3,
        Rule::detail_single_use | Rule::detail_left_hand | Rule::detail_full_scale => {
            super::words_of_hyphenated(text)
        }
        _ => 1,
    }
}
