use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use crate::board::{BoardShape, Obstruction, ObstructionGaps, OutlineGaps, ShapeLimits};
use crate::book::{Field, House, Kind, Record};
use crate::measure::Length;
use crate::rules::keys;
use crate::siding::{CourseLine, Run, WallLine};
use crate::store::Id;
use crate::wall::{Opening, OpeningKind, Outline, Point, Span, Studs};

use super::around::{Around, abutments, along_roofs, trims};
use super::course::{AsBuiltEntry, Course, merge_as_built};
use super::error::{Result, WorkError};
use super::head_flashing::{gap_over, over_opening};
use super::placement::Placement;
use super::wall_shapes::{Neighbours, TapedAround, WallShapes};
use super::{Penetration, Work};

/// What follows from a wall's measures, the pole and the rules: everything on it but its boards.
#[derive(Debug)]
pub struct WallSite {
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
    shapes: Result<WallShapes>,
    course_shapes: OnceLock<Result<Vec<Vec<BoardShape>>>>,
    runs: OnceLock<Result<Vec<(usize, Run)>>>,
    /// The shapes of its boards by what they follow from, as far as anybody asked for them.
    board_shapes: Mutex<BTreeMap<PlacedBoard, Arc<[BoardShape]>>>,
    /// The lines of its courses on the pole's scale; absent where the pole is not laid out.
    lines: Option<Vec<WallLine>>,
    /// Everything that all of this was made from.
    pub(super) made_from: Vec<Arc<Record>>,
}

/// What the shape of a board follows from on its wall: its course, where it lies and its full height.
type PlacedBoard = (Option<i64>, Placement, Length);

/// The things that a site is made from.
pub(super) fn sources(house: &House, wall: &Arc<Record>) -> Vec<Arc<Record>> {
    let kinds = [Kind::BaseStep, Kind::Stud, Kind::Opening, Kind::Abutment, Kind::Penetration, Kind::AsBuilt];
    let on_wall = kinds.into_iter().flat_map(|kind| house.under(wall.id(), kind));
    let above = [Kind::Pole, Kind::Rule].into_iter().flat_map(|kind| house.own(kind));
    house.job().into_iter().chain(above).chain([wall]).chain(on_wall).map(Arc::clone).collect()
}

