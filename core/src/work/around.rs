use crate::board::{Lean, Obstruction, ObstructionGaps, Slope};
use crate::book::{Field, House, Kind, Record};
use crate::measure::Length;
use crate::rules::{RuleSet, keys};
use crate::store::Id;
use crate::wall::{Opening, Outline};

use super::error::Result;

/// What boards go round.
#[derive(Clone, Debug)]
pub struct Around {
    /// The penetration, the opening or the abutment; none for the trim at the wall's ends.
    pub id: Option<Id>,
    /// The key of its name.
    pub name: String,
    /// Where it lies, and how far boards stay off it.
    pub at: Obstruction,
    /// Whether a strip that the next course hides is not carried over it.
    pub(super) parts_strips: bool,
}

impl Around {
    /// A window or a door, with the gap over its head.
    pub(super) fn opening(id: Id, opening: &Opening, gap: Length, head: Length) -> Self {
        let Opening { left, right, bottom, top, .. } = *opening;
        let lean = Lean { left: opening.head_left - left, right: opening.head_right - right };
        let gap = ObstructionGaps { side: gap, top: head, bottom: gap };
        Self {
            id: Some(id),
            name: format!("wall-opening-{}", opening.kind.code()),
            at: Obstruction { left, right, bottom, top, lean, slope: Slope::default(), gap },
            parts_strips: true,
        }
    }
}

/// The trim at the wall's ends: it stops the boards at every height.
pub(super) fn trims(wall: &Record, outline: &Outline, gap: Length) -> Vec<Around> {
    let trim = |field| wall.length(field).filter(|width| width.is_positive());
    let (far, gap) = (Length::LIMIT, ObstructionGaps { side: gap, ..ObstructionGaps::default() });
    let around = |x| Around {
        id: None,
        name: "wall-trim".to_owned(),
        at: Obstruction::plumb(x, (-far, far), gap),
        parts_strips: false,
    };
    let left = trim(Field::TrimLeft).map(|trim| around((Length::ZERO, trim)));
    let right = trim(Field::TrimRight).map(|trim| around((outline.width() - trim, outline.width())));
    left.into_iter().chain(right).collect()
}

/// The roofs, decks and grounds that stand against the wall above its base line: boards keep their clearance over them.
pub(super) fn abutments(house: &House, wall: &Record, outline: &Outline, rules: &RuleSet) -> Result<Vec<Around>> {
    let mut around = Vec::new();
    for abutment in house.under(wall.id(), Kind::Abutment) {
        let length = |field| abutment.length(field);
        let (Some(what), Some(from), Some(width), Some(surface)) =
            (abutment.text(Field::What), length(Field::FromLeft), length(Field::Width), length(Field::Top))
        else {
            continue;
        };
        let to = from + width;
        let under = outline.sides().filter(|(a, b)| a.y == b.y && a.x < to && b.x > from);
        // Over ground that lies lower it is the base line that keeps clear.
        if under.map(|(a, _)| a.y).min().is_none_or(|base| surface <= base) {
            continue;
        }
        let rule = match what {
            "paving" => keys::CLEARANCE_GROUND_PAVED,
            "roof" | "deck" => keys::CLEARANCE_ROOF,
            _ => keys::CLEARANCE_GROUND,
        };
        let gap = ObstructionGaps {
            side: rules.get_length(keys::GAP_TRIM)?,
            top: rules.get_length(rule)?,
            bottom: Length::ZERO,
        };
        around.push(Around {
            id: Some(abutment.id()),
            name: format!("wall-abutment-{what}"),
            at: Obstruction::plumb((from, to), (-Length::LIMIT, surface), gap),
            parts_strips: true,
        });
    }
    Ok(around)
}
