use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::ToPrimitive;
use thiserror::Error;

use super::COURSES_LIMIT;
use super::pitch::{Fraction, Pitch};
use crate::measure::{Division, Length};

/// A symmetric gable that stands on a level line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GableRequest {
    /// The length of the level line.
    pub base: Length,
    /// The slope of both rakes.
    pub pitch: Pitch,
    /// Where the courses' bottom edges lie.
    pub courses: GableCourses,
    /// The height of a board.
    pub board_height: Length,
    /// The smallest mark used on the tape; lengths to cut are rounded down to it.
    pub division: Division,
}

/// Where the courses' bottom edges lie.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GableCourses {
    /// At every multiple of one reveal, from the level line up.
    Reveal(Length),
    /// At these heights above the level line.
    Bottoms(Vec<Length>),
}

/// The figures of a gable.
#[derive(Clone, Debug, PartialEq)]
pub struct Gable {
    /// The angle of every rake cut from level, in degrees: `atan(rise / run)`.
    pub degrees: f64,
    /// The height of the top over the level line: `base / 2 * rise / run`.
    pub rise: Length,
    /// The length of one rake: `sqrt((base / 2)^2 + rise^2)`.
    pub rake: Length,
    /// The gable's area in square metres.
    pub area_m2: f64,
    /// By how much each course is shorter than the one below ON EACH side, with one reveal: `reveal * run / rise`.
    pub step: Option<Length>,
    /// By how much a board's top edge is shorter than its bottom edge on each side: `board_height * run / rise`.
    pub edge_difference: Length,
    /// The courses from the bottom; one whose bottom is at the top or over it is left out.
    pub courses: Vec<GableCourse>,
}

/// One course of a gable.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GableCourse {
    /// The board's bottom edge above the level line.
    pub bottom: Length,
    /// The length of the bottom edge, rounded down.
    pub long: Length,
    /// The length of the top edge, rounded down; zero where the board ends in a point.
    pub short: Length,
}

/// Why a gable has no figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum GableError {
    /// The base, the board's height or the reveal is not over zero, or a bottom is under the level line.
    #[error("base, board height and reveal must be over zero, bottoms at least zero")]
    Size,
    /// More than [`COURSES_LIMIT`] courses.
    #[error("more than {COURSES_LIMIT} courses")]
    TooManyCourses,
    /// A length passes [`Length::LIMIT`] at this pitch.
    #[error("a length passes the limit at this pitch")]
    TooLarge,
}

impl Gable {
    /// The figures of a gable, each from the exact fractions and rounded once.
    ///
    /// # Errors
    /// [`GableError`], by what is wrong with the request.
    pub fn of(request: &GableRequest) -> Result<Self, GableError> {
        let GableRequest { base, pitch, courses, board_height, division } = request;
        let reveal = match courses {
            GableCourses::Reveal(reveal) => Some(*reveal),
            GableCourses::Bottoms(_) => None,
        };
        if [Some(*base), Some(*board_height), reveal].into_iter().flatten().any(|length| !length.is_positive()) {
            return Err(GableError::Size);
        }
        let half = Fraction::half_of(*base);
        let top = pitch.rise_over(&half);
        let run_of = |rise: Length| pitch.run_under(&Fraction::from(rise)).nearest().ok_or(GableError::TooLarge);
        Ok(Self {
            degrees: pitch.degrees(),
            rise: top.nearest().ok_or(GableError::TooLarge)?,
            rake: pitch.along(&half).ok_or(GableError::TooLarge)?,
            area_m2: area_m2(*base, &top).ok_or(GableError::TooLarge)?,
            step: reveal.map(run_of).transpose()?,
            edge_difference: run_of(*board_height)?,
            courses: request
                .bottoms(&top)?
                .into_iter()
                .map(|bottom| {
                    // Both edges are over zero only below the top, so that the subtraction never wraps.
                    let long = request.width_at(bottom).down_to(*division)?;
                    let short = request.width_at(bottom.checked_add(*board_height)?).down_to(*division)?;
                    Some(GableCourse { bottom, long, short })
                })
                .collect::<Option<_>>()
                .ok_or(GableError::TooLarge)?,
        })
    }
}

impl GableRequest {
    /// The bottoms below the top.
    fn bottoms(&self, top: &Fraction) -> Result<Vec<Length>, GableError> {
        match &self.courses {
            GableCourses::Bottoms(bottoms) => {
                if bottoms.iter().any(|bottom| bottom.is_negative()) {
                    return Err(GableError::Size);
                }
                Ok(bottoms.iter().copied().filter(|&bottom| top.is_over(bottom)).collect())
            }
            GableCourses::Reveal(reveal) => {
                let mut bottoms = Vec::new();
                let mut bottom = Length::ZERO;
                while top.is_over(bottom) {
                    if bottoms.len() >= COURSES_LIMIT {
                        return Err(GableError::TooManyCourses);
                    }
                    bottoms.push(bottom);
                    bottom = bottom.checked_add(*reveal).ok_or(GableError::TooLarge)?;
                }
                Ok(bottoms)
            }
        }
    }

