//! Lines of a plan with notes drawn under them: the only file that knows miette.
//!
//! miette is given cleaned spans only, because it stops the program on a span past the end of
//! the text, drops a label that lies behind the last character, and counts columns in bytes. So
//! every label is cut to the visible part of one line, a label at the end of the file moves onto
//! the last character there is, labels on one line never overlap, and the place of a finding is
//! printed by [`crate::findings`] and not here.

use crate::look::{Look, columns_of, turns_text};
use crate::wrap::wrap;
use miette::{
    Diagnostic, GraphicalReportHandler, GraphicalTheme, LabeledSpan, MietteError,
    MietteSpanContents, SourceCode, SourceSpan, SpanContents, ThemeCharacters, ThemeStyles,
};
use std::fmt;
use syntax::position::{Columns, LineIndex};
use syntax::tree::Span;

/// A line longer than this is not shown: nobody reads it, and it would bury the rest.
const LONGEST_LINE: usize = 1000;

/// How many lines above a detail its item may begin and still be shown with it.
const HEAD_WITHIN: usize = 4;

/// How wide a note must at least be to be readable.
const NARROWEST_NOTE: usize = 28;

/// One text made ready to be shown.
pub struct Page<'t> {
    text: &'t str,
    lines: LineIndex,
    /// The text with nothing in it that could drive a terminal, byte for byte as long.
    shown: String,
}

/// A stretch to point at, and what to say there.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Label {
    /// Where.
    pub span: Span,
    /// What; empty to point only.
    pub says: String,
}

