use super::shape::{FigureField, FigureShape};
use super::{Fault, FigureQuestion, Node, Reply};
use crate::phrases::key;
use crate::siding::{STRAIN_LIMIT_PERCENT, gap_takes, movement};

/// How much a board's length changes, and whether an end gap takes it up.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "movement",
    request: &[
        FigureField::new("length", FigureShape::Length),
        FigureField::new("strain", FigureShape::Number),
        FigureField::optional("gap", FigureShape::Length),
    ],
    reply: &[FigureField::new("change", FigureShape::Shown), FigureField::optional("ok", FigureShape::Flag)],
    example: r#"{"length": "12'", "strain": 0.0006, "gap": "1/8\""}"#,
    help: key("flashing-movement-help"),
    answer,
};

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let length = request.field("length")?.positive()?;
    let strain = request.field("strain")?;
    let share = strain.number()?.exact;
    let change = movement(length, &share).ok_or_else(|| {
        let most = format!("0.{STRAIN_LIMIT_PERCENT:02}");
        strain.between(&format!("-{most}"), &most)
    })?;
    let gap = request.get("gap").map(|node| node.not_negative()).transpose()?;
    let mut reply = Reply::default();
    reply.set("change", request.common.shown(change));
    reply.set_if("ok", gap.and_then(|gap| gap_takes(length, &share, gap)));
    Ok(reply)
}
