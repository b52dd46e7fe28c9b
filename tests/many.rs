//! Plans with more of something than anybody would write.

use crate::support::Bench;
use std::fmt::Write;

#[test]
fn a_position_of_many_places_and_a_step_of_many_things_are_read_to_the_end() {
    let places: Vec<String> = (0..400).map(|n| format!("p{n}")).collect();
    let things = vec!["bit-*"; 80].join(", ");
    let mut text = String::from("part block given\n");
    writeln!(text, "position dial of {}", places.join(", ")).unwrap();
    text += "part gear onto block needs dial at p399\nseries n 1..900\npart bit-<n> onto block\n";
    writeln!(text, "turn dial to p399\nfit gear\nfit {things}").unwrap();
    let found = Bench::of_text(&text).check().findings;
    assert!(
        found.iter().all(|f| f.rule.name == "twice-fitted"),
        "{found:?}"
    );
    assert!(!found.is_empty());
}
