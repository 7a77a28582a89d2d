use std::sync::Arc;

use crate::drawing::Elevation;
use crate::forms::board_shape::shape_view;
use crate::forms::error::Result;
use crate::screens::wall::board_box;
use crate::views::{Corner, Rectangle};
use crate::wall::{Point, Span};
use crate::work::{ProgressOnWall, WallSite, Work};

/// A wall drawn small.
///
/// # Errors
/// Where its sizes do not fit together yet.
pub(in crate::screens) fn small(work: &Work, wall: &Arc<WallSite>) -> Result<Elevation> {
    of_progress(&ProgressOnWall::of(work, wall))
}

/// The same of a wall whose progress is known.
///
/// # Errors
/// As [`small`].
pub(super) fn of_progress(progress: &ProgressOnWall) -> Result<Elevation> {
    let wall = &progress.wall;
    let corner = |point: Point| Corner { x: point.x.nm(), y: point.y.nm() };
    let openings = wall.openings.iter().map(|(_, opening)| {
        let at = Rectangle::of(opening.across(), Span { from: opening.bottom, to: opening.top });
        (at, opening.corners().map(corner).to_vec())
    });
    let through = progress.penetrations.iter().map(|one| one.penetration.outer());
    let boards = progress.boards.iter().map(|board| {
        let shapes = board.shapes(wall).unwrap_or_default();
        let rise = (board.place.right - board.place.left).nm();
        let rings = shapes.iter().flat_map(|shape| shape_view(shape, |_| String::new()).on_wall(rise));
        let at = board_box(&shapes).unwrap_or_else(|| Rectangle::of(board.x(), board.y()));
        (at, rings.collect(), board.state.code())
    });
    Ok(Elevation::plain(
        wall.name(),
        wall.outline()?.points().iter().copied().map(corner).collect(),
        openings.collect(),
        through.map(|(x, y)| Rectangle::of(x, y)).collect(),
        boards.collect(),
    ))
}
