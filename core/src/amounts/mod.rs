//! Materials to order: each with what it was computed from, the waste allowance apart, and packs rounded up.
//!
//! A [`CountedHouse`] goes in, with the boards that the saw list takes; [`amounts`] gives its [`Item`]s. Every number is exact.
//! Coverages, pack sizes and allowances are rules ([`crate::rules`]), so that a crew can change them.
//!
//! Each material is a file: what of the house it is counted on, and how. To add one: such a file, a line in
//! [`amounts`], and its phrases in both `amounts.ftl`.

mod backing;
mod barrier;
mod blocks;
mod boards;
mod coats;
mod edges;
mod error;
mod fasteners;
mod flashing;
mod house;
mod item;
mod lengths;
mod membrane;
mod nail;
mod parts;
mod rings;
mod sealant;
mod soffit;
mod starter;
mod trim;
mod words;

pub use error::AmountError;
pub use house::{BoardSizes, CountedBoard, CountedHouse, CountedWall, CutBoard, Hole, WallPart};
pub use item::{Item, Measure};
pub use nail::siding_nail;
pub use words::{Wording, WordingPlace};

/// The materials of a house in the order in which a crew loads them; what there is none of is left out.
///
/// # Errors
/// [`AmountError`].
pub fn amounts(house: &CountedHouse) -> Result<Vec<Item>, AmountError> {
    let mut items = boards::items(house)?;
    items.extend(barrier::items(house)?);
    items.extend(starter::item(house)?);
    items.extend(backing::item(house)?);
    items.extend(trim::items(house)?);
    items.extend(soffit::item(house)?);
    items.extend(blocks::items(house)?);
    items.extend(rings::item(house)?);
    items.extend(membrane::item(house)?);
    items.extend(flashing::item(house)?);
    items.extend(parts::items(house)?);
    items.extend(sealant::item(house)?);
    items.extend(coats::items(house)?);
    items.extend(fasteners::items(house)?);
    Ok(items)
}

#[cfg(test)]
mod tests;
