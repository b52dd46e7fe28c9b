//! The commands and their flags, each defined once.

pub mod calc;

use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

/// Checks the order of a rebuild before you are at the bench.
#[derive(Parser, Debug)]
#[command(
    name = "fitwright",
    version,
    about = "Checks the order of a rebuild before you are at the bench",
    long_about = "Checks the order of a rebuild before you are at the bench.\n\n\
        A plan (a text file ending in .rebuild) says what a machine is made of, what is in the \
        way of what, and in which order you mean to work. Fitwright finds where that order goes \
        wrong, shows the smallest change that mends it, and prints the checklist.",
    after_help = "First steps:\n  fitwright check pump.rebuild    what is wrong with the plan\n  \
        fitwright arrange pump.rebuild  the nearest order that works\n  \
        fitwright sheet pump.rebuild    the checklist for the bench\n\n\
        Exit status: 0 nothing wrong, 1 something found, 2 the job could not be done.",
    propagate_version = true,
    disable_help_subcommand = true
)]
pub struct Cli {
    /// How to print.
    #[command(flatten)]
    pub shown: Shown,
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// How to print; the same for every command.
#[derive(Args, Debug)]
pub struct Shown {
    /// Whether to use colour
    #[arg(long, value_enum, default_value_t = Color::Auto, value_name = "WHEN", global = true)]
    pub color: Color,
    /// Columns to print in [default: those of the terminal, 80 elsewhere]
    #[arg(long, value_name = "COLUMNS", global = true, value_parser = clap::value_parser!(u16).range(20..))]
    pub width: Option<u16>,
}

/// When to use colour.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Color {
    /// On a terminal, unless NO_COLOR is set
    Auto,
    /// Always
    Always,
    /// Never
    Never,
}

/// What to do.
#[derive(Subcommand, Debug)]
pub enum Command {
    /// Find what is wrong with a plan
    #[command(after_help = "Examples:\n  fitwright check pump.rebuild\n  \
        fitwright check --sheet pump.rebuild    and the checklist in an order that works\n\n\
        Exit status: 0 when there is no error, 1 when there is one, 2 when a plan could not be read. \
        With --at warning a warning counts too.")]
    Check(Check),
    /// Print the checklist
    #[command(after_help = "Examples:\n  fitwright sheet pump.rebuild\n  \
        fitwright sheet pump.rebuild --as markdown > pump.md\n\n\
        Exit status: 1 when the plan has errors; the sheet is printed all the same, and says so.")]
    Sheet(Sheet),
    /// Show, or write, the nearest order that works
    #[command(
        after_help = "Examples:\n  fitwright arrange pump.rebuild           shows the change\n  \
        fitwright arrange pump.rebuild --write   makes it\n\n\
        As few steps as possible move. Each goes with its details and the comments directly above \
        it; everything else stays as it is, to the byte.\n\n\
        Exit status: 1 when no order works; why is said, and nothing is written."
    )]
    Arrange(Arrange),
    /// Say why one step must come before another
    #[command(after_help = "Examples:\n  fitwright why pump.rebuild 4 17\n  \
        fitwright why pump.rebuild \"fit cover\" first-run\n  fitwright why pump.rebuild line:40 line:52\n\n\
        A step is named by its number on the sheet, by its `as` name, by line:N, or by its words.")]
    Why(Why),
    /// Draw when each thing can be reached
    #[command(after_help = "Example:\n  fitwright windows pump.rebuild")]
    Windows(Plans),
    /// Say how free the order is: how many orders work, how far each step can move
    #[command(after_help = "Example:\n  fitwright freedom pump.rebuild")]
    Freedom(Plans),
    /// Show, or write, the plan set out evenly
    #[command(
        after_help = "Examples:\n  fitwright tidy pump.rebuild           shows the change\n  \
        fitwright tidy pump.rebuild --write   makes it\n  \
        fitwright tidy --check plans/         exit status 1 when a plan is untidy\n\n\
        Only blanks, line ends at the end of the file and the like change, never the meaning."
    )]
    Tidy(Tidy),
    /// Print the torque sheet: every thread that is tightened, on one page
    #[command(after_help = "Examples:\n  fitwright torques pump.rebuild\n  \
        fitwright torques pump.rebuild --by place --as markdown > torques.md\n  \
        fitwright torques pump.rebuild --as svg --of cover-screws > order.svg\n\n\
        A torque that the plan does not have is a blank to fill in; none is ever made up.")]
    Torques(Torques),
    /// Print the kit: parts, what is used up, supplies and tools to lay out
    #[command(after_help = "Example:\n  fitwright kit pump.rebuild\n\n\
        Where the plan says of any tool or supply that it is at hand (have), what is not said to \
        be is listed first.")]
    Kit(Kit),
    /// Work out a figure, and show how
    #[command(
        after_help = "Examples:\n  fitwright calc convert 22 N.m to lbf.ft\n  \
        fitwright calc adapter \"40 N.m\" --length \"350 mm\" --reach \"50 mm\"\n  \
        fitwright calc preload \"22 N.m\" M8 --class 8.8\n\n\
        Each prints the formula, the formula with the numbers put in, its source and what was \
        taken for granted. None of them replaces the figure in the maker's manual."
    )]
    Calc(calc::Calc),
    /// List the rules, or explain one
    #[command(after_help = "Examples:\n  fitwright rules\n  fitwright rules shut-in")]
    Rules(Rules),
}

