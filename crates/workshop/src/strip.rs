//! Thread stripping: what a thread in a hole, an insert or a nut carries
//! before it shears, and how deep a screw must go.

mod area;
mod capacity;
mod engagement;
mod insert;
mod limiter;
mod material;

pub use area::{hole_area, screw_area, simplified_hole_area};
pub use capacity::{Hole, StripProblem, Stripping, strip_load};
pub use engagement::{
    EngagementRule, engagement_equal_strength, engagement_rule, engagement_soft_hole,
    engagement_strong_hole, shear_area_ratio,
};
pub use insert::{InsertSize, insert_area, insert_pull_out, published_inserts};
pub use limiter::{Limiter, LimiterLoad, limiter_capacity, limiter_load};
pub use material::{Material, MaterialFamily, SHEAR_OF_TENSILE};
