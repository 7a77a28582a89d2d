use std::fmt;

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::ToPrimitive;
use thiserror::Error;

use super::number::{Cursor, Number};
use super::{Exact, Language, Length, Unit};

/// Reads what a person types, says or writes as a length or a number: the one grammar of both.
///
/// Numbers: `6`, `6.0625`, `.5`, `5/16`, `6 1/16`, `6-1/16` (the hyphen joins whole and fraction), Unicode fractions. No
/// power of ten, no point without a digit behind it, no blank but between whole and fraction.
///
/// Lengths: `6 1/16"`, `7' 3 1/2"`, `7'-3 1/2"`, `154 mm`, `15.4 cm`, `1.54 m`; straight and curly quotes, primes and accents, two
/// single ones for inches; units in any case, as [`Unit::from_word`] knows them, with or without a closing point. What
/// stands behind whole feet without a unit is inches. A leading minus negates the whole, a hyphen after feet never does.
///
/// In Spanish a comma serves as well as the point, and a number that may be meant in thousands, such as `7.300`, is
/// refused.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Reader {
    /// The unit of a text that names none; without it such a text is an error.
    pub unit: Option<Unit>,
    /// The language that is written in.
    pub language: Language,
}

/// A length as it was written: its exact value and the unit it was written in (feet for feet and inches).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenLength {
    /// The value, unrounded.
    pub exact: Exact,
    /// The unit that stands in the text, or the reader's own.
    pub unit: Unit,
}

impl fmt::Display for WrittenLength {
    /// The exact value as a whole number or fraction of its unit, such as `17/16 in`: it reads back alike in any language.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{} {}", &self.exact.0 / BigInt::from(self.unit.nm()), self.unit.code())
    }
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

