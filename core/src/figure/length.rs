use super::{Fault, Field, Node, Question, Reply, Shape, request};
use crate::measure::{Rounding, Show};
use crate::phrases::key;

/// `length`: reads a text and shows it, rounded as asked.
pub(super) const QUESTION: Question = Question {
    name: "length",
    request: &[
        Field::new("text", Shape::Length),
        Field::optional("show", Shape::Choice(&Show::CODES)),
        Field::optional("round", Shape::Choice(&["nearest", "down", "up"])),
    ],
    reply: &[Field::new("length", Shape::Shown), Field::new("error_nm", Shape::Whole)],
    example: r#"{"text": "9'-4 3/8\"", "show": "in/16"}"#,
    help: key("figure-length-help"),
    answer,
};

fn answer(asked: &Node<'_>) -> Result<Reply, Fault> {
    let length = asked.field("text")?.length()?;
    request::show(asked)?;
    let ways = [("nearest", Rounding::Nearest), ("down", Rounding::Down), ("up", Rounding::Up)];
    let round = asked.get("round").map_or(Ok(Rounding::Nearest), |node| node.choice(&ways))?;
    let show = asked.common.show;
    let mut reply = Reply::default();
    reply.set("length", serde_json::json!({"nm": length.nm(), "text": show.text_rounded(length, round)}));
    reply.set("error_nm", (show.shown(length, round) - length).nm());
    Ok(reply)
}
