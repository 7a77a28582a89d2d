use proptest::prelude::*;

use super::*;
use crate::drawing::elevation::{DrawnOpening, Elevation, Through, Up};
use crate::phrases::{Language, Phrases};
use crate::views::{Corner, Place, Rectangle};

const INCH: i64 = 25_400_000;

/// A gable wall of so many inches with courses of 7 in, boards of 12 ft in all three states, and openings and
/// penetrations at the places given as shares of the wall.
fn wall(width: i64, height: i64, rise: i64, openings: &[(f64, f64)], through: &[(f64, f64)]) -> Elevation {
    let corner = |x: i64, y: i64| Corner { x: x * INCH, y: y * INCH };
    let mut outline = vec![corner(0, 0), corner(width, 0), corner(width, height)];
    outline.extend((rise > 0).then(|| corner(width / 2, height + rise)));
    outline.push(corner(0, height));
    let at = |(x, y): (f64, f64), w: i64, h: i64| {
        let (left, bottom) = ((x * (width - w) as f64) as i64, (y * (height - h) as f64) as i64);
        let (right, top) = (left + w, bottom + h);
        Rectangle { left: left * INCH, right: right * INCH, bottom: bottom * INCH, top: top * INCH }
    };
    let courses: Vec<i64> = (0..(height + rise) / 7).map(|n| n * 7 * INCH).collect();
    let states = ["fixed", "cut", "planned"];
    let placed = move |piece: i64, bottom: i64| Rectangle {
        left: piece * 144 * INCH,
        right: ((piece + 1) * 144).min(width) * INCH,
        bottom,
        top: (bottom + 33 * INCH / 4).min((height + rise) * INCH),
    };
    let ring = |at: Rectangle| {
        [(at.left, at.bottom), (at.right, at.bottom), (at.right, at.top), (at.left, at.top)]
            .map(|(x, y)| Corner { x, y })
            .to_vec()
    };
    let boards = courses.iter().enumerate().flat_map(|(n, bottom)| {
        (0..=(width - 1) / 144).map(move |piece| Up {
            id: format!("{n}-{piece}"),
            course: n as i64 + 1,
            length: "144\"".to_owned(),
            at: placed(piece, *bottom),
            rings: vec![ring(placed(piece, *bottom))],
            state: states[(n / 4).min(2)].to_owned(),
        })
    });
    let through = through.iter().enumerate().map(|(n, place)| Through {
        id: n.to_string(),
        name: ["Vent hood", "Hose bib", "Electrical box"][n % 3].to_owned(),
        at: at(*place, 6, 7),
    });
    Elevation {
        name: "South".to_owned(),
        width: format!("{width}\""),
        outline,
        boards: boards.collect(),
        courses,
        studs: (0..width / 16).map(|n| n * 16 * INCH).collect(),
        openings: openings
            .iter()
            .map(|place| {
                let at = at(*place, 36, 48);
                let corners = [(at.left, at.top), (at.right, at.top), (at.right, at.bottom), (at.left, at.bottom)];
                DrawnOpening { name: "Window".to_owned(), at, corners: corners.map(|(x, y)| Corner { x, y }).to_vec() }
            })
            .collect(),
        penetrations: through.collect(),
        words: ["planned", "cut to size", "up"].map(str::to_owned),
    }
}

