use std::sync::Arc;

use crate::board::{
    BoardCut, BoardShape, Instruction, Instructions, MovedOutline, Nailing, Obstruction, ObstructionGaps, OutlineGaps,
    SawCut, ShapeLimits, Slope,
};
use crate::book::{BoardState, CutNotch, CutRecord, CutShape, Field, Kind, Record};
use crate::measure::Length;
use crate::notch::{Block, Gap, NotchRequest, Overcut, Sides};
use crate::phrases::key;
use crate::rules::{RuleSet, keys};
use crate::steps::{BoardDetail, Canonical};
use crate::store::Id;
use crate::wall::{Outline, Point, Span};

use super::error::{Result, WorkError};
use super::head_flashing::{gap_over, over_opening};
use super::notch::{BoardNotch, Tools, by_rule, notches};
use super::placement::Placement;
use super::wall_shapes::TapedAround;
use super::{WallSite, Work};

/// What a board is cut round: a block, a window or a door.
#[derive(Clone, Debug)]
pub struct Met {
    /// The penetration or the opening.
    pub id: Id,
    /// The key of its name.
    pub name: String,
    /// Whether it is a window or a door, whose trim the boards end at; else a block.
    pub opening: bool,
    /// Left to right on the wall.
    pub x: Span,
    /// Bottom to top on the wall.
    pub y: Span,
    /// The gap over it where a head flashing is, the flashing's fall included: it stays open.
    pub head: Option<Length>,
}

/// A board, of a wall's plan or loose, with everything that it is cut round.
#[derive(Debug)]
pub struct Board {
    /// What the book has of it.
    pub record: Arc<Record>,
    /// Its wall, where it has one.
    pub site: Option<Arc<WallSite>>,
    /// The rules that apply to it.
    pub rules: RuleSet,
    /// How high it is: what is left of its full height where it is ripped.
    pub height: Length,
    /// Its shapes: one, or as many as it is cut into where something goes right through it; none where it is not known how
    /// long it is.
    pub shapes: Vec<BoardShape>,
    /// The keys of the names of what it may go round: the cuts of its shapes name them by their places here.
    pub names: Vec<String>,
    /// How far it has to lap over the course below; `None` where nobody said.
    pub lap: Option<Length>,
    /// Whether there is a course under it.
    pub below: bool,
    /// Its notches together, from left to right: those that were taped, and what the plan expects.
    pub notches: Vec<BoardNotch>,
    /// How far its nail line lies below its full top edge.
    nail_line: Length,
    /// How far its lowest point lies over the line of its course.
    lift: Length,
    old_house: bool,
}

impl Board {
    /// A board of a house, or of none.
    ///
    /// # Errors
    /// [`WorkError`] where it or its wall is not there, or nobody said how high it is.
    pub fn of(work: &Work, id: Id) -> Result<Self> {
        let record = Arc::clone(work.house().get(id, Kind::Board)?);
        let wall = record.parent.or_else(|| record.reference(Field::Wall));
        let site = wall.map(|wall| work.wall(wall).map(Arc::clone)).transpose()?;
        let in_house = work.id().is_some();
        let height = match record.length(Field::Height) {
            Some(height) => height,
            None if in_house => work.board_height()?,
            None => return Err(WorkError::first(Kind::Board, Field::Height)),
        };
        let lap = match record.length(Field::Lap) {
            Some(lap) => Some(lap),
            None if in_house => Some(work.lap()?),
            None => None,
        };
        let (rules, old_house) = (work.rules().clone(), work.old_house());
        let mut board = Self {
            record,
            site,
            rules,
            height,
            shapes: Vec::new(),
            names: Vec::new(),
            lap,
            below: true,
            notches: Vec::new(),
            nail_line: work.nail_line()?,
            lift: Length::ZERO,
            old_house,
        };
        board.take_shape(&[])?;
        let obstructions = board.look_round(work)?;
        let taped = work.house().under(id, Kind::Notch);
        board.notches = notches(board.place(), taped, obstructions);
        if !taped.is_empty() {
            let taped = board.taped_around();
            board.take_shape(&taped)?;
        }
        Ok(board)
    }

