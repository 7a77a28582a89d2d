//! The length reader against a second one, written apart from it with regular expressions and the exact fractions of a
//! reference library (`dashu-ratio`): both must read the same nanometres or refuse with the same code, on texts that are
//! put together from pieces of lengths, whether or not they make sense.

use std::sync::LazyLock;

use dashu_ratio::RBig;
use lapwright::measure::{Language, ParseErrorKind, Reader, Unit};
use lapwright_tests::random::Random;
use regex::Regex;

const LIMIT_NM: i64 = 1_000_000_000_000_000;

/// A text in the few characters that the expressions below know.
fn plain(text: &str) -> String {
    let text = text.replace(['\u{201C}', '\u{201D}', '\u{2033}', '\u{02BA}', '\u{A8}'], "\"");
    let text = text.replace(['\u{2018}', '\u{2019}', '\u{2032}', '\u{02B9}', '\u{B4}'], "'");
    let text = text.replace("''", "\"").replace(['\u{2044}', '\u{2215}'], "/");
    text.chars().map(|sign| if sign.is_whitespace() { ' ' } else { sign.to_ascii_lowercase() }).collect()
}

/// A number as the first of these that fits: whole and fraction, fraction, decimals, whole.
const NUMBER: &str = r"(?:(?<{n}w>[0-9]+)(?:[-‐‑]| *)(?:(?<{n}v>[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞↉])|⅟(?<{n}o>[0-9]+))|(?<{n}x>[0-9]+)(?:[-‐‑]| +)(?<{n}a>[0-9]+)/(?<{n}b>[0-9]+)|(?<{n}sv>[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞↉])|⅟(?<{n}so>[0-9]+)|(?<{n}c>[0-9]+)/(?<{n}d>[0-9]+)|(?<{n}i>[0-9]*)[{point}](?<{n}f>[0-9]+)|(?<{n}p>[0-9]+))";

struct Forms {
    alone: Regex,
    one_unit: Regex,
    feet: Regex,
    thousands: Regex,
}

fn forms(language: Language) -> &'static Forms {
    static ENGLISH: LazyLock<Forms> = LazyLock::new(|| build(".", "", ""));
    static SPANISH: LazyLock<Forms> = LazyLock::new(|| build(".,", "|pulgadas|pulgada|pulg", "|pies|pie"));
    match language {
        Language::English => &ENGLISH,
        Language::Spanish => &SPANISH,
    }
}

fn build(point: &str, inch: &str, foot: &str) -> Forms {
    let number = |name: &str| NUMBER.replace("{n}", name).replace("{point}", point);
    let inch = format!("(?:\"|(?:inches|inch|in{inch})\\.?)");
    let foot = format!("(?:'|(?:feet|foot|ft{foot})\\.?)");
    let unit = format!("(?:(?<inch>{inch})|(?<foot>{foot})|(?<mm>mm\\.?)|(?<cm>cm\\.?)|(?<m>m\\.?))");
    let all = |inner: String| Regex::new(&format!("^ *(?<minus>[-−])?{inner} *$")).unwrap();
    Forms {
        alone: all(number("n")),
        one_unit: all(format!("{} *{unit}", number("n"))),
        feet: all(format!("(?<feet>[0-9]+) *{foot} *(?:[-‐‑] *)?{} *{inch}?", number("n"))),
        thousands: Regex::new(r"(?:^|[^0-9.,]|[a-z]\.)[1-9][0-9]{0,2}[.,][0-9]{3}(?:$|[^0-9])").unwrap(),
    }
}

fn ratio(text: &str) -> RBig {
    text.parse().unwrap()
}

fn vulgar(sign: &str) -> RBig {
    const SIGNS: &str = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒↉";
    const VALUES: &str = "1/2 1/3 2/3 1/4 3/4 1/5 2/5 3/5 4/5 1/6 5/6 1/7 1/8 3/8 5/8 7/8 1/9 1/10 0/3";
    let at = SIGNS.chars().position(|own| sign.starts_with(own)).unwrap();
    let (above, below) = VALUES.split(' ').nth(at).unwrap().split_once('/').unwrap();
    ratio(above) / ratio(below)
}

