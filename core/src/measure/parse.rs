use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Pow, Zero};
use thiserror::Error;

use super::{Exact, Length, Unit};

/// Reads what a person types or writes as a length.
///
/// The forms: `6 1/16"`, `6-1/16 in` (the hyphen joins whole and fraction), `6.0625"`, `7' 3 1/2"`, `7'-3 1/2"`,
/// `5/16"`, `154 mm`, `15.4 cm`, `1.54 m`; Unicode fractions and primes, curly quotes, two single quotes for inches; a
/// leading minus negates the whole.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Reader {
    /// The unit of a text that names none; without it such a text is an error.
    pub unit: Option<Unit>,
    /// Whether a comma may stand for the decimal point, beside the point itself.
    pub decimal_comma: bool,
}

/// A length as it was written: its exact value and the unit it was written in (feet for feet and inches).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// The value, unrounded.
    pub exact: Exact,
    /// The unit that stands in the text, or the reader's own.
    pub unit: Unit,
}

/// Why a text is not a length, and at which character (counted from zero).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
#[error("{kind} at character {position}")]
pub struct ParseError {
    /// What is wrong.
    pub kind: ParseErrorKind,
    /// The character, counted from zero, at which the text stops being a length.
    pub position: usize,
}

/// What can be wrong with a text that should be a length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum ParseErrorKind {
    /// Nothing but white space.
    #[error("no length")]
    Empty,
    /// A number is expected here.
    #[error("no number")]
    NumberExpected,
    /// A number without a unit, and the reader has none either.
    #[error("no unit")]
    UnitMissing,
    /// A fraction's lower number is zero.
    #[error("division by zero")]
    ZeroDenominator,
    /// Something follows that does not belong to a length.
    #[error("unexpected text")]
    Unexpected,
    /// Longer than 200 characters, or beyond 1,000 km.
    #[error("too big")]
    TooBig,
}

/// The longest text that is read.
const TEXT_LIMIT: usize = 200;

impl Reader {
    /// The length that `text` says, exactly.
    ///
    /// # Errors
    /// [`ParseError`] with the position of the first character that cannot belong to a length.
    pub fn read(&self, text: &str) -> Result<Written, ParseError> {
        let characters: Vec<char> = text.chars().take(TEXT_LIMIT + 1).collect();
        if characters.len() > TEXT_LIMIT {
            return Err(ParseError { kind: ParseErrorKind::TooBig, position: TEXT_LIMIT });
        }
        let mut cursor = Cursor { characters: &characters, at: 0, decimal_comma: self.decimal_comma };
        let written = self.whole_text(&mut cursor)?;
        match written.exact.to_length() {
            Some(_) => Ok(written),
            None => Err(ParseError { kind: ParseErrorKind::TooBig, position: 0 }),
        }
    }

    /// The length that `text` says, to the nearest nanometre.
    ///
    /// # Errors
    /// As [`Reader::read`].
    pub fn length(&self, text: &str) -> Result<Length, ParseError> {
        let written = self.read(text)?;
        written.exact.to_length().ok_or(ParseError { kind: ParseErrorKind::TooBig, position: 0 })
    }

    fn whole_text(&self, cursor: &mut Cursor<'_>) -> Result<Written, ParseError> {
        cursor.skip_space();
        if cursor.peek().is_none() {
            return Err(cursor.error(ParseErrorKind::Empty));
        }
        let negative = cursor.take_if(|c| c == '-' || c == '\u{2212}');
        let first = cursor.quantity()?;
        cursor.skip_space();
        let named = cursor.unit();
        let unit = match (named, self.unit, cursor.peek()) {
            (Some(unit), _, _) | (None, Some(unit), None) => unit,
            (None, None, None) => return Err(cursor.error(ParseErrorKind::UnitMissing)),
            (None, _, Some(_)) => return Err(cursor.error(ParseErrorKind::Unexpected)),
        };
        let mut value = first.value * BigInt::from(unit.nm());
        cursor.skip_space();
        if named == Some(Unit::Foot) && first.whole && cursor.peek().is_some() {
            if cursor.take_if(|c| c == '-') {
                cursor.skip_space();
            }
            let inches = cursor.quantity()?;
            cursor.skip_space();
            let unexpected = cursor.error(ParseErrorKind::Unexpected);
            if cursor.unit() != Some(Unit::Inch) {
                return Err(unexpected);
            }
            value += inches.value * BigInt::from(Unit::Inch.nm());
            cursor.skip_space();
        }
        if cursor.peek().is_some() {
            return Err(cursor.error(ParseErrorKind::Unexpected));
        }
        Ok(Written { exact: Exact(if negative { -value } else { value }), unit })
    }
}

/// A number without its unit, and whether it is a plain whole number.
struct Quantity {
    value: BigRational,
    whole: bool,
}

struct Cursor<'a> {
    characters: &'a [char],
    at: usize,
    decimal_comma: bool,
}

