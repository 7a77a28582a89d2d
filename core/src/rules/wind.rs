use super::Family;
use crate::wall::coded;

coded! {
    /// How open to the wind the ground round a house lies (ASCE 7; IRC R301.2.1.4).
    Exposure {
        /// Among houses or woods.
        B = "b",
        /// Open ground.
        C = "c",
        /// Flat, unbroken, or by open water.
        D = "d",
    }
}

/// How high a roof may be on the average for the code's own nailing of siding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NailedTo {
    /// The table sets no limit.
    AnyHeight,
    /// So many feet.
    Feet(i64),
    /// The nailing must be designed.
    Design,
}

use NailedTo::{AnyHeight, Design, Feet};

/// IRC 2018 Table R703.3.2: ultimate wind speed in miles an hour, then the greatest mean roof height for exposures B, C, D.
const TABLE: [(i64, [NailedTo; 3]); 4] = [
    (115, [AnyHeight, Feet(50), Feet(20)]),
    (120, [AnyHeight, Feet(30), Design]),
    (130, [Feet(60), Feet(15), Design]),
    (140, [Feet(35), Design, Design]),
];

/// How high a house may be for the nailing of the code's table, in a wind of so many miles an hour: that of the next row of
/// the table, as the code has nothing between its rows. `None` in a country whose rules have no such table.
pub fn nailed_to(family: Family, miles_an_hour: i64, exposure: Exposure) -> Option<NailedTo> {
    if family != Family::UnitedStates {
        return None;
    }
    let row = TABLE.iter().find(|(speed, _)| miles_an_hour <= *speed);
    let [b, c, d] = row.map_or([Design; 3], |(_, row)| *row);
    Some(match exposure {
        Exposure::B => b,
        Exposure::C => c,
        Exposure::D => d,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn other_countries_have_no_such_table() {
        assert_eq!(nailed_to(Family::Canada, 100, Exposure::B), None);
        assert_eq!(nailed_to(Family::UnitedStates, 100, Exposure::B), Some(AnyHeight));
    }
}
