use crate::measure::Length;
use crate::screens::context::Terms;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::siding::{CourseLine, Run};
use crate::store::Store;
use crate::wall::{Opening, Outline, Studs};

use super::{Facts, Job, Penetration, Wall};

/// A wall that is measured, with its siding.
pub(crate) struct CladWall {
    /// The wall.
    pub(crate) wall: Wall,
    /// Its siding.
    pub(crate) outline: Outline,
    /// Its studs.
    pub(crate) studs: Studs,
    /// Its courses as they hang or are planned, in the middle of the wall.
    pub(crate) courses: Vec<CourseLine>,
    /// Its runs from trim to trim, course by course.
    pub(crate) runs: Vec<Run>,
    /// Its windows and doors.
    pub(crate) openings: Vec<Opening>,
    /// What goes through it.
    pub(crate) penetrations: Vec<Penetration>,
    /// Its boards.
    pub(crate) boards: Vec<Facts>,
}

impl CladWall {
    /// The walls of a job.
    pub(crate) fn of_job(store: &Store, terms: &Terms<'_>, job: &Job, lines: &[Length]) -> Kept<Vec<Self>> {
        let walls = Wall::of_job(store, job.id())?.into_iter();
        walls.map(|wall| Self::of(store, terms, job, wall, lines)).collect()
    }

    fn of(store: &Store, terms: &Terms<'_>, job: &Job, wall: Wall, lines: &[Length]) -> Kept<Self> {
        let outline = wall.outline(store, terms)?;
        let courses = wall.course_lines(terms, job, &wall.lines(store, lines)?, &outline)?;
        let obstacles = wall.obstacles(store, &outline, job.lap()?)?;
        let corners: Vec<_> = outline.points().iter().map(|point| (point.x, point.y)).collect();
        let runs = courses.iter().flat_map(|course| course.runs(&corners, &obstacles)).collect();
        let openings = wall.openings(store)?.into_iter().map(|(_, opening)| opening).collect();
        Ok(Self {
            studs: wall.studs(store, terms)?,
            penetrations: Penetration::on_wall(store, terms, job, wall.id())?,
            boards: Facts::children(store, wall.id(), kinds::BOARD)?,
            wall,
            outline,
            courses: courses.into_iter().map(|course| course.middle).collect(),
            runs,
            openings,
        })
    }
}
