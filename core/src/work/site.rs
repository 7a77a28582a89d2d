use std::sync::{Arc, OnceLock};

use crate::book::{Field, House, Kind, Record};
use crate::measure::Length;
use crate::siding::{Corner, CourseLine, End, Obstacle, Run, WallLine};
use crate::store::Id;
use crate::wall::{Opening, OpeningKind, Outline, Point, Span, Studs};

use super::course::{AsBuiltEntry, Course, merge_as_built};
use super::error::{Result, WorkError};
use super::{Penetration, Work};

/// What follows from a wall's measures, the pole and the rules: everything on it but its boards.
#[derive(Debug)]
pub struct Site {
    /// What the book has of the wall.
    pub record: Arc<Record>,
    /// The windows and doors that are measured, with their ids.
    pub openings: Vec<(Id, Opening)>,
    /// What was taped of its courses as they hang, the lowest course first; of one course the last word holds.
    pub as_built: Vec<AsBuiltEntry>,
    /// The penetrations that have kind, size and place, in their order.
    pub penetrations: Vec<Penetration>,
    outline: Result<Outline>,
    studs: Result<Studs>,
    courses: Result<Vec<Course>>,
    obstacles: Result<Vec<Obstacle>>,
    runs: OnceLock<Vec<(usize, Run)>>,
    /// The lines of its courses on the pole's scale; absent where the pole is not laid out.
    lines: Option<Vec<WallLine>>,
    /// Everything that all of this was made from.
    pub(super) made_from: Vec<Arc<Record>>,
}

/// The things that a site is made from.
pub(super) fn sources(house: &House, wall: &Arc<Record>) -> Vec<Arc<Record>> {
    let kinds = [Kind::BaseStep, Kind::Stud, Kind::Opening, Kind::Abutment, Kind::Penetration, Kind::AsBuilt];
    let on_wall = kinds.into_iter().flat_map(|kind| house.under(wall.id(), kind));
    let above = [Kind::Pole, Kind::Rule].into_iter().flat_map(|kind| house.own(kind));
    house.job().into_iter().chain(above).chain([wall]).chain(on_wall).map(Arc::clone).collect()
}

impl Site {
    pub(super) fn of(work: &Work, wall: &Arc<Record>, made_from: Vec<Arc<Record>>) -> Self {
        let house = work.house();
        let outline = outline_with(wall, house.under(wall.id(), Kind::BaseStep).iter().map(|step| &**step));
        let mut as_built: Vec<AsBuiltEntry> =
            house.under(wall.id(), Kind::AsBuilt).iter().filter_map(AsBuiltEntry::of).collect();
        as_built.sort_by_key(|entry| entry.course);
        let lines = work.lines().map(|pole| {
            merge_as_built(pole, as_built.iter().map(|entry| (entry.course, entry.hung, entry.above.as_slice())))
        });
        let openings =
            house.under(wall.id(), Kind::Opening).iter().filter_map(|record| Some((record.id(), opening(record)?)));
        let openings: Vec<_> = openings.collect();
        let courses = match (&outline, &lines) {
            (Err(error), _) => Err(error.clone()),
            (Ok(outline), Some(lines)) => course_lines(work, wall, lines, outline),
            (Ok(_), None) => Ok(Vec::new()),
        };
        let obstacles = match &outline {
            Ok(outline) => work.lap().map(|lap| obstacles(wall, &openings, outline, lap)),
            Err(error) => Err(error.clone()),
        };
        let penetrations = house.under(wall.id(), Kind::Penetration);
        Self {
            penetrations: penetrations.iter().filter_map(|record| Penetration::of(work, record).ok()).collect(),
            studs: studs(house, wall),
            record: Arc::clone(wall),
            runs: OnceLock::new(),
            outline,
            openings,
            as_built,
            courses,
            obstacles,
            lines,
            made_from,
        }
    }

    /// Its id.
    pub fn id(&self) -> Id {
        self.record.id()
    }

    /// What the crew calls it.
    pub fn name(&self) -> &str {
        self.record.text(Field::Name).unwrap_or_default()
    }

    /// The height of its base line on the pole.
    ///
    /// # Errors
    /// [`WorkError::First`] where nobody said.
    pub fn base(&self) -> Result<Length> {
        need(&self.record, Field::Base)
    }

