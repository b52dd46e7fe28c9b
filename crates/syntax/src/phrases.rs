//! What each rule of the grammar reads, said in plain words, and the words that
//! are known where it stands.

use crate::grammar::Rule;
use crate::words::{self, Place};

/// A phrase for what could have stood where reading stopped; `None` where the
/// rule is no help to a reader. There is no wildcard: a new rule wants a phrase.
pub(crate) fn phrase(rule: Rule) -> Option<&'static str> {
    Some(match rule {
        Rule::EOI | Rule::item_line | Rule::detail_line | Rule::item_part | Rule::detail_part => {
            return None;
        }
        // Rules that leave no trace are never what is wanted.
        Rule::item_start
        | Rule::detail_start
        | Rule::end
        | Rule::comment
        | Rule::head
        | Rule::naming
        | Rule::targets
        | Rule::detail
        | Rule::way
        | Rule::reach_side
        | Rule::reach_way
        | Rule::locker
        | Rule::then_or_joiner
        | Rule::pass
        | Rule::after_kind
        | Rule::things
        | Rule::states
        | Rule::new_thing
        | Rule::state_or_place
        | Rule::a_name
        | Rule::names
        | Rule::joiner
        | Rule::hole
        | Rule::reserved
        | Rule::words
        | Rule::letter
        | Rule::edge
        | Rule::b
        | Rule::least_or_most
        | Rule::tools
        | Rule::measured
        | Rule::up_to
        | Rule::tolerance
        | Rule::plus_minus
        | Rule::figure_end
        | Rule::digits
        | Rule::digit
        | Rule::numbers
        | Rule::members
        | Rule::metric
        | Rule::trapezoidal
        | Rule::pipe
        | Rule::inch
        | Rule::inch_series
        | Rule::nominal
        | Rule::decimal
        | Rule::unit_edge
        | Rule::common_unit
        | Rule::dot
        | Rule::torque_unit
        | Rule::size_unit
        | Rule::time_unit
        | Rule::spread_unit
        | Rule::force_unit
        | Rule::other_unit
        | Rule::doubtful_unit
        | Rule::pint
        | Rule::any_order
        | Rule::bound => return None,
        Rule::head_plan
        | Rule::head_part
        | Rule::head_unit
        | Rule::head_item
        | Rule::head_fasteners
        | Rule::head_point
        | Rule::head_position
        | Rule::head_tool
        | Rule::head_supply
        | Rule::head_series
        | Rule::head_use
        | Rule::head_stage
        | Rule::step_fit
        | Rule::step_dry_fit
        | Rule::step_start
        | Rule::step_snug
        | Rule::step_tighten
        | Rule::step_lock
        | Rule::step_unlock
        | Rule::step_slacken
        | Rule::step_undo
        | Rule::step_remove
        | Rule::step_apply
        | Rule::step_measure
        | Rule::step_set
        | Rule::step_mark
        | Rule::step_bleed
        | Rule::step_fill
        | Rule::step_drain
        | Rule::step_prime
        | Rule::step_inspect
        | Rule::step_clean
        | Rule::step_heat
        | Rule::step_chill
        | Rule::step_turn
        | Rule::step_reach
        | Rule::step_sign
        | Rule::step_do => "a word that begins an item or a step",
        Rule::detail_revision
        | Rule::detail_machine
        | Rule::detail_starts_apart
        | Rule::detail_starts_assembled
        | Rule::detail_torque_in
        | Rule::detail_length_in
        | Rule::detail_people
        | Rule::detail_reviewed_by
        | Rule::detail_given
        | Rule::detail_onto
        | Rule::detail_covers
        | Rule::detail_behind
        | Rule::detail_needs
        | Rule::detail_reach
        | Rule::detail_material
        | Rule::detail_mass
        | Rule::detail_side
        | Rule::detail_facing
        | Rule::detail_single_use
        | Rule::detail_temporary
        | Rule::detail_count
        | Rule::detail_matched_with
        | Rule::detail_takes
        | Rule::detail_hazard
        | Rule::detail_must_be
        | Rule::detail_of
        | Rule::detail_at
        | Rule::detail_size
        | Rule::detail_group
        | Rule::detail_hold
        | Rule::detail_into
        | Rule::detail_drive
        | Rule::detail_counterhold
        | Rule::detail_torque
        | Rule::detail_passes
        | Rule::detail_pattern
        | Rule::detail_floats_until
        | Rule::detail_locked_by
        | Rule::detail_frees_when_slack
        | Rule::detail_moves_with
        | Rule::detail_left_hand
        | Rule::detail_lubricated_with
        | Rule::detail_on
        | Rule::detail_closed_by
        | Rule::detail_hold_amount
        | Rule::detail_service_every
        | Rule::detail_kind
        | Rule::detail_range
        | Rule::detail_full_scale
        | Rule::detail_length
        | Rule::detail_accuracy
        | Rule::detail_have
        | Rule::detail_close_within
        | Rule::detail_fixes_in
        | Rule::detail_cures_in
        | Rule::detail_good_to
        | Rule::detail_not_on
        | Rule::detail_as
        | Rule::detail_in_any_order
        | Rule::detail_for_each
        | Rule::detail_together
        | Rule::detail_after
        | Rule::detail_before
        | Rule::detail_with
        | Rule::detail_use
        | Rule::detail_new
        | Rule::detail_old
        | Rule::detail_spends
        | Rule::detail_trial
        | Rule::detail_for_good
        | Rule::detail_to_its_mark
        | Rule::detail_to
        | Rule::detail_disturbs
        | Rule::detail_at_least
        | Rule::detail_at_most
        | Rule::detail_expect
        | Rule::detail_caution
        | Rule::detail_note
        | Rule::detail_travels_with
        | Rule::detail_remark
        | Rule::detail_because => "a further detail",
        Rule::name | Rule::new_name | Rule::thing | Rule::condition => "a name",
        Rule::word | Rule::code => "a word",
        Rule::quoted => "a text in quotes",
        Rule::quantity | Rule::amount | Rule::unknown => "a figure with its unit",
        Rule::figure | Rule::count | Rule::number | Rule::member_range => "a figure",
        Rule::how_many => "a further detail",
        Rule::unit => "a unit",
        Rule::date => "a date such as 2031-05-02",
        Rule::tool => "a tool",
        Rule::tool_size | Rule::size_code => "a size",
        Rule::size => "a size such as 16 x 22 mm",
        Rule::thread => "a thread such as M8",
        Rule::sort => "a sort such as `bolts`",
        Rule::times => "`x`",
        Rule::class => "`class`",
        Rule::drive_series => "`series`",
        Rule::digest => "`digest`",
        Rule::pressed => "`pressed`",
        Rule::source => "`from` and where it was read",
        Rule::no_torque => "`none`",
        Rule::turn => "`turn` and an angle",
        Rule::slacken => "`slacken`",
        Rule::mark => "`mark`",
        Rule::layout => "`in ring`, `in line` or `in two rows`",
        Rule::to_tool => "`to` and a tool",
        Rule::from_side => "`from` and a side",
        Rule::with_tools => "`with` and a tool",
        Rule::clear_of => "`clear of` and a name",
        Rule::reach_needs => "`needs` and a name",
        Rule::is => "`is` and a state",
        Rule::place => "`at` and a place",
        Rule::state => "a state such as `fitted` or `tight`",
        Rule::be => "`be`",
        Rule::by => "`by`",
        Rule::r#in => "`in`",
        Rule::of => "`of`",
        Rule::on => "`on`",
        Rule::to => "`to`",
        Rule::any => "`any`",
        Rule::order => "`order`",
        Rule::each => "`each`",
        Rule::every => "`every`",
        Rule::rows => "`rows`",
        Rule::then => "`then turn` and an angle",
        Rule::until => "`until`",
        Rule::with => "`with`",
        Rule::within => "`within`",
        Rule::after => "`after`",
        Rule::when => "`before` or `after`",
        Rule::when_slack => "`when slack`",
        Rule::dry_fit => "`fit`",
        Rule::single_use => "`use`",
        Rule::hand => "`hand`",
        Rule::scale => "`scale`",
        Rule::slack => "`slack`",
        Rule::apart => "`apart`",
        Rule::assembled => "`assembled`",
        Rule::good => "`good`",
    })
}

