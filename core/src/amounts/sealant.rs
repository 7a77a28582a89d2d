use num_bigint::BigInt;
use num_rational::BigRational;

use super::edges::{edges, length_under};
use super::item::{Draft, whole};
use super::{AmountError, CountedBoard, CountedHouse, CountedWall, Item, Measure, Wording, WordingPlace};
use crate::flashing::{JointSection, JointsRequest};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{Family, Quantity, RuleSet, RuleUnit, keys};
use crate::wall::Point;

/// Cubic nanometres in a litre.
const NM3_PER_LITRE: u128 = 1_000_000_000_000_000_000_000_000;

/// Joints of one section, end to end.
struct Sealed {
    width: Length,
    depth: Length,
    /// In nanometres: all of a house may be longer than a length can say.
    length: BigInt,
}

/// Sealant by the volume of its joints: at the boards' ends, at what goes through the walls, and at butt joints where the
/// rules leave a gap there. Above a head flashing a joint stays open.
pub(super) fn item(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let rules = &house.rules;
    let mut joints = Vec::new();
    for (gap, length) in [
        (rules.get_length(keys::GAP_TRIM)?, ends(house, rules.get_length(keys::GAP_TRIM)? + SLACK)),
        (rules.get_length(keys::GAP_BLOCK_MOST)?, round(house)?),
        (rules.get_length(keys::JOINT_GAP_LEAST)?, butts(house)),
    ] {
        let JointSection { width, depth, .. } = JointSection::of(rules, gap, house.board.thickness)?;
        joints.push(Sealed { width, depth, length });
    }
    let total: BigInt = joints.iter().filter(|joint| joint.width.is_positive()).map(|joint| &joint.length).sum();
    let depth = joints.iter().map(|joint| joint.depth).fold(Length::ZERO, Ord::max);
    let pack = cartridge(rules)?;
    let draft = Draft {
        material: "sealant",
        code: "sealant".to_owned(),
        stock: None,
        name: Wording::new(key("amounts-sealant")),
        measure: Measure::Sealant,
        net: joints.iter().map(Sealed::litres).sum(),
        waste: rules.get_share(keys::WASTE_SEALANT)?,
        pack: pack.value_in(RuleUnit::Litre).unwrap_or_default(),
        pack_name: Wording::new(key("amounts-pack-cartridge")).with("size", WordingPlace::Rule(pack)),
        least: 0,
        from: Wording::new(key("amounts-sealant-from"))
            .with("length", WordingPlace::Amount(whole(total), Measure::Length))
            .with("trim", WordingPlace::Size(rules.get_length(keys::GAP_TRIM)?))
            .with("block", WordingPlace::Size(rules.get_length(keys::GAP_BLOCK_MOST)?))
            .with("depth", WordingPlace::Size(depth)),
    };
    draft.item()
}

impl Sealed {
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

/// How much farther from trim than its gap a plumb end may lie and still end at it.
const SLACK: Length = Length::from_inches_64(0, 4);

/// What slants less than one in so many is a level edge of a course that hangs out of level: no roof is that flat (common
/// practice, no source).
const FLATTEST: i128 = 24;

/// The ends of every board at trim and along the rakes, as far as they show; what ends at a block is sealed with that.
fn ends(house: &CountedHouse, near: Length) -> BigInt {
    let walls = house.walls.iter();
    walls.flat_map(|wall| wall.boards.iter().map(move |board| ends_of(wall, board, near))).sum()
}

fn ends_of(wall: &CountedWall, board: &CountedBoard, near: Length) -> BigInt {
    let shows = wall.shows(board);
    let sealed = |[from, to]: &[Point; 2]| {
        let (across, up) = ((to.x - from.x).wide().abs(), (to.y - from.y).wide().abs());
        match across {
            0 => !at_joint(board, from.x) && at_trim(wall, board.shape.at.x + from.x, near),
            // It follows a rake, or an opening that leans.
            _ => up * FLATTEST >= across,
        }
    };
    edges(&board.shape).filter(sealed).map(|edge| length_under(edge, shows)).sum()
}

fn at_joint(board: &CountedBoard, x: Length) -> bool {
    let [left, right] = board.joints;
    (left && x == Length::ZERO) || (right && x == board.shape.length)
}

/// Whether something plumb at `x` is no farther than `near` from the trim of the wall or of an opening.
fn at_trim(wall: &CountedWall, x: Length, near: Length) -> bool {
    let ends = [wall.trim_left, wall.outline.width() - wall.trim_right];
    let openings = wall.openings.iter().flat_map(|own| [own.left, own.right]);
    ends.into_iter().chain(openings).any(|trim| (trim - x).abs() <= near)
}

/// Every butt joint, as far as it shows: as high as its board there.
fn butts(house: &CountedHouse) -> BigInt {
    let end = |wall: &CountedWall, board: &CountedBoard| -> BigInt {
        let shows = wall.shows(board);
        let right = |[from, to]: &[Point; 2]| from.x == to.x && from.x == board.shape.length;
        edges(&board.shape).filter(right).map(|edge| length_under(edge, shows)).sum()
    };
    let jointed = |wall: &CountedWall| -> BigInt {
        wall.boards.iter().filter(|board| board.joints[1]).map(|board| end(wall, board)).sum()
    };
    house.walls.iter().map(jointed).sum()
}

/// Every joint at what goes through the walls.
fn round(house: &CountedHouse) -> Result<BigInt, AmountError> {
    let sealed_share = house.rules.get_share(keys::FLANGE_SEALED_SHARE)?;
    let joints = house.holes().flat_map(|hole| {
        let request = JointsRequest {
            assembly: hole.assembly(),
            through: hole.shape,
            width: hole.x.length(),
            height: hole.y.length(),
            bottom_open: hole.bottom_open,
            sealed_share,
        };
        request.joints()
    });
    Ok(joints.map(|joint| BigInt::from(joint.length.nm())).sum())
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
        let joint = Sealed { width: Length::from_mm(10), depth: Length::from_mm(10), length };
        assert_eq!(joint.litres(), ratio(1, 1));
        assert!(Sealed { width: Length::ZERO, ..joint }.litres().is_zero());
    }
}
