//! A wall drawn in characters: one row a course, so that it is nearly to scale.

use lapwright::views::{BoardLine, Corner, Rectangle, WallView};

/// Columns of the drawn wall.
const COLUMNS: i64 = 72;

/// What stands for a wall without a board.
const BARE: char = ':';

/// What stands for a board by its state. Each is also said in the legend.
pub(crate) const fn glyph(state: &str) -> char {
    match state.as_bytes() {
        b"fixed" => '═',
        b"cut" => '-',
        _ => '·',
    }
}

/// What stands for the `n`th penetration: a letter.
pub(crate) fn letter(n: usize) -> char {
    char::from(b'A' + u8::try_from(n % 26).unwrap_or(0))
}

/// The rows, highest first; each begins with the number of its course, where a board lies in it.
pub(crate) fn rows(view: &WallView) -> Vec<String> {
    let right = view.outline.iter().map(|corner| corner.x).max().unwrap_or(0).max(1);
    let top = view.outline.iter().map(|corner| corner.y).max().unwrap_or(0);
    let bottom = view.outline.iter().map(|corner| corner.y).min().unwrap_or(0);
    let lines: Vec<i64> = if view.courses.is_empty() {
        let step = (right / COLUMNS * 2).max(1);
        (0..(top - bottom) / step + 1).map(|n| bottom + n * step).collect()
    } else {
        view.courses.clone()
    };
    let tops = lines.iter().skip(1).copied().chain([top]);
    let mut rows: Vec<String> = lines.iter().zip(tops).map(|(from, to)| row(view, *from, to, right)).collect();
    rows.reverse();
    rows
}

fn row(view: &WallView, from: i64, to: i64, right: i64) -> String {
    let y = from + (to - from) / 2;
    // Off the middle, where the edges of openings often fall.
    let x_of = |column: i64| right / COLUMNS * column + right / COLUMNS * 2 / 5;
    // The edge of a board that hangs out of level lies on no line: it belongs to the nearest.
    let on_line = |board: &&BoardLine| nearest(&view.courses, board.at.bottom) == Some(from);
    let course = view.boards.iter().find(on_line).map(|board| board.course.to_string());
    let mut cells: Vec<char> = (0..COLUMNS).map(|column| cell(view, x_of(column), y)).collect();
    for n in 0..view.penetrations.len() {
        put_letter(view, &mut cells, n, (from, to), right);
    }
    format!("{:>3} {}", course.unwrap_or_default(), cells.into_iter().collect::<String>().trim_end())
}

/// The line that is nearest to a height.
fn nearest(lines: &[i64], y: i64) -> Option<i64> {
    lines.iter().copied().min_by_key(|line| line.abs_diff(y))
}

/// A penetration smaller than a cell is drawn all the same, in the row and the column of its centre.
fn put_letter(view: &WallView, cells: &mut [char], n: usize, (from, to): (i64, i64), right: i64) {
    let Some(at) = view.penetrations.get(n).map(|penetration| penetration.at) else { return };
    let centre = i64::midpoint(at.bottom, at.top);
    let column = i64::midpoint(at.left, at.right) / (right / COLUMNS).max(1);
    if (from..to).contains(&centre)
        && let Ok(column) = usize::try_from(column)
        && let Some(cell) = cells.get_mut(column)
    {
        *cell = letter(n);
    }
}

fn cell(view: &WallView, x: i64, y: i64) -> char {
    if !inside(&view.outline, x, y) {
        return ' ';
    }
    if let Some(n) = view.penetrations.iter().position(|penetration| holds(&penetration.at, x, y)) {
        return letter(n);
    }
    if view.openings.iter().any(|opening| inside(&opening.corners, x, y)) {
        return '▓';
    }
    // Where two boards lap, the upper one is what is seen.
    let board = view.boards.iter().filter(|board| covers(board, x, y)).max_by_key(|board| board.at.bottom);
    let Some(board) = board else { return BARE };
    let cell = view.outline.iter().map(|corner| corner.x).max().unwrap_or(0) / COLUMNS;
    let joint = x - board.at.left < cell && view.boards.iter().any(|other| joins(other, board, cell));
    if joint { '|' } else { glyph(&board.state) }
}

/// Whether one board ends where the other begins, in the same course.
const fn joins(left: &BoardLine, right: &BoardLine, within: i64) -> bool {
    let (ends, begins) = (left.at.right, right.at.left);
    left.course == right.course && ends <= begins && begins - ends < within
}

/// Whether a point lies on a board: within its outline and in none of its holes.
fn covers(board: &BoardLine, x: i64, y: i64) -> bool {
    let rings = || board.shapes.iter().flat_map(|shape| shape.on_wall(board.rise));
    holds(&board.at, x, y) && rings().filter(|ring| inside(ring, x, y)).count() % 2 == 1
}

const fn holds(at: &Rectangle, x: i64, y: i64) -> bool {
    at.left <= x && x < at.right && at.bottom <= y && y < at.top
}

fn inside(outline: &[Corner], x: i64, y: i64) -> bool {
    let corners: Vec<(i64, i64)> = outline.iter().map(|corner| (corner.x, corner.y)).collect();
    crate::drawing::within(&corners, x, y)
}
