//! Head flashings: over a penetration that has one, and over every window and door.

use crate::flashing::{HeadFlashing, HeadRequest, WallRectangle, head_gap};
use crate::measure::Length;
use crate::rules::{RuleSet, keys};
use crate::wall::Opening;

use super::error::Result;

/// The head flashing over a window or a door whose trim stands out so far.
pub(super) fn over_opening(rules: &RuleSet, opening: &Opening, thickness: Length) -> Result<Option<HeadFlashing>> {
    let head = opening.head();
    let area = WallRectangle { left: head.from, right: head.to, bottom: opening.bottom, top: opening.top };
    over(rules, area, thickness)
}

/// The gap between what a head flashing covers and the board above it: the flashing's fall, and what stays open.
pub(super) fn gap_over(head: &HeadFlashing, top: Length) -> Length {
    head.open_to - top
}

/// The head flashing over a block that stands out so far; `None` where it cannot be bent.
pub(super) fn over(rules: &RuleSet, block: WallRectangle, thickness: Length) -> Result<Option<HeadFlashing>> {
    let rule = |key: &str| rules.get_length(key);
    let request = HeadRequest {
        block,
        thickness,
        up_leg: rule(keys::HEAD_FLASHING_UP_LEG)?,
        gap: head_gap(rules)?,
        slope: rules.get_share(keys::HEAD_FLASHING_SLOPE)?,
        end_dam: rule(keys::HEAD_FLASHING_END_DAM)?,
        down_lap: rule(keys::HEAD_FLASHING_DOWN_LAP)?,
        drip: rule(keys::HEAD_FLASHING_DRIP)?,
    };
    Ok(HeadFlashing::bend(&request).ok())
}
