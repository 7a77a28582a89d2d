//! Where to put the tape for a question: a plain wall, or a board, with the one line that is asked for in chalk.

use crate::phrases::{Phrases, key};

use super::clip::Dp;
use super::dimension;
use super::page::{MARGIN, Page, base, row};
use super::role::{Dash, Role};
use super::sheet::{Area, HEAVY, PLAIN, Sheet, THIN};
use super::stroke::{Anchor, Stroke};

/// A question's picture: what it stands on, and the line from where the tape is hooked to where it is read.
#[derive(Clone, Debug, PartialEq, serde::Serialize)]
pub(crate) struct TapePlace {
    scene: Scene,
    /// Where the tape is hooked, in hundredths of the picture's width and height, from the left and from below.
    hook: At,
    /// Where it is read.
    read: At,
    /// Hook, read.
    words: [String; 2],
    title: String,
}

/// What stands round the line; no wall in particular.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
enum Scene {
    /// A wall with level ends.
    Wall,
    /// With a gable.
    Gable,
    /// With corner trim.
    Trim,
    /// With a pole beside it, and the datum.
    Pole,
    /// With studs.
    Studs,
    /// With a step in its base line.
    Step,
    /// With a window.
    Window,
    /// With ground, a roof or a deck before it.
    Ground,
    /// With something that goes through it.
    Through,
    /// A board.
    Board,
    /// A board over a block.
    Notch,
}

/// The wall's sides in hundredths: left, right, bottom, top.
const LEFT: u8 = 12;
const RIGHT: u8 = 88;
const BOTTOM: u8 = 16;
const TOP: u8 = 84;
const MIDDLE: u8 = 50;

/// A point in hundredths of the picture, from the left and from below.
type At = (u8, u8);

/// Every picture by its question's key: what stands there, hook, read.
const PLACES: &[(&str, Scene, At, At)] = &[
    ("ask-wall-width", Scene::Wall, (LEFT, BOTTOM), (RIGHT, BOTTOM)),
    ("ask-wall-left-height", Scene::Wall, (LEFT, BOTTOM), (LEFT, TOP)),
    ("ask-wall-right-height", Scene::Wall, (RIGHT, BOTTOM), (RIGHT, TOP)),
    ("ask-wall-base", Scene::Pole, (6, 4), (6, BOTTOM)),
    ("ask-wall-first-stud", Scene::Studs, (LEFT, MIDDLE), (24, MIDDLE)),
    ("ask-wall-stud-spacing", Scene::Studs, (42, MIDDLE), (60, MIDDLE)),
    ("ask-wall-trim-left", Scene::Trim, (LEFT, MIDDLE), (20, MIDDLE)),
    ("ask-wall-trim-right", Scene::Trim, (80, MIDDLE), (RIGHT, MIDDLE)),
    ("ask-wall-diagonal-up", Scene::Wall, (LEFT, BOTTOM), (RIGHT, TOP)),
    ("ask-wall-diagonal-down", Scene::Wall, (LEFT, TOP), (RIGHT, BOTTOM)),
    ("ask-wall-peak-from-left", Scene::Gable, (LEFT, BOTTOM), (MIDDLE, BOTTOM)),
    ("ask-wall-peak-height", Scene::Gable, (MIDDLE, BOTTOM), (MIDDLE, 94)),
    ("ask-step-from-left", Scene::Step, (LEFT, BOTTOM), (60, BOTTOM)),
    ("ask-step-rise", Scene::Step, (60, BOTTOM), (60, 36)),
    ("ask-stud-at", Scene::Studs, (LEFT, MIDDLE), (60, MIDDLE)),
    ("ask-opening-from-left", Scene::Window, (LEFT, 38), (44, 38)),
    ("ask-opening-width", Scene::Window, (44, 38), (70, 38)),
    ("ask-opening-from-base", Scene::Window, (57, BOTTOM), (57, 38)),
    ("ask-opening-height", Scene::Window, (57, 38), (57, 70)),
    ("ask-opening-head-from-left", Scene::Window, (LEFT, 70), (44, 70)),
    ("ask-opening-head-width", Scene::Window, (44, 70), (70, 70)),
    ("ask-abutment-from-left", Scene::Ground, (LEFT, BOTTOM), (44, BOTTOM)),
    ("ask-abutment-width", Scene::Ground, (44, 8), (78, 8)),
    ("ask-abutment-top", Scene::Ground, (61, BOTTOM), (61, 8)),
    ("ask-abutment-rise", Scene::Ground, (78, 8), (78, 20)),
    ("ask-penetration-from-left", Scene::Through, (LEFT, MIDDLE), (57, MIDDLE)),
    ("ask-penetration-from-base", Scene::Through, (57, BOTTOM), (57, MIDDLE)),
    ("ask-penetration-width", Scene::Through, (50, MIDDLE), (64, MIDDLE)),
    ("ask-penetration-height", Scene::Through, (57, 38), (57, 62)),
    ("ask-board-length", Scene::Board, (4, MIDDLE), (96, MIDDLE)),
    ("ask-board-height", Scene::Board, (MIDDLE, 24), (MIDDLE, 76)),
    ("ask-notch-left", Scene::Notch, (4, 24), (46, 24)),
    ("ask-notch-right", Scene::Notch, (4, 24), (72, 24)),
    ("ask-notch-bottom-left", Scene::Notch, (46, 24), (46, 40)),
    ("ask-notch-bottom-right", Scene::Notch, (72, 24), (72, 40)),
    ("ask-notch-top-left", Scene::Notch, (46, 24), (46, 92)),
    ("ask-notch-top-right", Scene::Notch, (72, 24), (72, 92)),
];

