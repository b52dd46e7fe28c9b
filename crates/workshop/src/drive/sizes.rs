//! Sizes across flats, by series.

use super::HeadSeries;
use crate::source::Source;

/// Nominal diameter and size across flats.
type Sizes = &'static [(f64, f64)];

/// mm. Reproduced tables of ISO 4014, 4017 and 4032. M22 is 34 from memory:
/// two web tables print 32, which is the older German size.
const ISO: Sizes = &[
    (3.0, 5.5),
    (4.0, 7.0),
    (5.0, 8.0),
    (6.0, 10.0),
    (8.0, 13.0),
    (10.0, 16.0),
    (12.0, 18.0),
    (14.0, 21.0),
    (16.0, 24.0),
    (18.0, 27.0),
    (20.0, 30.0),
    (22.0, 34.0),
    (24.0, 36.0),
];

/// mm. A supplier's table of DIN 933. Differs from ISO at M10, M12, M14, M22.
const OLD_DIN: Sizes = &[
    (3.0, 5.5),
    (4.0, 7.0),
    (5.0, 8.0),
    (6.0, 10.0),
    (8.0, 13.0),
    (10.0, 17.0),
    (12.0, 19.0),
    (14.0, 22.0),
    (16.0, 24.0),
    (18.0, 27.0),
    (20.0, 30.0),
    (22.0, 32.0),
    (24.0, 36.0),
];

/// mm. JIS B 1180 annex, small hexagon.
const SMALL: Sizes = &[
    (8.0, 12.0),
    (10.0, 14.0),
    (12.0, 17.0),
    (14.0, 19.0),
    (16.0, 22.0),
    (18.0, 24.0),
    (20.0, 27.0),
    (22.0, 30.0),
    (24.0, 32.0),
];

/// mm. JIS B 1189, small series.
const SMALL_FLANGE: Sizes = &[
    (5.0, 7.0),
    (6.0, 8.0),
    (8.0, 10.0),
    (10.0, 13.0),
    (12.0, 15.0),
    (14.0, 18.0),
    (16.0, 21.0),
];

/// mm. DIN 6921, from memory.
const FLANGE: Sizes = &[
    (5.0, 8.0),
    (6.0, 10.0),
    (8.0, 13.0),
    (10.0, 15.0),
    (12.0, 18.0),
    (14.0, 21.0),
    (16.0, 24.0),
    (20.0, 30.0),
];

/// mm. JIS B 1176:2014 excerpt and an ISO 4762 table.
const SOCKET_CAP: Sizes = &[
    (3.0, 2.5),
    (4.0, 3.0),
    (5.0, 4.0),
    (6.0, 5.0),
    (8.0, 6.0),
    (10.0, 8.0),
    (12.0, 10.0),
    (14.0, 12.0),
    (16.0, 14.0),
    (18.0, 14.0),
    (20.0, 17.0),
    (22.0, 17.0),
    (24.0, 19.0),
];

/// mm. ISO 7380 sheet and a table of countersunk screws.
const SOCKET_BUTTON: Sizes = &[
    (3.0, 2.0),
    (4.0, 2.5),
    (5.0, 3.0),
    (6.0, 4.0),
    (8.0, 5.0),
    (10.0, 6.0),
    (12.0, 8.0),
    (16.0, 10.0),
];

/// mm. A supplier's table of DIN 913 to 916, which the ISO ones replaced.
const SOCKET_GRUB: Sizes = &[
    (3.0, 1.5),
    (4.0, 2.0),
    (5.0, 2.5),
    (6.0, 3.0),
    (8.0, 4.0),
    (10.0, 5.0),
    (12.0, 6.0),
    (16.0, 8.0),
];

/// in. ASME B18.2.1, two reproduced tables.
const INCH_HEX: Sizes = &[
    (0.25, 0.4375),
    (0.3125, 0.5),
    (0.375, 0.5625),
    (0.4375, 0.625),
    (0.5, 0.75),
    (0.5625, 0.8125),
    (0.625, 0.9375),
    (0.75, 1.125),
    (0.875, 1.3125),
    (1.0, 1.5),
];

/// in. ASME B18.3, from memory.
const INCH_SOCKET_CAP: Sizes = &[
    (0.112, 0.09375),
    (0.138, 0.109_375),
    (0.164, 0.140_625),
    (0.190, 0.156_25),
    (0.25, 0.1875),
    (0.3125, 0.25),
    (0.375, 0.3125),
    (0.4375, 0.375),
    (0.5, 0.375),
    (0.625, 0.5),
    (0.75, 0.625),
    (0.875, 0.75),
    (1.0, 0.75),
];

/// The sizes of a series, whether they are in inches, and their source.
pub(super) fn of(series: HeadSeries) -> (Sizes, bool, Source) {
    match series {
        HeadSeries::Iso => (ISO, false, Source::copied("ISO 4014, 4017 and 4032")),
        HeadSeries::OldDin => (OLD_DIN, false, Source::copied("DIN 931, 933 and 934")),
        HeadSeries::Small => (SMALL, false, Source::copied("JIS B 1180, annex")),
        HeadSeries::SmallFlange => (SMALL_FLANGE, false, Source::copied("JIS B 1189")),
        HeadSeries::Flange => (FLANGE, false, Source::memory("DIN 6921")),
        HeadSeries::SocketCap => (SOCKET_CAP, false, Source::copied("ISO 4762 and JIS B 1176")),
        HeadSeries::SocketButton => (
            SOCKET_BUTTON,
            false,
            Source::copied("ISO 7380 and ISO 10642"),
        ),
        HeadSeries::SocketGrub => (SOCKET_GRUB, false, Source::copied("ISO 4026 to 4029")),
        HeadSeries::InchHex => (INCH_HEX, true, Source::copied("ASME B18.2.1")),
        HeadSeries::InchSocketCap => (INCH_SOCKET_CAP, true, Source::memory("ASME B18.3")),
    }
}
