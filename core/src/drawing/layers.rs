//! The layers of a penetration, numbered from the wall outward: seen from outside, and in a section through the pipe.

use crate::flashing::{LayerKind, Pipe, WallLayer, WallLayers, WallRectangle};
use crate::measure::Length;
use crate::phrases::{Phrases, key};
use crate::views::LayerLine;
use crate::wall::Shape;

use super::block::ring;
use super::clip::Dp;
use super::flag;
use super::page::{MARGIN, Page};
use super::role::{Dash, Role};
use super::sheet::{Area, HATCH, HEAVY, PLAIN, Sheet, THIN};
use super::stroke::Stroke;

/// What is drawn of a penetration's layers, in nanometres on the wall and out from it.
#[derive(Clone, Debug, Default, PartialEq, Eq, serde::Serialize)]
pub(crate) struct Layers {
    /// The part of the wall that is drawn: left, right, bottom, top.
    pub(crate) frame: [i64; 4],
    /// The centre of what goes through.
    pub(crate) centre: [i64; 2],
    /// What goes through: its width and height.
    pub(crate) pipe: [i64; 2],
    /// Whether it is round.
    pub(crate) round: bool,
    /// From the wall outward.
    pub(crate) layers: Vec<DrawnLayer>,
}

/// One layer.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(crate) struct DrawnLayer {
    /// Its stable code.
    pub(crate) code: String,
    /// What it is.
    pub(crate) text: String,
    /// Its number in the view's list; zero for what the list does not name.
    pub(crate) number: u32,
    /// Where it lies on the wall: left, right, bottom, top of each piece.
    pub(crate) pieces: Vec<[i64; 4]>,
    /// The width and height of the hole in it, round the pipe.
    pub(crate) hole: Option<[i64; 2]>,
    /// The slit in it: from height to height, straight over the pipe.
    pub(crate) slit: Option<[i64; 2]>,
    /// From the wall to its back at its lower and its upper edge, and its thickness.
    pub(crate) profile: [i64; 3],
    /// Between which heights a bent sheet runs outward, lower and upper.
    pub(crate) bends: Option<[i64; 2]>,
}

/// How much deeper than high the section is drawn, at most.
const DEEPER: f64 = 4.0;
/// How thick a film or a sheet is drawn, in dp.
const FILM: f64 = 3.0;

/// Which way the layers are looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Look {
    Front,
    Section,
}

/// The wall's part on the sheet.
struct SheetScale {
    left: f64,
    bottom: f64,
    across: f64,
    up: f64,
    from: Dp,
}

impl SheetScale {
    fn at(&self, (x, y): Dp) -> Dp {
        (self.left + (x - self.from.0) * self.across, self.bottom - (y - self.from.1) * self.up)
    }

    fn area(&self, [left, right, bottom, top]: [i64; 4]) -> Area {
        let (a, b) = (self.at((left as f64, bottom as f64)), self.at((right as f64, top as f64)));
        Area { left: a.0, top: b.1, right: b.0, bottom: a.1 }
    }
}

impl Layers {
    /// What is drawn of a penetration's layers; `lines` are what its view says of them.
    pub(crate) fn of(phrases: &Phrases, lines: &[LayerLine], layers: &WallLayers, pipe: Pipe) -> Self {
        let area = |area: &WallRectangle| [area.left, area.right, area.bottom, area.top].map(|length| length.nm());
        let said = |kind: LayerKind| match lines.iter().find(|line| line.code == listed(kind.code())) {
            Some(line) => (line.number, line.text.clone()),
            None => (0, phrases.phrase(unsaid(kind), &[])),
        };
        let sizes = |shape: Shape| [shape.width(), shape.height()].map(Length::nm);
        let layer = |layer: &WallLayer| {
            let (number, text) = said(layer.kind);
            DrawnLayer {
                code: layer.kind.code().to_owned(),
                text,
                number,
                pieces: layer.pieces.iter().map(area).collect(),
                hole: layer.hole.map(sizes),
                slit: layer.slit.map(|slit| [slit.from.nm(), slit.to.nm()]),
                profile: [layer.profile.lower, layer.profile.upper, layer.profile.thickness].map(|length| length.nm()),
                bends: layer.profile.bends.map(|(lower, upper)| [lower.nm(), upper.nm()]),
            }
        };
        let all = Self {
            frame: area(&layers.frame),
            centre: [pipe.x, pipe.y].map(Length::nm),
            pipe: sizes(pipe.shape),
            round: matches!(pipe.shape, Shape::Round { .. }),
            layers: layers.layers.iter().map(layer).collect(),
        };
        all.round_the_patch()
    }

