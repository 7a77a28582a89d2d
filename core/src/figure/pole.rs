use serde_json::{Number, Value, json};

use super::shape::{FigureField, FigureShape};
use super::{Fault, FaultCode, FigureQuestion, Node, Reply, Say};
use crate::measure::Length;
use crate::phrases::key;
use crate::siding::{COURSES_LIMIT, Mark, Mode, Pole, PoleError, PoleRequest, Want};

const MODES: &[&str] = &["equal", "fixed", "fit"];
const WANTS: &[&str] = &["land", "clear"];

/// A story pole.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "pole",
    request: &[
        FigureField::new("from", FigureShape::Length),
        FigureField::new("to", FigureShape::Length),
        FigureField::new("mode", FigureShape::Choice(MODES)),
        FigureField::new("reveal_max", FigureShape::Length),
        FigureField::optional("reveal_min", FigureShape::Length),
        FigureField::optional("reveal", FigureShape::Length),
        FigureField::optional("marks", FigureShape::List(&FigureShape::Object(MARK))),
        FigureField::optional("change_max", FigureShape::Length),
        FigureField::optional("board_height", FigureShape::Length),
        FigureField::optional("lap_min", FigureShape::Length),
        FigureField::optional("division", FigureShape::Division),
    ],
    reply: &[
        FigureField::new("courses", FigureShape::Whole),
        FigureField::new("reveals", FigureShape::List(&FigureShape::Shown)),
        FigureField::new("lines", FigureShape::List(&FigureShape::Shown)),
        FigureField::new("marks", FigureShape::List(&FigureShape::Object(MARK_RESULT))),
        FigureField::new("top_strip", FigureShape::Shown),
        FigureField::new("cost_nm", FigureShape::Whole),
    ],
    example: r#"{"from": "0\"", "to": "98 1/2\"", "mode": "fit", "reveal_min": "5 3/4\"", "reveal_max": "6\"",
 "marks": [{"name": "sill", "at": "34 7/8\"", "want": "land", "weight": 2},
           {"name": "head", "at": "83\"", "want": "land"},
           {"name": "light", "at": "61 1/4\"", "want": "clear", "clear": "1\""}],
 "change_max": "1/8\"", "board_height": "7 1/4\"", "lap_min": "1 1/4\""}"#,
    help: key("siding-pole-help"),
    answer,
};

const MARK: &[FigureField] = &[
    FigureField::new("name", FigureShape::Text),
    FigureField::new("at", FigureShape::Length),
    FigureField::new("want", FigureShape::Choice(WANTS)),
    FigureField::optional("clear", FigureShape::Length),
    FigureField::optional("weight", FigureShape::Whole),
];

const MARK_RESULT: &[FigureField] = &[
    FigureField::new("name", FigureShape::Text),
    FigureField::new("line", FigureShape::Shown),
    FigureField::new("miss", FigureShape::Shown),
    FigureField::new("ok", FigureShape::Flag),
];

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let asked = read(request)?;
    let pole = Pole::lay_out(&asked.pole).map_err(|error| fault(request, &asked, &error))?;
    reply(request, &asked, &pole)
}

/// A request as it was read.
struct Asked {
    pole: PoleRequest,
    /// Board height less least lap, where both are given.
    reveal_covered: Option<Length>,
}

fn read(request: &Node<'_>) -> Result<Asked, Fault> {
    if is(request, "mode", "fixed") {
        request.field("reveal")?;
    }
    let marks = request.items_of("marks").unwrap_or_default();
    if let Some(mark) = marks.iter().find(|mark| is(mark, "want", "clear") && mark.get("clear").is_none()) {
        mark.field("clear")?;
    }

    let from = request.field("from")?.length()?;
    let to_node = request.field("to")?;
    let to = to_node.length()?;
    if to <= from {
        return Err(to_node.fault(FaultCode::Order, Say::new(key("siding-pole-no-height"))));
    }
    let mode = request.field("mode")?.choice(&[("equal", "equal"), ("fixed", "fixed"), ("fit", "fit")])?;
    let reveal_max = request.field("reveal_max")?.positive()?;
    let least_node = request.get("reveal_min");
    let reveal_min = least_node.as_ref().map(Node::positive).transpose()?;
    if let (Some(node), true) = (&least_node, reveal_min.is_some_and(|least| least > reveal_max)) {
        return Err(node.fault(FaultCode::Order, Say::new(key("siding-pole-reveal-order"))));
    }
    let reveal = request.get("reveal").map(|node| node.positive()).transpose()?;
    let marks = request.items_of("marks")?.iter().map(mark).collect::<Result<_, Fault>>()?;
    let change_max = request.get("change_max").map(|node| node.not_negative()).transpose()?;
    let board_height = request.get("board_height").map(|node| node.positive()).transpose()?;
    let lap_node = request.get("lap_min");
    let lap_min = lap_node.as_ref().map(Node::not_negative).transpose()?;
    let reveal_covered = board_height.zip(lap_min).map(|(height, lap)| height - lap);
    if let (Some(node), true) = (&lap_node, reveal_covered.is_some_and(|covered| !covered.is_positive())) {
        return Err(node.fault(FaultCode::Order, Say::new(key("siding-pole-lap-order"))));
    }
    let division = request.division()?;

    let mode = match (mode, reveal) {
        ("fixed", Some(reveal)) => Mode::Fixed { reveal },
        ("fit", _) => Mode::Fit { change_max },
        _ => Mode::Equal,
    };
    Ok(Asked { pole: PoleRequest { from, to, mode, reveal_max, reveal_min, marks, division }, reveal_covered })
}

