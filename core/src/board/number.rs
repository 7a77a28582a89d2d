use std::cmp::Ordering;
use std::sync::Arc;

use num_bigint::{BigInt, Sign};
use num_integer::Integer;
use num_traits::{One, Signed, ToPrimitive, Zero};

use super::root::{PLACES, Root};
use crate::measure::Length;

/// An exact coordinate in half nanometres.
///
/// An edge moved square to itself brings in the root of the sum of two squares; every other coordinate follows from such
/// edges by sums and whole factors. So all of them are `(whole + k1 sqrt(n1) + k2 sqrt(n2) ...) / over`, and two of them
/// are compared without any rounding: see `core/docs/decisions/exact-boards.md`.
#[derive(Clone, Debug)]
pub(super) enum Coordinate {
    /// A whole number of half nanometres.
    Whole(i64),
    /// Anything else.
    Surd(Arc<Surd>),
}

/// `(whole + sum(factor * root)) / over`, which is no whole number of half nanometres, or a very great one.
#[derive(Debug)]
pub(super) struct Surd {
    whole: BigInt,
    roots: Vec<(Arc<Root>, BigInt)>,
    /// Over zero.
    over: BigInt,
    /// The whole number at or under it, as near as the type comes to it.
    floor: i64,
}

impl Coordinate {
    pub(super) const ZERO: Self = Self::Whole(0);

    /// A length in half nanometres; saturates like [`Length`]'s operators.
    pub(super) const fn of(length: Length) -> Self {
        Self::Whole(halves(length))
    }

    /// `sum(factor * number) / over`; `over` is not zero.
    pub(super) fn sum(terms: &[(&BigInt, &Self)], over: &BigInt) -> Self {
        let mut sum = Parts { whole: BigInt::ZERO, roots: Vec::new(), over: over.clone() };
        let common: BigInt = terms.iter().filter_map(|(_, number)| number.over()).product();
        for (factor, number) in terms {
            match number {
                Self::Whole(whole) => sum.whole += *factor * &common * *whole,
                Self::Surd(surd) => {
                    let factor = *factor * (&common / &surd.over);
                    sum.whole += &factor * &surd.whole;
                    for (root, own) in &surd.roots {
                        sum.add(root, &factor * own);
                    }
                }
            }
        }
        sum.over *= common;
        sum.number()
    }

    /// `whole + factor * root`.
    pub(super) fn with_root(whole: BigInt, factor: BigInt, root: Arc<Root>) -> Self {
        Parts { whole, roots: vec![(root, factor)], over: BigInt::one() }.number()
    }

    /// A whole number of any size.
    pub(super) fn whole(whole: BigInt) -> Self {
        Parts { whole, roots: Vec::new(), over: BigInt::one() }.number()
    }

    /// `self - other`.
    pub(super) fn less(&self, other: &Self) -> Self {
        if let (Self::Whole(own), Self::Whole(other)) = (self, other)
            && let Some(difference) = own.checked_sub(*other)
        {
            return Self::Whole(difference);
        }
        Self::sum(&[(&BigInt::one(), self), (&BigInt::from(-1), other)], &BigInt::one())
    }

    /// A number between this one and a greater one, whole where that is near at hand.
    pub(super) fn between(&self, greater: &Self) -> Self {
        let (low, high) = (self.floor(), greater.floor());
        let middle = low + (high.saturating_sub(low)) / 2;
        if middle > low && low > i64::MIN && high < i64::MAX {
            return Self::Whole(middle);
        }
        Self::sum(&[(&BigInt::one(), self), (&BigInt::one(), greater)], &BigInt::from(2))
    }

    /// The whole number at or under it; saturates.
    pub(super) fn floor(&self) -> i64 {
        match self {
            Self::Whole(whole) => *whole,
            Self::Surd(surd) => surd.floor,
        }
    }

    /// Whether it is under, at or over zero.
    pub(super) fn sign(&self) -> Ordering {
        match self {
            Self::Whole(whole) => whole.cmp(&0),
            Self::Surd(surd) if surd.floor < 0 => Ordering::Less,
            Self::Surd(_) => Ordering::Greater,
        }
    }

    /// To the nearest nanometre, halves away from zero; `None` where no [`Length`] holds it.
    pub(super) fn nearest(&self) -> Option<Length> {
        let nm = match self {
            Self::Whole(halves) => halves / 2 + halves % 2,
            // Not a whole number of halves: the half nanometre under it decides.
            Self::Surd(surd) if surd.floor > i64::MIN && surd.floor < i64::MAX => (surd.floor + 1).div_euclid(2),
            Self::Surd(_) => return None,
        };
        Some(Length::from_nm(nm))
    }

