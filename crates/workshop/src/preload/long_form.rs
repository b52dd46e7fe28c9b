//! The long forms, which keep the friction of the thread and of the head
//! apart.

use std::f64::consts::PI;

use crate::quantity::{Force, Length, System, Torque, trimmed};
use crate::source::Source;
use crate::thread::Thread;
use crate::working::{Worked, Working};

/// Coefficients of friction, with their source.
#[derive(Debug, Clone, PartialEq)]
pub struct Friction {
    thread: f64,
    head: f64,
    source: Source,
}

impl Friction {
    /// Friction in the thread and under the head. `None` unless both lie
    /// between 0 and 1; 0 is allowed, to see what is left without friction.
    pub fn new(thread: f64, head: f64, source: Source) -> Option<Friction> {
        let sound = |mu: f64| (0.0..=1.0).contains(&mu);
        (sound(thread) && sound(head)).then_some(Friction {
            thread,
            head,
            source,
        })
    }

    /// In the thread.
    pub fn thread(&self) -> f64 {
        self.thread
    }

    /// Under the head or nut.
    pub fn head(&self) -> f64 {
        self.head
    }

    /// Where the coefficients come from.
    pub fn source(&self) -> &Source {
        &self.source
    }
}

/// The ring under a head or nut that rubs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bearing {
    outer: Length,
    inner: Length,
}

impl Bearing {
    /// Outer diameter of the bearing face, and diameter of the hole under it.
    /// `None` unless the outer is the larger and the hole is no less than 0.
    pub fn new(outer: Length, hole: Length) -> Option<Bearing> {
        (outer.exceeds(hole) && hole.si() >= 0.0).then_some(Bearing { outer, inner: hole })
    }

    /// Outer diameter of the bearing face.
    pub fn outer(self) -> Length {
        self.outer
    }

    /// Diameter of the hole.
    pub fn hole(self) -> Length {
        self.inner
    }

    /// Mean diameter at which it rubs, in metres.
    pub(super) fn mean(self) -> uom::si::f64::Length {
        (self.outer.inner() + self.inner.inner()) / 2.0
    }
}

/// Torque for a clamp load by Shigley, 9th ed., Eq. 8-26:
///
/// T = F × dm/2 × (tan λ + f sec α)/(1 - f tan λ sec α) + 0.625 × fc × F × d
///
/// dm is the mean of the major and minor diameter, λ the helix angle at dm
/// (tan λ = P/(π dm)), α half the thread angle (30°), and 0.625 d the mean
/// radius of a washer face of 1.5 d. Units as in the short form. `None` for a
/// thread that is not computed.
pub fn textbook_long_form(
    thread: &Thread,
    load: Force,
    friction: &Friction,
) -> Option<Worked<Torque>> {
    let profile = thread.profile()?;
    let (d, p) = (profile.diameter.inner(), profile.pitch.inner());
    let dm = (d + profile.minor_external.inner()) / 2.0;
    let helix: f64 = (p / (PI * dm)).value;
    let secant = 1.0 / (PI / 6.0).cos();
    let f = friction.thread;
    let lifting = (helix + f * secant) / (1.0 - f * helix * secant);
    let k = ((dm / (2.0 * d)) * lifting).value + 0.625 * friction.head;
    let torque = Torque::from_inner(
        (k * load.inner() * d).into(),
        System::of(profile.diameter.unit()),
    );
    let working = Working::new()
        .line(
            "nut factor K",
            "dm/(2d) × (tan λ + f sec α)/(1 - f tan λ sec α) + 0.625 fc",
            format!(
                "{} × ({} + {f} × {})/(1 - {f} × {} × {}) + 0.625 × {}",
                trimmed((dm / (2.0 * d)).value, 4),
                trimmed(helix, 4),
                trimmed(secant, 4),
                trimmed(helix, 4),
                trimmed(secant, 4),
                friction.head
            ),
            trimmed(k, 4),
        )
        .line(
            "torque T",
            "K × F × d",
            format!(
                "{} × {load} × {}",
                trimmed(k, 4),
                profile.diameter.amount().as_given()
            ),
            torque,
        )
        .source(Source::read("Shigley, 9th ed., Eq. 8-26"))
        .source(friction.source.clone())
        .assuming("the washer face is 1.5 times the thread's diameter");
    Some(Worked::new(torque, working))
}

/// Torque for a clamp load by MIL-HDBK-60 (1990) App. B 100.5:
///
/// T = F × (P/2π + d2 × μt/(2 cos α) + (d + b) × μh/4)
///
/// with α = 30° and b the outer diameter of the bearing face, 1.5 d where none
/// is given. Units as in the short form. `None` for a thread that is not
/// computed.
pub fn handbook_long_form(
    thread: &Thread,
    load: Force,
    friction: &Friction,
    bearing_face: Option<Length>,
) -> Option<Worked<Torque>> {
    let profile = thread.profile()?;
    let (d, p) = (profile.diameter.inner(), profile.pitch.inner());
    let face = bearing_face.map_or(1.5 * d, Length::inner);
    let lift = p / (2.0 * PI);
    let in_thread = profile.pitch_diameter.inner() * friction.thread / (2.0 * (PI / 6.0).cos());
    let under_head = (d + face) * friction.head / 4.0;
    let system = System::of(profile.diameter.unit());
    let torque = Torque::from_inner(
        (load.inner() * (lift + in_thread + under_head)).into(),
        system,
    );
    let share = |length: uom::si::f64::Length| Length::from_inner(length, system).to_string();
    let mut working = Working::new()
        .line(
            "torque T",
            "F × (P/2π + d2 × μt/(2 cos 30°) + (d + b) × μh/4)",
            format!(
                "{load} × ({} + {} + {})",
                share(lift),
                share(in_thread),
                share(under_head)
            ),
            torque,
        )
        .source(Source::read("MIL-HDBK-60 (1990) App. B 100.5"))
        .source(friction.source.clone());
    if bearing_face.is_none() {
        working = working.assuming("the bearing face is 1.5 times the thread's diameter");
    }
    Some(Worked::new(torque, working))
}
