//! What a shell draws: one call gives the whole drawing of a subject, laid out for its frame.

use crate::book::Book;
use crate::drawing::{BlockDrawing, BoardDrawing, Elevation, Hit, Look, Page, Side, Stick, Stroke, TapePlace, pack};
use crate::views::{BoardView, Code, Context, Drawing, Frame, Problem, Subject, Target};

use super::revision::{drawn_layers, revision, saw_revision, small_revision};
use super::{board, house, penetration, pole, saw_list, wall};
use crate::forms::context::Terms;
use crate::forms::context::in_language;
use crate::forms::error::Result;
use crate::forms::lookup;

/// The drawing of a subject for a frame.
///
/// # Errors
/// [`Problem`] where the subject names nothing that is in the book, or something else must be answered first.
pub fn drawing(book: &Book, context: &Context, subject: &Subject, frame: &Frame) -> Result<Drawing, Problem> {
    in_language(context, |terms| {
        book.refresh()?;
        drawn(book, terms, subject, frame)
    })
}

fn drawn(book: &Book, terms: &Terms<'_>, subject: &Subject, frame: &Frame) -> Result<Drawing> {
    let page = Page::new([frame.width_dp, frame.height_dp, frame.label_dp, frame.small_dp], frame.left_hand);
    match subject {
        Subject::BoardFace { board } => board_side(book, terms, &page, board, Side::Face),
        Subject::BoardBack { board } => board_side(book, terms, &page, board, Side::Back),
        Subject::Elevation { wall } => elevation(book, terms, &page, wall),
        Subject::PoleStick { job } => pole_stick(book, terms, &page, job),
        Subject::BlockSplit { penetration } => block(book, terms, &page, penetration),
        Subject::SawPattern { job, number } => {
            let pattern = saw_list::pattern(book, terms, job, *number)?;
            Ok(packed(&page, saw_revision(&pattern), pattern.draw(&page), pattern.spoken(), Vec::new()))
        }
        Subject::WallSmall { wall } => wall_small(book, terms, &page, wall),
        Subject::TapePlace { picture } => {
            let unknown = || Problem::new(Code::Unknown, "picture", terms.phrase("screen-unknown", &[]));
            let place = TapePlace::of(terms.phrases, picture).ok_or_else(unknown)?;
            Ok(packed(&page, revision(&place), place.draw(&page), place.spoken(terms.phrases), Vec::new()))
        }
        Subject::LayersFront { penetration, layer } => layers(book, terms, &page, penetration, (Look::Front, layer)),
        Subject::LayersSection { penetration, layer } => {
            layers(book, terms, &page, penetration, (Look::Section, layer))
        }
    }
}

fn board_side(book: &Book, terms: &Terms<'_>, page: &Page, id: &str, side: Side) -> Result<Drawing> {
    let BoardView { length, height, notches, shape, revision, .. } = board::view(book, terms, id)?;
    let board = BoardDrawing::of(terms.phrases, length.as_ref(), &height, &notches, shape.as_ref());
    let spoken = board.spoken(terms.phrases, side);
    Ok(packed(page, revision, board.draw(page, side), spoken, Vec::new()))
}

fn elevation(book: &Book, terms: &Terms<'_>, page: &Page, id: &str) -> Result<Drawing> {
    let view = wall::view(book, terms, id)?;
    let wall = Elevation::of(terms.phrases, &view);
    let (strokes, height, hits) = wall.draw(page, terms.phrases);
    let target =
        |Hit { area: [left, top, right, bottom], place, spoken }| Target { left, top, right, bottom, place, spoken };
    let targets = hits.into_iter().map(target).collect();
    Ok(packed(page, view.revision, (strokes, height), wall.spoken(terms.phrases), targets))
}

fn wall_small(book: &Book, terms: &Terms<'_>, page: &Page, id: &str) -> Result<Drawing> {
    let (work, wall) = lookup::wall(book, terms, id)?;
    let wall = house::small(&work, &wall)?;
    let number = small_revision(&wall);
    Ok(packed(page, number, wall.draw_small(page), wall.spoken_small(terms.phrases), Vec::new()))
}

fn pole_stick(book: &Book, terms: &Terms<'_>, page: &Page, id: &str) -> Result<Drawing> {
    let view = pole::view(book, terms, id)?;
    let stick = Stick::of(terms.phrases, &view);
    Ok(packed(page, view.revision, stick.draw(page), stick.spoken(terms.phrases), Vec::new()))
}

fn block(book: &Book, terms: &Terms<'_>, page: &Page, id: &str) -> Result<Drawing> {
    let view = penetration::view(book, terms, id)?;
    let block = BlockDrawing::of(terms.phrases, &view.block);
    Ok(packed(page, view.revision, block.draw(page), block.spoken(), Vec::new()))
}

fn layers(book: &Book, terms: &Terms<'_>, page: &Page, id: &str, (look, picked): (Look, &str)) -> Result<Drawing> {
    let view = penetration::view(book, terms, id)?;
    let layers = drawn_layers(terms.phrases, &view, penetration::wall_layers(book, terms, id)?);
    let spoken = layers.spoken(terms.phrases);
    Ok(packed(page, view.revision, layers.draw(page, look, picked), spoken, Vec::new()))
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
