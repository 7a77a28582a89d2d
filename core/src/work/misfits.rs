use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::book::{BoardState, CutRecord, Field, Kind, OffcutState, Record};
use crate::measure::Length;
use crate::rules::keys;
use crate::siding::{JointRules, Run};
use crate::store::{Id, Value};

use super::error::Result;
use super::joints::{joint_behind, joint_rules};
use super::placement::Placement;
use super::planned_board::{BoardLayout, bevels, is_of_strip};
use super::ripped::strip_height;
use super::uncovered::uncovered;
use super::{Board, Course, WallSite, Work};

/// More than any tape's division takes off a length when it is rounded down.
const ROUNDED: Length = Length::from_inches_64(0, 8);

/// The boards of a wall that no longer fit the house as it is known now.
///
/// Nothing is kept of what a plan was made from: each board is held against what would be planned at its place today, so
/// that whatever changes marks the boards that it makes wrong, and no others. A board that is up is as it is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Misfits {
    /// Those that are not cut yet: planned again, others take their place.
    pub planned: BTreeSet<Id>,
    /// Those that are cut and not up: they stay, and are to be measured before they go up.
    pub cut: BTreeSet<Id>,
    /// How many stretches of courses have no board at all, on a wall that has boards.
    pub bare: usize,
}

impl Misfits {
    /// The boards of every wall of a house, in the order of its walls; none where a wall or the pole is not known so far that
    /// boards could be planned.
    pub fn of_house(work: &Work) -> Vec<Self> {
        let at_hand = AtHand::of(work, |_| true);
        let on = |wall: &Arc<WallSite>| Self::found(work, wall, at_hand.as_ref().ok()?, |_| true).ok();
        work.walls().iter().map(|wall| on(wall).unwrap_or_default()).collect()
    }

    /// Those of one wall.
    pub fn on_wall(work: &Work, wall: &WallSite) -> Self {
        let found = AtHand::of(work, |_| true).and_then(|at_hand| Self::found(work, wall, &at_hand, |_| true));
        found.unwrap_or_default()
    }

    /// The one board, if it is one of them: what has nothing to do with it is not looked at.
    pub fn of_board(work: &Work, wall: &WallSite, board: &Record) -> Self {
        let number = board.whole(Field::CutFrom);
        let course = board.whole(Field::Course).unwrap_or_default();
        let at_hand = AtHand::of(work, |other| Some(other) == number);
        let near = |other: i64| other.abs_diff(course) <= 1;
        let mut found = at_hand.and_then(|at_hand| Self::found(work, wall, &at_hand, near)).unwrap_or_default();
        found.planned.retain(|other| *other == board.id());
        found.cut.retain(|other| *other == board.id());
        Self { bare: 0, ..found }
    }

    /// The boards of the courses that are `asked` for.
    fn found(work: &Work, wall: &WallSite, at_hand: &AtHand, asked: impl Fn(i64) -> bool) -> Result<Self> {
        let boards = work.boards(wall.id());
        if boards.is_empty() {
            return Ok(Self::default());
        }
        work.need_lines()?;
        let rules = joint_rules(work, wall)?;
        let mut on_course: BTreeMap<i64, Vec<&Record>> = BTreeMap::new();
        for board in boards {
            if let Some(course) = board.whole(Field::Course).filter(|course| asked(*course)) {
                on_course.entry(course).or_default().push(board);
            }
        }
        on_course.values_mut().for_each(|boards| boards.sort_by_key(|board| board.length(Field::From)));
        let of = |course: i64| on_course.get(&course).map_or(&[][..], Vec::as_slice);
        let mut courses: BTreeMap<i64, Stretches> = BTreeMap::new();
        let mut found = Self::default();
        for (course, run) in wall.runs()?.filter(|(_, run)| asked(i64::from(run.course))) {
            let number = i64::from(run.course);
            let (planned, stay): (Vec<&Record>, Vec<_>) =
                of(number).iter().copied().partition(|board| is_planned(board));
            let open = uncovered(*run, &stay, &rules);
            let bare = |run: &&Run| !planned.iter().any(|board| overlaps(board, run.from(), run.to()));
            found.bare += open.iter().filter(bare).count();
            let own = courses.entry(number).or_insert_with(|| Stretches::of(course));
            own.open.extend(open);
            own.whole.push(*run);
        }
        for (number, boards) in &on_course {
            let Some(stretches) = courses.get(number) else {
                boards.iter().for_each(|board| found.mark(board));
                continue;
            };
            for (board, joints) in boards.iter().zip(joints(boards, &rules)) {
                let shape = has_shape(work, board);
                if !stretches.fits(board, joints, (*number, &rules), shape) || !at_hand.holds(board) {
                    found.mark(board);
                }
            }
        }
        for (number, boards) in &on_course {
            for board in too_near(boards, of(number + 1), &rules) {
                found.mark(board);
            }
        }
        Ok(found)
    }

