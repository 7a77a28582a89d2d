use crate::flashing::too_near;
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job, Penetration, Wall};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::siding::CourseLine;
use crate::store::{Id, Store};
use crate::views::{BoardLine, Corner, Note, OpeningLine, PenetrationLine, Rectangle, Source, WallView};
use crate::wall::{Opening, Outline, Point, Span};

impl Rectangle {
    pub(in crate::screens) fn of(x: Span, y: Span) -> Self {
        Self { left: x.from.nm(), right: x.to.nm(), bottom: y.from.nm(), top: y.to.nm() }
    }

    fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.bottom < other.top && other.bottom < self.top
    }
}

/// The view of a wall.
pub(super) fn view(store: &Store, terms: &Terms<'_>, wall: &Wall) -> Kept<WallView> {
    let job = Job::of(store, terms, wall.job)?;
    let outline = wall.outline(store, terms)?;
    let width = outline.width();
    let courses = match job.lines(store)? {
        Some(lines) => {
            let lines = wall.lines_at(store, &lines, width.half(), width)?;
            wall.courses(terms, &job, &lines, &outline)?
        }
        None => Vec::new(),
    };
    let studs = wall.studs(store, terms)?.within(Length::ZERO, width, 10_000);
    let openings = wall.openings(store)?;
    let opening = |(id, opening): &(Id, Opening)| OpeningLine {
        opening: id.to_string(),
        name: terms.phrase(&format!("wall-opening-{}", opening.kind.code()), &[]),
        at: Rectangle::of(opening.across(), Span { from: opening.bottom, to: opening.top }),
        corners: opening.corners().map(|point| Corner { x: point.x.nm(), y: point.y.nm() }).to_vec(),
    };
    let penetrations: Vec<PenetrationLine> = Penetration::on_wall(store, terms, &job, wall.id())?
        .iter()
        .map(|penetration| {
            let (x, y) = penetration.outer();
            PenetrationLine {
                penetration: penetration.id().to_string(),
                name: terms.phrase(&format!("wall-kind-{}", penetration.kind.code()), &[]),
                at: Rectangle::of(x, y),
            }
        })
        .collect();
    let blocks: Vec<Rectangle> = penetrations.iter().map(|line| line.at).collect();
    let boards = boards(store, terms, wall, (&blocks, &openings))?;
    Ok(WallView {
        wall: wall.id().to_string(),
        job: job.id().to_string(),
        name: wall.name().to_owned(),
        width: wall.facts.reading(terms, "width").unwrap_or_else(|| terms.reading(width, Source::Planned, None)),
        outline: outline.points().iter().map(|point| Corner { x: point.x.nm(), y: point.y.nm() }).collect(),
        courses: courses.iter().map(|course| course.bottom.nm()).collect(),
        studs: studs.iter().map(|stud| stud.nm()).collect(),
        notes: [notes(terms, &courses, &openings, &outline), clearances(store, terms, &job, wall, &outline)?].concat(),
        openings: openings.iter().map(opening).collect(),
        penetrations,
        boards,
        revision: 0,
    })
}

fn boards(
    store: &Store,
    terms: &Terms<'_>,
    wall: &Wall,
    (blocks, openings): (&[Rectangle], &[(Id, Opening)]),
) -> Kept<Vec<BoardLine>> {
    let line = |facts: &Facts| {
        let bottom = facts.length("bottom")?;
        let x = Span { from: facts.length("from")?, to: facts.length("to")? };
        let y = Span { from: bottom, to: bottom + facts.length("height")? };
        let at = Rectangle::of(x, y);
        let course = facts.whole("course")?;
        // A board that ends at a side that leans is bevelled there, not notched.
        let round = |opening: &Opening| {
            let across = opening.narrowest(y.from, y.to);
            Rectangle::of(across, Span { from: opening.bottom, to: opening.top }).meets(&at)
        };
        let notched = blocks.iter().any(|block| block.meets(&at)) || openings.iter().any(|(_, opening)| round(opening));
        let state = facts.text("state").unwrap_or("planned");
        let args = [
            ("course", course.into()),
            ("state", state.into()),
            ("notched", if notched { "yes" } else { "no" }.into()),
        ];
        Some(BoardLine {
            board: facts.id().to_string(),
            course,
            length: facts.reading(terms, "length")?,
            notched,
            at,
            state: state.to_owned(),
            said: terms.phrase(key("frame-board"), &args),
        })
    };
    let mut boards: Vec<BoardLine> = Facts::children(store, wall.id(), kinds::BOARD)?.iter().filter_map(line).collect();
    boards.sort_by(|a, b| (a.course, a.at.left, &a.board).cmp(&(b.course, b.at.left, &b.board)));
    Ok(boards)
}

