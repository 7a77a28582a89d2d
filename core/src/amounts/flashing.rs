use super::lengths::{self, Sold};
use super::{AmountError, CountedHouse, Item, Wording, WordingPlace};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;

/// Head flashing over windows, doors and what else carries one: as wide as what is under it, with an end dam turned up at
/// each end; past an opening as far as the house's own rules ask for.
pub(super) fn item(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let dam = house.rules.get_length(keys::HEAD_FLASHING_END_DAM)?;
    let heads = house.walls.iter().flat_map(|wall| &wall.openings).map(|opening| opening.head().length());
    let beyond = house.rules.get_own_length(keys::FLASHING_BEYOND_OPENING)?.unwrap_or_default().max(dam);
    let mut pieces: Vec<Length> = heads.map(|width| width + beyond + beyond).collect();
    let openings = pieces.len();
    let blocks = house.holes().filter(|hole| hole.assembly().has_head_flashing()).map(|hole| hole.x.length());
    pieces.extend(blocks.map(|width| width + dam + dam));
    let holes = pieces.len() - openings;
    let stock = house.rules.get_length(keys::FLASHING_LENGTH)?;
    let lap = house.rules.get_own_length(keys::FLASHING_LAP)?.unwrap_or_default();
    for piece in &mut pieces {
        *piece = joined(*piece, stock, lap);
    }
    let sold = Sold {
        material: "flashing",
        code: "head-flashing".to_owned(),
        name: Wording::new(key("amounts-flashing")),
        length: keys::FLASHING_LENGTH,
        kerf: Length::ZERO,
    };
    let from = Wording::new(key("amounts-flashing-from"))
        .count("openings", openings)
        .count("blocks", holes)
        .with("dam", WordingPlace::Rule(house.rules.get(keys::HEAD_FLASHING_END_DAM)?));
    lengths::draft(house, sold, &pieces, from)?.item()
}

/// The length of a head with the laps of its pieces, where it is longer than the flashing as it is sold.
fn joined(head: Length, stock: Length, lap: Length) -> Length {
    let laps = lengths::joins(head, stock, lap);
    lap.checked_mul(laps).and_then(|laps| head.checked_add(laps)).unwrap_or(head)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NCC 2022 Housing Provisions 7.5.6: pieces lap by 75 mm. Two of 3000 mm reach 5925 mm.
    #[test]
    fn a_long_head_is_joined_with_a_lap() {
        let mm = Length::from_mm;
        let joined = |head| joined(mm(head), mm(3000), mm(75));
        assert_eq!((joined(3000), joined(3001)), (mm(3000), mm(3076)));
        assert_eq!((joined(5925), joined(5926)), (mm(6000), mm(6076)));
        assert_eq!(super::joined(mm(7000), mm(3000), mm(0)), mm(7000));
    }
}
