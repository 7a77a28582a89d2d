//! A wall to scale: courses, studs, windows and doors, boards by their state, and what goes through it.

mod legend;
mod letters;

pub(crate) use letters::letter;

use crate::phrases::{Phrases, key};
use crate::views::{Corner, Place, Rectangle, WallView};

use super::clip::Dp;
use super::dimension::{self, Begins};
use super::page::{MARGIN, Page, base, row};
use super::role::{Dash, Role};
use super::sheet::{Area, PLAIN, Sheet, THIN};
use super::stroke::{Anchor, Stroke};

/// What is drawn of a wall.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(crate) struct Elevation {
    pub(super) name: String,
    pub(super) width: String,
    pub(super) outline: Vec<Corner>,
    pub(super) courses: Vec<i64>,
    pub(super) studs: Vec<i64>,
    pub(super) openings: Vec<DrawnOpening>,
    pub(super) penetrations: Vec<Through>,
    pub(super) boards: Vec<Up>,
    /// Planned, cut, up.
    pub(super) words: [String; 3],
}

/// A window or a door.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct DrawnOpening {
    pub(super) name: String,
    pub(super) at: Rectangle,
    /// Round it, from the left end of its head: its sides may lean.
    pub(super) corners: Vec<Corner>,
}

/// What goes through the wall.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct Through {
    pub(super) id: String,
    pub(super) name: String,
    pub(super) at: Rectangle,
}

/// A board of the wall.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct Up {
    pub(super) id: String,
    pub(super) course: i64,
    pub(super) length: String,
    pub(super) at: Rectangle,
    /// Its outlines and its holes.
    pub(super) rings: Vec<Vec<Corner>>,
    pub(super) state: String,
}

/// A board drawn small: its box, its outlines and its holes, and its state.
pub(crate) type Small<'a> = (Rectangle, Vec<Vec<Corner>>, &'a str);

/// What a tap hits.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Hit {
    pub(crate) area: [f32; 4],
    pub(crate) place: Place,
    pub(crate) spoken: String,
}

/// Where the wall lies on the sheet.
struct WallScale {
    left: f64,
    bottom: f64,
    /// Dp in a nanometre.
    dp: f64,
    /// The wall's leftmost and lowest nanometre.
    from: Dp,
}

impl WallScale {
    fn at(&self, (x, y): (i64, i64)) -> Dp {
        (self.left + (x as f64 - self.from.0) * self.dp, self.bottom - (y as f64 - self.from.1) * self.dp)
    }

    fn area(&self, at: &Rectangle) -> Area {
        let ((left, bottom), (right, top)) = (self.at((at.left, at.bottom)), self.at((at.right, at.top)));
        Area { left, top, right, bottom }
    }
}

/// The widest gap between two boards that meet at a joint, in nanometres: half an inch.
const JOINT_MOST: i64 = 12_700_000;

/// What a finger in a glove hits, in dp.
const TOUCH: f64 = 64.0;

impl Elevation {
    /// What is drawn of a wall, from what its view holds.
    pub(crate) fn of(phrases: &Phrases, view: &WallView) -> Self {
        let word = |key: &str| phrases.phrase(key, &[]);
        Self {
            name: view.name.clone(),
            width: view.width.text.clone(),
            outline: view.outline.clone(),
            courses: view.courses.clone(),
            studs: view.studs.clone(),
            openings: (view.openings.iter())
                .map(|line| DrawnOpening { name: line.name.clone(), at: line.at, corners: line.corners.clone() })
                .collect(),
            penetrations: (view.penetrations.iter())
                .map(|line| Through { id: line.penetration.clone(), name: line.name.clone(), at: line.at })
                .collect(),
            boards: (view.boards.iter())
                .map(|board| Up {
                    id: board.board.clone(),
                    course: board.course,
                    length: board.length.text.clone(),
                    at: board.at,
                    rings: board.shapes.iter().flat_map(|shape| shape.on_wall(board.rise)).collect(),
                    state: board.state.clone(),
                })
                .collect(),
            words: [key("drawing-planned"), key("drawing-cut"), key("drawing-up")].map(word),
        }
    }

