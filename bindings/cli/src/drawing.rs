//! A board drawn in characters, from the same corners and marks that the phones draw.

use lapwright::views::{RipView, ShapeView};

/// A board's face or back after its cuts, in nanometres from its left end and bottom edge.
pub(crate) struct Drawing<'a> {
    /// FACE or BACK.
    pub(crate) side: &'a str,
    /// The word for what is cut away.
    pub(crate) cut: &'a str,
    /// The board's length.
    pub(crate) length: i64,
    /// The board's height.
    pub(crate) height: i64,
    /// The corners of the cut that is drawn.
    pub(crate) cut_here: Vec<(i64, i64)>,
    /// The corners of other cuts, drawn where they come into its region.
    pub(crate) cut_beside: Vec<Vec<(i64, i64)>>,
    /// Distances from the left end, with their texts.
    pub(crate) across: Vec<(i64, String)>,
}

/// Columns and rows of the drawn region.
const COLUMNS: usize = 64;
const ROWS: usize = 9;

impl Drawing<'_> {
    /// The lines of the drawing: the region round the cut, magnified; a broken end where the board goes on.
    pub(crate) fn lines(&self) -> Vec<String> {
        let (from, to) = self.window();
        let span = (to - from).max(1);
        let mut lines = vec![self.side.to_owned()];
        let mut word_left = Some(self.cut);
        for row in 0..ROWS {
            let y = self.height - self.height * (2 * row as i64 + 1) / (2 * ROWS as i64);
            let mut line = String::with_capacity(COLUMNS + 2);
            line.push(if from > 0 { '~' } else { '│' });
            for column in 0..COLUMNS {
                let x = from + at(span, 2 * column as i64 + 1, 2 * COLUMNS as i64);
                line.push(if self.is_cut(x, y) { '╱' } else { '░' });
            }
            line.push(if to < self.length { '~' } else { '│' });
            if let Some(word) = word_left
                && let Some(labelled) = label(&line, word)
            {
                line = labelled;
                word_left = None;
            }
            lines.push(line);
        }
        lines.extend(self.dimensions(from, span));
        lines
    }

    /// The part of the board that is drawn: round the cut, as wide again on both sides and twice the height at least.
    fn window(&self) -> (i64, i64) {
        let xs = || self.cut_here.iter().map(|(x, _)| *x);
        let (Some(left), Some(right)) = (xs().min(), xs().max()) else { return (0, self.length) };
        let margin = (right - left).max(2 * self.height);
        ((left - margin).max(0), (right + margin).min(self.length))
    }

    fn is_cut(&self, x: i64, y: i64) -> bool {
        within(&self.cut_here, x, y) || self.cut_beside.iter().any(|corners| within(corners, x, y))
    }

    /// Ticks under the board, each with its distance from the left end; a text that has no room goes to the next line.
    fn dimensions(&self, from: i64, span: i64) -> Vec<String> {
        let mut marks: Vec<(usize, &str)> = self
            .across
            .iter()
            .filter(|(x, _)| (from..=from + span).contains(x))
            .map(|(x, text)| (1 + at(COLUMNS as i64, x - from, span) as usize, text.as_str()))
            .collect();
        marks.sort_unstable();
        let mut ticks = vec![' '; COLUMNS + 2];
        for (column, _) in &marks {
            if let Some(tick) = ticks.get_mut(*column) {
                *tick = '↑';
            }
        }
        let mut lines = vec![ticks.into_iter().collect::<String>().trim_end().to_owned()];
        let mut rows: Vec<String> = Vec::new();
        for (column, text) in marks {
            let free = |row: &String| row.chars().count() < column.max(1);
            let row = match rows.iter().position(free) {
                Some(row) => row,
                None => {
                    rows.push(String::new());
                    rows.len() - 1
                }
            };
            if let Some(row) = rows.get_mut(row) {
                row.push_str(&" ".repeat(column - row.chars().count()));
                row.push_str(text);
            }
        }
        lines.extend(rows);
        lines
    }
}

