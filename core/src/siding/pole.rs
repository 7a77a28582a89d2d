use thiserror::Error;

use super::fit::{self, Bounds, MarkAim};
use super::mark::{Mark, MarkResult, judge};
use crate::measure::{Division, Length, Rounding};

/// The most courses that a pole may have.
pub const COURSES_LIMIT: usize = 10_000;

/// How the courses share the height.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// The fewest courses that no reveal of which exceeds the greatest one, all alike: the carpentry handbooks' rule.
    Equal,
    /// The same reveal from the bottom (gauge blocks); the last course is what is left.
    Fixed {
        /// The reveal of every course but the last.
        reveal: Length,
    },
    /// Reveals that may differ a little, chosen so that the lines meet the marks as well as can be.
    Fit {
        /// The greatest difference between neighbouring reveals; `None` is no limit.
        change_max: Option<Length>,
    },
}

/// What a story pole is laid out from. Heights are on one scale, whichever the house uses.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PoleRequest {
    /// The bottom edge of the first course.
    pub from: Length,
    /// The end: soffit, frieze or whatever the last course runs up to.
    pub to: Length,
    /// How the courses share the height.
    pub mode: Mode,
    /// The greatest reveal (not asked of [`Mode::Fixed`]).
    pub reveal_max: Length,
    /// The least reveal; `None` is one division.
    pub reveal_min: Option<Length>,
    /// Heights to land on, or to stay clear of.
    pub marks: Vec<Mark>,
    /// The smallest mark used on the tape.
    pub division: Division,
}

/// A story pole: heights above ONE datum, each rounded on its own, so that rounding never adds up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pole {
    /// The bottom edges of courses 2, 3 … and the end, above the start; as many as there are courses.
    pub lines: Vec<Length>,
    /// The visible height of each course from the bottom: differences of the rounded lines.
    pub reveals: Vec<Length>,
    /// Each mark's nearest line and miss, in the order of the request.
    pub marks: Vec<MarkResult>,
    /// The sum of `weight * miss`, in nanometres.
    pub cost: i128,
}

/// Why there is no pole.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PoleError {
    /// The end is not above the start.
    #[error("the end of the pole is not above its start")]
    NoHeight,
    /// A reveal that is asked for is not over zero.
    #[error("a reveal must be over zero")]
    RevealNotPositive,
    /// The least reveal is over the greatest.
    #[error("the least reveal is over the greatest")]
    RevealOrder,
    /// The change between neighbours, or the clearance of a mark, is under zero.
    #[error("a change or a clearance must not be under zero")]
    Negative,
    /// Equal courses under the greatest reveal come out under the least.
    #[error("{courses} equal courses of {reveal:?} fall under the least reveal")]
    UnderLeast {
        /// The number of courses that the greatest reveal asks for.
        courses: usize,
        /// The reveal that they would have, to the nearest nanometre.
        reveal: Length,
    },
    /// No reveals within the limits add up to the height.
    #[error("no reveals within the limits add up to the height")]
    NoLayout,
    /// More than [`COURSES_LIMIT`] courses.
    #[error("more than {COURSES_LIMIT} courses")]
    TooManyCourses,
    /// The search for the best reveals would take more room than is allowed: height and range of reveals against the
    /// division.
    #[error("too many heights and reveals to choose from at this division")]
    TooLarge,
}

impl Pole {
    /// The last reveal, under the end.
    pub fn top_strip(&self) -> Length {
        self.reveals.last().copied().unwrap_or(Length::ZERO)
    }

    /// The pole's lines and reveals for a request.
    ///
    /// # Errors
    /// [`PoleError`], by what is wrong with the request or what it asks.
    pub fn lay_out(request: &PoleRequest) -> Result<Self, PoleError> {
        request.check()?;
        let span = request.to.checked_sub(request.from).ok_or(PoleError::TooLarge)?;
        let end = steps_down(request.division, span).ok_or(PoleError::TooLarge)?;
        let counts = match request.mode {
            Mode::Equal => request.equal(span, end)?,
            Mode::Fixed { reveal } => request.fixed(reveal, end)?,
            Mode::Fit { change_max } => return request.fit(change_max, end),
        };
        let lines: Option<Vec<Length>> = counts.into_iter().map(|count| request.division.multiple(count)).collect();
        Ok(request.pole(lines.ok_or(PoleError::TooLarge)?))
    }
}

