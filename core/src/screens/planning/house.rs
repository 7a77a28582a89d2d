use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::saw::{Avoid, CutList, Planner, Run, SawError, Stock, Studs};
use crate::screens::context::Terms;
use crate::screens::kept::{self, Facts, Job, Wall, first};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::screens::wall::plan;
use crate::siding::{CourseLine, JointRules, Run as Course};
use crate::store::{Id, Store};
use crate::views::{Code, Problem};

/// What lies between two walls on the axis on which they stand side by side.
const BETWEEN: Length = Length::from_inches(1_000);

/// A house as the planner takes it, and what its runs are in the book. Two that are equal give the same plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct House {
    pub(super) list: CutList,
    /// One for each run of the list.
    pub(super) runs: Vec<Strip>,
    /// The offcuts of the list.
    pub(super) offcuts: Vec<Id>,
    /// The planned boards, which a new plan replaces.
    pub(super) planned: Vec<Id>,
    /// The highest number of a board that was cut already.
    pub(super) last: i64,
}

/// A bare stretch of a course.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Strip {
    pub(super) wall: Id,
    pub(super) course: kept::Course,
    /// How far the wall was moved along the axis.
    pub(super) moved: Length,
    /// The stretch itself, from the wall's left corner.
    pub(super) run: Course,
}

impl House {
    /// The house of a job, with all walls that are measured.
    pub(super) fn of(store: &Store, terms: &Terms<'_>, job: Id) -> Kept<Self> {
        let job = Job::of(store, terms, job)?;
        let lines = job.lines(store)?.ok_or_else(|| first(terms, "lines", key("screen-pole")))?;
        let mut list = CutList::new();
        list.division = terms.division;
        list.kerf = job.rules.get_length(keys::SAW_KERF)?;
        list.end_gap = job.rules.get_length(keys::GAP_TRIM)?;
        list.joint_gap = job.rules.get_length(keys::JOINT_GAP_LEAST)?;
        list.keep_min = Some(job.rules.get_length(keys::OFFCUT_KEEP_LEAST)?);
        list.stagger = Length::ZERO;
        let mut house = Self { list, runs: Vec::new(), offcuts: Vec::new(), planned: Vec::new(), last: 0 };
        let mut used: Vec<(i64, Length)> = Vec::new();
        let (mut studs, mut up) = (Vec::new(), Vec::new());
        let mut moved = Length::ZERO;
        for wall in Wall::of_job(store, job.id())? {
            let outline = wall.outline(store, terms)?;
            let courses = wall.course_lines(terms, &job, &wall.lines(store, &lines)?, &outline)?;
            let levels: Vec<CourseLine> = courses.iter().map(|course| course.middle).collect();
            let obstacles = wall.obstacles(store, &outline, job.lap()?)?;
            let corners: Vec<_> = outline.points().iter().map(|point| (point.x, point.y)).collect();
            let rules = plan::joint_rules(store, terms, &job, (&wall, outline.width()), &levels)?;
            let boards = Facts::children(store, wall.id(), kinds::BOARD)?;
            let (stay, go): (Vec<_>, Vec<_>) =
                boards.iter().partition(|board| board.text("state").unwrap_or("planned") != "planned");
            house.planned.extend(go.iter().map(|board| board.id()));
            used.extend(stay.iter().filter_map(|board| Some((board.whole("cut-from")?, board.length("stock")?))));
            studs.extend(rules.studs.iter().map(|stud| *stud + moved));
            house.list.stagger = house.list.stagger.max(rules.stagger);
            house.list.piece_min = house.list.piece_min.max(rules.piece_min);
            house.avoid(&wall, &rules, moved);
            for course in &courses {
                for run in course.runs(&corners, &obstacles) {
                    up.extend(joints_up(&wall, &rules, &run, &stay, moved));
                    for bare in plan::bare(run, &stay, &rules) {
                        house.strip(&wall, course, &bare, moved);
                    }
                }
            }
            moved = moved + outline.width() + BETWEEN;
        }
        house.list.studs = Some(Studs::Listed(studs));
        used.sort_unstable();
        used.dedup();
        house.last = used.last().map_or(0, |(number, _)| *number);
        for (length, count) in job.stock(store)? {
            let cut = used.iter().filter(|(_, stock)| *stock == length).count();
            let left = |count: i64| u32::try_from(count).unwrap_or(0).saturating_sub(u32::try_from(cut).unwrap_or(0));
            house.list.stock.push(Stock { length, cost: length.nm().unsigned_abs(), count: count.map(left) });
        }
        for offcut in Facts::children(store, job.id(), kinds::OFFCUT)? {
            if let (Some(length), None) = (offcut.length("length"), offcut.text("used")) {
                house.list.offcuts.push(length);
                house.offcuts.push(offcut.id());
            }
        }
        // Where joints cannot keep clear of those that are up, they keep to their other rules.
        if !up.is_empty() {
            let mut strict = house.list.clone();
            strict.avoid.append(&mut up);
            if !Planner::new(&strict).is_err_and(|error| super::of_joints(&error)) {
                house.list = strict;
            }
        }
        Ok(house)
    }