/// A whole board after its cuts, with the factory board that it is cut from: as wide as the drawing, higher than it is.
pub(crate) fn whole(shape: &ShapeView) -> Vec<String> {
    let (left, bottom) = (shape.at.x, shape.at.y);
    let rings = shape
        .on_wall(0)
        .into_iter()
        .map(|ring| ring.iter().map(|corner| (corner.x - left, corner.y - bottom)).collect::<Vec<_>>());
    let rings: Vec<Vec<(i64, i64)>> = rings.collect();
    let most = |of: fn(&(i64, i64)) -> i64| rings.iter().flatten().map(of).max().unwrap_or(1);
    let (length, height) = (most(|corner| corner.0), most(|corner| corner.1));
    let lost = |of: fn(&RipView) -> Option<i64>| shape.rip.as_ref().and_then(of).unwrap_or(0);
    let (under, over) = (lost(|rip| rip.bottom), lost(|rip| rip.top));
    let full = under + height + over;
    let row = |row: usize| {
        let y = full - at(full, 2 * row as i64 + 1, 2 * ROWS as i64) - under;
        let cell = |column: usize| {
            let x = at(length, 2 * column as i64 + 1, 2 * COLUMNS as i64);
            if rings.iter().filter(|ring| within(ring, x, y)).count() % 2 == 1 { '░' } else { '╱' }
        };
        format!("│{}│", (0..COLUMNS).map(cell).collect::<String>())
    };
    (0..ROWS).map(row).collect()
}

/// `whole * part / parts` without overflow.
fn at(whole: i64, part: i64, parts: i64) -> i64 {
    i64::try_from(i128::from(whole) * i128::from(part) / i128::from(parts.max(1))).unwrap_or(i64::MAX)
}

/// Whether a point lies inside a polygon.
pub(crate) fn within(corners: &[(i64, i64)], x: i64, y: i64) -> bool {
    let next = corners.iter().cycle().skip(1);
    let crossed = corners.iter().zip(next).filter(|((ax, ay), (bx, by))| {
        if (*ay <= y) == (*by <= y) {
            return false;
        }
        let along = i128::from(bx - ax) * i128::from(y - ay);
        let (rise, reach) = (i128::from(by - ay), i128::from(x - ax));
        if rise > 0 { reach * rise < along } else { reach * rise > along }
    });
    crossed.count() % 2 == 1
}

/// The line with the word set into its longest cut, where it has room.
fn label(line: &str, word: &str) -> Option<String> {
    let cells: Vec<char> = line.chars().collect();
    let first = cells.iter().position(|cell| *cell == '╱')?;
    let run = cells.iter().skip(first).take_while(|cell| **cell == '╱').count();
    let room = word.chars().count() + 2;
    if run < room + 2 {
        return None;
    }
    let start = first + (run - room) / 2;
    let put = |(at, cell): (usize, &char)| match at.checked_sub(start) {
        Some(0) => ' ',
        Some(n) if n + 1 < room => word.chars().nth(n - 1).unwrap_or(' '),
        Some(n) if n + 1 == room => ' ',
        _ => *cell,
    };
    Some(cells.iter().enumerate().map(put).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: i64 = 25_400_000;

    fn bottom_notch() -> Drawing<'static> {
        let (left, right, depth) = (52 * INCH, 60 * INCH, 4 * INCH);
        Drawing {
            side: "FACE",
            cut: "cut",
            length: 118 * INCH,
            height: 8 * INCH,
            cut_here: vec![(left, 0), (right, 0), (right, depth), (left, depth)],
            cut_beside: Vec::new(),
            across: vec![(left, "52\"".to_owned()), (right, "60\"".to_owned())],
        }
    }

    #[test]
    fn a_notch_from_below_hatches_the_lower_half() {
        let lines = bottom_notch().lines();
        assert_eq!(lines.first().map(String::as_str), Some("FACE"));
        let hatched = |row: usize| lines[row].matches(['╱', 'c']).count() > 0;
        assert!(!hatched(1) && !hatched(4) && hatched(6) && hatched(9), "{}", lines.join("\n"));
        assert!(lines.iter().any(|line| line.contains(" cut ")), "{}", lines.join("\n"));
        let last = lines.last().unwrap();
        assert!(last.find("52\"") < last.find("60\""), "{last}");
    }

    #[test]
    fn the_drawn_share_is_the_cut_share() {
        // The notch is 8 in of a 40 in window and half of the height: a tenth, by characters to a column and a row.
        let lines = bottom_notch().lines();
        let cells = lines.iter().skip(1).take(ROWS).flat_map(|line| line.chars().skip(1).take(COLUMNS));
        let cut = cells.filter(|cell| *cell != '░').count();
        assert!((COLUMNS * ROWS / 12..COLUMNS * ROWS / 8).contains(&cut), "{cut}");
    }
}
