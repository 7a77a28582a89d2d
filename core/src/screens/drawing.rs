//! What a shell draws: one call gives the whole drawing of a subject, laid out for its frame.

use crate::drawing::{
    Block, Board, Elevation, Hit, Layers, Look, Page, SawPattern, Side, Stick, Stroke, TapePlace, pack,
};
use crate::flashing::{Pipe, WallLayers};
use crate::phrases::Phrases;
use crate::store::{Hash, Store};

use super::context::Terms;
use super::kept::Wall;
use super::parts::Reading;
use super::problem::Code;
use super::trouble::Kept;
use super::{
    BoardView, Context, NotchView, PenetrationView, Place, PoleView, Problem, WallView, board, house, penetration,
    pole, spoken, wall,
};

/// What is drawn: ids as text.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Subject {
    /// A board's face with its marks.
    BoardFace {
        /// The board.
        board: String,
    },
    /// A board's back with its marks, mirrored.
    BoardBack {
        /// The board.
        board: String,
    },
    /// A wall to scale.
    Elevation {
        /// The wall.
        wall: String,
    },
    /// The stick that carries the course lines.
    PoleStick {
        /// The house.
        job: String,
    },
    /// A mounting block: its blank with the hole, and its section with the cut.
    BlockSplit {
        /// The penetration.
        penetration: String,
    },
    /// A board of the saw list with its cuts.
    SawPattern {
        /// The house.
        job: String,
        /// The board's number.
        number: i64,
    },
    /// A wall small, with the boards by their state.
    WallSmall {
        /// The wall.
        wall: String,
    },
    /// Where to put the tape for a question, on a plain wall or board.
    TapePlace {
        /// The question's `picture`.
        picture: String,
    },
    /// The layers of a penetration, seen from outside.
    LayersFront {
        /// The penetration.
        penetration: String,
    },
    /// The layers of a penetration in a section through its middle, the wall at the left.
    LayersSection {
        /// The penetration.
        penetration: String,
    },
}

/// The frame that a drawing is laid out for: sizes in dp, as the shell will really draw them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Frame {
    /// How wide the drawing is.
    pub width_dp: f32,
    /// How high it may come out.
    pub height_dp: f32,
    /// The text size of answers.
    pub answer_dp: f32,
    /// The text size of labels.
    pub label_dp: f32,
    /// The text size of less weighty texts.
    pub small_dp: f32,
    /// Whether the left hand holds the phone.
    pub left_hand: bool,
}

/// A drawing: strokes as the bytes of `core/docs/drawing-format.md`, and the texts that they name.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Drawing {
    /// The same as in the view that it belongs to; changes when, and only when, what is drawn does.
    pub revision: i64,
    /// The frame's width.
    pub width_dp: f32,
    /// What it takes of the frame's height.
    pub height_dp: f32,
    /// The strokes.
    pub bytes: Vec<u8>,
    /// The texts that the strokes name by number.
    pub texts: Vec<String>,
    /// What a screen reader says.
    pub spoken: String,
    /// What a tap hits; where several hold a point, the first.
    pub targets: Vec<Target>,
}

/// A rectangle of a drawing, in dp from its left and top edge, and where a tap on it leads.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Target {
    /// Its left edge.
    pub left: f32,
    /// Its top edge.
    pub top: f32,
    /// Its right edge.
    pub right: f32,
    /// Its bottom edge.
    pub bottom: f32,
    /// Where a tap leads.
    pub place: Place,
    /// What a screen reader says of it.
    pub spoken: String,
}

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
