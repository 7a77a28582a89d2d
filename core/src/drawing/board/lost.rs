use crate::views::{Corner, ShapeView};

/// The corners of a piece that is cut away.
pub(super) type LostCorners = Vec<(i64, i64)>;

/// What of a board's box its outline leaves out, but for what its notches show themselves: each piece as the way of the
/// saw through the box, closed along the box's sides.
pub(super) fn lost(shape: &ShapeView) -> Vec<LostCorners> {
    let most = |of: fn(&Corner) -> i64| shape.shape.iter().map(of).max().unwrap_or(0);
    let (length, height) = (most(|corner| corner.x), most(|corner| corner.y));
    let on_side = |corner: &Corner| corner.x == 0 || corner.x == length || corner.y == 0 || corner.y == height;
    let mut pieces = Vec::new();
    let mut way: Vec<Corner> = Vec::new();
    for corner in shape.shape.iter().chain(shape.shape.first()) {
        way.push(*corner);
        if !on_side(corner) {
            continue;
        }
        if let (Some(from), Some(to)) = (way.first(), way.last())
            && way.len() > 1
            && !along_side(&way, length, height)
            && !is_notched(shape, &way)
        {
            let box_corners = between(*from, *to, length, height);
            let inner = way.get(1..way.len() - 1).unwrap_or_default();
            let piece = [*from].into_iter().chain(box_corners).chain([*to]).chain(inner.iter().rev().copied());
            pieces.push(piece.map(|corner| (corner.x, corner.y)).collect());
        }
        way = vec![*corner];
    }
    pieces
}

/// The same seen from behind.
pub(super) fn behind(pieces: &[LostCorners], length: i64) -> Vec<LostCorners> {
    pieces.iter().map(|piece| piece.iter().map(|(x, y)| (length - x, *y)).collect()).collect()
}

/// Whether a way is one edge along a side of the box.
fn along_side(way: &[Corner], length: i64, height: i64) -> bool {
    let [from, to] = way else { return false };
    (from.x == to.x && (from.x == 0 || from.x == length)) || (from.y == to.y && (from.y == 0 || from.y == height))
}

/// Whether a way goes round what the board's notches show.
fn is_notched(shape: &ShapeView, way: &[Corner]) -> bool {
    shape.cuts.iter().any(|cut| {
        let holds = |at: &Corner| cut.left <= at.x && at.x <= cut.right && cut.bottom <= at.y && at.y <= cut.top;
        way.iter().all(holds)
    })
}

/// The corners of the box from one point of its sides to another, counter-clockwise.
fn between(from: Corner, to: Corner, length: i64, height: i64) -> Vec<Corner> {
    let around = 2 * (length + height);
    // How far round the box a point of its sides lies, from its lower left corner.
    let along = |at: Corner| match at {
        Corner { x, y: 0 } => x,
        Corner { x, y } if x == length => length + y,
        Corner { x, y } if y == height => length + height + (length - x),
        Corner { y, .. } => around - y,
    };
    let (start, end) = (along(from), along(to));
    let corners = [(length, 0), (length, height), (0, height), (0, 0)].map(|(x, y)| Corner { x, y });
    let on_way = |at: i64| if start <= end { start < at && at < end } else { at > start || at < end };
    let mut met: Vec<(i64, Corner)> = corners
        .into_iter()
        .map(|corner| (if corner.x == 0 && corner.y == 0 { around } else { along(corner) }, corner))
        .filter(|(at, _)| on_way(*at))
        .collect();
    met.sort_by_key(|(at, _)| if *at >= start { *at } else { *at + around });
    met.into_iter().map(|(_, corner)| corner).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shape(corners: &[(i64, i64)]) -> ShapeView {
        let shape = corners.iter().map(|(x, y)| Corner { x: *x, y: *y }).collect();
        ShapeView { at: Corner { x: 0, y: 0 }, shape, holes: Vec::new(), rip: None, cuts: Vec::new() }
    }

    fn twice_area(corners: &[(i64, i64)]) -> i64 {
        corners.iter().zip(corners.iter().cycle().skip(1)).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum()
    }

    /// A box of 100 by 10 less what is lost is the shape, whichever corner or side it is lost at.
    #[test]
    fn what_is_lost_and_the_shape_make_the_box() {
        let shapes: [&[(i64, i64)]; 8] = [
            &[(0, 0), (100, 0), (100, 10), (0, 10)],
            &[(0, 0), (60, 0), (60, 4), (100, 4), (100, 10), (0, 10)],
            &[(40, 0), (100, 0), (100, 10), (0, 10), (0, 4), (40, 4)],
            &[(0, 0), (100, 0), (100, 4), (90, 10), (10, 10), (0, 4)],
            &[(0, 0), (100, 0), (50, 10)],
            &[(0, 0), (100, 0), (100, 10), (0, 6)],
            &[
                (0, 0),
                (40, 0),
                (40, 5),
                (50, 5),
                (50, 0),
                (100, 0),
                (100, 10),
                (30, 10),
                (30, 8),
                (20, 8),
                (20, 10),
                (0, 10),
            ],
            &[(5, 0), (95, 0), (100, 5), (95, 10), (5, 10), (0, 5)],
        ];
        for corners in shapes {
            let pieces = lost(&shape(corners));
            let area: i64 = pieces.iter().map(|piece| twice_area(piece).abs()).sum();
            assert_eq!(area + twice_area(corners), 2_000, "{corners:?}: {pieces:?}");
        }
        // What a notch shows is not drawn twice.
        let cut = crate::views::ShapeCutView {
            name: String::new(),
            edges: Vec::new(),
            left: 60,
            right: 100,
            bottom: 0,
            top: 4,
        };
        let notched = ShapeView { cuts: vec![cut], ..shape(shapes[1]) };
        assert_eq!(lost(&notched), Vec::<LostCorners>::new());
    }
}
