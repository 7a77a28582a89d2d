use crate::measure::Length;
use crate::screens::context::Terms;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::siding::{CourseLine, End, Obstacle};
use crate::store::{Id, Store};
use crate::views::{Code, Problem};
use crate::wall::{Opening, OpeningKind, Outline, OutlineError, Point, Span, Studs};

use super::{Facts, Job};

/// A wall as it was measured.
pub(crate) struct Wall {
    /// What the book holds of it.
    pub(crate) facts: Facts,
    /// The job it belongs to.
    pub(crate) job: Id,
}

/// The sides of an opening at its head, from those at its sill: without readings there they are plumb.
pub(crate) fn head(facts: &Facts, left: Length, width: Length) -> Span {
    let from = facts.length("head-from-left").unwrap_or(left);
    Span { from, to: from + facts.length("head-width").unwrap_or(width) }
}

impl Wall {
    /// The wall of an id.
    pub(crate) fn of(store: &Store, terms: &Terms<'_>, id: Id) -> Kept<Self> {
        Ok(Self::from_facts(Facts::of(store, terms, id, kinds::WALL)?))
    }

    /// The walls of a job in their order.
    pub(crate) fn of_job(store: &Store, job: Id) -> Kept<Vec<Self>> {
        Ok(Facts::children(store, job, kinds::WALL)?.into_iter().map(Self::from_facts).collect())
    }

    fn from_facts(facts: Facts) -> Self {
        let job = facts.subject.parent.unwrap_or(facts.subject.id);
        Self { facts, job }
    }

    /// Its id.
    pub(crate) fn id(&self) -> Id {
        self.facts.id()
    }

    /// What the crew calls it.
    pub(crate) fn name(&self) -> &str {
        self.facts.text("name").unwrap_or_default()
    }

    /// The height of its base line on the pole.
    pub(crate) fn base(&self, terms: &Terms<'_>) -> Kept<Length> {
        self.facts.need(terms, "base", "ask-wall-base")
    }

    /// The outline of its siding, with the steps of its base line.
    pub(crate) fn outline(&self, store: &Store, terms: &Terms<'_>) -> Kept<Outline> {
        self.outline_of(terms, &Facts::children(store, self.id(), kinds::BASE_STEP)?)
    }

    /// The same with these steps of its base line.
    pub(crate) fn outline_of(&self, terms: &Terms<'_>, steps: &[Facts]) -> Kept<Outline> {
        let need = |field, title| self.facts.need(terms, field, title);
        let width = need("width", "ask-wall-width")?;
        let (left, right) =
            (need("left-height", "ask-wall-left-height")?, need("right-height", "ask-wall-right-height")?);
        let zero = Length::ZERO;
        let mut points = vec![Point::new(zero, zero)];
        let mut level = zero;
        let mut steps: Vec<(Length, Length)> =
            steps.iter().filter_map(|step| Some((step.length("from-left")?, step.length("rise")?))).collect();
        steps.sort_unstable();
        for (at, rise) in steps {
            points.push(Point::new(at, level));
            level = level + rise;
            points.push(Point::new(at, level));
        }
        points.push(Point::new(width, level));
        points.push(Point::new(width, right));
        if let (Some(x), Some(y)) = (self.facts.length("peak-from-left"), self.facts.length("peak-height")) {
            // A peak stands above both ends and between them, else it is no gable.
            if y <= left.max(right) || !x.is_positive() || x >= width {
                let text = terms.phrase("wall-peak-trouble", &[]);
                return Err(Problem::new(Code::Range, "peak-height", text).into());
            }
            points.push(Point::new(x, y));
        }
        points.push(Point::new(zero, left));
        Outline::new(points).map_err(|error| outline_trouble(terms, error).into())
    }

    /// Its studs.
    pub(crate) fn studs(&self, store: &Store, terms: &Terms<'_>) -> Kept<Studs> {
        let mut centres: Vec<Length> =
            Facts::children(store, self.id(), kinds::STUD)?.iter().filter_map(|stud| stud.length("at")).collect();
        centres.sort_unstable();
        if !centres.is_empty() {
            return Ok(Studs::Measured(centres));
        }
        let first = self.facts.need(terms, "first-stud", "ask-wall-first-stud")?;
        let spacing = self.facts.need(terms, "stud-spacing", "ask-wall-stud-spacing")?;
        Ok(Studs::Spaced { first, spacing })
    }

    /// Its windows and doors that are measured, with their ids.
    pub(crate) fn openings(&self, store: &Store) -> Kept<Vec<(Id, Opening)>> {
        let read = |facts: &Facts| {
            let left = facts.length("from-left")?;
            let bottom = facts.length("from-base")?;
            let kind = OpeningKind::from_code(facts.text("what")?)?;
            let width = facts.length("width")?;
            let (right, top) = (left + width, bottom + facts.length("height")?);
            let head = head(facts, left, width);
            Some((facts.id(), Opening { kind, left, right, head_left: head.from, head_right: head.to, bottom, top }))
        };
        Ok(Facts::children(store, self.id(), kinds::OPENING)?.iter().filter_map(read).collect())
    }

    /// What splits or shortens its runs: openings, and the trim at its ends.
    ///
    /// Over a head a board of which only the lap would be left is not run through: the strip would hang there alone,
    /// hidden by the next course. So an opening reaches `lap` higher here.
    pub(crate) fn obstacles(&self, store: &Store, outline: &Outline, lap: Length) -> Kept<Vec<Obstacle>> {
        // The topmost board reaches past the top until it is ripped, and one that hangs low past the base line: the trim
        // stops them there, too.
        let (zero, width) = (Length::ZERO, outline.width());
        let (bottom, top) = (-Length::LIMIT, Length::LIMIT);
        let trim = |name| self.facts.length(name).filter(|width| width.is_positive());
        let openings = self.openings(store)?.into_iter().map(|(_, opening)| {
            let (bottom, top) = (opening.bottom, opening.top + lap);
            let over = opening.sides_at(top);
            let left = End { bottom: opening.left, top: over.from };
            Obstacle { left, right: End { bottom: opening.right, top: over.to }, bottom, top }
        });
        let left = trim("trim-left").map(|trim| Obstacle::rectangle((zero, trim), bottom, top));
        let right = trim("trim-right").map(|trim| Obstacle::rectangle((width - trim, width), bottom, top));
        Ok(openings.chain(left).chain(right).collect())
    }

    /// Its courses in its own heights: one pole serves every wall, so the lines are the pole's, less the base.
    ///
    /// Where the base line lies between two lines, the first board is ripped and keeps its regular top.
    pub(crate) fn courses(
        &self,
        terms: &Terms<'_>,
        job: &Job,
        lines: &[Length],
        outline: &Outline,
    ) -> Kept<Vec<CourseLine>> {
        let (base, height) = (self.base(terms)?, job.board_height(terms)?);
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
}

fn outline_trouble(terms: &Terms<'_>, error: OutlineError) -> Problem {
    let field = match error {
        OutlineError::NotPositive(_) => "width",
        _ => "peak-height",
    };
    Problem::new(Code::Range, field, terms.phrase("wall-outline-trouble", &[("why", error.to_string().into())]))
}
