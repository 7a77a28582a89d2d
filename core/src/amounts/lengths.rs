use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::saw::{CutList, Planner, RunToCut, Stock};

use super::item::{Draft, whole};
use super::{AmountError, CountedHouse, Measure, Wording, WordingPlace};

/// What is bought in lengths, and how it is called in the order.
pub(super) struct Sold<'a> {
    pub(super) material: &'static str,
    pub(super) code: String,
    pub(super) name: Wording,
    /// The rule that says how long one is as it is sold.
    pub(super) length: &'a str,
    /// What a cut takes; zero where shears cut it.
    pub(super) kerf: Length,
}

/// The pieces of something that is bought in lengths; `from` says what they are for.
pub(super) fn draft(
    house: &CountedHouse,
    sold: Sold<'_>,
    pieces: &[Length],
    from: Wording,
) -> Result<Draft, AmountError> {
    let Sold { material, code, name, length, kerf } = sold;
    let stock = house.rules.get_length(length)?;
    Ok(Draft {
        material,
        code,
        stock: None,
        name,
        measure: Measure::Length,
        net: pieces.iter().map(|piece| whole(piece.nm())).sum(),
        waste: house.rules.get_share(keys::WASTE_LENGTHS)?,
        pack: whole(stock.nm()),
        pack_name: Wording::new(key("amounts-pack-length"))
            .with("length", WordingPlace::Rule(house.rules.get(length)?)),
        least: packs(material, pieces, stock, kerf)?,
        from,
    })
}

/// How often pieces of `stock` are joined with a lap to reach a length.
pub(super) fn joins(length: Length, stock: Length, lap: Length) -> i64 {
    // A lap as long as the stock itself would join nothing.
    let gained = (stock - lap).nm();
    if gained <= 0 { 0 } else { ((length - lap).nm().max(1) - 1) / gained }
}

/// The planner's steps: so few pieces are cut from so few boards that a handful finds the least.
const EFFORT: u64 = 5;

/// How many stock lengths the pieces are cut from. A piece longer than the stock is made of several.
fn packs(material: &'static str, pieces: &[Length], stock: Length, kerf: Length) -> Result<i64, AmountError> {
    let mut list = CutList::new();
    list.stock.push(Stock { length: stock, cost: 1_000_000_000, count: None });
    list.kerf = kerf;
    list.joints = false;
    let mut full = 0_i64;
    for piece in pieces {
        let whole = piece.nm() / stock.nm().max(1);
        full = full.saturating_add(whole);
        let rest = Length::from_nm(piece.nm() % stock.nm().max(1));
        // What is under a mark of the tape is no piece.
        if rest >= list.division.length() {
            list.runs.push(RunToCut { wall: String::new(), course: 0, from: Length::ZERO, to: rest });
        }
    }
    let mut planner = Planner::new(&list).map_err(|why| AmountError::Saw { material, why })?;
    planner.step(EFFORT);
    let boards = i64::try_from(planner.plan().count).unwrap_or(i64::MAX);
    Ok(full.saturating_add(boards))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rests_of_different_boards_make_no_piece() {
        // Three pieces of 8 ft from 12 ft are three boards, though 24 ft are two.
        let foot = |n: i64| Length::from_inches(12 * n);
        let packs = |pieces: &[Length]| packs("trim", pieces, foot(12), Length::from_inches_64(0, 8)).unwrap();
        assert_eq!(packs(&[foot(8); 3]), 3);
        assert_eq!(packs(&[foot(6), foot(6)]), 2);
        assert_eq!(packs(&[foot(12), foot(12)]), 2);
        assert_eq!(packs(&[foot(26), foot(8)]), 3);
        assert_eq!(packs(&[]), 0);
    }
}
