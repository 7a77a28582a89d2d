use super::item::{Draft, one, whole};
use super::{AmountError, CountedHouse, Item, Measure, Wording};
use crate::phrases::key;
use crate::wall::PenetrationKind;

/// An extension ring for every box, behind a light too: it may lie behind the finished face (NEC 314.20). Only who puts it
/// on sees whether it does.
pub(super) fn item(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let is_box = |kind: PenetrationKind| matches!(kind, PenetrationKind::ElectricalBox | PenetrationKind::Light);
    let boxes = house.holes().filter(|hole| is_box(hole.kind)).count();
    let draft = Draft {
        material: "extension-rings",
        code: "extension-ring".to_owned(),
        stock: None,
        name: Wording::new(key("amounts-extension-ring")),
        measure: Measure::Each,
        net: whole(boxes),
        waste: (0, 1),
        pack: one(),
        pack_name: Wording::new(key("amounts-pack-piece")),
        least: 0,
        from: Wording::new(key("amounts-extension-ring-from")).count("count", boxes),
    };
    draft.item()
}
