use std::collections::BTreeMap;

use super::lengths::{self, Sold};
use super::{AmountError, CountedHouse, CountedWall, Hole, Item, Wording, WordingPlace};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::wall::{Finish, Opening, OpeningKind};

/// The pieces of trim of one width, and what they go round.
#[derive(Default)]
struct Width {
    pieces: Vec<Length>,
    ends: usize,
    openings: usize,
    fixtures: usize,
}

/// Trim by its width: at the walls' ends as each wall has it, round windows, doors and fixtures as the rules have it; then
/// frieze and rake trim.
/// A piece is as long as the edge that the boards meet, so that its corners may be mitred.
pub(super) fn items(house: &CountedHouse) -> Result<Vec<Item>, AmountError> {
    let mut widths: BTreeMap<Length, Width> = BTreeMap::new();
    for (width, height) in house.walls.iter().flat_map(ends) {
        let own = widths.entry(width).or_default();
        own.ends += 1;
        own.pieces.push(height);
    }
    let round = widths.entry(house.rules.get_length(keys::TRIM_WIDTH)?).or_default();
    for opening in house.walls.iter().flat_map(|wall| &wall.openings) {
        round.openings += 1;
        round.pieces.extend(round_opening(opening));
    }
    for hole in house.holes().filter(|hole| hole.finish == Finish::Trim) {
        round.fixtures += 1;
        round.pieces.extend(round_hole(hole));
    }
    let items = widths.into_iter().map(|(width, own)| item(house, width, &own)).chain([top_item(house)]);
    items.filter_map(Result::transpose).collect()
}

/// Every piece of trim of a house.
pub(super) fn pieces(house: &CountedHouse) -> impl Iterator<Item = Length> {
    let openings = house.walls.iter().flat_map(|wall| &wall.openings).flat_map(round_opening);
    let fixtures = house.holes().filter(|hole| hole.finish == Finish::Trim).flat_map(round_hole);
    let ends = house.walls.iter().flat_map(|wall| ends(wall).map(|(_, height)| height));
    ends.chain(openings).chain(house.walls.iter().flat_map(tops)).chain(fixtures)
}

/// The top edges of a wall, level and sloped: the sides of its outline that run to the left.
pub(super) fn tops(wall: &CountedWall) -> impl Iterator<Item = Length> + '_ {
    let sides = wall.outline.sides().filter(|(from, to)| to.x < from.x);
    sides.map(|(from, to)| across((from.x - to.x).wide(), (to.y - from.y).wide()))
}

/// How long the top edges of a wall are together.
pub(super) fn along_top(wall: &CountedWall) -> Length {
    tops(wall).sum()
}

/// The length of a slope.
fn across(run: i128, rise: i128) -> Length {
    Length::from_wide((run * run + rise * rise).isqrt()).unwrap_or(Length::LIMIT)
}

/// Width and height of the trim at a wall's ends.
fn ends(wall: &CountedWall) -> impl Iterator<Item = (Length, Length)> + use<> {
    let (left, right) = heights(wall);
    let both = [(wall.trim_left, left), (wall.trim_right, right)];
    both.into_iter().filter(|(width, height)| width.is_positive() && height.is_positive())
}

/// Sides, head and, at a window, sill.
fn round_opening(opening: &Opening) -> impl Iterator<Item = Length> + use<> {
    let (top, bottom) = (opening.top, opening.bottom);
    let side = move |lean: Length| across((top - bottom).wide(), lean.wide());
    let sides = [side(opening.head_left - opening.left), side(opening.head_right - opening.right)];
    let sill = (opening.kind == OpeningKind::Window).then_some(opening.sill().length());
    sides.into_iter().chain([opening.head().length()]).chain(sill)
}

/// The four sides of a fixture.
fn round_hole(hole: &Hole) -> [Length; 4] {
    let (width, height) = (hole.x.length(), hole.y.length());
    [width, width, height, height]
}

/// The heights of a wall's two plumb ends.
fn heights(wall: &CountedWall) -> (Length, Length) {
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

/// The frieze under the soffits, and the trim along the rakes.
fn top_item(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let pieces: Vec<Length> = house.walls.iter().flat_map(tops).collect();
    let sold = Sold {
        material: "top-trim",
        code: "top-trim".to_owned(),
        name: Wording::new(key("amounts-top-trim"))
            .with("width", WordingPlace::Rule(house.rules.get(keys::TRIM_WIDTH)?)),
        length: keys::TRIM_LENGTH,
        kerf: house.rules.get_length(keys::SAW_KERF)?,
    };
    let from = Wording::new(key("amounts-top-trim-from")).count("count", pieces.len());
    lengths::draft(house, sold, &pieces, from)?.item()
}

fn item(house: &CountedHouse, width: Length, own: &Width) -> Result<Option<Item>, AmountError> {
    let from = Wording::new(key("amounts-trim-from"))
        .count("ends", own.ends)
        .count("openings", own.openings)
        .count("fixtures", own.fixtures);
    let sold = Sold {
        material: "trim",
        code: format!("trim-{}", width.nm()),
        name: Wording::new(key("amounts-trim")).with("width", WordingPlace::Size(width)),
        length: keys::TRIM_LENGTH,
        kerf: house.rules.get_length(keys::SAW_KERF)?,
    };
    lengths::draft(house, sold, &own.pieces, from)?.item()
}
