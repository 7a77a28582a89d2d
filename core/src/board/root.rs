use num_bigint::BigInt;
use num_integer::Roots;

/// Binary places behind the whole number to which a root is kept.
pub(super) const PLACES: usize = 128;

/// The square root of a whole number that is no square itself.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Root {
    square: u128,
    near: BigInt,
}

impl Root {
    /// The root of `square`, or the whole number that it is.
    pub(super) fn of(square: u128) -> Result<u64, Self> {
        let whole = Roots::sqrt(&square);
        match u64::try_from(whole) {
            Ok(root) if whole * whole == square => Ok(root),
            _ => Err(Self { square, near: near(square, PLACES) }),
        }
    }

    /// The number under the root.
    pub(super) const fn square(&self) -> u128 {
        self.square
    }

    /// The root times two to the power of `places`, rounded down: the root lies less than one above it.
    pub(super) fn at(&self, places: usize) -> BigInt {
        if places == PLACES { self.near.clone() } else { near(self.square, places) }
    }

    /// The root at [`PLACES`].
    pub(super) const fn near(&self) -> &BigInt {
        &self.near
    }

    /// `sqrt(self * other)` where that is whole: only then is one root a fraction of the other.
    pub(super) fn product(&self, other: &Self) -> Option<BigInt> {
        let product = BigInt::from(self.square) * BigInt::from(other.square);
        let root = product.sqrt();
        (&root * &root == product).then_some(root)
    }
}

fn near(square: u128, places: usize) -> BigInt {
    (BigInt::from(square) << (2 * places)).sqrt()
}
