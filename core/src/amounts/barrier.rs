use num_bigint::BigInt;

use super::item::{Draft, whole};
use super::{AmountError, CountedHouse, Item, Measure, Wording, WordingPlace, lengths};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{RuleError, keys};
use crate::wall::Outline;

/// One course of barrier on a wall: how long it is with its laps, and its upright seams.
struct BarrierCourse {
    length: Length,
    seams: i64,
}

/// Water barrier in courses from the bottom up, each over the one below, lapped round the corners of the wall and where a
/// roll ends; and the tape on its upright seams. Openings are cut out of it, so they take none off.
pub(super) fn items(house: &CountedHouse) -> Result<Vec<Item>, AmountError> {
    let courses = courses(house)?;
    let rule = |key: &'static str| Ok::<_, AmountError>(WordingPlace::Rule(house.rules.get(key)?));
    let width = house.rules.get_length(keys::BARRIER_ROLL_WIDTH)?;
    let (roll, tape) =
        (house.rules.get_length(keys::BARRIER_ROLL_LENGTH)?, house.rules.get_length(keys::BARRIER_TAPE_LENGTH)?);
    let waste = house.rules.get_share(keys::WASTE_MEMBRANE)?;
    let seams: i64 = courses.iter().map(|course| course.seams).sum();
    let draft = |material: &'static str, name, (net, pack): (BigInt, Length), pack_name, from| Draft {
        material,
        code: material.to_owned(),
        stock: None,
        name: Wording::new(name),
        measure: Measure::Length,
        net: whole(net),
        waste,
        pack: whole(pack.nm()),
        pack_name,
        least: 0,
        from,
    };
    let barrier = draft(
        "barrier",
        key("amounts-barrier"),
        (courses.iter().map(|course| BigInt::from(course.length.nm())).sum(), roll),
        Wording::new(key("amounts-pack-roll"))
            .with("width", rule(keys::BARRIER_ROLL_WIDTH)?)
            .with("length", rule(keys::BARRIER_ROLL_LENGTH)?),
        Wording::new(key("amounts-barrier-from")).count("courses", courses.len()),
    );
    let taped = draft(
        "barrier-tape",
        key("amounts-barrier-tape"),
        (BigInt::from(seams) * width.nm(), tape),
        Wording::new(key("amounts-pack-roll-of")).with("length", rule(keys::BARRIER_TAPE_LENGTH)?),
        Wording::new(key("amounts-barrier-tape-from")).count("seams", usize::try_from(seams).unwrap_or(usize::MAX)),
    );
    Ok([barrier.item()?, taped.item()?].into_iter().flatten().collect())
}

fn courses(house: &CountedHouse) -> Result<Vec<BarrierCourse>, RuleError> {
    let rule = |key: &str| house.rules.get_length(key);
    let (width, roll) = (rule(keys::BARRIER_ROLL_WIDTH)?, rule(keys::BARRIER_ROLL_LENGTH)?);
    let (over, end) = (rule(keys::BARRIER_LAP_HORIZONTAL)?, rule(keys::BARRIER_LAP_VERTICAL)?);
    let mut courses = Vec::new();
    for wall in &house.walls {
        for across in strips(&wall.outline, width, over) {
            // Round the corner at both ends.
            let length = across + end + end;
            let joins = lengths::joins(length, roll, end);
            let laps = end.checked_mul(joins).unwrap_or_default();
            courses.push(BarrierCourse { length: length + laps, seams: joins + 2 });
        }
    }
    Ok(courses)
}

/// The most courses of barrier that are counted on a wall.
const MOST: usize = 10_000;

/// How far the siding reaches from left to right in each course of a roll's width, from the bottom up.
fn strips(outline: &Outline, width: Length, over: Length) -> Vec<Length> {
    let step = (width - over).max(Length::from_inches(1));
    let bottoms = std::iter::successors(Some(outline.bottom()), |bottom| bottom.checked_add(step));
    let bottoms = bottoms.take_while(|bottom| *bottom == outline.bottom() || *bottom + over < outline.top());
    let reach = |bottom: Length| {
        let top = (bottom + width.max(over)).min(outline.top());
        let ends = outline.spans_at(bottom).into_iter().chain(outline.spans_at(top - Length::from_nm(1)));
        let corners = outline.points().iter().filter(|point| bottom <= point.y && point.y <= top).map(|point| point.x);
        let all: Vec<Length> = ends.flat_map(|span| [span.from, span.to]).chain(corners).collect();
        all.iter().max().copied().unwrap_or_default() - all.iter().min().copied().unwrap_or_default()
    };
    bottoms.take(MOST).map(reach).filter(|length| length.is_positive()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::Point;

    fn outline(points: &[(i64, i64)]) -> Outline {
        let inch = Length::from_inches;
        Outline::new(points.iter().map(|(x, y)| Point::new(inch(*x), inch(*y))).collect()).unwrap()
    }

    /// By hand: 36 in rolls that lap 2 in rise 34 in a course.
    #[test]
    fn courses_rise_by_the_roll_less_its_lap() {
        let inch = Length::from_inches;
        let strips = |points: &[(i64, i64)]| strips(&outline(points), inch(36), inch(2));
        let wall = |height| vec![(0, 0), (240, 0), (240, height), (0, height)];
        // 36 + 34 + 34 = 104 in are three courses, an inch more takes a fourth.
        assert_eq!(strips(&wall(104)), [inch(240); 3]);
        assert_eq!(strips(&wall(105)), [inch(240); 4]);
        assert_eq!(strips(&wall(10)), [inch(240)]);
        // A gable of 68 in over eaves at 36 in on a wall of 20 ft: the rake comes in by 120/68 a course. The second course
        // begins 2 in under the eaves, the third at 68 in, 36 in under the peak: as wide as 240 * 36 / 68.
        let gable = strips(&[(0, 0), (240, 0), (240, 36), (120, 104), (0, 36)]);
        assert_eq!(gable[..2], [inch(240); 2]);
        assert_eq!(gable[2].nm() / 1_000, (inch(240).nm() * 36 / 68) / 1_000);
        assert_eq!(gable.len(), 3);
    }
}