/// The phrases for `rules`, each once, the more telling ones first.
pub(crate) fn phrases(rules: &[Rule]) -> Vec<&'static str> {
    let mut phrases: Vec<&'static str> = Vec::new();
    for phrase in rules.iter().filter_map(|rule| phrase(*rule)) {
        if !phrases.contains(&phrase) {
            phrases.push(phrase);
        }
    }
    // What nearly always could stand there says least.
    phrases.sort_by_key(|phrase| *phrase == "a further detail");
    phrases
}

/// The known words that could have stood where `rules` were wanted: of details
/// those that `place` may carry, or all.
pub(crate) fn known_words(rules: &[Rule], place: Option<Place>) -> Vec<&'static str> {
    let mut known = Vec::new();
    let mut details = false;
    for rule in rules {
        match rule {
            Rule::state => known.extend(words::STATES.iter().map(|(word, _)| *word)),
            Rule::unit => known.extend(words::UNITS),
            Rule::sort => known.extend(words::SORTS),
            Rule::is => known.extend(["is", "are"]),
            Rule::place => known.push("at"),
            Rule::when => known.extend(["before", "after"]),
            Rule::from_side | Rule::source => known.push("from"),
            Rule::to_tool => known.push("to"),
            Rule::with_tools => known.push("with"),
            Rule::clear_of => known.push("clear"),
            Rule::reach_needs => known.push("needs"),
            Rule::pressed => known.push("pressed"),
            Rule::class => known.extend(["class", "grade"]),
            Rule::drive_series => known.push("series"),
            Rule::no_torque => known.push("none"),
            Rule::quantity | Rule::amount | Rule::unknown => known.push("unknown"),
            Rule::turn => known.push("turn"),
            Rule::slacken => known.push("slacken"),
            Rule::mark => known.push("mark"),
            Rule::be => known.push("be"),
            Rule::by => known.push("by"),
            Rule::r#in | Rule::layout => known.push("in"),
            Rule::of => known.push("of"),
            Rule::on => known.push("on"),
            Rule::to => known.push("to"),
            Rule::any => known.push("any"),
            Rule::order => known.push("order"),
            Rule::each => known.push("each"),
            Rule::every => known.push("every"),
            Rule::rows => known.push("rows"),
            Rule::then => known.push("then"),
            Rule::until => known.push("until"),
            Rule::with => known.push("with"),
            Rule::within => known.push("within"),
            Rule::after => known.push("after"),
            Rule::when_slack => known.push("when"),
            Rule::dry_fit => known.push("fit"),
            Rule::single_use => known.push("use"),
            Rule::hand => known.push("hand"),
            Rule::scale => known.push("scale"),
            Rule::slack => known.push("slack"),
            Rule::apart => known.push("apart"),
            Rule::assembled => known.push("assembled"),
            Rule::good => known.push("good"),
            rule if phrase(*rule) == Some("a further detail") => details = true,
            _ => {}
        }
    }
    if details {
        known.extend(first_words(place));
    }
    known
}

/// The first words of the details that `place` may carry, or of all details.
pub(crate) fn first_words(place: Option<Place>) -> impl Iterator<Item = &'static str> {
    let details = words::DETAILS
        .iter()
        .filter(move |detail| place.is_none_or(|place| detail.places.contains(&place)));
    details
        .map(|detail| detail.word.split(' ').next().unwrap_or(detail.word))
        .filter(|word| *word != "x")
        .chain(["because"])
}
