use std::sync::Arc;

use num_rational::BigRational;

use crate::board::BoardShape;
use crate::book::{Field, Kind};
use crate::flashing::too_near;
use crate::forms::board_shape::shape_view;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::misfits;
use crate::forms::penetration::line;
use crate::measure::Length;
use crate::phrases::{Arg, key};
use crate::rules::{Exposure, NailedTo, keys, nailed_to};
use crate::screens::penetration::detail_lines;
use crate::siding::{gap_takes, movement};
use crate::store::Id;
use crate::views::{BoardLine, Corner, Note, OpeningLine, Rectangle, Source, WallView};
use crate::wall::{Opening, Outline, Point, Span, Studs};
use crate::work::{Against, Course, Misfits, ProgressOnWall, WallBoard, WallSite, Work, clearance_over};

impl Rectangle {
    fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.bottom < other.top && other.bottom < self.top
    }
}

/// The view of a wall.
pub(super) fn view(terms: &Terms<'_>, work: &Work, wall: &Arc<WallSite>) -> Result<WallView> {
    let (outline, courses) = (wall.outline()?, wall.courses()?);
    let width = outline.width();
    let studs = wall.studs()?.within(Length::ZERO, width, 10_000);
    let progress = ProgressOnWall::of(work, wall);
    let penetrations = line::of_wall(terms, &progress);
    let blocks: Vec<Rectangle> = penetrations.iter().map(|line| line.at).collect();
    let ProgressOnWall { boards, details, misfits, .. } = progress;
    Ok(WallView {
        wall: wall.id().to_string(),
        job: lookup::job_id(work),
        name: wall.name().to_owned(),
        width: terms.answer(&wall.record, Field::Width).unwrap_or_else(|| terms.reading(width, Source::Planned, None)),
        outline: outline.points().iter().copied().map(corner).collect(),
        courses: courses.iter().map(|course| course.middle.bottom.nm()).collect(),
        studs: studs.iter().map(|stud| stud.nm()).collect(),
        notes: [
            notes(terms, courses, &wall.openings, outline, work.rules().get_length(keys::STRIP_LEAST)?),
            clearances(terms, work, wall, outline)?,
            limits(terms, work, wall)?,
            misfits::notes(terms, [(&**wall, &misfits)], &boards),
        ]
        .concat(),
        openings: wall.openings.iter().map(|(id, opening)| opening_line(terms, *id, opening)).collect(),
        boards: boards.iter().filter_map(|board| board_line(terms, wall, board, &blocks, &misfits)).collect(),
        penetrations,
        revision: 0,
        details: detail_lines(terms, &details),
    })
}

fn corner(point: Point) -> Corner {
    Corner { x: point.x.nm(), y: point.y.nm() }
}

fn opening_line(terms: &Terms<'_>, id: Id, opening: &Opening) -> OpeningLine {
    OpeningLine {
        opening: id.to_string(),
        name: terms.phrase(&format!("wall-opening-{}", opening.kind.code()), &[]),
        at: Rectangle::of(opening.across(), Span { from: opening.bottom, to: opening.top }),
        corners: opening.corners().map(corner).to_vec(),
    }
}

fn board_line(
    terms: &Terms<'_>,
    wall: &WallSite,
    board: &WallBoard,
    blocks: &[Rectangle],
    misfits: &Misfits,
) -> Option<BoardLine> {
    let shapes = board.shapes(wall).unwrap_or_default();
    let at = board_box(&shapes).unwrap_or_else(|| Rectangle::of(board.x(), board.y()));
    let around = wall.shapes().map_or(&[][..], |shapes| shapes.around());
    let name = |place: usize| around.get(place).map(|own| terms.phrase(&own.name, &[])).unwrap_or_default();
    // A board that ends at a side that leans is bevelled there, not notched.
    let round = |opening: &Opening| {
        let across = opening.narrowest(board.y().from, board.y().to);
        Rectangle::of(across, Span { from: opening.bottom, to: opening.top }).meets(&at)
    };
    let notched =
        blocks.iter().any(|block| block.meets(&at)) || wall.openings.iter().any(|(_, opening)| round(opening));
    let state = board.state.code();
    let args = [
        ("course", board.course.into()),
        ("state", state.into()),
        ("notched", if notched { "yes" } else { "no" }.into()),
    ];
    Some(BoardLine {
        board: board.id().to_string(),
        course: board.course,
        length: terms.answer(&board.record, Field::Length)?,
        notched,
        at,
        state: state.to_owned(),
        said: misfits::said_of(terms, terms.phrase(key("frame-board"), &args), misfits, board.id()),
        shapes: shapes.iter().map(|shape| shape_view(shape, name)).collect(),
        rise: (board.place.right - board.place.left).nm(),
    })
}

/// The box round all shapes of a board; none where it has none.
pub(in crate::screens) fn board_box(shapes: &[BoardShape]) -> Option<Rectangle> {
    let boxes = shapes.iter().map(|shape| {
        let (x, y) = (shape.at.x, shape.at.y);
        Rectangle::of(Span { from: x, to: x + shape.length }, Span { from: y, to: y + shape.height })
    });
    boxes.reduce(|one, other| Rectangle {
        left: one.left.min(other.left),
        right: one.right.max(other.right),
        bottom: one.bottom.min(other.bottom),
        top: one.top.max(other.top),
    })
}