/// Where the bottom edge of the siding stands too near to ground, paving, a roof or a deck.
fn clearances(store: &Store, terms: &Terms<'_>, job: &Job, wall: &Wall, outline: &Outline) -> Kept<Vec<Note>> {
    let mut notes = Vec::new();
    for facts in Facts::children(store, wall.id(), kinds::ABUTMENT)? {
        let (Some(what), Some(from), Some(width), Some(surface)) =
            (facts.text("what"), facts.length("from-left"), facts.length("width"), facts.length("top"))
        else {
            continue;
        };
        let rule = match what {
            "paving" => keys::CLEARANCE_GROUND_PAVED,
            "roof" | "deck" => keys::CLEARANCE_ROOF,
            _ => keys::CLEARANCE_GROUND,
        };
        // Over a roof or a deck the siding ends above it; over ground at the base line, or its lowest step there.
        // The base line runs to the right; the edges that run back to the left are those of the top.
        let under = |(a, b): &(Point, Point)| a.y == b.y && a.x < from + width && b.x > from;
        let base = outline.sides().filter(under);
        let edge = base.map(|(a, _)| a.y).min().unwrap_or_default();
        let clearance = job.rules.get_length(rule)?;
        if let Some(short) = too_near(edge, surface, clearance) {
            let args = [
                ("what", terms.phrase(&format!("wall-abutment-{what}"), &[]).into()),
                ("clearance", terms.shown(clearance).into()),
                ("short", terms.shown(short).into()),
            ];
            notes.push(Note { code: "too-near".to_owned(), text: terms.phrase(key("wall-too-near"), &args) });
        }
    }
    Ok(notes)
}

/// A strip thinner than this under a sill or over a head looks like a fault (common practice, no source).
const THIN: Length = Length::from_inches_64(2, 0);

fn notes(terms: &Terms<'_>, courses: &[CourseLine], openings: &[(Id, Opening)], outline: &Outline) -> Vec<Note> {
    let mut notes = Vec::new();
    if courses.is_empty() {
        notes.push(Note { code: "pole-missing".to_owned(), text: terms.phrase(key("wall-pole-missing"), &[]) });
    }
    let lines = || courses.iter().map(|course| course.bottom).chain([outline.top()]);
    for (_, opening) in openings {
        // Under a sill the strip runs from the line below up to it; over a head from it up to the next line.
        let below = lines().filter(|line| *line < opening.bottom).max().map(|line| opening.bottom - line);
        let above = lines().filter(|line| *line > opening.top).min().map(|line| line - opening.top);
        let name = terms.phrase(&format!("wall-opening-{}", opening.kind.code()), &[]);
        let mut thin = |code: &str, text: &str, strip: Option<Length>| {
            if let Some(strip) = strip.filter(|strip| !courses.is_empty() && *strip < THIN) {
                let args = [("what", name.as_str().into()), ("strip", terms.shown(strip).into())];
                notes.push(Note { code: code.to_owned(), text: terms.phrase(text, &args) });
            }
        };
        thin("thin-under-sill", key("wall-thin-under-sill"), below.filter(|_| opening.bottom.is_positive()));
        thin("thin-over-head", key("wall-thin-over-head"), above);
    }
    notes
}
