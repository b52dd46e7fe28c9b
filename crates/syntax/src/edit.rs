//! Changes to a text, and moving items as whole lines.

use crate::lines;
use crate::tree::{Head, Item, Span, Tree};

/// Replace what stands at `span` by `new`. An empty span inserts.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Edit {
    /// What goes.
    pub span: Span,
    /// What comes.
    pub new: String,
}

/// Why edits cannot be carried out: one of them touches what another one
/// touches, or lies outside the text or within a character.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Overlap {
    /// The edit that has no place.
    pub span: Span,
}

/// The text with all edits carried out, given in any order. Several insertions
/// at one place come in the order given.
///
/// # Errors
/// When two edits touch the same stretch, or one is not within the text.
pub fn apply(text: &str, edits: &[Edit]) -> Result<String, Overlap> {
    let mut edits: Vec<&Edit> = edits.iter().collect();
    edits.sort_by_key(|edit| (edit.span.start, edit.span.end));
    let mut out = String::with_capacity(text.len());
    let mut at = 0;
    for Edit { span, new } in edits {
        let (Some(between), Some(_)) = (text.get(at..span.start as usize), text.get(span.range()))
        else {
            return Err(Overlap { span: *span });
        };
        out.push_str(between);
        out.push_str(new);
        at = span.end as usize;
    }
    out.push_str(text.get(at..).unwrap_or(""));
    Ok(out)
}

/// The edits that move whole items, with the comment lines that belong to them.
///
/// Each move is an item and the item it then stands behind, both by their places
/// in `tree.items`; `usize::MAX` puts it before the first step. Several moves
/// behind one item land in the order given, and an item may be put behind one
/// that moves itself. Where one item is named twice, the last move counts; a
/// move of or behind an item that is not there, and moves that lead in a circle,
/// are passed over.
///
/// Every byte that belongs to no moved item stays as it is, but for a line end
/// where the last line of the text had none.
pub fn move_items(tree: &Tree, moves: &[(usize, usize)]) -> Vec<Edit> {
    let order = new_order(tree, moves);
    let moved = moved(&order, moves);
    let mut edits = Vec::new();
    if let Some(run) = run_from(&order, &moved, 0) {
        edits.push(insertion(tree, None, run, &moved));
    }
    for (place, item) in order.iter().enumerate() {
        if moved[*item] {
            edits.push(Edit {
                span: tree.items[*item].lines,
                new: String::new(),
            });
        } else if let Some(run) = run_from(&order, &moved, place + 1) {
            edits.push(insertion(tree, Some(*item), run, &moved));
        }
    }
    edits.sort_by_key(|edit| (edit.span.start, edit.span.end));
    edits
}

/// The items in their new order.
fn new_order(tree: &Tree, moves: &[(usize, usize)]) -> Vec<usize> {
    let count = tree.items.len();
    let first_step = tree.items.iter().position(is_step);
    let mut behind: Vec<Option<usize>> = vec![None; count];
    for (item, target) in moves {
        let known = *target < count || (*target == usize::MAX && first_step.is_some());
        if *item < count && known {
            behind[*item] = Some(*target);
        }
    }
    for start in 0..count {
        if circles(&behind, start) {
            behind[start] = None;
        }
    }
    let mut followers: Vec<Vec<usize>> = vec![Vec::new(); count];
    let mut in_front = Vec::new();
    for (place, (item, target)) in moves.iter().enumerate() {
        let counts = behind.get(*item) == Some(&Some(*target))
            && !moves[place + 1..].iter().any(|(later, _)| later == item);
        match followers.get_mut(*target) {
            Some(followers) if counts => followers.push(*item),
            None if counts => in_front.push(*item),
            _ => {}
        }
    }
    let mut order = Vec::with_capacity(count);
    for (item, behind) in behind.iter().enumerate() {
        if Some(item) == first_step {
            for item in &in_front {
                with_followers(*item, &followers, &mut order);
            }
        }
        if behind.is_none() {
            with_followers(item, &followers, &mut order);
        }
    }
    order
}