/// Whether there is a picture for a question.
pub(crate) fn has_tape_place(question: &str) -> bool {
    PLACES.iter().any(|(known, ..)| *known == question)
}

/// The keys of every question that has a picture.
#[cfg(test)]
pub(super) fn questions() -> impl Iterator<Item = &'static str> {
    PLACES.iter().map(|(question, ..)| *question)
}

impl TapePlace {
    /// The picture for a question, by the key of its title.
    pub(crate) fn of(phrases: &Phrases, question: &str) -> Option<Self> {
        let (known, scene, hook, read) = PLACES.iter().find(|(known, ..)| *known == question)?;
        let words = [key("drawing-hook"), key("drawing-read")].map(|word| phrases.phrase(word, &[]));
        Some(Self { scene: *scene, hook: *hook, read: *read, words, title: phrases.phrase(known, &[]) })
    }

    /// What a screen reader says of it.
    pub(crate) fn spoken(&self, phrases: &Phrases) -> String {
        phrases.phrase("drawing-tape-spoken", &[("question", (&self.title).into())])
    }

    /// Draws it; also how high it came out.
    pub(crate) fn draw(&self, page: &Page) -> (Vec<Stroke>, f64) {
        let height = page.height.min(page.width * 0.5);
        let mut sheet = Sheet::new(page.width, height);
        let inner = (page.inner(), height - 2.0 * MARGIN);
        let at = |(x, y): At| -> Dp {
            (MARGIN + inner.0 * f64::from(x) / 100.0, MARGIN + inner.1 * (1.0 - f64::from(y) / 100.0))
        };
        let corners = |left, right, bottom, top| [(left, top), (right, top), (right, bottom), (left, bottom)].map(at);
        self.scene.draw(&mut sheet, &at, &corners);
        let (hook, read) = (at(self.hook), at(self.read));
        dimension::tape(&mut sheet, hook, read);
        let edges = self.scene.stands_out().map(|(left, right, bottom, top)| corners(left, right, bottom, top));
        self.name(&mut sheet, page, (hook, read), edges);
        (sheet.into_strokes(), height)
    }

    /// "Hook" and "read" beside the ends, wherever there is room; rather not over the edges of what stands out.
    fn name(&self, sheet: &mut Sheet, page: &Page, (hook, read): (Dp, Dp), edges: Option<[Dp; 4]>) {
        let line = row(page.small);
        for (word, (x, y)) in self.words.iter().zip([hook, read]) {
            let label = page.small(word, Role::Chalk);
            let (above, below) = (y - 8.0 - line + base(page.small), y + 8.0 + base(page.small));
            let beside = y - line / 2.0 + base(page.small);
            let (start, end) = ((Anchor::Start, x + 10.0), (Anchor::End, x - 10.0));
            let near = [above, below].map(|y| ((Anchor::Middle, x), y));
            let aside = [beside, above, below, above - line, below + line].map(|y| [(start, y), (end, y)]);
            let places = near.into_iter().chain(aside.into_iter().flatten()).map(|((anchor, x), y)| (anchor, (x, y)));
            // Never over the tape itself.
            let clear = |anchor: Anchor, at: Dp| !crosses(&sheet.room(&label, anchor, at), hook, read);
            let mut free: Vec<(Anchor, Dp)> = places.filter(|(anchor, at)| clear(*anchor, *at)).collect();
            free.sort_by_key(|(anchor, at)| {
                let room = sheet.room(&label, *anchor, *at);
                edges.is_some_and(|[a, b, c, d]| {
                    [(a, b), (b, c), (c, d), (d, a)].iter().any(|(from, to)| crosses(&room, *from, *to))
                })
            });
            for (anchor, at) in free {
                if sheet.text_on(Role::Ground, &label, anchor, at) {
                    break;
                }
            }
        }
    }
}

