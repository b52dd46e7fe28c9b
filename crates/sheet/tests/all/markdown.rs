//! The sheet as Markdown.

use crate::bench::sheet;
use sheet::markdown;

#[test]
fn a_task_list_with_details_below() {
    let text = "plan \"Wash pump\"\npart case given\npart gear \"Gear *A*\" onto case\n\
                part cover \"Cover\" onto case covers gear\npoint play \"Play\" on gear\nstage \"All\"\n\
                fit gear\nmeasure play expect 0.1..0.3 mm\nfit cover hazard pinch\n";
    assert_eq!(
        markdown::sheet(&sheet(text)),
        "# Wash pump

3 steps from its parts. Plan: pump.rebuild.

## All

- [ ] **1** Fit Gear \\*A\\*
- [ ] **2** Measure Play
  - reading: \\_\\_\\_\\_\\_\\_\\_\\_ mm, expect 0.1..0.3 mm
- [ ] **Last chance before step 3:** Play: measured at step 2
- [ ] **3** Fit Cover
  - **CAUTION: Fingers clear of the gap; nobody turns anything while a hand is in it.**

The maker's manual, local codes and a licensed or qualified person come before this sheet. \
Where they say otherwise, stop and do what they say.
"
    );
}