/// What can be wrong with a text that should be a length or a number.
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
    /// A point or comma before exactly three digits, where it may part decimals or thousands.
    #[error("decimals or thousands")]
    MaybeThousands,
    /// Inches follow feet that are not a plain whole number.
    #[error("feet before inches are whole")]
    FeetNotWhole,
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
    pub fn read(&self, text: &str) -> Result<WrittenLength, ParseError> {
        let characters = characters(text)?;
        let written = self.written(&mut Cursor::new(&characters, self.language))?;
        match written.exact.to_length() {
            Some(_) => Ok(written),
            None => Err(ParseError { kind: ParseErrorKind::TooBig, position: 0 }),
        }
    }

    /// The length that `text` says, to the nearest nanometre, halves away from zero.
    ///
    /// # Errors
    /// As [`Reader::read`].
    pub fn length(&self, text: &str) -> Result<Length, ParseError> {
        let written = self.read(text)?;
        written.exact.to_length().ok_or(ParseError { kind: ParseErrorKind::TooBig, position: 0 })
    }

    /// The number that `text` says, without any unit.
    ///
    /// # Errors
    /// [`ParseError`] with the position of the first character that cannot belong to a number.
    pub fn number(&self, text: &str) -> Result<BigRational, ParseError> {
        let characters = characters(text)?;
        let mut cursor = Cursor::new(&characters, self.language);
        let value = signed_number(&mut cursor)?;
        at_end(&mut cursor)?;
        Ok(value)
    }

    /// The angle that `text` says in degrees, with or without the degree sign, in thousandths of a degree. No angle goes
    /// into the thousands, so that `22.125` is read in every language.
    ///
    /// # Errors
    /// [`ParseError`] with the position of the first character that cannot belong to a number; at 0 for an angle that is
    /// not whole in thousandths, or too big.
    pub fn millidegrees(&self, text: &str) -> Result<i64, ParseError> {
        let characters = characters(text)?;
        let mut cursor = Cursor::new(&characters, self.language).below_thousand();
        let value = signed_number(&mut cursor)? * BigInt::from(1000);
        cursor.skip_space();
        cursor.take_if(|c| c == '°');
        at_end(&mut cursor)?;
        let wrong = |kind| ParseError { kind, position: 0 };
        if !value.is_integer() {
            return Err(wrong(ParseErrorKind::Unexpected));
        }
        value.to_integer().to_i64().ok_or(wrong(ParseErrorKind::TooBig))
    }

    fn written(&self, cursor: &mut Cursor<'_>) -> Result<WrittenLength, ParseError> {
        let negative = sign(cursor)?;
        let first = cursor.number()?;
        cursor.skip_space();
        let named = self.unit_at(cursor);
        let unit = match (named, self.unit, cursor.peek()) {
            (Some(unit), _, _) | (None, Some(unit), None) => unit,
            (None, None, None) => return Err(cursor.error(ParseErrorKind::UnitMissing)),
            (None, _, Some(_)) => return Err(cursor.error(ParseErrorKind::Unexpected)),
        };
        let mut value = first.value * BigInt::from(unit.nm());
        cursor.skip_space();
        if named == Some(Unit::Foot) && cursor.peek().is_some() {
            let behind = cursor.error(ParseErrorKind::FeetNotWhole);
            let inches = self.inches_behind_feet(cursor)?;
            if !first.whole {
                return Err(behind);
            }
            value += inches.value * BigInt::from(Unit::Inch.nm());
        }
        at_end(cursor)?;
        Ok(WrittenLength { exact: Exact(if negative { -value } else { value }), unit })
    }

    /// ` 3 1/2"`, `-3 1/2`, ` - 3 in`.
    fn inches_behind_feet(&self, cursor: &mut Cursor<'_>) -> Result<Number, ParseError> {
        if cursor.hyphen() {
            cursor.skip_space();
        }
        let inches = cursor.number()?;
        cursor.skip_space();
        let unexpected = cursor.error(ParseErrorKind::Unexpected);
        match (cursor.peek(), self.unit_at(cursor)) {
            (None, _) | (_, Some(Unit::Inch)) => Ok(inches),
            _ => Err(unexpected),
        }
    }

    /// A unit's word, with or without a closing point, or its mark. A letter may not follow a word, so that `in` is not
    /// found in a longer one.
    fn unit_at(&self, cursor: &mut Cursor<'_>) -> Option<Unit> {
        if cursor.take_if(|c| matches!(c, '"' | '\u{201C}' | '\u{201D}' | '\u{2033}' | '\u{02BA}' | '\u{A8}')) {
            return Some(Unit::Inch);
        }
        // On a Spanish keyboard the accents are nearer than the primes: 7´ 3¨.
        let single = |c| matches!(c, '\'' | '\u{2018}' | '\u{2019}' | '\u{2032}' | '\u{02B9}' | '\u{B4}');
        if cursor.take_if(single) {
            return Some(if cursor.take_if(single) { Unit::Inch } else { Unit::Foot });
        }
        let word = cursor.word();
        let unit = Unit::from_word(&word, self.language)?;
        cursor.advance(word.chars().count());
        cursor.take_if(|c| c == '.');
        Some(unit)
    }
}

fn characters(text: &str) -> Result<Vec<char>, ParseError> {
    let characters: Vec<char> = text.chars().take(TEXT_LIMIT + 1).collect();
    if characters.len() > TEXT_LIMIT {
        return Err(ParseError { kind: ParseErrorKind::TooBig, position: TEXT_LIMIT });
    }
    Ok(characters)
}

/// The sign before a number: whether it is negative.
fn sign(cursor: &mut Cursor<'_>) -> Result<bool, ParseError> {
    cursor.skip_space();
    if cursor.peek().is_none() {
        return Err(cursor.error(ParseErrorKind::Empty));
    }
    Ok(cursor.minus())
}

fn signed_number(cursor: &mut Cursor<'_>) -> Result<BigRational, ParseError> {
    let negative = sign(cursor)?;
    let number = cursor.number()?;
    Ok(if negative { -number.value } else { number.value })
}

