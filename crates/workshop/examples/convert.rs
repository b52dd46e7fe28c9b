//! Converts quantities line by line, for holding the unit table against
//! another program's.
//!
//! Reads `FIGURE UNIT UNIT` or `FIGURE UNIT UNIT difference` on standard input,
//! where each unit is a spelling without blanks and `difference` makes a
//! temperature a rise or fall. Prints the figure in the second unit with all
//! its digits, or `?` for a line that cannot be read. With the argument
//! `units` it prints the units and what each measures instead.

use std::io::{BufRead, Write};

use workshop::quantity::{Dimension, Unit, unit_at_start};

fn main() -> std::io::Result<()> {
    let mut out = std::io::BufWriter::new(std::io::stdout().lock());
    if std::env::args().nth(1).as_deref() == Some("units") {
        for unit in Unit::all().filter(|unit| unit.dimension() != Dimension::Number) {
            writeln!(out, "{} {:?}", unit.symbol(), unit.dimension())?;
        }
        return out.flush();
    }
    for line in std::io::stdin().lock().lines() {
        match converted(&line?) {
            Some(figure) => writeln!(out, "{figure:e}")?,
            None => writeln!(out, "?")?,
        }
    }
    out.flush()
}

fn converted(line: &str) -> Option<f64> {
    let words: Vec<&str> = line.split_whitespace().collect();
    let (figure, from, to, difference) = match words[..] {
        [figure, from, to] => (figure, from, to, false),
        [figure, from, to, "difference"] => (figure, from, to, true),
        _ => return None,
    };
    let figure: f64 = figure.parse().ok()?;
    let (from, to) = (whole_unit(from)?, whole_unit(to)?);
    if difference {
        from.convert_difference(figure, to)
    } else {
        from.convert(figure, to)
    }
}

fn whole_unit(word: &str) -> Option<Unit> {
    match unit_at_start(word)? {
        (spelling, "") => Some(spelling.unit),
        _ => None,
    }
}
