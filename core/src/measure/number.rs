use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Pow, Zero};

use super::{Language, ParseError, ParseErrorKind};

/// A number without its unit, not under zero, and whether it is written as a plain whole number.
pub(super) struct Number {
    pub(super) value: BigRational,
    pub(super) whole: bool,
}

/// Walks over a text, one character after another.
pub(super) struct Cursor<'a> {
    characters: &'a [char],
    at: usize,
    language: Language,
    /// Whether a point or comma with three digits behind it may mean thousands.
    thousands: bool,
}

impl<'a> Cursor<'a> {
    pub(super) fn new(characters: &'a [char], language: Language) -> Self {
        Self { characters, at: 0, language, thousands: language == Language::Spanish }
    }

    /// The same where no number goes into the thousands.
    pub(super) fn below_thousand(self) -> Self {
        Self { thousands: false, ..self }
    }

    pub(super) fn peek(&self) -> Option<char> {
        self.characters.get(self.at).copied()
    }

    pub(super) fn error(&self, kind: ParseErrorKind) -> ParseError {
        ParseError { kind, position: self.at }
    }

    pub(super) fn take_if(&mut self, accept: impl Fn(char) -> bool) -> bool {
        let taken = self.peek().is_some_and(accept);
        self.at += usize::from(taken);
        taken
    }

    pub(super) fn skip_space(&mut self) {
        while self.take_if(char::is_whitespace) {}
    }

    /// The sign in front of the whole: whether it is a minus.
    pub(super) fn minus(&mut self) -> bool {
        self.take_if(|c| c == '-' || c == '\u{2212}')
    }

    /// What joins whole and fraction, or feet and inches: the hyphen, also those that typesetting puts in its place.
    pub(super) fn hyphen(&mut self) -> bool {
        self.take_if(|c| matches!(c, '-' | '\u{2010}' | '\u{2011}'))
    }

    /// The run of letters from here on.
    pub(super) fn word(&self) -> String {
        self.characters.iter().skip(self.at).take_while(|c| c.is_alphabetic()).collect()
    }

    pub(super) fn advance(&mut self, characters: usize) {
        self.at += characters;
    }

    /// `6`, `6.0625`, `.5`, `5/16`, `6 1/16`, `6-1/16`, `6½`, `½`.
    pub(super) fn number(&mut self) -> Result<Number, ParseError> {
        if let Some(value) = self.vulgar()? {
            return Ok(Number { value, whole: false });
        }
        let start = self.at;
        let digits = self.digits();
        if self.point() {
            return self.decimals(start, &digits);
        }
        if digits.is_empty() {
            return Err(self.error(ParseErrorKind::NumberExpected));
        }
        if let Some(value) = self.denominator(&digits)? {
            return Ok(Number { value, whole: false });
        }
        let whole = BigRational::from_integer(integer(&digits));
        let mark = self.at;
        if !self.hyphen() {
            self.skip_space();
        }
        if let Some(fraction) = self.vulgar()? {
            return Ok(Number { value: whole + fraction, whole: false });
        }
        let upper = self.digits();
        if !upper.is_empty()
            && let Some(fraction) = self.denominator(&upper)?
        {
            return Ok(Number { value: whole + fraction, whole: false });
        }
        self.at = mark;
        Ok(Number { value: whole, whole: true })
    }

    /// The digits behind a point; `digits` stand before it, from `start` on.
    fn decimals(&mut self, start: usize, digits: &str) -> Result<Number, ParseError> {
        let decimals = self.digits();
        if decimals.is_empty() {
            return Err(self.error(ParseErrorKind::NumberExpected));
        }
        let grouped = matches!(digits.len(), 1..=3) && !digits.starts_with('0') && decimals.len() == 3;
        if self.thousands && grouped {
            return Err(ParseError { kind: ParseErrorKind::MaybeThousands, position: start });
        }
        let scale = BigInt::from(10).pow(decimals.len());
        Ok(Number { value: BigRational::new(integer(&format!("{digits}{decimals}")), scale), whole: false })
    }

    fn digits(&mut self) -> String {
        let mut digits = String::new();
        while let Some(digit) = self.peek().filter(char::is_ascii_digit) {
            digits.push(digit);
            self.at += 1;
        }
        digits
    }

    /// A decimal point; in Spanish a comma, too: the schools of some countries teach the one, of some the other.
    fn point(&mut self) -> bool {
        let comma = self.language == Language::Spanish;
        self.take_if(|c| c == '.' || (comma && c == ','))
    }

    /// The rest of a fraction whose upper number was just read, if a stroke follows.
    fn denominator(&mut self, upper: &str) -> Result<Option<BigRational>, ParseError> {
        if !self.take_if(|c| matches!(c, '/' | '\u{2044}' | '\u{2215}')) {
            return Ok(None);
        }
        self.below(integer(upper)).map(Some)
    }

    /// The lower number of a fraction.
    fn below(&mut self, upper: BigInt) -> Result<BigRational, ParseError> {
        let mark = self.at;
        let lower = self.digits();
        if lower.is_empty() {
            return Err(self.error(ParseErrorKind::NumberExpected));
        }
        let lower = integer(&lower);
        if lower.is_zero() {
            self.at = mark;
            return Err(self.error(ParseErrorKind::ZeroDenominator));
        }
        Ok(BigRational::new(upper, lower))
    }

    /// A fraction of the Unicode block "Number Forms" or of Latin-1, also the one whose lower number follows: `⅟16`.
    fn vulgar(&mut self) -> Result<Option<BigRational>, ParseError> {
        let (upper, lower) = match self.peek() {
            Some('½') => (1, 2),
            Some('⅓') => (1, 3),
            Some('⅔') => (2, 3),
            Some('¼') => (1, 4),
            Some('¾') => (3, 4),
            Some('⅕') => (1, 5),
            Some('⅖') => (2, 5),
            Some('⅗') => (3, 5),
            Some('⅘') => (4, 5),
            Some('⅙') => (1, 6),
            Some('⅚') => (5, 6),
            Some('⅐') => (1, 7),
            Some('⅛') => (1, 8),
            Some('⅜') => (3, 8),
            Some('⅝') => (5, 8),
            Some('⅞') => (7, 8),
            Some('⅑') => (1, 9),
            Some('⅒') => (1, 10),
            Some('↉') => (0, 3),
            Some('⅟') => {
                self.at += 1;
                return self.below(BigInt::from(1)).map(Some);
            }
            _ => return Ok(None),
        };
        self.at += 1;
        Ok(Some(BigRational::new(BigInt::from(upper), BigInt::from(lower))))
    }
}

/// A run of ASCII digits as a number; empty is zero.
fn integer(digits: &str) -> BigInt {
    BigInt::parse_bytes(digits.as_bytes(), 10).unwrap_or_default()
}
