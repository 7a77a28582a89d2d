use num_integer::Integer;

use crate::measure::{Division, Length, Rounding};

/// Where a board of a course lies on the wall: it covers `bottom..bottom + height`, its lap included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CourseLine {
    /// The course's number from the bottom, from 1.
    pub course: u32,
    /// The board's bottom edge above the base line.
    pub bottom: Length,
    /// The board's height.
    pub height: Length,
}

/// What a board meets on the wall: an opening with its trim, or a block. Seen from outside, `x` to the right, `y` up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Obstacle {
    /// Its left side, at its own lower and upper edge.
    pub left: End,
    /// Its right side.
    pub right: End,
    /// Its lower edge.
    pub bottom: Length,
    /// Its upper edge.
    pub top: Length,
}

/// An end or a side at its bottom and top: they differ where the trim is out of plumb, or at a rake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct End {
    /// Its `x` at the bottom edge.
    pub bottom: Length,
    /// Its `x` at the top edge.
    pub top: Length,
}

/// A course's way from trim to trim, before the end gaps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Run {
    /// The course's number from the bottom.
    pub course: u32,
    /// The left end.
    pub left: End,
    /// The right end.
    pub right: End,
}

/// A corner of the wall's outline.
pub type Corner = (Length, Length);

impl End {
    /// A plumb end.
    pub const fn plumb(x: Length) -> Self {
        Self { bottom: x, top: x }
    }

    /// Its leftmost point.
    pub fn least(self) -> Length {
        self.bottom.min(self.top)
    }

    /// Its rightmost point.
    pub fn most(self) -> Length {
        self.bottom.max(self.top)
    }

    /// How far the top edge ends to the right of the bottom edge: the bevel to mark over the board's height.
    pub fn bevel(self) -> Length {
        self.top - self.bottom
    }
}

impl Run {
    /// The leftmost point of the run.
    pub fn from(&self) -> Length {
        self.left.least()
    }

    /// The rightmost point of the run.
    pub fn to(&self) -> Length {
        self.right.bottom.max(self.right.top)
    }

    /// The lengths to cut at the board's bottom and top edge, where one board makes the run: the measured opening less
    /// both end gaps, each rounded down and never under zero.
    pub fn cut_lengths(&self, end_gap: Length, division: Division) -> (Length, Length) {
        let cut = |left: Length, right: Length| {
            division.round((right - left - end_gap - end_gap).max(Length::ZERO), Rounding::Down)
        };
        (cut(self.left.bottom, self.right.bottom), cut(self.left.top, self.right.top))
    }
}

impl Obstacle {
    /// A rectangle.
    pub const fn rectangle(x: (Length, Length), bottom: Length, top: Length) -> Self {
        Self { left: End::plumb(x.0), right: End::plumb(x.1), bottom, top }
    }

    /// The ends that it leaves of a board between these heights, at its left and at its right; to the nanometre outside.
    fn ends(&self, bottom: Length, top: Length) -> (End, End) {
        let side = |end: End, right: bool| {
            let line = ((end.bottom, self.bottom), (end.top, self.top));
            let at = |y| if end.bottom == end.top { end.top } else { crossing(line, y, right) };
            End { bottom: at(bottom), top: at(top) }
        };
        (side(self.left, false), side(self.right, true))
    }
}

impl CourseLine {
    /// The board's top edge.
    pub fn top(&self) -> Length {
        self.bottom + self.height
    }

    /// The course's runs on a wall, from left to right.
    ///
    /// A run goes as far as any part of the board lies inside the outline, a simple polygon of any shape: over a step in
    /// the base line the board is ripped, at a rake its end is cut along the rake. An obstacle parts it only where it
    /// covers the board's whole height; at a head or a sill the board runs on and is notched.
    pub fn runs(&self, outline: &[Corner], obstacles: &[Obstacle]) -> Vec<Run> {
        let mut runs = Vec::new();
        for whole in self.reaches(outline) {
            let mut blocked: Vec<(End, End)> = obstacles
                .iter()
                .filter(|o| o.bottom <= self.bottom && o.top >= self.top())
                .map(|o| o.ends(self.bottom, self.top()))
                .filter(|(l, r)| l.least() < r.most() && r.most() > whole.from() && l.least() < whole.to())
                .collect();
            blocked.sort_by_key(|(l, r)| (l.least(), r.least()));
            let mut left = whole.left;
            for (its_left, its_right) in blocked {
                if its_left.bottom > left.bottom || its_left.top > left.top || its_left.least() > left.least() {
                    runs.push(Run { course: self.course, left, right: its_left });
                }
                // A second obstacle inside the first one does not move the end back.
                if its_right.most() > left.most() || left == whole.left {
                    left = its_right;
                }
            }
            if left.least() < whole.to() {
                runs.push(Run { course: self.course, left, right: whole.right });
            }
        }
        runs
    }