    fn mark(&mut self, board: &Record) {
        match board.board_state() {
            BoardState::Planned => self.planned.insert(board.id()),
            BoardState::Cut => self.cut.insert(board.id()),
            BoardState::Fixed => false,
        };
    }
}

/// Whether a board that is cut, and not up, has the shape that it would have now; none where that is not known.
fn has_shape(work: &Work, board: &Record) -> Option<bool> {
    if board.board_state() != BoardState::Cut {
        return None;
    }
    let cut = CutRecord::of(work.house(), board).filter(|cut| !cut.shapes.is_empty())?;
    cut.has_shape(&Board::of(work, board.id()).ok()?.cut_shapes())
}

fn is_planned(board: &Record) -> bool {
    board.board_state() == BoardState::Planned
}

/// The joints at the left and at the right end of a board of a course, where another board meets it there.
type Joints = (Option<Length>, Option<Length>);

/// The stud centres of the joints on both sides of every board of a course, which are in order.
fn joints(boards: &[&Record], rules: &JointRules) -> Vec<Joints> {
    let end = |at: Option<&&Record>, field| at.and_then(|board| board.length(field));
    let joint = |left: Option<Length>, right: Option<Length>| {
        let (left, right) = (left?, right?);
        (right - left == rules.joint_gap).then(|| joint_behind(left, rules))
    };
    let place = |at: usize| {
        let own = boards.get(at);
        let before = at.checked_sub(1).and_then(|before| boards.get(before));
        let left = joint(end(before, Field::To), end(own, Field::From));
        (left, joint(end(own, Field::To), end(boards.get(at + 1), Field::From)))
    };
    (0..boards.len()).map(place).collect()
}

/// A course as it would be planned today: where its boards lie from trim to trim, and what of that no board covers which
/// is cut or up.
struct Stretches<'a> {
    course: &'a Course,
    whole: Vec<Run>,
    open: Vec<Run>,
}

impl<'a> Stretches<'a> {
    fn of(course: &'a Course) -> Self {
        Self { course, whole: Vec::new(), open: Vec::new() }
    }

    /// Whether a board is one that could be planned at its place today; `shape` tells whether one that is cut has the shape
    /// that it would have.
    fn fits(&self, board: &Record, joints: Joints, (number, rules): (i64, &JointRules), shape: Option<bool>) -> bool {
        let (Some(from), Some(to)) = (board.length(Field::From), board.length(Field::To)) else { return true };
        let planned = is_planned(board);
        let gap = rules.end_gap;
        let runs = if planned { &self.open } else { &self.whole };
        let Some(run) = runs.iter().find(|run| run.from() + gap <= from && to <= run.to() - gap) else {
            return false;
        };
        let allowed = |joint: Option<Length>| joint.is_some_and(|at| on_a_stud(at, number, rules));
        let (left, right) = (from == run.from() + gap, to == run.to() - gap);
        if !(left || allowed(joints.0)) || !(right || allowed(joints.1)) {
            return false;
        }
        if let Some(has_shape) = shape {
            return has_shape;
        }
        let length = board.length(Field::Length).unwrap_or_default();
        let layout = BoardLayout::on(self.course, (from, to), length, bevels(run, (from, to), gap));
        // Where a board that is cut lies is settled when it goes up: what is sawn of it counts.
        let sawn = |field: Field| !matches!(field, Field::Bottom | Field::BottomRight);
        let mut changes = layout.changes(board).into_iter().map(|(field, _)| field);
        if changes.any(|field| (planned || sawn(field)) && !is_typed(board, field)) {
            return false;
        }
        let short = to - from - length;
        is_typed(board, Field::Length) || (!short.is_negative() && short < ROUNDED)
    }
}

