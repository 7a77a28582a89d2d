use super::{Language, Length};

/// A unit that a length may be written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unit {
    /// Inches of exactly 25.4 mm (NIST SP 811).
    Inch,
    /// Feet of twelve inches.
    Foot,
    /// Millimetres.
    Millimetre,
    /// Centimetres.
    Centimetre,
    /// Metres.
    Metre,
}

impl Unit {
    /// Every unit, in the order in which they are offered.
    pub const ALL: [Self; 5] = [Self::Inch, Self::Foot, Self::Millimetre, Self::Centimetre, Self::Metre];

    /// The unit's symbol: `in`, `ft`, `mm`, `cm` or `m`.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Metre => "m",
        }
    }

    /// The unit that a word means to a person, in any case: the symbols, `inch`, `inches`, `foot` and `feet` in every
    /// language, `pulg`, `pulgada(s)` and `pie(s)` in Spanish.
    pub fn from_word(word: &str, language: Language) -> Option<Self> {
        let is = |names: &[&str]| names.iter().any(|name| word.eq_ignore_ascii_case(name));
        let spanish = |names: &[&str]| language == Language::Spanish && is(names);
        if is(&["inch", "inches"]) || spanish(&["pulg", "pulgada", "pulgadas"]) {
            return Some(Self::Inch);
        }
        if is(&["foot", "feet"]) || spanish(&["pie", "pies"]) {
            return Some(Self::Foot);
        }
        Self::ALL.into_iter().find(|unit| is(&[unit.code()]))
    }

    /// The unit of a symbol, exactly as [`Unit::code`] gives it.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|unit| unit.code() == code)
    }

    /// Nanometres in one of it.
    pub const fn nm(self) -> i64 {
        match self {
            Self::Inch => Length::NM_PER_INCH,
            Self::Foot => 12 * Length::NM_PER_INCH,
            Self::Millimetre => Length::NM_PER_MM,
            Self::Centimetre => 10 * Length::NM_PER_MM,
            Self::Metre => 1_000 * Length::NM_PER_MM,
        }
    }
}
