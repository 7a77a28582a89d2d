use crate::book::{Book, Field, Operation, OperationKind};
use crate::forms::ask;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::store::Id;
use crate::work::{HousePlan, planned};

/// One answer: the planned boards of a house give way to the best plan so far. Gives the group to undo it by.
pub(in crate::screens) fn accept(book: &mut Book, terms: &Terms<'_>, job: Id, house: &HousePlan) -> Result<Id> {
    let plan = house.plan();
    let counts = [plan.pieces.len(), plan.count].map(|count| count.to_string());
    let mut operation = Operation::new(OperationKind::HousePlanned, Some(job), counts.each_ref().map(String::as_str));
    for board in house.give_way() {
        operation = operation.remove(*board);
    }
    for (n, (wall, board)) in (0..).zip(house.boards()) {
        operation = board.create(operation, terms.fresh(n), wall, n);
    }
    // How good the plan is stays with the house, for the saw list.
    let length = |cost: u64| planned(Length::from_nm(i64::try_from(cost).unwrap_or(i64::MAX)));
    let known = [(Field::PlanUsed, length(plan.cost)), (Field::PlanLeast, length(plan.bound))];
    Ok(ask::accept(book, terms, operation.set_all(job, known), &[])?.group)
}