    /// The runs that the outline alone makes.
    fn reaches(&self, outline: &[Corner]) -> Vec<Run> {
        // Between two levels that have no corner between them, the outline's sides are straight.
        let mut levels = vec![self.bottom, self.top()];
        levels.extend(outline.iter().map(|corner| corner.1).filter(|&y| self.bottom < y && y < self.top()));
        levels.sort();
        levels.dedup();
        let mut parts: Vec<Part> = Vec::new();
        for (low, high) in levels.iter().zip(levels.iter().skip(1)) {
            parts.extend(slab(outline, *low, *high));
        }
        parts.sort_by_key(Part::from);
        let mut groups: Vec<Vec<Part>> = Vec::new();
        let mut reach = Length::ZERO;
        for part in parts {
            match groups.last_mut() {
                Some(group) if part.from() <= reach => {
                    reach = reach.max(part.to());
                    group.push(part);
                }
                _ => {
                    reach = part.to();
                    groups.push(vec![part]);
                }
            }
        }
        groups.iter().filter_map(|group| self.run_of(group)).collect()
    }

    /// One run of parts that hang together: its ends as the outline cuts the board's two edges, or its farthest points.
    fn run_of(&self, parts: &[Part]) -> Option<Run> {
        let from = parts.iter().map(Part::from).min()?;
        let to = parts.iter().map(Part::to).max()?;
        let edge = |at: Length| {
            let on = parts.iter().filter_map(move |part| {
                let bottom = (part.low == at).then_some((part.left.bottom, part.right.bottom));
                bottom.or_else(|| (part.high == at).then_some((part.left.top, part.right.top)))
            });
            let left = on.clone().map(|(left, _)| left).min();
            let right = on.map(|(_, right)| right).max();
            left.zip(right)
        };
        let lower = edge(self.bottom);
        let upper = edge(self.top());
        // A board under a step has no bottom edge of its own, one under a gable's tip no top edge.
        let peak = || {
            let top = parts.iter().max_by_key(|part| part.high)?;
            Some((top.left.top, top.right.top))
        };
        let foot = || {
            let low = parts.iter().min_by_key(|part| part.low)?;
            Some((low.left.bottom, low.right.bottom))
        };
        let (lower, upper) = (lower.or_else(foot)?, upper.or_else(peak)?);
        let mut left = End { bottom: lower.0, top: upper.0 };
        let mut right = End { bottom: lower.1, top: upper.1 };
        // Where neither edge reaches as far as the board does (a step, or a bay between), that end is cut plumb.
        if left.bottom.min(left.top) > from {
            left = End::plumb(from);
        }
        if right.bottom.max(right.top) < to {
            right = End::plumb(to);
        }
        Some(Run { course: self.course, left, right })
    }
}

/// A piece of the outline between two levels: straight on both sides.
#[derive(Clone, Copy, Debug)]
struct Part {
    low: Length,
    high: Length,
    left: End,
    right: End,
}

impl Part {
    fn from(&self) -> Length {
        self.left.bottom.min(self.left.top)
    }

    fn to(&self) -> Length {
        self.right.bottom.max(self.right.top)
    }
}

