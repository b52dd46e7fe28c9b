//! A tightening order, drawn: where each fastener stands, and when its turn comes.

use crate::look::columns_of;
use crate::words::thing;
use plan::model::{Plan, ThingId};
use workshop::tightening::pattern::{Layout, MOST, Pattern, check_order, tightening_order};

/// The widest a text drawing gets, in columns.
const WIDEST: usize = 72;

/// A drawn order.
#[derive(Clone, PartialEq, Debug)]
pub struct Figure {
    /// Whose it is; the first group where several share it.
    pub of: String,
    /// Where the fasteners stand.
    pub layout: Layout,
    /// Whether the plan says how they stand, or it is only the usual.
    pub layout_said: bool,
    /// The order in words: `cross`, or `as numbered in the plan`.
    pub words: String,
    /// The fasteners, numbered by place, in the order of tightening.
    pub order: Vec<usize>,
}

impl Figure {
    /// The drawing of a group's pattern. None where the plan has none, or one that is not whole.
    pub fn of(plan: &Plan, id: ThingId) -> Option<Figure> {
        let fasteners = plan.thing(id).fasteners()?;
        let (words, layout_words, _) = fasteners.pattern.as_ref()?;
        let numbers: Option<Vec<usize>> = words.iter().map(|word| word.parse().ok()).collect();
        let numbers = numbers.filter(|numbers| !numbers.is_empty());
        let count = fasteners.count.map(|count| count as usize);
        let count = count.or_else(|| numbers.as_ref().map(Vec::len))?;
        let said = layout_words.as_deref().and_then(|words| {
            let words = words.trim().trim_start_matches("in ").trim();
            Layout::read(&words.replace(' ', "-"), count)
        });
        if count == 0 || count > MOST || (layout_words.is_some() && said.is_none()) {
            return None;
        }
        let layout = said.unwrap_or_else(|| Layout::usual(count));
        let (order, words) = match numbers {
            Some(numbers) => (numbers, "in the plan's own order".to_owned()),
            None => {
                let pattern = Pattern::read(words.first()?)?;
                (tightening_order(layout, pattern), pattern.word().to_owned())
            }
        };
        check_order(&order, count).is_empty().then(|| Figure {
            of: thing(plan, id),
            layout,
            layout_said: said.is_some(),
            words,
            order,
        })
    }

    /// Whether it would be drawn the same.
    pub fn same_drawing(&self, other: &Figure) -> bool {
        self.layout == other.layout && self.order == other.order
    }

    /// Its caption: `8 in a ring, cross: 1 5 3 7 2 6 4 8`.
    pub fn caption(&self) -> String {
        let layout = match self.layout {
            Layout::Ring(_) => "in a ring",
            Layout::Line(_) => "in a line",
            Layout::TwoRows { .. } => "in two rows",
        };
        let supposed = if self.layout_said {
            ""
        } else {
            " (the plan does not say how they stand)"
        };
        let order: Vec<String> = self.order.iter().map(usize::to_string).collect();
        format!(
            "{} {layout}{supposed}, {}: {}",
            self.order.len(),
            self.words,
            order.join(" ")
        )
    }

    /// When the turn of each place comes, from 1, by place.
    fn turns(&self) -> Vec<usize> {
        let mut turns = vec![0; self.order.len()];
        for (turn, place) in (1..).zip(&self.order) {
            if let Some(slot) = place.checked_sub(1).and_then(|at| turns.get_mut(at)) {
                *slot = turn;
            }
        }
        turns
    }

    /// The figure in letters: at the place of each fastener stands when its turn comes.
    pub fn text(&self) -> String {
        let turns = self.turns();
        let digits = turns.len().to_string().len();
        let (rows, columns) = match self.layout {
            Layout::Ring(count) => {
                let rows = (count / 2 + 1).clamp(3, 21) | 1;
                (rows, (3 * rows).max(digits * 3))
            }
            Layout::Line(count) => (1, count * (digits + 2)),
            Layout::TwoRows { first, second } => (3, first.max(second) * (digits + 2)),
        };
        let columns = columns.clamp(1, WIDEST);
        let mut grid = vec![vec![' '; columns + digits]; rows];
        for (place, turn) in self.layout.places().iter().zip(&turns) {
            let row = (place.y * (rows - 1) as f64).round() as usize;
            let column = (place.x * (columns - 1) as f64).round() as usize;
            for (at, digit) in turn.to_string().chars().enumerate() {
                if let Some(cell) = grid.get_mut(row).and_then(|line| line.get_mut(column + at)) {
                    *cell = digit;
                }
            }
        }
        let mut page = String::new();
        for line in grid {
            let line: String = line.into_iter().collect();
            page += format!("    {}", line.trim_end()).trim_end();
            page.push('\n');
        }
        page
    }

