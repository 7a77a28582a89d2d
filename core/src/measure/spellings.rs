//! How people write lengths: hundreds of spellings, each with what it says, worked by hand, or why it is refused.

use super::{Language, Length, ParseErrorKind, Reader, Rounding, Show, Unit};
use proptest::prelude::*;

/// Spellings of one length: the reader's unit, its languages, the value as a fraction of a unit, and the texts.
type Alike = (Option<Unit>, &'static [Language], (i64, i64, Unit), &'static [&'static str]);

const BOTH: &[Language] = Language::ALL;
const ENGLISH: &[Language] = &[Language::English];
const SPANISH: &[Language] = &[Language::Spanish];
const INCH: Option<Unit> = Some(Unit::Inch);
const FOOT: Option<Unit> = Some(Unit::Foot);
const MM: Option<Unit> = Some(Unit::Millimetre);

#[rustfmt::skip]
const READ: &[Alike] = &[
    // 6 1/16 in
    (None, BOTH, (97, 16, Unit::Inch), &[
        "6 1/16\"", "6 1/16 \"", "6 1/16in", "6 1/16 in", "6 1/16 in.", "6 1/16 IN", "6 1/16 In.", "6 1/16 inch",
        "6 1/16 inches", "6 1/16 Inches", "6 1/16 INCHES.", "6 1/16''", "6 1/16’’", "6 1/16′′", "6 1/16″", "6 1/16”",
        "6 1/16“", "6-1/16 in", "6-1/16\"", "6\u{2011}1/16\"", "6  1/16\"", "6\u{a0}1/16\u{a0}in", "  6 1/16\"  ",
        "6 1\u{2044}16\"", "6 1\u{2215}16\"", "6 2/32\"", "6 \u{215f}16\"", "97/16\"", "6.0625\"", "06.06250 in", "0' 6 1/16\"",
        "0'-6 1/16", "6 01/016\"", "5 17/16\"",
    ]),
    // 87 1/2 in
    (None, BOTH, (175, 2, Unit::Inch), &[
        "7' 3 1/2\"", "7'-3 1/2\"", "7' -3 1/2\"", "7'- 3 1/2\"", "7' - 3 1/2\"", "7'3 1/2\"", "7' 3 1/2", "7'-3 1/2",
        "7'3 1/2", "7' 3-1/2", "7'-3-1/2\"", "7' 3½", "7'3½″", "7′ 3½″", "7’ 3 1/2”", "7‘3 ½“", "7 ' 3.5 \"", "7' 3.5",
        "7' 3.5''", "7 ft 3 1/2 in", "7ft 3 1/2in", "7 FT 3 1/2 IN", "7 Ft. 3 1/2 In.", "7ft.3.5in.",
        "7´ 3 1/2¨", "7´3½´´", "7 feet 3 1/2 inches", "7 foot 3 1/2 inch", "7 ft. 3 1/2", "7 ft-3 1/2", "7 feet - 3 1/2 in", "7 ft 3 1/2\"",
        "7' 3 1/2 in", "7' 7/2", "6' 15 1/2", "0' 87 1/2", "87 1/2\"", "87.5''", "87½ in", "7\u{2032}\u{2010}3\u{bd}\u{2033}",
    ]),
    (None, BOTH, (63, 1, Unit::Inch), &[
        "5' 3\"", "5' -3", "5' - 3 in", "5'-3", "5'3", "5 ft 3", "5ft3", "5ft.3in.", "5ft.3", "5 FEET 3", "5' 3.0", "63\"",
        "63 INCH.", "63''", "5.25'", "5 1/4'", "5¼ ft", "5-1/4 feet", "5 ft. 3 in.",
    ]),
    (None, BOTH, (339, 4, Unit::Inch), &["7' 3/4", "7' 3/4\"", "7'-3/4", "7'3/4 in", "7' ¾", "7'¾″", "7 ft .75", "7' .75\""]),
    (None, BOTH, (377, 1, Unit::Inch), &["31' 5", "31' 5\"", "31'5", "31 ft 5"]),
    (None, BOTH, (7, 1, Unit::Foot), &["7'", "7 '", "7ft", "7 ft.", "7 FEET", "7 Foot.", "7' 0\"", "7' 0", "84\"", "7.0'", "14/2 ft"]),
    (None, BOTH, (-97, 16, Unit::Inch), &["-6 1/16\"", "\u{2212}6 1/16\"", "-6-1/16 in", " -6.0625 in.", "-0' 6 1/16"]),
    (None, BOTH, (-175, 2, Unit::Inch), &["-7' 3 1/2\"", "-7'-3 1/2", "\u{2212}7' - 3½", "-7 ft. 3.5 in."]),
    (None, BOTH, (1, 2, Unit::Inch), &["1/2\"", ".5\"", "0.5 in", "½\"", "½ in.", "8/16''", "00.50\"", "0 1/2\"", "0½\""]),
    (None, BOTH, (5, 16, Unit::Inch), &["5/16\"", "5/16 in", "5\u{2044}16″", "0.3125\"", ".3125 IN", "10/32\""]),
    (None, BOTH, (154, 1, Unit::Millimetre), &["154 mm", "154mm", "154 MM", "154 Mm.", "15.4 cm", "15.4CM", ".154 m", "0.154 m", "0.154M.", "154.0 mm", "308/2 mm", "153 2/2 mm"]),
    (None, BOTH, (1540, 1, Unit::Millimetre), &["1.54 m", "1.54m", "154 cm", "1540 mm", "1.5400 m", "1540.0 mm"]),
    (None, BOTH, (0, 1, Unit::Inch), &["0\"", "-0\"", "0 mm", "0' 0", "-0' 0/5", "↉ in", "0.0 cm", ".0 m"]),
    (None, BOTH, (1_000_000, 1, Unit::Metre), &["1000000 m", "1000000.0 M", "100000000 cm"]),
    // The unit of the request; what stands behind feet is inches all the same.
    (INCH, BOTH, (97, 16, Unit::Inch), &["6 1/16", "6-1/16", "6.0625", " 6 1/16 ", "97/16", "6 1/16\"", "6 1/16 in."]),
    (INCH, BOTH, (154, 1, Unit::Millimetre), &["154 mm", "15.4 cm"]),
    (FOOT, BOTH, (15, 2, Unit::Foot), &["7.5", "7 1/2", "7½", "15/2", "7' 6", "7 ft 6", "90\"", "7.5'"]),
    (MM, BOTH, (175, 2, Unit::Inch), &["7' 3 1/2", "7 ft 3.5", "7'-3½"]),
    (MM, BOTH, (339, 4, Unit::Inch), &["7' 3/4"]),
    (MM, BOTH, (3, 2, Unit::Millimetre), &["1.5", "1 1/2", "1½", "1.5 mm", ".15 cm"]),
    (Some(Unit::Centimetre), BOTH, (154, 10, Unit::Centimetre), &["15.4", "15 2/5", "154 mm"]),
    (Some(Unit::Metre), BOTH, (-154, 100, Unit::Metre), &["-1.54", "-154 cm"]),
    // Three decimals are no thousands in English, nor in Spanish behind no digit, a zero, or more than three digits.
    (None, ENGLISH, (7300, 1000, Unit::Millimetre), &["7.300 mm", "7.3 mm", "7.30mm"]),
    (None, ENGLISH, (12_125, 1000, Unit::Inch), &["12.125\"", "12 1/8\"", "1' 0.125"]),
    (None, BOTH, (125, 1000, Unit::Inch), &["0.125\"", ".125\"", "00.125 in", "1/8\""]),
    (None, BOTH, (7300, 1000, Unit::Millimetre), &["7.3 mm", "7.30 mm", "7.3000 mm", "07.300 mm"]),
    (None, BOTH, (1_234_567, 1000, Unit::Millimetre), &["1234.567 mm"]),
    (None, SPANISH, (7300, 1000, Unit::Millimetre), &["7,3 mm", "7,30 MM", "7,3000 mm", "07,300 mm"]),
    (None, SPANISH, (125, 1000, Unit::Inch), &["0,125\"", ",125 pulg", "0,125 pulgadas"]),
    (None, SPANISH, (1_234_567, 1000, Unit::Millimetre), &["1234,567 mm"]),
    (None, SPANISH, (127, 2, Unit::Inch), &[
        "63 1/2 pulg", "63 1/2 pulg.", "63½ PULG", "63,5 pulgadas", "63.5 Pulgadas.", "63-1/2 pulgada", "5 pies 3 1/2 pulg",
        "5 pies 3 1/2", "5 pie 3,5", "5pies3½pulg.", "5 PIES - 3 1/2\"", "5' 3,5", "5 ft 3 1/2 pulgadas", "5 pies. 3 1/2 in.",
    ]),
    (None, SPANISH, (5, 1, Unit::Foot), &["5 pies", "5 pie", "5PIES.", "60 pulg", "5 ft"]),
    (INCH, SPANISH, (11, 2, Unit::Inch), &["5,5", "5.5", "5 1/2", "5½"]),
];

/// Texts that are refused: the reader's unit, its languages, what is wrong, and the texts.
type RefusedSpellings = (Option<Unit>, &'static [Language], &'static str, &'static [&'static str]);

#[rustfmt::skip]
const REFUSED: &[RefusedSpellings] = &[
    // A number alone.
    (None, BOTH, "unit-missing", &[
        "6", "6 1/16", "6-1/16", " 6.5 ", ".5", "-6", "\u{2212}½", "1/2", "½", "6½", "97/16", "0", "-0", "1234.567", "0.125",
    ]),
    (None, ENGLISH, "unit-missing", &["7.300", "-12.125"]),
    (None, SPANISH, "unit-missing", &["6,5", ",5", "0,125", "1234,567"]),
    // No number either.
    (None, BOTH, "length", &[
        "", " ", "\t", "5 3 1/2", "5 3", "5 3 in", "5 1/2 1/4", "6 1/2 3", "six", "six\"", "in", "\"", "'", "-", "--6\"", "- 6\"", "+6\"",
        "6 -\"", "6 - 1/16\"", "6 -1/16\"", "6- 1/16\"", "6 1/ 16\"", "6 1 /16\"", "6 /16\"", "1/\"", "/16\"", "6 1/16/2\"", "1/0\"",
        "6 1/0\"", "0/0 in", "\u{215f}\"", "\u{215f}0\"", "1/½\"", "½½\"", "½ ½\"", "½/2\"", "1½/2\"", "½ 1/2\"", "6.5 1/2\"", "6.5½\"", "1.5/2\"", "1/2.5\"",
        "12.\"", "12. in", "12.", "-12.", "6.½\"", ".\"", ".", "1..5 mm", "1.2.3 mm", "1 .5 mm", "1. 5 mm", "1 2 mm", "15 4 mm",
        "1e3 mm", "1E3", "1e3", "1e-3 m", "0x10 mm", "6_000 mm", "1 000 mm", "1'000 mm", "∞ mm", "NaN", "٦ mm", "６ mm",
        "6 km", "6 yd", "6 inchs", "6 ins", "6 mms", "6 inn", "6 metre", "6 in in", "6\"\"", "6' '", "6'''", "6 in..", "6 in .", "6\".", "7'.",
        "3\" 7'", "3 in 7 ft", "154 mm 3", "154 mm 3 in", "1 m 54 cm", "1 m 54", "15 cm 4", "3\" 1/2", "6 in 6",
        "7' 3'", "7' 3 ft", "7' 3 mm", "7' 8 cm", "7' 3 1", "7' 3 1/2 1/4", "7' 3\" 2", "7' 3\"\"", "7' -", "7'-", "7' --3", "7' - -3", "7' +3",
        "7' 3.", "7' 1/0", "7' x", "7' in", "7.5' 3\"", "7.5' 3", "7 1/2' 3", "½' 3\"", "7.0' 3", "7½ ft 3 in", "7'-3'-2\"", "7 ft ft", "7' 3..5",
        "7 3 ft", "6 1/16 x", "(6\")", "6\" tall", "ca. 6\"", "~6\"", "6\0\"", "6;\"",
    ]),
    (INCH, BOTH, "length", &["", "5 3 1/2", "5 3", "7-3", "12.", "1e3", "6 -1/2", "x", "-", "5 mm 3", "7' 3 mm"]),
    (FOOT, BOTH, "length", &["7 3", "7-3", "7 3 1/2", "7 3\"", "7 - 3\""]),
    (None, ENGLISH, "length", &[
        "6,5 mm", "6,5", ",5 in", "7,300 mm", "1,234.5 mm", "5 pies", "5 pie", "63 1/2 pulg", "63 pulgadas", "1 pulgada", "5 pies 3 pulg", "5' 3 pulg",
    ]),
    // It may mean thousands.
    (None, SPANISH, "length", &[
        "7.300 mm", "7,300 mm", "-7.300 mm", "7.300", "7,300", "12.125\"", "12,125 pulg", "999.999 mm", "1.000 m", "7' 1.125", "7' 3,125\"",
        "1.234.567 mm", "1.234,5 mm", "1,234.5 mm", "1.000,00 m", "6,5,5 mm", "6,.5 mm", "12,", "12, mm", "7.300 pies",
        "5 pulgs", "5 pié", "5 pulgada s", "5 metros",
    ]),
    (MM, SPANISH, "length", &["7.300", "7,300", "2.440", "1,220"]),
    (None, BOTH, "too-big", &[
        "1000000.000000001 m", "1000001 m", "-1000001 m", "9999999999999999999999999999999999 mm", "39370079\"", "3280840' 0",
    ]),
];

fn code(kind: ParseErrorKind) -> &'static str {
    match kind {
        ParseErrorKind::UnitMissing => "unit-missing",
        ParseErrorKind::TooBig => "too-big",
        _ => "length",
    }
}

