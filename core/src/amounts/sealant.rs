use num_bigint::BigInt;
use num_rational::BigRational;

use super::item::{Draft, whole};
use super::{AmountError, Hole, House, Item, Measure, Place, Words};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{Family, Quantity, RuleSet, RuleUnit, keys};
use crate::wall::{Finish, Mounting, Shape};

/// Cubic nanometres in a litre.
const NM3_PER_LITRE: u128 = 1_000_000_000_000_000_000_000_000;

/// Joints of one section, end to end.
struct Joint {
    width: Length,
    depth: Length,
    /// In nanometres: all of a house may be longer than a length can say.
    length: BigInt,
}

/// Sealant by the volume of its joints: at the boards' ends, round the blocks, round what comes through them, in the cut
/// of a split block, and at butt joints where the rules leave a gap there. Above a head flashing a joint stays open.
pub(super) fn item(house: &House) -> Result<Option<Item>, AmountError> {
    let rules = &house.rules;
    let mut joints = Vec::new();
    for (gap, length) in [
        (rules.get_length(keys::GAP_TRIM)?, ends(house)),
        (rules.get_length(keys::GAP_BLOCK_MOST)?, house.holes().map(|hole| BigInt::from(round(hole).nm())).sum()),
        (rules.get_length(keys::JOINT_GAP_LEAST)?, butts(house)),
    ] {
        joints.push(Joint { width: gap, depth: depth(house, gap)?, length });
    }
    let total: BigInt = joints.iter().filter(|joint| joint.width.is_positive()).map(|joint| &joint.length).sum();
    let pack = cartridge(rules)?;
    let draft = Draft {
        material: "sealant",
        code: "sealant".to_owned(),
        stock: None,
        name: Words::new(key("amounts-sealant")),
        measure: Measure::Sealant,
        net: joints.iter().map(Joint::litres).sum(),
        waste: rules.get_share(keys::WASTE_SEALANT)?,
        pack: pack.value_in(RuleUnit::Litre).unwrap_or_default(),
        pack_name: Words::new(key("amounts-pack-cartridge")).with("size", Place::Rule(pack)),
        least: 0,
        from: Words::new(key("amounts-sealant-from"))
            .with("length", Place::Amount(whole(total), Measure::Length))
            .with("trim", Place::Size(rules.get_length(keys::GAP_TRIM)?))
            .with("block", Place::Size(rules.get_length(keys::GAP_BLOCK_MOST)?)),
    };
    draft.item()
}

impl Joint {
    fn litres(&self) -> BigRational {
        let section = BigInt::from(self.width.nm()) * self.depth.nm();
        BigRational::new(section * &self.length, BigInt::from(NM3_PER_LITRE))
    }
}

/// A cartridge as the shops of the rules' country sell it.
fn cartridge(rules: &RuleSet) -> Result<Quantity, AmountError> {
    let ounces = rules.family() == Family::UnitedStates;
    Ok(rules.get(if ounces { keys::CARTRIDGE_OUNCES } else { keys::CARTRIDGE_MILLILITRES })?)
}

/// How deep a joint is filled: the rules' share of its width within their bounds, never deeper than it is wide, nor than
/// the board is thick.
fn depth(house: &House, width: Length) -> Result<Length, AmountError> {
    let rules = &house.rules;
    let (n, d) = rules.get_share(keys::SEALANT_DEPTH_SHARE)?;
    let share = width.scaled(n, d).unwrap_or(width);
    let (least, most) = (rules.get_length(keys::SEALANT_DEPTH_LEAST)?, rules.get_length(keys::SEALANT_DEPTH_MOST)?);
    Ok(share.max(least).min(most).min(width).min(house.board.thickness))
}

/// Both ends of every run, as far as they show.
fn ends(house: &House) -> BigInt {
    let walls = house.walls.iter();
    walls.flat_map(|wall| wall.runs.iter().map(|run| BigInt::from(2) * wall.reveal(run.run.course).nm())).sum()
}

/// Every butt joint, as far as it shows.
fn butts(house: &House) -> BigInt {
    let joints = house.walls.iter().flat_map(|wall| {
        wall.runs.iter().map(|run| BigInt::from(run.pieces.saturating_sub(1)) * wall.reveal(run.run.course).nm())
    });
    joints.sum()
}

/// The joints at what goes through a wall: round the block, round the fixture in it, and the cut of a split block.
fn round(hole: &Hole) -> Length {
    let (width, height) = (hole.x.length(), hole.y.length());
    let fixture = match hole.shape {
        // 355/113 is pi to three parts in ten million.
        Shape::Round { diameter } => diameter.scaled(355, 113).unwrap_or(Length::ZERO),
        Shape::Rectangle { width, height } => width + width + height + height,
    };
    if hole.finish == Finish::Collar {
        return fixture;
    }
    let top = if hole.head_flashing { Length::ZERO } else { width };
    let bottom = if hole.bottom_open { Length::ZERO } else { width };
    let split = hole.mounting == Mounting::Split && hole.finish == Finish::Block;
    let cut = if split { width } else { Length::ZERO };
    height + height + top + bottom + fixture + cut
}

#[cfg(test)]
mod tests {
    use num_traits::Zero;

    use super::*;
    use crate::amounts::item::ratio;

    #[test]
    fn a_litre_of_joint_is_a_litre() {
        // 10 mm x 10 mm x 10 m.
        let length = BigInt::from(Length::from_mm(10_000).nm());
        let joint = Joint { width: Length::from_mm(10), depth: Length::from_mm(10), length };
        assert_eq!(joint.litres(), ratio(1, 1));
        assert!(Joint { width: Length::ZERO, ..joint }.litres().is_zero());
    }
}
