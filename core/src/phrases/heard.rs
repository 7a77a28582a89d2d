//! Lengths as a voice gives them, turned into what a person would have typed.

use std::collections::HashMap;
use std::sync::OnceLock;

use super::numbers::{Gender, words};
use super::spoken::fractions;
use super::{Language, Phrases};
use crate::measure::{Reader, Unit};

/// A length in words as the text that a person would have typed: "six and one sixteenth" becomes `6 1/16"`, "siete pies
/// tres pulgadas y media" becomes `7' 3 1/2"`. Digits may stand for words: "7 feet 3 1/2 inches".
///
/// Everything that [`super::spoken`] says is read back. A whole number without a unit stays without one, so that the
/// reader's own holds; a fraction of four parts or more is one of an inch. Whole number and fraction are joined by "and":
/// without it "twenty-five sixty-fourths" and "twenty, five sixty-fourths" sound alike. Gives nothing for anything else,
/// and nothing that a [`Reader`] of the language would refuse.
pub fn heard(text: &str, language: Language) -> Option<String> {
    let ear = Ear::of(language);
    let text = plain(text, language);
    let all: Vec<&str> = text.split(' ').filter(|word| !word.is_empty()).collect();
    let (sign, rest) = match all.split_first()? {
        (first, rest) if *first == ear.minus => ("-", rest),
        _ => ("", all.as_slice()),
    };
    let typed = format!("{sign}{}", ear.length(rest)?);
    ear.reader().read(&typed).is_ok().then_some(typed)
}

/// What a language calls things, in the plain form of [`plain`].
struct Ear {
    language: Language,
    numbers: HashMap<String, u64>,
    fractions: HashMap<String, (u64, u64)>,
    thousand: &'static str,
    and: &'static str,
    minus: &'static str,
    /// What may stand between a fraction and its unit: "of an inch".
    of: &'static [&'static str],
    /// The words for units beside those that the reader takes.
    units: &'static [(&'static str, Unit)],
}

/// A whole number and a part of one, as digits.
#[derive(Default)]
struct Amount {
    whole: Option<String>,
    part: Option<(u64, u64)>,
}

const ENGLISH_UNITS: &[(&str, Unit)] = &[
    ("millimeter", Unit::Millimetre),
    ("millimeters", Unit::Millimetre),
    ("millimetre", Unit::Millimetre),
    ("millimetres", Unit::Millimetre),
    ("centimeter", Unit::Centimetre),
    ("centimeters", Unit::Centimetre),
    ("centimetre", Unit::Centimetre),
    ("centimetres", Unit::Centimetre),
    ("meter", Unit::Metre),
    ("meters", Unit::Metre),
    ("metre", Unit::Metre),
    ("metres", Unit::Metre),
];
const SPANISH_UNITS: &[(&str, Unit)] = &[
    ("milimetro", Unit::Millimetre),
    ("milimetros", Unit::Millimetre),
    ("centimetro", Unit::Centimetre),
    ("centimetros", Unit::Centimetre),
    ("metro", Unit::Metre),
    ("metros", Unit::Metre),
    ("mts", Unit::Metre),
    ("mt", Unit::Metre),
    ("cms", Unit::Centimetre),
    ("pulgs", Unit::Inch),
    ("plg", Unit::Inch),
];

