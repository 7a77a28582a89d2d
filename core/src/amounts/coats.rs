use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::Zero;

use super::item::{Draft, ratio, whole};
use super::{AmountError, House, Item, Measure, Place, Wall, Words};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{RuleSet, RuleUnit, keys};
use crate::siding::{CourseLine, End};
use crate::wall::Opening;

/// Primer for the cut edges and paint for the faces.
pub(super) fn items(house: &House) -> Result<Vec<Item>, AmountError> {
    Ok(primer(house)?.into_iter().chain(paint(house)?).collect())
}

/// Primer: the cut edges of the boards by their thickness.
fn primer(house: &House) -> Result<Option<Item>, AmountError> {
    let ends = cut_ends(house) * house.board.height.nm() + bevels(house);
    let notches: BigInt = house.walls.iter().map(notches).sum();
    let rips: BigInt = house.walls.iter().map(|wall| rips(house, wall)).sum();
    let edge = ends + notches + rips;
    let area = whole(&edge * house.board.thickness.nm());
    let coats = house.rules.get_whole(keys::PRIMER_COATS)?;
    let from = Words::new(key("amounts-primer-from"))
        .with("edge", Place::Amount(whole(edge), Measure::Length))
        .with("thickness", Place::Size(house.board.thickness));
    let keys = [keys::PRIMER_COVERAGE, keys::PRIMER_CAN];
    coat(&house.rules, "primer", Words::new(key("amounts-primer")), area, coats, from, keys)
}

/// Paint: the walls without their openings, with the trim at their ends.
fn paint(house: &House) -> Result<Option<Item>, AmountError> {
    let twice: BigInt = house
        .walls
        .iter()
        .map(|wall| {
            let openings: BigInt = wall.openings.iter().map(Opening::twice_area).sum();
            BigInt::from(wall.outline.twice_area()) - openings
        })
        .filter(|area| *area > BigInt::zero())
        .sum();
    let area = whole(twice) / whole(2);
    let coats = house.rules.get_whole(keys::PAINT_COATS)?;
    let from = Words::new(key("amounts-paint-from"))
        .with("area", Place::Amount(area.clone(), Measure::Area))
        .with("coats", Place::Whole(coats));
    coat(
        &house.rules,
        "paint",
        Words::new(key("amounts-paint")),
        area,
        coats,
        from,
        [keys::PAINT_COVERAGE, keys::PAINT_CAN],
    )
}

fn coat(
    rules: &RuleSet,
    material: &'static str,
    name: Words,
    area: BigRational,
    coats: i64,
    from: Words,
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
        pack_name: Words::new(key("amounts-pack-can")).with("size", Place::Rule(can)),
        least: 0,
        from: from.with("coverage", Place::Rule(covers)),
    };
    draft.item()
}

/// How many ends of pieces the saw makes. A new board has two ends from the factory; where nothing is left of it, the
/// last piece keeps one. An offcut has one such end at most.
fn cut_ends(house: &House) -> BigInt {
    let ends = house.cut.iter().map(|board| {
        let factory = usize::from(!board.offcut) + usize::from(!board.rest && !board.offcut);
        BigInt::from((2 * board.pieces).saturating_sub(factory))
    });
    ends.sum()
}

/// What the rakes' slanting ends are longer than square ones.
fn bevels(house: &House) -> BigInt {
    let runs = house.walls.iter().flat_map(|wall| wall.runs.iter().map(move |run| (wall, run)));
    let longer = runs.map(|(wall, run)| {
        let height = wall.course(&run.run).map_or(Length::ZERO, |course| course.height);
        slant(height, run.run.left) + slant(height, run.run.right)
    });
    longer.sum()
}

fn slant(height: Length, end: End) -> BigInt {
    let (up, across) = (BigInt::from(height.nm()), BigInt::from(end.bevel().nm()));
    (&up * &up + &across * &across).sqrt() - up
}

/// The edges of the notches round openings and blocks. Where an opening covers a board's whole height, its boards end
/// there; a block's sides are cut out of every board that they cross.
fn notches(wall: &Wall) -> BigInt {
    let openings = wall.openings.iter().map(|it| (it.sill().length(), it.head().length(), it.bottom, it.top, false));
    let holes = wall.holes.iter().map(|it| (it.x.length(), it.x.length(), it.y.from, it.y.to, true));
    let edges = openings.chain(holes).flat_map(|(sill, head, bottom, top, block)| {
        wall.courses.iter().map(move |course| notch(course, (sill, head), bottom, top, block))
    });
    edges.sum()
}

fn notch(course: &CourseLine, (sill, head): (Length, Length), bottom: Length, top: Length, block: bool) -> BigInt {
    let (from, to) = (bottom.max(course.bottom), top.min(course.top()));
    let through = bottom <= course.bottom && top >= course.top();
    if from >= to || (through && !block) {
        return BigInt::zero();
    }
    let inside = |edge: Length| course.bottom < edge && edge < course.top();
    let across = |edge: Length, width: Length| if inside(edge) { width.nm() } else { 0 };
    BigInt::from(2) * (to - from).nm() + across(bottom, sill) + across(top, head)
}

/// The length of the boards that are ripped: at the bottom, under the top, or both.
fn rips(house: &House, wall: &Wall) -> BigInt {
    let ripped = wall.runs.iter().filter_map(|run| {
        let course = wall.course(&run.run)?;
        let cuts = usize::from(course.height < house.board.height) + usize::from(course.top() > wall.outline.top());
        Some(BigInt::from(cuts) * (run.run.to() - run.run.from()).nm())
    });
    ripped.sum()
}