fn at_end(cursor: &mut Cursor<'_>) -> Result<(), ParseError> {
    cursor.skip_space();
    cursor.peek().map_or(Ok(()), |_| Err(cursor.error(ParseErrorKind::Unexpected)))
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
            ("7' 3'", (Unexpected, 4)),
            ("3\" 7'", (Unexpected, 3)),
            ("6 inchs", (Unexpected, 2)),
            ("7.5' 3", (FeetNotWhole, 5)),
            ("7' 3 mm", (Unexpected, 5)),
            ("5 3 1/2", (Unexpected, 2)),
            ("1000 km", (Unexpected, 5)),
            ("+6\"", (NumberExpected, 0)),
            ("6 - 1/16\"", (Unexpected, 2)),
        ] {
            assert_eq!(refused(Reader::default(), text), want, "{text:?}");
        }
    }

    #[test]
    fn a_unit_of_the_reader_serves_a_text_without_one() {
        let reader = Reader { unit: Some(Unit::Inch), ..Reader::default() };
        assert_eq!(reader.length("6 1/16").map(Length::nm), Ok(153_987_500));
        assert_eq!(reader.length("154 mm").map(Length::nm), Ok(154_000_000));
        assert_eq!(reader.length("7' 3").map(Length::nm), Ok(2_209_800_000));
        let feet = Reader { unit: Some(Unit::Foot), ..Reader::default() };
        assert_eq!(feet.length("7").map(Length::nm), Ok(2_133_600_000));
        assert_eq!(refused(feet, "7 3"), (ParseErrorKind::Unexpected, 2));
    }

    #[test]
    fn a_decimal_comma_is_read_where_it_is_allowed() {
        let reader = Reader { unit: None, language: Language::Spanish };
        assert_eq!(reader.length("6,5 mm").map(Length::nm), Ok(6_500_000));
        assert_eq!(reader.length("6.5 mm").map(Length::nm), Ok(6_500_000));
        assert_eq!(refused(reader, "1.234,5 mm"), (ParseErrorKind::MaybeThousands, 0));
        assert_eq!(refused(reader, "7' 1,125"), (ParseErrorKind::MaybeThousands, 3));
    }

    #[test]
    fn the_limit_is_a_thousand_kilometres() {
        assert_eq!(nm("1000000 m"), 1_000_000_000_000_000);
        assert_eq!(refused(Reader::default(), "1000000.000000001 m").0, ParseErrorKind::TooBig);
        assert_eq!(refused(Reader::default(), &"9".repeat(201)).0, ParseErrorKind::TooBig);
        assert_eq!(refused(Reader::default(), &format!("{} mm", "9".repeat(190))).0, ParseErrorKind::TooBig);
    }

    #[test]
    fn an_angle_is_read_to_a_thousandth_of_a_degree() {
        for language in Language::ALL {
            let reader = Reader { unit: None, language: *language };
            for (text, angle) in
                [("45", 45_000), ("22.5°", 22_500), ("22.125 °", 22_125), ("-3", -3_000), ("22 1/2", 22_500)]
            {
                assert_eq!(reader.millidegrees(text), Ok(angle), "{text}");
            }
            for text in ["", "°", "1/3", "1.2345", "4 5", "4.5.6", "45°°", "45 in"] {
                assert!(reader.millidegrees(text).is_err(), "{text}");
            }
        }
        let spanish = Reader { unit: None, language: Language::Spanish };
        assert_eq!(spanish.millidegrees("2,25°"), Ok(2_250));
        assert!(Reader::default().millidegrees("2,25°").is_err());
        assert_eq!(spanish.millidegrees(&"9".repeat(100)).map_err(|error| error.kind), Err(ParseErrorKind::TooBig));
    }

    #[test]
    fn what_is_written_out_reads_back_in_every_language() {
        for text in ["1/16\"", "1.125\"", "-7' 3 1/2\"", "1/3 mm", "2.5 m", "0.1 cm"] {
            let written = Reader::default().read(text).unwrap();
            for language in Language::ALL {
                assert_eq!(Reader { unit: None, language: *language }.read(&written.to_string()), Ok(written.clone()));
            }
        }
    }
}