impl Ear {
    fn of(language: Language) -> &'static Self {
        static ENGLISH: OnceLock<Ear> = OnceLock::new();
        static SPANISH: OnceLock<Ear> = OnceLock::new();
        match language {
            Language::English => ENGLISH.get_or_init(|| Self {
                thousand: "thousand",
                and: "and",
                minus: "minus",
                of: &["of", "a", "an"],
                units: ENGLISH_UNITS,
                ..Self::counting(language, &[("half", (1, 2)), ("one half", (1, 2)), ("one quarter", (1, 4))])
            }),
            Language::Spanish => SPANISH.get_or_init(|| Self {
                thousand: "mil",
                and: "y",
                minus: "menos",
                of: &["de"],
                units: SPANISH_UNITS,
                ..Self::counting(language, &[("medio", (1, 2)), ("media", (1, 2))])
            }),
        }
    }

    /// The numbers below a thousand and the parts of the tape, as they are spoken; `others` are further names of parts.
    fn counting(language: Language, others: &[(&str, (u64, u64))]) -> Self {
        let both =
            |number| [Gender::Masculine, Gender::Feminine].map(|gender| (words(number, gender, language), number));
        let mut numbers: HashMap<String, u64> =
            (0..1000).flat_map(both).map(|(word, number)| (plain(&word, language), number)).collect();
        // How a number is said where it stands before nothing.
        let alone: &[(&str, u64)] = match language {
            Language::English => &[("a hundred", 100)],
            Language::Spanish => &[("uno", 1), ("veintiuno", 21)],
        };
        numbers.extend(alone.iter().map(|(word, number)| ((*word).to_owned(), *number)));
        let parts = fractions(Phrases::for_language(language));
        let mut fractions: HashMap<String, (u64, u64)> =
            parts.map(|(word, part)| (plain(&word, language), part)).collect();
        fractions.extend(others.iter().map(|(word, part)| ((*word).to_owned(), *part)));
        Self { language, numbers, fractions, thousand: "", and: "", minus: "", of: &[], units: &[] }
    }

    /// Reads what is typed: a length without a unit is in inches, so that any unit will do.
    fn reader(&self) -> Reader {
        Reader { unit: Some(Unit::Inch), language: self.language }
    }

    /// Whether a word is a number in digits, without a sign.
    fn is_written(&self, word: &str) -> bool {
        word.starts_with(|sign: char| sign.is_ascii_digit()) && self.reader().number(word).is_ok()
    }

    fn length(&self, all: &[&str]) -> Option<String> {
        let feet = all.iter().position(|word| self.unit(word) == Some(Unit::Foot));
        let Some(at) = feet else { return self.quantity(all) };
        let (feet, rest) = (self.number(all.get(..at)?)?, all.get(at + 1..)?);
        let rest = rest.strip_prefix(&[self.and]).unwrap_or(rest);
        if rest.is_empty() {
            return Some(format!("{feet}'"));
        }
        let inches = self.quantity(rest)?;
        let inches = inches.strip_suffix('"').unwrap_or(&inches);
        let in_inches = !inches.contains(char::is_alphabetic);
        in_inches.then(|| format!("{feet}' {inches}\""))
    }

    /// An amount with its unit, if it has one.
    fn quantity(&self, all: &[&str]) -> Option<String> {
        let named = all.iter().enumerate().find_map(|(at, word)| Some((at, self.unit(word)?)));
        let Some((at, unit)) = named else { return Some(written(&self.amount(all)?, None)) };
        let (before, after) = (all.get(..at)?, all.get(at + 1..)?);
        let amount = match after {
            [] => {
                let end = before.iter().rposition(|word| !self.of.contains(word)).map_or(0, |last| last + 1);
                let count = before.get(..end)?;
                let part = || Some(Amount { part: Some(self.part(count)?), ..Amount::default() });
                if end < before.len() { part()? } else { self.amount(count)? }
            }
            // tres pulgadas y media
            [and, rest @ ..] if *and == self.and => {
                Amount { whole: Some(self.number(before)?), part: Some(self.part(rest)?) }
            }
            _ => return None,
        };
        Some(written(&amount, Some(unit)))
    }

    fn amount(&self, all: &[&str]) -> Option<Amount> {
        if let Some(whole) = self.number(all) {
            return Some(Amount { whole: Some(whole), part: None });
        }
        let joined = |at: usize| {
            let (whole, part) = (self.number(all.get(..at)?)?, self.part(all.get(at + 1..)?)?);
            Some(Amount { whole: Some(whole), part: Some(part) })
        };
        let joints = all.iter().enumerate().filter(|(_, word)| **word == self.and).map(|(at, _)| at);
        if let Some(mixed) = joints.rev().find_map(joined) {
            return Some(mixed);
        }
        // 3 1/2, as digits are written.
        if let [whole, part] = all
            && let (true, Some(part)) = (self.is_written(whole), in_digits(part))
        {
            return Some(Amount { whole: Some((*whole).to_owned()), part: Some(part) });
        }
        Some(Amount { whole: None, part: Some(self.part(all)?) })
    }

    /// A whole number, as digits; written with a decimal point it stays so.
    fn number(&self, all: &[&str]) -> Option<String> {
        if let [one] = all
            && self.is_written(one)
        {
            return Some((*one).to_owned());
        }
        let below = |part: &[&str]| {
            let joined = part.join(" ");
            // "one hundred and five"
            let plainly = || joined.replace("hundred and ", "hundred ");
            self.numbers.get(&joined).or_else(|| self.numbers.get(&plainly())).copied()
        };
        let Some(at) = all.iter().position(|word| *word == self.thousand) else {
            return below(all).map(|number| number.to_string());
        };
        let (above, rest) = (all.get(..at)?, all.get(at + 1..)?);
        let thousands = if above.is_empty() { 1 } else { below(above)? };
        let rest = if rest.is_empty() { 0 } else { below(rest)? };
        Some((1000 * thousands + rest).to_string())
    }

    fn part(&self, all: &[&str]) -> Option<(u64, u64)> {
        match all {
            [one] if one.contains('/') => in_digits(one),
            _ => self.fractions.get(&all.join(" ")).copied(),
        }
    }

    fn unit(&self, word: &str) -> Option<Unit> {
        let spoken = || self.units.iter().find(|(name, _)| *name == word).map(|(_, unit)| *unit);
        Unit::from_word(word, self.language).or_else(spoken)
    }
}

