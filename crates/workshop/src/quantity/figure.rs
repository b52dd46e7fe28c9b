//! One number as it was written.

/// One number as it was written, with its value and how finely it was given.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    text: String,
    value: f64,
    significant: usize,
    decimals: usize,
    fraction: bool,
}

/// Why a text does not begin with a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum FigureProblem {
    /// No digit where one was wanted.
    None,
    /// A comma between digits.
    Comma,
    /// A fraction over zero.
    OverZero,
    /// More digits than any value needs.
    TooBig,
}

impl Figure {
    /// The figure exactly as written.
    pub fn as_written(&self) -> &str {
        &self.text
    }

    /// Its value.
    pub fn value(&self) -> f64 {
        self.value
    }

    /// How many significant digits were written; 4 for a fraction, which is
    /// exact.
    pub fn significant(&self) -> usize {
        self.significant
    }

    /// How many digits stand behind the point.
    pub fn decimals(&self) -> usize {
        self.decimals
    }

    /// Whether it was written as a fraction (`15/16`, `1 1/2`).
    pub fn is_fraction(&self) -> bool {
        self.fraction
    }

    /// A figure for a value that nobody wrote.
    pub(super) fn made(value: f64, text: String) -> Figure {
        let (significant, decimals) = fineness(&text);
        Figure {
            text,
            value,
            significant,
            decimals,
            fraction: false,
        }
    }

    /// The figure that `text` begins with, and what stands behind it.
    ///
    /// Read are `22`, `0.12`, `.005`, `-40`, `15/16`, `1 1/2` and `1-1/2`. A
    /// point wants a digit behind it, so that `5..25` is a range.
    pub(super) fn at_start(text: &str) -> Result<(Figure, &str), FigureProblem> {
        let (negative, unsigned) = match text.strip_prefix(['-', '−']) {
            Some(rest) => (true, rest),
            None => (false, text.strip_prefix('+').unwrap_or(text)),
        };
        let (number, mut rest) = decimal_at_start(unsigned).ok_or(FigureProblem::None)?;
        let mut value = value_of(number)?;
        let mut fraction = false;
        let whole = !number.contains('.');
        if whole {
            if let Some((below, after)) = below_the_line(rest) {
                value /= nonzero(below)?;
                rest = after;
                fraction = true;
            } else if let Some((above, below, after)) = fraction_behind_whole(rest) {
                value += value_of(above)? / nonzero(below)?;
                rest = after;
                fraction = true;
            }
        }
        let behind_comma = rest.strip_prefix(',');
        if behind_comma.is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit())) {
            return Err(FigureProblem::Comma);
        }
        let text = &text[..text.len() - rest.len()];
        let value = if negative { -value } else { value };
        let (significant, decimals) = if fraction { (4, 0) } else { fineness(number) };
        let figure = Figure {
            text: text.to_owned(),
            value,
            significant,
            decimals,
            fraction,
        };
        Ok((figure, rest))
    }
}

/// Digits, with a point only where a digit follows it.
fn decimal_at_start(text: &str) -> Option<(&str, &str)> {
    let whole = digits_at_start(text);
    let behind = &text[whole.len()..];
    let part = behind
        .strip_prefix('.')
        .map(digits_at_start)
        .unwrap_or_default();
    let length = if part.is_empty() {
        whole.len()
    } else {
        whole.len() + 1 + part.len()
    };
    (length > 0).then(|| text.split_at(length))
}

fn digits_at_start(text: &str) -> &str {
    let end = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    &text[..end]
}

/// `/16` and what is behind it. A point or a slash behind the digits would
/// make it something else than a fraction.
fn below_the_line(text: &str) -> Option<(&str, &str)> {
    let below = digits_at_start(text.strip_prefix('/')?);
    let rest = &text[1 + below.len()..];
    let ended = !rest.starts_with('/') && decimal_at_start(rest).is_none();
    (!below.is_empty() && ended).then_some((below, rest))
}

/// ` 1/2` or `-1/2` behind a whole number.
fn fraction_behind_whole(text: &str) -> Option<(&str, &str, &str)> {
    let joined = text.strip_prefix('-').or_else(|| {
        let trimmed = text.trim_start_matches([' ', '\t']);
        (trimmed.len() < text.len()).then_some(trimmed)
    })?;
    let above = digits_at_start(joined);
    if above.is_empty() {
        return None;
    }
    let (below, rest) = below_the_line(&joined[above.len()..])?;
    Some((above, below, rest))
}

fn value_of(number: &str) -> Result<f64, FigureProblem> {
    // Beyond thirty digits it is no measurement but a slip of the keyboard.
    if number.len() > 30 {
        return Err(FigureProblem::TooBig);
    }
    number.parse().map_err(|_| FigureProblem::None)
}

fn nonzero(number: &str) -> Result<f64, FigureProblem> {
    let value = value_of(number)?;
    if value == 0.0 {
        Err(FigureProblem::OverZero)
    } else {
        Ok(value)
    }
}

/// Significant digits and decimals of a decimal number as written. Zeros at
/// the end of a whole number count: a torque of 130 N.m is given to the newton
/// metre.
fn fineness(number: &str) -> (usize, usize) {
    let digits: String = number.chars().filter(char::is_ascii_digit).collect();
    let significant = digits.trim_start_matches('0').len().max(1);
    let decimals = number.split_once('.').map_or(0, |(_, part)| part.len());
    (significant, decimals)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> (f64, &str) {
        let (figure, rest) = Figure::at_start(text).unwrap();
        (figure.value(), rest)
    }

    #[test]
    fn reads_numbers_and_fractions() {
        assert_eq!(read("22 N.m"), (22.0, " N.m"));
        assert_eq!(read(".005 in"), (0.005, " in"));
        assert_eq!(read("-40 C"), (-40.0, " C"));
        assert_eq!(read("5..25 N.m"), (5.0, "..25 N.m"));
        assert_eq!(read("15/16 in"), (0.9375, " in"));
        assert_eq!(read("1 1/2 in"), (1.5, " in"));
        assert_eq!(read("1-1/2 in"), (1.5, " in"));
        assert_eq!(read("-1 1/2 in"), (-1.5, " in"));
        assert_eq!(read("1/2 turn"), (0.5, " turn"));
    }

    #[test]
    fn refuses_what_is_no_number() {
        assert_eq!(Figure::at_start("N.m"), Err(FigureProblem::None));
        assert_eq!(Figure::at_start("."), Err(FigureProblem::None));
        assert_eq!(Figure::at_start("1/0 in"), Err(FigureProblem::OverZero));
        assert_eq!(Figure::at_start("0,12 mm"), Err(FigureProblem::Comma));
        assert_eq!(
            Figure::at_start(&"9".repeat(400)),
            Err(FigureProblem::TooBig)
        );
    }

    #[test]
    fn counts_how_finely_it_was_given() {
        let fine = |text: &str| {
            let (figure, _) = Figure::at_start(text).unwrap();
            (figure.significant(), figure.decimals())
        };
        assert_eq!(fine("130"), (3, 0));
        assert_eq!(fine("0.0025"), (2, 4));
        assert_eq!(fine("1.50"), (3, 2));
        assert_eq!(fine("0"), (1, 0));
        assert_eq!(fine("1 1/2"), (4, 0));
    }
}