impl Cursor<'_> {
    fn peek(&self) -> Option<char> {
        self.peek_at(0)
    }

    fn peek_at(&self, ahead: usize) -> Option<char> {
        self.characters.get(self.at + ahead).copied()
    }

    fn error(&self, kind: ParseErrorKind) -> ParseError {
        ParseError { kind, position: self.at }
    }

    fn take_if(&mut self, accept: impl Fn(char) -> bool) -> bool {
        let taken = self.peek().is_some_and(accept);
        self.at += usize::from(taken);
        taken
    }

    fn skip_space(&mut self) {
        while self.take_if(char::is_whitespace) {}
    }

    fn digits(&mut self) -> String {
        let mut digits = String::new();
        while let Some(digit) = self.peek().filter(char::is_ascii_digit) {
            digits.push(digit);
            self.at += 1;
        }
        digits
    }

    /// `6`, `6.0625`, `.5`, `5/16`, `6 1/16`, `6-1/16`, `6½`, `½`.
    fn quantity(&mut self) -> Result<Quantity, ParseError> {
        if let Some(value) = self.vulgar() {
            return Ok(Quantity { value, whole: false });
        }
        let digits = self.digits();
        if self.point() {
            let decimals = self.digits();
            if decimals.is_empty() {
                return Err(self.error(ParseErrorKind::NumberExpected));
            }
            let scale = BigInt::from(10).pow(decimals.len());
            return Ok(Quantity { value: BigRational::new(number(&(digits + &decimals)), scale), whole: false });
        }
        if digits.is_empty() {
            return Err(self.error(ParseErrorKind::NumberExpected));
        }
        if let Some(value) = self.denominator(&digits)? {
            return Ok(Quantity { value, whole: false });
        }
        let whole = BigRational::from_integer(number(&digits));
        let mark = self.at;
        if !self.take_if(|c| c == '-') {
            self.skip_space();
        }
        if let Some(fraction) = self.vulgar() {
            return Ok(Quantity { value: whole + fraction, whole: false });
        }
        let upper = self.digits();
        if !upper.is_empty()
            && let Some(fraction) = self.denominator(&upper)?
        {
            return Ok(Quantity { value: whole + fraction, whole: false });
        }
        self.at = mark;
        Ok(Quantity { value: whole, whole: true })
    }

    /// A decimal point, or a comma where the reader allows one.
    fn point(&mut self) -> bool {
        let comma = self.decimal_comma;
        self.take_if(|c| c == '.' || (comma && c == ','))
    }

    /// The rest of a fraction whose upper number was just read, if a stroke follows.
    fn denominator(&mut self, upper: &str) -> Result<Option<BigRational>, ParseError> {
        if !self.take_if(|c| c == '/' || c == '\u{2044}') {
            return Ok(None);
        }
        let mark = self.at;
        let lower = self.digits();
        if lower.is_empty() {
            return Err(self.error(ParseErrorKind::NumberExpected));
        }
        let lower = number(&lower);
        if lower.is_zero() {
            self.at = mark;
            return Err(self.error(ParseErrorKind::ZeroDenominator));
        }
        Ok(Some(BigRational::new(number(upper), lower)))
    }

    /// A fraction that Unicode has as one character.
    fn vulgar(&mut self) -> Option<BigRational> {
        let (upper, lower) = match self.peek()? {
            '½' => (1, 2),
            '⅓' => (1, 3),
            '⅔' => (2, 3),
            '¼' => (1, 4),
            '¾' => (3, 4),
            '⅕' => (1, 5),
            '⅖' => (2, 5),
            '⅗' => (3, 5),
            '⅘' => (4, 5),
            '⅙' => (1, 6),
            '⅚' => (5, 6),
            '⅐' => (1, 7),
            '⅛' => (1, 8),
            '⅜' => (3, 8),
            '⅝' => (5, 8),
            '⅞' => (7, 8),
            '⅑' => (1, 9),
            '⅒' => (1, 10),
            '↉' => (0, 3),
            _ => return None,
        };
        self.at += 1;
        Some(BigRational::new(BigInt::from(upper), BigInt::from(lower)))
    }

    /// A unit's symbol or mark. A letter may not follow a symbol, so that `in` is not found in a longer word.
    fn unit(&mut self) -> Option<Unit> {
        if self.take_if(|c| matches!(c, '"' | '\u{201C}' | '\u{201D}' | '\u{2033}' | '\u{02BA}')) {
            return Some(Unit::Inch);
        }
        let single = |c| matches!(c, '\'' | '\u{2018}' | '\u{2019}' | '\u{2032}' | '\u{02B9}');
        if self.take_if(single) {
            return Some(if self.take_if(single) { Unit::Inch } else { Unit::Foot });
        }
        let word: String = self.characters.iter().skip(self.at).take_while(|c| c.is_alphabetic()).collect();
        let unit = Unit::from_code(&word)?;
        self.at += word.chars().count();
        Some(unit)
    }
}