    /// The board as the books had it before boards had shapes: as high as its course, with one gap for every edge of what
    /// it goes round. What was signed then still holds.
    #[must_use]
    pub fn before_shapes(&self) -> Self {
        let full = self.record.length(Field::Height).unwrap_or(self.height);
        // A board that only lay on a head did not meet the window.
        let is_opening = |id: Id| {
            let openings = self.site.iter().flat_map(|site| &site.openings);
            openings.into_iter().any(|(own, _)| *own == id)
        };
        let bottom = Placement::of(&self.record).map(|place| place.left.min(place.right));
        let met_then = |notch: &BoardNotch| {
            let planned = notch.planned.as_ref().filter(|met| !notch.is_taped() && is_opening(met.id));
            planned.is_none_or(|met| bottom.is_none_or(|bottom| met.y.to > bottom))
        };
        let flat = |notch: &BoardNotch| {
            let mut planned = notch.planned.clone();
            if let Some(planned) = &mut planned {
                planned.head = None;
            }
            BoardNotch::new(notch.taped.clone(), planned, Placement::of(&self.record))
        };
        Self {
            record: Arc::clone(&self.record),
            site: None,
            rules: self.rules.clone(),
            height: full,
            shapes: Vec::new(),
            names: Vec::new(),
            lap: self.lap,
            below: self.below,
            notches: self.notches.iter().filter(|notch| met_then(notch)).map(flat).collect(),
            nail_line: self.nail_line,
            lift: Length::ZERO,
            old_house: self.old_house,
        }
    }

    /// Its shapes on the wall, or by its own sizes for a loose one, with what the tape read of what it goes round.
    fn take_shape(&mut self, taped: &[TapedAround]) -> Result<()> {
        let full = self.record.length(Field::Height).unwrap_or(self.height);
        match (&self.site, Placement::of(&self.record)) {
            (Some(site), Some(place)) => {
                let course = self.record.whole(Field::Course);
                self.shapes = if taped.is_empty() {
                    site.board_shapes(course, place, full)?.to_vec()
                } else {
                    site.taped_shapes(course, (place, full), taped)?
                };
                let own = site.shapes()?.around().iter().map(|own| own.name.clone());
                self.names = own.chain(taped.iter().map(|own| own.name.clone())).collect();
                if let ([shape], true) = (self.shapes.as_slice(), taped.is_empty()) {
                    self.height = shape.height;
                    let level = place.left == place.right;
                    let lift = if level { shape.at.y - place.left } else { shape.rip.bottom };
                    self.lift = lift.max(Length::ZERO);
                }
            }
            // A board of a wall's plan that does not say where it lies has no shape there.
            _ if self.record.parent.is_some() => {}
            _ => {
                let Some(length) = self.record.length(Field::Length) else { return Ok(()) };
                self.shapes = loose(length, self.height, taped, &self.limits()?)?;
                self.names = taped.iter().map(|own| own.name.clone()).collect();
            }
        }
        Ok(())
    }

    /// What the tape read of what it goes round, on the wall; of a loose board on the board itself.
    fn taped_around(&self) -> Vec<TapedAround> {
        let place = self.place().unwrap_or_default();
        let around = |notch: &BoardNotch| {
            let (block, _) = notch.block.zip(notch.taped.as_ref())?;
            let (left, right) = (place.from + block.left, place.from + block.right);
            let ends = [left, right].map(|x| place.bottom_at(x));
            let edge = |sides: &Sides<Length>| [ends[0] + sides.left, ends[1] + sides.right];
            let ([low, low_right], [high, high_right]) = (edge(&block.bottom), edge(&block.top));
            let round = self.gap().ok()?;
            let round = round.min + (round.max - round.min).half();
            let gap = ObstructionGaps { side: round, top: notch.head().unwrap_or(round), bottom: round };
            let planned = notch.planned.as_ref();
            Some(TapedAround {
                planned: planned.map(|met| met.id),
                name: planned.map_or_else(|| key("notch-loose-block").to_owned(), |met| met.name.clone()),
                at: Obstruction {
                    slope: Slope { bottom: low_right - low, top: high_right - high },
                    ..Obstruction::plumb((left, right), (low, high), gap)
                },
            })
            .filter(|_| left < right && low < high && low_right < high_right)
        };
        self.notches.iter().filter_map(around).collect()
    }