/// In small letters and without accents, as words are typed in a hurry.
pub fn plain_word(text: &str) -> String {
    let letter = |sign: char| match sign {
        'á' => 'a',
        'é' => 'e',
        'í' => 'i',
        'ó' => 'o',
        'ú' => 'u',
        other => other,
    };
    text.to_lowercase().chars().map(letter).collect()
}

/// In small letters, without accents and hyphens, one space between words.
fn plain(text: &str, language: Language) -> String {
    let text = plain_word(text).replace(['-', '\u{2010}', '\u{2011}'], " ");
    let text = text.trim().trim_end_matches(['.', '!', '?']).split_whitespace().collect::<Vec<_>>().join(" ");
    match language {
        // One word each, so that no number is looked for in them.
        Language::English => text.replace("thirty second", "thirtysecond").replace("sixty fourth", "sixtyfourth"),
        Language::Spanish => text,
    }
}

fn in_digits(word: &str) -> Option<(u64, u64)> {
    let (above, below) = word.split_once('/')?;
    Some((above.parse().ok()?, below.parse().ok().filter(|below| *below > 0)?))
}

fn written(amount: &Amount, unit: Option<Unit>) -> String {
    let part = amount.part.map(|(above, below)| format!("{above}/{below}"));
    let number = [amount.whole.clone(), part].into_iter().flatten().collect::<Vec<_>>().join(" ");
    let of_an_inch = amount.part.is_some_and(|(_, below)| below > 2);
    match unit {
        Some(Unit::Inch) => format!("{number}\""),
        Some(unit) => format!("{number} {}", unit.code()),
        None if of_an_inch => format!("{number}\""),
        None => number,
    }
}

#[cfg(test)]
mod tests {
    use super::super::spoken;
    use super::*;
    use crate::measure::{Length, Show};