    /// Times two to the power of [`PLACES`], to within as many units as the factors of its roots add up to.
    pub(super) fn fixed(&self) -> BigInt {
        match self {
            Self::Whole(whole) => BigInt::from(*whole) << PLACES,
            Self::Surd(surd) => {
                let roots: BigInt = surd.roots.iter().map(|(root, factor)| root.near() * factor).sum();
                ((&surd.whole << PLACES) + roots) / &surd.over
            }
        }
    }

    fn over(&self) -> Option<&BigInt> {
        match self {
            Self::Whole(_) => None,
            Self::Surd(surd) => Some(&surd.over),
        }
    }
}

impl PartialEq for Coordinate {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Coordinate {}

impl PartialOrd for Coordinate {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Coordinate {
    fn cmp(&self, other: &Self) -> Ordering {
        match (self, other) {
            (Self::Whole(own), Self::Whole(other)) => own.cmp(other),
            (Self::Surd(own), Self::Surd(other)) if Arc::ptr_eq(own, other) => Ordering::Equal,
            _ => self.floor().cmp(&other.floor()).then_with(|| self.less(other).sign()),
        }
    }
}

/// Half nanometres in a length; saturates.
pub(super) const fn halves(length: Length) -> i64 {
    length.nm().saturating_mul(2)
}

/// What a number is made of, before it is known whether it is whole.
struct Parts {
    whole: BigInt,
    roots: Vec<(Arc<Root>, BigInt)>,
    over: BigInt,
}

impl Parts {
    fn add(&mut self, root: &Arc<Root>, factor: BigInt) {
        match self.roots.iter_mut().find(|(own, _)| own.square() == root.square()) {
            Some((_, own)) => *own += factor,
            None => self.roots.push((Arc::clone(root), factor)),
        }
    }

    fn number(mut self) -> Coordinate {
        if self.over.is_negative() {
            self.over = -self.over;
            self.whole = -self.whole;
            self.roots.iter_mut().for_each(|(_, factor)| *factor = -std::mem::take(factor));
        }
        self.roots.retain(|(_, factor)| !factor.is_zero());
        let mut places = PLACES;
        loop {
            if self.roots.is_empty() {
                let (floor, rest) = self.whole.div_mod_floor(&self.over);
                return match floor.to_i64() {
                    Some(whole) if rest.is_zero() => Coordinate::Whole(whole),
                    _ => self.surd(&floor),
                };
            }
            let (low, high) = self.bounds(places);
            let over = &self.over << places;
            let (floor, above) = (low.div_floor(&over), high.div_floor(&over));
            if floor == above {
                return self.surd(&floor);
            }
            // A whole number lies within the bounds. The number may be that one if its roots are not independent; if they
            // are, it is irrational, and more places will tell.
            if places == PLACES {
                self.merge_dependent();
            }
            places *= 2;
        }
    }

    fn surd(self, floor: &BigInt) -> Coordinate {
        let saturated = if floor.sign() == Sign::Minus { i64::MIN } else { i64::MAX };
        let floor = floor.to_i64().unwrap_or(saturated);
        Coordinate::Surd(Arc::new(Surd { whole: self.whole, roots: self.roots, over: self.over, floor }))
    }

    /// Bounds of the numerator times two to the power of `places`.
    fn bounds(&self, places: usize) -> (BigInt, BigInt) {
        let mut low = &self.whole << places;
        let mut high = low.clone();
        for (root, factor) in &self.roots {
            let near = factor * root.at(places);
            low += &near;
            high += &near;
            if factor.is_negative() { low += factor } else { high += factor }
        }
        (low, high)
    }

    /// Writes roots that are fractions of one another as one. Roots of numbers no two of which multiply to a square, and
    /// none of which is a square, are linearly independent over the fractions (Besicovitch 1940): a sum of them is then
    /// whole only where there is none left.
    fn merge_dependent(&mut self) {
        while let Some((kept, gone, product)) = self.dependent() {
            let (_, factor) = self.roots.swap_remove(gone);
            // sqrt(m) = sqrt(n m) / n sqrt(n)
            let Some(own) = self.roots.get(kept).map(|(own, _)| Arc::clone(own)) else { return };
            let scale = BigInt::from(own.square());
            self.whole *= &scale;
            self.over *= &scale;
            self.roots.iter_mut().for_each(|(_, factor)| *factor *= &scale);
            self.add(&own, factor * product);
        }
        self.roots.retain(|(_, factor)| !factor.is_zero());
    }