/// The value of the number that was found; none where a fraction is over zero.
fn value(found: &regex::Captures<'_>) -> Option<RBig> {
    let get = |name: &str| found.name(&format!("n{name}")).map(|part| part.as_str());
    let share = |above: &str, below: &str| {
        let below = ratio(below);
        (below != RBig::ZERO).then(|| ratio(above) / below)
    };
    if let Some(whole) = get("w") {
        let part = match get("v") {
            Some(sign) => vulgar(sign),
            None => share("1", get("o")?)?,
        };
        return Some(ratio(whole) + part);
    }
    if let (Some(whole), Some(above), Some(below)) = (get("x"), get("a"), get("b")) {
        return Some(ratio(whole) + share(above, below)?);
    }
    if let Some(sign) = get("sv") {
        return Some(vulgar(sign));
    }
    if let Some(below) = get("so") {
        return share("1", below);
    }
    if let (Some(above), Some(below)) = (get("c"), get("d")) {
        return share(above, below);
    }
    if let (Some(whole), Some(part)) = (get("i"), get("f")) {
        return share(&format!("0{whole}{part}"), &format!("1{}", "0".repeat(part.len())));
    }
    get("p").map(ratio)
}

fn unit_nm(unit: Unit) -> i64 {
    // NIST SP 811: 1 in = 25.4 mm, 1 ft = 0.3048 m.
    match unit {
        Unit::Inch => 25_400_000,
        Unit::Foot => 304_800_000,
        Unit::Millimetre => 1_000_000,
        Unit::Centimetre => 10_000_000,
        Unit::Metre => 1_000_000_000,
    }
}

/// The nanometres that a text says, or the code that it is refused with.
fn oracle(text: &str, unit: Option<Unit>, language: Language) -> Result<i64, &'static str> {
    if text.chars().count() > 200 {
        return Err("too-big");
    }
    let (text, forms) = (plain(text), forms(language));
    if language == Language::Spanish && forms.thousands.is_match(&text) {
        return Err("length");
    }
    let (found, value) = if let Some(found) = forms.feet.captures(&text) {
        let feet = ratio(&found["feet"]) * RBig::from(unit_nm(Unit::Foot));
        let inches = value(&found).ok_or("length")? * RBig::from(unit_nm(Unit::Inch));
        (found, feet + inches)
    } else if let Some(found) = forms.one_unit.captures(&text) {
        let units = ["inch", "foot", "mm", "cm", "m"].into_iter().zip(Unit::ALL);
        let unit = units.into_iter().find(|(name, _)| found.name(name).is_some()).unwrap().1;
        let value = value(&found).ok_or("length")? * RBig::from(unit_nm(unit));
        (found, value)
    } else if let Some(found) = forms.alone.captures(&text) {
        let value = value(&found).ok_or("length")? * RBig::from(unit_nm(unit.ok_or("unit-missing")?));
        (found, value)
    } else {
        return Err("length");
    };
    let half = RBig::from(1) / RBig::from(2);
    let nm: i64 = (value + half).floor().try_into().map_err(|_| "too-big")?;
    match nm > LIMIT_NM {
        true => Err("too-big"),
        false => Ok(if found.name("minus").is_some() { -nm } else { nm }),
    }
}

fn read(text: &str, unit: Option<Unit>, language: Language) -> Result<i64, &'static str> {
    Reader { unit, language }.length(text).map(|length| length.nm()).map_err(|error| match error.kind {
        ParseErrorKind::UnitMissing => "unit-missing",
        ParseErrorKind::TooBig => "too-big",
        _ => "length",
    })
}

/// What lengths are made of, and what gets in between.
const PIECES: &[&str] = &[
    "0", "1", "2", "3", "5", "6", "7", "12", "16", "31", "64", "128", "300", "1000", "7300", "007", "999999",
    "40000000", ".5", ".125", "6.0625", "7.300", "7,300", "12.", "0,125", "1/2", "3/4", "1/16", "15/16", "1/0", "/",
    ".", ",", "-", "-", " ", " ", " ", "  ", "\u{a0}", "½", "⅝", "⅒", "↉", "⅟8", "\"", "\"", "'", "'", "''", "″", "′",
    "’", "”", "in", "in", "in.", "IN", "inch", "Inches", "ft", "ft.", "FT", "feet", "foot", "mm", "MM", "cm", "m",
    "m.", "pulg", "pulg.", "pulgadas", "pulgada", "pie", "pies", "Pies.", "\u{2212}", "\u{2011}", "\u{2044}", "+",
    "e3", "x", "–",
];

