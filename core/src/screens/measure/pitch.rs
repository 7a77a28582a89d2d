//! The peak of a gable by its roof's pitch: both rakes rise from the ends of the siding until they meet.

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::Signed;

use crate::book::{Book, Field, Kind, Operation, OperationKind};
use crate::forms::ask::accept;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::{Exact, Length, Unit};
use crate::phrases::key;
use crate::store::{Id, Value};
use crate::views::{Code, Problem};
use crate::work::{WallSite, Work, WorkError};

use super::fits;

/// The name of the answer.
pub(super) const PITCH: &str = "pitch";

/// Sets the peak from a pitch such as `6/12` or `6 in 12`: rise over run, in any common unit.
pub(super) fn answer(book: &mut Book, terms: &Terms<'_>, (work, wall): (&Work, &WallSite), text: &str) -> Result<Id> {
    let refused = || {
        let text = terms.phrase(key("measure-pitch"), &[("text", text.trim().into())]);
        Problem::new(Code::Range, PITCH, text)
    };
    let pitch = read(terms, text).ok_or_else(refused)?;
    let need = |field| wall.record.length(field).ok_or_else(|| WorkError::first(Kind::Wall, field));
    let (width, left, right) = (need(Field::Width)?, need(Field::LeftHeight)?, need(Field::RightHeight)?);
    let nm = |length: Length| BigRational::from_integer(BigInt::from(length.nm()));
    // left + p x = right + p (width - x).
    let from_left = (nm(width) + (nm(right) - nm(left)) / &pitch) / BigRational::from_integer(BigInt::from(2));
    if !from_left.is_positive() || from_left >= nm(width) {
        return Err(refused().into());
    }
    let height = nm(left) + &from_left * &pitch;
    let to_length = |nm: &BigRational| {
        let mm = nm / BigRational::from_integer(BigInt::from(Unit::Millimetre.nm()));
        Exact::from_units(&mm, Unit::Millimetre).to_length().ok_or_else(refused)
    };
    let planned = |length| Value::Length { length, typed: String::new(), unit: Unit::Millimetre.code().to_owned() };
    let (from_left, height) = (planned(to_length(&from_left)?), planned(to_length(&height)?));
    let with_place = wall.record.with(Field::PeakFromLeft, from_left.clone());
    fits::wall_as(terms, (work, wall), &with_place.with(Field::PeakHeight, height.clone()), Field::PeakHeight)?;
    let operation = Operation::new(OperationKind::Answered, work.id(), [key("measure-pitch-title"), text.trim()])
        .set(wall.id(), Field::PeakFromLeft, from_left)
        .set(wall.id(), Field::PeakHeight, height);
    Ok(accept(book, terms, operation, &[])?.group)
}

/// Rise over run; a number alone is so much in twelve.
fn read(terms: &Terms<'_>, text: &str) -> Option<BigRational> {
    let number = |text: &str| terms.reader.number(text.trim()).ok().filter(BigRational::is_positive);
    let text = text.trim();
    for between in ["/", ":", " in ", " en "] {
        if let Some((rise, run)) = text.split_once(between) {
            return Some(number(rise)? / number(run)?);
        }
    }
    Some(number(text)? / BigRational::from_integer(BigInt::from(12)))
}
