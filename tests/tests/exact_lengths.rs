//! Lengths against a reference library of exact fractions (`dashu-ratio`, an implementation apart from the core's own):
//! 10,000 random lengths in every written form, their nanometres and their texts in every way of showing.
//! 1 in = 25.4 mm and 1 ft = 0.3048 m exactly: NIST SP 811, Guide for the Use of the SI, appendix B.

use dashu_ratio::RBig;
use lapwright::measure::{Length, Reader, Rounding, Show};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, TestRunner};

fn ratio(numerator: i64, denominator: i64) -> RBig {
    RBig::from(numerator) / RBig::from(denominator)
}

/// To the nearest whole number, halves away from zero.
fn nearest(value: &RBig) -> i64 {
    let negative = *value < RBig::ZERO;
    let size = if negative { -value.clone() } else { value.clone() };
    let whole: i64 = (size + ratio(1, 2)).floor().try_into().unwrap();
    if negative { -whole } else { whole }
}

/// A written length: its text and its value in nanometres.
fn written() -> impl Strategy<Value = (String, RBig)> {
    let inch = || RBig::from(25_400_000);
    let sign = prop_oneof![Just(""), Just("-")];
    let parts = prop_oneof![Just(2_i64), Just(3), Just(8), Just(16), Just(32), Just(64), Just(100), Just(128)];
    let mixed = (0..2_000_i64, parts).prop_flat_map(|(whole, d)| (Just(whole), 1..d.max(2), Just(d)));
    let inches = (mixed.clone(), prop_oneof![Just(" "), Just("-")], prop_oneof![Just("\""), Just(" in"), Just("''")])
        .prop_map(move |((w, n, d), join, unit)| {
            (format!("{w}{join}{n}/{d}{unit}"), (RBig::from(w) + ratio(n, d)) * inch())
        });
    let feet =
        (0..500_i64, mixed, prop_oneof![Just(" "), Just("-"), Just("")]).prop_map(move |(f, (w, n, d), join)| {
            let value = (RBig::from(f * 12) + RBig::from(w) + ratio(n, d)) * inch();
            (format!("{f}'{join}{w} {n}/{d}\""), value)
        });
    let units = prop_oneof![
        Just(("\"", 25_400_000_i64)),
        Just((" ft", 304_800_000)),
        Just((" mm", 1_000_000)),
        Just((" cm", 10_000_000)),
        Just((" m", 1_000_000_000))
    ];
    let decimal =
        (0..3_000_i64, 0..1_000_000_000_000_i64, 1..13_usize, units).prop_map(|(whole, digits, places, (unit, nm))| {
            let digits: String = format!("{digits:012}").chars().take(places).collect();
            let scale = 10_i64.pow(u32::try_from(places).unwrap());
            let value = (RBig::from(whole) + ratio(digits.parse().unwrap(), scale)) * RBig::from(nm);
            (format!("{whole}.{digits}{unit}"), value)
        });
    (sign, prop_oneof![inches, feet, decimal])
        .prop_map(|(sign, (text, value))| (format!("{sign}{text}"), if sign.is_empty() { value } else { -value }))
}

/// The text that a person reads, written apart from the core's.
fn text(nm: i64, show: Show) -> String {
    let (unit, parts) = match show {
        Show::Inches(parts) | Show::FeetInches(parts) => (25_400_000, i64::from(parts)),
        Show::Millimetres(parts) => (1_000_000, i64::from(parts)),
    };
    let count = nearest(&(ratio(nm, unit) * RBig::from(parts)));
    let sign = if count < 0 { "-" } else { "" };
    let (whole, part) = (count.abs() / parts, count.abs() % parts);
    let fraction = ratio(part, parts);
    let mixed = |whole: i64| match (whole, part) {
        (w, 0) => format!("{w}"),
        (0, _) => format!("{fraction}"),
        (w, _) => format!("{w} {fraction}"),
    };
    match show {
        Show::Inches(_) => format!("{sign}{}\"", mixed(whole)),
        Show::FeetInches(_) if whole < 12 => format!("{sign}{}\"", mixed(whole)),
        Show::FeetInches(_) => format!("{sign}{}' {}\"", whole / 12, mixed(whole % 12)),
        Show::Millimetres(_) if part == 0 => format!("{sign}{whole} mm"),
        Show::Millimetres(_) => format!("{sign}{whole}.5 mm"),
    }
}

#[test]
fn ten_thousand_lengths_are_exact() {
    let mut runner = TestRunner::new(Config::default());
    let strategy = written();
    let mut rounded = 0;
    for _ in 0..10_000 {
        let (written, value) = strategy.new_tree(&mut runner).unwrap().current();
        let length = Reader::default().length(&written).unwrap_or_else(|error| panic!("{written}: {error}"));
        assert_eq!(length.nm(), nearest(&value), "{written}");
        rounded += usize::from(RBig::from(length.nm()) != value);
        for show in Show::ALL {
            assert_eq!(show.text(length), text(length.nm(), show), "{written} as {}", show.code());
        }
    }
    // Some of the forms must have needed rounding, else the halves were never tried.
    assert!(rounded > 500, "only {rounded} needed rounding");
}

#[test]
fn rounding_for_cutting_never_goes_to_the_wrong_side() {
    let mut runner = TestRunner::new(Config::default());
    let strategy = written();
    for _ in 0..2_000 {
        let length = Reader::default().length(&strategy.new_tree(&mut runner).unwrap().current().0).unwrap();
        for show in Show::ALL {
            let mark = |way| show.division().round(length, way);
            let (down, up) = (mark(Rounding::Down), mark(Rounding::Up));
            assert!(down <= length && length <= up);
            assert!(
                up - down <= show.division().length()
                    && (mark(Rounding::Nearest) == down || mark(Rounding::Nearest) == up)
            );
        }
    }
}

#[test]
fn units_are_those_of_the_standard() {
    // NIST SP 811: 1 in = 25.4 mm, 1 ft = 0.3048 m.
    assert_eq!(Reader::default().length("1 in"), Ok(Length::from_nm(25_400_000)));
    assert_eq!(Reader::default().length("1 ft"), Ok(Length::from_nm(304_800_000)));
    assert_eq!(Reader::default().length("0.3048 m"), Reader::default().length("12\""));
}
