//! Figures for a bench: so many significant digits, no powers of ten.

/// A value with exactly `significant` significant digits, halves away from
/// zero: `rounded(16.226, 3)` is `16.2`, `rounded(0.002, 2)` is `0.0020`.
pub fn rounded(value: f64, significant: usize) -> String {
    let Some((digits, exponent)) = decimal(value, significant) else {
        return if value == 0.0 {
            "0".to_owned()
        } else {
            value.to_string()
        };
    };
    let sign = if value < 0.0 { "-" } else { "" };
    format!("{sign}{}", placed(&digits, exponent))
}

/// As [`rounded`], without zeros at the end of a decimal fraction:
/// `trimmed(30.0, 4)` is `30`.
pub fn trimmed(value: f64, significant: usize) -> String {
    let text = rounded(value, significant);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// A value as a person would write it: 0.12 and not 0.12000000000000001.
/// Twelve significant digits hold every figure that a bench can measure.
pub fn plain(value: f64) -> String {
    trimmed(value, 12)
}

/// A value with so many decimals, halves away from zero.
pub(super) fn with_decimals(value: f64, decimals: usize) -> String {
    // The nudge is far below the last digit asked for, and lifts a half that
    // its binary value has put a hair too low.
    let text = format!("{:.*}", decimals, value * (1.0 + 1e-13));
    let zero = !text.contains(|c: char| ('1'..='9').contains(&c));
    let unsigned = text.strip_prefix('-').filter(|_| zero);
    unsigned.map_or(text.clone(), str::to_owned)
}

/// The first `significant` decimal digits of a value and the power of ten of
/// the first. `None` for zero and for what is no finite number.
fn decimal(value: f64, significant: usize) -> Option<(Vec<u8>, i32)> {
    if value == 0.0 || !value.is_finite() {
        return None;
    }
    // The rounding is done on fifteen decimal digits, not on the binary value:
    // 0.0635 must round to 0.064 though the nearest binary value lies below it.
    let text = format!("{:.14e}", value.abs());
    let (mantissa, exponent) = text.split_once('e')?;
    let mut exponent: i32 = exponent.parse().ok()?;
    let mut digits: Vec<u8> = mantissa
        .bytes()
        .filter(u8::is_ascii_digit)
        .map(|b| b - b'0')
        .collect();
    let significant = significant.max(1);
    if significant < digits.len() {
        let up = digits[significant] >= 5;
        digits.truncate(significant);
        if up {
            match digits.iter().rposition(|digit| *digit < 9) {
                Some(place) => {
                    digits[place] += 1;
                    digits[place + 1..].fill(0);
                }
                None => {
                    digits.fill(0);
                    digits[0] = 1;
                    exponent += 1;
                }
            }
        }
    } else {
        digits.resize(significant, 0);
    }
    Some((digits, exponent))
}

/// Digits written out with the point where the power of ten puts it.
fn placed(digits: &[u8], exponent: i32) -> String {
    let digit = |d: &u8| char::from(b'0' + d);
    if exponent < 0 {
        let zeros = "0".repeat((-exponent - 1) as usize);
        return format!("0.{zeros}{}", digits.iter().map(digit).collect::<String>());
    }
    let before = exponent as usize + 1;
    if before >= digits.len() {
        let zeros = "0".repeat(before - digits.len());
        return format!("{}{zeros}", digits.iter().map(digit).collect::<String>());
    }
    let (whole, part) = digits.split_at(before);
    format!(
        "{}.{}",
        whole.iter().map(digit).collect::<String>(),
        part.iter().map(digit).collect::<String>()
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounds_to_significant_digits() {
        assert_eq!(rounded(16.226, 3), "16.2");
        assert_eq!(rounded(0.0635, 2), "0.064");
        assert_eq!(rounded(0.0019685, 2), "0.0020");
        assert_eq!(rounded(9.96, 2), "10");
        assert_eq!(rounded(99.6, 2), "100");
        assert_eq!(rounded(114_585.0, 3), "115000");
        assert_eq!(rounded(-40.0, 2), "-40");
        assert_eq!(rounded(0.0, 3), "0");
    }

    #[test]
    fn trims_and_writes_plainly() {
        assert_eq!(trimmed(30.0, 4), "30");
        assert_eq!(trimmed(1200.0, 2), "1200");
        assert_eq!(plain(0.120_000_000_000_000_01), "0.12");
        assert_eq!(plain(0.3 - 0.1), "0.2");
    }

    #[test]
    fn keeps_decimals() {
        assert_eq!(with_decimals(302.0, 0), "302");
        assert_eq!(with_decimals(70.7, 1), "70.7");
        assert_eq!(with_decimals(0.4, 0), "0");
        assert_eq!(with_decimals(9.96, 1), "10.0");
        assert_eq!(with_decimals(0.6, 0), "1");
        assert_eq!(with_decimals(-0.4, 0), "0");
        assert_eq!(with_decimals(-17.78, 0), "-18");
    }
}
