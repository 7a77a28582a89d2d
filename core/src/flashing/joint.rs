use super::Assembly;
use crate::measure::Length;
use crate::rules::{RuleError, RuleSet, keys};
use crate::wall::{Finish, Shape};

/// A sealed joint at a penetration.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum JointPlace {
    /// Between what comes through and the block, the trim or the collar.
    Fixture,
    /// Between the block or the trim and the boards, at the edges that are sealed.
    Boards,
    /// In the cut of a split block.
    Cut,
    /// Behind the block, along its top and its sides.
    BlockBack,
    /// Behind the collar, on its upper part only.
    CollarBack,
}

/// A joint and how long it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Joint {
    /// Where it is.
    pub place: JointPlace,
    /// From end to end.
    pub length: Length,
}

/// What the joints of a penetration are told from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct JointsRequest {
    /// What goes round it.
    pub assembly: Assembly,
    /// What comes through.
    pub through: Shape,
    /// The block or the trim, from left to right.
    pub width: Length,
    /// From bottom to top.
    pub height: Length,
    /// Whether the joint under the block or the trim stays open, so that water drains.
    pub bottom_open: bool,
    /// The upper part of a collar's joint that is bedded, as numerator and denominator.
    pub sealed_share: (i64, i64),
}

impl JointsRequest {
    /// Every joint that is sealed. Over a head flashing the joint stays open; a joint between the boards and a collar,
    /// which lies over them, there is none.
    pub fn joints(&self) -> Vec<Joint> {
        let Self { assembly, through, width, height, bottom_open, sealed_share } = *self;
        let round = perimeter(through);
        let if_sealed = |open: bool| if open { Length::ZERO } else { width };
        let boards = height + height + if_sealed(assembly.has_head_flashing()) + if_sealed(bottom_open);
        let joint = |place, length| Joint { place, length };
        let mut joints = vec![joint(JointPlace::Fixture, round)];
        match assembly.finish() {
            Finish::Block => {
                joints.push(joint(JointPlace::Boards, boards));
                joints.push(joint(JointPlace::BlockBack, height + height + width));
                if assembly.block_is_split() {
                    joints.push(joint(JointPlace::Cut, width));
                }
            }
            Finish::Trim => joints.push(joint(JointPlace::Boards, boards)),
            Finish::Collar => {
                let (n, d) = sealed_share;
                joints.push(joint(JointPlace::CollarBack, round.scaled(n, d).unwrap_or(round)));
            }
        }
        joints
    }
}

/// Once round a shape.
fn perimeter(shape: Shape) -> Length {
    match shape {
        // 355/113 is pi to three parts in ten million.
        Shape::Round { diameter } => diameter.scaled(355, 113).unwrap_or(Length::ZERO),
        Shape::Rectangle { width, height } => width + width + height + height,
    }
}

/// The section of a joint that is filled from the face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct JointSection {
    /// The gap that it fills.
    pub width: Length,
    /// How deep it is filled.
    pub depth: Length,
    /// Whether it is too narrow to take up movement: then it is a seal for looks, and what lies behind keeps the wall dry.
    pub for_looks: bool,
}

impl JointSection {
    /// The section of a joint `width` wide between boards of a thickness: the rules' share of its width deep, within
    /// their bounds, and never deeper than the board is thick (Allen and Rand, Architectural Detailing).
    ///
    /// # Errors
    /// A rule that is missing or of another kind.
    pub fn of(rules: &RuleSet, width: Length, board_thickness: Length) -> Result<Self, RuleError> {
        let (n, d) = rules.get_share(keys::SEALANT_DEPTH_SHARE)?;
        let share = width.scaled(n, d).unwrap_or(width);
        let (least, most) = (rules.get_length(keys::SEALANT_DEPTH_LEAST)?, rules.get_length(keys::SEALANT_DEPTH_MOST)?);
        let depth = share.max(least).min(most).min(board_thickness);
        Ok(Self { width, depth, for_looks: width < rules.get_length(keys::SEALANT_WIDTH_LEAST)? })
    }
}

/// Whether the joint under a block or trim stays open where nobody says otherwise: with a head flashing, its sides alone
/// are sealed, so that what gets in runs out below (common practice, no source). Without one, all round.
pub const fn drains_below(assembly: Assembly) -> bool {
    assembly.has_head_flashing()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::Mounting;

    fn inches(whole: i64, sixty_fourths: i64) -> Length {
        Length::from_inches_64(whole, sixty_fourths)
    }

    fn request(mounting: Mounting, finish: Finish, head_flashing: bool) -> JointsRequest {
        let assembly = Assembly::new(mounting, finish, head_flashing);
        JointsRequest {
            assembly,
            through: Shape::Rectangle { width: inches(4, 0), height: inches(5, 0) },
            width: inches(8, 0),
            height: inches(10, 0),
            bottom_open: drains_below(assembly),
            sealed_share: (2, 3),
        }
    }

    fn lengths(request: &JointsRequest) -> Vec<(JointPlace, Length)> {
        request.joints().iter().map(|joint| (joint.place, joint.length)).collect()
    }

    #[test]
    fn under_a_head_flashing_only_the_sides_are_sealed() {
        let plain = lengths(&request(Mounting::SlipOver, Finish::Block, false));
        let back = (JointPlace::BlockBack, inches(28, 0));
        assert_eq!(plain, [(JointPlace::Fixture, inches(18, 0)), (JointPlace::Boards, inches(36, 0)), back]);
        let under = lengths(&request(Mounting::SlipOver, Finish::Trim, true));
        assert_eq!(under, [(JointPlace::Fixture, inches(18, 0)), (JointPlace::Boards, inches(20, 0))]);
    }

    #[test]
    fn a_split_block_has_its_cut_and_a_collar_only_what_it_is_bedded_in() {
        let split = lengths(&request(Mounting::Split, Finish::Block, false));
        assert_eq!(split.last(), Some(&(JointPlace::Cut, inches(8, 0))));
        let collar = lengths(&request(Mounting::Split, Finish::Collar, true));
        assert_eq!(collar, [(JointPlace::Fixture, inches(18, 0)), (JointPlace::CollarBack, inches(12, 0))]);
    }

    /// Allen and Rand, Architectural Detailing (quoted): half as deep as wide, from 1/4 to 1/2 in, at least 1/4 in wide.
    #[test]
    fn a_joint_is_half_as_deep_as_wide_within_its_bounds() {
        let rules = RuleSet::standard();
        let section = |width: Length, board: Length| JointSection::of(&rules, width, board).unwrap();
        let thick = inches(1, 0);
        assert_eq!(section(inches(0, 48), thick).depth, inches(0, 24));
        assert_eq!(section(inches(2, 0), thick).depth, inches(0, 32));
        let narrow = section(inches(0, 8), inches(0, 20));
        assert_eq!((narrow.depth, narrow.for_looks), (inches(0, 16), true));
        assert!(!section(inches(0, 16), thick).for_looks);
        assert_eq!(section(inches(0, 48), inches(0, 20)).depth, inches(0, 20));
    }
}
