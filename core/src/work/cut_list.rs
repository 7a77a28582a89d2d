use std::collections::BTreeMap;

use crate::book::{Field, Kind, OffcutState, Record};
use crate::measure::{Division, Length};
use crate::rules::keys;
use crate::saw::{self, CutList, JointFree, LowOffcut, Planner, Rips, SawError, StudCenters};
use crate::siding::{JointRules, Run};
use crate::store::Id;

use super::error::Result;
use super::joints::{joint_before, joint_behind, joint_rules};
use super::ripped::is_ripped;
use super::saw_boards::spoiled;
use super::uncovered::uncovered;
use super::wall_board::stay_and_give_way;
use super::{Course, WallSite, Work};

/// What lies between two walls on the axis on which they stand side by side.
const BETWEEN: Length = Length::from_inches(1_000);

/// A house as the planner takes it, and what its runs are in the book. Two that are equal give the same plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct HouseCutList {
    /// What is to be covered and from what; the walls stand side by side on one axis.
    pub(super) list: CutList,
    /// One for each run of the list.
    pub(super) runs: Vec<OpenRun>,
    /// The offcuts of the list, and behind them its strips.
    pub(super) offcuts: Vec<Id>,
    /// The boards that give way to a plan: those that are neither cut nor up.
    pub(super) give_way: Vec<Id>,
    /// The highest number of a board from which something was cut already.
    pub(super) last: i64,
}

/// A stretch of a course that no board covers which is cut or up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct OpenRun {
    /// The wall.
    pub(super) wall: Id,
    /// Its course.
    pub(super) course: Course,
    /// How far the wall was moved along the axis.
    pub(super) moved: Length,
    /// The stretch itself, from the wall's left corner.
    pub(super) run: Run,
}

impl HouseCutList {
    /// The list of a house with all its walls. Pieces are rounded down to the tape.
    ///
    /// # Errors
    /// [`WorkError`](super::WorkError) where the pole is not laid out, or a wall or the stock are not known yet.
    pub(super) fn of(work: &Work, division: Division) -> Result<Self> {
        work.need_lines()?;
        let rules = work.rules();
        let mut list = CutList::new();
        list.division = division;
        list.kerf = rules.get_length(keys::SAW_KERF)?;
        list.end_gap = rules.get_length(keys::GAP_TRIM)?;
        list.joint_gap = rules.get_length(keys::JOINT_GAP_LEAST)?;
        list.stagger = Length::ZERO;
        let mut house = Self { list, runs: Vec::new(), offcuts: Vec::new(), give_way: Vec::new(), last: 0 };
        let (mut studs, mut up, mut used) = (Vec::new(), Vec::new(), Vec::new());
        let mut moved = Length::ZERO;
        let uses_strips = work.rules().get_whole(keys::RIPS_PER_BOARD)? > 1;
        let mut heights = BTreeMap::new();
        for wall in work.walls() {
            let runs = wall.runs()?.zip(wall.course_shapes()?.iter().flatten());
            let rules = joint_rules(work, wall)?;
            let (stay, give_way) = stay_and_give_way(work.boards(wall.id()));
            house.give_way.extend(give_way);
            used.extend(stay.iter().filter_map(|board| sawn_from(board)));
            studs.extend(rules.studs.iter().map(|stud| *stud + moved));
            house.list.stagger = house.list.stagger.max(rules.stagger);
            house.list.piece_min = house.list.piece_min.max(rules.piece_min);
            house.avoid(wall, &rules, moved);
            for ((course, run), shape) in runs {
                up.extend(joints_up(wall, &rules, run, &stay, moved));
                for run in uncovered(*run, &stay, &rules) {
                    if uses_strips && is_ripped(shape) {
                        heights.insert(house.runs.len(), shape.height);
                    }
                    house.open(OpenRun { wall: wall.id(), course: course.clone(), moved, run });
                }
            }
            moved = moved + wall.outline()?.width() + BETWEEN;
        }
        house.list.studs = Some(StudCenters::Listed(studs));
        if !heights.is_empty() {
            house.list.rips = Some(Rips { board: work.board_height()?, heights, strips: Vec::new() });
        }
        house.boards_at_hand(work, used);
        // Where joints cannot keep clear of those that are up, they keep to their other rules.
        if !up.is_empty() {
            let mut strict = house.list.clone();
            strict.avoid.append(&mut up);
            if !Planner::new(&strict).is_err_and(|error| is_of_joints(&error)) {
                house.list = strict;
            }
        }
        Ok(house)
    }

