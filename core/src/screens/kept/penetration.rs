use crate::measure::{Division, Length, Rounding};
use crate::rules::keys;
use crate::screens::context::Terms;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{Id, Store};
use crate::wall::{Finish, Mounting, PenetrationKind, Point, Shape, Span};

use super::{Facts, Job};

/// What goes through a wall, with everything that has a default filled in.
pub(crate) struct Penetration {
    /// What the book holds of it.
    pub(crate) facts: Facts,
    /// What it is.
    pub(crate) kind: PenetrationKind,
    /// Its outline.
    pub(crate) shape: Shape,
    /// Its centre, from the wall's left corner and base line.
    pub(crate) centre: Point,
    /// Whether the fixture comes off.
    pub(crate) mounting: Mounting,
    /// How it is finished.
    pub(crate) finish: Finish,
    /// The block (or trim) round it; `None` for a collar alone.
    pub(crate) block: Option<Block>,
    /// Whether the sealant is painted over.
    pub(crate) painted: bool,
}

/// A mounting block on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Block {
    /// Left to right.
    pub(crate) x: Span,
    /// Bottom to top.
    pub(crate) y: Span,
    /// From the wall outward.
    pub(crate) thickness: Length,
    /// The hole's centre above the block's bottom.
    pub(crate) hole: Length,
}

/// How far a block reaches past its fixture on each side where nobody says otherwise (common practice, no source).
const BLOCK_BEYOND: Length = Length::from_inches_64(2, 16);

impl Penetration {
    /// The penetration of an id.
    pub(crate) fn of(store: &Store, terms: &Terms<'_>, job: &Job, id: Id) -> Kept<Self> {
        Self::from_facts(terms, job, Facts::of(store, terms, id, kinds::PENETRATION)?)
    }

    /// The penetrations of a wall that have kind, size and place, in their order.
    pub(crate) fn on_wall(store: &Store, terms: &Terms<'_>, job: &Job, wall: Id) -> Kept<Vec<Self>> {
        let all = Facts::children(store, wall, kinds::PENETRATION)?.into_iter();
        Ok(all.filter_map(|facts| Self::from_facts(terms, job, facts).ok()).collect())
    }

    fn from_facts(terms: &Terms<'_>, job: &Job, facts: Facts) -> Kept<Self> {
        let kind = facts.text("what").and_then(PenetrationKind::from_code);
        let kind = kind.ok_or_else(|| super::facts::first(terms, "what", "ask-penetration-what"))?;
        let width = facts.need(terms, "width", "ask-penetration-width")?;
        let shape = match facts.length("height") {
            Some(height) => Shape::Rectangle { width, height },
            None => Shape::Round { diameter: width },
        };
        let centre = Point::new(
            facts.need(terms, "from-left", "ask-penetration-from-left")?,
            facts.need(terms, "from-base", "ask-penetration-from-base")?,
        );
        let mounting = facts.text("mounting").and_then(Mounting::from_code).unwrap_or(usual_mounting(kind));
        let finish = facts.text("finish").and_then(Finish::from_code).unwrap_or(Finish::Block);
        let painted = facts.text("painted") == Some("yes");
        let block = match finish {
            Finish::Collar => None,
            Finish::Block | Finish::Trim => Some(block(&facts, job, shape, centre)?),
        };
        Ok(Self { facts, kind, shape, centre, mounting, finish, block, painted })
    }

    /// Its id.
    pub(crate) fn id(&self) -> Id {
        self.facts.id()
    }

    /// What the boards are cut round: the block, or the fixture itself where there is none.
    pub(crate) fn outer(&self) -> (Span, Span) {
        match self.block {
            Some(block) => (block.x, block.y),
            None => (around(self.centre.x, self.shape.width()), around(self.centre.y, self.shape.height())),
        }
    }
}

/// Whether such a fixture usually comes off (common practice, no source).
fn usual_mounting(kind: PenetrationKind) -> Mounting {
    match kind {
        PenetrationKind::ElectricalBox
        | PenetrationKind::Light
        | PenetrationKind::VentHood
        | PenetrationKind::MeterBase => Mounting::SlipOver,
        PenetrationKind::HoseBib
        | PenetrationKind::Pipe
        | PenetrationKind::Conduit
        | PenetrationKind::Cable
        | PenetrationKind::LineSet => Mounting::Split,
    }
}

fn around(centre: Length, size: Length) -> Span {
    let from = centre - size.half();
    Span { from, to: from + size }
}

fn block(facts: &Facts, job: &Job, shape: Shape, centre: Point) -> Kept<Block> {
    let round_up = |size: Length| Division::SIXTEENTH.round(size, Rounding::Up);
    let beyond = BLOCK_BEYOND + BLOCK_BEYOND;
    let width = facts.length("block-width").unwrap_or_else(|| round_up(shape.width() + beyond));
    let height = facts.length("block-height").unwrap_or_else(|| round_up(shape.height() + beyond));
    let thickness = match facts.length("block-thickness") {
        Some(thickness) => thickness,
        None => {
            let board = job.board_thickness()?;
            round_up(board + board + job.rules.get_length(keys::BLOCK_THICKNESS_MARGIN)?)
        }
    };
    let hole = facts.length("hole-from-bottom").unwrap_or_else(|| height.half());
    let bottom = centre.y - hole;
    Ok(Block { x: around(centre.x, width), y: Span { from: bottom, to: bottom + height }, thickness, hole })
}
