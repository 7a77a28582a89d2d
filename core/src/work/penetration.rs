use std::sync::Arc;

use crate::book::{Field, Record};
use crate::flashing::{HeadFlashing, WallRectangle, drains_below, head_needed};
use crate::measure::{Division, Length, Rounding};
use crate::rules::keys;
use crate::siding::CourseLine;
use crate::steps::PenetrationDetail;
use crate::store::Id;
use crate::wall::{Finish, Mounting, PenetrationKind, Point, Shape, Span};

use super::Work;
use super::error::{Result, WorkError};
use super::head_flashing::over;

/// What goes through a wall, with everything that has a default filled in.
#[derive(Clone, Debug)]
pub struct Penetration {
    /// What the book has of it.
    pub record: Arc<Record>,
    /// What it is.
    pub kind: PenetrationKind,
    /// Its outline.
    pub shape: Shape,
    /// Its centre, from the wall's left corner and base line.
    pub centre: Point,
    /// Whether the fixture comes off.
    pub mounting: Mounting,
    /// How it is finished.
    pub finish: Finish,
    /// The block (or trim) round it; `None` for a collar alone.
    pub block: Option<MountingBlock>,
    /// Whether the sealant is painted over.
    pub painted: bool,
}

/// A mounting block on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MountingBlock {
    /// Left to right.
    pub x: Span,
    /// Bottom to top.
    pub y: Span,
    /// From the wall outward.
    pub thickness: Length,
    /// The hole's centre above the block's bottom.
    pub hole: Length,
}

impl Penetration {
    /// A penetration as the book has it, in its house.
    ///
    /// # Errors
    /// [`WorkError::First`] where kind, size or place is lacking.
    pub fn of(work: &Work, record: &Arc<Record>) -> Result<Self> {
        let need = |field| record.length(field).ok_or_else(|| WorkError::first(record.kind, field));
        let kind = record.text(Field::What).and_then(PenetrationKind::from_code);
        let kind = kind.ok_or_else(|| WorkError::first(record.kind, Field::What))?;
        let width = need(Field::Width)?;
        let shape = match record.length(Field::Height) {
            Some(height) => Shape::Rectangle { width, height },
            None => Shape::Round { diameter: width },
        };
        let centre = Point::new(need(Field::FromLeft)?, need(Field::FromBase)?);
        let mounting = record.text(Field::Mounting).and_then(Mounting::from_code).unwrap_or(usual_mounting(kind));
        let finish = record.text(Field::Finish).and_then(Finish::from_code).unwrap_or(usual_finish(kind));
        let painted = record.yes(Field::Painted) == Some(true);
        let block = match finish {
            Finish::Collar => None,
            Finish::Block | Finish::Trim => Some(block(record, work, finish, shape, centre)?),
        };
        Ok(Self { record: Arc::clone(record), kind, shape, centre, mounting, finish, block, painted })
    }

    /// Its id.
    pub fn id(&self) -> Id {
        self.record.id()
    }

    /// What the boards are cut round: the block, or the fixture itself where there is none.
    pub fn outer(&self) -> (Span, Span) {
        match self.block {
            Some(block) => (block.x, block.y),
            None => (around(self.centre.x, self.shape.width()), around(self.centre.y, self.shape.height())),
        }
    }

    /// The head flashing over it; `None` where there is none, or where it cannot be bent.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn head_flashing(&self, work: &Work) -> Result<Option<HeadFlashing>> {
        // Whether there is one does not depend on the courses.
        let (Some(block), true) = (self.block, self.detail(work, &[]).has_head_flashing()) else { return Ok(None) };
        let (x, y) = self.outer();
        let area = WallRectangle { left: x.from, right: x.to, bottom: y.from, top: y.to };
        over(work.rules(), area, block.thickness)
    }

    /// What its steps are made from; `courses` are those of its wall.
    pub fn detail(&self, work: &Work, courses: &[CourseLine]) -> PenetrationDetail {
        let (_, y) = self.outer();
        let first_course = courses.first().is_some_and(|first| y.from < first.bottom + first.height);
        // Every country's rules have these; without one, what is safe is asked for.
        let needed = |block: MountingBlock| head_needed(work.rules(), self.finish, block.x.length()).unwrap_or(true);
        let detail = PenetrationDetail {
            kind: self.kind,
            shape: self.shape,
            finish: self.finish,
            mounting: self.mounting,
            head_flashing: self.record.yes(Field::HeadFlashing).unwrap_or_else(|| self.block.is_some_and(needed)),
            painted: self.painted,
            first_course,
            bottom_open: false,
            old_house: work.old_house(),
            above_reach: work.above_reach(y.to),
        };
        let drains = drains_below(detail.assembly());
        PenetrationDetail { bottom_open: self.record.yes(Field::BottomOpen).unwrap_or(drains), ..detail }
    }
}

/// Whether such a fixture usually comes off (common practice, no source).
fn usual_mounting(kind: PenetrationKind) -> Mounting {
    match kind {
        PenetrationKind::ElectricalBox | PenetrationKind::Light | PenetrationKind::VentHood => Mounting::SlipOver,
        // Only the utility may free a meter's base.
        PenetrationKind::MeterBase
        | PenetrationKind::HoseBib
        | PenetrationKind::Pipe
        | PenetrationKind::Conduit
        | PenetrationKind::Cable
        | PenetrationKind::LineSet => Mounting::Split,
    }
}

/// How such a fixture is usually finished (common practice, no source).
fn usual_finish(kind: PenetrationKind) -> Finish {
    if kind == PenetrationKind::MeterBase { Finish::Trim } else { Finish::Block }
}

fn around(centre: Length, size: Length) -> Span {
    let from = centre - size.half();
    Span { from, to: from + size }
}

fn block(record: &Record, work: &Work, finish: Finish, shape: Shape, centre: Point) -> Result<MountingBlock> {
    let round_up = |size: Length| Division::SIXTEENTH.round(size, Rounding::Up);
    let beyond = match finish {
        Finish::Trim => work.rules().get_length(keys::TRIM_WIDTH)?,
        Finish::Block | Finish::Collar => work.rules().get_length(keys::BLOCK_BEYOND)?,
    };
    let beyond = beyond + beyond;
    let width = record.length(Field::BlockWidth).unwrap_or_else(|| round_up(shape.width() + beyond));
    let height = record.length(Field::BlockHeight).unwrap_or_else(|| round_up(shape.height() + beyond));
    let thickness = match record.length(Field::BlockThickness) {
        Some(thickness) => thickness,
        None => work.block_thickness()?,
    };
    let hole = record.length(Field::HoleFromBottom).unwrap_or_else(|| height.half());
    let bottom = centre.y - hole;
    Ok(MountingBlock { x: around(centre.x, width), y: Span { from: bottom, to: bottom + height }, thickness, hole })
}
