use std::cmp::Ordering;

use num_rational::BigRational;
use num_traits::ToPrimitive;

use crate::measure::Length;
use crate::phrases::Language;

/// The unit that a source prints its value in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RuleUnit {
    /// Inches.
    Inch,
    /// Feet.
    Foot,
    /// Millimetres.
    Millimetre,
    /// Metres.
    Metre,
    /// Degrees of angle.
    Degree,
    /// A share of a whole, as a fraction.
    Share,
    /// A share of a whole, in hundredths.
    Percent,
    /// A plain count.
    Count,
    /// Square inches.
    SquareInch,
    /// Square feet.
    SquareFoot,
    /// Millilitres.
    Millilitre,
    /// US fluid ounces.
    FluidOunce,
    /// Cubic feet of air a minute.
    CubicFootPerMinute,
    /// Volts.
    Volt,
    /// A year of the calendar.
    Year,
    /// US gallons.
    Gallon,
    /// Litres.
    Litre,
    /// Square feet that a US gallon covers.
    SquareFootPerGallon,
    /// Square metres that a litre covers.
    SquareMetrePerLitre,
}

impl RuleUnit {
    /// Every unit.
    pub const ALL: &'static [Self] = &[
        Self::Inch,
        Self::Foot,
        Self::Millimetre,
        Self::Metre,
        Self::Degree,
        Self::Share,
        Self::Percent,
        Self::Count,
        Self::SquareInch,
        Self::SquareFoot,
        Self::Millilitre,
        Self::FluidOunce,
        Self::CubicFootPerMinute,
        Self::Volt,
        Self::Year,
        Self::Gallon,
        Self::Litre,
        Self::SquareFootPerGallon,
        Self::SquareMetrePerLitre,
    ];

    /// The stable text code, as it is kept in the book.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Inch => "inch",
            Self::Foot => "foot",
            Self::Millimetre => "millimetre",
            Self::Metre => "metre",
            Self::Degree => "degree",
            Self::Share => "share",
            Self::Percent => "percent",
            Self::Count => "count",
            Self::SquareInch => "square-inch",
            Self::SquareFoot => "square-foot",
            Self::Millilitre => "millilitre",
            Self::FluidOunce => "fluid-ounce",
            Self::CubicFootPerMinute => "cubic-foot-per-minute",
            Self::Volt => "volt",
            Self::Year => "year",
            Self::Gallon => "gallon",
            Self::Litre => "litre",
            Self::SquareFootPerGallon => "square-foot-per-gallon",
            Self::SquareMetrePerLitre => "square-metre-per-litre",
        }
    }

    /// The unit's sign, as printed after the value; empty for shares, counts and years.
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Millimetre => "mm",
            Self::Metre => "m",
            Self::Degree => "°",
            Self::Share | Self::Count | Self::Year => "",
            Self::Percent => "%",
            Self::SquareInch => "sq in",
            Self::SquareFoot => "sq ft",
            Self::Millilitre => "mL",
            Self::FluidOunce => "fl oz",
            Self::CubicFootPerMinute => "CFM",
            Self::Volt => "V",
            Self::Gallon => "gal",
            Self::Litre => "L",
            Self::SquareFootPerGallon => "sq ft/gal",
            Self::SquareMetrePerLitre => "m²/L",
        }
    }

    /// The unit's sign as a reader of a language knows it. Metric signs are the same everywhere.
    pub const fn sign_in(self, language: Language) -> &'static str {
        match (language, self) {
            (Language::Spanish, Self::Inch) => "pulg",
            (Language::Spanish, Self::Foot) => "pies",
            (Language::Spanish, Self::SquareInch) => "pulg²",
            (Language::Spanish, Self::SquareFoot) => "pies²",
            (Language::Spanish, Self::FluidOunce) => "oz líq",
            (Language::Spanish, Self::CubicFootPerMinute) => "pies³/min",
            (Language::Spanish, Self::SquareFootPerGallon) => "pies²/gal",
            _ => self.sign(),
        }
    }

    /// What is measured, and how many of its smallest common unit one of these is: quantities are compared in those.
    const fn base(self) -> (QuantityKind, i64) {
        match self {
            Self::Inch => (QuantityKind::Length, Length::NM_PER_INCH),
            Self::Foot => (QuantityKind::Length, 12 * Length::NM_PER_INCH),
            Self::Millimetre => (QuantityKind::Length, Length::NM_PER_MM),
            Self::Metre => (QuantityKind::Length, 1000 * Length::NM_PER_MM),
            Self::Degree => (QuantityKind::Angle, 1),
            Self::Share => (QuantityKind::Share, 100),
            Self::Percent => (QuantityKind::Share, 1),
            Self::Count => (QuantityKind::Count, 1),
            Self::SquareInch => (QuantityKind::Area, 1),
            Self::SquareFoot => (QuantityKind::Area, 144),
            // A US fluid ounce is 231/128 cubic inches, one inch is 25.4 mm: 29.5735295625 mL.
            Self::Millilitre => (QuantityKind::Volume, 10_000_000_000),
            Self::FluidOunce => (QuantityKind::Volume, 295_735_295_625),
            Self::CubicFootPerMinute => (QuantityKind::Flow, 1),
            Self::Volt => (QuantityKind::Voltage, 1),
            Self::Year => (QuantityKind::Year, 1),
            // A US gallon is 231 cubic inches, 3.785411784 L; a square foot is 0.09290304 m².
            Self::Gallon => (QuantityKind::Volume, 37_854_117_840_000),
            Self::Litre => (QuantityKind::Volume, 10_000_000_000_000),
            Self::SquareFootPerGallon => (QuantityKind::Coverage, 92_903_040),
            Self::SquareMetrePerLitre => (QuantityKind::Coverage, 3_785_411_784),
        }
    }

    /// Whether the two units measure the same, so that a value in one may replace a value in the other.
    pub fn measures_same(self, other: Self) -> bool {
        self.base().0 == other.base().0
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum QuantityKind {
    Length,
    Angle,
    Share,
    Count,
    Area,
    Volume,
    Flow,
    Voltage,
    Year,
    Coverage,
}

/// An exact value in a unit: a fraction with a denominator over zero.
#[derive(Clone, Copy, Debug)]
pub struct Quantity {
    numerator: i64,
    denominator: i64,
    unit: RuleUnit,
}

impl Quantity {
    /// The value `numerator / denominator` in `unit`; `None` unless the denominator is over zero and both are at most
    /// 1e15 in size.
    pub fn new(numerator: i64, denominator: i64, unit: RuleUnit) -> Option<Self> {
        let limit = Length::LIMIT.nm();
        let fits = numerator.abs_diff(0) <= limit.unsigned_abs() && denominator > 0 && denominator <= limit;
        fits.then_some(Self { numerator, denominator, unit })
    }

    /// An exact value in `unit`; `None` where the fraction, in lowest terms, goes beyond 1e15.
    pub fn from_exact(value: &BigRational, unit: RuleUnit) -> Option<Self> {
        Self::new(value.numer().to_i64()?, value.denom().to_i64()?, unit)
    }

    /// A value that is written in the table of rules.
    pub(super) const fn fixed(numerator: i64, denominator: i64, unit: RuleUnit) -> Self {
        Self { numerator, denominator, unit }
    }

    /// A length, in inches where `unit` is inches or feet, else in millimetres.
    pub fn from_length(length: Length, unit: RuleUnit) -> Option<Self> {
        match unit {
            RuleUnit::Inch | RuleUnit::Foot => Self::new(length.nm(), Length::NM_PER_INCH, RuleUnit::Inch),
            _ => Self::new(length.nm(), Length::NM_PER_MM, RuleUnit::Millimetre),
        }
    }

    /// The numerator and the denominator.
    pub const fn fraction(self) -> (i64, i64) {
        (self.numerator, self.denominator)
    }

    /// The unit.
    pub const fn unit(self) -> RuleUnit {
        self.unit
    }

    /// The length, to the nearest nanometre; `None` for what is not a length or does not fit.
    pub fn length(self) -> Option<Length> {
        match self.unit.base() {
            (QuantityKind::Length, nm) => Length::from_nm(self.numerator).scaled(nm, self.denominator),
            _ => None,
        }
    }

    /// The share of a whole as a fraction; `None` for what is not a share.
    pub fn share(self) -> Option<(i64, i64)> {
        match self.unit {
            RuleUnit::Share => Some((self.numerator, self.denominator)),
            RuleUnit::Percent => Some((self.numerator, self.denominator.checked_mul(100)?)),
            _ => None,
        }
    }

    /// The value in another unit, exactly; `None` where the two do not measure the same.
    pub fn value_in(self, unit: RuleUnit) -> Option<BigRational> {
        let ((own, scale), (other, its)) = (self.unit.base(), unit.base());
        let value = |n: i64, d: i64| BigRational::new(n.into(), d.into());
        (own == other).then(|| value(self.numerator, self.denominator) * value(scale, its))
    }

    /// The value as a whole number of its unit; `None` where it is not whole.
    pub fn whole(self) -> Option<i64> {
        (self.numerator % self.denominator == 0).then(|| self.numerator / self.denominator)
    }

    /// Which is larger; `None` where the two do not measure the same.
    pub fn compare(self, other: Self) -> Option<Ordering> {
        let ((own, own_scale), (its, its_scale)) = (self.unit.base(), other.unit.base());
        if own != its {
            return None;
        }
        let cross =
            |n: i64, scale: i64, d: i64| i128::from(n).checked_mul(i128::from(scale))?.checked_mul(i128::from(d));
        let left = cross(self.numerator, own_scale, other.denominator)?;
        let right = cross(other.numerator, its_scale, self.denominator)?;
        Some(left.cmp(&right))
    }

    /// The value as its source prints it: `1 1/4 in`, `0.33 mm`, `6 %`, `1.5°`, `1/4`.
    pub fn text(self) -> String {
        self.text_in(Language::English)
    }

    /// The value with its unit as a reader of a language knows it: `1 1/4 pulg`.
    pub fn text_in(self, language: Language) -> String {
        let inches = matches!(self.unit, RuleUnit::Inch | RuleUnit::Foot | RuleUnit::Share);
        let common = num_integer::gcd(self.numerator, self.denominator).max(1);
        let (n, d) = (self.numerator / common, self.denominator / common);
        let value = match decimals(n, d) {
            _ if d == 1 => n.to_string(),
            // A tape has halves to sixty-fourths; anything else in inches is printed as decimals.
            Some(decimals) if !(inches && d <= 64 && d.count_ones() == 1) => decimals,
            _ => {
                let (sign, size) = (if n < 0 { "-" } else { "" }, n.unsigned_abs());
                let d = d.unsigned_abs();
                match size / d {
                    0 => format!("{sign}{size}/{d}"),
                    whole => format!("{sign}{whole} {}/{d}", size % d),
                }
            }
        };
        match self.unit.sign_in(language) {
            "" => value,
            "°" => format!("{value}°"),
            sign => format!("{value} {sign}"),
        }
    }
}

impl PartialEq for Quantity {
    fn eq(&self, other: &Self) -> bool {
        self.compare(*other) == Some(Ordering::Equal)
    }
}

impl Eq for Quantity {}

/// `n / d` in decimals, where they end within nine places.
fn decimals(n: i64, d: i64) -> Option<String> {
    let mut scale = 1_i128;
    for places in 0..=9_usize {
        let scaled = i128::from(n) * scale;
        if scaled % i128::from(d) == 0 {
            let (sign, size) = (if n < 0 { "-" } else { "" }, (scaled / i128::from(d)).unsigned_abs());
            let scale = scale.unsigned_abs();
            return Some(match places {
                0 => format!("{sign}{size}"),
                _ => format!("{sign}{}.{:0places$}", size / scale, size % scale),
            });
        }
        scale *= 10;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn prints_as_the_source_does() {
        for (n, d, unit, text) in [
            (5, 4, RuleUnit::Inch, "1 1/4 in"),
            (1, 8, RuleUnit::Inch, "1/8 in"),
            (12, 1, RuleUnit::Inch, "12 in"),
            (19, 1000, RuleUnit::Inch, "0.019 in"),
            (75, 10, RuleUnit::Millimetre, "7.5 mm"),
            (33, 100, RuleUnit::Millimetre, "0.33 mm"),
            (6, 1, RuleUnit::Percent, "6 %"),
            (3, 2, RuleUnit::Degree, "1.5°"),
            (2, 3, RuleUnit::Share, "2/3"),
            (2, 4, RuleUnit::Share, "1/2"),
            (1978, 1, RuleUnit::Year, "1978"),
            (25, 2, RuleUnit::SquareInch, "12.5 sq in"),
            (-5, 4, RuleUnit::Inch, "-1 1/4 in"),
            (1, 3, RuleUnit::Millimetre, "1/3 mm"),
        ] {
            assert_eq!(Quantity::fixed(n, d, unit).text(), text);
        }
    }

    #[test]
    fn units_are_named_in_spanish() {
        let spanish = |n, d, unit| Quantity::fixed(n, d, unit).text_in(Language::Spanish);
        assert_eq!(spanish(5, 4, RuleUnit::Inch), "1 1/4 pulg");
        assert_eq!(spanish(101, 10, RuleUnit::FluidOunce), "10.1 oz líq");
        assert_eq!(spanish(33, 100, RuleUnit::Millimetre), "0.33 mm");
    }

    #[test]
    fn compares_across_units_exactly() {
        let lap = Quantity::fixed(5, 4, RuleUnit::Inch);
        assert_eq!(lap.length(), Some(Length::from_nm(31_750_000)));
        assert_eq!(lap.compare(Quantity::fixed(32, 1, RuleUnit::Millimetre)), Some(Ordering::Less));
        assert_eq!(lap, Quantity::fixed(3175, 100, RuleUnit::Millimetre));
        assert_eq!(Quantity::fixed(1, 4, RuleUnit::Share), Quantity::fixed(25, 1, RuleUnit::Percent));
        assert_eq!(Quantity::fixed(1, 1, RuleUnit::SquareFoot), Quantity::fixed(144, 1, RuleUnit::SquareInch));
        assert_eq!(lap.compare(Quantity::fixed(1, 1, RuleUnit::Degree)), None);
        assert_ne!(lap, Quantity::fixed(5, 4, RuleUnit::Count));
        assert_eq!(Quantity::fixed(1, 1, RuleUnit::Gallon), Quantity::fixed(128, 1, RuleUnit::FluidOunce));
        let value = |quantity: Quantity, unit| quantity.value_in(unit).unwrap();
        let litres = value(Quantity::fixed(1, 1, RuleUnit::Gallon), RuleUnit::Litre);
        assert_eq!(litres, BigRational::new(3_785_411_784_i64.into(), 1_000_000_000.into()));
        // 400 sq ft of one gallon are 37.161216 m² of 3.785411784 L.
        let coverage = value(Quantity::fixed(400, 1, RuleUnit::SquareFootPerGallon), RuleUnit::SquareMetrePerLitre);
        assert_eq!(coverage, BigRational::new(37_161_216_000_i64.into(), 3_785_411_784_i64.into()));
    }

    #[test]
    fn refuses_what_is_no_fraction() {
        assert!(Quantity::new(1, 0, RuleUnit::Inch).is_none());
        assert!(Quantity::new(1, -2, RuleUnit::Inch).is_none());
        assert!(Quantity::new(i64::MIN, 1, RuleUnit::Inch).is_none());
        assert_eq!(Quantity::fixed(1, 3, RuleUnit::Count).whole(), None);
        assert_eq!(Quantity::fixed(6, 3, RuleUnit::Count).whole(), Some(2));
    }

    proptest! {
        #[test]
        fn nothing_makes_it_panic(n in any::<i64>(), d in any::<i64>(), m in any::<i64>()) {
            for unit in [RuleUnit::Inch, RuleUnit::Foot, RuleUnit::FluidOunce, RuleUnit::Percent] {
                if let (Some(a), Some(b)) = (Quantity::new(n, d, unit), Quantity::new(m, 1, unit)) {
                    prop_assert!(!a.text().is_empty());
                    prop_assert_eq!(a.compare(b), b.compare(a).map(Ordering::reverse));
                    let _ = (a.length(), a.share(), a.whole());
                }
            }
        }

        #[test]
        fn a_length_comes_back(nm in -1_000_000_000_000_i64..1_000_000_000_000) {
            for unit in [RuleUnit::Inch, RuleUnit::Millimetre] {
                let length = Length::from_nm(nm);
                prop_assert_eq!(Quantity::from_length(length, unit).and_then(Quantity::length), Some(length));
            }
        }
    }
}