impl<'t> Page<'t> {
    /// Makes `text` ready.
    pub fn of(text: &'t str) -> Page<'t> {
        Page {
            text,
            lines: LineIndex::new(text),
            shown: tamed(text),
        }
    }

    /// Line and column of byte `at` for people: both from 1, the column in characters.
    pub fn position(&self, at: u32) -> (usize, usize) {
        let place = self.lines.position(self.text, at, Columns::Characters);
        (place.line as usize + 1, place.column as usize + 1)
    }

    /// The line that holds byte `at`, counted from 0.
    fn line_of(&self, at: usize) -> usize {
        let at = u32::try_from(at).unwrap_or(u32::MAX);
        self.lines.position(self.text, at, Columns::Utf8).line as usize
    }

    /// Where the content of a line begins and ends.
    fn content(&self, line: usize) -> (usize, usize) {
        let line = u32::try_from(line).unwrap_or(u32::MAX);
        let range = self.lines.line(self.text, line);
        (range.start, range.end)
    }

    /// Draws the lines that `labels` are on, with their notes. Empty when nothing can be shown.
    pub fn draw(&self, labels: &[Label], look: Look) -> String {
        let labels = self.fitted(labels, look);
        if labels.is_empty() {
            return String::new();
        }
        let drawn = Drawn { page: self, labels };
        let handler = GraphicalReportHandler::new_themed(theme(look))
            .with_width(look.columns())
            .with_context_lines(0)
            .with_links(false)
            .without_primary_span_start()
            .without_syntax_highlighting();
        let mut page = String::new();
        if handler.render_report(&mut page, &drawn).is_err() {
            return String::new();
        }
        // The first line is the place where miette prints a message; ours stands elsewhere.
        let body = page.split_once('\n').map_or("", |(_, body)| body);
        even(body, look)
    }

    /// The labels cut to what can be pointed at, in order, without overlaps, their notes wrapped.
    fn fitted(&self, labels: &[Label], look: Look) -> Vec<Label> {
        let mut fitted: Vec<Label> = labels
            .iter()
            .filter_map(|label| self.visible(label))
            .collect();
        fitted.sort_by_key(|label| (label.span.start, label.span.end));
        let mut kept: Vec<Label> = Vec::new();
        for label in fitted {
            match kept.last_mut() {
                Some(last) if last.span.start == label.span.start => {
                    last.span.end = last.span.end.max(label.span.end);
                    if last.says.is_empty() {
                        last.says = label.says;
                    } else if !label.says.is_empty() && !last.says.contains(&label.says) {
                        last.says = format!("{}\n{}", last.says, label.says);
                    }
                }
                Some(last) if last.span.end > label.span.start => {
                    let before = &self.shown[last.span.start as usize..label.span.start as usize];
                    last.span.end = last.span.start + before.trim_end().len() as u32;
                    kept.push(label);
                }
                _ => kept.push(label),
            }
        }
        for label in &mut kept {
            self.fold(label, look);
        }
        kept
    }

    /// The label on the visible part of its first line; none when there is nothing to see.
    fn visible(&self, label: &Label) -> Option<Label> {
        let bom = self.shown.len() - self.shown.trim_start_matches('\u{feff}').len();
        let at = (label.span.start as usize).min(self.shown.len());
        let mut line = self.line_of(at);
        let (mut from, mut until) = self.content(line);
        // Behind the last line end there is nothing to point at: the last line with something on
        // it is where the eye should go.
        while self.shown[from..until].trim().is_empty() && line > 0 && at >= self.shown.len() {
            line -= 1;
            (from, until) = self.content(line);
        }
        if until - from > LONGEST_LINE {
            return None;
        }
        let content = self.shown[from..until].trim_end();
        let until = from + content.len();
        let from = from.max(bom);
        let from = from + blanks_before(&self.shown[from.min(until)..until]);
        if until <= from {
            return None;
        }
        let last = self.shown[..until]
            .char_indices()
            .next_back()
            .map_or(from, |(at, _)| at);
        let start = self.whole(at.clamp(from, last));
        let end = self.whole((label.span.end as usize).clamp(start, until));
        let end = if end > start { end } else { self.next(start) };
        Some(Label {
            span: Span::new(start as u32, end as u32),
            says: label.says.clone(),
        })
    }

    /// The start of the character that `at` lies in.
    fn whole(&self, mut at: usize) -> usize {
        while !self.shown.is_char_boundary(at) {
            at -= 1;
        }
        at
    }

    /// One past the character at `at`.
    fn next(&self, at: usize) -> usize {
        at + self.shown[at..].chars().next().map_or(0, char::len_utf8)
    }

    /// Breaks a note so that it stays on the page. Where the place is too far to the right, the
    /// label is drawn out to the left, because the note hangs from its middle.
    fn fold(&self, label: &mut Label, look: Look) {
        let (from, _) = self.content(self.line_of(label.span.start as usize));
        let width = look.columns();
        let gutter = 14;
        let middle = |start: u32, end: u32| {
            let before = columns_of(&self.shown[from..start as usize].replace('\t', "    "));
            before + columns_of(&self.shown[start as usize..end as usize]) / 2
        };
        let mut room = width.saturating_sub(gutter + middle(label.span.start, label.span.end));
        if room < NARROWEST_NOTE && columns_of(&label.says) > room {
            let indent = blanks_before(&self.shown[from..label.span.start as usize]);
            label.span.start = (from + indent) as u32;
            room = width.saturating_sub(gutter + middle(label.span.start, label.span.end));
        }
        label.says = wrap(&label.says, room.max(NARROWEST_NOTE)).join("\n");
    }

    /// The first line to show for a label on `line`: the head of its item where that is near.
    fn head_of(&self, line: usize) -> usize {
        let indented = |line: usize| {
            let (from, until) = self.content(line);
            let content = &self.shown[from..until];
            content.is_empty() || content.starts_with([' ', '\t', '#'])
        };
        (line.saturating_sub(HEAD_WITHIN)..=line)
            .rev()
            .find(|line| !indented(*line))
            .filter(|head| {
                (*head..line).all(|line| {
                    let (from, until) = self.content(line);
                    until - from <= LONGEST_LINE
                })
            })
            .unwrap_or(line)
    }
}

/// How many bytes of blanks `line` begins with.
fn blanks_before(line: &str) -> usize {
    line.len() - line.trim_start_matches([' ', '\t', '\u{feff}']).len()
}

/// The boxes with their left edges in one line: each is drawn as wide as its own last line number
/// wants it.
fn even(body: &str, look: Look) -> String {
    let top = theme(look).characters.ltop;
    let edge = |line: &str| {
        let edge = line.find(|c| c != ' ').unwrap_or(0);
        line[edge..].starts_with(top).then_some(edge)
    };
    let widest = body.lines().filter_map(edge).max().unwrap_or(0);
    let mut missing = 0;
    let mut page = String::with_capacity(body.len());
    for line in body.lines() {
        if let Some(edge) = edge(line) {
            missing = widest - edge;
        }
        page += format!("{}{line}", " ".repeat(missing)).trim_end();
        page.push('\n');
    }
    page
}

/// `text` with every character that would drive a terminal or turn the reading order replaced
/// by one of as many bytes, and a lone CR by LF, so that places stay right.
fn tamed(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        shown.push(match c {
            '\t' | '\n' => c,
            '\r' if chars.peek() == Some(&'\n') => c,
            '\r' => '\n',
            c if c.is_control() || turns_text(c) => match c.len_utf8() {
                1 => '?',
                2 => '\u{bf}',
                _ => char::REPLACEMENT_CHARACTER,
            },
            c => c,
        });
    }
    shown
}

