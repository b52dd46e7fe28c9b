//! Like findings of a series are one finding that names its members.

use crate::bench::Bench;
use crate::finding::Finding;
use std::collections::HashMap;

/// Merges findings of one rule at one place that are alike but for the member they speak of.
pub fn like_of_series(bench: &Bench, found: Vec<Finding>) -> Vec<Finding> {
    let mut merged: Vec<Finding> = Vec::with_capacity(found.len());
    let mut members: Vec<Vec<String>> = Vec::new();
    let mut seen: HashMap<(&'static str, plan::model::Place, String), usize> = HashMap::new();
    for finding in found {
        let stem = bench
            .stems
            .get(&finding.about)
            .cloned()
            .unwrap_or_else(|| format!("{} {}", finding.about, finding.says));
        let key = (finding.rule.name, finding.place, stem.clone());
        match seen.get(&key) {
            Some(&at) => {
                if !members[at].contains(&finding.about) && !finding.about.is_empty() {
                    members[at].push(finding.about);
                }
                for because in finding.because {
                    if !merged[at].because.iter().any(|b| b.place == because.place) {
                        merged[at].because.push(because);
                    }
                }
                merged[at].steps.extend(finding.steps);
                // Passes of one `for each` stage move together or not at all.
                if merged[at].mend.as_ref().map(|m| &m.edits)
                    != finding.mend.as_ref().map(|m| &m.edits)
                {
                    merged[at].mend = None;
                }
            }
            None => {
                seen.insert(key, merged.len());
                members.push(vec![finding.about.clone()]);
                merged.push(finding);
            }
        }
    }
    for (finding, members) in merged.iter_mut().zip(members) {
        if members.len() > 1 {
            let rest = crate::words::list(&members[1..]);
            finding.says = format!("{} The same holds for {rest}.", finding.says);
        }
    }
    merged
}
