use serde_json::{Map, Number, Value, json};

use super::shape::{FigureField, FigureShape};
use super::{Common, Fault, FaultCode, FigureQuestion, Node, Reply, Say};
use crate::board::{
    BoardCut, BoardError, BoardShape, BoxSide, CourseToHang, MovedOutline, Obstruction, ObstructionGaps, OutlineGaps,
    ShapeLimits, ShapeWarning,
};
use crate::measure::Length;
use crate::phrases::key;
use crate::wall::{Outline, OutlineError, Point};

const CORNER: &[FigureField] =
    &[FigureField::new("x", FigureShape::Length), FigureField::new("y", FigureShape::Length)];
const GAPS: &[FigureField] = &[
    FigureField::optional("side", FigureShape::Length),
    FigureField::optional("rake", FigureShape::Length),
    FigureField::optional("top", FigureShape::Length),
    FigureField::optional("base", FigureShape::Length),
];
const AROUND: &[FigureField] = &[
    FigureField::new("name", FigureShape::Text),
    FigureField::new("left", FigureShape::Length),
    FigureField::new("right", FigureShape::Length),
    FigureField::new("bottom", FigureShape::Length),
    FigureField::new("top", FigureShape::Length),
    FigureField::optional("gap", FigureShape::Object(AROUND_GAPS)),
];
const AROUND_GAPS: &[FigureField] = &[
    FigureField::optional("side", FigureShape::Length),
    FigureField::optional("top", FigureShape::Length),
    FigureField::optional("bottom", FigureShape::Length),
];
const SHOWN_CORNER: &[FigureField] =
    &[FigureField::new("x", FigureShape::Shown), FigureField::new("y", FigureShape::Shown)];
const CORNERS: FigureShape = FigureShape::List(&FigureShape::Object(SHOWN_CORNER));
const BOARD: &[FigureField] = &[
    FigureField::new("at", FigureShape::Object(SHOWN_CORNER)),
    FigureField::new("length", FigureShape::Shown),
    FigureField::new("height", FigureShape::Shown),
    FigureField::new("shape", CORNERS),
    FigureField::optional("holes", FigureShape::List(&CORNERS)),
    FigureField::new("area_mm2", FigureShape::Number),
    FigureField::optional("rip", FigureShape::Object(RIP)),
    FigureField::new("cuts", FigureShape::List(&FigureShape::Object(CUT))),
];
const RIP: &[FigureField] =
    &[FigureField::optional("top", FigureShape::Shown), FigureField::optional("bottom", FigureShape::Shown)];
const CUT: &[FigureField] = &[
    FigureField::new("name", FigureShape::Text),
    FigureField::new("edges", FigureShape::List(&FigureShape::Choice(SIDES))),
    FigureField::new("left", FigureShape::Shown),
    FigureField::new("right", FigureShape::Shown),
    FigureField::new("bottom", FigureShape::Shown),
    FigureField::new("top", FigureShape::Shown),
];
const SIDES: &[&str] = &["left", "right", "bottom", "top"];

