use num_bigint::BigInt;
use num_traits::Zero;

use super::item::{Draft, whole};
use super::{AmountError, CountedHouse, CountedWall, Item, Measure, Wording, WordingPlace};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;

/// Starter strip under every bottom edge of the siding, from trim to trim; a door that stands on it leaves it out.
pub(super) fn item(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let (mut total, mut walls) = (BigInt::zero(), 0);
    for wall in &house.walls {
        let (left, right) = (wall.trim_left, wall.outline.width() - wall.trim_right);
        let length = along(wall, left, right);
        walls += usize::from(length.is_positive());
        total += length.nm();
    }
    let pack = house.rules.get_length(keys::STARTER_LENGTH)?;
    let draft = Draft {
        material: "starter",
        code: "starter".to_owned(),
        stock: None,
        name: Wording::new(key("amounts-starter")),
        measure: Measure::Length,
        net: whole(total),
        waste: house.rules.get_share(keys::WASTE_LENGTHS)?,
        pack: whole(pack.nm()),
        pack_name: Wording::new(key("amounts-pack-strip"))
            .with("length", WordingPlace::Rule(house.rules.get(keys::STARTER_LENGTH)?)),
        least: 0,
        from: Wording::new(key("amounts-starter-from")).count("walls", walls),
    };
    draft.item()
}

/// The bottom edges of a wall between two places: the sides of its outline that run to the right, doors left out.
pub(super) fn along(wall: &CountedWall, left: Length, right: Length) -> Length {
    let mut total = Length::ZERO;
    for (from, to) in wall.outline.sides().filter(|(from, to)| from.x < to.x) {
        let (a, b) = (from.x.max(left), to.x.min(right));
        if a >= b {
            continue;
        }
        let level = from.y.max(to.y);
        let stands = |bottom: Length, top: Length| bottom <= level && level < top;
        let doors = wall.openings.iter().filter(|opening| stands(opening.bottom, opening.top));
        let taken: Length = doors.map(|door| (door.right.min(b) - door.left.max(a)).max(Length::ZERO)).sum();
        total = total + (b - a - taken).max(Length::ZERO);
    }
    total
}