    fn limits(&self) -> Result<ShapeLimits> {
        let rule = |key: &str| self.rules.get_length(key);
        Ok(ShapeLimits { leg: rule(keys::LEG_LEAST)?, strip: rule(keys::STRIP_LEAST)? })
    }

    /// What of the wall it meets, and whether it is the first course where it lies.
    fn look_round(&mut self, work: &Work) -> Result<Vec<Met>> {
        let (Some(site), Some(place)) = (&self.site, self.place()) else { return Ok(Vec::new()) };
        let Placement { from, to, .. } = place;
        let (bottom, top) = (place.left.min(place.right), place.left.max(place.right) + self.height);
        let middle = from + (to - from).half();
        let under = site.outline()?.spans_at(bottom - Length::from_nm(1));
        self.below = under.iter().any(|span| span.from <= middle && middle <= span.to);
        let gap = self.rules.get_length(keys::GAP_BLOCK_MOST)?;
        let near = |x: Span, y: Span, gap: Length, over: Length| {
            x.from < to + gap && from < x.to + gap && y.from < top + gap && bottom < y.to + gap.max(over)
        };
        let mut met = Vec::new();
        for penetration in &site.penetrations {
            let (x, y) = penetration.outer();
            let head = penetration.head_flashing(work)?.map(|head| gap_over(&head, y.to));
            if near(x, y, gap, head.unwrap_or_default()) {
                let name = format!("wall-kind-{}", penetration.kind.code());
                met.push(Met { id: penetration.id(), name, opening: false, x, y, head });
            }
        }
        // A board that ends at a window's trim with its gap does not meet it; one that runs under its sill does.
        for (id, opening) in &site.openings {
            let y = Span { from: opening.bottom, to: opening.top };
            let head = over_opening(work.rules(), opening, work.block_thickness()?)?.map(|head| gap_over(&head, y.to));
            if near(opening.narrowest(bottom, top), y, Length::ZERO, head.unwrap_or_default()) {
                let x = opening.widest(bottom, top);
                let name = format!("wall-opening-{}", opening.kind.code());
                met.push(Met { id: *id, name, opening: true, x, y, head });
            }
        }
        Ok(met)
    }

    /// Its id.
    pub fn id(&self) -> Id {
        self.record.id()
    }

    /// How far it is.
    pub fn state(&self) -> BoardState {
        self.record.board_state()
    }

    /// Where it lies on the wall, for a board of a plan: its lowest points, which are higher than the line of its course
    /// where it is ripped along the bottom.
    pub fn place(&self) -> Option<Placement> {
        Some(Placement::of(&self.record)?.lifted(self.lift))
    }

    /// Its length.
    ///
    /// # Errors
    /// [`WorkError::First`] where it is not known.
    pub fn length(&self) -> Result<Length> {
        self.record.length(Field::Length).ok_or_else(|| WorkError::first(Kind::Board, Field::Length))
    }

    /// How far it laps over the course below at a block: by the lines as they lie, at the side where that is more; without
    /// such a course what it has to.
    pub(super) fn lap_at(&self, block: &Block) -> Option<Length> {
        let hangs = || {
            let (site, place) = (self.site.as_ref()?, self.place()?);
            let course = u32::try_from(self.record.whole(Field::Course)?).ok()?.checked_sub(1)?;
            let below = site.courses().ok()?.iter().find(|below| below.middle.course == course)?;
            let [left, right] = [block.left, block.right].map(|at| {
                let x = place.from + at;
                below.top_at(x) - place.bottom_at(x)
            });
            // Lines that lie too far apart, or on each other, are told at the pole.
            Some(left.max(right).min(self.height - Length::from_nm(1)).max(Length::ZERO))
        };
        self.record.length(Field::Lap).or_else(hangs).or(self.lap)
    }

