//! The closed list of units: one row a unit.
//!
//! Factors follow from the definitions of the yard-pound agreement of 1959
//! (1 lb = 0.453 592 37 kg, 1 in = 25.4 mm), standard gravity
//! (9.806 65 m/s2, CGPM 1901), the US gallon of 231 in3, the imperial gallon of
//! 4.546 09 L (UK 1985) and the SI Brochure, 9th edition. The unit library's
//! own factors are not used: its pound-force foot differs in the seventh
//! digit.

use super::dimension::Dimension;

const LB: f64 = 0.453_592_37;
const GRAVITY: f64 = 9.806_65;
const INCH: f64 = 0.0254;
const LBF: f64 = LB * GRAVITY;
const PSI: f64 = LBF / (INCH * INCH);
const US_GALLON: f64 = 3.785_411_784e-3;
const IMPERIAL_GALLON: f64 = 4.546_09e-3;
const DAY: f64 = 86_400.0;
/// 365.25 days: a service interval in years is a calendar matter, and this is
/// the usual figure for comparing it with one in hours or days.
const YEAR: f64 = 365.25 * DAY;

/// One row of the table, and what can be asked of a unit.
struct Row {
    unit: Unit,
    dimension: Dimension,
    /// SI value of one of this unit.
    factor: f64,
    symbol: &'static str,
    words: &'static str,
    /// In groups; the order means nothing.
    spellings: &'static [&'static [&'static str]],
}

/// A product of two units, with every sign that is written between them.
macro_rules! times {
    ($a:literal, $b:literal) => {
        &[
            concat!($a, ".", $b),
            concat!($a, "·", $b),
            concat!($a, "⋅", $b),
            concat!($a, "-", $b),
            concat!($a, " ", $b),
        ]
    };
}

/// A measure said to be the American one.
macro_rules! american {
    ($name:literal) => {
        &[
            concat!("us-", $name),
            concat!("US-", $name),
            concat!("US ", $name),
        ]
    };
}

/// A measure said to be the British one.
macro_rules! imperial {
    ($name:literal) => {
        &[
            concat!("imp-", $name),
            concat!("IMP-", $name),
            concat!("imp ", $name),
            concat!("uk-", $name),
            concat!("UK-", $name),
            concat!("UK ", $name),
        ]
    };
}

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident $dimension:ident $factor:expr, $symbol:literal, $words:literal, [$($spellings:expr),* $(,)?];)*) => {
        /// A unit of the closed list. A quantity in any other unit is not read.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Unit { $($(#[$doc])* $name,)* }

        static TABLE: &[Row] = &[$(Row {
            unit: Unit::$name,
            dimension: Dimension::$dimension,
            factor: $factor,
            symbol: $symbol,
            words: $words,
            spellings: &[$($spellings),*],
        },)*];
    };
}