    /// A wall without its numbers and names, to be drawn small: outline, openings with their corners, what goes through,
    /// and the boards by their state.
    pub(crate) fn plain(
        name: &str,
        outline: Vec<Corner>,
        openings: Vec<(Rectangle, Vec<Corner>)>,
        penetrations: Vec<Rectangle>,
        boards: Vec<Small<'_>>,
    ) -> Self {
        let none = String::new;
        let openings = openings.into_iter().map(|(at, corners)| DrawnOpening { name: none(), at, corners });
        let penetrations = penetrations.into_iter().map(|at| Through { id: none(), name: none(), at });
        let board = |(at, rings, state): Small<'_>| Up {
            id: none(),
            course: 0,
            length: none(),
            at,
            rings,
            state: state.to_owned(),
        };
        Self {
            name: name.to_owned(),
            width: none(),
            outline,
            courses: Vec::new(),
            studs: Vec::new(),
            openings: openings.collect(),
            penetrations: penetrations.collect(),
            boards: boards.into_iter().map(board).collect(),
            words: [none(), none(), none()],
        }
    }

    /// What a screen reader says of the wall drawn small.
    pub(crate) fn spoken_small(&self, phrases: &Phrases) -> String {
        let up = self.boards.iter().filter(|board| board.state == "fixed").count();
        let args = [("name", (&self.name).into()), ("boards", self.boards.len().into()), ("up", up.into())];
        phrases.phrase("drawing-wall-small-spoken", &args)
    }

    /// Draws the wall small, without a text; also how high it came out. Boards look as on the large drawing.
    pub(crate) fn draw_small(&self, page: &Page) -> (Vec<Stroke>, f64) {
        const EDGE: f64 = 2.0;
        let ((left, right), (bottom, top)) = self.bounds();
        let (width, tall) = ((right - left).max(1.0), (top - bottom).max(1.0));
        let dp = ((page.width - 2.0 * EDGE) / width).min((page.height - 2.0 * EDGE) / tall);
        let height = tall * dp + 2.0 * EDGE;
        let scale = WallScale { left: EDGE, bottom: height - EDGE, dp, from: (left, bottom) };
        let mut sheet = Sheet::new(page.width, height);
        self.boards(&mut sheet, &scale, |board| !is_there(board));
        self.boards(&mut sheet, &scale, is_there);
        self.openings(&mut sheet, &scale);
        for through in &self.penetrations {
            let corners = scale.area(&through.at).corners();
            sheet.fill(Role::Ground, &corners);
            sheet.outline(Role::Chalk, Dash::Solid, PLAIN, &corners);
        }
        let outline: Vec<Dp> = self.outline.iter().map(|corner| scale.at((corner.x, corner.y))).collect();
        sheet.outline(Role::Ink, Dash::Solid, PLAIN, &outline);
        (sheet.into_strokes(), height)
    }

    /// What a screen reader says of it.
    pub(crate) fn spoken(&self, phrases: &Phrases) -> String {
        let up = self.boards.iter().filter(|board| board.state == "fixed").count();
        let args = [
            ("name", (&self.name).into()),
            ("width", (&self.width).into()),
            ("boards", self.boards.len().into()),
            ("up", up.into()),
            ("penetrations", self.penetrations.len().into()),
        ];
        phrases.phrase("drawing-wall-spoken", &args)
    }

    fn bounds(&self) -> (Dp, Dp) {
        let ends = |of: fn(&Corner) -> i64| {
            let values = || self.outline.iter().map(of);
            (values().min().unwrap_or(0) as f64, values().max().unwrap_or(0) as f64)
        };
        (ends(|corner| corner.x), ends(|corner| corner.y))
    }

    /// Draws the wall; also how high it came out and what a tap hits, the topmost first.
    pub(crate) fn draw(&self, page: &Page, phrases: &Phrases) -> (Vec<Stroke>, f64, Vec<Hit>) {
        let ((left, right), (bottom, top)) = self.bounds();
        let (width, tall) = ((right - left).max(1.0), (top - bottom).max(1.0));
        let numbers = self.gutter(page);
        let room = page.inner() - numbers;
        let measure = row(page.label) + 6.0;
        let legend = legend::rows(page, &self.words, &self.penetrations);
        let legend_high = legend.len() as f64 * row(page.small);
        // In a frame that is too low for the legend the wall comes first.
        let free = page.height - 2.0 * MARGIN - measure;
        let legend_shown = free - legend_high >= 60.0;
        let free = if legend_shown { free - legend_high } else { free };
        let dp = (room / width).min(free.max(8.0) / tall);
        let wall_high = tall * dp;
        let below = if legend_shown { legend_high } else { 0.0 };
        let height = (2.0 * MARGIN + wall_high + measure + below).min(page.height);
        let scale = WallScale {
            left: MARGIN + numbers + (room - width * dp) / 2.0,
            bottom: MARGIN + wall_high,
            dp,
            from: (left, bottom),
        };
        let mut sheet = Sheet::new(page.width, height);
        self.lines(&mut sheet, &scale);
        self.boards(&mut sheet, &scale, |board| !is_there(board));
        self.studs(&mut sheet, &scale);
        self.boards(&mut sheet, &scale, is_there);
        let joints = self.joints(&scale);
        for joint in &joints {
            sheet.line(Role::Ink, Dash::Solid, PLAIN, joint);
        }
        self.openings(&mut sheet, &scale);
        let outline: Vec<Dp> = self.outline.iter().map(|corner| scale.at((corner.x, corner.y))).collect();
        sheet.outline(Role::Ink, Dash::Solid, PLAIN, &outline);
        self.measure(&mut sheet, page, &scale, (left, right));
        letters::draw(&mut sheet, page, &scale, &self.penetrations, &joints);
        self.texts(&mut sheet, page, &scale);
        if legend_shown {
            legend::draw(&mut sheet, page, &legend, scale.bottom + measure);
        }
        let hits = self.hits(&scale, phrases, (page.width, height));
        (sheet.into_strokes(), height, hits)
    }

    /// Studs, where they run over the wall.
    fn studs(&self, sheet: &mut Sheet, scale: &WallScale) {
        for stud in &self.studs {
            for (from, to) in self.spans(*stud as f64, |corner| (corner.x as f64, corner.y as f64)) {
                let line = [from, to].map(|y| scale.at((*stud, y as i64)));
                sheet.line(Role::Planned, Dash::Dashed, THIN, &line);
            }
        }
    }

    /// Course lines, where they run over the wall.
    fn lines(&self, sheet: &mut Sheet, scale: &WallScale) {
        for course in &self.courses {
            // A line on the base line itself is the outline's.
            for (from, to) in self.spans(*course as f64 + 1.0, |corner| (corner.y as f64, corner.x as f64)) {
                let line = [from, to].map(|x| scale.at((x as i64, *course)));
                sheet.line(Role::Planned, Dash::Solid, THIN, &line);
            }
        }
    }

    /// Where a straight line at `at` crosses the wall: `of` gives the coordinate across the line and the one along it.
    fn spans(&self, at: f64, of: fn(&Corner) -> Dp) -> Vec<Dp> {
        let corners = || self.outline.iter().map(of);
        let mut crossed: Vec<f64> = corners()
            .zip(corners().cycle().skip(1))
            .filter(|(a, b)| (a.0 <= at) != (b.0 <= at))
            .map(|(a, b)| a.1 + (b.1 - a.1) * (at - a.0) / (b.0 - a.0))
            .collect();
        crossed.sort_by(f64::total_cmp);
        crossed.chunks_exact(2).filter_map(|pair| Some((*pair.first()?, *pair.last()?))).collect()
    }

    /// The boards from the lowest up, as each laps over the one below: planned dotted, cut dashed, up with an unbroken line.
    fn boards(&self, sheet: &mut Sheet, scale: &WallScale, of: fn(&Up) -> bool) {
        for board in self.boards.iter().filter(|board| of(board)) {
            let (fill, role, pattern) = look(&board.state);
            for ring in &board.rings {
                let corners: Vec<Dp> = ring.iter().map(|corner| scale.at((corner.x, corner.y))).collect();
                // A hole runs the other way round.
                let fill = if turns_left(ring) { fill } else { Role::Ground };
                sheet.fill(fill, &corners);
                sheet.outline(role, pattern, THIN, &corners);
            }
        }
    }

    /// The joints between boards of a course: whole lines from edge to edge, so that nobody takes them for studs.
    fn joints(&self, scale: &WallScale) -> Vec<[Dp; 2]> {
        let mut joints = Vec::new();
        for (left, right) in self.boards.iter().zip(self.boards.iter().skip(1)) {
            let open = right.at.left - left.at.right;
            if left.course != right.course || !(0..=JOINT_MOST).contains(&open) {
                continue;
            }
            let x = left.at.right + open / 2;
            let bottom = left.at.bottom.max(right.at.bottom);
            // As far as the next course leaves it to be seen.
            let next = self.courses.iter().copied().filter(|line| *line > bottom).min();
            let top = left.at.top.min(right.at.top).min(next.unwrap_or(i64::MAX));
            // Where a window or a block stands between them it is no joint.
            let parted = |at: &Rectangle| {
                at.left < right.at.left && left.at.right < at.right && at.top > bottom && at.bottom < top
            };
            let openings = self.openings.iter().map(|opening| &opening.at);
            if bottom < top && !openings.chain(self.penetrations.iter().map(|through| &through.at)).any(parted) {
                joints.push([scale.at((x, bottom)), scale.at((x, top))]);
            }
        }
        joints
    }

    fn openings(&self, sheet: &mut Sheet, scale: &WallScale) {
        for opening in &self.openings {
            let corners: Vec<Dp> = opening.corners.iter().map(|corner| scale.at((corner.x, corner.y))).collect();
            sheet.fill(Role::Ground, &corners);
            if let [a, b, c, d] = corners[..] {
                sheet.line(Role::Planned, Dash::Solid, THIN, &[a, c]);
                sheet.line(Role::Planned, Dash::Solid, THIN, &[b, d]);
            }
            sheet.outline(Role::Ink, Dash::Solid, PLAIN, &corners);
        }
    }

    /// The names of openings and the lengths of boards, where they have room.
    fn texts(&self, sheet: &mut Sheet, page: &Page, scale: &WallScale) {
        let line = row(page.small);
        for DrawnOpening { name, at, .. } in &self.openings {
            let area = scale.area(at);
            let label = page.small(name, Role::Ink);
            if label.width() + 8.0 <= area.width() && line <= area.height() {
                let at = ((area.left + area.right) / 2.0, (area.top + area.bottom - line) / 2.0 + base(page.small));
                sheet.text_on(Role::Ground, &label, Anchor::Middle, at);
            }
        }
        for board in &self.boards {
            let area = scale.area(&board.at);
            let next = |other: &&Up| {
                other.at.bottom > board.at.bottom && other.at.left < board.at.right && board.at.left < other.at.right
            };
            let shown = self.boards.iter().filter(next).map(|other| other.at.bottom).min().unwrap_or(board.at.top);
            let shown = (shown.min(board.at.top) - board.at.bottom) as f64 * scale.dp;
            let label = page.small(&board.length, Role::Ink);
            if label.width() + 12.0 <= area.width() && line <= shown {
                let at = ((area.left + area.right) / 2.0, area.bottom - (shown + line) / 2.0 + base(page.small));
                let room = sheet.room(&label, Anchor::Middle, at);
                let blocked = self
                    .openings
                    .iter()
                    .map(|opening| &opening.at)
                    .chain(self.penetrations.iter().map(|through| &through.at));
                if !blocked.map(|at| scale.area(at)).any(|other| other.meets(&room)) {
                    sheet.text(&label, Anchor::Middle, at);
                }
            }
        }
    }

    /// Every how many courses a number stands, so that the numbers have room: from the pole up.
    fn gutter(&self, page: &Page) -> f64 {
        let widest = self.boards.iter().map(|board| page.small(&board.course.to_string(), Role::Ink).width());
        widest.fold(0.0, f64::max) + if self.boards.is_empty() { 0.0 } else { 6.0 }
    }

    /// The wall's width from its left corner, and the numbers of its courses.
    fn measure(&self, sheet: &mut Sheet, page: &Page, scale: &WallScale, (left, right): Dp) {
        let ends = (scale.at((left as i64, 0)).0, scale.at((right as i64, 0)).0);
        let y = scale.bottom + 4.0 + row(page.label) / 2.0;
        for x in [ends.0, ends.1] {
            sheet.line(Role::Chalk, Dash::Solid, THIN, &[(x, scale.bottom), (x, y + 6.0)]);
        }
        dimension::across(sheet, ends, y, Begins::Hook);
        let label = page.label(&self.width, Role::Ink);
        let half = label.width() / 2.0;
        let middle = ((ends.0 + ends.1) / 2.0).min(page.width - MARGIN - half).max(MARGIN + half);
        sheet.text_on(Role::Ground, &label, Anchor::Middle, (middle, scale.bottom + 4.0 + base(page.label)));
        let mut numbered: Vec<(i64, i64)> = self.boards.iter().map(|board| (board.course, board.at.bottom)).collect();
        numbered.sort_unstable();
        numbered.dedup_by_key(|(course, _)| *course);
        let least = numbered.iter().zip(numbered.iter().skip(1)).map(|(a, b)| b.1 - a.1).min().unwrap_or(0) as f64;
        let step = [1, 2, 5, 10, 20].into_iter().find(|step| least * *step as f64 * scale.dp >= row(page.small));
        for (course, bottom) in numbered.iter().filter(|(course, _)| *course == 1 || course % step.unwrap_or(50) == 0) {
            let text = course.to_string();
            let (_, y) = scale.at((0, *bottom));
            sheet.text(&page.small(&text, Role::Ink), Anchor::End, (ends.0 - 5.0, y));
        }
    }

    /// Penetrations first, as large as a finger in a glove; then the boards, the uppermost first.
    fn hits(&self, scale: &WallScale, phrases: &Phrases, size: Dp) -> Vec<Hit> {
        let through = self.penetrations.iter().map(|through| {
            let area = scale.area(&through.at);
            let (x, y) = ((area.left + area.right) / 2.0, (area.top + area.bottom) / 2.0);
            let grown = |least: f64, length: f64| least.max(length) / 2.0;
            let (w, h) = (grown(TOUCH, area.width()), grown(TOUCH, area.height()));
            Hit {
                area: within(&Area { left: x - w, top: y - h, right: x + w, bottom: y + h }, size),
                place: Place::Penetration { penetration: through.id.clone() },
                spoken: through.name.clone(),
            }
        });
        let boards = self.boards.iter().rev().map(|board| {
            let args = [("course", board.course.into()), ("length", (&board.length).into())];
            Hit {
                area: within(&scale.area(&board.at), size),
                place: Place::Board { board: board.id.clone() },
                spoken: phrases.phrase("drawing-wall-board", &args),
            }
        });
        through.chain(boards).collect()
    }
}

/// Whether a ring runs counter-clockwise.
fn turns_left(ring: &[Corner]) -> bool {
    let next = ring.iter().cycle().skip(1);
    let wide = |nm: i64| i128::from(nm);
    ring.iter().zip(next).map(|(a, b)| wide(a.x) * wide(b.y) - wide(b.x) * wide(a.y)).sum::<i128>() > 0
}

/// Whether a board is cut or up: it hides the studs behind it.
fn is_there(board: &Up) -> bool {
    matches!(board.state.as_str(), "cut" | "fixed")
}

/// The fill, and the line round it, of a board by its state.
fn look(state: &str) -> (Role, Role, Dash) {
    match state {
        "fixed" => (Role::Board, Role::Ink, Dash::Solid),
        "cut" => (Role::Board, Role::Ink, Dash::Dashed),
        _ => (Role::Ground, Role::Planned, Dash::Dotted),
    }
}

fn within(area: &Area, (width, height): Dp) -> [f32; 4] {
    let (x, y) = (|x: f64| x.max(0.0).min(width) as f32, |y: f64| y.max(0.0).min(height) as f32);
    [x(area.left), y(area.top), x(area.right), y(area.bottom)]
}
