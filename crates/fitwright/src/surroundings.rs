//! What the surroundings say about how to print: a terminal or not, its width, its colours, its
//! letters.

use crate::cli::{Color, Shown};
use sheet::Look;
use std::io::IsTerminal;

/// The width of what is not a terminal.
const PAPER: usize = 80;

/// Wider pages are harder to read, however wide the terminal is.
const WIDEST: usize = 100;

/// How to print.
pub fn look(shown: &Shown) -> Look {
    let terminal = std::io::stdout().is_terminal();
    let width = shown.width.map(usize::from).unwrap_or_else(|| {
        let wide = terminal.then(terminal_size::terminal_size).flatten();
        wide.map_or(PAPER, |(width, _)| usize::from(width.0))
            .min(WIDEST)
    });
    Look {
        width,
        color: match shown.color {
            Color::Always => true,
            Color::Never => false,
            Color::Auto => {
                terminal
                    && !set("NO_COLOR")
                    && std::env::var_os("TERM").is_none_or(|term| term != "dumb")
            }
        },
        ascii: !utf8(),
    }
}

/// Whether a variable is there and holds something.
fn set(name: &str) -> bool {
    std::env::var_os(name).is_some_and(|value| !value.is_empty())
}

/// Whether the locale's letters are UTF-8: the first of the usual variables that holds anything
/// decides.
fn utf8() -> bool {
    let locale = ["LC_ALL", "LC_CTYPE", "LANG"]
        .into_iter()
        .find(|name| set(name));
    let value = locale
        .and_then(|name| std::env::var(name).ok())
        .unwrap_or_default();
    let value = value.to_ascii_lowercase();
    value.contains("utf-8") || value.contains("utf8")
}
