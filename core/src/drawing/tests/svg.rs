//! The SVG read again by a parser: what is drawn is as long as the number beside it says.

use super::*;
use crate::measure::{Length, Reader, Unit};

/// The points of a polygon or a line.
fn points(node: roxmltree::Node<'_, '_>) -> Vec<(f64, f64)> {
    let pair = |pair: &str| {
        let (x, y) = pair.split_once(',').unwrap();
        (x.parse().unwrap(), y.parse().unwrap())
    };
    node.attribute("points").unwrap_or_default().split(' ').map(pair).collect()
}

fn height(points: &[(f64, f64)]) -> f64 {
    let ys = || points.iter().map(|(_, y)| *y);
    ys().fold(f64::MIN, f64::max) - ys().fold(f64::MAX, f64::min)
}

/// The length that a text says, in nanometres.
fn said(text: &str) -> f64 {
    let reader = Reader { unit: Some(Unit::Inch), ..Reader::default() };
    reader.read(text).unwrap().exact.to_length().unwrap().nm() as f64
}

/// In the magnified part the board is 8 1/4 in high, which gives the scale; the arrows' tips and the upright lines of
/// measure then lie where the numbers beside them say, to half a sixteenth.
#[test]
fn what_is_drawn_is_as_long_as_its_number() {
    let text = super::board::golden_svg();
    let document = roxmltree::Document::parse(&text).unwrap();
    let nodes = |tag: &'static str, class: &'static str| {
        document.descendants().filter(move |node| node.has_tag_name(tag) && node.attribute("class") == Some(class))
    };
    let boards: Vec<Vec<(f64, f64)>> = nodes("polygon", "board").map(points).collect();
    let [whole, panel, ..] = boards.as_slice() else { panic!("the whole board and its cut: {boards:?}") };
    let half = Length::from_inches_64(0, 2).nm() as f64;

    let scale = height(whole) / said("8 1/4");
    let long = whole.iter().map(|(x, _)| *x).fold(f64::MIN, f64::max) - whole[0].0;
    assert!((long / scale - said("144")).abs() <= half, "{}", long / scale);

    let scale = height(panel) / said("8 1/4");
    // Arrow heads that point to the right lie under the board, the one of the shorter distance first.
    let heads = nodes("polygon", "chalk").map(points).filter(|corners| corners.len() == 3);
    let foot = panel.iter().map(|(_, y)| *y).fold(f64::MIN, f64::max);
    let tips: Vec<f64> = heads.filter(|corners| corners[0].1 > foot + 1.0).map(|corners| corners[0].0).collect();
    let [left, right] = tips.as_slice() else { panic!("two arrows: {tips:?}") };
    let apart = said("63 5/8") - said("57 3/16");
    assert!(((right - left) / scale - apart).abs() <= 2.0 * half, "{}", (right - left) / scale);

    // Upright lines of measure on the board: the left one and the right one.
    let uprights = nodes("polyline", "chalk").filter(|node| node.attribute("stroke-width") == Some("1.5")).map(points);
    let inside = |line: &Vec<(f64, f64)>| {
        (line[0].0 - line[1].0).abs() < 0.001 && line.iter().all(|(_, y)| *y <= foot && *y > foot - height(panel))
    };
    let depths: Vec<f64> = uprights.filter(inside).map(|line| height(&line) / scale).collect();
    let [left, right] = depths.as_slice() else { panic!("two depths: {depths:?}") };
    assert!((left - said("3 1/8")).abs() <= half && (right - said("3 1/4")).abs() <= half, "{left} {right}");

    let texts: Vec<&str> =
        document.descendants().filter(|node| node.has_tag_name("text")).filter_map(|node| node.text()).collect();
    for number in ["57 3/16\"", "63 5/8\"", "3 1/8\"", "3 1/4\"", "FACE", "cut"] {
        assert!(texts.contains(&number), "{number}: {texts:?}");
    }
}

/// In black and white what is cut away is still told: by a pattern that is there, and by its word.
#[test]
fn a_hatch_is_a_pattern_that_is_there() {
    let text = super::board::golden_svg();
    let document = roxmltree::Document::parse(&text).unwrap();
    let ids: Vec<&str> = document
        .descendants()
        .filter(|node| node.has_tag_name("pattern"))
        .filter_map(|node| node.attribute("id"))
        .collect();
    let used: Vec<&str> = document
        .descendants()
        .filter_map(|node| node.attribute("fill")?.strip_prefix("url(#")?.strip_suffix(')'))
        .collect();
    assert!(!used.is_empty() && used.iter().all(|name| ids.contains(name)), "{used:?} {ids:?}");
}

/// Each theme's text stands out from its ground by at least 7 to 1, on the board's face for ink and chalk too (contrast
/// ratio: WCAG 2.2, 1.4.6).
#[test]
fn every_text_stands_out() {
    let light = |colour: &str| {
        let part = |at: usize| {
            let share = f64::from(u8::from_str_radix(&colour[at..at + 2], 16).unwrap()) / 255.0;
            if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
    };
    for theme in [Theme::Sun, Theme::Dark] {
        let against = |a: Role, b: Role| {
            let (a, b) = (light(theme.colour(a)), light(theme.colour(b)));
            (a.max(b) + 0.05) / (a.min(b) + 0.05)
        };
        for role in Role::ALL.into_iter().filter(|role| !matches!(role, Role::Ground | Role::Board)) {
            assert!(against(role, Role::Ground) >= 7.0, "{theme:?} {role:?}");
        }
        for role in [Role::Ink, Role::Chalk, Role::Cut] {
            assert!(against(role, Role::Board) >= 7.0, "{theme:?} {role:?}");
        }
    }
}
