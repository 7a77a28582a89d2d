use super::item::{Draft, one, whole};
use super::{AmountError, CountedHouse, Item, Measure, Wording, WordingPlace};
use crate::phrases::key;
use crate::rules::keys;

/// A strip of flashing behind every butt joint (IRC 2024 R703.10.2 names it among other ways), cut from sheet.
pub(super) fn item(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let joints = house.joints();
    let width = house.rules.get(keys::JOINT_BACKING_WIDTH)?;
    let draft = Draft {
        material: "backing",
        code: "joint-strips".to_owned(),
        stock: None,
        name: Wording::new(key("amounts-backing"))
            .with("width", WordingPlace::Rule(width))
            .with("height", WordingPlace::Size(house.board.height)),
        measure: Measure::Each,
        net: whole(joints),
        waste: house.rules.get_share(keys::WASTE_FASTENERS)?,
        pack: one(),
        pack_name: Wording::new(key("amounts-pack-piece")),
        least: 0,
        from: Wording::new(key("amounts-backing-from")).count("joints", joints),
    };
    draft.item()
}
