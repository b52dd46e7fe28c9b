//! Reading a thread's designation.

use super::metric::metric_pitches;
use super::unified::{numbered, unified_listed};
use super::{MetricThread, NamedThread, Thread, ThreadProblem, UnifiedSeries, UnifiedThread};
use crate::quantity::same;

pub(super) fn thread(text: &str) -> Result<Thread, ThreadProblem> {
    let written = text.trim();
    let text = without_tolerance(written);
    if let Some(rest) = text.strip_prefix(['M', 'm'])
        && rest.trim_start().starts_with(|c: char| c.is_ascii_digit())
    {
        return metric(written, rest.trim_start());
    }
    if let Some(named) = NamedThread::read(text) {
        return Ok(Thread::Named(named));
    }
    unified(written, text)
}

/// The designation without a tolerance class behind it: `-6g`, `-4h6h`, `-2A`,
/// ` 2B`. Diameters do not depend on it; limits of size are always those of the
/// usual class, and their source says which that is.
fn without_tolerance(text: &str) -> &str {
    let Some((before, last)) = text.rsplit_once(['-', ' ']) else {
        return text;
    };
    let mut letters = last.chars();
    let is_tolerance = matches!(last.len(), 2 | 4)
        && letters.by_ref().enumerate().all(|(place, c)| {
            if place % 2 == 0 {
                c.is_ascii_digit()
            } else {
                c.is_ascii_alphabetic()
            }
        });
    if is_tolerance {
        before.trim_end()
    } else {
        text
    }
}

fn metric(written: &str, rest: &str) -> Result<Thread, ThreadProblem> {
    let not_a_thread = || ThreadProblem::NotAThread {
        given: written.to_owned(),
    };
    let (diameter, pitch) = match rest.split_once(['x', 'X', '×']) {
        Some((diameter, pitch)) => (diameter, Some(pitch)),
        None => (rest, None),
    };
    let diameter = decimal(diameter).ok_or_else(not_a_thread)?;
    let pitch = pitch
        .map(|pitch| decimal(pitch).ok_or_else(not_a_thread))
        .transpose()?;
    if let Some(thread) = MetricThread::new(diameter, pitch) {
        return Ok(Thread::Metric(thread));
    }
    Err(match pitch {
        Some(_) => ThreadProblem::Impossible {
            given: written.to_owned(),
        },
        None => ThreadProblem::WhichPitch {
            diameter_mm: diameter,
            listed: metric_pitches(diameter),
        },
    })
}

/// `SIZE[-TPI] [SERIES]`, where the size may itself hold a dash (`1-1/8`).
fn unified(written: &str, text: &str) -> Result<Thread, ThreadProblem> {
    let not_a_thread = || ThreadProblem::NotAThread {
        given: written.to_owned(),
    };
    let letters = text.find("UN").or_else(|| text.find("un"));
    let (numbers, series) = match letters {
        Some(at) => {
            let series = UnifiedSeries::read(&text[at..]).ok_or_else(not_a_thread)?;
            (text[..at].trim(), Some(series))
        }
        None => (text, None),
    };
    let (size, tpi) = match numbers.rsplit_once('-') {
        // What stands behind the last dash is threads per inch, unless it is
        // the fraction of a mixed size.
        Some((size, last)) if !last.contains('/') => {
            (size.trim(), Some(decimal(last).ok_or_else(not_a_thread)?))
        }
        _ => (numbers, None),
    };
    let diameter = inches(size).ok_or_else(not_a_thread)?;
    let listed = unified_listed(diameter);
    let of_series = series.and_then(|series| listed.iter().find(|(of, _)| *of == series));
    let has_list = matches!(
        series,
        Some(UnifiedSeries::Unc | UnifiedSeries::Unf | UnifiedSeries::Unef)
    );
    let tpi = match (tpi, series, of_series) {
        (Some(given), Some(series), Some((_, listed))) if !same(given, *listed) => {
            return Err(ThreadProblem::SeriesDisagrees {
                series,
                given,
                listed: *listed,
            });
        }
        (Some(given), ..) => given,
        (None, Some(_), Some((_, listed))) => *listed,
        (None, Some(series), None) if has_list => {
            return Err(ThreadProblem::NotInSeries {
                given: size.to_owned(),
                series,
                listed,
            });
        }
        (None, ..) => {
            return Err(ThreadProblem::WhichSeries {
                given: size.to_owned(),
                listed,
            });
        }
    };
    let thread = UnifiedThread::new(diameter, tpi, series);
    thread
        .map(Thread::Unified)
        .ok_or_else(|| ThreadProblem::Impossible {
            given: written.to_owned(),
        })
}

