use crate::book::{Book, Operation, OperationKind};
use crate::forms::ask::accept;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::screens::planning::refused;
use crate::store::Id;
use crate::work::{WallPlan, WallSite, Work};

/// Plans the boards of a wall: those that are neither cut nor fixed give way, in one answer.
pub(super) fn plan(book: &mut Book, terms: &Terms<'_>, work: &Work, wall: &WallSite) -> Result<Id> {
    let plan = WallPlan::of(work, wall, terms.division).map_err(|error| refused(terms, "wall", error))?;
    let count = plan.boards.len().to_string();
    let mut operation = Operation::new(OperationKind::BoardsPlanned, work.id(), [wall.name(), &count]);
    for board in plan.give_way {
        operation = operation.remove(board);
    }
    for (n, board) in (0..).zip(&plan.boards) {
        operation = board.create(operation, terms.fresh(n), wall.id(), n);
    }
    Ok(accept(book, terms, operation, &[])?.group)
}
