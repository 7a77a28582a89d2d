use super::numbers::{Gender, words};
use super::{Language, Phrases};
use crate::measure::{Length, Rounding, Show};

/// A length in words, rounded to the nearest mark, halves away from zero: "six and one sixteenth", "seis y un
/// dieciseisavo".
///
/// Numbers over 999,999, and fractions that have no name in words, are given in digits.
pub fn spoken(length: Length, show: Show, language: Language) -> String {
    let phrases = Phrases::for_language(language);
    let (Show::Inches(parts) | Show::FeetInches(parts) | Show::Millimetres(parts)) = show;
    let parts = u64::from(parts.max(1));
    let count = show.division().count(length, Rounding::Nearest).unwrap_or_default();
    let size = count.unsigned_abs();
    let (whole, part) = (size / parts, SpokenFraction::new(size % parts, parts));
    let text = match show {
        Show::Inches(_) => inches(whole, part, phrases, false),
        Show::FeetInches(_) if whole < 12 => inches(whole, part, phrases, true),
        Show::FeetInches(_) => feet_and_inches(whole / 12, whole % 12, part, phrases),
        Show::Millimetres(_) if part.numerator == 0 || part.denominator == 2 => millimetres(whole, part, phrases),
        Show::Millimetres(_) => return show.text(length),
    };
    if count < 0 { phrases.phrase("spoken-minus", &[("rest", text.into())]) } else { text }
}

/// A fraction in lowest terms.
#[derive(Clone, Copy)]
struct SpokenFraction {
    numerator: u64,
    denominator: u64,
}

impl SpokenFraction {
    fn new(numerator: u64, denominator: u64) -> Self {
        let common = num_integer::gcd(numerator, denominator).max(1);
        Self { numerator: numerator / common, denominator: denominator / common }
    }

    /// The fraction's own words, without its unit.
    fn words(self, phrases: &Phrases) -> String {
        let key = match (self.numerator, self.denominator) {
            (_, 2) => return phrases.phrase("spoken-half", &[]),
            (1, 4) => return phrases.phrase("spoken-quarter", &[]),
            (_, 4) => "spoken-quarters",
            (_, 8) => "spoken-eighths",
            (_, 16) => "spoken-sixteenths",
            (_, 32) => "spoken-thirty-seconds",
            (_, 64) => "spoken-sixty-fourths",
            (numerator, denominator) => return format!("{numerator}/{denominator}"),
        };
        let numerator = words(self.numerator, Gender::Masculine, phrases.language());
        phrases.phrase(key, &[("count", counted(self.numerator).into()), ("words", numerator.into())])
    }
}

/// The words of every part of the tape's marks down to 64ths, each with its numerator and denominator.
pub(super) fn fractions(phrases: &Phrases) -> impl Iterator<Item = (String, (u64, u64))> {
    let parts =
        [2, 4, 8, 16, 32, 64].into_iter().flat_map(|below| (1..below).step_by(2).map(move |above| (above, below)));
    parts.map(|(above, below)| (SpokenFraction::new(above, below).words(phrases), (above, below)))
}

fn counted(number: u64) -> i64 {
    i64::try_from(number).unwrap_or(i64::MAX)
}

fn inches(whole: u64, part: SpokenFraction, phrases: &Phrases, unit: bool) -> String {
    let number = words(whole, Gender::Feminine, phrases.language());
    let count = counted(whole);
    match (whole, part.numerator) {
        (_, 0) => phrases.phrase("spoken-inches", &[("count", count.into()), ("words", number.into())]),
        (0, _) => part_of_an_inch(part, phrases),
        _ => {
            let fraction = part.words(phrases);
            let mixed = if unit { "spoken-mixed-inches" } else { "spoken-mixed" };
            phrases.phrase(mixed, &[("count", count.into()), ("words", number.into()), ("fraction", fraction.into())])
        }
    }
}

fn part_of_an_inch(part: SpokenFraction, phrases: &Phrases) -> String {
    if part.denominator == 2 {
        return phrases.phrase("spoken-half-inch", &[]);
    }
    phrases.phrase("spoken-part-of-inch", &[("fraction", part.words(phrases).into())])
}

fn feet_and_inches(feet: u64, whole: u64, part: SpokenFraction, phrases: &Phrases) -> String {
    let number = words(feet, Gender::Masculine, phrases.language());
    let feet = phrases.phrase("spoken-feet", &[("count", counted(feet).into()), ("words", number.into())]);
    match (whole, part.numerator) {
        (0, 0) => feet,
        (0, _) => {
            let fraction = part_of_an_inch(part, phrases);
            phrases.phrase("spoken-feet-and-part", &[("feet", feet.into()), ("fraction", fraction.into())])
        }
        _ => format!("{feet} {}", inches(whole, part, phrases, true)),
    }
}

