use serde_json::{Map, Value, json};

use super::shape::{Field, Shape};
use super::{Fault, Node, Question, Reply, through};
use crate::flashing::Layer;
use crate::phrases::key;
use crate::steps::{PenetrationDetail, Step};
use crate::wall::{Finish, Mounting, PenetrationKind};

/// What goes round a penetration, and the steps that put it there.
pub(super) const QUESTION: Question = Question {
    name: "assembly",
    request: &[
        Field::new("kind", Shape::Choice(PenetrationKind::CODES)),
        Field::new("through", Shape::Either(&[Shape::Object(ROUND), Shape::Object(RECTANGLE)])),
        Field::new("comes_off", Shape::Flag),
        Field::new("finish", Shape::Choice(Finish::CODES)),
        Field::optional("head_flashing", Shape::Flag),
        Field::optional("first_course", Shape::Flag),
        Field::optional("painted", Shape::Flag),
        Field::optional("old_house", Shape::Flag),
        Field::optional("above_reach", Shape::Flag),
    ],
    reply: &[
        Field::new("layers", Shape::List(&Shape::Choice(Layer::CODES))),
        Field::new("steps", Shape::List(&Shape::Object(STEP))),
    ],
    example: r#"{"kind": "light", "through": {"width": "4\"", "height": "4\""}, "comes_off": true, "finish": "block",
 "head_flashing": true, "painted": true}"#,
    help: key("flashing-assembly-help"),
    answer,
};

const ROUND: &[Field] = &[through::ROUND];
const RECTANGLE: &[Field] = &[through::WIDTH, through::HEIGHT];
pub(super) const STEP: &[Field] = &[
    Field::new("code", Shape::Text),
    Field::optional("puts", Shape::Choice(Layer::CODES)),
    Field::new("hidden", Shape::Flag),
    Field::new("safe", Shape::Flag),
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