    /// Only what lies round the patch and the block: a wall's other courses say nothing of them.
    fn round_the_patch(mut self) -> Self {
        let [left, right, bottom, top] = self.frame;
        let own = |layer: &&DrawnLayer| !matches!(layer.code.as_str(), "base" | "barrier" | "barrier-flap" | "board");
        let pieces = || self.layers.iter().filter(own).flat_map(|layer| &layer.pieces);
        let (Some(low), Some(high)) = (pieces().map(|at| at[2]).min(), pieces().map(|at| at[3]).max()) else {
            return self;
        };
        let air = (high - low) / 3;
        let (low, high) = ((low - air).max(bottom), (high + air).min(top));
        self.frame = [left, right, low, high];
        for layer in &mut self.layers {
            layer.pieces.retain(|[_, _, bottom, top]| *bottom < high && low < *top);
        }
        self.layers.retain(|layer| !layer.pieces.is_empty());
        self
    }

    /// What a screen reader says: the layers in their order.
    pub(crate) fn spoken(&self, phrases: &Phrases) -> String {
        let mut layers: Vec<(u32, &str)> =
            self.layers.iter().map(|layer| (layer.number, layer.text.as_str())).collect();
        layers.sort_by_key(|(number, _)| *number);
        layers.dedup();
        let layers = layers.iter().map(|(_, text)| (*text).to_owned()).collect::<Vec<_>>().join(". ");
        phrases.phrase("drawing-layers-spoken", &[("layers", layers.into())])
    }

    /// Draws the layers with the numbers of the view's list, the one with the code `picked` in chalk; also how high it came
    /// out. Nothing where none can be told.
    pub(crate) fn draw(&self, page: &Page, look: Look, picked: &str) -> (Vec<Stroke>, f64) {
        if self.layers.is_empty() {
            return (Vec::new(), 2.0 * MARGIN);
        }
        let [left, right, bottom, top] = self.frame.map(|nm| nm as f64);
        let (width, tall) = ((right - left).max(1.0), (top - bottom).max(1.0));
        let free = (page.height - 2.0 * MARGIN).max(8.0);
        let figure = free.min(page.inner().max(360.0)).min(520.0);
        let (across, up, from) = match look {
            Look::Front => {
                let dp = (page.inner() / width).min(figure / tall);
                (dp, dp, (left, bottom))
            }
            Look::Section => {
                let up = figure / tall;
                (up * self.deeper(page, up), up, (0.0, bottom))
            }
        };
        let drawn = match look {
            Look::Front => width * across,
            Look::Section => self.depth() * across,
        };
        let high = tall * up;
        let height = (2.0 * MARGIN + high).min(page.height);
        let scale =
            SheetScale { left: ((page.width - drawn) / 2.0).max(MARGIN), bottom: MARGIN + high, across, up, from };
        let mut sheet = Sheet::new(page.width, height);
        match look {
            Look::Front => self.front(&mut sheet, page, &scale, picked),
            Look::Section => self.section(&mut sheet, page, &scale, picked),
        }
        (sheet.into_strokes(), height)
    }

    /// How far the layers stand out from the wall.
    fn depth(&self) -> f64 {
        let out = |layer: &DrawnLayer| {
            let [lower, upper, thickness] = layer.profile;
            lower.max(upper) + thickness
        };
        self.layers.iter().map(out).max().unwrap_or(0).max(1) as f64
    }

    /// How many times deeper than high the section is drawn, so that thin layers come apart.
    fn deeper(&self, page: &Page, up: f64) -> f64 {
        (page.inner() * 0.6 / (self.depth() * up)).clamp(0.1, DEEPER)
    }

