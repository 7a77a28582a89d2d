use std::collections::BTreeMap;

use super::item::{Draft, one, whole};
use super::{AmountError, CountedHouse, Item, Measure, Wording, WordingPlace};
use crate::phrases::key;
use crate::wall::{Finish, Mounting};

/// Mounting blocks by size, split or in one piece, and collars. Nothing is allowed for waste: each is made for its place.
pub(super) fn items(house: &CountedHouse) -> Result<Vec<Item>, AmountError> {
    let mut blocks: BTreeMap<_, usize> = BTreeMap::new();
    let mut collars = 0;
    for hole in house.holes() {
        match (hole.finish, hole.thickness) {
            (Finish::Block, Some(thickness)) => {
                let split = hole.mounting == Mounting::Split;
                *blocks.entry((hole.x.length(), hole.y.length(), thickness, split)).or_default() += 1;
            }
            (Finish::Collar, _) => collars += 1,
            _ => {}
        }
    }
    let mut items = Vec::new();
    for ((width, height, thickness, split), count) in blocks {
        let name = if split { key("amounts-block-split") } else { key("amounts-block") };
        let name = Wording::new(name)
            .with("width", WordingPlace::Size(width))
            .with("height", WordingPlace::Size(height))
            .with("thickness", WordingPlace::Size(thickness));
        let from = if split { key("amounts-block-split-from") } else { key("amounts-block-from") };
        let kind = if split { "split" } else { "whole" };
        let code = format!("block-{kind}-{}-{}-{}", width.nm(), height.nm(), thickness.nm());
        items.extend(each("blocks", code, name, Wording::new(from).count("count", count), count).item()?);
    }
    let from = Wording::new(key("amounts-collar-from")).count("count", collars);
    items.extend(each("collars", "collar".to_owned(), Wording::new(key("amounts-collar")), from, collars).item()?);
    Ok(items)
}

fn each(material: &'static str, code: String, name: Wording, from: Wording, count: usize) -> Draft {
    Draft {
        material,
        code,
        stock: None,
        name,
        measure: Measure::Each,
        net: whole(count),
        waste: (0, 1),
        pack: one(),
        pack_name: Wording::new(key("amounts-pack-piece")),
        least: 0,
        from,
    }
}
