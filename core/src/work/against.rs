use crate::book::{Field, Record};
use crate::measure::Length;

/// What stands against a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Against {
    /// Its left end, from the left corner.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// Its surface at its left end.
    pub surface: Length,
    /// How much higher its right end is.
    pub rise: Length,
}

impl Against {
    /// As the book has it; none where a measure is lacking.
    pub fn of(record: &Record) -> Option<Self> {
        let from = record.length(Field::FromLeft)?;
        let (to, surface) = (from + record.length(Field::Width)?, record.length(Field::Top)?);
        let roof = record.text(Field::What) == Some("roof");
        let rise = record.length(Field::Rise).filter(|_| roof).unwrap_or_default();
        Some(Self { from, to, surface, rise })
    }

    /// Whether it is a roof that runs up along the wall.
    pub fn is_sloped(self) -> bool {
        self.rise != Length::ZERO && self.from < self.to
    }
}
