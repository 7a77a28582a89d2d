use num_integer::Integer;

use super::{Division, Length, Rounding, Unit};

/// How a length is shown to a person: a unit and how finely it is divided.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Show {
    /// Inches with a fraction, as `6 1/16"`; the number of parts in an inch.
    Inches(u32),
    /// Feet and inches with a fraction, as `7' 3 1/2"`; the number of parts in an inch.
    FeetInches(u32),
    /// Millimetres, as `154 mm` or `154.5 mm`; the number of parts in a millimetre.
    Millimetres(u32),
}

impl Show {
    /// The ways that can be asked for.
    pub const ALL: [Self; 6] = [
        Self::Inches(16),
        Self::Inches(32),
        Self::Inches(64),
        Self::FeetInches(16),
        Self::Millimetres(1),
        Self::Millimetres(2),
    ];

    /// The codes of [`Show::ALL`], in the same order.
    pub const CODES: [&str; 6] = ["in/16", "in/32", "in/64", "ft-in/16", "mm", "mm/0.5"];

    /// The way of a code such as `in/16`.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::CODES.iter().zip(Self::ALL).find_map(|(own, show)| (*own == code).then_some(show))
    }

    /// The code of one of [`Show::ALL`]; of any other way the code of its unit's coarsest.
    pub fn code(self) -> &'static str {
        let found = Self::CODES.iter().zip(Self::ALL).find_map(|(code, show)| (show == self).then_some(*code));
        found.unwrap_or(match self {
            Self::Inches(_) => "in/16",
            Self::FeetInches(_) => "ft-in/16",
            Self::Millimetres(_) => "mm",
        })
    }

    /// The unit that a text without one is meant in, where lengths are shown so.
    pub const fn unit(self) -> Unit {
        match self {
            Self::Inches(_) | Self::FeetInches(_) => Unit::Inch,
            Self::Millimetres(_) => Unit::Millimetre,
        }
    }

    /// Nanometres in the unit that is divided.
    const fn unit_nm(self) -> i64 {
        self.unit().nm()
    }

    /// The parts in a unit, at least one.
    fn parts(self) -> i64 {
        let (Self::Inches(parts) | Self::FeetInches(parts) | Self::Millimetres(parts)) = self;
        i64::from(parts.max(1))
    }

    /// The smallest mark that is shown.
    pub fn division(self) -> Division {
        Division::new(self.unit_nm(), self.parts()).unwrap_or_default()
    }

    /// The finer of this and a division, in the same unit, where the division is a whole part of the unit; else this.
    pub fn finer(self, division: Division) -> Self {
        let parts = division.parts_of(self.unit_nm()).filter(|parts| *parts > self.parts());
        match (parts.and_then(|parts| u32::try_from(parts).ok()), self) {
            (None, _) => self,
            (Some(parts), Self::Inches(_)) => Self::Inches(parts),
            (Some(parts), Self::FeetInches(_)) => Self::FeetInches(parts),
            (Some(parts), Self::Millimetres(_)) => Self::Millimetres(parts),
        }
    }

    /// The length's text, to the nearest mark, halves away from zero.
    pub fn text(self, length: Length) -> String {
        self.text_rounded(length, Rounding::Nearest)
    }

    /// The length's text on the mark that `rounding` leads to.
    pub fn text_rounded(self, length: Length, rounding: Rounding) -> String {
        let count = self.division().count(length, rounding).unwrap_or(i64::MAX);
        let sign = if count < 0 { "-" } else { "" };
        let parts = self.parts();
        let (whole, part) = i64::try_from(count.unsigned_abs()).unwrap_or(i64::MAX).div_mod_floor(&parts);
        match self {
            Self::Inches(_) => format!("{sign}{}\"", mixed(whole, part, parts)),
            Self::FeetInches(_) if whole < 12 => format!("{sign}{}\"", mixed(whole, part, parts)),
            Self::FeetInches(_) => format!("{sign}{}' {}\"", whole / 12, mixed(whole % 12, part, parts)),
            Self::Millimetres(_) => match decimals(part, parts) {
                Some(decimals) => format!("{sign}{whole}{decimals} mm"),
                None => format!("{sign}{} mm", mixed(whole, part, parts)),
            },
        }
    }

    /// The length that the text of [`Show::text_rounded`] says.
    pub fn shown(self, length: Length, rounding: Rounding) -> Length {
        self.division().round(length, rounding)
    }
}

