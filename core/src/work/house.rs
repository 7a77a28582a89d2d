use std::collections::BTreeMap;
use std::sync::Arc;

use crate::book::{Field, House, Kind, Missing, Record};
use crate::flashing::stock_thickness;
use crate::measure::{Division, Length, Rounding};
use crate::rules::{Family, Quantity, RuleChange, RuleSet, RuleUnit, keys};
use crate::store::Id;

use super::error::{Result, WorkError};
use super::wall_site::{WallSite, sources};

/// A house with its rules, its pole and its walls.
#[derive(Debug)]
pub struct Work {
    house: Arc<House>,
    rules: RuleSet,
    lines: Option<Vec<Length>>,
    walls: Vec<Arc<WallSite>>,
    /// Where in `walls` each one is.
    wall_at: BTreeMap<Id, usize>,
}

/// A stock length and how many boards there are of it; `None` is as many as are wanted.
pub type StockCount = (Length, Option<i64>);

impl Work {
    /// What follows from a house; a wall is taken over from `before` where it is made from the same things.
    pub fn of(house: &Arc<House>, before: Option<&Self>) -> Self {
        let rules = rules(house);
        let pole = house.own(Kind::Pole).first();
        let lines = pole.and_then(|pole| pole.lines());
        let mut work = Self { house: Arc::clone(house), rules, lines, walls: Vec::new(), wall_at: BTreeMap::new() };
        let site = |wall: &Arc<Record>| {
            let made_from = sources(house, wall);
            let same = |site: &&Arc<WallSite>| {
                site.made_from.len() == made_from.len()
                    && site.made_from.iter().zip(&made_from).all(|(was, is)| Arc::ptr_eq(was, is))
            };
            let before = before.and_then(|before| before.wall(wall.id()).ok()).filter(same);
            before.map_or_else(|| Arc::new(WallSite::of(&work, wall, made_from)), Arc::clone)
        };
        let walls: Vec<Arc<WallSite>> = house.own(Kind::Wall).iter().map(site).collect();
        work.wall_at = walls.iter().enumerate().map(|(at, wall)| (wall.id(), at)).collect();
        work.walls = walls;
        work
    }

    /// The house that it follows from.
    pub fn house(&self) -> &House {
        &self.house
    }

    /// The house's own fields.
    ///
    /// # Errors
    /// [`WorkError::Missing`] for what belongs to no house.
    pub fn job(&self) -> Result<&Record> {
        Ok(self.house.job()?)
    }

    /// The id of the house; none for what belongs to no house.
    pub fn id(&self) -> Option<Id> {
        self.house.id()
    }

    /// What the crew calls it.
    pub fn name(&self) -> &str {
        self.house.job().ok().and_then(|job| job.text(Field::Name)).unwrap_or_default()
    }

    /// Whether it may have lead paint.
    pub fn old_house(&self) -> bool {
        self.house.job().ok().and_then(|job| job.yes(Field::OldHouse)) == Some(true)
    }

    /// Whether something so high above a base line is worked at from a ladder or a scaffold.
    pub fn above_reach(&self, height: Length) -> bool {
        // Every country's rules have it; without it, the cautions are shown.
        height > self.rules.get_length(keys::REACH_MOST).unwrap_or_default()
    }

    /// Its rules with what was changed; for no house the standard ones.
    pub fn rules(&self) -> &RuleSet {
        &self.rules
    }

    /// Board height.
    ///
    /// # Errors
    /// [`WorkError::First`] where nobody said.
    pub fn board_height(&self) -> Result<Length> {
        let height = self.house.job().ok().and_then(|job| job.length(Field::BoardHeight));
        height.ok_or_else(|| WorkError::first(Kind::Job, Field::BoardHeight))
    }

