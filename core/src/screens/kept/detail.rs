use crate::flashing::head_needed;
use crate::measure::Length;
use crate::siding::CourseLine;
use crate::steps::PenetrationDetail;
use crate::store::Store;

use super::{Facts, Job, Penetration};
use crate::screens::kinds;
use crate::screens::trouble::Kept;

/// What is higher above the base line is worked at from a ladder or a scaffold (common practice, no source).
const ABOVE_REACH: Length = Length::from_inches_64(78, 0);

impl Job {
    /// The course lines of its story pole, on the pole's own scale; none where it is not laid out.
    pub(crate) fn lines(&self, store: &Store) -> Kept<Option<Vec<Length>>> {
        let poles = Facts::children(store, self.id(), kinds::POLE)?;
        let lines = poles.first().and_then(|pole| pole.text("lines"));
        let read = |lines: &str| lines.split(',').map(|nm| nm.trim().parse().ok().map(Length::from_nm)).collect();
        Ok(lines.and_then(read))
    }
}

impl Penetration {
    /// What its steps are made from; `courses` are those of its wall.
    pub(crate) fn detail(&self, job: &Job, courses: &[CourseLine]) -> PenetrationDetail {
        let (_, y) = self.outer();
        let first_course = courses.first().is_some_and(|first| y.from < first.bottom + first.height);
        let wide = self.block.is_some_and(|block| head_needed(block.x.to - block.x.from));
        let said = |field: &str| self.facts.text(field).map(|text| text == "yes");
        PenetrationDetail {
            kind: self.kind,
            shape: self.shape,
            finish: self.finish,
            mounting: self.mounting,
            head_flashing: said("head-flashing").unwrap_or(wide),
            painted: self.painted,
            first_course,
            bottom_open: said("bottom-open").unwrap_or(false),
            old_house: job.facts.text("old-house") == Some("yes"),
            above_reach: y.to > ABOVE_REACH,
        }
    }
}