/// miette's theme for a look.
fn theme(look: Look) -> GraphicalTheme {
    GraphicalTheme {
        characters: if look.ascii {
            ThemeCharacters::ascii()
        } else {
            ThemeCharacters::unicode()
        },
        styles: if look.color {
            ThemeStyles::ansi()
        } else {
            ThemeStyles::none()
        },
    }
}

impl SourceCode for Page<'_> {
    fn read_span<'a>(
        &'a self,
        span: &SourceSpan,
        _before: usize,
        _after: usize,
    ) -> Result<Box<dyn SpanContents<'a> + 'a>, MietteError> {
        let first = self.head_of(self.line_of(span.offset()));
        let last = self.line_of(
            (span.offset() + span.len())
                .saturating_sub(1)
                .max(span.offset()),
        );
        let (mut from, _) = self.content(first);
        if first == 0 && self.shown.starts_with('\u{feff}') {
            from += '\u{feff}'.len_utf8();
        }
        let until = if last + 1 < self.lines.count() as usize {
            self.content(last + 1).0
        } else {
            self.shown.len()
        };
        let data = self
            .shown
            .as_bytes()
            .get(from..until)
            .ok_or(MietteError::OutOfBounds)?;
        Ok(Box::new(MietteSpanContents::new(
            data,
            (from, until - from).into(),
            first,
            0,
            last + 1 - first,
        )))
    }
}

/// What miette is given: labels on a page and nothing else.
struct Drawn<'a> {
    page: &'a Page<'a>,
    labels: Vec<Label>,
}

impl fmt::Debug for Drawn<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("labels")
    }
}

impl fmt::Display for Drawn<'_> {
    fn fmt(&self, _: &mut fmt::Formatter<'_>) -> fmt::Result {
        Ok(())
    }
}

impl std::error::Error for Drawn<'_> {}