/// The plans to work on.
#[derive(Args, Debug)]
pub struct Plans {
    /// Plans, or folders with plans in them; - is standard input
    #[arg(value_name = "PLAN", required = true)]
    pub plans: Vec<PathBuf>,
    /// What to call standard input: the plan's file, whose folder is where its `use` lines look
    #[arg(long, value_name = "FILE")]
    pub named: Option<PathBuf>,
}

/// `check`.
#[derive(Args, Debug)]
pub struct Check {
    /// The plans.
    #[command(flatten)]
    pub plans: Plans,
    /// From which severity on a finding makes the exit status 1
    #[arg(long, value_enum, default_value_t = Level::Error, value_name = "SEVERITY")]
    pub at: Level,
    /// The form of the result
    #[arg(long = "as", value_enum, default_value_t = TextOrJson::Text, value_name = "FORM")]
    pub form: TextOrJson,
    /// Print the checklist too, in the nearest order that works; only with --as text
    #[arg(long)]
    pub sheet: bool,
}

/// A severity on the command line.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Level {
    /// Anything worth knowing
    Hint,
    /// The build may go wrong
    Warning,
    /// The build goes wrong
    Error,
}

/// A form of a result.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum TextOrJson {
    /// For people
    Text,
    /// For programs
    Json,
}

/// A form of the sheet.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum SheetForm {
    /// For a terminal, or to print
    Text,
    /// A task list
    Markdown,
    /// For programs
    Json,
}

/// `sheet`.
#[derive(Args, Debug)]
pub struct Sheet {
    /// The plans.
    #[command(flatten)]
    pub plans: Plans,
    /// The form of the sheet
    #[arg(long = "as", value_enum, default_value_t = SheetForm::Text, value_name = "FORM")]
    pub form: SheetForm,
}

/// `arrange`.
#[derive(Args, Debug)]
pub struct Arrange {
    /// The plans.
    #[command(flatten)]
    pub plans: Plans,
    /// Write the new order into the plan
    #[arg(long)]
    pub write: bool,
}

/// `tidy`.
#[derive(Args, Debug)]
pub struct Tidy {
    /// The plans.
    #[command(flatten)]
    pub plans: Plans,
    /// Write the tidy text into the plan
    #[arg(long, conflicts_with = "check")]
    pub write: bool,
    /// Show nothing, only say which plans are untidy; exit status 1 if any is
    #[arg(long)]
    pub check: bool,
}

/// `why`.
#[derive(Args, Debug)]
pub struct Why {
    /// The plan; - is standard input
    #[arg(value_name = "PLAN")]
    pub plan: PathBuf,
    /// One step
    #[arg(value_name = "STEP")]
    pub one: String,
    /// The other step
    #[arg(value_name = "STEP")]
    pub other: String,
    /// What to call standard input
    #[arg(long, value_name = "FILE")]
    pub named: Option<PathBuf>,
}

/// `rules`.
#[derive(Args, Debug)]
pub struct Rules {
    /// The rule to explain
    #[arg(value_name = "RULE")]
    pub rule: Option<String>,
}

/// `torques`.
#[derive(Args, Debug)]
pub struct Torques {
    /// The plans.
    #[command(flatten)]
    pub plans: Plans,
    /// The form of the sheet; svg is the picture of one tightening order
    #[arg(long = "as", value_enum, default_value_t = TorquesForm::Text, value_name = "FORM")]
    pub form: TorquesForm,
    /// How the groups are sorted
    #[arg(long, value_enum, default_value_t = Sorting::Use, value_name = "WHAT")]
    pub by: Sorting,
    /// The fasteners whose tightening order is drawn; only with --as svg
    #[arg(long, value_name = "FASTENERS")]
    pub of: Option<String>,
}

/// A form of the torque sheet.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum TorquesForm {
    /// For a terminal, or to print
    Text,
    /// A table
    Markdown,
    /// For programs
    Json,
    /// A tightening order as a picture
    Svg,
}

/// How the torque sheet is sorted.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sorting {
    /// As they are first tightened
    Use,
    /// By what they hold
    Place,
}

/// `kit`.
#[derive(Args, Debug)]
pub struct Kit {
    /// The plans.
    #[command(flatten)]
    pub plans: Plans,
    /// The form of the list
    #[arg(long = "as", value_enum, default_value_t = SheetForm::Text, value_name = "FORM")]
    pub form: SheetForm,
}