/// Whether following the moves from `start` leads back to it.
fn circles(behind: &[Option<usize>], start: usize) -> bool {
    let mut at = start;
    for _ in 0..behind.len() {
        match behind.get(at) {
            Some(Some(next)) => at = *next,
            _ => return false,
        }
        if at == start {
            return true;
        }
    }
    false
}

/// The item, then all that come behind it.
fn with_followers(item: usize, followers: &[Vec<usize>], order: &mut Vec<usize>) {
    let mut waiting = vec![item];
    while let Some(item) = waiting.pop() {
        order.push(item);
        waiting.extend(followers[item].iter().rev());
    }
}

fn is_step(item: &Item) -> bool {
    matches!(
        item.head,
        Head::Step { .. } | Head::Unreadable { verb: Some(_), .. }
    )
}

/// Which items leave their place: those named in a move, but for any that can
/// stay where it is because it has ended up where it was.
fn moved(order: &[usize], moves: &[(usize, usize)]) -> Vec<bool> {
    let mut moved = vec![false; order.len()];
    for (item, _) in moves {
        if let Some(moved) = moved.get_mut(*item) {
            *moved = true;
        }
    }
    for (place, item) in order.iter().enumerate() {
        if !moved[*item] {
            continue;
        }
        let stays = |other: &&usize| !moved[**other];
        let fits = order[..place]
            .iter()
            .filter(stays)
            .all(|before| before < item)
            && order[place + 1..]
                .iter()
                .filter(stays)
                .all(|behind| behind > item);
        moved[*item] = !fits;
    }
    moved
}

/// The moved items that stand in the new order from `place` on.
fn run_from<'o>(order: &'o [usize], moved: &[bool], place: usize) -> Option<&'o [usize]> {
    let rest = order.get(place..)?;
    let length = rest.iter().take_while(|item| moved[**item]).count();
    (length > 0).then(|| &rest[..length])
}

