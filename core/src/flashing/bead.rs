use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, Signed, ToPrimitive, Zero};
use thiserror::Error;

use crate::measure::Length;

/// Cubic nanometres in a millilitre: a cube of 10^7 nm.
const NM3_PER_ML: u128 = 1_000_000_000_000_000_000_000;
/// Millilitres in a US fluid ounce as a fraction: 231/128 cubic inches, 29.5735295625 mL exactly (NIST SP 811).
const OUNCE: (i64, i64) = (295_735_295_625, 10_000_000_000);

/// The section of a sealant joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BeadShape {
    /// A filled gap of width by depth.
    Square,
    /// A triangle in a corner; width and depth are its legs.
    Fillet,
}

/// What a cartridge holds, exactly.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cartridge(BigRational);

impl Cartridge {
    /// So many millilitres; `None` unless over zero.
    pub fn millilitres(amount: BigRational) -> Option<Self> {
        amount.is_positive().then_some(Self(amount))
    }

    /// So many US fluid ounces; `None` unless over zero.
    pub fn fluid_ounces(amount: BigRational) -> Option<Self> {
        Self::millilitres(amount * BigRational::new(OUNCE.0.into(), OUNCE.1.into()))
    }
}

/// A sealant joint.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BeadRequest {
    /// The width of the joint, or one leg of a fillet.
    pub width: Length,
    /// The depth of the joint, or the other leg.
    pub depth: Length,
    /// All the joints of this section, end to end.
    pub length: Length,
    /// The section.
    pub shape: BeadShape,
    /// What a cartridge holds.
    pub cartridge: Cartridge,
    /// The share that is lost, from nothing to as much again.
    pub waste: BigRational,
    /// The narrowest joint that stays tight.
    pub width_least: Length,
}

/// What is doubtful about a sealant joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BeadWarning {
    /// Narrower than the least width.
    Narrow,
    /// Deeper than wide.
    Deep,
}

/// How much sealant a joint takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Bead {
    /// The volume without waste, in millilitres.
    pub volume_ml: BigRational,
    /// How far a cartridge reaches without waste, to the nearest nanometre.
    pub per_cartridge: Length,
    /// The cartridges with waste, rounded up.
    pub cartridges: i64,
    /// What is doubtful about it.
    pub warnings: Vec<BeadWarning>,
}

/// Why an amount of sealant cannot be given.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum BeadError {
    /// A size is not over zero.
    #[error("a joint's width, depth and length must be over zero")]
    NotPositive,
    /// The waste is not a share.
    #[error("the waste must be a share from 0 to 1")]
    Waste,
    /// The joint is so thin that a cartridge reaches further than a length can say.
    #[error("a cartridge would reach too far")]
    ReachTooBig,
    /// More cartridges than can be counted.
    #[error("too many cartridges")]
    TooManyCartridges,
}

impl BeadRequest {
    /// The amounts, in exact arithmetic.
    ///
    /// # Errors
    /// [`BeadError`].
    pub fn amounts(&self) -> Result<Bead, BeadError> {
        if ![self.width, self.depth, self.length].iter().all(|size| size.is_positive()) {
            return Err(BeadError::NotPositive);
        }
        if self.waste.is_negative() || self.waste > BigRational::one() {
            return Err(BeadError::Waste);
        }
        let halves = match self.shape {
            BeadShape::Square => 1,
            BeadShape::Fillet => 2,
        };
        let nm3_per_ml = BigInt::from(NM3_PER_ML);
        let section = BigRational::new(BigInt::from(self.width.nm()) * self.depth.nm(), BigInt::from(halves));
        let volume_ml = &section * BigInt::from(self.length.nm()) / &nm3_per_ml;
        let reach = &self.cartridge.0 * &nm3_per_ml / &section;
        let count = (&volume_ml * (BigRational::one() + &self.waste) / &self.cartridge.0).ceil();
        let warnings = [
            (self.width < self.width_least).then_some(BeadWarning::Narrow),
            (self.shape == BeadShape::Square && self.depth > self.width).then_some(BeadWarning::Deep),
        ];
        Ok(Bead {
            per_cartridge: nearest(&reach).ok_or(BeadError::ReachTooBig)?,
            cartridges: count.to_integer().to_i64().ok_or(BeadError::TooManyCartridges)?,
            volume_ml,
            warnings: warnings.into_iter().flatten().collect(),
        })
    }
}