    /// The gap that the rules want round a block.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn gap(&self) -> Result<Gap> {
        let rule = |key: &str| self.rules.get_length(key);
        Ok(Gap { min: rule(keys::GAP_BLOCK_LEAST)?, max: rule(keys::GAP_BLOCK_MOST)? })
    }

    /// The overcut of the rules, for any saw and hands.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn ruled_overcut(&self) -> Result<Overcut> {
        let rule = |key: &str| self.rules.get_length(key);
        Ok(Overcut { min: rule(keys::SAW_OVER_LEAST)?, max: rule(keys::SAW_OVER_MOST)? })
    }

    /// What the notch of a block is laid out from, for somebody's tools.
    ///
    /// # Errors
    /// [`WorkError`] where the board's length is not known.
    pub fn request(&self, notch: &BoardNotch, tools: &Tools) -> Result<Option<NotchRequest>> {
        let Some(block) = notch.block else { return Ok(None) };
        super::notch::request(self, notch, block, tools).map(Some)
    }

    /// The notches that are in its steps and its cut: whoever cuts it, they follow from the readings and the rules alone.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn cut_notches(&self) -> Result<Vec<&BoardNotch>> {
        let mut cut = Vec::new();
        for notch in &self.notches {
            if notch.is_taped() || by_rule(self, notch)? {
                cut.push(notch);
            }
        }
        Ok(cut)
    }

    /// How each of its shapes is cut out of a factory board.
    pub fn instructions(&self) -> Vec<Instructions> {
        self.shapes.iter().map(|shape| Instructions::of(shape, self.nail_line)).collect()
    }

    /// Whether its nail line is cut away where it is nailed to a stud.
    fn is_face_nailed(&self) -> bool {
        let Some(site) = &self.site else { return false };
        let on_stud = |shape: &BoardShape, span: &Span| {
            let (from, to) = (shape.at.x + span.from, shape.at.x + span.to);
            // Where nobody knows the studs, each stretch may have one.
            site.studs().map_or(true, |studs| !studs.within(from, to, 1).is_empty())
        };
        let nailing = |shape: &BoardShape| Nailing::of(shape, self.nail_line);
        self.shapes.iter().any(|shape| nailing(shape).face.iter().any(|span| on_stud(shape, span)))
    }

    /// What its steps are made from.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn detail(&self) -> Result<BoardDetail> {
        let bevel = |field| self.record.length(field).is_some_and(|bevel| bevel != Length::ZERO);
        let reach = self.rules.get_length(keys::REACH_MOST)?;
        // Of a loose board it is not known what the wall takes off.
        let instructions = if self.site.is_some() { self.instructions() } else { Vec::new() };
        let cut = |as_such: fn(&Instruction) -> bool| instructions.iter().any(|own| own.cuts.iter().any(as_such));
        let rips = |own: &Instruction| matches!(own.cut, SawCut::Rip { .. });
        let by_outline =
            |own: &Instruction| own.around.is_empty() && !matches!(own.cut, SawCut::Length(_) | SawCut::Rip { .. });
        Ok(BoardDetail {
            notched: !self.cut_notches()?.is_empty(),
            first_course: !self.below,
            joint: self.record.yes(Field::Joint) == Some(true),
            bevelled: bevel(Field::BevelLeft) || bevel(Field::BevelRight),
            shaped: cut(by_outline),
            ripped: cut(rips),
            face_nailed: self.is_face_nailed(),
            painted: false,
            old_house: self.old_house,
            above_reach: self.record.length(Field::Bottom).is_some_and(|bottom| bottom > reach),
        })
    }

    /// Its shapes as a cut keeps them.
    pub(super) fn cut_shapes(&self) -> Vec<CutShape> {
        let shape = |own: &BoardShape| CutShape { corners: own.corners.clone(), holes: own.holes.clone() };
        self.shapes.iter().map(shape).collect()
    }

    /// What it would be cut to now. `offset` tells how far outside a block somebody's saw wants the marks.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn cut_record(&self, offset: impl Fn(&BoardNotch) -> Length) -> Result<CutRecord> {
        let (gap, overcut) = (self.gap()?, self.ruled_overcut()?);
        let notch = |notch: &&BoardNotch| CutNotch {
            ids: notch.ids(),
            block: notch.block.map(|block| {
                [block.left, block.right, block.bottom.left, block.bottom.right, block.top.left, block.top.right]
            }),
            rules: [gap.min, gap.max, overcut.min, overcut.max],
            head: Some(notch.head().unwrap_or_default()),
            offset: offset(notch),
        };
        Ok(CutRecord {
            length: self.record.length(Field::Length).unwrap_or_default(),
            height: self.height,
            notches: self.cut_notches()?.iter().map(notch).collect(),
            shapes: self.cut_shapes(),
        })
    }

    /// What its sign-offs are made for, to be hashed: the detail of its steps, its sizes, its blocks and the rules in force. Neither the
    /// saw nor the hands are in it: the same board is right for whoever looks at it.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn canonical(&self) -> Result<Canonical> {
        let cut = self.cut_record(|_| Length::ZERO)?;
        let mut canonical = self.detail()?.canonical().length("length", cut.length).length("height", cut.height);
        let names = ["gap-least", "gap-most", "overcut-least", "overcut-most"];
        let sides = ["left", "right", "bottom-left", "bottom-right", "top-left", "top-right"];
        for (n, notch) in cut.notches.iter().enumerate() {
            let rules = names.into_iter().zip(notch.rules);
            let block = sides.into_iter().zip(notch.block.into_iter().flatten());
            // A board that meets no head flashing keeps the text that it was signed with.
            let head = notch.head.filter(|head| *head != Length::ZERO).map(|head| ("gap-head", head));
            for (name, length) in rules.chain(block).chain(head) {
                canonical = canonical.length(&format!("notch.{n}.{name}"), length);
            }
        }
        for (n, shape) in self.shapes.iter().enumerate().filter(|(_, shape)| !is_plain(shape)) {
            let corners = shape.corners.iter().enumerate();
            let rip = [("rip-top", shape.rip.top), ("rip-bottom", shape.rip.bottom)];
            for (name, length) in rip {
                canonical = canonical.length(&format!("shape.{n}.{name}"), length);
            }
            for (at, corner) in corners {
                canonical = canonical
                    .length(&format!("shape.{n}.{at}.x"), corner.x)
                    .length(&format!("shape.{n}.{at}.y"), corner.y);
            }
        }
        Ok(canonical)
    }
}