    /// The outline of its siding, with the steps of its base line.
    ///
    /// # Errors
    /// [`WorkError`] where a measure is lacking, or they do not fit together.
    pub fn outline(&self) -> Result<&Outline> {
        self.outline.as_ref().map_err(Clone::clone)
    }

    /// The corners of its outline.
    ///
    /// # Errors
    /// As [`Site::outline`].
    pub fn corners(&self) -> Result<Vec<Corner>> {
        Ok(self.outline()?.points().iter().map(|point| (point.x, point.y)).collect())
    }

    /// Its studs.
    ///
    /// # Errors
    /// [`WorkError::First`] where nobody said where they stand.
    pub fn studs(&self) -> Result<&Studs> {
        self.studs.as_ref().map_err(Clone::clone)
    }

    /// What splits or shortens its runs: openings, and the trim at its ends.
    ///
    /// # Errors
    /// As [`Site::outline`].
    pub fn obstacles(&self) -> Result<&[Obstacle]> {
        self.obstacles.as_deref().map_err(Clone::clone)
    }

    /// Its courses in its own heights, out of level where they hang or are planned so; none where the pole is not laid
    /// out.
    ///
    /// # Errors
    /// As [`Site::outline`], or where the boards' height is not known.
    pub fn courses(&self) -> Result<&[Course]> {
        self.courses.as_deref().map_err(Clone::clone)
    }

    /// Its runs from trim to trim, course by course.
    ///
    /// # Errors
    /// As [`Site::courses`].
    pub fn runs(&self) -> Result<impl Iterator<Item = (&Course, &Run)>> {
        let (courses, corners, obstacles) = (self.courses()?, self.corners()?, self.obstacles()?);
        let all = || {
            let of = |(at, course): (usize, &Course)| {
                course.runs(&corners, obstacles).into_iter().map(|run| (at, run)).collect::<Vec<_>>()
            };
            courses.iter().enumerate().flat_map(of).collect()
        };
        Ok(self.runs.get_or_init(all).iter().filter_map(|(at, run)| Some((courses.get(*at)?, run))))
    }

    /// Its course lines on the pole's scale, the end included: the pole's own, and from a course that was taped as it
    /// hangs on those that were planned from there. None where the pole is not laid out.
    pub fn lines(&self) -> Option<&[WallLine]> {
        self.lines.as_deref()
    }

    /// Its courses in its own heights as they lie at `x` from its left corner.
    ///
    /// # Errors
    /// As [`Site::courses`].
    pub fn courses_at(&self, work: &Work, x: Length) -> Result<Vec<CourseLine>> {
        let outline = self.outline()?;
        let lines: Vec<Length> =
            self.lines().unwrap_or_default().iter().map(|line| line.at(x, outline.width())).collect();
        courses(work, &self.record, &lines, outline)
    }
}

fn need(record: &Record, field: Field) -> Result<Length> {
    record.length(field).ok_or_else(|| WorkError::first(record.kind, field))
}

/// The outline of a wall's siding with these steps of its base line.
///
/// # Errors
/// [`WorkError`] where a measure is lacking, or they do not fit together.
pub fn outline_with<'a>(wall: &Record, steps: impl Iterator<Item = &'a Record>) -> Result<Outline> {
    let width = need(wall, Field::Width)?;
    let (left, right) = (need(wall, Field::LeftHeight)?, need(wall, Field::RightHeight)?);
    let zero = Length::ZERO;
    let mut points = vec![Point::new(zero, zero)];
    let mut level = zero;
    let mut steps: Vec<(Length, Length)> =
        steps.filter_map(|step| Some((step.length(Field::FromLeft)?, step.length(Field::Rise)?))).collect();
    steps.sort_unstable();
    for (at, rise) in steps {
        points.push(Point::new(at, level));
        level = level + rise;
        points.push(Point::new(at, level));
    }
    points.push(Point::new(width, level));
    points.push(Point::new(width, right));
    if let (Some(x), Some(y)) = (wall.length(Field::PeakFromLeft), wall.length(Field::PeakHeight)) {
        // A peak stands above both ends and between them, else it is no gable.
        if y <= left.max(right) || !x.is_positive() || x >= width {
            return Err(WorkError::Peak);
        }
        points.push(Point::new(x, y));
    }
    points.push(Point::new(zero, left));
    Ok(Outline::new(points)?)
}

