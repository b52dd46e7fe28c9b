//! Which spanner or key fits which thread. One thread has up to five right
//! answers: an M10 head takes 17, 16, 15, 14 or 13 mm by its series, and a key
//! of 8 or 6 mm besides. So the series is asked for, and ISO hexagon is only
//! the default.

mod sizes;

use crate::quantity::{Length, same};
use crate::source::Source;
use crate::thread::Thread;

/// A series of heads or sockets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeadSeries {
    /// Hexagon, ISO 4014, 4017 and 4032.
    Iso,
    /// Hexagon of the older German standards, DIN 931, 933 and 934.
    OldDin,
    /// Small hexagon of JIS B 1180, usual on Japanese engines.
    Small,
    /// Small hexagon flange, JIS B 1189 and ISO 15071.
    SmallFlange,
    /// Hexagon flange of DIN 6921.
    Flange,
    /// Socket head cap screw, ISO 4762 and JIS B 1176: the key.
    SocketCap,
    /// Button head and countersunk with socket, ISO 7380 and ISO 10642: the key.
    SocketButton,
    /// Grub screw with socket, ISO 4026 to 4029: the key.
    SocketGrub,
    /// Inch hexagon cap screw, ASME B18.2.1.
    InchHex,
    /// Inch socket head cap screw, ASME B18.3: the key.
    InchSocketCap,
}

impl HeadSeries {
    /// Every series, in the order in which a bench would try them.
    pub const ALL: [HeadSeries; 10] = [
        HeadSeries::Iso,
        HeadSeries::OldDin,
        HeadSeries::Small,
        HeadSeries::SmallFlange,
        HeadSeries::Flange,
        HeadSeries::SocketCap,
        HeadSeries::SocketButton,
        HeadSeries::SocketGrub,
        HeadSeries::InchHex,
        HeadSeries::InchSocketCap,
    ];

    /// The series by the word a plan uses for it: `iso`, `din`, `jis-small`,
    /// `jis-flange`, `flange`, `socket-cap`, `button`, `grub`, `inch`,
    /// `inch-socket-cap`.
    pub fn read(word: &str) -> Option<HeadSeries> {
        HeadSeries::ALL
            .into_iter()
            .find(|series| series.word() == word.trim())
    }

    /// The word a plan uses for it.
    pub fn word(self) -> &'static str {
        match self {
            HeadSeries::Iso => "iso",
            HeadSeries::OldDin => "din",
            HeadSeries::Small => "jis-small",
            HeadSeries::SmallFlange => "jis-flange",
            HeadSeries::Flange => "flange",
            HeadSeries::SocketCap => "socket-cap",
            HeadSeries::SocketButton => "button",
            HeadSeries::SocketGrub => "grub",
            HeadSeries::InchHex => "inch",
            HeadSeries::InchSocketCap => "inch-socket-cap",
        }
    }

    /// The series in a mechanic's words.
    pub fn words(self) -> &'static str {
        match self {
            HeadSeries::Iso => "hexagon, ISO",
            HeadSeries::OldDin => "hexagon, older German standard",
            HeadSeries::Small => "small hexagon, Japanese standard",
            HeadSeries::SmallFlange => "small hexagon flange, Japanese standard",
            HeadSeries::Flange => "hexagon flange",
            HeadSeries::SocketCap => "socket head cap screw",
            HeadSeries::SocketButton => "button head or countersunk socket screw",
            HeadSeries::SocketGrub => "grub screw with socket",
            HeadSeries::InchHex => "inch hexagon",
            HeadSeries::InchSocketCap => "inch socket head cap screw",
        }
    }

    /// Whether the size is that of a key put into the head, not of a spanner
    /// around it.
    pub fn is_key(self) -> bool {
        matches!(
            self,
            HeadSeries::SocketCap
                | HeadSeries::SocketButton
                | HeadSeries::SocketGrub
                | HeadSeries::InchSocketCap
        )
    }
}

/// A size across flats, with its series.
#[derive(Debug, Clone, PartialEq)]
pub struct DriveSize {
    /// The series.
    pub series: HeadSeries,
    /// Size across flats of the head, or of the key.
    pub across_flats: Length,
    /// Where it comes from.
    pub source: Source,
}

/// The size across flats of a thread's head in a series. `None` where the
/// series has none.
pub fn drive_size(thread: &Thread, series: HeadSeries) -> Option<DriveSize> {
    let diameter = thread.diameter()?;
    let (rows, in_inches, source) = sizes::of(series);
    let wanted = match (thread, in_inches) {
        (Thread::Metric(_), false) => diameter.in_millimetres(),
        (Thread::Unified(_), true) => diameter.in_inches(),
        _ => return None,
    };
    let (_, size) = rows.iter().find(|(d, _)| same(*d, wanted))?;
    let across_flats = if in_inches {
        Length::inches(*size)
    } else {
        Length::millimetres(*size)
    };
    Some(DriveSize {
        series,
        across_flats,
        source: source.clone(),
    })
}

/// Every size that some series gives a thread.
pub fn drive_sizes(thread: &Thread) -> Vec<DriveSize> {
    HeadSeries::ALL
        .into_iter()
        .filter_map(|series| drive_size(thread, series))
        .collect()
}

/// The series in which a spanner or key of this size fits the thread. Empty
/// when it fits none: it is likely the wrong tool.
pub fn series_that_fit(thread: &Thread, across_flats: Length) -> Vec<HeadSeries> {
    let fits = |size: &DriveSize| same(size.across_flats.si(), across_flats.si());
    drive_sizes(thread)
        .iter()
        .filter(|size| fits(size))
        .map(|size| size.series)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sizes_of(text: &str) -> Vec<String> {
        let thread = Thread::read(text).unwrap();
        let all = drive_sizes(&thread).into_iter();
        all.map(|size| format!("{} {}", size.series.word(), size.across_flats))
            .collect()
    }

    #[test]
    fn m10_has_a_size_for_every_series() {
        assert_eq!(
            sizes_of("M10"),
            [
                "iso 16 mm",
                "din 17 mm",
                "jis-small 14 mm",
                "jis-flange 13 mm",
                "flange 15 mm",
                "socket-cap 8 mm",
                "button 6 mm",
                "grub 5 mm"
            ]
        );
    }

    #[test]
    fn a_size_finds_its_series() {
        let fit = |thread: &str, size: f64| {
            series_that_fit(&Thread::read(thread).unwrap(), Length::millimetres(size))
        };
        assert_eq!(
            fit("M8", 13.0),
            [HeadSeries::Iso, HeadSeries::OldDin, HeadSeries::Flange]
        );
        assert_eq!(fit("M8", 12.0), [HeadSeries::Small]);
        assert!(fit("M8", 11.0).is_empty());
        // A spanner of 7/16 in is 11.11 mm, which no M6 head has.
        let inch = Thread::read("1/4-28").unwrap();
        assert_eq!(
            series_that_fit(&inch, Length::inches(7.0 / 16.0)),
            [HeadSeries::InchHex]
        );
        assert!(
            series_that_fit(&Thread::read("M6").unwrap(), Length::inches(7.0 / 16.0)).is_empty()
        );
    }

    #[test]
    fn every_series_is_found_by_its_word() {
        for series in HeadSeries::ALL {
            assert_eq!(HeadSeries::read(series.word()), Some(series));
        }
        assert_eq!(HeadSeries::read("torx"), None);
    }
}