/// Whether a field is this text.
fn is(node: &Node<'_>, name: &str, text: &str) -> bool {
    node.get(name).is_some_and(|field| field.text().is_ok_and(|own| own == text))
}

fn mark(node: &Node<'_>) -> Result<Mark, Fault> {
    let name = node.field("name")?.text()?.to_owned();
    let at = node.field("at")?.length()?;
    let clears = node.field("want")?.choice(&[("land", false), ("clear", true)])?;
    let clear = node.get("clear").map(|clear| clear.not_negative()).transpose()?;
    let weight = node.get("weight").map(|weight| weight.whole(0, 1000)).transpose()?.unwrap_or(1);
    let want = if clears { Want::Clear(clear.unwrap_or(Length::ZERO)) } else { Want::Land };
    Ok(Mark { name, at, want, weight: u16::try_from(weight).unwrap_or(u16::MAX) })
}

fn fault(request: &Node<'_>, asked: &Asked, error: &PoleError) -> Fault {
    let show = request.common.show;
    let at = |code, field: &str, say| Fault::new(code, request.path_of(field), say);
    match error {
        PoleError::UnderLeast { courses, reveal } => at(
            FaultCode::Infeasible,
            "reveal_min",
            Say::new(key("siding-pole-under-least"))
                .with("courses", courses.to_string())
                .with("reveal", show.text(*reveal)),
        ),
        PoleError::TooManyCourses => {
            let field = if matches!(asked.pole.mode, Mode::Fixed { .. }) { "reveal" } else { "reveal_max" };
            let say = Say::new(key("siding-pole-too-many-courses")).with("limit", COURSES_LIMIT.to_string());
            at(FaultCode::TooBig, field, say)
        }
        PoleError::TooLarge => request.fault(FaultCode::TooBig, Say::new(key("siding-pole-too-large"))),
        // The rest of what can be wrong was found field by field.
        PoleError::NoLayout
        | PoleError::NoHeight
        | PoleError::RevealNotPositive
        | PoleError::RevealOrder
        | PoleError::Negative => request.fault(FaultCode::Infeasible, Say::new(key("siding-pole-no-layout"))),
    }
}

fn reply(request: &Node<'_>, asked: &Asked, pole: &Pole) -> Result<Reply, Fault> {
    let common = request.common;
    let shown = |lengths: &[Length]| lengths.iter().map(|&length| common.shown(length)).collect::<Value>();
    let cost = Number::from_i128(pole.cost).ok_or_else(|| {
        Fault::new(FaultCode::TooBig, request.path_of("marks"), Say::new(key("siding-pole-cost-too-big")))
    })?;
    let mut reply = Reply::default();
    reply.set("courses", pole.lines.len());
    reply.set("reveals", shown(&pole.reveals));
    reply.set("lines", shown(&pole.lines));
    reply.set(
        "marks",
        pole.marks
            .iter()
            .map(|mark| {
                json!({
                    "name": mark.name,
                    "line": common.shown(mark.line),
                    "miss": common.shown(mark.miss),
                    "ok": mark.ok(),
                })
            })
            .collect::<Value>(),
    );
    reply.set("top_strip", common.shown(pole.top_strip()));
    reply.set("cost_nm", Value::Number(cost));
    warn(&mut reply, request, asked, pole);
    Ok(reply)
}

fn warn(reply: &mut Reply, request: &Node<'_>, asked: &Asked, pole: &Pole) {
    let show = request.common.show;
    if let Some(covered) = asked.reveal_covered {
        for (at, reveal) in pole.reveals.iter().enumerate().filter(|(_, reveal)| **reveal > covered) {
            let say = Say::new(key("siding-pole-lap-short"))
                .with("reveal", show.text(*reveal))
                .with("most", show.text(covered));
            reply.warn("lap-short", format!("reveals[{at}]"), say);
        }
    }
    let least = asked.pole.reveal_min.unwrap_or(asked.pole.division.length());
    if matches!(asked.pole.mode, Mode::Fixed { .. }) && pole.top_strip() < least {
        let say = Say::new(key("siding-pole-thin-strip"))
            .with("strip", show.text(pole.top_strip()))
            .with("least", show.text(least));
        reply.warn("thin-strip", "top_strip", say);
    }
}
