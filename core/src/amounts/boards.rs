use std::collections::BTreeMap;

use super::item::{Draft, one, whole};
use super::{AmountError, CountedHouse, Item, Measure, Wording, WordingPlace};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;

/// New boards by length, as the saw list takes them: its cutting waste is in the count, the allowance is for breakage.
pub(super) fn items(house: &CountedHouse) -> Result<Vec<Item>, AmountError> {
    let mut lengths: BTreeMap<Length, (usize, usize)> = BTreeMap::new();
    for board in house.cut.iter().filter(|board| !board.offcut) {
        let (boards, pieces) = lengths.entry(board.length).or_default();
        *boards += 1;
        *pieces += board.pieces;
    }
    let mut items = Vec::new();
    for (length, (boards, pieces)) in lengths.into_iter().rev() {
        let draft = Draft {
            material: "boards",
            code: format!("boards-{}", length.nm()),
            stock: Some(length),
            name: Wording::new(key("amounts-boards")).with("length", WordingPlace::Stock(length)),
            measure: Measure::Each,
            net: whole(boards),
            waste: house.rules.get_share(keys::WASTE_BOARDS)?,
            pack: one(),
            pack_name: Wording::new(key("amounts-pack-board")),
            least: 0,
            from: Wording::new(key("amounts-boards-from")).count("boards", boards).count("pieces", pieces),
        };
        items.extend(draft.item()?);
    }
    Ok(items)
}