impl WallSite {
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
        let penetrations = house.under(wall.id(), Kind::Penetration);
        let penetrations: Vec<Penetration> =
            penetrations.iter().filter_map(|record| Penetration::of(work, record).ok()).collect();
        let shapes = match &outline {
            Ok(outline) => wall_shapes(work, wall, outline, (&openings, &penetrations)),
            Err(error) => Err(error.clone()),
        };
        Self {
            penetrations,
            studs: studs(house, wall),
            record: Arc::clone(wall),
            course_shapes: OnceLock::new(),
            runs: OnceLock::new(),
            board_shapes: Mutex::default(),
            outline,
            openings,
            as_built,
            courses,
            shapes,
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

    /// Its studs.
    ///
    /// # Errors
    /// [`WorkError::First`] where nobody said where they stand.
    pub fn studs(&self) -> Result<&Studs> {
        self.studs.as_ref().map_err(Clone::clone)
    }

    /// Where its boards may be.
    ///
    /// # Errors
    /// As [`WallSite::outline`], or where the boards' height is not known.
    pub fn shapes(&self) -> Result<&WallShapes> {
        self.shapes.as_ref().map_err(Clone::clone)
    }

    /// Its courses in its own heights, out of level where they hang or are planned so; none where the pole is not laid
    /// out.
    ///
    /// # Errors
    /// As [`WallSite::outline`], or where the boards' height is not known.
    pub fn courses(&self) -> Result<&[Course]> {
        self.courses.as_deref().map_err(Clone::clone)
    }

    /// What its boards would be without joints: for each of its courses from left to right.
    ///
    /// # Errors
    /// As [`WallSite::shapes`].
    pub fn course_shapes(&self) -> Result<&[Vec<BoardShape>]> {
        let all = || {
            let (shapes, courses) = (self.shapes()?, self.courses()?);
            let of = |(at, course): (usize, &Course)| shapes.course(course, Neighbours::at(courses, at));
            courses.iter().enumerate().map(of).collect()
        };
        self.course_shapes.get_or_init(all).as_deref().map_err(Clone::clone)
    }

    /// Its runs, course by course: from end gap to end gap of each board that would be without joints.
    ///
    /// # Errors
    /// As [`WallSite::courses`].
    pub fn runs(&self) -> Result<impl Iterator<Item = (&Course, &Run)>> {
        let courses = self.courses()?;
        let all = || {
            let shapes = self.shapes()?;
            let of = |(at, (course, boards)): (usize, (&Course, &Vec<BoardShape>))| {
                let course = course.middle.course;
                boards.iter().map(|board| (at, shapes.run(course, board))).collect::<Vec<_>>()
            };
            Ok(courses.iter().zip(self.course_shapes()?).enumerate().flat_map(of).collect())
        };
        let runs = self.runs.get_or_init(all).as_deref().map_err(Clone::clone)?;
        Ok(runs.iter().filter_map(|(at, run)| Some((courses.get(*at)?, run))))
    }

    /// The shapes of a board by its course, place and full height: more than one where it is cut right through, none where
    /// all of it is hidden or off the wall.
    ///
    /// # Errors
    /// As [`WallSite::shapes`].
    pub fn board_shapes(&self, course: Option<i64>, place: Placement, height: Length) -> Result<Arc<[BoardShape]>> {
        let known = || self.board_shapes.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(shapes) = known().get(&(course, place, height)) {
            return Ok(Arc::clone(shapes));
        }
        let shapes: Arc<[BoardShape]> = self.taped_shapes(course, (place, height), &[])?.into();
        known().insert((course, place, height), Arc::clone(&shapes));
        Ok(shapes)
    }

    /// The same with what the tape read of what it goes round.
    ///
    /// # Errors
    /// As [`WallSite::shapes`].
    pub(super) fn taped_shapes(
        &self,
        course: Option<i64>,
        (place, height): (Placement, Length),
        taped: &[TapedAround],
    ) -> Result<Vec<BoardShape>> {
        let (shapes, courses) = (self.shapes()?, self.courses()?);
        let at = courses.iter().position(|own| course == Some(i64::from(own.middle.course)));
        let neighbours = at.map_or(Neighbours { below: None, above: None }, |at| Neighbours::at(courses, at));
        shapes.board((place, height), at.and_then(|at| courses.get(at)), neighbours, taped)
    }

    /// Its course lines on the pole's scale, the end included: the pole's own, and from a course that was taped as it
    /// hangs on those that were planned from there. None where the pole is not laid out.
    pub fn lines(&self) -> Option<&[WallLine]> {
        self.lines.as_deref()
    }

    /// Its courses in its own heights as they lie at `x` from its left corner.
    ///
    /// # Errors
    /// As [`WallSite::courses`].
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
    // Where an end runs out to nothing, its two corners are one.
    points.dedup();
    if points.first() == points.last() {
        points.pop();
    }
    Ok(Outline::new(points)?)
}

/// Where the boards of a wall may be.
fn wall_shapes(
    work: &Work,
    wall: &Record,
    outline: &Outline,
    (openings, penetrations): (&[(Id, Opening)], &[Penetration]),
) -> Result<WallShapes> {
    let rule = |key: &str| work.rules().get_length(key);
    let end_gap = rule(keys::GAP_TRIM)?;
    // The base line is where the first boards' edges lie.
    let gaps = OutlineGaps { side: end_gap, rake: end_gap, top: end_gap, base: Length::ZERO };
    let outline = &along_roofs(work.house(), wall, outline, work.rules(), end_gap)?;
    let mut around = trims(wall, outline, end_gap);
    for (id, opening) in openings {
        let head = over_opening(work.rules(), opening, work.block_thickness()?)?;
        let head = head.map_or(end_gap, |head| gap_over(&head, opening.top));
        around.push(Around::opening(*id, opening, end_gap, head));
    }
    around.extend(abutments(work.house(), wall, outline, work.rules())?);
    // Halfway between the least and the greatest gap that is wanted.
    let (least, most) = (rule(keys::GAP_BLOCK_LEAST)?, rule(keys::GAP_BLOCK_MOST)?);
    let round = least + (most - least).half();
    for penetration in penetrations {
        let (x, y) = penetration.outer();
        let head = penetration.head_flashing(work)?.map_or(round, |head| gap_over(&head, y.to));
        let gap = ObstructionGaps { side: round, top: head, bottom: round };
        around.push(Around {
            id: Some(penetration.id()),
            name: format!("wall-kind-{}", penetration.kind.code()),
            at: Obstruction::plumb((x.from, x.to), (y.from, y.to), gap),
            parts_strips: false,
        });
    }
    let limits = ShapeLimits { leg: rule(keys::LEG_LEAST)?, strip: rule(keys::STRIP_LEAST)? };
    WallShapes::new(outline, &gaps, around, limits, work.board_height()?)
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
/// As [`WallSite::courses`].
pub fn course_lines(work: &Work, wall: &Record, lines: &[WallLine], outline: &Outline) -> Result<Vec<Course>> {
    let middles: Vec<Length> = lines.iter().map(|line| line.middle).collect();
    let (base, width) = (need(wall, Field::Base)?, outline.width());
    let course = |middle: CourseLine| {
        let at = usize::try_from(middle.course).ok()?.checked_sub(1)?;
        Some(Course { middle, line: lines.get(at)?.less(base), width })
    };
    Ok(courses(work, wall, &middles, outline)?.into_iter().filter_map(course).collect())
}
