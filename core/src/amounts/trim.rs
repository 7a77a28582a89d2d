use std::collections::BTreeMap;

use super::item::{Draft, whole};
use super::lengths::packs;
use super::{AmountError, Hole, House, Item, Measure, Place, Wall, Words};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::wall::{Finish, OpeningKind};

/// Trim at the walls' ends by width, round windows and doors, and round fixtures that are finished with it.
pub(super) fn items(house: &House) -> Result<Vec<Item>, AmountError> {
    let mut widths: BTreeMap<Length, Vec<Length>> = BTreeMap::new();
    for (width, height) in house.walls.iter().flat_map(ends) {
        widths.entry(width).or_default().push(height);
    }
    let mut items = Vec::new();
    for (width, pieces) in widths {
        let name = Words::new(key("amounts-trim-end")).with("width", Place::Size(width));
        let from = Words::new(key("amounts-trim-end-from")).count("count", pieces.len());
        items.extend(item(house, format!("trim-end-{}", width.nm()), name, from, &pieces)?);
    }
    let pieces: Vec<Length> = house.walls.iter().flat_map(round_openings).collect();
    let openings = house.walls.iter().map(|wall| wall.openings.len()).sum();
    let from = Words::new(key("amounts-trim-round-from")).count("count", openings);
    items.extend(item(house, "trim-openings".to_owned(), Words::new(key("amounts-trim-round")), from, &pieces)?);

    let pieces: Vec<Length> = house.holes().flat_map(round_hole).collect();
    let from = Words::new(key("amounts-trim-holes-from")).count("count", pieces.len() / 4);
    items.extend(item(house, "trim-fixtures".to_owned(), Words::new(key("amounts-trim-holes")), from, &pieces)?);
    Ok(items)
}

/// Every piece of trim of a house.
pub(super) fn pieces(house: &House) -> impl Iterator<Item = Length> {
    let walls = house.walls.iter().flat_map(|wall| ends(wall).map(|(_, height)| height).chain(round_openings(wall)));
    walls.chain(house.holes().flat_map(round_hole))
}

/// Width and height of the trim at a wall's ends.
fn ends(wall: &Wall) -> impl Iterator<Item = (Length, Length)> + use<> {
    let (left, right) = heights(wall);
    let both = [(wall.trim_left, left), (wall.trim_right, right)];
    both.into_iter().filter(|(width, height)| width.is_positive() && height.is_positive())
}

/// Sides, head and, at a window, sill.
fn round_openings(wall: &Wall) -> impl Iterator<Item = Length> {
    wall.openings.iter().flat_map(|opening| {
        let side = |lean: Length| {
            let (up, across) = ((opening.top - opening.bottom).wide(), lean.wide());
            Length::from_wide((up * up + across * across).isqrt()).unwrap_or(Length::LIMIT)
        };
        let sides = [side(opening.head_left - opening.left), side(opening.head_right - opening.right)];
        let sill = (opening.kind == OpeningKind::Window).then_some(opening.sill().length());
        sides.into_iter().chain([opening.head().length()]).chain(sill)
    })
}

/// The four sides of what is finished with trim all round.
fn round_hole(hole: &Hole) -> impl Iterator<Item = Length> + use<> {
    let (width, height) = (hole.x.length(), hole.y.length());
    let sides = (hole.finish == Finish::Trim).then_some([width, width, height, height]);
    sides.into_iter().flatten()
}

/// The heights of a wall's two plumb ends.
fn heights(wall: &Wall) -> (Length, Length) {
    let sides = wall.outline.sides().filter(|(from, to)| from.x == to.x);
    let (start, end) = (Length::ZERO, wall.outline.width());
    let (mut left, mut right) = (Length::ZERO, Length::ZERO);
    for (from, to) in sides {
        // Counter-clockwise, the right end goes up and the left end comes down.
        if from.x == end && to.y > from.y {
            right = right + (to.y - from.y);
        } else if from.x == start && from.y > to.y {
            left = left + (from.y - to.y);
        }
    }
    (left, right)
}

fn item(house: &House, code: String, name: Words, from: Words, pieces: &[Length]) -> Result<Option<Item>, AmountError> {
    let stock = house.rules.get_length(keys::TRIM_LENGTH)?;
    let draft = Draft {
        material: "trim",
        code,
        stock: None,
        name,
        measure: Measure::Length,
        net: pieces.iter().map(|piece| whole(piece.nm())).sum(),
        waste: house.rules.get_share(keys::WASTE_LENGTHS)?,
        pack: whole(stock.nm()),
        pack_name: Words::new(key("amounts-pack-length"))
            .with("length", Place::Rule(house.rules.get(keys::TRIM_LENGTH)?)),
        least: packs("trim", pieces, stock, house.rules.get_length(keys::SAW_KERF)?)?,
        from,
    };
    draft.item()
}
