use num_bigint::BigInt;

use super::item::{Draft, whole};
use super::{AmountError, CountedHouse, CountedWall, Hole, Item, Measure, Wording, WordingPlace};
use crate::flashing::{Patch, PatchBoard, PatchRequest, Pipe, WallRectangle};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{RuleError, keys};

/// Self-adhered membrane: a patch and the piece over its slit at everything that goes through a wall, as the patches
/// are cut, and whole rolls that they fit on side by side.
pub(super) fn item(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let mut sheets = Vec::new();
    for wall in &house.walls {
        for hole in &wall.holes {
            sheets.extend(cut(house, wall, hole)?);
        }
    }
    let count = house.holes().count();
    let (width, length) =
        (house.rules.get_length(keys::MEMBRANE_ROLL_WIDTH)?, house.rules.get_length(keys::MEMBRANE_ROLL_LENGTH)?);
    let area = |width: Length, height: Length| whole(BigInt::from(width.nm()) * height.nm());
    let draft = Draft {
        material: "membrane",
        code: "membrane".to_owned(),
        stock: None,
        name: Wording::new(key("amounts-membrane")),
        measure: Measure::Area,
        net: sheets.iter().map(|(width, height)| area(*width, *height)).sum(),
        waste: house.rules.get_share(keys::WASTE_MEMBRANE)?,
        pack: area(width, length),
        pack_name: Wording::new(key("amounts-pack-roll"))
            .with("width", WordingPlace::Rule(house.rules.get(keys::MEMBRANE_ROLL_WIDTH)?))
            .with("length", WordingPlace::Rule(house.rules.get(keys::MEMBRANE_ROLL_LENGTH)?)),
        least: rolls(sheets, width, length),
        from: Wording::new(key("amounts-membrane-from")).count("count", count),
    };
    draft.item()
}

/// The patch and, where it is slit, its cover: width and height.
fn cut(house: &CountedHouse, wall: &CountedWall, hole: &Hole) -> Result<Vec<(Length, Length)>, RuleError> {
    let board = house.board;
    let rule = |key: &str| house.rules.get_length(key);
    let (side, top, cover) =
        (rule(keys::PATCH_BEYOND_SIDE)?, rule(keys::PATCH_BEYOND_TOP)?, rule(keys::PATCH_COVER_BEYOND)?);
    let request = PatchRequest {
        board: PatchBoard { height: board.height, lap: board.lap, nail_line: board.nail_line },
        bottoms: wall.courses.iter().map(|course| course.bottom).collect(),
        block: WallRectangle { left: hole.x.from, right: hole.x.to, bottom: hole.y.from, top: hole.y.to },
        pipe: Pipe { shape: hole.shape, x: hole.centre.x, y: hole.centre.y },
        beyond_side: side,
        beyond_top: top,
        snug: rule(keys::PATCH_SNUG)?,
        slit: hole.assembly().patch_is_slit(),
        cover_beyond: cover,
    };
    let (sheet, cover) = match Patch::cut(&request) {
        Ok(patch) => {
            let cover = patch.slit.map(|slit| (slit.cover_width, slit.cover_height));
            ((patch.outline.width(), patch.outline.height()), cover)
        }
        // Where it cannot be told what it laps over below, it may reach down over a whole board.
        Err(_) => {
            let sheet = (hole.x.length() + side + side, hole.y.length() + top + board.height);
            (sheet, request.slit.then_some((cover + cover, top + cover)))
        }
    };
    Ok([Some(sheet), cover].into_iter().flatten().collect())
}

/// How many times as long as the roll is wide a sheet may be to be laid out.
const MOST: i128 = 100;

/// The rolls that the sheets are cut from: side by side across the roll, row after row, the longest first. A sheet
/// wider than the roll both ways is made of two strips.
fn rolls(mut sheets: Vec<(Length, Length)>, width: Length, length: Length) -> i64 {
    if !width.is_positive() || !length.is_positive() {
        return 0;
    }
    let mut along: Vec<(Length, Length)> = Vec::new();
    while let Some((a, b)) = sheets.pop() {
        let (long, short) = (a.max(b), a.min(b));
        // No patch is as long as many rolls: the area decides there.
        if long.wide() > MOST * length.wide().min(width.wide()) {
            continue;
        }
        if short > width {
            sheets.extend([(long, width), (long, short - width)]);
        } else if long > length {
            sheets.extend([(length, short), (long - length, short)]);
        } else if long.is_positive() && short.is_positive() {
            along.push((long, short));
        }
    }
    along.sort_by(|a, b| b.cmp(a));
    // Rows by how long they are and how much of their width is taken.
    let mut rows: Vec<(Length, Length)> = Vec::new();
    for (long, short) in along {
        match rows.iter_mut().find(|(_, taken)| *taken + short <= width) {
            Some((_, taken)) => *taken = *taken + short,
            None => rows.push((long, short)),
        }
    }
    let mut left: Vec<Length> = Vec::new();
    for (long, _) in rows {
        match left.iter_mut().find(|left| **left >= long) {
            Some(left) => *left = *left - long,
            None => left.push(length - long),
        }
    }
    i64::try_from(left.len()).unwrap_or(i64::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sheets_lie_side_by_side() {
        let inch = Length::from_inches;
        let rolls = |sheets: &[(i64, i64)], width: i64, length: i64| {
            rolls(sheets.iter().map(|(a, b)| (inch(*a), inch(*b))).collect(), inch(width), inch(length))
        };
        // Two of 13 in lie across 36 in: four of them, 20 in long, take 40 in of the roll.
        assert_eq!(rolls(&[(13, 20); 4], 36, 40), 1);
        assert_eq!(rolls(&[(13, 20); 5], 36, 40), 2);
        // A sheet wider than the roll both ways takes two strips.
        assert_eq!(rolls(&[(40, 40)], 36, 40), 2);
        assert_eq!(rolls(&[(40, 40)], 36, 80), 1);
        assert_eq!(rolls(&[], 36, 40), 0);
    }
}