fn millimetres(whole: u64, part: SpokenFraction, phrases: &Phrases) -> String {
    let number = words(whole, Gender::Masculine, phrases.language());
    let args = [("count", counted(whole).into()), ("words", number.into())];
    match (whole, part.numerator) {
        (_, 0) => phrases.phrase("spoken-millimetres", &args),
        (0, _) => phrases.phrase("spoken-half-millimetre", &[]),
        _ => phrases.phrase("spoken-millimetres-and-half", &args),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const SIXTEENTHS: Show = Show::Inches(16);
    const FEET: Show = Show::FeetInches(16);

    fn check(length: Length, show: Show, english: &str, spanish: &str) {
        assert_eq!(spoken(length, show, Language::English), english);
        assert_eq!(spoken(length, show, Language::Spanish), spanish);
    }

    #[test]
    fn inches_aloud() {
        let sixteenths = |whole: i64, n: i64| Length::from_inches_64(whole, 4 * n);
        check(sixteenths(6, 1), SIXTEENTHS, "six and one sixteenth", "seis y un dieciseisavo");
        check(sixteenths(6, 13), SIXTEENTHS, "six and thirteen sixteenths", "seis y trece dieciseisavos");
        check(sixteenths(6, 8), SIXTEENTHS, "six and a half", "seis y media");
        check(sixteenths(1, 4), SIXTEENTHS, "one and a quarter", "una y un cuarto");
        check(sixteenths(21, 12), SIXTEENTHS, "twenty-one and three quarters", "veintiuna y tres cuartos");
        check(sixteenths(21, 2), SIXTEENTHS, "twenty-one and one eighth", "veintiuna y un octavo");
        check(sixteenths(0, 0), SIXTEENTHS, "zero inches", "cero pulgadas");
        check(sixteenths(1, 0), SIXTEENTHS, "one inch", "una pulgada");
        check(sixteenths(6, 0), SIXTEENTHS, "six inches", "seis pulgadas");
        check(sixteenths(0, 8), SIXTEENTHS, "half an inch", "media pulgada");
        check(sixteenths(0, 4), SIXTEENTHS, "a quarter of an inch", "un cuarto de pulgada");
        check(sixteenths(0, 12), SIXTEENTHS, "three quarters of an inch", "tres cuartos de pulgada");
        check(sixteenths(0, 1), SIXTEENTHS, "one sixteenth of an inch", "un dieciseisavo de pulgada");
        check(sixteenths(-6, -1), SIXTEENTHS, "minus six and one sixteenth", "menos seis y un dieciseisavo");
        check(sixteenths(-1, 15), SIXTEENTHS, "minus one sixteenth of an inch", "menos un dieciseisavo de pulgada");
    }

    #[test]
    fn fine_fractions_aloud() {
        let fine = |n| Length::from_inches_64(2, n);
        let in32 = Show::Inches(32);
        let in64 = Show::Inches(64);
        check(fine(2), in32, "two and one thirty-second", "dos y un treintaidosavo");
        check(fine(42), in32, "two and twenty-one thirty-seconds", "dos y veintiún treintaidosavos");
        check(fine(62), in32, "two and thirty-one thirty-seconds", "dos y treinta y un treintaidosavos");
        check(fine(1), in64, "two and one sixty-fourth", "dos y un sesentaicuatroavo");
        check(fine(61), in64, "two and sixty-one sixty-fourths", "dos y sesenta y un sesentaicuatroavos");
        check(fine(1), SIXTEENTHS, "two inches", "dos pulgadas");
        check(fine(2), SIXTEENTHS, "two and one sixteenth", "dos y un dieciseisavo");
        check(fine(63), SIXTEENTHS, "three inches", "tres pulgadas");
        check(Length::from_nm(2_540_000), Show::Inches(10), "1/10 of an inch", "1/10 de pulgada");
    }

    #[test]
    fn feet_aloud() {
        let at = |feet: i64, inches: i64, n: i64| Length::from_inches_64(12 * feet + inches, 4 * n);
        check(at(7, 3, 8), FEET, "seven feet three and a half inches", "siete pies tres pulgadas y media");
        check(at(7, 0, 0), FEET, "seven feet", "siete pies");
        check(at(1, 1, 0), FEET, "one foot one inch", "un pie una pulgada");
        check(
            at(21, 1, 1),
            FEET,
            "twenty-one feet one and one sixteenth inches",
            "veintiún pies una pulgada y un dieciseisavo",
        );
        check(at(7, 0, 8), FEET, "seven feet and half an inch", "siete pies y media pulgada");
        check(at(0, 3, 8), FEET, "three and a half inches", "tres pulgadas y media");
        check(at(0, 11, 16), FEET, "one foot", "un pie");
    }

    #[test]
    fn millimetres_aloud() {
        let whole = Show::Millimetres(1);
        let halves = Show::Millimetres(2);
        check(
            Length::from_mm(154),
            whole,
            "one hundred fifty-four millimeters",
            "ciento cincuenta y cuatro milímetros",
        );
        check(Length::from_mm(1), whole, "one millimeter", "un milímetro");
        check(Length::from_mm(2031), whole, "two thousand thirty-one millimeters", "dos mil treinta y un milímetros");
        let half = Length::from_nm(154_500_000);
        check(
            half,
            halves,
            "one hundred fifty-four and a half millimeters",
            "ciento cincuenta y cuatro milímetros y medio",
        );
        check(half, whole, "one hundred fifty-five millimeters", "ciento cincuenta y cinco milímetros");
        check(Length::from_nm(500_000), halves, "half a millimeter", "medio milímetro");
    }

    proptest! {
        #[test]
        fn two_marks_never_sound_alike(a in -100_000_i64..100_000, b in -100_000_i64..100_000) {
            prop_assume!(a != b);
            for language in Language::ALL {
                for show in [Show::Inches(64), Show::FeetInches(64)] {
                    let say = |n: i64| spoken(Length::from_inches_64(0, n), show, *language);
                    prop_assert_ne!(say(a), say(b));
                }
            }
        }

        #[test]
        fn any_length_is_spoken(nm in any::<i64>(), denominator in any::<u32>()) {
            for show in [Show::Inches(denominator), Show::FeetInches(denominator), Show::Millimetres(denominator)] {
                prop_assert!(!spoken(Length::from_nm(nm), show, Language::Spanish).is_empty());
            }
        }
    }
}
