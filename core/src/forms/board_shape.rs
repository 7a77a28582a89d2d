//! The shape of a board, as views and documents show it.

use super::context::Terms;
use crate::board::{BoardCut, BoardShape, BoxSide, ShapeWarning};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::views::{Corner, Note, RipView, ShapeCutView, ShapeView};
use crate::wall::Point;
use crate::work::Board;

/// A shape, each of its cuts with the name of what it goes round.
pub(crate) fn shape_view(shape: &BoardShape, name: impl Fn(usize) -> String) -> ShapeView {
    let lost = |length: Length| (length != Length::ZERO).then(|| length.nm());
    let rip = RipView { top: lost(shape.rip.top), bottom: lost(shape.rip.bottom) };
    ShapeView {
        at: corner(&shape.at),
        shape: shape.corners.iter().map(corner).collect(),
        holes: shape.holes.iter().map(|ring| ring.iter().map(corner).collect()).collect(),
        rip: (rip.top.is_some() || rip.bottom.is_some()).then_some(rip),
        cuts: shape.cuts.iter().map(|cut| cut_view(cut, name(cut.around))).collect(),
    }
}

fn corner(point: &Point) -> Corner {
    Corner { x: point.x.nm(), y: point.y.nm() }
}

fn cut_view(cut: &BoardCut, name: String) -> ShapeCutView {
    let side = |side: &BoxSide| match side {
        BoxSide::Left => "left",
        BoxSide::Right => "right",
        BoxSide::Bottom => "bottom",
        BoxSide::Top => "top",
    };
    let ([low, other_low], [high, other_high]) = (cut.bottom, cut.top);
    ShapeCutView {
        name,
        edges: cut.sides.iter().map(|own| side(own).to_owned()).collect(),
        left: cut.left.nm(),
        right: cut.right.nm(),
        bottom: low.min(other_low).nm(),
        top: high.max(other_high).nm(),
    }
}

/// What of its shapes is thin or short, but for what its notches say themselves.
pub(crate) fn shape_warnings(terms: &Terms<'_>, board: &Board) -> Vec<Note> {
    if board.site.is_none() {
        return Vec::new();
    }
    let least = |rule: &str| board.rules.get_length(rule).unwrap_or_default();
    let (leg, strip) = (terms.shown(least(keys::LEG_LEAST)), terms.shown(least(keys::STRIP_LEAST)));
    let note = |shape: &BoardShape, warning: &ShapeWarning| {
        let (code, text, args) = match warning {
            ShapeWarning::ThinLeg(_) if !shape.cuts.is_empty() => return None,
            ShapeWarning::ThinLeg(_) => ("thin-leg", key("board-thin-leg"), vec![("least", leg.as_str().into())]),
            ShapeWarning::ThinStrip => {
                let height = terms.shown(shape.height).into();
                ("thin-strip", key("board-thin-strip"), vec![("height", height), ("least", strip.as_str().into())])
            }
            ShapeWarning::ShortPiece => {
                let length = terms.shown(shape.length).into();
                ("short-piece", key("board-short-piece"), vec![("length", length), ("least", leg.as_str().into())])
            }
        };
        Some(Note::check(code, terms.phrase(text, &args)))
    };
    let shapes = board.shapes.iter();
    shapes.flat_map(|shape| shape.warnings.iter().filter_map(move |warning| note(shape, warning))).collect()
}