impl Scene {
    fn draw(self, sheet: &mut Sheet, at: &dyn Fn(At) -> Dp, corners: &dyn Fn(u8, u8, u8, u8) -> [Dp; 4]) {
        let ink = |sheet: &mut Sheet, points: &[At]| {
            let points: Vec<Dp> = points.iter().copied().map(at).collect();
            sheet.line(Role::Ink, Dash::Solid, PLAIN, &points);
        };
        let wall = corners(LEFT, RIGHT, BOTTOM, TOP);
        match self {
            Self::Board | Self::Notch => {
                let board = corners(4, 96, 24, 76);
                sheet.fill(Role::Board, &board);
                sheet.outline(Role::Ink, Dash::Solid, PLAIN, &board);
            }
            Self::Gable | Self::Step => {
                let round: &[At] = if self == Self::Gable {
                    &[(LEFT, BOTTOM), (RIGHT, BOTTOM), (RIGHT, 56), (MIDDLE, 94), (LEFT, 56)]
                } else {
                    &[(LEFT, BOTTOM), (60, BOTTOM), (60, 36), (RIGHT, 36), (RIGHT, TOP), (LEFT, TOP)]
                };
                let round: Vec<Dp> = round.iter().copied().map(at).collect();
                sheet.fill(Role::Board, &round);
                sheet.outline(Role::Ink, Dash::Solid, PLAIN, &round);
            }
            _ => {
                sheet.fill(Role::Board, &wall);
                sheet.outline(Role::Ink, Dash::Solid, PLAIN, &wall);
            }
        }
        match self {
            Self::Trim => {
                for x in [20, 80] {
                    ink(sheet, &[(x, BOTTOM), (x, TOP)]);
                }
            }
            Self::Studs => {
                for x in [24, 42, 60, 78] {
                    sheet.line(Role::Ink, Dash::Dashed, THIN, &[at((x, BOTTOM)), at((x, TOP))]);
                }
            }
            Self::Pole => {
                sheet.outline(Role::Ink, Dash::Solid, PLAIN, &corners(2, 6, 4, 96));
                sheet.line(Role::Ink, Dash::Dashed, THIN, &[at((2, 4)), at((98, 4))]);
                sheet.line(Role::Ink, Dash::Dashed, THIN, &[at((6, BOTTOM)), at((LEFT, BOTTOM))]);
            }
            Self::Wall
            | Self::Gable
            | Self::Step
            | Self::Board
            | Self::Window
            | Self::Ground
            | Self::Through
            | Self::Notch => {}
        }
        let Some((left, right, bottom, top)) = self.stands_out() else { return };
        let round = corners(left, right, bottom, top);
        if self == Self::Ground {
            sheet.hatch(Role::Ink, 7.0, &round);
        } else {
            sheet.fill(Role::Ground, &round);
        }
        let heavy = matches!(self, Self::Through | Self::Notch);
        sheet.outline(Role::Ink, Dash::Solid, if heavy { HEAVY } else { PLAIN }, &round);
    }

    /// What stands on the wall or the board, as left, right, bottom and top.
    const fn stands_out(self) -> Option<(u8, u8, u8, u8)> {
        match self {
            Self::Window => Some((44, 70, 38, 70)),
            Self::Ground => Some((44, 78, 0, 8)),
            Self::Through => Some((50, 64, 38, 62)),
            Self::Notch => Some((46, 72, 40, 92)),
            Self::Wall | Self::Gable | Self::Step | Self::Board | Self::Trim | Self::Studs | Self::Pole => None,
        }
    }
}

/// Whether a straight line comes through a rectangle.
fn crosses(area: &Area, from: Dp, to: Dp) -> bool {
    const PARTS: i32 = 64;
    (0..=PARTS).any(|n| {
        let share = f64::from(n) / f64::from(PARTS);
        let (x, y) = (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
        (area.left - 2.0..=area.right + 2.0).contains(&x) && (area.top - 2.0..=area.bottom + 2.0).contains(&y)
    })
}
