use crate::board::{Lean, Obstruction, ObstructionGaps, Slope};
use crate::book::{Field, House, Kind, Record};
use crate::flashing::{head_gap, square_to};
use crate::measure::Length;
use crate::rules::{RuleError, RuleSet, keys};
use crate::store::Id;
use crate::wall::{Opening, Outline, Point};

use super::against::Against;
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

/// How far boards stay above what stands against a wall, by its code.
///
/// # Errors
/// A rule that is missing or of another kind.
pub fn clearance_over(rules: &RuleSet, what: &str) -> Result<Length, RuleError> {
    match what {
        "paving" => rules.get_length(keys::CLEARANCE_GROUND_PAVED),
        "roof" | "deck" => rules.get_length(keys::CLEARANCE_ROOF),
        // A ledge carries a flashing: over that the gap stays open.
        "ledge" => head_gap(rules),
        _ => rules.get_length(keys::CLEARANCE_GROUND),
    }
}

/// The outline along which the boards end: over a roof that runs up along the wall it leaves the base line and follows the
/// roof, as far off it as the rule for step flashing asks for. `gap` is what boards stay off a sloped edge anyway.
///
/// # Errors
/// A rule that is missing, or a roof that leaves no wall.
pub(super) fn along_roofs(
    house: &House,
    wall: &Record,
    outline: &Outline,
    rules: &RuleSet,
    gap: Length,
) -> Result<Outline> {
    let mut points = outline.points().to_vec();
    let clear = (rules.get_length(keys::CLEARANCE_ROOF_STEP_FLASHED)? - gap).max(Length::ZERO);
    for abutment in house.under(wall.id(), Kind::Abutment) {
        let Some(against) = Against::of(abutment).filter(|against| against.is_sloped()) else { continue };
        let Against { from, to, surface, rise } = against;
        let up = square_to(clear, (rise, to - from));
        points = over_roof(&points, (Point::new(from, surface + up), Point::new(to, surface + rise + up)));
    }
    Ok(Outline::new(points)?)
}

/// A polygon whose level base edge gives way to a slope where that lies above it.
fn over_roof(points: &[Point], (low, high): (Point, Point)) -> Vec<Point> {
    let (mut out, mut covered) = (Vec::new(), None);
    for (at, a) in points.iter().enumerate() {
        // The slope ended right over it.
        if covered == Some(*a) {
            continue;
        }
        let b = points.get(at + 1).or(points.first()).copied().unwrap_or(*a);
        let holds = a.y == b.y && a.x <= low.x && high.x <= b.x;
        let (above_low, above_high) = (low.y > a.y, high.y > a.y);
        if !holds || !(above_low || above_high) {
            out.push(*a);
            continue;
        }
        // Where the slope meets the base line, if it does between its ends.
        let run = high.x - low.x;
        let meets = low.x + run.scaled((a.y - low.y).nm(), (high.y - low.y).nm()).unwrap_or(run);
        let on_base = |x| Point::new(x, a.y);
        // Where it begins right at a corner nothing of the base line is left before it.
        let before = [*a, on_base(low.x)];
        out.extend(before.into_iter().take(if !above_low {
            1
        } else if a.x == low.x {
            0
        } else {
            2
        }));
        out.push(if above_low { low } else { on_base(meets) });
        out.push(if above_high { high } else { on_base(meets) });
        match above_high && high.x == b.x {
            true => covered = Some(b),
            false if above_high => out.push(on_base(high.x)),
            false => {}
        }
    }
    // A slope that begins or ends on the base line's own corner.
    out.dedup();
    out
}

/// The roofs, decks and grounds that stand against the wall above its base line: boards keep their clearance over them.
pub(super) fn abutments(house: &House, wall: &Record, outline: &Outline, rules: &RuleSet) -> Result<Vec<Around>> {
    let mut around = Vec::new();
    for abutment in house.under(wall.id(), Kind::Abutment) {
        let (Some(what), Some(against)) = (abutment.text(Field::What), Against::of(abutment)) else { continue };
        // A sloped roof is no rectangle: the wall's outline runs along it.
        if against.is_sloped() {
            continue;
        }
        let Against { from, to, surface, .. } = against;
        let under = outline.sides().filter(|(a, b)| a.y == b.y && a.x < to && b.x > from);
        // Over ground that lies lower it is the base line that keeps clear.
        if under.map(|(a, _)| a.y).min().is_none_or(|base| surface <= base) {
            continue;
        }
        let gap = ObstructionGaps {
            side: rules.get_length(keys::GAP_TRIM)?,
            top: clearance_over(rules, what)?,
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
