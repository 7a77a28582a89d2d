use num_bigint::BigInt;

use super::item::{Draft, one, whole};
use super::lengths::packs;
use super::{AmountError, House, Item, Measure, Place, WallPart, Words};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;

/// What the details of the walls take: flashing along what lies level against a wall, step flashings and kick-outs up a
/// roof, furring strips.
pub(super) fn items(house: &House) -> Result<Vec<Item>, AmountError> {
    let flashing = |part: &WallPart| if let WallPart::Flashing(length) = part { Some(*length) } else { None };
    let furring = |part: &WallPart| if let WallPart::Furring(length) = part { Some(*length) } else { None };
    let level: Vec<Length> = house.parts().filter_map(flashing).collect();
    let strips: Vec<Length> = house.parts().filter_map(furring).collect();
    let items = [
        lengths(
            house,
            "wall-flashing",
            (key("amounts-wall-flashing"), key("amounts-wall-flashing-from")),
            &level,
            keys::FLASHING_LENGTH,
        )?,
        step_flashings(house)?,
        kick_outs(house)?,
        lengths(
            house,
            "furring",
            (key("amounts-furring"), key("amounts-furring-from")),
            &strips,
            keys::FURRING_LENGTH,
        )?,
    ];
    Ok(items.into_iter().flatten().collect())
}

/// Pieces that are cut from lengths as they are sold.
fn lengths(
    house: &House,
    material: &'static str,
    (name, from): (&'static str, &'static str),
    pieces: &[Length],
    sold: &str,
) -> Result<Option<Item>, AmountError> {
    let stock = house.rules.get_length(sold)?;
    let draft = Draft {
        material,
        code: material.to_owned(),
        stock: None,
        name: Words::new(name),
        measure: Measure::Length,
        net: whole(pieces.iter().map(|piece| BigInt::from(piece.nm())).sum::<BigInt>()),
        waste: house.rules.get_share(keys::WASTE_LENGTHS)?,
        pack: whole(stock.nm()),
        pack_name: Words::new(key("amounts-pack-length")).with("length", Place::Rule(house.rules.get(sold)?)),
        least: packs(material, pieces, stock, Length::ZERO)?,
        from: Words::new(from).count("count", pieces.len()),
    };
    draft.item()
}

/// One piece a course of the roofing.
fn step_flashings(house: &House) -> Result<Option<Item>, AmountError> {
    let pieces = |part: &WallPart| if let WallPart::StepFlashings(pieces) = part { *pieces } else { 0 };
    let each = Place::Rule(house.rules.get(keys::STEP_FLASHING_EACH)?);
    let net: BigInt = house.parts().map(pieces).map(BigInt::from).sum();
    let from = Words::new(key("amounts-step-flashing-from")).with("each", each);
    pieces_of(house, "step-flashing", key("amounts-step-flashing"), net, from)?.item()
}

/// One at the foot of every sloped roof.
fn kick_outs(house: &House) -> Result<Option<Item>, AmountError> {
    let count = house.parts().filter(|part| matches!(part, WallPart::StepFlashings(_))).count();
    let from = Words::new(key("amounts-kick-out-from")).count("count", count);
    pieces_of(house, "kick-out", key("amounts-kick-out"), BigInt::from(count), from)?.item()
}

fn pieces_of(
    house: &House,
    material: &'static str,
    name: &'static str,
    net: BigInt,
    from: Words,
) -> Result<Draft, AmountError> {
    // None is spoilt where there is only a handful: a kick-out is bought by the piece.
    let waste = if material == "kick-out" { (0, 1) } else { house.rules.get_share(keys::WASTE_LENGTHS)? };
    Ok(Draft {
        material,
        code: material.to_owned(),
        stock: None,
        name: Words::new(name),
        measure: Measure::Each,
        net: whole(net),
        waste,
        pack: one(),
        pack_name: Words::new(key("amounts-pack-piece")),
        least: 0,
        from,
    })
}