    /// Board thickness: answered, else the rules' own.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn board_thickness(&self) -> Result<Length> {
        self.length_or_rule(Field::BoardThickness, keys::BOARD_THICKNESS)
    }

    /// How far a block stands out from the wall where nobody says otherwise: as thick as the stock that is enough.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn block_thickness(&self) -> Result<Length> {
        let rule = |key: &str| self.rules.get_length(key);
        let stock = (rule(keys::BLOCK_STOCK_LEAST)?, rule(keys::BLOCK_STOCK_MOST)?);
        Ok(stock_thickness(self.least_block_thickness()?, stock))
    }

    /// How far a block must stand out from the wall: the furring, two boards and what they need, rounded up.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn least_block_thickness(&self) -> Result<Length> {
        let (board, more) = (self.board_thickness()?, self.rules.get_length(keys::BLOCK_THICKNESS_MARGIN)?);
        let furring = self.rules.get_length(keys::FURRING_THICKNESS)?;
        Ok(Division::SIXTEENTH.round(furring + board + board + more, Rounding::Up))
    }

    /// The least lap: answered, else the rules' own.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn lap(&self) -> Result<Length> {
        self.length_or_rule(Field::Lap, keys::LAP_LEAST)
    }

    /// How far the nail line lies below the top edge: answered, else the least of the rules.
    ///
    /// # Errors
    /// [`WorkError::Rule`].
    pub fn nail_line(&self) -> Result<Length> {
        self.length_or_rule(Field::NailLine, keys::NAIL_LINE_LEAST)
    }

    fn length_or_rule(&self, field: Field, key: &str) -> Result<Length> {
        match self.house.job().ok().and_then(|job| job.length(field)) {
            Some(length) => Ok(length),
            None => Ok(self.rules.get_length(key)?),
        }
    }

    /// The stock, in its order.
    pub fn stock(&self) -> Vec<StockCount> {
        let stock = self.house.own(Kind::Stock).iter();
        stock.filter_map(|stock| Some((stock.length(Field::Length)?, stock.whole(Field::Count)))).collect()
    }

    /// The longest stock.
    ///
    /// # Errors
    /// [`WorkError::First`] where there is none.
    pub fn longest_stock(&self) -> Result<Length> {
        let longest = self.stock().into_iter().map(|(length, _)| length).max();
        longest.ok_or(WorkError::First { field: "stock", title: "ask-stock-length" })
    }

    /// The story pole, where anything was said of it.
    pub fn pole(&self) -> Option<&Arc<Record>> {
        self.house.own(Kind::Pole).first()
    }

    /// The course lines of the pole, on its own scale; none where it is not laid out.
    pub fn lines(&self) -> Option<&[Length]> {
        self.lines.as_deref()
    }

    /// The same, where the work cannot go on without them.
    ///
    /// # Errors
    /// [`WorkError::First`] where the pole is not laid out.
    pub fn need_lines(&self) -> Result<&[Length]> {
        self.lines().ok_or(WorkError::First { field: Field::Lines.code(), title: "screen-pole" })
    }

    /// The walls, in their order.
    pub fn walls(&self) -> &[Arc<WallSite>] {
        &self.walls
    }

    /// A wall.
    ///
    /// # Errors
    /// [`WorkError::Missing`].
    pub fn wall(&self, id: Id) -> Result<&Arc<WallSite>> {
        let missing = || self.house.get(id, Kind::Wall).err().unwrap_or(Missing::Unknown(Kind::Wall));
        Ok(self.wall_at.get(&id).and_then(|at| self.walls.get(*at)).ok_or_else(missing)?)
    }

    /// The boards of a wall, in their order.
    pub fn boards(&self, wall: Id) -> &[Arc<Record>] {
        self.house.under(wall, Kind::Board)
    }
}

/// The rules of a house with what was changed; for no house the standard ones.
pub fn rules(house: &House) -> RuleSet {
    let Ok(job) = house.job() else { return RuleSet::standard() };
    let family = job.text(Field::Rules).and_then(Family::from_code).unwrap_or(Family::UnitedStates);
    let mut rules = RuleSet::of(family);
    for change in house.own(Kind::Rule) {
        if let Some((key, change)) = rule_change(change) {
            // A rule that a later program dropped, or whose bounds it narrowed, falls back to the default.
            let _ = rules.set(&key, change);
        }
    }
    rules
}

/// A changed rule as the book has it: the value as a fraction of a unit.
fn rule_change(record: &Record) -> Option<(String, RuleChange)> {
    let written = record.written(Field::Numerator)?;
    let unit = record.text(Field::Unit)?;
    let unit = RuleUnit::ALL.iter().copied().find(|known| known.code() == unit)?;
    let value = Quantity::new(record.whole(Field::Numerator)?, record.whole(Field::Denominator)?, unit)?;
    let reason = record.text(Field::Reason)?.to_owned();
    let change = RuleChange { value, by: written.signer.clone(), at_ms: written.stamp.ms, reason };
    Some((record.text(Field::Key)?.to_owned(), change))
}
