use std::collections::BTreeMap;

use crate::measure::Length;
use crate::saw::Plan;
use crate::screens::ask::{accept as write, op};
use crate::screens::context::Terms;
use crate::screens::trouble::Kept;
use crate::screens::wall::plan::{bevelled, bevels};
use crate::screens::{kinds, show};
use crate::store::{Change, Id, Store, Value};
use crate::views::{Outcome, Place};

use super::house::House;

/// One answer: the planned boards give way to the plan's pieces. Of each it is kept what it is cut from: `stock` the
/// length of the board, `cut-from` the board's number in cutting order, `offcut` the offcut where it is one.
pub(super) fn accept(store: &mut Store, terms: &Terms<'_>, job: Id, house: &House, plan: &Plan) -> Kept<Outcome> {
    let planned = |length: Length| Value::Length { length, typed: String::new(), unit: "mm".to_owned() };
    let yes = || Value::Text("yes".to_owned());
    let mut answer = op("house-planned", Some(job), [&plan.pieces.len().to_string(), &plan.count.to_string()]);
    for board in &house.planned {
        answer = answer.with(Change::Remove { subject: *board });
    }
    let mut cut_from: BTreeMap<usize, (i64, usize)> = BTreeMap::new();
    // Numbered in cutting order: pieces are in the order of walls and courses.
    let mut order: Vec<usize> = (0..plan.boards.len()).collect();
    order.sort_by_key(|at| plan.boards.get(*at).and_then(|board| board.pieces.iter().min()));
    for (nth, at) in order.into_iter().enumerate() {
        let Some(board) = plan.boards.get(at) else { continue };
        let number = house.last + 1 + i64::try_from(nth).unwrap_or(0);
        cut_from.extend(board.pieces.iter().map(|piece| (*piece, (number, at))));
    }
    for (at, piece) in plan.pieces.iter().enumerate() {
        let Some(strip) = house.runs.get(piece.run) else { continue };
        let n = u32::try_from(at).unwrap_or(u32::MAX);
        let id = terms.fresh(n);
        let course = i64::from(strip.course.middle.course);
        let (from, to) = (piece.from - strip.moved, piece.to - strip.moved);
        let (left, right) = (strip.course.bottom_at(from), strip.course.bottom_at(to));
        answer = answer
            .create(id, kinds::BOARD, Some(strip.wall), format!("{course:06}-{n:06}"))
            .set(id, "course", Value::Whole(course))
            .set(id, "from", planned(from))
            .set(id, "to", planned(to))
            .set(id, "length", planned(piece.length))
            .set(id, "bottom", planned(left))
            .set(id, "height", planned(strip.course.middle.height))
            .set(id, "state", Value::Text("planned".to_owned()));
        if left != right {
            answer = answer.set(id, "bottom-right", planned(right));
        }
        // A run of several pieces has joints, and a rake or an end out of plumb has a bevel: both add steps.
        let beside = [at.wrapping_sub(1), at + 1].into_iter().filter_map(|other| plan.pieces.get(other));
        if beside.into_iter().any(|other| other.run == piece.run) {
            answer = answer.set(id, "joint", yes());
        }
        answer = bevelled(answer, id, bevels(&strip.run, (from, to), house.list.end_gap));
        if let Some((number, board)) = cut_from.get(&at)
            && let Some(board) = plan.boards.get(*board)
        {
            answer = answer.set(id, "cut-from", Value::Whole(*number)).set(id, "stock", planned(board.length));
            if let Some(offcut) = house.offcuts.get(board.source).filter(|_| board.offcut) {
                answer = answer.set(id, "offcut", Value::Text(offcut.to_string()));
            }
        }
    }
    // How good the plan is stays with the house, for the list of cuts.
    let length = |cost: u64| planned(Length::from_nm(i64::try_from(cost).unwrap_or(i64::MAX)));
    answer = answer.set(job, "plan-used", length(plan.cost)).set(job, "plan-least", length(plan.bound));
    let group = write(store, terms, answer, &[])?.group;
    let place = Place::House { job: job.to_string() };
    let view = show(store, terms, &place)?;
    Ok(Outcome { place, view, group: group.to_string() })
}