units! {
    /// N.m
    NewtonMetre Torque 1.0, "N.m", "newton metres",
        [&["Nm"], times!("N", "m")];
    /// cN.m
    CentinewtonMetre Torque 0.01, "cN.m", "centinewton metres",
        [&["cNm"], times!("cN", "m")];
    /// dN.m
    DecinewtonMetre Torque 0.1, "dN.m", "decinewton metres",
        [&["dNm"], times!("dN", "m")];
    /// daN.m
    DecanewtonMetre Torque 10.0, "daN.m", "decanewton metres",
        [&["daNm"], times!("daN", "m")];
    /// kN.m
    KilonewtonMetre Torque 1000.0, "kN.m", "kilonewton metres",
        [&["kNm"], times!("kN", "m")];
    /// kgf.m, which older manuals write kg-m
    KilogramForceMetre Torque GRAVITY, "kgf.m", "kilogram-force metres",
        [&["kgfm", "kgm"], times!("kgf", "m"), times!("kg", "m"), times!("m", "kg")];
    /// kgf.cm, which older manuals write kg-cm
    KilogramForceCentimetre Torque GRAVITY / 100.0, "kgf.cm", "kilogram-force centimetres",
        [&["kgfcm", "kgcm"], times!("kgf", "cm"), times!("kg", "cm"), times!("cm", "kg")];
    /// lbf.ft
    PoundForceFoot Torque LBF * 12.0 * INCH, "lbf.ft", "pound-force feet",
        [times!("lbf", "ft"), times!("lb", "ft"), times!("lbs", "ft"), times!("ft", "lbf"), times!("ft", "lb"), times!("ft", "lbs"), &["pound-feet", "foot-pounds"]];
    /// lbf.in
    PoundForceInch Torque LBF * INCH, "lbf.in", "pound-force inches",
        [times!("lbf", "in"), times!("lb", "in"), times!("lbs", "in"), times!("in", "lbf"), times!("in", "lb"), times!("in", "lbs"), &["pound-inches", "inch-pounds"]];
    /// ozf.in
    OunceForceInch Torque LBF * INCH / 16.0, "ozf.in", "ounce-force inches",
        [times!("ozf", "in"), times!("oz", "in"), times!("in", "ozf"), times!("in", "oz"), &["inch-ounces"]];

    /// N
    Newton Force 1.0, "N", "newtons", [&["N", "newtons"]];
    /// kN
    Kilonewton Force 1000.0, "kN", "kilonewtons", [&["kN"]];
    /// daN
    Decanewton Force 10.0, "daN", "decanewtons", [&["daN"]];
    /// kgf
    KilogramForce Force GRAVITY, "kgf", "kilograms-force", [&["kgf"]];
    /// lbf
    PoundForce Force LBF, "lbf", "pounds-force", [&["lbf"]];
    /// ozf
    OunceForce Force LBF / 16.0, "ozf", "ounces-force", [&["ozf"]];

    /// Pa
    Pascal Pressure 1.0, "Pa", "pascals", [&["Pa"]];
    /// kPa
    Kilopascal Pressure 1e3, "kPa", "kilopascals", [&["kPa"]];
    /// MPa
    Megapascal Pressure 1e6, "MPa", "megapascals", [&["MPa"]];
    /// GPa
    Gigapascal Pressure 1e9, "GPa", "gigapascals", [&["GPa"]];
    /// bar
    Bar Pressure 1e5, "bar", "bar", [&["bar", "bars"]];
    /// mbar
    Millibar Pressure 100.0, "mbar", "millibar", [&["mbar"]];
    /// psi
    Psi Pressure PSI, "psi", "pounds per square inch", [&["psi", "PSI", "lbf/in2", "lbf/in²", "lb/in2", "lb/in²"]];
    /// ksi
    Ksi Pressure PSI * 1000.0, "ksi", "thousand pounds per square inch", [&["ksi"]];
    /// N/mm2
    NewtonPerSquareMillimetre Pressure 1e6, "N/mm2", "newtons per square millimetre", [&["N/mm2", "N/mm²"]];
    /// kgf/cm2, which older manuals write kg/cm2
    KilogramForcePerSquareCentimetre Pressure GRAVITY * 1e4, "kgf/cm2", "kilograms-force per square centimetre",
        [&["kgf/cm2", "kgf/cm²", "kg/cm2", "kg/cm²"]];
    /// mmHg, the conventional one (13 595.1 kg/m3 at standard gravity)
    MillimetreOfMercury Pressure 133.322_387_415, "mmHg", "millimetres of mercury", [&["mmHg"]];
    /// inHg, the conventional one: 25.4 mmHg
    InchOfMercury Pressure 133.322_387_415 * 25.4, "inHg", "inches of mercury", [&["inHg"]];

    /// m
    Metre Length 1.0, "m", "metres", [&["m", "metre", "metres", "meter", "meters"]];
    /// cm
    Centimetre Length 0.01, "cm", "centimetres", [&["cm"]];
    /// mm
    Millimetre Length 1e-3, "mm", "millimetres", [&["mm"]];
    /// µm
    Micrometre Length 1e-6, "µm", "micrometres", [&["µm", "μm", "um", "micron", "microns"]];
    /// in
    Inch Length INCH, "in", "inches", [&["in", "inch", "inches"]];
    /// a thousandth of an inch
    Thou Length INCH / 1000.0, "thou", "thousandths of an inch", [&["thou"]];
    /// ft
    Foot Length 12.0 * INCH, "ft", "feet", [&["ft", "foot", "feet"]];

    /// mm2
    SquareMillimetre Area 1e-6, "mm2", "square millimetres", [&["mm2", "mm²"]];
    /// cm2
    SquareCentimetre Area 1e-4, "cm2", "square centimetres", [&["cm2", "cm²"]];
    /// in2
    SquareInch Area INCH * INCH, "in2", "square inches", [&["in2", "in²"]];

    /// kg
    Kilogram Mass 1.0, "kg", "kilograms", [&["kg", "kgs"]];
    /// g
    Gram Mass 1e-3, "g", "grams", [&["g", "gram", "grams"]];
    /// t
    Tonne Mass 1000.0, "t", "tonnes", [&["t", "tonne", "tonnes"]];
    /// lb
    Pound Mass LB, "lb", "pounds", [&["lb", "lbs", "pound", "pounds"]];
    /// oz, the ounce of weight
    Ounce Mass LB / 16.0, "oz", "ounces", [&["oz", "ounce", "ounces"]];

    /// L
    Litre Volume 1e-3, "L", "litres", [&["L", "l", "litre", "litres", "liter", "liters"]];
    /// cL
    Centilitre Volume 1e-5, "cL", "centilitres", [&["cL", "cl"]];
    /// dL
    Decilitre Volume 1e-4, "dL", "decilitres", [&["dL", "dl"]];
    /// mL
    Millilitre Volume 1e-6, "mL", "millilitres", [&["mL", "ml"]];
    /// cm3
    CubicCentimetre Volume 1e-6, "cm3", "cubic centimetres", [&["cm3", "cm³", "cc", "ccm"]];
    /// in3
    CubicInch Volume INCH * INCH * INCH, "in3", "cubic inches", [&["in3", "in³", "cu in", "cu-in"]];
    /// US pint (473 mL)
    UsPint Volume US_GALLON / 8.0, "us-pint", "US pints",
        [american!("pint"), american!("pints"), american!("pt")];
    /// US quart (946 mL)
    UsQuart Volume US_GALLON / 4.0, "us-quart", "US quarts",
        [american!("quart"), american!("quarts"), american!("qt")];
    /// US gallon (3.785 L)
    UsGallon Volume US_GALLON, "us-gallon", "US gallons",
        [american!("gallon"), american!("gallons"), american!("gal")];
    /// US fluid ounce (29.6 mL)
    UsFluidOunce Volume US_GALLON / 128.0, "us-fl-oz", "US fluid ounces",
        [american!("fl-oz"), american!("fl oz")];
    /// imperial pint (568 mL)
    ImperialPint Volume IMPERIAL_GALLON / 8.0, "imp-pint", "imperial pints",
        [imperial!("pint"), imperial!("pints"), imperial!("pt")];
    /// imperial quart (1137 mL)
    ImperialQuart Volume IMPERIAL_GALLON / 4.0, "imp-quart", "imperial quarts",
        [imperial!("quart"), imperial!("quarts"), imperial!("qt")];
    /// imperial gallon (4.546 L)
    ImperialGallon Volume IMPERIAL_GALLON, "imp-gallon", "imperial gallons",
        [imperial!("gallon"), imperial!("gallons"), imperial!("gal")];
    /// imperial fluid ounce (28.4 mL)
    ImperialFluidOunce Volume IMPERIAL_GALLON / 160.0, "imp-fl-oz", "imperial fluid ounces",
        [imperial!("fl-oz"), imperial!("fl oz")];

    /// degrees Celsius
    Celsius Temperature 1.0, "°C", "degrees Celsius", [&["°C", "C", "degC", "deg C"]];
    /// degrees Fahrenheit
    Fahrenheit Temperature 5.0 / 9.0, "°F", "degrees Fahrenheit", [&["°F", "F", "degF", "deg F"]];
    /// kelvin
    Kelvin Temperature 1.0, "K", "kelvin", [&["K"]];

    /// degrees of arc
    Degree Angle std::f64::consts::PI / 180.0, "deg", "degrees", [&["deg", "°", "degs", "degree", "degrees"]];
    /// radians
    Radian Angle 1.0, "rad", "radians", [&["rad", "radian", "radians"]];
    /// whole turns
    Turn Angle std::f64::consts::TAU, "turn", "turns", [&["turn", "turns"]];

    /// seconds
    Second Time 1.0, "s", "seconds", [&["s", "sec", "secs", "second", "seconds"]];
    /// minutes
    Minute Time 60.0, "min", "minutes", [&["min", "mins", "minute", "minutes"]];
    /// hours
    Hour Time 3600.0, "h", "hours", [&["h", "hr", "hrs", "hour", "hours"]];
    /// days
    Day Time DAY, "days", "days", [&["d", "day", "days"]];
    /// weeks
    Week Time 7.0 * DAY, "weeks", "weeks", [&["week", "weeks"]];
    /// months, a twelfth of a year each
    Month Time YEAR / 12.0, "months", "months", [&["month", "months"]];
    /// years of 365.25 days
    Year Time YEAR, "years", "years", [&["year", "years"]];

    /// km
    Kilometre Distance 1000.0, "km", "kilometres", [&["km"]];
    /// miles (1760 yd)
    Mile Distance 63_360.0 * INCH, "mi", "miles", [&["mi", "mile", "miles"]];

    /// %
    Percent Percent 0.01, "%", "percent", [&["%", "percent", "per cent"]];
    /// no unit at all
    Number Number 1.0, "", "", [];
}

