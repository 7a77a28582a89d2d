use std::sync::Arc;

use super::super::{RuleSet, keys};
use super::Measurand;
use crate::measure::{Length, Unit};

/// What is known around a value that is judged. Nothing of it is needed: what is absent is not compared.
#[derive(Clone, Debug, Default)]
pub struct Surroundings {
    /// The rules of the house, which stand around every value of it.
    pub rules: Arc<RuleSet>,
    /// The unit that the value was typed in; inches where nobody knows.
    pub unit: Option<Unit>,
    /// How the number was written.
    pub written: TypedForm,
    /// A unit of the system that the house was measured in, where that is known.
    pub house_unit: Option<Unit>,
    /// What the plan, or the house, says of the same thing.
    pub planned: Option<Length>,
    /// The height of the house's boards.
    pub board_height: Option<Length>,
    /// The thickness of the house's boards.
    pub board_thickness: Option<Length>,
    /// The lap of the house.
    pub lap: Option<Length>,
    /// The nail line of the house.
    pub nail_line: Option<Length>,
    /// The length of the board that the value lies on or is left of.
    pub board_length: Option<Length>,
    /// The longest stock length of the house.
    pub longest_stock: Option<Length>,
    /// Where the pole begins.
    pub pole_from: Option<Length>,
    /// Where the pole ends.
    pub pole_to: Option<Length>,
    /// The smallest reveal.
    pub reveal_least: Option<Length>,
    /// The largest reveal.
    pub reveal_most: Option<Length>,
    /// The width of the wall.
    pub wall_width: Option<Length>,
    /// The height of the wall's left end.
    pub left_height: Option<Length>,
    /// The height of the wall's right end.
    pub right_height: Option<Length>,
    /// The height of the gable's peak.
    pub peak_height: Option<Length>,
    /// How far the peak is from the nearer end of the wall.
    pub peak_run: Option<Length>,
    /// The lowest base line of the house, on the pole.
    pub house_bottom: Option<Length>,
    /// The highest point of the house, on the pole.
    pub house_top: Option<Length>,
    /// The stud spacing of the wall.
    pub stud_spacing: Option<Length>,
    /// The thing's own left side, from the left corner.
    pub own_from_left: Option<Length>,
    /// The thing's own width.
    pub own_width: Option<Length>,
    /// The thing's own bottom above the base line.
    pub own_from_base: Option<Length>,
    /// The thing's own height.
    pub own_height: Option<Length>,
    /// The width of what goes through the block.
    pub through_width: Option<Length>,
    /// The height of what goes through the block.
    pub through_height: Option<Length>,
    /// Whether the board is cut, for what is measured after fitting.
    pub is_cut: Option<bool>,
    /// The least and the most gap that saw and hands were seen to leave here.
    pub learned_gap: Option<(Option<Length>, Option<Length>)>,
    /// What the value must stay under: the other side of the same block.
    pub less_than: Option<Length>,
    /// What the value must be over: the other side of the same block.
    pub more_than: Option<Length>,
}

/// What the keys say of a number beyond its value.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct TypedForm {
    /// Whether it has a decimal point or comma.
    pub has_point: bool,
    /// What a fraction over one would be with a blank behind its whole number: 1 1/4 for 11/4.
    pub with_blank: Option<Length>,
}

impl Surroundings {
    /// The highest point of the wall above its base line.
    pub(super) fn wall_top(&self) -> Option<Length> {
        let eaves = self.left_height?.max(self.right_height?);
        Some(self.peak_height.map_or(eaves, |peak| peak.max(eaves)))
    }

    /// A length of the rules where it is a rule of this house's own country or of none: no crew is asked about another
    /// country's code.
    pub(super) fn rule(&self, key: &'static str) -> Option<Length> {
        let rule = self.rules.rule(key).ok()?;
        let own = rule.family == self.rules.family() || rule.family == super::super::Family::Common;
        if own || self.rules.change(key).is_some() { self.rules.get_length(key).ok() } else { None }
    }

    /// How far a value may lie from what is planned before it is asked about.
    pub(super) fn tolerance(&self, measurand: Measurand, planned: Length) -> Length {
        match measurand {
            Measurand::BoardHeight | Measurand::BoardThickness | Measurand::Lap | Measurand::NailLine => {
                Length::from_inches_64(0, 8)
            }
            // A tape and a plan differ by a little on every house; two in a hundred are no reading error.
            _ => Length::from_inches(1).max(planned.abs().scaled(2, 100).unwrap_or_default()),
        }
    }

    /// The least thickness of a block that lapped boards butt on: they stand two thicknesses off the wall.
    pub(super) fn block_thickness_least(&self) -> Option<Length> {
        Some(self.board_thickness?.checked_mul(2)? + self.rule(keys::BLOCK_THICKNESS_MARGIN)?)
    }
}