    fn avoid(&mut self, wall: &Wall, rules: &JointRules, moved: Length) {
        for avoid in &rules.avoid {
            let courses: Vec<i64> = avoid.courses.iter().map(|course| i64::from(*course)).collect();
            self.list.avoid.push(Avoid {
                wall: Some(wall.id().to_string()),
                from: avoid.from + moved,
                to: avoid.to + moved,
                courses: (!courses.is_empty()).then_some(courses),
            });
        }
    }

    fn strip(&mut self, wall: &Wall, course: &kept::Course, bare: &Course, moved: Length) {
        self.list.runs.push(Run {
            wall: wall.id().to_string(),
            course: i64::from(bare.course),
            from: bare.from() + moved,
            to: bare.to() + moved,
        });
        self.runs.push(Strip { wall: wall.id(), course: course.clone(), moved, run: *bare });
    }

    /// What the planner refuses, in words.
    pub(super) fn refused(&self, terms: &Terms<'_>, error: &SawError) -> Problem {
        let course = |run: usize| self.runs.get(run).map_or(0, |strip| i64::from(strip.course.middle.course));
        match error {
            SawError::NoJoints { run } | SawError::NoStud { run } | SawError::NoStagger { run } => {
                let text = terms.phrase(key("wall-no-joints"), &[("course", course(*run).into())]);
                Problem::new(Code::Infeasible, "studs", text)
            }
            SawError::NoBoard => first(terms, "stock", "ask-stock-length"),
            SawError::NotEnough => Problem::new(Code::Infeasible, "stock", terms.phrase(key("saw-not-enough"), &[])),
            _ => {
                let text = terms.phrase(key("wall-plan-trouble"), &[("why", error.to_string().into())]);
                Problem::new(Code::Range, "stock", text)
            }
        }
    }
}

/// What joints of boards that are up keep those of the courses above and below away from.
fn joints_up(wall: &Wall, rules: &JointRules, run: &Course, stay: &[&Facts], moved: Length) -> Vec<Avoid> {
    let course = i64::from(run.course);
    let half = rules.joint_gap.half();
    let inside = |at: &Length| run.from() + rules.piece_min < *at && *at < run.to() - rules.piece_min;
    stay.iter()
        .filter(|board| board.whole("course") == Some(course))
        .flat_map(|board| [board.length("from").map(|from| from - half), board.length("to").map(|to| to + half)])
        .flatten()
        .filter(inside)
        .map(|at| Avoid {
            wall: Some(wall.id().to_string()),
            from: at + moved - rules.stagger,
            to: at + moved + rules.stagger,
            courses: Some(vec![course - 1, course + 1]),
        })
        .collect()
}
