use serde_json::json;

use super::shape::{Field, Shape};
use super::{Code, Fault, Node, Question, Reply, Say};
use crate::flashing::{Rectangle, ShedError, ShedFault, ShedKind, ShedLayer, ShedRequest, Slit, shed_faults};
use crate::measure::Length;
use crate::phrases::key;

/// Whether the layers of a wall shed water.
pub(super) const QUESTION: Question = Question {
    name: "shed",
    request: &[
        Field::new("layers", Shape::List(&Shape::Object(LAYER))),
        Field::new("lap_min", Shape::Length),
        Field::optional("shadow", Shape::Length),
        Field::optional("pipe", Shape::Object(PIPE)),
    ],
    reply: &[Field::new("sheds", Shape::Flag), Field::new("faults", Shape::List(&Shape::Object(FAULT)))],
    example: r#"{"layers": [
 {"name": "board 1", "depth": 1, "left": "0\"", "right": "80\"", "bottom": "0\"", "top": "7 1/4\"", "exposed": true},
 {"name": "patch", "depth": 2, "left": "26\"", "right": "40\"", "bottom": "6 1/2\"", "top": "12\"", "lap_min": "3/4\"",
  "slit": {"x": "33\"", "from": "9 3/4\"", "to": "12\""}},
 {"name": "board 2", "depth": 3, "left": "0\"", "right": "80\"", "bottom": "6\"", "top": "13 1/4\"", "exposed": true}],
 "lap_min": "1 1/4\"", "pipe": {"x": "33\"", "y": "9 1/4\"", "diameter": "1\""}}"#,
    help: key("flashing-shed-help"),
    answer,
};

const LAYER: &[Field] = &[
    Field::new("name", Shape::Text),
    Field::new("depth", Shape::Whole),
    Field::new("left", Shape::Length),
    Field::new("right", Shape::Length),
    Field::new("bottom", Shape::Length),
    Field::new("top", Shape::Length),
    Field::optional("exposed", Shape::Flag),
    Field::optional("lap_min", Shape::Length),
    Field::optional("slit", Shape::Object(SLIT)),
];
const SLIT: &[Field] =
    &[Field::new("x", Shape::Length), Field::new("from", Shape::Length), Field::new("to", Shape::Length)];
const PIPE: &[Field] =
    &[Field::new("x", Shape::Length), Field::new("y", Shape::Length), Field::new("diameter", Shape::Length)];
const FAULT: &[Field] = &[
    Field::new("kind", Shape::Choice(&["short-lap", "stops-short", "behind", "shows", "slit-down"])),
    Field::new("upper", Shape::Text),
    Field::new("lower", Shape::Text),
    Field::new("at", Shape::Object(&[Field::new("x", Shape::Shown), Field::new("y", Shape::Shown)])),
];
const DEPTH_MOST: i64 = 1_000_000_000;

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let asked = read(request)?;
    let faults = shed_faults(&asked).map_err(|error| fault(request, error))?;
    let shown = |length| request.common.shown(length);
    let one = |fault: &ShedFault| {
        json!({"kind": kind(fault.kind), "upper": fault.upper, "lower": fault.lower,
            "at": {"x": shown(fault.x), "y": shown(fault.y)}})
    };
    let mut reply = Reply::default();
    reply.set("sheds", faults.is_empty());
    reply.set("faults", faults.iter().map(one).collect::<Vec<_>>());
    Ok(reply)
}

const fn kind(kind: ShedKind) -> &'static str {
    match kind {
        ShedKind::ShortLap => "short-lap",
        ShedKind::StopsShort => "stops-short",
        ShedKind::Behind => "behind",
        ShedKind::Shows => "shows",
        ShedKind::SlitDown => "slit-down",
    }
}

fn read(request: &Node<'_>) -> Result<ShedRequest, Fault> {
    let layers = request.field("layers")?.items()?.iter().map(layer).collect::<Result<_, Fault>>()?;
    let lap_min = request.field("lap_min")?.not_negative()?;
    let shadow = request.get("shadow").map(|node| node.not_negative()).transpose()?;
    let pipe_y = match request.object_if("pipe")? {
        None => None,
        Some(pipe) => {
            pipe.field("x")?.length()?;
            let y = pipe.field("y")?.length()?;
            pipe.field("diameter")?.positive()?;
            Some(y)
        }
    };
    let shadow = shadow.unwrap_or(Length::from_inches_64(0, 12));
    Ok(ShedRequest { layers, lap_min, shadow, pipe_y, drains: Vec::new() })
}

fn layer(node: &Node<'_>) -> Result<ShedLayer, Fault> {
    let name = node.field("name")?.text()?.to_owned();
    let depth = node.field("depth")?.whole(-DEPTH_MOST, DEPTH_MOST)?;
    let (left, right) = (node.field("left")?.length()?, after(node, "right", "left")?);
    let (bottom, top) = (node.field("bottom")?.length()?, after(node, "top", "bottom")?);
    let exposed = node.get("exposed").map(|node| node.flag()).transpose()?.unwrap_or(false);
    let lap_min = node.get("lap_min").map(|node| node.not_negative()).transpose()?;
    let slit = match node.object_if("slit")? {
        None => None,
        Some(slit) => {
            let (x, from) = (slit.field("x")?.length()?, slit.field("from")?.length()?);
            Some(Slit { x, from, to: after(&slit, "to", "from")? })
        }
    };
    Ok(ShedLayer { name, depth, area: Rectangle { left, right, bottom, top }, exposed, lap_min, slit })
}

/// A field that must be greater than an earlier one.
fn after(node: &Node<'_>, name: &str, earlier: &str) -> Result<Length, Fault> {
    let least = node.field(earlier)?.length()?;
    let own = node.field(name)?;
    let length = own.length()?;
    if length > least { Ok(length) } else { Err(own.order(&node.path_of(earlier))) }
}

fn fault(request: &Node<'_>, error: ShedError) -> Fault {
    let layers = request.path_of("layers");
    let order = |index: usize, field: &str, say| Fault::new(Code::Order, format!("{layers}[{index}].{field}"), say);
    match error {
        ShedError::Overlap { index, other } => {
            let say = Say::new(key("flashing-shed-overlap")).with("other", format!("{layers}[{other}]"));
            order(index, "depth", say)
        }
        ShedError::Exposed { index } => order(index, "exposed", Say::new(key("flashing-shed-exposed"))),
        ShedError::LapMin { index } => order(index, "lap_min", Say::new(key("flashing-shed-lap-min"))),
        ShedError::TooBig => Fault::new(Code::TooBig, layers, Say::new(key("flashing-shed-too-big"))),
    }
}
