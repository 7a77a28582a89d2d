use super::item::{Draft, whole};
use super::lengths::packs;
use super::{AmountError, House, Item, Measure, Place, Words};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;

/// Head flashing over windows, doors and the blocks that carry one: as wide as what is under it, with an end dam turned
/// up at each end.
pub(super) fn item(house: &House) -> Result<Option<Item>, AmountError> {
    let dam = house.rules.get_length(keys::HEAD_FLASHING_END_DAM)?;
    let heads = house.walls.iter().flat_map(|wall| &wall.openings).map(|opening| opening.head().length());
    let mut pieces: Vec<Length> = heads.map(|width| width + dam + dam).collect();
    let openings = pieces.len();
    let blocks = house.holes().filter(|hole| hole.head_flashing).map(|hole| hole.x.length());
    pieces.extend(blocks.map(|width| width + dam + dam));
    let holes = pieces.len() - openings;
    let stock = house.rules.get_length(keys::FLASHING_LENGTH)?;
    let draft = Draft {
        material: "flashing",
        code: "head-flashing".to_owned(),
        stock: None,
        name: Words::new(key("amounts-flashing")),
        measure: Measure::Length,
        net: pieces.iter().map(|piece| whole(piece.nm())).sum(),
        waste: house.rules.get_share(keys::WASTE_LENGTHS)?,
        pack: whole(stock.nm()),
        pack_name: Words::new(key("amounts-pack-length"))
            .with("length", Place::Rule(house.rules.get(keys::FLASHING_LENGTH)?)),
        least: packs("flashing", &pieces, stock, Length::ZERO)?,
        from: Words::new(key("amounts-flashing-from"))
            .count("openings", openings)
            .count("blocks", holes)
            .with("dam", Place::Rule(house.rules.get(keys::HEAD_FLASHING_END_DAM)?)),
    };
    draft.item()
}