    /// From outside: what lies further in is drawn dashed through what covers it.
    fn front(&self, sheet: &mut Sheet, page: &Page, scale: &SheetScale, picked: &str) {
        for layer in &self.layers {
            for piece in &layer.pieces {
                sheet.fill(fill(layer), &self.on_frame(scale, *piece).corners());
            }
            self.outline(sheet, scale, layer, (Role::Ink, Dash::Solid, PLAIN));
            self.hole(sheet, scale, layer);
        }
        // What is hidden, in its order: a sheet under boards is still where it is.
        for layer in self.layers.iter().filter(|layer| is_film(layer)) {
            self.outline(sheet, scale, layer, (Role::Planned, Dash::Dashed, PLAIN));
            if let Some([from, to]) = layer.slit {
                let x = self.centre[0] as f64;
                let slit = [scale.at((x, from as f64)), scale.at((x, to as f64))];
                sheet.line(Role::Chalk, Dash::Solid, HEAVY, &slit);
            }
        }
        for layer in self.layers.iter().filter(|layer| layer.is(picked)) {
            self.outline(sheet, scale, layer, (Role::Chalk, Dash::Solid, HEAVY));
        }
        if self.is_pierced() {
            let pipe = self.round_the_centre(scale, self.pipe);
            sheet.fill(Role::Ground, &pipe);
            sheet.outline(Role::Ink, Dash::Solid, HEAVY, &pipe);
        }
        let mut done: Vec<u32> = Vec::new();
        for (n, layer) in self.layers.iter().enumerate() {
            let is_new = layer.number > 0 && !done.contains(&layer.number);
            let Some(piece) = layer.pieces.first().filter(|_| is_new) else { continue };
            done.push(layer.number);
            // A corner of its own for each, so that the numbers come apart.
            let area = self.on_frame(scale, *piece);
            let x = if n % 2 == 0 { area.left + 4.0 } else { area.right - 4.0 };
            let y = if n % 4 < 2 { area.top + 4.0 } else { area.bottom - 4.0 };
            let spot = Area { left: x - 2.0, top: y - 2.0, right: x + 2.0, bottom: y + 2.0 };
            flag::put(sheet, page, &layer.number.to_string(), &spot, (&[], &[]));
        }
    }

    /// The outline of all that a layer's pieces cover: where two of them meet there is no edge.
    fn outline(
        &self,
        sheet: &mut Sheet,
        scale: &SheetScale,
        layer: &DrawnLayer,
        (role, pattern, pen): (Role, Dash, f64),
    ) {
        if let [piece] = layer.pieces.as_slice() {
            return sheet.outline(role, pattern, pen, &self.on_frame(scale, *piece).corners());
        }
        let pieces: Vec<[i64; 4]> = layer.pieces.iter().map(|piece| self.clipped(*piece)).collect();
        for [from, to] in edges(&pieces) {
            let at = |[x, y]: [i64; 2]| scale.at((x as f64, y as f64));
            sheet.line(role, pattern, pen, &[at(from), at(to)]);
        }
    }

    fn hole(&self, sheet: &mut Sheet, scale: &SheetScale, layer: &DrawnLayer) {
        let Some(hole) = layer.hole.map(|hole| self.round_the_centre(scale, hole)) else { return };
        sheet.fill(Role::Ground, &hole);
        sheet.outline(Role::Chalk, Dash::Solid, PLAIN, &hole);
    }

    /// The outline of what is as wide and high as that, and of the pipe's own shape.
    fn round_the_centre(&self, scale: &SheetScale, [width, height]: [i64; 2]) -> Vec<Dp> {
        let [x, y] = self.centre.map(|nm| nm as f64);
        let (across, up) = (width as f64 / 2.0, height as f64 / 2.0);
        if self.round {
            return ring((x, y), (across, up), true).into_iter().map(|at| scale.at(at)).collect();
        }
        let corners = [(x - across, y - up), (x + across, y - up), (x + across, y + up), (x - across, y + up)];
        corners.into_iter().map(|at| scale.at(at)).collect()
    }

    /// A piece's part within the frame.
    fn on_frame(&self, scale: &SheetScale, piece: [i64; 4]) -> Area {
        scale.area(self.clipped(piece))
    }

    fn clipped(&self, [left, right, bottom, top]: [i64; 4]) -> [i64; 4] {
        let [least_x, most_x, least_y, most_y] = self.frame;
        let (x, y) = (|x: i64| x.clamp(least_x, most_x.max(least_x)), |y: i64| y.clamp(least_y, most_y.max(least_y)));
        [x(left), x(right), y(bottom), y(top)]
    }

