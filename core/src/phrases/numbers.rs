//! Whole numbers in words: tables and grammar that messages cannot hold.

use super::Language;

/// The gender of the Spanish word that is counted; English has none.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Gender {
    /// Pies, milímetros, octavos.
    Masculine,
    /// Pulgadas.
    Feminine,
}

/// The largest number that is put in words; above it the digits are given, which a voice reads well enough.
pub(super) const LARGEST: u64 = 999_999;

/// A whole number in words, in the form that stands before what it counts.
pub(super) fn words(number: u64, gender: Gender, language: Language) -> String {
    if number > LARGEST {
        return number.to_string();
    }
    let (thousands, rest) = (number / 1000, number % 1000);
    match language {
        Language::English => match (thousands, rest) {
            (0, 0) => "zero".to_owned(),
            (0, rest) => english(rest),
            (thousands, 0) => format!("{} thousand", english(thousands)),
            (thousands, rest) => format!("{} thousand {}", english(thousands), english(rest)),
        },
        Language::Spanish => {
            let thousand = match thousands {
                0 => String::new(),
                1 => "mil".to_owned(),
                // Only the hundreds agree with a feminine noun: doscientas mil, but veintiún mil.
                many => format!("{} mil", spanish(many, gender, Gender::Masculine)),
            };
            match (thousands, rest) {
                (0, 0) => "cero".to_owned(),
                (0, rest) => spanish(rest, gender, gender),
                (_, 0) => thousand,
                (_, rest) => format!("{thousand} {}", spanish(rest, gender, gender)),
            }
        }
    }
}

/// One to 999 in American English, without "and".
fn english(number: u64) -> String {
    const UNITS: [&str; 20] = [
        "",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
    ];
    const TENS: [&str; 10] = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
    let below_hundred = |n: u64| match (n / 10, n % 10) {
        (0 | 1, _) => entry(&UNITS, n).to_owned(),
        (tens, 0) => entry(&TENS, tens).to_owned(),
        (tens, units) => format!("{}-{}", entry(&TENS, tens), entry(&UNITS, units)),
    };
    match (number / 100, number % 100) {
        (0, rest) => below_hundred(rest),
        (hundreds, 0) => format!("{} hundred", entry(&UNITS, hundreds)),
        (hundreds, rest) => format!("{} hundred {}", entry(&UNITS, hundreds), below_hundred(rest)),
    }
}

/// One to 999 in Spanish, shortened as before a noun (un, veintiún); hundreds and units may differ in gender.
fn spanish(number: u64, hundreds_gender: Gender, units_gender: Gender) -> String {
    const UNITS: [&str; 30] = [
        "",
        "un",
        "dos",
        "tres",
        "cuatro",
        "cinco",
        "seis",
        "siete",
        "ocho",
        "nueve",
        "diez",
        "once",
        "doce",
        "trece",
        "catorce",
        "quince",
        "dieciséis",
        "diecisiete",
        "dieciocho",
        "diecinueve",
        "veinte",
        "veintiún",
        "veintidós",
        "veintitrés",
        "veinticuatro",
        "veinticinco",
        "veintiséis",
        "veintisiete",
        "veintiocho",
        "veintinueve",
    ];
    const TENS: [&str; 10] =
        ["", "", "", "treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa"];
    const HUNDREDS: [&str; 10] = [
        "",
        "ciento",
        "doscient",
        "trescient",
        "cuatrocient",
        "quinient",
        "seiscient",
        "setecient",
        "ochocient",
        "novecient",
    ];
    let unit = |n: u64| match (n, units_gender) {
        (1, Gender::Feminine) => "una",
        (21, Gender::Feminine) => "veintiuna",
        (n, _) => entry(&UNITS, n),
    };
    let below_hundred = |n: u64| match (n / 10, n % 10) {
        (0..=2, _) => unit(n).to_owned(),
        (tens, 0) => entry(&TENS, tens).to_owned(),
        (tens, units) => format!("{} y {}", entry(&TENS, tens), unit(units)),
    };
    let hundreds = match (number / 100, number % 100) {
        (0, rest) => return below_hundred(rest),
        (1, 0) => return "cien".to_owned(),
        (1, _) => "ciento".to_owned(),
        (hundreds, _) => {
            let ending = if hundreds_gender == Gender::Feminine { "as" } else { "os" };
            format!("{}{ending}", entry(&HUNDREDS, hundreds))
        }
    };
    match number % 100 {
        0 => hundreds,
        rest => format!("{hundreds} {}", below_hundred(rest)),
    }
}

fn entry(table: &[&'static str], at: u64) -> &'static str {
    usize::try_from(at).ok().and_then(|at| table.get(at)).copied().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn english_numbers() {
        for (number, text) in [
            (0, "zero"),
            (1, "one"),
            (13, "thirteen"),
            (20, "twenty"),
            (21, "twenty-one"),
            (100, "one hundred"),
            (105, "one hundred five"),
            (999, "nine hundred ninety-nine"),
            (1000, "one thousand"),
            (21_101, "twenty-one thousand one hundred one"),
            (999_999, "nine hundred ninety-nine thousand nine hundred ninety-nine"),
            (1_000_000, "1000000"),
        ] {
            assert_eq!(words(number, Gender::Masculine, Language::English), text);
        }
    }

    #[test]
    fn spanish_numbers() {
        for (number, masculine, feminine) in [
            (0, "cero", "cero"),
            (1, "un", "una"),
            (16, "dieciséis", "dieciséis"),
            (21, "veintiún", "veintiuna"),
            (22, "veintidós", "veintidós"),
            (31, "treinta y un", "treinta y una"),
            (40, "cuarenta", "cuarenta"),
            (100, "cien", "cien"),
            (101, "ciento un", "ciento una"),
            (200, "doscientos", "doscientas"),
            (500, "quinientos", "quinientas"),
            (777, "setecientos setenta y siete", "setecientas setenta y siete"),
            (900, "novecientos", "novecientas"),
            (1000, "mil", "mil"),
            (1001, "mil un", "mil una"),
            (2000, "dos mil", "dos mil"),
            (21_000, "veintiún mil", "veintiún mil"),
            (100_000, "cien mil", "cien mil"),
            (200_200, "doscientos mil doscientos", "doscientas mil doscientas"),
        ] {
            assert_eq!(words(number, Gender::Masculine, Language::Spanish), masculine);
            assert_eq!(words(number, Gender::Feminine, Language::Spanish), feminine);
        }
    }

    proptest! {
        #[test]
        fn no_two_numbers_sound_alike(a in 0_u64..=LARGEST, b in 0_u64..=LARGEST) {
            prop_assume!(a != b);
            for language in Language::ALL {
                for gender in [Gender::Masculine, Gender::Feminine] {
                    let (x, y) = (words(a, gender, *language), words(b, gender, *language));
                    prop_assert_ne!(&x, &y);
                    prop_assert!(!x.contains("  ") && x.trim() == x);
                }
            }
        }
    }
}
