use super::request::show;
use super::{Fault, FigureField, FigureQuestion, FigureShape, Node, Reply};
use crate::measure::{Rounding, Show};
use crate::phrases::key;

/// `length`: reads a text and shows it, rounded as asked.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "length",
    request: &[
        FigureField::new("text", FigureShape::Length),
        FigureField::optional("show", FigureShape::Choice(&Show::CODES)),
        FigureField::optional("round", FigureShape::Choice(&["nearest", "down", "up"])),
    ],
    reply: &[FigureField::new("length", FigureShape::Shown), FigureField::new("error_nm", FigureShape::Whole)],
    example: r#"{"text": "9'-4 3/8\"", "show": "in/16"}"#,
    help: key("figure-length-help"),
    answer,
};

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let length = request.field("text")?.length()?;
    let show = show(request)?.unwrap_or(request.common.show);
    let ways = [("nearest", Rounding::Nearest), ("down", Rounding::Down), ("up", Rounding::Up)];
    let round = request.get("round").map_or(Ok(Rounding::Nearest), |node| node.choice(&ways))?;
    let mut reply = Reply::default();
    reply.set("length", serde_json::json!({"nm": length.nm(), "text": show.text_rounded(length, round)}));
    reply.set("error_nm", (show.shown(length, round) - length).nm());
    Ok(reply)
}