impl PoleRequest {
    fn check(&self) -> Result<(), PoleError> {
        if self.to <= self.from {
            return Err(PoleError::NoHeight);
        }
        let fixed = match self.mode {
            Mode::Fixed { reveal } => Some(reveal),
            _ => None,
        };
        if [Some(self.reveal_max), self.reveal_min, fixed].into_iter().flatten().any(|reveal| !reveal.is_positive()) {
            return Err(PoleError::RevealNotPositive);
        }
        if self.reveal_min.is_some_and(|least| least > self.reveal_max) {
            return Err(PoleError::RevealOrder);
        }
        let change = match self.mode {
            Mode::Fit { change_max } => change_max,
            _ => None,
        };
        let clears = self.marks.iter().filter_map(|mark| match mark.want {
            super::Want::Clear(clear) => Some(clear),
            super::Want::Land => None,
        });
        if change.into_iter().chain(clears).any(Length::is_negative) {
            return Err(PoleError::Negative);
        }
        Ok(())
    }

    /// Lines at `k * span / courses`, in divisions: each line nearest, the end down.
    fn equal(&self, span: Length, end: i64) -> Result<Vec<i64>, PoleError> {
        let reveal_max = self.reveal_max.nm();
        let courses = span.nm() / reveal_max + i64::from(span.nm() % reveal_max != 0);
        if usize::try_from(courses).is_ok_and(|courses| courses > COURSES_LIMIT) {
            return Err(PoleError::TooManyCourses);
        }
        let at = |k: i64, way| self.division.count_of(span.wide() * i128::from(k), i128::from(courses), way);
        let under = match self.reveal_min {
            Some(least) => span.wide() < least.wide() * i128::from(courses),
            None => at(1, Rounding::Down).is_none_or(|count| count < 1),
        };
        if under {
            let reveal = span.scaled(1, courses).unwrap_or(span);
            return Err(PoleError::UnderLeast { courses: usize::try_from(courses).unwrap_or(usize::MAX), reveal });
        }
        // A reveal of less than one division (only where that is asked for) could round past the end.
        let inner: Option<Vec<i64>> =
            (1..courses).map(|k| at(k, Rounding::Nearest).map(|count| count.min(end))).collect();
        let mut lines = inner.ok_or(PoleError::TooLarge)?;
        lines.push(end);
        Ok(lines)
    }

    /// Lines at `k * reveal` under the end, in divisions, and the end.
    fn fixed(&self, reveal: Length, end: i64) -> Result<Vec<i64>, PoleError> {
        let mut lines = Vec::new();
        for k in 1_i128.. {
            let line = self.division.count_of(reveal.wide() * k, 1, Rounding::Nearest).ok_or(PoleError::TooLarge)?;
            if line >= end {
                break;
            }
            lines.push(line);
            if lines.len() >= COURSES_LIMIT {
                return Err(PoleError::TooManyCourses);
            }
        }
        lines.push(end);
        Ok(lines)
    }