/// Whether somebody answered it by hand: then it is meant so.
fn is_typed(board: &Record, field: Field) -> bool {
    board.written(field).is_some_and(|written| match &written.value {
        Value::Length { typed, .. } => !typed.is_empty(),
        _ => false,
    })
}

fn on_a_stud(at: Length, course: i64, rules: &JointRules) -> bool {
    let here = |courses: &[u32]| courses.is_empty() || courses.iter().any(|other| i64::from(*other) == course);
    let avoided = rules.avoid.iter().any(|avoid| avoid.from < at && at < avoid.to && here(&avoid.courses));
    rules.studs.binary_search(&at).is_ok() && !avoided
}

/// The planned boards of two courses whose joints are nearer to each other than the stagger. Those beside boards that are
/// cut or up may be as near as they must.
fn too_near<'a>(lower: &[&'a Record], upper: &[&'a Record], rules: &JointRules) -> Vec<&'a Record> {
    let planned = |pair: &&[&'a Record]| pair.iter().all(|board| is_planned(board));
    let joints_of = |boards: &[&'a Record]| -> Vec<(Length, [&'a Record; 2])> {
        let joint = |pair: &[&'a Record]| {
            let [left, right] = pair else { return None };
            Some((joints(&[left, right], rules).first()?.1?, [*left, *right]))
        };
        boards.windows(2).filter(planned).filter_map(joint).collect()
    };
    let upper = joints_of(upper);
    let mut found = Vec::new();
    for (at, boards) in joints_of(lower) {
        for (other, above) in &upper {
            if (at - *other).abs() < rules.stagger {
                found.extend(boards.iter().chain(above));
            }
        }
    }
    found
}

fn overlaps(board: &Record, left: Length, right: Length) -> bool {
    let (from, to) = (board.length(Field::From), board.length(Field::To));
    from.is_some_and(|from| from < right) && to.is_some_and(|to| left < to)
}

/// What is cut from one board, with the wall that it goes on.
struct TakenFromBoard<'a> {
    stock: Length,
    /// How high the board is, where it is a strip left over.
    low: Option<Length>,
    along: Vec<(&'a WallSite, &'a Record)>,
    /// Out of the strips that are ripped off these.
    strips: Vec<(&'a WallSite, &'a Record)>,
}

impl TakenFromBoard<'_> {
    /// Whether the board holds all of it. Strips lie along the pieces that they come off, which leave enough of the full height;
    /// where those are gone they take the board's own length.
    fn fits(&self, kerf: Length, full: Length) -> bool {
        // As many kerfs as pieces, one of them behind the end of the board.
        let row = |pieces: &mut dyn Iterator<Item = &(&WallSite, &Record)>| -> Length {
            pieces.map(|(_, board)| board.length(Field::Length).unwrap_or_default() + kerf).sum()
        };
        let (along, strips) = (row(&mut self.along.iter()), row(&mut self.strips.iter()));
        if let Some(low) = self.low {
            let mut all = self.along.iter().chain(&self.strips);
            let is_low = |(wall, board): &(&WallSite, &Record)| height(wall, board).is_some_and(|height| height <= low);
            return along + strips <= self.stock + kerf && all.all(is_low);
        }
        if self.strips.is_empty() || self.along.is_empty() {
            return along + strips <= self.stock + kerf;
        }
        let heights: Vec<Length> = self.strips.iter().filter_map(|(wall, board)| height(wall, board)).collect();
        let leaves = |(wall, board): &(&WallSite, &Record), strip: Length| {
            height(wall, board).is_some_and(|height| height + kerf + strip <= full)
        };
        let least = heights.iter().copied().min().unwrap_or_default();
        let under = row(&mut self.along.iter().filter(|own| leaves(own, least)));
        let each = heights.iter().all(|strip| self.along.iter().any(|own| leaves(own, *strip)));
        along <= self.stock + kerf && strips <= under && each
    }
}