/// `board`: the true shape of every board of a level course.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "board",
    request: &[
        FigureField::new("outline", FigureShape::List(&FigureShape::Object(CORNER))),
        FigureField::new("bottom", FigureShape::Length),
        FigureField::new("height", FigureShape::Length),
        FigureField::optional("gaps", FigureShape::Object(GAPS)),
        FigureField::optional("joints", FigureShape::List(&FigureShape::Length)),
        FigureField::optional("joint_gap", FigureShape::Length),
        FigureField::optional("around", FigureShape::List(&FigureShape::Object(AROUND))),
        FigureField::optional("leg_min", FigureShape::Length),
        FigureField::optional("strip_min", FigureShape::Length),
    ],
    reply: &[
        FigureField::new("boards", FigureShape::List(&FigureShape::Object(BOARD))),
        FigureField::new("area_mm2", FigureShape::Number),
    ],
    example: r#"{"outline": [{"x": "0\"", "y": "0\""}, {"x": "20'", "y": "0\""}, {"x": "20'", "y": "8'"},
  {"x": "10'", "y": "12' 2\""}, {"x": "0\"", "y": "8'"}],
 "bottom": "92 1/4\"", "height": "7 1/4\"", "gaps": {"side": "1/8\"", "rake": "1/2\""}, "joints": ["10' 8\""], "joint_gap": "1/8\"",
 "around": [{"name": "vent", "left": "60\"", "right": "68\"", "bottom": "8'", "top": "8' 8\"",
             "gap": {"side": "1/8\"", "top": "1/4\"", "bottom": "1/8\""}}]}"#,
    help: key("board-help"),
    answer,
};

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let outline = outline(&request.field("outline")?)?;
    let bottom = request.field("bottom")?.length()?;
    let height = request.field("height")?.positive()?;
    let gaps = request.object_if("gaps")?;
    let moved = MovedOutline::new(&outline, &gaps.as_ref().map_or(Ok(OutlineGaps::default()), outline_gaps)?);
    let moved = moved.map_err(|error| fault(request, error))?;
    let joints = request.items_of("joints")?.iter().map(Node::length).collect::<Result<Vec<_>, _>>()?;
    let joint_gap = gap(request, "joint_gap")?;
    let around = request.items_of("around")?.iter().map(obstruction).collect::<Result<Vec<_>, _>>()?;
    let standard = ShapeLimits::default();
    let least = |name: &str, standard| request.get(name).map_or(Ok(standard), |node| node.not_negative());
    let limits = ShapeLimits { leg: least("leg_min", standard.leg)?, strip: least("strip_min", standard.strip)? };

    let (names, around): (Vec<&str>, Vec<Obstruction>) = around.into_iter().unzip();
    let course = CourseToHang { bottom, hang: None, height, joints: &joints, joint_gap, around: &around };
    let boards = course.boards(&moved, &limits).map_err(|error| fault(request, error))?;
    let mut reply = Reply::default();
    reply.set("boards", boards.iter().map(|board| shown(board, &names, request.common)).collect::<Value>());
    reply.set("area_mm2", number(boards.iter().map(|board| board.area_mm2).sum()));
    for (at, board) in boards.iter().enumerate() {
        for warning in &board.warnings {
            warn(&mut reply, at, board, *warning, &limits, request.common);
        }
    }
    Ok(reply)
}

fn outline(node: &Node<'_>) -> Result<Outline, Fault> {
    let corner = |node: &Node<'_>| Ok(Point::new(node.field("x")?.length()?, node.field("y")?.length()?));
    let corners = node.items()?.iter().map(corner).collect::<Result<Vec<_>, Fault>>()?;
    Outline::either_way(corners).map_err(|error| {
        node.range(match error {
            OutlineError::Repeated(corner) => Say::new(key("board-outline-twice")).with("corner", corner.to_string()),
            OutlineError::Crossing(one, other) => {
                Say::new(key("board-outline-crosses")).with("one", one.to_string()).with("other", other.to_string())
            }
            // Either way round and within what a list takes.
            OutlineError::TooFew(_)
            | OutlineError::TooMany
            | OutlineError::Clockwise
            | OutlineError::NotPositive(_) => Say::new(key("board-outline-few")),
        })
    })
}

/// A gap, zero where it is left out.
fn gap(node: &Node<'_>, name: &str) -> Result<Length, Fault> {
    node.get(name).map_or(Ok(Length::ZERO), |node| node.not_negative())
}

fn outline_gaps(node: &Node<'_>) -> Result<OutlineGaps, Fault> {
    let (side, rake) = (gap(node, "side")?, gap(node, "rake")?);
    Ok(OutlineGaps { side, rake, top: gap(node, "top")?, base: gap(node, "base")? })
}

