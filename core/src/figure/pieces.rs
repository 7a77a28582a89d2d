use std::time::Duration;

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::ToPrimitive;
use serde_json::{Map, Number, Value, json};

use super::shape::{FigureField, FigureShape};
use super::{Fault, FaultCode, FigureQuestion, Node, Reply, Say};
use crate::measure::Length;
use crate::phrases::key;
use crate::saw::{
    CutList, DEFAULT_EFFORT, JointFree, Piece, Planner, RunToCut, SawError, SawnBoard, Stock, StudCenters,
};

const RUN: &[FigureField] = &[
    FigureField::new("name", FigureShape::Text),
    FigureField::new("course", FigureShape::Whole),
    FigureField::new("from", FigureShape::Length),
    FigureField::new("to", FigureShape::Length),
    FigureField::optional("wall", FigureShape::Text),
];
const STUDS: &[FigureField] =
    &[FigureField::new("first", FigureShape::Length), FigureField::new("spacing", FigureShape::Length)];
const STOCK: &[FigureField] = &[
    FigureField::new("length", FigureShape::Length),
    FigureField::optional("cost", FigureShape::Number),
    FigureField::optional("count", FigureShape::Whole),
];
const AVOID: &[FigureField] = &[
    FigureField::optional("wall", FigureShape::Text),
    FigureField::new("from", FigureShape::Length),
    FigureField::new("to", FigureShape::Length),
    FigureField::optional("courses", FigureShape::List(&FigureShape::Whole)),
];
const PIECE: &[FigureField] = &[
    FigureField::new("run", FigureShape::Text),
    FigureField::new("course", FigureShape::Whole),
    FigureField::new("from", FigureShape::Shown),
    FigureField::new("to", FigureShape::Shown),
    FigureField::new("length", FigureShape::Shown),
];
const BOARD: &[FigureField] = &[
    FigureField::new("stock", FigureShape::Shown),
    FigureField::optional("offcut", FigureShape::Flag),
    FigureField::new("pieces", FigureShape::List(&FigureShape::Whole)),
    FigureField::new("left", FigureShape::Shown),
    FigureField::optional("keep", FigureShape::Flag),
];

/// Joints and cuts for all runs from the boards at hand.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "pieces",
    request: &[
        FigureField::new("runs", FigureShape::List(&FigureShape::Object(RUN))),
        FigureField::optional(
            "studs",
            FigureShape::Either(&[FigureShape::Object(STUDS), FigureShape::List(&FigureShape::Length)]),
        ),
        FigureField::new("stock", FigureShape::List(&FigureShape::Object(STOCK))),
        FigureField::optional("offcuts", FigureShape::List(&FigureShape::Length)),
        FigureField::new("kerf", FigureShape::Length),
        FigureField::new("end_gap", FigureShape::Length),
        FigureField::optional("joint_gap", FigureShape::Length),
        FigureField::optional("stagger", FigureShape::Length),
        FigureField::optional("piece_min", FigureShape::Length),
        FigureField::optional("extra_joints", FigureShape::Whole),
        FigureField::optional("avoid", FigureShape::List(&FigureShape::Object(AVOID))),
        FigureField::optional("keep_min", FigureShape::Length),
        FigureField::optional("joints", FigureShape::Flag),
        FigureField::optional("division", FigureShape::Division),
        FigureField::optional("effort", FigureShape::Whole),
        FigureField::optional("seconds", FigureShape::Number),
    ],
    reply: &[
        FigureField::new("pieces", FigureShape::List(&FigureShape::Object(PIECE))),
        FigureField::new("boards", FigureShape::List(&FigureShape::Object(BOARD))),
        FigureField::new("count", FigureShape::Whole),
        FigureField::new("cost", FigureShape::Number),
        FigureField::new("bound", FigureShape::Number),
        FigureField::new("proved", FigureShape::Flag),
        FigureField::optional("stopped", FigureShape::Flag),
        FigureField::new("waste_share", FigureShape::Number),
    ],
    example: r#"{"runs": [{"name": "low", "course": 1, "from": "0\"", "to": "230\""},
  {"name": "next", "course": 2, "from": "0\"", "to": "230\""}, {"name": "top", "course": 3, "from": "0\"", "to": "81\""}],
 "studs": {"first": "0\"", "spacing": "16\""}, "stock": [{"length": "144\""}, {"length": "192\""}], "offcuts": ["90\""],
 "kerf": "1/8\"", "end_gap": "1/8\"", "stagger": "32\"", "piece_min": "24\""}"#,
    help: key("saw-help"),
    answer,
};

