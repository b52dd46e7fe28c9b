//! Screw threads: reading their designations, their diameters and areas.
//!
//! ISO metric and unified threads are computed. Pipe and Whitworth families
//! are known by name, so that a plan may say them, and nothing is computed for
//! them.

mod area;
mod limits;
mod metric;
mod named;
mod problem;
mod read;
mod unified;

pub use limits::Limits;
pub use metric::{MetricThread, metric_pitches};
pub use named::{Family, NamedThread};
pub use problem::ThreadProblem;
pub use unified::{UnifiedSeries, UnifiedThread, unified_listed};

use crate::quantity::{Area, Length};
use crate::working::Worked;

/// A screw thread.
#[derive(Debug, Clone, PartialEq)]
pub enum Thread {
    /// ISO metric, M.
    Metric(MetricThread),
    /// Unified inch: UNC, UNF, UNEF and their kin.
    Unified(UnifiedThread),
    /// A family known by name; nothing is computed for it.
    Named(NamedThread),
}

/// The numbers that every formula for a 60 degree thread starts from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Profile {
    /// Nominal (major) diameter, d.
    pub diameter: Length,
    /// Pitch, P.
    pub pitch: Length,
    /// Basic pitch diameter, d2 = d - 0.649 519 P.
    pub pitch_diameter: Length,
    /// Basic minor diameter of the internal thread, D1 = d - 1.082 532 P.
    pub minor_internal: Length,
    /// Minor diameter of the external thread at the rounded root,
    /// d3 = d - 1.226 869 P (metric) or d - 1.299 038 P (unified).
    pub minor_external: Length,
}

impl Thread {
    /// Reads a designation: `M8`, `M8x1`, `M14x1.5`, `1/2-20 UNF`, `1/4 UNC`,
    /// `#10-32 UNF`, `G 1/4`, `3/8 BSF`.
    ///
    /// # Errors
    /// When it is no thread, or contradicts itself; see [`ThreadProblem`].
    pub fn read(text: &str) -> Result<Thread, ThreadProblem> {
        read::thread(text)
    }

    /// The thread's own name, in one spelling: `M8x1.25`, `1/2-20 UNF`.
    pub fn designation(&self) -> String {
        match self {
            Thread::Metric(thread) => thread.designation(),
            Thread::Unified(thread) => thread.designation(),
            Thread::Named(thread) => thread.designation(),
        }
    }

    /// Diameters and pitch of the basic profile (ISO 68-1; ASME B1.1, which
    /// has the same triangle). `None` for a family that is only known by name.
    pub fn profile(&self) -> Option<Profile> {
        match self {
            Thread::Metric(thread) => Some(thread.profile()),
            Thread::Unified(thread) => Some(thread.profile()),
            Thread::Named(_) => None,
        }
    }

    /// Nominal diameter. `None` for a family that is only known by name.
    pub fn diameter(&self) -> Option<Length> {
        self.profile().map(|profile| profile.diameter)
    }

    /// The area that carries the load in tension. `None` for a family that is
    /// only known by name.
    ///
    /// Metric: (π/4) × ((d2 + d3)/2)², that is (π/4) × (d - 0.9382 P)², in
    /// mm2 (ISO 898-1). Unified: 0.7854 × (d - 0.9743 P)², in in2 (NSTS 08307
    /// Rev A App. A; FED-STD-H28/2B formula 1b).
    pub fn stress_area(&self) -> Option<Worked<Area>> {
        match self {
            Thread::Metric(thread) => Some(area::metric(thread)),
            Thread::Unified(thread) => Some(area::unified(thread)),
            Thread::Named(_) => None,
        }
    }

    /// The limits of size that stripping is worked out from: 6g/6H for metric
    /// threads, 2A/2B for unified. `None` where the tolerance tables do not
    /// reach, and for a family that is only known by name.
    pub fn limits(&self) -> Option<Limits> {
        match self {
            Thread::Metric(thread) => limits::metric(thread),
            Thread::Unified(thread) => limits::unified(thread),
            Thread::Named(_) => None,
        }
    }

    /// The pitches listed for a metric thread's diameter, coarse first, when
    /// the thread's own is none of them: `M8x1.5` is more likely a slip than a
    /// special. Empty for every other thread.
    pub fn listed_pitches_instead(&self) -> Vec<f64> {
        match self {
            Thread::Metric(thread) => {
                let listed = metric_pitches(thread.diameter_mm());
                let own = thread.pitch_mm();
                if listed
                    .iter()
                    .any(|pitch| crate::quantity::same(*pitch, own))
                {
                    Vec::new()
                } else {
                    listed
                }
            }
            _ => Vec::new(),
        }
    }
}

impl std::fmt::Display for Thread {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.designation())
    }
}
