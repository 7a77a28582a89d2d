use num_bigint::BigInt;
use num_traits::Zero;

use super::item::{Draft, whole};
use super::{AmountError, CountedBoard, CountedHouse, CountedWall, Item, Measure, Wording, WordingPlace, nail, trim};
use crate::board::Nailing;
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{RuleError, keys};
use crate::wall::Finish;

/// The most studs that are counted along a board.
const STUDS: usize = 10_000;

/// Nails for the boards and the trim, and screws for the blocks.
pub(super) fn items(house: &CountedHouse) -> Result<Vec<Item>, AmountError> {
    Ok([nails(house)?, trim_nails(house)?, screws(house)?].into_iter().flatten().collect())
}

/// One nail (or as many as the rules say) at every stud that a board crosses, more at a joint. Where its nail line is cut away
/// there it goes through the face.
fn nails(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let per_stud = house.rules.get_whole(keys::NAILS_PER_STUD)?;
    let at_joint = house.rules.get_whole(keys::NAILS_AT_JOINT)?;
    let boards = || house.walls.iter().flat_map(|wall| wall.boards.iter().map(move |board| (wall, board)));
    let crossed: usize = boards().map(|(wall, board)| studs(wall, board).len()).sum();
    let face: usize = boards().map(|(wall, board)| through_face(house, wall, board)).sum();
    let joints = house.joints();
    let net = BigInt::from(crossed) * per_stud + BigInt::from(joints) * at_joint;
    let from =
        Wording::new(key("amounts-nails-from")).count("studs", crossed).count("joints", joints).count("face", face);
    let length = nail::siding_nail(&house.rules, house.board.thickness)?;
    let name = Wording::new(key("amounts-nails")).with("length", WordingPlace::Size(length));
    boxed(house, "nails", name, net, from, keys::NAILS_PACK)?.item()
}

/// The studs under a board between its ends; a joint has nails of its own.
fn studs(wall: &CountedWall, board: &CountedBoard) -> Vec<Length> {
    let (from, to) = (board.shape.at.x, board.shape.at.x + board.shape.length);
    let [left, right] = board.joints;
    let mut studs = wall.studs.within(from, to, STUDS);
    studs.retain(|at| !(left && *at == from || right && *at == to));
    studs
}

/// How many of them the nail line of a board does not reach.
fn through_face(house: &CountedHouse, wall: &CountedWall, board: &CountedBoard) -> usize {
    let blind = Nailing::of(&board.shape, house.board.nail_line).blind;
    let on_line = |at: &Length| {
        let x = *at - board.shape.at.x;
        blind.iter().any(|span| span.from <= x && x <= span.to)
    };
    studs(wall, board).iter().filter(|at| !on_line(at)).count()
}

/// Nails side by side along every piece of trim, one set at each end and as far apart as the studs.
fn trim_nails(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let spacing = house.rules.get_length(keys::TRIM_NAIL_SPACING)?.nm().max(1);
    let at_stud = house.rules.get_whole(keys::TRIM_NAILS_AT_STUD)?;
    let sets: BigInt = trim::pieces(house).map(|piece| BigInt::from((piece.nm() + spacing - 1) / spacing + 1)).sum();
    let from = Wording::new(key("amounts-trim-nails-from"))
        .count("pieces", trim::pieces(house).count())
        .with("spacing", WordingPlace::Rule(house.rules.get(keys::TRIM_NAIL_SPACING)?));
    boxed(house, "trim-nails", Wording::new(key("amounts-trim-nails")), sets * at_stud, from, keys::TRIM_NAILS_PACK)?
        .item()
}

/// Screws in every mounting block.
fn screws(house: &CountedHouse) -> Result<Option<Item>, AmountError> {
    let blocks = house.holes().filter(|hole| hole.finish == Finish::Block).count();
    let each = house.rules.get_whole(keys::SCREWS_PER_BLOCK)?;
    let from = Wording::new(key("amounts-screws-from")).count("blocks", blocks).with("each", WordingPlace::Whole(each));
    boxed(house, "screws", Wording::new(key("amounts-screws")), BigInt::from(blocks) * each, from, keys::SCREWS_PACK)?
        .item()
}

fn boxed(
    house: &CountedHouse,
    material: &'static str,
    name: Wording,
    net: BigInt,
    from: Wording,
    pack: &str,
) -> Result<Draft, RuleError> {
    let pack = house.rules.get_whole(pack)?;
    Ok(Draft {
        material,
        code: material.to_owned(),
        stock: None,
        name,
        measure: Measure::Each,
        net: if net < BigInt::zero() { whole(0) } else { whole(net) },
        waste: house.rules.get_share(keys::WASTE_FASTENERS)?,
        pack: whole(pack),
        pack_name: Wording::new(key("amounts-pack-box")).with("count", WordingPlace::Whole(pack)),
        least: 0,
        from,
    })
}