    /// The figure as a picture: a circle for each fastener, in it when its turn comes.
    pub fn svg(&self) -> String {
        let (inner_width, inner_height) = match self.layout {
            Layout::Ring(count) => {
                let across = (count as f64 * 16.0).clamp(140.0, 900.0);
                (across, across)
            }
            Layout::Line(count) => (count.saturating_sub(1) as f64 * 44.0, 0.0),
            Layout::TwoRows { first, second } => {
                (first.max(second).saturating_sub(1) as f64 * 44.0, 80.0)
            }
        };
        let (margin, radius, line) = (28.0, 15.0, 18.0);
        let mut words = vec![
            self.of.as_str(),
            self.words.as_str(),
            "number 1 is tightened first",
        ];
        if !self.layout_said {
            words.push("the plan does not say how they stand");
        }
        let widest = words.iter().map(|words| columns_of(words)).max();
        // A letter of 13 units is about 8 wide in any usual face.
        let width = (inner_width + 2.0 * margin).max(8.0 * widest.unwrap_or(0) as f64 + margin);
        let left = (width - inner_width) / 2.0;
        let height = inner_height + 2.0 * margin + line * words.len() as f64;
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width:.0} {height:.0}\" \
             width=\"{width:.0}\" height=\"{height:.0}\" font-family=\"sans-serif\" \
             text-anchor=\"middle\" role=\"img\">\n\
             <title>{}</title>\n<rect width=\"100%\" height=\"100%\" fill=\"white\"/>\n",
            escaped(&format!("{}: {}", self.of, self.caption()))
        );
        for (place, turn) in self.layout.places().iter().zip(self.turns()) {
            let (x, y) = (
                left + place.x * inner_width,
                margin + place.y * inner_height,
            );
            svg += &format!(
                "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{radius}\" fill=\"none\" \
                 stroke=\"black\" stroke-width=\"1.5\"/>\
                 <text x=\"{x:.1}\" y=\"{:.1}\" font-size=\"14\">{turn}</text>\n",
                y + 5.0
            );
        }
        let mut base = inner_height + 2.0 * margin + 14.0;
        for words in words {
            svg += &format!(
                "<text x=\"{:.1}\" y=\"{base:.1}\" font-size=\"13\">{}</text>\n",
                width / 2.0,
                escaped(words)
            );
            base += line;
        }
        svg + "</svg>\n"
    }
}

/// `text` with what XML would read as more than itself made plain.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figure(layout: Layout, pattern: Pattern) -> Figure {
        Figure {
            of: "Cover <screws>".into(),
            layout,
            layout_said: true,
            words: pattern.word().into(),
            order: tightening_order(layout, pattern),
        }
    }

    #[test]
    fn every_turn_is_drawn_once() {
        for count in 1..=24 {
            for layout in [
                Layout::Ring(count),
                Layout::Line(count),
                Layout::two_rows(count),
            ] {
                let figure = figure(layout, Pattern::Cross);
                let text = figure.text();
                let mut drawn: Vec<usize> = text
                    .split_whitespace()
                    .map(|turn| turn.parse().unwrap())
                    .collect();
                drawn.sort_unstable();
                assert_eq!(drawn, (1..=count).collect::<Vec<_>>(), "{layout:?}\n{text}");
                assert_eq!(figure.svg().matches("<circle").count(), count);
            }
        }
    }

    #[test]
    fn eight_in_a_ring_stand_opposite_in_pairs() {
        let text = figure(Layout::Ring(8), Pattern::Cross).text();
        let lines: Vec<&str> = text.lines().collect();
        // First and second turn stand at the top and at the bottom.
        assert_eq!(lines[0].trim(), "1");
        assert_eq!(lines[lines.len() - 1].trim(), "2");
    }

    #[test]
    fn a_label_cannot_break_the_picture() {
        assert!(
            figure(Layout::Ring(4), Pattern::Cross)
                .svg()
                .contains("Cover &lt;screws&gt;")
        );
    }
}
