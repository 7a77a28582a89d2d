//! What a shell draws: one call gives the whole drawing of a subject, laid out for its frame.

use crate::drawing::{
    Block, Board, Elevation, Hit, Layers, Look, Page, SawPattern, Side, Stick, Stroke, TapePlace, pack,
};
use crate::flashing::{Pipe, WallLayers};
use crate::phrases::Phrases;
use crate::store::{Hash, Store};
use crate::views::{
    BoardView, Code, Context, Drawing, Frame, NotchView, PenetrationView, PoleView, Problem, Reading, Subject, Target,
    WallView,
};

use super::context::Terms;
use super::kept::Wall;
use super::trouble::Kept;
use super::{board, house, penetration, pole, spoken, wall};

/// The drawing of a subject for a frame.
///
/// # Errors
/// [`Problem`] where the subject names nothing that is in the book, or something else must be answered first.
pub fn drawing(store: &Store, context: &Context, subject: &Subject, frame: &Frame) -> Result<Drawing, Problem> {
    spoken(context, |terms| drawn(store, terms, subject, frame))
}

fn drawn(store: &Store, terms: &Terms<'_>, subject: &Subject, frame: &Frame) -> Kept<Drawing> {
    let page = Page::new([frame.width_dp, frame.height_dp, frame.label_dp, frame.small_dp], frame.left_hand);
    match subject {
        Subject::BoardFace { board } => board_side(store, terms, &page, board, Side::Face),
        Subject::BoardBack { board } => board_side(store, terms, &page, board, Side::Back),
        Subject::Elevation { wall } => elevation(store, terms, &page, wall),
        Subject::PoleStick { job } => pole_stick(store, terms, &page, job),
        Subject::BlockSplit { penetration } => block(store, terms, &page, penetration),
        Subject::SawPattern { job, number } => {
            let pattern = super::saw_list::pattern(store, terms, job, *number)?;
            Ok(packed(&page, revision(&pattern), pattern.draw(&page), pattern.spoken(), Vec::new()))
        }
        Subject::WallSmall { wall } => wall_small(store, terms, &page, wall),
        Subject::TapePlace { picture } => {
            let unknown = || Problem::new(Code::Unknown, "picture", terms.phrase("screen-unknown", &[]));
            let place = TapePlace::of(terms.phrases, picture).ok_or_else(unknown)?;
            Ok(packed(&page, revision(&place), place.draw(&page), place.spoken(terms.phrases), Vec::new()))
        }
        Subject::LayersFront { penetration } => layers(store, terms, &page, penetration, Look::Front),
        Subject::LayersSection { penetration } => layers(store, terms, &page, penetration, Look::Section),
    }
}

fn board_side(store: &Store, terms: &Terms<'_>, page: &Page, id: &str, side: Side) -> Kept<Drawing> {
    let BoardView { length, height, notches, revision, .. } = board::view(store, terms, id)?;
    let board = Board::of(terms.phrases, length.as_ref(), &height, &notches);
    let spoken = board.spoken(terms.phrases, side);
    Ok(packed(page, revision, board.draw(page, side), spoken, Vec::new()))
}

fn elevation(store: &Store, terms: &Terms<'_>, page: &Page, id: &str) -> Kept<Drawing> {
    let view = wall::view(store, terms, id)?;
    let wall = Elevation::of(terms.phrases, &view);
    let (strokes, height, hits) = wall.draw(page, terms.phrases);
    let target =
        |Hit { area: [left, top, right, bottom], place, spoken }| Target { left, top, right, bottom, place, spoken };
    let targets = hits.into_iter().map(target).collect();
    Ok(packed(page, view.revision, (strokes, height), wall.spoken(terms.phrases), targets))
}

fn wall_small(store: &Store, terms: &Terms<'_>, page: &Page, id: &str) -> Kept<Drawing> {
    let wall = house::small(store, terms, &Wall::of(store, terms, terms.id("wall", id)?)?)?;
    let number = revision(&wall);
    Ok(packed(page, number, wall.draw_small(page), wall.spoken_small(terms.phrases), Vec::new()))
}

fn pole_stick(store: &Store, terms: &Terms<'_>, page: &Page, id: &str) -> Kept<Drawing> {
    let view = pole::view(store, terms, id)?;
    let stick = Stick::of(terms.phrases, &view);
    Ok(packed(page, view.revision, stick.draw(page), stick.spoken(terms.phrases), Vec::new()))
}

fn block(store: &Store, terms: &Terms<'_>, page: &Page, id: &str) -> Kept<Drawing> {
    let view = penetration::view(store, terms, id)?;
    let block = Block::of(terms.phrases, &view.block);
    Ok(packed(page, view.revision, block.draw(page), block.spoken(), Vec::new()))
}

fn layers(store: &Store, terms: &Terms<'_>, page: &Page, id: &str, look: Look) -> Kept<Drawing> {
    let view = penetration::view(store, terms, id)?;
    let layers = penetration::wall_layers(store, terms, id)?;
    let layers = drawn_layers(terms.phrases, &view, layers);
    let spoken = layers.spoken(terms.phrases);
    Ok(packed(page, view.revision, layers.draw(page, look), spoken, Vec::new()))
}

/// No layers are drawn where they cannot be told yet.
fn drawn_layers(phrases: &Phrases, view: &PenetrationView, layers: Option<(WallLayers, Pipe)>) -> Layers {
    layers.map_or_else(Layers::default, |(layers, pipe)| Layers::of(phrases, &view.layers, &layers, pipe))
}

fn packed(
    page: &Page,
    revision: i64,
    (strokes, height): (Vec<Stroke>, f64),
    spoken: String,
    targets: Vec<Target>,
) -> Drawing {
    let packed = pack(&strokes);
    let (width_dp, height_dp) = (page.width() as f32, height as f32);
    Drawing { revision, width_dp, height_dp, bytes: packed.bytes, texts: packed.texts, spoken, targets }
}

/// The revision of a board's drawing.
pub(super) fn board_revision(
    phrases: &Phrases,
    length: Option<&Reading>,
    height: &Reading,
    notches: &[NotchView],
) -> i64 {
    revision(&Board::of(phrases, length, height, notches))
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
    revision(&(Block::of(phrases, &view.block), drawn_layers(phrases, view, layers)))
}

/// A number made from everything that is drawn: seven bytes of its content hash.
fn revision(drawn: &impl serde::Serialize) -> i64 {
    // A plain record of texts and numbers always has a JSON form.
    let Hash(bytes) = Hash::of(serde_json::to_vec(drawn).unwrap_or_default());
    bytes.iter().take(7).fold(0, |number, byte| number * 256 + i64::from(*byte))
}
