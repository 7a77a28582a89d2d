use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, ToPrimitive, Zero};

use crate::measure::{Length, Show};
use crate::phrases::{Language, Phrases};
use crate::rules::RuleUnit;

use super::{AmountError, Wording};

/// What a material is counted in. The exact amounts are in pieces, nanometres, square nanometres and litres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Pieces.
    Each,
    /// Length, in nanometres.
    Length,
    /// Area, in square nanometres.
    Area,
    /// Sealant, in litres; shown in fluid ounces or millilitres.
    Sealant,
    /// Primer or paint, in litres; shown in gallons or litres.
    Coating,
}

/// The units in which amounts are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum System {
    Inches,
    Metric,
}

impl System {
    pub(crate) const fn of(show: Show) -> Self {
        match show {
            Show::Inches(_) | Show::FeetInches(_) => Self::Inches,
            Show::Millimetres(_) => Self::Metric,
        }
    }
}

impl Measure {
    /// The unit's sign.
    pub(crate) const fn unit(self, system: System) -> &'static str {
        match (self, system) {
            (Self::Each, _) => "",
            (Self::Length, System::Inches) => "ft",
            (Self::Length, System::Metric) => "m",
            (Self::Area, System::Inches) => "sq ft",
            (Self::Area, System::Metric) => "m²",
            (Self::Sealant, System::Inches) => "fl oz",
            (Self::Sealant, System::Metric) => "mL",
            (Self::Coating, System::Inches) => "gal",
            (Self::Coating, System::Metric) => "L",
        }
    }

    /// The unit's sign as a reader of a language knows it.
    pub(crate) const fn unit_in(self, system: System, language: Language) -> &'static str {
        match (self, system) {
            (Self::Length, System::Inches) => RuleUnit::Foot.sign_in(language),
            (Self::Area, System::Inches) => RuleUnit::SquareFoot.sign_in(language),
            (Self::Sealant, System::Inches) => RuleUnit::FluidOunce.sign_in(language),
            _ => self.unit(system),
        }
    }

    /// How much of the exact measure one unit is: a foot is 304,800,000 nm, a US gallon 3.785411784 L (NIST SP 811).
    pub(super) fn worth(self, system: System) -> BigRational {
        let (n, d) = match (self, system) {
            (Self::Each, _) | (Self::Coating, System::Metric) => (1, 1),
            (Self::Length, System::Inches) => (304_800_000, 1),
            (Self::Length, System::Metric) => (1_000_000_000, 1),
            (Self::Area, System::Inches) => (92_903_040_000_000_000, 1),
            (Self::Area, System::Metric) => (1_000_000_000_000_000_000, 1),
            (Self::Sealant, System::Inches) => (295_735_295_625, 10_000_000_000_000),
            (Self::Sealant, System::Metric) => (1, 1_000),
            (Self::Coating, System::Inches) => (3_785_411_784, 1_000_000_000),
        };
        ratio(n, d)
    }

    /// An exact amount in the unit that is shown.
    pub(crate) fn shown(self, amount: &BigRational, system: System) -> BigRational {
        amount / self.worth(system)
    }
}

/// A material to order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// A stable code: the material, with its size where there are several.
    pub code: String,
    /// The stock length, of boards.
    pub stock: Option<Length>,
    /// What it is called.
    pub name: Wording,
    /// What it is counted in.
    pub measure: Measure,
    /// What goes on the house, exactly.
    pub net: BigRational,
    /// The allowance for what is spoilt, exactly.
    pub waste: BigRational,
    /// How many packs to buy.
    pub packs: i64,
    /// What one pack holds, exactly.
    pub pack: BigRational,
    /// What one pack is called.
    pub pack_name: Wording,
    /// What the amount was computed from.
    pub from: Wording,
}