#[test]
fn every_spelling_is_read() {
    let mut count = 0;
    for (unit, languages, (above, below, of), texts) in READ {
        let nm = i128::from(*above) * i128::from(of.nm());
        assert_eq!(nm % i128::from(*below), 0, "these values are whole nanometres");
        let want = Length::from_wide(nm / i128::from(*below)).unwrap();
        for language in *languages {
            let reader = Reader { unit: *unit, language: *language };
            for text in *texts {
                assert_eq!(reader.length(text), Ok(want), "{text:?} {unit:?} {language:?}");
                count += 1;
            }
        }
    }
    assert!(count > 350, "{count}");
}

#[test]
fn every_wrong_spelling_is_refused() {
    let mut count = 0;
    for (unit, languages, want, texts) in REFUSED {
        for language in *languages {
            let reader = Reader { unit: *unit, language: *language };
            for text in *texts {
                let kind = reader.length(text).map_err(|error| code(error.kind));
                assert_eq!(kind, Err(*want), "{text:?} {unit:?} {language:?}");
                count += 1;
            }
        }
    }
    assert!(count > 300, "{count}");
}

/// Each fraction that Unicode has as one character, by its name in the Unicode Character Database (version 15.1).
const FRACTIONS: [(char, i64, i64); 19] = [
    ('\u{BC}', 1, 4),    // VULGAR FRACTION ONE QUARTER
    ('\u{BD}', 1, 2),    // VULGAR FRACTION ONE HALF
    ('\u{BE}', 3, 4),    // VULGAR FRACTION THREE QUARTERS
    ('\u{2150}', 1, 7),  // VULGAR FRACTION ONE SEVENTH
    ('\u{2151}', 1, 9),  // VULGAR FRACTION ONE NINTH
    ('\u{2152}', 1, 10), // VULGAR FRACTION ONE TENTH
    ('\u{2153}', 1, 3),  // VULGAR FRACTION ONE THIRD
    ('\u{2154}', 2, 3),  // VULGAR FRACTION TWO THIRDS
    ('\u{2155}', 1, 5),  // VULGAR FRACTION ONE FIFTH
    ('\u{2156}', 2, 5),  // VULGAR FRACTION TWO FIFTHS
    ('\u{2157}', 3, 5),  // VULGAR FRACTION THREE FIFTHS
    ('\u{2158}', 4, 5),  // VULGAR FRACTION FOUR FIFTHS
    ('\u{2159}', 1, 6),  // VULGAR FRACTION ONE SIXTH
    ('\u{215A}', 5, 6),  // VULGAR FRACTION FIVE SIXTHS
    ('\u{215B}', 1, 8),  // VULGAR FRACTION ONE EIGHTH
    ('\u{215C}', 3, 8),  // VULGAR FRACTION THREE EIGHTHS
    ('\u{215D}', 5, 8),  // VULGAR FRACTION FIVE EIGHTHS
    ('\u{215E}', 7, 8),  // VULGAR FRACTION SEVEN EIGHTHS
    ('\u{2189}', 0, 3),  // VULGAR FRACTION ZERO THIRDS
];