    #[test]
    fn what_a_carpenter_says() {
        let cases = [
            ("six and one sixteenth", "6 1/16\""),
            ("Six and a half", "6 1/2"),
            ("fifty-two and three eighths inches", "52 3/8\""),
            ("fifty two and 3/8", "52 3/8\""),
            ("52 3/8", "52 3/8\""),
            ("twenty-one thirty-seconds of an inch", "21/32\""),
            ("five sixteenths", "5/16\""),
            ("half an inch", "1/2\""),
            ("seven feet", "7'"),
            ("seven feet three and a half inches", "7' 3 1/2\""),
            ("7 feet 3 and 1/2 inches", "7' 3 1/2\""),
            ("seven feet and a quarter of an inch", "7' 1/4\""),
            ("one hundred and five", "105"),
            ("one hundred and five sixteenths", "100 5/16\""),
            ("a hundred inches", "100\""),
            ("minus two and one eighth", "-2 1/8\""),
            ("154.5 millimeters", "154.5 mm"),
            ("two thousand thirty-one millimetres", "2031 mm"),
            ("twelve.", "12"),
        ];
        for (said, typed) in cases {
            assert_eq!(heard(said, Language::English).as_deref(), Some(typed), "{said}");
        }
        let cases = [
            ("seis y un dieciseisavo", "6 1/16\""),
            ("treinta y una y un cuarto", "31 1/4\""),
            ("treinta y un treintaidosavos de pulgada", "31/32\""),
            ("veintiuno", "21"),
            ("dieciseis y media", "16 1/2"),
            ("siete pies tres pulgadas y media", "7' 3 1/2\""),
            ("ciento cincuenta y cuatro milímetros y medio", "154 1/2 mm"),
            ("mil dos milímetros", "1002 mm"),
            ("menos tres cuartos de pulgada", "-3/4\""),
        ];
        for (said, typed) in cases {
            assert_eq!(heard(said, Language::Spanish).as_deref(), Some(typed), "{said}");
        }
    }

    #[test]
    fn digits_are_heard_as_they_are_typed() {
        for (said, language, typed) in [
            ("7 ft 3 1/2 in", Language::English, Some("7' 3 1/2\"")),
            ("7 feet 3½ inches", Language::English, Some("7' 3½\"")),
            ("1.54 meters", Language::English, Some("1.54 m")),
            ("7,5 inches", Language::English, None),
            ("7.5 feet 3 inches", Language::English, None),
            ("154,5 milímetros", Language::Spanish, Some("154,5 mm")),
            ("154.5 milímetros", Language::Spanish, Some("154.5 mm")),
            ("3 metros", Language::Spanish, Some("3 m")),
            ("3.20 mts.", Language::Spanish, Some("3.20 m")),
            ("40 cms", Language::Spanish, Some("40 cm")),
            ("3 1/2 pulgs", Language::Spanish, Some("3 1/2\"")),
            ("3 pulgadas y media", Language::Spanish, Some("3 1/2\"")),
            ("tres y media", Language::Spanish, Some("3 1/2")),
            ("24 pies y 3 pulgadas", Language::Spanish, Some("24' 3\"")),
            ("7 pies 3 pulg", Language::Spanish, Some("7' 3\"")),
            ("2.440 milímetros", Language::Spanish, None),
            ("2.440 millimeters", Language::English, Some("2.440 mm")),
        ] {
            assert_eq!(heard(said, language).as_deref(), typed, "{said}");
        }
    }

    #[test]
    fn what_is_no_length_gives_nothing() {
        let said =
            ["", "and", "minus", "hello", "six or seven", "six seven", "one sixteenths", "inches", "a feet", "6/0"];
        for said in
            said.into_iter().chain(["feet six", "six and", "1.2.3", "seven feet two millimeters", "six one sixteenth"])
        {
            assert_eq!(heard(said, Language::English), None, "{said}");
        }
        for said in ["seis siete", "six", "y medio", "dos dieciseisavo"] {
            assert_eq!(heard(said, Language::Spanish), None, "{said}");
        }
    }

    #[test]
    fn every_mark_of_the_tape_that_is_spoken_is_heard() {
        for language in Language::ALL {
            let back = |length: Length, show: Show, unit: Unit| {
                let said = spoken(length, show, *language);
                let typed = heard(&said, *language).unwrap_or_else(|| panic!("{said}"));
                let reader = Reader { unit: Some(unit), language: *language };
                assert_eq!(reader.length(&typed), Ok(length), "{said}: {typed}");
            };
            // Up to forty feet, either way, and up to twelve meters.
            for n in -30_720..=30_720 {
                back(Length::from_inches_64(0, n), Show::Inches(64), Unit::Inch);
                back(Length::from_inches_64(0, n), Show::FeetInches(64), Unit::Inch);
            }
            for half in -24_000..=24_000 {
                back(Length::from_nm(500_000 * half), Show::Millimetres(2), Unit::Millimetre);
            }
        }
    }
}
