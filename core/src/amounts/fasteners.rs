use num_bigint::BigInt;
use num_traits::Zero;

use super::item::{Draft, whole};
use super::{AmountError, House, Item, Measure, Place, Wall, Words, nail, trim};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::{RuleError, keys};
use crate::wall::Finish;

/// The most studs that are counted along a run.
const STUDS: usize = 10_000;

/// Nails for the boards and the trim, and screws for the blocks.
pub(super) fn items(house: &House) -> Result<Vec<Item>, AmountError> {
    Ok([nails(house)?, trim_nails(house)?, screws(house)?].into_iter().flatten().collect())
}

/// One nail (or as many as the rules say) at every stud that a board crosses, more at a joint.
fn nails(house: &House) -> Result<Option<Item>, AmountError> {
    let per_stud = house.rules.get_whole(keys::NAILS_PER_STUD)?;
    let at_joint = house.rules.get_whole(keys::NAILS_AT_JOINT)?;
    let crossings: usize = house.walls.iter().map(crossings).sum();
    let joints = house.joints();
    let plain = crossings.saturating_sub(joints);
    let net = BigInt::from(plain) * per_stud + BigInt::from(joints) * at_joint;
    let from = Words::new(key("amounts-nails-from")).count("studs", plain).count("joints", joints);
    let length = nail::length(&house.rules, house.board.thickness)?;
    let name = Words::new(key("amounts-nails")).with("length", Place::Size(length));
    boxed(house, "nails", name, net, from, keys::NAILS_PACK)?.item()
}

/// How often a run crosses a stud: at a rake as far as the nail line, near the board's top edge, reaches.
fn crossings(wall: &Wall) -> usize {
    let studs = |from: Length, to: Length| wall.studs.within(from, to, STUDS).len();
    wall.runs
        .iter()
        .map(|run| studs(run.run.left.bottom.max(run.run.left.top), run.run.right.bottom.min(run.run.right.top)))
        .sum()
}

/// Nails side by side along every piece of trim, one set at each end and as far apart as the studs.
fn trim_nails(house: &House) -> Result<Option<Item>, AmountError> {
    let spacing = house.rules.get_length(keys::TRIM_NAIL_SPACING)?.nm().max(1);
    let at_stud = house.rules.get_whole(keys::TRIM_NAILS_AT_STUD)?;
    let sets: BigInt = trim::pieces(house).map(|piece| BigInt::from((piece.nm() + spacing - 1) / spacing + 1)).sum();
    let from = Words::new(key("amounts-trim-nails-from"))
        .count("pieces", trim::pieces(house).count())
        .with("spacing", Place::Rule(house.rules.get(keys::TRIM_NAIL_SPACING)?));
    boxed(house, "trim-nails", Words::new(key("amounts-trim-nails")), sets * at_stud, from, keys::TRIM_NAILS_PACK)?
        .item()
}

/// Screws in every mounting block.
fn screws(house: &House) -> Result<Option<Item>, AmountError> {
    let blocks = house.holes().filter(|hole| hole.finish == Finish::Block).count();
    let each = house.rules.get_whole(keys::SCREWS_PER_BLOCK)?;
    let from = Words::new(key("amounts-screws-from")).count("blocks", blocks).with("each", Place::Whole(each));
    boxed(house, "screws", Words::new(key("amounts-screws")), BigInt::from(blocks) * each, from, keys::SCREWS_PACK)?
        .item()
}

fn boxed(
    house: &House,
    material: &'static str,
    name: Words,
    net: BigInt,
    from: Words,
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
        pack_name: Words::new(key("amounts-pack-box")).with("count", Place::Whole(pack)),
        least: 0,
        from,
    })
}
