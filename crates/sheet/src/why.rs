//! Why one step must stand behind another: the chain of reasons between them.

use crate::findings::Texts;
use crate::look::{Ink, Look, harmless};
use crate::words::Numbers;
use crate::wrap::hang;
use check::view::Link;
use plan::model::{Plan, StepId};

/// The chain that makes `before` come before `after`.
pub fn chain(
    plan: &Plan,
    order: &[StepId],
    before: StepId,
    after: StepId,
    links: &[Link],
    look: Look,
) -> String {
    let numbers = Numbers::of(plan, order);
    let texts = Texts::of(plan);
    let width = look.columns();
    let mut page = hang(
        "",
        &format!(
            "{} must come before {}.",
            check::words::capital(&numbers.long(plan, before)),
            numbers.long(plan, after)
        ),
        width,
    );
    page.push('\n');
    let bar = if look.ascii { "|" } else { "│" };
    let margin = " ".repeat(numbers.width() - 1);
    let mut shown = None;
    for link in links {
        if shown != Some(link.before) {
            page += &look.ink(Ink::Strong, &numbers.head(plan, link.before));
            page.push('\n');
        }
        let says = format!("{} ({})", harmless(&link.says), texts.line(link.place));
        let lead = format!("{margin}{bar}     ");
        for line in hang("", &says, width.saturating_sub(lead.len())).lines() {
            page += &format!("{lead}{line}\n");
        }
        page += &look.ink(Ink::Strong, &numbers.head(plan, link.after));
        page.push('\n');
        shown = Some(link.after);
    }
    page
}

/// What is said when nothing orders the two.
pub fn free(plan: &Plan, order: &[StepId], a: StepId, b: StepId, look: Look) -> String {
    let numbers = Numbers::of(plan, order);
    hang(
        "",
        &format!(
            "Nothing orders {} and {}: either may come first.",
            numbers.long(plan, a),
            numbers.long(plan, b)
        ),
        look.columns(),
    )
}