/// Steps between two looks at the clock.
const SLICE: u64 = 5;

fn answer(root: &Node<'_>) -> Result<Reply, Fault> {
    let (list, names) = cut_list(root)?;
    let effort = root.get("effort").map_or(Ok(DEFAULT_EFFORT as i64), |node| node.whole(0, 1_000_000_000))?;
    let seconds = root.get("seconds").map(|node| seconds(&node)).transpose()?;
    let clock = root.common.clock;
    let start = clock();
    let mut planner = Planner::new(&list).map_err(|error| fault(root, &error))?;
    let mut left = effort.unsigned_abs();
    let mut stopped = false;
    let mut done = planner.step(0).done;
    while !done && left > 0 {
        if seconds.is_some_and(|seconds| clock().saturating_sub(start) >= seconds) {
            stopped = true;
            break;
        }
        let slice = SLICE.min(left);
        left -= slice;
        done = planner.step(slice).done;
    }
    let plan = planner.plan();
    let shown = |length: Length| root.common.shown(length);
    let piece = |piece: &Piece| {
        let course = list.runs.get(piece.run).map_or(0, |run| run.course);
        let name = names.get(piece.run).copied().unwrap_or_default();
        json!({
            "run": name, "course": course,
            "from": shown(piece.from), "to": shown(piece.to), "length": shown(piece.length),
        })
    };
    let board = |board: &SawnBoard| {
        let mut fields = Map::new();
        fields.insert("stock".to_owned(), shown(board.length));
        if board.offcut {
            fields.insert("offcut".to_owned(), Value::Bool(true));
        }
        fields.insert("pieces".to_owned(), board.pieces.iter().copied().collect());
        fields.insert("left".to_owned(), shown(board.left));
        if board.keep {
            fields.insert("keep".to_owned(), Value::Bool(true));
        }
        Value::Object(fields)
    };
    let mut reply = Reply::default();
    reply.set("pieces", plan.pieces.iter().map(piece).collect::<Value>());
    reply.set("boards", plan.boards.iter().map(board).collect::<Value>());
    reply.set("count", plan.count);
    reply.set("cost", number(plan.cost as f64 / 1e9));
    reply.set("bound", number(plan.bound as f64 / 1e9));
    reply.set("proved", plan.proved);
    reply.set_if("stopped", stopped.then_some(true));
    reply.set("waste_share", number(plan.waste_share()));
    Ok(reply)
}

fn cut_list<'a>(root: &Node<'a>) -> Result<(CutList, Vec<&'a str>), Fault> {
    let mut list = CutList::new();
    let mut names = Vec::new();
    for node in root.field("runs")?.items()? {
        let name = node.field("name")?.text()?;
        let course = whole(&node.field("course")?)?;
        let (from, to) = (node.field("from")?.length()?, node.field("to")?);
        let end = to.length()?;
        if end < from {
            return Err(to.order(&node.path_of("from")));
        }
        let wall = node.get("wall").map_or(Ok(""), |node| node.text())?.to_owned();
        list.runs.push(RunToCut { wall, course, from, to: end });
        names.push(name);
    }
    list.studs = root.get("studs").map(|node| studs(&node)).transpose()?;
    for node in root.field("stock")?.items()? {
        let length = node.field("length")?.positive()?;
        let cost = match node.get("cost") {
            Some(node) => billionths(&node)?,
            None => length.nm().unsigned_abs(),
        };
        let count = node.get("count").map(|node| node.whole(0, i64::from(u32::MAX))).transpose()?;
        list.stock.push(Stock { length, cost, count: count.and_then(|count| u32::try_from(count).ok()) });
    }
    for node in root.items_of("offcuts")? {
        list.offcuts.push(node.positive()?);
    }
    let gap = |name: &str| root.get(name).map(|node| node.not_negative()).transpose();
    list.kerf = root.field("kerf")?.not_negative()?;
    list.end_gap = root.field("end_gap")?.not_negative()?;
    list.joint_gap = gap("joint_gap")?.unwrap_or(Length::ZERO);
    if let Some(StudCenters::Spaced { spacing, .. }) = list.studs {
        list.stagger = spacing;
    }
    list.stagger = gap("stagger")?.unwrap_or(list.stagger);
    list.piece_min = gap("piece_min")?.unwrap_or(Length::ZERO);
    let extra = root.get("extra_joints").map_or(Ok(0), |node| node.whole(0, 10_000))?;
    list.extra_joints = u32::try_from(extra).unwrap_or(0);
    for node in root.items_of("avoid")? {
        let wall = node.get("wall").map(|node| node.text()).transpose()?.map(str::to_owned);
        let (from, to) = (node.field("from")?.length()?, node.field("to")?);
        let end = to.length()?;
        if end < from {
            return Err(to.order(&node.path_of("from")));
        }
        let courses = node.get("courses").map(|node| node.items()?.iter().map(whole).collect::<Result<_, Fault>>());
        list.avoid.push(JointFree { wall, from, to: end, courses: courses.transpose()? });
    }
    list.keep_min = gap("keep_min")?;
    list.joints = root.get("joints").map_or(Ok(true), |node| node.flag())?;
    list.division = root.division()?;
    Ok((list, names))
}