    /// Through the middle of the pipe: the wall at the left, each layer as far out as it stands.
    fn section(&self, sheet: &mut Sheet, page: &Page, scale: &SheetScale, picked: &str) {
        let [_, _, bottom, top] = self.frame;
        let (low, high) = (scale.bottom, scale.at((0.0, top as f64)).1);
        let wall = Area { left: (scale.left - 14.0).max(0.0), top: high, right: scale.left, bottom: low };
        sheet.hatch(Role::Planned, HATCH, &wall.corners());
        sheet.line(Role::Ink, Dash::Solid, HEAVY, &[(scale.left, low), (scale.left, high)]);
        let ([_, y], [_, height]) = (self.centre, self.pipe);
        let out = self.depth() as i64;
        let pipe = scale.area([0, out + out / 6, y - height / 2, y + height / 2]);
        if self.is_pierced() {
            sheet.fill(Role::Ground, &pipe.corners());
        }
        let mut numbered: Vec<(u32, Area)> = Vec::new();
        for layer in &self.layers {
            for [from, to] in self.cut(layer) {
                let (from, to) = (from.max(bottom), to.min(top));
                if from >= to {
                    continue;
                }
                let shape = profile(layer, (from, to), scale);
                if is_film(layer) {
                    let pattern = if layer.code.starts_with("barrier") { Dash::Dashed } else { Dash::Solid };
                    let role = if layer.is(picked) { Role::Chalk } else { Role::Ink };
                    sheet.line(role, pattern, FILM, &film(layer, (from, to), scale));
                } else {
                    sheet.fill(fill(layer), &shape);
                    let (role, pen) = if layer.is(picked) { (Role::Chalk, HEAVY) } else { (Role::Ink, PLAIN) };
                    sheet.outline(role, Dash::Solid, pen, &shape);
                }
                let middle = match is_film(layer) {
                    true => middle_of(&film(layer, (from, to), scale)),
                    false => shape.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.0 / 4.0, sum.1 + at.1 / 4.0)),
                };
                if layer.number > 0 && !numbered.iter().any(|(number, _)| *number == layer.number) {
                    let spot = Area {
                        left: middle.0 - 1.0,
                        top: middle.1 - 1.0,
                        right: middle.0 + 1.0,
                        bottom: middle.1 + 1.0,
                    };
                    numbered.push((layer.number, spot));
                }
            }
        }
        let ends = [(pipe.left, pipe.top), (pipe.right, pipe.top), (pipe.right, pipe.bottom), (pipe.left, pipe.bottom)];
        if self.is_pierced() {
            sheet.outline(Role::Ink, Dash::Solid, PLAIN, &ends);
        }
        let drawn = Area { left: scale.left - 4.0, top: high, right: pipe.right + 2.0, bottom: low };
        for (number, spot) in &numbered {
            flag::put(sheet, page, &number.to_string(), spot, (&[], std::slice::from_ref(&drawn)));
        }
        if self.is_pierced() {
            let middle = (pipe.top + pipe.bottom) / 2.0;
            sheet.line(Role::Planned, Dash::Dashed, THIN, &[(scale.left, middle), (pipe.right, middle)]);
        }
    }

    /// Whether something goes through: not through the details that every house has.
    fn is_pierced(&self) -> bool {
        self.pipe.iter().all(|size| *size > 0)
    }

    /// Where the section meets a layer: its heights over the middle of the pipe, less its hole.
    fn cut(&self, layer: &DrawnLayer) -> Vec<[i64; 2]> {
        let ([x, y], [_, height]) = (self.centre, self.pipe);
        let hole = layer.hole.map_or(if is_film(layer) { 0 } else { height }, |[_, height]| height) / 2;
        let through = layer.pieces.iter().filter(|[left, right, ..]| *left <= x && x < *right);
        through
            .flat_map(|[_, _, bottom, top]| [[*bottom, (*top).min(y - hole)], [(*bottom).max(y + hole), *top]])
            .filter(|[from, to]| from < to)
            .collect()
    }
}

impl DrawnLayer {
    /// Whether it is the one of a code in the view's list.
    fn is(&self, code: &str) -> bool {
        listed(&self.code) == code
    }
}

/// The code that a layer has in the view's list, where all boards are one line, and so are the pieces of a casing.
fn listed(code: &str) -> &str {
    match code {
        "board" => "boards",
        "trim-bottom" | "trim-sides" | "trim-top" => "trim",
        code => code,
    }
}

/// The name of a layer that the view's list does not hold on its own.
const fn unsaid(kind: LayerKind) -> &'static str {
    match kind {
        LayerKind::Base => key("drawing-layer-base"),
        _ => key("drawing-layer-other"),
    }
}

