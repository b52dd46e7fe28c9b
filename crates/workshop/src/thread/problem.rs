//! Why a text could not be read as a thread.

use super::unified::UnifiedSeries;
use crate::quantity::plain;

/// Why a text could not be read as a thread: the bare facts.
#[derive(Debug, Clone, PartialEq)]
pub enum ThreadProblem {
    /// It looks like no thread.
    NotAThread {
        /// The text as written.
        given: String,
    },
    /// A metric diameter that has no coarse pitch, and none was written.
    WhichPitch {
        /// Diameter in mm.
        diameter_mm: f64,
        /// The pitches in mm that are listed for it.
        listed: Vec<f64>,
    },
    /// An inch size with neither series nor threads per inch.
    WhichSeries {
        /// The size as written.
        given: String,
        /// What is listed for it.
        listed: Vec<(UnifiedSeries, f64)>,
    },
    /// The series does not list this size at all.
    NotInSeries {
        /// The size as written.
        given: String,
        /// The series that was named.
        series: UnifiedSeries,
        /// What is listed for the size.
        listed: Vec<(UnifiedSeries, f64)>,
    },
    /// The series has another number of threads per inch at this size.
    SeriesDisagrees {
        /// The series that was named.
        series: UnifiedSeries,
        /// Threads per inch as written.
        given: f64,
        /// Threads per inch of that series.
        listed: f64,
    },
    /// Numbers that no thread could have.
    Impossible {
        /// The text as written.
        given: String,
    },
}

impl ThreadProblem {
    /// The problem in plain words.
    pub fn describe(&self) -> String {
        match self {
            ThreadProblem::NotAThread { given } => format!(
                "“{}” is not a thread known here; write it as M8x1.25, 1/4-28 UNF, #10-32 UNF or G 1/4",
                short(given)
            ),
            ThreadProblem::WhichPitch {
                diameter_mm,
                listed,
            } => {
                let size = plain(*diameter_mm);
                let offers: Vec<String> = listed
                    .iter()
                    .map(|pitch| format!("M{size}x{}", plain(*pitch)))
                    .collect();
                if offers.is_empty() {
                    format!("M{size} has no usual pitch; write the pitch, as in M{size}x1")
                } else {
                    format!(
                        "M{size} has no coarse pitch; write which it is: {}",
                        offers.join(" or ")
                    )
                }
            }
            ThreadProblem::WhichSeries { given, listed } => {
                let given = short(given);
                if listed.is_empty() {
                    format!("“{given}” needs its threads per inch, as in {given}-20")
                } else {
                    format!(
                        "“{given}” alone is no thread; write which it is: {}",
                        offered(&given, listed)
                    )
                }
            }
            ThreadProblem::NotInSeries {
                given,
                series,
                listed,
            } => {
                let given = short(given);
                let letters = series.letters();
                if listed.is_empty() {
                    format!("{letters} has no {given}; write the threads per inch")
                } else {
                    format!(
                        "{letters} has no {given}; there is {}",
                        offered(&given, listed)
                    )
                }
            }
            ThreadProblem::SeriesDisagrees {
                series,
                given,
                listed,
            } => format!(
                "{} at this size has {} threads per inch, not {}; one of the two is a slip",
                series.letters(),
                plain(*listed),
                plain(*given)
            ),
            ThreadProblem::Impossible { given } => {
                format!("no thread can have the numbers of “{}”", short(given))
            }
        }
    }
}

fn offered(size: &str, listed: &[(UnifiedSeries, f64)]) -> String {
    let all: Vec<String> = listed
        .iter()
        .map(|(series, tpi)| format!("{size}-{} {}", plain(*tpi), series.letters()))
        .collect();
    all.join(" or ")
}

fn short(text: &str) -> String {
    text.chars().take(40).collect()
}