#[test]
fn every_fraction_of_unicode_is_its_own_value() {
    for language in Language::ALL {
        let reader = Reader { unit: Some(Unit::Inch), language: *language };
        for (sign, above, below) in FRACTIONS {
            let want = |whole: i64| Length::from_nm(Unit::Inch.nm()).scaled(whole * below + above, below).unwrap();
            for (text, whole) in [
                (format!("{sign}"), 0),
                (format!("6{sign}\""), 6),
                (format!("6 {sign} in"), 6),
                (format!("6-{sign}″"), 6),
                (format!("5' 3{sign}"), 63),
                (format!("5'-{sign}"), 60),
            ] {
                assert_eq!(reader.length(&text), Ok(want(whole)), "{text}");
            }
        }
    }
}

#[test]
fn two_hundred_characters_are_read_and_no_more() {
    let padded = |digits: usize| format!("{}1\"", "0".repeat(digits));
    let reader = Reader::default();
    assert_eq!(reader.length(&padded(198)), Ok(Length::from_inches(1)));
    assert_eq!(reader.length(&padded(199)).map_err(|error| error.kind), Err(ParseErrorKind::TooBig));
    // Characters, not bytes.
    assert_eq!(reader.length(&format!("{}1″", "\u{2003}".repeat(198))), Ok(Length::from_inches(1)));
}

