//! Which rules can read what begins with a given word.
//!
//! The grammar's `head` and `detail` try their rules in turn. Since each begins
//! with a keyword of its own, looking the first word up leads to the same rule
//! and spares the others. The tests hold both ways against each other.

use crate::grammar::Rule;

/// The word that the text begins with, as far as a keyword could reach; of a quoted text the
/// quote.
pub(crate) fn first_word(text: &str) -> &str {
    if text.starts_with('"') {
        return &text[..1];
    }
    let end = text
        .bytes()
        .position(|byte| !(byte.is_ascii_alphanumeric() || byte == b'-'))
        .unwrap_or(text.len());
    &text[..end]
}

/// The rule for an item that begins with `word`.
pub(crate) fn head(word: &str) -> Option<Rule> {
    Some(match word {
        "plan" => Rule::head_plan,
        "part" => Rule::head_part,
        "unit" => Rule::head_unit,
        "item" => Rule::head_item,
        "fasteners" => Rule::head_fasteners,
        "point" => Rule::head_point,
        "position" => Rule::head_position,
        "tool" => Rule::head_tool,
        "supply" => Rule::head_supply,
        "series" => Rule::head_series,
        "use" => Rule::head_use,
        "stage" => Rule::head_stage,
        "fit" => Rule::step_fit,
        "dry-fit" | "dry" => Rule::step_dry_fit,
        "start" => Rule::step_start,
        "snug" => Rule::step_snug,
        "tighten" => Rule::step_tighten,
        "lock" => Rule::step_lock,
        "unlock" => Rule::step_unlock,
        "slacken" => Rule::step_slacken,
        "undo" => Rule::step_undo,
        "remove" => Rule::step_remove,
        "apply" => Rule::step_apply,
        "measure" => Rule::step_measure,
        "set" => Rule::step_set,
        "mark" => Rule::step_mark,
        "bleed" => Rule::step_bleed,
        "fill" => Rule::step_fill,
        "drain" => Rule::step_drain,
        "prime" => Rule::step_prime,
        "inspect" => Rule::step_inspect,
        "clean" => Rule::step_clean,
        "heat" => Rule::step_heat,
        "chill" => Rule::step_chill,
        "turn" => Rule::step_turn,
        "reach" => Rule::step_reach,
        "sign" => Rule::step_sign,
        "do" => Rule::step_do,
        _ => return None,
    })
}

/// The rules for a detail that begins with `word`, in the order of the grammar.
pub(crate) fn details(word: &str) -> &'static [Rule] {
    match word {
        "after" => &[Rule::detail_after],
        "before" => &[Rule::detail_before],
        "onto" => &[Rule::detail_onto],
        "hold" => &[Rule::detail_hold],
        "holds" => &[Rule::detail_hold_amount, Rule::detail_hold],
        "with" => &[Rule::detail_with],
        "torque" => &[Rule::detail_torque_in, Rule::detail_torque],
        "travels" => &[Rule::detail_travels_with],
        "covers" => &[Rule::detail_covers],
        "behind" => &[Rule::detail_behind],
        "reach" => &[Rule::detail_reach],
        "needs" => &[Rule::detail_needs],
        "because" => &[Rule::detail_because],
        "as" => &[Rule::detail_as],
        "to" => &[Rule::detail_to_its_mark, Rule::detail_to],
        "at" => &[Rule::detail_at_least, Rule::detail_at_most, Rule::detail_at],
        "must" => &[Rule::detail_must_be],
        "single-use" | "single" => &[Rule::detail_single_use],
        "into" => &[Rule::detail_into],
        "material" => &[Rule::detail_material],
        "drive" => &[Rule::detail_drive],
        "on" => &[Rule::detail_on],
        "new" => &[Rule::detail_new],
        "use" => &[Rule::detail_use],
        "expect" => &[Rule::detail_expect],
        "passes" => &[Rule::detail_passes],
        "pattern" => &[Rule::detail_pattern],
        "given" => &[Rule::detail_given],
        "together" => &[Rule::detail_together],
        "takes" => &[Rule::detail_takes],
        "counterhold" => &[Rule::detail_counterhold],
        "floats" => &[Rule::detail_floats_until],
        "locked" => &[Rule::detail_locked_by],
        "mass" => &[Rule::detail_mass],
        "closed" => &[Rule::detail_closed_by],
        "service" => &[Rule::detail_service_every],
        "kind" => &[Rule::detail_kind],
        "of" => &[Rule::detail_of],
        "old" => &[Rule::detail_old],
        "spends" => &[Rule::detail_spends],
        "disturbs" => &[Rule::detail_disturbs],
        "trial" => &[Rule::detail_trial],
        "for" => &[Rule::detail_for_good, Rule::detail_for_each],
        "hazard" => &[Rule::detail_hazard],
        "caution" => &[Rule::detail_caution],
        "note" => &[Rule::detail_note],
        "temporary" => &[Rule::detail_temporary],
        "count" => &[Rule::detail_count],
        "size" => &[Rule::detail_size],
        "side" => &[Rule::detail_side],
        "facing" => &[Rule::detail_facing],
        "matched" => &[Rule::detail_matched_with],
        "frees" => &[Rule::detail_frees_when_slack],
        "moves" => &[Rule::detail_moves_with],
        "left-hand" | "left" => &[Rule::detail_left_hand],
        "lubricated" => &[Rule::detail_lubricated_with],
        "range" => &[Rule::detail_range],
        "full-scale" | "full" => &[Rule::detail_full_scale],
        "length" => &[Rule::detail_length_in, Rule::detail_length],
        "accuracy" => &[Rule::detail_accuracy],
        "have" => &[Rule::detail_have],
        "close" => &[Rule::detail_close_within],
        "fixes" => &[Rule::detail_fixes_in],
        "cures" => &[Rule::detail_cures_in],
        "good" => &[Rule::detail_good_to],
        "not" => &[Rule::detail_not_on],
        "in" => &[Rule::detail_in_any_order],
        "starts" => &[Rule::detail_starts_apart, Rule::detail_starts_assembled],
        "revision" => &[Rule::detail_revision],
        "machine" => &[Rule::detail_machine],
        "people" => &[Rule::detail_people],
        "reviewed" => &[Rule::detail_reviewed_by],
        "\"" => &[Rule::detail_remark],
        // `8 x M6`, `8x M6`.
        _ if word.starts_with(|c: char| c.is_ascii_digit()) || word == "unknown" => {
            &[Rule::detail_group]
        }
        _ => &[],
    }
}