/// The number of a course: any whole number that a program can hold.
fn whole(node: &Node<'_>) -> Result<i64, Fault> {
    node.whole(-1_000_000_000, 1_000_000_000)
}

fn studs(node: &Node<'_>) -> Result<StudCenters, Fault> {
    if node.is_object() {
        let (first, spacing) = (node.field("first")?.length()?, node.field("spacing")?.positive()?);
        return Ok(StudCenters::Spaced { first, spacing });
    }
    node.items()?.iter().map(Node::length).collect::<Result<_, _>>().map(StudCenters::Listed)
}

/// A price in billionths, to the nearest.
fn billionths(node: &Node<'_>) -> Result<u64, Fault> {
    let number = node.number()?;
    let out = || node.between("0", "1000000");
    if number.is_negative() {
        return Err(out());
    }
    let scaled = (number.exact * BigRational::from_integer(BigInt::from(1_000_000_000))).round().to_integer();
    scaled.to_u64().filter(|cost| *cost <= 1_000_000_000_000_000).ok_or_else(out)
}

fn seconds(node: &Node<'_>) -> Result<Duration, Fault> {
    let number = node.number()?;
    if number.is_negative() {
        return Err(node.range(Say::new("figure-range-not-negative")));
    }
    // Longer than anyone waits is for ever.
    Ok(Duration::try_from_secs_f64(number.float).unwrap_or(Duration::MAX))
}

fn fault(root: &Node<'_>, error: &SawError) -> Fault {
    let most = || Say::new("figure-too-many").with("limit", "10000");
    let (code, field, say) = match error {
        SawError::TooMany { what: "pieces" } => (FaultCode::TooBig, "runs".to_owned(), Say::new("saw-too-many-pieces")),
        SawError::TooMany { what } => (FaultCode::TooBig, (*what).to_owned(), most()),
        SawError::Negative { what } => (FaultCode::Range, (*what).to_owned(), Say::new("figure-range-not-negative")),
        SawError::Spacing => (FaultCode::Range, "studs.spacing".to_owned(), Say::new("figure-range-positive")),
        SawError::StockLength { stock } => {
            (FaultCode::Range, format!("stock[{stock}].length"), Say::new("figure-range-positive"))
        }
        SawError::StockCost { stock } => (
            FaultCode::Range,
            format!("stock[{stock}].cost"),
            Say::new("figure-range-between").with("least", "0").with("most", "1000000"),
        ),
        SawError::OffcutLength { offcut } => {
            (FaultCode::Range, format!("offcuts[{offcut}]"), Say::new("figure-range-positive"))
        }
        SawError::RunOrder { run } => {
            let say = Say::new("figure-order").with("other", format!("runs[{run}].from"));
            (FaultCode::Order, format!("runs[{run}].to"), say)
        }
        SawError::RunShort { run } => (FaultCode::Range, format!("runs[{run}].to"), Say::new("saw-run-short")),
        SawError::NoBoard => (FaultCode::Infeasible, "stock".to_owned(), Say::new("saw-no-board")),
        SawError::TooLong { run } => (FaultCode::Infeasible, format!("runs[{run}]"), Say::new("saw-too-long")),
        SawError::NoStud { run } => {
            let say = Say::new("saw-no-stud").with("run", format!("runs[{run}]"));
            (FaultCode::Infeasible, "studs".to_owned(), say)
        }
        SawError::NoJoints { run } => (FaultCode::Infeasible, format!("runs[{run}]"), Say::new("saw-no-joints")),
        SawError::NoStagger { run } => {
            let say = Say::new("saw-no-stagger").with("run", format!("runs[{run}]"));
            (FaultCode::Infeasible, "stagger".to_owned(), say)
        }
        SawError::NotEnough => (FaultCode::Infeasible, "stock".to_owned(), Say::new("saw-not-enough")),
    };
    Fault::new(code, root.path_of(&field), say)
}

/// A finite number as JSON.
fn number(float: f64) -> Value {
    Number::from_f64(float).map_or(Value::Null, Value::Number)
}
