//! Revisions of drawings: a shell asks for a drawing again only when the number that its view carries has changed.

use crate::drawing::{BlockDrawing, BoardDrawing, Elevation, Layers, SawPattern, Stick};
use crate::flashing::{Pipe, WallLayers};
use crate::phrases::Phrases;
use crate::store::Hash;
use crate::views::{NotchView, PenetrationView, PoleView, Reading, ShapeView, WallView};

/// The revision of a board's drawing.
pub(super) fn board_revision(
    phrases: &Phrases,
    length: Option<&Reading>,
    height: &Reading,
    notches: &[NotchView],
    shape: Option<&ShapeView>,
) -> i64 {
    revision(&BoardDrawing::of(phrases, length, height, notches, shape))
}

/// The revision of a wall's drawing; what the view holds in its own `revision` is no part of it.
pub(super) fn wall_revision(phrases: &Phrases, view: &WallView) -> i64 {
    revision(&Elevation::of(phrases, view))
}

/// The revision of a wall drawn small.
pub(super) fn small_revision(wall: &Elevation) -> i64 {
    revision(wall)
}

/// The revision of the drawn cuts of a board.
pub(super) fn saw_revision(cuts: &SawPattern) -> i64 {
    revision(cuts)
}

/// The revision of a pole's drawing.
pub(super) fn pole_revision(phrases: &Phrases, view: &PoleView) -> i64 {
    revision(&Stick::of(phrases, view))
}

/// The revision of the drawings of a penetration.
pub(super) fn penetration_revision(
    phrases: &Phrases,
    view: &PenetrationView,
    layers: Option<(WallLayers, Pipe)>,
) -> i64 {
    revision(&(BlockDrawing::of(phrases, &view.block), drawn_layers(phrases, view, layers)))
}

/// The layers as they are drawn: none where they cannot be told yet.
pub(super) fn drawn_layers(phrases: &Phrases, view: &PenetrationView, layers: Option<(WallLayers, Pipe)>) -> Layers {
    layers.map_or_else(Layers::default, |(layers, pipe)| Layers::of(phrases, &view.layers, &layers, pipe))
}

/// A number made from everything that is drawn: seven bytes of its content hash.
pub(super) fn revision(drawn: &impl serde::Serialize) -> i64 {
    // A plain record of texts and numbers always has a JSON form.
    let Hash(bytes) = Hash::of(serde_json::to_vec(drawn).unwrap_or_default());
    bytes.iter().take(7).fold(0, |number, byte| number * 256 + i64::from(*byte))
}