proptest! {
    #[test]
    fn what_is_shown_reads_back(nm in -Length::LIMIT.nm()..=Length::LIMIT.nm(), small in -3_000_000_000_i64..3_000_000_000) {
        for length in [Length::from_nm(nm), Length::from_nm(small)] {
            for show in Show::ALL {
                for way in [Rounding::Nearest, Rounding::Down, Rounding::Up] {
                    let (text, shown) = (show.text_rounded(length, way), show.shown(length, way));
                    prop_assume!(shown.abs() <= Length::LIMIT);
                    for language in Language::ALL {
                        // A text that is shown names its unit, so that the reader's own may be any.
                        for unit in [None, Some(Unit::Metre)] {
                            let reader = Reader { unit, language: *language };
                            prop_assert_eq!(reader.length(&text), Ok(shown), "{}", &text);
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn any_text_is_read_or_refused(text in any::<String>(), nasty in "[-0-9 ./,'\"½⅟′″incmft\u{2212}]{0,24}") {
        for text in [text, nasty] {
            for language in Language::ALL {
                for unit in Unit::ALL.map(Some).into_iter().chain([None]) {
                    let reader = Reader { unit, language: *language };
                    let characters = text.chars().count();
                    if let Err(error) = reader.length(&text) {
                        prop_assert!(error.position <= characters);
                    }
                    let _ = (reader.number(&text), reader.millidegrees(&text));
                }
            }
        }
    }
}
