use serde_json::{Map, Value, json};

use super::shape::{FigureField, FigureShape};
use super::{Fault, FigureQuestion, Node, Reply, through};
use crate::flashing::Layer;
use crate::phrases::key;
use crate::steps::{PenetrationDetail, Step};
use crate::wall::{Finish, Mounting, PenetrationKind};

/// What goes round a penetration, and the steps that put it there.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "assembly",
    request: &[
        FigureField::new("kind", FigureShape::Choice(PenetrationKind::CODES)),
        FigureField::new("through", FigureShape::Either(&[FigureShape::Object(ROUND), FigureShape::Object(RECTANGLE)])),
        FigureField::new("comes_off", FigureShape::Flag),
        FigureField::new("finish", FigureShape::Choice(Finish::CODES)),
        FigureField::optional("head_flashing", FigureShape::Flag),
        FigureField::optional("first_course", FigureShape::Flag),
        FigureField::optional("painted", FigureShape::Flag),
        FigureField::optional("old_house", FigureShape::Flag),
        FigureField::optional("above_reach", FigureShape::Flag),
    ],
    reply: &[
        FigureField::new("layers", FigureShape::List(&FigureShape::Choice(Layer::CODES))),
        FigureField::new("steps", FigureShape::List(&FigureShape::Object(STEP))),
    ],
    example: r#"{"kind": "light", "through": {"width": "4\"", "height": "4\""}, "comes_off": true, "finish": "block",
 "head_flashing": true, "painted": true}"#,
    help: key("flashing-assembly-help"),
    answer,
};

const ROUND: &[FigureField] = &[through::ROUND];
const RECTANGLE: &[FigureField] = &[through::WIDTH, through::HEIGHT];
pub(super) const STEP: &[FigureField] = &[
    FigureField::new("code", FigureShape::Text),
    FigureField::optional("puts", FigureShape::Choice(Layer::CODES)),
    FigureField::new("hidden", FigureShape::Flag),
    FigureField::new("safe", FigureShape::Flag),
];

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let detail = read(request)?;
    let codes: Vec<&str> = detail.assembly().layers().map(Layer::code).collect();
    let steps: Vec<Value> = detail.steps().iter().map(step).collect();
    let mut reply = Reply::default();
    reply.set("layers", codes);
    reply.set("steps", steps);
    Ok(reply)
}

pub(super) fn step(step: &Step) -> Value {
    let mut fields = Map::new();
    fields.insert("code".to_owned(), json!(step.code));
    if let Some(layer) = step.puts {
        fields.insert("puts".to_owned(), json!(layer.code()));
    }
    fields.insert("hidden".to_owned(), json!(step.hidden_by_later));
    fields.insert("safe".to_owned(), json!(step.keeps_safe));
    Value::Object(fields)
}

fn read(request: &Node<'_>) -> Result<PenetrationDetail, Fault> {
    let kinds: Vec<_> = PenetrationKind::ALL.iter().map(|kind| (kind.code(), *kind)).collect();
    let finishes: Vec<_> = Finish::ALL.iter().map(|finish| (finish.code(), *finish)).collect();
    let flag = |name: &str| request.get(name).map_or(Ok(false), |node| node.flag());
    let kind = request.field("kind")?.choice(&kinds)?;
    let shape = through::read(&request.object("through")?)?;
    let mounting = if request.field("comes_off")?.flag()? { Mounting::SlipOver } else { Mounting::Split };
    let finish = request.field("finish")?.choice(&finishes)?;
    let head_flashing = flag("head_flashing")?;
    let detail = PenetrationDetail {
        head_flashing,
        first_course: flag("first_course")?,
        painted: flag("painted")?,
        old_house: flag("old_house")?,
        above_reach: flag("above_reach")?,
        ..PenetrationDetail::plain(kind, shape, finish, mounting)
    };
    Ok(PenetrationDetail { bottom_open: detail.has_head_flashing(), ..detail })
}