    fn fit(&self, change_max: Option<Length>, end: i64) -> Result<Pole, PoleError> {
        let down = |length: Length| steps_down(self.division, length).ok_or(PoleError::TooLarge);
        let least = match self.reveal_min {
            Some(length) => steps_up(self.division, length).ok_or(PoleError::TooLarge)?,
            None => 1,
        };
        let bounds = Bounds::new(end, least, down(self.reveal_max)?, change_max.map(down).transpose()?)?;
        let targets: Option<Vec<MarkAim>> = self
            .marks
            .iter()
            .map(|mark| {
                let at = mark.at.checked_sub(self.from)?.nm();
                Some(MarkAim { at, want: mark.want, weight: i64::from(mark.weight) })
            })
            .collect();
        let heights: Option<Vec<i64>> = (0..=end).map(|step| self.division.multiple(step).map(Length::nm)).collect();
        let (Some(targets), Some(heights)) = (targets, heights) else { return Err(PoleError::TooLarge) };
        let steps = fit::best(&bounds, &heights, &targets)?;
        if steps.len() > COURSES_LIMIT {
            return Err(PoleError::TooManyCourses);
        }
        let lines = steps.into_iter().filter_map(|step| heights.get(step)).map(|&nm| Length::from_nm(nm)).collect();
        Ok(self.pole(lines))
    }

    fn pole(&self, lines: Vec<Length>) -> Pole {
        let below = std::iter::once(Length::ZERO).chain(lines.iter().copied());
        let reveals = lines.iter().zip(below).map(|(&line, below)| line - below).collect();
        let (marks, cost) = judge(&self.marks, self.from, &lines);
        Pole { lines, reveals, marks, cost }
    }
}

/// Whole divisions in a length; one that stands on a mark, to the nanometre, is that many.
fn steps_down(division: Division, length: Length) -> Option<i64> {
    division.multiple_at(length).or_else(|| division.count(length, Rounding::Down))
}

