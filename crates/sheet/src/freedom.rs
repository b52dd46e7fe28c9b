//! How free the order is: how many orders work, and how far each step could move.

use crate::findings::counted;
use crate::look::{Ink, Look};
use crate::words::{Numbers, step};
use crate::wrap::{fill, hang};
use check::view::Freedom;
use plan::model::{Plan, StepId};

/// Columns for the bar of a step.
const BAR: usize = 24;

/// The freedom of a plan's order. `order` is the order meant, which gives the steps their numbers.
pub fn freedom(plan: &Plan, order: &[StepId], freedom: &Freedom, look: Look) -> String {
    let steps = order.len();
    let width = look.columns();
    let mut page = hang("", &count(freedom, steps), width);
    if steps == 0 {
        return page;
    }
    let numbers = Numbers::of(plan, order);
    let bar = BAR.min(steps);
    let digits = steps.to_string().len().max(4);
    let name = width
        .saturating_sub(numbers.width() + 2 + bar + 2 * (digits + 3) + 2)
        .max(16);
    page.push('\n');
    let left = " ".repeat(numbers.width() + 2);
    page += &format!(
        "{left}{}  {}  {:>width$}  {:>width$}\n",
        fill("step", name),
        " ".repeat(bar),
        "from",
        "to",
        width = digits + 1,
    );
    let mut rough = false;
    for id in order {
        let Some((earliest, latest, exact)) = freedom.places.get(id.0 as usize).copied() else {
            continue;
        };
        rough |= !exact;
        let about = if exact { "" } else { "~" };
        let number = numbers.number(*id);
        page += &format!(
            "{number:>numbers$}  {}  {}  {:>width$}  {:>width$}\n",
            fill(&step(plan, *id), name),
            self::bar(earliest, number, latest, steps, bar, look),
            format!("{about}{earliest}"),
            format!("{about}{latest}"),
            numbers = numbers.width(),
            width = digits + 1,
        );
    }
    page.push('\n');
    page += &hang(
        "",
        "From and to are the first and the last place the step can have in any order that works; \
         # is where it stands now.",
        width,
    );
    if rough {
        page += &hang(
            "",
            "~ marks a place that is not exact: the step may be less free than it says.",
            width,
        );
    }
    page
}

fn count(freedom: &Freedom, steps: usize) -> String {
    let steps = counted(steps, "step");
    match freedom.orders.as_deref() {
        Some("0") => format!("No order of the {steps} works."),
        Some("1") => {
            format!("Only one order of the {steps} works: the plan says every turn of it.")
        }
        Some(orders) => format!("{} orders of the {steps} work.", grouped(orders)),
        None => format!(
            "More orders of the {steps} work than could be counted: counting was given up after {} arrangements.",
            grouped(&freedom.bound.to_string())
        ),
    }
}

/// Digits in groups of three, with a narrow comma as in print.
fn grouped(digits: &str) -> String {
    let mut said = String::new();
    for (n, digit) in digits.chars().enumerate() {
        if n > 0 && (digits.len() - n).is_multiple_of(3) {
            said.push(',');
        }
        said.push(digit);
    }
    said
}

/// Where a step can stand, drawn to scale.
fn bar(
    earliest: usize,
    now: usize,
    latest: usize,
    steps: usize,
    width: usize,
    look: Look,
) -> String {
    let column = |place: usize| place.clamp(1, steps).saturating_sub(1) * width / steps;
    let (from, at, until) = (column(earliest), column(now), column(latest));
    let free = if look.ascii { "-" } else { "─" };
    (0..width)
        .map(|column| {
            if column == at {
                look.ink(Ink::Strong, "#")
            } else if from <= column && column <= until {
                free.to_owned()
            } else {
                look.ink(Ink::Faint, ".")
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn large_counts_are_grouped() {
        assert_eq!(grouped("1"), "1");
        assert_eq!(grouped("1234567"), "1,234,567");
        assert_eq!(grouped("123456"), "123,456");
    }

    #[test]
    fn a_bar_spans_the_places_a_step_can_have() {
        let look = Look {
            ascii: true,
            ..Look::PAPER
        };
        assert_eq!(bar(2, 3, 5, 6, 6, look), ".-#--.");
        assert_eq!(bar(1, 1, 1, 1, 1, look), "#");
    }
}