/// The shape of a board of which no wall is known: what it goes round is measured on itself.
fn loose(length: Length, height: Length, taped: &[TapedAround], limits: &ShapeLimits) -> Result<Vec<BoardShape>> {
    let Ok(outline) = Outline::with_ends(length, height, height) else { return Ok(Vec::new()) };
    let moved = MovedOutline::new(&outline, &OutlineGaps::default())?;
    let around: Vec<Obstruction> = taped.iter().map(|own| own.at).collect();
    let (bottom, joint_gap) = (Length::ZERO, Length::ZERO);
    let course = crate::board::CourseToHang { bottom, hang: None, height, joints: &[], joint_gap, around: &around };
    Ok(course.boards(&moved, limits)?)
}

/// Whether a shape is its whole box less what the board goes round: then its sizes and its notches tell all of it, also where
/// a notch slopes.
fn is_plain(shape: &BoardShape) -> bool {
    let xs = |x: Length| x == Length::ZERO || x == shape.length;
    let ys = |y: Length| y == Length::ZERO || y == shape.height;
    let explained = |corner: &Point| {
        let x = xs(corner.x) || shape.cuts.iter().any(|cut| cut.left == corner.x || cut.right == corner.x);
        let of_cut = |cut: &BoardCut| cut.bottom.contains(&corner.y) || cut.top.contains(&corner.y);
        x && (ys(corner.y) || shape.cuts.iter().any(of_cut))
    };
    let next = shape.corners.iter().cycle().skip(1);
    let mut sides = shape.corners.iter().zip(next);
    let level = |from: &Point, to: &Point| {
        let is_of =
            |cut: &BoardCut| [cut.bottom, cut.top].iter().any(|edge| edge.contains(&from.y) && edge.contains(&to.y));
        from.y == to.y || shape.cuts.iter().any(is_of)
    };
    let rip = shape.rip.top != Length::ZERO || shape.rip.bottom != Length::ZERO;
    !rip && shape.corners.iter().all(explained) && sides.all(|(from, to)| from.x == to.x || level(from, to))
}
