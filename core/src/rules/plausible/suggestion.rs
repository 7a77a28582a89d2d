use crate::measure::{Length, Show, Unit};
use crate::phrases::key;

/// How a value that cannot be, or hardly, may have come from one that can.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// The number is one of another unit: 24 for 24 ft, 305 for 305 mm.
    Unit(Unit),
    /// The stroke of a fraction was left out, and the lower number with it or not: 6 for 6/16, 516 for 5/16.
    Stroke,
    /// The decimal point was left out or put elsewhere: 825 for 8.25.
    Point,
    /// The blank before a fraction was left out: 11/4 for 1 1/4.
    Blank,
    /// Two digits change places: 214 for 241.
    Digits,
    /// A digit was struck twice: 1144 for 144.
    Twice,
    /// The minus was left out, or is too much.
    Minus,
}

/// What was probably meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Suggestion {
    /// The value.
    pub meant: Length,
    /// What went wrong.
    pub slip: Slip,
}

impl Suggestion {
    /// The value as it would have been written: in the other unit where the unit was the slip, else as finely as needed.
    pub fn shown(self, show: Show) -> String {
        let metric = matches!(show, Show::Millimetres(_));
        let show = match self.slip {
            Slip::Unit(Unit::Foot) => Show::FeetInches(64),
            Slip::Unit(Unit::Inch) => Show::Inches(64),
            Slip::Unit(_) => Show::Millimetres(10),
            _ if metric => Show::Millimetres(10),
            _ => Show::Inches(64),
        };
        show.text(self.meant)
    }
}

impl Slip {
    /// The key of the phrase that asks about it, with the value as `meant`.
    pub const fn phrase(self) -> &'static str {
        match self {
            Self::Unit(_) => key("plausible-meant-unit"),
            Self::Stroke => key("plausible-meant-fraction"),
            Self::Blank | Self::Point | Self::Digits | Self::Twice | Self::Minus => key("plausible-meant"),
        }
    }
}
