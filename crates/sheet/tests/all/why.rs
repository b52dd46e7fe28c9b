//! The chain of reasons between two steps.

use crate::bench::{ASCII, plan};
use check::Bench;
use plan::model::StepId;
use sheet::why;

#[test]
fn a_chain_names_its_steps_and_their_reasons() {
    let text = "part a given\npart b \"Second\" onto a\npart c \"Third\" onto b\npart d \"Fourth\" onto c\n\
                fit b\nfit c\nfit d\n";
    let plan = plan(text);
    let bench = Bench::of(&plan);
    let (first, last) = (StepId(0), StepId(2));
    let links = bench.why(first, last).unwrap();
    let page = why::chain(&plan, bench.order(), first, last, &links, ASCII);
    assert!(
        page.starts_with(
            "Step 1 (Fit Second) must come before step 3 (Fit Fourth).\n\n  1  Fit Second\n  |"
        ),
        "{page}"
    );
    assert!(page.contains("\n  2  Fit Third\n"), "{page}");
    assert!(page.ends_with("\n  3  Fit Fourth\n"), "{page}");
    assert!(
        page.contains("line 3)") && page.contains("line 4)"),
        "{page}"
    );
    assert_eq!(bench.why(last, first), None);
    let free = why::free(&plan, bench.order(), first, last, ASCII);
    assert!(
        free.starts_with("Nothing orders step 1 (Fit Second) and step 3 (Fit Fourth)"),
        "{free}"
    );
}
