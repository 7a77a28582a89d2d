//! Courses, rakes and gables against the worked examples of carpentry handbooks. The source stands beside each check.

use lapwright::measure::{Division, Length, Rounding};
use lapwright::siding::{Gable, GableCourses, GableRequest, Mode, Pitch, Pole, PoleRequest};

fn inches(sixty_fourths: i64) -> Length {
    Length::from_inches_64(0, sixty_fourths)
}

fn gable(base: Length, rise: u32, run: u32) -> Gable {
    Gable::of(&GableRequest {
        base,
        pitch: Pitch::in_whole(rise, run).unwrap(),
        courses: GableCourses::Reveal(Length::from_inches(6)),
        board_height: Length::from_inches(8),
        division: Division::SIXTEENTH,
    })
    .unwrap()
}

/// NAVEDTRA 14044, p. 4-4: a height of 61 in at about 10 in makes 6 courses of 10 1/6 in; 31 in makes 3 of 10 1/3 in.
#[test]
fn courses_of_about_ten_inches() {
    for (height, courses, reveal_sixths) in [(61_i64, 6_i64, 61.0), (31, 3, 62.0)] {
        let pole = Pole::lay_out(&PoleRequest {
            from: Length::ZERO,
            to: Length::from_inches(height),
            mode: Mode::Equal,
            reveal_max: inches(10 * 64 + 32),
            reveal_min: None,
            marks: Vec::new(),
            division: Division::SIXTEENTH,
        })
        .unwrap();
        assert_eq!(pole.lines.len() as i64, courses, "{height} in");
        for (k, line) in pole.lines.iter().enumerate() {
            let exact = (k + 1) as f64 * reveal_sixths / 6.0;
            let off = (line.nm() as f64 / Length::NM_PER_INCH as f64 - exact).abs();
            assert!(off <= 1.0 / 32.0 + 1e-9, "line {k} of {height} in is {off} in off: rounding must not add up");
        }
    }
}

/// NAVEDTRA 14044: unit rise 7 in, span 16 ft: 13.89 in for each foot of run, times 8 ft, is 111.12 in; cut at 111 1/8 in.
/// (The unit length has two decimals, so that the handbook's product lies up to 8 * 0.005 in off.)
#[test]
fn a_rafter_of_seven_in_twelve_over_sixteen_feet() {
    let rake = gable(Length::from_inches(16 * 12), 7, 12).rake;
    assert!((rake - Length::from_nm(111_120 * Length::NM_PER_INCH / 1000)).abs() <= inches(3));
    let eighth = Division::new(Length::NM_PER_INCH, 8).unwrap();
    assert_eq!(eighth.round(rake, Rounding::Nearest), inches(111 * 64 + 8));
}

/// The "length common rafters per foot run" line of framing square tables, in hundredths of an inch for 12 in of run.
#[test]
fn unit_rafters_of_the_framing_square() {
    let hundredth = Division::new(Length::NM_PER_INCH, 100).unwrap();
    for (rise, hundredths) in [(4, 1265), (6, 1342), (8, 1442), (12, 1697), (18, 2163)] {
        let rake = gable(Length::from_inches(24), rise, 12).rake;
        assert_eq!(hundredth.count(rake, Rounding::Nearest), Some(hundredths), "{rise} in 12");
    }
}

/// Common difference of gable studs, `spacing * rise / run`: NAVEDTRA 14044 (6 in 12 at 24 in: 12 in; 16 in 12 at 16 in:
/// 21.33 in) and a trade text (150 over 250 at 600 mm: 360 mm). A half base of one spacing rises by just that; a course of
/// that reveal steps in by the spacing.
#[test]
fn gable_studs_and_gable_courses_share_one_slope() {
    for (rise, run, spacing, difference) in [
        (6, 12, Length::from_inches(24), Length::from_inches(12)),
        (16, 12, Length::from_inches(16), Length::from_nm(21_333 * Length::NM_PER_INCH / 1000)),
        (150, 250, Length::from_mm(600), Length::from_mm(360)),
    ] {
        let gable = gable(spacing + spacing, rise, run);
        let hundredth = Length::from_nm(Length::NM_PER_INCH / 100);
        assert!((gable.rise - difference).abs() <= hundredth, "{rise} in {run}: {:?}", gable.rise);
        let stepped = Gable::of(&GableRequest {
            base: Length::from_inches(400),
            pitch: Pitch::in_whole(rise, run).unwrap(),
            courses: GableCourses::Reveal(gable.rise),
            board_height: gable.rise,
            division: Division::SIXTEENTH,
        })
        .unwrap();
        let step = stepped.step.unwrap();
        assert!((step - spacing).abs() <= Length::from_nm(1), "{step:?}");
        assert_eq!(stepped.edge_difference, step, "a board as high as the reveal steps in by as much");
    }
}
