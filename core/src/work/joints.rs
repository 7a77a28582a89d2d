use crate::measure::Length;
use crate::rules::keys;
use crate::siding::{Avoid, JointRules};
use crate::wall::Studs;

use super::error::Result;
use super::{Course, WallSite, Work};

/// The shortest piece beside a joint, in stud bays: it reaches from one stud to the next (common practice, no source).
const LEAST_BAYS: i64 = 1;

/// More studs than any wall has.
const STUDS_MOST: usize = 10_000;

/// The stud's centre of the joint at which a board ends. Half a nanometre is rounded up on both sides of it.
pub(super) fn joint_behind(to: Length, rules: &JointRules) -> Length {
    to + (rules.joint_gap - rules.joint_gap.half())
}

/// The stud's centre of the joint at which a board begins.
pub(super) fn joint_before(from: Length, rules: &JointRules) -> Length {
    from - rules.joint_gap.half()
}

/// The rules that joints on a wall keep to.
///
/// # Errors
/// [`WorkError`](super::WorkError) where the wall, its studs or the stock are not known yet.
pub(super) fn joint_rules(work: &Work, wall: &WallSite) -> Result<JointRules> {
    let (studs, rules) = (wall.studs()?, work.rules());
    let spacing = match studs {
        Studs::Spaced { spacing, .. } => *spacing,
        Studs::Measured(_) => rules.get_length(keys::STUD_SPACING)?,
    };
    let bays = rules.get_whole(keys::JOINT_STAGGER_LEAST)?;
    let mut avoid = Vec::new();
    for (_, opening) in &wall.openings {
        // A joint in line with a corner of an opening opens there first.
        for (sill, head) in [(opening.left, opening.head_left), (opening.right, opening.head_right)] {
            let (from, to) = (sill.min(head) - spacing.half(), sill.max(head) + spacing.half());
            avoid.push(Avoid { from, to, courses: Vec::new() });
        }
    }
    let courses = wall.courses()?;
    for penetration in &wall.penetrations {
        let (x, y) = penetration.outer();
        let leg = rules.get_length(keys::LEG_LEAST)?;
        let meets = |Course { middle, .. }: &&Course| middle.bottom < y.to && y.from < middle.bottom + middle.height;
        let courses: Vec<u32> = courses.iter().filter(meets).map(|course| course.middle.course).collect();
        if !courses.is_empty() {
            avoid.push(Avoid { from: x.from - leg, to: x.to + leg, courses });
        }
    }
    Ok(JointRules {
        studs: studs.within(Length::ZERO, wall.outline()?.width(), STUDS_MOST),
        stock: work.longest_stock()?,
        end_gap: rules.get_length(keys::GAP_TRIM)?,
        joint_gap: rules.get_length(keys::JOINT_GAP_LEAST)?,
        stagger: spacing.checked_mul(bays).unwrap_or(spacing),
        piece_min: spacing.checked_mul(LEAST_BAYS).unwrap_or(spacing),
        avoid,
    })
}