/// Where the bottom edge of the siding stands too near to ground, paving, a roof or a deck.
fn clearances(terms: &Terms<'_>, work: &Work, wall: &WallSite, outline: &Outline) -> Result<Vec<Note>> {
    let mut notes = Vec::new();
    for abutment in work.house().under(wall.id(), Kind::Abutment) {
        let (Some(what), Some(against)) = (abutment.text(Field::What), Against::of(abutment)) else { continue };
        // Along a sloped roof the boards are cut to their clearance.
        if against.is_sloped() {
            continue;
        }
        let Against { from, to, surface, .. } = against;
        // Over a roof or a deck the siding ends above it; over ground at the base line, or its lowest step there.
        // The base line runs to the right; the edges that run back to the left are those of the top.
        let under = |(a, b): &(Point, Point)| a.y == b.y && a.x < to && b.x > from;
        let base = outline.sides().filter(under);
        let edge = base.map(|(a, _)| a.y).min().unwrap_or_default();
        let clearance = clearance_over(work.rules(), what)?;
        if let Some(short) = too_near(edge, surface, clearance) {
            let args = [
                ("what", terms.phrase(&format!("wall-abutment-{what}"), &[]).into()),
                ("clearance", terms.shown(clearance).into()),
                ("short", terms.shown(short).into()),
            ];
            notes.push(Note::check("too-near", terms.phrase(key("wall-too-near"), &args)));
        }
    }
    Ok(notes)
}

/// Where boards move more than their end gaps take up, and studs stand further apart than boards may be nailed.
fn limits(terms: &Terms<'_>, work: &Work, wall: &WallSite) -> Result<Vec<Note>> {
    let (mut notes, rules) = (Vec::new(), work.rules());
    let (n, d) = rules.get_share(keys::MOVEMENT_STRAIN)?;
    let strain = BigRational::new(n.into(), d.into());
    let gaps = rules.get_length(keys::GAP_TRIM)?;
    let gaps = gaps + gaps;
    if let Some((length, change)) =
        work.longest_stock().ok().and_then(|length| Some((length, movement(length, &strain)?)))
        && gap_takes(length, &strain, gaps) == Some(false)
    {
        let args = [
            ("length", terms.shown(length).into()),
            ("change", terms.shown(change).into()),
            ("gaps", terms.shown(gaps).into()),
        ];
        notes.push(Note::check("moves-more", terms.phrase(key("wall-moves-more"), &args)));
    }
    let most = rules.get_own_length(keys::NAIL_SPACING_MOST)?;
    if let (Some(most), Studs::Spaced { spacing, .. }) = (most, wall.studs()?)
        && *spacing > most
    {
        let args = [("spacing", terms.shown(*spacing).into()), ("most", terms.shown(most).into())];
        notes.push(Note::check("nails-apart", terms.phrase(key("wall-nails-apart"), &args)));
    }
    notes.extend(wind(terms, work));
    Ok(notes)
}

/// Where the wind asks for other nailing than the code's table; none where nobody said what blows there.
fn wind(terms: &Terms<'_>, work: &Work) -> Option<Note> {
    let job = work.job().ok()?;
    let exposure = job.text(Field::Exposure).and_then(Exposure::from_code)?;
    let speed = job.whole(Field::WindSpeed)?;
    let args = [("speed", speed.into())];
    let note = |text: &str, args: &[(&str, Arg<'_>)]| Note::check("wind", terms.phrase(text, args));
    match nailed_to(work.rules().family(), speed, exposure)? {
        NailedTo::AnyHeight => None,
        NailedTo::Design => Some(note(key("wall-wind-design"), &args)),
        NailedTo::Feet(feet) => {
            let most = Length::from_inches(12 * feet);
            let height = job.length(Field::RoofHeight);
            let [speed] = args;
            let height = if height.is_some_and(|height| height <= most) { return None } else { height };
            let text = if height.is_some() { key("wall-wind-too-high") } else { key("wall-wind-height") };
            Some(note(text, &[speed, ("feet", feet.into())]))
        }
    }
}

/// A strip under a sill or over a head that is narrower than `least` looks like a fault.
fn notes(
    terms: &Terms<'_>,
    courses: &[Course],
    openings: &[(Id, Opening)],
    outline: &Outline,
    least: Length,
) -> Vec<Note> {
    let mut notes = Vec::new();
    if courses.is_empty() {
        notes.push(Note::check("pole-missing", terms.phrase(key("wall-pole-missing"), &[])));
    }
    let lines = || courses.iter().map(|course| course.middle.bottom).chain([outline.top()]);
    for (_, opening) in openings {
        // Under a sill the strip runs from the line below up to it; over a head from it up to the next line.
        let below = lines().filter(|line| *line < opening.bottom).max().map(|line| opening.bottom - line);
        let above = lines().filter(|line| *line > opening.top).min().map(|line| line - opening.top);
        let name = terms.phrase(&format!("wall-opening-{}", opening.kind.code()), &[]);
        let mut thin = |code: &str, text: &str, strip: Option<Length>| {
            if let Some(strip) = strip.filter(|strip| !courses.is_empty() && *strip < least) {
                let args = [("what", name.as_str().into()), ("strip", terms.shown(strip).into())];
                notes.push(Note::check(code, terms.phrase(text, &args)));
            }
        };
        thin("thin-under-sill", key("wall-thin-under-sill"), below.filter(|_| opening.bottom.is_positive()));
        thin("thin-over-head", key("wall-thin-over-head"), above);
    }
    notes
}
