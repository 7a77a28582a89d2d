use std::sync::Arc;

use crate::book::{BoardState, CutNotch, CutRecord, Field, Kind, Record};
use crate::measure::Length;
use crate::notch::{Gap, NotchRequest, Overcut};
use crate::rules::{RuleSet, keys};
use crate::steps::{BoardDetail, Canonical};
use crate::store::Id;
use crate::wall::Span;

use super::error::{Result, WorkError};
use super::notch::{BoardNotch, Tools, by_rule, notches};
use super::{Site, Work};

/// What a board is cut round: a block, a window or a door.
#[derive(Clone, Debug)]
pub struct Obstruction {
    /// The penetration or the opening.
    pub id: Id,
    /// The key of its name.
    pub name: String,
    /// Left to right on the wall.
    pub x: Span,
    /// Bottom to top on the wall.
    pub y: Span,
}

/// Where a board lies on its wall. Its bottom edge is straight; where the course is out of level, it slopes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placement {
    /// Its left end.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// Its bottom edge at the left end.
    pub left: Length,
    /// Its bottom edge at the right end.
    pub right: Length,
}

impl Placement {
    /// Where a board of a plan lies; none for a loose one.
    pub fn of(board: &Record) -> Option<Self> {
        let left = board.length(Field::Bottom)?;
        let right = board.length(Field::BottomRight).unwrap_or(left);
        Some(Self { from: board.length(Field::From)?, to: board.length(Field::To)?, left, right })
    }

    /// Its bottom edge at `x` on the wall.
    pub fn bottom_at(&self, x: Length) -> Length {
        let (along, over) = ((x - self.from).nm(), (self.to - self.from).nm());
        if self.left == self.right || over <= 0 {
            return self.left;
        }
        (self.right - self.left).scaled(along, over).map_or(self.left, |rise| self.left + rise)
    }
}

/// A board, of a wall's plan or loose, with everything that it is cut round.
#[derive(Debug)]
pub struct Board {
    /// What the book has of it.
    pub record: Arc<Record>,
    /// Its wall, where it has one.
    pub site: Option<Arc<Site>>,
    /// The rules that apply to it.
    pub rules: RuleSet,
    /// How high it is.
    pub height: Length,
    /// How far it laps over the course below; `None` where nobody said.
    pub lap: Option<Length>,
    /// Whether there is a course under it.
    pub below: bool,
    /// Its notches together, from left to right: those that were taped, and what the plan expects.
    pub notches: Vec<BoardNotch>,
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
        let mut board = Self { record, site, rules, height, lap, below: true, notches: Vec::new(), old_house };
        let obstructions = board.look_round()?;
        board.notches = notches(&board, work.house().under(id, Kind::Notch), obstructions);
        Ok(board)
    }

    /// What of the wall it meets, and whether it is the first course where it lies.
    fn look_round(&mut self) -> Result<Vec<Obstruction>> {
        let (Some(site), Some(place)) = (&self.site, self.place()) else { return Ok(Vec::new()) };
        let Placement { from, to, .. } = place;
        let (bottom, top) = (place.left.min(place.right), place.left.max(place.right) + self.height);
        let middle = from + (to - from).half();
        let under = site.outline()?.spans_at(bottom - Length::from_nm(1));
        self.below = under.iter().any(|span| span.from <= middle && middle <= span.to);
        let gap = self.rules.get_length(keys::GAP_BLOCK_MOST)?;
        let near = |x: Span, y: Span, gap: Length| {
            x.from < to + gap && from < x.to + gap && y.from < top + gap && bottom < y.to + gap
        };
        let mut met = Vec::new();
        for penetration in &site.penetrations {
            let (x, y) = penetration.outer();
            if near(x, y, gap) {
                let name = format!("wall-kind-{}", penetration.kind.code());
                met.push(Obstruction { id: penetration.id(), name, x, y });
            }
        }
        // A board that ends at a window's trim with its gap does not meet it; one that runs under its sill does.
        for (id, opening) in &site.openings {
            let y = Span { from: opening.bottom, to: opening.top };
            if near(opening.narrowest(bottom, top), y, Length::ZERO) {
                let x = opening.widest(bottom, top);
                met.push(Obstruction { id: *id, name: format!("wall-opening-{}", opening.kind.code()), x, y });
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
        BoardState::of(self.record.text(Field::State))
    }

    /// Where it lies on the wall, for a board of a plan.
    pub fn place(&self) -> Option<Placement> {
        Placement::of(&self.record)
    }

    /// Its length.
    ///
    /// # Errors
    /// [`WorkError::First`] where it is not known.
    pub fn length(&self) -> Result<Length> {
        self.record.length(Field::Length).ok_or_else(|| WorkError::first(Kind::Board, Field::Length))
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
        super::notch::request(self, block, tools).map(Some)
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

    /// What its steps are made from.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn detail(&self) -> Result<BoardDetail> {
        let bevel = |field| self.record.length(field).is_some_and(|bevel| bevel != Length::ZERO);
        let reach = self.rules.get_length(keys::REACH_MOST)?;
        Ok(BoardDetail {
            notched: !self.cut_notches()?.is_empty(),
            first_course: !self.below,
            joint: self.record.yes(Field::Joint) == Some(true),
            bevelled: bevel(Field::BevelLeft) || bevel(Field::BevelRight),
            painted: false,
            old_house: self.old_house,
            above_reach: self.record.length(Field::Bottom).is_some_and(|bottom| bottom > reach),
        })
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
            offset: offset(notch),
        };
        Ok(CutRecord {
            length: self.record.length(Field::Length).unwrap_or_default(),
            height: self.height,
            notches: self.cut_notches()?.iter().map(notch).collect(),
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
            for (name, length) in rules.chain(block) {
                canonical = canonical.length(&format!("notch.{n}.{name}"), length);
            }
        }
        Ok(canonical)
    }
}
