use serde_json::{Number, Value, json};

use super::request::missing;
use super::shape::{Field, Shape};
use super::{Code, Fault, Node, Question, Reply, Say};
use crate::measure::Length;
use crate::phrases::key;
use crate::siding::{COURSES_LIMIT, Gable, GableCourses, GableError, GableRequest, Pitch};

/// The courses of a symmetric gable.
pub(super) const QUESTION: Question = Question {
    name: "gable",
    request: &[
        Field::new("base", Shape::Length),
        Field::new("pitch", Shape::Object(PITCH)),
        Field::optional("reveal", Shape::Length),
        Field::optional("bottoms", Shape::List(&Shape::Length)),
        Field::new("board_height", Shape::Length),
        Field::optional("division", Shape::Division),
    ],
    reply: &[
        Field::new("angle_deg", Shape::Number),
        Field::new("rise", Shape::Shown),
        Field::new("rake", Shape::Shown),
        Field::new("area_m2", Shape::Number),
        Field::optional("step", Shape::Shown),
        Field::new("edge_difference", Shape::Shown),
        Field::new("courses", Shape::List(&Shape::Object(COURSE))),
    ],
    example: r#"{"base": "22'", "pitch": {"rise": 5, "run": 12}, "reveal": "6\"", "board_height": "7 1/4\""}"#,
    help: key("siding-gable-help"),
    answer,
};

const PITCH: &[Field] = &[Field::new("rise", Shape::Number), Field::new("run", Shape::Number)];

const COURSE: &[Field] =
    &[Field::new("bottom", Shape::Shown), Field::new("long", Shape::Shown), Field::new("short", Shape::Shown)];

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let asked = read(request)?;
    let gable = Gable::of(&asked).map_err(|error| fault(request, error))?;
    let shown = |length: Length| request.common.shown(length);
    let mut reply = Reply::default();
    reply.set("angle_deg", number(gable.degrees));
    reply.set("rise", shown(gable.rise));
    reply.set("rake", shown(gable.rake));
    reply.set("area_m2", number(gable.area_m2));
    reply.set_if("step", gable.step.map(shown));
    reply.set("edge_difference", shown(gable.edge_difference));
    let course = |bottom, long, short| json!({"bottom": shown(bottom), "long": shown(long), "short": shown(short)});
    let courses = gable.courses.iter().map(|own| course(own.bottom, own.long, own.short));
    reply.set("courses", courses.collect::<Value>());
    Ok(reply)
}

fn read(request: &Node<'_>) -> Result<GableRequest, Fault> {
    let (reveal_node, bottoms_node) = (request.get("reveal"), request.get("bottoms"));
    match (&reveal_node, &bottoms_node) {
        (None, None) => return Err(missing(&request.path_of("reveal"))),
        (Some(_), Some(bottoms)) => return Err(bottoms.fault(Code::Choice, Say::new(key("siding-gable-either")))),
        _ => {}
    }
    let base = request.field("base")?.positive()?;
    let pitch_node = request.object("pitch")?;
    let side = |name| {
        let node = pitch_node.field(name)?;
        let number = node.number()?;
        if number.is_positive() { Ok(number.exact) } else { Err(node.range(Say::new("figure-range-positive"))) }
    };
    let pitch = Pitch::new(&side("rise")?, &side("run")?);
    let pitch = pitch.ok_or_else(|| pitch_node.range(Say::new("figure-range-positive")))?;
    let courses = match (reveal_node, bottoms_node) {
        (_, Some(node)) => GableCourses::Bottoms(bottoms(&node)?),
        (Some(node), None) => GableCourses::Reveal(node.positive()?),
        (None, None) => return Err(missing(&request.path_of("reveal"))),
    };
    let board_height = request.field("board_height")?.positive()?;
    let division = request.division()?;
    Ok(GableRequest { base, pitch, courses, board_height, division })
}

fn bottoms(node: &Node<'_>) -> Result<Vec<Length>, Fault> {
    let mut bottoms: Vec<Length> = Vec::new();
    for item in node.items()? {
        let bottom = item.not_negative()?;
        if bottoms.last().is_some_and(|last| bottom <= *last) {
            return Err(item.fault(Code::Order, Say::new(key("siding-gable-ascending"))));
        }
        bottoms.push(bottom);
    }
    Ok(bottoms)
}

fn fault(request: &Node<'_>, error: GableError) -> Fault {
    match error {
        GableError::TooManyCourses => {
            let say = Say::new(key("siding-gable-too-many-courses")).with("limit", COURSES_LIMIT.to_string());
            Fault::new(Code::TooBig, request.path_of("reveal"), say)
        }
        // Sizes were found field by field.
        GableError::TooLarge | GableError::Size => {
            Fault::new(Code::TooBig, request.path_of("pitch"), Say::new(key("siding-gable-too-large")))
        }
    }
}

/// A finite number as JSON.
fn number(float: f64) -> Value {
    Number::from_f64(float).map_or(Value::Null, Value::Number)
}