/// An item before its packs are counted.
pub(super) struct Draft {
    pub(super) material: &'static str,
    pub(super) code: String,
    pub(super) stock: Option<Length>,
    pub(super) name: Wording,
    pub(super) measure: Measure,
    pub(super) net: BigRational,
    /// The allowance as a share of what goes on the house.
    pub(super) waste: (i64, i64),
    /// What one pack holds.
    pub(super) pack: BigRational,
    pub(super) pack_name: Wording,
    /// No fewer packs than these, whatever the amount: pieces cannot be joined from rests.
    pub(super) least: i64,
    pub(super) from: Wording,
}

impl Item {
    /// What is ordered at least: net and waste.
    pub fn amount(&self) -> BigRational {
        &self.net + &self.waste
    }

    /// An exact amount of this item in the unit in which it is shown.
    pub fn shown(&self, amount: &BigRational, show: Show) -> f64 {
        self.measure.shown(amount, System::of(show)).to_f64().unwrap_or_default()
    }

    /// The unit in which it is shown; `each` for pieces.
    pub fn unit(&self, show: Show) -> &'static str {
        match self.measure.unit(System::of(show)) {
            "" => "each",
            "m²" => "m2",
            unit => unit,
        }
    }

    /// The item as plain data: `{name, amount, unit, net, waste, packs, pack, from}`.
    pub fn json(&self, phrases: &Phrases, show: Show) -> serde_json::Value {
        let shown = |amount: &BigRational| self.shown(amount, show);
        serde_json::json!({
            "name": self.name.text(phrases, show),
            "amount": shown(&self.amount()),
            "unit": self.unit(show),
            "net": shown(&self.net),
            "waste": shown(&self.waste),
            "packs": self.packs,
            "pack": self.pack_name.text(phrases, show),
            "from": self.from.text(phrases, show),
        })
    }

    /// An exact amount as a person reads it: rounded up to a tenth, with its unit.
    pub fn text(&self, amount: &BigRational, show: Show, language: Language) -> String {
        let system = System::of(show);
        let number = decimal(&self.measure.shown(amount, system));
        format!("{number} {}", self.measure.unit_in(system, language)).trim_end().to_owned()
    }
}

impl Draft {
    /// The item; none where nothing is needed.
    pub(super) fn item(self) -> Result<Option<Item>, AmountError> {
        if self.net <= BigRational::zero() {
            return Ok(None);
        }
        let waste = &self.net * ratio(self.waste.0, self.waste.1);
        let packs = if self.pack > BigRational::zero() {
            ((&self.net + &waste) / &self.pack).ceil().to_integer().to_i64()
        } else {
            None
        };
        let packs = packs.ok_or(AmountError::TooMuch { material: self.material })?.max(self.least);
        Ok(Some(Item {
            stock: self.stock,
            code: self.code,
            name: self.name,
            measure: self.measure,
            net: self.net,
            waste,
            packs,
            pack: self.pack,
            pack_name: self.pack_name,
            from: self.from,
        }))
    }
}

/// A fraction; zero for a denominator of zero.
pub(super) fn ratio(n: i64, d: i64) -> BigRational {
    if d == 0 { BigRational::zero() } else { BigRational::new(n.into(), d.into()) }
}

/// A whole number.
pub(super) fn whole(n: impl Into<BigInt>) -> BigRational {
    BigRational::from_integer(n.into())
}

/// A number that is not under zero, rounded up to a tenth, under one to a hundredth: what is bought must be enough.
/// Written with a point, as Mexico and Central America write it too.
pub(super) fn decimal(number: &BigRational) -> String {
    let (places, scale) = if *number < one() { (2, 100) } else { (1, 10) };
    let parts = (number * whole(scale)).ceil().to_integer();
    let (ones, part): (BigInt, BigInt) = (&parts / scale, &parts % scale);
    if part.is_zero() {
        return ones.to_string();
    }
    let part = format!("{part:0>places$}");
    let part = part.trim_end_matches('0');
    format!("{ones}.{part}")
}

/// One, for what is bought by the piece.
pub(super) fn one() -> BigRational {
    BigRational::one()
}