/// The parts of the outline in `low..high`, where no corner lies between the two.
fn slab(outline: &[Corner], low: Length, high: Length) -> Vec<Part> {
    let next = outline.iter().cycle().skip(1);
    let mut sides: Vec<(Corner, Corner)> = outline
        .iter()
        .zip(next)
        .map(|(&a, &b)| if a.1 <= b.1 { (a, b) } else { (b, a) })
        .filter(|(a, b)| a.1 <= low && b.1 >= high && a.1 < b.1)
        .collect();
    // Sides do not cross inside the slab; twice the middle orders those that meet at one of its levels.
    sides.sort_by_key(|side| {
        let (l, r) = (crossing(*side, low, false), crossing(*side, high, false));
        l.wide() + r.wide()
    });
    sides
        .as_chunks::<2>()
        .0
        .iter()
        .map(|[l, r]| Part {
            low,
            high,
            left: End { bottom: crossing(*l, low, true), top: crossing(*l, high, true) },
            right: End { bottom: crossing(*r, low, false), top: crossing(*r, high, false) },
        })
        .collect()
}

/// Where a rising side crosses a level, to the nanometre inside: rounded up on the left, down on the right.
fn crossing((a, b): (Corner, Corner), y: Length, up: bool) -> Length {
    let (rise, run) = ((b.1 - a.1).wide(), (b.0 - a.0).wide());
    if rise == 0 {
        return a.0;
    }
    let climbed = (y - a.1).wide() * run;
    let over = if up { Integer::div_ceil(&climbed, &rise) } else { Integer::div_floor(&climbed, &rise) };
    Length::from_wide(a.0.wide() + over).unwrap_or(a.0)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn inch(x: i64) -> Length {
        Length::from_inches(x)
    }

    fn outline(corners: &[(i64, i64)]) -> Vec<Corner> {
        corners.iter().map(|&(x, y)| (inch(x), inch(y))).collect()
    }

    fn course(bottom: i64, height: i64) -> CourseLine {
        CourseLine { course: 1, bottom: inch(bottom), height: inch(height) }
    }

    fn window(left: i64, right: i64, bottom: i64, top: i64) -> Obstacle {
        Obstacle::rectangle((inch(left), inch(right)), inch(bottom), inch(top))
    }

    fn ends(runs: &[Run]) -> Vec<(Length, Length)> {
        runs.iter().map(|run| (run.from(), run.to())).collect()
    }

    #[test]
    fn a_window_parts_the_courses_beside_it_and_not_those_at_its_head_and_sill() {
        let wall = outline(&[(0, 0), (240, 0), (240, 100), (0, 100)]);
        let openings = [window(60, 100, 30, 80)];
        let runs = |bottom| ends(&course(bottom, 7).runs(&wall, &openings));
        assert_eq!(runs(24), [(inch(0), inch(240))], "its top edge is notched at the sill");
        assert_eq!(runs(30), [(inch(0), inch(60)), (inch(100), inch(240))]);
        assert_eq!(runs(73), [(inch(0), inch(60)), (inch(100), inch(240))]);
        assert_eq!(runs(74), [(inch(0), inch(240))], "its bottom edge is notched at the head");
    }

    #[test]
    fn a_leaning_window_bevels_the_boards_beside_it() {
        // By hand: the left side runs from 100 in at the sill (28 in) to 100 1/2 in at the head (76 in), 1/96 an inch; a board
        // from 40 to 48 in meets it at 100 1/8 and, 8/96 in further, at 100 5/24 in, rounded to the nanometre outside. The
        // right side, from 141 to 140 in, is met at 140 3/4 and 140 7/12 in.
        let wall = outline(&[(0, 0), (240, 0), (240, 100), (0, 100)]);
        let leaning = Obstacle {
            left: End { bottom: inch(100), top: Length::from_inches_64(100, 32) },
            right: End { bottom: inch(141), top: inch(140) },
            bottom: inch(28),
            top: inch(76),
        };
        let runs = course(40, 8).runs(&wall, &[leaning]);
        let [left, right] = runs[..] else { panic!("{runs:?}") };
        assert_eq!(left.right, End { bottom: Length::from_inches_64(100, 8), top: Length::from_nm(2_545_291_666) });
        let top = Length::from_nm(3_570_816_667);
        assert_eq!(right.left, End { bottom: Length::from_inches_64(140, 48), top });
        assert_eq!((left.left, right.right), (End::plumb(inch(0)), End::plumb(inch(240))));
        assert_eq!(
            (left.to(), right.from()),
            (Length::from_nm(2_545_291_666), top),
            "a board reaches as far as any edge"
        );
        assert_eq!(course(20, 8).runs(&wall, &[leaning]).len(), 1);
    }

    #[test]
    fn openings_that_touch_overlap_or_stand_at_the_corner_leave_no_empty_run() {
        let wall = outline(&[(0, 0), (240, 0), (240, 100), (0, 100)]);
        let runs = |openings: &[Obstacle]| ends(&course(10, 7).runs(&wall, openings));
        assert_eq!(runs(&[window(-5, 40, 0, 90), window(40, 90, 0, 90)]), [(inch(90), inch(240))]);
        assert_eq!(runs(&[window(20, 90, 0, 90), window(30, 40, 0, 90)]), [(inch(0), inch(20)), (inch(90), inch(240))]);
        assert_eq!(runs(&[window(200, 240, 0, 90)]), [(inch(0), inch(200))]);
        assert_eq!(runs(&[window(-1, 241, 0, 90)]), []);
    }

    #[test]
    fn a_rake_cuts_both_ends_of_a_gable_course() {
        let gable = outline(&[(0, 0), (240, 0), (120, 60)]);
        let runs = course(6, 7).runs(&gable, &[]);
        assert_eq!(
            runs,
            [Run {
                course: 1,
                left: End { bottom: inch(12), top: inch(26) },
                right: End { bottom: inch(228), top: inch(214) }
            }]
        );
        assert_eq!(runs[0].left.bevel(), inch(14));
        assert_eq!(runs[0].cut_lengths(Length::ZERO, Division::SIXTEENTH), (inch(216), inch(188)));
        // Under the tip the top edge is a point.
        let tip = course(56, 7).runs(&gable, &[]);
        assert_eq!(tip[0].left, End { bottom: inch(112), top: inch(120) });
        assert_eq!(tip[0].cut_lengths(Length::ZERO, Division::SIXTEENTH), (inch(16), Length::ZERO));
    }

    #[test]
    fn a_stepped_base_line_is_run_over() {
        let wall = outline(&[(0, 0), (100, 0), (100, 12), (240, 12), (240, 100), (0, 100)]);
        assert_eq!(ends(&course(0, 7).runs(&wall, &[])), [(inch(0), inch(100))]);
        assert_eq!(ends(&course(6, 7).runs(&wall, &[])), [(inch(0), inch(240))], "ripped over the step");
        assert_eq!(ends(&course(12, 7).runs(&wall, &[])), [(inch(0), inch(240))]);
    }

    #[test]
    fn a_course_outside_the_wall_has_no_run() {
        let wall = outline(&[(0, 0), (100, 0), (100, 50), (0, 50)]);
        assert_eq!(course(50, 7).runs(&wall, &[]), []);
        assert_eq!(course(-7, 7).runs(&wall, &[]), []);
        assert_eq!(course(3, 7).runs(&[], &[]), []);
    }

    #[test]
    fn lengths_out_of_plumb_are_rounded_down_edge_by_edge() {
        let run = Run {
            course: 1,
            left: End { bottom: inch(0), top: Length::from_inches_64(0, 10) },
            right: End::plumb(inch(100)),
        };
        let (bottom, top) = run.cut_lengths(Length::from_inches_64(0, 8), Division::SIXTEENTH);
        assert_eq!(bottom, Length::from_inches_64(99, 48));
        assert_eq!(top, Length::from_inches_64(99, 36), "99 38/64 in, down to the sixteenth");
    }

    proptest! {
        /// Runs and obstacles together cover the wall once: lengths add up, and no run overlaps another.
        #[test]
        fn runs_and_openings_share_the_wall(spans in proptest::collection::vec((0_i64..200, 1_i64..60), 0..5)) {
            let wall = outline(&[(0, 0), (240, 0), (240, 100), (0, 100)]);
            let openings: Vec<Obstacle> = spans.iter().map(|&(l, w)| window(l, l + w, 0, 90)).collect();
            let runs = course(10, 7).runs(&wall, &openings);
            for x in 0..240 {
                let middle = inch(x) + inch(1).half();
                let inside = runs.iter().filter(|run| run.from() < middle && middle < run.to()).count();
                let blocked = openings.iter().any(|o| o.left.bottom < middle && middle < o.right.bottom);
                prop_assert_eq!(inside, usize::from(!blocked), "at {}", x);
            }
        }
    }
}
