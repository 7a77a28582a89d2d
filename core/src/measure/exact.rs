use num_bigint::BigInt;
use num_integer::Integer;
use num_rational::BigRational;
use num_traits::{Signed, ToPrimitive};

use super::{Length, Unit};

/// A length as it was written, before any rounding: a fraction of nanometres of any size.
///
/// A third of an inch or a 128th is not a whole number of nanometres; a tape division keeps this form, so that its
/// multiples are taken exactly.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Exact(pub(super) BigRational);

impl Exact {
    /// So many of a unit.
    pub fn from_units(number: &BigRational, unit: Unit) -> Self {
        Self(number * BigInt::from(unit.nm()))
    }

    /// To the nearest nanometre, halves away from zero; `None` beyond [`Length::LIMIT`].
    pub fn to_length(&self) -> Option<Length> {
        let limit = BigInt::from(Length::LIMIT.nm());
        let (quotient, rest) = self.0.numer().abs().div_mod_floor(self.0.denom());
        let up = rest * BigInt::from(2) >= *self.0.denom();
        let size = quotient + BigInt::from(i32::from(up));
        if size > limit {
            return None;
        }
        let nm = size.to_i64()?;
        Some(Length::from_nm(if self.0.is_negative() { -nm } else { nm }))
    }
}

impl From<Length> for Exact {
    fn from(length: Length) -> Self {
        Self(BigRational::from_integer(BigInt::from(length.nm())))
    }
}