fn studs(house: &House, wall: &Record) -> Result<Studs> {
    let mut centres: Vec<Length> =
        house.under(wall.id(), Kind::Stud).iter().filter_map(|stud| stud.length(Field::At)).collect();
    centres.sort_unstable();
    if !centres.is_empty() {
        return Ok(Studs::Measured(centres));
    }
    Ok(Studs::Spaced { first: need(wall, Field::FirstStud)?, spacing: need(wall, Field::StudSpacing)? })
}

/// The sides of an opening at its head, from those at its sill: without readings there they are plumb.
pub fn head_of(record: &Record, left: Length, width: Length) -> Span {
    let from = record.length(Field::HeadFromLeft).unwrap_or(left);
    Span { from, to: from + record.length(Field::HeadWidth).unwrap_or(width) }
}

fn opening(record: &Record) -> Option<Opening> {
    let (left, bottom) = (record.length(Field::FromLeft)?, record.length(Field::FromBase)?);
    let kind = OpeningKind::from_code(record.text(Field::What)?)?;
    let width = record.length(Field::Width)?;
    let (right, top) = (left + width, bottom + record.length(Field::Height)?);
    let head = head_of(record, left, width);
    Some(Opening { kind, left, right, head_left: head.from, head_right: head.to, bottom, top })
}

/// What splits or shortens the runs of a wall.
///
/// Over a head a board of which only the lap would be left is not run through: the strip would hang there alone, hidden
/// by the next course. So an opening reaches `lap` higher here.
fn obstacles(wall: &Record, openings: &[(Id, Opening)], outline: &Outline, lap: Length) -> Vec<Obstacle> {
    // The topmost board reaches past the top until it is ripped, and one that hangs low past the base line: the trim
    // stops them there, too.
    let (zero, width) = (Length::ZERO, outline.width());
    let (bottom, top) = (-Length::LIMIT, Length::LIMIT);
    let trim = |field| wall.length(field).filter(|width| width.is_positive());
    let openings = openings.iter().map(|(_, opening)| {
        let (bottom, top) = (opening.bottom, opening.top + lap);
        let over = opening.sides_at(top);
        let left = End { bottom: opening.left, top: over.from };
        Obstacle { left, right: End { bottom: opening.right, top: over.to }, bottom, top }
    });
    let left = trim(Field::TrimLeft).map(|trim| Obstacle::rectangle((zero, trim), bottom, top));
    let right = trim(Field::TrimRight).map(|trim| Obstacle::rectangle((width - trim, width), bottom, top));
    openings.chain(left).chain(right).collect()
}

/// The courses of a wall in its own heights: one pole serves every wall, so the lines are the pole's, less the base.
///
/// Where the base line lies between two lines, the first board is ripped and keeps its regular top.
fn courses(work: &Work, wall: &Record, lines: &[Length], outline: &Outline) -> Result<Vec<CourseLine>> {
    let (base, height) = (need(wall, Field::Base)?, work.board_height()?);
    let (bottom, top) = (outline.bottom(), outline.top());
    let mut courses: Vec<CourseLine> = Vec::new();
    for (at, pair) in lines.windows(2).enumerate() {
        let [line, next] = pair else { continue };
        let (from, until) = (*line - base, *next - base);
        if until <= bottom || from >= top {
            continue;
        }
        let course = u32::try_from(at + 1).unwrap_or(u32::MAX);
        let from_edge = from.max(bottom);
        courses.push(CourseLine { course, bottom: from_edge, height: from + height - from_edge });
    }
    Ok(courses)
}

/// The courses of a wall on these lines, out of level where they are.
///
/// # Errors
/// As [`Site::courses`].
pub fn course_lines(work: &Work, wall: &Record, lines: &[WallLine], outline: &Outline) -> Result<Vec<Course>> {
    let middles: Vec<Length> = lines.iter().map(|line| line.middle).collect();
    let (base, width) = (need(wall, Field::Base)?, outline.width());
    let course = |middle: CourseLine| {
        let at = usize::try_from(middle.course).ok()?.checked_sub(1)?;
        Some(Course { middle, line: lines.get(at)?.less(base), width })
    };
    Ok(courses(work, wall, &middles, outline)?.into_iter().filter_map(course).collect())
}