/// Puts the lines of `run` behind the item `behind`, or before all others.
fn insertion(tree: &Tree, behind: Option<usize>, run: &[usize], moved: &[bool]) -> Edit {
    let text: &str = &tree.text;
    let end_of_line = lines::end_of_line(text);
    let after = behind.map_or(0, |behind| behind + 1);
    let next = tree
        .items
        .iter()
        .enumerate()
        .skip(after)
        .find(|(item, _)| !moved[*item]);
    let at = match (behind.map(|behind| &tree.items[behind]), next) {
        // Steps stand close to the step they follow, but behind a heading or a declaration
        // close to the step they come before, so that a blank line between stays where it is.
        (Some(item), _) if is_step(item) => item.lines.end,
        (_, Some((_, next))) if behind.is_none() || is_step(next) => next.lines.start,
        (Some(item), _) => item.lines.end,
        (None, _) => 0,
    };
    let mut new = String::new();
    for item in run {
        let lines = tree.at(tree.items[*item].lines);
        new.push_str(lines);
        if !lines.ends_with(['\n', '\r']) {
            new.push_str(end_of_line);
        }
    }
    let ends_open = at as usize == text.len() && !text.ends_with(['\n', '\r']);
    if ends_open && at > 0 {
        new.insert_str(0, end_of_line);
        new.truncate(new.trim_end_matches(['\n', '\r']).len());
    }
    Edit {
        span: Span::new(at, at),
        new,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moved(text: &str, moves: &[(usize, usize)]) -> String {
        let tree = crate::read(text);
        apply(text, &move_items(&tree, moves)).unwrap()
    }

    #[test]
    fn an_item_moves_with_its_comment_and_details() {
        let text = "part a\n\n# why\nfit a   # now\n  note \"x\"\n\nfit b\n\n# end\n";
        assert_eq!(
            moved(text, &[(1, 2)]),
            "part a\n\n\nfit b\n# why\nfit a   # now\n  note \"x\"\n\n# end\n"
        );
    }

    #[test]
    fn several_land_in_the_order_given() {
        let text = "fit a\nfit b\nfit c\nfit d\n";
        assert_eq!(
            moved(text, &[(0, 3), (1, 3)]),
            "fit c\nfit d\nfit a\nfit b\n"
        );
        assert_eq!(
            moved(text, &[(3, usize::MAX), (2, usize::MAX)]),
            "fit d\nfit c\nfit a\nfit b\n"
        );
    }

    #[test]
    fn an_item_may_stand_behind_one_that_moves() {
        let text = "fit a\nfit b\nfit c\nfit d\n";
        assert_eq!(
            moved(text, &[(0, 2), (1, 0)]),
            "fit c\nfit a\nfit b\nfit d\n"
        );
        assert_eq!(
            moved(text, &[(1, 0), (0, 3)]),
            "fit c\nfit d\nfit a\nfit b\n"
        );
    }

    #[test]
    fn a_move_to_its_own_place_changes_nothing() {
        let tree = crate::read("fit a\nfit b\nfit c\n");
        for moves in [
            &[(1, 0)][..],
            &[(0, usize::MAX)],
            &[(1, 0), (2, 1)],
            &[(1, 1)],
            &[(1, 2), (2, 1)],
            &[(7, 0), (0, 9)],
            &[],
        ] {
            assert_eq!(move_items(&tree, moves), [], "{moves:?}");
        }
    }

    #[test]
    fn of_two_moves_of_one_item_the_last_counts() {
        assert_eq!(
            moved("fit a\nfit b\nfit c\n", &[(0, 1), (0, 2)]),
            "fit b\nfit c\nfit a\n"
        );
    }

    #[test]
    fn blank_lines_stay_where_they_are() {
        let text = "stage \"A\"\n\nfit a\nfit b\n\nstage \"B\"\n\nfit c\n";
        // To the end of a stage, to its start behind the heading, and to the very front.
        assert_eq!(
            moved(text, &[(4, 2)]),
            "stage \"A\"\n\nfit a\nfit b\nfit c\n\nstage \"B\"\n\n"
        );
        assert_eq!(
            moved(text, &[(1, 3)]),
            "stage \"A\"\n\nfit b\n\nstage \"B\"\n\nfit a\nfit c\n"
        );
        assert_eq!(
            moved(text, &[(4, usize::MAX)]),
            "stage \"A\"\n\nfit c\nfit a\nfit b\n\nstage \"B\"\n\n"
        );
        // Behind a heading with nothing below it.
        assert_eq!(
            moved("fit a\nstage \"B\"\n", &[(0, 1)]),
            "stage \"B\"\nfit a\n"
        );
    }

    #[test]
    fn a_last_line_without_line_end_stays_whole() {
        assert_eq!(moved("fit a\nfit b", &[(0, 1)]), "fit b\nfit a");
        assert_eq!(
            moved("fit a\r\nfit b", &[(1, usize::MAX)]),
            "fit b\r\nfit a\r\n"
        );
        assert_eq!(
            moved("\u{feff}fit a\r\nfit b", &[(0, 1)]),
            "\u{feff}fit b\r\nfit a"
        );
    }

    #[test]
    fn comments_go_with_what_they_are_about() {
        let text =
            "# about a\nfit a\n  # more of a\n# about b\nfit b\n  # still b\n\n# loose\n\nfit c\n";
        assert_eq!(
            moved(text, &[(0, 2)]),
            "# about b\nfit b\n  # still b\n\n# loose\n\nfit c\n# about a\nfit a\n  # more of a\n"
        );
    }

    #[test]
    fn edits_that_have_no_place_are_refused() {
        let edit = |start, end| Edit {
            span: Span::new(start, end),
            new: "x".to_owned(),
        };
        assert_eq!(
            apply("abcdef", &[edit(0, 3), edit(2, 4)]),
            Err(Overlap {
                span: Span::new(2, 4)
            })
        );
        assert!(apply("abc", &[edit(2, 9)]).is_err());
        assert!(apply("é", &[edit(1, 2)]).is_err());
        assert!(apply("abc", &[edit(2, 1)]).is_err());
        assert_eq!(
            apply("abc", &[edit(1, 2), edit(1, 1), edit(2, 2)]).unwrap(),
            "axxxc"
        );
        assert_eq!(apply("", &[]).unwrap(), "");
    }
}
