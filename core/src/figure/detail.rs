use serde_json::{Map, Value, json};

use super::assembly::{STEP, step};
use super::shape::{FigureField, FigureShape};
use super::{Fault, FigureQuestion, Node, Reply};
use crate::flashing::{DetailAssembly, Fastening, Layer};
use crate::phrases::key;
use crate::steps::DetailSteps;
use crate::wall::{CornerKind, DetailPlace};

/// What is put at a place that every house has, and the steps that put it there.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "detail",
    request: &[
        FigureField::new("place", FigureShape::Choice(DetailPlace::CODES)),
        FigureField::optional("corner", FigureShape::Choice(CornerKind::CODES)),
        FigureField::optional("head_flashing", FigureShape::Flag),
        FigureField::optional("old_house", FigureShape::Flag),
        FigureField::optional("above_reach", FigureShape::Flag),
    ],
    reply: &[
        FigureField::new("layers", FigureShape::List(&FigureShape::Object(LAYER))),
        FigureField::new("steps", FigureShape::List(&FigureShape::Object(STEP))),
    ],
    example: r#"{"place": "corner-left", "corner": "mitred"}"#,
    help: key("flashing-detail-help"),
    answer,
};

const LAYER: &[FigureField] = &[
    FigureField::new("code", FigureShape::Choice(Layer::CODES)),
    FigureField::new("held", FigureShape::Choice(Fastening::CODES)),
    FigureField::optional("hidden_by", FigureShape::Choice(Layer::CODES)),
];

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let detail = read(request)?;
    let layer = |layer: Layer| {
        let mut fields = Map::new();
        fields.insert("code".to_owned(), json!(layer.code()));
        fields.insert("held".to_owned(), json!(layer.fastening().code()));
        if let Some(over) = detail.assembly.hidden_by(layer) {
            fields.insert("hidden_by".to_owned(), json!(over.code()));
        }
        Value::Object(fields)
    };
    let mut reply = Reply::default();
    reply.set("layers", detail.layers().map(layer).collect::<Vec<_>>());
    reply.set("steps", detail.steps().iter().map(step).collect::<Vec<_>>());
    Ok(reply)
}

fn read(request: &Node<'_>) -> Result<DetailSteps, Fault> {
    let places: Vec<_> = DetailPlace::ALL.iter().map(|place| (place.code(), *place)).collect();
    let corners: Vec<_> = CornerKind::ALL.iter().map(|corner| (corner.code(), *corner)).collect();
    let flag = |name: &str, usual: bool| request.get(name).map_or(Ok(usual), |node| node.flag());
    let place = request.field("place")?.choice(&places)?;
    let corner = request.get("corner").map_or(Ok(CornerKind::Outside), |node| node.choice(&corners))?;
    let opening = matches!(place, DetailPlace::Window | DetailPlace::Door);
    Ok(DetailSteps {
        assembly: DetailAssembly::new(place, corner),
        head_flashing: flag("head_flashing", opening)? && opening,
        old_house: flag("old_house", false)?,
        above_reach: flag("above_reach", false)?,
    })
}
