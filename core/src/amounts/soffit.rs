use super::lengths::{self, Sold};
use super::{AmountError, CountedHouse, Item, Wording, WordingPlace, trim};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;

/// The soffit along the eaves and the rakes, where the rules say how wide it is.
pub(super) fn item(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    if !house.rules.get_length(keys::SOFFIT_WIDTH)?.is_positive() {
        return Ok(None);
    }
    let pieces: Vec<Length> = house.walls.iter().flat_map(trim::tops).collect();
    let sold = Sold {
        material: "soffit",
        code: "soffit".to_owned(),
        name: Wording::new(key("amounts-soffit"))
            .with("width", WordingPlace::Rule(house.rules.get(keys::SOFFIT_WIDTH)?)),
        length: keys::SOFFIT_LENGTH,
        kerf: house.rules.get_length(keys::SAW_KERF)?,
    };
    let from = Wording::new(key("amounts-soffit-from")).count("count", pieces.len());
    lengths::draft(house, sold, &pieces, from)?.item()
}