/// The wall that the shells' decoders are tried on.
pub(super) fn golden() -> Golden {
    let wall = wall(376, 104, 96, &[(0.25, 0.6), (0.7, 0.6)], &[(0.1, 0.3), (0.14, 0.3), (0.9, 0.8)]);
    let page = Page::new([360.0, 640.0, 18.0, 16.0], false);
    let (strokes, height, _) = wall.draw(&page, Phrases::for_language(Language::English));
    ("elevation", (strokes, height), 360.0)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn walls_are_well_laid(
        (width, height, rise) in (60_i64..700, 60_i64..300, 0_i64..120),
        openings in proptest::collection::vec((0.0..1.0_f64, 0.0..1.0_f64), 0..4),
        through in proptest::collection::vec((0.0..1.0_f64, 0.0..1.0_f64), 0..9),
        (page_width, page_height, text) in (320.0_f32..1200.0, 48.0_f32..1000.0, 1.0_f32..=2.0),
    ) {
        let wall = wall(width, height, rise, &openings, &through);
        let page = Page::new([page_width, page_height, 18.0 * text, 16.0 * text], false);
        let (strokes, high, hits) = wall.draw(&page, Phrases::for_language(Language::Spanish));
        prop_assert!(high <= f64::from(page_height));
        assert_well_laid(&strokes, page_width, high as f32);
        prop_assert_eq!(hits.len(), through.len() + wall.boards.len());
        for hit in &hits {
            let [left, top, right, bottom] = hit.area;
            prop_assert!(0.0 <= left && left <= right && right <= page_width && 0.0 <= top && top <= bottom);
            prop_assert!(f64::from(bottom) <= high + 0.01);
        }
        // In a frame of a phone's height every number and letter is there.
        if page_height > 700.0 {
            let texts = texts(&strokes);
            prop_assert!(texts.contains(&wall.width.as_str()));
            for (n, through) in wall.penetrations.iter().enumerate() {
                let letter = char::from(b'A' + n as u8).to_string();
                prop_assert!(texts.contains(&letter.as_str()), "{letter}: {texts:?}");
                let named = format!("{letter} {}", through.name);
                prop_assert!(texts.contains(&named.as_str()), "{texts:?}");
            }
        }
    }
}

/// Where a penetration is drawn, a tap leads to it.
#[test]
fn a_tap_on_a_penetration_leads_to_it() {
    let wall = wall(376, 104, 0, &[], &[(0.1, 0.3), (0.9, 0.8)]);
    let (_, _, hits) =
        wall.draw(&Page::new([360.0, 640.0, 18.0, 16.0], false), Phrases::for_language(Language::English));
    let first: Vec<&Place> = hits.iter().map(|hit| &hit.place).take(2).collect();
    for (n, place) in first.iter().enumerate() {
        assert_eq!(**place, Place::Penetration { penetration: n.to_string() });
    }
    let [left, top, right, bottom] = hits[0].area;
    // The wall is 376 in on 340 dp less the numbers' gutter; the middle of the first one is a tenth of 370 in along.
    assert!((left..right).contains(&50.0) && right - left <= 64.01 && bottom - top <= 64.01, "{:?}", hits[0].area);
}

/// Where two boards meet stays to be seen: the box of a letter goes to another side.
#[test]
fn a_letter_covers_no_joint() {
    // The middle of a penetration of 6 in lies 10 in before the joint at 144 in.
    let wall = wall(376, 104, 0, &[], &[(131.0 / 370.0, 0.4)]);
    for width in [480.0, 800.0, 1200.0] {
        let (strokes, ..) =
            wall.draw(&Page::new([width, 1000.0, 18.0, 16.0], false), Phrases::for_language(Language::English));
        let lines = |role: Role, is_closed: bool| {
            strokes.iter().filter_map(move |stroke| match stroke {
                Stroke::Line { role: of, closed, points, .. } if *of == role && *closed == is_closed => Some(points),
                _ => None,
            })
        };
        let joints: Vec<_> =
            lines(Role::Ink, false).filter(|line| line.len() == 2 && alike(line[0].x, line[1].x)).collect();
        let flag = lines(Role::Chalk, true).next_back().unwrap();
        let [xs, ys] = [|spot: &Spot| spot.x, |spot: &Spot| spot.y].map(|of| flag.iter().map(of).collect::<Vec<_>>());
        let within = |of: &[f32], from: f32, to: f32| of.iter().any(|at| *at > from) && of.iter().any(|at| *at < to);
        assert!(joints.len() > 10, "{width}: {}", joints.len());
        for joint in joints {
            let (top, bottom) = (joint[0].y.min(joint[1].y), joint[0].y.max(joint[1].y));
            assert!(!(within(&xs, joint[0].x, joint[0].x) && within(&ys, top, bottom)), "{width}: {joint:?}, {flag:?}");
        }
    }
}
