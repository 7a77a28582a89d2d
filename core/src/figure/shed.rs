use serde_json::json;

use super::shape::{FigureField, FigureShape};
use super::{Fault, FaultCode, FigureQuestion, Node, Reply, Say};
use crate::flashing::{ShedError, ShedFault, ShedKind, ShedLayer, ShedRequest, Slit, WallRectangle, shed_faults};
use crate::measure::Length;
use crate::phrases::key;

/// Whether the layers of a wall shed water.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "shed",
    request: &[
        FigureField::new("layers", FigureShape::List(&FigureShape::Object(LAYER))),
        FigureField::new("lap_min", FigureShape::Length),
        FigureField::optional("shadow", FigureShape::Length),
        FigureField::optional("pipe", FigureShape::Object(PIPE)),
    ],
    reply: &[
        FigureField::new("sheds", FigureShape::Flag),
        FigureField::new("faults", FigureShape::List(&FigureShape::Object(FAULT))),
    ],
    example: r#"{"layers": [
 {"name": "board 1", "depth": 1, "left": "0\"", "right": "80\"", "bottom": "0\"", "top": "7 1/4\"", "exposed": true},
 {"name": "patch", "depth": 2, "left": "26\"", "right": "40\"", "bottom": "6 1/2\"", "top": "12\"", "lap_min": "3/4\"",
  "slit": {"x": "33\"", "from": "9 3/4\"", "to": "12\""}},
 {"name": "board 2", "depth": 3, "left": "0\"", "right": "80\"", "bottom": "6\"", "top": "13 1/4\"", "exposed": true}],
 "lap_min": "1 1/4\"", "pipe": {"x": "33\"", "y": "9 1/4\"", "diameter": "1\""}}"#,
    help: key("flashing-shed-help"),
    answer,
};

const LAYER: &[FigureField] = &[
    FigureField::new("name", FigureShape::Text),
    FigureField::new("depth", FigureShape::Whole),
    FigureField::new("left", FigureShape::Length),
    FigureField::new("right", FigureShape::Length),
    FigureField::new("bottom", FigureShape::Length),
    FigureField::new("top", FigureShape::Length),
    FigureField::optional("exposed", FigureShape::Flag),
    FigureField::optional("lap_min", FigureShape::Length),
    FigureField::optional("slit", FigureShape::Object(SLIT)),
];
const SLIT: &[FigureField] = &[
    FigureField::new("x", FigureShape::Length),
    FigureField::new("from", FigureShape::Length),
    FigureField::new("to", FigureShape::Length),
];
const PIPE: &[FigureField] = &[
    FigureField::new("x", FigureShape::Length),
    FigureField::new("y", FigureShape::Length),
    FigureField::new("diameter", FigureShape::Length),
];
const FAULT: &[FigureField] = &[
    FigureField::new("kind", FigureShape::Choice(&["short-lap", "stops-short", "behind", "shows", "slit-down"])),
    FigureField::new("upper", FigureShape::Text),
    FigureField::new("lower", FigureShape::Text),
    FigureField::new(
        "at",
        FigureShape::Object(&[FigureField::new("x", FigureShape::Shown), FigureField::new("y", FigureShape::Shown)]),
    ),
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
    Ok(ShedLayer { name, depth, area: WallRectangle { left, right, bottom, top }, exposed, lap_min, slit })
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
    let order =
        |index: usize, field: &str, say| Fault::new(FaultCode::Order, format!("{layers}[{index}].{field}"), say);
    match error {
        ShedError::Overlap { index, other } => {
            let say = Say::new(key("flashing-shed-overlap")).with("other", format!("{layers}[{other}]"));
            order(index, "depth", say)
        }
        ShedError::Exposed { index } => order(index, "exposed", Say::new(key("flashing-shed-exposed"))),
        ShedError::LapMin { index } => order(index, "lap_min", Say::new(key("flashing-shed-lap-min"))),
        ShedError::TooBig => Fault::new(FaultCode::TooBig, layers, Say::new(key("flashing-shed-too-big"))),
    }
}