/// A run of ASCII digits as a number; empty is zero.
fn number(digits: &str) -> BigInt {
    BigInt::parse_bytes(digits.as_bytes(), 10).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn nm(text: &str) -> i64 {
        Reader::default().length(text).unwrap_or_else(|error| panic!("{text}: {error}")).nm()
    }

    fn refused(reader: Reader, text: &str) -> (ParseErrorKind, usize) {
        let error = reader.read(text).expect_err(text);
        (error.kind, error.position)
    }

    #[test]
    fn reads_every_form() {
        for (text, want) in [
            ("6 1/16\"", 153_987_500),
            ("6-1/16 in", 153_987_500),
            ("6.0625\"", 153_987_500),
            ("7' 3 1/2\"", 2_222_500_000),
            ("7'-3 1/2\"", 2_222_500_000),
            ("7' - 3 1/2\"", 2_222_500_000),
            ("7'3½″", 2_222_500_000),
            ("7 ft 3 1/2 in", 2_222_500_000),
            ("7’ 3 1/2”", 2_222_500_000),
            ("87.5''", 2_222_500_000),
            ("5/16\"", 7_937_500),
            ("5⁄16\"", 7_937_500),
            ("154 mm", 154_000_000),
            ("15.4 cm", 154_000_000),
            ("1.54 m", 1_540_000_000),
            ("154mm", 154_000_000),
            ("-6 1/16\"", -153_987_500),
            ("-7' 3 1/2\"", -2_222_500_000),
            ("  62'  ", 18_897_600_000),
            ("½\"", 12_700_000),
            ("6½ in", 165_100_000),
            ("6-½ in", 165_100_000),
            (".5\"", 12_700_000),
            ("17/16\"", 26_987_500),
            ("1/3\"", 8_466_667),
            ("0.0000004 mm", 0),
            ("0.0000005 mm", 1),
            ("-0.0000005 mm", -1),
            ("-0\"", 0),
        ] {
            assert_eq!(nm(text), want, "{text}");
        }
    }

    #[test]
    fn says_what_is_wrong_and_where() {
        use ParseErrorKind::*;
        for (text, want) in [
            ("", (Empty, 0)),
            ("   ", (Empty, 3)),
            ("-", (NumberExpected, 1)),
            ("--6\"", (NumberExpected, 1)),
            ("six\"", (NumberExpected, 0)),
            ("6", (UnitMissing, 1)),
            ("6 1/16", (UnitMissing, 6)),
            ("6 1/\"", (NumberExpected, 4)),
            ("6 1/0\"", (ZeroDenominator, 4)),
            ("6 1/16\" x", (Unexpected, 8)),
            ("6,5 mm", (Unexpected, 1)),
            ("1e3 mm", (Unexpected, 1)),
            ("6.5 1/2\"", (Unexpected, 4)),
            ("6. mm", (NumberExpected, 2)),
            ("7' 3", (Unexpected, 4)),
            ("7' 3'", (Unexpected, 4)),
            ("3\" 7'", (Unexpected, 3)),
            ("6 inch", (Unexpected, 2)),
            ("6 MM", (Unexpected, 2)),
            ("1000 km", (Unexpected, 5)),
            ("+6\"", (NumberExpected, 0)),
            ("6 - 1/16\"", (Unexpected, 2)),
        ] {
            assert_eq!(refused(Reader::default(), text), want, "{text:?}");
        }
    }

    #[test]
    fn a_unit_of_the_reader_serves_a_text_without_one() {
        let reader = Reader { unit: Some(Unit::Inch), decimal_comma: false };
        assert_eq!(reader.length("6 1/16").map(Length::nm), Ok(153_987_500));
        assert_eq!(reader.length("154 mm").map(Length::nm), Ok(154_000_000));
        assert_eq!(refused(reader, "7' 3"), (ParseErrorKind::Unexpected, 4));
        let feet = Reader { unit: Some(Unit::Foot), decimal_comma: false };
        assert_eq!(feet.length("7").map(Length::nm), Ok(2_133_600_000));
        assert_eq!(refused(feet, "7 3"), (ParseErrorKind::Unexpected, 2));
    }

    #[test]
    fn a_decimal_comma_is_read_where_it_is_allowed() {
        let reader = Reader { unit: None, decimal_comma: true };
        assert_eq!(reader.length("6,5 mm").map(Length::nm), Ok(6_500_000));
        assert_eq!(reader.length("6.5 mm").map(Length::nm), Ok(6_500_000));
        assert_eq!(refused(reader, "1.234,5 mm"), (ParseErrorKind::Unexpected, 5));
    }

    #[test]
    fn the_limit_is_a_thousand_kilometres() {
        assert_eq!(nm("1000000 m"), 1_000_000_000_000_000);
        assert_eq!(refused(Reader::default(), "1000000.000000001 m").0, ParseErrorKind::TooBig);
        assert_eq!(refused(Reader::default(), &"9".repeat(201)).0, ParseErrorKind::TooBig);
        assert_eq!(refused(Reader::default(), &format!("{} mm", "9".repeat(190))).0, ParseErrorKind::TooBig);
    }
}