    /// Two roots of which the second is a fraction of the first, with the root of their product.
    fn dependent(&self) -> Option<(usize, usize, BigInt)> {
        let mut pairs = self.roots.iter().enumerate().flat_map(|(at, (root, _))| {
            let later = self.roots.iter().enumerate().skip(at + 1);
            later.filter_map(move |(other_at, (other, _))| Some((at, other_at, root.product(other)?)))
        });
        pairs.next()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn root(square: u128) -> Arc<Root> {
        Arc::new(Root::of(square).unwrap_err())
    }

    /// `(whole + sum(factor sqrt(n))) / over`
    fn surd(whole: i64, roots: &[(i64, u128)], over: i64) -> Coordinate {
        let one = BigInt::one();
        let roots: Vec<Coordinate> = roots
            .iter()
            .map(|(factor, n)| Coordinate::with_root(BigInt::ZERO, BigInt::from(*factor), root(*n)))
            .collect();
        let whole = Coordinate::Whole(whole);
        let terms: Vec<(&BigInt, &Coordinate)> =
            std::iter::once(&whole).chain(&roots).map(|term| (&one, term)).collect();
        Coordinate::sum(&terms, &BigInt::from(over))
    }

    #[test]
    fn squares_are_no_roots() {
        for whole in [0, 1, 2, 13, 4_294_967_296, u64::from(u32::MAX), 11_863_283] {
            assert_eq!(Root::of(u128::from(whole).pow(2)), Ok(whole));
        }
        let root = Root::of(2).unwrap_err();
        assert_eq!(root.at(64), BigInt::parse_bytes(b"26087635650665564424", 10).unwrap(), "sqrt(2) 2^64, by hand");
    }

    #[test]
    fn sums_that_are_whole_are_found() {
        // sqrt(8) = 2 sqrt(2), sqrt(18) = 3 sqrt(2), sqrt(50) = 5 sqrt(2)
        assert!(matches!(surd(7, &[(1, 2), (1, 18), (2, 8), (-1, 50), (-3, 2)], 7), Coordinate::Whole(1)));
        assert!(matches!(surd(7, &[(1, 8), (-2, 2)], 2), Coordinate::Surd(_)), "three and a half");
        assert_eq!(surd(7, &[(1, 8), (-2, 2)], 2), surd(14, &[(3, 12), (-6, 3)], 4));
        assert_eq!(surd(0, &[(1, 2), (1, 3)], 1), surd(0, &[(2, 3), (2, 2)], 2));
    }

    #[test]
    fn numbers_that_differ_late_are_told_apart() {
        // Convergents of sqrt(2): p/q with p^2 - 2 q^2 = 1, so that p - q sqrt(2) is 1/(p + q sqrt(2)), far under 2^-128.
        let (mut p, mut q) = (BigInt::from(3), BigInt::from(2));
        for _ in 0..7 {
            (p, q) = (&p * &p + BigInt::from(2) * &q * &q, BigInt::from(2) * &p * &q);
        }
        assert_eq!(&p * &p - BigInt::from(2) * &q * &q, BigInt::one());
        let near = Coordinate::with_root(p, -q, root(2));
        assert_eq!(near.sign(), Ordering::Greater);
        assert_eq!(near.floor(), 0);
        let minus = Coordinate::sum(&[(&BigInt::from(-1), &near)], &BigInt::one());
        assert_eq!((minus.sign(), minus.floor()), (Ordering::Less, -1));
        assert_eq!(near.cmp(&Coordinate::ZERO), Ordering::Greater);
        assert_eq!(near.cmp(&minus), Ordering::Greater);
    }

    #[test]
    fn halves_round_away_from_zero_and_all_else_to_the_nearer() {
        for (halves, nm) in [(5, 3), (-5, -3), (4, 2), (-4, -2), (1, 1), (-1, -1), (0, 0)] {
            assert_eq!(Coordinate::Whole(halves).nearest().unwrap().nm(), nm, "{halves}");
        }
        // Half nanometres: 2.828, -2.828, 1.732, -1.732; 4/3, -4/3, 1/3, -2/3.
        for (number, nm) in [
            (surd(0, &[(2, 2)], 1), 1),
            (surd(0, &[(-2, 2)], 1), -1),
            (surd(0, &[(1, 3)], 1), 1),
            (surd(0, &[(-1, 3)], 1), -1),
            (surd(4, &[], 3), 1),
            (surd(-4, &[], 3), -1),
            (surd(1, &[], 3), 0),
            (surd(-2, &[], 3), 0),
        ] {
            assert_eq!(number.nearest().unwrap().nm(), nm, "{number:?}");
        }
    }

    #[test]
    fn a_number_between_lies_between() {
        let (a, b) = (surd(0, &[(1, 2)], 1), surd(0, &[(1, 3)], 1));
        let close = surd(1, &[(1_000_000, 2)], 1_000_000);
        for (low, high) in
            [(&a, &b), (&a, &close), (&Coordinate::Whole(3), &Coordinate::Whole(4)), (&Coordinate::Whole(-7), &a)]
        {
            let middle = low.between(high);
            assert!(*low < middle && middle < *high, "{low:?} {middle:?} {high:?}");
        }
        assert!(matches!(Coordinate::Whole(3).between(&Coordinate::Whole(9)), Coordinate::Whole(6)));
    }
}