/// Whole divisions that reach a length; one that stands on a mark, to the nanometre, is that many.
fn steps_up(division: Division, length: Length) -> Option<i64> {
    division.multiple_at(length).or_else(|| division.count(length, Rounding::Up))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::Want;
    use super::*;

    fn inches(whole: i64, sixteenths: i64) -> Length {
        Length::from_inches_64(whole, 4 * sixteenths)
    }

    fn request(mode: Mode, to: Length, reveal_max: Length) -> PoleRequest {
        PoleRequest {
            from: Length::ZERO,
            to,
            mode,
            reveal_max,
            reveal_min: None,
            marks: Vec::new(),
            division: Division::SIXTEENTH,
        }
    }

    #[test]
    fn equal_lines_are_rounded_each_on_its_own() {
        // 100 in in 17 courses of 5 15/17 in: line 3 is at 17 11/17 = 17.647 in, nearest 17 10/16.
        let pole = Pole::lay_out(&request(Mode::Equal, inches(100, 0), inches(6, 0))).unwrap();
        assert_eq!(pole.lines.len(), 17);
        assert_eq!(pole.lines[0], inches(5, 14));
        assert_eq!(pole.lines[2], inches(17, 10));
        assert_eq!(pole.lines[16], inches(100, 0));
        assert_eq!(pole.reveals[2], inches(5, 14));
        assert_eq!(pole.top_strip(), inches(5, 14));
    }

    #[test]
    fn the_end_rounds_down_in_every_mode() {
        let to = inches(12, 1) + Length::from_nm(1_500_000);
        for mode in [Mode::Equal, Mode::Fixed { reveal: inches(6, 0) }, Mode::Fit { change_max: None }] {
            let pole = Pole::lay_out(&request(mode, to, inches(7, 0))).unwrap();
            assert_eq!(pole.lines.last(), Some(&inches(12, 1)), "{mode:?}");
        }
    }

    #[test]
    fn a_greatest_reveal_that_just_divides_takes_no_more_courses() {
        let exact = Pole::lay_out(&request(Mode::Equal, inches(12, 0), inches(6, 0))).unwrap();
        assert_eq!(exact.reveals, [inches(6, 0); 2]);
        let over = Pole::lay_out(&request(Mode::Equal, inches(12, 0) + Length::from_nm(1), inches(6, 0))).unwrap();
        assert_eq!(over.reveals.len(), 3);
    }

    #[test]
    fn equal_courses_under_the_least_reveal_are_refused() {
        let mut asked = request(Mode::Equal, inches(13, 0), inches(12, 0));
        asked.reveal_min = Some(inches(6, 8));
        assert_eq!(Pole::lay_out(&asked).unwrap().reveals, [inches(6, 8); 2]);
        asked.reveal_min = Some(inches(6, 8) + Length::from_nm(1));
        assert_eq!(Pole::lay_out(&asked), Err(PoleError::UnderLeast { courses: 2, reveal: inches(6, 8) }));
    }

    #[test]
    fn fixed_leaves_out_a_line_at_the_end() {
        let pole =
            |to| Pole::lay_out(&request(Mode::Fixed { reveal: inches(6, 0) }, to, inches(1, 0))).unwrap().reveals;
        assert_eq!(pole(inches(12, 0)), [inches(6, 0); 2]);
        assert_eq!(pole(inches(12, 1)), [inches(6, 0), inches(6, 0), inches(0, 1)]);
        assert_eq!(pole(inches(5, 0)), [inches(5, 0)]);
    }

    #[test]
    fn the_nearest_line_is_the_lower_of_two_and_the_start_counts() {
        let mut asked = request(Mode::Fixed { reveal: inches(6, 0) }, inches(12, 0), inches(6, 0));
        asked.from = inches(100, 0);
        asked.to = inches(112, 0);
        let mark = |at, want| Mark { name: String::from("m"), at, want, weight: 2 };
        asked.marks = vec![
            mark(inches(103, 0), Want::Land),
            mark(inches(109, 1), Want::Land),
            mark(inches(99, 0), Want::Clear(inches(3, 0))),
            mark(inches(120, 0), Want::Clear(inches(3, 0))),
        ];
        let pole = Pole::lay_out(&asked).unwrap();
        let found: Vec<_> = pole.marks.iter().map(|m| (m.line, m.miss)).collect();
        assert_eq!(
            found,
            [
                (Length::ZERO, inches(3, 0)),
                (inches(12, 0), inches(2, 15)),
                (Length::ZERO, inches(2, 0)),
                (inches(12, 0), Length::ZERO),
            ]
        );
        assert_eq!(pole.cost, 2 * (inches(7, 15)).wide());
    }

    #[test]
    fn sizes_beyond_the_limits_are_refused() {
        let tall = Length::LIMIT;
        for mode in [Mode::Equal, Mode::Fixed { reveal: inches(6, 0) }, Mode::Fit { change_max: None }] {
            assert_eq!(Pole::lay_out(&request(mode, tall, inches(6, 0))), Err(PoleError::TooManyCourses), "{mode:?}");
        }
        let any = Mode::Fit { change_max: None };
        assert_eq!(Pole::lay_out(&request(any, tall, tall)), Err(PoleError::TooLarge));
        // 10,000 courses are allowed, one more is not.
        for (courses, allowed) in [(10_000, true), (10_001, false)] {
            let pole = Pole::lay_out(&request(Mode::Equal, inches(6 * courses, 0), inches(6, 0)));
            assert_eq!(pole.is_ok(), allowed);
        }
    }

    proptest! {
        #[test]
        fn reveals_add_up_to_the_end(
            to in 1_i64..40_000_000_000,
            most in 20_000_000_i64..400_000_000,
            fixed in 20_000_000_i64..400_000_000,
        ) {
            let to = Length::from_nm(to);
            for mode in [Mode::Equal, Mode::Fixed { reveal: Length::from_nm(fixed) }] {
                match Pole::lay_out(&request(mode, to, Length::from_nm(most))) {
                    Ok(pole) => {
                        let sum = Length::checked_sum(pole.reveals.iter().copied()).unwrap();
                        prop_assert_eq!(sum, Division::SIXTEENTH.round(to, Rounding::Down));
                        prop_assert!(pole.reveals.iter().all(|reveal| !reveal.is_negative()));
                        prop_assert_eq!(pole.reveals.len(), pole.lines.len());
                    }
                    Err(error) => prop_assert!(matches!(error, PoleError::UnderLeast { .. }), "{}", error),
                }
            }
        }
    }
}
