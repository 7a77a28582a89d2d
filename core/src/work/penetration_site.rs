use std::sync::Arc;

use crate::flashing::{HeadFlashing, Pipe, WallRectangle};
use crate::measure::Length;
use crate::siding::CourseLine;
use crate::steps::PenetrationDetail;

use super::error::Result;
use super::{Penetration, WallSite, Work};

/// A penetration with what stands round it.
#[derive(Clone, Debug)]
pub struct PenetrationSite {
    /// What follows from its house.
    pub work: Arc<Work>,
    /// Its wall.
    pub wall: Arc<WallSite>,
    /// The penetration.
    pub penetration: Penetration,
    /// The wall's courses as they lie at its centre; none without a pole, or where the wall is not measured.
    pub courses: Vec<CourseLine>,
    /// What its steps are made from.
    pub detail: PenetrationDetail,
}

impl PenetrationSite {
    /// A penetration of a wall of a house.
    pub fn new(work: Arc<Work>, wall: Arc<WallSite>, penetration: Penetration) -> Self {
        let courses = wall.courses_at(&work, penetration.centre.x).unwrap_or_default();
        let detail = penetration.detail(&work, &courses);
        Self { work, wall, penetration, courses, detail }
    }

    /// What the boards end at, on the wall.
    pub fn outer(&self) -> WallRectangle {
        let (x, y) = self.penetration.outer();
        WallRectangle { left: x.from, right: x.to, bottom: y.from, top: y.to }
    }

    /// What goes through the wall.
    pub fn pipe(&self) -> Pipe {
        let Penetration { shape, centre, .. } = self.penetration;
        Pipe { shape, x: centre.x, y: centre.y }
    }

    /// The head flashing; `None` where there is none, or where it cannot be bent.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn head_flashing(&self) -> Result<Option<HeadFlashing>> {
        self.penetration.head_flashing(&self.work)
    }

    /// The number on the pole of a course that is counted from one on this wall.
    pub fn course_number(&self, course: usize) -> usize {
        let line = course.checked_sub(1).and_then(|index| self.courses.get(index));
        line.and_then(|line| usize::try_from(line.course).ok()).unwrap_or(course)
    }

    /// A length that the rules of the house give.
    pub(super) fn rule(&self, key: &str) -> Result<Length> {
        Ok(self.work.rules().get_length(key)?)
    }
}
