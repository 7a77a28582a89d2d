//! Drawings looked at as data: what is said of a drawing must be true of its strokes.

mod block;
mod board;
mod elevation;
mod golden;
mod layers;
mod pole;
mod svg;
mod tape_place;

use super::*;

/// A drawing that the shells' decoders are tried on: its name, its strokes and height, its width.
type Golden = (&'static str, (Vec<Stroke>, f64), f32);

/// Sizes in dp that are the same but for rounding.
fn alike(a: f32, b: f32) -> bool {
    (a - b).abs() < 0.001
}

/// The room that a text takes up: left, top, right, bottom.
fn room(stroke: &Stroke) -> Option<[f32; 4]> {
    let Stroke::Text { anchor, at, em, width, turn, .. } = stroke else { return None };
    if *turn != 0.0 {
        assert!(
            alike(*turn, 90.0) && *anchor == Anchor::Middle,
            "only texts to be read from the right are turned: {stroke:?}"
        );
        return Some([at.x - em * 0.928, at.y - width / 2.0, at.x + em * 0.236, at.y + width / 2.0]);
    }
    let left = match anchor {
        Anchor::Start => at.x,
        Anchor::Middle => at.x - width / 2.0,
        Anchor::End => at.x - width,
    };
    Some([left, at.y - em * 0.928, left + width, at.y + em * 0.236])
}

/// The texts of a drawing.
fn texts(strokes: &[Stroke]) -> Vec<&str> {
    strokes
        .iter()
        .filter_map(|stroke| if let Stroke::Text { text, .. } = stroke { Some(text.as_str()) } else { None })
        .collect()
}

/// No text overlaps another or runs off, and nothing lies outside.
fn assert_well_laid(strokes: &[Stroke], width: f32, height: f32) {
    let near = 0.01;
    let inside = |x: f32, y: f32| (-near..=width + near).contains(&x) && (-near..=height + near).contains(&y);
    for stroke in strokes {
        let points = match stroke {
            Stroke::Fill { corners: points, .. }
            | Stroke::Hatch { corners: points, .. }
            | Stroke::Line { points, .. } => points.clone(),
            Stroke::Text { at, .. } => vec![*at],
        };
        assert!(points.iter().all(|spot| inside(spot.x, spot.y)), "outside {width} x {height}: {stroke:?}");
    }
    let rooms: Vec<_> = strokes.iter().filter_map(|stroke| Some((room(stroke)?, stroke))).collect();
    for (at, (room, stroke)) in rooms.iter().enumerate() {
        assert!(inside(room[0], room[1]) && inside(room[2], room[3]), "runs off {width} x {height}: {stroke:?}");
        for (other, under) in &rooms[..at] {
            let meet = room[0] + near < other[2]
                && other[0] + near < room[2]
                && room[1] + near < other[3]
                && other[1] + near < room[3];
            assert!(!meet, "overlap: {stroke:?} and {under:?}");
        }
    }
}