/// A fraction of nanometres that is not under zero, to the nearest.
fn nearest(nm: &BigRational) -> Option<Length> {
    debug_assert!(*nm >= BigRational::zero());
    nm.round().to_integer().to_i64().map(Length::from_nm)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn share(n: i64, d: i64) -> BigRational {
        BigRational::new(n.into(), d.into())
    }

    fn quarter_inch() -> BeadRequest {
        BeadRequest {
            width: Length::from_inches_64(0, 16),
            depth: Length::from_inches_64(0, 16),
            length: Length::from_inches(12),
            shape: BeadShape::Square,
            cartridge: Cartridge::fluid_ounces(share(101, 10)).unwrap(),
            waste: share(0, 1),
            width_least: Length::from_inches_64(0, 16),
        }
    }

    #[test]
    fn a_fluid_ounce_is_231_of_128_cubic_inches() {
        let cubic_inch = share(25_400_000, 10_000_000).pow(3);
        let ounce = Cartridge::fluid_ounces(share(1, 1)).unwrap();
        assert_eq!(ounce.0, cubic_inch * share(231, 128));
    }

    #[test]
    fn cartridges_are_counted_exactly() {
        // A litre of joint: 10 mm x 10 mm x 10 m; four cartridges of 250 mL to the drop, five with any waste at all.
        let litre = BeadRequest {
            width: Length::from_mm(10),
            depth: Length::from_mm(10),
            length: Length::from_mm(10_000),
            cartridge: Cartridge::millilitres(share(250, 1)).unwrap(),
            ..quarter_inch()
        };
        let bead = litre.amounts().unwrap();
        assert_eq!((bead.volume_ml.clone(), bead.cartridges), (share(1000, 1), 4));
        assert_eq!(bead.per_cartridge, Length::from_mm(2_500));
        let wasteful = BeadRequest { waste: share(1, 1_000_000_000_000), ..litre.clone() };
        assert_eq!(wasteful.amounts().unwrap().cartridges, 5);
        let fillet = BeadRequest { shape: BeadShape::Fillet, ..litre };
        let half = fillet.amounts().unwrap();
        assert_eq!((half.cartridges, half.per_cartridge), (2, Length::from_mm(5_000)));
    }

    #[test]
    fn warns_of_narrow_and_deep_joints() {
        let warned = |width: i64, depth: i64, shape: BeadShape| {
            let (width, depth) = (Length::from_inches_64(0, width), Length::from_inches_64(0, depth));
            BeadRequest { width, depth, shape, ..quarter_inch() }.amounts().unwrap().warnings
        };
        assert!(warned(16, 16, BeadShape::Square).is_empty());
        assert_eq!(warned(15, 15, BeadShape::Square), [BeadWarning::Narrow]);
        assert_eq!(warned(16, 17, BeadShape::Square), [BeadWarning::Deep]);
        assert!(warned(16, 17, BeadShape::Fillet).is_empty());
    }

    #[test]
    fn refuses_what_has_no_amount() {
        let base = quarter_inch();
        assert!(Cartridge::millilitres(share(0, 1)).is_none());
        let flat = BeadRequest { depth: Length::ZERO, ..base.clone() };
        assert_eq!(flat.amounts(), Err(BeadError::NotPositive));
        assert_eq!(BeadRequest { waste: share(101, 100), ..base.clone() }.amounts(), Err(BeadError::Waste));
        let thin = BeadRequest { width: Length::from_nm(1), depth: Length::from_nm(1), ..base };
        assert_eq!(thin.amounts(), Err(BeadError::ReachTooBig));
    }

    proptest! {
        #[test]
        fn the_count_is_the_least_that_is_enough(
            width in 1_i64..40_000_000, depth in 1_i64..40_000_000, length in 1_i64..100_000_000_000, waste in 0_i64..=100,
        ) {
            let [width, depth, length] = [width, depth, length].map(Length::from_nm);
            let request = BeadRequest { width, depth, length, waste: share(waste, 100), ..quarter_inch() };
            if let Ok(bead) = request.amounts() {
                let gross = bead.volume_ml * share(100 + waste, 100);
                let held = |count: i64| &request.cartridge.0 * BigInt::from(count);
                prop_assert!(held(bead.cartridges) >= gross && held(bead.cartridges - 1) < gross);
            }
        }
    }
}