/// `#10`, `1/4`, `1-1/8`, `1 1/8`, `1`, `1.500`.
fn inches(size: &str) -> Option<f64> {
    if let Some(number) = size.strip_prefix('#').or_else(|| size.strip_prefix("No.")) {
        return numbered(number.trim().parse().ok()?);
    }
    let (whole, fraction) = match size.split_once(['-', ' ']) {
        Some((whole, fraction)) => (decimal(whole)?, Some(fraction)),
        None if size.contains('/') => (0.0, Some(size)),
        None => (decimal(size)?, None),
    };
    let Some(fraction) = fraction else {
        return Some(whole);
    };
    let (above, below) = fraction.trim().split_once('/')?;
    let (above, below) = (decimal(above)?, decimal(below)?);
    (below > 0.0).then_some(whole + above / below)
}

/// Digits with at most one point, and nothing else: `f64`'s own reading would
/// let `inf` and `1e9` through.
fn decimal(text: &str) -> Option<f64> {
    let text = text.trim();
    let plain = text.len() <= 12
        && text.starts_with(|c: char| c.is_ascii_digit() || c == '.')
        && text.chars().all(|c| c.is_ascii_digit() || c == '.');
    plain.then(|| text.parse().ok())?
}

#[cfg(test)]
mod tests {
    use super::*;

    fn name(text: &str) -> String {
        Thread::read(text)
            .unwrap_or_else(|problem| panic!("{text}: {problem:?}"))
            .designation()
    }

    #[test]
    fn reads_what_is_stamped_and_written() {
        assert_eq!(name("M8"), "M8x1.25");
        assert_eq!(name("M14x1.5"), "M14x1.5");
        assert_eq!(name("m10 × 1.25"), "M10x1.25");
        assert_eq!(name("M8x1.25-6g"), "M8x1.25");
        assert_eq!(name("1/2-20 UNF"), "1/2-20 UNF");
        assert_eq!(name("1/2-20"), "1/2-20 UNF");
        assert_eq!(name("1/4 UNC"), "1/4-20 UNC");
        assert_eq!(name("#10-32 UNF"), "#10-32 UNF");
        assert_eq!(name("#10-32 UNF-2A"), "#10-32 UNF");
        assert_eq!(name("M8x1-4h6h"), "M8x1");
        assert_eq!(name("1/4-28 UNJF-3A"), "1/4-28 UNF");
        assert_eq!(name("3/8-16 UNRC 2A"), "3/8-16 UNC");
        assert_eq!(name("1-1/8-7 UNC"), "1-1/8-7 UNC");
        assert_eq!(name("1 1/8-7UNC"), "1-1/8-7 UNC");
        assert_eq!(name("1.500-8UN"), "1-1/2-8 UN");
        assert_eq!(name("1-14 UNS"), "1-14 UNS");
        assert_eq!(name("G1/4"), "1/4 BSPP");
        assert_eq!(name("R 1/8"), "1/8 BSPT");
        assert_eq!(name("3/8 BSF"), "3/8 BSF");
        assert_eq!(name("2 BA"), "2 BA");
        assert_eq!(name("2BA"), "2 BA");
        assert_eq!(name("1/2BSP"), "1/2 BSPP");
        assert_eq!(name("Tr 20x4"), "20x4 Tr");
        assert_eq!(name("Rc1/8"), "1/8 BSPT");
        assert_eq!(name("1/8-27 NPT"), "1/8-27 NPT");
    }

    #[test]
    fn what_contradicts_itself_is_said() {
        let problem = |text: &str| Thread::read(text).unwrap_err();
        assert!(matches!(
            problem("1/2-13 UNF"),
            ThreadProblem::SeriesDisagrees { .. }
        ));
        assert!(matches!(problem("1/2"), ThreadProblem::WhichSeries { .. }));
        assert!(matches!(
            problem("1-3/4 UNF"),
            ThreadProblem::NotInSeries { .. }
        ));
        assert!(matches!(problem("M15"), ThreadProblem::WhichPitch { .. }));
        assert!(matches!(problem("M8x8"), ThreadProblem::Impossible { .. }));
        assert_eq!(
            problem("1/2").describe(),
            "“1/2” alone is no thread; write which it is: 1/2-13 UNC or 1/2-20 UNF or 1/2-28 UNEF"
        );
        for text in [
            "", "M", "Mx", "M8x", "#", "#99-4", "1/0-20", "-", "M1e9", "8", "bolt", "½-20", "UNF",
            "1--8",
        ] {
            assert!(!problem(text).describe().is_empty(), "{text}");
        }
    }

    #[test]
    fn an_unlisted_pitch_is_noticed() {
        let pitches = |text: &str| Thread::read(text).unwrap().listed_pitches_instead();
        assert_eq!(pitches("M8x1.5"), vec![1.25, 1.0, 0.75]);
        assert!(pitches("M8x1").is_empty());
        assert!(pitches("1/4-20").is_empty());
    }
}
