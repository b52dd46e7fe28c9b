//! Figures as written, with their meaning where they have one.

use syntax::tree::{Quantity, Word};
use workshop::quantity::{Dimension, Measure, MeasureProblem};

use crate::desk::{Desk, Here};
use crate::model::{Amount, ProblemKind};

/// A figure that may measure anything: a reading, a setting.
pub(crate) const ANYTHING: &[Dimension] = &[];
/// A figure that is a torque.
pub(crate) const TORQUE: &[Dimension] = &[Dimension::Torque];
/// A figure that is an angle.
pub(crate) const ANGLE: &[Dimension] = &[Dimension::Angle];
/// A figure that is a length.
pub(crate) const LENGTH: &[Dimension] = &[Dimension::Length];
/// A figure that is a time.
pub(crate) const TIME: &[Dimension] = &[Dimension::Time];
/// A figure that says how far a machine runs between services.
pub(crate) const INTERVAL: &[Dimension] =
    &[Dimension::Time, Dimension::Distance, Dimension::Length];
/// A figure that is a mass.
pub(crate) const MASS: &[Dimension] = &[Dimension::Mass];
/// A figure that says how much fluid.
pub(crate) const FILLING: &[Dimension] = &[Dimension::Volume, Dimension::Mass];
/// A figure that is a temperature.
pub(crate) const TEMPERATURE: &[Dimension] = &[Dimension::Temperature];
/// A figure that is a share.
pub(crate) const SHARE: &[Dimension] = &[Dimension::Percent];

impl<'t> Desk<'t> {
    /// A figure that should measure one of these; the first of them is named when it does not. A
    /// figure that cannot be read, or has no unit, keeps no meaning.
    pub fn amount(&mut self, here: &Here, quantity: Quantity, wanted: &[Dimension]) -> Amount {
        let text = self.at(here.by, quantity.span);
        let place = self.place(here.by, quantity.span);
        let mut measure = None;
        if !quantity.unknown {
            match self.measured(text) {
                Ok(read) if wanted.is_empty() || wanted.contains(&read.dimension()) => {
                    measure = Some(read);
                }
                Ok(_) => {
                    let (text, wanted) = (text.to_owned(), wanted[0]);
                    self.problem(place, ProblemKind::WrongDimension { text, wanted });
                }
                // What stands behind the figure on a line that could not be read may be its unit.
                Err(MeasureProblem::NoUnit { .. }) if self.damaged.contains(&here.by) => {}
                Err(mut why) => {
                    if let MeasureProblem::NoUnit { wanted: kind, .. } = &mut why {
                        *kind = kind.or(wanted.first().copied());
                    }
                    let text = text.to_owned();
                    self.problem(place, ProblemKind::Figure { text, why });
                }
            }
        }
        Amount {
            text: text.to_owned(),
            place,
            unknown: quantity.unknown,
            measure,
        }
    }

    /// Reads a figure. The same few stand all over a plan, and reading one takes longer than
    /// looking it up.
    fn measured(&mut self, text: &'t str) -> Result<Measure, MeasureProblem> {
        if let Some(known) = self.measures.get(text) {
            return Ok(known.clone());
        }
        let read = Measure::read(text)?;
        self.measures.insert(text, read.clone());
        Ok(read)
    }

    /// A count.
    pub fn count(&mut self, here: &Here, word: Word) -> Option<u32> {
        let written = self.at(here.by, word.span);
        if let Ok(count) = written.parse() {
            return Some(count);
        }
        let given = written.to_owned();
        let digits = !written.is_empty() && written.bytes().all(|b| b.is_ascii_digit());
        let why = match digits {
            true => MeasureProblem::TooBig { given },
            false => MeasureProblem::NotANumber { given },
        };
        let text = written.to_owned();
        let place = self.place(here.by, word.span);
        self.problem(place, ProblemKind::Figure { text, why });
        None
    }
}