/// `6 1/16`, `6`, `1/16` or `0`.
fn mixed(whole: i64, part: i64, parts: i64) -> String {
    let common = part.gcd(&parts).max(1);
    match (whole, part) {
        (whole, 0) => whole.to_string(),
        (0, part) => format!("{}/{}", part / common, parts / common),
        (whole, part) => format!("{whole} {}/{}", part / common, parts / common),
    }
}

/// `.5`, or nothing for a whole number; `None` where the decimals would not end within nine places.
fn decimals(part: i64, parts: i64) -> Option<String> {
    const PLACES: i64 = 1_000_000_000;
    if part == 0 {
        return Some(String::new());
    }
    let scaled = part.checked_mul(PLACES).filter(|scaled| scaled % parts == 0)? / parts;
    Some(format!(".{}", format!("{scaled:09}").trim_end_matches('0')))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shows_each_way() {
        let sixteenth = Length::from_inches_64(87, 32);
        for (show, length, want) in [
            (Show::Inches(16), Length::from_inches_64(6, 4), "6 1/16\""),
            (Show::Inches(16), Length::from_inches_64(0, 20), "5/16\""),
            (Show::Inches(16), Length::ZERO, "0\""),
            (Show::Inches(16), Length::from_inches_64(0, -1), "0\""),
            (Show::Inches(16), Length::from_inches_64(0, -2), "-1/16\""),
            (Show::Inches(32), Length::from_inches_64(0, 2), "1/32\""),
            (Show::Inches(64), Length::from_inches_64(-1, -1), "-1 1/64\""),
            (Show::FeetInches(16), sixteenth, "7' 3 1/2\""),
            (Show::FeetInches(16), Length::from_inches(84), "7' 0\""),
            (Show::FeetInches(16), Length::from_inches_64(11, 32), "11 1/2\""),
            (Show::FeetInches(16), Length::from_inches_64(11, 63), "1' 0\""),
            (Show::FeetInches(16), -sixteenth, "-7' 3 1/2\""),
            (Show::Millimetres(1), Length::from_nm(154_499_999), "154 mm"),
            (Show::Millimetres(1), Length::from_nm(154_500_000), "155 mm"),
            (Show::Millimetres(2), Length::from_nm(154_500_000), "154.5 mm"),
            (Show::Millimetres(2), Length::from_nm(154_000_000), "154 mm"),
            (Show::Millimetres(4), Length::from_nm(154_250_000), "154.25 mm"),
            (Show::Millimetres(3), Length::from_nm(154_333_333), "154 1/3 mm"),
        ] {
            assert_eq!(show.text(length), want);
        }
    }

    #[test]
    fn the_finer_way_keeps_the_unit() {
        assert_eq!(Show::Inches(16).finer(Division::THIRTY_SECOND), Show::Inches(32));
        assert_eq!(Show::Inches(64).finer(Division::THIRTY_SECOND), Show::Inches(64));
        assert_eq!(Show::Millimetres(1).finer(Division::THIRTY_SECOND), Show::Millimetres(1));
        assert_eq!(Show::Millimetres(1).finer(Division::MILLIMETRE.half()), Show::Millimetres(2));
    }

    #[test]
    fn codes_go_both_ways() {
        for code in Show::CODES {
            assert_eq!(Show::from_code(code).map(Show::code), Some(code));
        }
        assert_eq!(Show::from_code("furlong"), None);
    }

    #[test]
    fn rounds_the_text_as_asked() {
        let x = Length::from_inches_64(-1, -1);
        assert_eq!(Show::Inches(16).text_rounded(x, Rounding::Down), "-1 1/16\"");
        assert_eq!(Show::Inches(16).text_rounded(x, Rounding::Up), "-1\"");
        assert_eq!(Show::Inches(16).shown(x, Rounding::Down), Length::from_inches_64(-1, -4));
    }
}