    fn avoid(&mut self, wall: &WallSite, rules: &JointRules, moved: Length) {
        for avoid in &rules.avoid {
            let courses: Vec<i64> = avoid.courses.iter().map(|course| i64::from(*course)).collect();
            self.list.avoid.push(JointFree {
                wall: Some(wall.id().to_string()),
                from: avoid.from + moved,
                to: avoid.to + moved,
                courses: (!courses.is_empty()).then_some(courses),
            });
        }
    }

    fn open(&mut self, open: OpenRun) {
        self.list.runs.push(saw::RunToCut {
            wall: open.wall.to_string(),
            course: i64::from(open.run.course),
            from: open.run.from() + open.moved,
            to: open.run.to() + open.moved,
        });
        self.runs.push(open);
    }

    /// The stock less the boards that pieces were cut from already, by their numbers and lengths, and the offcuts that are at hand.
    fn boards_at_hand(&mut self, work: &Work, mut used: Vec<(i64, Length)>) {
        used.sort_unstable();
        used.dedup();
        // A number of a board of which a piece was spoiled is never another board's.
        let numbers = used.iter().map(|(number, _)| *number).chain(spoiled(work).into_iter().map(|(number, _)| number));
        self.last = numbers.max().unwrap_or(0);
        for (length, count) in work.stock() {
            let cut = used.iter().filter(|(_, stock)| *stock == length).count();
            let left = |count: i64| u32::try_from(count).unwrap_or(0).saturating_sub(u32::try_from(cut).unwrap_or(0));
            self.list.stock.push(saw::Stock { length, cost: length.nm().unsigned_abs(), count: count.map(left) });
        }
        let mut strips = Vec::new();
        for offcut in
            work.house().own(Kind::Offcut).iter().filter(|offcut| offcut.offcut_state() == OffcutState::AtHand)
        {
            match (offcut.length(Field::Length), offcut.length(Field::Height)) {
                (Some(length), None) => {
                    self.list.offcuts.push(length);
                    self.offcuts.push(offcut.id());
                }
                (Some(length), Some(height)) => strips.push((offcut.id(), LowOffcut { length, height })),
                (None, _) => {}
            }
        }
        // A strip is no board: without low pieces, and a rule that lets it hang, nothing is cut from it.
        if let Some(rips) = &mut self.list.rips {
            self.offcuts.extend(strips.iter().map(|(id, _)| *id));
            rips.strips = strips.into_iter().map(|(_, strip)| strip).collect();
        }
    }
}

/// The number and the length of the board that a piece was cut from.
fn sawn_from(board: &Record) -> Option<(i64, Length)> {
    Some((board.whole(Field::CutFrom)?, board.length(Field::Stock)?))
}

/// What joints of boards that are up keep those of the courses above and below away from.
fn joints_up(wall: &WallSite, rules: &JointRules, run: &Run, stay: &[&Record], moved: Length) -> Vec<JointFree> {
    let course = i64::from(run.course);
    let inside = |at: &Length| run.from() + rules.piece_min < *at && *at < run.to() - rules.piece_min;
    let joints = |board: &&Record| {
        let (from, to) = (board.length(Field::From), board.length(Field::To));
        [from.map(|from| joint_before(from, rules)), to.map(|to| joint_behind(to, rules))]
    };
    stay.iter()
        .filter(|board| board.whole(Field::Course) == Some(course))
        .flat_map(joints)
        .flatten()
        .filter(inside)
        .map(|at| JointFree {
            wall: Some(wall.id().to_string()),
            from: at + moved - rules.stagger,
            to: at + moved + rules.stagger,
            courses: Some(vec![course - 1, course + 1]),
        })
        .collect()
}

/// Whether an error comes from joints that do not fit beside those that are up.
fn is_of_joints(error: &SawError) -> bool {
    matches!(error, SawError::NoJoints { .. } | SawError::NoStud { .. } | SawError::NoStagger { .. })
}