/// Texts that are lengths, most of them, for as long as nothing is changed in them.
fn sensible(random: &mut Random) -> String {
    fn of<'a>(random: &mut Random, all: &[&'a str]) -> &'a str {
        all[usize::try_from(random.between(0, all.len() as i64 - 1)).unwrap()]
    }
    let number = |random: &mut Random| {
        let whole = random.between(0, 40).to_string();
        let fraction = of(random, &["1/2", "3/4", "5/16", "13/32", "½", "⅞", "⅟64", "7/3"]);
        match random.between(0, 6) {
            0 => whole,
            1 => format!("{whole} {fraction}"),
            2 => format!("{whole}-{fraction}"),
            3 => fraction.to_owned(),
            4 => format!("{whole}.{}", random.between(0, 99_999)),
            5 => format!(".{}", random.between(0, 999)),
            _ => format!("{whole},{}", random.between(0, 9_999)),
        }
    };
    let minus = of(random, &["", "", "", "-", "−"]);
    let (before, between) = (of(random, &["", " "]), of(random, &["", " ", "-", " - ", " -", "- "]));
    let foot = of(random, &["'", "′", " ft", "ft.", " feet", " PIES", " pie."]);
    let inch = of(random, &["", "\"", "″", " in", " in.", "''", " Inches", " pulg", " pulgadas."]);
    match random.between(0, 4) {
        0 | 1 => format!("{minus}{}{before}{foot}{between}{}{inch}", random.between(0, 99), number(random)),
        2 => format!("{minus}{}{before}{inch}", number(random)),
        3 => format!("{minus}{}{}", number(random), of(random, &["mm", " MM", " cm", "m", " m."])),
        _ => format!("{minus}{}{before}{foot}", number(random)),
    }
}

#[test]
fn two_readers_agree_on_every_text() {
    let (mut random, mut met) = (Random::new(0x1ea57), [0_u32; 4]);
    for turn in 0..120_000 {
        let mut text = String::new();
        if turn % 3 == 0 {
            for _ in 0..random.between(1, 7) {
                text += PIECES[usize::try_from(random.between(0, PIECES.len() as i64 - 1)).unwrap()];
            }
        } else {
            text = sensible(&mut random);
            if turn % 3 == 1 {
                // One piece put in anywhere.
                let mut signs: Vec<char> = text.chars().collect();
                let at = usize::try_from(random.between(0, signs.len() as i64)).unwrap();
                let piece = PIECES[usize::try_from(random.between(0, PIECES.len() as i64 - 1)).unwrap()];
                signs.splice(at..at, piece.chars());
                text = signs.into_iter().collect();
            }
        }
        let units = [None, Some(Unit::Inch), Some(Unit::Foot), Some(Unit::Millimetre)];
        let unit = units[usize::try_from(random.between(0, 3)).unwrap()];
        for language in Language::ALL {
            let (own, other) = (read(&text, unit, *language), oracle(&text, unit, *language));
            assert_eq!(own, other, "{text:?} {unit:?} {language:?}");
            met[match own {
                Ok(_) => 0,
                Err("unit-missing") => 1,
                Err("too-big") => 2,
                Err(_) => 3,
            }] += 1;
        }
    }
    // Each end must have been reached, else nothing was compared.
    assert!(met[0] > 60_000 && met[1] > 1_000 && met[2] > 50 && met[3] > 40_000, "{met:?}");
}

#[test]
fn the_second_reader_knows_the_forms_too() {
    let all = [
        ("6-1/16 in", None, Language::English, Ok(153_987_500)),
        ("7' 3 1/2", Some(Unit::Millimetre), Language::English, Ok(2_222_500_000)),
        ("5' -3", None, Language::English, Ok(1_600_200_000)),
        ("5ft.3in.", None, Language::English, Ok(1_600_200_000)),
        ("-63 1/2 pulg", None, Language::Spanish, Ok(-1_612_900_000)),
        ("7.300 mm", None, Language::English, Ok(7_300_000)),
        ("7.300 mm", None, Language::Spanish, Err("length")),
        ("5 3 1/2", None, Language::English, Err("length")),
        ("6 1/16", None, Language::English, Err("unit-missing")),
        ("1000001 m", None, Language::English, Err("too-big")),
    ];
    for (text, unit, language, want) in all {
        assert_eq!(oracle(text, unit, language), want, "{text}");
    }
}