    /// The gable's width at a height, under zero over its top.
    fn width_at(&self, height: Length) -> Fraction {
        Fraction::from(self.base).less(2, &self.pitch.run_under(&Fraction::from(height)))
    }
}

/// Half of `base * rise`, in square metres.
fn area_m2(base: Length, rise: &Fraction) -> Option<f64> {
    const SQUARE_METRE: i64 = 1_000_000_000_000_000_000;
    let (numerator, denominator) = rise.parts();
    let doubled = BigRational::new(numerator * base.nm(), denominator * BigInt::from(SQUARE_METRE));
    (doubled / BigInt::from(2)).to_f64()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn inches(whole: i64) -> Length {
        Length::from_inches(whole)
    }

    fn gable(base: i64, rise: u32, reveal: i64) -> Gable {
        Gable::of(&GableRequest {
            base: inches(base),
            pitch: Pitch::in_whole(rise, 12).unwrap(),
            courses: GableCourses::Reveal(inches(reveal)),
            board_height: inches(reveal + 1),
            division: Division::SIXTEENTH,
        })
        .unwrap()
    }

    #[test]
    fn a_three_four_five_gable_is_exact() {
        // Base 24 ft at 9 in 12: rise 108 in, rake 180 in, area 108 sq ft.
        let gable = gable(288, 9, 6);
        assert_eq!((gable.rise, gable.rake), (inches(108), inches(180)));
        assert_eq!(gable.step, Some(inches(8)));
        assert!((gable.area_m2 - 108.0 * 0.3048 * 0.3048).abs() < 1e-12);
        assert_eq!(gable.courses.len(), 18);
        assert_eq!(gable.courses[17].long, inches(16));
        assert_eq!(gable.courses[17].short, Length::ZERO);
    }

    #[test]
    fn a_bottom_at_the_top_is_left_out() {
        let asked = |bottoms: Vec<Length>| {
            Gable::of(&GableRequest {
                base: inches(24),
                pitch: Pitch::in_whole(12, 12).unwrap(),
                courses: GableCourses::Bottoms(bottoms),
                board_height: inches(7),
                division: Division::SIXTEENTH,
            })
            .unwrap()
        };
        let gable = asked(vec![inches(0), inches(12) - Length::from_nm(1), inches(12)]);
        assert_eq!(gable.courses.len(), 2);
        assert_eq!(gable.courses[1].long, Length::ZERO, "2 nm are rounded down");
        assert_eq!(gable.step, None);
    }

    #[test]
    fn sizes_beyond_the_limits_are_refused() {
        let asked = |rise, reveal| {
            Gable::of(&GableRequest {
                base: Length::LIMIT,
                pitch: Pitch::in_whole(rise, 12).unwrap(),
                courses: GableCourses::Reveal(reveal),
                board_height: inches(7),
                division: Division::SIXTEENTH,
            })
        };
        assert_eq!(asked(12, inches(6)), Err(GableError::TooManyCourses));
        assert_eq!(asked(120_000, inches(6)), Err(GableError::TooLarge));
        assert_eq!(asked(12, Length::ZERO), Err(GableError::Size));
    }

    proptest! {
        /// The rake is the whole number of nanometres nearest to the root, by squares alone.
        #[test]
        fn the_rake_is_the_nearest_root(base in 1_i64..40_000_000_000, rise in 1_u32..40, run in 1_u32..40) {
            let pitch = Pitch::in_whole(rise, run).unwrap();
            let rake = i128::from(pitch.along(&Fraction::half_of(Length::from_nm(base))).unwrap().nm());
            let (base, rise, run) = (i128::from(base), i128::from(rise), i128::from(run));
            // (2 rake run)^2 against base^2 (rise^2 + run^2), half a nanometre to either side.
            let square = base * base * (rise * rise + run * run);
            prop_assert!(((2 * rake - 1) * run).pow(2) <= square);
            prop_assert!(square <= ((2 * rake + 1) * run).pow(2));
        }

        #[test]
        fn each_course_steps_in_alike(base in 50_i64..600, rise in 1_u32..30, reveal in 3_i64..12) {
            let gable = gable(base, rise, reveal);
            let step = gable.step.unwrap();
            let sixteenth = Division::SIXTEENTH.length();
            for pair in gable.courses.windows(2) {
                let shorter = pair[0].long - pair[1].long;
                prop_assert!((shorter - (step + step)).abs() <= sixteenth);
                prop_assert!(pair[0].short <= pair[0].long);
            }
        }
    }
}
