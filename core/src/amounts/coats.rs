use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::Zero;

use super::edges::{edges, length};
use super::item::{Draft, System, ratio, whole};
use super::{AmountError, CountedBoard, CountedHouse, Item, Measure, Wording, WordingPlace};
use crate::board::{BoardShape, Instructions};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{RuleSet, RuleUnit, keys};
use crate::wall::Opening;

/// Primer for the cut edges and paint for the faces; where boards come painted, what touches them up.
pub(super) fn items(house: &CountedHouse) -> Result<Vec<Item>, AmountError> {
    Ok([primer(house)?, paint(house)?, touch_up(house)?].into_iter().flatten().collect())
}

/// Primer: the edges of the boards that the factory did not make, by their thickness.
fn primer(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let boards = || house.walls.iter().flat_map(|wall| &wall.boards);
    let primed = |board: &CountedBoard| -> BigInt {
        Instructions::of(&board.shape, house.board.nail_line).primed.into_iter().map(length).sum()
    };
    let edge = boards().map(primed).sum::<BigInt>() - factory_ends(house);
    let area = whole(&edge * house.board.thickness.nm());
    let coats = house.rules.get_whole(keys::PRIMER_COATS)?;
    let from = Wording::new(key("amounts-primer-from"))
        .with("edge", WordingPlace::Amount(whole(edge), Measure::Length))
        .with("thickness", WordingPlace::Size(house.board.thickness));
    let keys = [keys::PRIMER_COVERAGE, keys::PRIMER_CAN];
    coat(&house.rules, "primer", Wording::new(key("amounts-primer")), area, coats, from, keys)
}

/// The walls without their openings, with the trim at their ends, in square nanometres.
fn faces(house: &CountedHouse) -> BigRational {
    let twice: BigInt = house
        .walls
        .iter()
        .map(|wall| {
            let openings: BigInt = wall.openings.iter().map(Opening::twice_area).sum();
            BigInt::from(wall.outline.twice_area()) - openings
        })
        .filter(|area| *area > BigInt::zero())
        .sum();
    whole(twice) / whole(2)
}

/// Paint for the faces.
fn paint(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let area = faces(house);
    let coats = house.rules.get_whole(keys::PAINT_COATS)?;
    let from = Wording::new(key("amounts-paint-from"))
        .with("area", WordingPlace::Amount(area.clone(), Measure::Area))
        .with("coats", WordingPlace::Whole(coats));
    coat(
        &house.rules,
        "paint",
        Wording::new(key("amounts-paint")),
        area,
        coats,
        from,
        [keys::PAINT_COVERAGE, keys::PAINT_CAN],
    )
}

/// Kits of the boards' own paint, for nails through the face, scratches and edges. Where the house is painted, its paint does.
fn touch_up(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    if house.rules.get_whole(keys::PAINT_COATS)? > 0 {
        return Ok(None);
    }
    let kit = house.rules.get(keys::TOUCH_UP_KIT)?;
    let area = faces(house);
    let draft = Draft {
        material: "touch-up",
        code: "touch-up".to_owned(),
        stock: None,
        name: Wording::new(key("amounts-touch-up")),
        measure: Measure::Area,
        net: area.clone(),
        waste: (0, 1),
        pack: kit.value_in(RuleUnit::SquareFoot).unwrap_or_default() * Measure::Area.worth(System::Inches),
        pack_name: Wording::new(key("amounts-pack-kit")).with("area", WordingPlace::Rule(kit)),
        least: 0,
        from: Wording::new(key("amounts-touch-up-from")).with("area", WordingPlace::Amount(area, Measure::Area)),
    };
    draft.item()
}

fn coat(
    rules: &RuleSet,
    material: &'static str,
    name: Wording,
    area: BigRational,
    coats: i64,
    from: Wording,
    [coverage, can]: [&str; 2],
) -> Result<Option<Item>, AmountError> {
    let (covers, can) = (rules.get(coverage)?, rules.get(can)?);
    let square_metre = ratio(1_000_000_000_000_000_000, 1);
    // Nothing is covered by a rule of zero: then there is nothing to count.
    let per_litre = covers.value_in(RuleUnit::SquareMetrePerLitre).filter(|value| !value.is_zero());
    let litres = per_litre.map(|per_litre| area / square_metre * whole(coats) / per_litre).unwrap_or_default();
    let draft = Draft {
        material,
        code: material.to_owned(),
        stock: None,
        name,
        measure: Measure::Coating,
        net: litres,
        waste: rules.get_share(keys::WASTE_COATING)?,
        pack: can.value_in(RuleUnit::Litre).unwrap_or_default(),
        pack_name: Wording::new(key("amounts-pack-can")).with("size", WordingPlace::Rule(can)),
        least: 0,
        from: from.with("coverage", WordingPlace::Rule(covers)),
    };
    draft.item()
}

/// The ends of pieces that are the factory's own. A new board has two; where something is left of it, that keeps one. An offcut
/// counts as cut at both. Which ends they are is the saw's affair: the lowest ones count, so that primer suffices.
fn factory_ends(house: &CountedHouse) -> BigInt {
    let mut ends: Vec<Vec<Length>> = vec![Vec::new(); house.cut.len()];
    for board in house.walls.iter().flat_map(|wall| &wall.boards) {
        if let Some(own) = ends.get_mut(board.cut_from) {
            own.extend(square_ends(&board.shape));
        }
    }
    let mut total = BigInt::zero();
    for (cut, mut ends) in house.cut.iter().zip(ends) {
        let kept = match (cut.offcut, cut.rest) {
            (true, _) => 0,
            (false, true) => 1,
            (false, false) => 2,
        };
        ends.sort_unstable();
        total += ends.iter().take(kept).map(|end| end.nm()).sum::<i64>();
    }
    total
}

/// How much of each end of a shape is square across; an end that slants all over has nothing.
fn square_ends(shape: &BoardShape) -> impl Iterator<Item = Length> + '_ {
    let square = |x: Length| -> Length {
        edges(shape).filter(|[from, to]| from.x == x && to.x == x).map(|[from, to]| (to.y - from.y).abs()).sum()
    };
    [Length::ZERO, shape.length].into_iter().map(square).filter(|end| end.is_positive())
}
