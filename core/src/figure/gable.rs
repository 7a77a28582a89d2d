use serde_json::{Number, Value, json};

use super::request::missing;
use super::shape::{FigureField, FigureShape};
use super::{Fault, FaultCode, FigureQuestion, Node, Reply, Say};
use crate::measure::Length;
use crate::phrases::key;
use crate::siding::{COURSES_LIMIT, Gable, GableCourses, GableError, GableRequest, Pitch};

/// The courses of a symmetric gable.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "gable",
    request: &[
        FigureField::new("base", FigureShape::Length),
        FigureField::new("pitch", FigureShape::Object(PITCH)),
        FigureField::optional("reveal", FigureShape::Length),
        FigureField::optional("bottoms", FigureShape::List(&FigureShape::Length)),
        FigureField::new("board_height", FigureShape::Length),
        FigureField::optional("division", FigureShape::Division),
    ],
    reply: &[
        FigureField::new("angle_deg", FigureShape::Number),
        FigureField::new("rise", FigureShape::Shown),
        FigureField::new("rake", FigureShape::Shown),
        FigureField::new("area_m2", FigureShape::Number),
        FigureField::optional("step", FigureShape::Shown),
        FigureField::new("edge_difference", FigureShape::Shown),
        FigureField::new("courses", FigureShape::List(&FigureShape::Object(COURSE))),
    ],
    example: r#"{"base": "22'", "pitch": {"rise": 5, "run": 12}, "reveal": "6\"", "board_height": "7 1/4\""}"#,
    help: key("siding-gable-help"),
    answer,
};

const PITCH: &[FigureField] =
    &[FigureField::new("rise", FigureShape::Number), FigureField::new("run", FigureShape::Number)];

const COURSE: &[FigureField] = &[
    FigureField::new("bottom", FigureShape::Shown),
    FigureField::new("long", FigureShape::Shown),
    FigureField::new("short", FigureShape::Shown),
];

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
        (Some(_), Some(bottoms)) => return Err(bottoms.fault(FaultCode::Choice, Say::new(key("siding-gable-either")))),
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
            return Err(item.fault(FaultCode::Order, Say::new(key("siding-gable-ascending"))));
        }
        bottoms.push(bottom);
    }
    Ok(bottoms)
}

fn fault(request: &Node<'_>, error: GableError) -> Fault {
    match error {
        GableError::TooManyCourses => {
            let say = Say::new(key("siding-gable-too-many-courses")).with("limit", COURSES_LIMIT.to_string());
            Fault::new(FaultCode::TooBig, request.path_of("reveal"), say)
        }
        // Sizes were found field by field.
        GableError::TooLarge | GableError::Size => {
            Fault::new(FaultCode::TooBig, request.path_of("pitch"), Say::new(key("siding-gable-too-large")))
        }
    }
}

/// A finite number as JSON.
fn number(float: f64) -> Value {
    Number::from_f64(float).map_or(Value::Null, Value::Number)
}