impl Unit {
    fn row(self) -> &'static Row {
        // The table is made from the same list as the enum, in the same order.
        &TABLE[self as usize]
    }

    /// Every unit, in the order of the table.
    pub fn all() -> impl Iterator<Item = Unit> {
        TABLE.iter().map(|row| row.unit)
    }

    /// What the unit measures. The temperature units measure
    /// [`Dimension::Temperature`] here; a value may use them for a difference.
    pub fn dimension(self) -> Dimension {
        self.row().dimension
    }

    /// Whether a value of `dimension` may stand in this unit.
    pub fn measures(self, dimension: Dimension) -> bool {
        self.dimension() == dimension
            || (dimension == Dimension::TemperatureDifference
                && self.dimension() == Dimension::Temperature)
    }

    /// The unit as printed: `N.m`, `lbf.ft`, `°C`. It reads back as itself.
    pub fn symbol(self) -> &'static str {
        self.row().symbol
    }

    /// The unit in words, in the plural: "newton metres".
    pub fn words(self) -> &'static str {
        self.row().words
    }

    /// Every spelling that reads as this unit.
    pub fn spellings(self) -> impl Iterator<Item = &'static str> {
        self.row()
            .spellings
            .iter()
            .flat_map(|group| group.iter().copied())
    }

    /// SI value of one of this unit, with no regard to where its scale begins.
    pub fn factor(self) -> f64 {
        self.row().factor
    }

    /// SI value of zero on this unit's scale: 273.15 for `°C`, 0 for all but
    /// the two temperature scales with a zero of their own.
    fn zero(self) -> f64 {
        match self {
            Unit::Celsius => 273.15,
            // 32 °F is 0 °C: 273.15 - 32 x 5/9.
            Unit::Fahrenheit => 273.15 - 160.0 / 9.0,
            _ => 0.0,
        }
    }

    /// A figure in this unit to SI, for a value of `dimension` (a temperature
    /// counts from its scale's zero, a difference of temperature does not).
    pub fn to_si(self, figure: f64, dimension: Dimension) -> f64 {
        if dimension == Dimension::Temperature {
            figure * self.factor() + self.zero()
        } else {
            figure * self.factor()
        }
    }

    /// An SI value to a figure in this unit; the reverse of [`Unit::to_si`].
    pub fn from_si(self, si: f64, dimension: Dimension) -> f64 {
        if dimension == Dimension::Temperature {
            (si - self.zero()) / self.factor()
        } else {
            si / self.factor()
        }
    }

    /// A figure in this unit as a figure in `other`. `None` when the two
    /// measure different things. Temperatures are points on their scales; for
    /// a rise or fall use [`Unit::convert_difference`].
    pub fn convert(self, figure: f64, other: Unit) -> Option<f64> {
        let alike = self.dimension() == other.dimension();
        alike.then(|| self.carried_over(figure, other, self.dimension()))
    }

    /// As [`Unit::convert`], but a temperature counts as a rise or fall:
    /// 10 °C of it is 18 °F of it.
    pub fn convert_difference(self, figure: f64, other: Unit) -> Option<f64> {
        let alike = self.dimension() == other.dimension();
        alike.then(|| self.carried_over(figure, other, Dimension::TemperatureDifference))
    }

    /// The figure in `other`, where both units are known to measure
    /// `dimension`.
    pub(super) fn carried_over(self, figure: f64, other: Unit, dimension: Dimension) -> f64 {
        match (self, other, dimension) {
            _ if self == other => figure,
            // Celsius and Fahrenheit straight into each other, so that 212 °F
            // is 100 °C and not a hair beside it for having gone through
            // kelvin.
            (Unit::Fahrenheit, Unit::Celsius, Dimension::Temperature) => {
                (figure - 32.0) * 5.0 / 9.0
            }
            (Unit::Celsius, Unit::Fahrenheit, Dimension::Temperature) => figure * 9.0 / 5.0 + 32.0,
            _ => other.from_si(self.to_si(figure, dimension), dimension),
        }
    }
}

impl std::fmt::Display for Unit {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.symbol())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_stands_at_its_units_place() {
        for (place, row) in TABLE.iter().enumerate() {
            assert_eq!(row.unit as usize, place);
        }
    }

    #[test]
    fn every_symbol_is_one_of_its_units_spellings() {
        for unit in Unit::all().filter(|unit| *unit != Unit::Number) {
            assert!(
                unit.spellings().any(|text| text == unit.symbol()),
                "{unit:?}"
            );
        }
    }
}
