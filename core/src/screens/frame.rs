//! The frame round every screen: the words of its buttons, and the drawn inch of tape that a fraction is tapped on.

use crate::measure::{Length, Show, Unit};
use crate::phrases::{key, spoken};
use crate::views::{FrameView, TapeMark, Words};

use crate::forms::context::Terms;
use crate::forms::error::Result;

pub(super) fn view(terms: &Terms<'_>) -> Result<FrameView> {
    let unit = match terms.show {
        Show::Inches(_) | Show::FeetInches(_) => key("frame-unit-inches"),
        Show::Millimetres(_) => key("frame-unit-millimeters"),
    };
    Ok(FrameView { words: Words::of(terms.phrases), tape: tape(terms), unit: terms.phrase(unit, &[]) })
}

fn tape(terms: &Terms<'_>) -> Vec<TapeMark> {
    match terms.show {
        Show::Inches(division) | Show::FeetInches(division) => {
            let parts = i64::from(division);
            (1..parts).filter_map(|n| inch_mark(terms, n, parts)).collect()
        }
        Show::Millimetres(_) => (1..10).filter_map(|n| tenth_mark(terms, n)).collect(),
    }
}

fn inch_mark(terms: &Terms<'_>, n: i64, parts: i64) -> Option<TapeMark> {
    let twos = n.trailing_zeros();
    let (above, below) = (n >> twos, parts >> twos);
    let long = match below {
        2 => 1000,
        4 => 750,
        8 => 550,
        16 => 380,
        _ => 240,
    };
    let length = Length::from_nm(Unit::Inch.nm()).scaled(n, parts)?;
    Some(TapeMark {
        text: format!("{above}/{below}"),
        spoken: spoken(length, terms.show, terms.language),
        at: u32::try_from(n * 1000 / parts).ok()?,
        long,
    })
}

fn tenth_mark(terms: &Terms<'_>, n: i64) -> Option<TapeMark> {
    let length = Length::from_nm(Unit::Millimetre.nm()).scaled(n, 10)?;
    Some(TapeMark {
        text: format!(".{n}"),
        spoken: spoken(length, terms.show, terms.language),
        at: u32::try_from(n * 100).ok()?,
        long: if n == 5 { 1000 } else { 500 },
    })
}