impl Diagnostic for Drawn<'_> {
    fn source_code(&self) -> Option<&dyn SourceCode> {
        Some(self.page)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        Some(Box::new(self.labels.iter().map(|label| {
            let says = (!label.says.is_empty()).then(|| label.says.clone());
            LabeledSpan::new(says, label.span.start as usize, label.span.range().len())
        })))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLAN: &str = "point bleed-screw \"Bleed screw\"
  on water-pump
  reach with socket 11 mm clear of heat-exchanger

fit heat-exchanger
bleed bleed-screw with socket 11 mm
";

    fn label(text: &str, what: &str, says: &str) -> Label {
        let start = text.find(what).unwrap();
        Label {
            span: Span::new(start as u32, (start + what.len()) as u32),
            says: says.into(),
        }
    }

    fn drawn(text: &str, labels: &[Label]) -> String {
        Page::of(text).draw(labels, Look::PAPER)
    }

    #[test]
    fn a_detail_is_shown_with_the_head_of_its_item() {
        let labels = [
            label(PLAN, "reach with", "the only way in"),
            label(PLAN, "fit heat", ""),
        ];
        assert_eq!(
            drawn(PLAN, &labels),
            "   ╭────
 1 │ point bleed-screw \"Bleed screw\"
 2 │   on water-pump
 3 │   reach with socket 11 mm clear of heat-exchanger
   ·   ─────┬────
   ·        ╰── the only way in
   ╰────
   ╭────
 5 │ fit heat-exchanger
   · ────────
   ╰────
"
        );
    }

    #[test]
    fn boxes_stand_in_one_line() {
        let text = format!("fit a\n{}fit b\n", "# far away\n".repeat(20));
        let page = drawn(
            &text,
            &[
                label(&text, "fit a", "here"),
                label(&text, "fit b", "there"),
            ],
        );
        let edges: Vec<usize> = page.lines().filter_map(|line| line.find('╭')).collect();
        assert_eq!(edges, [4, 4], "{page}");
    }

    #[test]
    fn drawn_in_ascii_where_asked() {
        let look = Look {
            ascii: true,
            ..Look::PAPER
        };
        let page = Page::of(PLAN).draw(&[label(PLAN, "fit heat", "here")], look);
        assert!(page.is_ascii(), "{page}");
        assert!(page.contains("`-- here"), "{page}");
    }

    #[test]
    fn a_label_past_the_end_stands_on_the_last_character() {
        for text in [
            "fit cover",
            "fit cover\n",
            "fit cover\r\n\r\n",
            "fit cover  \n\n",
        ] {
            let end = Label {
                span: Span::new(900, 901),
                says: "something is missing here".into(),
            };
            let page = drawn(text, &[end]);
            assert!(page.contains("  ·         ┬\n"), "{page}");
            assert!(page.contains("╰── something is missing here"), "{page}");
        }
    }

    #[test]
    fn nothing_to_point_at_draws_nothing() {
        let end = Label {
            span: Span::new(0, 0),
            says: "nothing".into(),
        };
        for text in ["", "\n", "\u{feff}", " \n\t\n"] {
            assert_eq!(drawn(text, std::slice::from_ref(&end)), "", "{text:?}");
        }
    }

    #[test]
    fn any_span_of_any_text_can_be_drawn() {
        let texts = [
            PLAN,
            "\u{feff}part öl \"油泵 🔧\"\r\n\tonto o\u{308}l\rfit öl",
            "\r\r\n\n  x\n",
            "\x1b[31mred\u{202e}\n",
        ];
        for text in texts {
            let page = Page::of(text);
            for start in 0..=(text.len() as u32 + 2) {
                for end in [start, start + 1, start + 9, 0, 4000] {
                    let label = Label {
                        span: Span::new(start, end),
                        says: "a note".into(),
                    };
                    let other = Label {
                        span: Span::new(start / 2, end),
                        says: "another".into(),
                    };
                    let drawn = page.draw(&[label, other], Look::PAPER);
                    assert!(!drawn.contains(['\x1b', '\u{202e}']), "{drawn}");
                    assert!(
                        drawn.is_empty() || drawn.contains("note") || drawn.contains("other"),
                        "{drawn}"
                    );
                }
            }
        }
    }

    #[test]
    fn labels_that_overlap_all_stay_readable() {
        let labels = [
            label(PLAN, "bleed bleed-screw with socket 11 mm\n", "first"),
            label(PLAN, "with socket 11 mm\n", "second"),
            label(PLAN, "with", "third"),
        ];
        let page = drawn(PLAN, &labels);
        for says in ["first", "second", "third"] {
            assert!(page.contains(says), "{page}");
        }
    }

    #[test]
    fn notes_are_wrapped_to_the_page() {
        let long = "a note that goes on for long enough to run over the edge of any page of eighty columns";
        let far = "part a-part-with-a-long-name needs this, and-that, and-more\n";
        for (text, what) in [(PLAN, "bleed bleed-screw"), (far, "and-more")] {
            let page = drawn(text, &[label(text, what, long)]);
            let widest = page.lines().map(columns_of).max();
            assert!(widest <= Some(86), "{page}");
            assert!(
                page.lines()
                    .filter(|l| l.contains('·'))
                    .all(|l| columns_of(l) <= 80),
                "{page}"
            );
        }
    }

    #[test]
    fn a_line_without_end_is_not_shown() {
        let text = "x".repeat(5000);
        assert_eq!(drawn(&text, &[label(&text, "x", "long")]), "");
    }
}