/// How high a board is as it lies on its wall today.
fn height(wall: &WallSite, board: &Record) -> Option<Length> {
    let (place, height) = (Placement::of(board)?, board.length(Field::Height)?);
    let shapes = wall.board_shapes(board.whole(Field::Course), place, height).ok()?;
    shapes.iter().map(|shape| shape.height).max()
}

/// The boards that pieces are cut from.
struct AtHand {
    longest: Length,
    stock: Vec<Length>,
    offcuts: BTreeMap<Id, Length>,
    /// Numbers of boards that no longer hold what is to be cut from them.
    overfull: BTreeSet<i64>,
    /// Numbers of boards from which something is cut.
    begun: BTreeSet<i64>,
}

impl AtHand {
    /// What is at hand for the boards with the numbers that are `asked` for.
    fn of(work: &Work, asked: impl Fn(i64) -> bool) -> Result<Self> {
        let kerf = work.rules().get_length(keys::SAW_KERF)?;
        let stock: Vec<Length> = work.stock().into_iter().map(|(length, _)| length).collect();
        let offcuts =
            work.house().own(Kind::Offcut).iter().filter(|offcut| offcut.offcut_state() == OffcutState::AtHand);
        let offcuts = offcuts.filter_map(|offcut| Some((offcut.id(), offcut.length(Field::Length)?)));
        let mut taken: BTreeMap<i64, TakenFromBoard<'_>> = BTreeMap::new();
        let mut begun = BTreeSet::new();
        let all = work.walls().iter().flat_map(|wall| work.boards(wall.id()).iter().map(move |own| (&**wall, &**own)));
        for (wall, board) in all {
            let number = board.whole(Field::CutFrom).filter(|number| asked(*number));
            let Some((number, stock)) = number.zip(board.length(Field::Stock)) else { continue };
            let low = || strip_height(work, board.cut_from_offcut());
            let of = || TakenFromBoard { stock, low: low(), along: Vec::new(), strips: Vec::new() };
            let own = taken.entry(number).or_insert_with(of);
            let row = if is_of_strip(board) { &mut own.strips } else { &mut own.along };
            row.push((wall, board));
            if !is_planned(board) {
                begun.insert(number);
            }
        }
        let full = work.board_height()?;
        let overfull = taken.iter().filter(|(_, own)| !own.fits(kerf, full)).map(|(number, _)| *number).collect();
        let longest = work.longest_stock()?;
        Ok(Self { longest, stock, offcuts: offcuts.collect(), overfull, begun })
    }

    /// Whether there is what a board is cut from. What is cut came from somewhere.
    fn holds(&self, board: &Record) -> bool {
        if !is_planned(board) {
            return true;
        }
        let Some((number, stock)) = board.whole(Field::CutFrom).zip(board.length(Field::Stock)) else {
            return board.length(Field::Length).is_none_or(|length| length <= self.longest);
        };
        let there = match board.cut_from_offcut() {
            Some(offcut) => self.offcuts.get(&offcut) == Some(&stock),
            None => self.stock.contains(&stock),
        };
        !self.overfull.contains(&number) && (there || self.begun.contains(&number))
    }
}
