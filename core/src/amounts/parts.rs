use num_bigint::BigInt;

use super::item::{Draft, one, whole};
use super::lengths::{self, Sold};
use super::starter::along;
use super::{AmountError, CountedHouse, CountedWall, Item, Measure, WallPart, Wording, WordingPlace, trim};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;

/// What the details of the walls take: flashing along the base line and along what lies level against a wall, step
/// flashings and kick-outs up a roof, furring strips and the vent strips over and under them.
pub(super) fn items(house: &CountedHouse) -> Result<Vec<Item>, AmountError> {
    let flashing = |part: &WallPart| if let WallPart::Flashing(length) = part { Some(*length) } else { None };
    let furring = |part: &WallPart| if let WallPart::Furring(length) = part { Some(*length) } else { None };
    let level: Vec<Length> = house.parts().filter_map(flashing).collect();
    let strips: Vec<Length> = house.parts().filter_map(furring).collect();
    let foot = |wall: &CountedWall| along(wall, Length::ZERO, wall.outline.width());
    let feet: Vec<Length> = house.walls.iter().map(foot).collect();
    let furred = |wall: &&CountedWall| wall.parts.iter().any(|part| furring(part).is_some());
    let vents = house.walls.iter().filter(furred);
    let vents: Vec<Length> = vents.flat_map(|wall| [foot(wall), trim::along_top(wall)]).collect();
    let sold = |material: &'static str, name, length| Sold {
        material,
        code: material.to_owned(),
        name: Wording::new(name),
        length,
        kerf: Length::ZERO,
    };
    let of = |key: &'static str, pieces: &[Length]| Wording::new(key).count("count", pieces.len());
    let flashing = sold("wall-flashing", key("amounts-wall-flashing"), keys::FLASHING_LENGTH);
    let furring = sold("furring", key("amounts-furring"), keys::FURRING_LENGTH);
    let base = sold("base-flashing", key("amounts-base-flashing"), keys::FLASHING_LENGTH);
    let vent = sold("vent-strip", key("amounts-vent-strip"), keys::VENT_STRIP_LENGTH);
    let items = [
        lengths::draft(house, base, &feet, of(key("amounts-base-flashing-from"), &feet))?.item()?,
        lengths::draft(house, flashing, &level, of(key("amounts-wall-flashing-from"), &level))?.item()?,
        step_flashings(house)?,
        kick_outs(house)?,
        lengths::draft(house, furring, &strips, of(key("amounts-furring-from"), &strips))?.item()?,
        lengths::draft(house, vent, &vents, of(key("amounts-vent-strip-from"), &vents))?.item()?,
    ];
    Ok(items.into_iter().flatten().collect())
}

/// One piece a course of the roofing.
fn step_flashings(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let pieces = |part: &WallPart| if let WallPart::StepFlashings(pieces) = part { *pieces } else { 0 };
    let each = WordingPlace::Rule(house.rules.get(keys::STEP_FLASHING_EACH)?);
    let net: BigInt = house.parts().map(pieces).map(BigInt::from).sum();
    let from = Wording::new(key("amounts-step-flashing-from")).with("each", each);
    let waste = house.rules.get_share(keys::WASTE_LENGTHS)?;
    pieces_of("step-flashing", key("amounts-step-flashing"), (net, waste), from).item()
}

/// One at the foot of every sloped roof.
fn kick_outs(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let count = house.parts().filter(|part| matches!(part, WallPart::StepFlashings(_))).count();
    let from = Wording::new(key("amounts-kick-out-from")).count("count", count);
    // A handful is bought by the piece, and none is spoilt.
    pieces_of("kick-out", key("amounts-kick-out"), (BigInt::from(count), (0, 1)), from).item()
}

fn pieces_of(material: &'static str, name: &'static str, (net, waste): (BigInt, (i64, i64)), from: Wording) -> Draft {
    Draft {
        material,
        code: material.to_owned(),
        stock: None,
        name: Wording::new(name),
        measure: Measure::Each,
        net: whole(net),
        waste,
        pack: one(),
        pack_name: Wording::new(key("amounts-pack-piece")),
        least: 0,
        from,
    }
}