/// The edges that pieces without overlap have in sight: those of each, less what another one lies at.
fn edges(pieces: &[[i64; 4]]) -> Vec<[[i64; 2]; 2]> {
    let mut edges = Vec::new();
    for [left, right, bottom, top] in pieces {
        let beside = |from: usize, to: usize, at: i64, ends: (usize, usize)| {
            let meets = pieces.iter().filter(move |other| other.get(from) == Some(&at) && other.get(to) != Some(&at));
            meets.filter_map(move |other| Some((*other.get(ends.0)?, *other.get(ends.1)?))).collect::<Vec<_>>()
        };
        // A left edge meets what ends there, a right one what begins there.
        for (x, taken) in [(*left, beside(1, 0, *left, (2, 3))), (*right, beside(0, 1, *right, (2, 3)))] {
            edges.extend(less((*bottom, *top), &taken).into_iter().map(|(from, to)| [[x, from], [x, to]]));
        }
        for (y, taken) in [(*bottom, beside(3, 2, *bottom, (0, 1))), (*top, beside(2, 3, *top, (0, 1)))] {
            edges.extend(less((*left, *right), &taken).into_iter().map(|(from, to)| [[from, y], [to, y]]));
        }
    }
    edges
}

/// What is left of a stretch.
fn less(whole: (i64, i64), taken: &[(i64, i64)]) -> Vec<(i64, i64)> {
    let mut left = vec![whole];
    for (from, to) in taken {
        let cut = |(low, high): (i64, i64)| [(low, high.min(*from)), (low.max(*to), high)];
        left = left.into_iter().flat_map(cut).filter(|(low, high)| low < high).collect();
    }
    left
}

/// How far a layer's back stands out at a height.
fn back(layer: &DrawnLayer, y: f64) -> f64 {
    let [lower, upper, _] = layer.profile.map(|nm| nm as f64);
    let of = |least: i64, most: i64| (least as f64, most as f64);
    let (bottom, top) = match layer.bends {
        Some([bottom, top]) => of(bottom, top),
        None => of(
            layer.pieces.iter().map(|piece| piece[2]).min().unwrap_or_default(),
            layer.pieces.iter().map(|piece| piece[3]).max().unwrap_or_default(),
        ),
    };
    lower + (upper - lower) * ((y - bottom) / (top - bottom).max(1.0)).clamp(0.0, 1.0)
}

/// A film's or a sheet's part between two heights in the section, with its bends.
fn film(layer: &DrawnLayer, (from, to): (i64, i64), scale: &SheetScale) -> Vec<Dp> {
    let mut heights = vec![from];
    heights.extend(layer.bends.into_iter().flatten().filter(|bend| from <= *bend && *bend <= to));
    heights.push(to);
    heights.dedup();
    let [lower, upper, _] = layer.profile;
    let mut points: Vec<Dp> = heights.into_iter().map(|y| (back(layer, y as f64), y as f64)).collect();
    // Bent square: both ends of the bend lie at one height.
    if let Some([low, high]) = layer.bends
        && low == high
        && (from..=to).contains(&low)
    {
        let y = low as f64;
        points.retain(|(_, own)| (own - y).abs() >= 1.0);
        let at = points.iter().take_while(|(_, own)| *own < y).count();
        points.insert(at, (upper as f64, y));
        points.insert(at, (lower as f64, y));
    }
    points.into_iter().map(|at| scale.at(at)).collect()
}

/// The middle of the highest part of a sheet: a number beside it stands at its leg, not in the air under its bend.
fn middle_of(points: &[Dp]) -> Dp {
    let parts = points.iter().zip(points.iter().skip(1));
    let highest = parts.max_by(|(a, b), (c, d)| (a.1 - b.1).abs().total_cmp(&(c.1 - d.1).abs()));
    highest.map_or((0.0, 0.0), |(from, to)| (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1)))
}

/// A layer's part between two heights in the section: from its lower back corner round.
fn profile(layer: &DrawnLayer, (from, to): (i64, i64), scale: &SheetScale) -> Vec<Dp> {
    let thickness = layer.profile[2] as f64;
    let out = |y: i64| (back(layer, y as f64), y as f64);
    let ((low, from), (high, to)) = (out(from), out(to));
    let corners = [(low, from), (high, to), (high + thickness, to), (low + thickness, from)];
    corners.iter().map(|at| scale.at(*at)).collect()
}

/// Films and sheets have no thickness that could be drawn.
fn is_film(layer: &DrawnLayer) -> bool {
    layer.profile[2] < 1_500_000
}

fn fill(layer: &DrawnLayer) -> Role {
    if layer.code == "board" { Role::Board } else { Role::Ground }
}