fn obstruction<'a>(node: &Node<'a>) -> Result<(&'a str, Obstruction), Fault> {
    let name = node.field("name")?.text()?;
    let over = |least: &str, most: &str| {
        let (from, to_node) = (node.field(least)?.length()?, node.field(most)?);
        let to = to_node.length()?;
        if to > from { Ok((from, to)) } else { Err(to_node.order(&node.path_of(least))) }
    };
    let (left, right) = over("left", "right")?;
    let (bottom, top) = over("bottom", "top")?;
    let gap = match node.object_if("gap")? {
        None => ObstructionGaps::default(),
        Some(own) => {
            let (side, top) = (gap(&own, "side")?, gap(&own, "top")?);
            ObstructionGaps { side, top, bottom: gap(&own, "bottom")? }
        }
    };
    Ok((name, Obstruction::plumb((left, right), (bottom, top), gap)))
}

fn fault(request: &Node<'_>, error: BoardError) -> Fault {
    let at = |code, field: &str, say| Fault::new(code, request.path_of(field), say);
    match error {
        BoardError::Gaps => at(FaultCode::Range, "gaps", Say::new(key("board-gaps"))),
        BoardError::TooMany => {
            let limit = CourseToHang::LIMIT.to_string();
            request.fault(FaultCode::TooBig, Say::new(key("board-too-many")).with("limit", limit))
        }
        // The rest of what can be wrong was found field by field.
        BoardError::Negative
        | BoardError::Height
        | BoardError::Width(_)
        | BoardError::Top(_)
        | BoardError::Knots
        | BoardError::TooFar => request.fault(FaultCode::TooBig, Say::new(key("figure-too-far"))),
    }
}

fn shown(board: &BoardShape, names: &[&str], common: &Common) -> Value {
    let corner = |point: &Point| json!({"x": common.shown(point.x), "y": common.shown(point.y)});
    let ring = |corners: &Vec<Point>| corners.iter().map(corner).collect::<Value>();
    let mut fields = Map::new();
    let mut set = |name: &str, value: Value| fields.insert(name.to_owned(), value);
    set("at", corner(&board.at));
    set("length", common.shown(board.length));
    set("height", common.shown(board.height));
    set("shape", ring(&board.corners));
    if !board.holes.is_empty() {
        set("holes", board.holes.iter().map(ring).collect());
    }
    set("area_mm2", number(board.area_mm2));
    let lost = [("top", board.rip.top), ("bottom", board.rip.bottom)];
    let rip: Map<String, Value> = lost
        .into_iter()
        .filter(|(_, lost)| *lost != Length::ZERO)
        .map(|(edge, lost)| (edge.to_owned(), common.shown(lost)))
        .collect();
    if !rip.is_empty() {
        set("rip", rip.into());
    }
    set("cuts", board.cuts.iter().map(|cut| shown_cut(cut, names, common)).collect());
    fields.into()
}

fn shown_cut(cut: &BoardCut, names: &[&str], common: &Common) -> Value {
    let side = |side: &BoxSide| match side {
        BoxSide::Left => "left",
        BoxSide::Right => "right",
        BoxSide::Bottom => "bottom",
        BoxSide::Top => "top",
    };
    json!({
        "name": names.get(cut.around),
        "edges": cut.sides.iter().map(side).collect::<Vec<_>>(),
        "left": common.shown(cut.left),
        "right": common.shown(cut.right),
        "bottom": common.shown(cut.bottom[0]),
        "top": common.shown(cut.top[0]),
    })
}

fn warn(
    reply: &mut Reply,
    at: usize,
    board: &BoardShape,
    warning: ShapeWarning,
    limits: &ShapeLimits,
    common: &Common,
) {
    let at = format!("boards[{at}]");
    let text = |length: Length| common.show.text(length);
    match warning {
        ShapeWarning::ThinLeg(_) => {
            reply.warn("thin-leg", at, Say::new(key("board-thin-leg")).with("least", text(limits.leg)));
        }
        ShapeWarning::ThinStrip => {
            let say = Say::new(key("board-thin-strip")).with("height", text(board.height));
            reply.warn("thin-strip", at, say.with("least", text(limits.strip)));
        }
        ShapeWarning::ShortPiece => {
            let say = Say::new(key("board-short-piece")).with("length", text(board.length));
            reply.warn("short-piece", at, say.with("least", text(limits.leg)));
        }
    }
}

/// A finite number as JSON.
fn number(float: f64) -> Value {
    Number::from_f64(float).map_or(Value::Null, Value::Number)
}
