//! What `calc` works out, and from what.

use clap::{Args, Subcommand, ValueEnum};

/// `calc`.
#[derive(Args, Debug)]
pub struct Calc {
    /// What to work out.
    #[command(subcommand)]
    pub what: What,
}

/// What to work out.
#[derive(Subcommand, Debug)]
pub enum What {
    /// A quantity in another unit
    #[command(
        after_help = "Examples:\n  fitwright calc convert 22 N.m to lbf.ft\n  \
        fitwright calc convert 0.05..0.12 mm\n\nWithout a unit, in the other one that is usual."
    )]
    Convert(Convert),
    /// What to set a torque wrench to that works through an adapter
    #[command(after_help = "Example:\n  \
        fitwright calc adapter \"40 N.m\" --length \"350 mm\" --reach \"50 mm\" --angle \"90 deg\"")]
    Adapter(Adapter),
    /// What a torque makes a screw pull, and what share of its proof load that is
    #[command(after_help = "Example:\n  fitwright calc preload \"22 N.m\" M8 --class 8.8")]
    Preload(Preload),
    /// The load at which a thread strips
    #[command(
        after_help = "Example:\n  fitwright calc strip M8 --into aluminium --depth \"12 mm\" --class 8.8"
    )]
    Strip(Strip),
    /// Shims from stock for a measured gap
    #[command(after_help = "Example:\n  \
        fitwright calc shim \"0.42 mm\" --to \"0.05..0.10 mm\" --from \"0.10, 0.15, 0.20 mm\"")]
    Shim(Shim),
    /// A tightening order, drawn
    #[command(after_help = "Examples:\n  fitwright calc pattern 8\n  \
        fitwright calc pattern 10 --layout two-rows --order spiral --as svg > order.svg")]
    Pattern(Pattern),
    /// How much something grows when it gets hot
    #[command(after_help = "Example:\n  \
        fitwright calc growth \"60 mm\" --of aluminium --from \"20 C\" --to \"110 C\"")]
    Growth(Growth),
}

/// `calc convert`.
#[derive(Args, Debug)]
pub struct Convert {
    /// The quantity, and behind `to` the unit wanted
    #[arg(value_name = "QUANTITY", required = true, num_args = 1.., allow_hyphen_values = true, trailing_var_arg = true)]
    pub words: Vec<String>,
}

/// `calc adapter`.
#[derive(Args, Debug)]
pub struct Adapter {
    /// The torque wanted at the fastener
    #[arg(value_name = "TORQUE")]
    pub torque: String,
    /// Length of the wrench, from the middle of its drive to the middle of its grip
    #[arg(long, value_name = "LENGTH")]
    pub length: Option<String>,
    /// Reach of the adapter, from the middle of the drive to the middle of the fastener
    #[arg(long, value_name = "LENGTH")]
    pub reach: String,
    /// Angle between adapter and wrench: 0 straight on, 90 to the side
    #[arg(
        long,
        value_name = "ANGLE",
        default_value = "0 deg",
        allow_hyphen_values = true
    )]
    pub angle: String,
    /// The torque is what the wrench is set to; say what the fastener gets
    #[arg(long)]
    pub set: bool,
}

/// `calc preload`.
#[derive(Args, Debug)]
pub struct Preload {
    /// The torque
    #[arg(value_name = "TORQUE")]
    pub torque: String,
    /// The thread
    #[arg(value_name = "THREAD")]
    pub thread: String,
    /// The strength class of the screw
    #[arg(long, value_name = "CLASS")]
    pub class: Option<String>,
    /// The nut factor, where it is known
    #[arg(long, value_name = "K")]
    pub factor: Option<f64>,
}

/// `calc strip`.
#[derive(Args, Debug)]
pub struct Strip {
    /// The thread
    #[arg(value_name = "THREAD")]
    pub thread: String,
    /// What the hole is cut in
    #[arg(long, value_name = "MATERIAL")]
    pub into: String,
    /// How deep the screw is in
    #[arg(long, value_name = "LENGTH")]
    pub depth: String,
    /// The strength class of the screw
    #[arg(long, value_name = "CLASS")]
    pub class: Option<String>,
}

/// `calc shim`.
#[derive(Args, Debug)]
pub struct Shim {
    /// The gap measured without a shim
    #[arg(value_name = "GAP")]
    pub gap: String,
    /// The clearance to be left
    #[arg(long, value_name = "RANGE")]
    pub to: String,
    /// The shims in stock
    #[arg(long, value_name = "SIZES")]
    pub from: String,
    /// How many may lie on each other
    #[arg(long, value_name = "COUNT", default_value_t = 2)]
    pub most: usize,
}

/// `calc pattern`.
#[derive(Args, Debug)]
pub struct Pattern {
    /// How many fasteners
    #[arg(value_name = "COUNT")]
    pub count: usize,
    /// How they stand [default: one or two in a line, more in a ring]
    #[arg(long, value_enum, value_name = "LAYOUT")]
    pub layout: Option<Layout>,
    /// How to go over them
    #[arg(long, value_enum, value_name = "ORDER", default_value_t = Order::Cross)]
    pub order: Order,
    /// The order for loosening: the same backwards
    #[arg(long)]
    pub loosen: bool,
    /// The form of the drawing
    #[arg(long = "as", value_enum, default_value_t = Drawing::Text, value_name = "FORM")]
    pub form: Drawing,
}

/// How fasteners stand.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Layout {
    /// Around a circle or the edge of a cover
    Ring,
    /// In a line
    Line,
    /// In two rows
    TwoRows,
}

/// How to go over a layout.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Order {
    /// Each opposite or across from the one before
    Cross,
    /// From the middle outwards
    Spiral,
    /// One after the other
    Round,
}

/// A form of a drawing.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Drawing {
    /// In letters
    Text,
    /// A picture
    Svg,
}

/// `calc growth`.
#[derive(Args, Debug)]
pub struct Growth {
    /// The size when cold
    #[arg(value_name = "LENGTH")]
    pub size: String,
    /// What it is made of
    #[arg(long, value_name = "MATERIAL")]
    pub of: String,
    /// How warm it is when cold
    #[arg(
        long,
        value_name = "TEMPERATURE",
        default_value = "20 C",
        allow_hyphen_values = true
    )]
    pub from: String,
    /// How warm it gets
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub to: String,
}
